//! A bare length beside others of one line, which say whether it is millimetres or inches.

use super::diameter::either;
use super::error::quoted;
use super::{FieldError, Typed};
use crate::tables::threads::{Basic, Naming, Thread};
use crate::units::read::{Bare, Notation, length, plain, take};
use crate::units::{Length, Pitch, inch, mm};

/// What the rest of a line says of a bare length in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// The thread, or another length of the line, is in inches.
    in_inches: bool,
    /// More than this in inches would not be meant.
    most: Length,
    /// Less than this in millimetres would not be meant.
    least: Length,
}

/// No depth or thickness in a line is meant that is deeper than this many diameters of its thread.
const DEEPEST: f64 = 5.0;
/// No centre error in inches is meant that is larger.
const MOST_OFF: Length = inch(0.05);

impl Line {
    /// A line with a thread and other lengths. A thread of British Association is named by neither
    /// unit, and metric ones are in millimetres.
    ///
    /// # Source
    /// Common practice, no source.
    #[must_use]
    pub fn of(thread: &Thread, lengths: &[&str]) -> Self {
        let naming = thread.system.system().naming;
        let by_inches = matches!(naming, Naming::Inch | Naming::Unified)
            && matches!(thread.pitch, Pitch::PerInch(_));
        let is_in_inches = |text: &&str| is_in_inches(text);
        let (Basic::Major(size) | Basic::EffectiveAtGauge(size)) = thread.basic;
        Self {
            in_inches: by_inches || lengths.iter().any(is_in_inches),
            most: size.length() * DEEPEST,
            least: mm(0.0),
        }
    }

    /// The same for a depth of thread, which is no shorter than one turn of it.
    #[must_use]
    pub fn for_depth(self, thread: &Thread) -> Self {
        Self { least: thread.pitch.length(), ..self }
    }

    /// The same for how far a centre is off.
    #[must_use]
    pub const fn for_centres(self) -> Self {
        Self { most: MOST_OFF, ..self }
    }

    /// A length in this line: a bare fraction is inches, a bare number millimetres unless it could as
    /// well be inches here.
    ///
    /// # Errors
    /// It is none, or its unit is not plain.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::asking::{Line, Typed};
    /// use holewright_core::{tables::threads::find, units::{inch, mm}};
    /// let depth = |thread, text| Line::of(thread, &[]).length(Typed { field: "depth", text });
    /// let (quarter, m6) = (find("me-40", "1-4").unwrap(), find("metric", "m6").unwrap());
    /// assert_eq!(depth(m6, "0.5"), Ok(Some(mm(0.5))));
    /// assert_eq!(depth(quarter, "3/8"), Ok(Some(inch(0.375))));
    /// assert_eq!(depth(quarter, "0.5").unwrap_err().choices.len(), 2);
    /// assert_eq!(depth(quarter, "12"), Ok(Some(mm(12.0))));
    /// ```
    pub fn length(self, typed: Typed<'_>) -> Result<Option<Length>, FieldError> {
        let text = plain(typed.text);
        let number = take(&text).filter(|(_, rest)| rest.trim().is_empty());
        let number = number.map(|(number, _)| number).filter(|number| {
            matches!(number.notation, Notation::Whole(_) | Notation::Decimal { .. })
        });
        match number {
            Some(number) if self.could_be_inches(number.value) => Err(FieldError {
                choices: either(number),
                ..typed.error(format!(
                    "{} could be millimetres or inches here: write the unit.",
                    quoted(typed.text)
                ))
            }),
            _ => typed.length(),
        }
    }

    fn could_be_inches(self, value: f64) -> bool {
        let is_doubtful = self.in_inches || mm(value) < self.least;
        value > 0.0 && is_doubtful && inch(value) <= self.most
    }
}

/// Whether a length was typed in inches.
fn is_in_inches(text: &str) -> bool {
    const UNITS: [&str; 5] = ["\"", "in", "ins", "inch", "thou"];
    let plain = plain(text);
    let has_unit = UNITS.iter().any(|unit| plain.ends_with(unit));
    let is_fraction = length(text, Bare::Ask).is_ok() && plain.contains('/');
    has_unit || is_fraction
}
