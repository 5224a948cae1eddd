//! The part of a note that shows best where the words of a search stand in it.
//!
//! The index could cut it out by itself, but weighs each place of a word against every other: a note of
//! the letter a alone took it half a second. Here only the first places count, and each is weighed with
//! those close behind it.

use std::collections::HashMap;

use super::words::{Word, folded, words};

/// So many words of a text are shown.
const SHOWN: usize = 24;
/// So many places of the words looked for are weighed in one text.
const PLACES: usize = 1000;
/// The most letters of a stretch: of a longer one both ends are shown.
const LETTERS: usize = 300;

/// A part that has another of the words counts for more than any that has one often.
const ANOTHER: usize = 1000;
/// A part that begins as the text does.
const FIRST: usize = 120;
/// A part that begins as a sentence does.
const SENTENCE: usize = 100;

/// A stretch of a text, perhaps one that was looked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// As it was written.
    pub text: String,
    /// Whether it was looked for.
    pub is_found: bool,
}

/// The best part of these texts, of equals the first; where none has any of what is looked for, the beginning
/// of the longest. Looked for are words, or several that stand together.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::around::around;
/// let found = around(&["Tapping", "Slow, with tallow."], &["TALLOW"]);
/// let found: Vec<_> = found.iter().map(|part| (part.text.as_str(), part.is_found)).collect();
/// assert_eq!(found, [("Slow, with ", false), ("tallow", true), (".", false)]);
/// ```
#[must_use]
pub fn around(texts: &[&str], sought: &[&str]) -> Vec<Stretch> {
    let sought = Sought::new(sought);
    let mut best: Option<Part<'_>> = None;
    for text in texts {
        let part = Part::best(text, &sought);
        if part.weight > best.as_ref().map_or(0, |best| best.weight) {
            best = Some(part);
        }
    }
    let longest =
        || texts.iter().max_by_key(|text| text.len()).map(|text| Part::best(text, &sought));
    best.or_else(longest).map(|part| part.stretches()).unwrap_or_default()
}

/// What is looked for, by its first word.
struct Sought(HashMap<String, Vec<(usize, Vec<String>)>>);

impl Sought {
    fn new(sought: &[&str]) -> Self {
        let mut by_first = HashMap::<String, Vec<_>>::new();
        for (number, phrase) in sought.iter().enumerate() {
            let mut words = words(phrase).map(|word| folded(word.of(phrase)).into_owned());
            if let Some(first) = words.next() {
                by_first.entry(first).or_default().push((number, words.collect()));
            }
        }
        Self(by_first)
    }
}

/// Where something that is looked for stands: its number, its first word, how many it has.
#[derive(Clone, Copy)]
struct Place {
    number: usize,
    at: usize,
    words: usize,
}

/// A part of a text.
struct Part<'a> {
    text: &'a str,
    words: Vec<Word>,
    places: Vec<Place>,
    /// The first word that is shown.
    first: usize,
    weight: usize,
}

impl<'a> Part<'a> {
    /// The best of this text; it weighs nothing where nothing is found in it.
    fn best(text: &'a str, sought: &Sought) -> Self {
        let words: Vec<Word> = words(text).collect();
        let places = places(text, &words, sought);
        let mut part = Self { text, words, places, first: 0, weight: 0 };
        let sentences: Vec<usize> =
            (0..part.words.len()).filter(|word| part.begins_sentence(*word)).collect();
        let mut next = 0;
        for place in part.places.clone() {
            let (weight, middle) = part.weigh(place.at);
            part.consider(weight, middle);
            while sentences.get(next + 1).is_some_and(|word| *word <= place.at) {
                next += 1;
            }
            if let Some(sentence) = sentences.get(next)
                && *sentence < place.at
                && part.words.len() > SHOWN
            {
                let more = if *sentence == 0 { FIRST } else { SENTENCE };
                part.consider(part.weigh(*sentence).0 + more, *sentence);
            }
        }
        part
    }

    fn consider(&mut self, weight: usize, first: usize) {
        if weight > self.weight {
            (self.weight, self.first) = (weight, first);
        }
    }

    /// How good the words from this one on are, and with which the part begins that has what is found
    /// among them in its middle.
    fn weigh(&self, from: usize) -> (usize, usize) {
        let begin = self.places.partition_point(|place| place.at < from);
        let among = self.places.iter().skip(begin).take_while(|place| place.at < from + SHOWN);
        let (mut weight, mut numbers) = (0, Vec::new());
        let mut ends: Option<(usize, usize)> = None;
        for place in among {
            let is_another = !numbers.contains(&place.number);
            if is_another {
                numbers.push(place.number);
            }
            weight += if is_another { ANOTHER } else { 1 };
            ends = Some((ends.map_or(place.at, |ends| ends.0), place.at + place.words));
        }
        let (first, last) = ends.unwrap_or((from, from));
        let before = SHOWN.saturating_sub(last - first) / 2;
        let latest = self.words.len().saturating_sub(SHOWN);
        (weight, first.saturating_sub(before).min(latest))
    }

    fn begins_sentence(&self, word: usize) -> bool {
        let before = self.words.get(word).and_then(|word| self.text.get(..word.from));
        let Some(before) = before.filter(|_| word > 0) else { return word == 0 };
        let sentence = before.trim_end_matches([' ', '\t', '\n', '\r']);
        sentence.len() < before.len() && sentence.ends_with(['.', ':'])
    }

