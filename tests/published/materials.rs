//! What materials weigh, bear and are called: every row must stand on its material's page, with the
//! same figure from the same source.

use holewright_core::tables::materials::{
    Advice, HardnessScale, MachinabilityBasis, Material, Measure, Property, Span, SpeedRange,
    Topic, find,
};
use holewright_core::tables::source::{Grade, Source};
use holewright_core::units::{
    Velocity, in_grams_per_cm3, in_metres_per_minute, in_newtons_per_mm2, ksi,
};

use crate::readings;
use crate::replay::{Family, Kind, Row, decimal};

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "drills_materials/materials.csv",
        context: &["material", "property", "unit", "condition"],
        unused: &[],
        replay: material,
    },
    Family {
        file: "drills_materials/cutting_fluids.csv",
        context: &["material"],
        unused: &[],
        replay: fluids,
    },
];

/// The materials by the names the file gives them.
#[rustfmt::skip]
const NAMES: [(&str, &str); 37] = [
    ("Grey cast iron GJL-200", "grey-cast-iron"),
    ("Grey cast iron GJL-250", "grey-cast-iron"),
    ("Gunmetal LG2", "gunmetal"),
    ("Phosphor bronze PB1", "phosphor-bronze-cast"),
    ("Phosphor bronze PB102", "phosphor-bronze-drawn"),
    ("Free-cutting brass CZ121", "free-cutting-brass"),
    ("Naval brass", "naval-brass"),
    ("EN1A 230M07", "free-cutting-mild-steel"),
    ("EN3B 070M20", "bright-mild-steel"),
    ("EN8 080M40", "medium-carbon-steel"),
    ("606M36 EN16M", "alloy-steel-en16"),
    ("709M40 EN19", "alloy-steel-en19"),
    ("817M40 EN24T", "alloy-steel-en24"),
    ("Silver steel BS 1407", "silver-steel"),
    ("Gauge plate O1", "gauge-plate"),
    ("Stainless 303", "stainless-303"),
    ("Stainless 304", "stainless-304"),
    ("Stainless 316", "stainless-316"),
    ("Stainless 416", "stainless-416"),
    ("Stainless 431", "stainless-431"),
    ("Aluminium 6082-T6", "aluminium-6082"),
    ("Aluminium 6063-T6", "aluminium-6063"),
    ("Aluminium 2011", "aluminium-2011"),
    ("Aluminium 2014", "aluminium-2014"),
    ("Aluminium 7075-T6", "aluminium-7075"),
    ("Cast aluminium LM4", "cast-aluminium"),
    ("Cast aluminium LM25", "cast-aluminium-lm25"),
    ("Copper C101", "copper"),
    ("Nickel silver", "nickel-silver"),
    ("Monel 400", "nickel-copper-400"),
    ("Titanium Gr 2", "titanium-grade-2"),
    ("Titanium Gr 5", "titanium-grade-5"),
    ("Acetal POM", "acetal"),
    ("Nylon 66", "nylon"),
    ("PTFE", "ptfe"),
    ("PEEK", "peek"),
    ("Laminated phenolic", "laminated-phenolic"),
];

fn material(row: &mut Row) {
    let name = row.text("material").to_owned();
    let slug = NAMES.iter().find(|(printed, _)| *printed == name).map(|(_, slug)| *slug);
    let slug = slug.unwrap_or_else(|| panic!("which material is {name}?"));
    // The leaded form, which the row of EN1A names, has a page of its own.
    let leaded = row.text("value").contains("leaded form");
    let slug = if leaded { "leaded-free-cutting-steel" } else { slug };
    let material = find(slug).unwrap_or_else(|| panic!("no material at {slug}"));
    match row.text("property") {
        "designations" => designations(row, material),
        "lubricant drilling" => {
            lubricant(row, "value", &material.drilling_lubricant, material.drill_advice);
        }
        "lubricant tapping" => {
            lubricant(row, "value", &material.tapping_lubricant, material.tap_advice);
        }
        "HSS drilling speed" => speed(row, material.drilling),
        "tapping speed" => speed(row, material.tapping),
        "thread engagement" => {
            row.leave_out("one rule for all sizes: what a thread bears is reckoned size by size")
        }
        "machinability" if !row.text("value").starts_with(|c: char| c.is_ascii_digit()) => {
            said(row, material);
        }
        "caution" | "drill point" | "drill preparation" | "thermal expansion" => {
            said(row, material);
        }
        _ => figures(row, material),
    }
}

