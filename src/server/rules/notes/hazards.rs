//! What poisons, burns or maims by a note's own words: a solvent in the cup, gloves at a spindle, work in the hand.
//!
//! It prompts whoever writes and whoever decides, and blocks nothing: advice against such a thing is prompted like
//! advice for it, since the words alone do not tell them apart. What each sentence says is common practice, no source.

use super::folded::folded;
use super::markdown;
use super::pressure::{joined, split, without_possessives};
use super::wording::Wording;

/// One of them.
struct Hazard {
    /// A word that begins like this speaks of it.
    beginnings: &'static [&'static str],
    /// Whole words that speak of it where they stand together.
    phrases: &'static [&'static [&'static str]],
    /// The same with at most [`BETWEEN`] others between them.
    apart: &'static [[&'static str; 2]],
    says: &'static str,
}

/// "Held it in my hand".
const BETWEEN: usize = 3;

const HAZARDS: [Hazard; 8] = [
    Hazard {
        beginnings: &["carbontet", "tetrachlorid", "tetrachlorom"],
        phrases: &[&["carbon", "tet"], &["carbon", "tetra"]],
        apart: &[],
        says: "Carbon tetrachloride poisons the liver and the kidneys through breath and skin, and hot metal turns it into \
             a worse gas: do not use it.",
    },
    Hazard {
        beginnings: &["trichlor", "perchlor", "tetrachloroeth", "dichlorometh"],
        phrases: &[&["trike"], &["methylene", "chloride"]],
        apart: &[],
        says: "A chlorinated solvent poisons through breath and skin, and some cause cancer: none belongs in a home workshop.",
    },
    Hazard {
        beginnings: &["asbest"],
        phrases: &[],
        apart: &[],
        says: "Asbestos dust kills years later: do not cut, drill, brush or use it; leave it to those licensed to take it away.",
    },
    Hazard {
        beginnings: &["gasoline"],
        phrases: &[&["petrol"]],
        apart: &[],
        says: "Petrol’s vapour lights from a spark, a motor or a stove across the room: never cut or clean with it.",
    },
    Hazard {
        beginnings: &["turpentin", "methylated"],
        phrases: &[
            &["white", "spirit"],
            &["white", "spirits"],
            &["turps"],
            &["meths"],
            &["thinners"],
            &["acetone"],
        ],
        apart: &[],
        says: "The solvent burns, and its vapour finds a flame or a stove: none near it, air through the room, rags in a \
             closed tin.",
    },
    Hazard {
        beginnings: &["handheld"],
        phrases: &[&["hand", "held"]],
        apart: &[
            ["held", "hand"],
            ["hold", "hand"],
            ["holding", "hand"],
            ["held", "hands"],
            ["held", "fingers"],
        ],
        says: "Work held in the hand is torn from it when a drill or tap catches: clamp it, or bolt down the vice it is in.",
    },
    Hazard {
        beginnings: &["glove"],
        phrases: &[],
        apart: &[],
        says: "Gloves at a turning spindle draw the hand in: none there, nor loose sleeves.",
    },
    Hazard {
        beginnings: &["airline"],
        phrases: &[
            &["air", "line"],
            &["air", "lines"],
            &["air", "gun"],
            &["air", "hose"],
            &["air", "blast"],
            &["compressed", "air"],
        ],
        apart: &[],
        says: "Air drives swarf into eyes and skin, and air under the skin can kill: move swarf with a brush, and never turn \
             air on anybody.",
    },
];

/// What is said of what a note's words speak of.
#[must_use]
pub fn of_note(wording: &Wording) -> Vec<&'static str> {
    said(&[wording.in_order(&[], str::to_owned), wording.in_order(&[], markdown::plain)])
}

/// What is said of what a text in Markdown speaks of, as it is typed and as it is read.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::hazards::of_text;
/// assert!(of_text("Trike, a drop at a time")[0].contains("chlorinated"));
/// assert_eq!(of_text("Held it in my hand, with gloves on").len(), 2);
/// assert!(of_text("Tapped by hand with paraffin").is_empty());
/// ```
#[must_use]
pub fn of_text(text: &str) -> Vec<&'static str> {
    said(&[text.to_owned(), markdown::plain(text)])
}

