//! `/queue/decided`: the last decisions about notes, for those who decide.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::apart::aside;
use super::super::when::minute;
use super::page::page;
use super::queue::{NOT_THEIRS, decides};
use crate::db::notes::decided::{self, Decided};
use crate::extract::{Member, Reader};
use crate::{App, Error};
use holewright_pages::layout::{Frame, Section};

#[derive(Template)]
#[template(path = "web/notes/decided.html")]
struct DecidedPage {
    frame: Frame,
    rows: Vec<Row>,
}

struct Row {
    /// Its address and title, where it is there.
    note: Option<(i64, String)>,
    what: String,
    detail: String,
    when: String,
}

/// The list, newest first.
///
/// # Errors
/// It is for moderators and an inspector.
pub async fn show(State(app): State<Arc<App>>, Member(member): Member) -> Result<Response, Error> {
    if !decides(member.rights) {
        return Err(NOT_THEIRS);
    }
    let rows = decided::last(&app.database, &member).await?;
    let title = "The last decisions";
    let words = "What was decided about notes of late.";
    let frame = Frame::at(&app.context, Section::Notes, "/queue/decided", title, words);
    let work = move || {
        let decided = DecidedPage {
            frame: frame.of_a_mistake().for_reader(true),
            rows: rows.into_iter().map(row).collect(),
        };
        page(StatusCode::OK, &decided, &Reader(Some(member)))
    };
    aside(work).await?
}

fn row(Decided { at, by, what, detail, note, title }: Decided) -> Row {
    let untitled = || "A note without a title".to_owned();
    let title = title.filter(|title| !title.is_empty()).unwrap_or_else(untitled);
    let did = match what.as_str() {
        "note-shown" => "showed it",
        "note-change-asked" => "asked for a change",
        "note-declined" => "declined it",
        "note-report-settled" => "found nothing against it: it shows again",
        "note-withdrawn" => "withdrew it",
        "note-handed-over" => "handed it to an inspector",
        "note-turned-back" => "turned it back to the moderators",
        _ => "undid a decision",
    };
    let is_a_word_of_ours = what == "note-decision-undone";
    Row {
        note: note.map(|id| (id, title)),
        what: format!("{by} {did}."),
        detail: if is_a_word_of_ours { String::new() } else { detail },
        when: minute(at),
    }
}
