//! The log: one JSON object a line on standard output, or readable lines if that is a terminal.

mod json;
mod lines;

use std::io::IsTerminal;
use std::panic;

use tracing::Level;

use lines::{Lines, Writing};

/// The log, running. Dropped, it writes what it still holds.
#[derive(Debug)]
#[must_use]
pub(crate) struct Log(#[expect(dead_code, reason = "held for its end")] Option<Writing>);

/// Starts the log and sends panics to it, so that they carry the id of their request.
pub(crate) fn start(level: Level) -> Log {
    let log = tracing_subscriber::fmt().with_max_level(level).with_target(false);
    let writing = if std::io::stdout().is_terminal() {
        log.init();
        None
    } else {
        let lines = Lines::default();
        let writing = Writing::start(&lines, std::io::stdout());
        log.event_format(json::Line).fmt_fields(json::Pairs).with_writer(lines).init();
        Some(writing)
    };
    panic::set_hook(Box::new(|panic| tracing::error!(%panic, "panicked")));
    Log(writing)
}
