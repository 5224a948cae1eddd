//! How long the finder takes. Bar: 1 ms for any text. `cargo bench --bench finder`.

use holewright_core::finder::{Found, find};

fn main() {
    // The words are cut once, when the first text is looked for.
    divan::black_box(find("5ba"));
    divan::main();
}

/// Named outright, several meanings, two things at once, misspelt, half written, hopeless, and the
/// slowest that was found: many words with a figure among them that may be part of a thread.
const QUERIES: [&str; 12] = [
    "5ba",
    "1/4",
    "3.2 mm",
    "copper 4ba",
    "tapping drill for 4 ba in phosphur bronze",
    "gunmetel",
    "phos",
    "1/4 bs",
    "unobtainium flange bracket",
    "one 1 two 2 three 3 four 4",
    "thred1 thred2 thred3 thred4 thred5 thred6 thred7 8",
    "steel alumminiums zzzzzzzzzzz 1 1/4 withworthe steel hard drawn 3",
];

#[divan::bench(args = QUERIES)]
fn query(query: &str) -> Found {
    find(divan::black_box(query))
}

#[divan::bench(args = ["a ", "1 ", "9/9 ", "steel ", "stele ", "1/4x40 ", "🔩 "])]
fn two_hundred_characters(bencher: divan::Bencher<'_, '_>, piece: &str) {
    let query: String = piece.chars().cycle().take(200).collect();
    bencher.bench(|| find(divan::black_box(&query)));
}