fn said(texts: &[String]) -> Vec<&'static str> {
    let texts: Vec<String> = texts.iter().map(|text| without_possessives(&folded(text))).collect();
    let words: Vec<Vec<&str>> = texts.iter().map(|looks| split(looks).collect()).collect();
    let joined: Vec<Vec<String>> = texts.iter().map(|looks| joined(looks)).collect();
    let is_heard = |hazard: &&Hazard| {
        words.iter().any(|words| is_in(hazard, words))
            || joined.iter().any(|words| is_in(hazard, words))
    };
    HAZARDS.iter().filter(is_heard).map(|hazard| hazard.says).collect()
}

fn is_in(hazard: &Hazard, words: &[impl AsRef<str>]) -> bool {
    let begins = |beginning: &&str| {
        let beginning = folded(beginning);
        words.iter().any(|word| word.as_ref().starts_with(&beginning))
    };
    let stands = |phrase: &&[&str]| {
        let phrase: Vec<String> = phrase.iter().map(|word| folded(word)).collect();
        let is_it = |here: &[_]| here.iter().zip(&phrase).all(|(word, held)| is(word, held));
        words.windows(phrase.len()).any(is_it)
    };
    let stands_apart = |[one, other]: &[&str; 2]| {
        let (one, other) = (folded(one), folded(other));
        let is_it = |(at, word)| {
            is(word, &one) && words.iter().skip(at + 1).take(BETWEEN + 1).any(|w| is(w, &other))
        };
        words.iter().enumerate().any(is_it)
    };
    hazard.beginnings.iter().any(begins)
        || hazard.phrases.iter().any(stands)
        || hazard.apart.iter().any(stands_apart)
}

fn is(word: &impl AsRef<str>, held: &str) -> bool {
    word.as_ref() == held
}

#[cfg(test)]
mod tests {
    use super::{HAZARDS, of_text};

    #[test]
    fn what_poisons_burns_or_maims_is_heard_once_and_by_its_own_sentence() {
        for (text, expected) in [
            ("carbon tet", "Carbon tetrachloride"),
            ("Carbon tetrachloride, a drop", "Carbon tetrachloride"),
            ("carbon-tet", "Carbon tetrachloride"),
            ("CARB\u{41e}N TET", "Carbon tetrachloride"),
            ("trichloroethylene", "A chlorinated solvent"),
            ("**tri**chloroethylene", "A chlorinated solvent"),
            ("A dab of trike", "A chlorinated solvent"),
            ("petrol", "Petrol’s vapour"),
            ("an asbestos mat", "Asbestos"),
            ("white spirit by the stove", "The solvent burns"),
            ("white-spirit", "The solvent burns"),
            ("The work was held in the hand", "Work held in the hand"),
            ("Held it in my hand", "Work held in the hand"),
            ("hand-held", "Work held in the hand"),
            ("Sharp edges, so gloves were worn", "Gloves at"),
            ("no gloves", "Gloves at"),
            ("Blew the swarf out with an air line", "Air drives"),
            ("airline", "Air drives"),
            ("compressed air", "Air drives"),
        ] {
            let said = of_text(text);
            assert_eq!(said.len(), 1, "{text}: {said:?}");
            assert!(said[0].starts_with(expected), "{text}: {said:?}");
        }
        assert_eq!(of_text("Petrol, gloves, petrol again and an air line").len(), 3);
    }

    #[test]
    fn the_bench_is_left_alone() {
        for text in [
            "Tapped by hand, half a turn and back",
            "petroleum jelly",
            "paraffin",
            "a hand vice held the strip",
            "held on the handwheel",
            "carbon steel, tetrahedral",
            "a white pencil line, no spirit level",
            "the line of holes, in open air",
            "Clamped; cutting oil; a brush for the swarf",
            "Held in the vice. Lift the tap out by its wrench, both hands off",
        ] {
            assert_eq!(of_text(text), [""; 0], "{text}");
        }
        assert!(HAZARDS.iter().all(|hazard| hazard.says.ends_with('.')));
    }
}
