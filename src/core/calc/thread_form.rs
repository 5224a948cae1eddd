//! Thread geometry, form by form, rounded as each standard prints it.
//!
//! Leaves out engagement ([`super::engagement`]) and limits ([`super::limits`]).

use crate::tables::threads::{Basic, Basis, Form, Minors, Rounding, Shape, Tensile, Thread};
use crate::units::{Angle, Area, INCH_MM, Length, Pitch, degrees, in_inch, in_mm, inch, mm, print};

/// The figures of one thread that follow from its row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Geometry {
    /// Axial distance from thread to thread.
    pub pitch: Length,
    /// Threads in one inch.
    pub threads_per_inch: f64,
    /// Basic major diameter.
    pub major: Length,
    /// Basic effective (pitch) diameter.
    pub effective: Length,
    /// Basic minor diameter of the screw.
    pub minor: Length,
    /// Basic minor diameter of the nut.
    pub minor_internal: Length,
    /// Depth of full thread, one side, as the standard rounds it.
    pub thread_depth: Length,
    /// Included angle.
    pub thread_angle: Angle,
    /// Tensile area of the screw.
    pub tensile_area: Area,
}

/// The included thread angle of a form.
///
/// # Source
/// BS 93, BS 84, ISO 68-1, ASME B1.1, BS 811, ASME B1.20.1.
#[must_use]
pub fn thread_angle(form: Form) -> Angle {
    degrees(form.shape().angle_degrees)
}

/// Depth of full thread on one side, unrounded: the basis of an engagement figure.
///
/// # Source
/// 0.6 p BS 93; 0.640327 p BS 84; ¾ H ISO 68-1 and ASME B1.1; 0.5327 p BS 811; 0.8 p ASME B1.20.1.
#[must_use]
pub fn full_depth(form: Form, pitch: Length) -> Length {
    pitch * form.shape().depth
}

/// The engagement basis of a form, as pages print it beside a percentage.
#[must_use]
pub const fn engagement_basis(form: Form) -> Basis {
    form.shape().basis
}

/// The engagement basis of a thread: it says where diameter and pitch are known from memory alone.
#[must_use]
pub fn engagement_basis_of(thread: &Thread) -> Basis {
    Basis { size: thread.grade(), ..engagement_basis(thread.form()) }
}

/// The computed figures of a thread, rounded as its standard prints them.
///
/// # Source
/// BA: depth to the nearest 0.005 mm (BS 93). Whitworth inch sizes: depth to four places of an inch
/// (BS 84). Pipe: depth to 0.001 mm (ISO 228). Unified: effective and nut's minor to four places of an
/// inch, and the screw's minor H/8 below the rounded nut's, which together reproduce the tables of
/// Machinery's Handbook 31st ed. pp. 1978 to 1983. Metric and miniature threads are not rounded here.
/// The miniature form has two nuts: 0.48 p a side (ISO 1501) and 0.52 p (ASME B1.10M, all fourteen
/// sizes of table 5 in Machinery's Handbook 31st ed. p. 1998).
///
/// # Examples
/// BS 93, 5 BA: effective 2.845, minor 2.49, depth 0.355 mm.
/// ```
/// use holewright_core::{calc::thread_form::geometry, tables::threads::find, units::{in_mm, print::round}};
/// let five = geometry(find("ba", "5").unwrap());
/// assert_eq!(round(in_mm(five.effective), 3), 2.845);
/// assert_eq!(round(in_mm(five.minor), 3), 2.49);
/// ```
#[must_use]
pub fn geometry(thread: &Thread) -> Geometry {
    let form = thread.form();
    let major = match thread.basic {
        Basic::Major(major) => major.length(),
        Basic::EffectiveAtGauge(effective) => {
            effective.length() + printed_depth(form, thread.pitch.length())
        }
    };
    geometry_of(form, major, thread.pitch)
}

