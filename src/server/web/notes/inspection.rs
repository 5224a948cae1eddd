//! The words shown beside a note that waits for an inspector, and those for a club that has none.

use super::super::when::day;
use crate::db::notes::inspectors;
use crate::db::notes::read::{Note, Version, WordingState};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::inspection::{Awaited, Unattended, awaited, unattended};
use crate::rules::notes::state::Subject;
use crate::{App, Error};

/// Whether whoever this wording waits for exists.
pub(super) async fn of(app: &App, note: &Note, version: &Version) -> Result<Awaited, Error> {
    let is_pressure = version.wording.subject == Subject::Pressure;
    if version.state != WordingState::Waiting || !is_pressure {
        // There is always a secretary, who moderates.
        return Ok(Awaited::Exists);
    }
    let author = note.author.as_ref().map(|author| author.id);
    Ok(awaited(author, &inspectors::all(&app.database).await?))
}

/// The notes in the queue that nobody in the club could pass.
pub(super) async fn left_over(app: &App) -> Result<Option<Unattended>, Error> {
    let waiting = inspectors::awaiting(&app.database).await?;
    Ok(unattended(&waiting, &inspectors::all(&app.database).await?))
}

/// That an inspector read what readers see of a note, and when where that is known; nothing of one that speaks of no
/// pressure.
pub(super) fn read(subject: Subject, at: Option<UnixSeconds>) -> Option<String> {
    const READ: &str = "An inspector of the club read it";
    (subject == Subject::Pressure)
        .then(|| at.map_or_else(|| format!("{READ}."), |at| format!("{READ}, {}.", day(at))))
}

/// That a note waits, and for whom.
pub(super) const fn waits(awaited: Awaited) -> &'static str {
    match awaited {
        Awaited::Exists => "Waiting for an inspector.",
        Awaited::NoInspector => {
            "Waiting for an inspector. The club has none at present: ask the secretary."
        }
        Awaited::NoneButItsAuthor => {
            "Waiting for an inspector other than its author. The club has none at present: ask the secretary."
        }
    }
}

/// How many notes nobody could pass, and why.
pub(super) fn words(unattended: Unattended) -> String {
    let (notes, wait, author) = match unattended.notes {
        1 => ("1 note".to_owned(), "waits", "its author"),
        many => (format!("{many} notes"), "wait", "their author"),
    };
    match unattended.why {
        Awaited::NoneButItsAuthor => {
            format!("{notes} {wait} for an inspector other than {author}, and the club has none.")
        }
        _ => format!("{notes} {wait} for an inspector, and the club has none."),
    }
}
