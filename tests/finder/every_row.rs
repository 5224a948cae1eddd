//! Every row of the tables is found by each of its names.

use holewright_core::finder::{Kind, MOST, PAGES, find};
use holewright_core::tables::{drills, materials, threads};

use super::addresses::decoded;

fn is_found(query: &str, url: &str) -> bool {
    find(query).hits.iter().any(|hit| hit.url == url)
}

fn leads_straight_to(query: &str, url: &str) -> bool {
    find(query).only().is_some_and(|hit| hit.url == url)
}

#[test]
fn every_thread_by_its_designation_and_its_address() {
    for thread in threads::all() {
        let path = thread.path();
        assert!(leads_straight_to(thread.designation, &path), "{}", thread.designation);
        assert!(leads_straight_to(&path, &path), "{path}");
    }
}

#[test]
fn every_drill_by_its_label() {
    for drill in drills::all() {
        let path = drill.path();
        // Threads may have that size, and 25 BA that number.
        assert!(is_found(&drill.label, &path), "{}", drill.label);
        let with_word = format!("{} drill", drill.label);
        assert!(leads_straight_to(&with_word, &path), "{with_word}");
    }
}

#[test]
fn every_system_by_each_of_its_names() {
    for system in threads::systems() {
        let path = format!("/threads/{}", system.slug);
        for name in [system.name, system.mark, system.slug] {
            assert!(is_found(name, &path), "{name}");
        }
        for word in system.spellings {
            // A word that a rare system shares does not mean it.
            let is_asked = threads::read::systems(word).contains(&system.id);
            assert_eq!(is_found(word, &path), is_asked, "{word}");
        }
    }
}

#[test]
fn every_material_by_each_of_its_names() {
    for material in materials::all() {
        let marks = material.designations.iter().map(|designation| designation.mark);
        let names = material.aliases.iter().chain(material.known_as).copied().chain(marks);
        for name in names.chain([material.slug, material.name]) {
            assert!(is_found(name, &material.path()), "{name}");
        }
    }
}

#[test]
fn every_page_by_each_of_its_names_and_words() {
    for page in PAGES.iter() {
        let kinds = [Kind::Calculator, Kind::Rescue, Kind::List];
        assert!(kinds.contains(&page.kind), "{}", page.title);
        for name in page.names {
            // Members speak of it too, so that it is listed.
            if page.kind == Kind::Rescue {
                let found = find(name);
                let first = found.hits.first().map(|hit| hit.url.as_ref());
                assert_eq!(first, Some(page.url.as_ref()), "{name}");
                assert!(found.only().is_none(), "{name}");
            } else {
                assert!(leads_straight_to(name, &page.url), "{name}");
            }
        }
        for word in page.words {
            assert!(is_found(word, &page.url), "{word}");
        }
    }
}

#[test]
fn every_material_with_two_letters_of_its_name_swapped() {
    let mut count = 0;
    for material in materials::all() {
        let letters: Vec<char> = material.name.chars().collect();
        for place in 0..letters.len() - 1 {
            let mut swapped = letters.clone();
            swapped.swap(place, place + 1);
            // The swap must be inside a word that is long enough to be put right.
            let typed: String = swapped.iter().collect();
            let word = |text: &str| -> String {
                let before = text.chars().take(place + 1).collect::<Vec<_>>();
                let start = before.iter().rposition(|letter| !letter.is_alphabetic());
                let rest = text.chars().skip(start.map_or(0, |start| start + 1));
                rest.take_while(|letter| letter.is_alphabetic()).collect()
            };
            let is_inside = letters[place].is_alphabetic() && letters[place + 1].is_alphabetic();
            if !is_inside || letters[place] == letters[place + 1] || word(material.name).len() < 4 {
                continue;
            }
            count += 1;
            assert!(is_found(&typed, &material.path()), "{typed}");
        }
    }
    assert!(count > 150, "{count} swaps");
}

#[test]
fn a_thread_and_a_material_offer_their_plan_first() {
    for thread in threads::all().step_by(29) {
        for material in materials::all() {
            for query in [
                format!("{} in {}", thread.designation, material.name),
                format!("{} {}", material.name, thread.designation),
            ] {
                let found = find(&query);
                let first = found.hits.first().unwrap_or_else(|| panic!("{query} finds nothing"));
                let address = decoded(&first.url);
                let expected =
                    format!("/plan?thread={}&material={}", thread.designation, material.slug);
                assert_eq!(address, expected, "{query}");
                assert!(found.only().is_none() && found.hits.len() < MOST, "{query}");
            }
        }
    }
}
