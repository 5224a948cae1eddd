//! How much memory forms and their answers may take, together and for one client: a form is kept in
//! hand until its answer is fetched, and a slow reader fetches it when they like.
//!
//! What is small is not counted: there are only so many connections. Nor are pages without a form,
//! which are of our own making.

use std::pin::Pin;
use std::sync::Arc;
use std::task::{Context, Poll, ready};

use axum::body::{Body, Bytes, HttpBody};
use axum::extract::{Request, State};
use axum::middleware::Next;
use axum::response::Response;
use hyper::body::{Frame, SizeHint};

use crate::App;
use crate::extract::client;
use crate::front::place::Place;
use crate::rules::limits::Client;
use crate::rules::shares::{Share, Shares};

/// Bytes for all of them.
const ALL: usize = 64 << 20;
/// Bytes for those of one client.
const EACH: usize = 16 << 20;
/// A body up to this is not counted.
const SMALL: u64 = 8 << 10;
/// The bytes that a form takes for each of its own: itself, what is read from it, the page that gives
/// it back with its marks written out, and that page coded.
const TIMES: u64 = 10;
/// The bytes of a piece of an answer.
const PIECE: usize = 16 << 10;

/// There is no room for this request: whoever writes the refusal says so.
#[derive(Clone, Copy, Debug)]
pub struct OverBudget;

/// What there is.
#[must_use]
pub fn usual() -> Shares {
    Shares::of(ALL, EACH)
}

/// Holds a share for a form as long as it or its answer takes memory.
pub async fn hold(State(app): State<Arc<App>>, mut request: Request, next: Next) -> Response {
    let most = app.limits.body.taking(Place::of(&request).takes()).bytes;
    let size = request.body().size_hint();
    // Longer than it may be it is not taken in at all.
    let length = size.upper().unwrap_or(most).min(most);
    if length <= SMALL || size.lower() > most {
        return next.run(request).await;
    }
    let client = client::of(&request, &app.config.trusted_proxy).map(Client::from);
    let amount = usize::try_from(length.saturating_mul(TIMES)).unwrap_or(usize::MAX);
    let Some(mut share) = app.in_hand.take(client, amount) else {
        request.extensions_mut().insert(OverBudget);
        return next.run(request).await;
    };
    let response = next.run(request).await;
    let length =
        response.body().size_hint().exact().and_then(|length| usize::try_from(length).ok());
    share.becomes(length.unwrap_or(amount));
    response.map(|body| Body::new(Sent { body, left: Bytes::new(), _share: share }))
}

/// An answer with its share, which is given back once it is fetched or given up. It goes out in
/// pieces: given whole to the connection it would seem to be gone while it waits there.
struct Sent {
    body: Body,
    /// What came of the body and did not go out yet.
    left: Bytes,
    _share: Share,
}

impl HttpBody for Sent {
    type Data = Bytes;
    type Error = axum::Error;

    fn poll_frame(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
    ) -> Poll<Option<Result<Frame<Bytes>, axum::Error>>> {
        let this = &mut *self;
        if this.left.is_empty() {
            let frame = match ready!(Pin::new(&mut this.body).poll_frame(context)) {
                Some(Ok(frame)) => frame,
                other => return Poll::Ready(other),
            };
            match frame.into_data() {
                Ok(data) => this.left = data,
                Err(frame) => return Poll::Ready(Some(Ok(frame))),
            }
        }
        let piece = this.left.split_to(this.left.len().min(PIECE));
        Poll::Ready(Some(Ok(Frame::data(piece))))
    }

    fn is_end_stream(&self) -> bool {
        self.left.is_empty() && self.body.is_end_stream()
    }

    fn size_hint(&self) -> SizeHint {
        let left = u64::try_from(self.left.len()).unwrap_or(u64::MAX);
        match self.body.size_hint().exact() {
            Some(rest) => SizeHint::with_exact(rest.saturating_add(left)),
            None => SizeHint::default(),
        }
    }
}
