//! `/people/{id}`: one member, and what the secretary does about them.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::http::header::SET_COOKIE;
use axum::response::Response;

use super::super::join::by_code;
use super::super::page::{self, Seen};
use super::super::sign_in::proved::{self, ProvedForm};
use super::super::when;
use super::slip::{CodePage, SlipPage, When};
use super::{last_secretary, named};
use crate::db::people::{self, Change, Notes, Person};
use crate::db::slips;
use crate::extract::{Fields, JustDid, ProvedSecretary, Secretary, WORD, room};
use crate::rules::auth::digits::Digits;
use crate::rules::auth::{MemberId, Rights, SignedIn, Token, cookie, name};
use crate::rules::deed::{Deed, Did};
use crate::{App, Error};
use holewright_pages::layout::Frame;

/// The bytes of what is to be done, three ticks, what becomes of the notes, and proof.
pub const TAKES: u64 = room(&[WORD, WORD, WORD, WORD, WORD]) + proved::TAKES;

#[derive(Template)]
#[template(path = "web/people/show.html")]
struct ShowPage {
    frame: Frame,
    number: i64,
    name: String,
    rights_named: String,
    rights: Rights,
    joined: String,
    notes: i64,
    stopped: Option<String>,
    has_second_factor: bool,
}

const NOBODY: Error = Error::NotFound("no member has this number");

/// Shows the member.
///
/// # Errors
/// Not the secretary, no such member, or the database.
pub async fn form(
    State(app): State<Arc<App>>,
    ProvedSecretary(secretary): ProvedSecretary,
    JustDid(did): JustDid,
    Path(id): Path<String>,
) -> Result<Response, Error> {
    let person = person(&app, &id).await?;
    let page = ShowPage {
        frame: page::frame(&app.context, "/people", &person.name, false, Seen::by(&secretary))
            .saying(page::words(did)),
        number: person.id.0,
        rights_named: named(person.rights),
        rights: person.rights,
        joined: when::day(person.joined_at),
        notes: person.notes,
        stopped: person.stopped_at.map(when::day),
        has_second_factor: person.has_second_factor,
        name: person.name,
    };
    page::respond(StatusCode::OK, &page)
}

/// Does what the form's `do` says.
///
/// # Errors
/// Not the secretary, no such member, the last secretary, or the database.
pub async fn change_member(
    Path(id): Path<String>,
    form: ProvedForm<Secretary>,
) -> Result<Response, Error> {
    form.does(async |app, secretary, fields| change(&app, &secretary, &id, &fields).await).await
}

async fn change(
    app: &App,
    secretary: &SignedIn,
    id: &str,
    fields: &Fields,
) -> Result<Response, Error> {
    let person = person(app, id).await?;
    let act = Act { app, secretary, person: &person };
    match fields.get("do") {
        "rights" => act.set_rights(fields).await,
        "stop" => act.stop().await,
        "allow" => act.allow().await,
        "reset" => act.reset().await,
        "read-out" => act.read_out().await,
        "drop-second-factor" => act.drop_second_factor().await,
        "remove" => act.remove(fields).await,
        _ => Err(Error::NotFound("no such act")),
    }
}

/// One act of the secretary on one member.
struct Act<'a> {
    app: &'a App,
    secretary: &'a SignedIn,
    person: &'a Person,
}

