//! A text that holds a thread or a drill and something more: `copper 4ba`, `tap 4 BA in brass`.
//!
//! The part is the longest run of words that the readers take for a thread or a drill; the rest
//! must mean something by itself. A thread with a material makes a hole plan.

use std::cmp::Reverse;

use super::answers::{Said, plan};
use super::gather::Gathered;
use super::score::{LESS, PART, PLAN, Score};
use super::thing::{Thing, material_called};
use super::whole::{drills_named, materials_named};
use super::words::{has_figure, is_filler, words};
use super::{Hit, index, pages};
use crate::tables::materials::Material;
use crate::tables::threads::Thread;
use crate::tables::threads::read::candidates;

/// A text of more words is not taken apart.
const MOST_WORDS: usize = 10;
/// No thread or drill is written in more words.
const LONGEST_PART: usize = 6;
/// Of a text with more parts, the longest are looked at.
const MOST_SPLITS: usize = 4;

/// A text taken apart, in each way it can be.
#[derive(Debug, Default)]
pub(super) struct Parts {
    splits: Vec<Split>,
}

/// What a run of words names, and what the rest of the text means.
#[derive(Debug)]
struct Split {
    part: PartMeaning,
    rest: Rest,
}

/// A run of words that names a part.
#[derive(Debug)]
struct WordRun {
    start: usize,
    length: usize,
    part: PartMeaning,
}

