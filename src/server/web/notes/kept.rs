//! What somebody typed into a small form of a note, where nothing could be done with it just now: they are
//! signed out, the right has gone, too much came at once, the database is busy. The page carries what was
//! typed until it is sent again; nothing is kept here.

use axum::http::HeaderValue;
use axum::http::header::RETRY_AFTER;
use axum::response::Response;

use super::super::form_page::FormPage;
use super::super::page::{Seen, respond};
use crate::rules::auth::SignedIn;
use crate::{App, Error};
use holewright_pages::field::{Field, Kind};

/// A form as it was sent.
pub(super) struct Sent {
    /// Where to.
    pub(super) action: String,
    /// What was typed.
    pub(super) fields: Vec<Field>,
    /// What was sent along unseen.
    pub(super) known: Vec<(&'static str, String)>,
    /// What was typed at others, which is not to be lost with it.
    pub(super) carried: Vec<(String, String)>,
}

impl Sent {
    fn is_empty(&self) -> bool {
        let is_empty = |field: &Field| match &field.kind {
            Kind::Text(typed) | Kind::Words(typed) | Kind::Long(typed) => typed.trim().is_empty(),
            _ => true,
        };
        self.carried.is_empty() && self.fields.iter().all(is_empty)
    }
}

/// The page with what was typed, and why nothing was done.
///
/// # Errors
/// The same error, where nothing was typed that could be lost, or where the fault is ours and the log has
/// to say what it was.
pub(super) fn given_back(
    app: &App,
    by: Option<&SignedIn>,
    error: Error,
    sent: Sent,
) -> Result<Response, Error> {
    if sent.is_empty() || matches!(error, Error::Internal(_)) {
        return Err(error);
    }
    let (status, wait) = (error.status(), error.retry_after());
    let seen = by.map_or(Seen::ByAnybody, Seen::by);
    let mut form = FormPage::at(&app.context, &sent.action, error.title(), Vec::new(), seen);
    form.words = match &error {
        Error::Unauthenticated => {
            form.heading = "You are signed out".to_owned();
            form.is_signed_out = true;
            vec![
                "What you wrote is not lost: it stands below, and nothing of it was sent on. Sign in on \
                 another page, come back to this one, and send it again."
                    .to_owned(),
            ]
        }
        Error::Unavailable(source) | Error::Full(source) => {
            tracing::warn!(%source, "a form could not be carried out");
            vec![format!("Nothing was done: {error}. What you wrote stands below.")]
        }
        _ => vec![format!("Nothing was done: {error}. What you wrote stands below.")],
    };
    form.fields = sent.fields;
    form.known = sent.known;
    form.carried = sent.carried;
    form.button = "Send it again";
    let mut response = respond(status, &form)?;
    if let Some(seconds) = wait {
        response.headers_mut().insert(RETRY_AFTER, HeaderValue::from(seconds));
    }
    Ok(response)
}
