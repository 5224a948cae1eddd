//! Remarks: sent in on a note's page and taken back there, decided about at `/queue/remarks`.

use std::sync::Arc;

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::Response;

use super::super::apart::aside;
use super::super::page::{own, words};
use super::super::when::day;
use super::item::author;
use super::kept::{Sent, given_back};
use super::member_acts::{Begun, begun, finish};
use super::number::Number;
use super::page::{did, may_write, page};
use super::queue::decides;
use super::text_form::TextForm;
use crate::db::notes::remarks::{self, Listed, ToDecide};
use crate::extract::{Fields, JustDid, Member, Reader, WORD, room};
use crate::rules::auth::SignedIn;
use crate::rules::deed::{Deed, Did};
use crate::rules::notes::remarks::{Act, Below, LONGEST, State as Stands, after};
use crate::rules::notes::seen::is_blank;
use crate::rules::notes::state::{Others, StandIns, Subject, Who};
use crate::rules::notes::{NoteId, VersionId, hazards, wording};
use crate::{App, Error};
use holewright_pages::Query;
use holewright_pages::field::{Field, Kind};
use holewright_pages::layout::{Frame, Section};

/// The form on a note's page.
pub(super) const REMARK: TextForm = TextForm {
    act: "remark",
    name: "remark",
    label: "Your remark",
    deed: Deed::Remarked,
    missing: "Write the remark.",
    longest: LONGEST,
};
/// The longest reason.
const LONGEST_REASON: usize = 2000;

/// The bytes of a remark, of the wording that was read, and of the number of one that is taken back.
pub const REMARKED: u64 = room(&[REMARK.longest, WORD, WORD, WORD]);
/// The bytes of a decision, of the number of the remark and of the note whose remarks are listed, of the place in the
/// list, of where the remark stood, of whether it was sent from the note's page, and of a reason.
pub const DECIDED: u64 = room(&[WORD, WORD, WORD, WORD, WORD, WORD, LONGEST_REASON]);
/// The field in which a form says where the remark stood when it was read.
const AS_READ: &str = "stands";
/// What the form on a note's page says of itself, so that its sender comes back there.
pub(super) const FROM_NOTE: (&str, &str) = ("back", "note");

/// Sends a remark in, or takes one back.
///
/// # Errors
/// The note is not there for them, or the remark is not theirs.
pub async fn remark(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    if fields.as_typed("do") == "away" {
        let Member(member) = member?;
        let number = fields.as_typed("of").parse();
        let number = number.map_err(|_| Error::NotFound("there is no such remark"))?;
        may_write(&app, &member)?;
        let done = (number, Act::TakeBack, None);
        let (NoteId(note), _) =
            remarks::decide(&app.database, app.clock.now(), &member, done, "").await?;
        return did(&app, &format!("/notes/{note}"), Deed::TookRemarkBack.into());
    }
    let form = &REMARK;
    let (member, text) = match begun(&app, member, id, (form, &fields)).await? {
        Begun::Typed(member, text) => (member, text),
        Begun::Answered(answer) => return Ok(answer),
    };
    let read = match fields.as_typed("version") {
        "" => None,
        typed => Some(VersionId(typed.parse().unwrap_or_default())),
    };
    let done = async {
        may_write(&app, &member)?;
        Ok(remarks::add(&app.database, app.clock.now(), &member, (id, read), &text).await?)
    };
    finish(&app, &member, id, done.await, (form, &fields)).await
}

#[derive(Template)]
#[template(path = "web/notes/remarks.html")]
struct RemarksPage {
    frame: Frame,
    /// What stood in the way, at which remark, and the reason that was typed.
    trouble: Option<Trouble>,
    items: Vec<Item>,
    /// The note whose remarks are listed; none for all that wait.
    of: Option<i64>,
    /// The place of the first on this page.
    from: i64,
    /// How many there are, and which of them stand here.
    counted: String,
    /// The other pages: address and words.
    pages: Vec<(String, String)>,
}

/// Which remarks are listed.
#[derive(Clone, Copy, Default)]
struct Part {
    /// Those of this note; none for all that wait.
    of: Option<i64>,
    /// From this place on.
    from: i64,
}

impl Part {
    fn read(of: &str, from: &str) -> Self {
        let from = from.parse().ok().filter(|from| (0..=MOST_PLACE).contains(from));
        Self { of: of.parse().ok(), from: from.unwrap_or(0) }
    }

    fn address(self) -> String {
        let of = self.of.map(|note| format!("note={note}"));
        let from = (self.from > 0).then(|| format!("from={}", self.from));
        let query: Vec<String> = of.into_iter().chain(from).collect();
        let mark = if query.is_empty() { "" } else { "?" };
        format!("/queue/remarks{mark}{}", query.join("&"))
    }

