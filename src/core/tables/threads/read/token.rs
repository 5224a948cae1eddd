//! The words, numbers and marks of a typed thread name.

use crate::units::read::{Notation, Number, take};

/// One word, number or mark.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token<'a> {
    Word(String),
    Number(Number<'a>),
    /// `x`, `by`, `×`.
    Times,
    Dash,
    /// `"` behind a number.
    InchMark,
    /// `#`, `no` before a number.
    Hash,
    /// Something no thread name has.
    Strange,
}

/// The tokens of a text in plain characters.
pub(super) fn tokens(text: &str) -> Vec<Token<'_>> {
    let mut tokens = Vec::new();
    let mut rest = text;
    while let Some(next) = rest.chars().next() {
        let behind = rest.get(next.len_utf8()..).unwrap_or_default();
        if next.is_alphabetic() {
            let (word, after) = word(rest);
            push_word(&mut tokens, word);
            // The point of "No.5" ends the word; that of "x.5" begins a number.
            let ends_word = !matches!(tokens.last(), Some(Token::Times)) && !is_size_mark(&tokens);
            rest = if ends_word { after.strip_prefix('.').unwrap_or(after) } else { after };
            continue;
        }
        if let Some((number, after)) = take(rest) {
            tokens.push(Token::Number(number));
            rest = after;
            continue;
        }
        match next {
            ' ' | ',' | '.' | '(' | ')' | '/' => {}
            '-' => tokens.push(Token::Dash),
            '"' => tokens.push(Token::InchMark),
            '#' => tokens.push(Token::Hash),
            _ => tokens.push(Token::Strange),
        }
        rest = behind;
    }
    tokens
}

/// `M.5` and `S.8` are sizes.
fn is_size_mark(tokens: &[Token<'_>]) -> bool {
    matches!(tokens.last(), Some(Token::Word(word)) if matches!(word.as_str(), "m" | "s"))
}

/// Takes a word off the front: letters, or letters with points between, `b.a`.
fn word(text: &str) -> (String, &str) {
    let mut word = String::new();
    let mut rest = text;
    loop {
        let end = rest.find(|next: char| !next.is_alphabetic()).unwrap_or(rest.len());
        let (letters, after) = rest.split_at_checked(end).unwrap_or((rest, ""));
        word.push_str(letters);
        rest = after;
        match rest.strip_prefix('.') {
            Some(after) if letters.len() == 1 && after.starts_with(char::is_alphabetic) => {
                rest = after;
            }
            _ => return (word, rest),
        }
    }
}

fn push_word(tokens: &mut Vec<Token<'_>>, word: String) {
    match word.as_str() {
        "x" | "by" => tokens.push(Token::Times),
        "no" | "nos" | "number" | "nr" => tokens.push(Token::Hash),
        // Nought BA typed with the letter.
        "oba" => {
            tokens.push(Token::Number(Number { value: 0.0, notation: Notation::Whole("0") }));
            tokens.push(Token::Word("ba".into()));
        }
        // "3mmx0.5" and "40tpix1/4".
        joined if matches!(joined, "mmx" | "inx" | "tpix") => {
            tokens.push(Token::Word(joined.trim_end_matches('x').into()));
            tokens.push(Token::Times);
        }
        _ => tokens.push(Token::Word(word)),
    }
}
