//! What a line is about: a thread, a size, materials, and nothing that is not understood.

use super::line::Line;
use super::phrases::Work;
use super::whole::{drills_named, materials_named};
use super::words::has_figure;
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::threads::SystemId;
use crate::tables::threads::read::{AsMeant, as_meant, systems};
use crate::units::read::{Bare, length};

/// No screw or hole is so short that it has fewer turns of thread.
const LEAST_TURNS: f64 = 2.0;

/// A subject of more words is not looked at.
const MOST_WORDS: usize = 10;
/// No thread or size is written in more words.
const LONGEST_RUN: usize = 6;

/// What a line is about, all of it understood.
#[derive(Debug)]
pub(super) struct Reading {
    pub(super) what: What,
    /// The materials named, as typed and as they can be meant; none where none was.
    pub(super) materials: Vec<&'static Material>,
    /// What was typed for them.
    pub(super) typed_material: String,
    /// What is done to it.
    pub(super) work: Option<Work>,
}

/// What is made or asked about.
#[derive(Debug)]
pub(super) enum What {
    Thread(AsMeant),
    /// The drills of a size, if any, and the size as typed.
    Size(Vec<&'static Drill>, String),
    /// A thread system.
    Systems(Vec<SystemId>),
    /// Nothing but materials.
    Material,
}

impl Reading {
    /// Reads a line: one thing, or several sizes each with its work, `drill 7/32 ream 1/4`; nothing where
    /// some of it is not understood.
    pub(super) fn all_of(line: &Line) -> Vec<Self> {
        let words: Vec<&str> = line.subject.iter().map(String::as_str).collect();
        // A text that is nothing but names is left to those who find parts of it.
        let whole = if line.is_shorter { Self::whole(&words, line.work) } else { None };
        if let Some(found) = whole {
            return vec![found];
        }
        let several = Self::of_several_works(&words, line);
        if !several.is_empty() {
            return several;
        }
        let of_length = || {
            // "1/4 BSF x 3/4", "M6 x 1 x 20", "M6x20": how long or deep stands behind the last x.
            let (before, behind) = at_last_times(&words)?;
            let before: Vec<&str> = before.split(' ').filter(|word| !word.is_empty()).collect();
            Self::whole(&before, line.work).filter(|found| found.can_be_so_long(&behind))
        };
        of_length().into_iter().collect()
    }

    /// Whether a line is nothing but names, all of them known.
    pub(super) fn is_of_names(line: &Line) -> bool {
        let words: Vec<&str> = line.subject.iter().map(String::as_str).collect();
        !line.is_shorter && Self::whole(&words, line.work).is_some()
    }

    /// Whether a figure behind the last `x` is a length of this, and not the wrong pitch of it.
    fn can_be_so_long(&self, behind: &str) -> bool {
        match &self.what {
            What::Thread(read) => {
                let turns = read.thread.pitch.length() * LEAST_TURNS;
                length(behind, Bare::Mm).is_ok_and(|long| long >= turns)
            }
            What::Size(..) => true,
            What::Systems(_) | What::Material => false,
        }
    }

    /// Several works in one line, each with its size: the thread is meant where there is one,
    /// `drill 4.2, tap M5`, and otherwise each of them.
    fn of_several_works(words: &[&str], line: &Line) -> Vec<Self> {
        let mut places: Vec<usize> = line.cuts.iter().map(|(place, _)| *place).collect();
        // "1/4 reamer, 7/32 drill": each work stands behind its size.
        let stands_behind = places.first().is_some_and(|first| *first > 0);
        places.extend([0, words.len()]);
        places.sort_unstable();
        places.dedup();
        let work_at = |place: usize| {
            let here = line.cuts.iter().filter(|(at, _)| *at == place);
            here.map(|(_, work)| *work).next_back().or(line.work)
        };
        let parts = places.windows(2).filter_map(|ends| match ends {
            [start, end] => {
                let work = work_at(if stands_behind { *end } else { *start });
                Some((words.get(*start..*end)?, work))
            }
            _ => None,
        });
        let read: Option<Vec<Self>> = parts.map(|(part, work)| Self::whole(part, work)).collect();
        let Some(mut read) = read.filter(|read| read.len() > 1) else { return Vec::new() };
        let is_thread = |found: &Self| matches!(found.what, What::Thread(_));
        match read.iter().filter(|found| is_thread(found)).count() {
            0 => {
                let metal = read.iter().find(|found| !found.materials.is_empty());
                let metal =
                    metal.map(|found| (found.materials.clone(), found.typed_material.clone()));
                for found in read.iter_mut().filter(|found| found.materials.is_empty()) {
                    (found.materials, found.typed_material) = metal.clone().unwrap_or_default();
                }
                read
            }
            1 => read
                .into_iter()
                .find(is_thread)
                .map(|found| Self { work: line.work, ..found })
                .into_iter()
                .collect(),
            _ => Vec::new(),
        }
    }