    fn stretches(&self) -> Vec<Stretch> {
        let behind = self.first + SHOWN;
        let from = |word: usize| self.words.get(word).map_or(self.text.len(), |word| word.from);
        let to = |word: usize| self.words.get(word).map_or(self.text.len(), |word| word.to);
        let mut stretches = Stretches(Vec::new());
        let mut shown = 0;
        if self.first > 0 {
            stretches.push("…", false);
            shown = from(self.first);
        }
        let begin = self.places.partition_point(|place| place.at < self.first);
        let mut places =
            self.places.iter().skip(begin).take_while(|place| place.at < behind).peekable();
        while let Some(place) = places.next() {
            let mut end = place.at + place.words;
            // What overlaps is one stretch.
            while let Some(next) = places.next_if(|next| next.at < end) {
                end = end.max(next.at + next.words);
            }
            let (begins, ends) = (from(place.at), to(end.min(behind) - 1));
            stretches.push(self.text.get(shown..begins).unwrap_or_default(), false);
            stretches.push(self.text.get(begins..ends).unwrap_or_default(), true);
            shown = ends;
        }
        let is_all = behind >= self.words.len();
        let rest = if is_all { self.text.len() } else { to(behind - 1) };
        stretches.push(self.text.get(shown..rest).unwrap_or_default(), false);
        if !is_all {
            stretches.push("…", false);
        }
        stretches.0
    }
}

/// The first places of what is looked for, in their order.
fn places(text: &str, words: &[Word], sought: &Sought) -> Vec<Place> {
    let is = |at: usize, word: &String| {
        words.get(at).is_some_and(|found| folded(found.of(text)) == word.as_str())
    };
    let mut places = Vec::new();
    for (at, word) in words.iter().enumerate() {
        let Some(phrases) = sought.0.get(&*folded(word.of(text))) else { continue };
        for (number, rest) in phrases {
            if rest.iter().enumerate().all(|(place, word)| is(at + 1 + place, word)) {
                places.push(Place { number: *number, at, words: rest.len() + 1 });
            }
        }
        if places.len() >= PLACES {
            break;
        }
    }
    places
}

struct Stretches(Vec<Stretch>);

impl Stretches {
    /// The text behind the others.
    fn push(&mut self, text: &str, is_found: bool) {
        if text.is_empty() {
            return;
        }
        let text = shortened(text);
        match self.0.last_mut() {
            Some(last) if !last.is_found && !is_found => last.text.push_str(&text),
            _ => self.0.push(Stretch { text, is_found }),
        }
    }
}

/// The text, or both its ends: a thousand hyphens are no word, and would all be shown between two.
fn shortened(text: &str) -> String {
    let Some((head, _)) = text.char_indices().nth(LETTERS) else { return text.to_owned() };
    let begin = text.char_indices().nth(LETTERS / 2).map_or(head, |(at, _)| at);
    let end = text.char_indices().nth_back(LETTERS / 2 - 1).map_or(head, |(at, _)| at);
    let (begin, end) = (text.get(..begin), text.get(end..));
    format!("{}…{}", begin.unwrap_or_default(), end.unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::{LETTERS, around};

    /// The found stretches between brackets.
    fn shown(texts: &[&str], sought: &[&str]) -> String {
        let parts = around(texts, sought);
        let parts = parts
            .iter()
            .map(|part| if part.is_found { format!("[{}]", part.text) } else { part.text.clone() });
        parts.collect()
    }

    #[test]
    fn a_short_text_is_shown_whole() {
        for (texts, sought, expected) in [
            (["Slow", "a + b, a"], vec!["a"], "[a] + b, [a]"),
            (["Slow", "3.3 mm in Café"], vec!["3.3", "cafe"], "[3.3] mm in [Café]"),
            (["Café", "cafe\u{301}s"], vec!["CAFÉS"], "[cafe\u{301}s]"),
            (["both", "both, and both"], vec!["both"], "[both], and [both]"),
            (["both", "and both"], vec!["both"], "[both]"),
            (["both", "both in one"], vec!["both", "one"], "[both] in [one]"),
            (["", "a a a."], vec!["a a"], "[a a a]."),
            (["", "no such"], vec!["word"], "no such"),
        ] {
            assert_eq!(shown(&texts, &sought), expected, "{sought:?} in {texts:?}");
        }
    }

    #[test]
    fn of_a_long_text_the_part_with_most_of_the_words_is_shown() {
        let far = "word ".repeat(40);
        let text = format!("tap {far}tap and drill {far}drill. {far}");
        let found = shown(&[&text], &["tap", "drill"]);
        assert!(found.contains("word [tap] and [drill] word"), "{found}");
        assert!(found.starts_with("…word") && found.ends_with("word…"), "{found}");
        let sentence = format!("{far}end. Then the tap broke. {far}");
        let found = shown(&[&sentence], &["broke"]);
        assert!(found.starts_with("…Then the tap [broke]. word"), "{found}");
    }

    #[test]
    fn what_stands_between_two_words_is_no_longer_than_may_be() {
        let text = format!("a{}b", "-".repeat(20_000));
        let found = shown(&[&text], &["a", "b"]);
        assert!(found.chars().count() < LETTERS + 10, "{found}");
        assert!(found.starts_with("[a]---") && found.ends_with("---[b]"), "{found}");
    }
}
