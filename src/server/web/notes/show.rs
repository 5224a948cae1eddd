//! `/notes/{id}`: one note, as its reader may see it.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::apart::aside;
use super::super::page::{own_of, words};
use super::super::when::day;
use super::back::Back;
use super::inspection;
use super::item::author;
use super::judged::{self, Asked, VerdictShown};
use super::number::Number;
use super::page::page;
use super::remarked::Remarked;
use super::remarks::REMARK;
use super::reported;
use super::text::Text;
use crate::db::notes::read::{self, Note, Version, Withdrawn, WordingState};
use crate::extract::{JustDid, Reader};
use crate::rules::auth::{Right, SignedIn};
use crate::rules::notes::inspection::Awaited;
use crate::rules::notes::state::{Subject, may_pass, sees_waiting};
use crate::rules::notes::{NoteId, markdown, pressure};
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind};
use holewright_pages::layout::{Frame, Section};

#[derive(Template)]
#[template(path = "web/notes/show.html")]
struct NotePage {
    frame: Frame,
    id: i64,
    title: String,
    by: String,
    day: String,
    /// How it stands, where that is not simply "shown".
    state: Option<String>,
    corrections: Vec<CorrectionShown>,
    text: Text,
    /// That an inspector read it, and when where that is known, if it speaks of pressure.
    inspected: Option<String>,
    is_shown: bool,
    counts: String,
    /// What was found elsewhere and of earlier wordings, if anything was.
    beside: Vec<String>,
    verdicts: Vec<VerdictShown>,
    /// Whether this reader has said what they found.
    has_judged: bool,
    remarks: Remarked,
    /// What its author wrote since, which readers do not see.
    newer: Option<Newer>,
    has_history: bool,
    may_edit: bool,
    /// It is withdrawn, and its author may write another with its words.
    may_begin_anew: bool,
    is_signed_in: bool,
    errors: Vec<FieldError>,
    judge: Option<Asked>,
    remark: Vec<Field>,
    report: Vec<Field>,
    withdraw: Vec<Field>,
    correct: Vec<Field>,
    version: i64,
}

/// A correction on the page.
struct CorrectionShown {
    day: String,
    /// Made by [`markdown::html`], and so safe.
    html: String,
}

/// A wording after the shown one, for its author.
struct Newer {
    /// How it stands, with what was asked of it.
    state: String,
    title: String,
    text: Text,
}

#[derive(Template)]
#[template(path = "web/notes/gone.html")]
struct GonePage {
    frame: Frame,
    told: Told<String>,
}

/// What readers are told of a withdrawal.
pub(super) enum Told<W> {
    /// Its author took it back. The reason is theirs, and nobody reads it first: readers do not see it.
    ByAuthor,
    /// The reason of whoever moderates the note.
    Why(W),
    /// That reason speaks of boilers, steam or pressure: it is kept from readers, and to withdraw such a note
    /// stays easy.
    OfPressure,
}

impl NotePage {
    /// Whether it has a form with one of these fields.
    fn has_form_of(&self, names: &[&str]) -> bool {
        let judge = self.judge.as_ref().map_or(&[][..], |asked| asked.fields.as_slice());
        let forms = [judge, &self.remark, &self.report, &self.withdraw, &self.correct];
        forms.into_iter().flatten().any(|field| names.contains(&field.name))
    }

    /// Whether something is wrong in one of these fields: their form is then open.
    fn has_mistake(&self, fields: &[Field]) -> bool {
        fields.iter().any(|field| self.errors.iter().any(|error| error.field == field.name))
    }
}

/// The note.
///
/// # Errors
/// It is not there for this reader.
pub async fn show(
    State(app): State<Arc<App>>,
    reader: Reader,
    JustDid(did): JustDid,
    Number(NoteId(id)): Number,
) -> Result<Response, Error> {
    let did = did.filter(|_| reader.0.is_some());
    answer(&app, reader, NoteId(id), Back { did, ..Back::default() }).await
}

/// The note with a form that came back.
pub(super) async fn answer(
    app: &Arc<App>,
    reader: Reader,
    id: NoteId,
    back: Back,
) -> Result<Response, Error> {
    let note = read::note(&app.database, id).await?;
    let note = note.ok_or(Error::NotFound("there is no note at this address"))?;
    let usual =
        if back.errors.is_empty() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY };
    let status = back.status.unwrap_or(usual);
    match seen(&note, reader.0.as_ref()) {
        Seen::Version(version) => {
            let awaited = inspection::of(app, &note, version).await?;
            let state = state(&note, version, awaited);
            let newer = newer(&note, version, awaited)
                .filter(|_| reader.0.as_ref().is_some_and(|reader| note.is_by(reader.id)));
            let (app, version) = (Arc::clone(app), version.clone());
            let work = move || {
                let told = (&note, &version, (state, newer));
                page(status, &note_page(&app, reader.0.as_ref(), told, back), &reader)
            };
            aside(work).await?
        }
        Seen::Withdrawn(why) => {
            let title = "This note is withdrawn";
            let address = format!("/notes/{}", id.0);
            let frame = Frame::at(&app.context, Section::Notes, &address, title, title);
            let frame = frame.of_a_mistake().for_reader(own_of(reader.0.as_ref()));
            let told = match why {
                Told::Why(why) => Told::Why(why.to_owned()),
                Told::ByAuthor => Told::ByAuthor,
                Told::OfPressure => Told::OfPressure,
            };
            let gone = GonePage { frame, told };
            page(StatusCode::GONE, &gone, &reader)
        }
        Seen::Hidden => reported::answer(app, reader, &note, status).await,
        Seen::Nothing => Err(Error::NotFound("there is no note at this address")),
    }
}

