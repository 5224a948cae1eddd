//! `/me`: a member's own page: rights, sessions, and links to what is theirs.

pub mod data;
pub mod feed;
pub mod leave;
pub mod password;
pub mod second_factor;

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::page::{self, Seen};
use super::sign_in::gone;
use super::sign_in::proved::{self, ProvedForm};
use super::{people, when};
use crate::db::{accounts, sessions};
use crate::extract::{Asker, Fields, JustDid, Member, WORD, room};
use crate::rules::auth::{Right, SignedIn};
use crate::rules::deed::Deed;
use crate::rules::notes::open::Open;
use crate::{App, Error};
use holewright_pages::layout::Frame;

/// The bytes of the number of a session and of proof.
pub const TAKES: u64 = room(&[WORD]) + proved::TAKES;

#[derive(Template)]
#[template(path = "web/me/show.html")]
struct MePage {
    frame: Frame,
    name: String,
    rights: String,
    joined: String,
    has_second_factor: bool,
    spare_codes: i64,
    may_manage: bool,
    may_moderate: bool,
    /// What there is to see to.
    open: Open,
    sessions: Vec<SessionRow>,
    has_others: bool,
}

struct SessionRow {
    number: i64,
    here: bool,
    agent: String,
    began: String,
    seen: String,
}

/// Shows it.
///
/// # Errors
/// Nobody is signed in, or the database cannot be read.
pub async fn form(
    State(app): State<Arc<App>>,
    Member(member): Member,
    JustDid(did): JustDid,
) -> Result<Response, Error> {
    let account = accounts::numbered(&app.database, member.id).await?;
    let account = account.ok_or(Error::Unauthenticated)?;
    let open = sessions::of_member(&app.database, member.id, app.clock.now()).await?;
    let page = MePage {
        frame: page::frame(&app.context, "/me", "Your page", false, Seen::by(&member))
            .saying(page::words(did)),
        rights: people::named(member.rights),
        joined: when::day(account.joined_at),
        has_second_factor: member.has_second_factor,
        spare_codes: account.spare_codes,
        may_manage: member.rights.may(Right::Manage),
        open: member.open,
        may_moderate: member.rights.may(Right::Moderate) || member.rights.may(Right::Inspect),
        has_others: open.len() > 1,
        sessions: open.into_iter().map(|session| row(session, &member)).collect(),
        name: member.name,
    };
    page::respond(StatusCode::OK, &page)
}

fn row(session: sessions::Open, member: &SignedIn) -> SessionRow {
    let unnamed = "a browser that does not say".to_owned();
    SessionRow {
        number: session.number,
        here: session.number == member.session,
        agent: if session.agent.is_empty() { unnamed } else { session.agent },
        began: when::day(session.made_at),
        seen: when::day(session.seen_at),
    }
}

/// Ends one session of the member's own, or all but the one at hand. The one at hand is only signed out
/// of. Elsewhere whoever holds a stolen one must not shut the owner out with it, so the password is asked
/// for once more.
///
/// # Errors
/// Nobody is signed in, the proof is too old, or the database cannot be written.
pub async fn end_session(asker: Asker, form: ProvedForm<Member>) -> Result<Response, Error> {
    form.does(|app, member, fields| end(app, member, fields, asker)).await
}

async fn end(
    app: Arc<App>,
    member: SignedIn,
    fields: Fields,
    asker: Asker,
) -> Result<Response, Error> {
    if fields.get("end") == member.session.to_string() {
        let now = app.clock.now();
        let ended = accounts::sign_out(&app.database, now, Some(&member), &asker.held).await;
        return Ok(gone(&app, ended.map_err(Error::from)));
    }
    let deed = match fields.get("end") {
        "others" => {
            sessions::end_others(&app.database, &member).await?;
            Deed::EndedOthers
        }
        number => {
            let number = number.parse().map_err(|_| Error::NotFound("no such session"))?;
            sessions::end(&app.database, &member, number).await?;
            Deed::EndedSession
        }
    };
    Ok(page::did(&app, "/me", deed))
}
