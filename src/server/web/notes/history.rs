//! `/notes/{id}/history`: how a note changed from one shown wording to the next.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::number::Number;
use super::page::{day, page};
use super::show::{Seen, seen};
use crate::pages::layout::{Door, Frame};
use crate::server::db::notes::read::{self, State as Standing, Version};
use crate::server::extract::Reader;
use crate::server::notes::NoteId;
use crate::server::notes::difference::{Part, between};
use crate::server::{App, Error};

#[derive(Template)]
#[template(path = "web/notes/history.html")]
struct HistoryPage {
    frame: Frame,
    id: i64,
    title: String,
    steps: Vec<Step>,
}

/// One wording, as what changed since the one before.
struct Step {
    day: String,
    is_first: bool,
    difference: Difference,
}

/// What changed; shown in a page with `{{ difference|safe }}`.
#[derive(Clone, Debug, Template)]
#[template(path = "web/notes/difference.html")]
pub(super) struct Difference {
    parts: Vec<Part>,
}

impl Difference {
    /// What changed from one wording to the next; from nothing, where there is none before.
    pub(super) fn of(old: Option<&Version>, new: &Version) -> Self {
        let new = new.wording.as_lines();
        let parts = match old {
            Some(old) => between(&old.wording.as_lines(), &new),
            None => vec![Part::Same(new)],
        };
        Self { parts }
    }
}

/// Every wording that readers saw, newest first.
///
/// # Errors
/// The note is not there for this reader.
pub async fn show(
    State(app): State<Arc<App>>,
    reader: Reader,
    Number(NoteId(id)): Number,
) -> Result<Response, Error> {
    const NOTHING: Error = Error::NotFound("no note stands at this address");
    let note = read::note(&app.database, NoteId(id)).await?.ok_or(NOTHING)?;
    let Seen::Version(now) = seen(&note, reader.0.as_ref()) else { return Err(NOTHING) };
    // Only what was shown: a wording that was declined or is on its way is nobody else's.
    let was_shown =
        |version: &&Version| matches!(version.state, Standing::Shown | Standing::Replaced);
    let shown: Vec<&Version> = note.versions.iter().filter(was_shown).collect();
    let before = [None].into_iter().chain(shown.iter().map(|version| Some(*version)));
    let mut steps: Vec<Step> = shown
        .iter()
        .zip(before)
        .map(|(version, before)| Step {
            day: day(version.decided_at.unwrap_or(version.saved_at)),
            is_first: before.is_none(),
            difference: Difference::of(before, version),
        })
        .collect();
    steps.reverse();
    let title = format!("How “{}” changed", now.wording.title);
    let address = format!("/notes/{id}/history");
    let frame =
        Frame::at(&app.context, Door::Notes, &address, &title, "Every wording that was shown.");
    let history =
        HistoryPage { frame: frame.of_a_mistake(), id, title: now.wording.title.clone(), steps };
    page(StatusCode::OK, &history, &reader)
}
