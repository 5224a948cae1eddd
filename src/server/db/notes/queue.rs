//! What waits for somebody to decide, and what became of a member's own notes.

use super::read::{self, Note};
use super::{Error, current};
use crate::db::Database;
use crate::rules::auth::{MemberId, Right, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::NoteId;
use crate::rules::notes::state::StandIns;

/// The most notes the queue shows at once.
pub const MOST: i64 = 20;

/// What a member has to look at, and whether somebody else could.
#[derive(Debug)]
pub struct Waiting {
    /// The notes.
    pub notes: Vec<Note>,
    /// Who else there is.
    pub stand_ins: StandIns,
}

/// The notes that a member has to look at: first those that they may show, hidden ones
/// before waiting ones, the first of each author before the second of any, the longest waiting first. All are read as they stand together: one that is
/// withdrawn meanwhile would else stand there with nothing to decide about.
///
/// # Errors
/// The database cannot be read.
pub async fn waiting(database: &Database, reader: &SignedIn) -> Result<Waiting, Error> {
    let may = |right| reader.rights.may(right);
    let (all, inspects) = (may(Right::Moderate), may(Right::Inspect));
    let mut transaction = database.readers.begin().await?;
    let ids = sqlx::query_scalar!(
        r#"SELECT id AS "id!: i64" FROM (
             SELECT note.id, note.author_id AS author, 0 AS place, note.hidden_at AS since,
               shown.is_pressure = 1 OR EXISTS (
                 SELECT 1 FROM safety_report WHERE note_id = note.id AND settled_at IS NULL
                   AND kind <> 'usual') AS is_pressure
             FROM note JOIN note_version AS shown ON shown.id = note.shown_version
             WHERE note.hidden_at IS NOT NULL AND note.withdrawn_at IS NULL
             UNION ALL
             SELECT note.id, note.author_id, 1, version.saved_at, version.is_pressure FROM note_version AS version
             JOIN note ON note.id = version.note_id
             WHERE version.state = 'waiting' AND note.withdrawn_at IS NULL AND note.hidden_at IS NULL)
           WHERE ?1 OR is_pressure = 1
           ORDER BY CASE is_pressure WHEN 1 THEN ?2 ELSE ?1 END DESC, place,
             row_number() OVER (PARTITION BY author, place ORDER BY since, id), since, id
           LIMIT ?3"#,
        all,
        inspects,
        MOST
    )
    .fetch_all(&mut *transaction)
    .await?;
    let mut notes = Vec::new();
    for id in ids {
        notes.extend(read::within(&mut transaction, NoteId(id)).await?);
    }
    let stand_ins = current::stand_ins(&mut transaction, reader.id).await?;
    Ok(Waiting { notes, stand_ins })
}

/// The days that a season of decisions is: what took how long before says little.
const SEASON: UnixSeconds = 90 * DAY;
const DAY: UnixSeconds = 24 * 60 * 60;

/// Within how many days four of five notes were answered of late, from sending in to the decision; none where
/// fewer than five were.
///
/// # Errors
/// The database cannot be read.
pub async fn usual_days(database: &Database, now: UnixSeconds) -> Result<Option<i64>, Error> {
    let since = now - SEASON;
    let waited = sqlx::query_scalar!(
        r#"SELECT max(0, decided_at - saved_at) AS "waited!: i64" FROM note_version
           WHERE decided_at BETWEEN ? AND ? AND state IN ('shown', 'replaced', 'declined')
           ORDER BY 1"#,
        since,
        now
    )
    .fetch_all(&database.readers)
    .await?;
    let fourth_of_five = (waited.len() * 4).div_ceil(5).saturating_sub(1);
    let longest = waited.get(fourth_of_five).filter(|_| waited.len() >= 5);
    Ok(longest.map(|seconds| 1.max((seconds + DAY - 1) / DAY)))
}

/// One of a member's own notes, as their list shows it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Own {
    /// Number.
    pub id: NoteId,
    /// The title of the newest wording.
    pub title: String,
    /// Where the newest wording stands, as the database has it.
    pub state: String,
    /// Why it was declined, or what to change.
    pub reason: String,
    /// When it was last touched.
    pub at: UnixSeconds,
    /// Whether it speaks of boilers, steam or pressure.
    pub is_pressure: bool,
    /// Whether an earlier wording is shown meanwhile.
    pub is_shown: bool,
    /// Whether a report hides it.
    pub is_hidden: bool,
    /// Why it was withdrawn.
    pub withdrawn_why: Option<String>,
}

/// A member's own notes with a smaller number than `before`, newest first.
///
/// # Errors
/// The database cannot be read.
pub async fn own(
    database: &Database,
    MemberId(member): MemberId,
    before: Option<i64>,
    most: i64,
) -> Result<Vec<Own>, Error> {
    let before = before.unwrap_or(i64::MAX);
    let rows = sqlx::query!(
        r#"SELECT note.id, version.title, version.state, version.reason,
             coalesce(version.decided_at, version.saved_at) AS "at!: i64",
             version.is_pressure AS "is_pressure: bool",
             note.shown_version IS NOT NULL AS "is_shown!: bool",
             note.hidden_at IS NOT NULL AS "is_hidden!: bool", note.withdrawn_why
           FROM note JOIN note_version AS version
             ON version.id = (SELECT max(id) FROM note_version WHERE note_id = note.id)
           WHERE note.author_id = ? AND note.id < ? ORDER BY note.id DESC LIMIT ?"#,
        member,
        before,
        most
    )
    .fetch_all(&database.readers)
    .await?;
    Ok(rows
        .into_iter()
        .map(|row| Own {
            id: NoteId(row.id),
            title: row.title,
            state: row.state,
            reason: row.reason,
            at: row.at,
            is_pressure: row.is_pressure,
            is_shown: row.is_shown,
            is_hidden: row.is_hidden,
            withdrawn_why: row.withdrawn_why,
        })
        .collect())
}
