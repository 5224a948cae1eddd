//! What waits for somebody to decide, and what became of a member's own notes.

use sqlx::{Sqlite, Transaction};

use super::read::{self, Note};
use super::{Error, current};
use crate::db::Database;
use crate::rules::auth::{MemberId, Right, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::NoteId;
use crate::rules::notes::state::StandIns;

/// The most notes the queue shows at once.
pub const MOST: usize = 20;
/// As many of one kind, reported ones or those that wait, stand together before the other kind has its turn.
const TURN: i64 = 10;

/// Which of what waits is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The notes from this place on.
    From(usize),
    /// Those among which this note stands.
    With(NoteId),
}

/// A note that somebody has to look at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Line {
    /// Its number.
    pub id: NoteId,
    /// Whether a report hides it.
    pub is_reported: bool,
    /// Whether no wording of it was shown before.
    pub is_new: bool,
    /// Whether it is an inspector's.
    pub is_pressure: bool,
    /// Since when it waits, or is hidden.
    pub since: UnixSeconds,
}

/// What was asked of an earlier wording.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Asked {
    /// What.
    pub reason: String,
    /// When.
    pub at: UnixSeconds,
    /// By whom; none where they have left the club.
    pub by: Option<String>,
    /// The wording it was asked of, as plain lines.
    pub words: String,
}

/// A note with what is known of it in the queue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Queued {
    /// Its line.
    pub line: Line,
    /// The note.
    pub note: Note,
    /// What was asked of it before, where it came back.
    pub asked: Option<Asked>,
    /// An earlier note that it is like: number and title.
    pub like: Option<(i64, String)>,
}

/// What a member has to look at, and whether somebody else could.
#[derive(Debug)]
pub struct Waiting {
    /// All of it.
    pub lines: Vec<Line>,
    /// The place of the first note that is shown.
    pub from: usize,
    /// The notes that are shown.
    pub notes: Vec<Queued>,
    /// Who else there is.
    pub stand_ins: StandIns,
}

/// The notes that a member has to look at: first those that they may show; ten that are hidden and ten that wait
/// by turns, so that neither keeps the other away; of each the first of each author before the second of any, the
/// longest waiting first. All are read as they stand together: one that is withdrawn meanwhile would else stand
/// there with nothing to decide about.
///
/// # Errors
/// The database cannot be read.
pub async fn waiting(database: &Database, reader: &SignedIn, part: Part) -> Result<Waiting, Error> {
    let may = |right| reader.rights.may(right);
    let (all, inspects) = (may(Right::Moderate), may(Right::Inspect));
    let mut transaction = database.readers.begin().await?;
    let rows = sqlx::query!(
        r#"SELECT id AS "id!: i64", place AS "place!: i64", since AS "since!: i64",
             is_pressure AS "is_pressure!: bool", is_new AS "is_new!: bool" FROM (
             SELECT *, CASE is_pressure WHEN 1 THEN ?2 ELSE ?1 END AS is_theirs,
               row_number() OVER (PARTITION BY author, place ORDER BY since, id) AS turn
             FROM (
               SELECT note.id, note.author_id AS author, 0 AS place, note.hidden_at AS since,
                 shown.is_pressure = 1 OR EXISTS (
                   SELECT 1 FROM safety_report WHERE note_id = note.id AND settled_at IS NULL
                     AND kind <> 'usual') AS is_pressure, 0 AS is_new
               FROM note JOIN note_version AS shown ON shown.id = note.shown_version
               WHERE note.hidden_at IS NOT NULL AND note.withdrawn_at IS NULL
               UNION ALL
               SELECT note.id, note.author_id, 1, version.saved_at, version.is_pressure,
                 note.shown_version IS NULL
               FROM note_version AS version JOIN note ON note.id = version.note_id
               WHERE version.state = 'waiting' AND note.withdrawn_at IS NULL AND note.hidden_at IS NULL)
             WHERE ?1 OR is_pressure = 1)
           ORDER BY is_theirs DESC,
             (row_number() OVER (PARTITION BY is_theirs, place ORDER BY turn, since, id) - 1) / ?3,
             place, turn, since, id"#,
        all,
        inspects,
        TURN
    )
    .fetch_all(&mut *transaction)
    .await?;
    let lines = rows.into_iter().map(|row| Line {
        id: NoteId(row.id),
        is_reported: row.place == 0,
        is_new: row.is_new,
        is_pressure: row.is_pressure,
        since: row.since,
    });
    let lines: Vec<Line> = lines.collect();
    let place = match part {
        Part::From(place) => Some(place).filter(|place| *place < lines.len()),
        Part::With(id) => lines.iter().position(|line| line.id == id),
    };
    let from = place.map_or(0, |place| place - place % MOST);
    let mut notes = Vec::new();
    for line in lines.iter().skip(from).take(MOST).copied() {
        let Some(note) = read::within(&mut transaction, line.id).await? else { continue };
        let (asked, like) = beside(&mut transaction, line.id).await?;
        notes.push(Queued { line, note, asked, like });
    }
    let stand_ins = current::stand_ins(&mut transaction, reader.id).await?;
    Ok(Waiting { lines, from, notes, stand_ins })
}

