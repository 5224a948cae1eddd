//! What an archive says of itself: its first part, as JSON.

use serde::{Deserialize, Serialize};

use crate::db::copy::Contents;
use crate::rules::clock::UnixSeconds;

/// The layout described here. A reader refuses a later one.
pub const FORM: u32 = 1;

/// What is in an archive.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Manifest {
    /// How the archive is laid out.
    pub form: u32,
    /// The version of the program that saved it.
    pub program: String,
    /// The version of SQLite in that program.
    pub sqlite: String,
    /// When it was saved, in UTC.
    pub saved_at: String,
    /// The database's schema.
    pub schema: i64,
    /// How many members it holds.
    pub members: i64,
    /// How many notes it holds.
    pub notes: i64,
    /// Whether it was saved as one of so many, and goes once there are as many newer ones.
    #[serde(default, skip_serializing_if = "is_false")]
    pub is_counted: bool,
    /// The other parts, in their order.
    pub parts: Vec<Part>,
}

/// One part of an archive.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Part {
    /// Its name.
    pub name: String,
    /// Its size.
    pub bytes: u64,
    /// SHA-256, in hexadecimal.
    pub sha256: String,
    /// Whether a program that does not know it may put the others back without it.
    #[serde(default, skip_serializing_if = "is_false")]
    pub may_be_left_out: bool,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "as serde calls it")]
fn is_false(flag: &bool) -> bool {
    !flag
}

impl Manifest {
    /// What the database in the archive must be found to hold.
    #[must_use]
    pub const fn contents(&self) -> Contents {
        Contents { schema: self.schema, members: self.members, notes: self.notes }
    }
}

/// A time as people and programs write it: `2026-11-25T03:15:00Z`.
#[must_use]
pub fn utc(seconds: UnixSeconds) -> String {
    let at = time::OffsetDateTime::from_unix_timestamp(seconds)
        .unwrap_or(time::OffsetDateTime::UNIX_EPOCH);
    let (year, month, day) = (at.year(), u8::from(at.month()), at.day());
    let (hour, minute, second) = at.to_hms();
    format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}Z")
}
