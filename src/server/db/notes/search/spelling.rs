//! Words that stand in no note and name nothing, read as others.

use super::index::{Reading, beginning_with, has_more};
use super::words::Words;
use crate::db::notes::Error;
use crate::rules::notes::asked::Forms;
use crate::rules::notes::misspelt::{self, MOST};
use crate::rules::notes::words::folded;

/// So many words of the notes with the same beginning are looked at.
const LOOKED_AT: i64 = 300;
/// A shorter word is taken as it is.
const SHORTEST: usize = 4;

/// What was typed as it is read; none where each word stands somewhere, names something, is begun, or is near no other.
pub(super) async fn read_as(
    reading: &mut Reading<'_>,
    typed: &str,
    words: &Words,
) -> Result<Option<String>, Error> {
    let mut strange = Vec::new();
    for (place, word) in words.0.iter().enumerate() {
        let Some(typed) = word.taken.first().filter(|typed| is_plain(typed)) else { continue };
        // Another form of it stands somewhere.
        if word.names_things() || has_more(reading, &word.any(), 0).await? {
            continue;
        }
        let is_last = place + 1 == words.0.len();
        if is_last && !beginning_with(reading, &folded(typed), 1).await?.is_empty() {
            continue;
        }
        strange.push(typed.as_str());
        if strange.len() == MOST {
            break;
        }
    }
    if strange.is_empty() {
        return Ok(None);
    }
    let mut read = misspelt::Reading::of(typed);
    for word in read.name_things(&strange) {
        let mut written = Vec::new();
        for beginning in misspelt::beginnings(word) {
            written.extend(beginning_with(reading, &beginning, LOOKED_AT).await?);
        }
        if let Some(nearest) = misspelt::nearest(word, &written) {
            read.take(word, nearest);
        }
    }
    Ok(read.changed())
}

fn is_plain(word: &str) -> bool {
    word.chars().count() >= SHORTEST && Forms::of(word).is_some()
}
