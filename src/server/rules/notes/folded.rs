//! A text as it looks, whatever it is written with: a reader sees the same word in letters of another
//! alphabet, in full width, with a mark that takes no room inside it.

use std::borrow::Cow;

use decancer::{Options, Translation};
use icu_normalizer::ComposingNormalizerBorrowed as ComposingNormalizer;

use super::seen::takes_no_room;

/// The text in the small Latin letters that it looks like, without marks on them.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::folded::folded;
/// assert_eq!(folded("ＢＯ\u{ad}ＩＬＥＲ"), folded("boiler"));
/// assert_eq!(folded("b\u{43e}i1er"), folded("boiler"));
/// ```
#[must_use]
pub fn folded(text: &str) -> String {
    let whole: Cow<'_, str> = if text.is_ascii() {
        text.into()
    } else {
        let seen: String = text.chars().filter(|c| !takes_no_room(*c)).collect();
        ComposingNormalizer::new_nfkc().normalize(&seen).into_owned().into()
    };
    let mut looks = String::with_capacity(whole.len());
    for c in whole.chars() {
        if c.is_ascii() {
            looks.push(c.to_ascii_lowercase());
            continue;
        }
        match decancer::cure_char(c, Options::default()) {
            Translation::Character(letter) => looks.push(letter),
            Translation::String(letters) => looks.push_str(&letters),
            Translation::None => {}
        }
    }
    // What many typefaces draw alike: a small L, a capital I and the figure one; O and nought; m and r
    // beside n.
    looks.replace(['i', '1', '|'], "l").replace('0', "o").replace("rn", "m")
}

/// A figure as it looks: a one stands as L, a nought as O.
pub(super) fn is_figure(text: &str) -> bool {
    text.chars().all(|c| c.is_ascii_digit() || matches!(c, 'l' | 'o'))
}
