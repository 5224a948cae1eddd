//! How to tell each material, and what scrap is usually made of.

use std::collections::BTreeSet;

use holewright_core::tables::materials::read::{ReadError, read};
use holewright_core::tables::materials::scrap::{SCRAP, of, scrap};
use holewright_core::tables::materials::telling::with_their_own;
use holewright_core::tables::materials::{Advice, Family, Measure, all, find};
use holewright_core::tables::source::Grade;

fn is_a_sentence(advice: &Advice) -> bool {
    advice.text.ends_with('.') && !advice.source.cite.is_empty()
}

#[test]
fn every_material_answers_every_test_and_says_on_what_ground() {
    for material in all() {
        let telling = material.telling();
        for test in telling.tests() {
            assert!(is_a_sentence(&test.shows), "{}: {}", material.slug, test.shows.text);
            assert!(test.shows.text.len() > 12, "{}: {}", material.slug, test.shows.text);
        }
        for advice in telling.apart.iter().chain(telling.cautions) {
            assert!(is_a_sentence(advice), "{}: {}", material.slug, advice.text);
            assert_ne!(advice.source.grade, Grade::Published, "{}", material.slug);
        }
        let weighed =
            material.properties.iter().any(|it| matches!(it.measure, Measure::Density(_)));
        assert!(weighed, "{} has no density in print", material.slug);
    }
}

#[test]
fn what_differs_from_its_family_is_a_material_once() {
    let slugs: Vec<&str> = with_their_own().collect();
    let once: BTreeSet<&str> = slugs.iter().copied().collect();
    assert_eq!(once.len(), slugs.len());
    for slug in slugs {
        assert!(find(slug).is_some_and(|it| it.slug == slug), "{slug}");
    }
}

/// Common practice, no source.
#[test]
fn a_test_that_can_hurt_says_so() {
    for material in all() {
        let telling = material.telling();
        let said: String = telling.cautions.iter().map(|caution| caution.text).collect();
        let sparks = matches!(
            material.family,
            Family::CastIron
                | Family::Steel
                | Family::Stainless
                | Family::Nickel
                | Family::Titanium
        );
        assert!(!sparks || said.contains("Goggles"), "{}: {said}", material.slug);
        let burns = matches!(material.family, Family::Magnesium | Family::Titanium);
        assert!(!burns || said.contains("burn"), "{}: {said}", material.slug);
    }
    let beryllium = find("beryllium-copper").map(|it| it.telling());
    assert!(beryllium.is_some_and(|it| it.file.text.starts_with("Do not file it")));
    let magnesium = find("magnesium-alloy").map(|it| it.telling());
    assert!(magnesium.is_some_and(|it| it.spark.text.starts_with("Strike no spark")));
}

#[test]
fn look_alikes_differ_in_some_test() {
    for (one, other) in [
        ("stainless-303", "stainless-304"),
        ("stainless-416", "stainless-304"),
        ("gunmetal", "free-cutting-brass"),
        ("gunmetal", "phosphor-bronze-drawn"),
        ("silver-steel", "bright-mild-steel"),
        ("aluminium-2014", "aluminium-6063"),
        ("grey-cast-iron", "spheroidal-graphite-iron"),
        ("acrylic", "polycarbonate"),
    ] {
        let telling = |slug| find(slug).map(|it| it.telling());
        assert_ne!(telling(one), telling(other), "{one} and {other}");
    }
}

#[test]
fn scrap_is_a_guess_that_asks() {
    let mut words = BTreeSet::new();
    for part in SCRAP {
        assert!(is_a_sentence(&part.tell), "{}", part.name());
        assert!(!part.materials().is_empty(), "{}", part.name());
        for word in part.words {
            assert!(words.insert(*word), "{word} stands twice");
            assert_eq!(scrap(word), Some(part), "{word}");
            for typed in [format!("an old {word}"), format!("a scrap {word}"), format!("{word}s")] {
                assert_eq!(scrap(&typed), Some(part), "{typed}");
            }
            let read = read(word);
            let Err(ReadError::Ambiguous { candidates, .. }) = read else {
                panic!("{word} is taken for one: {read:?}");
            };
            assert_eq!(candidates, part.materials(), "{word}");
        }
        for material in part.materials() {
            assert!(of(material).any(|other| other == part), "{}", material.slug);
        }
    }
}

#[test]
fn a_name_of_a_material_is_no_scrap() {
    for material in all() {
        let marks = material.designations.iter().map(|known| known.mark);
        for name in material.known_as.iter().copied().chain(marks).chain([material.name]) {
            assert!(scrap(name).is_none(), "{name}");
        }
    }
}
