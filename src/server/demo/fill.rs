//! Puts the demonstration into an empty data folder, or takes it away.
//!
//! Each act is a transaction of its own, in the order of its time, by the function that the web
//! uses: so every rule holds, and the record reads like that of a real club. What is cut off
//! half-way can be taken away and made again.

use std::{fmt, io};

use super::members::{FIRST_MODERATOR, MEMBERS, Place, SECOND_MODERATOR, THE_INSPECTOR};
use super::note::{DemoNote, Fate};
use crate::db::demo::{KEY, Made, Newcomer, Removed, make_members};
use crate::db::notes::after;
use crate::db::notes::decide::{self, Reviewed};
use crate::db::notes::read::WordingState;
use crate::db::notes::read_to::ReadTo;
use crate::db::notes::verdicts::{self, Verdict};
use crate::db::notes::write::{self, Outcome, Sent};
use crate::db::notes::{self, read};
use crate::db::{self, Database};
use crate::entries;
use crate::rules::auth::password::{Hashing, Trouble};
use crate::rules::auth::{Name, NoChance, Password, SignedIn, name, phrase};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::NoteId;
use crate::rules::notes::again::MadeFrom;
use crate::rules::notes::open::Open;
use crate::rules::notes::state::Subject;
use crate::rules::notes::wording::{Aim, Wording};

const DAY: UnixSeconds = 24 * 60 * 60;
/// The first joined so many days ago, before the first note.
const FIRST_JOINED: UnixSeconds = 500;

/// What was made.
#[derive(Debug)]
pub struct Filled {
    /// Everybody's password.
    pub password: Password,
    /// How many notes.
    pub notes: usize,
}

