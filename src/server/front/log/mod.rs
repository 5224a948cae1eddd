//! The log: one JSON object a line on standard output, or readable lines if that is a terminal.

mod json;
mod lines;
mod path;

use std::io::{self, IsTerminal, Write};
use std::panic;

use tracing::Level;

use lines::{Lines, Writing};
pub(crate) use path::loggable;

/// The log, running. Dropped, it writes what it still holds.
#[derive(Debug)]
#[must_use]
pub(crate) struct Log(#[expect(dead_code, reason = "held for its end")] Writing);

/// Starts the log and sends panics to it, so that they carry the id of their request.
pub(crate) fn start(level: Level) -> Log {
    let lines = Lines::default();
    let log = tracing_subscriber::fmt().with_max_level(level).with_target(false);
    let log = log.with_writer(lines.clone());
    if io::stdout().is_terminal() {
        log.init();
    } else {
        log.event_format(json::Line).fmt_fields(json::Pairs).init();
    }
    panic::set_hook(Box::new(|panic| tracing::error!(%panic, "panicked")));
    Log(Writing::start(&lines, Unbuffered, |dropped| match dropped {
        1 => tracing::warn!(lines = 1, "1 line dropped"),
        _ => tracing::warn!(lines = dropped, "{} lines dropped", in_thousands(dropped)),
    }))
}

/// Standard output without the standard library's buffer: what it does not take is known at once.
struct Unbuffered;

impl Write for Unbuffered {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        Ok(rustix::io::write(io::stdout(), bytes)?)
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

/// `1204` as `1,204`.
fn in_thousands(number: u64) -> String {
    let digits = number.to_string();
    let mut grouped = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    grouped
}
