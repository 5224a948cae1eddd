//! Names of metric and miniature sizes.

use holewright_core::units::{Pitch, Printed};

use super::Size;

/// A metric size, `M6x1`, or coarse by its diameter alone, `M6`.
pub(crate) fn metric(name: &str) -> Size {
    let name = name.strip_prefix('M').unwrap_or_else(|| panic!("{name:?} is no metric size"));
    let (diameter, pitch) = name.split_once('x').unwrap_or((name, ""));
    let major: f64 = diameter.parse().unwrap_or_else(|_| panic!("{name:?} is no metric size"));
    let coarse = coarse_pitch(major);
    let pitch = match pitch {
        "" => coarse,
        pitch => Some(pitch.parse().unwrap_or_else(|_| panic!("{name:?} is no metric size"))),
    };
    let (system, slug) = match pitch {
        Some(fine) if pitch != coarse => ("metric-fine", format!("m{major}x{fine}")),
        _ => ("metric", format!("m{major}")),
    };
    Size { system, slug, major: Some(Printed::Mm(major)), pitch: pitch.map(Pitch::Mm) }
}

/// The coarse pitches of ISO 261, and of the old M1.7, M2.3 and M2.6.
fn coarse_pitch(major: f64) -> Option<f64> {
    #[rustfmt::skip]
    const COARSE: [(f64, f64); 44] = [
        (1.0, 0.25), (1.1, 0.25), (1.2, 0.25), (1.4, 0.3), (1.6, 0.35), (1.7, 0.35), (1.8, 0.35),
        (2.0, 0.4), (2.2, 0.45), (2.3, 0.4), (2.5, 0.45), (2.6, 0.45), (3.0, 0.5), (3.5, 0.6),
        (4.0, 0.7), (4.5, 0.75), (5.0, 0.8), (6.0, 1.0), (7.0, 1.0), (8.0, 1.25), (9.0, 1.25),
        (10.0, 1.5), (11.0, 1.5), (12.0, 1.75), (14.0, 2.0), (16.0, 2.0), (18.0, 2.5), (20.0, 2.5),
        (22.0, 2.5), (24.0, 3.0), (27.0, 3.0), (30.0, 3.5), (33.0, 3.5), (36.0, 4.0), (39.0, 4.0),
        (42.0, 4.5), (45.0, 4.5), (48.0, 5.0), (52.0, 5.0), (56.0, 5.5), (60.0, 5.5), (64.0, 6.0),
        (68.0, 6.0), (72.0, 6.0),
    ];
    COARSE.iter().find(|(diameter, _)| (diameter - major).abs() < 1e-9).map(|(_, pitch)| *pitch)
}

/// A miniature size, `S0.8`.
pub(crate) fn miniature(name: &str) -> Size {
    let slug = name.to_lowercase();
    Size { system: "miniature", slug, major: None, pitch: None }
}
