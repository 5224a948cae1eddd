//! `/queue`: what waits for a moderator or the inspector, and their decisions.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::apart::aside;
use super::inspection;
use super::kept::{Sent, given_back};
use super::number::Number;
use super::page::{may_write, page, see_other};
use super::queued::{Item, Reasons, SenderShown, Trouble, is_place, item, new_place};
use super::show::state;
use crate::db::notes::decide::{self, Reviewed};
use crate::db::notes::read::{self, Note, WordingState};
use crate::db::notes::read_to::ReadTo;
use crate::db::notes::reports::{self, AsRead, MOST_AT_ONCE, Of};
use crate::db::notes::{after, queue};
use crate::extract::{Fields, Member, Reader, WORD, room};
use crate::rules::auth::{MemberId, Right, Rights, SignedIn};
use crate::rules::limits::Client;
use crate::rules::notes::difference::Effort;
use crate::rules::notes::seen::is_blank;
use crate::rules::notes::state::sees_waiting;
use crate::rules::notes::wording;
use crate::rules::notes::{NoteId, VersionId};
use crate::{App, Error};
use holewright_pages::field::{Field, Kind};
use holewright_pages::layout::{Frame, Section};

/// The longest reason.
const LONGEST: usize = 2000;

/// The most wordings on the page: of a reported note also the one that waits.
const PARTS: u64 = 2 * queue::MOST as u64;
/// The bytes of a decision; and of what was read and a reason, for each wording of the page: they are sent
/// together, so that what was typed at one is not lost over another.
pub const DECIDED: u64 = room(&[WORD; 4]) + (PARTS + 1) * room(&[WORD, WORD, WORD, LONGEST]);
/// The bytes of whose reports are settled, up to which, and of the notes as they were read.
pub const SETTLED: u64 = room(&[WORD, WORD, MOST_AT_ONCE * WORD]);

#[derive(Template)]
#[template(path = "web/notes/queue.html")]
struct QueuePage {
    frame: Frame,
    trouble: Option<Trouble>,
    /// A decision was carried out, and the rest of what was typed is still there.
    is_done: bool,
    /// Notes that nobody in the club could pass.
    unattended: Option<String>,
    may_manage: bool,
    /// Who hid several notes.
    senders: Vec<SenderShown>,
    items: Vec<Item>,
}

impl QueuePage {
    /// Where the note is that the trouble is about: in the queue, at what was typed, or else at its address.
    fn place_of(&self, trouble: &Trouble) -> String {
        let id = trouble.id;
        let item = self.items.iter().find(|item| item.id == id);
        let mut parts = item.into_iter().flat_map(Item::parts);
        let first = parts.next();
        let here = first.into_iter().chain(parts).find(|part| part.place == trouble.place);
        match here.or(first) {
            Some(part) => format!("#reason-{}", part.place),
            None => format!("/notes/{id}"),
        }
    }
}

/// What was typed into the queue's form: of the wording that is decided about by its field's own name, as a
/// page with one note sends it, or with its place behind; of the others with theirs.
struct Typed<'a> {
    fields: &'a Fields,
    id: i64,
    /// Where on the page the wording stands that is decided about.
    place: String,
}

impl<'a> Typed<'a> {
    fn read(fields: &'a Fields, id: i64) -> Self {
        let new = new_place(id);
        let decides_what_waits = matches!(fields.as_typed("do"), "pass" | "change" | "decline");
        let is_about_the_new = fields.get("place") == new
            || (decides_what_waits && fields.has(&format!("version-{new}")));
        Self { fields, id, place: if is_about_the_new { new } else { id.to_string() } }
    }

    /// What this field of the wording holds.
    fn of_it(&self, name: &str) -> &'a str {
        self.field(name, &self.place)
    }

    /// What this field of the whole note holds.
    fn of_the_note(&self, name: &str) -> &'a str {
        self.field(name, &self.id.to_string())
    }

    fn field(&self, name: &str, place: &str) -> &'a str {
        let placed = format!("{name}-{place}");
        let name = if self.fields.has(name) { name } else { &placed };
        self.fields.as_typed(name)
    }

    fn reason(&self) -> String {
        wording::text(self.of_it("reason"))
    }

    /// The reasons typed at other wordings.
    fn beside(&self) -> Reasons {
        let beside = self.fields.each().filter_map(|(name, typed)| {
            let place = name.strip_prefix("reason-").filter(|place| is_place(place))?;
            let reason = (place.to_owned(), wording::text(typed));
            Some(reason).filter(|(place, typed)| *place != self.place && !is_blank(typed))
        });
        beside.take(usize::try_from(PARTS).unwrap_or_default()).collect()
    }
}

