//! A slip: shown this once, to print or to read off; alone on its page, or one of a sheet.

use askama::Template;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::page::{self, Seen};
use super::super::{qr, when};
use crate::rules::auth::digits::Digits;
use crate::rules::auth::{SignedIn, Token};
use crate::rules::clock::UnixSeconds;
use crate::rules::zone::Zone;
use crate::{App, Error, db};
use holewright_pages::layout::Frame;

/// What UTC means to whoever reads a slip.
const UTC: &str = "an hour behind British summer time";

/// How the club tells the time.
pub(super) struct When(Option<Zone>);

impl When {
    /// By its own clock, where it has named one.
    pub(super) async fn of(app: &App) -> Result<Self, Error> {
        Ok(Self(Zone::read(&db::club::read(&app.database).await?.zone)))
    }

    /// This moment in words. Where the club has named no clock, what UTC is beside the clock on a wall in Britain.
    pub(super) fn told(&self, at: UnixSeconds) -> String {
        let utc = || format!("{} ({UTC})", when::minute(at));
        self.0.as_ref().map_or_else(utc, |zone| zone.minute(at))
    }
}

/// A slip as it is printed.
#[derive(Clone)]
pub(super) struct Slip {
    /// The club’s name; empty where it gave none.
    pub(super) club: String,
    pub(super) who: String,
    /// What it is good for, and until when.
    pub(super) words: String,
    pub(super) link: String,
    pub(super) drawing: String,
    /// The address to come back to afterwards, without a scheme.
    pub(super) back: String,
}

impl Slip {
    fn new(app: &App, door: &str, token: &Token, who: &str, words: String) -> Result<Self, Error> {
        let link = format!("{}/{door}/{}", app.base_url, token.secret());
        Ok(Self {
            club: app.context.club.name.clone(),
            who: who.to_owned(),
            words,
            drawing: qr::drawing(&link)?,
            link,
            back: app.base_url.host().to_owned(),
        })
    }

    /// One to join with as a member.
    pub(super) fn to_join(app: &App, token: &Token, who: &str, until: &str) -> Result<Self, Error> {
        let words = format!("With it you join the club’s pages. Good once, until {until}.");
        Self::new(app, "join", token, who, words)
    }
}

#[derive(Template)]
#[template(path = "web/people/slip.html")]
pub(super) struct SlipPage {
    frame: Frame,
    heading: &'static str,
    slip: Slip,
}

impl SlipPage {
    /// The slip with this token, for this door.
    pub(super) fn new(
        app: &App,
        secretary: &SignedIn,
        (door, token): (&str, &Token),
        (heading, who): (&'static str, &str),
        words: String,
    ) -> Result<Self, Error> {
        Ok(Self {
            frame: page::frame(&app.context, "/people", heading, false, Seen::by(secretary))
                .saying(page::made("The slip is made.")),
            heading,
            slip: Slip::new(app, door, token, who, words)?,
        })
    }

    /// As an answer.
    pub(super) fn answer(self) -> Result<Response, Error> {
        page::respond(StatusCode::OK, &self)
    }
}

/// A code for a new password, to read out.
#[derive(Template)]
#[template(path = "web/people/code.html")]
pub(super) struct CodePage {
    frame: Frame,
    name: String,
    number: i64,
    code: String,
    address: String,
    until: String,
}

impl CodePage {
    /// The code for this member.
    pub(super) fn new(
        app: &App,
        secretary: &SignedIn,
        (number, name): (i64, &str),
        code: &Digits,
        until: String,
    ) -> Self {
        let heading = "A code to read out";
        Self {
            frame: page::frame(&app.context, "/people", heading, false, Seen::by(secretary))
                .saying(page::made("The code is made.")),
            name: name.to_owned(),
            number,
            code: code.written(),
            address: format!("{}/reset", app.base_url.host()),
            until,
        }
    }

    /// As an answer.
    pub(super) fn answer(self) -> Result<Response, Error> {
        page::respond(StatusCode::OK, &self)
    }
}
