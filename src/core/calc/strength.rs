//! What gives way first where a screw is pulled: the screw, its thread, or the thread in the hole.
//!
//! Reckoned for a pull along the screw, slowly, once. Leaves out tightening, shock, shaking, heat, and
//! everything under steam or pressure, which goes by its code.

use crate::calc::strip::{StripSizes, length_for, load};
use crate::tables::screw_metals::STEEL_PART;
use crate::units::{Area, Force, Length, Stress, in_mm2, mm, print};

/// The parts of a joint, each by what it bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// Thread and hole.
    pub sizes: StripSizes,
    /// Tensile area of the screw.
    pub tensile_area: Area,
    /// Tensile strength of the screw.
    pub screw: Stress,
    /// What the tapped metal shears at.
    pub tapped_shear: Stress,
}

/// What can give way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Member {
    /// The screw breaks.
    Screw,
    /// The screw's thread strips.
    ScrewThread,
    /// The thread in the hole strips.
    TappedThread,
}

impl Member {
    /// The word used in JSON.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Screw => "screw",
            Self::ScrewThread => "screw-thread",
            Self::TappedThread => "tapped-thread",
        }
    }

    /// What happens.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Screw => "the screw breaks first",
            Self::ScrewThread => "the screw’s thread strips first",
            Self::TappedThread => "the thread in the hole strips first",
        }
    }
}

/// Members within this of each other are about even. Common practice, no source.
const EVEN: f64 = 1.2;

/// What each member bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loads {
    /// The screw, before it breaks.
    pub screw: Force,
    /// Its thread, before it strips.
    pub screw_thread: Force,
    /// The thread in the hole, before it strips.
    pub tapped_thread: Force,
}

impl Loads {
    /// What gives way first; of two that bear the same, the screw, whose breaking is seen.
    #[must_use]
    pub fn weakest(&self) -> Member {
        if self.screw <= self.screw_thread && self.screw <= self.tapped_thread {
            Member::Screw
        } else if self.screw_thread <= self.tapped_thread {
            Member::ScrewThread
        } else {
            Member::TappedThread
        }
    }

    /// Whether another member bears less than a fifth more than the weakest: which gives way first is then
    /// open, since handbooks take the shear of one metal for half or for six tenths of its strength.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::{calc::strength::Loads, units::newtons};
    /// let loads = |screw, tapped| Loads {
    ///     screw: newtons(screw),
    ///     screw_thread: newtons(9000.0),
    ///     tapped_thread: newtons(tapped),
    /// };
    /// assert!(loads(1451.0, 1528.0).is_about_even());
    /// assert!(!loads(1451.0, 1800.0).is_about_even());
    /// ```
    #[must_use]
    pub fn is_about_even(&self) -> bool {
        let near = self.least() * EVEN;
        let all = [self.screw, self.screw_thread, self.tapped_thread];
        all.into_iter().filter(|load| *load < near).count() > 1
    }

    /// What gives way first, in words: `about even: the screw breaks first, if only just`.
    #[must_use]
    pub fn in_words(&self) -> String {
        let words = self.weakest().words();
        if self.is_about_even() {
            format!("about even: {words}, if only just")
        } else {
            words.to_owned()
        }
    }

    /// What the joint bears: no more than its weakest member.
    #[must_use]
    pub fn least(&self) -> Force {
        match self.weakest() {
            Member::Screw => self.screw,
            Member::ScrewThread => self.screw_thread,
            Member::TappedThread => self.tapped_thread,
        }
    }
}

/// What a screw of a class bears without stretching for good.
///
/// # Source
/// ISO 898-1: the tensile area, to the three figures it is printed with, by the proof stress.
///
/// # Examples
/// M8 of class 8.8: 21 200 N in print.
/// ```
/// use holewright_core::calc::{strength::proof_load, thread_form::geometry};
/// use holewright_core::{tables::threads::find, units::{in_newtons, newtons_per_mm2, print}};
/// let area = geometry(find("metric", "m8").unwrap()).tensile_area;
/// let load = proof_load(area, newtons_per_mm2(580.0));
/// assert_eq!(print::significant(in_newtons(load), 3), 21_200.0);
/// ```
#[must_use]
pub fn proof_load(tensile_area: Area, proof: Stress) -> Force {
    let area = in_mm2(tensile_area);
    let places = if area < 10.0 {
        2
    } else if area < 100.0 {
        1
    } else {
        0
    };
    load(mm(print::round(area, places)) * mm(1.0), proof)
}

impl Joint {
    /// What each member bears with so much thread engaged.
    ///
    /// # Examples
    /// A steel screw in aluminium pulls its thread out; with as strong a nut, one diameter long, it breaks.
    /// ```
    /// use holewright_core::calc::{strength::{Joint, Member}, strip::StripSizes, thread_form::geometry};
    /// use holewright_core::{tables::threads::find, units::{mm, newtons_per_mm2}};
    /// let six = find("metric", "m6").unwrap();
    /// let figures = geometry(six);
    /// let sizes = StripSizes::of(six, &figures, mm(5.0));
    /// let joint = |shear: f64| Joint {
    ///     sizes,
    ///     tensile_area: figures.tensile_area,
    ///     screw: newtons_per_mm2(800.0),
    ///     tapped_shear: newtons_per_mm2(shear),
    /// };
    /// assert_eq!(joint(90.0).loads(mm(6.0)).weakest(), Member::TappedThread);
    /// assert_eq!(joint(480.0).loads(mm(6.0)).weakest(), Member::Screw);
    /// ```
    #[must_use]
    pub fn loads(&self, engaged: Length) -> Loads {
        Loads {
            screw: load(self.tensile_area, self.screw),
            screw_thread: load(self.sizes.screw_area(engaged), self.screw * STEEL_PART),
            tapped_thread: load(self.sizes.nut_area(engaged), self.tapped_shear),
        }
    }

    /// The length of engagement at which the screw breaks before a thread strips; none where the hole
    /// leaves no thread.
    ///
    /// # Source
    /// [`crate::calc::strip::SOURCE`]; the screw's thread by six tenths of its tensile strength, common
    /// practice, where the handbook takes one half.
    #[must_use]
    pub fn holding_length(&self) -> Option<Length> {
        let on = self.sizes.pitch;
        let breaks = load(self.tensile_area, self.screw);
        let [by_screw, by_hole] = [
            length_for(breaks, self.screw * STEEL_PART, self.sizes.screw_area(on), on),
            length_for(breaks, self.tapped_shear, self.sizes.nut_area(on), on),
        ];
        let longer = if by_screw > by_hole { by_screw } else { by_hole };
        longer.value.is_finite().then_some(longer)
    }
}
