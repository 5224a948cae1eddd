//! The last decisions about notes, as the record of acts has them.

use super::Error;
use crate::db::Database;
use crate::rules::auth::{Right, SignedIn};
use crate::rules::clock::UnixSeconds;

/// As many are listed.
pub const MOST: i64 = 100;

/// What the record says was decided: every word of it that the query below asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// A wording is shown.
    Shown,
    /// It went back with what to change.
    ChangeAsked,
    /// It was not taken.
    Declined,
    /// Nothing was found against a note that was reported.
    Settled,
    /// A note was withdrawn by somebody else than its author.
    Withdrawn,
    /// It was handed to an inspector.
    HandedOver,
    /// An inspector turned it back.
    TurnedBack,
    /// A decision was taken back.
    Undone,
}

impl What {
    /// Each with its word in the record.
    const ALL: [(Self, &str); 8] = [
        (Self::Shown, "note-shown"),
        (Self::ChangeAsked, "note-change-asked"),
        (Self::Declined, "note-declined"),
        (Self::Settled, "note-report-settled"),
        (Self::Withdrawn, "note-withdrawn"),
        (Self::HandedOver, "note-handed-over"),
        (Self::TurnedBack, "note-turned-back"),
        (Self::Undone, "note-decision-undone"),
    ];

    /// That of a word of the record.
    #[must_use]
    pub fn read(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|(_, held)| *held == word).map(|(what, _)| what)
    }

    /// Whether whoever did it can take it back within the minute.
    #[must_use]
    pub const fn can_be_undone(self) -> bool {
        !matches!(self, Self::Withdrawn | Self::Undone)
    }
}

/// One decision.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decided {
    /// When.
    pub at: UnixSeconds,
    /// Who decided.
    pub by: String,
    /// What.
    pub what: What,
    /// What its author was told, or what else is recorded.
    pub detail: String,
    /// The note, while it is there.
    pub note: Option<i64>,
    /// Its title, as those who decide have read it.
    pub title: Option<String>,
}

/// The newest decisions, of the notes that this member may see in the queue.
///
/// # Errors
/// The database cannot be read.
pub async fn last(database: &Database, reader: &SignedIn) -> Result<Vec<Decided>, Error> {
    let all = reader.rights.may(Right::Moderate);
    let rows = sqlx::query!(
        r#"SELECT at AS "at!: i64", member_name AS "by!: String", what AS "what!: String",
             detail AS "detail!: String", note AS "note?: i64", title AS "title?: String"
           FROM (
             SELECT act.id, act.at, act.member_name, act.what, act.detail, note.id AS note,
               coalesce(
                 (SELECT title FROM note_version WHERE note_id = note.id AND state <> 'draft'
                  ORDER BY id DESC LIMIT 1),
                 (SELECT substr(words, 1, instr(words, char(10)) - 1) FROM change_asked
                  WHERE note_id = note.id ORDER BY id DESC LIMIT 1)) AS title
             FROM act LEFT JOIN note ON note.id = CAST(substr(act.subject, 6) AS INTEGER)
             WHERE what IN (
               'note-shown', 'note-change-asked', 'note-declined', 'note-report-settled', 'note-withdrawn',
               'note-handed-over', 'note-turned-back', 'note-decision-undone')
               AND (what <> 'note-withdrawn' OR note.withdrawn_by_another = 1)
               AND (?1 OR EXISTS (SELECT 1 FROM note_version
                                  WHERE note_id = note.id AND is_pressure = 1 AND state <> 'draft'))
             ORDER BY act.id DESC LIMIT ?2)"#,
        all,
        MOST
    )
    .fetch_all(&database.readers)
    .await?;
    let decided = rows.into_iter().map(|row| {
        let unknown = || sqlx::Error::Decode(format!("the record has {}", row.what).into());
        Ok(Decided {
            at: row.at,
            by: row.by,
            what: What::read(&row.what).ok_or_else(unknown)?,
            detail: row.detail,
            note: row.note,
            title: row.title,
        })
    });
    decided.collect()
}
