//! Words as they are set on a page: a number keeps its unit beside it, however the line breaks, and an
//! apostrophe of a sentence is one. Files and JSON have the plain words.

use std::ops::Range;

use memchr::memmem;

/// What stands behind a number and belongs to it.
const UNITS: [&str; 18] = [
    "mm", "in", "thou", "rev/min", "mm/rev", "mm/min", "m/min", "ft/min", "%", "degrees", "BA",
    "tpi", "mm²", "N/mm²", "g/cm³", "Nm", "°C", "s",
];

/// Elements whose text stays as it is: what was typed, what is drawn, what a tab shows.
const KEPT: [[&str; 2]; 3] =
    [["<textarea", "</textarea>"], ["<svg", "</svg>"], ["<title", "</title>"]];

/// The sentence with spaces that do not break and curved apostrophes.
pub(crate) fn set(text: &str) -> String {
    let mut set = String::with_capacity(text.len() + 8);
    let mut rest = text;
    while let Some(place) = rest.find([' ', '\'']) {
        let (before, behind) = rest.split_at(place);
        set.push_str(before);
        let is_space = behind.starts_with(' ');
        rest = behind.get(1..).unwrap_or_default();
        set.push(match is_space {
            true if belong_together(&set, rest) => '\u{a0}',
            true => ' ',
            false if set.ends_with(char::is_alphanumeric) => '’',
            false => '\'',
        });
    }
    set + rest
}

/// A whole page, each number joined to the unit behind it.
///
/// Looks at the few spaces that stand behind a figure, a tag or a full stop, and only then at where they are.
pub(crate) fn join_units(page: &str) -> String {
    let bytes = page.as_bytes();
    let mut joined = String::with_capacity(page.len() + page.len() / 64);
    let mut kept = kept(bytes);
    let mut next_kept = kept.next();
    let mut copied = 0;
    // How far it was looked where a tag begins or ends, and whether the last thing found was a beginning.
    let (mut looked, mut in_a_tag) = (0, false);
    for place in memchr::memchr_iter(b' ', bytes) {
        let last = place.checked_sub(1).and_then(|last| bytes.get(last));
        if !last.copied().is_some_and(ends_what_may_be_joined) {
            continue;
        }
        while next_kept.as_ref().is_some_and(|kept| kept.end <= place) {
            next_kept = kept.next();
        }
        let is_kept = next_kept.as_ref().is_some_and(|kept| kept.contains(&place));
        let Some((before, behind)) = page.split_at_checked(place) else { continue };
        let behind = behind.get(1..).unwrap_or_default();
        if is_kept || !belong_together(before, behind) {
            continue;
        }
        let since = bytes.get(looked..place).unwrap_or_default();
        if let Some(sign) = memchr::memrchr2(b'<', b'>', since).and_then(|at| since.get(at)) {
            // Escaped text has no sign of its own that begins or ends a tag.
            in_a_tag = *sign == b'<';
        }
        looked = place;
        if !in_a_tag {
            joined.push_str(before.get(copied..).unwrap_or_default());
            joined.push('\u{a0}');
            copied = place + 1;
        }
    }
    joined.push_str(page.get(copied..).unwrap_or_default());
    joined
}

/// Whether a byte can be the last of a figure, of a tag behind one, or of `No.`
const fn ends_what_may_be_joined(last: u8) -> bool {
    // The last three are the fractions' last bytes.
    matches!(last, b'0'..=b'9' | b'>' | b'.' | 0xbc..=0xbe)
}

/// Where the elements stand whose text is kept, in their order.
fn kept(page: &[u8]) -> impl Iterator<Item = Range<usize>> {
    let mut found: Vec<Range<usize>> = KEPT
        .iter()
        .flat_map(|[start, end]| {
            memmem::find_iter(page, start).map(move |from| {
                let to = page.get(from..).and_then(|rest| memmem::find(rest, end.as_bytes()));
                from..to.map_or(page.len(), |to| from + to)
            })
        })
        .collect();
    found.sort_by_key(|range| range.start);
    found.into_iter()
}

/// What stands before the tags that a text ends with.
fn without_tags(mut text: &str) -> &str {
    while let Some((before, _)) = text.strip_suffix('>').and_then(|tag| tag.rsplit_once('<')) {
        text = before;
    }
    text
}

/// Whether a text begins with a unit.
fn is_unit(text: &str) -> bool {
    let next = text.split([' ', '\n', '\u{a0}', '<']).next().unwrap_or_default();
    UNITS.contains(&next.trim_end_matches(['.', ',', ';', ':', ')', '?']))
}

fn is_digit(letter: char) -> bool {
    letter.is_ascii_digit() || matches!(letter, '¼' | '½' | '¾')
}

/// Whether a line must not end between these: `2.7` and `mm`, `No.` and `36`.
fn belong_together(before: &str, behind: &str) -> bool {
    (without_tags(before).ends_with(is_digit) && is_unit(behind))
        || (before.ends_with("No.") && behind.starts_with(is_digit))
}

#[cfg(test)]
mod tests {
    use super::{join_units, set};

    #[test]
    fn what_belongs_together_stays_on_one_line() {
        #[track_caller]
        fn check(text: &str, expected: &str) {
            assert_eq!(set(text), expected);
        }
        check("Clear the swarf after 8.1 mm, then", "Clear the swarf after 8.1\u{a0}mm, then");
        check("No. 36 at 70 %.", "No.\u{a0}36 at 70\u{a0}%.");
        check("the drill's lips, hammers' faces", "the drill’s lips, hammers’ faces");
        check("two 2 mmHg 3", "two 2 mmHg 3");
        check("", "");
        check(" 'é 5 mm", " 'é 5\u{a0}mm");
    }

    #[test]
    fn a_page_keeps_units_with_their_figures_and_leaves_what_was_typed() {
        for (plain, set) in [
            ("<p>2.7 mm and 70 %.</p>", "<p>2.7\u{a0}mm and 70\u{a0}%.</p>"),
            ("<p><strong>70</strong> % of it</p>", "<p><strong>70</strong>\u{a0}% of it</p>"),
            ("<p>1½ in\n5 BA</p>", "<p>1½\u{a0}in\n5\u{a0}BA</p>"),
            ("<p>3 into 4 inches</p>", "<p>3 into 4 inches</p>"),
            ("<textarea>2 mm</textarea>", "<textarea>2 mm</textarea>"),
            (
                "<svg><text>2 mm</text></svg><p>2 mm</p>",
                "<svg><text>2 mm</text></svg><p>2\u{a0}mm</p>",
            ),
            ("<input value=\"2 mm\"><p>a</p>", "<input value=\"2 mm\"><p>a</p>"),
        ] {
            assert_eq!(join_units(plain), set);
        }
    }
}
