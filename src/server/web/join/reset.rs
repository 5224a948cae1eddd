//! `/reset/{token}`: a member who forgot the password chooses another, with a slip from the secretary.
//!
//! The old password stands until then; every session ends.

use std::sync::Arc;

use axum::extract::{Path, State};
use axum::response::Response;

use super::super::form_page::{self, judged};
use super::super::page::{self, Seen};
use super::{Chosen, JoinPage};
use crate::db::slips::{self, Resetting};
use crate::extract::{Fields, WORD, room};
use crate::rules::auth::{Token, TokenHash, name, strength};
use crate::rules::deed::Deed;
use crate::{App, Error};
use holewright_pages::FieldError;

/// The bytes of a password, a phrase and its tick.
pub const TAKES: u64 = room(&[strength::LONGEST, strength::LONGEST, WORD]);

/// Shows the form for a slip that may still be used.
///
/// # Errors
/// The slip is spent, or the database cannot be read.
pub async fn form(
    State(app): State<Arc<App>>,
    Path(token): Path<String>,
) -> Result<Response, Error> {
    let (_, resetting) = slip(&app, &token).await?;
    form_with(&app, &token, &resetting, Chosen::nothing()?, Vec::new())
}

/// Sets the new password. The member then signs in with it, and with the code where one is due: a
/// slip stands for the password alone.
///
/// # Errors
/// The slip is spent, the cores are busy, or the database fails.
pub async fn set_password(
    State(app): State<Arc<App>>,
    Path(token): Path<String>,
    fields: Fields,
) -> Result<Response, Error> {
    let (hash, resetting) = slip(&app, &token).await?;
    let chosen = Chosen::read(&fields)?;
    if let Some(error) = chosen.judge(&resetting.name, &app) {
        return form_with(&app, &token, &resetting, chosen, vec![error]);
    }
    let password_hash = app.passwords.hash(chosen.password()).await?;
    let now = app.clock.now();
    if !slips::use_to_reset(&app.database, now, hash, &password_hash).await? {
        return Err(Error::SpentSlip);
    }
    // Whoever was kept waiting by another's wrong tries waits no longer.
    app.tries.right(&name::key(&resetting.name), std::time::Instant::now());
    Ok(page::did(&app, "/sign-in", Deed::ResetPassword))
}

async fn slip(app: &App, token: &str) -> Result<(TokenHash, Resetting), Error> {
    let hash = Token::read(token).ok_or(Error::SpentSlip)?.hash();
    let slip = slips::to_reset(&app.database, hash, app.clock.now()).await?;
    Ok((hash, slip.ok_or(Error::SpentSlip)?))
}

fn form_with(
    app: &App,
    token: &str,
    resetting: &Resetting,
    chosen: Chosen,
    errors: Vec<FieldError>,
) -> Result<Response, Error> {
    let heading = "A new password";
    let page = JoinPage {
        frame: page::frame(&app.context, "/reset", heading, !errors.is_empty(), Seen::ByAnybody),
        heading: heading.to_owned(),
        words: vec![format!(
            "For {}. The old password works until you press the button; then every device is signed out.",
            resetting.name
        )],
        action: format!("/reset/{token}"),
        name: None,
        password: judged(form_page::new_password("New password"), &errors),
        phrase: chosen.phrase,
        takes_phrase: chosen.takes_phrase,
        button: "Set it",
        errors,
    };
    page::respond(page::status(&page.errors), &page)
}
