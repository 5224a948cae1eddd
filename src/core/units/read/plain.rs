//! What people type, in plain characters: one kind of space, dash, prime and fraction, lower case.
//!
//! Leaves out: what it means.

/// The vulgar fractions that are one character.
#[rustfmt::skip]
const VULGAR: [(char, &str); 19] = [
    ('¼', "1/4"), ('½', "1/2"), ('¾', "3/4"), ('⅐', "1/7"), ('⅑', "1/9"), ('⅒', "1/10"), ('⅓', "1/3"),
    ('⅔', "2/3"), ('⅕', "1/5"), ('⅖', "2/5"), ('⅗', "3/5"), ('⅘', "4/5"), ('⅙', "1/6"), ('⅚', "5/6"),
    ('⅛', "1/8"), ('⅜', "3/8"), ('⅝', "5/8"), ('⅞', "7/8"), ('⅟', "1/"),
];

/// The text in plain characters: `1½″` is `1 1/2"`, `M3 × 0,5` is `m3 x 0,5`, `№ 46` is `no 46`.
///
/// Runs of space become one space, and none is left at the ends or beside a `/`.
#[must_use]
pub fn plain(typed: &str) -> String {
    let mut out = String::with_capacity(typed.len());
    let mut previous = ' ';
    for typed_char in typed.chars() {
        let character = halfwidth(typed_char);
        if let Some((_, fraction)) = VULGAR.iter().find(|(sign, _)| *sign == character) {
            part(&mut out, previous);
            out.push_str(fraction);
        } else if let Some(digit) = raised_or_lowered(character) {
            if raised_or_lowered(previous).is_none() {
                part(&mut out, previous);
            }
            out.push(digit);
        } else {
            push(&mut out, character);
        }
        previous = character;
    }
    out.truncate(out.trim_end().len());
    out.replace("''", "\"")
}

/// The text with the sign for a diameter before a figure as a word: the readers pass over the sign, and a
/// bare figure behind it is a size and no number of a thread.
pub(crate) fn with_diameter_sign(typed: &str) -> String {
    let mut text = String::with_capacity(typed.len());
    let mut letters = typed.chars().peekable();
    while let Some(letter) = letters.next() {
        let begins = text.is_empty() || text.ends_with([' ', '(', '-']);
        let of_a_figure =
            letters.peek().is_some_and(|next| next.is_numeric() || matches!(next, ' ' | '.' | ','));
        match letter {
            'Ø' | 'ø' | '⌀' | '∅' if begins && of_a_figure => text.push_str("dia "),
            _ => text.push(letter),
        }
    }
    text
}

/// Parts a whole number from the fraction sign behind it.
fn part(out: &mut String, previous: char) {
    if previous.is_ascii_digit() {
        out.push(' ');
    }
}

fn push(out: &mut String, character: char) {
    match character {
        // Marks without width, and the diameter sign, say nothing here.
        '\u{ad}' | '\u{200b}'..='\u{200d}' | '\u{2060}' | '\u{feff}' | 'Ø' | 'ø' | '⌀' | '∅' =>
            {}
        '\u{2010}'..='\u{2015}' | '−' | '﹣' => out.push('-'),
        '⁄' | '∕' | '/' => {
            out.truncate(out.trim_end().len());
            out.push('/');
        }
        '″' | '‶' | '”' | '“' | '„' | '‟' | '˝' | 'ʺ' | '〃' => out.push('"'),
        '′' | '‵' | '’' | '‘' | '´' | '`' | 'ʹ' => out.push('\''),
        '×' | '✕' | '✖' | '╳' | '⨯' | '*' => out.push('x'),
        'º' | '˚' => out.push('°'),
        '№' => out.push_str("no "),
        '㎜' => out.push_str("mm"),
        '㎝' => out.push_str("cm"),
        space if space.is_whitespace() || space.is_control() => {
            if !out.is_empty() && !out.ends_with([' ', '/']) {
                out.push(' ');
            }
        }
        other => out.extend(other.to_lowercase()),
    }
}

/// The ordinary form of a full-width letter, digit or sign.
fn halfwidth(character: char) -> char {
    match character {
        '\u{ff01}'..='\u{ff5e}' => {
            char::from_u32(u32::from(character) - 0xfee0).unwrap_or(character)
        }
        other => other,
    }
}

/// The digit of a superscript or subscript, as in `⁷⁄₆₄`.
fn raised_or_lowered(character: char) -> Option<char> {
    let digit = match character {
        '⁰' => 0,
        '¹' => 1,
        '²' => 2,
        '³' => 3,
        '⁴'..='⁹' => u32::from(character) - u32::from('⁰'),
        '₀'..='₉' => u32::from(character) - u32::from('₀'),
        _ => return None,
    };
    char::from_digit(digit, 10)
}

/// What was typed, short and clean enough to be shown in a message.
#[must_use]
pub fn shown(typed: &str) -> String {
    const LONGEST: usize = 40;
    let mut shown: String = typed
        .trim()
        .chars()
        .map(|character| if character.is_control() { ' ' } else { character })
        .take(LONGEST)
        .collect();
    if typed.trim().chars().nth(LONGEST).is_some() {
        shown.push('…');
    }
    shown
}

/// Names one of which is meant: `No. 2, 2 mm or 2 in`.
#[must_use]
pub fn one_of(names: &[&str]) -> String {
    match names {
        [before @ .., last] if !before.is_empty() => format!("{} or {last}", before.join(", ")),
        _ => names.concat(),
    }
}
