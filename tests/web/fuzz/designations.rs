//! What is typed for a thread, a drill, a length: it is read as what it says or asked about, never
//! taken for something else.

use holewright_core::finder;
use holewright_core::tables::drills::owned::{OwnedError, owned, series};
use holewright_core::tables::drills::read::{ReadError as DrillError, read as drill};
use holewright_core::tables::drills::{self, Drill};
use holewright_core::tables::threads::read::{Hand, ReadError, candidates, read_with_hand};
use holewright_core::tables::threads::{self, Thread};
use holewright_core::units::read::{Bare, angle, length, spindle_speed};
use holewright_core::units::{in_inch, in_mm, mm, print};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::{Index, select};

use super::slips::{dressed, misread, slipped};
use super::timed::{Outcome, hunt};

/// Words and marks of the trade, and some that are not.
const PIECES: &[&str] = &[
    "1",
    "5",
    "40",
    "64",
    "0",
    "00",
    "1/4",
    "7/64",
    "2.05",
    ",5",
    ".0785",
    ".",
    ",",
    "-",
    "–",
    "x",
    "×",
    " ",
    "  ",
    "\u{a0}",
    "/",
    "#",
    "No ",
    "№",
    "BA",
    "BSW",
    "Whit",
    "ME",
    "M",
    "S",
    "G",
    "UNC",
    "UNF",
    "NPT",
    "cycle",
    "metric",
    "fine",
    "mm",
    "cm",
    "in",
    "\"",
    "''",
    "″",
    "tpi",
    "thou",
    "°",
    "LH",
    "left hand",
    "6H",
    "2B",
    "A-Z",
    "½",
    "⅜",
    "⁷⁄₆₄",
    "drill",
    "thread",
    "١",
    "ß",
    "İ",
    "ſ",
    "\u{200b}",
    "\u{301}",
    "🔩",
    "'",
    "?",
    "%",
    "\0",
    "e3",
    "nan",
    "inf",
    "+",
];

