//! A line of a drawing or a question, taken to pieces: what is to be done, to what, how deep. How many,
//! where, and words of heads and uses say nothing here.

use super::phrases::{Phrase, Work, at_front, spelt_out};
use super::words::has_figure;
use crate::plan::Hole;
use crate::tables::threads::read::{Hand, systems};
use crate::units::read::{take, worded};

/// A line of more words is no line of a drawing.
const MOST_WORDS: usize = 24;

/// A line taken to pieces.
#[derive(Debug, Default, PartialEq)]
pub(super) struct Line {
    /// What is asked for, the most telling of it.
    pub(super) work: Option<Work>,
    /// What it is asked of: sizes, threads, materials.
    pub(super) subject: Vec<String>,
    /// How deep, as it was written.
    pub(super) depth: Option<String>,
    /// How thick the part is, as it was written.
    pub(super) thickness: Option<String>,
    /// Whether the hole was said to go through or not.
    pub(super) hole: Option<Hole>,
    /// Which way the thread turns, where that stood by itself.
    pub(super) hand: Hand,
    /// Something was taken off it.
    pub(super) is_shorter: bool,
    /// Where in the subject a word for a work stood, and which: `drill 4.2 | tap M5`.
    pub(super) cuts: Vec<(usize, Work)>,
}

/// What a part is made as, which narrows no material: `copper boiler bush`.
#[rustfmt::skip]
const PARTS: &[&str] = &[
    "bearing", "bearings", "block", "body", "boiler", "boss", "bracket", "bush", "bushes", "bushing",
    "casting", "collar", "cover", "cylinder", "fitting", "frame", "frames", "part", "sheet", "stock",
    "strip", "tube", "valve", "wheel",
];

impl Line {
    /// Takes a plain text to pieces; `None` where neither work nor subject is left of it.
    pub(super) fn of(text: &str) -> Option<Self> {
        let spelt = spelt_out(text);
        let said = worded(&spelt);
        let words: Vec<&str> =
            said.split([' ', ';', ':']).map(bare).filter(|it| !it.is_empty()).collect();
        if words.len() > MOST_WORDS {
            return None;
        }
        let mut line = Self::default();
        let mut rest = words.as_slice();
        while !rest.is_empty() {
            rest = line.step(rest);
        }
        if line.subject.last().is_some_and(|last| last == "x") {
            line.subject.pop();
        }
        line.is_shorter = line.subject.join(" ") != text;
        (!line.subject.is_empty() || line.work.is_some()).then_some(line)
    }

    /// The line without the words for what the part is made as; `None` where there are none, or where
    /// nothing but a material stands with them.
    pub(super) fn without_parts(&self) -> Option<Self> {
        if self.work.is_none() && !self.has_a_figure() {
            return None;
        }
        let is_part = |word: &String| PARTS.contains(&word.as_str());
        let subject: Vec<String> =
            self.subject.iter().filter(|word| !is_part(word)).cloned().collect();
        let fewer = |to: usize| self.subject.iter().take(to).filter(|word| !is_part(word)).count();
        (subject.len() < self.subject.len()).then(|| Self {
            work: self.work,
            depth: self.depth.clone(),
            thickness: self.thickness.clone(),
            hole: self.hole,
            hand: self.hand,
            is_shorter: true,
            cuts: self.cuts.iter().map(|(place, work)| (fewer(*place), *work)).collect(),
            subject,
        })
    }

    fn has_a_figure(&self) -> bool {
        self.subject.iter().any(|word| has_figure(word))
    }

