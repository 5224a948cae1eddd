//! The speeds a machine has: single ones, and the ranges of a drive without steps.
//!
//! Which of them suits a tool is in [`super::speed_choice`].

use crate::units::read::{FigureError, spindle_speed};
use crate::units::{Frequency, in_rpm, rpm};

/// The most speeds one list may have: more than any machine.
const MOST: usize = 40;

/// One speed of a machine, or a range it can be set to at will.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedStep {
    /// The slowest; none where only the fastest is known.
    pub slowest: Option<Frequency>,
    /// The fastest; equal to the slowest for a single speed.
    pub fastest: Frequency,
}

/// The speeds of a machine, slowest first; none where they are not known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Spindle {
    /// The steps.
    pub steps: Vec<SpeedStep>,
}

/// Why a list of speeds could not be taken.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SpindleError {
    /// An item is no speed.
    #[error(transparent)]
    Item(#[from] FigureError),
    /// A range is written with the larger first.
    #[error("in a range the slower speed stands first: 200-2000")]
    Backwards,
    /// Too many.
    #[error("that is too long for the speeds of one machine: {MOST} are the most")]
    TooMany,
    /// Nothing is left under the fastest speed.
    #[error("every speed listed is above the fastest speed given")]
    NoneLeft,
}

impl Spindle {
    /// Reads a list of speeds, `350, 500, 1000`; `200-2000` is a drive that can be set to any.
    ///
    /// # Errors
    /// [`SpindleError`] for an item that is no speed, a range the wrong way round, too many.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::{calc::spindle::Spindle, units::rpm};
    /// let spindle = Spindle::read("1000, 350; 500 rpm, 500").unwrap();
    /// let fastest: Vec<_> = spindle.steps.iter().map(|step| step.fastest).collect();
    /// assert_eq!(fastest, [rpm(350.0), rpm(500.0), rpm(1000.0)]);
    /// assert_eq!(Spindle::read("200-2000").unwrap().steps[0].slowest, Some(rpm(200.0)));
    /// assert_eq!(Spindle::read("200-2,000"), Spindle::read("200-2000"));
    /// assert_eq!(Spindle::read("1,200-2,000, 60,120"), Spindle::read("1200-2000; 60; 120"));
    /// assert_eq!(Spindle::read("10,000"), Spindle::read("10000"));
    /// assert_eq!(Spindle::read("up to 2,000").unwrap().steps[0].slowest, None);
    /// assert!(Spindle::read("fast").is_err());
    /// ```
    pub fn read(typed: &str) -> Result<Self, SpindleError> {
        let items = items(typed);
        if items.len() > MOST {
            return Err(SpindleError::TooMany);
        }
        let mut steps = items.iter().map(|item| step(item)).collect::<Result<Vec<_>, _>>()?;
        steps.sort_by(|a, b| in_rpm(a.fastest).total_cmp(&in_rpm(b.fastest)));
        steps.dedup();
        Ok(Self { steps })
    }

    /// The speeds a machine has, from its list and its fastest speed, either of which may be unknown.
    ///
    /// # Errors
    /// [`SpindleError::NoneLeft`] where the list lies above the fastest speed.
    pub fn held_to(self, most: Option<Frequency>) -> Result<Self, SpindleError> {
        let Some(most) = most else { return Ok(self) };
        if self.steps.is_empty() {
            return Ok(Self { steps: vec![SpeedStep { slowest: None, fastest: most }] });
        }
        let held = |step: SpeedStep| {
            let within = step.slowest.is_none_or(|slowest| slowest <= most);
            let fastest = if step.fastest > most { most } else { step.fastest };
            within.then_some(SpeedStep { fastest, ..step })
        };
        let steps: Vec<SpeedStep> = self.steps.into_iter().filter_map(held).collect();
        if steps.is_empty() { Err(SpindleError::NoneLeft) } else { Ok(Self { steps }) }
    }

    /// Its slowest speed; none where it is not known.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::{calc::spindle::Spindle, units::rpm};
    /// assert_eq!(Spindle::read("1000, 350").unwrap().slowest(), Some(rpm(350.0)));
    /// assert_eq!(Spindle::default().held_to(Some(rpm(2000.0))).unwrap().slowest(), None);
    /// ```
    #[must_use]
    pub fn slowest(&self) -> Option<Frequency> {
        let slowest = self.steps.iter().map(|step| step.slowest).collect::<Option<Vec<_>>>()?;
        slowest.into_iter().min_by(|a, b| in_rpm(*a).total_cmp(&in_rpm(*b)))
    }

    /// Its fastest speed; none where it is not known.
    #[must_use]
    pub fn fastest(&self) -> Option<Frequency> {
        self.steps.last().map(|step| step.fastest)
    }
}

/// The items of a list. No spindle turns at 1 to 9 rev/min, so a comma after a single figure and hard
/// before three marks thousands, also at the end of a range: `1,200` and `200-2,000` are one item,
/// `60,120,240` are three. No speed begins with three noughts either: `10,000`.
fn items(typed: &str) -> Vec<String> {
    let mut items: Vec<String> = Vec::new();
    for part in typed.split([';', '\n']) {
        let mut open = false;
        for piece in part.split(',') {
            let digits = piece.chars().take_while(char::is_ascii_digit).count();
            let thousands = digits == 3 && (open || piece.starts_with("000"));
            match items.last_mut() {
                Some(last) if thousands => last.push_str(piece),
                _ => items.push(piece.to_owned()),
            }
            let before = piece.trim_end_matches(|letter: char| letter.is_ascii_digit());
            let stands_alone =
                before.is_empty() || before.ends_with(|end: char| " -–\t".contains(end));
            open = stands_alone && piece.len() == before.len() + 1;
        }
    }
    items.retain(|item| !item.trim().is_empty());
    items
}

fn step(item: &str) -> Result<SpeedStep, SpindleError> {
    let item = item.trim();
    let words = item.to_lowercase();
    if let Some(most) = words.strip_prefix("up to ") {
        return Ok(SpeedStep { slowest: None, fastest: spindle_speed(most.trim())? });
    }
    if let Some((from, to)) = item.split_once(['-', '–']) {
        let (slowest, fastest) = (spindle_speed(from.trim())?, spindle_speed(to.trim())?);
        return if slowest <= fastest {
            Ok(SpeedStep { slowest: Some(slowest), fastest })
        } else {
            Err(SpindleError::Backwards)
        };
    }
    let speed = spindle_speed(item.trim())?;
    Ok(SpeedStep { slowest: Some(speed), fastest: speed })
}

/// A speed as a dial reads it: two figures.
#[must_use]
pub fn on_a_dial(speed: Frequency) -> Frequency {
    rpm(crate::units::print::significant(in_rpm(speed), 2))
}
