//! `/queue`: what waits for a moderator or an inspector; [`deciding`](super::deciding) takes what they decide.

use std::collections::BTreeMap;
use std::sync::Arc;

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::Response;

use super::super::apart::aside;
use super::super::page::{own, words};
use super::inspection;
use super::lines::{Further, counted};
use super::page::page;
use super::queued::{Button, Item, Part, Reasons, SenderShown, Trouble, item};
use crate::db::notes::queue::{self, Queued};
use crate::db::notes::{reports, undo};
use crate::extract::{JustDid, Member, Reader};
use crate::rules::auth::{Right, Rights, SignedIn};
use crate::rules::deed::Did;
use crate::rules::limits::Client;
use crate::rules::notes::NoteId;
use crate::rules::notes::decision::Decision;
use crate::rules::notes::difference::Effort;
use crate::rules::notes::ready::TO_CHANGE;
use crate::{App, Error};
use holewright_pages::Query;
use holewright_pages::layout::{DoneWords, Frame, Section};

/// What is wrong with a field is said under this.
pub(super) const TO_PUT_RIGHT: &str = "Something to put right";

#[derive(Template)]
#[template(path = "web/notes/queue.html")]
struct QueuePage {
    frame: Frame,
    trouble: Option<Trouble>,
    /// Where a ready-made reason stands to be changed.
    to_change: Option<ToChange>,
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

    /// The button that sends the words that stand in this wording's field to be changed.
    fn sends<'a>(&self, part: &'a Part) -> Option<&'a Button> {
        let here = self.to_change.as_ref().filter(|change| change.place == part.place)?;
        part.buttons.iter().find(|button| button.decides == here.decides)
    }

    /// Whether it is this button.
    fn is_sending(&self, part: &Part, button: &Button) -> bool {
        self.sends(part).is_some_and(|sends| sends.decides == button.decides)
    }
}

/// Where the words of a ready-made reason stand to be changed, and what is decided with them.
pub(super) struct ToChange {
    pub(super) place: String,
    pub(super) decides: Decision,
}

/// What the page says besides what waits.
#[derive(Default)]
pub(super) struct Said {
    pub(super) trouble: Option<Trouble>,
    pub(super) to_change: Option<ToChange>,
    pub(super) is_done: bool,
    /// The wordings that were read, where some were.
    pub(super) read: BTreeMap<String, i64>,
    pub(super) reasons: Reasons,
    /// What was done a moment ago.
    pub(super) did: Option<Did>,
    /// Which of what waits is shown; the first is, where nothing is said.
    pub(super) part: Option<queue::Part>,
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

/// The page, saying this.
pub(super) async fn answer(
    app: &App,
    member: SignedIn,
    status: StatusCode,
    Said { trouble, to_change, is_done, read, reasons, did, part }: Said,
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
        items.iter_mut().for_each(|item| item.name_read(&read));
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
            frame: frame.of_a_mistake().for_reader(Some(own(&member))).saying(done),
            remarks: member.open.remarks,
            trouble,
            to_change,
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
