//! The areas of thread that must shear before a screw pulls out of its hole.
//!
//! Leaves out bending of the thread, a nut that spreads, and shock.

use crate::calc::screw_limits::{LeastPair, least_pair};
use crate::calc::thread_form::Geometry;
use crate::tables::source::Source;
use crate::tables::threads::Thread;
use crate::units::{Angle, Area, Force, Length, Stress};

/// Where the formulas were read.
pub const SOURCE: Source = Source::published(
    "Machinery's Handbook, tensile and shear areas, in the form of FED-STD-H28; written for 60° and taken here with the tangent of half the thread angle",
);

/// A thread with its hole, as far as its strip areas turn on them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StripSizes {
    /// The pitch.
    pub pitch: Length,
    /// The included angle.
    pub thread_angle: Angle,
    /// The hole, which is the minor diameter of the nut.
    pub hole: Length,
    /// The screw's and the nut's other diameters.
    pub pair: LeastPair,
}

impl StripSizes {
    /// A thread in a hole: where the drill is smaller than the nut's minor diameter the tap makes that.
    #[must_use]
    pub fn of(thread: &Thread, geometry: &Geometry, hole: Length) -> Self {
        let least = geometry.minor_internal;
        Self {
            pitch: geometry.pitch,
            thread_angle: geometry.thread_angle,
            hole: if hole < least { least } else { hole },
            pair: least_pair(thread, geometry),
        }
    }

    /// The screw's threads that shear, of a length of engagement: As = π n L Kn (1/2n + tan a (Es − Kn)),
    /// n the threads in a unit of length, a half the thread angle, Kn the hole, Es the screw's effective
    /// diameter. Nothing where the hole leaves no thread.
    ///
    /// # Source
    /// [`SOURCE`].
    ///
    /// # Examples
    /// M10, 10 mm engaged, at its largest hole, 8.676 mm: 155.80 mm² in print.
    /// ```
    /// use holewright_core::calc::{strip::StripSizes, thread_form::geometry};
    /// use holewright_core::{tables::threads::find, units::{in_mm2, mm, print}};
    /// let ten = find("metric", "m10").unwrap();
    /// let sizes = StripSizes::of(ten, &geometry(ten), mm(8.676));
    /// assert_eq!(print::fixed(in_mm2(sizes.screw_area(mm(10.0))), 2), "155.80");
    /// assert_eq!(print::fixed(in_mm2(sizes.nut_area(mm(10.0))), 2), "214.77");
    /// ```
    #[must_use]
    pub fn screw_area(&self, engaged: Length) -> Area {
        let wide = self.width(self.pair.screw_effective - self.hole);
        engaged * self.hole * (std::f64::consts::PI * (wide / self.pitch).value)
    }

    /// The nut's threads that shear: An = π n L Ds (1/2n + tan a (Ds − En)), Ds the screw's major diameter,
    /// En the nut's effective one. The hole alters nothing, while it leaves a thread.
    ///
    /// # Source
    /// [`SOURCE`].
    #[must_use]
    pub fn nut_area(&self, engaged: Length) -> Area {
        let major = self.pair.screw_major;
        let wide = self.width(major - self.pair.nut_effective);
        let leaves_thread = if self.hole < major { 1.0 } else { 0.0 };
        engaged * major * (std::f64::consts::PI * leaves_thread * (wide / self.pitch).value)
    }

    /// How wide a thread is where it shears: half a pitch and what the flanks add on both sides.
    fn width(&self, above: Length) -> Length {
        let wide = self.pitch / 2.0 + above * libm::tan(self.thread_angle.value / 2.0);
        if wide > Length::default() { wide } else { Length::default() }
    }
}

/// The force that a stress makes of an area.
///
/// # Examples
/// 1200 N/mm² on 58 mm² is 69 600 N (a handbook of bolted joints).
/// ```
/// use holewright_core::{calc::strip::load, units::{in_newtons, mm, newtons_per_mm2}};
/// let area = mm(58.0) * mm(1.0);
/// assert_eq!(in_newtons(load(area, newtons_per_mm2(1200.0))).round(), 69_600.0);
/// ```
#[must_use]
pub fn load(area: Area, stress: Stress) -> Force {
    area * stress
}

/// The length of engagement at which threads that shear at this stress hold a load, by their area on a
/// length.
#[must_use]
pub fn length_for(load: Force, shear: Stress, area: Area, on: Length) -> Length {
    on * (load / (area * shear)).value
}
