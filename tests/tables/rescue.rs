//! The troubles: each says first what can hurt, keeps metals and baths apart, and advises no acid.

use std::collections::BTreeSet;

use holewright_core::tables::inserts;
use holewright_core::tables::materials::{self, Advice, BrokenTap, Material};
use holewright_core::tables::rescue::{EYES, PRESSURE, Trouble, all, find};
use holewright_core::tables::source::Grade;
use holewright_core::tables::tool_steel::ToolSteel;
use holewright_core::units::{in_inch, in_mm};

use crate::outside;

const STEELS: [ToolSteel; 2] = [ToolSteel::Carbon, ToolSteel::HighSpeed];

fn texts(trouble: &Trouble, part: &Material, steel: ToolSteel) -> String {
    let ways = trouble.ways_for(Some(part), Some(steel));
    ways.flat_map(|way| way.says).map(|advice| advice.text).collect::<Vec<_>>().join(" ")
}

#[test]
fn every_trouble_is_whole_and_has_an_address_of_its_own() {
    let slugs: BTreeSet<&str> = all().iter().map(|trouble| trouble.slug).collect();
    assert_eq!(slugs.len(), all().len());
    for trouble in all() {
        let slug = trouble.slug;
        assert_eq!(find(slug), Some(trouble));
        assert!(slug.chars().all(|letter| letter.is_ascii_lowercase() || letter == '-'), "{slug}");
        assert!(trouble.ways.len() >= 4, "{slug}");
        assert!(!trouble.dangers.is_empty() && !trouble.names.is_empty(), "{slug}");
        assert!(!trouble.signs.is_empty() && !trouble.see.is_empty(), "{slug}");
        let names: BTreeSet<&str> = trouble.ways.iter().map(|way| way.name).collect();
        assert_eq!(names.len(), trouble.ways.len(), "{slug}: a way stands twice");
        for way in trouble.ways {
            assert!(!way.name.is_empty() && !way.says.is_empty(), "{slug}: {}", way.name);
        }
    }
}

#[test]
fn every_sentence_is_one_and_names_its_source() {
    for trouble in all() {
        for Advice { text, source } in trouble.sentences() {
            assert!(text.ends_with(['.', '?']) && !text.contains("  "), "{text}");
            assert!(text.starts_with(|first: char| first.is_uppercase()), "{text}");
            assert!(!source.cite.is_empty(), "{text}");
            assert_eq!(outside::named(text), None, "{text}");
            assert_eq!(outside::named(source.cite), None, "{}", source.cite);
            // A figure of a bath or of an insert is read, not remembered.
            let is_bath = text.contains("minutes") || text.contains("turns below the face");
            assert!(!is_bath || source.grade == Grade::Published, "{text}");
        }
    }
}

/// Where a part may stand under pressure, the page stops for the inspector before any way out; where hard
/// steel may fly, it asks for goggles.
#[test]
fn what_can_hurt_stands_before_the_ways() {
    for trouble in all() {
        for danger in [&EYES, &PRESSURE] {
            assert!(trouble.dangers.contains(danger), "{}: {}", trouble.slug, danger.text);
        }
    }
    assert!(PRESSURE.text.contains("inspector") && PRESSURE.text.contains("boiler code"));
}

/// Hot alum is for a carbon steel tap in a copper alloy; in iron and steel it is never offered.
#[test]
fn a_bath_is_offered_where_the_metal_stands_it_alone() {
    let tap = find("broken-tap").expect("a broken tap");
    let bath = |part: &Material, steel| {
        let name = "Dissolve it in hot alum";
        tap.ways_for(Some(part), Some(steel)).any(|way| way.name == name)
    };
    for material in materials::all() {
        let stands_it = material.broken_tap == BrokenTap::HotAlum;
        assert_eq!(bath(material, ToolSteel::Carbon), stands_it, "{}", material.slug);
        assert!(!bath(material, ToolSteel::HighSpeed), "{}", material.slug);
        for steel in STEELS {
            let said = texts(tap, material, steel);
            let never = said.contains("never put iron or steel work in alum");
            assert_eq!(never, material.broken_tap == BrokenTap::NeverAlum, "{}", material.slug);
            let attacked = said.contains("eat magnesium and zinc");
            assert_eq!(
                attacked,
                material.broken_tap == BrokenTap::AlumAttacks,
                "{}",
                material.slug
            );
        }
    }
}

/// Whatever is known of part and tool, there is a way to begin with and one to end with.
#[test]
fn no_metal_is_left_without_a_way() {
    for trouble in all() {
        for part in materials::all().iter().map(Some).chain([None]) {
            for steel in STEELS.map(Some).into_iter().chain([None]) {
                let ways: Vec<_> = trouble.ways_for(part, steel).collect();
                assert!(ways.len() >= 4, "{}", trouble.slug);
                assert_eq!(ways.first().copied(), trouble.ways.first(), "{}", trouble.slug);
                assert_eq!(ways.last().copied(), trouble.ways.last(), "{}", trouble.slug);
            }
        }
        // Nothing known leaves nothing out.
        assert_eq!(trouble.ways_for(None, None).count(), trouble.ways.len());
    }
}

#[test]
fn no_acid_is_advised() {
    let acids = ["nitric", "acid", "drain cleaner"];
    for trouble in all() {
        for Advice { text, .. } in trouble.sentences() {
            let lower = text.to_lowercase();
            let speaks = acids.iter().any(|acid| lower.contains(acid));
            let warns = ["no acid", "acid enough to eat"].iter().any(|words| lower.contains(words));
            assert!(!speaks || warns, "{text}");
        }
    }
}

/// The hole before an insert's tap is larger than the screw, and the drill lies between its limits.
#[test]
fn an_insert_hole_takes_the_screw_and_the_wire() {
    for hole in inserts::all() {
        let thread = hole.thread().expect("a thread held here");
        let holewright_core::tables::threads::Basic::Major(major) = thread.basic else {
            panic!("{}", thread.designation)
        };
        let [least, drill, most] = [hole.least, hole.drill, hole.most].map(|size| size.length());
        assert!(least <= drill && drill <= most, "{}", thread.designation);
        assert!(in_mm(least) > in_mm(major.length()), "{}", thread.designation);
        assert!(in_inch(least - major.length()) < 0.2, "{}", thread.designation);
    }
}
