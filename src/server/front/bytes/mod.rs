//! The bytes of an answer: coded as its reader likes best, kept where every reader gets the same,
//! and not sent at all to a reader who has them.
//!
//! Handlers give the plain body with its tag; [`finish`] does the rest. A handler that says
//! [`Keep`] is asked once, then its answer comes from [`kept`] until [`Generations::changed`](crate::rules::Generations::changed) is called.
//! Leaves out: what stands in the body.

mod accepts;
mod coding;
mod kept;
mod ready;

use std::sync::Arc;

use axum::body::{Body, Bytes, HttpBody, to_bytes};
use axum::extract::{Request, State};
use axum::http::header::{CONTENT_ENCODING, CONTENT_TYPE};
use axum::http::response::Parts;
use axum::http::{HeaderMap, Method, StatusCode};
use axum::middleware::Next;
use axum::response::Response;
use tokio::task::spawn_blocking;

use crate::extract::Personal;
use crate::rules::validator::{Held, Tag};
use crate::rules::{Generation, Keep};
use crate::{App, Error};

pub use accepts::Accepts;
pub use coding::{Coding, Effort, encode};
pub use kept::Kept;
pub use ready::Ready;

/// A body below this fits one packet either way.
const LEAST: usize = 1024;

/// A body above this is sent as it is: coding it would hold too much memory at once.
const MOST: usize = 4 << 20;

/// A passing body up to this is coded where it stands, which takes a millisecond at most. A longer
/// one goes to the blocking pool, so that other readers need not wait for it.
const INLINE: usize = 64 << 10;

/// Refuses a reader who takes none of our codings, before any work is done.
///
/// # Errors
/// That.
pub async fn refuse_unreadable(request: Request, next: Next) -> Result<Response, Error> {
    match Accepts::read(request.headers()).best() {
        Some(_) => Ok(next.run(request).await),
        None => Err(Error::NoCoding),
    }
}

/// Answers from what is kept, or has the answer made, coded and perhaps kept, with every header
/// that stands on it by then.
pub async fn finish(State(app): State<Arc<App>>, mut request: Request, next: Next) -> Response {
    if request.method() != Method::HEAD {
        return answer(&app, request, next).await;
    }
    // Only the whole answer shows how long its coded body is.
    *request.method_mut() = Method::GET;
    ready::head_only(answer(&app, request, next).await)
}

async fn answer(app: &App, mut request: Request, next: Next) -> Response {
    let accepts = Accepts::read(request.headers());
    // Who takes none is refused further in, in plain words.
    let best = accepts.best().unwrap_or(Coding::Identity);
    let is_read = request.method() == Method::GET;
    // Taken away, so that no handler compares its plain tag with the tag of a coded answer.
    let held = if is_read { Held::take(request.headers_mut()) } else { Held::default() };
    // What is for one reader is neither kept nor answered from what is kept.
    let is_for_all = request.extensions().get::<Personal>().is_none();
    let is_keepable = is_read && is_for_all && request.uri().query().unwrap_or("").is_empty();
    if is_keepable
        && accepts.best().is_some()
        && let Some(ready) = app.kept.get(request.uri().path(), best)
    {
        return ready.reply(&held);
    }
    let path = is_keepable.then(|| request.uri().path().to_owned());
    // Before the answer is made: what changes meanwhile makes it old.
    let generation = app.shown.now();
    let mut response = next.run(request).await;
    let keep = response.extensions_mut().remove::<Keep>().and(path);
    let (parts, body) = response.into_parts();
    let keep = keep.filter(|_| parts.status == StatusCode::OK);
    let form = Form::of(&parts.headers);
    if !is_whole(&parts, &body) || (form == Form::AsItIs && keep.is_none()) {
        return ready::unless_held(Response::from_parts(parts, body), &held);
    }
    let body = match to_bytes(body, MOST).await {
        Ok(body) => body,
        Err(error) => {
            // A body in memory cannot fail; were it to, the reader sees an answer cut short.
            tracing::error!(%error, "the body cannot be read");
            return Response::from_parts(parts, Body::empty());
        }
    };
    match keep {
        Some(path) => {
            let made = Made { path, headers: parts.headers, form, body, generation };
            made.keep(&app.kept, &accepts, best).await.reply(&held)
        }
        None => pass(parts, body, &accepts, best, &held).await,
    }
}

