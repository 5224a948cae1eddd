//! `/reset`: a member who forgot the password, and to whom the secretary reads a code out by telephone.
//!
//! A name that nobody has, one without an open code and a wrong code get the same answer after the same work.

use std::sync::Arc;
use std::time::Instant;

use axum::extract::State;
use axum::response::Response;

use super::super::form_page::{self, FormPage};
use super::super::page::{self, Seen};
use super::super::sign_in::{Counted, count};
use crate::db::{accounts, slips};
use crate::extract::{Asker, Fields, WORD, room};
use crate::rules::auth::digits::Digits;
use crate::rules::auth::{Password, Token, name};
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind};
use holewright_pages::link::Link;

/// The bytes of a name and a code.
pub const TAKES: u64 = room(&[2 * name::LONGEST, WORD]);

/// Shows the form.
///
/// # Errors
/// The page cannot be written.
pub async fn form(State(app): State<Arc<App>>) -> Result<Response, Error> {
    form_with(&app, "", Vec::new()).answer()
}

/// Takes the code, and leads on to where the new password is chosen.
///
/// # Errors
/// Too many tries, busy cores, or the database.
pub async fn check_code(
    State(app): State<Arc<App>>,
    asker: Asker,
    fields: Fields,
) -> Result<Response, Error> {
    let typed = fields.get("name");
    let Some(code) = Digits::read(fields.get("code")).filter(|_| !typed.is_empty()) else {
        let words = "Write your name, and the ten digits that were read out to you.";
        return form_with(&app, typed, vec![FieldError::new("code", words)]).answer();
    };
    match right(&app, &asker, &name::key(typed), code.password()).await {
        Ok(Some(token)) => Ok(page::see_other(&format!("/reset/{}", token.secret()))),
        Ok(None) => {
            let wrong = "This name and this code do not go together, or the code is used or older than an hour. \
                         Look at both, or ask the secretary for another code.";
            form_with(&app, typed, vec![FieldError::new("code", wrong)]).answer()
        }
        Err(error) => form_with(&app, typed, Vec::new()).refused(error),
    }
}

/// The token of the slip with this code for the member of this name, if it is theirs. Counts the try.
async fn right(
    app: &App,
    asker: &Asker,
    key: &str,
    code: Password,
) -> Result<Option<Token>, Error> {
    let counted = Counted::under(tried(key), asker);
    count(app, &counted)?;
    let now = app.clock.now();
    let account = accounts::named(&app.database, key).await?;
    let slip = slips::read_out(&app.database, key, now).await?;
    let hash = slip.as_ref().map(|(_, hash)| hash.clone());
    let is_right = app.passwords.verify(code, hash).await?;
    if let (true, Some((slip, _))) = (is_right, slip) {
        let token = Token::new()?;
        if slips::open_read_out(&app.database, now, slip, token.hash()).await? {
            counted.right(app);
            if let Some(client) = asker.client {
                app.sign_in_limit.give_back(client);
            }
            return Ok(Some(token));
        }
    }
    accounts::refuse(&app.database, now, account.as_ref(), "a code that was read out").await?;
    Ok(None)
}

/// Whoever had the code made is tried no more than once before it counts anew.
pub(in crate::web) fn begin_anew(app: &App, key: &str) {
    app.tries.right(&tried(key), Instant::now());
}

/// Under what the tries are counted, apart from those at the sign-in: whoever forgot the password has spent
/// those. No name has a line in it.
fn tried(key: &str) -> String {
    format!("{key}\nread out")
}

fn form_with(app: &App, typed: &str, errors: Vec<FieldError>) -> FormPage {
    let heading = "A code from the secretary";
    let mut page = FormPage::at(&app.context, "/reset", heading, errors, Seen::ByAnybody);
    page.words = vec![
        "For a member who forgot the password and was read a code out by telephone. Then you choose a new password."
            .to_owned(),
    ];
    let kind = Kind::Familiar(String::new(), "one-time-code");
    let code = Field::new("code", "The code", "Ten digits; spaces do not matter", kind);
    page.fields = vec![form_page::name(typed), code];
    page.button = "Go on";
    page.links = vec![Link::new("/sign-in", "Sign in")];
    page
}