/// What the page says besides what waits.
#[derive(Default)]
struct Said {
    trouble: Option<Trouble>,
    is_done: bool,
    reasons: Reasons,
}

/// Whether somebody with these rights has anything to decide.
pub(super) fn decides(rights: Rights) -> bool {
    rights.may(Right::Moderate) || rights.may(Right::Inspect)
}

/// The queue.
///
/// # Errors
/// It is for moderators and the inspector.
pub async fn show(State(app): State<Arc<App>>, Member(member): Member) -> Result<Response, Error> {
    if !decides(member.rights) {
        return Err(Error::Forbidden("the queue is for moderators and the inspector"));
    }
    answer(&app, member, StatusCode::OK, Said::default()).await
}

/// A decision about the wording that was read.
///
/// # Errors
/// It is not theirs to decide. Where it was decided meanwhile, the queue comes back as it stands, with
/// what was typed. It comes back too where something was typed at other notes, which a page sent for would lose.
pub async fn decide(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    Number(NoteId(id)): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let typed = Typed::read(&fields, id);
    let (reason, beside) = (typed.reason(), typed.beside());
    let member = match member {
        Ok(Member(member)) if decides(member.rights) => member,
        Ok(_) => {
            let error = Error::Forbidden("the queue is for moderators and the inspector");
            return given_back(&app, error, sent(&typed));
        }
        Err(error) => return given_back(&app, error, sent(&typed)),
    };
    let said = |heading, words: String| {
        let mut reasons = beside.clone();
        reasons.insert(typed.place.clone(), reason.clone());
        let place = typed.place.clone();
        let trouble = Some(Trouble { id, place, heading, words, reason: reason.clone() });
        Said { trouble, reasons, is_done: false }
    };
    let needs_reason = matches!(fields.as_typed("do"), "change" | "decline" | "withdraw");
    let length = reason.chars().count();
    if !needs_reason && !is_blank(&reason) {
        let words = "This button tells its author nothing, and what you wrote would be lost: ask for a change or \
                     decline, or empty the field.";
        let said = said("Something to put right", words.to_owned());
        return answer(&app, member, StatusCode::UNPROCESSABLE_ENTITY, said).await;
    }
    if (needs_reason && is_blank(&reason)) || length > LONGEST {
        let words = match length {
            0..=LONGEST => "Say what to change, or why: its author is told.".to_owned(),
            _ => format!("That is {length} characters; {LONGEST} are taken."),
        };
        let said = said("Something to put right", words);
        return answer(&app, member, StatusCode::UNPROCESSABLE_ENTITY, said).await;
    }
    let done = async {
        may_write(&app, &member)?;
        carry_out(&app, &member, &typed, &reason).await
    };
    match done.await {
        Ok(()) => {
            if beside.is_empty() {
                return see_other("/queue");
            }
            let said = Said { trouble: None, is_done: true, reasons: beside };
            answer(&app, member, StatusCode::OK, said).await
        }
        Err(Error::Conflict(words)) => {
            let now = match read::note(&app.database, NoteId(id)).await? {
                Some(note) => stands(&app, &note, member.rights).await?,
                None => String::new(),
            };
            let said = said("Changed meanwhile", format!("Nothing was done: {words}. {now}"));
            answer(&app, member, StatusCode::CONFLICT, said).await
        }
        Err(error) => given_back(&app, error, sent(&typed)),
    }
}

/// Settles every report of one member's that was read.
///
/// # Errors
/// It is for moderators and the inspector; or there is none of them that is theirs to settle.
pub async fn settle_all(
    State(app): State<Arc<App>>,
    Member(member): Member,
    fields: Fields,
) -> Result<Response, Error> {
    if !decides(member.rights) {
        return Err(Error::Forbidden("the queue is for moderators and the inspector"));
    }
    let number = |name| fields.as_typed(name).parse::<i64>().ok();
    let of = number("of").zip(number("last"));
    let of = of.map(|(member, last)| Of { member: MemberId(member), last });
    let of = of.ok_or(Error::NotFound("the queue knows no such reports"))?;
    may_write(&app, &member)?;
    let notes: Vec<AsRead> = fields.as_typed("read").split(' ').filter_map(as_read).collect();
    match reports::settle_all(&app.database, app.clock.now(), &member, of, &notes).await? {
        0 => Err(Error::Conflict(
            "no report of theirs is yours to settle now, or the notes have changed meanwhile: read them first"
                .to_owned(),
        )),
        _ => see_other("/queue"),
    }
}

