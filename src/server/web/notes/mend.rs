//! `/queue/{id}/mend`: what waits of a note, shown with a small fix of whoever decides.

use std::sync::Arc;

use axum::extract::State;
use axum::response::Response;

use super::super::apart::aside;
use super::super::form_page::FormPage;
use super::super::page::Seen;
use super::form::{asks, control, question, shown_on};
use super::kept::{Sent, given_back};
use super::number::Number;
use super::page::{did, may_write};
use super::queue::{NOT_THEIRS, decides};
use crate::db::notes::decide::Reviewed;
use crate::db::notes::mend as db;
use crate::db::notes::read::{self, Note, Version, WordingState};
use crate::db::notes::read_to::ReadTo;
use crate::extract::{Fields, Member, WORD, room};
use crate::rules::auth::SignedIn;
use crate::rules::deed::{Deed, Did};
use crate::rules::notes::fields::{Done, TEXT, TITLE, longest_of_all};
use crate::rules::notes::found::Sense;
use crate::rules::notes::meant::{Answer, Answers, Question};
use crate::rules::notes::small_fix::is_small;
use crate::rules::notes::state::{Act, Others, Refused, StandIns, Subject, done_by};
use crate::rules::notes::wording::{Aim, Typed, Wording};
use crate::rules::notes::{NoteId, VersionId, belongs};
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::Field;
use holewright_pages::link::Link;

/// The bytes of all fields of a note, of what was read, and of three answers.
pub const TAKES: u64 = room(&[longest_of_all()]) + room(&[WORD; 8]);

/// What was read: the wording, the newest report, the newest correction, and of which words it was told where they
/// will stand.
const KNOWN: [&str; 4] = ["version", "last", "correction", "told"];

/// The form with what waits.
///
/// # Errors
/// Nothing waits, or it is not theirs to show.
pub async fn form(
    State(app): State<Arc<App>>,
    Member(member): Member,
    Number(id): Number,
) -> Result<Response, Error> {
    let (note, waits) = match waiting(&app, &member, id).await {
        Err(Error::Conflict(_)) => return Err(Error::NotFound("nothing waits at this address")),
        waits => waits?,
    };
    let last = note.reports.iter().map(|report| report.id).max().unwrap_or_default();
    let read = [waits.id.0, last, note.last_correction].map(|number| number.to_string());
    let [version, last, correction] = read;
    let read = [version, last, correction, waits.wording.mark("")];
    let stands = Some(shown_on(&waits.wording));
    page(&app, &member, id, &waits.wording.typed(""), read, Back { stands, ..Back::default() })
}

/// Shows it with the fix.
///
/// # Errors
/// It is not theirs to show, or is no longer what was read.
pub async fn mend(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let read = KNOWN.map(|name| fields.as_typed(name).to_owned());
    let member = match member {
        Ok(Member(member)) => member,
        Err(error) => return given_back(&app, None, error, sent(id, &typed(&fields), read)),
    };
    let done = async {
        let (_, waits) = waiting(&app, &member, id).await?;
        let typed = beside(&waits.wording, typed(&fields));
        let before = waits.wording.clone();
        let [version, _, _, told] = read.clone();
        // What is no longer what was read is refused for that below.
        let told = if version == waits.id.0.to_string() { told } else { String::new() };
        let wording = match aside(move || mended(&before, &typed, &told)).await? {
            Ok(wording) => wording,
            Err(back) => return Ok(Some(back)),
        };
        may_write(&app, &member)?;
        let [version, last, correction, _] =
            read.each_ref().map(|number| number.parse().unwrap_or_default());
        let reviewed =
            Reviewed { note: id, version: VersionId(version), by: &member, now: app.clock.now() };
        let read_to = ReadTo { report: last, correction };
        db::mend(&app.database, reviewed, read_to, &wording).await?;
        Ok(None)
    };
    match done.await {
        Ok(None) => did(&app, "/queue", Did { deed: Deed::Showed, of: Some(id.0) }),
        Ok(Some(back)) => page(&app, &member, id, &typed(&fields), read, back),
        Err(error) => given_back(&app, Some(&member), error, sent(id, &typed(&fields), read)),
    }
}

/// Why the form comes back.
#[derive(Default)]
struct Back {
    errors: Vec<FieldError>,
    /// What is asked of what it nearly names.
    questions: Vec<Question>,
    /// On which pages it will stand, and the mark of the wording that this is said of.
    stands: Option<String>,
    told: Option<String>,
}

