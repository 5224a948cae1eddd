//! The log: one JSON object a line on standard output, or readable lines if that is a terminal.

mod json;

use std::io::IsTerminal;
use std::panic;

use tracing::Level;

/// Starts the log and sends panics to it, so that they carry the id of their request.
pub(super) fn start(level: Level) {
    let log = tracing_subscriber::fmt().with_max_level(level).with_target(false);
    if std::io::stdout().is_terminal() {
        log.init();
    } else {
        log.event_format(json::Line).fmt_fields(json::Pairs).init();
    }
    panic::set_hook(Box::new(|panic| tracing::error!(%panic, "panicked")));
}
