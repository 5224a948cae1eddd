//! `/me/password`: a member changes their password.

use std::sync::Arc;

use axum::extract::State;
use axum::response::Response;

use super::super::form_page::{self, FormPage};
use super::super::page::{self, Seen};
use super::super::sign_in::{prove, with_session};
use crate::db::accounts;
use crate::db::sessions::New;
use crate::extract::{Asker, Fields, Member, WORD, room};
use crate::rules::auth::{SignedIn, Token, strength};
use crate::rules::deed::Deed;
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::link::Link;

/// The bytes of the old password, a code and the new password.
pub const TAKES: u64 = room(&[strength::LONGEST, WORD, strength::LONGEST]);

/// Shows the form.
///
/// # Errors
/// Nobody is signed in.
pub async fn form(State(app): State<Arc<App>>, Member(member): Member) -> Result<Response, Error> {
    form_with(&app, &member, Vec::new()).answer()
}

/// Sets it: every session of the member ends, and one with a new token begins here.
///
/// # Errors
/// Nobody is signed in, too many tries, busy cores, or the database.
pub async fn change_password(
    State(app): State<Arc<App>>,
    Member(member): Member,
    asker: Asker,
    fields: Fields,
) -> Result<Response, Error> {
    let new = fields.password("new_password");
    if let Err(weak) = strength::check(&new, &member.name, app.base_url.host()) {
        let errors = vec![FieldError::new("new_password", weak.to_string())];
        return form_with(&app, &member, errors).answer();
    }
    let wrong = "This is not your present password. The new one was not set.";
    match prove::given(&app, &member, &fields, wrong).await {
        Ok(Ok(())) => {}
        Ok(Err(wrong)) => return form_with(&app, &member, vec![wrong]).answer(),
        Err(error) => return form_with(&app, &member, Vec::new()).refused(error),
    }
    let password_hash = app.passwords.hash(new).await?;
    let token = Token::new()?;
    let session = New { token: token.hash(), agent: &asker.agent };
    let now = app.clock.now();
    accounts::set_password(&app.database, now, &member, &password_hash, session).await?;
    Ok(with_session(page::did(&app, "/me", Deed::ChangedPassword), &token, &app))
}

fn form_with(app: &App, member: &SignedIn, errors: Vec<FieldError>) -> FormPage {
    let mut page =
        FormPage::at(&app.context, "/me/password", "Change the password", errors, Seen::by(member));
    page.words = vec!["Every other device is signed out.".to_owned()];
    page.fields = prove::asked_for(member, "Your present password");
    page.fields.push(form_page::new_password("The new password"));
    page.button = "Change it";
    page.links = vec![Link::new("/me", "Your page")];
    page
}