    /// How many there are, and which of them stand here.
    fn counted(self, here: usize, all: i64) -> String {
        let all_of_it = match (self.of, all) {
            (Some(_), 1) => "1 remark on this note.".to_owned(),
            (Some(_), many) => format!("{many} remarks on this note."),
            (None, 1) => "1 waits.".to_owned(),
            (None, many) => format!("{many} wait."),
        };
        let last = self.from + i64::try_from(here).unwrap_or_default();
        let is_all = self.from == 0 && last >= all;
        if is_all { all_of_it } else { format!("{all_of_it} Here {} to {last}.", self.from + 1) }
    }

    /// The pages before and after this one.
    fn pages(self, all: i64) -> Vec<(String, String)> {
        let at = |from| Self { from, ..self }.address();
        let before = (self.from > 0)
            .then(|| (at((self.from - remarks::MOST).max(0)), "Those before".to_owned()));
        let next = self.from + remarks::MOST;
        let after = (next < all).then(|| (at(next), "Those after".to_owned()));
        before.into_iter().chain(after).collect()
    }
}

/// No list is so long.
const MOST_PLACE: i64 = 1_000_000;

/// What the page says of the form before it.
#[derive(Default)]
struct Said {
    /// What was done a moment ago.
    did: Option<Did>,
    trouble: Option<Trouble>,
}

/// What stood in the way of a decision.
struct Trouble {
    id: i64,
    words: String,
    reason: String,
}

impl RemarksPage {
    fn reason(&self, id: &i64) -> &str {
        let of_it = self.trouble.as_ref().filter(|trouble| trouble.id == *id);
        of_it.map_or("", |trouble| trouble.reason.as_str())
    }

    /// What was typed at a remark that is listed no more.
    fn left_over(&self) -> Option<&str> {
        let trouble = self.trouble.as_ref()?;
        let is_listed = self.items.iter().any(|item| item.id == trouble.id);
        Some(trouble.reason.as_str()).filter(|reason| !is_listed && !reason.is_empty())
    }
}

/// One remark on the page.
struct Item {
    id: i64,
    note: i64,
    title: String,
    by: String,
    day: String,
    text: String,
    is_pressure: bool,
    /// What burns, poisons or maims by its words, in one line; none where nothing does.
    hazards: String,
    is_shown: bool,
    may_show: bool,
    may_decline: bool,
    /// Who decides, where this reader does not.
    words: Option<&'static str>,
}

impl Item {
    fn of(remark: Listed, reader: &SignedIn, stand_ins: StandIns) -> Self {
        let stands = (remark.state, remark.subject);
        let others = match remark.subject {
            Subject::Usual => stand_ins.moderators,
            Subject::Pressure => stand_ins.inspectors,
        };
        let who = Who { is_author: remark.is_own, rights: reader.rights, others };
        let may_show = after(Act::Show, stands, remark.below, who).is_ok();
        let may_decline = after(Act::Decline, stands, remark.below, who).is_ok();
        let is_pressure = remark.subject == Subject::Pressure;
        Self {
            id: remark.id,
            note: remark.note,
            title: remark.title,
            by: author(remark.by.as_deref()),
            day: day(remark.made_at),
            hazards: hazards::of_text(&remark.text).join(" "),
            text: remark.text,
            is_pressure,
            is_shown: remark.state == Stands::Shown,
            may_show,
            may_decline,
            words: match (remark.is_own, may_show) {
                (true, false) => {
                    Some("Your own remark: somebody else with the right decides about it.")
                }
                (false, false) if remark.below == Below::Own(Others::Can) => {
                    Some("On a note of your own: somebody else with the right decides about it.")
                }
                (false, false) if is_pressure && remark.state == Stands::Waiting => {
                    Some("For an inspector: only an inspector passes it.")
                }
                _ => None,
            },
        }
    }
}

/// The remarks that wait; with `?note=12` those on that note, the shown ones too.
///
/// # Errors
/// Nobody who decides is signed in.
pub async fn show(
    State(app): State<Arc<App>>,
    Member(member): Member,
    JustDid(done): JustDid,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    let query = Query::read(query.as_deref().unwrap_or_default());
    let part = Part::read(query.get("note"), query.get("from"));
    answer(&app, member, (StatusCode::OK, part), Said { did: done, trouble: None }).await
}

