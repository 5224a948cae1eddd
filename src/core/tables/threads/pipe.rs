//! Pipe threads: British parallel (G) and taper (R, Rc, Rp), American taper (NPT), model taper.
//!
//! A taper thread's diameter is the one at the gauge plane. NPT rows hold the effective diameter
//! E1 there, as ASME B1.20.1 prints it.

use super::rows::{fraction, inch_pitch, noted, taper};
use super::sources::PARTS_LIBRARY;
use super::{
    AnySize, Basic, Basis, ClearanceFamily, Finish, Form, FormLimit, HeadFamily, HexagonFamily,
    Meant, Minors, Naming, Rounding, Shape, SizeLimit, System, SystemId, TappingLists, Tensile,
    Thread, whitworth,
};
use crate::tables::source::{Grade, Source};
use crate::units::Printed;

const HAUSTECHNIK: Source =
    Source::published("a pipe fitting supplier's table to DIN EN ISO 228-1");
const EMUGE: Source = Source {
    cite: "a tap maker's wall chart, G threads: major diameter from the printed minor diameter 41.365 mm and the ISO 228-1 depth 1.479 mm",
    grade: Grade::Derived,
};
const WIKIPEDIA_BSP: Source =
    Source::published("an encyclopedia, British Standard Pipe, sizes and gauge lengths");
const NEWNES: Source = Source::published(
    "Newnes Mechanical Engineer's Pocket Book, section 4.1.38, ISO pipe threads, tapered",
);
const YAMAWA_RC: Source = Source::published(
    "a tap maker's catalogue, 2021, p. 720, taper internal pipe threads to JIS B 0203 and ISO 7-1: minor diameter; major diameter as the G thread of that size",
);
const RECALLED_GAUGE_LENGTH: Source = Source::memory("Gauge length of ISO 7-1, recalled");
const HANDBOOK_NPT: Source =
    Source::published("ASME B1.20.1 as printed in Machinery's Handbook 27th ed. p. 1861, table 1a");
const UNIFIED_ALLOYS: Source =
    Source::published("a pipe stockholder's basic dimensions of NPT after ASME B1.20.1");
const PRACTICE: Source =
    Source::common_practice("Model taper pipe sizes as tap and die dealers list them");

const PARALLEL: &str = "Seals on a washer or a face, not on the thread. ISO 7's parallel internal \
    thread Rp has the same basic size and takes a taper R thread.";
const TAPER: &str = "R is the external taper thread, Rc the internal taper and Rp the internal \
    parallel one of the same size. Diameters are those at the gauge plane; taper 1 in 16.";
const OUTSIDE_ISO_228: &str = "Not in ISO 228-1: an older size that tap makers still list. Seals \
    on a washer or a face, not on the thread.";
const OUTSIDE_ISO_7: &str = "Not in ISO 7-1: an older size that tap makers still list. Diameters \
    are those at the gauge plane; taper 1 in 16.";
const NPT_NOTE: &str = "Diameters are those at the gauge plane; taper 1 in 16 on diameter. Not \
    interchangeable with BSPT, which has another thread angle and mostly another pitch.";
const MODEL: &str = "No standard: nominal size is the major diameter at the gauge plane, thread \
    angle 60°, taper 1 in 16 on diameter. Try the mating part before cutting the second one.";

const fn g(
    size: &'static str,
    designation: &'static str,
    major: f64,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    let row = inch_pitch(
        SystemId::Bspp,
        size,
        designation,
        Printed::Mm(major),
        threads_per_inch,
        sources,
    );
    noted(row, PARALLEL)
}

const fn outside_standard(
    size: &'static str,
    designation: &'static str,
    major: f64,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    noted(g(size, designation, major, threads_per_inch, sources), OUTSIDE_ISO_228)
}

const fn r(
    size: &'static str,
    designation: &'static str,
    major: f64,
    threads_per_inch: f64,
    gauge_length: f64,
    sources: &'static [Source],
) -> Thread {
    let basic = Printed::Mm(major);
    let row = inch_pitch(SystemId::Bspt, size, designation, basic, threads_per_inch, sources);
    noted(taper(row, Some(Printed::Mm(gauge_length))), TAPER)
}

const fn no_longer_standard(
    size: &'static str,
    designation: &'static str,
    major: f64,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    let basic = Printed::Mm(major);
    let row = inch_pitch(SystemId::Bspt, size, designation, basic, threads_per_inch, sources);
    noted(taper(row, None), OUTSIDE_ISO_7)
}

