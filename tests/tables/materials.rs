//! The material rows: whole, sourced, and found by whatever a person types.

use holewright_core::tables::materials::read::{ReadError, read};
use holewright_core::tables::materials::{
    Advice, BrokenTap, Chips, Family, FormingTap, Group, Material, PressureWork, SpeedRange, all,
    feeds, find,
};
use holewright_core::tables::source::{Grade, Source};
use holewright_core::units::{in_metres_per_minute, inch, mm};

use crate::readings;

/// addresses.md, "Materials from the first day", in its order.
const PROMISED: [&str; 18] = [
    "grey-cast-iron",
    "gunmetal",
    "phosphor-bronze-cast",
    "phosphor-bronze-drawn",
    "free-cutting-brass",
    "free-cutting-mild-steel",
    "bright-mild-steel",
    "medium-carbon-steel",
    "silver-steel",
    "gauge-plate",
    "stainless-303",
    "stainless-304",
    "aluminium-6082",
    "cast-aluminium",
    "copper",
    "acetal",
    "nylon",
    "ptfe",
];

#[expect(clippy::panic, reason = "a missing material must stop the test that asks for it")]
fn material(slug: &str) -> &'static Material {
    find(slug).unwrap_or_else(|| panic!("no material at {slug}"))
}

fn speeds(material: &'static Material) -> impl Iterator<Item = &'static SpeedRange> {
    material.drilling.iter().chain(material.reaming).chain(material.tapping)
}

fn slugs_where(holds: impl Fn(&Material) -> bool) -> Vec<&'static str> {
    all().iter().filter(|material| holds(material)).map(|material| material.slug).collect()
}

#[test]
fn the_promised_addresses_stand() {
    for slug in PROMISED {
        assert_eq!(material(slug).slug, slug, "promised from the first day");
    }
    assert_eq!(find("aluminium").map(|material| material.slug), Some("aluminium-6082"));
    assert_eq!(material("ptfe").path(), "/materials/ptfe");
}

#[test]
fn no_address_means_two_materials() {
    let mut addresses: Vec<_> = all()
        .iter()
        .flat_map(|material| material.aliases.iter().copied().chain([material.slug]))
        .collect();
    for address in &addresses {
        let clean = address
            .chars()
            .all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '-');
        assert!(clean, "{address} is not as addresses write it");
    }
    let count = addresses.len();
    addresses.sort_unstable();
    addresses.dedup();
    assert_eq!(addresses.len(), count);
}

