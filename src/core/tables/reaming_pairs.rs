//! What part of the drilling speed a reamer is run at: pairs of drilling and reaming speeds that one maker
//! prints for one material, and the rules of other print.

use crate::tables::materials::{Family, Material};
use crate::tables::source::Source;

/// A drilling and a reaming speed in print for one material, for tools of high-speed steel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// The material in the source's own words.
    pub printed_as: &'static str,
    /// Its condition.
    pub condition: &'static str,
    /// The drilling speed, in feet a minute.
    pub drilling: f64,
    /// The reaming speed, in feet a minute.
    pub reaming: f64,
    /// The materials of ours it is printed for.
    materials: Printed,
    /// Where it was read.
    pub source: Source,
}

/// What a pair is printed for.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Printed {
    /// These materials, by slug.
    For(&'static [&'static str]),
    /// A family, of which no material has a pair of its own.
    Family(Family),
    /// Nothing we hold: shown with the source, gone by nowhere.
    Nothing,
}

/// The parts of a drilling speed that a reamer may be run at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fractions {
    /// The least.
    pub least: f64,
    /// The most; equal to the least where one figure is in print.
    pub most: f64,
    /// What it is printed for: that material's own name, or what stands nearest.
    pub printed_as: &'static str,
    /// Where it was read.
    pub source: Source,
}

const STEELS: Source =
    Source::published("A reamer maker’s tables, carbon and alloy steels, high-speed steel tools");
const TOOL: Source =
    Source::published("A reamer maker’s tables, tool and stainless steels, high-speed steel tools");
const CAST: Source =
    Source::published("A reamer maker’s tables, ferrous cast metals, high-speed steel tools");
const LIGHT: Source =
    Source::published("A reamer maker’s tables, light metals, high-speed steel tools");
const HANDBOOK: Source = Source::published(
    "A reprint of the handbook table of turning, milling, drilling and reaming speeds, carbon and alloy steels",
);
/// Half the drilling speed, in a lathe.
const TM_1_420: Source = Source::published("War Department Technical Manual TM 1-420, par. 37");
/// A third to a half of the drilling speed.
const TEXTBOOK: Source = Source::published("A machine-shop textbook, its table H-5");

/// A third to a half: what other print says, and what is gone by where no pair is printed.
pub const RULE: Fractions = Fractions {
    least: 1.0 / 3.0,
    most: 1.0 / 2.0,
    printed_as: "any metal, to start with",
    source: TEXTBOOK,
};

/// About a half.
pub const HALF: Fractions = Fractions {
    least: 1.0 / 2.0,
    most: 1.0 / 2.0,
    printed_as: "a machine reamer in a lathe",
    source: TM_1_420,
};

const fn pair(
    printed_as: &'static str,
    condition: &'static str,
    speeds: [f64; 2],
    materials: Printed,
    source: Source,
) -> Pair {
    let [drilling, reaming] = speeds;
    Pair { printed_as, condition, drilling, reaming, materials, source }
}

use Printed::{Family as Of, For, Nothing};

const FREE: Printed = For(&["free-cutting-mild-steel"]);
const MILD: Printed = For(&["bright-mild-steel", "black-mild-steel", "case-hardening-steel"]);
const CARBON: Printed = For(&["medium-carbon-steel", "spring-steel"]);
const ALLOY: Printed = For(&["alloy-steel-en16", "alloy-steel-en19", "alloy-steel-en24"]);
const TOOL_STEEL: Printed = For(&["gauge-plate"]);
const GREY: Printed = For(&["grey-cast-iron", "continuous-cast-iron"]);