/// Shows a remark, or does not take it.
///
/// # Errors
/// As [`show`].
pub async fn decide(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    fields: Fields,
) -> Result<Response, Error> {
    let part = Part::read(fields.as_typed("note"), fields.as_typed("from"));
    let number: Result<i64, _> = fields.as_typed("remark").parse();
    let reason = wording::text(fields.as_typed("reason"));
    let member = match member {
        Ok(Member(member)) => member,
        Err(error) => return given_back(&app, None, error, sent(&fields, reason)),
    };
    if !decides(member.rights) {
        return Err(Error::Forbidden("the queue is for those who decide"));
    }
    let id = number.map_err(|_| Error::NotFound("there is no such remark"))?;
    let said = |trouble| Said { did: None, trouble: Some(trouble) };
    let trouble = |words: &str| Trouble { id, words: words.to_owned(), reason: reason.clone() };
    let act = match fields.as_typed("do") {
        "show" => Act::Show,
        "decline" => Act::Decline,
        _ => {
            let trouble = trouble("Say what becomes of it.");
            return answer(&app, member, (StatusCode::UNPROCESSABLE_ENTITY, part), said(trouble))
                .await;
        }
    };
    let wrong = match act {
        Act::Decline if is_blank(&reason) => Some("Say why: whoever wrote it is told.".to_owned()),
        _ if reason.chars().count() > LONGEST_REASON => {
            Some(format!("{LONGEST_REASON} characters are taken here."))
        }
        _ => None,
    };
    if let Some(words) = wrong {
        let status = StatusCode::UNPROCESSABLE_ENTITY;
        return answer(&app, member, (status, part), said(trouble(&words))).await;
    }
    let read = Some(fields.as_typed(AS_READ)).filter(|word| !word.is_empty()).map(Stands::read);
    // A reason tells why not; what is shown needs none.
    let told = if act == Act::Show { "" } else { reason.as_str() };
    let done = async {
        may_write(&app, &member)?;
        let now = app.clock.now();
        Ok(remarks::decide(&app.database, now, &member, (id, act, read), told).await?)
    };
    match done.await {
        Ok((NoteId(note), was)) => {
            let deed = match (act, was) {
                (Act::Show, _) => Deed::ShowedRemark,
                (_, Stands::Shown) => Deed::TookRemarkAway,
                _ => Deed::DeclinedRemark,
            };
            let (name, value) = FROM_NOTE;
            let is_from_note = fields.as_typed(name) == value;
            let back = if is_from_note { format!("/notes/{note}") } else { part.address() };
            did(&app, &back, deed.into())
        }
        Err(Error::Conflict(words)) => {
            let words = format!("Nothing was done: {words}.");
            answer(&app, member, (StatusCode::CONFLICT, part), said(trouble(&words))).await
        }
        Err(error) => given_back(&app, Some(&member), error, sent(&fields, reason)),
    }
}

/// A decision as it was sent.
fn sent(fields: &Fields, reason: String) -> Sent {
    let known = ["remark", "note", "from", AS_READ, FROM_NOTE.0, "do"].map(|name| {
        let typed: String = fields.as_typed(name).chars().take(20).collect();
        (name, typed)
    });
    Sent {
        action: "/queue/remarks".to_owned(),
        fields: vec![Field::new("reason", "Why not", "", Kind::Long(reason))],
        known: known.into_iter().filter(|(_, typed)| !typed.is_empty()).collect(),
        carried: Vec::new(),
    }
}

async fn answer(
    app: &Arc<App>,
    member: SignedIn,
    (status, part): (StatusCode, Part),
    Said { did, trouble }: Said,
) -> Result<Response, Error> {
    if !decides(member.rights) {
        return Err(Error::Forbidden("the queue is for those who decide"));
    }
    let asked = (part.of.map(NoteId), part.from);
    let found = remarks::to_decide(&app.database, &member, asked).await?;
    let ToDecide { listed, from, all, stand_ins } = found;
    let part = Part { from, ..part };
    let title = if trouble.is_some() { "Error: remarks" } else { "Remarks" };
    let frame = Frame::at(&app.context, Section::Notes, "/queue/remarks", title, title);
    let here = listed.len();
    let reader = member.clone();
    // What harms in twenty remarks is heard word by word.
    let one = move |remark| Item::of(remark, &reader, stand_ins);
    let items = aside(move || listed.into_iter().map(one).collect()).await?;
    let remarks = RemarksPage {
        frame: frame.of_a_mistake().for_reader(Some(own(&member))).saying(words(did)),
        trouble,
        counted: part.counted(here, all),
        pages: part.pages(all),
        items,
        of: part.of,
        from,
    };
    page(status, &remarks, &Reader(Some(member)))
}
