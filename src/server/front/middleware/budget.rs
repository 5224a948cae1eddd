//! How much memory forms and their answers may take, together and for one client: a form is kept in
//! hand until its answer is fetched, and a slow reader fetches it when they like.
//!
//! Members have a part of their own, which no stranger can take up; and a short form finds room beside the
//! long ones of others.
//!
//! What is small is not counted: there are only so many connections. Nor are pages without a form,
//! which are of our own making.

use std::net::IpAddr;
use std::pin::Pin;
use std::sync::Arc;
use std::task::{Context, Poll, ready};

use axum::body::{Body, Bytes, HttpBody};
use axum::extract::{Request, State};
use axum::http::HeaderMap;
use axum::middleware::Next;
use axum::response::Response;
use hyper::body::{Frame, SizeHint};

use crate::App;
use crate::extract::{client, signed_in};
use crate::front::place::Place;
use crate::rules::limits::Client;
use crate::rules::shares::{Share, Shares};

/// Bytes for the forms of all members, and of one.
const MEMBERS: (usize, usize) = (32 << 20, 16 << 20);
/// Bytes for those of everybody else, and of one address.
const STRANGERS: (usize, usize) = (24 << 20, 8 << 20);
/// Bytes for those that are no longer than this where there is no other room, of members and of strangers each,
/// and of one client as much as one such form takes.
const SHORT: usize = 16 << 10;
const SHORT_ONES: (usize, usize) = (8 << 20, SHORT * TIMES);
/// A body up to this is not counted.
const SMALL: u64 = 8 << 10;
/// The bytes that a form takes for each of its own: itself, what is read from it, the page that gives
/// it back with its marks written out, and that page coded.
const TIMES: usize = 10;
/// The bytes of a piece of an answer.
const PIECE: usize = 16 << 10;

/// There is no room for this request: whoever writes the refusal says so.
#[derive(Clone, Copy, Debug)]
pub struct OverBudget;

/// What there is, in its parts.
#[derive(Debug)]
pub struct InHand {
    members: Shares,
    short_of_members: Shares,
    strangers: Shares,
    short: Shares,
}

impl Default for InHand {
    fn default() -> Self {
        let of = |(all, each)| Shares::of(all, each);
        Self {
            members: of(MEMBERS),
            short_of_members: of(SHORT_ONES),
            strangers: of(STRANGERS),
            short: of(SHORT_ONES),
        }
    }
}

impl InHand {
    /// A share for a form of this length; none where there is no room for it.
    fn take(&self, client: Option<Client>, length: u64) -> Option<Share> {
        let length = usize::try_from(length).unwrap_or(usize::MAX);
        let amount = length.saturating_mul(TIMES);
        let (long, short) = match client {
            Some(Client::Member(_)) => (&self.members, &self.short_of_members),
            _ => (&self.strangers, &self.short),
        };
        let share = long.take(client, amount);
        share.or_else(|| if length <= SHORT { short.take(client, amount) } else { None })
    }
}

/// Whose form it is: a member's, wherever they sit, or one of an address.
async fn sender(app: &App, headers: &HeaderMap, address: Option<IpAddr>) -> Option<Client> {
    // Where the database cannot be read nothing can be kept either: one is a stranger like the others.
    if let Ok(Some(member)) = signed_in(headers, app).await {
        return Some(Client::Member(member.id));
    }
    address.map(Client::from)
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
    let address = client::of(&request, &app.config.trusted_proxy);
    let client = sender(&app, request.headers(), address).await;
    let Some(mut share) = app.in_hand.take(client, length) else {
        request.extensions_mut().insert(OverBudget);
        return next.run(request).await;
    };
    let response = next.run(request).await;
    let length =
        response.body().size_hint().exact().and_then(|length| usize::try_from(length).ok());
    if let Some(length) = length {
        share.becomes(length);
    }
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
