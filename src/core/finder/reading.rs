//! What a line is about: a thread, a size, materials, and nothing that is not understood.

use super::line::Line;
use super::phrases::Work;
use super::whole::{drills_named, materials_named};
use super::words::has_figure;
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::threads::read::{AsMeant, as_meant};
use crate::units::read::{Bare, length};

/// No screw or hole is so short that it has fewer turns of thread.
const LEAST_TURNS: f64 = 2.0;

/// What a line is about, all of it understood.
#[derive(Debug)]
pub(super) struct Reading {
    pub(super) what: What,
    /// The materials named, as typed and as they can be meant; none where none was.
    pub(super) materials: Vec<&'static Material>,
    /// What was typed for them.
    pub(super) typed_material: String,
    /// How deep, as it was written.
    pub(super) depth: Option<String>,
}

/// What is made or asked about.
#[derive(Debug)]
pub(super) enum What {
    Thread(AsMeant),
    /// The drills of a size, if any, and the size as typed.
    Size(Vec<&'static Drill>, String),
    /// Nothing but materials.
    Material,
}

impl Reading {
    /// Reads a line; `None` where some of it is not understood.
    pub(super) fn of(line: &Line) -> Option<Self> {
        let words: Vec<&str> = line.subject.iter().map(String::as_str).collect();
        // A text that is nothing but names is left to those who find parts of it.
        let whole =
            if line.is_shorter { Self::whole(&words, line, line.depth.clone()) } else { None };
        whole.or_else(|| {
            // "1/4 BSF x 3/4", "M6 x 1 x 20", "M6x20": how long or deep stands behind the last x.
            let (before, behind) = at_last_times(&words)?;
            let before: Vec<&str> = before.split(' ').filter(|word| !word.is_empty()).collect();
            let depth = line.depth.clone().unwrap_or_else(|| behind.clone());
            Self::whole(&before, line, Some(depth)).filter(|found| found.can_be_so_long(&behind))
        })
    }

    /// Whether a figure behind the last `x` is a length of this, and not the wrong pitch of it.
    fn can_be_so_long(&self, behind: &str) -> bool {
        match &self.what {
            What::Thread(read) => {
                let turns = read.thread.pitch.length() * LEAST_TURNS;
                length(behind, Bare::Mm).is_ok_and(|long| long >= turns)
            }
            What::Size(..) => true,
            What::Material => false,
        }
    }

    fn whole(words: &[&str], line: &Line, depth: Option<String>) -> Option<Self> {
        let materials = materials(words);
        if let Some((materials, typed_material)) = materials {
            return Some(Self { what: What::Material, materials, typed_material, depth });
        }
        let longest_first = (1..=words.len()).rev().flat_map(|length| {
            words.windows(length).enumerate().map(move |(start, run)| (start, length, run))
        });
        let mut sizes = None;
        for (start, length, run) in longest_first {
            if !run.iter().any(|word| has_figure(word)) {
                continue;
            }
            let Some(what) = What::of(&run.join(" "), line.work) else { continue };
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
            let found = Self { what, materials, typed_material, depth: depth.clone() };
            if matches!(found.what, What::Thread(_)) {
                return Some(found);
            }
            // A size inside the longer one of a thread is not meant.
            sizes = sizes.or(Some(found));
        }
        sizes
    }
}

impl What {
    fn of(run: &str, work: Option<Work>) -> Option<Self> {
        if let Ok(read) = as_meant(run) {
            return Some(Self::Thread(read));
        }
        let is_whole = run.chars().all(|letter| letter.is_ascii_digit());
        // A bare figure that is tapped or cleared is a thread's, and which is not said.
        if is_whole && matches!(work, None | Some(Work::Tapping | Work::Clearance)) {
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