#[derive(Debug)]
enum PartMeaning {
    Thread(&'static Thread),
    /// One drill, or whatever drills and threads a bare size can mean.
    Sizes(Vec<Thing>),
}

#[derive(Debug)]
enum Rest {
    /// Nothing that is known here.
    Unknown,
    /// There is none, or it only joins.
    Empty,
    /// Materials, and how sure that is.
    Materials(Score, Vec<(&'static Material, Hit)>),
    /// What it is most like, and how much.
    Things(Score, Vec<Thing>),
}

impl Parts {
    /// Takes a text apart.
    pub(super) fn of(text: &str) -> Self {
        let chunks: Vec<&str> = text.split([' ', ';']).filter(|chunk| !chunk.is_empty()).collect();
        if chunks.len() < 2 || chunks.len() > MOST_WORDS {
            return Self::default();
        }
        let mut runs = runs(&chunks);
        // A thread, once one is named, is not the drill of its size.
        if runs.iter().any(|run| matches!(run.part, PartMeaning::Thread(_))) {
            runs.retain(|run| matches!(run.part, PartMeaning::Thread(_)));
        }
        let splits = runs.into_iter().take(MOST_SPLITS).map(|run| Split::of(run, &chunks));
        Self { splits: splits.collect() }
    }

    /// What stands in a text of which all is understood.
    pub(super) fn gather(&self, gathered: &mut Gathered) {
        let Some(Split { part, rest }) = self.best() else { return };
        let sureness = match rest {
            Rest::Unknown => return,
            Rest::Empty => PART,
            Rest::Materials(score, materials) => {
                for (material, hit) in materials {
                    gathered.add(*score, hit.clone());
                    if let PartMeaning::Thread(thread) = part {
                        gathered.add(
                            score + (PLAN - PART),
                            plan(thread, Some(*material), &Said::default()),
                        );
                    }
                }
                *score
            }
            Rest::Things(score, things) => {
                things.iter().for_each(|thing| gathered.add(*score, thing.hit()));
                let is_system = |thing: &Thing| matches!(thing, Thing::System(_));
                // "27 BA" is no thread, and no drill either.
                if matches!(part, PartMeaning::Sizes(_)) && things.iter().all(is_system) {
                    return;
                }
                *score
            }
        };
        part.gather(sureness, gathered);
    }

    /// The part, whatever the rest is.
    pub(super) fn suggest(&self, near: &mut Gathered) {
        if let Some(split) = self.best() {
            split.part.gather(PART, near);
        }
    }

    /// The split that says most: a material beside the part before anything else, one material before
    /// several, then the longest part, which comes first.
    fn best(&self) -> Option<&Split> {
        self.splits
            .iter()
            .rev()
            .max_by_key(|split| (split.rest.worth(), Reverse(split.rest.choices())))
    }
}

impl Split {
    /// A run with what stands around it.
    fn of(run: WordRun, chunks: &[&str]) -> Self {
        let before = chunks.iter().take(run.start);
        let rest = before.chain(chunks.iter().skip(run.start + run.length)).copied();
        let rest: Vec<&str> = rest.filter(|chunk| !is_filler(chunk)).collect();
        Self { part: run.part, rest: Rest::of(&rest) }
    }
}

impl PartMeaning {
    /// What a run of words names.
    fn of(run: &str) -> Option<Self> {
        let threads = match candidates(run) {
            Ok(thread) => return Some(Self::Thread(thread)),
            Err(candidates) => candidates,
        };
        let drills = drills_named(run).into_iter().map(Thing::Drill);
        let things: Vec<Thing> = drills.chain(threads.into_iter().map(Thing::Thread)).collect();
        (!things.is_empty()).then_some(Self::Sizes(things))
    }

    fn gather(&self, sureness: Score, gathered: &mut Gathered) {
        match self {
            Self::Thread(thread) => gathered.add(sureness, Thing::Thread(thread).hit()),
            Self::Sizes(things) => {
                let asked = if things.len() > 1 { LESS } else { 0 };
                for thing in things {
                    gathered.add(sureness.saturating_sub(asked), thing.hit());
                }
            }
        }
    }
}

impl Rest {
    const fn worth(&self) -> u8 {
        match self {
            Self::Unknown => 0,
            Self::Things(..) => 1,
            Self::Empty => 2,
            Self::Materials(..) => 3,
        }
    }

    /// How many materials it leaves to choose from.
    fn choices(&self) -> usize {
        match self {
            Self::Materials(_, materials) => materials.len(),
            _ => 0,
        }
    }

    /// What some words mean by themselves.
    fn of(chunks: &[&str]) -> Self {
        if chunks.is_empty() {
            return Self::Empty;
        }
        // "tap 4ba in copper": the tapping is the plan's.
        let mut metal = chunks.to_vec();
        metal.retain(|chunk| !pages::is_about_one(chunk));
        if let Some(named) = Self::named(chunks).or_else(|| Self::named(&metal)) {
            return named;
        }
        let things = index::search_named(&words(&chunks.join(" ")));
        if let Some(materials) = Self::alike(&things) {
            return materials;
        }
        if metal.len() < chunks.len()
            && let Some(materials) = Self::alike(&index::search_named(&words(&metal.join(" "))))
        {
            return materials;
        }
        let Some(best) = things.first().map(|(score, _)| *score) else { return Self::Unknown };
        let things = things.into_iter().filter(|(score, _)| *score == best);
        Self::Things(best - LESS, things.map(|(_, thing)| thing).collect())
    }

    /// The materials that some words name.
    fn named(chunks: &[&str]) -> Option<Self> {
        let text = chunks.join(" ");
        let hits = materials_named(&text).into_iter();
        let hits: Vec<_> = hits.map(|found| (found, material_called(found, &text))).collect();
        (!hits.is_empty()).then_some(Self::Materials(PART, hits))
    }

    /// The materials among the best of some things.
    fn alike(things: &[(Score, Thing)]) -> Option<Self> {
        let best = things.first().map(|(score, _)| *score)?;
        let hits: Vec<_> = things
            .iter()
            .take_while(|(score, _)| *score == best)
            .filter_map(|(_, thing)| match *thing {
                Thing::Material(material) => Some((material, thing.hit())),
                _ => None,
            })
            .collect();
        (!hits.is_empty()).then_some(Self::Materials(best - LESS, hits))
    }
}

/// Every run of words with a figure in it that names a part, longest first.
fn runs(chunks: &[&str]) -> Vec<WordRun> {
    let longest = LONGEST_PART.min(chunks.len().saturating_sub(1));
    let runs = (1..=longest).rev().flat_map(|length| chunks.windows(length).enumerate());
    runs.filter(|(_, run)| run.iter().any(|chunk| has_figure(chunk)))
        .filter_map(|(start, run)| {
            Some(WordRun { start, length: run.len(), part: PartMeaning::of(&run.join(" "))? })
        })
        .collect()
}