/// What the trade says of each, once more, apart from the rows: its group, and a letter for each of
/// `s`hort chips, `g`rabs, `w`ork-hardens, `c`loses in, `f`orming tap suits, `p`ressure work likely.
#[rustfmt::skip]
const EXPECTED: &[(&str, Group, &str)] = &[
    ("grey-cast-iron", Group::IronAndGunmetal, "sp"),
    ("continuous-cast-iron", Group::IronAndGunmetal, "sp"),
    ("spheroidal-graphite-iron", Group::MildSteelAndPhosphorBronze, "p"),
    ("malleable-iron", Group::IronAndGunmetal, "p"),
    ("gunmetal", Group::IronAndGunmetal, "sgp"),
    ("gunmetal-lg4", Group::IronAndGunmetal, "sgp"),
    ("leaded-bronze", Group::IronAndGunmetal, "sgp"),
    ("phosphor-bronze-cast", Group::MildSteelAndPhosphorBronze, "gwp"),
    ("phosphor-bronze-drawn", Group::MildSteelAndPhosphorBronze, "gwfp"),
    ("free-cutting-phosphor-bronze", Group::IronAndGunmetal, "sgp"),
    ("aluminium-bronze", Group::Tough, "wp"),
    ("free-cutting-brass", Group::EasyCutting, "sgp"),
    ("engraving-brass", Group::EasyCutting, "sg"),
    ("dezincification-resistant-brass", Group::EasyCutting, "sgp"),
    ("sheet-brass", Group::MildSteelAndPhosphorBronze, "gwfp"),
    ("naval-brass", Group::MildSteelAndPhosphorBronze, "gp"),
    ("high-tensile-brass", Group::MildSteelAndPhosphorBronze, "gp"),
    ("nickel-silver", Group::MildSteelAndPhosphorBronze, "gwfp"),
    ("copper", Group::Tough, "cfp"),
    ("cupro-nickel", Group::Tough, "wfp"),
    ("beryllium-copper", Group::Tough, "w"),
    ("free-cutting-mild-steel", Group::FreeCuttingSteel, "fp"),
    ("leaded-free-cutting-steel", Group::FreeCuttingSteel, "fp"),
    ("bright-mild-steel", Group::MildSteelAndPhosphorBronze, "fp"),
    ("black-mild-steel", Group::MildSteelAndPhosphorBronze, "fp"),
    ("medium-carbon-steel", Group::MildSteelAndPhosphorBronze, "fp"),
    ("case-hardening-steel", Group::MildSteelAndPhosphorBronze, "f"),
    ("spring-steel", Group::Tough, ""),
    ("cast-steel", Group::MildSteelAndPhosphorBronze, "p"),
    ("alloy-steel-en16", Group::Tough, "p"),
    ("alloy-steel-en19", Group::Tough, "p"),
    ("alloy-steel-en24", Group::Tough, "p"),
    ("silver-steel", Group::Tough, "p"),
    ("gauge-plate", Group::Tough, ""),
    ("stainless-303", Group::MildSteelAndPhosphorBronze, "wfp"),
    ("stainless-304", Group::Tough, "wfp"),
    ("stainless-316", Group::Tough, "wfp"),
    ("stainless-416", Group::MildSteelAndPhosphorBronze, "p"),
    ("stainless-431", Group::Tough, "p"),
    ("aluminium-6082", Group::EasyCutting, "f"),
    ("aluminium-6063", Group::EasyCutting, "f"),
    ("aluminium-2011", Group::EasyCutting, "s"),
    ("aluminium-2014", Group::EasyCutting, ""),
    ("aluminium-7075", Group::EasyCutting, ""),
    ("cast-aluminium", Group::EasyCutting, ""),
    ("cast-aluminium-lm25", Group::EasyCutting, ""),
    ("nickel-copper-400", Group::Tough, "wfp"),
    ("titanium-grade-2", Group::Tough, "w"),
    ("titanium-grade-5", Group::Tough, "w"),
    ("zinc-die-casting-alloy", Group::EasyCutting, "sf"),
    ("magnesium-alloy", Group::EasyCutting, "s"),
    ("white-metal", Group::EasyCutting, ""),
    ("acetal", Group::EasyCutting, "c"),
    ("nylon", Group::EasyCutting, "c"),
    ("ptfe", Group::EasyCutting, "c"),
    ("peek", Group::EasyCutting, "c"),
    ("acrylic", Group::EasyCutting, "gc"),
    ("polycarbonate", Group::EasyCutting, "gc"),
    ("pvc", Group::EasyCutting, "c"),
    ("laminated-phenolic", Group::EasyCutting, "sc"),
];

#[test]
fn groups_and_behaviour_follow_the_trade() {
    for material in all() {
        let marks = [
            (material.chips == Chips::Short, 's'),
            (material.grabs, 'g'),
            (material.work_hardens, 'w'),
            (material.closes_in, 'c'),
            (material.forming_tap == FormingTap::Suits, 'f'),
            (material.pressure_work == PressureWork::Plausible, 'p'),
        ];
        let letters: String =
            marks.iter().filter(|(holds, _)| *holds).map(|(_, letter)| letter).collect();
        let row = (material.slug, material.group, letters.as_str());
        assert!(EXPECTED.contains(&row), "{row:?} is not expected");
    }
    assert_eq!(EXPECTED.len(), all().len());
}

