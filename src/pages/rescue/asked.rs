//! What an address says of a trouble: the metal of the part, the steel of the tap or the drill.

use crate::{FieldError, Query};
use holewright_core::asking::{self, Typed, Word, too_long, word};
use holewright_core::tables::materials::Material;
use holewright_core::tables::tool_steel::ToolSteel;

/// The metal of the part, by its name in the address.
pub const MATERIAL: &str = "material";
/// The steel of the tap or the drill, by its name in the address.
pub const TAP_STEEL: &str = "tap_steel";

/// The steels of a tap or a drill; an empty field leaves it open.
pub(super) static STEELS: &[Word<Option<ToolSteel>>] = &[
    word("carbon", "Carbon steel: old, or not marked", Some(ToolSteel::Carbon)),
    word("hss", "High-speed steel: marked HSS", Some(ToolSteel::HighSpeed)),
];

/// What is known of the part and the tool.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Asked {
    /// The metal of the part.
    pub material: Option<&'static Material>,
    /// The steel of the tap or the drill.
    pub steel: Option<ToolSteel>,
}

impl Asked {
    /// What an address says.
    ///
    /// # Errors
    /// The material is not known, could be several, or is not to be cut; the steel is no choice.
    ///
    /// # Examples
    /// ```
    /// use holewright_pages::{Query, rescue::asked::Asked};
    /// let asked = Asked::read(&Query::read("material=brass&tap_steel=carbon")).unwrap();
    /// assert_eq!(asked.material.map(|metal| metal.slug), Some("free-cutting-brass"));
    /// assert!(Asked::read(&Query::read("material=cheese")).is_err());
    /// ```
    pub fn read(query: &Query) -> Result<Self, Vec<FieldError>> {
        let mut errors = Vec::new();
        let material = asking::keep(&mut errors, material(at(query, MATERIAL)));
        let steel = at(query, TAP_STEEL);
        let steel = too_long(steel).map_or_else(|| steel.one_of(STEELS), Err);
        let steel = asking::keep(&mut errors, steel);
        if errors.is_empty() { Ok(Self { material, steel }) } else { Err(errors) }
    }

    /// What is known already, and that it can be said otherwise: `In gunmetal: change it`.
    pub(super) fn in_words(&self) -> String {
        let steel = self.steel.map(|steel| match steel {
            ToolSteel::Carbon => "carbon steel broken in",
            ToolSteel::HighSpeed => "high-speed steel broken in",
        });
        match (self.material, steel) {
            (None, None) => "Say the metal of the part and the steel of the tool".to_owned(),
            (Some(material), None) => format!("In {}: change it", material.name),
            (None, Some(steel)) => format!("With {steel}: change it"),
            (Some(material), Some(steel)) => {
                format!("In {}, {steel}: change it", material.name)
            }
        }
    }
}

fn at<'a>(query: &'a Query, field: &'static str) -> Typed<'a> {
    Typed { field, text: query.get(field) }
}

fn material(typed: Typed<'_>) -> Result<Option<&'static Material>, FieldError> {
    match too_long(typed) {
        Some(error) => Err(error),
        None if typed.text.is_empty() => Ok(None),
        None => asking::metal(typed).map(Some),
    }
}
