//! Everything that is kept of one member, for that member: what they wrote and did, and what was done
//! to them and their notes. Times are seconds since 1970, UTC.
//!
//! Leaves out the account and its sessions, which have functions of their own; every secret and its
//! hash; and of others their names and words, for those are theirs.

use serde::Serialize;
use sqlx::{Sqlite, Transaction};

use super::notes::wordings::{self, WordingRow};
use super::{Database, Error};
use crate::rules::auth::MemberId;
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::fields::Done;

/// All of it; every list oldest first.
#[derive(Debug, Serialize)]
pub struct OwnData {
    /// Their notes.
    pub notes: Vec<OwnNote>,
    /// What they found of others' notes.
    pub verdicts: Vec<OwnVerdict>,
    /// Their feed, where it has an address.
    pub feed: Option<OwnFeed>,
    /// What they remarked on notes.
    pub remarks: Vec<OwnRemark>,
    /// What they decided about remarks of others.
    pub decided_remarks: Vec<Decision>,
    /// What they reported as dangerous.
    pub reports: Vec<OwnReport>,
    /// What they put above notes.
    pub corrections: Vec<OwnCorrection>,
    /// What they decided about waiting wordings.
    pub decisions: Vec<Decision>,
    /// The reports of others that they settled.
    pub settled_reports: Vec<Settled>,
    /// The acts in the record that are theirs, or were done to them or their notes.
    pub acts: Vec<OwnAct>,
}

/// A note of theirs.
#[derive(Debug, Serialize)]
pub struct OwnNote {
    /// Its number: its address is `/notes/12`.
    pub number: i64,
    /// When it was begun.
    pub made_at: UnixSeconds,
    /// When the shown wording was passed.
    pub shown_at: Option<UnixSeconds>,
    /// When a report hid it, if one does.
    pub hidden_at: Option<UnixSeconds>,
    /// When it was withdrawn.
    pub withdrawn_at: Option<UnixSeconds>,
    /// And why.
    pub withdrawn_why: Option<String>,
    /// Every wording.
    pub wordings: Vec<OwnWording>,
    /// What somebody asked to have changed, and of which words.
    pub changes_asked: Vec<ChangeAsked>,
}

/// What somebody asked to have changed.
#[derive(Debug, Serialize)]
pub struct ChangeAsked {
    #[serde(skip)]
    note: i64,
    /// When.
    pub asked_at: UnixSeconds,
    /// What.
    pub reason: String,
    /// The wording it was asked of, as plain lines.
    pub words: String,
}

/// A wording of it.
#[derive(Debug, Serialize)]
pub struct OwnWording {
    #[serde(skip)]
    note: i64,
    /// `draft`, `waiting`, `shown`, `replaced` or `declined`.
    pub state: String,
    /// Whether it speaks of boilers, steam or pressure.
    pub is_pressure: bool,
    /// Whether it warns.
    pub is_warning: bool,
    /// As typed, like all that follow.
    pub title: String,
    /// Markdown.
    pub text: String,
    /// What was done, a key for each field.
    #[serde(flatten)]
    pub done: Done,
    /// The addresses of the pages it belongs to, without their first slash.
    pub belongs_to: Vec<String>,
    /// When it was begun.
    pub made_at: UnixSeconds,
    /// When it was last saved or sent in.
    pub saved_at: UnixSeconds,
    /// When it was decided about.
    pub decided_at: Option<UnixSeconds>,
    /// What its author was told: why it was declined, or what to change.
    pub reason: String,
}

/// What they found of a note.
#[derive(Debug, Serialize)]
pub struct OwnVerdict {
    /// The note.
    pub note: i64,
    /// Whether it worked.
    pub worked: bool,
    /// In what material, as typed.
    pub material: String,
    /// At what size, as typed.
    pub size: String,
    /// Whether it is of the wording that is shown now, or of an earlier one.
    pub is_of_shown_wording: bool,
    /// When.
    pub made_at: UnixSeconds,
}

/// A feed of their own.
#[derive(Debug, Serialize)]
pub struct OwnFeed {
    /// When it was given its address.
    pub made_at: UnixSeconds,
}

/// A remark on a note.
#[derive(Debug, Serialize)]
pub struct OwnRemark {
    /// The note.
    pub note: i64,
    /// `waiting`, `shown`, `declined` or `withdrawn`.
    pub state: String,
    /// Whether it speaks of boilers, steam or pressure, or stands on a note that does.
    pub is_pressure: bool,
    /// Whether it was made on the wording that is shown now.
    pub is_of_shown_wording: bool,
    /// As typed.
    pub text: String,
    /// When.
    pub made_at: UnixSeconds,
    /// When it was decided about.
    pub decided_at: Option<UnixSeconds>,
    /// Why it was not taken.
    pub reason: String,
}

