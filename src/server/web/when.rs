//! A time as the pages write it: `25 November 2026, 14:05 UTC`.

use time::OffsetDateTime;

use crate::clock::UnixSeconds;

/// The day.
pub(super) fn day(at: UnixSeconds) -> String {
    match OffsetDateTime::from_unix_timestamp(at) {
        Ok(at) => format!("{} {} {}", at.day(), at.month(), at.year()),
        Err(_) => "long ago".to_owned(),
    }
}

/// The day and the time on it.
pub(super) fn minute(at: UnixSeconds) -> String {
    match OffsetDateTime::from_unix_timestamp(at) {
        Ok(time) => format!("{}, {:02}:{:02} UTC", day(at), time.hour(), time.minute()),
        Err(_) => day(at),
    }
}