/// `UTS / 0.2% proof / A / HB` with `360 / 170 / 6 / 100`, or several such for several sections.
fn figures(row: &mut Row, material: &Material) {
    let property = row.text("property").replace("UTS", "tensile");
    let value = row.text("value").to_owned();
    let quantities: Vec<_> = property.split(" / ").map(str::to_owned).collect();
    // A density is one figure; what follows it in brackets may hold any mark.
    let sets =
        if property == "density" { vec![value.as_str()] } else { value.split("; ").collect() };
    for set in sets {
        let figures: Vec<_> = set.split(" / ").map(str::trim).collect();
        for (place, figure) in figures.iter().enumerate() {
            let quantity = match quantities.as_slice() {
                // `200 HB / 145 HV / 80 HRB`: one property on several scales.
                [one] => one,
                several => &several[place],
            };
            let source = row.text("source").to_owned();
            // Hardness has no least figure in these tables.
            let least = row.text("condition").starts_with("minima") && *quantity != "HB";
            let unit = format!("{}{}", row.text("unit"), if least { " minima" } else { "" });
            let printed = printed(figure, quantity, &unit);
            let ours: Vec<_> =
                material.properties.iter().filter(|held| same(&source, held.source)).collect();
            let agrees = ours.iter().any(|held| printed.is(held));
            let got = format!("{:?}", ours.iter().map(|held| held.measure).collect::<Vec<_>>());
            row.claim("value", Kind::Table, format!("{quantity} {figure}"), got, agrees);
        }
    }
}

/// A printed figure in our unit, with half its last place.
struct Figure {
    kind: fn(Measure) -> Option<Span<f64>>,
    span: Span<f64>,
    tolerance: f64,
}

impl Figure {
    fn is(&self, held: &Property) -> bool {
        let near = |a: f64, b: f64| (a - b).abs() <= self.tolerance + 1e-9;
        let Some(ours) = (self.kind)(held.measure) else { return false };
        match (self.span, ours) {
            (Span::Exactly(a), Span::Exactly(b))
            | (Span::AtLeast(a), Span::AtLeast(b))
            | (Span::AtMost(a), Span::AtMost(b)) => near(a, b),
            (Span::Between(a, b), Span::Between(c, d)) => near(a, c) && near(b, d),
            _ => false,
        }
    }
}

/// Reads `850-1000`, `190 min`, `230 max`, `200 HB`, `290`; a bracket says where it holds, or holds
/// the figure in grams where pounds are printed.
fn printed(text: &str, quantity: &str, unit: &str) -> Figure {
    let in_brackets = text.split_once('(').map(|(_, rest)| rest.trim_end_matches(')'));
    let bare = text.split('(').next().unwrap_or(text).trim();
    let bare = match (quantity, in_brackets) {
        ("density", Some("8.41")) => "8.41",
        ("density", Some(note)) if note.contains("1.38 g/cm3") => "1.38",
        _ => bare,
    };
    let number = |text: &str| decimal(text).unwrap_or_else(|| panic!("{text:?} in {quantity}"));
    let words: Vec<_> = bare.split_whitespace().collect();
    let minimum = unit.ends_with("minima") || words.contains(&"min");
    let (first, second) = match words[0].trim_start_matches('M').split_once('-') {
        Some((low, high)) => (number(low), Some(number(high))),
        None => (number(words[0].trim_start_matches('M')), None),
    };
    let (thousand_pounds, pounds) = (unit.contains("ksi"), unit.contains("psi"));
    let factor = if thousand_pounds {
        in_newtons_per_mm2(ksi(1.0))
    } else if pounds {
        in_newtons_per_mm2(ksi(0.001))
    } else {
        1.0
    };
    let of = |value: f64| value * factor;
    let span = match second {
        Some(high) => Span::Between(of(first.value), of(high.value)),
        None if words.contains(&"max") => Span::AtMost(of(first.value)),
        None if words.contains(&"min") || minimum => Span::AtLeast(of(first.value)),
        None => Span::Exactly(of(first.value)),
    };
    Figure { kind: kind(quantity, bare, unit), span, tolerance: first.tolerance * factor }
}

