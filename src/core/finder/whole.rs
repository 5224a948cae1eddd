//! What the whole text names, as the readers beside the tables understand it.

use super::gather::Gathered;
use super::score::{EXACT, NEIGHBOUR, PART, USUAL};
use super::thing::{Thing, material_called};
use super::words::joined;
use super::{index, pages, size};
use crate::tables::drills::{self, Drill, Series};
use crate::tables::materials::{self, Material, scrap::scrap};
use crate::tables::threads::{self, System, Thread, read::AsMeant};
use crate::units::read::{Bare, length, shown, take};
use crate::units::{Length, Pitch};

/// How much the whole text means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Meaning {
    None,
    /// One thing, and no thread has that size.
    One,
    Several,
}

/// What the whole text names, with what has the size if it is one.
pub(super) fn gather(text: &str) -> (Meaning, Gathered) {
    let mut gathered = Gathered::default();
    let threads = threads::read::candidates(text);
    let is_asked = threads.as_ref().is_err_and(|candidates| !candidates.is_empty());
    for thread in threads.map_or_else(|candidates| candidates, |thread| vec![thread]) {
        gathered.add(EXACT, Thing::Thread(thread).hit());
    }
    if let Ok(AsMeant { thread, taken: Some(_), .. }) = threads::read::as_meant(text) {
        gathered.add(EXACT + USUAL, Thing::Thread(thread).hit());
    }
    let drills = drills_named(text);
    // A decimal that nothing names as a thread's is a size.
    let is_decimal = is_decimal_size(text);
    // "Drill 6" is on most drawings 6 mm.
    let is_millimetres = |drill: &Drill| drill.series == Series::Metric && text.contains("drill");
    for drill in &drills {
        let more = if is_decimal || is_millimetres(drill) { USUAL } else { 0 };
        gathered.add(EXACT + more, Thing::Drill(drill).hit());
    }
    for material in materials_named(text) {
        gathered.add(EXACT, material_called(material, text));
    }
    let named = threads::read::systems(text).into_iter().map(|id| Thing::System(id.system()));
    let systems = systems_of_pitch(text).map(Thing::System).chain(named);
    for thing in systems.chain(series_named(text)).chain(index::named(&joined(text))) {
        gathered.add(EXACT, thing.hit());
    }
    let is_one = gathered.len() == 1;
    let is_shared = match (length(text, Bare::Ask), drills.as_slice()) {
        (Ok(size), drills) => {
            gather_sized(size, &shown(text), drills, &mut gathered);
            size::gather_threads(size, &mut gathered)
        }
        (Err(_), [drill]) if is_one => {
            size::gather_neighbours(drill, &mut gathered);
            self::is_decimal(text) && size::gather_threads(drill.diameter, &mut gathered)
        }
        (Err(_), _) => false,
    };
    let meaning = match gathered.len() {
        0 => Meaning::None,
        // What a part is usually made of is no name.
        _ if scrap(text).is_some() => Meaning::Several,
        _ if pages::is_trouble(text) => Meaning::Several,
        _ if is_one && !is_asked && !is_shared => Meaning::One,
        _ => Meaning::Several,
    };
    (meaning, gathered)
}

/// What the readers offer for a text they do not understand.
pub(super) fn suggest(text: &str, near: &mut Gathered) {
    let threads = match threads::read::read(text) {
        Err(threads::read::ReadError::Unknown { nearest, .. }) => nearest,
        _ => Vec::new(),
    };
    let drills = match drills::read::read(text) {
        Err(drills::read::ReadError::Unknown { nearest, .. }) => nearest,
        _ => Vec::new(),
    };
    let materials = match materials::read::read(text) {
        Ok(material) => vec![material],
        Err(materials::read::ReadError::Unknown { nearest, .. }) => nearest,
        Err(materials::read::ReadError::Ambiguous { .. }) => Vec::new(),
    };
    // A size that is nothing here was most likely meant for a drill.
    let things = drills.into_iter().map(Thing::Drill);
    let things = things.chain(threads.into_iter().map(Thing::Thread));
    let things = things.chain(materials.into_iter().map(Thing::Material));
    for (thing, score) in things.zip((1..=NEIGHBOUR).rev()) {
        near.add(score, thing.hit());
    }
}

/// The drills a text can mean.
pub(super) fn drills_named(text: &str) -> Vec<&'static Drill> {
    match drills::read::read(text) {
        Ok(drill) => vec![drill],
        Err(drills::read::ReadError::Ambiguous { candidates, .. }) => candidates,
        Err(_) => Vec::new(),
    }
}

/// The materials that are named with a size of the stock which nothing here has.
pub(super) fn gather_stock(text: &str, gathered: &mut Gathered) {
    let materials = materials::read::of_stock(text).map_or_else(|several| several, |one| vec![one]);
    for material in materials {
        gathered.add(PART, material_called(material, text));
    }
}

/// The materials a text can mean, all of it being their name: a size is a drill's or a thread's here.
pub(super) fn materials_named(text: &str) -> Vec<&'static Material> {
    match materials::read::candidates(text) {
        Ok(material) => vec![material],
        Err(candidates) => candidates,
    }
}

/// The systems that have the pitch a text is at every size: `26 tpi`.
fn systems_of_pitch(text: &str) -> impl Iterator<Item = &'static System> {
    let tpi = ["tpi", "threads per inch", "threads an inch"].iter().find_map(|unit| {
        let figure: f64 = text.strip_suffix(unit)?.trim_end().parse().ok()?;
        Some(figure)
    });
    let has = move |thread: &Thread, tpi: f64| match thread.pitch {
        Pitch::PerInch(own) => (own - tpi).abs() < 0.01,
        Pitch::Mm(_) => false,
    };
    threads::systems().iter().copied().filter(move |system| {
        tpi.is_some_and(|tpi| system.threads.iter().all(|thread| has(thread, tpi)))
    })
}

/// The drill series a text names, with the word drill or without.
fn series_named(text: &str) -> impl Iterator<Item = Thing> {
    let bare = text.strip_suffix('s').unwrap_or(text);
    let bare = bare.strip_suffix(" drill").unwrap_or(text);
    drills::owned::series(bare).unwrap_or_default().into_iter().map(Thing::Series)
}

/// The drills near a size typed with its unit.
fn gather_sized(size: Length, typed: &str, drills: &[&'static Drill], gathered: &mut Gathered) {
    match drills {
        [] => size::gather_near_drills(size, typed, gathered),
        // The drills of one length are all of one size.
        [drill, ..] => size::gather_neighbours(drill, gathered),
    }
}

/// Whether a text is a decimal, with its unit or without.
fn is_decimal_size(text: &str) -> bool {
    let behind = take(text).filter(|(number, _)| number.places() > 0).map(|(_, rest)| rest.trim());
    behind.is_some_and(|unit| matches!(unit, "" | "mm" | "in" | "inch" | "\""))
}

/// Whether a text is a size in decimals without a unit, which is then that of the one drill it
/// means: `46` is a drill's number, `.081` a size.
fn is_decimal(text: &str) -> bool {
    text.contains(['.', ','])
        && text.chars().all(|letter| letter.is_ascii_digit() || matches!(letter, '.' | ','))
}