#[test]
fn alum_is_offered_where_it_leaves_the_metal() {
    // Three strong copper alloys hold aluminium or nickel, of which nothing was read.
    let unconfirmed =
        ["aluminium-bronze", "high-tensile-brass", "cupro-nickel", "beryllium-copper"];
    for material in all() {
        let expected = match material.family {
            _ if unconfirmed.contains(&material.slug) => BrokenTap::AlumUnconfirmed,
            Family::Brass | Family::Bronze | Family::Copper => BrokenTap::HotAlum,
            Family::CastIron | Family::Steel | Family::Stainless => BrokenTap::NeverAlum,
            Family::Aluminium | Family::Nickel | Family::Titanium | Family::WhiteMetal => {
                BrokenTap::AlumUnconfirmed
            }
            Family::Magnesium | Family::Zinc => BrokenTap::AlumAttacks,
            Family::Plastic => BrokenTap::NoNeed,
        };
        assert_eq!(material.broken_tap, expected, "{}", material.slug);
    }
}

#[test]
fn one_is_refused_outright() {
    assert_eq!(slugs_where(|material| material.refused.is_some()), ["beryllium-copper"]);
}

#[test]
fn every_speed_is_a_range_a_home_machine_could_meet() {
    for material in all().iter().filter(|material| material.refused.is_none()) {
        assert!(!material.drilling.is_empty(), "{} has no drilling speed", material.slug);
        assert!(!material.tapping.is_empty(), "{} has no tapping speed", material.slug);
        for range in speeds(material) {
            let (low, high) = (in_metres_per_minute(range.low), in_metres_per_minute(range.high));
            let place = format!("{}, {}", material.slug, range.printed_as);
            assert!(low <= high, "{place}: {low} above {high}");
            assert!((1.0..=200.0).contains(&low), "{place}: {low} m/min");
            assert!((1.0..=200.0).contains(&high), "{place}: {high} m/min");
        }
    }
}

#[test]
fn the_plan_never_takes_the_fastest_source() {
    for material in all() {
        for list in [material.drilling, material.tapping] {
            let Some(first) = list.first() else { continue };
            let fastest = list.iter().map(|range| in_metres_per_minute(range.high));
            let fastest = fastest.fold(0.0, f64::max);
            let middle = in_metres_per_minute(first.low + first.high) / 2.0;
            let alone = list.iter().all(|range| range.high == first.high);
            assert!(alone || middle < fastest, "{}, {}", material.slug, first.printed_as);
        }
    }
}

/// Published rows, with the metres a minute the check file prints beside them, to 0.1.
#[test]
fn speeds_convert_as_the_published_rows_do() {
    #[track_caller]
    fn check(list: &[SpeedRange], printed_as: &str, cite: &str, low: f64, high: f64) {
        let range = list
            .iter()
            .find(|range| {
                range.printed_as == printed_as
                    && readings::of(range.source.cite).iter().any(|read| read.contains(cite))
            })
            .unwrap_or_else(|| panic!("no row {printed_as} of {cite}"));
        assert!((in_metres_per_minute(range.low) - low).abs() <= 0.05);
        assert!((in_metres_per_minute(range.high) - high).abs() <= 0.05);
        assert_eq!(range.source.grade, Grade::Published);
    }
    let drilling = |slug| material(slug).drilling;
    check(drilling("bright-mild-steel"), "low carbon steel", "US Navy", 24.4, 33.5);
    check(drilling("medium-carbon-steel"), "medium carbon steel", "US Navy", 21.3, 24.4);
    check(drilling("stainless-304"), "stainless steel", "US Navy", 9.1, 12.2);
    check(drilling("grey-cast-iron"), "medium hard cast iron", "Jet", 21.3, 30.5);
    check(drilling("grey-cast-iron"), "cast iron", "Nominal", 25.0, 35.0);
    check(drilling("gunmetal"), "brass and bronze, ordinary", "Norseman", 45.7, 91.4);
    check(drilling("phosphor-bronze-cast"), "bronze, high tensile", "Norseman", 21.3, 45.7);
    check(drilling("silver-steel"), "tool steel, 1.2 % carbon", "Jet", 15.2, 18.3);
    check(drilling("aluminium-6082"), "aluminium and alloys", "Norseman", 61.0, 91.4);
    check(drilling("ptfe"), "plastics", "Nominal", 20.0, 75.0);
    let tapping = |slug| material(slug).tapping;
    check(tapping("gunmetal"), "cast bronze", "one-page chart", 15.2, 15.2);
    check(tapping("copper"), "copper", "Lavallee", 9.1, 18.3);
    check(tapping("free-cutting-brass"), "brass", "Lavallee", 15.2, 61.0);
    check(tapping("bright-mild-steel"), "1020 steel", "Machinery's Handbook", 13.7, 18.3);
    check(tapping("stainless-303"), "300 series stainless steel", "one-page chart", 6.1, 6.1);
    check(tapping("silver-steel"), "high carbon steel", "one-page chart", 3.0, 3.0);
}

