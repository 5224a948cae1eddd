//! The Unified inch threads: coarse, fine, extra fine and the special pitches met in models. The
//! sizes below No. 0 are in [`super::unified_miniature`].
//!
//! An address ends in the threads per inch: `1-64` is No. 1, `1-8` is 1 in.

use super::rows::{fraction, inch_pitch, mixed, noted, whole};
use super::sources::{ASME_LIBRARY, PARTS_LIBRARY};
use super::{
    AnySize, Basis, ClearanceFamily, Finish, Form, FormLimit, HeadFamily, HexagonFamily, Meant,
    Minors, Naming, Rounding, Shape, SizeLimit, System, SystemId, TappingLists, Tensile, Thread,
    metric,
};
use crate::tables::source::Source;
use crate::units::Printed;

const TABLE_4A: Source =
    Source::published("Machinery's Handbook 31st ed. p. 1978, table 4a, UNC basic dimensions");
const TABLE_4B: Source =
    Source::published("Machinery's Handbook 31st ed. p. 1979, table 4b, UNF basic dimensions");
const TABLE_4C: Source =
    Source::published("Machinery's Handbook 31st ed. p. 1980, table 4c, UNEF basic dimensions");
const TAP_DRILLS: Source =
    Source::published("Machinery's Handbook 31st ed. p. 2155, table 2, tap drill sizes");
const AMERICAN_NATIONAL: Source = Source::published(
    "Machinery's Handbook 31st ed. p. 2168, table 4, threads of American National form",
);
const MICRO_ADVANCES: Source = Source::published("a table of Unified threads, classes 2A and 2B");
const RECALLED_B1_1: Source = Source::memory("ASME B1.1 selected combinations, recalled");

const OFTEN_SOLD_AS_UNF: &str = "Often sold as UNF; the fine thread of the standard is 1-12 UNF.";
const OLD_MACHINE_SCREW: &str = "An old machine screw size, kept for older American instruments \
    and models.";

const fn unc(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Unc, size, designation, diameter, threads_per_inch, sources)
}

const fn unf(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Unf, size, designation, diameter, threads_per_inch, sources)
}

const fn unef(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Unef, size, designation, diameter, threads_per_inch, sources)
}

const fn uns(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    threads_per_inch: f64,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Uns, size, designation, diameter, threads_per_inch, sources)
}

/// The screw's minor diameter below the nut's, in pitches: an eighth of the sharp height.
const SCREW_BELOW_NUT: f64 = 0.108_253_175_473_054_8;
/// Three sixteenths of the sharp height, in pitches: what the tensile area takes off E/2.
const TENSILE: f64 = 0.162_379_763_209_582_3;

/// ASME B1.1: effective and nut's minor diameter to four places of an inch.
pub(super) const FORM: Shape = Shape {
    angle_degrees: 60.0,
    depth: metric::THREE_QUARTER_HEIGHT,
    rounding: Rounding::DiametersToPlacesInch(4),
    basis: Basis::published("of ¾ H, 0.6495 p (ASME B1.1)"),
    on_five_eighths_h: true,
    minors: Minors::ScrewBelowNut { nut: metric::INTERNAL, below: SCREW_BELOW_NUT },
    tensile: Tensile::BelowEffective(TENSILE),
    crest: Finish::Flat,
    root: Finish::Flat,
    largest_hole: FormLimit::AsmeB11,
    forming_taps: true,
    cut_as: Form::IsoMetric,
    any_size: AnySize::Word("unified", "Unified, 60°"),
};

pub(super) static UNC: System = System {
    id: SystemId::Unc,
    slug: "unc",
    name: "Unified coarse",
    mark: "UNC",
    spellings: &["nc", "unified", "un", "coarse"],
    naming: Naming::Unified,
    meant: Meant::BySize,
    standard: "ASME B1.1-2003",
    form: Form::Unified,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::Unified,
    clearance: ClearanceFamily::Unified,
    heads: HeadFamily::Unified,
    hexagons: HexagonFamily::Unified,
    used_for: "American machines and models, and British vehicles of the 1950s to 1970s.",
    threads: &UNC_ROWS,
};

pub(super) static UNF: System = System {
    id: SystemId::Unf,
    slug: "unf",
    name: "Unified fine",
    mark: "UNF",
    spellings: &["nf", "unified", "un", "fine"],
    naming: Naming::Unified,
    meant: Meant::BySize,
    standard: "ASME B1.1-2003",
    form: Form::Unified,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::Unified,
    clearance: ClearanceFamily::Unified,
    heads: HeadFamily::Unified,
    hexagons: HexagonFamily::Unified,
    used_for: "Finer American screws, and British vehicles of the 1950s to 1970s.",
    threads: &UNF_ROWS,
};

