//! The words people write for thread systems, each with the systems it can mean.
//!
//! Two words narrow each other: `BSP taper`, `metric fine`, `unified coarse`.

use std::sync::LazyLock;

use super::super::systems;
use super::SystemId::{self, *};
use crate::units::read::plain;

const UNIFIED: &[SystemId] = &[Unc, Unf, Unef, Uns, Unm];
const ME: &[SystemId] = &[Me40, Me32, Me26];
const METRIC: &[SystemId] = &[Metric, MetricFine];

/// Words beside the slug, name and mark that each system's table gives.
#[rustfmt::skip]
const NAMES: [(&str, &[SystemId]); 62] = [
    ("ba", &[Ba]),
    ("british association", &[Ba]),
    ("bsw", &[Bsw]),
    ("whit", &[Bsw]),
    ("whitworth", &[Bsw]),
    ("w", &[Bsw]),
    ("british standard whitworth", &[Bsw]),
    ("bsf", &[Bsf]),
    ("british standard fine", &[Bsf]),
    ("bsb", &[Bsb]),
    ("brass", &[Bsb]),
    ("british standard brass", &[Bsb]),
    ("me", ME),
    ("model engineer", ME),
    ("model engineers", ME),
    ("bsp", &[Bspp, Bspt]),
    ("british standard pipe", &[Bspp, Bspt]),
    ("gas", &[Bspp, Bspt]),
    ("bspp", &[Bspp]),
    ("g", &[Bspp]),
    ("bspt", &[Bspt]),
    ("r", &[Bspt]),
    ("rc", &[Bspt]),
    ("rp", &[Bspt]),
    ("pipe", &[Bspp, Bspt, Npt, ModelTaperPipe]),
    ("parallel", &[Bspp]),
    ("taper", &[Bspt, Npt, ModelTaperPipe]),
    ("taper pipe", &[Bspt, Npt, ModelTaperPipe]),
    ("npt", &[Npt]),
    ("american taper pipe", &[Npt]),
    ("mtp", &[ModelTaperPipe]),
    ("model taper pipe", &[ModelTaperPipe]),
    ("model pipe", &[ModelTaperPipe]),
    ("model taper", &[ModelTaperPipe]),
    ("bsc", &[Bsc]),
    ("bscy", &[Bsc]),
    ("cei", &[Bsc]),
    ("cycle", &[Bsc]),
    ("british standard cycle", &[Bsc]),
    ("m", METRIC),
    ("metric", METRIC),
    ("iso", METRIC),
    ("iso metric", METRIC),
    ("mf", &[MetricFine]),
    ("s", &[Miniature]),
    ("miniature", &[Miniature, Unm]),
    ("unified", UNIFIED),
    ("un", UNIFIED),
    ("unc", &[Unc]),
    ("nc", &[Unc]),
    ("unf", &[Unf]),
    ("nf", &[Unf]),
    ("unef", &[Unef]),
    ("nef", &[Unef]),
    ("uns", &[Uns]),
    ("ns", &[Uns]),
    ("unm", &[Unm]),
    ("unified miniature", &[Unm]),
    ("special", &[Uns]),
    ("coarse", &[Metric, Unc]),
    ("fine", &[MetricFine, Bsf, Unf]),
    ("extra fine", &[Unef]),
];

/// The most words one name has.
pub(super) const MOST_WORDS: usize = 4;

/// The slug, name and mark of each system, in the plain characters of what is typed.
static OWN_NAMES: LazyLock<Vec<(String, SystemId)>> = LazyLock::new(|| {
    systems()
        .iter()
        .flat_map(|system| {
            [system.slug, system.name, system.mark]
                .map(|name| (plain(name).replace(['-', ','], " ").replace("  ", " "), system.id))
        })
        .collect()
});

/// The systems that a name can mean; empty if it is no name.
pub(super) fn named(name: &str) -> Vec<SystemId> {
    let mut found: Vec<SystemId> = NAMES
        .iter()
        .filter(|(word, _)| *word == name)
        .flat_map(|(_, systems)| systems.iter().copied())
        .collect();
    for (_, system) in OWN_NAMES.iter().filter(|(own, _)| own == name) {
        if !found.contains(system) {
            found.push(*system);
        }
    }
    found
}