    /// Takes what stands at the front, and returns what stands behind it.
    fn step<'w, 't>(&mut self, words: &'w [&'t str]) -> &'w [&'t str] {
        let Some((first, behind)) = words.split_first() else { return words };
        if let Some((figure, after)) = figure(words) {
            if let Some(after) = self.placed(words, &figure, after) {
                return after;
            }
        } else if matches!(*first, "deep" | "depth" | "dp") {
            if self.subject.last().is_some_and(|last| last == "x") {
                self.subject.pop();
            }
            return match figure_behind(behind) {
                Some((figure, after)) => {
                    self.depth = Some(figure);
                    after
                }
                None => behind,
            };
        } else if let Some(behind) = left_hand(words) {
            self.hand = Hand::Left;
            return behind;
        } else if matches!(*first, "through" | "blind") && behind.first() != Some(&"the") {
            self.hole = Some(if *first == "blind" { Hole::Blind } else { Hole::Through });
            self.work = self.work.or(Some(Work::Drilling));
            // "Blind 1 1/2" at the end of a line.
            if self.hole == Some(Hole::Blind)
                && let Some((figure, [])) = figure(behind)
            {
                self.depth = Some(figure);
                return &[];
            }
            return behind;
        } else if let Some((phrase, count)) = at_front(words) {
            if let Phrase::Work(work) = phrase {
                self.ask(work);
                self.cuts.push((self.subject.len(), work));
            }
            return words.get(count..).unwrap_or_default();
        }
        self.subject.push((*first).to_owned());
        behind
    }

    /// A figure that counts, places or goes deep: `4 holes`, `1 1/4 pcd`, `3/8 deep`.
    fn placed<'w, 't>(
        &mut self,
        words: &'w [&'t str],
        figure: &str,
        after: &'w [&'t str],
    ) -> Option<&'w [&'t str]> {
        let (next, behind) = after.split_first()?;
        let is_count = words.first().is_some_and(|word| is_count(word));
        match *next {
            "deep" | "dp" | "depth" => {
                self.depth = Some(figure.to_owned());
                if self.subject.last().is_some_and(|last| last == "x") {
                    self.subject.pop();
                }
                Some(behind)
            }
            "thick" => {
                self.thickness = Some(figure.to_owned());
                Some(behind)
            }
            // "How deep to drill for 1/4 of 4 BA".
            "of" if self.work == Some(Work::Depth) => {
                self.depth = Some(figure.to_owned());
                Some(behind)
            }
            // "M3 in 1.6 ali sheet".
            _ if self.is_thickness_of_sheet(after) => {
                self.thickness = Some(figure.to_owned());
                Some(after)
            }
            "long" | "lg" | "pcd" | "deg" | "degs" | "degree" | "degrees" | "crs" | "centres"
            | "apart" => Some(behind),
            "hole" | "holes" | "off" | "places" | "place" | "positions" | "posns" | "pos"
            | "no.off"
                if is_count && after.len() + 1 == words.len() =>
            {
                Some(behind)
            }
            // "C'sk 90 for M5": the angle of the tool.
            _ if matches!(figure, "82" | "90" | "100") && *next != "x" && self.is_sunk_here() => {
                Some(after)
            }
            // "4 x M3", "6 x 4BA": a count before a thread that begins with no bare figure.
            "x" if is_count && after.len() + 1 == words.len() => {
                let is_named = behind.first().is_some_and(|word| is_named_thread(word));
                is_named.then_some(behind)
            }
            _ => None,
        }
    }

    /// Whether a countersink was the last thing said.
    fn is_sunk_here(&self) -> bool {
        self.cuts.last() == Some(&(self.subject.len(), Work::Countersinking))
    }

    /// Whether the words behind a figure are a metal in sheet, and what is made in it stood before.
    fn is_thickness_of_sheet(&self, after: &[&str]) -> bool {
        let metal: Vec<&str> =
            after.iter().copied().take_while(|word| !matches!(*word, "sheet" | "plate")).collect();
        let is_sheet = metal.len() < after.len() && (1..=3).contains(&metal.len());
        let is_of_metal = is_sheet
            && metal.iter().all(|word| !has_figure(word))
            && metal.first().is_some_and(|word| systems(word).is_empty());
        is_of_metal && self.has_a_figure() && self.subject.last().is_some_and(|last| last != "x")
    }

    /// Takes what is asked for; what says more stands before what says less.
    fn ask(&mut self, work: Work) {
        const fn says(work: Work) -> u8 {
            match work {
                Work::Notes => 6,
                Work::OfMaterial => 5,
                // "Speed for a 3/8 reamer" is of the reamer.
                Work::Reaming | Work::Countersinking | Work::Clearance => 4,
                Work::Speed | Work::Depth | Work::Card(_) => 3,
                Work::Counterboring | Work::Forming => 2,
                Work::Spotting | Work::Tapping => 1,
                Work::Drilling => 0,
            }
        }
        if self.work.is_none_or(|held| says(held) < says(work)) {
            self.work = Some(work);
        }
    }
}

/// What stands behind the words for a left-hand thread.
fn left_hand<'w, 't>(words: &'w [&'t str]) -> Option<&'w [&'t str]> {
    match words {
        ["left", "hand" | "handed", rest @ ..] | ["lh" | "l.h" | "left-hand", rest @ ..] => {
            Some(rest)
        }
        _ => None,
    }
}

/// A word without the marks that close sentences and brackets.
fn bare(word: &str) -> &str {
    word.trim_matches(['(', ')', ',', '!', '“', '”', '\'']).trim_end_matches('.')
}

/// So many, of one or two digits.
fn is_count(word: &str) -> bool {
    word.len() <= 2 && word.chars().all(|letter| letter.is_ascii_digit())
}

/// `m3`, `4ba`, `2ba`: named without a second word.
fn is_named_thread(word: &str) -> bool {
    let has_digit = word.contains(|letter: char| letter.is_ascii_digit());
    has_digit && word.contains(char::is_alphabetic)
}

/// A figure at the front with its unit, as written: `1 1/4`, `3/8`, `12 mm`, `.5"`.
fn figure<'w, 't>(words: &'w [&'t str]) -> Option<(String, &'w [&'t str])> {
    let (first, mut rest) = words.split_first()?;
    let (number, behind) = take(first)?;
    let mut text = (*first).to_owned();
    if !behind.is_empty() {
        return is_unit(behind).then_some((text, rest));
    }
    if !number.is_vulgar()
        && let Some((next, after)) = rest.split_first()
        && take(next).is_some_and(|(second, unit)| {
            second.is_vulgar() && second.value < 1.0 && (unit.is_empty() || is_unit(unit))
        })
    {
        text = format!("{text} {next}");
        rest = after;
    }
    if let Some((unit, after)) = rest.split_first()
        && is_unit(unit)
    {
        text = format!("{text} {unit}");
        rest = after;
    }
    Some((text, rest))
}

/// A figure behind words that join: `deep to 3/8`.
fn figure_behind<'w, 't>(words: &'w [&'t str]) -> Option<(String, &'w [&'t str])> {
    let words = match words {
        ["of" | "to" | "is" | "=", rest @ ..] => rest,
        words => words,
    };
    figure(words)
}

fn is_unit(word: &str) -> bool {
    matches!(word, "mm" | "in" | "ins" | "inch" | "inches" | "\"" | "thou" | "cm")
}
