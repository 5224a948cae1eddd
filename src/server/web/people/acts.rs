//! `/people/acts`: the record of who did what, newest first.

use std::sync::Arc;

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::Response;

use super::super::page::{self, Seen};
use super::super::when;
use crate::db::acts::{self, Act};
use crate::extract::Secretary;
use crate::{App, Error};
use holewright_pages::layout::Frame;

#[derive(Template)]
#[template(path = "web/people/acts.html")]
struct ActsPage {
    frame: Frame,
    acts: Vec<ActRow>,
    /// The number before which the next page begins.
    older: Option<i64>,
}

struct ActRow {
    id: i64,
    at: String,
    name: String,
    what: String,
    subject: String,
    detail: String,
}

/// Shows a page of it.
///
/// # Errors
/// Not the secretary, or the database cannot be read.
pub async fn list(
    State(app): State<Arc<App>>,
    Secretary(secretary): Secretary,
    query: RawQuery,
) -> Result<Response, Error> {
    let before = page::asked(&query, "before").parse().ok();
    let acts = acts::before(&app.database, before).await?;
    let is_full = i64::try_from(acts.len()).is_ok_and(|count| count == acts::PAGE);
    let page = ActsPage {
        frame: page::frame(&app.context, "/people/acts", "The log", false, Seen::by(&secretary)),
        older: acts.last().filter(|_| is_full).map(|act| act.id),
        acts: acts.into_iter().map(row).collect(),
    };
    page::respond(StatusCode::OK, &page)
}

fn row(act: Act) -> ActRow {
    let nobody = || "nobody signed in".to_owned();
    ActRow {
        id: act.id,
        at: when::minute(act.at),
        name: Some(act.name).filter(|name| !name.is_empty()).unwrap_or_else(nobody),
        what: act.what.replace('-', " "),
        subject: act.subject,
        detail: act.detail,
    }
}