#[test]
fn feeds_cover_every_drill_from_number_80_up() {
    let rows = feeds::general();
    for pair in rows.windows(2) {
        assert_eq!(pair[0].to, Some(pair[1].from), "a gap between two feed rows");
        assert!(pair[0].low < pair[1].low && pair[0].high < pair[1].high);
    }
    assert_eq!(rows.last().and_then(|row| row.to), None);
    // 0.0135 in is No. 80, the smallest drill the list names.
    assert!(feeds::for_drill(inch(0.0134)).is_none());
    assert_eq!(feeds::for_drill(inch(0.0135)), rows.first());
    assert_eq!(feeds::for_drill(inch(0.125)), rows.first());
    assert_eq!(feeds::for_drill(mm(3.2)), rows.get(1));
    assert_eq!(feeds::for_drill(mm(26.0)), rows.last());
    for row in all().iter().flat_map(|material| material.feeds).chain(rows) {
        assert!(row.low > mm(0.0) && row.low <= row.high && row.high < mm(1.0));
        assert!(row.to.is_none_or(|to| row.from <= to));
    }
}

#[track_caller]
fn check_source(source: Source, place: &str) {
    assert!(!source.cite.trim().is_empty(), "{place}: no cite");
    let said_published = matches!(source.grade, Grade::Published);
    let read = !["workshop practice", "recalled"].iter().any(|word| source.cite.contains(word));
    assert_eq!(said_published, read, "{place}: graded {} but cites {}", source.grade, source.cite);
}

#[test]
fn everything_said_has_a_source_of_an_honest_grade() {
    for material in all() {
        for statement in material.statements() {
            check_source(statement.source(), &format!("{}: {statement:?}", material.slug));
        }
    }
    for feed in feeds::general() {
        check_source(feed.source, feed.printed_as);
    }
}

#[test]
fn advice_is_plain_sentences() {
    for material in all() {
        assert!(!material.behaviour.is_empty(), "{} has no behaviour", material.slug);
        assert!(!material.cautions.is_empty(), "{} has no cautions", material.slug);
        assert!(!material.dangers.is_empty(), "{} has no dangers", material.slug);
        for (_, Advice { text, .. }) in material.sentences() {
            assert!(text.ends_with('.'), "{text}");
            assert!(text.starts_with(|letter: char| letter.is_uppercase()), "{text}");
            assert!(!text.contains('!') && !text.contains("  "), "{text}");
        }
    }
}

