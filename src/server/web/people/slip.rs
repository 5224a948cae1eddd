//! A slip on the screen: shown this once, to print or to read off.

use askama::Template;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::page::{self, Seen};
use super::super::qr;
use crate::rules::auth::Token;
use crate::{App, Error};
use holewright_pages::layout::Frame;

#[derive(Template)]
#[template(path = "web/people/slip.html")]
pub(super) struct SlipPage {
    frame: Frame,
    heading: &'static str,
    words: String,
    link: String,
    drawing: String,
}

impl SlipPage {
    /// The slip with this token, for this door.
    pub(super) fn new(
        app: &App,
        door: &str,
        token: &Token,
        heading: &'static str,
        words: String,
    ) -> Result<Self, Error> {
        let link = format!("{}/{door}/{}", app.base_url, token.secret());
        Ok(Self {
            frame: page::frame(&app.context, "/people", heading, false, Seen::ByMember),
            heading,
            words,
            drawing: qr::drawing(&link)?,
            link,
        })
    }

    /// As an answer.
    pub(super) fn answer(self) -> Result<Response, Error> {
        page::respond(StatusCode::OK, &self)
    }
}
