//! A client's socket that gives up on a reader who does not read, and lets a writer who was
//! answered early finish long enough to read the answer.

use std::io::{self, IoSlice};
use std::pin::Pin;
use std::task::{Context, Poll, ready};
use std::time::Duration;

use tokio::io::{AsyncRead, AsyncWrite, ReadBuf};
use tokio::net::TcpStream;
use tokio::time::{Instant, Sleep, sleep};

use super::Limits;
use crate::front::middleware::body::Unread;

const SCRATCH_BYTES: usize = 8 * 1024;

/// The socket with its two clocks.
pub(super) struct Socket {
    stream: TcpStream,
    reader: Duration,
    linger: Duration,
    /// Runs while the client makes no room.
    no_room: Option<Pin<Box<Sleep>>>,
    /// Runs once our side is closed.
    leaving: Option<Pin<Box<Sleep>>>,
    /// The client was still sending when our side was closed.
    is_sending: bool,
    /// It may yet send what was refused before it came.
    unread: Unread,
}

impl Socket {
    pub(super) fn new(stream: TcpStream, limits: Limits, unread: Unread) -> Self {
        let Limits { reader, linger, .. } = limits;
        Self { stream, reader, linger, no_room: None, leaving: None, is_sending: false, unread }
    }

    /// Stops the clock if something was written; else lets it run, and at its end resets the
    /// connection, so that the system lets go of the unread rest as well.
    fn with_patience<T>(
        &mut self,
        context: &mut Context<'_>,
        written: Poll<io::Result<T>>,
    ) -> Poll<io::Result<T>> {
        if written.is_ready() {
            self.no_room = None;
            return written;
        }
        let patience = self.reader;
        let clock = self.no_room.get_or_insert_with(|| Box::pin(sleep(patience)));
        ready!(clock.as_mut().poll(context));
        let _ = self.stream.set_zero_linger();
        Poll::Ready(Err(io::ErrorKind::TimedOut.into()))
    }
}

impl AsyncRead for Socket {
    fn poll_read(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
        buffer: &mut ReadBuf<'_>,
    ) -> Poll<io::Result<()>> {
        Pin::new(&mut self.stream).poll_read(context, buffer)
    }
}

impl AsyncWrite for Socket {
    fn poll_write(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
        bytes: &[u8],
    ) -> Poll<io::Result<usize>> {
        let written = Pin::new(&mut self.stream).poll_write(context, bytes);
        self.with_patience(context, written)
    }

    fn poll_write_vectored(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
        pieces: &[IoSlice<'_>],
    ) -> Poll<io::Result<usize>> {
        let written = Pin::new(&mut self.stream).poll_write_vectored(context, pieces);
        self.with_patience(context, written)
    }

    fn is_write_vectored(&self) -> bool {
        self.stream.is_write_vectored()
    }

    fn poll_flush(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.stream).poll_flush(context)
    }

    /// Closes our side. A socket dropped with bytes unread resets the connection, and the client
    /// loses the answer on its way: so what it still sends is taken in for a while.
    fn poll_shutdown(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<io::Result<()>> {
        let this = &mut *self;
        let leaving = match &mut this.leaving {
            Some(leaving) => leaving,
            None => {
                ready!(Pin::new(&mut this.stream).poll_shutdown(context))?;
                this.leaving.insert(Box::pin(sleep(this.linger)))
            }
        };
        let mut scratch = [0; SCRATCH_BYTES];
        while Instant::now() < leaving.deadline() {
            let mut buffer = ReadBuf::new(&mut scratch);
            match Pin::new(&mut this.stream).poll_read(context, &mut buffer) {
                Poll::Ready(Ok(())) if !buffer.filled().is_empty() => this.is_sending = true,
                Poll::Pending if this.is_sending || this.unread.is_told() => {
                    ready!(leaving.as_mut().poll(context));
                }
                // It has closed its side too, or has nothing more to say.
                _ => break,
            }
        }
        Poll::Ready(Ok(()))
    }
}