pub(super) static UNEF: System = System {
    id: SystemId::Unef,
    slug: "unef",
    name: "Unified extra fine",
    mark: "UNEF",
    spellings: &["nef", "unified", "un", "extra fine"],
    naming: Naming::Unified,
    meant: Meant::BySize,
    standard: "ASME B1.1-2003",
    form: Form::Unified,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::Unified,
    clearance: ClearanceFamily::Unified,
    heads: HeadFamily::Unified,
    hexagons: HexagonFamily::Unified,
    used_for: "Thin-walled American fittings, instruments and connectors.",
    threads: &UNEF_ROWS,
};

pub(super) static UNS: System = System {
    id: SystemId::Uns,
    slug: "uns",
    name: "Unified special",
    mark: "UNS",
    spellings: &["ns", "unified", "un", "special"],
    naming: Naming::Unified,
    meant: Meant::BySize,
    standard: "ASME B1.1-2003",
    form: Form::Unified,
    largest_hole: SizeLimit::OfForm,
    lists: TappingLists::Unified,
    clearance: ClearanceFamily::Unified,
    heads: HeadFamily::Unified,
    hexagons: HexagonFamily::Unified,
    used_for: "Special pitches met in instruments, optical work and American models.",
    threads: &UNS_ROWS,
};

#[rustfmt::skip]
static UNC_ROWS: [Thread; 23] = [
    unc("1-64", "No. 1-64 UNC", Printed::Inch(0.073), 64.0, &[TAP_DRILLS]),
    unc("2-56", "No. 2-56 UNC", Printed::Inch(0.086), 56.0, &[TAP_DRILLS]),
    unc("3-48", "No. 3-48 UNC", Printed::Inch(0.099), 48.0, &[TAP_DRILLS]),
    unc("4-40", "No. 4-40 UNC", Printed::Inch(0.112), 40.0, &[TABLE_4A]),
    unc("5-40", "No. 5-40 UNC", Printed::Inch(0.125), 40.0, &[TABLE_4A]),
    unc("6-32", "No. 6-32 UNC", Printed::Inch(0.138), 32.0, &[TABLE_4A]),
    unc("8-32", "No. 8-32 UNC", Printed::Inch(0.164), 32.0, &[TABLE_4A]),
    unc("10-24", "No. 10-24 UNC", Printed::Inch(0.190), 24.0, &[TABLE_4A]),
    unc("12-24", "No. 12-24 UNC", Printed::Inch(0.216), 24.0, &[TABLE_4A]),
    unc("1-4-20", "1/4-20 UNC", fraction(1, 4), 20.0, &[TABLE_4A]),
    unc("5-16-18", "5/16-18 UNC", fraction(5, 16), 18.0, &[TABLE_4A]),
    unc("3-8-16", "3/8-16 UNC", fraction(3, 8), 16.0, &[TABLE_4A]),
    unc("7-16-14", "7/16-14 UNC", fraction(7, 16), 14.0, &[TABLE_4A]),
    unc("1-2-13", "1/2-13 UNC", fraction(1, 2), 13.0, &[TABLE_4A]),
    unc("9-16-12", "9/16-12 UNC", fraction(9, 16), 12.0, &[TABLE_4A]),
    unc("5-8-11", "5/8-11 UNC", fraction(5, 8), 11.0, &[TABLE_4A]),
    unc("3-4-10", "3/4-10 UNC", fraction(3, 4), 10.0, &[PARTS_LIBRARY, ASME_LIBRARY]),
    unc("7-8-9", "7/8-9 UNC", fraction(7, 8), 9.0, &[TABLE_4A]),
    unc("1-8", "1-8 UNC", whole(1), 8.0, &[TABLE_4A]),
    unc("1-1-8-7", "1 1/8-7 UNC", mixed(1, 1, 8), 7.0, &[TABLE_4A]),
    unc("1-1-4-7", "1 1/4-7 UNC", mixed(1, 1, 4), 7.0, &[PARTS_LIBRARY]),
    unc("1-3-8-6", "1 3/8-6 UNC", mixed(1, 3, 8), 6.0, &[TABLE_4A]),
    unc("1-1-2-6", "1 1/2-6 UNC", mixed(1, 1, 2), 6.0, &[TABLE_4A]),
];

