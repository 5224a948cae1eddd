//! The notes that have some of what was asked: those with most of it first, then those with the rarest.

use std::cmp::Reverse;
use std::collections::HashMap;

use super::index::{COMMON, Reading, is_common, newest};
use super::words::{Word, Words, marks};
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

/// The numbers of the notes, best first. A word that very many notes have picks none out, whatever is asked beside it:
/// it is looked at where no rarer one finds any, and if each is such, the newest notes are listed that have any of them.
pub(super) async fn best(
    reading: &mut Reading<'_>,
    words: &Words,
    filter: &Filter,
    most: i64,
) -> Result<Vec<i64>, Error> {
    let marks = marks(filter);
    let (mut rare, mut common) = (Vec::new(), Vec::new());
    for word in &words.0 {
        // Of all notes: among those that pass the filter it would be looked for in each.
        let is_common = is_common(reading, &word.any()).await?;
        if is_common { common.push(word) } else { rare.push(word) }
    }
    let mut shares = shares(reading, &rare, &marks).await?;
    if shares.is_empty() {
        shares = self::shares(reading, &common, &marks).await?;
    }
    if shares.is_empty() {
        let any: Vec<String> = words.0.iter().map(Word::any).collect();
        return newest(reading, &format!("({}){marks}", any.join(" OR ")), most).await;
    }
    let mut ids: Vec<(Share, i64)> = shares.into_iter().map(|(id, share)| (share, id)).collect();
    ids.sort_unstable_by_key(|best| Reverse(*best));
    let most = usize::try_from(most).unwrap_or_default();
    Ok(ids.into_iter().map(|(_, id)| id).take(2 * most).collect())
}

/// What each note that passes the filter has of these words.
async fn shares(
    reading: &mut Reading<'_>,
    words: &[&Word],
    marks: &str,
) -> Result<HashMap<i64, Share>, Error> {
    let enough = usize::try_from(COMMON).unwrap_or_default();
    let mut shares = HashMap::<i64, Share>::new();
    for word in words {
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
    Ok(shares)
}
