//! What is new to a member, at the head of their notes, until they say that they have read it; and what happened, in
//! words.

use std::sync::Arc;

use axum::extract::State;
use axum::response::Response;

use super::super::when::day;
use super::page::{did, may_write};
use crate::db::notes::news::{self, Concern, Told};
use crate::extract::{Fields, Member, WORD, room};
use crate::rules::deed::Deed;
use crate::rules::notes::elsewhere::is_read;
use crate::rules::notes::open::MOST_NEWS;
use crate::{App, Error};

/// The bytes of up to when was read, and how much.
pub const TAKES: u64 = room(&[WORD, WORD]);

/// What is new.
pub(super) struct News {
    pub(super) rows: Vec<NewsRow>,
    /// Up to when, and how much, as the form sends it back.
    pub(super) until: i64,
    pub(super) count: usize,
    /// There is more, which follows.
    pub(super) is_more: bool,
}

/// Something that happened.
pub(super) struct NewsRow {
    pub(super) note: i64,
    pub(super) title: String,
    pub(super) what: String,
    pub(super) day: String,
}

impl News {
    /// All of it, newest first, if there is anything. It comes with the oldest first: of more than are told at once
    /// those that follow are newer.
    pub(super) fn of(news: Vec<Concern>, all: i64) -> Option<Self> {
        let until = news.last()?.at;
        let count = news.len();
        let is_more = all > MOST_NEWS;
        Some(Self { rows: news.into_iter().rev().map(row).collect(), until, count, is_more })
    }
}

fn row(concern: Concern) -> NewsRow {
    let what = concern.kind.what();
    NewsRow {
        note: concern.note,
        title: titled(&concern.title).to_owned(),
        what: match concern.text.as_str() {
            "" => format!("{what}."),
            // Of what nobody has read only names of the reference are told, to authors as to readers.
            text if concern.kind.is_found() && !is_read(text) => format!("{what}."),
            text => format!("{what}: {text}"),
        },
        day: day(concern.at),
    }
}

/// What a note is called.
pub(super) const fn titled(title: &str) -> &str {
    if title.is_empty() { "A note without a title" } else { title }
}

/// Keeps that the member has read what the page told.
///
/// # Errors
/// Nobody is signed in, the form does not say what was told, more happened by then, or the database cannot be written.
pub async fn have_read(
    State(app): State<Arc<App>>,
    Member(member): Member,
    fields: Fields,
) -> Result<Response, Error> {
    let number = |name| fields.as_typed(name).parse::<i64>().ok();
    let told = number("until").zip(number("count")).map(|(until, count)| Told { until, count });
    let told = told.ok_or(Error::NotFound("there is no such news"))?;
    may_write(&app, &member)?;
    if !news::have_read(&app.database, app.clock.now(), &member, told).await? {
        let words = "more has happened to your notes by then than the page told: read that first";
        return Err(Error::Conflict(words.to_owned()));
    }
    did(&app, "/notes/mine", Deed::ReadNews.into())
}
