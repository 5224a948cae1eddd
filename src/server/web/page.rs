//! A page of the members' part as an answer: no cache may keep it and no search engine may list it.

use askama::Template;
use axum::body::Body;
use axum::extract::RawQuery;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE, LOCATION, SET_COOKIE};
use axum::http::{HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};

use crate::rules::auth::SignedIn;
use crate::rules::deed::{Deed, Did};
use crate::{App, Error};
use holewright_pages::layout::{DoneWords, Frame, Own, Section};
use holewright_pages::link::Link;
use holewright_pages::{Context, Query};

/// Who sees such a page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Seen {
    /// A member who is signed in, whose own it is.
    ByMember(Own),
    /// Whoever opens it.
    ByAnybody,
}

impl Seen {
    /// This member alone.
    pub(super) fn by(member: &SignedIn) -> Self {
        Self::ByMember(own(member))
    }

    const fn own(self) -> Option<Own> {
        match self {
            Self::ByMember(own) => Some(own),
            Self::ByAnybody => None,
        }
    }
}

/// What stands in the head of a page that is this member's own.
pub(super) fn own(member: &SignedIn) -> Own {
    Own { notes: member.open.all(), members: member.open.slips }
}

/// The same where it is the page of whoever reads it.
pub(super) fn own_of(reader: Option<&SignedIn>) -> Option<Own> {
    reader.map(own)
}

/// The frame of such a page. Its title begins with "Error:" where the form comes back.
pub(super) fn frame(
    context: &Context,
    address: &str,
    title: &str,
    is_rejected: bool,
    seen: Seen,
) -> Frame {
    let title = if is_rejected { format!("Error: {title}") } else { title.to_owned() };
    Frame::at(context, Section::of_club(address), address, &title, "For members of the club.")
        .of_a_mistake()
        .for_reader(seen.own())
}

/// The page with this status.
///
/// # Errors
/// The template cannot be written.
pub(super) fn respond(status: StatusCode, page: &impl Template) -> Result<Response, Error> {
    let body = page.render().map_err(|error| Error::Internal(error.into()))?;
    let mut response = (status, Body::from(body)).into_response();
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static("text/html; charset=utf-8"));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("private, no-store"));
    Ok(response)
}

/// The status of a form's page: as it is opened, or as it comes back to be put right.
pub(super) fn status(errors: &[holewright_pages::FieldError]) -> StatusCode {
    if errors.is_empty() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY }
}

/// Sends the reader on to an address of ours, with GET.
pub(crate) fn see_other(address: &str) -> Response {
    let mut response = StatusCode::SEE_OTHER.into_response();
    let home = HeaderValue::from_static("/");
    let address = HeaderValue::from_str(address).unwrap_or(home);
    response.headers_mut().insert(LOCATION, address);
    response.headers_mut().insert(CACHE_CONTROL, HeaderValue::from_static("private, no-store"));
    response
}

/// Sends the reader on to a page of ours, which says what was done.
pub(crate) fn did(app: &App, address: &str, did: impl Into<Did>) -> Response {
    let mut response = see_other(address);
    let path = address.split(['?', '#']).next().unwrap_or_default();
    if let Some(value) = did.into().cookie(path, &app.base_url) {
        response.headers_mut().append(SET_COOKIE, value);
    }
    response
}

/// What was done, as a page says it.
pub(super) fn words(did: Option<Did>) -> Option<DoneWords> {
    let Did { deed, of } = did?;
    let next = match (deed, of) {
        (Deed::UsedSpareCode, Some(0)) => "None is left: make ten new ones.".to_owned(),
        (Deed::UsedSpareCode, Some(1)) => "One is left.".to_owned(),
        (Deed::UsedSpareCode, Some(left)) => format!("{left} are left."),
        _ => deed.next().to_owned(),
    };
    let (what, next) = match (deed, of) {
        (Deed::SentTips, Some(0)) => {
            let next = "Each of them is among your notes already.";
            ("No tip is sent in.".to_owned(), next.to_owned())
        }
        (Deed::SentTips, Some(1)) => ("One tip is sent in.".to_owned(), next),
        (Deed::SentTips, Some(count)) => (deed.what().replacen("The", &count.to_string(), 1), next),
        _ => (deed.what().to_owned(), next),
    };
    let link = deed.leads_to().map(|(address, words)| Link::new(address, words));
    Some(DoneWords { what, next, link })
}

/// What a page says at its head that was made just now and is shown on it, this once.
pub(super) fn made(what: &str) -> Option<DoneWords> {
    Some(DoneWords { what: what.to_owned(), next: String::new(), link: None })
}

/// What stands in the address of a page under this name.
pub(super) fn asked(query: &RawQuery, name: &str) -> String {
    Query::read(query.0.as_deref().unwrap_or_default()).get(name).to_owned()
}
