//! Thread geometry, form by form, rounded as each standard prints it.
//!
//! Leaves out engagement ([`super::engagement`]) and limits ([`super::limits`]).

use crate::tables::threads::{Basic, Form, SystemId, Thread};
use crate::units::{Angle, Area, INCH_MM, Length, Pitch, degrees, in_inch, in_mm, inch, mm, print};

/// Whitworth depth of thread, h = 0.640327 p (BS 84).
const WHITWORTH_DEPTH: f64 = 0.640_327;
/// BA depth of thread, h = 0.6 p (BS 93).
const BA_DEPTH: f64 = 0.6;
/// Three quarters of the sharp height: 0.649519 p (ISO 68-1), the 60° engagement basis.
const SIXTY_DEGREE_THREE_QUARTER_HEIGHT: f64 = 0.649_519_052_838_329;
/// Twice five eighths of the sharp height: D − D1 of ISO 68-1 and ASME B1.1.
const SIXTY_DEGREE_INTERNAL: f64 = 1.082_531_754_730_548;
/// Twice 17/24 of the sharp height: d − d3 of ISO 68-1.
const ISO_EXTERNAL: f64 = 1.226_869_322_027_955;
/// The screw's minor below the nut's on Unified threads, an eighth of the sharp height on diameter.
const UNIFIED_SCREW_BELOW_NUT: f64 = 0.108_253_175_473_054_8;
/// Three sixteenths of the sharp height: what the tensile area of Unified threads takes off E/2.
const UNIFIED_TENSILE: f64 = 0.162_379_763_209_582_3;
/// d less this much pitch is the mean of d2 and d3 of ISO 68-1: the tensile area's diameter.
const ISO_TENSILE: f64 = 0.938_194_187_433_142;
/// Cycle depth of thread, 0.5327 p (BS 811).
const CYCLE_DEPTH: f64 = 0.5327;
/// Taper pipe depth of thread, 0.8 p (ASME B1.20.1).
const TAPER_PIPE_DEPTH: f64 = 0.8;
/// D − D1 of the miniature S thread, 0.48 p a side (ISO 1501; from memory, unconfirmed).
const MINIATURE_INTERNAL: f64 = 0.96;
/// D − D1 of the Unified miniature thread, 0.52 p a side (ASME B1.10M).
const UNIFIED_MINIATURE_INTERNAL: f64 = 1.04;
/// D − d3 of the Unified miniature thread, 0.6 p a side (ASME B1.10M).
const UNIFIED_MINIATURE_EXTERNAL: f64 = 1.2;

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
    degrees(match form {
        Form::BritishAssociation => 47.5,
        Form::Whitworth | Form::Pipe => 55.0,
        Form::IsoMetric | Form::Unified | Form::Miniature | Form::Cycle | Form::TaperPipe => 60.0,
    })
}

/// Depth of full thread on one side, unrounded: the basis of an engagement figure.
///
/// # Source
/// 0.6 p BS 93; 0.640327 p BS 84; ¾ H ISO 68-1 and ASME B1.1; 0.5327 p BS 811; 0.8 p ASME B1.20.1.
#[must_use]
pub fn full_depth(form: Form, pitch: Length) -> Length {
    pitch
        * match form {
            Form::BritishAssociation => BA_DEPTH,
            Form::Whitworth | Form::Pipe => WHITWORTH_DEPTH,
            Form::IsoMetric | Form::Unified | Form::Miniature => SIXTY_DEGREE_THREE_QUARTER_HEIGHT,
            Form::Cycle => CYCLE_DEPTH,
            Form::TaperPipe => TAPER_PIPE_DEPTH,
        }
}