#[rustfmt::skip]
static PAIRS: [Pair; 29] = [
    pair("1212 1213 1214 free-machining", "100-150 HR A", [120.0, 80.0], FREE, STEELS),
    pair("1108-1120 1126 1211", "100-150 HR A", [110.0, 75.0], FREE, STEELS),
    pair("11L17 12L13 12L14 leaded", "100-150", [130.0, 85.0], For(&["leaded-free-cutting-steel"]), STEELS),
    pair("1006-1026 mild", "100-125", [100.0, 65.0], MILD, STEELS),
    pair("1027-1052", "275-325 Q&T", [50.0, 30.0], CARBON, STEELS),
    pair("1055-1095", "275-325 Q&T", [40.0, 25.0], CARBON, STEELS),
    pair("4140 4150", "250-300 Q&T", [55.0, 30.0], ALLOY, STEELS),
    pair("W1 W2 W5 (silver steel kind)", "150-209 A", [85.0, 35.0], For(&["silver-steel"]), TOOL),
    pair("D2-D7", "200-250 A", [30.0, 20.0], TOOL_STEEL, TOOL),
    pair("M1 M2 T1 HSS", "200-250 A", [45.0, 30.0], Nothing, TOOL),
    pair("303", "135-185 A", [85.0, 55.0], For(&["stainless-303"]), TOOL),
    pair("303", "225-275 CD", [70.0, 45.0], For(&["stainless-303"]), TOOL),
    pair("304 304L 302 321", "225-275 CD", [50.0, 30.0], For(&["stainless-304"]), TOOL),
    pair("316 316L 310", "135-185 A", [50.0, 30.0], For(&["stainless-316"]), TOOL),
    pair("416", "135-185 A", [90.0, 60.0], For(&["stainless-416", "stainless-431"]), TOOL),
    pair("grey iron class 25", "160-200 AC", [90.0, 60.0], GREY, CAST),
    pair("grey iron class 30-40", "190-220 AC", [80.0, 55.0], GREY, CAST),
    pair("grey iron class 45-50", "220-260 AC", [60.0, 40.0], GREY, CAST),
    pair("nodular ferritic", "140-190 A", [100.0, 65.0], For(&["spheroidal-graphite-iron", "malleable-iron"]), CAST),
    pair("cast steel 1010 1020", "100-150", [100.0, 65.0], For(&["cast-steel"]), CAST),
    pair("wrought aluminium", "CD", [400.0, 400.0], Of(Family::Aluminium), LIGHT),
    pair("wrought aluminium", "ST and A", [350.0, 350.0], Of(Family::Aluminium), LIGHT),
    pair("aluminium sand/PM castings", "AC", [500.0, 500.0], For(&["cast-aluminium", "cast-aluminium-lm25"]), LIGHT),
    pair("aluminium die castings", "AC", [300.0, 300.0], For(&["cast-aluminium"]), LIGHT),
    pair("aluminium 390/392", "AC", [125.0, 100.0], Nothing, LIGHT),
    pair("wrought magnesium", "all", [500.0, 500.0], Of(Family::Magnesium), LIGHT),
    pair("1212 1213 1215", "100-150 HR A", [120.0, 80.0], FREE, HANDBOOK),
    pair("1108-1211", "150-200 CD", [120.0, 80.0], FREE, HANDBOOK),
    pair("1055-1095", "225-275", [50.0, 30.0], CARBON, HANDBOOK),
];

/// Every pair in print.
#[must_use]
pub fn pairs() -> &'static [Pair] {
    &PAIRS
}

impl Pair {
    /// The part of the drilling speed.
    #[must_use]
    pub fn fraction(&self) -> f64 {
        self.reaming / self.drilling
    }

    fn names(&self, material: &Material) -> bool {
        matches!(self.materials, For(slugs) if slugs.contains(&material.slug))
    }
}

/// The parts of its drilling speed that a reamer is run at in this material: those of its pairs, or of its
/// family's; a third to a half where none is printed. Where a maker reams as fast as he drills, the range
/// starts at the half that other print gives for a lathe: no bench wants a reamer at a drill's speed.
///
/// # Examples
/// ```
/// use holewright_core::tables::{materials::find, reaming_pairs::{RULE, fractions}};
/// let least = |slug| fractions(find(slug).unwrap()).least;
/// assert!((least("silver-steel") - 35.0 / 85.0).abs() < 1e-9);
/// assert_eq!((least("aluminium-6082"), least("gunmetal")), (0.5, RULE.least));
/// ```
#[must_use]
pub fn fractions(material: &Material) -> Fractions {
    let own: Vec<&Pair> = PAIRS.iter().filter(|pair| pair.names(material)).collect();
    let of_family =
        |pair: &&Pair| matches!(pair.materials, Of(family) if family == material.family);
    let found = if own.is_empty() { PAIRS.iter().filter(of_family).collect() } else { own };
    let [least, most] = [f64::min, f64::max]
        .map(|end| found.iter().map(|pair| pair.fraction()).reduce(end).unwrap_or_default());
    let least = if least < 1.0 { least } else { HALF.least };
    found.first().map_or(RULE, |first| Fractions {
        least,
        most,
        printed_as: first.printed_as,
        source: first.source,
    })
}