#[test]
fn the_usual_hazards_are_named() {
    #[track_caller]
    fn check(slug: &str, word: &str) {
        let named = material(slug).dangers.iter().any(|danger| danger.advice.text.contains(word));
        assert!(named, "{slug} does not speak of {word}");
    }
    check("grey-cast-iron", "dust");
    for slug in ["gunmetal", "free-cutting-brass", "phosphor-bronze-cast", "phosphor-bronze-drawn"]
    {
        check(slug, "lead: wash your hands before food");
        check(slug, "clamp it");
    }
    check("free-cutting-mild-steel", "lead");
    check("copper", "beryllium copper");
    check("ptfe", "Overheated");
    check("ptfe", "smoke");
    check("acetal", "formaldehyde");
    check("aluminium-6082", "dust burns");
    check("aluminium-6082", "Paraffin burns");
    check("silver-steel", "Quenching");
    check("stainless-304", "dermatitis");
}

#[test]
fn no_trade_name_is_used_for_a_material() {
    for material in all() {
        let names = [material.slug, material.name].into_iter();
        let names = names.chain(material.aliases.iter().chain(material.known_as).copied());
        let texts = names
            .chain(material.sentences().map(|(_, advice)| advice.text))
            .chain(material.properties.iter().map(|property| property.condition));
        // A row of speeds keeps the word its source prints: that is part of the citation.
        for text in texts.map(str::to_lowercase) {
            for brand in ["delrin", "teflon", "monel", "tufnol", "bakelite"] {
                assert!(!text.contains(brand), "{}: {text}", material.slug);
            }
        }
    }
}

#[test]
fn each_own_name_is_read_back() {
    for material in all() {
        let marks = material.designations.iter().map(|designation| designation.mark);
        let names = [material.slug, material.name]
            .into_iter()
            .chain(material.aliases.iter().chain(material.known_as).copied())
            .chain(marks);
        for name in names {
            for typed in [
                name.to_owned(),
                name.to_uppercase(),
                name.replace(['-', ' '], "  "),
                format!(" {name}."),
            ] {
                let read = read(&typed).map(|material| material.slug);
                assert_eq!(read, Ok(material.slug), "{typed}");
            }
        }
    }
}

#[test]
fn usual_spellings_are_read() {
    #[rustfmt::skip]
    let spellings = [
        ("Cast Iron", "grey-cast-iron"),
        ("gray iron", "grey-cast-iron"),
        ("C.I.", "grey-cast-iron"),
        ("gun metal", "gunmetal"),
        ("Gun-Metal", "gunmetal"),
        ("leaded gunmetal LG2", "gunmetal"),
        ("LG 2", "gunmetal"),
        ("BS 1400 LG2", "gunmetal"),
        ("BS1400-LG2", "gunmetal"),
        ("bronze LG2", "gunmetal"),
        ("PB1", "phosphor-bronze-cast"),
        ("phosphor bronze (PB 1)", "phosphor-bronze-cast"),
        ("PB102 phos bronze", "phosphor-bronze-drawn"),
        ("brass", "free-cutting-brass"),
        ("cz 121", "free-cutting-brass"),
        ("CZ-121 brass rod", "free-cutting-brass"),
        ("BS 2874 CZ121", "free-cutting-brass"),
        ("en 1 a", "free-cutting-mild-steel"),
        ("EN1APb", "leaded-free-cutting-steel"),
        ("EN1A mild steel", "free-cutting-mild-steel"),
        ("mild steel", "bright-mild-steel"),
        ("mild steel bar", "bright-mild-steel"),
        ("BMS", "bright-mild-steel"),
        ("EN 3B steel bar", "bright-mild-steel"),
        ("En8", "medium-carbon-steel"),
        ("BS970 080 M 40", "medium-carbon-steel"),
        ("Silver Steel", "silver-steel"),
        ("drill rod", "silver-steel"),
        ("BS 1407 silver steel", "silver-steel"),
        ("ground flat stock", "gauge-plate"),
        ("O1 tool steel", "gauge-plate"),
        ("303 stainless", "stainless-303"),
        ("stainless 1.4301", "stainless-304"),
        ("AISI 304", "stainless-304"),
        ("aluminum", "aluminium-6082"),
        ("aluminium rod", "aluminium-6082"),
        ("HE 30", "aluminium-6082"),
        ("6082-T6 aluminium", "aluminium-6082"),
        ("aluminium LM25", "cast-aluminium-lm25"),
        ("C101 copper", "copper"),
        ("POM", "acetal"),
        ("nylon 66 rod", "nylon"),
        ("p.t.f.e.", "ptfe"),
    ];
    for (typed, slug) in spellings {
        assert_eq!(read(typed).map(|material| material.slug), Ok(slug), "{typed}");
    }
}

