//! `/me/leave`: a member leaves the club and chooses whether their notes stay or go.

use std::sync::Arc;

use axum::extract::State;
use axum::http::header::SET_COOKIE;
use axum::response::Response;

use super::super::form_page::FormPage;
use super::super::page::{self, Seen};
use super::super::people::show::leavers_notes;
use super::super::sign_in::prove;
use crate::db::people::{self, Change};
use crate::extract::{Fields, Member, WORD, room};
use crate::rules::auth::{SignedIn, cookie, strength};
use crate::rules::deed::Deed;
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind, items};
use holewright_pages::link::Link;

/// The bytes of what becomes of the notes, a password and a code.
pub const TAKES: u64 = room(&[WORD, strength::LONGEST, WORD]);

/// Shows the form.
///
/// # Errors
/// Nobody is signed in.
pub async fn form(State(app): State<Arc<App>>, Member(member): Member) -> Result<Response, Error> {
    form_with(&app, &member, "keep", Vec::new()).answer()
}

/// Removes the member, who gave the password.
///
/// # Errors
/// Nobody is signed in, the club would have no secretary, or the database fails.
pub async fn leave(
    State(app): State<Arc<App>>,
    Member(member): Member,
    fields: Fields,
) -> Result<Response, Error> {
    let choice = fields.get("notes");
    let Some(notes) = leavers_notes(choice) else {
        let words = "Say what becomes of your notes.";
        return form_with(&app, &member, choice, vec![FieldError::new("notes", words)]).answer();
    };
    let wrong = "This is not your password. Nothing was changed.";
    match prove::given(&app, &member, &fields, wrong).await {
        Ok(Ok(())) => {}
        Ok(Err(wrong)) => return form_with(&app, &member, choice, vec![wrong]).answer(),
        Err(error) => return form_with(&app, &member, choice, Vec::new()).refused(error),
    }
    match people::remove(&app.database, app.clock.now(), &member, member.id, notes).await? {
        Change::Done => {}
        Change::LastSecretary => return Err(super::super::people::last_secretary()),
        Change::NoSuchMember => return Err(Error::Unauthenticated),
    }
    let mut response = page::did(&app, "/sign-in", Deed::Left);
    if let Some(value) = cookie::take_away(&app.base_url) {
        response.headers_mut().append(SET_COOKIE, value);
    }
    Ok(response)
}

fn form_with(app: &App, member: &SignedIn, choice: &str, errors: Vec<FieldError>) -> FormPage {
    let mut page =
        FormPage::at(&app.context, "/me/leave", "Leave the club’s pages", errors, Seen::by(member));
    page.words = vec![
        "Your account goes at once: name, password, sessions, and what you never sent in. This cannot be taken back."
            .to_owned(),
    ];
    let choices = [("keep", "They stay, under “a former member”"), ("remove", "They go too")];
    let choices = choices.map(|(value, words)| (value, words, value == choice));
    let kind = Kind::Pick(items(choices));
    page.fields = vec![Field::new("notes", "Your notes", "", kind)];
    page.fields.extend(prove::asked_for(member, "Your password"));
    page.button = "Leave";
    page.is_plain = true;
    page.links = vec![Link::new("/me", "Your page")];
    page
}
