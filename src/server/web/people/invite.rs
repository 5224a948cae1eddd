//! `/people/invite`: the secretary makes a slip to join with.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;

use super::super::form_page::judged;
use super::super::page::{self, Seen};
use super::super::sign_in::proved::{self, ProvedForm};
use super::as_a;
use super::open_slips::{too_many, unseen_in};
use super::slip::{SlipPage, When};
use crate::db::{open_slips, slips};
use crate::extract::{Fields, ProvedSecretary, Secretary, WORD, room};
use crate::rules::auth::{Rights, SignedIn, Token};
use crate::rules::plain;
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind};
use holewright_pages::layout::Frame;

/// The bytes of whom a slip is for, three ticks and proof.
pub const TAKES: u64 = room(&[LONGEST, WORD, WORD, WORD]) + proved::TAKES;

/// The most characters of who it is for.
const LONGEST: usize = 60;

#[derive(Template)]
#[template(path = "web/people/invite.html")]
struct InvitePage {
    frame: Frame,
    errors: Vec<FieldError>,
    meant_for: Field,
    rights: Rights,
}

/// Shows the form.
///
/// # Errors
/// Not the secretary.
pub async fn form(
    State(app): State<Arc<App>>,
    ProvedSecretary(secretary): ProvedSecretary,
) -> Result<Response, Error> {
    form_with(&app, &secretary, ("", Rights::default()), Vec::new())
}

/// Makes the slip and shows it, this once.
///
/// # Errors
/// Not the secretary, or the database cannot be written.
pub async fn invite(form: ProvedForm<Secretary>) -> Result<Response, Error> {
    form.does(make).await
}

async fn make(app: Arc<App>, secretary: SignedIn, fields: Fields) -> Result<Response, Error> {
    let meant_for = fields.get("meant_for");
    let rights = Rights {
        moderator: fields.ticked("moderator"),
        inspector: fields.ticked("inspector"),
        secretary: fields.ticked("secretary"),
    };
    if meant_for.chars().count() > LONGEST {
        let words = format!("At most {LONGEST} characters: enough to know the slip by.");
        return form_with(
            &app,
            &secretary,
            (meant_for, rights),
            vec![FieldError::new("meant_for", words)],
        );
    }
    let now = app.clock.now();
    let open = open_slips::all(&app.database, now).await?.len();
    let unseen = (plain::line(meant_for) != meant_for).then(|| unseen_in(meant_for));
    if let Some(words) = unseen.or_else(|| too_many(open + 1)) {
        return form_with(
            &app,
            &secretary,
            (meant_for, rights),
            vec![FieldError::new("meant_for", words)],
        );
    }
    let token = Token::new()?;
    slips::invite(&app.database, now, Some(&secretary), token.hash(), rights, meant_for).await?;
    let person = if meant_for.is_empty() { "somebody" } else { meant_for };
    let words = format!(
        "With it {person} joins the club’s pages as {}, once, until {}.",
        as_a(rights),
        When::of(&app).await?.told(now + slips::JOIN_LASTS)
    );
    let heading = ("Slip to join with", meant_for);
    SlipPage::new(&app, &secretary, ("join", &token), heading, words)?.answer()
}

fn form_with(
    app: &App,
    secretary: &SignedIn,
    (typed, rights): (&str, Rights),
    errors: Vec<FieldError>,
) -> Result<Response, Error> {
    let hint = "The name as you know it: joining offers it";
    let meant_for = Field::new("meant_for", "Who it is for", hint, Kind::Words(typed.to_owned()));
    let page = InvitePage {
        frame: page::frame(
            &app.context,
            "/people/invite",
            "Let somebody in",
            !errors.is_empty(),
            Seen::by(secretary),
        ),
        meant_for: judged(meant_for, &errors),
        rights,
        errors,
    };
    page::respond(page::status(&page.errors), &page)
}
