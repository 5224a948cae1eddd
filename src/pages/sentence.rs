//! Words as they are set on a page: a number keeps its unit beside it, however the line breaks, and an
//! apostrophe of a sentence is one. Files and JSON have the plain words.

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
pub(crate) fn join_units(page: &str) -> String {
    let mut joined = String::with_capacity(page.len() + page.len() / 64);
    let mut rest = page;
    let mut before = None;
    while let Some(place) = rest.find('<') {
        let (text, tagged) = rest.split_at(place);
        before = join(text, before, &mut joined);
        let (tag, after) = tagged.split_at(end_of(tagged));
        joined.push_str(tag);
        rest = after;
    }
    join(rest, before, &mut joined);
    joined
}

/// Where a tag ends, or the element it starts where the text in it is kept.
fn end_of(tagged: &str) -> usize {
    let kept = KEPT.iter().find(|[start, _]| tagged.starts_with(start));
    let end = kept.map_or(">", |[_, end]| end);
    tagged.find(end).map_or(tagged.len(), |place| place + end.len())
}

/// One run of text; `before` is the last letter in front of it, and the answer its own.
fn join(text: &str, before: Option<char>, joined: &mut String) -> Option<char> {
    let mut rest = text;
    let mut last = before;
    while let Some(place) = rest.find(' ') {
        let (words, behind) = rest.split_at(place);
        rest = behind.get(1..).unwrap_or_default();
        joined.push_str(words);
        last = words.chars().next_back().or(last);
        let is_figure = last.is_some_and(is_digit) && is_unit(rest);
        let is_number = rest.starts_with(is_digit) && joined.ends_with("No.");
        joined.push(if is_figure || is_number { '\u{a0}' } else { ' ' });
        last = Some(' ');
    }
    joined.push_str(rest);
    rest.chars().next_back().or(last)
}

fn is_digit(letter: char) -> bool {
    letter.is_ascii_digit() || "¼½¾".contains(letter)
}

/// Whether a text begins with a unit.
fn is_unit(text: &str) -> bool {
    let next = text.split([' ', '\n', '\u{a0}']).next().unwrap_or_default();
    UNITS.contains(&next.trim_end_matches(['.', ',', ';', ':', ')', '?']))
}

/// Whether a line must not end between these: `2.7` and `mm`, `No.` and `36`.
fn belong_together(before: &str, behind: &str) -> bool {
    (before.ends_with(is_digit) && is_unit(behind))
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