/// A thing with a name.
#[derive(Clone, Copy, Debug)]
enum Thing {
    Thread(&'static str),
    Drill(&'static str),
    /// So many hundredths of a millimetre.
    Mm(u32),
    /// So many ten-thousandths of an inch.
    Inch(u32),
    /// So many whole inches and 64ths.
    Fraction(u32, u32),
}

/// What is typed, and what must come of it.
#[derive(Clone, Debug)]
enum Typed {
    /// Anything at all.
    Any(String),
    /// The thing's own name in another dress.
    Dressed(Thing, String),
    /// The thing's own name with one digit another.
    Misread(Thing, String),
}

fn thing() -> impl Strategy<Value = Thing> {
    let threads: Vec<_> = threads::all().map(|thread| thread.designation).collect();
    let drills: Vec<_> = drills::all().iter().map(|drill| drill.label.as_str()).collect();
    prop_oneof![
        3 => select(threads).prop_map(Thing::Thread),
        2 => select(drills).prop_map(Thing::Drill),
        1 => (1_u32..=200_000).prop_map(Thing::Mm),
        1 => (1_u32..=780_000).prop_map(Thing::Inch),
        1 => (0_u32..=70, 1_u32..64).prop_map(|(whole, part)| Thing::Fraction(whole, part)),
    ]
}

impl Thing {
    fn name(self) -> String {
        match self {
            Self::Thread(name) | Self::Drill(name) => name.to_owned(),
            Self::Mm(_) | Self::Inch(_) => self.figures(),
            Self::Fraction(0, part) => format!("{part}/64 in"),
            Self::Fraction(whole, part) => format!("{whole} {part}/64 in"),
        }
    }

    fn figures(self) -> String {
        match self {
            Self::Mm(hundredths) => format!("{}.{:02} mm", hundredths / 100, hundredths % 100),
            Self::Inch(parts) => format!("{}.{:04} in", parts / 10_000, parts % 10_000),
            _ => String::new(),
        }
    }

    /// What it measures in millimetres, where it is a length.
    fn size(self) -> Option<f64> {
        match self {
            Self::Mm(hundredths) => Some(f64::from(hundredths) / 100.0),
            Self::Inch(parts) => Some(f64::from(parts) / 10_000.0 * 25.4),
            Self::Fraction(whole, part) => Some((f64::from(whole) + f64::from(part) / 64.0) * 25.4),
            Self::Thread(_) | Self::Drill(_) => None,
        }
    }
}

/// Anything, what is right with a few slips in it, and several of such things behind each other.
fn anything() -> impl Strategy<Value = String> {
    let slip = slipped(thing().prop_map(Thing::name), PIECES).boxed();
    let pieces = vec(select(PIECES.to_vec()), 0..12).prop_map(|pieces| pieces.concat());
    let list = (vec(slip.clone(), 1..5), select(vec![", ", ",", ";", "\n", "-", " "]));
    prop_oneof![
        4 => slip,
        2 => pieces,
        1 => list.prop_map(|(items, joint)| items.join(joint)),
        1 => ".{0,80}",
    ]
}

fn typed() -> impl Strategy<Value = Typed> {
    let dress = (thing(), vec(any::<u8>(), 1..24))
        .prop_map(|(thing, dress)| Typed::Dressed(thing, dressed(&thing.name(), &dress)));
    let wrong =
        (thing(), any::<Index>(), any::<u32>()).prop_map(|(thing, place, by)| {
            match misread(&thing.name(), place, by) {
                Some(misread) => Typed::Misread(thing, misread),
                None => Typed::Any(thing.name()),
            }
        });
    prop_oneof![3 => anything().prop_map(Typed::Any), 1 => dress, 1 => wrong]
}

#[test]
fn designations_and_lengths_are_read_as_what_they_say_or_not_at_all() {
    hunt("designations and lengths", 15, typed(), |typed| match typed {
        Typed::Any(text) => any_text(&text),
        Typed::Dressed(thing, text) => reads_as_itself(thing, &text),
        Typed::Misread(thing, text) => reads_as_another(thing, &text),
    });
}

fn reads_as_itself(thing: Thing, text: &str) -> Result<Outcome, TestCaseError> {
    match thing {
        Thing::Thread(name) => {
            for (behind, hand) in [("", Hand::Right), (" LH", Hand::Left), ("-l.h.", Hand::Left)] {
                let text = format!("{text}{behind}");
                let read = read_with_hand(&text);
                let read = read.map(|read| (read.thread.designation, read.hand)).ok();
                let is_too_long = text.chars().count() > 60;
                prop_assert!(is_too_long || read == Some((name, hand)), "{text:?}: {read:?}");
            }
        }
        Thing::Drill(name) => {
            let is_too_long = text.chars().count() > 40;
            let read = drill(text).map(|drill| drill.label.as_str());
            prop_assert!(is_too_long || read == Ok(name), "{text:?}: {read:?}");
        }
        length_of => {
            let size = length_of.size().unwrap_or_default();
            let read = length(text, Bare::Ask).map(in_mm);
            let is_same = read.as_ref().is_ok_and(|read| (read - size).abs() < 1e-9);
            let is_too_long = text.chars().count() > 40;
            prop_assert!(is_too_long || is_same, "{text:?}: {read:?}, not {size}");
        }
    }
    Ok(Outcome::Taken)
}

/// A digit that is wrong makes another thing, or none: it is never passed over.
fn reads_as_another(thing: Thing, text: &str) -> Result<Outcome, TestCaseError> {
    let is_taken = match thing {
        Thing::Thread(name) => {
            let read = read_with_hand(text).map(|read| read.thread.designation);
            prop_assert!(read != Ok(name), "{text:?} is taken for {name}");
            read.is_ok()
        }
        Thing::Drill(name) => {
            let read = drill(text).map(|drill| drill.label.as_str());
            prop_assert!(read != Ok(name), "{text:?} is taken for {name}");
            read.is_ok()
        }
        length_of => {
            let read = length(text, Bare::Ask).map(in_mm);
            let size = length_of.size().unwrap_or_default();
            let is_same = read.as_ref().is_ok_and(|read| (read - size).abs() < 1e-9);
            prop_assert!(!is_same, "{text:?} is taken for {size} mm");
            read.is_ok()
        }
    };
    Ok(Outcome::taken_if(is_taken))
}

fn any_text(text: &str) -> Result<Outcome, TestCaseError> {
    let meant = meaning(text);
    // Capitals, wide characters and space around it say nothing.
    let wide: String = text
        .chars()
        .map(|c| if c.is_ascii_graphic() { char::from_u32(u32::from(c) + 0xfee0) } else { Some(c) })
        .map(Option::unwrap)
        .collect();
    prop_assert_eq!(&meaning(&wide), &meant, "{:?}", wide);
    prop_assert_eq!(meaning(&text.to_ascii_uppercase()), meaning(&text.to_ascii_lowercase()));
    if text.chars().count() < 38 {
        prop_assert_eq!(&meaning(&format!("\u{2003}{text}\t")), &meant);
    }
    // What nobody can have meant is not passed over, wherever it stands.
    let middle = text.char_indices().nth(text.chars().count() / 2).map_or(0, |(at, _)| at);
    for at in [0, middle, text.len()] {
        let strange = format!("{}§{}", &text[..at], &text[at..]);
        let read = meaning(&strange);
        prop_assert!(read.thread.is_err() && read.drill.is_err(), "{strange:?}: {read:?}");
        prop_assert!(read.length.is_err(), "{strange:?}: {read:?}");
    }
    doors_agree(text)?;
    lists(text)?;
    figures(text)?;
    Ok(Outcome::taken_if(meant.thread.is_ok() || meant.drill.is_ok() || meant.length.is_ok()))
}

/// What a text means to each of the readers: the thing, or those it could be.
#[derive(Debug, PartialEq)]
struct Meaning {
    thread: Result<(String, Hand), Vec<String>>,
    drill: Result<String, Vec<String>>,
    length: Result<f64, ()>,
}

fn meaning(text: &str) -> Meaning {
    let paths = |threads: Vec<&Thread>| threads.into_iter().map(Thread::path).collect();
    let thread = match read_with_hand(text) {
        Ok(read) => Ok((read.thread.path(), read.hand)),
        Err(ReadError::Ambiguous { candidates, .. }) => Err(paths(candidates)),
        Err(ReadError::Unknown { nearest, .. }) => Err(paths(nearest)),
        Err(ReadError::Empty | ReadError::TooLong) => Err(Vec::new()),
    };
    let paths = |drills: Vec<&Drill>| drills.into_iter().map(Drill::path).collect();
    let drill = match drill(text) {
        Ok(drill) => Ok(drill.path()),
        Err(DrillError::Ambiguous { candidates, .. }) => Err(paths(candidates)),
        Err(DrillError::Unknown { nearest, .. }) => Err(paths(nearest)),
        Err(DrillError::Empty | DrillError::TooLong) => Err(Vec::new()),
    };
    Meaning { thread, drill, length: length(text, Bare::Ask).map(in_mm).map_err(|_| ()) }
}

/// The readers of one text do not contradict each other, the search finds what they read, and they say
/// on one line what they refuse.
fn doors_agree(text: &str) -> Result<(), TestCaseError> {
    let thread = read_with_hand(text).map(|read| read.thread);
    match (&thread, candidates(text)) {
        (Ok(read), Ok(candidate)) => prop_assert_eq!(*read, candidate),
        (Err(ReadError::Ambiguous { candidates, .. }), Err(others)) => {
            prop_assert_eq!(candidates, &others);
        }
        (Err(_), Err(others)) => prop_assert!(others.is_empty(), "{text:?}: {others:?}"),
        (read, other) => prop_assert!(false, "{text:?}: {read:?} and {other:?}"),
    }
    let drill = drill(text);
    if let (Ok(drill), Ok(size)) = (&drill, length(text, Bare::Ask)) {
        // Half of the third place of inches is the most a chart rounds by.
        let off = (in_inch(drill.diameter) - in_inch(size)).abs();
        prop_assert!(off <= 0.000_501, "{text:?}: {} is {off} in off", drill.label);
    }
    let found = finder::find(text);
    let is_found = |path: &str| found.hits.iter().any(|hit| hit.url == path);
    let thread_is_found = thread.as_ref().map_or(true, |thread| is_found(&thread.path()));
    let drill_is_found = drill.as_ref().map_or(true, |drill| is_found(&drill.path()));
    prop_assert!(thread_is_found && drill_is_found, "{text:?}: {found:?}");
    let said = [
        thread.err().map(|error| error.to_string()),
        drill.err().map(|error| error.to_string()),
        length(text, Bare::Mm).err().map(|error| error.to_string()),
        angle(text).err().map(|error| error.to_string()),
        spindle_speed(text).err().map(|error| error.to_string()),
        owned(text).err().map(|error| error.to_string()),
        series(text).err().map(|error| error.to_string()),
    ];
    for said in said.into_iter().flatten() {
        prop_assert!(!said.is_empty() && !said.contains(char::is_control), "{said:?}");
    }
    for hit in found.hits.iter().chain(&found.suggestions) {
        prop_assert!(hit.url.starts_with('/') && hit.url.is_ascii(), "{hit:?}");
    }
    Ok(())
}

/// A list holds drills that exist, by size, each once.
fn lists(text: &str) -> Result<(), TestCaseError> {
    if let Ok(drills) | Err(OwnedError::NotUnderstood { rest: drills, .. }) = owned(text) {
        let sizes: Vec<f64> = drills.iter().map(|drill| in_mm(drill.diameter)).collect();
        prop_assert!(sizes.is_sorted(), "{text:?}: {sizes:?}");
        let mut paths: Vec<String> = drills.iter().map(|drill| drill.path()).collect();
        paths.sort();
        paths.dedup();
        prop_assert_eq!(paths.len(), drills.len(), "{:?}", text);
    }
    if let Ok(one) = drill(text)
        && let Ok(list) = owned(text)
    {
        prop_assert!(list.contains(&one), "{text:?}: {} is not among {list:?}", one.label);
    }
    Ok(())
}

/// A figure lies within its bounds, and what is printed of it reads as it.
fn figures(text: &str) -> Result<(), TestCaseError> {
    let asked = length(text, Bare::Ask);
    if let Ok(size) = length(text, Bare::Mm) {
        let size = in_mm(size);
        prop_assert!(size > 0.0 && size <= 2000.0, "{text:?}: {size} mm");
        prop_assert!(asked.is_err() || asked.map(in_mm) == Ok(size), "{text:?}");
        let printed = print::mm(mm(size), 4);
        let again = length(&printed, Bare::Ask).map(in_mm);
        let is_near = again.as_ref().is_ok_and(|again| (again - size).abs() < 0.000_051);
        prop_assert!(is_near, "{text:?}: {printed} reads as {again:?}");
    } else {
        prop_assert!(asked.is_err(), "{text:?}: {asked:?}");
    }
    Ok(())
}