impl Act<'_> {
    async fn set_rights(&self, fields: &Fields) -> Result<Response, Error> {
        let rights = Rights {
            moderator: fields.ticked("moderator"),
            inspector: fields.ticked("inspector"),
            secretary: fields.ticked("secretary"),
        };
        let (database, now) = (&self.app.database, self.app.clock.now());
        let change =
            people::set_rights(database, now, self.secretary, self.person.id, rights).await?;
        self.done(change, Deed::SetRights)
    }

    async fn stop(&self) -> Result<Response, Error> {
        let (database, now) = (&self.app.database, self.app.clock.now());
        self.done(people::stop(database, now, self.secretary, self.person.id).await?, Deed::Stopped)
    }

    async fn allow(&self) -> Result<Response, Error> {
        let (database, now) = (&self.app.database, self.app.clock.now());
        self.done(
            people::allow(database, now, self.secretary, self.person.id).await?,
            Deed::Allowed,
        )
    }

    /// Never one's own: a session that somebody else sits at could disarm itself.
    async fn drop_second_factor(&self) -> Result<Response, Error> {
        if self.person.id == self.secretary.id {
            return Err(super::own_second_factor());
        }
        let (database, now) = (&self.app.database, self.app.clock.now());
        let change = people::drop_second_factor(database, now, self.secretary, self.person.id);
        self.done(change.await?, Deed::TookSecondFactor)
    }

    async fn reset(&self) -> Result<Response, Error> {
        let token = Token::new()?;
        let (database, now) = (&self.app.database, self.app.clock.now());
        let by = Some(self.secretary);
        if !slips::reset(database, now, by, token.hash(), self.person.id).await? {
            return Err(NOBODY);
        }
        let words = format!(
            "With it {} chooses a new password, once, until {}. The old one works until the new one is chosen.",
            self.person.name,
            When::of(self.app).await?.told(now + slips::RESET_LASTS)
        );
        let heading = ("Slip for a new password", self.person.name.as_str());
        SlipPage::new(self.app, self.secretary, ("reset", &token), heading, words)?.answer()
    }

    /// A code to read out by telephone, for whoever cannot come.
    async fn read_out(&self) -> Result<Response, Error> {
        let (token, code) = (Token::new()?, Digits::draw()?);
        let hash = self.app.passwords.hash(code.password()).await?;
        let (database, now) = (&self.app.database, self.app.clock.now());
        let (by, slip) = (Some(self.secretary), (token.hash(), hash.as_str()));
        if !slips::reset_read_out(database, now, by, slip, self.person.id).await? {
            return Err(NOBODY);
        }
        by_code::begin_anew(self.app, &name::key(&self.person.name));
        let until = When::of(self.app).await?.told(now + slips::READ_OUT_LASTS);
        let person = (self.person.id.0, self.person.name.as_str());
        CodePage::new(self.app, self.secretary, person, &code, until).answer()
    }

    async fn remove(&self, fields: &Fields) -> Result<Response, Error> {
        let notes = leavers_notes(fields.get("notes"));
        let notes = notes.ok_or(Error::NotFound("say what becomes of the notes"))?;
        let (database, now) = (&self.app.database, self.app.clock.now());
        let change = people::remove(database, now, self.secretary, self.person.id, notes).await?;
        if change == Change::Done {
            let is_self = self.person.id == self.secretary.id;
            if is_self {
                return Ok(page::did(self.app, "/sign-in", Deed::Left));
            }
            let done = Did { deed: Deed::Removed, of: Some(self.person.id.0) };
            return Ok(page::did(self.app, "/people", done));
        }
        self.done(change, Deed::Removed)
    }

    /// Back to the member. Whose own rights changed has no session left, and signs in anew.
    fn done(&self, change: Change, deed: Deed) -> Result<Response, Error> {
        match change {
            Change::Done => {}
            Change::LastSecretary => return Err(last_secretary()),
            Change::NoSuchMember => return Err(NOBODY),
        }
        let mut response = page::did(self.app, &format!("/people/{}", self.person.id.0), deed);
        if self.person.id == self.secretary.id
            && let Some(value) = cookie::take_away(&self.app.base_url)
        {
            response.headers_mut().append(SET_COOKIE, value);
        }
        Ok(response)
    }
}

/// What becomes of a leaver's notes, as a form says it.
pub(in crate::web) fn leavers_notes(choice: &str) -> Option<Notes> {
    match choice {
        "keep" => Some(Notes::Keep),
        "remove" => Some(Notes::Remove),
        _ => None,
    }
}

async fn person(app: &App, id: &str) -> Result<Person, Error> {
    let id: i64 = id.parse().map_err(|_| NOBODY)?;
    people::one(&app.database, MemberId(id)).await?.ok_or(NOBODY)
}