fn kind(quantity: &str, figure: &str, unit: &str) -> fn(Measure) -> Option<Span<f64>> {
    let on = |scale: &str| figure.ends_with(scale) || quantity.ends_with(scale) || unit == scale;
    match quantity {
        "density" => |measure| match measure {
            Measure::Density(span) => Some(span.map(in_grams_per_cm3)),
            _ => None,
        },
        "tensile" | "stress at fracture" => |measure| match measure {
            Measure::TensileStrength(span) => Some(span.map(in_newtons_per_mm2)),
            _ => None,
        },
        "proof" | "yield" | "Rp0.2" | "0.2% proof" => |measure| match measure {
            Measure::ProofStress(span) => Some(span.map(in_newtons_per_mm2)),
            _ => None,
        },
        "A" => |measure| match measure {
            Measure::ElongationPercent(span) => Some(span),
            _ => None,
        },
        "machinability" if unit.contains("1212") => |measure| match measure {
            Measure::MachinabilityPercent(MachinabilityBasis::Steel1212, span) => Some(span),
            _ => None,
        },
        "machinability" => |measure| match measure {
            Measure::MachinabilityPercent(MachinabilityBasis::FreeCuttingBrass, span) => Some(span),
            _ => None,
        },
        _ if on("HRB") => |measure| hardness(measure, HardnessScale::RockwellB),
        _ if on("HRC") => |measure| hardness(measure, HardnessScale::RockwellC),
        _ if on("HV") => |measure| hardness(measure, HardnessScale::Vickers),
        _ if on("HB") => |measure| hardness(measure, HardnessScale::Brinell),
        _ if on("Rockwell") => |measure| hardness(measure, HardnessScale::RockwellM),
        other => panic!("what is {other} ({figure} {unit})?"),
    }
}

fn hardness(measure: Measure, wanted: HardnessScale) -> Option<Span<f64>> {
    match measure {
        Measure::Hardness(scale, span) if scale == wanted => Some(span),
        _ => None,
    }
}

/// Every clause of the row holds a mark of ours, and each mark of ours from this source is in the row.
fn designations(row: &mut Row, material: &Material) {
    let value = row.text("value").to_owned();
    let source = row.text("source").to_owned();
    let text = fold(&value);
    let cited: Vec<_> = material
        .designations
        .iter()
        .filter(|held| same(&source, held.source))
        .map(|held| held.mark)
        .collect();
    let ours: Vec<_> = material.designations.iter().map(|held| fold(held.mark)).collect();
    let known: Vec<_> = material.known_as.iter().map(|name| fold(name)).collect();
    // `C 0.95-1.25, Cr 0.35-0.45` is no mark: it stands as a sentence from the same source.
    let is_mark = |clause: &&str| !clause.trim().starts_with("C 0.");
    let marks = value.split(';').filter(is_mark);
    let clauses = marks.map(fold).filter(|clause| !clause.is_empty());
    let missing: Vec<_> = clauses
        .filter(|clause| !ours.iter().chain(&known).any(|mark| clause.contains(mark.as_str())))
        .collect();
    let agrees = !cited.is_empty() && missing.is_empty();
    let strange: Vec<_> = cited.iter().filter(|mark| !text.contains(&fold(mark))).collect();
    let got = format!("from it {cited:?}, not held {missing:?}, not in it {strange:?}");
    row.claim("value", Kind::Table, &value, got, agrees);
}

/// A fluid for a whole kind of metal: on the page of the one that is met most.
fn fluids(row: &mut Row) {
    let slug = match row.text("material") {
        "Alloy steels" => "alloy-steel-en24",
        "Brass" => "free-cutting-brass",
        "Copper" => "copper",
        "Monel" => "nickel-copper-400",
        "Cast iron" | "Cast iron (tapping)" => "grey-cast-iron",
        "Malleable iron" => "malleable-iron",
        "Bronze" => "gunmetal",
        "Aluminium and brass (tapping)" | "Aluminium" => "aluminium-6082",
        "Steel (tapping)" => "bright-mild-steel",
        other => panic!("which material is {other}?"),
    };
    let material = find(slug).unwrap_or_else(|| panic!("no material at {slug}"));
    match row.text("source") {
        source if source.starts_with("Dirac") => {
            row.leave_out("a word of an encyclopedia: the pages go by the handbook");
        }
        source if source.starts_with("Popular") && !row.text("material").starts_with("Alum") => {
            row.leave_out("a magazine's word: the pages go by the handbook, which differs");
        }
        _ => {
            lubricant(row, "drilling", &material.drilling_lubricant, material.drill_advice);
            lubricant(row, "tapping", &material.tapping_lubricant, material.tap_advice);
        }
    }
}

