//! What can be wrong with a request: one enum, shown as a page or as problem details.
//!
//! The reader gets the kind of trouble and the request's id; what lies behind it goes to the log
//! under that id.

use std::sync::Arc;
use std::time::Duration;

use axum::body::Body;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};

use super::auth::{NoChance, password};
use super::db;
use super::extract::Refusal;
use super::rules::auth::tries::FREE;
use super::rules::limits::Allowance;
use super::rules::notes::remarks::Refused as Remark;
use super::rules::notes::state::Refused as Rule;
use holewright_pages::FieldError;

/// A refusal.
#[derive(Debug, thiserror::Error)]
pub enum Error {
    /// Nothing stands at this address.
    #[error("{0}")]
    NotFound(&'static str),
    /// A report hides the note.
    #[error(
        "this note is hidden until somebody who decides about it has looked whether it could hurt anybody"
    )]
    Hidden,
    /// It takes a member, and nobody is signed in.
    #[error("this is for members: sign in first")]
    Unauthenticated,
    /// The member must set up the second factor before anything else.
    #[error("your rights require a second factor: set it up first")]
    SecondFactorFirst,
    /// The password was not given of late.
    #[error("this asks for your password once more")]
    ProveFirst,
    /// The link on a slip is none, or no longer.
    #[error(
        "this link has been used or is too old, and each works once; if it was you who used it, sign in with the name \
         and the password you chose; if not, ask the secretary for a new slip"
    )]
    SpentSlip,
    /// The body is no form.
    #[error("this address takes a form (application/x-www-form-urlencoded), nothing else")]
    NotAForm,
    /// Too many wrong passwords, from one address or for one name.
    #[error(
        "there were too many wrong tries, of which {FREE} cost no wait; nothing is locked, and you may try \
         again in {}", spoken(*.wait)
    )]
    TooManyTries {
        /// Until the next try.
        wait: Duration,
    },
    /// Every core has been checking passwords for too long.
    #[error("many people are signing in at this moment; try again in a few seconds")]
    Busy,
    /// Forms and their answers take all the memory they may.
    #[error(
        "too many long forms are in hand at this moment, and yours was not taken in; go back, what you typed is \
         still there, and send it again in a few seconds"
    )]
    Crowded,
    /// The member may not do this.
    #[error("{0}")]
    Forbidden(&'static str),
    /// It was changed meanwhile, or cannot be done as things stand.
    #[error("{0}")]
    Conflict(String),
    /// The address answers other methods; `Allow` names them.
    #[error("this address does not take that method; the Allow header names those it takes")]
    MethodNotAllowed,
    /// It would change something, and it comes from another site.
    #[error(
        "this was sent from a page of another site, or by a browser that hides where it came from; nothing \
         was changed: open the page here and send it from there"
    )]
    Foreign,
    /// The request names no host, or more than one.
    #[error(
        "a request names the host it asks, once and in clear (the Host header); this one does not"
    )]
    UnclearHost,
    /// The reader takes no coding of the answer that we have.
    #[error("your program takes neither plain text nor gzip, zstd or brotli (Accept-Encoding)")]
    NoCoding,
    /// The answer has one form, and the reader takes another.
    #[error("this address answers {0}, and the Accept header leaves that out")]
    NotAcceptable(&'static str),
    /// What was asked cannot be read.
    #[error("{}", summary(.0))]
    Invalid(Vec<FieldError>),
    /// The body, or the number of fields, breaks a limit.
    #[error("{0}")]
    Body(Refusal),
    /// The client asks faster than the server answers one client.
    #[error(
        "your address asks for more than this server works out for one ({}); nothing is lost, load this \
         address again in {}", Allowance::default(), seconds(*.wait)
    )]
    TooMany {
        /// Until it may ask again.
        wait: Duration,
    },
    /// The member sends more than one may.
    #[error(
        "that is more than one member may send ({}), and it was not taken; send it once more in {}",
        Allowance::of_a_writer(), seconds(*.wait)
    )]
    TooManyActs {
        /// Until they may send again.
        wait: Duration,
    },
    /// What takes long to make is being made for others.
    #[error(
        "this page takes long to make, and others are being made; ask for it again in a few seconds"
    )]
    Occupied,
    /// The browser has lost its session, and the server could not end it.
    #[error(
        "this browser has forgotten your session, and nobody can go on with it here; but the server could not \
         end it in its own list, where it stands until it ends by itself: sign in again later, and end it on \
         your page under “Where you are signed in” ({0})"
    )]
    GoneHereAlone(#[source] Box<Error>),
    /// It may work a little later.
    #[error("the server cannot do this at the moment; try again in a few seconds")]
    Unavailable(#[source] db::Error),
    /// The disk under the database is full.
    #[error(
        "the server’s disk is full, so nothing can be kept until whoever runs it makes room; pages can be \
         read as before"
    )]
    Full(#[source] db::Error),
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
    pub fn status(&self) -> StatusCode {
        match self {
            Self::NotFound(_) | Self::Hidden => StatusCode::NOT_FOUND,
            Self::Unauthenticated => StatusCode::UNAUTHORIZED,
            Self::Forbidden(_) => StatusCode::FORBIDDEN,
            Self::SecondFactorFirst | Self::ProveFirst => StatusCode::FORBIDDEN,
            Self::SpentSlip | Self::UnclearHost => StatusCode::BAD_REQUEST,
            Self::NotAForm => StatusCode::UNSUPPORTED_MEDIA_TYPE,
            Self::Conflict(_) => StatusCode::CONFLICT,
            Self::MethodNotAllowed => StatusCode::METHOD_NOT_ALLOWED,
            Self::Foreign => StatusCode::FORBIDDEN,
            Self::NoCoding => StatusCode::NOT_ACCEPTABLE,
            Self::NotAcceptable(_) => StatusCode::NOT_ACCEPTABLE,
            Self::Invalid(_) => StatusCode::UNPROCESSABLE_ENTITY,
            Self::Body(refusal) => refusal.status(),
            Self::Unavailable(_) | Self::Stopping | Self::Busy | Self::Crowded | Self::Occupied => {
                StatusCode::SERVICE_UNAVAILABLE
            }
            Self::GoneHereAlone(error) => error.status(),
            Self::Full(_) => StatusCode::INSUFFICIENT_STORAGE,
            Self::TooMany { .. } | Self::TooManyTries { .. } | Self::TooManyActs { .. } => {
                StatusCode::TOO_MANY_REQUESTS
            }
            Self::Internal(_) => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    /// A heading for people.
    #[must_use]
    pub const fn title(&self) -> &'static str {
        match self {
            Self::NotFound(_) => "Nothing here",
            Self::Hidden => "Hidden for now",
            Self::Unauthenticated => "For members",
            Self::SecondFactorFirst => "Second factor first",
            Self::ProveFirst => "Your password once more",
            Self::SpentSlip => "This slip is no longer good",
            Self::NotAForm => "Not a form",
            Self::Forbidden(_) => "Not yours to do",
            Self::Conflict(_) => "Changed meanwhile",
            Self::MethodNotAllowed => "Not done at this address",
            Self::Foreign => "Not from there",
            Self::UnclearHost => "Which host?",
            Self::NoCoding => "Nothing your program can read",
            Self::NotAcceptable(_) => "Another form",
            Self::Invalid(_) => "Not understood",
            Self::Body(_) => "Not taken",
            Self::Unavailable(_) | Self::Stopping | Self::Busy | Self::Crowded | Self::Occupied => {
                "Not just now"
            }
            Self::GoneHereAlone(_) => "Signed out here alone",
            Self::Full(_) => "No room",
            Self::TooManyTries { .. } => "Too many tries",
            Self::TooMany { .. } | Self::TooManyActs { .. } => "Too many at once",
            Self::Internal(_) => "Something went wrong",
        }
    }

    /// In how many seconds it may work, where that is known.
    #[must_use]
    pub fn retry_after(&self) -> Option<u64> {
        match self {
            Self::TooMany { wait } | Self::TooManyTries { wait } | Self::TooManyActs { wait } => {
                Some(whole_seconds(*wait))
            }
            Self::Unavailable(_)
            | Self::Full(_)
            | Self::Stopping
            | Self::Busy
            | Self::Crowded
            | Self::Occupied => Some(5),
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
        match error {
            full if full.is_full() => Self::Full(full),
            passing if passing.is_passing() => Self::Unavailable(passing),
            other => Self::Internal(other.into()),
        }
    }
}

impl From<db::notes::Error> for Error {
    fn from(error: db::notes::Error) -> Self {
        use db::notes::Error as Notes;
        match error {
            Notes::Database(error) => error.into(),
            Notes::Nothing => Self::NotFound("there is no note at this address"),
            Notes::OutOfDate | Notes::TooManyReports => Self::Conflict(error.to_string()),
            Notes::Remark(refused) => match refused {
                Remark::NotYours => Self::NotFound("there is no such remark"),
                Remark::Moderator => Self::Forbidden("a moderator decides it"),
                Remark::Inspector => Self::Forbidden(
                    "what speaks of boilers, steam or pressure is for an inspector to pass",
                ),
                Remark::Own => Self::Forbidden(
                    "the remark is your own: somebody else with the right decides about it",
                ),
                Remark::OwnNote => Self::Forbidden(
                    "nobody decides about the remarks on a note of their own: somebody else with the right does",
                ),
                Remark::Decided
                | Remark::ShownMeanwhile
                | Remark::ManyOnNote
                | Remark::ManyInAll => Self::Conflict(refused.to_string()),
            },
            Notes::Refused(refused) => match refused {
                Rule::NotYours => Self::NotFound("there is no note at this address"),
                Rule::Moderator => Self::Forbidden("a moderator decides it"),
                Rule::Inspector => Self::Forbidden(
                    "what speaks of boilers, steam or pressure is for an inspector to pass",
                ),
                Rule::OwnNote => Self::Forbidden(
                    "the note is your own: somebody else with the right decides, and where the club has \
                     nobody, the secretary gives it",
                ),
                Rule::Author => Self::Forbidden("the note is your own; this is for the others"),
                _ => Self::Conflict(refused.to_string()),
            },
        }
    }
}

impl From<password::Trouble> for Error {
    fn from(trouble: password::Trouble) -> Self {
        match trouble {
            password::Trouble::Busy => Self::Busy,
            password::Trouble::Broken(error) => Self::Internal(error),
        }
    }
}

impl From<NoChance> for Error {
    fn from(error: NoChance) -> Self {
        Self::Internal(error.into())
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

/// In minutes where it is long.
fn spoken(wait: Duration) -> String {
    match whole_seconds(wait) {
        ..=90 => seconds(wait),
        long => format!("{} minutes", long.div_ceil(60)),
    }
}

fn summary(fields: &[FieldError]) -> String {
    let names: Vec<_> = fields.iter().map(|field| field.field).collect();
    format!("to put right: {}", names.join(", "))
}
