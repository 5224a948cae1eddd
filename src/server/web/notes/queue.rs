//! `/queue`: what waits for a moderator or the inspector, and their decisions.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::when::day;
use super::history::Difference;
use super::inspection;
use super::item::author;
use super::kept::{Sent, given_back};
use super::number::Number;
use super::page::{may_write, page, see_other};
use super::show::state;
use super::text::Text;
use crate::db::notes::decide::{self, Reviewed};
use crate::db::notes::read::{self, Note, Version, WordingState};
use crate::db::notes::reports::{self, Of, Sender, Wordings};
use crate::db::notes::{after, queue};
use crate::extract::{Fields, Member, Reader, WORD, room};
use crate::rules::auth::{MemberId, Right, Rights, SignedIn};
use crate::rules::limits::Client;
use crate::rules::notes::difference::Effort;
use crate::rules::notes::seen::is_blank;
use crate::rules::notes::state::{may_pass, sees_waiting};
use crate::rules::notes::wording;
use crate::rules::notes::{NoteId, VersionId};
use crate::{App, Error};
use holewright_pages::field::{Field, Kind};
use holewright_pages::layout::{Frame, Section};

/// The longest reason.
const LONGEST: usize = 2000;

/// The bytes of a decision, the wording that was read and a reason.
pub const DECIDED: u64 = room(&[WORD, WORD, WORD, LONGEST]);
/// The bytes of whose reports are settled, and up to which.
pub const SETTLED: u64 = room(&[WORD, WORD]);

#[derive(Template)]
#[template(path = "web/notes/queue.html")]
struct QueuePage {
    frame: Frame,
    trouble: Option<Trouble>,
    /// Notes that nobody in the club could pass.
    unattended: Option<String>,
    may_manage: bool,
    /// Who hid several notes.
    senders: Vec<Sender>,
    items: Vec<Item>,
}

impl QueuePage {
    /// Where the note is that the trouble is about: in the queue, at what was typed, or else at its address.
    fn place_of(&self, trouble: &Trouble) -> String {
        let id = trouble.id;
        let is_here = self.items.iter().any(|item| item.id == id);
        if is_here { format!("#reason-{id}") } else { format!("/notes/{id}") }
    }
}

/// What stood in the way of a decision, with what was typed.
struct Trouble {
    /// The note it was about.
    id: i64,
    heading: &'static str,
    words: String,
    reason: String,
}

/// A report and who sent it.
struct ReportShown {
    by: String,
    text: String,
}

/// One note to look at.
struct Item {
    id: i64,
    version: i64,
    title: String,
    by: String,
    day: String,
    /// Open reports: the note is then hidden.
    reports: Vec<ReportShown>,
    /// The newest of them: what comes later was not read.
    last: i64,
    /// What changed since the shown wording.
    difference: Option<Difference>,
    text: Text,
    /// It speaks of boilers, steam or pressure, and this moderator may not pass it.
    is_for_the_inspector: bool,
    /// It is the moderator's own.
    is_own: bool,
    reason: String,
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
    answer(&app, member, StatusCode::OK, None).await
}

