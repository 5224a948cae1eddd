//! Whatever is typed into a note: the Markdown stays within its tags, the form reads back, the
//! difference gives both texts back.

use holewright::server::notes::difference::{Part, between};
use holewright::server::notes::wording::{Aim, Typed, Wording};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

use super::marks::check_tags;

/// Pieces that mean something to Markdown or HTML, and any text.
fn markdown() -> impl Strategy<Value = String> {
    let pieces = select(vec![
        "<",
        ">",
        "</",
        "/>",
        "<b",
        "<script>",
        "<a href=",
        "javascript:",
        "data:",
        "\"",
        "'",
        "`",
        "```\n",
        "*",
        "**",
        "_",
        "[",
        "](",
        ")",
        "![",
        "\n",
        "\n\n",
        "    ",
        "# ",
        "> ",
        "- ",
        "1. ",
        "&",
        "&#",
        ";",
        "&lt;",
        "\\",
        "|",
        "---",
        "4 BA",
        "No. 43",
        "3.3 mm",
        "é",
        "\u{202e}",
        "onload=",
        "//",
        "http://a.test",
        "<!--",
        "-->",
        "<![CDATA[",
    ]);
    let piece = prop_oneof![4 => pieces.prop_map(str::to_owned), 1 => ".{0,6}"];
    vec(piece, 0..40).prop_map(|pieces| pieces.concat())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(2000) })]

    #[test]
    fn s30_no_mix_of_pieces_makes_markup_that_is_not_allowed(text in markdown()) {
        check_tags(&text);
    }

    #[test]
    fn a_difference_holds_both_texts(old in markdown(), new in markdown()) {
        let (mut before, mut after) = (String::new(), String::new());
        for part in between(&old, &new) {
            match part {
                Part::Same(text) => {
                    before.push_str(&text);
                    after.push_str(&text);
                }
                Part::Gone(text) => before.push_str(&text),
                Part::Added(text) => after.push_str(&text),
            }
        }
        prop_assert_eq!((before, after), (old, new));
    }

    #[test]
    fn a_form_reads_back_to_itself(
        title in "\\PC{1,30}",
        text in markdown(),
        metal in "\\PC{0,20}",
        drill in select(vec!["No. 43", "3 mm", "1/4", "", "drill"]),
        on in select(vec!["", "5 BA", "gunmetal, M3", "1/4", "threads/ba, copper; No 46"]),
    ) {
        let typed = Typed { title, text, metal, drill: drill.into(), on: on.into(), ..Typed::default() };
        for aim in [Aim::Draft, Aim::SendIn] {
            if let Ok(wording) = Wording::read(&typed, aim) {
                let again = Wording::read(&wording.typed("key"), aim);
                prop_assert_eq!(again, Ok(wording));
            }
        }
    }
}
