//! `/queue`: what waits for a moderator or an inspector, and their decisions.

use std::sync::Arc;

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::Response;

use super::super::apart::aside;
use super::super::page::words;
use super::inspection;
use super::kept::{Sent, given_back};
use super::lines::{Further, counted};
use super::number::Number;
use super::page::{did, may_write, page};
use super::queued::{Item, Reasons, SenderShown, Trouble, item};
use super::show::state;
use super::typed::{PARTS, Typed};
use crate::db::notes::decide::{self, Reviewed};
use crate::db::notes::queue::{self, Queued};
use crate::db::notes::read::{self, Note, WordingState};
use crate::db::notes::read_to::ReadTo;
use crate::db::notes::reports::{self, AsRead, MOST_AT_ONCE, Of};
use crate::db::notes::{after, undo};
use crate::extract::{Fields, JustDid, Member, Reader, WORD, room};
use crate::rules::auth::{MemberId, Right, Rights, SignedIn};
use crate::rules::deed::{Deed, Did};
use crate::rules::limits::Client;
use crate::rules::notes::difference::Effort;
use crate::rules::notes::seen::is_blank;
use crate::rules::notes::state::sees_waiting;
use crate::rules::notes::{NoteId, VersionId};
use crate::{App, Error};
use holewright_pages::Query;
use holewright_pages::field::{Field, Kind};
use holewright_pages::layout::{DoneWords, Frame, Section};

/// The longest reason.
const LONGEST: usize = 2000;

/// What is wrong with a field is said under this.
const TO_PUT_RIGHT: &str = "Something to put right";

/// The bytes of a decision; and of what was read and a reason, for each wording of the page: they are sent
/// together, so that what was typed at one is not lost over another.
pub const DECIDED: u64 = room(&[WORD; 4]) + (PARTS as u64 + 1) * room(&[WORD, WORD, WORD, LONGEST]);
/// The bytes of whose reports are settled, up to which, and of the notes as they were read.
pub const SETTLED: u64 = room(&[WORD, WORD, MOST_AT_ONCE * WORD]);

#[derive(Template)]
#[template(path = "web/notes/queue.html")]
struct QueuePage {
    frame: Frame,
    trouble: Option<Trouble>,
    /// What was typed at other notes is still there, after a decision about one.
    is_done: bool,
    /// The note that was decided about, where that can be undone.
    undo: Option<i64>,
    /// Notes that nobody in the club could pass.
    unattended: Option<String>,
    may_manage: bool,
    /// Who hid several notes.
    senders: Vec<SenderShown>,
    /// How many remarks wait.
    remarks: i64,
    /// How many wait, and of which kinds.
    counted: String,
    items: Vec<Item>,
    /// What was typed at notes that stand on another page: the place and the reason.
    carried: Vec<(String, String)>,
    /// The way to the other pages.
    further: Further,
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

    /// The title of the note that the trouble is about, where the page has it.
    fn title_of(&self, trouble: &Trouble) -> Option<&str> {
        let item = self.items.iter().find(|item| item.id == trouble.id);
        item.map(|item| item.title.as_str())
    }

    /// What is wrong with what was typed at this place.
    fn wrong(&self, place: &str) -> Option<&str> {
        let trouble = self.trouble.as_ref().filter(|trouble| trouble.place == place);
        trouble
            .filter(|trouble| trouble.heading == TO_PUT_RIGHT)
            .map(|trouble| trouble.words.as_str())
    }
}

/// What the page says besides what waits.
#[derive(Default)]
struct Said {
    trouble: Option<Trouble>,
    is_done: bool,
    reasons: Reasons,
    /// What was done a moment ago.
    did: Option<Did>,
    /// Which of what waits is shown; the first is, where nothing is said.
    part: Option<queue::Part>,
}

/// Whether somebody with these rights has anything to decide.
pub(super) fn decides(rights: Rights) -> bool {
    rights.may(Right::Moderate) || rights.may(Right::Inspect)
}

/// What everybody else is told.
pub(super) const NOT_THEIRS: Error =
    Error::Forbidden("the queue is for moderators and an inspector");