/// The note with a form that came back, where its page still has that form for this member.
pub(super) async fn again(
    app: &Arc<App>,
    member: &SignedIn,
    id: NoteId,
    back: Back,
) -> Result<Option<Response>, Error> {
    let Some(note) = read::note(&app.database, id).await? else { return Ok(None) };
    let Seen::Version(version) = seen(&note, Some(member)) else { return Ok(None) };
    let names: Vec<&str> = back.typed.iter().map(|(name, _)| *name).collect();
    let page = note_page(app, Some(member), (&note, version, (None, None)), Back::default());
    if !page.has_form_of(&names) {
        return Ok(None);
    }
    answer(app, Reader(Some(member.clone())), id, back).await.map(Some)
}

/// What a reader sees of a note.
pub(super) enum Seen<'a> {
    /// A wording of it.
    Version(&'a Version),
    /// That it was withdrawn.
    Withdrawn(Told<&'a str>),
    /// That a report hides it.
    Hidden,
    /// Not even that it exists.
    Nothing,
}

/// What this reader sees. Drafts are their author's alone; what waits is also for whoever decides.
pub(super) fn seen<'a>(note: &'a Note, reader: Option<&SignedIn>) -> Seen<'a> {
    let is_author = reader.is_some_and(|reader| note.is_by(reader.id));
    let decides = |version: &Version| {
        let subject = version.wording.subject.with(note.hidden.unwrap_or(Subject::Usual));
        reader.is_some_and(|reader| sees_waiting(subject, reader.rights))
    };
    let shown = note.in_state(WordingState::Shown);
    match (shown, &note.withdrawn) {
        (Some(shown), _) if is_author || decides(shown) => Seen::Version(shown),
        (Some(_), Some(Withdrawn { by_another: false, .. })) => Seen::Withdrawn(Told::ByAuthor),
        (Some(_), Some(Withdrawn { why, .. })) if pressure::subject(why) == Subject::Usual => {
            Seen::Withdrawn(Told::Why(why.as_str()))
        }
        (Some(_), Some(_)) => Seen::Withdrawn(Told::OfPressure),
        (Some(_), None) if note.hidden.is_some() => Seen::Hidden,
        (Some(shown), None) => Seen::Version(shown),
        (None, _) => {
            let newest = note.versions.last();
            let seen = newest.filter(|version| {
                is_author || (version.state == WordingState::Waiting && decides(version))
            });
            seen.map_or(Seen::Nothing, Seen::Version)
        }
    }
}