/// A decision about the wording that was read.
///
/// # Errors
/// It is not theirs to decide. Where it was decided meanwhile, the queue comes back as it stands, with
/// what was typed.
pub async fn decide(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    Number(NoteId(id)): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let reason = wording::text(fields.as_typed("reason"));
    let member = match member {
        Ok(Member(member)) if decides(member.rights) => member,
        Ok(_) => {
            let error = Error::Forbidden("the queue is for moderators and the inspector");
            return given_back(&app, error, sent(id, &fields));
        }
        Err(error) => return given_back(&app, error, sent(id, &fields)),
    };
    let trouble = |heading, words: String| Trouble { id, heading, words, reason: reason.clone() };
    let needs_reason = matches!(fields.as_typed("do"), "change" | "decline" | "withdraw");
    let length = reason.chars().count();
    if (needs_reason && is_blank(&reason)) || length > LONGEST {
        let words = match length {
            0..=LONGEST => "Say what to change, or why: its author is told.".to_owned(),
            _ => format!("That is {length} characters; {LONGEST} are taken."),
        };
        let trouble = trouble("Something to put right", words);
        return answer(&app, member, StatusCode::UNPROCESSABLE_ENTITY, Some(trouble)).await;
    }
    let done = async {
        may_write(&app, &member)?;
        carry_out(&app, &member, NoteId(id), &fields, &reason).await
    };
    match done.await {
        Ok(()) => {
            app.shown.changed();
            see_other("/queue")
        }
        Err(Error::Conflict(words)) => {
            let now = match read::note(&app.database, NoteId(id)).await? {
                Some(note) => stands(&app, &note, member.rights).await?,
                None => String::new(),
            };
            let trouble = trouble("Changed meanwhile", format!("Nothing was done: {words}. {now}"));
            answer(&app, member, StatusCode::CONFLICT, Some(trouble)).await
        }
        Err(error) => given_back(&app, error, sent(id, &fields)),
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
    let mut wordings = Wordings::new();
    for sender in reports::senders(&app.database, &member).await? {
        for note in sender.notes.iter().filter(|_| sender.member == of.member) {
            let id = NoteId(note.id);
            let note = read::note(&app.database, id).await?;
            let shown = note.as_ref().and_then(|note| note.in_state(WordingState::Shown));
            if let Some(shown) = shown {
                wordings.insert(id, shown.id);
            }
        }
    }
    match reports::settle_all(&app.database, app.clock.now(), &member, of, &wordings).await? {
        0 => Err(Error::Conflict("no report of theirs is yours to settle now".to_owned())),
        _ => {
            app.shown.changed();
            see_other("/queue")
        }
    }
}

/// The decision as it was sent.
fn sent(id: i64, fields: &Fields) -> Sent {
    let reason = wording::text(fields.as_typed("reason"));
    let known = |name| (name, fields.as_typed(name).chars().take(20).collect());
    Sent {
        action: format!("/queue/{id}"),
        fields: vec![Field::new("reason", "What to change, or why not", "", Kind::Long(reason))],
        known: vec![known("version"), known("last"), known("do")],
    }
}

async fn carry_out(
    app: &App,
    member: &SignedIn,
    note: NoteId,
    fields: &Fields,
    reason: &str,
) -> Result<(), Error> {
    let version = VersionId(fields.as_typed("version").parse().unwrap_or_default());
    let reading = Reviewed { note, version, by: member, now: app.clock.now() };
    let database = &app.database;
    match fields.as_typed("do") {
        "pass" => decide::pass(database, reading).await?,
        "change" => decide::ask_for_change(database, reading, reason).await?,
        "decline" => decide::decline(database, reading, reason).await?,
        "settle" => {
            let last = fields.as_typed("last").parse().unwrap_or_default();
            after::settle(database, reading, last).await?;
        }
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
    trouble: Option<Trouble>,
) -> Result<Response, Error> {
    let notes = queue::waiting(&app.database, member.rights).await?;
    let title = match &trouble {
        Some(trouble) => format!("Error: {}", trouble.heading.to_lowercase()),
        None => "The queue".to_owned(),
    };
    let frame = Frame::at(&app.context, Section::Notes, "/queue", &title, "Notes that wait.");
    let unattended = inspection::left_over(app).await?.map(inspection::words);
    let senders = reports::senders(&app.database, &member).await?;
    let by = Some(Client::Member(member.id));
    let work = move || {
        let mut effort = Effort::of_a_page();
        let one = |note: &Note| item(note, &member, trouble.as_ref(), &mut effort);
        let items = notes.iter().filter_map(one).collect();
        let queue = QueuePage {
            frame: frame.of_a_mistake().for_reader(true),
            trouble,
            unattended,
            may_manage: member.rights.may(Right::Manage),
            senders,
            items,
        };
        page(status, &queue, &Reader(Some(member)))
    };
    app.apart.run(by, work).await?
}

fn item(
    note: &Note,
    member: &SignedIn,
    trouble: Option<&Trouble>,
    effort: &mut Effort,
) -> Option<Item> {
    let shown = note.in_state(WordingState::Shown);
    let version: &Version =
        if note.is_hidden { shown? } else { note.in_state(WordingState::Waiting)? };
    let NoteId(id) = note.id;
    let typed = trouble.filter(|trouble| trouble.id == id);
    Some(Item {
        id,
        version: version.id.0,
        title: version.wording.title.clone(),
        by: author(note.author.as_ref().map(|author| author.name.as_str())),
        day: day(version.saved_at),
        last: note.reports.iter().map(|report| report.id).max().unwrap_or_default(),
        reports: note
            .reports
            .iter()
            .map(|report| ReportShown {
                by: author(report.by.as_deref()),
                text: report.text.clone(),
            })
            .collect(),
        difference: match shown {
            Some(shown) if !note.is_hidden => Some(Difference::of(Some(shown), version, effort)),
            _ => None,
        },
        text: Text::of(&version.wording),
        is_for_the_inspector: !may_pass(version.wording.subject, member.rights),
        is_own: note.is_by(member.id),
        reason: typed.map(|trouble| trouble.reason.clone()).unwrap_or_default(),
    })
}