/// The engagement basis of a form in words, as pages print it beside a percentage.
#[must_use]
pub const fn engagement_basis(form: Form) -> &'static str {
    match form {
        Form::BritishAssociation => "of full thread depth, 0.6 p (BS 93)",
        Form::Whitworth | Form::Pipe => "of full thread depth, 0.6403 p (BS 84)",
        Form::IsoMetric => "of ¾ H, 0.6495 p (ISO 68-1)",
        Form::Unified => "of ¾ H, 0.6495 p (ASME B1.1)",
        Form::Miniature => "of ¾ H, 0.6495 p",
        Form::Cycle => "of full thread depth, 0.5327 p (BS 811)",
        Form::TaperPipe => "of 0.8 p (ASME B1.20.1)",
    }
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
    match thread.system {
        SystemId::Unm => shape(form, UNIFIED_MINIATURE, major, thread.pitch),
        _ => geometry_of(form, major, thread.pitch),
    }
}

/// The figures of a thread no table holds: any diameter and pitch on a form.
///
/// They are rounded as [`geometry`] rounds them, so that a size of the form comes out as its standard
/// prints it. The miniature form's is the thread of ISO 1501.
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
    shape(form, MINIATURE, major, pitch)
}

/// What a miniature thread takes off the major diameter: for the nut's minor diameter, for the screw's.
struct MiniatureMinors {
    nut: f64,
    screw: f64,
}

const MINIATURE: MiniatureMinors = MiniatureMinors { nut: MINIATURE_INTERNAL, screw: ISO_EXTERNAL };
const UNIFIED_MINIATURE: MiniatureMinors =
    MiniatureMinors { nut: UNIFIED_MINIATURE_INTERNAL, screw: UNIFIED_MINIATURE_EXTERNAL };

fn shape(form: Form, miniature: MiniatureMinors, major: Length, printed: Pitch) -> Geometry {
    let pitch = printed.length();
    let depth = printed_depth(form, pitch);
    let minor_internal = match form {
        Form::Unified => to_ten_thousandth(major - pitch * SIXTY_DEGREE_INTERNAL),
        Form::IsoMetric => major - pitch * SIXTY_DEGREE_INTERNAL,
        Form::Miniature => major - pitch * miniature.nut,
        _ => major - depth * 2.0,
    };
    let minor = match form {
        Form::Unified => minor_internal - pitch * UNIFIED_SCREW_BELOW_NUT,
        Form::IsoMetric => major - pitch * ISO_EXTERNAL,
        Form::Miniature => major - pitch * miniature.screw,
        _ => minor_internal,
    };
    let effective = match form {
        Form::Unified => to_ten_thousandth(major - depth),
        _ => major - depth,
    };
    Geometry {
        pitch,
        threads_per_inch: printed.threads_per_inch(),
        major,
        effective,
        minor,
        minor_internal,
        thread_depth: depth,
        thread_angle: thread_angle(form),
        tensile_area: tensile_area(form, major, pitch, effective, minor),
    }
}

/// Depth of thread as the standard rounds it before it works out the diameters.
fn printed_depth(form: Form, pitch: Length) -> Length {
    let depth = full_depth(form, pitch);
    match form {
        Form::BritishAssociation => mm(print::round(in_mm(depth) / 0.005, 0) * 0.005),
        Form::Whitworth => mm(print::round(in_inch(depth), 4) * INCH_MM),
        Form::Pipe => mm(print::round(in_mm(depth), 3)),
        _ => depth,
    }
}

/// The length to four places of an inch, as ASME B1.1 prints it.
fn to_ten_thousandth(length: Length) -> Length {
    mm(print::round(in_inch(length), 4) * INCH_MM)
}

/// Tensile area: π/4 (d − 0.9382 p)² for metric threads, π (E/2 − 3H/16)² for Unified, else π/4 of the
/// mean of effective and minor. 3H/16 to five places of an inch makes every Unified area of the
/// handbook come out as printed, 6-32 and 5/16-24 too.
fn tensile_area(
    form: Form,
    major: Length,
    pitch: Length,
    effective: Length,
    minor: Length,
) -> Area {
    let diameter = match form {
        Form::IsoMetric | Form::Miniature => major - pitch * ISO_TENSILE,
        Form::Unified => effective - inch(print::round(in_inch(pitch * UNIFIED_TENSILE), 5) * 2.0),
        _ => (effective + minor) / 2.0,
    };
    diameter * diameter * std::f64::consts::FRAC_PI_4
}