const fn npt(
    size: &'static str,
    designation: &'static str,
    effective_at_gauge: f64,
    threads_per_inch: f64,
    gauge_length: f64,
    sources: &'static [Source],
) -> Thread {
    let effective = Printed::Inch(effective_at_gauge);
    let row = inch_pitch(SystemId::Npt, size, designation, effective, threads_per_inch, sources);
    let row = Thread { basic: Basic::EffectiveAtGauge(effective), ..row };
    noted(taper(row, Some(Printed::Inch(gauge_length))), NPT_NOTE)
}

const fn model(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    threads_per_inch: f64,
) -> Thread {
    let id = SystemId::ModelTaperPipe;
    let row = inch_pitch(id, size, designation, diameter, threads_per_inch, &[PRACTICE]);
    noted(taper(row, None), MODEL)
}

/// Whitworth's form on pipe: depth to 0.001 mm (ISO 228).
pub(super) const FORM: Shape = Shape {
    angle_degrees: 55.0,
    depth: whitworth::DEPTH,
    rounding: Rounding::DepthToPlacesMm(3),
    basis: Basis::published("of full thread depth, 0.6403 p (BS 84)"),
    on_five_eighths_h: false,
    minors: Minors::Alike,
    tensile: Tensile::Mean,
    crest: Finish::Round,
    root: Finish::Round,
    largest_hole: FormLimit::NotHeld,
    forming_taps: false,
    cut_as: Form::Whitworth,
    any_size: AnySize::Word("pipe", "Whitworth pipe, 55°"),
};

/// ASME B1.20.1: depth of thread 0.8 p.
pub(super) const TAPER_FORM: Shape = Shape {
    angle_degrees: 60.0,
    depth: 0.8,
    rounding: Rounding::Nothing,
    basis: Basis::published("of 0.8 p (ASME B1.20.1)"),
    on_five_eighths_h: false,
    minors: Minors::Alike,
    tensile: Tensile::Mean,
    crest: Finish::Flat,
    root: Finish::Flat,
    largest_hole: FormLimit::NotHeld,
    forming_taps: false,
    cut_as: Form::TaperPipe,
    any_size: AnySize::Never,
};

