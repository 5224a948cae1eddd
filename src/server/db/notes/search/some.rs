//! The notes that have some of what was asked: those with most of it first, then those with the rarest.

use std::cmp::Reverse;
use std::collections::HashMap;

use super::index::{COMMON, Reading, newest};
use super::words::{Words, marks};
use crate::db::notes::Error;
use crate::db::notes::lists::Filter;

/// How much of what was asked a note has, by which it is ranked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
struct Share {
    /// So many of the words.
    words: usize,
    /// How rare they are together.
    rarity: u64,
}

/// The numbers of the notes, best first. A word that very many notes have picks none out, unless they
/// all are such; then the newest that have any of them.
pub(super) async fn best(
    reading: &mut Reading<'_>,
    words: &Words,
    filter: &Filter,
    most: i64,
) -> Result<Vec<i64>, Error> {
    let marks = marks(filter);
    let enough = usize::try_from(COMMON).unwrap_or_default();
    let mut shares = HashMap::<i64, Share>::new();
    for word in &words.0 {
        let found = newest(reading, &format!("({}){marks}", word.any()), COMMON + 1).await?;
        if found.is_empty() || found.len() > enough {
            continue;
        }
        let rarity = u64::try_from(enough / found.len()).unwrap_or_default().ilog2();
        for id in found {
            let share = shares.entry(id).or_default();
            share.words += 1;
            share.rarity += u64::from(rarity);
        }
    }
    if shares.is_empty() {
        let any: Vec<String> = words.0.iter().map(|word| word.any()).collect();
        return newest(reading, &format!("({}){marks}", any.join(" OR ")), most).await;
    }
    let mut ids: Vec<(Share, i64)> = shares.into_iter().map(|(id, share)| (share, id)).collect();
    ids.sort_unstable_by_key(|best| Reverse(*best));
    let most = usize::try_from(most).unwrap_or_default();
    Ok(ids.into_iter().map(|(_, id)| id).take(2 * most).collect())
}
