//! The machines a person has, each with its name and its speeds: `lathe: 350, 500; bench drill: 600-2000`.

use super::speed_choice::{Reach, SpeedBand};
use super::spindle::{Spindle, SpindleError};
use crate::units::read::shown;
use crate::units::{Frequency, in_rpm};

/// The most machines one list may have: more than a shed holds.
const MOST: usize = 6;
/// The longest name, in letters: it must stay a name.
const LONGEST_NAME: usize = 24;

/// One machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Machine {
    /// What its owner calls it; none where only one was given and not named.
    pub name: Option<String>,
    /// Its speeds.
    pub spindle: Spindle,
}

/// The machines at hand, in the order they were listed; none where nothing was said.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Machines {
    /// Each of them.
    pub each: Vec<Machine>,
}

/// Why a list of machines could not be taken.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum MachinesError {
    /// The speeds of one of them.
    #[error(transparent)]
    Speeds(#[from] SpindleError),
    /// Several machines, the first without a name.
    #[error("name each machine: lathe: 350, 500, 1000; bench drill: 600-2000")]
    Unnamed,
    /// What stands before the colon is no name.
    #[error(
        "before the colon stands the machine’s name, {LONGEST_NAME} letters and figures at most, and a semicolon before the next machine: lathe: 350, 500; drill: 600"
    )]
    NoName,
    /// Two of one name.
    #[error("two machines are called {0}: give each a name of its own")]
    SameName(String),
    /// A name with no speeds behind it.
    #[error("{0} has no speeds: write them behind the colon, {0}: 350, 500")]
    NoSpeeds(String),
    /// Two colons with nothing that parts them between.
    #[error(
        "a comma or a semicolon is missing in “{0}”: a comma between speeds, a semicolon before the next machine"
    )]
    Unparted(String),
    /// Too many.
    #[error("{MOST} machines are the most")]
    TooMany,
}

/// The machine to use for a tool, and the speed to set on it.
#[derive(Clone, Debug, PartialEq)]
pub struct MachineChoice<'a> {
    /// The machine.
    pub machine: &'a Machine,
    /// The speed.
    pub speed: Frequency,
    /// Whether it can do it.
    pub reach: Reach,
}

impl Machines {
    /// Reads a list of machines, or the speeds of one without a name.
    ///
    /// # Errors
    /// [`MachinesError`] for a name or a speed that makes no sense.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::calc::machines::Machines;
    /// let shed = Machines::read("lathe: 350, 500, 1000; bench drill: 600-2000").unwrap();
    /// let names: Vec<_> = shed.each.iter().filter_map(|machine| machine.name.as_deref()).collect();
    /// assert_eq!(names, ["lathe", "bench drill"]);
    /// assert_eq!(Machines::read("350, 500").unwrap().each.len(), 1);
    /// assert!(Machines::read("350; bench drill: 600").is_err());
    /// let error = Machines::read("lathe: 350: 500").unwrap_err().to_string();
    /// assert!(error.starts_with("a comma or a semicolon is missing in “lathe: 350: 500”"));
    /// ```
    pub fn read(typed: &str) -> Result<Self, MachinesError> {
        let parts = parts(typed);
        let (first, named) =
            parts.split_first().map_or(("", [].as_slice()), |((_, first), rest)| (*first, rest));
        if named.is_empty() {
            return Ok(Self::of(Spindle::read(first)?));
        }
        if first.contains(char::is_alphanumeric) {
            return Err(MachinesError::Unnamed);
        }
        if named.len() > MOST {
            return Err(MachinesError::TooMany);
        }
        let mut each: Vec<Machine> = Vec::new();
        for (place, (name, speeds)) in named.iter().enumerate() {
            let name = self::name(name)?;
            let known = |held: &Machine| {
                held.name.as_ref().is_some_and(|held| held.to_lowercase() == name.to_lowercase())
            };
            if each.iter().any(known) {
                return Err(MachinesError::SameName(name));
            }
            if let Some((next, behind)) = named.get(place + 1)
                && speeds.is_empty()
            {
                let typed = format!("{name}: {}: {}", next.trim(), behind.trim());
                return Err(MachinesError::Unparted(shown(&typed)));
            }
            let spindle = Spindle::read(speeds)?;
            if spindle.steps.is_empty() {
                return Err(MachinesError::NoSpeeds(name));
            }
            each.push(Machine { name: Some(name), spindle });
        }
        Ok(Self { each })
    }

    /// One machine without a name; none where it has no speeds.
    #[must_use]
    pub fn of(spindle: Spindle) -> Self {
        let each = if spindle.steps.is_empty() {
            Vec::new()
        } else {
            vec![Machine { name: None, spindle }]
        };
        Self { each }
    }