#[test]
fn a_word_for_two_materials_asks() {
    #[track_caller]
    fn check(typed: &str, expected: &[&str]) {
        let Err(ReadError::Ambiguous { typed: kept, candidates }) = read(typed) else {
            panic!("{typed} does not ask: {:?}", read(typed).map(|material| material.slug));
        };
        let slugs: Vec<_> = candidates.iter().map(|material| material.slug).collect();
        assert_eq!((kept.as_str(), slugs.as_slice()), (typed, expected));
    }
    let phosphor =
        ["phosphor-bronze-cast", "phosphor-bronze-drawn", "free-cutting-phosphor-bronze"];
    check("Phosphor bronze", &phosphor);
    check("phosphor-bronze rod", &phosphor);
    let cast =
        ["gunmetal", "gunmetal-lg4", "leaded-bronze", "phosphor-bronze-cast", "aluminium-bronze"];
    check("cast bronze", &cast);
    check("dural", &["aluminium-2014", "aluminium-6082"]);
    check("titanium", &["titanium-grade-2", "titanium-grade-5"]);
    let stainless =
        ["stainless-303", "stainless-304", "stainless-316", "stainless-416", "stainless-431"];
    check("stainless", &stainless);
    check("Stainless Steel", &stainless);
    check("alloy steel", &["alloy-steel-en16", "alloy-steel-en19", "alloy-steel-en24"]);
    check("tool steel", &["silver-steel", "gauge-plate"]);
    let asks = |typed| match read(typed) {
        Err(ReadError::Ambiguous { candidates, .. }) => candidates.len(),
        other => panic!("{typed} does not ask: {other:?}"),
    };
    assert_eq!([asks("bronze"), asks("plastics"), asks("aluminium alloy")], [7, 8, 7]);
    assert_eq!([asks("steel"), asks("iron"), asks("casting")], [18, 4, 13]);
}

#[test]
fn what_is_not_held_is_not_guessed_at() {
    #[track_caller]
    fn check(typed: &str, nearest_slugs: &[&str]) {
        let Err(ReadError::Unknown { typed: kept, nearest }) = read(typed) else {
            panic!("{typed} was read as {:?}", read(typed).map(|material| material.slug));
        };
        let slugs: Vec<_> = nearest.iter().map(|material| material.slug).collect();
        assert_eq!((kept.as_str(), slugs.as_slice()), (typed, nearest_slugs));
    }
    check("gunmetl", &["gunmetal"]);
    check("bras", &["free-cutting-brass", "sheet-brass"]);
    check("cooper", &["copper"]);
    check("phosph", &["phosphor-bronze-cast", "phosphor-bronze-drawn"]);
    check("silver", &["silver-steel"]);
    check(
        "stainless 999",
        &["stainless-303", "stainless-304", "stainless-316", "stainless-416", "stainless-431"],
    );
    check("unobtainium", &[]);
    check("", &[]);
    check(" -.- ", &[]);
    // Other metals with one of our words in their name.
    for typed in ["silicon bronze", "tungsten", "high-speed steel", "Inconel"] {
        assert!(matches!(read(typed), Err(ReadError::Unknown { .. })), "{typed}");
    }
}

