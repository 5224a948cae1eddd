//! The Model Engineer threads: Whitworth form, one pitch for a run of diameters.

use super::rows::{fraction, inch_pitch};
use super::sources::{CLUB, IBLS};
use super::{
    ClearanceFamily, Form, HeadFamily, HexagonFamily, Meant, Naming, SizeLimit, System, SystemId,
    TappingLists, Thread,
};
use crate::tables::source::Source;
use crate::units::Printed;

const PRACTICE: Source =
    Source::common_practice("Model Engineer sizes as tap and die dealers list them");

const fn me_40(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Me40, size, designation, diameter, 40.0, sources)
}

const fn me_32(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Me32, size, designation, diameter, 32.0, sources)
}

const fn me_26(
    size: &'static str,
    designation: &'static str,
    diameter: Printed,
    sources: &'static [Source],
) -> Thread {
    inch_pitch(SystemId::Me26, size, designation, diameter, 26.0, sources)
}

pub(super) static ME_40: System = System {
    id: SystemId::Me40,
    slug: "me-40",
    name: "Model Engineer, 40 tpi",
    mark: "ME",
    spellings: &["model engineer", "model engineers"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "No standard of its own: Whitworth form as BS 84",
    form: Form::Whitworth,
    largest_hole: SizeLimit::LikeBs84,
    lists: TappingLists::ModelEngineer,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::NotHeld,
    used_for: "Unions, glands, plugs and other fittings of small steam models.",
    threads: &ME_40_ROWS,
};

pub(super) static ME_32: System = System {
    id: SystemId::Me32,
    slug: "me-32",
    name: "Model Engineer, 32 tpi",
    mark: "ME",
    spellings: &["model engineer", "model engineers"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "No standard of its own: Whitworth form as BS 84",
    form: Form::Whitworth,
    largest_hole: SizeLimit::LikeBs84,
    lists: TappingLists::ModelEngineer,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::NotHeld,
    used_for: "Larger unions, glands and fittings of steam models.",
    threads: &ME_32_ROWS,
};

pub(super) static ME_26: System = System {
    id: SystemId::Me26,
    slug: "me-26",
    name: "Model Engineer, 26 tpi",
    mark: "ME",
    spellings: &["model engineer", "model engineers"],
    naming: Naming::Inch,
    meant: Meant::BySize,
    standard: "No standard of its own: Whitworth form as BS 84",
    form: Form::Whitworth,
    largest_hole: SizeLimit::LikeBs84,
    lists: TappingLists::ModelEngineer,
    clearance: ClearanceFamily::Rule,
    heads: HeadFamily::British,
    hexagons: HexagonFamily::NotHeld,
    used_for: "The largest fittings of steam models; the same threads as the brass thread.",
    threads: &ME_26_ROWS,
};

#[rustfmt::skip]
static ME_40_ROWS: [Thread; 10] = [
    me_40("1-8", "1/8 in × 40 ME", fraction(1, 8), &[CLUB]),
    me_40("5-32", "5/32 in × 40 ME", fraction(5, 32), &[CLUB, IBLS]),
    me_40("3-16", "3/16 in × 40 ME", fraction(3, 16), &[CLUB]),
    me_40("7-32", "7/32 in × 40 ME", fraction(7, 32), &[CLUB]),
    me_40("1-4", "1/4 in × 40 ME", fraction(1, 4), &[CLUB]),
    me_40("9-32", "9/32 in × 40 ME", fraction(9, 32), &[PRACTICE]),
    me_40("5-16", "5/16 in × 40 ME", fraction(5, 16), &[PRACTICE]),
    me_40("3-8", "3/8 in × 40 ME", fraction(3, 8), &[IBLS]),
    me_40("7-16", "7/16 in × 40 ME", fraction(7, 16), &[PRACTICE]),
    me_40("1-2", "1/2 in × 40 ME", fraction(1, 2), &[PRACTICE]),
];

#[rustfmt::skip]
static ME_32_ROWS: [Thread; 8] = [
    me_32("3-16", "3/16 in × 32 ME", fraction(3, 16), &[PRACTICE]),
    me_32("7-32", "7/32 in × 32 ME", fraction(7, 32), &[PRACTICE]),
    me_32("1-4", "1/4 in × 32 ME", fraction(1, 4), &[PRACTICE]),
    me_32("9-32", "9/32 in × 32 ME", fraction(9, 32), &[CLUB]),
    me_32("5-16", "5/16 in × 32 ME", fraction(5, 16), &[IBLS]),
    me_32("3-8", "3/8 in × 32 ME", fraction(3, 8), &[CLUB, IBLS]),
    me_32("7-16", "7/16 in × 32 ME", fraction(7, 16), &[PRACTICE]),
    me_32("1-2", "1/2 in × 32 ME", fraction(1, 2), &[PRACTICE]),
];

#[rustfmt::skip]
static ME_26_ROWS: [Thread; 3] = [
    me_26("3-8", "3/8 in × 26 ME", fraction(3, 8), &[PRACTICE]),
    me_26("7-16", "7/16 in × 26 ME", fraction(7, 16), &[CLUB]),
    me_26("1-2", "1/2 in × 26 ME", fraction(1, 2), &[CLUB]),
];
