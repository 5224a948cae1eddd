//! How sure a hit is; [the table](super#scores) gives the order.

/// How sure a hit is: more is surer.
pub(super) type Score = u32;

/// The whole text names it.
pub(super) const EXACT: Score = 1000;
/// The page that answers a line or a question of which all is understood; the next such has 1 less.
pub(super) const ANSWER: Score = 995;
/// The plan for a thread and a material in one text.
pub(super) const PLAN: Score = 980;
/// A part of the text names it, and the rest is understood.
pub(super) const PART: Score = 960;
/// What a part loses if the rest is only half written or misspelt, against a whole text that is; and
/// what each of several things loses that a part can mean.
pub(super) const LESS: Score = 10;
/// A thread of the major diameter typed.
pub(super) const SAME_SIZE: Score = 900;
/// A drill near the size typed.
pub(super) const NEIGHBOUR: Score = 850;
/// One of its names begins with the whole text.
pub(super) const BEGINS: Score = 800;

/// A word of the text is one of its words.
pub(super) const WORD: Score = 700;
/// A word of the text begins one of its words.
pub(super) const WORD_BEGINS: Score = 600;
/// A word of the text is one of its words but for one letter; one letter more is [`LETTER`] less.
pub(super) const ONE_LETTER_OFF: Score = 500;
/// What a further wrong letter costs.
const LETTER: Score = 100;
/// What the first wrong letter costs a reading of the whole text or of its parts.
const FIRST_LETTER: Score = 450;

/// The score of a word so many letters off, one or more.
pub(super) fn letters_off(letters: usize) -> Score {
    ONE_LETTER_OFF.saturating_sub(further(letters))
}

/// The score of something read from a text with so many letters put right, one or more.
pub(super) fn misspelt(score: Score, letters: usize) -> Score {
    score.saturating_sub(FIRST_LETTER + further(letters)).max(1)
}

/// What the letters after the first cost.
fn further(letters: usize) -> Score {
    // More than ten wrong letters cost everything as it is.
    Score::try_from(letters.saturating_sub(1)).unwrap_or(10).min(10) * LETTER
}

#[cfg(test)]
mod tests {
    use super::{letters_off, misspelt};

    #[test]
    fn each_wrong_letter_costs_and_ten_cost_everything() {
        assert_eq!([1, 2, 3, 6, 100].map(letters_off), [500, 400, 300, 0, 0]);
        assert_eq!([1, 2, 6].map(|letters| misspelt(1000, letters)), [550, 450, 50]);
        assert_eq!([1, 11, 12].map(|letters| misspelt(1460, letters)), [1010, 10, 10]);
        assert_eq!(misspelt(100, 1), 1);
    }
}
