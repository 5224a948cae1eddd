//! Reading one range of drills: `1-60`, `A-Z`, `1/16-1/2x64ths`, `1-6x0.1mm`.

use super::super::read::{after_number_mark, letter};
use super::super::{Drill, SAME_SIZE, Series, by_series};
use crate::units::read::{Notation, Number, Unit, plain, take};
use crate::units::{Length, in_mm, inch};

/// Why a range could not be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RangeError {
    /// It begins like a range and goes on like nothing known.
    #[error("that is no range of drills. Write one like 1-60, A-Z, 1/16-1/2x64ths or 1-6x0.1mm.")]
    Unread,
    /// Decimals without a unit.
    #[error("the unit is missing: write a range of sizes like 1.5-3mm.")]
    NoUnit,
    /// Millimetres and inches in one range, or a unit on drill numbers.
    #[error("that mixes two ways to name drills: write one range for each.")]
    Mixed,
    /// The range is well written but no drill lies in it.
    #[error("no drill held here lies in that range.")]
    NoDrills,
}

/// The drills of a range; `None` if the text does not begin like one.
pub(super) fn range(typed: &str) -> Option<Result<Vec<&'static Drill>, RangeError>> {
    let text = plain(typed);
    let drills = match letters(&text) {
        Some(drills) => Ok(drills),
        None => Written::of(&text)?.and_then(|written| written.drills()),
    };
    Some(
        drills.and_then(
            |drills| if drills.is_empty() { Err(RangeError::NoDrills) } else { Ok(drills) },
        ),
    )
}

fn letters(text: &str) -> Option<Vec<&'static Drill>> {
    let (first, second) = text.split_once('-').or_else(|| text.split_once(" to "))?;
    let one = |end: &str| {
        let end = end.trim();
        letter(
            ["letters ", "letter "].iter().find_map(|word| end.strip_prefix(word)).unwrap_or(end),
        )
    };
    let (first, second) = (one(first)?, one(second)?);
    let sizes = [first.size.as_str(), second.size.as_str()];
    let within = sizes.iter().min()?..=sizes.iter().max()?;
    Some(by_series(Series::Letter).filter(|drill| within.contains(&&drill.size.as_str())).collect())
}

/// A range as written, before it is known what the numbers are.
struct Written<'a> {
    /// `No` or `#` stands before an end.
    is_numbered: bool,
    ends: [Number<'a>; 2],
    unit: Option<Unit>,
    step: Option<Step<'a>>,
}

enum Step<'a> {
    /// `64ths`, and how many go to the inch.
    Parts(f64),
    Size(Number<'a>),
}

impl<'a> Written<'a> {
    /// `None` if there is no number, or no dash behind the first.
    fn of(text: &'a str) -> Option<Result<Self, RangeError>> {
        let (first_mark, text) = number_mark(text);
        let (first, text) = take(text)?;
        let (first_unit, text) = unit(text);
        let text = text.trim_start();
        let text = text.strip_prefix('-').or_else(|| text.strip_prefix("to "))?.trim_start();
        let (second_mark, text) = number_mark(text);
        let rest = take(text).and_then(|(second, text)| {
            let (second_unit, text) = unit(text);
            let (step, step_unit, text) = step(text.trim_start())?;
            text.trim().is_empty().then_some((second, [first_unit, second_unit, step_unit], step))
        });
        let Some((second, units, step)) = rest else { return Some(Err(RangeError::Unread)) };
        let mut units = units.into_iter().flatten();
        let unit = units.next();
        if units.any(|other| Some(other) != unit) {
            return Some(Err(RangeError::Mixed));
        }
        let is_numbered = first_mark || second_mark;
        Some(Ok(Self { is_numbered, ends: [first, second], unit, step }))
    }