#[test]
fn a_size_is_no_grade_and_leaves_the_metal() {
    for (typed, slug) in [
        ("3/16 silver steel", "silver-steel"),
        ("4 mm silver steel", "silver-steel"),
        ("4mm silver steel", "silver-steel"),
        ("silver steel 3/16", "silver-steel"),
        ("silver steel, 1/4 dia", "silver-steel"),
        ("silver steel 1 1/4\" dia.", "silver-steel"),
        ("Ø6 silver steel", "silver-steel"),
        ("½ silver steel", "silver-steel"),
        ("5/16 mild steel", "bright-mild-steel"),
        ("5/16 A/F hex mild steel", "bright-mild-steel"),
        ("brass bar 3/16 dia", "free-cutting-brass"),
        ("round brass 303 thou", "free-cutting-brass"),
        ("brass 25 x 3 mm", "free-cutting-brass"),
        ("brass 3.16", "free-cutting-brass"),
        ("1/2 hard brass bar", "free-cutting-brass"),
        ("brass sheet 1 mm", "sheet-brass"),
        ("brass sheet 20swg", "sheet-brass"),
        ("3 mm gauge plate", "gauge-plate"),
        ("EN 8 1/2 dia", "medium-carbon-steel"),
        ("stainless 303 3/16", "stainless-303"),
        ("316 1/4 hex", "stainless-316"),
        ("stainless 1.4301 6 mm", "stainless-304"),
    ] {
        assert_eq!(read(typed).map(|material| material.slug), Ok(slug), "{typed}");
    }
    // A figure that is written otherwise than a grade is none.
    for typed in ["3/16 round", "3.16", "1/4", "25 x 3 mm", "brass 303", "stainless 316/3"] {
        assert!(matches!(read(typed), Err(ReadError::Unknown { .. })), "{typed}");
    }
    let Err(ReadError::Ambiguous { candidates, .. }) = read("steel 3/16") else {
        panic!("it asks which steel");
    };
    assert_eq!(candidates.len(), 18);
}

#[test]
fn a_form_that_its_usual_metal_is_not_sold_in_is_another_metal() {
    for (typed, slug) in [
        ("half hard brass sheet", "sheet-brass"),
        ("brass plate", "sheet-brass"),
        ("strip brass, soft", "sheet-brass"),
        ("engraving brass plate", "engraving-brass"),
        ("brass bar", "free-cutting-brass"),
        ("bronze sheet", "phosphor-bronze-drawn"),
        ("phosphor bronze sheet half hard", "phosphor-bronze-drawn"),
        ("angle iron", "black-mild-steel"),
        ("old angle iron 25 x 3 mm", "black-mild-steel"),
    ] {
        assert_eq!(read(typed).map(|material| material.slug), Ok(slug), "{typed}");
    }
    for (typed, slugs) in [
        ("stainless sheet", &["stainless-304", "stainless-316"][..]),
        ("ali sheet 1.6", &["aluminium-6082", "aluminium-2014", "aluminium-7075"]),
    ] {
        let Err(ReadError::Ambiguous { candidates, .. }) = read(typed) else {
            panic!("{typed} does not ask");
        };
        let found: Vec<_> = candidates.iter().map(|material| material.slug).collect();
        assert_eq!(found, slugs, "{typed}");
    }
}

#[test]
fn the_errors_say_what_was_typed_and_what_is_near() {
    let message = |typed| read(typed).expect_err("not a name").to_string();
    assert_eq!(
        message("stainless"),
        "“stainless” could be stainless steel 303, stainless steel 304, stainless steel 316, stainless steel 416 or stainless steel 431"
    );
    assert_eq!(message("gunmetl"), "no material here is called “gunmetl”; nearest: gunmetal");
    assert_eq!(message("zzz"), "no material here is called “zzz”");
}

#[test]
fn long_and_odd_text_is_refused_quietly() {
    let repeated = read(&"brass ".repeat(10_000)).map(|material| material.slug);
    assert_eq!(repeated, Ok("free-cutting-brass"));
    for typed in ["é½″🙂".repeat(5_000), "a".repeat(100_000), "\u{0}\n\t".to_owned()] {
        assert!(matches!(read(&typed), Err(ReadError::Unknown { .. })));
    }
}
