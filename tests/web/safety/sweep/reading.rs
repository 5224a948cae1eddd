//! What everybody reads of the club, beside what the model says.

use std::collections::BTreeSet;

use serde_json::Value;

use super::super::notes;
use super::begin;
use super::house::{House, typed};
use super::model::{Outcome, View, Word};

/// The page of what every note here belongs to: the server keeps it ready.
const KEPT: &str = "/drills/number/43";
/// So many notes stand on it.
const ON_PAGE: usize = 5;
/// So many of the sessions that are over are tried.
const TRIED: usize = 6;

/// The words in a text, in their order.
fn words_in(text: &str) -> Vec<Word> {
    let parts = text.split(|letter: char| !letter.is_ascii_alphanumeric());
    let word = |part: &str| part.strip_prefix('w').filter(|rest| rest.len() == 4)?.parse().ok();
    parts.filter_map(word).collect()
}

fn place(state: &str) -> Option<&'static str> {
    ["draft", "waiting", "shown"].into_iter().find(|known| *known == state)
}

impl House {
    /// Looks whether everybody reads what the model says, and whether the file is in order.
    pub(super) fn check(&self, words: impl Iterator<Item = Word>) {
        let mut expected = self.club.view();
        let words: BTreeSet<Word> = words.collect();
        expected.found.retain(|(_, word)| words.contains(word));
        let view = self.view(&words);
        // The page holds a few: which of many is another test's.
        if expected.kept.len() > ON_PAGE && view.kept.len() == ON_PAGE {
            expected.kept.retain(|place, _| view.kept.contains_key(place));
        }
        assert_eq!(view, expected);
        self.check_feeds();
        for session in self.over.iter().rev().take(TRIED) {
            let page = self.get_in(session, "/me");
            assert_ne!(status(&page), Some("200"), "a session that is over: {page}");
        }
    }

    /// Looks whether the newest addresses of feeds open what they should, and nothing else.
    fn check_feeds(&self) {
        let stranger = begin::MEMBERS.len();
        for (who, word, address) in self.feeds.iter().rev().take(TRIED) {
            let answer = self.get(address, stranger);
            let opens = self.club.opens_feed(*who, *word);
            assert_eq!(status(&answer) == Some("200"), opens, "the feed of {who}: {answer}");
        }
    }

    /// Has the page read that is kept from then on.
    pub(super) fn keep(&self) {
        self.get(KEPT, begin::MEMBERS.len());
    }

    /// Reads the rows: each with all it belongs to. Only a note that went has but its record, and only one
    /// that was emptied has no wording.
    pub(super) fn check_file(&self) {
        assert_eq!(notes::read(&self.data()).half.len(), self.club.gone_or_empty());
    }

    fn view(&self, words: &BTreeSet<Word>) -> View {
        let mut view = View::default();
        let stranger = begin::MEMBERS.len();
        let place_of = |number: i64| self.known.notes.iter().position(|known| *known == number);
        let front = self.get("/notes", stranger);
        let mut names = 0..3;
        view.name = names.find(|name| front.contains(&begin::club(*name)));
        let listed = json(&self.get("/notes.json", stranger));
        for note in listed["notes"].as_array().unwrap() {
            let number = |key| note[key].as_u64().unwrap_or_else(|| panic!("{key}: {note}"));
            let place =
                place_of(note["id"].as_i64().unwrap_or_else(|| panic!("{listed}"))).unwrap();
            let [word] = words_in(note["title"].as_str().unwrap())[..] else { panic!("{note}") };
            let counted = ["worked", "did_not"].map(number);
            let is_confirmed = !note["confirmed_at"].is_null();
            view.shown.insert(place, (word, BTreeSet::new(), counted, is_confirmed));
        }
        for (place, number) in self.known.notes.iter().enumerate() {
            let page = self.get(&format!("/notes/{number}"), stranger);
            if status(&page) == Some("404") {
                view.unknown.insert(place);
            }
            let mut on_it: BTreeSet<Word> = words_in(&page).into_iter().collect();
            match view.shown.get_mut(&place) {
                Some((word, corrections, ..)) => {
                    assert!(on_it.remove(word), "{page}");
                    *corrections = on_it;
                }
                None => assert_eq!(on_it, BTreeSet::new(), "not shown: {page}"),
            }
        }
        let page = self.get(KEPT, stranger);
        for item in page.split("<li><a href=\"/notes/").skip(1) {
            let (item, _) = item.split_once("</li>").unwrap();
            let (number, item) = item.split_once("\">").unwrap();
            let place = place_of(number.parse().unwrap()).unwrap();
            let (title, rest) = item.split_once("</a>").unwrap();
            let correction = rest.split_once("Corrected:</strong>");
            let correction = correction.and_then(|(_, said)| words_in(said).first().copied());
            let counts = rest.rsplit("<p class=\"soft\">").next().unwrap().trim_end_matches("</p>");
            view.kept.insert(place, (words_in(title)[0], correction, counts.to_owned()));
        }
        for word in words {
            let page = self.get(&format!("/notes?q={}", typed(*word)), stranger);
            let is_listed = |number: &i64| page.contains(&format!("href=\"/notes/{number}\""));
            let places = self.known.notes.iter().enumerate();
            let places = places.filter(|(_, number)| is_listed(number));
            view.found.extend(places.map(|(place, _)| (place, *word)));
        }
        for who in (0..begin::MEMBERS.len()).filter(|who| self.club.members[*who].is_signed_in) {
            let own = json(&self.get("/me/data.json", who));
            let notes = own["notes"].as_array().unwrap_or_else(|| panic!("{own}"));
            let wordings = notes.iter().flat_map(|note| note["wordings"].as_array().unwrap());
            let words = wordings.filter_map(|wording| {
                let state = place(wording["state"].as_str().unwrap())?;
                Some((state, words_in(wording["title"].as_str().unwrap())[0]))
            });
            view.own.insert(who, words.collect());
            let queue = self.get("/queue", who);
            if status(&queue) == Some("200") {
                let items = queue.split("<h2 id=\"note-").skip(1);
                let titles = items.filter_map(|item| item.split("</h2>").next());
                view.queue.insert(who, titles.flat_map(words_in).collect());
            }
        }
        view
    }
}

fn json(answer: &str) -> Value {
    let (_, body) = answer.split_once("\r\n\r\n").unwrap_or_else(|| panic!("{answer}"));
    let (from, to) = (body.find('{').unwrap_or_default(), body.rfind('}').unwrap_or_default());
    serde_json::from_str(&body[from..=to]).unwrap_or_else(|error| panic!("{error}: {answer}"))
}

fn status(answer: &str) -> Option<&str> {
    answer.get(9..12)
}

/// What came of an act.
pub(super) fn outcome(answer: &str) -> Outcome {
    // Whoever signs out is led there too, and told that it is done.
    let is_out = answer.contains("\r\nset-cookie: done=signed-out");
    let leads_to_the_door = || answer.contains("\r\nlocation: /sign-in") && !is_out;
    match status(answer) {
        Some("303") if !leads_to_the_door() => Outcome::Done,
        Some("200") if answer.contains("/notes/feed/") => Outcome::Done,
        Some("404") => Outcome::Unseen,
        Some("303" | "401" | "403" | "409" | "410" | "422" | "429") | None => Outcome::Refused,
        _ => panic!("{answer}"),
    }
}