/// The same source, and every figure and every kind of fluid of the row in our sentence, which is the
/// first said of the fluid or further advice.
fn lubricant(row: &mut Row, column: &str, first: &Advice, further: &[Advice]) {
    let value = row.text(column).to_owned();
    if value.is_empty() {
        return;
    }
    let printed = value.split(" (").next().unwrap_or(&value).to_owned();
    let figures = printed.split(|c: char| !c.is_ascii_digit()).filter(|part| !part.is_empty());
    // What is left of a mixture is mineral oil: 20 % lard oil says 80 % mineral oil too.
    let figures: Vec<_> = figures.filter(|part| !matches!(*part, "70" | "75" | "80")).collect();
    let fluids = ["dry", "soluble oil", "lard oil", "sulphur", "paraffin"];
    let fluids: Vec<_> = fluids.into_iter().filter(|fluid| printed.contains(fluid)).collect();
    let says = |advice: &&Advice| {
        let text = fold(advice.text);
        same(row.text("source"), advice.source)
            && figures.iter().all(|figure| text.contains(figure))
            && fluids.iter().all(|fluid| text.contains(&fold(fluid)))
    };
    let found = [first].into_iter().chain(further).find(says);
    let (got, agrees) = (format!("{:?}", found.unwrap_or(first)), found.is_some());
    row.claim(column, Kind::Table, &value, got, agrees);
}

/// A range of the same source with the same ends.
fn speed(row: &mut Row, ours: &[SpeedRange]) {
    let value = row.text("value").to_owned();
    let metres = row.text("unit") == "m/min" && !value.contains("ft/min");
    let ends = value.split(' ').next().unwrap_or("").to_owned();
    let (low, high) = ends.split_once('-').unwrap_or((&ends, &ends));
    let number = |text: &str| decimal(text).unwrap_or_else(|| panic!("{text:?}")).value;
    let factor = if metres { 1.0 } else { 0.3048 };
    let (low, high) = (number(low) * factor, number(high) * factor);
    let source = row.text("source").to_owned();
    let from_it: Vec<_> = ours.iter().filter(|range| same(&source, range.source)).collect();
    let near = |a: f64, b: f64| (a - b).abs() < 1e-6;
    // The file sums up several rows of one source: one then has the low end, another the high one.
    let one_has = |wanted: f64, end: fn(&SpeedRange) -> Velocity| {
        from_it.iter().any(|range| near(in_metres_per_minute(end(range)), wanted))
    };
    let agrees = one_has(low, |range| range.low) && one_has(high, |range| range.high);
    row.claim("value", Kind::Table, &value, format!("{from_it:?}"), agrees);
}

/// A sentence of ours from the same source.
fn said(row: &mut Row, material: &'static Material) {
    let value = row.text("value").to_owned();
    let source = row.text("source").to_owned();
    // What is done about a broken tap is of no one metal, and proves nothing of this one.
    let sentences = material.sentences().filter(|(topic, _)| *topic != Topic::BrokenTap);
    let found = sentences.map(|(_, advice)| advice).find(|advice| same(&source, advice.source));
    row.claim("value", Kind::Table, &value, format!("{found:?}"), found.is_some());
}

/// Whether a source of ours is the row's: their first words are the same.
fn same(printed: &str, ours: Source) -> bool {
    let first = |text: &str| {
        let lower = text.to_lowercase();
        let mut words = lower.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
        words.next().map(str::to_owned)
    };
    // A recalled row has no source to agree on.
    let recalled = matches!(ours.grade, Grade::Memory | Grade::CommonPractice);
    readings::of(ours.cite).iter().any(|read| first(printed) == first(read))
        || (printed.starts_with("memory") && recalled)
}

fn fold(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}
