//! `/join/{token}`: a new member takes a name and a password, and is signed in.

pub mod by_code;
pub mod reset;

use std::sync::Arc;

use askama::Template;
use axum::extract::{Path, State};
use axum::response::Response;

use super::form_page::{self, judged};
use super::page::{self, Seen};
use super::sign_in::with_session;
use crate::db::sessions::New;
use crate::db::slips::{self, Joined, Joining, Newcomer};
use crate::extract::{Asker, Fields, WORD, room};
use crate::rules::auth::name::Name;
use crate::rules::auth::{Password, Rights, Token, TokenHash, name, phrase, strength};
use crate::rules::deed::Deed;
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::Field;
use holewright_pages::layout::Frame;

/// The bytes of a name, a password, a phrase and its tick.
pub const TAKES: u64 = room(&[2 * name::LONGEST, strength::LONGEST, strength::LONGEST, WORD]);

/// A form that asks for a new password and offers one.
#[derive(Template)]
#[template(path = "web/join/form.html")]
struct JoinPage {
    frame: Frame,
    heading: String,
    words: Vec<String>,
    errors: Vec<FieldError>,
    action: String,
    name: Option<Field>,
    password: Field,
    /// The phrase that may be taken instead.
    phrase: String,
    takes_phrase: bool,
    button: &'static str,
}

/// What was chosen on such a form.
pub(super) struct Chosen {
    password: Password,
    /// The phrase that was offered.
    phrase: String,
    takes_phrase: bool,
}

impl Chosen {
    /// Nothing yet, and a new phrase.
    pub(super) fn nothing() -> Result<Self, Error> {
        let phrase = phrase::draw()?.secret().to_owned();
        Ok(Self { password: Password::typed(""), phrase, takes_phrase: false })
    }

    /// As the form sent it. A phrase that was written down already stays the same on the form.
    pub(super) fn read(fields: &Fields) -> Result<Self, Error> {
        let takes_phrase = fields.ticked("use_phrase");
        let offered = fields.password("phrase").secret().to_owned();
        // The same again: whoever wrote it down has it on paper.
        let phrase = if offered.is_empty() { phrase::draw()?.secret().to_owned() } else { offered };
        let password =
            if takes_phrase { Password::typed(&phrase) } else { fields.password("new_password") };
        Ok(Self { password, phrase, takes_phrase })
    }

    /// What is wrong with the password for a member of this name.
    pub(super) fn judge(&self, name: &str, app: &App) -> Option<FieldError> {
        let weak = strength::check(&self.password, name, app.base_url.host()).err()?;
        Some(FieldError::new("new_password", weak.to_string()))
    }

    pub(super) fn password(&self) -> Password {
        self.password.clone()
    }
}

/// Shows the form for a slip that may still be used.
///
/// # Errors
/// The slip is spent, or the database cannot be read.
pub async fn form(
    State(app): State<Arc<App>>,
    Path(token): Path<String>,
) -> Result<Response, Error> {
    let (_, joining) = slip(&app, &token).await?;
    // The name on the slip, where it may be one: whoever goes by another writes that.
    let offered = Name::read(&joining.meant_for);
    let offered = offered.as_ref().map_or("", Name::shown);
    form_with(&app, &token, joining.rights, offered, Chosen::nothing()?, Vec::new())
}

/// Makes the member and signs them in.
///
/// # Errors
/// The slip is spent, the cores are busy, or the database fails.
pub async fn join(
    State(app): State<Arc<App>>,
    Path(token): Path<String>,
    asker: Asker,
    fields: Fields,
) -> Result<Response, Error> {
    let (hash, joining) = slip(&app, &token).await?;
    let typed = fields.get("name");
    let chosen = Chosen::read(&fields)?;
    let named = Name::read(typed);
    let mut errors = Vec::new();
    errors.extend(named.as_ref().err().map(|error| FieldError::new("name", error.to_string())));
    errors.extend(chosen.judge(typed, &app));
    let (Ok(name), true) = (named, errors.is_empty()) else {
        return form_with(&app, &token, joining.rights, typed, chosen, errors);
    };
    let password_hash = app.passwords.hash(chosen.password()).await?;
    let session_token = Token::new()?;
    let session = New { token: session_token.hash(), agent: &asker.agent };
    let newcomer = Newcomer { name: &name, password_hash: &password_hash, session };
    match slips::join(&app.database, app.clock.now(), hash, newcomer).await? {
        Joined::Member(_) => {
            Ok(with_session(page::did(&app, "/me", Deed::Joined), &session_token, &app))
        }
        Joined::Spent => Err(Error::SpentSlip),
        Joined::NameTaken => {
            let words = "Another member has this name, or one that looks the same. Add a letter or a second name.";
            form_with(
                &app,
                &token,
                joining.rights,
                typed,
                chosen,
                vec![FieldError::new("name", words)],
            )
        }
    }
}

async fn slip(app: &App, token: &str) -> Result<(TokenHash, Joining), Error> {
    let hash = Token::read(token).ok_or(Error::SpentSlip)?.hash();
    let slip = slips::to_join(&app.database, hash, app.clock.now()).await?;
    Ok((hash, slip.ok_or(Error::SpentSlip)?))
}

fn form_with(
    app: &App,
    token: &str,
    rights: Rights,
    typed: &str,
    chosen: Chosen,
    errors: Vec<FieldError>,
) -> Result<Response, Error> {
    let heading = "Join the club’s pages";
    let page = JoinPage {
        // The page's own address is a secret, and the frame prints it.
        frame: page::frame(&app.context, "/join", heading, !errors.is_empty(), Seen::ByAnybody),
        heading: heading.to_owned(),
        words: words(rights),
        action: format!("/join/{token}"),
        name: Some(judged(form_page::name(typed), &errors)),
        password: judged(form_page::new_password("Choose a password"), &errors),
        phrase: chosen.phrase,
        takes_phrase: chosen.takes_phrase,
        button: "Join",
        errors,
    };
    page::respond(page::status(&page.errors), &page)
}

fn words(rights: Rights) -> Vec<String> {
    let mut words = vec![
        "The secretary lets you in. Choose the name the others know you by, and a password. No e-mail address is needed."
            .to_owned(),
    ];
    if rights != Rights::default() {
        words.push(format!("You join as {}.", super::people::as_a(rights)));
    }
    words
}