    fn whole(words: &[&str], work: Option<Work>) -> Option<Self> {
        let materials = materials(words);
        if let Some((materials, typed_material)) = materials {
            return Some(Self { what: What::Material, materials, typed_material, work });
        }
        let of_system = systems(&words.join(" "));
        if !of_system.is_empty() {
            let what = What::Systems(of_system);
            return Some(Self { what, materials: Vec::new(), typed_material: String::new(), work });
        }
        if words.len() > MOST_WORDS {
            return None;
        }
        let longest_first = (1..=words.len().min(LONGEST_RUN)).rev().flat_map(|length| {
            words.windows(length).enumerate().map(move |(start, run)| (start, length, run))
        });
        let (mut sizes, mut threads) = (None, None);
        for (start, length, run) in longest_first {
            if !run.iter().any(|word| has_figure(word)) {
                continue;
            }
            let Some(what) = What::of(&run.join(" "), work) else { continue };
            let rest: Vec<&str> = words
                .iter()
                .take(start)
                .chain(words.iter().skip(start + length))
                .copied()
                .collect();
            let (materials, typed_material) = match rest.as_slice() {
                [] => (Vec::new(), String::new()),
                rest => match self::materials(rest) {
                    Some(found) => found,
                    None => continue,
                },
            };
            let found = Self { what, materials, typed_material, work };
            let kind =
                if matches!(found.what, What::Thread(_)) { &mut threads } else { &mut sizes };
            if kind.is_none() {
                *kind = Some(found);
            }
        }
        // "Ream 1/4 in brass" is no brass thread; elsewhere a size inside that of a thread is not meant.
        if work.is_some_and(is_of_sizes) { sizes.or(threads) } else { threads.or(sizes) }
    }
}

/// Whether a work is done to a size and not to a thread.
const fn is_of_sizes(work: Work) -> bool {
    matches!(
        work,
        Work::Speed | Work::Reaming | Work::Counterboring | Work::Spotting | Work::Drilling
    )
}

impl What {
    fn of(run: &str, work: Option<Work>) -> Option<Self> {
        if let Ok(read) = as_meant(run) {
            return Some(Self::Thread(read));
        }
        let is_whole = run.chars().all(|letter| letter.is_ascii_digit());
        // A bare figure that is tapped or cleared is a thread's, and which is not said.
        if is_whole && matches!(work, None | Some(Work::Tapping | Work::Clearance | Work::Depth)) {
            return None;
        }
        // No reamer is called by a number, and a diameter is none.
        let run = match work {
            Some(Work::Reaming | Work::Counterboring | Work::Speed | Work::Countersinking)
                if is_whole =>
            {
                format!("{run} mm")
            }
            _ => run.to_owned(),
        };
        let mut drills = drills_named(&run);
        // "Drill 6" is millimetres first.
        drills.sort_by_key(|drill| drill.series != crate::tables::drills::Series::Metric);
        let is_size = !drills.is_empty() || length(&run, Bare::Mm).is_ok();
        is_size.then_some(Self::Size(drills, run))
    }
}

/// The materials that some words name, with the words.
fn materials(words: &[&str]) -> Option<(Vec<&'static Material>, String)> {
    let text = words.join(" ");
    let found = materials_named(&text);
    if !found.is_empty() {
        return Some((found, text));
    }
    // "Bronze from brass", "303 or 304": each by itself.
    let mut several: Vec<&'static Material> = Vec::new();
    let mut rest = words;
    while !rest.is_empty() {
        let (count, named) = (1..=rest.len()).rev().find_map(|count| {
            let named = materials_named(&rest.get(..count)?.join(" "));
            (!named.is_empty()).then_some((count, named))
        })?;
        for material in named {
            if !is_held(&several, material) {
                several.push(material);
            }
        }
        rest = rest.get(count..).unwrap_or_default();
    }
    (!several.is_empty()).then_some((several, text))
}

fn is_held(held: &[&'static Material], material: &Material) -> bool {
    held.iter().any(|other| other.slug == material.slug)
}

/// What stands before and behind the last `x` between figures.
fn at_last_times(words: &[&str]) -> Option<(String, String)> {
    let text = words.join(" ");
    let place = text.char_indices().rev().find(|(place, letter)| {
        let before = text.get(..*place).unwrap_or_default().trim_end();
        let behind = text.get(place + 1..).unwrap_or_default().trim_start();
        let joins =
            before.ends_with(|before: char| before.is_ascii_digit() || before.is_alphabetic());
        *letter == 'x'
            && joins
            && behind.starts_with(|next: char| next.is_ascii_digit() || next == '.')
    });
    let (place, _) = place?;
    let before = text.get(..place)?.trim_end().to_owned();
    let behind = text.get(place + 1..)?.trim_start().to_owned();
    let is_length = length(&behind, Bare::Mm).is_ok();
    is_length.then_some((before, behind))
}