    fn drills(&self) -> Result<Vec<&'static Drill>, RangeError> {
        let is_vulgar = self.ends.iter().any(Number::is_vulgar);
        let step = match self.step {
            // "1/16-1/2x64" can only be by 64ths.
            Some(Step::Size(Number { value, notation: Notation::Whole(_) })) if is_vulgar => {
                Some((Unit::Inch, 1.0 / value))
            }
            Some(Step::Parts(parts)) => Some((Unit::Inch, 1.0 / parts)),
            Some(Step::Size(size)) if size.is_vulgar() => Some((Unit::Inch, size.value)),
            Some(Step::Size(size)) => Some((self.unit.unwrap_or(Unit::Mm), size.value)),
            None => None,
        };
        let step_unit = step.map(|(unit, _)| unit);
        let unit = match (self.unit, is_vulgar) {
            (Some(Unit::Mm), true) => return Err(RangeError::Mixed),
            (None, true) => Some(Unit::Inch),
            (unit, _) => unit.or(step_unit),
        };
        match unit {
            Some(_) if self.is_numbered => Err(RangeError::Mixed),
            Some(unit) if step_unit.is_some_and(|step| step != unit) => Err(RangeError::Mixed),
            Some(unit) => self.sized(unit, step.map(|(unit, size)| unit.length(size))),
            None => self.numbered(),
        }
    }

    fn numbered(&self) -> Result<Vec<&'static Drill>, RangeError> {
        let [
            Number { notation: Notation::Whole(first), .. },
            Number { notation: Notation::Whole(second), .. },
        ] = self.ends
        else {
            return Err(RangeError::NoUnit);
        };
        let number = |digits: &str| digits.parse::<u16>().map_err(|_| RangeError::NoDrills);
        let (first, second) = (number(first)?, number(second)?);
        let within = first.min(second)..=first.max(second);
        let is_within =
            |drill: &&Drill| drill.size.parse().is_ok_and(|size| within.contains(&size));
        Ok(by_series(Series::Number).filter(is_within).collect())
    }

    fn sized(&self, unit: Unit, step: Option<Length>) -> Result<Vec<&'static Drill>, RangeError> {
        let series = if unit == Unit::Mm { Series::Metric } else { Series::Fraction };
        let [first, second] = self.ends.map(|end| in_mm(unit.length(end.value)));
        let (least, most) = (first.min(second), first.max(second));
        let step = step.map(in_mm);
        if step.is_some_and(|step| !step.is_finite() || step < in_mm(inch(0.0001))) {
            return Err(RangeError::Unread);
        }
        let same = in_mm(SAME_SIZE);
        let is_within = |drill: &&Drill| {
            let size = in_mm(drill.diameter);
            let off_step = step.map_or(0.0, |step| {
                let steps = (size - least) / step;
                ((steps - steps.round()) * step).abs()
            });
            size >= least - same && size <= most + same && off_step <= same
        };
        Ok(by_series(series).filter(is_within).collect())
    }
}

fn number_mark(text: &str) -> (bool, &str) {
    after_number_mark(text).map_or((false, text), |rest| (true, rest))
}

/// Takes a unit off the front.
fn unit(text: &str) -> (Option<Unit>, &str) {
    const NAMES: [&str; 10] = [
        "millimetres",
        "millimetre",
        "millimeters",
        "millimeter",
        "mm",
        "inches",
        "inch",
        "ins",
        "in",
        "\"",
    ];
    let behind = text.trim_start();
    NAMES
        .iter()
        .find_map(|name| Some((Unit::named(name), behind.strip_prefix(name)?)))
        .unwrap_or((None, text))
}

/// Takes the step and its unit off the front, `x0.1mm` or `by 64ths`, if there is one; `None` if
/// it is not understood.
fn step(text: &str) -> Option<(Option<Step<'_>>, Option<Unit>, &str)> {
    if text.is_empty() {
        return Some((None, None, text));
    }
    let text = text.strip_prefix('x').or_else(|| text.strip_prefix("by "))?.trim_start();
    let (size, rest) = take(text)?;
    let parts =
        ["ths", "nds", "rds"].iter().find_map(|ending| rest.trim_start().strip_prefix(ending));
    if let (Notation::Whole(_), Some(rest)) = (size.notation, parts) {
        return Some((Some(Step::Parts(size.value)), None, rest));
    }
    let (unit, rest) = unit(rest);
    Some((Some(Step::Size(size)), unit, rest))
}
