//! What to set a machine to for one tool: a speed it has, or in words where no figure would help.
//!
//! Nothing is asked for that a bench machine cannot do.

use super::machines::{MachineChoice, Machines};
use super::speed_choice::{Reach, SpeedBand};
use super::spindle::on_a_dial;
use crate::units::{Frequency, in_rpm, rpm};

/// The fastest that a bench machine is taken to turn, in revolutions a minute, where nothing was said
/// of it. Common practice, no source.
const BENCH_RPM: f64 = 3_000.0;

/// A speed no farther below the slow end than this share of it is as good. Common practice, no source: the
/// published figures differ by more.
const NEAR_ENOUGH: f64 = 0.85;

/// The fastest that a bench machine is taken to turn, where nothing was said of it.
#[must_use]
pub fn bench_fastest() -> Frequency {
    rpm(BENCH_RPM)
}

/// What to set for one tool, and what its material takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// What to set.
    pub to: SetTo,
    /// The speeds that the material takes by what is in print.
    pub takes: SpeedBand,
}

/// What to set.
#[derive(Clone, Debug, PartialEq)]
pub enum SetTo {
    /// Nothing was said of the machine: about this.
    About(Frequency),
    /// Nothing was said of the machine, and the material takes more than a bench machine turns.
    AsFastAsItGoes,
    /// A speed of a machine at hand, in the range or below it.
    On(MachineSpeed),
    /// No machine at hand turns slowly enough; this is the slowest there is.
    NoneSlowEnough(MachineSpeed),
    /// The slowest speed that cuts clean; with the slowest there is, where one is known.
    SlowestThatCutsClean(Option<MachineSpeed>),
    /// The tool is turned by hand.
    ByHand,
}

/// A speed of a machine at hand.
#[derive(Clone, Debug, PartialEq)]
pub struct MachineSpeed {
    /// The machine's name; none where it has none.
    pub machine: Option<String>,
    /// Its speed.
    pub speed: Frequency,
    /// Where it lies for this tool.
    pub reach: Reach,
}

impl From<MachineChoice<'_>> for MachineSpeed {
    fn from(choice: MachineChoice<'_>) -> Self {
        let MachineChoice { machine, speed, reach } = choice;
        Self { machine: machine.name.clone(), speed, reach }
    }
}

impl Setting {
    /// What to set for a tool that is run in a range of speeds: its slow end, or of the machines at hand
    /// what comes nearest.
    ///
    /// # Source
    /// Common practice, no source.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::calc::{machines::Machines, setting::{SetTo, Setting}, speed_choice::SpeedBand};
    /// use holewright_core::units::rpm;
    /// let set = |low, machines| {
    ///     let band = SpeedBand { low: rpm(low), high: rpm(low * 1.5) };
    ///     Setting::of(band, &Machines::read(machines).unwrap())
    /// };
    /// assert_eq!(set(2954.0, "").to, SetTo::About(rpm(3000.0)));
    /// assert_eq!(set(29_000.0, "").to, SetTo::AsFastAsItGoes);
    /// assert_eq!(set(29_000.0, "350, 2000").speed(), Some(rpm(2000.0)));
    /// assert!(matches!(set(100.0, "350, 2000").to, SetTo::NoneSlowEnough(_)));
    /// ```
    #[must_use]
    pub fn of(takes: SpeedBand, machines: &Machines) -> Self {
        let wanted = on_a_dial(takes.low);
        let to = match machines.choose(&takes).map(MachineSpeed::from) {
            Some(held) if held.reach == Reach::TooFast => SetTo::NoneSlowEnough(held),
            Some(held) => SetTo::On(held),
            None if wanted > bench_fastest() => SetTo::AsFastAsItGoes,
            None => SetTo::About(wanted),
        };
        Self { to, takes }
    }