#[rustfmt::skip]
static UNF_ROWS: [Thread; 24] = [
    unf("0-80", "No. 0-80 UNF", Printed::Inch(0.060), 80.0, &[TABLE_4B]),
    unf("1-72", "No. 1-72 UNF", Printed::Inch(0.073), 72.0, &[TABLE_4B]),
    unf("2-64", "No. 2-64 UNF", Printed::Inch(0.086), 64.0, &[TAP_DRILLS]),
    unf("3-56", "No. 3-56 UNF", Printed::Inch(0.099), 56.0, &[TABLE_4B]),
    unf("4-48", "No. 4-48 UNF", Printed::Inch(0.112), 48.0, &[TABLE_4B]),
    unf("5-44", "No. 5-44 UNF", Printed::Inch(0.125), 44.0, &[TABLE_4B]),
    unf("6-40", "No. 6-40 UNF", Printed::Inch(0.138), 40.0, &[TABLE_4B]),
    unf("8-36", "No. 8-36 UNF", Printed::Inch(0.164), 36.0, &[PARTS_LIBRARY]),
    unf("10-32", "No. 10-32 UNF", Printed::Inch(0.190), 32.0, &[TABLE_4B]),
    unf("12-28", "No. 12-28 UNF", Printed::Inch(0.216), 28.0, &[TABLE_4B]),
    unf("1-4-28", "1/4-28 UNF", fraction(1, 4), 28.0, &[TABLE_4B]),
    unf("5-16-24", "5/16-24 UNF", fraction(5, 16), 24.0, &[TABLE_4B]),
    unf("3-8-24", "3/8-24 UNF", fraction(3, 8), 24.0, &[PARTS_LIBRARY]),
    unf("7-16-20", "7/16-20 UNF", fraction(7, 16), 20.0, &[TABLE_4B]),
    unf("1-2-20", "1/2-20 UNF", fraction(1, 2), 20.0, &[TABLE_4B]),
    unf("9-16-18", "9/16-18 UNF", fraction(9, 16), 18.0, &[TABLE_4B]),
    unf("5-8-18", "5/8-18 UNF", fraction(5, 8), 18.0, &[TABLE_4B]),
    unf("3-4-16", "3/4-16 UNF", fraction(3, 4), 16.0, &[PARTS_LIBRARY, ASME_LIBRARY]),
    unf("7-8-14", "7/8-14 UNF", fraction(7, 8), 14.0, &[TABLE_4B]),
    unf("1-12", "1-12 UNF", whole(1), 12.0, &[PARTS_LIBRARY, ASME_LIBRARY]),
    unf("1-1-8-12", "1 1/8-12 UNF", mixed(1, 1, 8), 12.0, &[TABLE_4B]),
    unf("1-1-4-12", "1 1/4-12 UNF", mixed(1, 1, 4), 12.0, &[PARTS_LIBRARY]),
    unf("1-3-8-12", "1 3/8-12 UNF", mixed(1, 3, 8), 12.0, &[TABLE_4B]),
    unf("1-1-2-12", "1 1/2-12 UNF", mixed(1, 1, 2), 12.0, &[PARTS_LIBRARY]),
];

#[rustfmt::skip]
static UNEF_ROWS: [Thread; 22] = [
    unef("12-32", "No. 12-32 UNEF", Printed::Inch(0.216), 32.0, &[TABLE_4C]),
    unef("1-4-32", "1/4-32 UNEF", fraction(1, 4), 32.0, &[TABLE_4C]),
    unef("5-16-32", "5/16-32 UNEF", fraction(5, 16), 32.0, &[TABLE_4C]),
    unef("3-8-32", "3/8-32 UNEF", fraction(3, 8), 32.0, &[TABLE_4C]),
    unef("7-16-28", "7/16-28 UNEF", fraction(7, 16), 28.0, &[TABLE_4C]),
    unef("1-2-28", "1/2-28 UNEF", fraction(1, 2), 28.0, &[TABLE_4C]),
    unef("9-16-24", "9/16-24 UNEF", fraction(9, 16), 24.0, &[TABLE_4C]),
    unef("5-8-24", "5/8-24 UNEF", fraction(5, 8), 24.0, &[TABLE_4C]),
    unef("11-16-24", "11/16-24 UNEF", fraction(11, 16), 24.0, &[TABLE_4C]),
    unef("3-4-20", "3/4-20 UNEF", fraction(3, 4), 20.0, &[TABLE_4C]),
    unef("13-16-20", "13/16-20 UNEF", fraction(13, 16), 20.0, &[TABLE_4C]),
    unef("7-8-20", "7/8-20 UNEF", fraction(7, 8), 20.0, &[PARTS_LIBRARY]),
    unef("15-16-20", "15/16-20 UNEF", fraction(15, 16), 20.0, &[TABLE_4C]),
    unef("1-20", "1-20 UNEF", whole(1), 20.0, &[TABLE_4C]),
    unef("1-1-16-18", "1 1/16-18 UNEF", mixed(1, 1, 16), 18.0, &[PARTS_LIBRARY]),
    unef("1-1-8-18", "1 1/8-18 UNEF", mixed(1, 1, 8), 18.0, &[TABLE_4C]),
    unef("1-3-16-18", "1 3/16-18 UNEF", mixed(1, 3, 16), 18.0, &[TABLE_4C]),
    unef("1-1-4-18", "1 1/4-18 UNEF", mixed(1, 1, 4), 18.0, &[PARTS_LIBRARY]),
    unef("1-5-16-18", "1 5/16-18 UNEF", mixed(1, 5, 16), 18.0, &[TABLE_4C]),
    unef("1-3-8-18", "1 3/8-18 UNEF", mixed(1, 3, 8), 18.0, &[TABLE_4C]),
    unef("1-7-16-18", "1 7/16-18 UNEF", mixed(1, 7, 16), 18.0, &[TABLE_4C]),
    unef("1-1-2-18", "1 1/2-18 UNEF", mixed(1, 1, 2), 18.0, &[TABLE_4C]),
];

