//! The few words that stand most often for a danger, heard where they are hidden, broken up or misspelt: inside
//! another word, with a figure for a letter, in pieces, with a letter lost, doubled or out of its place.
//!
//! Only these: in a longer list some honest word would always be near. "Steel", "stem" and "seam" are none of
//! them misspelt, nor is "oiler": a short word loses itself with a letter, and any word with its first.

use std::sync::LazyLock;

use super::folded::folded;

/// The words; a pair is written as one.
pub const STRONGEST: [&str; 10] = [
    "boiler",
    "steam",
    "pressur",
    "pressure",
    "superheat",
    "firebox",
    "hydraulic",
    "pneumatic",
    "safetyvalve",
    "reliefvalve",
];

/// Figures and signs that are typed for letters, beside those that [`folded`] knows.
const FOR_LETTERS: [(char, char); 9] = [
    ('3', 'e'),
    ('4', 'a'),
    ('@', 'a'),
    ('5', 's'),
    ('$', 's'),
    ('6', 'b'),
    ('8', 'b'),
    ('7', 't'),
    ('!', 'i'),
];
/// A shorter word without one of its letters is another.
const LOSES_A_LETTER: usize = 6;
/// One that is both misspelt and in pieces is still known if it is so long.
const BOTH: usize = 10;
/// What may stand behind the last of several pieces: an ending, not another word.
const ENDING: usize = 2;

/// One of the words as it looks, and every way in which it is misspelt.
struct Strong {
    looks: String,
    /// With every doubled letter once.
    single: String,
    misspelt: Vec<String>,
    letters: Vec<char>,
    /// Whether it is long enough, and no mere beginning, to be known with a wrong letter or one too many: a
    /// "presser foot" is about no pressure.
    is_whole: bool,
}

static STRONG: LazyLock<Vec<Strong>> = LazyLock::new(|| {
    let strong = |word: &&str| {
        let looks = folded(word);
        let letters: Vec<char> = looks.chars().collect();
        let is_whole = letters.len() >= LOSES_A_LETTER && *word != "pressur";
        Strong { single: single(&looks), misspelt: misspelt(&looks), looks, letters, is_whole }
    };
    STRONGEST.iter().map(strong).collect()
});

/// Whether one of them is in the text; its words are those of the text as it looks.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::strongest::are_in;
/// assert!(are_in("overpressure", &["overpressure"]));
/// assert!(are_in("a st3am bush", &["a", "st3am", "bush"]));
/// assert!(are_in("bo ll er", &["bo", "ll", "er"]));
/// assert!(!are_in("a steel stem", &["a", "steel", "stem"]));
/// ```
#[must_use]
pub fn are_in(looks: &str, words: &[&str]) -> bool {
    // Fewer words are looked at for what is long: the look of the text without figures is asked first.
    let lettered = lettered(looks);
    let (single, all) = (single(looks), &*STRONG);
    let is_inside = |strong: &Strong| {
        let Strong { looks: word, single: once, .. } = strong;
        looks.contains(word.as_str())
            || single.contains(once.as_str())
            || lettered.as_ref().is_some_and(|text| text.contains(word.as_str()))
    };
    all.iter().any(is_inside)
        || words.iter().any(|word| is_misspelt(word))
        || (0..words.len()).any(|at| is_in_pieces(words.get(at..).unwrap_or_default()))
}

/// The text with letters for figures, where it has any.
fn lettered(looks: &str) -> Option<String> {
    let letter =
        |c| FOR_LETTERS.iter().find(|(sign, _)| *sign == c).map_or(c, |(_, letter)| *letter);
    let has_any = looks.contains(|c| letter(c) != c);
    has_any.then(|| folded(&looks.chars().map(letter).collect::<String>()))
}

/// Each letter once where it stands twice or more in a row.
fn single(text: &str) -> String {
    let mut single = String::with_capacity(text.len());
    for letter in text.chars() {
        if !single.ends_with(letter) || !letter.is_alphanumeric() {
            single.push(letter);
        }
    }
    single
}

/// The word with two neighbours in each other's place, or without a letter between its first and its last.
fn misspelt(word: &str) -> Vec<String> {
    let letters: Vec<char> = word.chars().collect();
    let last = letters.len().saturating_sub(1);
    let swapped = (0..last).map(|at| {
        let mut letters = letters.clone();
        letters.swap(at, at + 1);
        letters.into_iter().collect()
    });
    let lost = (1..last).filter(|_| letters.len() >= LOSES_A_LETTER).map(|lost| {
        let kept = letters.iter().enumerate().filter(|(at, _)| *at != lost);
        kept.map(|(_, letter)| *letter).collect()
    });
    swapped.chain(lost).filter(|other: &String| other != word).collect()
}

fn is_misspelt(word: &str) -> bool {
    let is_so = |other: &String| word.starts_with(other.as_str());
    let letters: Vec<char> = word.chars().collect();
    STRONG.iter().any(|strong| {
        strong.misspelt.iter().any(is_so)
            || (strong.is_whole
                && (has_another(&letters, strong) || has_one_more(&letters, strong)))
    })
}

/// Letters that are written for one another.
const SOUND_ALIKE: &str = "aeiouy";

/// Whether the word begins as this one does, but for one letter between its first and its last, which sounds much
/// like what it stands for.
fn has_another(letters: &[char], strong: &Strong) -> bool {
    let Some(begun) = letters.get(..strong.letters.len()) else { return false };
    let others = begun.iter().zip(&strong.letters).filter(|(one, other)| one != other);
    let others: Vec<char> = others.map(|(one, _)| *one).collect();
    matches!(others.as_slice(), [other] if SOUND_ALIKE.contains(*other))
        && begun.first() == strong.letters.first()
        && begun.last() == strong.letters.last()
}

/// Whether the word begins as this one does with a letter put in between its first and its last.
fn has_one_more(letters: &[char], strong: &Strong) -> bool {
    let length = strong.letters.len() + 1;
    let Some(begun) = letters.get(..length) else { return false };
    let without = |left_out: usize| {
        let kept = begun.iter().enumerate().filter(|(at, _)| *at != left_out);
        kept.map(|(_, letter)| letter).eq(&strong.letters)
    };
    (1..length - 1).any(without)
}

/// Whether the first of these words begin one of them and those behind end it.
fn is_in_pieces(words: &[&str]) -> bool {
    let [first, rest @ ..] = words else { return false };
    STRONG.iter().any(|strong| {
        let forms = [&strong.looks].into_iter();
        let forms = forms.chain(strong.misspelt.iter().filter(|_| strong.looks.len() >= BOTH));
        let mut begun = forms.filter(|form| form.starts_with(first));
        begun.any(|form| are_pieces(form, first.len(), rest))
    })
}

fn are_pieces(form: &str, mut so_far: usize, rest: &[&str]) -> bool {
    for piece in rest {
        let Some(left) = form.get(so_far..).filter(|left| !left.is_empty()) else { return false };
        if let Some(ending) = piece.strip_prefix(left) {
            return ending.chars().count() <= ENDING;
        }
        if !left.starts_with(piece) {
            return false;
        }
        so_far += piece.len();
    }
    false
}