fn note_page(
    app: &App,
    reader: Option<&SignedIn>,
    (note, version, (state, newer)): (&Note, &Version, (Option<String>, Option<Newer>)),
    back: Back,
) -> NotePage {
    let NoteId(id) = note.id;
    let wording = &version.wording;
    let is_author = reader.is_some_and(|reader| note.is_by(reader.id));
    let is_withdrawn = note.withdrawn.is_some();
    let is_shown = version.state == WordingState::Shown && !is_withdrawn;
    let may_moderate = reader.is_some_and(|reader| reader.rights.may(Right::Moderate));
    // A correction that speaks of pressure is the inspector's, whatever it stands above.
    let may_correct = reader.is_some_and(|reader| {
        [wording.subject, Subject::Pressure].iter().any(|subject| may_pass(*subject, reader.rights))
    });
    let may_take_away =
        !is_author && reader.is_some_and(|reader| sees_waiting(wording.subject, reader.rights));
    let description = markdown::extract(&wording.text, 160);
    let title = if wording.title.is_empty() { "A note without a title" } else { &wording.title };
    let heading = if back.errors.is_empty() { title.to_owned() } else { format!("Error: {title}") };
    let frame =
        Frame::at(&app.context, Section::Notes, &format!("/notes/{id}"), &heading, &description)
            .for_reader(own_of(reader))
            .saying(words(back.did));
    let is_public = is_shown && note.hidden.is_none();
    let own = reader.and_then(|reader| note.verdicts.iter().find(|judged| judged.by == reader.id));
    let judges = is_public && reader.is_some() && !is_author;
    NotePage {
        frame: if is_public && back.errors.is_empty() { frame } else { frame.of_a_mistake() },
        id,
        title: title.to_owned(),
        by: by(note, version),
        day: day(version.decided_at.unwrap_or(version.saved_at)),
        state,
        corrections: note
            .standing_corrections()
            .map(|said| CorrectionShown {
                day: day(said.made_at),
                html: markdown::html(&said.text),
            })
            .collect(),
        text: Text::of(wording).struck(is_shown && note.standing_corrections().next().is_some()),
        inspected: inspection::read(wording.subject, version.inspected_at).filter(|_| is_public),
        is_shown,
        counts: wording.sense.counts(judged::found(note, false)),
        beside: judged::beside(note, wording.sense),
        verdicts: judged::verdicts(note, wording.sense, may_take_away),
        has_judged: own.is_some(),
        remarks: Remarked::of(note, version, reader),
        newer,
        has_history: (version.mended.is_some() && is_author)
            || !note.corrections.is_empty()
            || note.versions.iter().any(|version| version.state == WordingState::Replaced),
        may_edit: is_author && !is_withdrawn,
        may_begin_anew: is_author && is_withdrawn,
        is_signed_in: reader.is_some(),
        judge: judges.then(|| {
            // What they found of an earlier wording says nothing of this one.
            let own = own.filter(|judged| judged.of == version.id);
            Asked::of(wording.sense, own.map(|judged| &judged.verdict), &back)
        }),
        remark: if is_public && reader.is_some() {
            vec![long(REMARK.name, REMARK.label, &back)]
        } else {
            Vec::new()
        },
        report: if judges {
            vec![long("danger", "What could hurt somebody", &back)]
        } else {
            Vec::new()
        },
        withdraw: if !is_withdrawn && (is_author || (may_moderate && is_shown)) {
            vec![long("why", "Why it is withdrawn", &back)]
        } else {
            Vec::new()
        },
        correct: if is_shown && may_correct && !is_author {
            vec![long("correction", "What is right instead", &back)]
        } else {
            Vec::new()
        },
        errors: back.errors,
        version: version.id.0,
    }
}

/// The wording on its way behind the shown one.
fn newer(note: &Note, shown: &Version, awaited: Awaited) -> Option<Newer> {
    let version = note.on_its_way().filter(|version| version.id != shown.id)?;
    if note.withdrawn.is_some() {
        return None;
    }
    let state = match version.state {
        WordingState::Draft if version.reason.is_empty() => {
            "A newer wording of yours is a draft: readers see this one.".to_owned()
        }
        WordingState::Draft => {
            format!(
                "A newer wording of yours is back with you. What is asked for: {}",
                version.reason
            )
        }
        _ if version.wording.subject == Subject::Pressure => {
            format!("A newer wording of yours waits. {}", inspection::waits(awaited))
        }
        _ => "A newer wording of yours waits for a moderator: readers see this one.".to_owned(),
    };
    let text = Text::of(&version.wording).of_place("newer");
    Some(Newer { state, title: version.wording.title.clone(), text })
}

/// Whose the words are: its author's, and whose fix is in them.
fn by(note: &Note, version: &Version) -> String {
    let by = author(note.author.as_ref().map(|author| author.name.as_str()));
    match &version.mended {
        Some(mended) => format!("{by}, with a small fix by {}", author(mended.by.as_deref())),
        None => by,
    }
}

/// How a note stands, for the few who see more than readers do.
pub(super) fn state(note: &Note, version: &Version, awaited: Awaited) -> Option<String> {
    if let Some(Withdrawn { why, .. }) = &note.withdrawn {
        return Some(format!("Withdrawn: {why}"));
    }
    if note.hidden.is_some() {
        let is_unread = note.reports.iter().all(|report| report.by == read::Sender::Program);
        let words = if is_unread {
            "Hidden from readers: it is heard to speak of boilers, steam or pressure, and an inspector \
             has to read it first."
        } else {
            "Hidden from readers: a report of danger is open."
        };
        return Some(words.to_owned());
    }
    match version.state {
        WordingState::Draft if !version.reason.is_empty() => {
            Some(format!("A change is asked for: {}", version.reason))
        }
        WordingState::Draft => Some("A draft that only you see.".to_owned()),
        WordingState::Waiting if version.wording.subject == Subject::Pressure => {
            Some(inspection::waits(awaited).to_owned())
        }
        WordingState::Waiting => Some("Waiting for a moderator.".to_owned()),
        WordingState::Declined => Some(format!("Declined: {}", version.reason)),
        WordingState::Shown | WordingState::Replaced => None,
    }
}

fn long(name: &'static str, label: &'static str, back: &Back) -> Field {
    let field = Field::new(name, label, "", Kind::Long(back.typed(name).to_owned()));
    field.judged(&back.errors, |_, _| String::new())
}
