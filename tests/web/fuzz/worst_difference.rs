//! U31: a comparison of two notes stays short on the worst that two notes can be.

use std::time::{Duration, Instant};

use holewright_server::rules::notes::difference::{Effort, Part, between};
use holewright_server::rules::notes::fields::TEXT;

/// A text as long as may be, of these words by turns.
fn full_of(words: impl Fn(usize) -> String) -> String {
    let mut text = String::new();
    for number in 0.. {
        let word = words(number);
        if text.chars().count() + word.chars().count() + 1 > TEXT.longest {
            break;
        }
        text.push_str(&word);
        text.push(' ');
    }
    text
}

fn scattered(number: usize, salt: usize) -> usize {
    number.wrapping_mul(2_654_435_761).wrapping_add(salt.wrapping_mul(40_503)) >> 7
}

/// Pairs of texts that a comparison by words finds hard: much that could stand for much.
fn worst() -> Vec<(&'static str, String, String)> {
    let letter = |number: usize| char::from(b'a' + u8::try_from(number % 26).unwrap()).to_string();
    vec![
        ("nothing in common", full_of(|_| "a".into()), full_of(|_| "b".into())),
        ("two words by turns, shifted", full_of(|n| letter(n % 2)), full_of(|n| letter(n / 2 % 2))),
        (
            "letters by chance",
            full_of(|n| letter(scattered(n, 1))),
            full_of(|n| letter(scattered(n, 2))),
        ),
        (
            "two letters by chance",
            full_of(|n| letter(scattered(n, 1) % 2)),
            full_of(|n| letter(scattered(n, 5) % 2)),
        ),
        (
            "the other way round",
            full_of(|n| n.to_string()),
            full_of(|n| (9_999 - n % 9_999).to_string()),
        ),
        (
            "every second word another",
            full_of(|n| if n % 2 == 0 { "x".into() } else { n.to_string() }),
            full_of(|n| if n % 2 == 0 { "y".into() } else { n.to_string() }),
        ),
        ("unlike words", full_of(|n| format!("{n:x}")), full_of(|n| format!("{n:o}"))),
        (
            "the same words shuffled",
            full_of(|n| format!("{:x}", n % 4_096)),
            full_of(|n| format!("{:x}", n * 1_597 % 4_096)),
        ),
        (
            "six words by chance",
            full_of(|n| letter(scattered(n * n, 1) % 6)),
            full_of(|n| letter(scattered(n * n, 2) % 6)),
        ),
        (
            "unlike spaces",
            full_of(|n| format!("a{}", " ".repeat(scattered(n, 3) % 5))),
            full_of(|n| format!("a{}", " ".repeat(scattered(n, 9) % 5))),
        ),
        ("no words", "·".repeat(TEXT.longest), "-".repeat(TEXT.longest)),
        ("marks", full_of(|_| "·\u{301}".into()), full_of(|_| "·\u{300}".into())),
    ]
}

fn sides(parts: &[Part]) -> (String, String) {
    let (mut before, mut after) = (String::new(), String::new());
    for part in parts {
        match part {
            Part::Same(text) => {
                before.push_str(text);
                after.push_str(text);
            }
            Part::Gone(text) => before.push_str(text),
            Part::Added(text) => after.push_str(text),
        }
    }
    (before, after)
}

#[test]
fn u31_the_worst_two_notes_are_compared_soon_and_alike_each_time() {
    for (what, old, new) in worst() {
        let since = Instant::now();
        let parts = between(&old, &new);
        let took = since.elapsed();
        assert_eq!(sides(&parts), (old.clone(), new.clone()), "{what}");
        // On the busiest machine; on a quiet one a tenth of it.
        assert!(took < Duration::from_secs(1), "{what}: {took:?}");
        assert_eq!(between(&old, &new), parts, "{what}: not by the clock");
    }
}

/// A page of two hundred wordings takes hardly longer than one of three, and shows them all.
#[test]
fn u31_a_page_of_many_hard_comparisons_is_made_soon() {
    let since = Instant::now();
    let mut effort = Effort::of_a_page();
    let worst = worst();
    for (what, old, new) in worst.iter().cycle().take(200) {
        let parts = effort.between(old, new);
        assert_eq!(sides(&parts), (old.clone(), new.clone()), "{what}");
    }
    let took = since.elapsed();
    assert!(took < Duration::from_secs(10), "{took:?}");
}

/// A long note with a word changed near each end is not one stretch.
#[test]
fn u31_a_long_note_still_shows_which_words_changed() {
    let line = |number: usize| format!("Line {number} of what was done at the bench that day.\n");
    let old: String = (0..400).map(line).collect();
    let new =
        old.replacen("Line 3 of", "Line three of", 1).replacen("Line 390 of", "Line XC of", 1);
    let parts = between(&old, &new);
    let changed: Vec<&Part> = parts.iter().filter(|part| !matches!(part, Part::Same(_))).collect();
    let (gone, added) =
        (|text: &str| Part::Gone(text.into()), |text: &str| Part::Added(text.into()));
    assert_eq!(changed, [&gone("3"), &added("three"), &gone("390"), &added("XC")]);
}
