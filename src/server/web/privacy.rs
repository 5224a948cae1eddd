//! `/privacy`: what is kept of a reader and of a member, and how long.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::header::CACHE_CONTROL;
use axum::http::{HeaderValue, StatusCode};
use axum::response::Response;

use super::page;
use crate::rules::validator::Tag;
use crate::{App, Error, db};
use holewright_pages::layout::{Frame, Section};

const DAY: i64 = 24 * 60 * 60;

#[derive(Template)]
#[template(path = "web/privacy.html")]
struct PrivacyPage {
    frame: Frame,
    idle_days: i64,
    longest_days: i64,
    act_years: i64,
    join_days: i64,
    reset_days: i64,
}

/// Shows it: the same bytes for everybody.
///
/// # Errors
/// The page cannot be written.
pub async fn show(State(app): State<Arc<App>>) -> Result<Response, Error> {
    let title = "What is kept, and for how long";
    let words = "What the club’s pages keep of readers and members, for how long, and who sees it.";
    let page = PrivacyPage {
        frame: Frame::at(&app.context, Section::None, "/privacy", title, words),
        idle_days: db::sessions::IDLE / DAY,
        longest_days: db::sessions::LONGEST / DAY,
        act_years: db::acts::KEPT / DAY / 365,
        join_days: db::slips::JOIN_LASTS / DAY,
        reset_days: db::slips::RESET_LASTS / DAY,
    };
    let mut response = page::respond(StatusCode::OK, &page)?;
    response.headers_mut().insert(CACHE_CONTROL, HeaderValue::from_static("no-cache"));
    let body = page.render().map_err(|error| Error::Internal(error.into()))?;
    Ok(Tag::of_bytes(body.as_bytes()).mark(response))
}
