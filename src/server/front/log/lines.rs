//! Lines on their way out: gathered, and written many at once by a thread of their own.
//!
//! A request then never waits for the disk, and a busy second costs a hundred writes, not one for
//! each line. A killed process loses the lines of its last hundredth of a second.

use std::io::{self, Write};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::{self, JoinHandle};
use std::time::Duration;

use tracing_subscriber::fmt::MakeWriter;

/// How long lines are gathered.
const PAUSE: Duration = Duration::from_millis(10);

/// Bytes that may wait. With more, whoever logs waits until some are out: no line is dropped.
const MOST: usize = 8 << 20;

/// Where lines are put.
#[derive(Clone, Debug, Default)]
pub(super) struct Lines(Arc<Shared>);

#[derive(Debug, Default)]
struct Shared {
    waiting: Mutex<Waiting>,
    /// Told when the first line is put, and at the end.
    work: Condvar,
    /// Told when lines were taken.
    room: Condvar,
}

#[derive(Debug, Default)]
struct Waiting {
    bytes: Vec<u8>,
    ended: bool,
}

/// The thread that writes. Dropped, it writes the last lines and ends.
#[derive(Debug)]
pub(super) struct Writing {
    lines: Lines,
    thread: Option<JoinHandle<()>>,
}

impl Writing {
    /// Starts writing the lines there.
    pub(super) fn start(lines: &Lines, output: impl Write + Send + 'static) -> Self {
        let taken = lines.clone();
        let thread = thread::spawn(move || taken.write_until_the_end(output));
        Self { lines: lines.clone(), thread: Some(thread) }
    }
}

impl Drop for Writing {
    fn drop(&mut self) {
        self.lines.waiting().ended = true;
        self.lines.0.work.notify_one();
        // A thread that panicked has nothing more to write.
        let _ = self.thread.take().map(JoinHandle::join);
    }
}

impl Lines {
    fn waiting(&self) -> MutexGuard<'_, Waiting> {
        self.0.waiting.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn put(&self, line: &[u8]) {
        let mut waiting = self
            .0
            .room
            .wait_while(self.waiting(), |waiting| waiting.bytes.len() > MOST && !waiting.ended)
            .unwrap_or_else(PoisonError::into_inner);
        let is_first = waiting.bytes.is_empty();
        waiting.bytes.extend_from_slice(line);
        drop(waiting);
        if is_first {
            self.0.work.notify_one();
        }
    }

    fn write_until_the_end(&self, mut output: impl Write) {
        let mut bytes = Vec::new();
        loop {
            let waiting = self
                .0
                .work
                .wait_while(self.waiting(), |waiting| waiting.bytes.is_empty() && !waiting.ended)
                .unwrap_or_else(PoisonError::into_inner);
            let (mut waiting, _) = self
                .0
                .work
                .wait_timeout_while(waiting, PAUSE, |waiting| !waiting.ended)
                .unwrap_or_else(PoisonError::into_inner);
            bytes.clear();
            std::mem::swap(&mut bytes, &mut waiting.bytes);
            let ended = waiting.ended;
            drop(waiting);
            self.0.room.notify_all();
            // With standard output closed there is nobody left to tell.
            let _ = output.write_all(&bytes).and_then(|()| output.flush());
            if ended {
                return;
            }
        }
    }
}

impl<'a> MakeWriter<'a> for Lines {
    type Writer = &'a Self;

    fn make_writer(&'a self) -> Self::Writer {
        self
    }
}

impl Write for &Lines {
    fn write(&mut self, line: &[u8]) -> io::Result<usize> {
        self.put(line);
        Ok(line.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Clone, Default)]
    struct Output(Arc<Mutex<Vec<Vec<u8>>>>);

    impl Write for Output {
        fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
            self.0.lock().unwrap_or_else(PoisonError::into_inner).push(bytes.to_vec());
            Ok(bytes.len())
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn every_line_is_written_in_order_and_many_at_once() {
        let (lines, output) = (Lines::default(), Output::default());
        let writing = Writing::start(&lines, output.clone());
        for number in 0..10_000 {
            lines.put(format!("{number}\n").as_bytes());
        }
        drop(writing);
        let writes = output.0.lock().unwrap_or_else(PoisonError::into_inner);
        let expected: Vec<u8> = (0..10_000).flat_map(|n| format!("{n}\n").into_bytes()).collect();
        assert_eq!(writes.concat(), expected);
        assert!(writes.len() < 2_000, "{} writes", writes.len());
    }

    #[test]
    fn a_line_does_not_wait_for_the_next() {
        let (lines, output) = (Lines::default(), Output::default());
        let _writing = Writing::start(&lines, output.clone());
        lines.put(b"alone\n");
        let is_out = || !output.0.lock().unwrap_or_else(PoisonError::into_inner).is_empty();
        let came = (0..500).any(|_| {
            thread::sleep(Duration::from_millis(10));
            is_out()
        });
        assert!(came);
    }
}