/// The figures of a thread no table holds: any diameter and pitch on a form.
///
/// They are rounded as [`geometry`] rounds them, so that a size of the form comes out as its standard
/// prints it.
///
/// # Units
/// `major` is the basic major diameter.
///
/// # Source
/// As [`geometry`].
///
/// # Examples
/// 19/64 in, 36 threads an inch, on the Unified form: effective 0.2789 in, least minor diameter of the
/// nut 0.2668 in (the worked example of Machinery's Handbook 31st ed. p. 2022, table 6).
/// ```
/// use holewright_core::{calc::thread_form::geometry_of, tables::threads::Form, units::{Pitch, inch, print}};
/// let special = geometry_of(Form::Unified, inch(0.2969), Pitch::PerInch(36.0));
/// assert_eq!(print::inch(special.effective, 4), "0.2789 in");
/// assert_eq!(print::inch(special.minor_internal, 4), "0.2668 in");
/// ```
#[must_use]
pub fn geometry_of(form: Form, major: Length, pitch: Pitch) -> Geometry {
    let shape = form.shape();
    let length = pitch.length();
    let depth = printed_depth(form, length);
    let (minor_internal, minor) = match shape.minors {
        Minors::Alike => (major - depth * 2.0, major - depth * 2.0),
        Minors::Apart { nut, screw } => {
            (printed_diameter(shape, major - length * nut), major - length * screw)
        }
        Minors::ScrewBelowNut { nut, below } => {
            let nut = printed_diameter(shape, major - length * nut);
            (nut, nut - length * below)
        }
    };
    let effective = printed_diameter(shape, major - depth);
    Geometry {
        pitch: length,
        threads_per_inch: pitch.threads_per_inch(),
        major,
        effective,
        minor,
        minor_internal,
        thread_depth: depth,
        thread_angle: thread_angle(form),
        tensile_area: tensile_area(shape.tensile, major, effective, minor, length),
    }
}

/// Depth of thread as the standard rounds it before it works out the diameters.
fn printed_depth(form: Form, pitch: Length) -> Length {
    let depth = full_depth(form, pitch);
    match form.shape().rounding {
        Rounding::DepthToStepMm(step) => mm(print::round(in_mm(depth) / step, 0) * step),
        Rounding::DepthToPlacesMm(places) => mm(print::round(in_mm(depth), places)),
        Rounding::DepthToPlacesInch(places) => to_places_inch(depth, places),
        Rounding::Nothing | Rounding::DiametersToPlacesInch(_) => depth,
    }
}

/// The effective diameter and the nut's minor diameter as the standard rounds them.
fn printed_diameter(shape: &Shape, diameter: Length) -> Length {
    match shape.rounding {
        Rounding::DiametersToPlacesInch(places) => to_places_inch(diameter, places),
        Rounding::Nothing
        | Rounding::DepthToStepMm(_)
        | Rounding::DepthToPlacesMm(_)
        | Rounding::DepthToPlacesInch(_) => diameter,
    }
}

fn to_places_inch(length: Length, places: u8) -> Length {
    mm(print::round(in_inch(length), places) * INCH_MM)
}

/// Tensile area: π/4 (d − 0.9382 p)² for metric threads, π (E/2 − 3H/16)² for Unified, else π/4 of the
/// mean of effective and minor. 3H/16 to five places of an inch makes every Unified area of the
/// handbook come out as printed, 6-32 and 5/16-24 too.
fn tensile_area(
    tensile: Tensile,
    major: Length,
    effective: Length,
    minor: Length,
    pitch: Length,
) -> Area {
    let diameter = match tensile {
        Tensile::BelowMajor(pitches) => major - pitch * pitches,
        Tensile::BelowEffective(pitches) => {
            effective - inch(print::round(in_inch(pitch * pitches), 5) * 2.0)
        }
        Tensile::Mean => (effective + minor) / 2.0,
    };
    diameter * diameter * std::f64::consts::FRAC_PI_4
}
