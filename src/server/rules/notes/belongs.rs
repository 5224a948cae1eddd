//! The things of the reference that a note belongs to: threads, systems, drills, materials, calculators.

use holewright_core::finder::{self, Hit, Kind, PAGES};
use holewright_core::tables::drills::{self, Series};
use holewright_core::tables::materials::stock::without_size;
use holewright_core::tables::{materials, threads};
use holewright_core::units::print;
use holewright_pages::FieldError;

/// The most things one note belongs to.
pub const MOST: usize = 12;
/// More characters than the longest name of a thing has.
pub const LONGEST: usize = 100;
/// The field of the form.
pub const FIELD: &str = "on";
/// How many things an error offers.
const OFFERED: usize = 5;

/// One thing.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Thing {
    /// Its address without the first slash: `threads/ba/5`.
    pub id: String,
    /// What it is called.
    pub title: String,
}

/// The things of one sort that a field of a note may name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// Metals and plastics.
    Materials,
    /// Sizes of thread, not whole systems.
    Threads,
    /// Drills.
    Drills,
}

impl Group {
    /// The thing of this group that a text names outright. What cannot be read names nothing.
    #[must_use]
    pub fn named(self, typed: &str) -> Option<Thing> {
        let path = match self {
            Self::Materials => {
                format!("materials/{}", materials::read::of_stock(typed).ok()?.slug)
            }
            Self::Threads => threads::read::candidates(typed).ok()?.path(),
            Self::Drills => drills::read::read(typed).ok()?.path(),
        };
        at(path.trim_start_matches('/'))
    }

    /// The thing that is named outright, where it is not asked for: of aluminium alone, nothing.
    #[must_use]
    pub fn named_unasked(self, typed: &str) -> Option<Thing> {
        let is_asked = self == Self::Materials && !materials::asked::of_kind(typed).is_empty();
        self.named(typed).filter(|_| !is_asked)
    }

    /// Whether the thing is of this group.
    #[must_use]
    pub fn holds(self, thing: &Thing) -> bool {
        let parts: Vec<&str> = thing.id.split('/').collect();
        match self {
            Self::Materials => matches!(*parts.as_slice(), ["materials", ..]),
            Self::Threads => matches!(*parts.as_slice(), ["threads", _, _]),
            Self::Drills => matches!(*parts.as_slice(), ["drills", ..]),
        }
    }
}

/// The thing at an address, `materials/gunmetal`.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::belongs::at;
/// assert_eq!(at("threads/ba/5").map(|thing| thing.title), Some("5 BA".to_owned()));
/// assert_eq!(at("notes/1"), None);
/// ```
#[must_use]
pub fn at(id: &str) -> Option<Thing> {
    let parts: Vec<&str> = id.split('/').collect();
    let title = match *parts.as_slice() {
        ["threads", system] => {
            threads::systems().iter().find(|held| held.slug == system)?.name.to_owned()
        }
        ["threads", system, size] => threads::find(system, size)?.designation.to_owned(),
        ["drills", series, size] => {
            let series = Series::ALL.into_iter().find(|held| held.slug() == series)?;
            drills::find(series, size)?.label.clone()
        }
        ["materials", slug] => {
            print::sentence(materials::all().iter().find(|held| held.slug == slug)?.name)
        }
        ["calculators", slug] if !slug.contains('?') => {
            PAGES.iter().find(|page| page.url.strip_prefix('/') == Some(id))?.title.to_owned()
        }
        _ => return None,
    };
    Some(Thing { id: id.to_owned(), title })
}

/// The one thing that a text names, in any usual spelling, or by its address.
///
/// # Errors
/// It names none, or could be several.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::belongs::read;
/// assert_eq!(read("5ba").map(|thing| thing.id), Ok("threads/ba/5".to_owned()));
/// assert_eq!(read("No 43").map(|thing| thing.id), Ok("drills/number/43".to_owned()));
/// assert!(read("1/4").is_err());
/// ```
pub fn read(typed: &str) -> Result<Thing, FieldError> {
    let typed = typed.trim();
    if let Some(thing) = at(typed.strip_prefix('/').unwrap_or(typed)) {
        return Ok(thing);
    }
    let found = finder::find(typed);
    if let Some(thing) = found.only().and_then(thing_of) {
        return Ok(thing);
    }
    let near = found.hits.iter().chain(&found.suggestions).filter_map(thing_of);
    let near: Vec<String> = near.take(OFFERED).map(|thing| thing.title).collect();
    let typed: String = typed.chars().take(60).collect();
    let near = if near.is_empty() {
        "Write a material, a thread, a drill or a calculator, like gunmetal, 4 BA, No. 43."
            .to_owned()
    } else {
        format!("Possible here: {}.", near.join(", "))
    };
    Err(FieldError::new(
        FIELD,
        format!("“{typed}” does not name one thing of the reference. {near}"),
    ))
}