/// The queue.
///
/// # Errors
/// It is for moderators and an inspector.
pub async fn show(
    State(app): State<Arc<App>>,
    Member(member): Member,
    JustDid(did): JustDid,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    if !decides(member.rights) {
        return Err(NOT_THEIRS);
    }
    let query = Query::read(query.as_deref().unwrap_or_default());
    let with = query.get("open").parse().ok().map(|id| queue::Part::With(NoteId(id)));
    let from = query.get("from").parse().ok().map(queue::Part::From);
    let said = Said { part: with.or(from), did, ..Said::default() };
    answer(&app, member, StatusCode::OK, said).await
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
        Ok(_) => return given_back(&app, NOT_THEIRS, sent(&typed)),
        Err(error) => return given_back(&app, error, sent(&typed)),
    };
    let said = |heading, words: String| {
        let mut reasons = beside.clone();
        reasons.insert(typed.place.clone(), reason.clone());
        let place = typed.place.clone();
        let trouble = Some(Trouble { id, place, heading, words, reason: reason.clone() });
        let part = Some(queue::Part::With(NoteId(id)));
        Said { trouble, reasons, part, ..Said::default() }
    };
    let needs_reason = matches!(typed.what, "change" | "decline" | "withdraw");
    let like = if typed.points() { queue::like(&app.database, NoteId(id)).await? } else { None };
    let told = typed.told(like.as_ref());
    let length = told.chars().count();
    if !needs_reason && !is_blank(&reason) {
        let words = "This button tells its author nothing, and what you wrote would be lost: ask for a change or \
                     decline, or empty the field.";
        let said = said(TO_PUT_RIGHT, words.to_owned());
        return answer(&app, member, StatusCode::UNPROCESSABLE_ENTITY, said).await;
    }
    if (needs_reason && is_blank(&told)) || length > LONGEST {
        let words = match length {
            0..=LONGEST => "Say what to change, or why: its author is told.".to_owned(),
            _ => format!("That is {length} characters; {LONGEST} are taken."),
        };
        let said = said(TO_PUT_RIGHT, words);
        return answer(&app, member, StatusCode::UNPROCESSABLE_ENTITY, said).await;
    }
    let done = async {
        may_write(&app, &member)?;
        carry_out(&app, &member, &typed, &told).await
    };
    match done.await {
        Ok(deed) => {
            let done = Did { deed, of: Some(id) };
            // What was undone stands there again, and else the next one.
            let next = if typed.what == "undo" { Some(id) } else { typed.next() };
            if beside.is_empty() {
                let open = next.map(|id| format!("?open={id}")).unwrap_or_default();
                return did(&app, &format!("/queue{open}"), done);
            }
            let part = next.map(|id| queue::Part::With(NoteId(id)));
            let did = Some(done);
            let said = Said { is_done: true, reasons: beside, part, did, ..Said::default() };
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
/// It is for moderators and an inspector; or there is none of them that is theirs to settle.
pub async fn settle_all(
    State(app): State<Arc<App>>,
    Member(member): Member,
    fields: Fields,
) -> Result<Response, Error> {
    if !decides(member.rights) {
        return Err(NOT_THEIRS);
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
        _ => did(&app, "/queue", Deed::SettledAll.into()),
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
) -> Result<Deed, Error> {
    let note = NoteId(typed.id);
    let version = VersionId(typed.of_it("version").parse().unwrap_or_default());
    let reading = Reviewed { note, version, by: member, now: app.clock.now() };
    let number = |name| typed.of_the_note(name).parse().unwrap_or_default();
    let read_to = ReadTo { report: number("last"), correction: number("correction") };
    let database = &app.database;
    Ok(match typed.what {
        "pass" => {
            decide::pass(database, reading, read_to).await?;
            Deed::Showed
        }
        "over" => {
            decide::hand_over(database, reading).await?;
            Deed::HandedOver
        }
        "back" => {
            decide::turn_back(database, reading).await?;
            Deed::TurnedBack
        }
        "change" => {
            decide::ask_for_change(database, reading, reason).await?;
            Deed::AskedBack
        }
        "decline" => {
            decide::decline(database, reading, reason).await?;
            Deed::TurnedDown
        }
        "settle" => {
            after::settle(database, reading, read_to).await?;
            Deed::Settled
        }
        "undo" => {
            undo::undo(database, reading.now, member, note).await?;
            Deed::Undid
        }
        "withdraw" => {
            after::withdraw(database, reading.now, member, note, reason).await?;
            Deed::Withdrew
        }
        _ => return Err(Error::NotFound("the queue knows no such decision")),
    })
}

/// What was done to a note, and whether it can be undone: nothing else has happened to it since, and the minute
/// is not over.
async fn told(
    app: &App,
    member: &SignedIn,
    did: Option<Did>,
) -> Result<(Option<DoneWords>, Option<i64>), Error> {
    let Some(Did { deed, of: Some(id) }) = did else { return Ok((words(did), None)) };
    let title = undo::title(&app.database, app.clock.now(), member.id, NoteId(id)).await?;
    Ok(match title {
        Some(title) => {
            let (what, next) = (deed.what_of(&title), deed.next().to_owned());
            (Some(DoneWords { what, next, link: None }), Some(id))
        }
        None => (words(did), None),
    })
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
    Said { trouble, is_done, reasons, did, part }: Said,
) -> Result<Response, Error> {
    let part = part.unwrap_or(queue::Part::From(0));
    let waiting = queue::waiting(&app.database, &member, part).await?;
    let queue::Waiting { lines, from, notes, stand_ins } = waiting;
    let title = match &trouble {
        Some(trouble) => format!("Error: {}", trouble.heading.to_lowercase()),
        None => "The queue".to_owned(),
    };
    let frame = Frame::at(&app.context, Section::Notes, "/queue", &title, "Notes that wait.");
    let unattended = inspection::left_over(app).await?.map(inspection::words);
    let senders = reports::senders(&app.database, &member, stand_ins).await?;
    let now = app.clock.now();
    let (done, undo) = told(app, &member, did).await?;
    let by = Some(Client::Member(member.id));
    let has_typed = trouble.is_some() || !reasons.is_empty();
    let work = move || {
        let mut effort = Effort::of_a_page();
        let one =
            |queued: &Queued| item(queued, (&member, stand_ins), &reasons, (&mut effort, now));
        let mut items: Vec<Item> = notes.iter().filter_map(one).collect();
        let asked_for = match part {
            queue::Part::With(NoteId(id)) => items.iter().position(|item| item.id == id),
            queue::Part::From(_) => None,
        };
        // Whoever decides about one has it before them: the lines of the others stand below.
        let open = asked_for.unwrap_or(0);
        if let Some(first) = items.get_mut(..=open) {
            first.rotate_right(1);
        }
        if let Some(open) = items.first_mut() {
            open.is_open = true;
        }
        let here: Vec<i64> = items.iter().map(|item| item.id).collect();
        let senders = senders.into_iter().map(|sender| SenderShown::of(sender, &here)).collect();
        let is_elsewhere = |place: &str| {
            let id = place.strip_suffix("-new").unwrap_or(place).parse::<i64>().unwrap_or_default();
            lines.iter().any(|line| line.id.0 == id) && items.iter().all(|item| item.id != id)
        };
        let carried = reasons.iter().filter(|(place, _)| is_elsewhere(place));
        let carried = carried.map(|(place, typed)| (place.clone(), typed.clone())).collect();
        let queue = QueuePage {
            frame: frame.of_a_mistake().for_reader(true).seeing_to(member.open.all()).saying(done),
            remarks: member.open.remarks,
            trouble,
            is_done,
            undo,
            unattended,
            may_manage: member.rights.may(Right::Manage),
            senders,
            counted: counted(&lines),
            items,
            carried,
            further: Further::of(from, lines.len()),
        };
        page(status, &queue, &Reader(Some(member)))
    };
    // What a moderator typed waits for nobody's turn: it would be lost where none comes.
    if has_typed { aside(work).await? } else { app.apart.run(by, work).await? }
}
