//! A finished page, redirect or refusal.

use askama::Template;

/// A finished page, redirect or refusal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// HTTP status.
    pub status: u16,
    /// Headers the page itself decides: content type, location.
    pub headers: Vec<(&'static str, String)>,
    /// The body.
    pub body: String,
}

impl Answer {
    /// A page of HTML with this status.
    pub(super) fn html(status: u16, template: &impl Template) -> Self {
        // Rendering into a `String` cannot fail; were it to, an empty 500 is an honest answer.
        match template.render() {
            Ok(body) => Self { status, headers: content_type("text/html; charset=utf-8"), body },
            Err(_) => Self { status: 500, headers: Vec::new(), body: String::new() },
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
        Self { status, headers: vec![("location", location.to_owned())], body: String::new() }
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