/// What was asked of what waits before any wording was shown since, and which note it is like.
async fn beside(
    transaction: &mut Transaction<'_, Sqlite>,
    NoteId(note): NoteId,
) -> Result<(Option<Asked>, Option<(i64, String)>), Error> {
    let asked = sqlx::query_as!(
        Asked,
        r#"SELECT reason, asked_at AS at, words,
             (SELECT name FROM member WHERE member.id = asked_by) AS "by?: String"
           FROM change_asked WHERE note_id = ?1 AND asked_at > coalesce(
             (SELECT max(decided_at) FROM note_version
              WHERE note_id = ?1 AND state IN ('shown', 'replaced')), 0)
           ORDER BY id DESC LIMIT 1"#,
        note
    )
    .fetch_optional(&mut **transaction)
    .await?;
    Ok((asked, like_of(transaction, note).await?))
}

async fn like_of(
    transaction: &mut Transaction<'_, Sqlite>,
    note: i64,
) -> Result<Option<(i64, String)>, Error> {
    let like = sqlx::query!(
        r#"SELECT other.id AS "id!: i64", version.title AS "title!: String"
           FROM note_version AS waits
           JOIN note AS other ON other.id = waits.like_note
           JOIN note_version AS version ON version.id = coalesce(other.shown_version,
             (SELECT max(id) FROM note_version WHERE note_id = other.id AND state = 'waiting'))
           WHERE waits.note_id = ? AND waits.state = 'waiting' AND other.withdrawn_at IS NULL"#,
        note
    )
    .fetch_optional(&mut **transaction)
    .await?;
    Ok(like.map(|like| (like.id, like.title)))
}

/// The earlier note that what waits of this one is like: number and title.
///
/// # Errors
/// The database cannot be read.
pub async fn like(
    database: &Database,
    NoteId(note): NoteId,
) -> Result<Option<(i64, String)>, Error> {
    let mut transaction = database.readers.begin().await?;
    like_of(&mut transaction, note).await
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
             AND mended_from IS NULL
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
    /// Whether somebody other than its author gave that.
    pub withdrawn_by_another: bool,
    /// Whether it is shown with a small fix of whoever decided.
    pub is_mended: bool,
    /// What its newest wording belongs to: entries of the reference.
    pub things: Vec<String>,
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
             note.hidden_at IS NOT NULL AS "is_hidden!: bool", note.withdrawn_why,
             note.withdrawn_by_another AS "withdrawn_by_another: bool",
             version.mended_from IS NOT NULL AS "is_mended!: bool",
             (SELECT group_concat(entry_id, ' ') FROM note_entry WHERE version_id = version.id)
               AS "things?: String"
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
            withdrawn_by_another: row.withdrawn_by_another,
            is_mended: row.is_mended,
            things: row
                .things
                .iter()
                .flat_map(|things| things.split(' '))
                .map(str::to_owned)
                .collect(),
        })
        .collect())
}
