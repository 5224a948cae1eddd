//! `/notes/{id}/history`: how a note changed from one shown wording to the next, and the corrections
//! that were put above them.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::page::own_of;
use super::super::when::day;
use super::item::author;
use super::number::Number;
use super::page::page;
use super::show::{Seen, seen};
use crate::db::notes::read::{self, Note, Version, WordingState};
use crate::extract::{Asker, Reader};
use crate::rules::clock::UnixSeconds;
use crate::rules::limits::Client;
use crate::rules::notes::difference::{Effort, Part};
use crate::rules::notes::state::sees_waiting;
use crate::rules::notes::wording::Wording;
use crate::rules::notes::{NoteId, markdown};
use crate::{App, Error};
use holewright_pages::layout::{Frame, Section};

#[derive(Template)]
#[template(path = "web/notes/history.html")]
struct HistoryPage {
    frame: Frame,
    id: i64,
    title: String,
    steps: Vec<Step>,
    /// Why nothing stands there, where nothing does.
    why_empty: &'static str,
}

/// What happened to the note on a day.
struct Step {
    at: UnixSeconds,
    day: String,
    what: What,
}

enum What {
    /// It was shown for the first time, with these words.
    FirstShown(Difference),
    /// Another wording took the place of the one before.
    Changed(Difference),
    /// Whoever passed it mended its author's words first: for those alone who read them.
    Mended(String, Difference),
    /// Whoever may pass it put this above it: made by [`markdown::html`], and so safe.
    Corrected(String),
}

/// What changed; shown in a page with `{{ difference|safe }}`.
#[derive(Clone, Debug, Template)]
#[template(path = "web/notes/difference.html")]
pub(super) struct Difference {
    parts: Vec<Part>,
}

impl Difference {
    /// What changed from one wording to the next; from nothing, where there is none before.
    pub(super) fn of(old: Option<&Version>, new: &Version, effort: &mut Effort) -> Self {
        match old {
            Some(old) => Self::between(&old.wording, &new.wording, effort),
            None => Self { parts: vec![Part::Same(new.wording.as_lines())] },
        }
    }

    /// What changes from these words to those.
    pub(super) fn between(old: &Wording, new: &Wording, effort: &mut Effort) -> Self {
        Self::of_lines(&old.as_lines(), &new.as_lines(), effort)
    }

    /// What changes from these lines to those.
    pub(super) fn of_lines(old: &str, new: &str, effort: &mut Effort) -> Self {
        Self { parts: effort.between(old, new) }
    }
}

/// Every wording that readers saw, newest first.
///
/// # Errors
/// The note is not there for this reader.
pub async fn show(
    State(app): State<Arc<App>>,
    reader: Reader,
    asker: Asker,
    Number(NoteId(id)): Number,
) -> Result<Response, Error> {
    const NOTHING: Error = Error::NotFound("there is no note at this address");
    let note = read::note(&app.database, NoteId(id)).await?.ok_or(NOTHING)?;
    let Seen::Version(now) = seen(&note, reader.0.as_ref()) else { return Err(NOTHING) };
    let title = format!("How “{}” changed", now.wording.title);
    let address = format!("/notes/{id}/history");
    let frame = Frame::at(
        &app.context,
        Section::Notes,
        &address,
        &title,
        "Every wording that was shown, and what was said above it.",
    );
    let (frame, title) =
        (frame.of_a_mistake().for_reader(own_of(reader.0.as_ref())), now.wording.title.clone());
    let sees_all = reader.0.as_ref().is_some_and(|reader| {
        note.is_by(reader.id) || sees_waiting(now.wording.subject, reader.rights)
    });
    let by = reader.0.as_ref().map(|member| Client::Member(member.id)).or(asker.client);
    let why_empty = match now.state {
        WordingState::Draft if !now.reason.is_empty() => {
            "Nothing yet: a change is asked for, and no wording of it was shown so far."
        }
        WordingState::Draft => "Nothing yet: it is a draft, and no wording of it was shown so far.",
        WordingState::Waiting => "Nothing yet: it waits, and no wording of it was shown so far.",
        _ => "Nothing: it was declined, and no wording of it was ever shown.",
    };
    let work = move || {
        let steps = steps(&note, sees_all);
        page(StatusCode::OK, &HistoryPage { frame, id, title, steps, why_empty }, &reader)
    };
    app.apart.run(by, work).await?
}

/// All that happened, newest first.
fn steps(note: &Note, sees_all: bool) -> Vec<Step> {
    let mut effort = Effort::of_a_page();
    let mut steps = Vec::new();
    for (version, (mended, before)) in
        note.versions.iter().filter_map(|version| Some((version, note.mended(version)?)))
    {
        if !sees_all {
            break;
        }
        let at = version.decided_at.unwrap_or(version.saved_at);
        let difference = Difference::between(&before.wording, &version.wording, &mut effort);
        let what = What::Mended(author(mended.by.as_deref()), difference);
        steps.push(Step { at, day: day(at), what });
    }
    steps.extend(wordings(&note.versions, &mut effort));
    steps.extend(note.corrections.iter().map(|said| Step {
        at: said.made_at,
        day: day(said.made_at),
        what: What::Corrected(markdown::html(&said.text)),
    }));
    // A correction made in the second a wording was shown speaks of that wording, and so came later.
    steps.sort_by_key(|step| (step.at, matches!(step.what, What::Corrected(_))));
    steps.reverse();
    steps
}

/// The wordings that readers saw, oldest first. One that was declined or is on its way is nobody
/// else's.
fn wordings(versions: &[Version], effort: &mut Effort) -> Vec<Step> {
    let was_shown =
        |version: &&Version| matches!(version.state, WordingState::Shown | WordingState::Replaced);
    let shown: Vec<&Version> = versions.iter().filter(was_shown).collect();
    let before = [None].into_iter().chain(shown.iter().map(|version| Some(*version)));
    let step = |(version, before): (&&Version, Option<&Version>)| {
        let at = version.decided_at.unwrap_or(version.saved_at);
        let difference = Difference::of(before, version, effort);
        let what = match before {
            None => What::FirstShown(difference),
            Some(_) => What::Changed(difference),
        };
        Step { at, day: day(at), what }
    };
    let pairs: Vec<_> = shown.iter().zip(before).collect();
    // The newest first: where the page is long, they are the ones compared most finely.
    let mut steps: Vec<Step> = pairs.into_iter().rev().map(step).collect();
    steps.reverse();
    steps
}
