//! Löwenherz, the metric thread of older German instruments. An address is the diameter: `3.5`.

use super::rows::metric_pitch;
use super::{
    AnySize, Basis, ClearanceFamily, Finish, Form, FormLimit, HeadFamily, HexagonFamily, Meant,
    Minors, Naming, Rounding, Shape, SizeLimit, System, SystemId, TappingLists, Tensile, Thread,
};
use crate::tables::source::Source;
use crate::units::Printed;

const RECALLED: Source = Source::memory("Löwenherz diameters and pitches, recalled");

const fn l(size: &'static str, designation: &'static str, major: f64, pitch: f64) -> Thread {
    let major = Printed::Mm(major);
    metric_pitch(SystemId::Loewenherz, size, designation, major, pitch, &[RECALLED])
}

/// Sharp height one pitch, an eighth of it off at crest and root.
pub(super) const FORM: Shape = Shape {
    angle_degrees: 53.0 + 8.0 / 60.0,
    depth: 0.75,
    rounding: Rounding::Nothing,
    basis: Basis::memory("of full thread depth, 0.75 p"),
    on_five_eighths_h: false,
    minors: Minors::Alike,
    tensile: Tensile::Mean,
    crest: Finish::Flat,
    root: Finish::Flat,
    largest_hole: FormLimit::NotHeld,
    forming_taps: false,
    cut_as: Form::Loewenherz,
    any_size: AnySize::Word("loewenherz", "Löwenherz, 53°08′"),
};

pub(super) static SYSTEM: System = System {
    id: SystemId::Loewenherz,
    slug: "loewenherz",
    name: "Löwenherz",
    mark: "Löwenherz",
    spellings: &["lowenherz"],
    naming: Naming::Metric,
    meant: Meant::ByName,
    standard: "No standard today; once the thread of the Physikalisch-Technische Reichsanstalt",
    form: Form::Loewenherz,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::NotHeld,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::Metric,
    hexagons: HexagonFamily::NotHeld,
    used_for: "Older German instruments and optical work.",
    threads: &ROWS,
};

#[rustfmt::skip]
static ROWS: [Thread; 14] = [
    l("1", "1 Löwenherz", 1.0, 0.25),
    l("1.2", "1.2 Löwenherz", 1.2, 0.25),
    l("1.4", "1.4 Löwenherz", 1.4, 0.3),
    l("1.7", "1.7 Löwenherz", 1.7, 0.35),
    l("2", "2 Löwenherz", 2.0, 0.4),
    l("2.3", "2.3 Löwenherz", 2.3, 0.4),
    l("2.6", "2.6 Löwenherz", 2.6, 0.45),
    l("3", "3 Löwenherz", 3.0, 0.5),
    l("3.5", "3.5 Löwenherz", 3.5, 0.6),
    l("4", "4 Löwenherz", 4.0, 0.7),
    l("4.5", "4.5 Löwenherz", 4.5, 0.75),
    l("5", "5 Löwenherz", 5.0, 0.8),
    l("5.5", "5.5 Löwenherz", 5.5, 0.9),
    l("6", "6 Löwenherz", 6.0, 1.0),
];
