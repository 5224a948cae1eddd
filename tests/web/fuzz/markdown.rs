//! The text of a note: its Markdown stays within its tags, which nest, and loses no word.

use holewright_server::demo;
use holewright_server::rules::notes::markdown::{extract, html, plain};
use holewright_server::rules::notes::wording;
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

use super::slips::slipped;
use super::timed::{Outcome, hunt};
use crate::html::read;
use crate::markup::check_fragment;
use crate::notes::marks::check_tags;

/// Pieces that mean something to Markdown or HTML, or to the reader of figures.
#[rustfmt::skip]
const PIECES: &[&str] = &[
    "<", ">", "</", "/>", "<b", "<script>", "<a href=", "javascript:", "data:", "\"", "'", "`",
    "```\n", "*", "**", "_", "~~", "[", "](", ")", "![", "\n", "\n\n", "    ", "\t", "# ", "> ",
    "- ", "1. ", "&", "&#", ";", "&lt;", "&#106;", "\\", "|", "---", "4 BA", "No. 43", "3.3 mm",
    "1/4 x 40 ME", "é", "\u{202e}", "&#8238;", "&#6;", "\0", "\r", "onload=", "//", "http://a.test", "<!--", "-->",
    "<![CDATA[", "<?", "[x]: ", "[x]", "<https://a.test>", "<svg", "<style>", "</p>", "===",
];

/// Texts as members write them, to be damaged.
const WRITTEN: &[&str] = &[
    "A **No. 43** drill in *gunmetal*, then ~~3.3~~ 3.4 mm.\n\n- first\n- second\n  1. deeper\n",
    "# What\n\n> It cut `clean` at 4 BA.\n\nSee [the page](https://club.test/x \"title\").\n",
    "```\nG1 X3.3\n```\n\n***\n\n    1/4 x 40 ME in a block\n",
    "![a tap](x.png) and <https://a.test/?a=1&b=2>\n\n[x]: /threads/ba/4 'said'\n\nso [x] it is",
    "10. ten\n11. eleven\n\n<div onclick=\"x\">raw</div>\n\nline  \nbreak\\\nagain &amp; &copy;",
];

/// Any mix of the pieces, and what somebody wrote with a few slips in it.
pub(super) fn markdown() -> impl Strategy<Value = String> {
    let piece = prop_oneof![4 => select(PIECES).prop_map(str::to_owned), 1 => ".{0,6}"];
    let written: Vec<String> = WRITTEN
        .iter()
        .map(|text| (*text).to_owned())
        .chain(demo::notes().iter().map(|row| row.typed(String::new()).text))
        .collect();
    prop_oneof![
        vec(piece, 0..40).prop_map(|pieces| pieces.concat()),
        slipped(select(written), PIECES),
    ]
}

#[test]
fn s30_no_text_makes_markup_that_is_not_allowed_or_loses_a_word() {
    hunt("the Markdown of a note", 50, markdown(), |typed| {
        check_tags(&typed);
        // As it is kept: without the marks that no reader sees.
        let text = wording::text(&typed);
        let html = html(&text);
        let page = read(&html);
        check_fragment(&page, &html);
        let words = plain(&text);
        // The search index and the page hold the same words: the cleaner at the end took none away.
        prop_assert_eq!(bare(&page.text), bare(&words), "{}", html);
        prop_assert!(!words.contains(is_unseen), "{words:?}");
        let start = extract(&text, 30);
        prop_assert!(start.chars().count() <= 32, "{start}");
        prop_assert!(words.starts_with(start.trim_end_matches(" …")), "{start} of {words}");
        Ok(Outcome::taken_if(page.tags.iter().any(|tag| tag.name != "p")))
    });
}

/// A mark that no reader sees, or that turns the writing round.
fn is_unseen(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

fn bare(words: &str) -> String {
    words.chars().filter(|c| !c.is_whitespace()).collect()
}
