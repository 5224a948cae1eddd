//! A page that is one form: what it is for, its fields, its button.

use askama::Template;
use axum::http::HeaderValue;
use axum::http::header::RETRY_AFTER;
use axum::response::Response;

use super::page::{self, Seen};
use crate::Error;
use crate::rules::auth::name;
use holewright_pages::field::{Field, Kind};
use holewright_pages::layout::Frame;
use holewright_pages::link::Link;
use holewright_pages::{Context, FieldError};

/// Such a page.
#[derive(Template)]
#[template(path = "web/form.html")]
pub(super) struct FormPage {
    pub(super) frame: Frame,
    pub(super) heading: String,
    /// Sentences above the form.
    pub(super) words: Vec<String>,
    pub(super) errors: Vec<FieldError>,
    pub(super) action: String,
    pub(super) fields: Vec<Field>,
    /// Sent along unseen.
    pub(super) known: Vec<(&'static str, String)>,
    /// What was typed elsewhere, and is sent along unseen until there is a page for it again.
    pub(super) carried: Vec<(String, String)>,
    pub(super) button: &'static str,
    /// The button is no invitation: what it does is to be weighed.
    pub(super) is_plain: bool,
    /// Sentences below the form.
    pub(super) after: Vec<String>,
    pub(super) links: Vec<Link>,
    /// What was typed stays here while the reader signs in on another page.
    pub(super) is_signed_out: bool,
}

impl FormPage {
    /// A form at this address.
    pub(super) fn at(
        context: &Context,
        action: &str,
        heading: &str,
        errors: Vec<FieldError>,
        seen: Seen,
    ) -> Self {
        Self {
            frame: page::frame(context, action, heading, !errors.is_empty(), seen),
            heading: heading.to_owned(),
            words: Vec::new(),
            errors,
            action: action.to_owned(),
            fields: Vec::new(),
            known: Vec::new(),
            carried: Vec::new(),
            button: "Send",
            is_plain: false,
            after: Vec::new(),
            links: Vec::new(),
            is_signed_out: false,
        }
    }

    /// Whether it asks for what is never given back.
    fn asks_secret(&self) -> bool {
        let is_secret = |field: &Field| {
            matches!(field.kind, Kind::Secret(_) | Kind::Familiar(_, "one-time-code"))
        };
        self.fields.iter().any(is_secret)
    }

    /// As an answer: 200, or 422 where something is to be put right.
    pub(super) fn answer(mut self) -> Result<Response, Error> {
        let errors = self.errors.clone();
        self.fields = self.fields.into_iter().map(|field| judged(field, &errors)).collect();
        page::respond(page::status(&errors), &self)
    }

    /// What was typed, but for passwords and codes, and why nothing was done.
    ///
    /// # Errors
    /// The same error, where to send it again would not help.
    pub(super) fn refused(mut self, error: Error) -> Result<Response, Error> {
        let Some(seconds) = error.retry_after() else { return Err(error) };
        if let Error::Unavailable(source) | Error::Full(source) = &error {
            tracing::warn!(%source, "a form could not be carried out");
        }
        self.frame.title = format!("Error: {}", self.frame.title);
        self.words.insert(
            0,
            format!(
                "Nothing was done: {error}. What you typed stands below; a password or a code is asked for \
                 once more."
            ),
        );
        let mut response = page::respond(error.status(), &self)?;
        response.headers_mut().insert(RETRY_AFTER, HeaderValue::from(seconds));
        Ok(response)
    }
}

/// The field with what is wrong with it.
pub(super) fn judged(field: Field, errors: &[FieldError]) -> Field {
    field.judged(errors, |_, value| value.to_owned())
}

/// The name that members sign in by. What is far too long for one is not given back.
pub(super) fn name(typed: &str) -> Field {
    let typed = if typed.chars().count() > 2 * name::LONGEST { "" } else { typed };
    let kind = Kind::Familiar(typed.to_owned(), "username");
    Field::new("name", "Your name in the club", "", kind)
}

/// Your present password.
pub(super) fn password(label: &'static str) -> Field {
    Field::new("password", label, "", Kind::Secret("current-password"))
}

/// A password to be.
pub(super) fn new_password(label: &'static str) -> Field {
    let hint = "At least 15 characters, any you like: four or five words in a row do well";
    Field::new("new_password", label, hint, Kind::Secret("new-password"))
}

/// The first code of a second factor that is being set up.
pub(super) fn first_code() -> Field {
    let kind = Kind::Familiar(String::new(), "one-time-code");
    Field::new("code", "Code", "Six digits, as the authenticator shows them now", kind)
}

/// The code of the second factor.
pub(super) fn code() -> Field {
    let hint = "Six digits from your authenticator; or ten, a spare code";
    Field::new("code", "Code", hint, Kind::Familiar(String::new(), "one-time-code"))
}
