//! One note with everything about it: every wording, correction, verdict and open report.

use sqlx::{Sqlite, Transaction};

use super::Error;
use super::author::Author;
use super::current::subject;
use super::lists::Correction;
use super::remarks::{self, Remark};
use super::verdicts::Verdict;
use super::wordings::{self, WordingRow};
use crate::db::Database;
use crate::rules::auth::MemberId;
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::found::{Found, Sense};
use crate::rules::notes::state::{NoteState, OnItsWay, Subject};
use crate::rules::notes::wording::Wording;
use crate::rules::notes::{NoteId, VersionId};

/// Where a wording stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WordingState {
    /// On its author's desk.
    Draft,
    /// In the queue.
    Waiting,
    /// Seen by readers, unless the note is hidden or withdrawn.
    Shown,
    /// Was shown.
    Replaced,
    /// Not taken.
    Declined,
}

impl WordingState {
    /// The word in the database.
    fn read(word: &str) -> Self {
        match word {
            "waiting" => Self::Waiting,
            "shown" => Self::Shown,
            "replaced" => Self::Replaced,
            "declined" => Self::Declined,
            _ => Self::Draft,
        }
    }
}

/// One wording of a note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Version {
    /// Number.
    pub id: VersionId,
    /// Where it stands.
    pub state: WordingState,
    /// The wording.
    pub wording: Wording,
    /// When it was last saved or sent in.
    pub saved_at: UnixSeconds,
    /// When it was decided about.
    pub decided_at: Option<UnixSeconds>,
    /// Why it was declined, or what to change.
    pub reason: String,
    /// The key of the form it was last kept from.
    pub form_key: String,
    /// Whether the inspector found that it is not about pressure.
    pub is_turned_back: bool,
    /// The small fix of whoever decided, if this is one.
    pub mended: Option<Mended>,
    /// When an inspector read it last and let it stand.
    pub inspected_at: Option<UnixSeconds>,
}

/// Whose small fix a wording is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mended {
    /// The wording of its author's.
    pub from: VersionId,
    /// Who mended it; none where they have left the club.
    pub by: Option<String>,
}

impl Version {
    /// By what a form knows it again.
    #[must_use]
    pub fn mark(&self) -> String {
        self.wording.mark(&self.reason)
    }
}

/// One note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// Number.
    pub id: NoteId,
    /// Whose it is; none where the author has left the club.
    pub author: Option<Author>,
    /// When it was begun.
    pub made_at: UnixSeconds,
    /// When the shown wording was passed.
    pub shown_at: Option<UnixSeconds>,
    /// Why it was withdrawn.
    pub withdrawn: Option<Withdrawn>,
    /// What the open reports are about, where some hide it.
    pub hidden: Option<Subject>,
    /// Every wording, oldest first.
    pub versions: Vec<Version>,
    /// Every correction, newest first; those made before the shown wording spoke of another text.
    pub corrections: Vec<Correction>,
    /// The number of the newest of them, none as 0: a later one has a greater.
    pub last_correction: i64,
    /// Every verdict, newest first.
    pub verdicts: Vec<Judged>,
    /// The open reports, oldest first.
    pub reports: Vec<Report>,
    /// The newest remarks that were not taken back, oldest first.
    pub remarks: Vec<Remark>,
}

/// Why a note was withdrawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Withdrawn {
    /// The reason, as typed.
    pub why: String,
    /// Whether somebody other than its author gave it.
    pub by_another: bool,
}

/// Who sent a report.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Sender {
    /// A member.
    Member(String),
    /// A member who has left the club.
    Former,
    /// The program: it hears pressure in what no inspector has read.
    Program,
}

/// A report of danger.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Report {
    /// Its number: a later one has a greater.
    pub id: i64,
    /// Who sent it.
    pub by: Sender,
    /// What could hurt somebody.
    pub text: String,
}

/// A verdict and whose it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Judged {
    /// Whose.
    pub by: MemberId,
    /// The wording they found it of.
    pub of: VersionId,
    /// What they found.
    pub verdict: Verdict,
    /// Whether that was at another size, with another drill or in another material than the note's.
    pub is_elsewhere: bool,
}

impl Note {
    /// The wording in one of the states a note has at most one of.
    #[must_use]
    pub fn in_state(&self, state: WordingState) -> Option<&Version> {
        self.versions.iter().rev().find(|version| version.state == state)
    }

    /// The wording on its way: on the desk or in the queue.
    #[must_use]
    pub fn on_its_way(&self) -> Option<&Version> {
        self.in_state(WordingState::Draft).or_else(|| self.in_state(WordingState::Waiting))
    }

    /// The corrections of the shown wording, newest first.
    pub fn standing_corrections(&self) -> impl Iterator<Item = &Correction> {
        let shown_at = self.shown_at.unwrap_or(UnixSeconds::MAX);
        self.corrections.iter().filter(move |said| said.made_at >= shown_at)
    }

    /// The verdicts on the shown wording, or those on earlier ones; newest first.
    pub fn verdicts_of(&self, is_shown: bool) -> impl Iterator<Item = &Judged> {
        let shown = self.in_state(WordingState::Shown).map(|version| version.id);
        self.verdicts.iter().filter(move |judged| (Some(judged.of) == shown) == is_shown)
    }

