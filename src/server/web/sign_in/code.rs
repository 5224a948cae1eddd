//! `/sign-in/code`: the code after the password, for whoever has set up a second factor.

use std::sync::Arc;

use axum::extract::{RawQuery, State};
use axum::response::Response;

use super::super::form_page::{self, FormPage};
use super::super::next::Next;
use super::super::page::{self, Seen};
use super::{Counted, count, with_session};
use crate::db::accounts::{self, Account, Given};
use crate::db::sessions::{self, New};
use crate::db::spare_codes;
use crate::extract::{Asker, Fields, WORD, room};
use crate::rules::auth::digits::Digits;
use crate::rules::auth::{Token, TokenHash};
use crate::rules::deed::{Deed, Did};
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::link::Link;

/// The bytes of a code and where to go on to.
pub const TAKES: u64 = room(&[WORD, Next::LONGEST]);

/// Shows the form to a browser whose password was right; any other signs in first.
///
/// # Errors
/// The database cannot be read.
pub async fn form(
    State(app): State<Arc<App>>,
    asker: Asker,
    query: RawQuery,
) -> Result<Response, Error> {
    let next = Next::read(&page::asked(&query, "next"));
    match waiting(&app, &asker).await? {
        Some(_) => form_with(&app, &next, Vec::new()).answer(),
        None => Ok(page::see_other(&next.carried_to("/sign-in"))),
    }
}

/// Takes the code: the session that waited ends, and one with a new token begins.
///
/// # Errors
/// Too many tries, or the database.
pub async fn check_code(
    State(app): State<Arc<App>>,
    asker: Asker,
    fields: Fields,
) -> Result<Response, Error> {
    let next = Next::read(fields.get("next"));
    let Some((held, account)) = waiting(&app, &asker).await? else {
        return Ok(page::see_other(&next.carried_to("/sign-in")));
    };
    let counted = Counted::at_the_door(&asker, &account.name);
    if let Err(error) = count(&app, &counted) {
        return form_with(&app, &next, Vec::new()).refused(error);
    }
    let now = app.clock.now();
    if let Some(given) = given(&app, &account, fields.get("code"), now).await? {
        let token = Token::new()?;
        let session = New { token: token.hash(), agent: &asker.agent };
        let database = &app.database;
        if accounts::sign_in_with_code(database, now, &account, &given, session, held).await? {
            counted.right(&app);
            if let Some(client) = asker.client {
                app.sign_in_limit.give_back(client);
            }
            let on = match given {
                Given::Step(_) => page::see_other(next.address()),
                Given::Spare { .. } => {
                    let left = accounts::numbered(database, account.id).await?;
                    let left = left.map_or(0, |account| account.spare_codes);
                    let did = Did { deed: Deed::UsedSpareCode, of: Some(left) };
                    page::did(&app, next.address(), did)
                }
            };
            return Ok(with_session(on, &token, &app));
        }
    }
    accounts::refuse(&app.database, now, Some(&account), "code").await?;
    form_with(&app, &next, vec![wrong()]).answer()
}

/// What this code is of the member's, if it may still be taken: of the device, or a spare one.
async fn given(
    app: &App,
    account: &Account,
    typed: &str,
    now: i64,
) -> Result<Option<Given>, Error> {
    if let Some(step) = step(account, typed, now) {
        return Ok(Some(Given::Step(step)));
    }
    let Some(digits) = Digits::read(typed).filter(|_| account.second_factor.is_some()) else {
        return Ok(None);
    };
    let hash = spare_codes::hash(&app.database, account.id, digits.mark()).await?;
    let is_right = app.passwords.verify(digits.password(), hash.clone()).await?;
    let hash = hash.filter(|_| is_right);
    Ok(hash.map(|hash| Given::Spare { mark: digits.mark().to_owned(), hash }))
}

/// The step whose code this is, if it may still be taken.
fn step(account: &Account, code: &str, now: i64) -> Option<i64> {
    let (secret, last) = account.second_factor.as_ref()?;
    secret.step_of(code, now, *last)
}

/// Takes a member's code, where they have a second factor; false where it is not theirs.
pub(super) async fn take(app: &App, account: &Account, code: &str) -> Result<bool, Error> {
    if account.second_factor.is_none() {
        return Ok(true);
    }
    let now = app.clock.now();
    let taken = match given(app, account, code, now).await? {
        Some(given) => accounts::take_code(&app.database, now, account, &given).await?,
        None => false,
    };
    if !taken {
        accounts::refuse(&app.database, now, Some(account), "code").await?;
    }
    Ok(taken)
}

/// What is said of a wrong code.
pub(super) fn wrong() -> FieldError {
    let words = "This is not the code of this half minute, nor a spare one, or it was used already. Wait for the next one, or \
         take another spare code.";
    FieldError::new("code", words)
}

async fn waiting(app: &App, asker: &Asker) -> Result<Option<(TokenHash, Account)>, Error> {
    let now = app.clock.now();
    for held in &asker.held {
        if let Some(member) = sessions::waiting_for_code(&app.database, *held, now).await? {
            let account = accounts::numbered(&app.database, member).await?;
            return Ok(account.map(|account| (*held, account)));
        }
    }
    Ok(None)
}

fn form_with(app: &App, next: &Next, errors: Vec<FieldError>) -> FormPage {
    let mut page =
        FormPage::at(&app.context, "/sign-in/code", "Your code", errors, Seen::ByAnybody);
    page.words = vec!["The password was right.".to_owned()];
    page.after = vec![
        "Without your authenticator, take one of your spare codes, each of which is good once. If those are lost \
         too, ask the secretary; if you are the only one, whoever runs the server."
            .to_owned(),
    ];
    page.fields = vec![form_page::code()];
    page.known = vec![("next", next.address().to_owned())];
    page.button = "Sign in";
    page.links = vec![Link::new("/sign-in", "Begin again")];
    page
}
