//! Which of a machine's speeds to set for a tool: the slow end of the published range where there is
//! a choice.

use super::spindle::{SpeedStep, Spindle, on_a_dial};
use crate::units::Frequency;

/// Where a speed lies in the published range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Below it: no harm done.
    Slow,
    /// Within it.
    Within,
    /// Above it.
    Fast,
}

/// Whether the machine can do it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// The machine is not known.
    NotSaid,
    /// A speed lies in the range.
    Within,
    /// None lies in it, but there are slower and faster ones.
    Between,
    /// The fastest is slower than the range.
    TooSlow,
    /// The slowest is faster than the range.
    TooFast,
}

/// The spindle speeds of a published range at one diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Of its slow end.
    pub low: Frequency,
    /// Of its fast end.
    pub high: Frequency,
}

/// The speed to set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedChoice {
    /// The speed; none where the machine is not known.
    pub set: Option<Frequency>,
    /// Whether the machine can do it.
    pub reach: Reach,
}

impl Band {
    /// Where a speed lies. Speeds are compared as a dial reads them, so that the ends as printed
    /// lie in the range.
    #[must_use]
    pub fn verdict(&self, speed: Frequency) -> Verdict {
        if on_a_dial(speed) < on_a_dial(self.low) {
            Verdict::Slow
        } else if on_a_dial(speed) > on_a_dial(self.high) {
            Verdict::Fast
        } else {
            Verdict::Within
        }
    }

    /// The speed of one step to judge it by: a single speed is what it is; of a drive without
    /// steps, the speed nearest to the slow end.
    #[must_use]
    pub fn nearest(&self, step: SpeedStep) -> Frequency {
        let wanted = on_a_dial(self.low);
        match step.slowest {
            Some(slowest) if wanted < slowest => slowest,
            _ if wanted > step.fastest => step.fastest,
            _ => wanted,
        }
    }

    /// The speed to set: the slowest in the range, else the next below it, else the slowest there
    /// is. Slower does no harm; too fast burns the edge.
    ///
    /// # Source
    /// Common practice, no source.
    ///
    /// # Examples
    /// A 12 mm drill in silver steel wants about 400 to 480 rev/min.
    /// ```
    /// use holewright_core::calc::{speed_choice::{Band, Reach}, spindle::Spindle};
    /// use holewright_core::units::rpm;
    /// let band = Band { low: rpm(404.0), high: rpm(485.0) };
    /// let choice = |speeds| band.choose(&Spindle::read(speeds).unwrap());
    /// assert_eq!(choice("280, 420, 470").set, Some(rpm(420.0)));
    /// assert_eq!(choice("280, 350, 720").set, Some(rpm(350.0)));
    /// assert_eq!((choice("720, 1000").set, choice("720").reach), (Some(rpm(720.0)), Reach::TooFast));
    /// assert_eq!(band.choose(&Spindle::default()).set, None);
    /// ```
    #[must_use]
    pub fn choose(&self, spindle: &Spindle) -> SpeedChoice {
        let mut speeds: Vec<Frequency> =
            spindle.steps.iter().map(|step| self.nearest(*step)).collect();
        speeds.sort_by(|a, b| a.value.total_cmp(&b.value));
        let first = |verdict| speeds.iter().find(|speed| self.verdict(**speed) == verdict).copied();
        let slower = speeds.iter().rfind(|speed| self.verdict(**speed) == Verdict::Slow).copied();
        let (set, reach) = match (slower, first(Verdict::Within), first(Verdict::Fast)) {
            (_, Some(within), _) => (Some(within), Reach::Within),
            (Some(slower), None, Some(_)) => (Some(slower), Reach::Between),
            (Some(slower), None, None) => (Some(slower), Reach::TooSlow),
            (None, None, Some(faster)) => (Some(faster), Reach::TooFast),
            (None, None, None) => (None, Reach::NotSaid),
        };
        SpeedChoice { set, reach }
    }
}
