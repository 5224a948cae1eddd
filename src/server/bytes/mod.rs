//! The bytes of an answer: coded as its reader likes best, kept where every reader gets the same,
//! and not sent at all to a reader who has them.
//!
//! Handlers give the plain body with its tag; [`finish`] does the rest. A handler that says
//! [`Keep`] is asked once, then its answer comes from [`kept`] until [`Kept::changed`] is called.
//! Leaves out: what stands in the body, and the bodies of refusals, which are small and not coded.

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

use super::validator::{Held, Tag};
use super::{App, Error};

pub use accepts::Accepts;
pub use coding::{Coding, Effort, encode};
pub use kept::{Generation, Kept};
pub use ready::Ready;

/// Put on a response by its handler: the answer at this path is the same for every reader, and
/// only so many paths say so. Never for an answer that hangs on a cookie or a query.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Keep;

/// A body below this fits one packet either way.
const LEAST: usize = 1024;

/// A body above this is sent as it is: coding it would hold too much memory at once.
const MOST: usize = 4 << 20;

/// A passing body up to this is coded where it stands, which takes a millisecond at most. A longer
/// one goes to the blocking pool, so that other readers need not wait for it.
const INLINE: usize = 64 << 10;

/// Answers from what is kept, or has the answer made, coded and perhaps kept.
///
/// # Errors
/// The reader takes none of our codings, or the coding failed.
pub async fn finish(
    State(app): State<Arc<App>>,
    mut request: Request,
    next: Next,
) -> Result<Response, Error> {
    let accepts = Accepts::read(request.headers());
    let best = accepts.best().ok_or(Error::NoCoding)?;
    let is_read = matches!(*request.method(), Method::GET | Method::HEAD);
    // Taken away, so that no handler compares its plain tag with the tag of a coded answer.
    let held = Held::take(request.headers_mut());
    let held = if is_read { held } else { Held::default() };
    let path = Some(request.uri()).filter(|uri| is_read && uri.query().unwrap_or("").is_empty());
    if let Some(ready) = path.and_then(|uri| app.kept.get(uri.path(), best)) {
        return Ok(ready.reply(&held));
    }
    let path = path.map(|uri| uri.path().to_owned());
    // Before the answer is made: what changes meanwhile makes it old.
    let generation = app.kept.generation();
    let mut response = next.run(request).await;
    let keep = response.extensions_mut().remove::<Keep>().and(path);
    let (parts, body) = response.into_parts();
    if !is_codable(&parts, &body) {
        return Ok(ready::unless_held(Response::from_parts(parts, body), &held));
    }
    let body = to_bytes(body, MOST).await.map_err(|error| Error::Internal(error.into()))?;
    match keep.filter(|_| parts.status == StatusCode::OK) {
        Some(path) => {
            let made = Made { path, headers: parts.headers, body, generation };
            Ok(made.keep(&app.kept, &accepts, best).await?.reply(&held))
        }
        None => pass(parts, body, &accepts, best, &held).await,
    }
}

/// A plain answer that is to be kept.
struct Made {
    path: String,
    headers: HeaderMap,
    body: Bytes,
    generation: Generation,
}

impl Made {
    /// Codes the answer with all care and keeps it. One at a time: a page that many readers open
    /// at once is coded once, and never more than one core is busy with this.
    async fn keep(self, kept: &Kept, accepts: &Accepts, best: Coding) -> Result<Arc<Ready>, Error> {
        let _turn = kept.turn().await;
        let tag = Tag::of(&self.headers).unwrap_or_else(|| Tag::of_bytes(&self.body));
        if let Some(ready) = kept.renew(&self.path, best, &tag, self.generation) {
            return Ok(ready);
        }
        let plain = self.body.clone();
        let (coding, body) = match best {
            Coding::Identity => (best, self.body),
            _ => {
                let coded = blocking(plain.clone(), best, Effort::Kept).await?;
                shorter(plain, coded, best, accepts)
            }
        };
        let ready = Arc::new(Ready::new(self.headers, &tag, coding, body));
        kept.put(&self.path, best, tag, Arc::clone(&ready), self.generation);
        Ok(ready)
    }
}

/// Codes an answer that is made for this reader alone.
async fn pass(
    mut parts: Parts,
    plain: Bytes,
    accepts: &Accepts,
    best: Coding,
    held: &Held,
) -> Result<Response, Error> {
    let best =
        if plain.len() < LEAST && accepts.takes_identity() { Coding::Identity } else { best };
    let tag = Tag::of(&parts.headers);
    let is_held = tag.as_ref().is_some_and(|tag| held.holds(&tag.coded(best)));
    let (coding, body) = match best {
        Coding::Identity => (best, plain),
        // It will not be sent, so its bytes do not matter.
        _ if is_held && parts.status == StatusCode::OK => (best, plain),
        _ if plain.len() <= INLINE => {
            let coded = encode(&plain, best, Effort::Passing).map_err(internal)?;
            shorter(plain, coded.into(), best, accepts)
        }
        _ => {
            let coded = blocking(plain.clone(), best, Effort::Passing).await?;
            shorter(plain, coded, best, accepts)
        }
    };
    ready::describe(&mut parts.headers, tag.as_ref(), coding, body.len());
    Ok(ready::unless_held(Response::from_parts(parts, Body::from(body)), held))
}

/// A body that is text, whole in memory, not coded yet and of a sensible length.
fn is_codable(parts: &Parts, body: &Body) -> bool {
    let kind = parts.headers.get(CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or("");
    let kind = kind.split(';').next().unwrap_or("").trim();
    let is_text = kind.starts_with("text/")
        || kind.ends_with("json")
        || kind.ends_with("xml")
        || kind == "application/javascript";
    let length = body.size_hint().exact().and_then(|length| usize::try_from(length).ok());
    is_text
        && length.is_some_and(|length| (1..=MOST).contains(&length))
        && !parts.headers.contains_key(CONTENT_ENCODING)
}

/// The coded body, unless the plain one is no longer and may be sent.
fn shorter(plain: Bytes, coded: Bytes, coding: Coding, accepts: &Accepts) -> (Coding, Bytes) {
    if coded.len() >= plain.len() && accepts.takes_identity() {
        (Coding::Identity, plain)
    } else {
        (coding, coded)
    }
}

async fn blocking(plain: Bytes, coding: Coding, effort: Effort) -> Result<Bytes, Error> {
    let coded = tokio::task::spawn_blocking(move || encode(&plain, coding, effort)).await;
    Ok(coded.map_err(|error| Error::Internal(error.into()))?.map_err(internal)?.into())
}

fn internal(error: std::io::Error) -> Error {
    Error::Internal(error.into())
}