pub(super) static BSPP: System = System {
    id: SystemId::Bspp,
    slug: "bspp",
    name: "British Standard pipe, parallel",
    mark: "G",
    spellings: &["bsp", "british standard pipe", "gas", "pipe", "parallel"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "ISO 228-1:2000",
    form: Form::Pipe,
    largest_hole: SizeLimit::Iso228,
    lists: TappingLists::Pipe,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::NotHeld,
    used_for: "Pipe fittings, gauges and valves that seal on a washer.",
    threads: &BSPP_ROWS,
};

pub(super) static BSPT: System = System {
    id: SystemId::Bspt,
    slug: "bspt",
    name: "British Standard pipe, taper",
    mark: "R",
    spellings: &["bsp", "british standard pipe", "gas", "rc", "rp", "pipe", "taper", "taper pipe"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "ISO 7-1:1994",
    form: Form::Pipe,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::Pipe,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::NotHeld,
    used_for: "Pipe joints that seal on the thread, with tape or jointing.",
    threads: &BSPT_ROWS,
};

pub(super) static NPT: System = System {
    id: SystemId::Npt,
    slug: "npt",
    name: "American taper pipe",
    mark: "NPT",
    spellings: &["pipe", "taper", "taper pipe"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "ASME B1.20.1",
    form: Form::TaperPipe,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::Pipe,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::NotHeld,
    used_for: "American fittings, gauges and valves that seal on the thread.",
    threads: &NPT_ROWS,
};

pub(super) static MODEL_TAPER_PIPE: System = System {
    id: SystemId::ModelTaperPipe,
    slug: "model-taper-pipe",
    name: "Model taper pipe",
    mark: "taper pipe",
    spellings: &["mtp", "pipe", "taper", "model pipe", "model taper"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "No standard: common practice",
    form: Form::TaperPipe,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::NotHeld,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::NotHeld,
    used_for: "Small steam fittings in models, where a full-size pipe thread would be too large.",
    threads: &MODEL_ROWS,
};

#[rustfmt::skip]
static BSPP_ROWS: [Thread; 15] = [
    g("1-16", "G 1/16", 7.723, 28.0, &[PARTS_LIBRARY]),
    g("1-8", "G 1/8", 9.728, 28.0, &[HAUSTECHNIK]),
    g("1-4", "G 1/4", 13.157, 19.0, &[HAUSTECHNIK]),
    g("3-8", "G 3/8", 16.662, 19.0, &[HAUSTECHNIK]),
    g("1-2", "G 1/2", 20.955, 14.0, &[PARTS_LIBRARY]),
    g("5-8", "G 5/8", 22.911, 14.0, &[HAUSTECHNIK]),
    g("3-4", "G 3/4", 26.441, 14.0, &[PARTS_LIBRARY]),
    g("7-8", "G 7/8", 30.201, 14.0, &[PARTS_LIBRARY]),
    g("1", "G 1", 33.249, 11.0, &[HAUSTECHNIK]),
    g("1-1-8", "G 1 1/8", 37.897, 11.0, &[HAUSTECHNIK]),
    g("1-1-4", "G 1 1/4", 41.910, 11.0, &[HAUSTECHNIK]),
    outside_standard("1-3-8", "G 1 3/8", 44.323, 11.0, &[EMUGE]),
    g("1-1-2", "G 1 1/2", 47.803, 11.0, &[PARTS_LIBRARY]),
    g("1-3-4", "G 1 3/4", 53.746, 11.0, &[HAUSTECHNIK]),
    g("2", "G 2", 59.614, 11.0, &[HAUSTECHNIK]),
];

#[rustfmt::skip]
static BSPT_ROWS: [Thread; 14] = [
    r("1-16", "R 1/16", 7.723, 28.0, 4.0, &[WIKIPEDIA_BSP]),
    r("1-8", "R 1/8", 9.728, 28.0, 4.0, &[NEWNES, RECALLED_GAUGE_LENGTH]),
    r("1-4", "R 1/4", 13.157, 19.0, 6.0, &[NEWNES, WIKIPEDIA_BSP]),
    r("3-8", "R 3/8", 16.662, 19.0, 6.4, &[NEWNES, WIKIPEDIA_BSP]),
    r("1-2", "R 1/2", 20.955, 14.0, 8.2, &[WIKIPEDIA_BSP]),
    no_longer_standard("5-8", "R 5/8", 22.911, 14.0, &[YAMAWA_RC]),
    r("3-4", "R 3/4", 26.441, 14.0, 9.5, &[PARTS_LIBRARY, RECALLED_GAUGE_LENGTH]),
    no_longer_standard("7-8", "R 7/8", 30.201, 14.0, &[YAMAWA_RC]),
    r("1", "R 1", 33.249, 11.0, 10.4, &[WIKIPEDIA_BSP]),
    no_longer_standard("1-1-8", "R 1 1/8", 37.897, 11.0, &[YAMAWA_RC]),
    r("1-1-4", "R 1 1/4", 41.910, 11.0, 12.7, &[WIKIPEDIA_BSP]),
    r("1-1-2", "R 1 1/2", 47.803, 11.0, 12.7, &[WIKIPEDIA_BSP]),
    no_longer_standard("1-3-4", "R 1 3/4", 53.746, 11.0, &[YAMAWA_RC]),
    r("2", "R 2", 59.614, 11.0, 15.9, &[WIKIPEDIA_BSP]),
];

#[rustfmt::skip]
static NPT_ROWS: [Thread; 10] = [
    npt("1-16", "1/16-27 NPT", 0.28118, 27.0, 0.16, &[HANDBOOK_NPT]),
    npt("1-8", "1/8-27 NPT", 0.37360, 27.0, 0.1615, &[UNIFIED_ALLOYS]),
    npt("1-4", "1/4-18 NPT", 0.49163, 18.0, 0.2278, &[UNIFIED_ALLOYS]),
    npt("3-8", "3/8-18 NPT", 0.62701, 18.0, 0.24, &[UNIFIED_ALLOYS]),
    npt("1-2", "1/2-14 NPT", 0.77843, 14.0, 0.32, &[HANDBOOK_NPT]),
    npt("3-4", "3/4-14 NPT", 0.98887, 14.0, 0.339, &[UNIFIED_ALLOYS]),
    npt("1", "1-11.5 NPT", 1.23863, 11.5, 0.4, &[UNIFIED_ALLOYS]),
    npt("1-1-4", "1 1/4-11.5 NPT", 1.58338, 11.5, 0.42, &[UNIFIED_ALLOYS]),
    npt("1-1-2", "1 1/2-11.5 NPT", 1.82234, 11.5, 0.42, &[UNIFIED_ALLOYS]),
    npt("2", "2-11.5 NPT", 2.29627, 11.5, 0.436, &[UNIFIED_ALLOYS]),
];

#[rustfmt::skip]
static MODEL_ROWS: [Thread; 4] = [
    model("3-16x40", "3/16 in × 40 taper pipe", fraction(3, 16), 40.0),
    model("1-4x40", "1/4 in × 40 taper pipe", fraction(1, 4), 40.0),
    model("5-16x32", "5/16 in × 32 taper pipe", fraction(5, 16), 32.0),
    model("3-8x32", "3/8 in × 32 taper pipe", fraction(3, 8), 32.0),
];
