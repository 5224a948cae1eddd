//! How a note stands, read in the transaction that is about to change it.

use sqlx::{Sqlite, Transaction};

use super::Error;
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::notes::NoteId;
use crate::rules::notes::state::{Act, NoteState, OnItsWay, Others, StandIns, Subject, done_by};

/// A note as it stands, and who is about to act on it.
#[derive(Clone, Copy, Debug)]
pub(super) struct CurrentNote {
    pub(super) state: NoteState,
    /// The wording on its way.
    pub(super) on_its_way: Option<i64>,
    /// The wording shown.
    pub(super) shown: Option<i64>,
    is_author: bool,
    stand_ins: StandIns,
}

impl CurrentNote {
    /// Whether this member may do this now.
    pub(super) fn check(&self, act: Act, by: &SignedIn) -> Result<NoteState, Error> {
        Ok(done_by(act, self.state, (self.is_author, by.rights), self.stand_ins)?)
    }

    /// The number of what stands in the queue: what is hidden by a report, or else what waits.
    pub(super) fn queued(&self) -> Option<i64> {
        if self.state.hidden.is_some() { self.shown } else { self.on_its_way }
    }

    /// Whether the member decides about a note of their own.
    pub(super) fn is_own(&self) -> bool {
        self.is_author
    }
}

/// Reads it.
pub(super) async fn read(
    transaction: &mut Transaction<'_, Sqlite>,
    note: NoteId,
    by: &SignedIn,
) -> Result<CurrentNote, Error> {
    let stand_ins = stand_ins(transaction, by.id).await?;
    one_of_many(transaction, note, by, stand_ins).await
}

/// Reads one of several: who else there is was read once for all.
pub(super) async fn one_of_many(
    transaction: &mut Transaction<'_, Sqlite>,
    note: NoteId,
    by: &SignedIn,
    stand_ins: StandIns,
) -> Result<CurrentNote, Error> {
    let (NoteId(id), MemberId(member)) = (note, by.id);
    let row = sqlx::query!(
        r#"SELECT note.author_id, note.withdrawn_at, note.hidden_at, note.shown_version,
             way.id AS "way_id?: i64", way.state AS "way_state?: String",
             way.is_pressure AS "way_is_pressure?: bool",
             shown.is_pressure AS "shown_is_pressure?: bool",
             EXISTS (SELECT 1 FROM safety_report AS report WHERE report.note_id = note.id
                     AND report.settled_at IS NULL AND report.kind <> 'usual') AS "for_inspector!: bool"
           FROM note
           LEFT JOIN note_version AS way ON way.note_id = note.id AND way.state IN ('draft', 'waiting')
           LEFT JOIN note_version AS shown ON shown.id = note.shown_version
           WHERE note.id = ?1"#,
        id
    )
    .fetch_optional(&mut **transaction)
    .await?
    .ok_or(Error::Nothing)?;
    let on_its_way = row.way_state.map(|state| match state.as_str() {
        "waiting" => OnItsWay::Waiting(subject(row.way_is_pressure.unwrap_or_default())),
        _ => OnItsWay::Draft,
    });
    Ok(CurrentNote {
        state: NoteState {
            on_its_way,
            shown: row.shown_is_pressure.map(subject),
            hidden: row.hidden_at.map(|_| subject(row.for_inspector)),
            is_withdrawn: row.withdrawn_at.is_some(),
        },
        on_its_way: row.way_id,
        shown: row.shown_version,
        is_author: row.author_id == Some(member),
        stand_ins,
    })
}

/// Whether somebody other than this member could decide.
pub(super) async fn stand_ins(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(member): MemberId,
) -> Result<StandIns, sqlx::Error> {
    let others = sqlx::query!(
        r#"SELECT
             EXISTS (SELECT 1 FROM member WHERE member.id <> ?1 AND stopped_at IS NULL
                     AND (is_moderator = 1 OR is_secretary = 1)) AS "moderators!: bool",
             EXISTS (SELECT 1 FROM member WHERE member.id <> ?1 AND stopped_at IS NULL
                     AND is_inspector = 1) AS "inspectors!: bool""#,
        member
    )
    .fetch_one(&mut **transaction)
    .await?;
    let or_nobody = |exist: bool| if exist { Others::Can } else { Others::Nobody };
    Ok(StandIns {
        moderators: or_nobody(others.moderators),
        inspectors: or_nobody(others.inspectors),
    })
}

/// The column as the rules have it.
pub(super) const fn subject(is_pressure: bool) -> Subject {
    if is_pressure { Subject::Pressure } else { Subject::Usual }
}
