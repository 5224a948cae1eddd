//! `/me/feed`: the member's own feed is made, renewed or made void. Its address is shown once.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::page::{self, Seen};
use super::super::sign_in::proved::{self, ProvedForm};
use super::super::when;
use crate::db::feeds;
use crate::extract::{Fields, JustDid, Member, WORD, room};
use crate::rules::auth::{SignedIn, Token};
use crate::rules::deed::{Deed, Did};
use crate::{App, Error};
use holewright_pages::layout::Frame;

/// The bytes of what is to be done, and of proof.
pub const TAKES: u64 = room(&[WORD]) + proved::TAKES;

#[derive(Template)]
#[template(path = "web/me/feed.html")]
struct FeedPage {
    frame: Frame,
    /// Since when it has an address.
    made: Option<String>,
    /// That address, just after it was made.
    address: Option<String>,
}

/// Shows whether there is one.
///
/// # Errors
/// Nobody is signed in, or the database cannot be read.
pub async fn form(
    State(app): State<Arc<App>>,
    Member(member): Member,
    JustDid(did): JustDid,
) -> Result<Response, Error> {
    answer(&app, &member, None, did).await
}

/// Makes one, in the place of any other, or makes it void. It outlives the session, so whoever has only that must
/// not make one.
///
/// # Errors
/// Nobody is signed in, the proof is too old, or the database cannot be written.
pub async fn change_feed(form: ProvedForm<Member>) -> Result<Response, Error> {
    form.does(change).await
}

async fn change(app: Arc<App>, member: SignedIn, fields: Fields) -> Result<Response, Error> {
    let now = app.clock.now();
    match fields.get("do") {
        "void" => {
            feeds::make_void(&app.database, now, &member).await?;
            Ok(page::did(&app, "/me/feed", Deed::VoidedFeed))
        }
        "make" => {
            let token = Token::new()?;
            feeds::set(&app.database, now, &member, token.hash()).await?;
            answer(&app, &member, Some(&token), None).await
        }
        _ => Err(Error::NotFound("there is nothing to do with the feed")),
    }
}

async fn answer(
    app: &App,
    member: &SignedIn,
    token: Option<&Token>,
    did: Option<Did>,
) -> Result<Response, Error> {
    let made = feeds::made_at(&app.database, member.id).await?;
    let page = FeedPage {
        frame: page::frame(&app.context, "/me/feed", "Your feed", false, Seen::by(member))
            .saying(token.map_or_else(|| page::words(did), |_| page::made("The address is made."))),
        made: made.map(when::day),
        address: token.map(|token| format!("{}/notes/feed/{}", app.base_url, token.secret())),
    };
    page::respond(StatusCode::OK, &page)
}