/// Why nothing was made or taken away.
#[derive(Debug, thiserror::Error)]
pub enum NotDone {
    /// Somebody or something is in the folder.
    #[error(
        "the demonstration goes into an empty data folder alone; here are {members} members and {notes} notes: choose another with --data-dir"
    )]
    NotEmpty {
        /// Members.
        members: i64,
        /// Notes.
        notes: i64,
    },
    /// Others are beside it.
    #[error(
        "{members} members and {notes} notes beside the demonstration are not of it, so all is left as it is"
    )]
    Others {
        /// Members.
        members: i64,
        /// Notes.
        notes: i64,
    },
    /// There is none.
    #[error("there is no demonstration in this data folder")]
    NoDemo,
    /// A name or a note of ours breaks a rule of the program.
    #[error("the demonstration itself is at fault: {0}")]
    AtFault(String),
    /// A password cannot be made.
    #[error(transparent)]
    Password(#[from] Trouble),
    /// The system gives no chance.
    #[error(transparent)]
    NoChance(#[from] NoChance),
    /// A note cannot be written.
    #[error(transparent)]
    Note(#[from] notes::Error),
    /// The system refuses something.
    #[error("the system refuses what this needs: {0}")]
    System(#[source] io::Error),
    /// The database cannot be used.
    #[error(transparent)]
    Database(#[from] db::Error),
}

impl fmt::Display for Filled {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { password, notes } = self;
        writeln!(out, "Marlbeck Model Engineers, {notes} notes, all invented. The members:\n")?;
        for member in MEMBERS {
            let rights = [
                ("secretary", member.rights.secretary),
                ("moderator", member.rights.moderator),
                ("inspector", member.rights.inspector),
            ];
            let held = rights.iter().find(|(_, held)| *held).map_or("member", |(word, _)| *word);
            writeln!(out, "  {} ({held})", member.name)?;
        }
        write!(
            out,
            "\nEach signs in with this password, shown this once:\n\n  {}\n\n\
             Serve with --second-factor relaxed to try the secretary and the moderators without a code.",
            password.secret()
        )
    }
}

/// Fills an empty club.
///
/// # Errors
/// It is not empty, or the database cannot be written.
pub async fn fill(
    database: &Database,
    now: UnixSeconds,
    hashing: &Hashing,
) -> Result<Filled, NotDone> {
    db::reference::project(database, &entries::all(), now).await?;
    let password = phrase::draw()?;
    let members = join(database, now, hashing, &password).await?;
    let made = super::notes();
    let mut notes = Vec::with_capacity(made.len());
    for (number, row) in made.iter().enumerate() {
        notes.push(Planned::of(row, number, &members)?);
    }
    let mut steps: Vec<Step> = notes.iter().enumerate().flat_map(steps_of).collect();
    // A stable order: what happens to one note keeps its own.
    steps.sort_by_key(|step| std::cmp::Reverse(step.days_ago));
    for step in steps {
        let at = now - step.days_ago * DAY;
        if let Some(note) = notes.get_mut(step.note) {
            note.step(database, at, step.what, &members).await?;
        }
    }
    Ok(Filled { password, notes: notes.len() })
}

/// Takes the demonstration away.
///
/// # Errors
/// There is none, others are beside it, or the database cannot be written.
pub async fn remove(database: &Database, now: UnixSeconds) -> Result<db::demo::Counted, NotDone> {
    match db::demo::remove(database, now).await? {
        Removed::Gone(counted) => Ok(counted),
        Removed::NoDemo => Err(NotDone::NoDemo),
        Removed::Others(others) => {
            Err(NotDone::Others { members: others.members, notes: others.notes })
        }
    }
}

async fn join(
    database: &Database,
    now: UnixSeconds,
    hashing: &Hashing,
    password: &Password,
) -> Result<Vec<SignedIn>, NotDone> {
    let mut newcomers = Vec::with_capacity(MEMBERS.len());
    for (member, place) in MEMBERS.iter().zip(0..) {
        newcomers.push(Newcomer {
            name: Name::read(member.name).map_err(|error: name::NotAName| at_fault(&error))?,
            rights: member.rights,
            password_hash: hashing.hash(password.clone()).await?,
            joined_at: now - (FIRST_JOINED - place) * DAY,
        });
    }
    match make_members(database, now, &newcomers).await? {
        Made::NotEmpty(found) => {
            Err(NotDone::NotEmpty { members: found.members, notes: found.notes })
        }
        Made::Members(ids) => Ok(ids
            .into_iter()
            .zip(&newcomers)
            .map(|(id, newcomer)| SignedIn {
                id,
                name: newcomer.name.shown().to_owned(),
                rights: newcomer.rights,
                session: 0,
                proved_at: now,
                has_second_factor: false,
                open: Open::default(),
            })
            .collect()),
    }
}

/// Something that happens to a note.
#[derive(Clone, Copy, Debug)]
struct Step {
    days_ago: i64,
    note: usize,
    what: What,
}

#[derive(Clone, Copy, Debug)]
enum What {
    Write,
    Decide,
    Judge(usize),
    Befall,
}

/// What happens to one note, in order: written, decided the next day, then the rest day by day. What
/// happened today, or would be ahead of us, is now.
fn steps_of((note, planned): (usize, &Planned<'_>)) -> Vec<Step> {
    let DemoNote { days_ago, fate, .. } = *planned.row;
    let whats = match fate {
        Fate::Draft | Fate::Waiting => vec![What::Write],
        Fate::ChangeAsked(_) | Fate::Declined(_) | Fate::Shown => vec![What::Write, What::Decide],
        Fate::Judged(verdicts) => [What::Write, What::Decide]
            .into_iter()
            .chain((0..verdicts.len()).map(What::Judge))
            .collect(),
        Fate::Corrected(_) | Fate::Withdrawn(_) | Fate::Hidden(_) => {
            vec![What::Write, What::Decide, What::Befall]
        }
    };
    let days = (0..).map(|day| (days_ago - day).max(0));
    whats.into_iter().zip(days).map(|(what, days_ago)| Step { days_ago, note, what }).collect()
}

/// A note of the table on its way into the database.
struct Planned<'a> {
    row: &'a DemoNote,
    key: String,
    wording: Wording,
    author: SignedIn,
    id: Option<NoteId>,
}

impl<'a> Planned<'a> {
    fn of(row: &'a DemoNote, number: usize, members: &[SignedIn]) -> Result<Self, NotDone> {
        let key = format!("{KEY}{:03}", number + 1);
        let wording = Wording::read(&row.typed(key.clone()), row.aim()).map_err(|errors| {
            let said: Vec<String> = errors.iter().map(|error| format!("{error:?}")).collect();
            NotDone::AtFault(said.join("; "))
        })?;
        let author = member(members, row.author)?.clone();
        Ok(Self { row, key, wording, author, id: None })
    }

    /// The moderator or inspector whose turn it is: never its author.
    fn decider(&self) -> Place {
        match self.wording.subject {
            Subject::Pressure => THE_INSPECTOR,
            Subject::Usual if self.row.author == FIRST_MODERATOR => SECOND_MODERATOR,
            Subject::Usual => FIRST_MODERATOR,
        }
    }

    async fn step(
        &mut self,
        database: &Database,
        now: UnixSeconds,
        what: What,
        members: &[SignedIn],
    ) -> Result<(), NotDone> {
        let Some(note) = self.id else {
            let sent = Sent {
                wording: &self.wording,
                aim: self.row.aim(),
                form_key: &self.key,
                made_from: MadeFrom::Nothing,
            };
            let (Outcome::Kept(id) | Outcome::Late(id) | Outcome::Declined(id)) =
                write::new(database, now, &self.author, sent).await?;
            self.id = Some(id);
            return Ok(());
        };
        let by = member(members, self.decider())?;
        match (what, self.row.fate) {
            (What::Decide, fate) => {
                let reading =
                    self.reading(database, note, (WordingState::Waiting, by, now)).await?;
                match fate {
                    Fate::ChangeAsked(what) => {
                        decide::ask_for_change(database, reading, what).await?;
                    }
                    Fate::Declined(why) => decide::decline(database, reading, why).await?,
                    _ => decide::pass(database, reading, ReadTo::default()).await?,
                }
            }
            (What::Judge(place), Fate::Judged(verdicts)) => {
                if let Some(said) = verdicts.get(place) {
                    let by = member(members, said.by)?;
                    let verdict = Verdict {
                        found: said.found,
                        material: said.material.to_owned(),
                        size: said.size.to_owned(),
                    };
                    verdicts::judge(database, now, by, (note, None), (&verdict, said.why)).await?;
                }
            }
            (What::Befall, Fate::Corrected(text)) => {
                let reading = self.reading(database, note, (WordingState::Shown, by, now)).await?;
                after::correct(database, reading, text).await?;
            }
            (What::Befall, Fate::Withdrawn(why)) => {
                after::withdraw(database, now, &self.author, note, why).await?;
            }
            (What::Befall, Fate::Hidden(danger)) => {
                after::report(database, now, by, note, danger).await?;
            }
            (What::Write | What::Judge(_) | What::Befall, _) => {}
        }
        Ok(())
    }

    async fn reading<'b>(
        &self,
        database: &Database,
        note: NoteId,
        (state, by, now): (WordingState, &'b SignedIn, UnixSeconds),
    ) -> Result<Reviewed<'b>, NotDone> {
        let held = read::note(database, note).await?;
        let version = held.as_ref().and_then(|held| held.in_state(state));
        let version = version.ok_or(notes::Error::OutOfDate)?.id;
        Ok(Reviewed { note, version, by, now })
    }
}

impl DemoNote {
    /// What its author wanted with it.
    fn aim(&self) -> Aim {
        if self.fate == Fate::Draft { Aim::Draft } else { Aim::SendIn }
    }
}

fn member(members: &[SignedIn], place: Place) -> Result<&SignedIn, NotDone> {
    members.get(place).ok_or_else(|| at_fault(&format!("nobody stands at {place}")))
}

fn at_fault(what: &dyn fmt::Display) -> NotDone {
    NotDone::AtFault(what.to_string())
}
