//! The Whitworth inch threads: coarse (BSW), fine (BSF) and the brass thread of 26 tpi (BSB).
//!
//! The Model Engineer sizes of the same form are in [`super::model_engineer`].

use super::rows::{fraction, inch_pitch, mixed, whole};
use super::sources::{CLUB, PARTS_LIBRARY};
use super::{
    AnySize, Basis, ClearanceFamily, Finish, Form, FormLimit, HeadFamily, HexagonFamily, Meant,
    Minors, Naming, Rounding, Shape, SizeLimit, System, SystemId, TappingLists, Tensile, Thread,
};
use crate::tables::source::Source;
use crate::units::Printed;

const UNIK: Source = Source::published("a gauge maker's range to BS 84:2007");
const TR: Source =
    Source::published("a fastener maker's table of thread geometry, British Standard Whitworth");
const SHEARTAK: Source = Source::published(
    "BS 84 and BS 1157, as reprinted by a tool maker, British Standard Whitworth",
);
const CHART: Source = Source::published("Threading Tables, chart 1, Whitworth threads");
const WHITWORTH_1858: Source =
    Source::published("Miscellaneous Papers on Mechanical Subjects, 1858, table of pitches");
const WIKIPEDIA_BSF: Source =
    Source::published("an encyclopedia, British Standard Fine, table of sizes");
const DIRAC: Source =
    Source::published("an encyclopedia of science, British Standard Brass, table of sizes");
const RECALLED_BSW: Source = Source::memory("BS 84 coarse series, recalled");
const PRACTICE_BSB: Source = Source::common_practice("Brass thread sizes as dealers list them");

const fn bsw(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Bsw, size, designation, diameter, threads_per_inch, sources)
}

const fn bsf(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Bsf, size, designation, diameter, threads_per_inch, sources)
}

const fn bsb(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Bsb, size, designation, diameter, 26.0, sources)
}

/// Depth of Whitworth thread in pitches (BS 84).
pub(super) const DEPTH: f64 = 0.640_327;

/// BS 84: depth to four places of an inch.
pub(super) const FORM: Shape = Shape {
    angle_degrees: 55.0,
    depth: DEPTH,
    rounding: Rounding::DepthToPlacesInch(4),
    basis: Basis::published("of full thread depth, 0.6403 p (BS 84)"),
    on_five_eighths_h: false,
    minors: Minors::Alike,
    tensile: Tensile::Mean,
    crest: Finish::Round,
    root: Finish::Round,
    largest_hole: FormLimit::LikeBs84,
    forming_taps: false,
    cut_as: Form::Whitworth,
    any_size: AnySize::Word("whitworth", "Whitworth, 55°: BSW, BSF, ME"),
};

