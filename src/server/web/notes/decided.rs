//! `/queue/decided`: the last decisions about notes, for those who decide.

use std::sync::Arc;

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::Response;

use super::super::apart::aside;
use super::super::page::own;
use super::super::when::minute;
use super::page::page;
use super::queue::{NOT_THEIRS, decides};
use crate::db::notes::decided::{self, Decided, What};
use crate::extract::{Member, Reader};
use crate::{App, Error};
use holewright_pages::Query;
use holewright_pages::layout::{Frame, Section};

/// As many stand on one page.
const ON_PAGE: usize = 20;

#[derive(Template)]
#[template(path = "web/notes/decided.html")]
struct DecidedPage {
    frame: Frame,
    rows: Vec<Row>,
    /// The pages of newer and of older ones: address and words.
    pages: Vec<(String, &'static str)>,
}

struct Row {
    /// Its address and title, where it is there.
    note: Option<(i64, String)>,
    what: String,
    detail: String,
    when: String,
}

/// The pages before and after the one that begins at this place, of so many decisions.
fn pages(from: usize, all: usize) -> Vec<(String, &'static str)> {
    let at = |from: usize| match from {
        0 => "/queue/decided".to_owned(),
        from => format!("/queue/decided?from={from}"),
    };
    let newer = (from > 0).then(|| (at(from.saturating_sub(ON_PAGE)), "Newer decisions"));
    let older = (from + ON_PAGE < all).then(|| (at(from + ON_PAGE), "Older decisions"));
    newer.into_iter().chain(older).collect()
}

/// The list, newest first, from a place on; from the first where there are not so many.
///
/// # Errors
/// It is for moderators and an inspector.
pub async fn show(
    State(app): State<Arc<App>>,
    Member(member): Member,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    if !decides(member.rights) {
        return Err(NOT_THEIRS);
    }
    let rows = decided::last(&app.database, &member).await?;
    let query = Query::read(query.as_deref().unwrap_or_default());
    let from = query.get("from").parse().ok().filter(|from| *from < rows.len()).unwrap_or(0);
    let pages = pages(from, rows.len());
    let title = "The last decisions";
    let words = "What was decided about notes of late.";
    let frame = Frame::at(&app.context, Section::Notes, "/queue/decided", title, words);
    let work = move || {
        let decided = DecidedPage {
            frame: frame.of_a_mistake().for_reader(Some(own(&member))),
            rows: rows.into_iter().skip(from).take(ON_PAGE).map(row).collect(),
            pages,
        };
        page(StatusCode::OK, &decided, &Reader(Some(member)))
    };
    aside(work).await?
}

fn row(Decided { at, by, what, detail, note, title }: Decided) -> Row {
    let untitled = || "A note without a title".to_owned();
    let title = title.filter(|title| !title.is_empty()).unwrap_or_else(untitled);
    // What is told behind the decision, and what belongs to it.
    let (did, detail) = match what {
        What::Shown if detail.is_empty() => ("showed it".to_owned(), String::new()),
        What::Shown => (format!("showed it {detail}"), String::new()),
        What::ChangeAsked => ("asked for a change".to_owned(), detail),
        What::Declined => ("declined it".to_owned(), detail),
        What::Settled => ("found nothing against it: it shows again".to_owned(), detail),
        What::Withdrawn => ("withdrew it".to_owned(), detail),
        What::HandedOver => ("handed it to an inspector".to_owned(), detail),
        What::TurnedBack => ("turned it back to the moderators".to_owned(), detail),
        What::Undone => ("undid a decision".to_owned(), String::new()),
    };
    Row { note: note.map(|id| (id, title)), what: format!("{by} {did}."), detail, when: minute(at) }
}