    /// Nothing was said of any.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.each.is_empty()
    }

    /// The machines held to a fastest speed, which alone is one machine; those above it are left out.
    ///
    /// # Errors
    /// [`SpindleError::NoneLeft`] where none is left.
    pub fn held_to(self, most: Option<Frequency>) -> Result<Self, SpindleError> {
        if self.each.is_empty() {
            return Ok(Self::of(Spindle::default().held_to(most)?));
        }
        let held = |machine: Machine| {
            let spindle = machine.spindle.held_to(most).ok()?;
            Some(Machine { spindle, ..machine })
        };
        let each: Vec<Machine> = self.each.into_iter().filter_map(held).collect();
        if each.is_empty() { Err(SpindleError::NoneLeft) } else { Ok(Self { each }) }
    }

    /// The machine to use and its speed: the first listed with a speed in the range, else the fastest of
    /// those below it, else the slowest of those above; none where nothing was said of any.
    ///
    /// # Source
    /// Common practice, no source: slower does no harm, and one machine for the whole job saves setting up.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::calc::{machines::Machines, speed_choice::SpeedBand};
    /// use holewright_core::units::rpm;
    /// let shed = Machines::read("lathe: 350, 500; bench drill: 600-2000").unwrap();
    /// let used = |low, high| {
    ///     let choice = shed.choose(&SpeedBand { low: rpm(low), high: rpm(high) }).unwrap();
    ///     (choice.machine.name.as_deref().unwrap(), choice.speed)
    /// };
    /// assert_eq!(used(400.0, 700.0), ("lathe", rpm(500.0)));
    /// assert_eq!(used(900.0, 1100.0), ("bench drill", rpm(900.0)));
    /// assert_eq!(used(4000.0, 5000.0), ("bench drill", rpm(2000.0)));
    /// assert_eq!(used(100.0, 200.0), ("lathe", rpm(350.0)));
    /// ```
    #[must_use]
    pub fn choose(&self, band: &SpeedBand) -> Option<MachineChoice<'_>> {
        let choices = self.each.iter().filter_map(|machine| {
            let choice = band.choose(&machine.spindle);
            Some(MachineChoice { machine, speed: choice.set?, reach: choice.reach })
        });
        choices.reduce(|best, next| if nearer(&next, &best) { next } else { best })
    }

    /// The one of them to keep to for a whole job: the one to use for the tool that matters most; none where
    /// nothing was said of any.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::calc::{machines::Machines, speed_choice::SpeedBand};
    /// use holewright_core::units::rpm;
    /// let shed = Machines::read("lathe: 350, 500; bench drill: 600-2000").unwrap();
    /// let lathe = shed.kept_to(&SpeedBand { low: rpm(400.0), high: rpm(700.0) });
    /// assert_eq!(lathe, Machines::read("lathe: 350, 500").unwrap());
    /// ```
    #[must_use]
    pub fn kept_to(&self, band: &SpeedBand) -> Self {
        Self { each: self.choose(band).map(|choice| choice.machine.clone()).into_iter().collect() }
    }

    /// The fastest speed there is; none where nothing was said of any machine.
    #[must_use]
    pub fn fastest(&self) -> Option<Frequency> {
        let fastest = self.each.iter().filter_map(|machine| machine.spindle.fastest());
        fastest.max_by(|a, b| in_rpm(*a).total_cmp(&in_rpm(*b)))
    }

    /// The slowest speed there is, and the machine that has it; none where no slowest speed is known.
    #[must_use]
    pub fn slowest(&self) -> Option<(&Machine, Frequency)> {
        let slowest =
            self.each.iter().filter_map(|machine| Some((machine, machine.spindle.slowest()?)));
        slowest.min_by(|(_, a), (_, b)| in_rpm(*a).total_cmp(&in_rpm(*b)))
    }
}

/// Whether one choice is better than one listed before it.
fn nearer(next: &MachineChoice<'_>, best: &MachineChoice<'_>) -> bool {
    let rank = |choice: &MachineChoice<'_>| match choice.reach {
        Reach::Within => 0,
        Reach::Between | Reach::TooSlow => 1,
        Reach::TooFast | Reach::NotSaid => 2,
    };
    match (rank(next), rank(best)) {
        (1, 1) => next.speed > best.speed,
        (2, 2) => next.speed < best.speed,
        (next, best) => next < best,
    }
}

/// What stands before the first name, then each name with what stands behind its colon.
fn parts(typed: &str) -> Vec<(&str, &str)> {
    let mut parts = Vec::new();
    let (mut name, mut from) = ("", 0);
    for (colon, mark) in typed.match_indices([':', '：']) {
        let before = typed.get(from..colon).unwrap_or_default();
        let start = before.rfind([',', ';', '\n']).map_or(0, |at| at + 1);
        parts.push((name, before.get(..start).unwrap_or_default()));
        name = before.get(start..).unwrap_or_default();
        from = colon + mark.len();
    }
    parts.push((name, typed.get(from..).unwrap_or_default()));
    parts
}

fn name(typed: &str) -> Result<String, MachinesError> {
    let name = typed.split_whitespace().collect::<Vec<_>>().join(" ");
    let is_part = |c: char| c.is_alphanumeric() || matches!(c, ' ' | '-' | '.' | '\'' | '’');
    let is_name = name.chars().any(char::is_alphabetic)
        && name.chars().all(is_part)
        && name.chars().count() <= LONGEST_NAME;
    if is_name { Ok(name) } else { Err(MachinesError::NoName) }
}
