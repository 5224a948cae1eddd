//! Lines on their way out: gathered, and written many at once by a thread of their own.
//!
//! A request then never waits for the disk, and a busy second costs a hundred writes, not one for
//! each line. A killed process loses the lines of its last hundredth of a second. Where nobody reads
//! them, or the disk has no room, lines are dropped and counted: a log may hold up neither a reader
//! nor the stop.

use std::io::{self, ErrorKind, Write};
use std::mem;
use std::sync::mpsc::{self, Receiver};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

use tracing_subscriber::fmt::MakeWriter;

/// How long lines are gathered.
const PAUSE: Duration = Duration::from_millis(10);

/// How long the last lines are waited for at the end.
const LAST: Duration = Duration::from_millis(500);

/// Bytes that may wait. With more, lines are dropped.
const MOST: usize = 8 << 20;

/// Where lines are put.
#[derive(Clone, Debug, Default)]
pub(super) struct Lines(Arc<Shared>);

#[derive(Debug, Default)]
struct Shared {
    waiting: Mutex<Waiting>,
    /// Told when the first line is put, and at the end.
    work: Condvar,
}

#[derive(Debug, Default)]
struct Waiting {
    bytes: Vec<u8>,
    /// Lines that found no room.
    dropped: u64,
    ended: bool,
}

/// The thread that writes. Dropped, it writes the last lines, unless that takes long.
#[derive(Debug)]
pub(super) struct Writing {
    lines: Lines,
    /// Closed once it has ended.
    end: Receiver<()>,
}

/// Lines that never came out.
#[derive(Debug, Default)]
struct Lost {
    /// Of these nobody was told yet.
    untold: u64,
    /// Of these the batch in hand tells, if it comes out.
    told: u64,
}

/// Where the lines go. Each is whole there, or begun and given up.
struct Output<W> {
    output: W,
    /// The last one was begun only.
    half: bool,
}

impl Writing {
    /// Starts writing the lines there. `tell` logs how many were dropped.
    pub(super) fn start(
        lines: &Lines,
        output: impl Write + Send + 'static,
        tell: impl Fn(u64) + Send + 'static,
    ) -> Self {
        let taken = lines.clone();
        let (ending, end) = mpsc::channel();
        thread::spawn(move || {
            taken.write_until_the_end(Output { output, half: false }, tell);
            drop(ending);
        });
        Self { lines: lines.clone(), end }
    }
}

impl Drop for Writing {
    fn drop(&mut self) {
        self.lines.waiting().ended = true;
        self.lines.0.work.notify_one();
        // Held up, the thread goes with the process.
        let _ = self.end.recv_timeout(LAST);
    }
}

impl Lines {
    fn waiting(&self) -> MutexGuard<'_, Waiting> {
        self.0.waiting.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn put(&self, line: &[u8]) {
        let mut waiting = self.waiting();
        if !waiting.has_room() {
            waiting.dropped += 1;
            return;
        }
        let is_first = waiting.bytes.is_empty();
        waiting.bytes.extend_from_slice(line);
        drop(waiting);
        if is_first {
            self.0.work.notify_one();
        }
    }

    fn write_until_the_end(&self, mut output: Output<impl Write>, tell: impl Fn(u64)) {
        let mut bytes = Vec::new();
        let mut lost = Lost::default();
        loop {
            let ended = self.take(&mut bytes, &mut lost);
            if ended && bytes.is_empty() {
                return;
            }
            let told = mem::take(&mut lost.told);
            match output.write_lines(&bytes) {
                0 if lost.untold > 0 && self.waiting().has_room() => {
                    lost.told = mem::take(&mut lost.untold);
                    tell(lost.told);
                }
                0 => {}
                // Nobody is told where nothing comes out: that would be a line to write again.
                dropped => lost.untold += dropped + told,
            }
        }
    }

    /// Takes what waits, once there is something or the end has come; says whether it has.
    fn take(&self, bytes: &mut Vec<u8>, lost: &mut Lost) -> bool {
        bytes.clear();
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
        mem::swap(bytes, &mut waiting.bytes);
        lost.untold += mem::take(&mut waiting.dropped);
        waiting.ended
    }
}

impl Waiting {
    const fn has_room(&self) -> bool {
        self.bytes.len() <= MOST
    }
}

impl<W: Write> Output<W> {
    /// Writes what it can of these lines, and says how many did not come out whole.
    fn write_lines(&mut self, lines: &[u8]) -> u64 {
        if self.half && self.write(b"\n").is_empty() {
            self.half = false;
        }
        let rest = if self.half { lines } else { self.write(lines) };
        if rest.len() < lines.len() {
            self.half =
                lines.get(..lines.len() - rest.len()).is_some_and(|out| !out.ends_with(b"\n"));
        }
        rest.iter().map(|byte| u64::from(*byte == b'\n')).sum()
    }

    /// What is left when it takes no more.
    fn write<'a>(&mut self, mut bytes: &'a [u8]) -> &'a [u8] {
        while !bytes.is_empty() {
            match self.output.write(bytes) {
                Ok(written) if written > 0 => bytes = bytes.get(written..).unwrap_or_default(),
                Err(error) if error.kind() == ErrorKind::Interrupted => {}
                // No room, or standard output is closed.
                _ => break,
            }
        }
        // It gathers nothing that could be lost; were it to, the next batch takes it along.
        let _ = self.output.flush();
        bytes
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
    struct Written(Arc<Mutex<Vec<Vec<u8>>>>);

    impl Write for Written {
        fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
            self.0.lock().unwrap_or_else(PoisonError::into_inner).push(bytes.to_vec());
            Ok(bytes.len())
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    /// Takes so many bytes, and no more until it is given room.
    #[derive(Clone)]
    struct Disk(Arc<Mutex<(Vec<u8>, usize)>>);

    impl Write for Disk {
        fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
            let mut disk = self.0.lock().unwrap_or_else(PoisonError::into_inner);
            let fits = bytes.len().min(disk.1 - disk.0.len());
            if fits == 0 {
                return Err(ErrorKind::StorageFull.into());
            }
            disk.0.extend(bytes.iter().take(fits));
            Ok(fits)
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn a_line_begun_on_a_full_disk_is_given_up_and_counted() {
        let disk = Disk(Arc::new(Mutex::new((Vec::new(), 6))));
        let mut output = Output { output: disk.clone(), half: false };
        assert_eq!(output.write_lines(b"one\ntwo\nthree\n"), 2);
        assert_eq!(output.write_lines(b"four\n"), 1);
        disk.0.lock().unwrap_or_else(PoisonError::into_inner).1 = 100;
        assert_eq!(output.write_lines(b"five\n"), 0);
        let written = disk.0.lock().unwrap_or_else(PoisonError::into_inner).0.clone();
        assert_eq!(written, b"one\ntw\nfive\n");
    }

    #[test]
    fn every_line_is_written_in_order_and_many_at_once() {
        let (lines, output) = (Lines::default(), Written::default());
        let writing = Writing::start(&lines, output.clone(), |_| ());
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
        let (lines, output) = (Lines::default(), Written::default());
        let _writing = Writing::start(&lines, output.clone(), |_| ());
        lines.put(b"alone\n");
        let is_out = || !output.0.lock().unwrap_or_else(PoisonError::into_inner).is_empty();
        let came = (0..500).any(|_| {
            thread::sleep(Duration::from_millis(10));
            is_out()
        });
        assert!(came);
    }
}