/// A note as the form has it: its number, that of its wording and that of its newest correction.
fn as_read(typed: &str) -> Option<AsRead> {
    let mut numbers = typed.split('.').map(|number| number.parse::<i64>().ok());
    let mut next = || numbers.next().flatten();
    let (note, version, correction) = (next()?, next()?, next()?);
    Some(AsRead { note: NoteId(note), version: VersionId(version), correction })
}

/// The decision as it was sent.
fn sent(typed: &Typed<'_>) -> Sent {
    let short = |typed: &str| typed.chars().take(20).collect();
    let known = |name| (name, short(typed.of_the_note(name)));
    let label = "What to change, or why not";
    let beside = typed.beside().into_iter();
    Sent {
        action: format!("/queue/{}", typed.id),
        fields: vec![Field::new("reason", label, "", Kind::Long(typed.reason()))],
        known: vec![
            ("place", typed.place.clone()),
            ("version", short(typed.of_it("version"))),
            known("last"),
            known("correction"),
            ("do", short(typed.fields.as_typed("do"))),
        ],
        carried: beside.map(|(place, reason)| (format!("reason-{place}"), reason)).collect(),
    }
}

async fn carry_out(
    app: &App,
    member: &SignedIn,
    typed: &Typed<'_>,
    reason: &str,
) -> Result<(), Error> {
    let note = NoteId(typed.id);
    let version = VersionId(typed.of_it("version").parse().unwrap_or_default());
    let reading = Reviewed { note, version, by: member, now: app.clock.now() };
    let number = |name| typed.of_the_note(name).parse().unwrap_or_default();
    let read_to = ReadTo { report: number("last"), correction: number("correction") };
    let database = &app.database;
    match typed.fields.as_typed("do") {
        "pass" => decide::pass(database, reading, read_to).await?,
        "over" => decide::hand_over(database, reading).await?,
        "back" => decide::turn_back(database, reading).await?,
        "change" => decide::ask_for_change(database, reading, reason).await?,
        "decline" => decide::decline(database, reading, reason).await?,
        "settle" => after::settle(database, reading, read_to).await?,
        "withdraw" => after::withdraw(database, reading.now, member, note, reason).await?,
        _ => return Err(Error::NotFound("the queue knows no such decision")),
    }
    Ok(())
}

/// How a note stands now, for somebody who came too late; nothing of what was never theirs to read.
async fn stands(app: &App, note: &Note, rights: Rights) -> Result<String, Error> {
    let Some(newest) = note.versions.last() else { return Ok("The note is gone.".to_owned()) };
    if !sees_waiting(newest.wording.subject, rights) {
        return Ok(String::new());
    }
    let awaited = inspection::of(app, note, newest).await?;
    Ok(match state(note, newest, awaited) {
        Some(_) if newest.state == WordingState::Draft => "It is with its author.".to_owned(),
        Some(words) => format!("It now reads: {words}"),
        None => "It is shown.".to_owned(),
    })
}

async fn answer(
    app: &App,
    member: SignedIn,
    status: StatusCode,
    Said { trouble, is_done, reasons }: Said,
) -> Result<Response, Error> {
    let queue::Waiting { notes, stand_ins } = queue::waiting(&app.database, &member).await?;
    let title = match &trouble {
        Some(trouble) => format!("Error: {}", trouble.heading.to_lowercase()),
        None => "The queue".to_owned(),
    };
    let frame = Frame::at(&app.context, Section::Notes, "/queue", &title, "Notes that wait.");
    let unattended = inspection::left_over(app).await?.map(inspection::words);
    let senders = reports::senders(&app.database, &member).await?;
    let senders = senders.into_iter().map(SenderShown::of).collect();
    let by = Some(Client::Member(member.id));
    let has_typed = trouble.is_some() || !reasons.is_empty();
    let work = move || {
        let mut effort = Effort::of_a_page();
        let one = |note: &Note| item(note, (&member, stand_ins), &reasons, &mut effort);
        let items = notes.iter().filter_map(one).collect();
        let queue = QueuePage {
            frame: frame.of_a_mistake().for_reader(true),
            trouble,
            is_done,
            unattended,
            may_manage: member.rights.may(Right::Manage),
            senders,
            items,
        };
        page(status, &queue, &Reader(Some(member)))
    };
    // What a moderator typed waits for nobody's turn: it would be lost where none comes.
    if has_typed { aside(work).await? } else { app.apart.run(by, work).await? }
}
