//! What a slip of the finger, a paste or another keyboard makes of a text that was right.

use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::{Index, select};

/// One slip, at a place of its own.
#[derive(Clone, Debug)]
enum Slip {
    Cut,
    Twice,
    Swapped,
    Put(String),
    Instead(String),
    OtherCase,
}

/// The text after up to five slips; these pieces are put in or stand for what was there.
pub(super) fn slipped(
    right: impl Strategy<Value = String>,
    pieces: &[&'static str],
) -> impl Strategy<Value = String> {
    let piece = prop_oneof![4 => select(pieces.to_vec()).prop_map(str::to_owned), 1 => ".{0,3}"];
    let piece = piece.boxed();
    let slip = prop_oneof![
        2 => Just(Slip::Cut),
        1 => Just(Slip::Twice),
        1 => Just(Slip::Swapped),
        4 => piece.clone().prop_map(Slip::Put),
        2 => piece.prop_map(Slip::Instead),
        1 => Just(Slip::OtherCase),
    ];
    (right, vec((any::<Index>(), slip), 0..=5)).prop_map(|(text, slips)| {
        let mut text: Vec<char> = text.chars().collect();
        for (place, slip) in slips {
            make(&mut text, place, slip);
        }
        text.into_iter().collect()
    })
}

fn make(text: &mut Vec<char>, place: Index, slip: Slip) {
    if let Slip::Put(piece) = slip {
        let at = place.index(text.len() + 1);
        text.splice(at..at, piece.chars());
        return;
    }
    if text.is_empty() {
        return;
    }
    let at = place.index(text.len());
    match slip {
        Slip::Cut => drop(text.remove(at)),
        Slip::Twice => text.insert(at, text[at]),
        Slip::Swapped => text.swap(at, at.saturating_sub(1)),
        Slip::Instead(piece) => drop(text.splice(at..=at, piece.chars())),
        Slip::OtherCase if text[at].is_lowercase() => text[at] = text[at].to_ascii_uppercase(),
        Slip::OtherCase => text[at] = text[at].to_ascii_lowercase(),
        Slip::Put(_) => {}
    }
}

/// The text with one of its digits another, where it has digits.
pub(super) fn misread(text: &str, place: Index, by: u32) -> Option<String> {
    let digits: Vec<usize> =
        text.char_indices().filter(|(_, c)| c.is_ascii_digit()).map(|(at, _)| at).collect();
    let at = *digits.get(place.index(digits.len().max(1)))?;
    let digit = u32::from(text.as_bytes()[at] - b'0');
    let other = char::from_digit((digit + 1 + by % 9) % 10, 10)?;
    let mut misread = text.to_owned();
    misread.replace_range(at..=at, &other.to_string());
    Some(misread)
}

/// The same text as another keyboard, program or hand writes it: capitals, wide characters, kinds of
/// space, dash, stroke and times sign, a comma for the point, marks that nobody sees.
pub(super) fn dressed(text: &str, dress: &[u8]) -> String {
    let chars: Vec<char> = text.chars().collect();
    let mut out = String::new();
    for (at, c) in chars.iter().enumerate() {
        let dress = dress.get(at % dress.len().max(1)).copied().unwrap_or(0);
        let one_of = |ways: &[&'static str]| ways[usize::from(dress) % ways.len()];
        match c {
            ' ' => out.push_str(one_of(&[" ", "  ", "\u{a0}", "\t", " \u{2009} "])),
            '-' => out.push_str(one_of(&["-", "–", "\u{2010}"])),
            '/' => out.push_str(one_of(&["/", "⁄", "∕", " / "])),
            '×' => out.push_str(one_of(&["×", "x", "X", "*"])),
            '.' if marks_decimals(&chars, at) => out.push_str(one_of(&[".", ","])),
            c if dress % 7 == 1 && c.is_ascii_graphic() => {
                out.extend(char::from_u32(u32::from(*c) + 0xfee0));
            }
            c if dress % 2 == 0 => out.push(c.to_ascii_uppercase()),
            c => out.push(c.to_ascii_lowercase()),
        }
        if dress % 31 == 5 {
            out.push('\u{200b}');
        }
    }
    out
}

/// A point between figures; three behind it could mark thousands if it were a comma.
fn marks_decimals(text: &[char], at: usize) -> bool {
    let is_digit = |c: Option<&char>| c.is_some_and(char::is_ascii_digit);
    let before = at.checked_sub(1).and_then(|at| text.get(at));
    let behind = text[at + 1..].iter().take_while(|c| c.is_ascii_digit()).count();
    is_digit(before) && behind > 0 && behind != 3
}
