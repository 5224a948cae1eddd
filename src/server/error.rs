//! What can be wrong with a request: one enum, shown as a page or as problem details.
//!
//! The reader gets the kind of trouble and the request's id; what lies behind it goes to the log
//! under that id.

use std::sync::Arc;
use std::time::Duration;

use axum::body::Body;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};

use super::db;
use super::middleware::body;
use super::notes::state::Refused as Rule;
use crate::pages::FieldError;

/// A refusal.
#[derive(Debug, thiserror::Error)]
pub enum Error {
    /// Nothing stands at this address.
    #[error("{0}")]
    NotFound(&'static str),
    /// It takes a member, and nobody is signed in.
    #[error("this is for members: sign in first")]
    Unauthenticated,
    /// The member may not do this.
    #[error("this is not yours to do: {0}")]
    Forbidden(&'static str),
    /// It was changed meanwhile, or cannot be done as things stand.
    #[error("{0}")]
    Conflict(String),
    /// The address answers other methods; `Allow` names them.
    #[error("this address answers GET and HEAD, nothing else")]
    MethodNotAllowed,
    /// The reader takes no coding of the answer that we have.
    #[error("your program takes neither plain text nor gzip nor brotli (Accept-Encoding)")]
    NoCoding,
    /// The answer has one form, and the reader takes another.
    #[error("this address answers {0}, and the Accept header leaves that out")]
    NotAcceptable(&'static str),
    /// What was asked cannot be read.
    #[error("{}", summary(.0))]
    Invalid(Vec<FieldError>),
    /// The body, or the number of fields, breaks a limit.
    #[error("{0}")]
    Body(body::Refusal),
    /// The client asks faster than the server answers one client.
    #[error(
        "your address asks for more at once than this server works out for one; nothing is lost, load this \
         address again in {}", seconds(*.wait)
    )]
    TooMany {
        /// Until it may ask again.
        wait: Duration,
    },
    /// It may work a little later.
    #[error("the server cannot do this at the moment; try again in a few seconds")]
    Unavailable(#[source] db::Error),
    /// It will work once the server is back.
    #[error("the server is stopping; try again in a few seconds")]
    Stopping,
    /// It is our fault.
    #[error(
        "the fault is ours, not in what you sent; try again, and tell whoever runs the server if it stays"
    )]
    Internal(#[source] Box<dyn std::error::Error + Send + Sync>),
}

/// The error behind a response, for the middleware that writes its body.
#[derive(Clone, Debug)]
pub(super) struct Refused(pub(super) Arc<Error>);

impl Error {
    /// The HTTP status.
    #[must_use]
    pub const fn status(&self) -> StatusCode {
        match self {
            Self::NotFound(_) => StatusCode::NOT_FOUND,
            Self::Unauthenticated => StatusCode::UNAUTHORIZED,
            Self::Forbidden(_) => StatusCode::FORBIDDEN,
            Self::Conflict(_) => StatusCode::CONFLICT,
            Self::MethodNotAllowed => StatusCode::METHOD_NOT_ALLOWED,
            Self::NoCoding => StatusCode::NOT_ACCEPTABLE,
            Self::NotAcceptable(_) => StatusCode::NOT_ACCEPTABLE,
            Self::Invalid(_) => StatusCode::UNPROCESSABLE_ENTITY,
            Self::Body(refusal) => refusal.status(),
            Self::Unavailable(_) | Self::Stopping => StatusCode::SERVICE_UNAVAILABLE,
            Self::TooMany { .. } => StatusCode::TOO_MANY_REQUESTS,
            Self::Internal(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    /// A heading for people.
    #[must_use]
    pub const fn title(&self) -> &'static str {
        match self {
            Self::NotFound(_) => "Nothing here",
            Self::Unauthenticated => "For members",
            Self::Forbidden(_) => "Not yours to do",
            Self::Conflict(_) => "Changed meanwhile",
            Self::MethodNotAllowed => "This address can only be read",
            Self::NoCoding => "Nothing your program can read",
            Self::NotAcceptable(_) => "Another form",
            Self::Invalid(_) => "Not understood",
            Self::Body(_) => "Not taken",
            Self::Unavailable(_) | Self::Stopping => "Not just now",
            Self::TooMany { .. } => "Too many at once",
            Self::Internal(_) => "Something went wrong",
        }
    }

    /// In how many seconds it may work, where that is known.
    #[must_use]
    pub fn retry_after(&self) -> Option<u64> {
        match self {
            Self::TooMany { wait } => Some(whole_seconds(*wait)),
            Self::Unavailable(_) | Self::Stopping => Some(5),
            _ => None,
        }
    }

    /// The fields that cannot be read, if that is the trouble.
    #[must_use]
    pub fn fields(&self) -> &[FieldError] {
        match self {
            Self::Invalid(fields) => fields,
            _ => &[],
        }
    }
}

impl From<db::Error> for Error {
    fn from(error: db::Error) -> Self {
        if error.is_passing() { Self::Unavailable(error) } else { Self::Internal(error.into()) }
    }
}

impl From<db::notes::Error> for Error {
    fn from(error: db::notes::Error) -> Self {
        use db::notes::Error as Notes;
        match error {
            Notes::Database(error) => error.into(),
            Notes::Nothing => Self::NotFound("no note stands at this address"),
            Notes::OutOfDate => Self::Conflict(error.to_string()),
            Notes::Refused(refused) => match refused {
                Rule::NotYours => Self::NotFound("no note stands at this address"),
                Rule::Moderator => Self::Forbidden("a moderator decides it"),
                Rule::Inspector => Self::Forbidden(
                    "a note on boilers, steam or pressure is for the club’s inspector to pass",
                ),
                Rule::OwnNote => Self::Forbidden(
                    "the note is your own, and somebody else in the club can decide",
                ),
                Rule::Author => Self::Forbidden("the note is your own; this is for the others"),
                _ => Self::Conflict(refused.to_string()),
            },
        }
    }
}

impl IntoResponse for Error {
    /// The status alone; the body is written by [`super::middleware::refusals`], which knows the
    /// request.
    fn into_response(self) -> Response {
        let mut response = Response::new(Body::empty());
        *response.status_mut() = self.status();
        response.extensions_mut().insert(Refused(Arc::new(self)));
        response
    }
}

/// Rounded up: a client that waits so long is let in.
fn whole_seconds(wait: Duration) -> u64 {
    wait.as_millis().div_ceil(1000).try_into().unwrap_or(u64::MAX).max(1)
}

fn seconds(wait: Duration) -> String {
    match whole_seconds(wait) {
        1 => "1 second".to_owned(),
        seconds => format!("{seconds} seconds"),
    }
}

fn summary(fields: &[FieldError]) -> String {
    let names: Vec<_> = fields.iter().map(|field| field.field).collect();
    format!("to put right: {}", names.join(", "))
}