    /// What to set for a reamer: of the machines at hand the speed at or next below the slow end, for a
    /// slower reamer does no harm; the slowest in the range only where none is as slow.
    ///
    /// # Source
    /// Common practice, no source.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::calc::{machines::Machines, setting::Setting, speed_choice::SpeedBand};
    /// use holewright_core::units::rpm;
    /// let band = SpeedBand { low: rpm(760.0), high: rpm(1300.0) };
    /// let set = |machines| Setting::of_reamer(band, &Machines::read(machines).unwrap()).speed();
    /// assert_eq!(set("400, 700, 1200"), Some(rpm(700.0)));
    /// assert_eq!(set("1200, 2000"), Some(rpm(1200.0)));
    /// assert_eq!(set("2000"), None);
    /// ```
    #[must_use]
    pub fn of_reamer(takes: SpeedBand, machines: &Machines) -> Self {
        let slow_end = Self::of(SpeedBand { high: takes.low, ..takes }, machines);
        match slow_end.to {
            SetTo::NoneSlowEnough(_) => Self::of(takes, machines),
            to => Self { to, takes },
        }
    }

    /// What to set for a countersink: the slowest speed that cuts clean stops it chattering, whatever is
    /// in print for it.
    ///
    /// # Source
    /// Common practice, no source.
    #[must_use]
    pub fn of_countersink(takes: SpeedBand, machines: &Machines) -> Self {
        let slowest = machines.slowest().map(|(machine, speed)| MachineSpeed {
            machine: machine.name.clone(),
            speed,
            reach: band_reach(&takes, speed),
        });
        let to = match slowest {
            Some(held) if held.reach == Reach::TooFast => SetTo::NoneSlowEnough(held),
            slowest => SetTo::SlowestThatCutsClean(slowest),
        };
        Self { to, takes }
    }

    /// A tool turned by hand; what the material takes is for a machine.
    #[must_use]
    pub const fn by_hand(takes: SpeedBand) -> Self {
        Self { to: SetTo::ByHand, takes }
    }

    /// The speed to set; none where words stand in its place, or no speed at hand is slow enough.
    #[must_use]
    pub const fn speed(&self) -> Option<Frequency> {
        match &self.to {
            SetTo::About(speed) => Some(*speed),
            SetTo::On(held) | SetTo::SlowestThatCutsClean(Some(held)) => Some(held.speed),
            SetTo::AsFastAsItGoes
            | SetTo::NoneSlowEnough(_)
            | SetTo::SlowestThatCutsClean(None)
            | SetTo::ByHand => None,
        }
    }

    /// The speed of a machine at hand, whether or not it will do.
    #[must_use]
    pub const fn on_machine(&self) -> Option<&MachineSpeed> {
        match &self.to {
            SetTo::On(held)
            | SetTo::NoneSlowEnough(held)
            | SetTo::SlowestThatCutsClean(Some(held)) => Some(held),
            SetTo::About(_)
            | SetTo::AsFastAsItGoes
            | SetTo::SlowestThatCutsClean(None)
            | SetTo::ByHand => None,
        }
    }

    /// Whether a machine at hand can do it.
    #[must_use]
    pub fn reach(&self) -> Reach {
        self.on_machine().map_or(Reach::NotSaid, |held| held.reach)
    }

    /// Whether the speed of a machine at hand falls so little short of the slow end that nothing need be
    /// said of it.
    #[must_use]
    pub fn is_near_enough(&self) -> bool {
        let least = in_rpm(on_a_dial(self.takes.low)) * NEAR_ENOUGH;
        self.on_machine().is_some_and(|held| in_rpm(held.speed) >= least)
    }

    /// The speed to reckon times at: the one to set, or the fastest of a bench machine where it is to run
    /// as fast as it goes; none where none will do or a hand turns the tool.
    #[must_use]
    pub fn turning(&self) -> Option<Frequency> {
        match &self.to {
            SetTo::AsFastAsItGoes => Some(bench_fastest()),
            _ => self.speed(),
        }
    }

