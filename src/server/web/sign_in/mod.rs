//! `/sign-in`: a name and its password, and a session for them. `/sign-out`: the session ends here and in
//! the database, and the browser forgets the pages. Where the database cannot be written it ends here at
//! any rate.
//!
//! An unknown name, a wrong password and a member whom the secretary has stopped get the same
//! answer after the same work.

pub mod code;
pub mod prove;
pub mod proved;

use std::sync::Arc;
use std::time::Instant;

use axum::extract::{RawQuery, State};
use axum::http::header::SET_COOKIE;
use axum::http::{HeaderName, HeaderValue};
use axum::response::{IntoResponse, Response};

use super::form_page::{self, FormPage};
use super::next::Next;
use super::page::{self, Seen};
use crate::db::accounts::{self, Account};
use crate::db::sessions::New;
use crate::extract::{Asker, Fields, JustDid, Reader, room};
use crate::rules::auth::{Password, SignedIn, Token, cookie, name, phrase, strength};
use crate::rules::deed::Deed;
use crate::rules::limits::Client;
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::link::Link;

/// The bytes of a form with nothing in it.
pub const TAKES_NOTHING: u64 = room(&[]);

/// The bytes of a name, a password and where to go on to.
pub const TAKES: u64 = room(&[2 * name::LONGEST, strength::LONGEST, Next::LONGEST]);

/// Shows the form.
///
/// # Errors
/// The page cannot be written.
pub async fn form(
    State(app): State<Arc<App>>,
    JustDid(did): JustDid,
    query: RawQuery,
) -> Result<Response, Error> {
    let next = Next::read(&page::asked(&query, "next"));
    let mut page = form_with(&app, "", &next, Vec::new());
    page.frame = page.frame.saying(page::words(did));
    page.answer()
}

/// Takes the name and the password.
///
/// # Errors
/// Too many tries, busy cores, or the database.
pub async fn sign_in(
    State(app): State<Arc<App>>,
    asker: Asker,
    fields: Fields,
) -> Result<Response, Error> {
    let next = Next::read(fields.get("next"));
    let typed = fields.get("name");
    let password = fields.password("password");
    let errors = unreadable(typed, &password);
    if !errors.is_empty() {
        return form_with(&app, typed, &next, errors).answer();
    }
    let counted = Counted::at_the_door(&asker, typed);
    let checked = match check(&app, &counted, typed, password).await {
        Ok(checked) => checked,
        Err(error) => return form_with(&app, typed, &next, Vec::new()).refused(error),
    };
    let Some(account) = checked else {
        let wrong = "This name and this password do not go together. Look at both, and try again.";
        return form_with(&app, typed, &next, vec![FieldError::new("name", wrong)]).answer();
    };
    let token = Token::new()?;
    let session = New { token: token.hash(), agent: &asker.agent };
    let now = app.clock.now();
    accounts::sign_in(&app.database, now, &account, session, &asker.held).await?;
    let door = if account.second_factor.is_some() {
        next.carried_to("/sign-in/code")
    } else {
        counted.right(&app);
        next.address().to_owned()
    };
    Ok(with_session(page::see_other(&door), &token, &app))
}

/// Under what tries are counted.
pub(in crate::web) struct Counted {
    key: String,
    client: Option<Client>,
}

impl Counted {
    /// Of somebody who is not signed in: at the name, and at their address.
    fn at_the_door(asker: &Asker, name: &str) -> Self {
        Self { key: name::key(name), client: asker.client }
    }

    /// Of somebody who is not signed in, under another key than the name: and at their address.
    pub(in crate::web) fn under(key: String, asker: &Asker) -> Self {
        Self { key, client: asker.client }
    }

    /// Of one session, apart from those of strangers and from the member's others: whoever guesses at the
    /// name, or holds a session that was stolen, keeps no member from giving proof in another. It shuts
    /// nobody out at the door either. A member has only so many sessions, and each waits as a name does.
    pub(super) fn in_session(member: &SignedIn) -> Self {
        // No name has a line in it.
        Self { key: format!("{}\n{}", member.id.0, member.session), client: None }
    }

    /// All that was asked for was right.
    pub(in crate::web) fn right(&self, app: &App) {
        app.tries.right(&self.key, Instant::now());
    }
}

/// The account with this name, if this is its password. Counts the try.
async fn check(
    app: &App,
    counted: &Counted,
    typed: &str,
    password: Password,
) -> Result<Option<Account>, Error> {
    count(app, counted)?;
    let account = accounts::named(&app.database, &name::key(typed)).await?;
    let standing = account.as_ref().filter(|account| !account.is_stopped);
    let hash = standing.map(|account| account.password_hash.clone());
    if let Some(password) = verified(app, password, hash).await? {
        if let Some(account) = account.as_ref() {
            renew(app, account, password).await?;
        }
        if let Some(client) = counted.client {
            app.sign_in_limit.give_back(client);
        }
        return Ok(account);
    }
    accounts::refuse(&app.database, app.clock.now(), account.as_ref(), "password").await?;
    Ok(None)
}

