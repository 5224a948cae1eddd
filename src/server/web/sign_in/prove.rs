//! `/prove`: a member who is signed in gives the password once more before an act that needs it.

use std::sync::Arc;

use axum::extract::{RawQuery, State};
use axum::response::Response;

use super::super::form_page::{self, FormPage};
use super::super::next::Next;
use super::super::page::{self, Seen};
use super::{Counted, check, code, with_session};
use crate::db::sessions;
use crate::extract::{AnyMember, Fields, WORD, room};
use crate::rules::auth::{SignedIn, Token, strength};
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::Field;

/// The bytes of a password, a code and where to go on to.
pub const TAKES: u64 = room(&[strength::LONGEST, WORD, Next::LONGEST]);

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
    form_with(&app, &member, &next, Vec::new()).answer()
}

/// Takes the password, and the code where there is a second factor.
///
/// # Errors
/// Nobody is signed in, too many tries, or the database.
pub async fn prove(
    State(app): State<Arc<App>>,
    AnyMember(member): AnyMember,
    fields: Fields,
) -> Result<Response, Error> {
    let next = Next::read(fields.get("next"));
    let wrong = "This is not your password. Try again.";
    match given(&app, &member, &fields, wrong).await {
        Ok(Ok(())) => {}
        Ok(Err(wrong)) => return form_with(&app, &member, &next, vec![wrong]).answer(),
        Err(error) => return form_with(&app, &member, &next, Vec::new()).refused(error),
    }
    let token = Token::new()?;
    sessions::prove(&app.database, &member, app.clock.now(), token.hash()).await?;
    Ok(with_session(page::see_other(next.address()), &token, &app))
}

/// Whether a form gives all the proof that this member has: the password, and the code of a second
/// factor. `wrong` is what is said of another password.
pub(in crate::web) async fn given(
    app: &App,
    member: &SignedIn,
    fields: &Fields,
    wrong: &'static str,
) -> Result<Result<(), FieldError>, Error> {
    let counted = Counted::in_session(member);
    let account = check(app, &counted, &member.name, fields.password("password")).await?;
    let Some(account) = account.filter(|account| account.id == member.id) else {
        return Ok(Err(FieldError::new("password", wrong)));
    };
    if !code::take(app, &account, fields.get("code")).await? {
        return Ok(Err(code::wrong()));
    }
    counted.right(app);
    Ok(Ok(()))
}

/// The fields that ask for it.
pub(in crate::web) fn asked_for(member: &SignedIn, label: &'static str) -> Vec<Field> {
    let code = member.has_second_factor.then(form_page::code);
    [form_page::password(label)].into_iter().chain(code).collect()
}

fn form_with(app: &App, member: &SignedIn, next: &Next, errors: Vec<FieldError>) -> FormPage {
    let mut page =
        FormPage::at(&app.context, "/prove", "Your password once more", errors, Seen::by(member));
    page.words = vec![
        "What you are about to do needs your password once more, in case somebody else sits here. You are then \
         not asked again for a quarter of an hour."
            .to_owned(),
    ];
    page.fields = asked_for(member, "Password");
    page.known = vec![("next", next.address().to_owned())];
    page.button = "Go on";
    page
}