/// A report of danger.
#[derive(Debug, Serialize)]
pub struct OwnReport {
    /// The note.
    pub note: i64,
    /// As typed.
    pub text: String,
    /// When.
    pub made_at: UnixSeconds,
    /// When somebody had looked.
    pub settled_at: Option<UnixSeconds>,
}

/// A correction.
#[derive(Debug, Serialize)]
pub struct OwnCorrection {
    /// The note.
    pub note: i64,
    /// As typed.
    pub text: String,
    /// When.
    pub made_at: UnixSeconds,
}

/// A decision about a wording that waited.
#[derive(Debug, Serialize)]
pub struct Decision {
    /// The note.
    pub note: i64,
    /// When.
    pub decided_at: Option<UnixSeconds>,
    /// What the author was told; empty where the wording was shown or has been sent in again.
    pub reason: String,
}

/// A report that was settled.
#[derive(Debug, Serialize)]
pub struct Settled {
    /// The note.
    pub note: i64,
    /// When.
    pub settled_at: Option<UnixSeconds>,
}

/// An act in the record.
#[derive(Debug, Serialize)]
pub struct OwnAct {
    /// When.
    pub at: UnixSeconds,
    /// `you`, `another`, or `nobody signed in`.
    pub by: String,
    /// What was done.
    pub what: String,
    /// To what: `note/12`, the member as `member/3`, or `another member`; may be empty.
    pub subject: String,
    /// The rest, but for what it says of others.
    pub detail: String,
}

/// Everything of this member, as it is at one moment.
///
/// # Errors
/// The database cannot be read.
pub async fn of(database: &Database, member: MemberId) -> Result<OwnData, Error> {
    let mut transaction = database.readers.begin().await?;
    Ok(OwnData {
        notes: notes(&mut transaction, member).await?,
        verdicts: verdicts(&mut transaction, member).await?,
        feed: feed(&mut transaction, member).await?,
        remarks: remarks(&mut transaction, member).await?,
        decided_remarks: decided_remarks(&mut transaction, member).await?,
        reports: reports(&mut transaction, member).await?,
        corrections: corrections(&mut transaction, member).await?,
        decisions: decisions(&mut transaction, member).await?,
        settled_reports: settled_reports(&mut transaction, member).await?,
        acts: acts(&mut transaction, member).await?,
    })
}

type Snapshot<'a> = Transaction<'a, Sqlite>;

async fn notes(reading: &mut Snapshot<'_>, member: MemberId) -> Result<Vec<OwnNote>, Error> {
    let rows = sqlx::query!(
        "SELECT id, made_at, shown_at, hidden_at, withdrawn_at, withdrawn_why FROM note
         WHERE author_id = ? ORDER BY id",
        member.0
    )
    .fetch_all(&mut **reading)
    .await?;
    let mut wordings = own_wordings(reading, member).await?.into_iter().peekable();
    let asked = sqlx::query_as!(
        ChangeAsked,
        "SELECT note_id AS note, asked_at, reason, words FROM change_asked
         JOIN note ON note.id = note_id WHERE note.author_id = ? ORDER BY note_id, change_asked.id",
        member.0
    );
    let mut asked = asked.fetch_all(&mut **reading).await?.into_iter().peekable();
    let mut notes = Vec::with_capacity(rows.len());
    for row in rows {
        let of_it = std::iter::from_fn(|| wordings.next_if(|wording| wording.note == row.id));
        notes.push(OwnNote {
            number: row.id,
            made_at: row.made_at,
            shown_at: row.shown_at,
            hidden_at: row.hidden_at,
            withdrawn_at: row.withdrawn_at,
            withdrawn_why: row.withdrawn_why,
            wordings: of_it.collect(),
            changes_asked: std::iter::from_fn(|| asked.next_if(|asked| asked.note == row.id))
                .collect(),
        });
    }
    Ok(notes)
}

/// Every wording of every note of theirs, note by note.
async fn own_wordings(
    reading: &mut Snapshot<'_>,
    member: MemberId,
) -> Result<Vec<OwnWording>, Error> {
    let rows = wordings::of_author(reading, member).await?;
    let wording = |row: WordingRow| {
        Ok(OwnWording {
            done: row.done()?,
            belongs_to: row.things()?.into_iter().map(|thing| thing.id).collect(),
            note: row.note,
            state: row.state,
            is_pressure: row.is_pressure,
            is_warning: row.is_warning,
            title: row.title,
            text: row.text,
            made_at: row.made_at,
            saved_at: row.saved_at,
            decided_at: row.decided_at,
            reason: row.reason,
        })
    };
    rows.into_iter().map(wording).collect()
}

