//! A time as the pages and files write it: `25 November 2026, 14:05 UTC`, `2026-11-25T03:00:00Z`.

use time::OffsetDateTime;

use crate::rules::clock::UnixSeconds;

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

/// A moment as programs write it (RFC 3339): `2026-11-25T03:00:00Z`.
pub(super) fn moment(at: UnixSeconds) -> String {
    OffsetDateTime::from_unix_timestamp(at).map_or_else(
        |_| String::new(),
        |at| {
            let (year, month, day) = (at.year(), u8::from(at.month()), at.day());
            let (hour, minute, second) = (at.hour(), at.minute(), at.second());
            format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}Z")
        },
    )
}
