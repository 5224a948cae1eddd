//! Reading what people type: lengths, threads, drills, and lists of drills.

#![expect(
    clippy::panic,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a check that fails must stop the test, and what is read back is the same to the last bit"
)]

mod drills;
mod lengths;
mod lists;
mod threads;
mod usual;

use proptest::prelude::*;

/// Any text, and text of the characters people type in a size, which gets further in.
fn typed(longest: usize) -> impl Strategy<Value = String> {
    let trade = format!("[0-9a-zA-Z /.,;x#\"'°×½⅜⁄″–\u{a0}-]{{0,{longest}}}");
    let pieces = prop::collection::vec(
        prop::sample::select(vec![
            "1", "5", "1/4", "7/64", "2.05", ",5", ".0785", "0", "-", "x", "×", " ", " ", ", ",
            "#", "No ", "BA", "BSW", "ME", "M", "S", "G", "UNC", "mm", "in", "\"", "tpi", "thou",
            "ths", "LH", "A-Z", "40", "64", "½", "metric", "/", ".",
        ]),
        0..12,
    );
    let trade = proptest::string::string_regex(&trade).unwrap();
    prop_oneof![".{0,80}", trade, pieces.prop_map(|pieces| pieces.concat())]
}
