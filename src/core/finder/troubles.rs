//! Something that went wrong, as people tell of it: `tap snapped in brass`, `bust tap`, `stripped 4BA thread`.
//!
//! A trouble has its signs: one word of each of two lists stands in the text, anywhere. What is left may
//! name a material, and then the page that turns on it has it in its address.

use super::gather::Gathered;
use super::score::{ANSWER, LESS};
use super::thing::{Thing, material_called};
use super::whole::materials_named;
use super::words::{has_figure, is_filler, words};
use super::{Hit, Kind};
use crate::tables::materials::Material;
use crate::tables::rescue::{self, A_THREAD, See, Trouble};
use crate::tables::threads::Thread;
use crate::tables::threads::read::as_meant;

/// Words of a tale that say nothing of what went wrong.
const TOLD: [&str; 22] = [
    "got", "has", "have", "is", "it", "my", "off", "out", "inside", "remove", "removing",
    "removal", "get", "getting", "how", "do", "i", "help", "hole", "been", "up", "old",
];
/// No material and no thread is named in more words.
const LONGEST_RUN: usize = 4;
/// A text of more words is no short tale.
const MOST_WORDS: usize = 12;

/// The troubles that a text tells of, each first in its metal, then what else it names. Says whether
/// there are any.
pub(super) fn gather(text: &str, gathered: &mut Gathered) -> bool {
    let told = words(text);
    if told.len() > MOST_WORDS {
        return false;
    }
    let mut score = ANSWER;
    for trouble in rescue::all() {
        let Some(mut rest) = rest_of(trouble, &told) else { continue };
        // "Alum for broken tap" is no tap in aluminium.
        if trouble.names.contains(&text) {
            rest.clear();
        }
        let (called, materials) = materials_in(&rest).unwrap_or_default();
        let may_be_cut = |material: &&&'static Material| material.refused.is_none();
        match materials.iter().find(may_be_cut) {
            Some(material) if trouble.turns_on_metal() => {
                gathered.add(score, in_metal(trouble, material));
            }
            _ => gathered.add(score, hit(trouble)),
        }
        score = score.saturating_sub(LESS);
        for material in materials {
            gathered.add(score.saturating_sub(1), material_called(material, &called));
        }
        if let Some(thread) = thread_in(&rest) {
            gathered.add(score.saturating_sub(2), Thing::Thread(thread).hit());
        }
        for see in trouble.see {
            gathered.add(score.saturating_sub(LESS), further(see));
        }
    }
    score < ANSWER
}

/// What is left of a text that has the signs of a trouble; none where it has not.
fn rest_of(trouble: &Trouble, told: &[String]) -> Option<Vec<String>> {
    let has = |signs: &[&str]| told.iter().any(|word| signs.contains(&word.as_str()));
    let names_thread = |what: &[&str]| what.contains(&A_THREAD) && thread_in(told).is_some();
    let [what, how] =
        trouble.signs.iter().find(|[what, how]| has(how) && (has(what) || names_thread(what)))?;
    let is_said = |word: &&String| {
        let word = word.as_str();
        what.contains(&word) || how.contains(&word) || is_filler(word) || TOLD.contains(&word)
    };
    Some(told.iter().filter(|word| !is_said(word)).cloned().collect())
}

/// The runs of words of what is left, the longest first.
fn runs(rest: &[String]) -> impl Iterator<Item = String> + '_ {
    let lengths = (1..=rest.len().min(LONGEST_RUN)).rev();
    lengths.flat_map(|length| rest.windows(length).map(|run| run.join(" ")))
}

/// The materials that the longest such run of words names, and the run.
fn materials_in(rest: &[String]) -> Option<(String, Vec<&'static Material>)> {
    let named = runs(rest).map(|run| (materials_named(&run), run));
    named.into_iter().find(|(found, _)| !found.is_empty()).map(|(found, run)| (run, found))
}

/// The thread that the longest such run of words names.
fn thread_in(rest: &[String]) -> Option<&'static Thread> {
    let mut sized = runs(rest).filter(|run| has_figure(run));
    sized.find_map(|run| as_meant(&run).ok().map(|read| read.thread))
}

fn hit(trouble: &Trouble) -> Hit {
    Hit {
        kind: Kind::Rescue,
        title: trouble.title.into(),
        url: trouble.path().into(),
        why: trouble.first.text.to_owned(),
    }
}

/// A page that goes further.
fn further(see: &See) -> Hit {
    let why = "goes further".to_owned();
    Hit { kind: Kind::List, title: see.words.into(), url: see.url.into(), why }
}

fn in_metal(trouble: &Trouble, material: &Material) -> Hit {
    Hit {
        title: format!("{} in {}", trouble.title, material.name).into(),
        url: format!("{}?material={}", trouble.path(), material.slug).into(),
        ..hit(trouble)
    }
}
