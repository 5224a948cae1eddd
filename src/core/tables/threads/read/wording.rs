//! What a typed thread name says: systems, sizes, pitches, hand – before any table is asked.

use super::super::{Meant, Naming};
use super::figure::{Figure, Joint, SizeReading, Unit};
use super::names::{MOST_WORDS, is_of_rare, named};
use super::size::{self, NamedThread, has_pitch, is_called};
use super::token::{Token, tokens};
use super::{Hand, SystemId, Thread};
use crate::units::read::{Notation, mixed};

/// No thread name has more numbers: `1-1/4-4 1/2` has four, `#` and systems aside.
const MOST_FIGURES: usize = 4;

/// What was typed, taken apart.
pub(super) struct Wording<'a> {
    /// Every word and mark has a meaning here.
    pub(super) is_understood: bool,
    pub(super) hand: Hand,
    /// For each system name written, the systems it can mean: a thread must be in all.
    names: Vec<Vec<SystemId>>,
    figures: Vec<Figure<'a>>,
}

impl<'a> Wording<'a> {
    pub(super) fn of(text: &'a str) -> Self {
        let written = tokens(without_class(text));
        let mut wording =
            Self { is_understood: true, hand: Hand::Right, names: Vec::new(), figures: Vec::new() };
        let mut rest = written.as_slice();
        let mut joint = Joint::Apart;
        let mut is_number = false;
        while let Some((token, behind)) = rest.split_first() {
            let from_here = rest;
            rest = behind;
            match token {
                Token::Number(number) => {
                    let (unit, behind) = unit(behind);
                    rest = behind;
                    wording.figures.push(Figure { number: *number, unit, is_number, joint });
                    (joint, is_number) = (Joint::Apart, false);
                    // A dash joins numbers only: in "M8x1-LH" it parts words.
                    if let [Token::Dash, Token::Number(_) | Token::Hash, ..] = rest {
                        joint = Joint::Dash;
                    }
                }
                Token::Hash => is_number = true,
                Token::Times => joint = Joint::Times,
                Token::Dash => {}
                Token::Word(_) => rest = wording.take_name(from_here),
                Token::InchMark | Token::Strange => wording.is_understood = false,
            }
        }
        // A # or an x must stand before a number.
        wording.is_understood &=
            !is_number && joint != Joint::Times && wording.figures.len() <= MOST_FIGURES;
        wording
    }

    /// Takes the longest name that the words begin with, and returns the tokens behind it.
    fn take_name<'t>(&mut self, tokens: &'t [Token<'a>]) -> &'t [Token<'a>] {
        for (words, rest) in runs_of_words(tokens) {
            match words.join(" ").as_str() {
                "lh" | "l h" | "left" | "left hand" | "left handed" => self.hand = Hand::Left,
                "rh" | "r h" | "right" | "right hand" | "right handed" | "thread" | "threads" => {}
                _ => match systems_named(&words) {
                    Some(systems) => self.names.push(systems),
                    None => continue,
                },
            }
            return rest;
        }
        self.is_understood = false;
        tokens.get(1..).unwrap_or_default()
    }

    /// Whether enough is written to mean this one thread: its system or its pitch, not a bare size.
    pub(super) fn settles(&self, thread: &Thread) -> bool {
        let is_pitch = |reading: &SizeReading<'_>| {
            reading.pitch.is_some_and(|pitch| has_pitch(thread, &pitch))
        };
        self.names_a_system()
            || self.readings().iter().any(is_pitch)
            || thread.system.system().naming == Naming::Unified
                && self.as_address().as_deref() == Some(thread.size)
    }

    /// Whether any system is named.
    pub(super) fn names_a_system(&self) -> bool {
        !self.names.is_empty()
    }

    /// Whether a dash joins size and pitch: `1/4-20`.
    pub(super) fn is_dashed(&self) -> bool {
        self.figures.last().is_some_and(|figure| figure.joint == Joint::Dash)
    }

    /// Whether a system is named and no size or pitch.
    pub(super) fn is_only_a_system(&self) -> bool {
        self.names_a_system() && self.figures.is_empty()
    }

    /// Whether a system is among those named; where none is named, every system that a size alone can
    /// mean is.
    pub(super) fn has_system(&self, system: SystemId) -> bool {
        system.system().meant.admits(system, &self.names)
    }