/// The password behind this hash: as it was typed, or the phrase that it is in another dress. Whether the
/// second is tried hangs on what was typed alone, so it tells nothing of the name.
async fn verified(
    app: &App,
    typed: Password,
    hash: Option<String>,
) -> Result<Option<Password>, Error> {
    let as_drawn = phrase::as_drawn(&typed);
    if app.passwords.verify(typed.clone(), hash.clone()).await? {
        return Ok(Some(typed));
    }
    match as_drawn {
        Some(phrase) if app.passwords.verify(phrase.clone(), hash).await? => Ok(Some(phrase)),
        _ => Ok(None),
    }
}

/// Makes the hash anew where it was made at another cost than today's.
async fn renew(app: &App, account: &Account, password: Password) -> Result<(), Error> {
    if app.passwords.is_current(&account.password_hash) {
        return Ok(());
    }
    let hash = app.passwords.hash(password).await?;
    Ok(accounts::renew_hash(&app.database, account.id, &account.password_hash, &hash).await?)
}

/// Counts a try before its outcome is known, so that many at once count as many.
pub(in crate::web) fn count(app: &App, Counted { key, client }: &Counted) -> Result<(), Error> {
    let now = Instant::now();
    let refused = |wait| Error::TooManyTries { wait };
    if let Some(client) = *client {
        app.sign_in_limit.take(client, now).map_err(refused)?;
    }
    app.tries.may_try(key, now).map_err(refused)?;
    app.tries.tried(key, now);
    Ok(())
}

/// What cannot be a name or a password here, whoever asks: it costs no hash.
fn unreadable(typed: &str, password: &Password) -> Vec<FieldError> {
    let mut errors = Vec::new();
    if typed.is_empty() {
        errors.push(FieldError::new("name", "Write the name you go by in the club."));
    } else if matches!(name::Name::read(typed), Err(name::NotAName::Long)) {
        let words = format!("No name here has more than {} characters.", name::LONGEST);
        errors.push(FieldError::new("name", words));
    }
    let length = password.secret().chars().count();
    if length == 0 {
        errors.push(FieldError::new("password", "Write your password."));
    } else if length > strength::LONGEST {
        let words = format!("No password here has more than {} characters.", strength::LONGEST);
        errors.push(FieldError::new("password", words));
    }
    errors
}

/// The answer, with the session's cookie for the browser.
pub(super) fn with_session(mut response: Response, token: &Token, app: &App) -> Response {
    if let Some(value) = cookie::give(token, &app.base_url) {
        response.headers_mut().append(SET_COOKIE, value);
    }
    response
}

fn form_with(app: &App, typed: &str, next: &Next, errors: Vec<FieldError>) -> FormPage {
    let mut page = FormPage::at(&app.context, "/sign-in", "Sign in", errors, Seen::ByAnybody);
    page.words = vec![
        "Reading needs no account. Members sign in to write notes and to say what worked."
            .to_owned(),
    ];
    page.fields = vec![form_page::name(typed), form_page::password("Password")];
    page.known = vec![("next", next.address().to_owned())];
    page.button = "Sign in";
    page.after = vec![
        "Forgotten the password? Ask the secretary: a slip to print, or a code read out to you by telephone, lets you \
         choose another. Lost a slip before you used it? The secretary cancels it and makes you another."
            .to_owned(),
    ];
    page.links = vec![
        Link::new("/reset", "I was read a code out"),
        Link::new("/privacy", "What is kept, and for how long"),
    ];
    page
}

/// Ends the session at hand, if there is one.
///
/// # Errors
/// The session could not be ended: the browser loses it all the same, and the page says so.
pub async fn sign_out(
    State(app): State<Arc<App>>,
    reader: Result<Reader, Error>,
    asker: Asker,
) -> Response {
    let ended = async {
        if asker.held.is_empty() {
            return Ok(());
        }
        let Reader(reader) = reader?;
        let now = app.clock.now();
        Ok(accounts::sign_out(&app.database, now, reader.as_ref(), &asker.held).await?)
    };
    gone(&app, ended.await)
}

/// The answer to a browser that loses its session, whether or not the server could end it.
pub(super) fn gone(app: &App, ended: Result<(), Error>) -> Response {
    let mut response = match ended {
        Ok(()) => page::did(app, "/sign-in", Deed::SignedOut),
        Err(error) => Error::GoneHereAlone(Box::new(error)).into_response(),
    };
    let headers = response.headers_mut();
    let clear = HeaderName::from_static("clear-site-data");
    headers.insert(clear, HeaderValue::from_static("\"cache\""));
    if let Some(value) = cookie::take_away(&app.base_url) {
        headers.append(SET_COOKIE, value);
    }
    response
}