/// The wording as it would be shown; or what is to be put right, asked or told first, as its author would be: what
/// nearly names something, and where it will stand if that is elsewhere than before.
fn mended(before: &Wording, typed: &Typed, told: &str) -> Result<Wording, Back> {
    let questions = Wording::questions(typed);
    let wording = match Wording::read(typed, Aim::SendIn) {
        Ok(wording) => wording,
        Err(errors) => return Err(Back { errors, questions, ..Back::default() }),
    };
    let (stands, mark) = (shown_on(&wording), wording.mark(""));
    let back = |errors, questions| Back {
        errors,
        questions,
        stands: Some(stands.clone()),
        told: Some(mark.clone()),
    };
    if wording == *before {
        let words = "Nothing is changed: show it from the queue as it is.";
        return Err(back(vec![FieldError::new(TITLE.name, words.to_owned())], questions));
    }
    let [old, new] =
        [before, &wording].map(|wording| format!("{} {}", wording.title, wording.text));
    if !is_small(&old, &new) {
        let words = "That is more than a small fix, and would stand under its author’s name: ask for a change.";
        return Err(back(vec![FieldError::new(TEXT.name, words.to_owned())], questions));
    }
    let open = questions.iter().filter(|question| question.answer == Answer::Open);
    let open: Vec<_> = open.map(|open| FieldError::new(open.field, asks(open))).collect();
    if !open.is_empty() {
        return Err(back(open, questions));
    }
    // An answer has said it already.
    let is_untold = !told.is_empty() && told != mark;
    if wording.things != before.things && questions.is_empty() && is_untold {
        let mut fields = wording.done.each().zip(before.done.each());
        let changed = fields.find(|((field, now), (_, was))| field.group.is_some() && now != was);
        let field = changed.map_or(TITLE, |((field, _), _)| field);
        let words = format!("{stands} Show it once more, if that is right.");
        return Err(back(vec![FieldError::new(field.name, words)], questions));
    }
    Ok(wording)
}

/// What waits of a note that this member could show.
async fn waiting(app: &App, member: &SignedIn, id: NoteId) -> Result<(Note, Version), Error> {
    if !decides(member.rights) {
        return Err(NOT_THEIRS);
    }
    let note = read::note(&app.database, id).await?;
    let note = note.ok_or(Error::NotFound("there is no note at this address"))?;
    let who = (note.is_by(member.id), member.rights);
    let stand_ins = StandIns { moderators: Others::Can, inspectors: Others::Can };
    let refused = |refused: Refused| Error::from(crate::db::notes::Error::from(refused));
    done_by(Act::Mend(Subject::Usual), note.state(), who, stand_ins).map_err(refused)?;
    let waits = note.in_state(WordingState::Waiting).cloned();
    let waits = waits.ok_or_else(|| refused(Refused::NotWaiting))?;
    Ok((note, waits))
}

/// What was typed; the rest of a note is not mended here.
fn typed(fields: &Fields) -> Typed {
    Typed {
        title: fields.as_typed(TITLE.name).to_owned(),
        text: fields.as_typed(TEXT.name).to_owned(),
        done: Done::from_each(|field| fields.as_typed(field.name).to_owned()),
        meant: Answers::read(|field| fields.as_typed(field)),
        ..Typed::default()
    }
}

/// It belongs to what it belonged to, but for what a changed field named; what was the inspector's stays so.
fn beside(before: &Wording, typed: Typed) -> Typed {
    let mut things = before.things.clone();
    let is_changed = |field: &str, text: &str| typed.done.text(field) != text;
    for (field, text) in before.done.each().filter(|(field, text)| is_changed(field.name, text)) {
        let named = field.group.and_then(|group| group.named(text));
        things.retain(|thing| named.as_ref().is_none_or(|named| named.id != thing.id));
    }
    let is_pressure = before.subject == Subject::Pressure;
    let is_warning = before.sense == Sense::Warning;
    Typed { on: belongs::typed(&things), is_pressure, is_warning, ..typed }
}

fn controls(typed: &Typed) -> Vec<Field> {
    let said = [control(TITLE, &typed.title), control(TEXT, &typed.text)];
    said.into_iter().chain(typed.done.each().map(|(field, typed)| control(field, typed))).collect()
}

fn known(read: [String; 4]) -> Vec<(&'static str, String)> {
    KNOWN.into_iter().zip(read).collect()
}

fn page(
    app: &App,
    member: &SignedIn,
    NoteId(id): NoteId,
    typed: &Typed,
    read: [String; 4],
    Back { errors, questions, stands, told }: Back,
) -> Result<Response, Error> {
    let heading = "Show it with a small fix";
    let address = format!("/queue/{id}/mend");
    let asked: Vec<_> = questions.iter().map(|asked| question(asked, &errors)).collect();
    let mut form = FormPage::at(&app.context, &address, heading, errors, Seen::by(member));
    form.words = vec![
        "For spelling, the metal, the title. Its author sees what was changed, and by whom. For more than \
         that, ask for a change."
            .to_owned(),
    ];
    form.words.extend(stands);
    form.fields = asked.into_iter().chain(controls(typed)).collect();
    let [version, last, correction, before] = read;
    form.known = known([version, last, correction, told.unwrap_or(before)]);
    form.button = "Show it with this change";
    form.links = vec![Link::new(format!("/queue?open={id}"), "Back to the queue")];
    form.answer()
}

/// The fix as it was sent.
fn sent(NoteId(id): NoteId, typed: &Typed, read: [String; 4]) -> Sent {
    let short = |typed: String| typed.chars().take(20).collect();
    Sent {
        action: format!("/queue/{id}/mend"),
        fields: controls(typed),
        known: known(read.map(short)),
        carried: Vec::new(),
    }
}