/// What notes are asked on: one thing, or a kind of material with all that are of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// As an address names it: `threads/ba/5`, `bronze`.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// The addresses of the things.
    pub things: Vec<String>,
}

/// What a text names that notes can be asked on.
///
/// # Errors
/// It names nothing, or several things that are no kind of material.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::belongs::named;
/// assert_eq!(named("5ba").map(|named| named.things), Ok(vec!["threads/ba/5".to_owned()]));
/// assert_eq!(named("Bronze").map(|named| (named.id, named.things.len())), Ok(("bronze".to_owned(), 7)));
/// assert_eq!(named("3/16 bronze"), named("bronze"));
/// assert!(named("1/4").is_err());
/// ```
pub fn named(typed: &str) -> Result<Named, FieldError> {
    if let Some(kind) = kind(typed) {
        return Ok(kind);
    }
    read(typed).map(|thing| Named {
        things: vec![thing.id.clone()],
        id: thing.id,
        title: thing.title,
    })
}

fn kind(typed: &str) -> Option<Named> {
    let plain = |letter: char| !letter.is_alphanumeric();
    let bare = without_size(typed);
    let id = bare.as_deref().unwrap_or(typed);
    let id = id.split(plain).filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ");
    let id = id.to_lowercase();
    let materials = materials::asked::of_kind(&id);
    if materials.is_empty() {
        return None;
    }
    let things = materials.iter().map(|material| format!("materials/{}", material.slug));
    Some(Named { title: id.clone(), things: things.collect(), id })
}

/// The things in a list with commas, semicolons or lines between them; each once.
///
/// # Errors
/// One error for each that cannot be read, or one that they are too many.
pub fn list(typed: &str) -> Result<Vec<Thing>, Vec<FieldError>> {
    let names: Vec<&str> =
        typed.split([',', ';', '\n']).map(str::trim).filter(|name| !name.is_empty()).collect();
    if names.len() > MOST {
        let message =
            format!("A note belongs to {MOST} things at most; these are {}.", names.len());
        return Err(vec![FieldError::new(FIELD, message)]);
    }
    let (mut things, mut errors) = (Vec::new(), Vec::new());
    for name in names {
        match read(name) {
            Ok(thing) => add(&mut things, thing),
            Err(error) => errors.push(error),
        }
    }
    if errors.is_empty() { Ok(things) } else { Err(errors) }
}

/// Puts a thing behind the others, unless it is among them.
pub fn add(things: &mut Vec<Thing>, thing: Thing) {
    if things.len() < MOST && !things.contains(&thing) {
        things.push(thing);
    }
}

/// The things as the field of the form takes them: by name where the name reads back to them.
#[must_use]
pub fn typed(things: &[Thing]) -> String {
    let names = things.iter().map(|thing| match read(&thing.title) {
        Ok(same) if same == *thing && !thing.title.contains([',', ';']) => thing.title.as_str(),
        _ => thing.id.as_str(),
    });
    names.collect::<Vec<_>>().join(", ")
}

/// The things by their names, in a sentence: `8 BA, Silver steel and No. 50`.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::belongs::{in_words, list};
/// let things = list("8 BA, silver steel, No 50").unwrap();
/// assert_eq!(in_words(&things), "8 BA, silver steel and the No. 50 drill");
/// assert_eq!(in_words(&things[..1]), "8 BA");
/// ```
#[must_use]
pub fn in_words(things: &[Thing]) -> String {
    let word = |thing: &Thing| match thing.id.split('/').next() {
        Some("materials") => print::running(&thing.title),
        Some("drills") => format!("the {} drill", thing.title),
        _ => thing.title.clone(),
    };
    let mut words: Vec<String> = things.iter().map(word).collect();
    match (words.pop(), words.join(", ")) {
        (None, _) => String::new(),
        (Some(only), before) if before.is_empty() => only,
        (Some(last), before) => format!("{before} and {last}"),
    }
}

fn thing_of(hit: &Hit) -> Option<Thing> {
    match hit.kind {
        Kind::Thread | Kind::System | Kind::Drill | Kind::Material | Kind::Calculator => {
            // A calculator with some of its fields filled is that calculator.
            let address = hit.url.split('?').next().unwrap_or_default();
            at(address.trim_start_matches('/'))
        }
        Kind::Series | Kind::Rescue | Kind::List => None,
    }
}
