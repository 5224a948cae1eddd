//! Sentences of the core as they are set on a page: a number keeps its unit beside it, however the
//! line breaks, and an apostrophe is one. Files and JSON have the plain sentence.

/// What stands behind a number and belongs to it.
const UNITS: [&str; 10] =
    ["mm", "in", "rev/min", "mm/rev", "mm/min", "m/min", "ft/min", "%", "degrees", "BA"];

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

/// Whether a line must not end between these: `2.7` and `mm`, `No.` and `36`.
fn belong_together(before: &str, behind: &str) -> bool {
    let is_digit = |letter: char| letter.is_ascii_digit();
    let next = behind.split(' ').next().unwrap_or_default();
    let unit = next.trim_end_matches(['.', ',', ';', ':', ')']);
    (before.ends_with(is_digit) && UNITS.contains(&unit))
        || (before.ends_with("No.") && behind.starts_with(is_digit))
}

#[cfg(test)]
mod tests {
    use super::set;

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
}