async fn verdicts(reading: &mut Snapshot<'_>, member: MemberId) -> Result<Vec<OwnVerdict>, Error> {
    let found = sqlx::query_as!(
        OwnVerdict,
        r#"SELECT note_id AS "note!: i64", worked AS "worked!: bool", material, size,
             verdict.made_at AS "made_at!: i64",
             version_id IS note.shown_version AS "is_of_shown_wording!: bool"
           FROM verdict JOIN note ON note.id = note_id
           WHERE member_id = ? ORDER BY verdict.made_at, note_id"#,
        member.0
    );
    Ok(found.fetch_all(&mut **reading).await?)
}

async fn feed(reading: &mut Snapshot<'_>, member: MemberId) -> Result<Option<OwnFeed>, Error> {
    let found = sqlx::query_as!(OwnFeed, "SELECT made_at FROM feed WHERE member_id = ?", member.0);
    Ok(found.fetch_optional(&mut **reading).await?)
}

async fn remarks(reading: &mut Snapshot<'_>, member: MemberId) -> Result<Vec<OwnRemark>, Error> {
    let found = sqlx::query_as!(
        OwnRemark,
        r#"SELECT note_id AS note, state, is_pressure AS "is_pressure: bool", text,
             version_id IS note.shown_version AS "is_of_shown_wording!: bool",
             remark.made_at, decided_at, reason
           FROM remark JOIN note ON note.id = note_id WHERE member_id = ? ORDER BY remark.id"#,
        member.0
    );
    Ok(found.fetch_all(&mut **reading).await?)
}

async fn decided_remarks(
    reading: &mut Snapshot<'_>,
    member: MemberId,
) -> Result<Vec<Decision>, Error> {
    let found = sqlx::query_as!(
        Decision,
        "SELECT note_id AS note, decided_at, reason FROM remark
         WHERE decided_by = ? ORDER BY decided_at, id",
        member.0
    );
    Ok(found.fetch_all(&mut **reading).await?)
}

async fn reports(reading: &mut Snapshot<'_>, member: MemberId) -> Result<Vec<OwnReport>, Error> {
    let found = sqlx::query_as!(
        OwnReport,
        "SELECT note_id AS note, text, made_at, settled_at FROM safety_report
         WHERE member_id = ? ORDER BY id",
        member.0
    );
    Ok(found.fetch_all(&mut **reading).await?)
}

async fn corrections(
    reading: &mut Snapshot<'_>,
    member: MemberId,
) -> Result<Vec<OwnCorrection>, Error> {
    let found = sqlx::query_as!(
        OwnCorrection,
        "SELECT note_id AS note, text, made_at FROM correction WHERE made_by = ? ORDER BY id",
        member.0
    );
    Ok(found.fetch_all(&mut **reading).await?)
}

async fn decisions(reading: &mut Snapshot<'_>, member: MemberId) -> Result<Vec<Decision>, Error> {
    let found = sqlx::query_as!(
        Decision,
        "SELECT note_id AS note, decided_at, reason FROM note_version
         WHERE decided_by = ? ORDER BY decided_at, id",
        member.0
    );
    Ok(found.fetch_all(&mut **reading).await?)
}

async fn settled_reports(
    reading: &mut Snapshot<'_>,
    member: MemberId,
) -> Result<Vec<Settled>, Error> {
    let found = sqlx::query_as!(
        Settled,
        "SELECT note_id AS note, settled_at FROM safety_report
         WHERE settled_by = ? ORDER BY settled_at, id",
        member.0
    );
    Ok(found.fetch_all(&mut **reading).await?)
}

/// Of another's act on a note of theirs only a moderator's is told: a verdict and a report are those of
/// whoever sent them. Of their own act on another person, a slip or a right, only that it was done.
async fn acts(reading: &mut Snapshot<'_>, member: MemberId) -> Result<Vec<OwnAct>, Error> {
    let own = format!("member/{}", member.0);
    let found = sqlx::query_as!(
        OwnAct,
        r#"SELECT at,
             CASE WHEN member_id IS ?1 THEN 'you' WHEN member_name = '' THEN 'nobody signed in'
               ELSE 'another' END AS "by!: String",
             what,
             CASE WHEN subject GLOB 'member/*' AND subject <> ?2 THEN 'another member'
               ELSE subject END AS "subject!: String",
             CASE WHEN subject = ?2 OR subject GLOB 'note/*' THEN detail ELSE '' END
               AS "detail!: String"
           FROM act
           WHERE member_id IS ?1 OR subject = ?2
             OR (subject IN (SELECT 'note/' || id FROM note WHERE author_id = ?1)
                 AND what IN ('note-shown', 'note-change-asked', 'note-declined', 'note-corrected',
                              'note-withdrawn', 'note-report-settled', 'note-handed-over',
                              'note-turned-back', 'note-heard', 'note-decision-undone'))
           ORDER BY id"#,
        member.0,
        own
    );
    Ok(found.fetch_all(&mut **reading).await?)
}