/// A plain answer that is to be kept.
struct Made {
    path: String,
    headers: HeaderMap,
    form: Form,
    body: Bytes,
    generation: Generation,
}

impl Made {
    /// Codes the answer with all care and keeps it. One at a time: a page that many readers open
    /// at once is coded once, and never more than one core is busy with this.
    async fn keep(self, kept: &Kept, accepts: &Accepts, best: Coding) -> Arc<Ready> {
        let _turn = kept.turn().await;
        let tag = Tag::of(&self.headers).unwrap_or_else(|| Tag::of_bytes(&self.body));
        if let Some(ready) = kept.renew(&self.path, best, &tag, self.generation) {
            return ready;
        }
        let ready = match self.form {
            Form::AsItIs => Ready::as_it_is(self.headers, &tag, self.body),
            Form::Text => {
                let (coding, body) = coded(self.body, best, Effort::Kept, accepts).await;
                Ready::new(self.headers, &tag, coding, body)
            }
        };
        let ready = Arc::new(ready);
        kept.put(&self.path, best, tag, Arc::clone(&ready), self.generation);
        ready
    }
}

/// Codes an answer that is made for this reader alone.
async fn pass(
    mut parts: Parts,
    plain: Bytes,
    accepts: &Accepts,
    best: Coding,
    held: &Held,
) -> Response {
    let is_short = plain.len() < LEAST && accepts.takes_identity();
    let best = if is_short { Coding::Identity } else { best };
    let tag = Tag::of(&parts.headers).filter(|_| parts.status == StatusCode::OK);
    let (coding, body) = if tag.as_ref().is_some_and(|tag| held.holds(&tag.coded(best.name()))) {
        // It will not be sent, so its bytes do not matter.
        (best, plain)
    } else {
        coded(plain, best, Effort::Passing, accepts).await
    };
    ready::describe(&mut parts.headers, tag.as_ref(), coding, body.len());
    ready::unless_held(Response::from_parts(parts, Body::from(body)), held)
}

/// What can be done with the bytes of a body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Form {
    /// Text, which a coding makes shorter.
    Text,
    /// A picture or the like, packed already: it is sent as it is to every reader.
    AsItIs,
}

impl Form {
    fn of(headers: &HeaderMap) -> Self {
        let kind = headers.get(CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or("");
        let kind = kind.split(';').next().unwrap_or("").trim();
        let is_text = kind.starts_with("text/")
            || kind.ends_with("json")
            || kind.ends_with("xml")
            || kind == "application/javascript";
        if is_text { Self::Text } else { Self::AsItIs }
    }
}

/// A body that is whole in memory, not coded yet and of a sensible length.
fn is_whole(parts: &Parts, body: &Body) -> bool {
    let length = body.size_hint().exact().and_then(|length| usize::try_from(length).ok());
    length.is_some_and(|length| (1..=MOST).contains(&length))
        && !parts.headers.contains_key(CONTENT_ENCODING)
}

/// The body in this coding; the plain one, if that is no longer and may be sent.
async fn coded(plain: Bytes, best: Coding, effort: Effort, accepts: &Accepts) -> (Coding, Bytes) {
    let result = match (best, effort) {
        (Coding::Identity, _) => return (best, plain),
        (_, Effort::Passing) if plain.len() <= INLINE => encode(&plain, best, effort),
        _ => {
            let plain = plain.clone();
            let task = spawn_blocking(move || encode(&plain, best, effort)).await;
            task.unwrap_or_else(|error| Err(error.into()))
        }
    };
    match result {
        Ok(coded) if coded.len() < plain.len() || !accepts.takes_identity() => (best, coded.into()),
        Ok(_) => (Coding::Identity, plain),
        Err(error) => {
            // Plain bytes are an answer all the same.
            tracing::error!(%error, "the body cannot be coded");
            (Coding::Identity, plain)
        }
    }
}
