//! A body that counts what comes and ends with an error when a limit is broken.

use std::pin::Pin;
use std::sync::{Arc, OnceLock};
use std::task::{Context, Poll};
use std::time::Duration;

use axum::body::{Body, Bytes, HttpBody};
use hyper::body::{Frame, SizeHint};
use tokio::time::{Instant, Sleep, sleep};

use super::{Limits, Unread};
use crate::extract::Refusal;

/// What was found wrong, for the middleware, which sees the answer and not the body.
pub(super) type Finding = Arc<OnceLock<Refusal>>;

/// Whom the body tells of itself.
pub(super) struct Word {
    pub(super) finding: Finding,
    pub(super) unread: Unread,
}

/// The body with its counts.
pub(super) struct Measured {
    body: Body,
    limits: Limits,
    word: Word,
    bytes: u64,
    pieces: usize,
    separators: usize,
    window: Window,
}

/// The time waited for the client, and what came in it. The time a handler takes for its own work
/// is not the client's and does not count.
#[derive(Default)]
struct Window {
    waited: Duration,
    bytes: u64,
    waiting: Option<(Instant, Pin<Box<Sleep>>)>,
}

impl Measured {
    pub(super) fn new(body: Body, limits: Limits, word: Word) -> Self {
        let window = Window::default();
        Self { body, limits, word, bytes: 0, pieces: 0, separators: 0, window }
    }

    /// Counts a piece.
    fn count(&mut self, piece: &Bytes) -> Result<(), Refusal> {
        let length = u64::try_from(piece.len()).unwrap_or(u64::MAX);
        self.bytes = self.bytes.saturating_add(length);
        self.window.bytes = self.window.bytes.saturating_add(length);
        self.pieces += 1;
        self.separators += piece.iter().filter(|byte| **byte == b'&').count();
        if self.bytes > self.limits.bytes {
            Err(Refusal::TooLarge(self.limits.bytes))
        } else if self.pieces > self.limits.pieces {
            Err(Refusal::TooManyPieces)
        } else if self.separators >= self.limits.fields {
            Err(Refusal::TooManyFields)
        } else {
            Ok(())
        }
    }

    /// Ends the body and leaves word of the reason.
    fn refuse(&self, refusal: Refusal) -> Poll<Option<Result<Frame<Bytes>, Refusal>>> {
        Poll::Ready(Some(Err(*self.word.finding.get_or_init(|| refusal))))
    }
}

impl Drop for Measured {
    fn drop(&mut self) {
        if !self.body.is_end_stream() {
            self.word.unread.tell();
        }
    }
}

impl HttpBody for Measured {
    type Data = Bytes;
    type Error = Refusal;

    fn poll_frame(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
    ) -> Poll<Option<Result<Frame<Bytes>, Refusal>>> {
        let this = &mut *self;
        if this.word.finding.get().is_some() {
            return Poll::Ready(None);
        }
        this.window.resume();
        let came = Pin::new(&mut this.body).poll_frame(context);
        if let Poll::Ready(Some(Ok(frame))) = &came
            && let Some(piece) = frame.data_ref()
            && let Err(refusal) = this.count(piece)
        {
            return this.refuse(refusal);
        }
        match came {
            Poll::Ready(None) => Poll::Ready(None),
            Poll::Ready(Some(Err(_))) => this.refuse(Refusal::Broken),
            came if this.window.is_lean(this.limits) => {
                drop(came);
                this.refuse(Refusal::TooSlow)
            }
            Poll::Ready(Some(Ok(frame))) => Poll::Ready(Some(Ok(frame))),
            Poll::Pending => {
                this.window.wait(context, this.limits);
                Poll::Pending
            }
        }
    }

    fn is_end_stream(&self) -> bool {
        self.body.is_end_stream()
    }

    fn size_hint(&self) -> SizeHint {
        self.body.size_hint()
    }
}

impl Window {
    /// Starts to wait for the client, as long as this window lasts.
    fn wait(&mut self, context: &mut Context<'_>, limits: Limits) {
        let mut clock = Box::pin(sleep(limits.window.saturating_sub(self.waited)));
        // Asked once, so that it wakes this task; what it says is read off `waited`.
        let _ = clock.as_mut().poll(context);
        self.waiting = Some((Instant::now(), clock));
    }

    /// The client has sent something, or the window is over.
    fn resume(&mut self) {
        if let Some((since, _clock)) = self.waiting.take() {
            self.waited += since.elapsed();
        }
    }

    /// Whether it is over and has brought too little. If it has brought enough, the next begins.
    fn is_lean(&mut self, limits: Limits) -> bool {
        if self.waited < limits.window {
            return false;
        }
        let is_lean = self.bytes < limits.least;
        (self.waited, self.bytes) = (Duration::ZERO, 0);
        is_lean
    }
}