    /// How it stands, as the rules have it.
    #[must_use]
    pub fn state(&self) -> NoteState {
        let on_its_way = self.on_its_way().map(|version| match version.state {
            WordingState::Waiting => OnItsWay::Waiting(version.wording.subject),
            _ => OnItsWay::Draft,
        });
        NoteState {
            on_its_way,
            shown: self.in_state(WordingState::Shown).map(|version| version.wording.subject),
            hidden: self.hidden,
            is_withdrawn: self.withdrawn.is_some(),
        }
    }

    /// Who mended this wording, and the wording of its author's that they mended.
    #[must_use]
    pub fn mended<'a>(&'a self, version: &'a Version) -> Option<(&'a Mended, &'a Version)> {
        let mended = version.mended.as_ref()?;
        let before = self.versions.iter().find(|before| before.id == mended.from)?;
        Some((mended, before))
    }

    /// Whether this member wrote it.
    #[must_use]
    pub fn is_by(&self, member: MemberId) -> bool {
        self.author.as_ref().is_some_and(|author| author.id == member)
    }
}

/// Reads a note.
///
/// # Errors
/// The database cannot be read.
pub async fn note(database: &Database, id: NoteId) -> Result<Option<Note>, Error> {
    within(&mut database.readers.begin().await?, id).await
}

/// Reads a note as it stands beside what else this transaction reads.
pub(super) async fn within(
    transaction: &mut Transaction<'_, Sqlite>,
    id: NoteId,
) -> Result<Option<Note>, Error> {
    let NoteId(number) = id;
    let row = sqlx::query!(
        r#"SELECT note.made_at, note.shown_at, note.withdrawn_why, note.hidden_at,
             note.withdrawn_by_another AS "withdrawn_by_another: bool",
             coalesce((SELECT max(id) FROM correction WHERE note_id = note.id), 0)
               AS "last_correction!: i64",
             member.id AS "author_id?: i64", member.name AS "author_name?: String"
           FROM note LEFT JOIN member ON member.id = note.author_id WHERE note.id = ?"#,
        number
    )
    .fetch_optional(&mut **transaction)
    .await?;
    let Some(row) = row else { return Ok(None) };
    let versions = versions(transaction, id).await?;
    let corrections = sqlx::query_as!(
        Correction,
        "SELECT text, made_at FROM correction WHERE note_id = ? ORDER BY id DESC",
        number
    )
    .fetch_all(&mut **transaction)
    .await?;
    let verdicts = sqlx::query!(
        r#"SELECT member_id, version_id, worked AS "worked: bool", material, size,
             is_elsewhere AS "is_elsewhere: bool" FROM verdict
           WHERE note_id = ?
           ORDER BY made_at DESC, member_id"#,
        number
    )
    .fetch_all(&mut **transaction)
    .await?;
    let reports = sqlx::query!(
        r#"SELECT safety_report.id, kind, member.name AS "by?: String", text
           FROM safety_report LEFT JOIN member ON member.id = member_id
           WHERE note_id = ? AND settled_at IS NULL ORDER BY safety_report.id"#,
        number
    )
    .fetch_all(&mut **transaction)
    .await?;
    let remarks = remarks::of_note(transaction, id).await?;
    let author = row.author_id.zip(row.author_name);
    Ok(Some(Note {
        id,
        author: author.map(|(id, name)| Author { id: MemberId(id), name }),
        made_at: row.made_at,
        shown_at: row.shown_at,
        withdrawn: row
            .withdrawn_why
            .map(|why| Withdrawn { why, by_another: row.withdrawn_by_another }),
        hidden: row.hidden_at.map(|_| subject(reports.iter().any(|report| report.kind != "usual"))),
        versions,
        corrections,
        last_correction: row.last_correction,
        remarks,
        verdicts: verdicts
            .into_iter()
            .map(|row| Judged {
                by: MemberId(row.member_id),
                of: VersionId(row.version_id),
                verdict: Verdict {
                    found: if row.worked { Found::Worked } else { Found::DidNot },
                    material: row.material,
                    size: row.size,
                },
                is_elsewhere: row.is_elsewhere,
            })
            .collect(),
        reports: reports
            .into_iter()
            .map(|row| Report {
                id: row.id,
                by: match (row.kind.as_str(), row.by) {
                    ("unread", _) => Sender::Program,
                    (_, Some(name)) => Sender::Member(name),
                    (_, None) => Sender::Former,
                },
                text: row.text,
            })
            .collect(),
    }))
}

/// Every wording of a note, oldest first.
pub(super) async fn versions(
    transaction: &mut Transaction<'_, Sqlite>,
    note: NoteId,
) -> Result<Vec<Version>, Error> {
    let rows = wordings::of_note(transaction, note).await?;
    rows.into_iter().map(version).collect()
}

fn version(row: WordingRow) -> Result<Version, Error> {
    Ok(Version {
        id: VersionId(row.id),
        state: WordingState::read(&row.state),
        saved_at: row.saved_at,
        decided_at: row.decided_at,
        reason: row.reason.clone(),
        form_key: row.form_key.clone(),
        is_turned_back: row.is_turned_back,
        mended: row
            .mended_from
            .map(|from| Mended { from: VersionId(from), by: row.mended_by.clone() }),
        inspected_at: row.inspected_at,
        wording: wording(row)?,
    })
}

/// The wording that a row holds.
pub(super) fn wording(row: WordingRow) -> Result<Wording, Error> {
    Ok(Wording {
        done: row.done()?,
        subject: subject(row.is_pressure),
        sense: Sense::of(row.is_warning),
        things: row.things()?,
        title: row.title,
        text: row.text,
    })
}
