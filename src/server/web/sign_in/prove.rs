//! `/prove`: a member who is signed in gives the password once more before an act that needs it.

use std::sync::Arc;
use std::time::Instant;

use axum::extract::{RawQuery, State};
use axum::response::Response;

use super::super::form_page::{self, FormPage};
use super::super::next::Next;
use super::super::page;
use super::{check, code};
use crate::db::{accounts, sessions};
use crate::extract::{AnyMember, Asker, Fields};
use crate::rules::auth::SignedIn;
use crate::{App, Error};
use holewright_pages::FieldError;

/// Shows the form.
///
/// # Errors
/// Nobody is signed in.
pub async fn form(
    State(app): State<Arc<App>>,
    AnyMember(member): AnyMember,
    query: RawQuery,
) -> Result<Response, Error> {
    let next = Next::read(&page::asked(&query, "next"));
    form_with(&app, &member, &next, Vec::new())
}

/// Takes the password, and the code where there is a second factor.
///
/// # Errors
/// Nobody is signed in, too many tries, or the database.
pub async fn prove(
    State(app): State<Arc<App>>,
    AnyMember(member): AnyMember,
    asker: Asker,
    fields: Fields,
) -> Result<Response, Error> {
    let next = Next::read(fields.get("next"));
    let account = check(&app, &asker, &member.name, fields.password("password")).await?;
    let Some(account) = account.filter(|account| account.id == member.id) else {
        let wrong = FieldError::new("password", "This is not your password. Try again.");
        return form_with(&app, &member, &next, vec![wrong]);
    };
    let now = app.clock.now();
    if account.second_factor.is_some() {
        let step = code::step(&account, fields.get("code"), now);
        let taken = match step {
            Some(step) => accounts::take_code(&app.database, member.id, step).await?,
            None => false,
        };
        if !taken {
            accounts::refuse(&app.database, now, Some(&account), "code").await?;
            return form_with(&app, &member, &next, vec![code::wrong()]);
        }
    }
    app.tries.right(&account.key, Instant::now());
    sessions::prove(&app.database, &member, now).await?;
    Ok(page::see_other(next.address()))
}

fn form_with(
    app: &App,
    member: &SignedIn,
    next: &Next,
    errors: Vec<FieldError>,
) -> Result<Response, Error> {
    let mut page = FormPage::at(&app.context, "/prove", "Your password once more", errors);
    page.words = vec![
        "What you are about to do needs your password once more, in case somebody else sits here. You are then \
         not asked again for a quarter of an hour."
            .to_owned(),
    ];
    page.fields = vec![form_page::password("Password")];
    if member.has_second_factor {
        page.fields.push(form_page::code());
    }
    page.known = vec![("next", next.address().to_owned())];
    page.button = "Go on";
    page.answer()
}
