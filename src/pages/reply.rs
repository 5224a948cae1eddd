//! A finished page, redirect or refusal.

use std::borrow::Cow;
use std::str;

use askama::Template;

use super::sentence::join_units;

/// A finished page, redirect or refusal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reply {
    /// HTTP status.
    pub status: u16,
    /// Headers the page itself decides: content type, location.
    pub headers: Vec<(&'static str, String)>,
    /// The body.
    pub body: Body,
}

/// The bytes of an answer: text, or what is none, such as a picture.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Body(Cow<'static, [u8]>);

impl Body {
    /// The bytes.
    #[must_use]
    pub fn as_bytes(&self) -> &[u8] {
        &self.0
    }

    /// The bytes, to be sent.
    #[must_use]
    pub fn into_bytes(self) -> Cow<'static, [u8]> {
        self.0
    }
}

impl From<String> for Body {
    fn from(text: String) -> Self {
        Self(Cow::Owned(text.into_bytes()))
    }
}

impl From<&'static str> for Body {
    fn from(text: &'static str) -> Self {
        Self(Cow::Borrowed(text.as_bytes()))
    }
}

impl From<Vec<u8>> for Body {
    fn from(bytes: Vec<u8>) -> Self {
        Self(Cow::Owned(bytes))
    }
}

impl Reply {
    /// A page of HTML with this status.
    pub(super) fn html(status: u16, template: &impl Template) -> Self {
        // Rendering into a `String` cannot fail; were it to, an empty 500 is an honest answer.
        match template.render() {
            Ok(body) => Self {
                status,
                headers: content_type("text/html; charset=utf-8"),
                body: join_units(&body).into(),
            },
            Err(_) => Self { status: 500, headers: Vec::new(), body: Body::default() },
        }
    }

    /// The page has another address for good.
    pub(super) fn moved(location: &str) -> Self {
        Self::redirect(301, location)
    }

    /// What was asked for stands on another page.
    pub(super) fn see_other(location: &str) -> Self {
        Self::redirect(303, location)
    }

    fn redirect(status: u16, location: &str) -> Self {
        Self { status, headers: vec![("location", location.to_owned())], body: Body::default() }
    }

    /// The body of a page, a table or a drawing; empty where the body is no text.
    ///
    /// # Examples
    /// ```
    /// use holewright_pages::{Reply, Context, answer};
    /// assert!(answer("/threads.csv", "", &Context::default()).text().contains("ba,"));
    /// let picture = Reply { status: 200, headers: Vec::new(), body: vec![0x89, b'P'].into() };
    /// assert_eq!(picture.text(), "");
    /// ```
    #[must_use]
    pub fn text(&self) -> &str {
        str::from_utf8(self.body.as_bytes()).unwrap_or_default()
    }

    /// Where a redirect points.
    #[must_use]
    pub fn location(&self) -> Option<&str> {
        self.header("location")
    }

    /// A header the page decides.
    #[must_use]
    pub fn header(&self, name: &str) -> Option<&str> {
        self.headers.iter().find(|(held, _)| *held == name).map(|(_, value)| value.as_str())
    }

    /// A page was found there, whether or not what was typed on it made sense.
    pub(super) fn is_page(&self) -> bool {
        self.status == 200 || self.is_refusal()
    }

    /// What was typed made no sense; it is kept exactly as typed.
    pub(super) fn is_refusal(&self) -> bool {
        self.status == 422
    }
}

/// The header that says what a body is.
pub(super) fn content_type(value: &str) -> Vec<(&'static str, String)> {
    vec![("content-type", value.to_owned())]
}