    /// The threads that can be meant, in the order of the tables.
    pub(super) fn threads(&self) -> Vec<&'static Thread> {
        let readings = self.readings();
        let address = self.as_address();
        size::named()
            .iter()
            .filter(|named| {
                let thread = named.thread;
                let is_read = readings.iter().any(|reading| self.is_meant(named, reading));
                let is_address = address.as_deref() == Some(thread.size);
                self.has_system(thread.system) && (is_read || is_address)
            })
            .map(|named| named.thread)
            .collect()
    }

    fn is_meant(&self, named: &NamedThread, reading: &SizeReading<'_>) -> bool {
        let thread = named.thread;
        is_called(named, &reading.size)
            && match reading.pitch {
                Some(pitch) => has_pitch(thread, &pitch),
                None => !(self.names_a_system() && self.is_passed_over(thread)),
            }
    }

    /// Whether a thread needs its pitch said, since the plain size of that name is another thread:
    /// `M8` is the coarse one (ISO 261), `1/2 BSC` the one of 26 tpi.
    fn is_passed_over(&self, thread: &Thread) -> bool {
        let system = thread.system.system();
        match system.meant {
            // "M8 fine" and "metric-fine M8" leave the coarse one out, and then it is not meant.
            Meant::ByPitch { plain } => self.has_system(plain),
            Meant::BySize | Meant::ByName => {
                thread.size.split_once('x').is_some_and(|(plain, _pitch)| {
                    system.threads.iter().any(|other| other.size == plain)
                })
            }
        }
    }

    /// The ways to read the numbers as a size and a pitch.
    pub(super) fn readings(&self) -> Vec<SizeReading<'a>> {
        if self.figures.len() > MOST_FIGURES {
            return Vec::new();
        }
        let mut readings = Vec::new();
        for figures in joined(&self.figures) {
            match figures.as_slice() {
                [size] => readings.push(SizeReading { size: *size, pitch: None }),
                [first, second] => {
                    readings.push(SizeReading { size: *first, pitch: Some(*second) });
                    // "26 tpi brass 5/16", "ME 40 1/4".
                    if second.joint == Joint::Apart {
                        readings.push(SizeReading { size: *second, pitch: Some(*first) });
                    }
                }
                _ => {}
            }
        }
        readings.retain(|SizeReading { size, pitch }| {
            size.unit != Some(Unit::PerInch) && pitch.is_none_or(|pitch| can_be_pitch(&pitch))
        });
        readings
    }

    /// The numbers as a size in an address: `1-1-4`, `1-4-20`, `4-40`.
    fn as_address(&self) -> Option<String> {
        let mut parts = Vec::new();
        for (place, figure) in self.figures.iter().enumerate() {
            let Notation::Whole(digits) = figure.number.notation else { return None };
            let is_joined = place == 0 || figure.joint == Joint::Dash;
            if figure.unit.is_some() || figure.is_number || !is_joined {
                return None;
            }
            parts.push(digits);
        }
        (parts.len() > 1).then(|| parts.join("-"))
    }
}

/// The words that the tokens begin with, the most first, each time with the tokens behind them.
fn runs_of_words<'t, 'a>(
    tokens: &'t [Token<'a>],
) -> impl Iterator<Item = (Vec<&'t str>, &'t [Token<'a>])> {
    let mut words: Vec<&str> = Vec::new();
    let mut runs = Vec::new();
    let mut rest = tokens;
    while let Some((token, behind)) = rest.split_first() {
        match token {
            Token::Word(word) => {
                words.push(word);
                runs.push((words.clone(), behind));
            }
            Token::Dash => {}
            _ => break,
        }
        if words.len() == MOST_WORDS {
            break;
        }
        rest = behind;
    }
    runs.into_iter().rev()
}

/// The systems of a name, or of its words run together: "5 B A" is 5 BA.
fn systems_named(words: &[&str]) -> Option<Vec<SystemId>> {
    let systems = named(&words.join(" "));
    let systems =
        if systems.is_empty() && words.len() > 1 { named(&words.concat()) } else { systems };
    (!systems.is_empty()).then_some(systems)
}

/// Whether the words are the name of a system that is never written without: in "3 in Löwenherz" the
/// inch is not meant.
fn begins_with_rare(tokens: &[Token<'_>]) -> bool {
    let longest = runs_of_words(tokens).find_map(|(words, _)| systems_named(&words));
    longest.is_some_and(|systems| is_of_rare(&systems))
}

fn can_be_pitch(figure: &Figure<'_>) -> bool {
    let is_part_of_one = figure.number.is_vulgar() && figure.number.value < 1.0;
    !figure.is_number && figure.unit != Some(Unit::Inch) && !is_part_of_one
}

/// The numbers as they stand, and every way to join a whole number with the fraction behind it.
fn joined<'a>(figures: &[Figure<'a>]) -> Vec<Vec<Figure<'a>>> {
    let Some((first, rest)) = figures.split_first() else { return vec![Vec::new()] };
    let mut ways = Vec::new();
    if let Some((second, behind)) = rest.split_first()
        && first.unit.is_none()
        && !first.is_number
        && second.joint != Joint::Times
        && let Some(number) = mixed(first.number, second.number)
    {
        let whole = Figure { number, unit: second.unit, is_number: false, joint: first.joint };
        ways.extend(with_first(whole, joined(behind)));
    }
    ways.extend(with_first(*first, joined(rest)));
    ways
}

fn with_first<'a>(
    first: Figure<'a>,
    ways: Vec<Vec<Figure<'a>>>,
) -> impl Iterator<Item = Vec<Figure<'a>>> {
    ways.into_iter().map(move |mut way| {
        way.insert(0, first);
        way
    })
}

/// Takes the unit off the front.
fn unit<'t, 'a>(tokens: &'t [Token<'a>]) -> (Option<Unit>, &'t [Token<'a>]) {
    let (token, rest) = match tokens {
        [Token::Dash, token @ Token::Word(_), rest @ ..] | [token, rest @ ..] => (token, rest),
        [] => return (None, tokens),
    };
    match token {
        Token::InchMark => (Some(Unit::Inch), rest),
        Token::Word(word) => match (word.as_str(), rest) {
            ("mm" | "millimetre" | "millimetres", _) => (Some(Unit::Mm), rest),
            ("in", rest) if begins_with_rare(rest) => (None, rest),
            ("in" | "ins" | "inch" | "inches", _) => (Some(Unit::Inch), rest),
            ("tpi" | "t", _) => (Some(Unit::PerInch), rest),
            ("threads", [Token::Word(per), Token::Word(inch), rest @ ..])
                if per == "per" && inch == "inch" =>
            {
                (Some(Unit::PerInch), rest)
            }
            _ => (None, tokens),
        },
        _ => (None, tokens),
    }
}

/// The text without the class of fit a drawing gives behind the size: `M6x1-6H`, `1/4-20 UNC-2B`.
fn without_class(text: &str) -> &str {
    ["6h", "6g", "2a", "2b"]
        .iter()
        .find_map(|class| text.strip_suffix(class)?.strip_suffix([' ', '-']))
        .map_or(text, |text| text.trim_end_matches([' ', '-']))
}