pub(super) static BSW: System = System {
    id: SystemId::Bsw,
    slug: "bsw",
    name: "British Standard Whitworth",
    mark: "BSW",
    spellings: &["whit", "whitworth", "w"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "BS 84:2007",
    form: Form::Whitworth,
    largest_hole: SizeLimit::Bs84,
    lists: TappingLists::British,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::Bs1083,
    used_for: "Coarse screws in older British machines and castings, and in cast iron.",
    threads: &BSW_ROWS,
};

pub(super) static BSF: System = System {
    id: SystemId::Bsf,
    slug: "bsf",
    name: "British Standard Fine",
    mark: "BSF",
    spellings: &["fine"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "BS 84:2007",
    form: Form::Whitworth,
    largest_hole: SizeLimit::Bs84,
    lists: TappingLists::British,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::Bs1083,
    used_for: "Steel bolts and studs in older British machine tools, engines and vehicles.",
    threads: &BSF_ROWS,
};

pub(super) static BSB: System = System {
    id: SystemId::Bsb,
    slug: "bsb",
    name: "British brass thread, 26 tpi at every size",
    mark: "BSB",
    spellings: &["brass", "british standard brass"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "No standard of its own: Whitworth form as BS 84",
    form: Form::Whitworth,
    largest_hole: SizeLimit::LikeBs84,
    lists: TappingLists::ModelEngineer,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::NotHeld,
    used_for: "Brass tube, gas and steam fittings with thin walls.",
    threads: &BSB_ROWS,
};

#[rustfmt::skip]
static BSW_ROWS: [Thread; 27] = [
    bsw("1-16", "1/16 in BSW", fraction(1, 16), 60.0, &[TR]),
    bsw("3-32", "3/32 in BSW", fraction(3, 32), 48.0, &[TR]),
    bsw("1-8", "1/8 in BSW", fraction(1, 8), 40.0, &[CHART, TR]),
    bsw("5-32", "5/32 in BSW", fraction(5, 32), 32.0, &[TR]),
    bsw("3-16", "3/16 in BSW", fraction(3, 16), 24.0, &[UNIK, TR]),
    bsw("7-32", "7/32 in BSW", fraction(7, 32), 24.0, &[TR]),
    bsw("1-4", "1/4 in BSW", fraction(1, 4), 20.0, &[WHITWORTH_1858, SHEARTAK]),
    bsw("5-16", "5/16 in BSW", fraction(5, 16), 18.0, &[UNIK, TR]),
    bsw("3-8", "3/8 in BSW", fraction(3, 8), 16.0, &[UNIK, WHITWORTH_1858]),
    bsw("7-16", "7/16 in BSW", fraction(7, 16), 14.0, &[UNIK, WHITWORTH_1858]),
    bsw("1-2", "1/2 in BSW", fraction(1, 2), 12.0, &[UNIK, WHITWORTH_1858]),
    bsw("9-16", "9/16 in BSW", fraction(9, 16), 12.0, &[SHEARTAK, TR]),
    bsw("5-8", "5/8 in BSW", fraction(5, 8), 11.0, &[UNIK]),
    bsw("11-16", "11/16 in BSW", fraction(11, 16), 11.0, &[UNIK, SHEARTAK]),
    bsw("3-4", "3/4 in BSW", fraction(3, 4), 10.0, &[UNIK, WHITWORTH_1858]),
    bsw("13-16", "13/16 in BSW", fraction(13, 16), 10.0, &[RECALLED_BSW]),
    bsw("7-8", "7/8 in BSW", fraction(7, 8), 9.0, &[UNIK]),
    bsw("15-16", "15/16 in BSW", fraction(15, 16), 9.0, &[RECALLED_BSW]),
    bsw("1", "1 in BSW", whole(1), 8.0, &[UNIK]),
    bsw("1-1-8", "1 1/8 in BSW", mixed(1, 1, 8), 7.0, &[UNIK, WHITWORTH_1858]),
    bsw("1-1-4", "1 1/4 in BSW", mixed(1, 1, 4), 7.0, &[UNIK, WHITWORTH_1858]),
    bsw("1-3-8", "1 3/8 in BSW", mixed(1, 3, 8), 6.0, &[WHITWORTH_1858, TR]),
    bsw("1-1-2", "1 1/2 in BSW", mixed(1, 1, 2), 6.0, &[WHITWORTH_1858, SHEARTAK]),
    bsw("1-5-8", "1 5/8 in BSW", mixed(1, 5, 8), 5.0, &[WHITWORTH_1858, TR]),
    bsw("1-3-4", "1 3/4 in BSW", mixed(1, 3, 4), 5.0, &[UNIK, WHITWORTH_1858]),
    bsw("1-7-8", "1 7/8 in BSW", mixed(1, 7, 8), 4.5, &[WHITWORTH_1858, TR]),
    bsw("2", "2 in BSW", whole(2), 4.5, &[UNIK, WHITWORTH_1858]),
];

#[rustfmt::skip]
static BSF_ROWS: [Thread; 18] = [
    bsf("3-16", "3/16 in BSF", fraction(3, 16), 32.0, &[UNIK, PARTS_LIBRARY]),
    bsf("7-32", "7/32 in BSF", fraction(7, 32), 28.0, &[UNIK, WIKIPEDIA_BSF]),
    bsf("1-4", "1/4 in BSF", fraction(1, 4), 26.0, &[WIKIPEDIA_BSF, PARTS_LIBRARY]),
    bsf("9-32", "9/32 in BSF", fraction(9, 32), 26.0, &[PARTS_LIBRARY]),
    bsf("5-16", "5/16 in BSF", fraction(5, 16), 22.0, &[UNIK]),
    bsf("3-8", "3/8 in BSF", fraction(3, 8), 20.0, &[UNIK]),
    bsf("7-16", "7/16 in BSF", fraction(7, 16), 18.0, &[UNIK]),
    bsf("1-2", "1/2 in BSF", fraction(1, 2), 16.0, &[UNIK]),
    bsf("9-16", "9/16 in BSF", fraction(9, 16), 16.0, &[WIKIPEDIA_BSF, PARTS_LIBRARY]),
    bsf("5-8", "5/8 in BSF", fraction(5, 8), 14.0, &[UNIK]),
    bsf("11-16", "11/16 in BSF", fraction(11, 16), 14.0, &[UNIK]),
    bsf("3-4", "3/4 in BSF", fraction(3, 4), 12.0, &[UNIK]),
    bsf("7-8", "7/8 in BSF", fraction(7, 8), 11.0, &[UNIK]),
    bsf("1", "1 in BSF", whole(1), 10.0, &[UNIK]),
    bsf("1-1-8", "1 1/8 in BSF", mixed(1, 1, 8), 9.0, &[UNIK]),
    bsf("1-1-4", "1 1/4 in BSF", mixed(1, 1, 4), 9.0, &[UNIK]),
    bsf("1-3-8", "1 3/8 in BSF", mixed(1, 3, 8), 8.0, &[UNIK]),
    bsf("1-1-2", "1 1/2 in BSF", mixed(1, 1, 2), 8.0, &[WIKIPEDIA_BSF, PARTS_LIBRARY]),
];

#[rustfmt::skip]
static BSB_ROWS: [Thread; 13] = [
    bsb("1-8", "1/8 in BSB", fraction(1, 8), &[DIRAC]),
    bsb("3-16", "3/16 in BSB", fraction(3, 16), &[UNIK]),
    bsb("1-4", "1/4 in BSB", fraction(1, 4), &[CLUB]),
    bsb("9-32", "9/32 in BSB", fraction(9, 32), &[CLUB]),
    bsb("5-16", "5/16 in BSB", fraction(5, 16), &[UNIK, CLUB]),
    bsb("3-8", "3/8 in BSB", fraction(3, 8), &[UNIK, CLUB]),
    bsb("7-16", "7/16 in BSB", fraction(7, 16), &[UNIK, CLUB]),
    bsb("1-2", "1/2 in BSB", fraction(1, 2), &[UNIK, CLUB]),
    bsb("9-16", "9/16 in BSB", fraction(9, 16), &[PRACTICE_BSB]),
    bsb("5-8", "5/8 in BSB", fraction(5, 8), &[UNIK]),
    bsb("3-4", "3/4 in BSB", fraction(3, 4), &[UNIK]),
    bsb("7-8", "7/8 in BSB", fraction(7, 8), &[UNIK]),
    bsb("1", "1 in BSB", whole(1), &[UNIK]),
];