    /// The word in JSON.
    #[must_use]
    pub const fn slug(&self) -> &'static str {
        match self.to {
            SetTo::About(_) => "about",
            SetTo::AsFastAsItGoes => "as-fast-as-it-goes",
            SetTo::On(_) => "machine",
            SetTo::NoneSlowEnough(_) => "none-slow-enough",
            SetTo::SlowestThatCutsClean(_) => "slowest-that-cuts-clean",
            SetTo::ByHand => "by-hand",
        }
    }

    /// In words: `500 rev/min on the lathe`, `as fast as the machine goes`.
    #[must_use]
    pub fn words(&self) -> String {
        match &self.to {
            SetTo::About(speed) => format!("about {}", revolutions(*speed)),
            SetTo::AsFastAsItGoes => "as fast as the machine goes".to_owned(),
            SetTo::On(held) => held.words(),
            SetTo::NoneSlowEnough(held) => format!("slower than {}", held.words()),
            SetTo::SlowestThatCutsClean(None) => "the slowest that cuts clean".to_owned(),
            SetTo::SlowestThatCutsClean(Some(held)) => {
                format!("the slowest that cuts clean: start at {}", held.words())
            }
            SetTo::ByHand => "by hand".to_owned(),
        }
    }

    /// What belongs beside the words, small: what the material takes, where the speed set is another.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::calc::{machines::Machines, setting::Setting, speed_choice::SpeedBand};
    /// use holewright_core::units::rpm;
    /// let brass = SpeedBand { low: rpm(28_000.0), high: rpm(40_000.0) };
    /// let set = |machines| Setting::of(brass, &Machines::read(machines).unwrap());
    /// assert_eq!(set("").aside("metal").unwrap(), "the metal would take about 28000 rev/min");
    /// assert_eq!(set("lathe: 900").aside("metal").unwrap(), "its fastest; the metal would take about 28000 rev/min");
    /// assert_eq!(set("29000").aside("metal"), None);
    /// ```
    #[must_use]
    pub fn aside(&self, kind: &str) -> Option<String> {
        let takes = format!("the {kind} would take about {}", revolutions(self.takes.low));
        match (&self.to, self.reach()) {
            (SetTo::AsFastAsItGoes, _) => Some(takes),
            (SetTo::NoneSlowEnough(MachineSpeed { machine: Some(_), .. }), _) => {
                Some(format!("it has none slow enough: {takes}"))
            }
            (SetTo::NoneSlowEnough(_), _) => Some(format!("none at hand is slow enough: {takes}")),
            (SetTo::On(_), Reach::TooSlow) if self.is_near_enough() => None,
            (SetTo::On(_), Reach::TooSlow) => Some(format!("its fastest; {takes}")),
            (SetTo::On(_), Reach::Between) => Some(format!("the next below; {takes}")),
            (SetTo::ByHand, _) => Some("the chuck turned by hand, the machine isolated".to_owned()),
            _ => None,
        }
    }
}

impl MachineSpeed {
    /// `500 rev/min on the lathe`
    #[must_use]
    pub fn words(&self) -> String {
        let speed = format!("{} rev/min", crate::units::print::trimmed(in_rpm(self.speed), 0));
        match &self.machine {
            Some(name) => format!("{speed} on the {name}"),
            None => speed,
        }
    }
}

fn band_reach(band: &SpeedBand, speed: Frequency) -> Reach {
    use super::speed_choice::Verdict;
    match band.verdict(speed) {
        Verdict::Slow => Reach::TooSlow,
        Verdict::Within => Reach::Within,
        Verdict::Fast => Reach::TooFast,
    }
}

/// `1200 rev/min`, as a dial reads it.
fn revolutions(speed: Frequency) -> String {
    format!("{} rev/min", crate::units::print::trimmed(in_rpm(on_a_dial(speed)), 0))
}