#[rustfmt::skip]
static UNS_ROWS: [Thread; 23] = [
    noted(uns("4-36", "No. 4-36 UNS", Printed::Inch(0.112), 36.0, &[TAP_DRILLS]), OLD_MACHINE_SCREW),
    uns("10-28", "No. 10-28 UNS", Printed::Inch(0.190), 28.0, &[MICRO_ADVANCES]),
    uns("10-36", "No. 10-36 UNS", Printed::Inch(0.190), 36.0, &[MICRO_ADVANCES]),
    uns("10-40", "No. 10-40 UNS", Printed::Inch(0.190), 40.0, &[MICRO_ADVANCES]),
    uns("10-48", "No. 10-48 UNS", Printed::Inch(0.190), 48.0, &[MICRO_ADVANCES]),
    uns("10-56", "No. 10-56 UNS", Printed::Inch(0.190), 56.0, &[MICRO_ADVANCES]),
    uns("12-36", "No. 12-36 UNS", Printed::Inch(0.216), 36.0, &[MICRO_ADVANCES]),
    uns("12-40", "No. 12-40 UNS", Printed::Inch(0.216), 40.0, &[MICRO_ADVANCES]),
    uns("12-48", "No. 12-48 UNS", Printed::Inch(0.216), 48.0, &[MICRO_ADVANCES]),
    uns("12-56", "No. 12-56 UNS", Printed::Inch(0.216), 56.0, &[MICRO_ADVANCES]),
    uns("1-4-24", "1/4-24 UNS", fraction(1, 4), 24.0, &[AMERICAN_NATIONAL]),
    uns("1-4-27", "1/4-27 UNS", fraction(1, 4), 27.0, &[AMERICAN_NATIONAL]),
    uns("1-4-36", "1/4-36 UNS", fraction(1, 4), 36.0, &[RECALLED_B1_1]),
    uns("1-4-40", "1/4-40 UNS", fraction(1, 4), 40.0, &[RECALLED_B1_1]),
    uns("5-16-27", "5/16-27 UNS", fraction(5, 16), 27.0, &[AMERICAN_NATIONAL]),
    uns("5-16-40", "5/16-40 UNS", fraction(5, 16), 40.0, &[RECALLED_B1_1]),
    uns("3-8-27", "3/8-27 UNS", fraction(3, 8), 27.0, &[AMERICAN_NATIONAL]),
    uns("3-8-40", "3/8-40 UNS", fraction(3, 8), 40.0, &[RECALLED_B1_1]),
    uns("7-16-24", "7/16-24 UNS", fraction(7, 16), 24.0, &[AMERICAN_NATIONAL]),
    uns("7-16-27", "7/16-27 UNS", fraction(7, 16), 27.0, &[AMERICAN_NATIONAL]),
    uns("1-2-12", "1/2-12 UNS", fraction(1, 2), 12.0, &[AMERICAN_NATIONAL]),
    uns("1-2-27", "1/2-27 UNS", fraction(1, 2), 27.0, &[AMERICAN_NATIONAL]),
    noted(uns("1-14", "1-14 UNS", whole(1), 14.0, &[ASME_LIBRARY]), OFTEN_SOLD_AS_UNF),
];
