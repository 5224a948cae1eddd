//! The fields of a form that was sent.
//!
//! The first filling of a name counts and later ones are dropped, as in an address. A name that the
//! handler does not ask for is never looked at: nothing can be slipped in beside the form.

use std::sync::Arc;

use axum::body::to_bytes;
use axum::extract::{FromRequest, Request};
use axum::http::header::CONTENT_TYPE;

use crate::extract::Refusal;
use crate::rules::auth::Password;
use crate::{App, Error};

/// What a form sends, and nothing else: it needs no leave of another site's page to be asked for.
const KIND: &str = "application/x-www-form-urlencoded";

/// The most bytes that a character takes in a form: four, each as a percent code.
const CHARACTER: u64 = 12;
/// The bytes of a field's name and the signs around it.
const NAME: u64 = 64;
/// The bytes of what a browser adds, and nobody asks for.
const BESIDE: u64 = 1 << 10;
/// The characters of a choice, a number, a mark or a code, which a reader never writes at length.
pub const WORD: usize = 64;

/// The bytes that a form takes of which the fields hold so many characters at most. Much of what is too
/// long still fits, since most letters take fewer: its author is then told by how much.
///
/// # Examples
/// ```
/// use holewright_server::extract::room;
/// assert_eq!(room(&[100, 20]), 1024 + 120 * 12 + 2 * 64);
/// ```
#[must_use]
pub const fn room(longest: &[usize]) -> u64 {
    let (mut left, mut bytes) = (longest, BESIDE);
    while let [first, rest @ ..] = left {
        bytes += *first as u64 * CHARACTER + NAME;
        left = rest;
    }
    bytes
}

/// The fields of a form, as typed.
#[derive(Clone, PartialEq, Eq)]
pub struct Fields(Vec<(String, String)>);

impl Fields {
    /// What was typed for a field, trimmed; empty where nothing was.
    #[must_use]
    pub fn get(&self, name: &str) -> &str {
        self.as_typed(name).trim()
    }

    /// What was typed for a field, with every space and line; empty where the field is missing.
    #[must_use]
    pub fn as_typed(&self, name: &str) -> &str {
        self.0.iter().find(|(held, _)| held == name).map_or("", |(_, value)| value.as_str())
    }

    /// Whether there is such a field, be it empty.
    #[must_use]
    pub fn has(&self, name: &str) -> bool {
        self.0.iter().any(|(held, _)| held == name)
    }

    /// Every field with what was typed in it, in the order of the form.
    pub fn each(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().map(|(name, typed)| (name.as_str(), typed.as_str()))
    }

    /// A password, just as it was typed.
    #[must_use]
    pub fn password(&self, name: &str) -> Password {
        Password::typed(self.as_typed(name))
    }

    /// Whether a box was ticked.
    #[must_use]
    pub fn ticked(&self, name: &str) -> bool {
        !self.as_typed(name).is_empty()
    }
}

impl FromRequest<Arc<App>> for Fields {
    type Rejection = Error;

    async fn from_request(request: Request, _: &Arc<App>) -> Result<Self, Error> {
        let kind = request.headers().get(CONTENT_TYPE).and_then(|kind| kind.to_str().ok());
        let kind = kind.and_then(|kind| kind.split(';').next()).map(str::trim);
        if !kind.is_some_and(|kind| kind.eq_ignore_ascii_case(KIND)) {
            return Err(Error::NotAForm);
        }
        // How much is taken is for the measure around the body to say, route by route; its own word on
        // what was wrong counts before this one.
        let body = to_bytes(request.into_body(), usize::MAX).await;
        let body = body.map_err(|_| Error::Body(Refusal::Broken))?;
        let pairs = form_urlencoded::parse(&body);
        Ok(Self(pairs.map(|(name, value)| (name.into_owned(), value.into_owned())).collect()))
    }
}
