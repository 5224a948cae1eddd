//! One event as one line of JSON: time, level, its fields, and the span it happened in.
//!
//! Written straight into the line: each answer has one, and it must cost less than the answer.

use std::fmt::{self, Debug, Write};

use tracing::field::{Field, Visit};
use tracing::{Event, Subscriber};
use tracing_subscriber::field::RecordFields;
use tracing_subscriber::fmt::format::Writer;
use tracing_subscriber::fmt::time::{FormatTime, SystemTime};
use tracing_subscriber::fmt::{FmtContext, FormatEvent, FormatFields, FormattedFields};
use tracing_subscriber::registry::LookupSpan;

/// Writes the line of an event.
#[derive(Debug)]
pub(super) struct Line;

/// Writes the fields of a span, each as `,"name":value`.
#[derive(Debug)]
pub(super) struct Pairs;

impl<S, N> FormatEvent<S, N> for Line
where
    S: Subscriber + for<'a> LookupSpan<'a>,
    N: for<'a> FormatFields<'a> + 'static,
{
    fn format_event(
        &self,
        context: &FmtContext<'_, S, N>,
        mut line: Writer<'_>,
        event: &Event<'_>,
    ) -> fmt::Result {
        line.write_str("{\"timestamp\":\"")?;
        SystemTime.format_time(&mut line)?;
        line.write_str("\",\"level\":\"")?;
        line.write_str(event.metadata().level().as_str())?;
        line.write_char('"')?;
        Fields::write(&mut line, event)?;
        if let Some(span) = context.lookup_current() {
            line.write_str(",\"span\":{\"name\":")?;
            string(&mut line, span.name())?;
            if let Some(fields) = span.extensions().get::<FormattedFields<N>>() {
                line.write_str(fields)?;
            }
            line.write_char('}')?;
        }
        line.write_str("}\n")
    }
}

impl<'writer> FormatFields<'writer> for Pairs {
    fn format_fields<R: RecordFields>(
        &self,
        mut writer: Writer<'writer>,
        fields: R,
    ) -> fmt::Result {
        Fields::write(&mut writer, fields)
    }
}

struct Fields<'a, 'line> {
    line: &'a mut Writer<'line>,
    result: fmt::Result,
}

impl<'a, 'line> Fields<'a, 'line> {
    fn write(line: &'a mut Writer<'line>, fields: impl RecordFields) -> fmt::Result {
        let mut visitor = Self { line, result: Ok(()) };
        fields.record(&mut visitor);
        visitor.result
    }

    fn pair(&mut self, field: &Field, value: impl FnOnce(&mut Writer<'line>) -> fmt::Result) {
        if self.result.is_err() {
            return;
        }
        self.result = self
            .line
            .write_char(',')
            .and_then(|()| string(self.line, field.name()))
            .and_then(|()| self.line.write_char(':'))
            .and_then(|()| value(self.line));
    }
}

impl Visit for Fields<'_, '_> {
    fn record_f64(&mut self, field: &Field, value: f64) {
        self.pair(field, |line| {
            // JSON has no other floats.
            if value.is_finite() { write!(line, "{value}") } else { line.write_str("null") }
        });
    }

    fn record_i64(&mut self, field: &Field, value: i64) {
        self.pair(field, |line| write!(line, "{value}"));
    }

    fn record_u64(&mut self, field: &Field, value: u64) {
        self.pair(field, |line| write!(line, "{value}"));
    }

    fn record_bool(&mut self, field: &Field, value: bool) {
        self.pair(field, |line| write!(line, "{value}"));
    }

    fn record_str(&mut self, field: &Field, value: &str) {
        self.pair(field, |line| string(line, value));
    }

    fn record_debug(&mut self, field: &Field, value: &dyn Debug) {
        self.pair(field, |line| {
            line.write_char('"')?;
            write!(Escaped(line), "{value:?}")?;
            line.write_char('"')
        });
    }
}

fn string(line: &mut Writer<'_>, text: &str) -> fmt::Result {
    line.write_char('"')?;
    Escaped(line).write_str(text)?;
    line.write_char('"')
}

/// The inside of a JSON string. Control characters of both sorts are escaped, so that a line stays
/// one line and cannot colour a terminal.
struct Escaped<'a, 'line>(&'a mut Writer<'line>);

impl Write for Escaped<'_, '_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        let is_plain = |byte: u8| matches!(byte, b' '..=b'~') && byte != b'"' && byte != b'\\';
        if text.bytes().all(is_plain) {
            return self.0.write_str(text);
        }
        for character in text.chars() {
            match character {
                '"' | '\\' => write!(self.0, "\\{character}")?,
                _ if character.is_control() => write!(self.0, "\\u{:04x}", u32::from(character))?,
                _ => self.0.write_char(character)?,
            }
        }
        Ok(())
    }
}
