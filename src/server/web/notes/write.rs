//! `/notes/new` and `/notes/{id}/edit`: the form of a note, with its preview.
//!
//! The form carries a key made with it, so that sending it twice makes one note. Somebody whose
//! sign-in has ended gets everything typed back in a form that sends it again.

use std::sync::Arc;

use askama::Template;
use axum::body::Bytes;
use axum::extract::{RawQuery, State};
use axum::http::header::RETRY_AFTER;
use axum::http::{HeaderValue, StatusCode};
use axum::response::Response;

use super::filled::Filled;
use super::number::Number;
use super::page::{may_write, page, see_other};
use super::text::Text;
use crate::pages::field::{Field, Kind, items};
use crate::pages::layout::{Door, Frame};
use crate::pages::{FieldError, Query};
use crate::server::auth::{SignedIn, Token};
use crate::server::db::notes::read::{self, Note};
use crate::server::db::notes::write;
use crate::server::extract::{Member, Reader};
use crate::server::notes::wording::{Aim, Typed, Wording};
use crate::server::notes::{NoteId, belongs};
use crate::server::{App, Error};

/// The form of a note.
#[derive(Template)]
#[template(path = "web/notes/form.html")]
struct FormPage {
    frame: Frame,
    heading: &'static str,
    action: String,
    /// What a moderator asked for, or why the last wording was declined.
    asked: Option<String>,
    errors: Vec<FieldError>,
    preview: Option<Text>,
    preview_title: String,
    fields: Vec<Field>,
    done: Vec<Field>,
    last: Vec<Field>,
}

/// What a reader gets who is not signed in any more: everything typed, to be sent again.
#[derive(Template)]
#[template(path = "web/notes/signed_out.html")]
struct SignedOutPage {
    frame: Frame,
    action: String,
    title: String,
    text: String,
    hidden: Vec<(&'static str, String)>,
}

/// Where the form is sent, and what it makes.
enum Place {
    New,
    Edit(NoteId),
}

impl Place {
    fn address(&self) -> String {
        match self {
            Self::New => "/notes/new".to_owned(),
            Self::Edit(NoteId(id)) => format!("/notes/{id}/edit"),
        }
    }

    const fn heading(&self) -> &'static str {
        match self {
            Self::New => "Write a note",
            Self::Edit(_) => "Change the note",
        }
    }
}

/// The empty form, on the thing named in the address: `?on=materials/gunmetal`.
///
/// # Errors
/// Nobody is signed in.
pub async fn begin(
    State(app): State<Arc<App>>,
    Member(member): Member,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    let query = Query::read(query.as_deref().unwrap_or_default());
    let things: Vec<_> = belongs::read(query.get("on")).into_iter().collect();
    let metal = things.iter().find(|thing| thing.id.starts_with("materials/"));
    let thread = things
        .iter()
        .find(|thing| thing.id.matches('/').count() == 2 && thing.id.starts_with("threads/"));
    let drill = things.iter().find(|thing| thing.id.starts_with("drills/"));
    let title =
        |thing: Option<&belongs::Thing>| thing.map(|thing| thing.title.clone()).unwrap_or_default();
    let typed = Typed {
        form_key: new_key()?,
        on: belongs::typed(&things),
        metal: title(metal),
        thread: title(thread),
        drill: title(drill),
        ..Typed::default()
    };
    show(&app, member, &Place::New, &typed, Said::default())
}

/// The form filled with the newest wording.
///
/// # Errors
/// Nobody is signed in, or the note is another member's.
pub async fn edit(
    State(app): State<Arc<App>>,
    Member(member): Member,
    Number(NoteId(id)): Number,
) -> Result<Response, Error> {
    let note = own(&app, &member, NoteId(id)).await?;
    let newest = note.on_its_way().or_else(|| note.versions.last());
    let typed = newest.map(|version| version.wording.typed(&new_key().unwrap_or_default()));
    let asked = newest.map(|version| version.reason.clone()).filter(|reason| !reason.is_empty());
    let said = Said { asked, ..Said::default() };
    show(&app, member, &Place::Edit(NoteId(id)), &typed.unwrap_or_default(), said)
}

/// A new note: previewed, kept on the desk or sent in.
///
/// # Errors
/// It cannot be kept. A form that cannot be read comes back with what was typed.
pub async fn create(
    State(app): State<Arc<App>>,
    reader: Reader,
    body: Bytes,
) -> Result<Response, Error> {
    take(&app, reader, Place::New, &Filled::read(&body)).await
}

/// Another wording of a note: previewed, kept on the desk or sent in.
///
/// # Errors
/// As [`create`].
pub async fn change(
    State(app): State<Arc<App>>,
    reader: Reader,
    Number(NoteId(id)): Number,
    body: Bytes,
) -> Result<Response, Error> {
    take(&app, reader, Place::Edit(NoteId(id)), &Filled::read(&body)).await
}

async fn take(
    app: &Arc<App>,
    reader: Reader,
    place: Place,
    filled: &Filled,
) -> Result<Response, Error> {
    let mut typed = typed(filled);
    let Reader(Some(member)) = reader else {
        return signed_out(app, &place, typed, filled.get("do"));
    };
    // A key that no form of ours made makes a note of its own.
    if !(16..=64).contains(&typed.form_key.len()) || !typed.form_key.is_ascii() {
        typed.form_key = new_key()?;
    }
    let aim = match filled.get("do") {
        "send" => Aim::SendIn,
        _ => Aim::Draft,
    };
    let wording = match Wording::read(&typed, aim) {
        Ok(wording) => wording,
        Err(errors) => {
            return show(app, member, &place, &typed, Said { errors, ..Said::default() });
        }
    };
    if let Place::Edit(id) = place
        && let Err(error) = own(app, &member, id).await
    {
        return not_kept(app, member, &place, &typed, error);
    }
    if filled.get("do") == "preview" {
        let said = Said { preview: Some(wording), ..Said::default() };
        return show(app, member, &place, &typed, said);
    }
    match keep(app, &member, &place, (&typed.form_key, &wording, aim)).await {
        Ok(NoteId(id)) if aim == Aim::Draft => see_other(&format!("/notes/{id}/edit")),
        Ok(NoteId(id)) => see_other(&format!("/notes/mine#note-{id}")),
        Err(error) => not_kept(app, member, &place, &typed, error),
    }
}

async fn keep(
    app: &Arc<App>,
    member: &SignedIn,
    place: &Place,
    (form_key, wording, aim): (&str, &Wording, Aim),
) -> Result<NoteId, Error> {
    may_write(app, member)?;
    let (now, given) = (app.clock.now(), (wording, aim));
    match *place {
        Place::New => Ok(write::new(&app.database, now, member, form_key, given).await?),
        Place::Edit(id) => {
            write::edit(&app.database, now, member, id, given).await?;
            Ok(id)
        }
    }
}

/// The form with everything typed, where the note could not be kept: the disk is full, another program
/// holds the file, the note was withdrawn meanwhile, too much came at once. What is nobody's fault must
/// cost nobody their text.
fn not_kept(
    app: &App,
    member: SignedIn,
    place: &Place,
    typed: &Typed,
    error: Error,
) -> Result<Response, Error> {
    let words = match &error {
        Error::Unavailable(_) | Error::TooMany { .. } => {
            "The note could not be kept just now. Nothing is lost: send it again in a few seconds."
                .to_owned()
        }
        Error::Conflict(words) => {
            format!("The note was not kept: {words}. What you typed is below.")
        }
        // Nothing is theirs there, or the fault is ours: the log then says what it was.
        _ => return Err(error),
    };
    if let Error::Unavailable(source) = &error {
        tracing::warn!(%source, "a note could not be kept");
    }
    let errors = vec![FieldError::new("title", words)];
    let said = Said { errors, status: Some(error.status()), ..Said::default() };
    let mut response = show(app, member, place, typed, said)?;
    if let Some(seconds) = error.retry_after() {
        response.headers_mut().insert(RETRY_AFTER, HeaderValue::from(seconds));
    }
    Ok(response)
}

/// What the page says beside the form.
#[derive(Default)]
struct Said {
    asked: Option<String>,
    errors: Vec<FieldError>,
    preview: Option<Wording>,
    /// The status, where it is not that of a form that could not be read.
    status: Option<StatusCode>,
}

fn show(
    app: &App,
    member: SignedIn,
    place: &Place,
    typed: &Typed,
    said: Said,
) -> Result<Response, Error> {
    let heading = place.heading();
    let is_wrong = !said.errors.is_empty();
    let title =
        if is_wrong { format!("Error: {}", heading.to_lowercase()) } else { heading.to_owned() };
    let frame = Frame::at(
        &app.context,
        Door::Notes,
        &place.address(),
        &title,
        "What a metal, a thread or a drill did.",
    );
    let [fields, done, last] = fields(typed, &said.errors);
    let form = FormPage {
        frame: frame.of_a_mistake(),
        heading,
        action: place.address(),
        asked: said.asked,
        errors: said.errors,
        preview_title: said
            .preview
            .as_ref()
            .map(|wording| wording.title.clone())
            .unwrap_or_default(),
        preview: said.preview.as_ref().map(Text::of),
        fields,
        done,
        last,
    };
    let usual = if is_wrong { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    page(said.status.unwrap_or(usual), &form, &Reader(Some(member)))
}

/// The fields: what every note has, what was done, and where it belongs.
fn fields(typed: &Typed, errors: &[FieldError]) -> [Vec<Field>; 3] {
    let text = Field::text;
    let key = Field::text("form_key", "", "", &typed.form_key).known();
    let long = Kind::Long(typed.text.clone());
    let is_pressure = [(
        "yes".to_owned(),
        "It is about a boiler, steam or pressure".to_owned(),
        typed.is_pressure,
    )];
    let ticks = Kind::Ticks(items("pressure", is_pressure));
    let all = [
        vec![
            key,
            text(
                "title",
                "Title",
                "What metal, what was done: Tapping 4 BA in copper",
                &typed.title,
            ),
            Field::new(
                "text",
                "What happened",
                "Plain text, or Markdown: **strong**, - a list, > a quotation",
                long,
            ),
        ],
        vec![
            text("metal", "Metal", "As you know it: gunmetal, EN1A, the blue bar", &typed.metal),
            text("thread", "Thread", "4 BA, M3, 1/4 x 40 ME", &typed.thread),
            text("drill", "Drill", "No. 43, 2.3 mm, 7/64 in", &typed.drill),
            text("depth", "Depth", "", &typed.depth),
            text("lubricant", "Lubricant", "", &typed.lubricant),
            text("speed", "Speed", "", &typed.speed),
            text("machine", "Machine or set-up", "", &typed.machine),
        ],
        vec![
            text(
                "on",
                "Show it on the pages of",
                "Metals, threads, drills, calculators, with commas: gunmetal, 4 BA",
                &typed.on,
            ),
            Field::new(
                "pressure",
                "Boilers and pressure",
                "Such a note waits for the club’s inspector.",
                ticks,
            ),
        ],
    ];
    let judged = |field: Field| field.judged(errors, |_, _| String::new());
    all.map(|fields| fields.into_iter().map(judged).collect())
}

/// The page for somebody whose sign-in has ended while they typed: nothing is kept here, and so
/// nothing has to be cleared away; the page itself carries the note until it is sent again.
fn signed_out(app: &App, place: &Place, typed: Typed, what: &str) -> Result<Response, Error> {
    let title = "You are signed out; your note is here";
    let frame = Frame::at(&app.context, Door::Notes, &place.address(), title, title);
    let pressure = if typed.is_pressure { "yes" } else { "" };
    let hidden = [
        ("form_key", typed.form_key),
        ("metal", typed.metal),
        ("thread", typed.thread),
        ("drill", typed.drill),
        ("depth", typed.depth),
        ("lubricant", typed.lubricant),
        ("speed", typed.speed),
        ("machine", typed.machine),
        ("on", typed.on),
        ("pressure", pressure.to_owned()),
        ("do", if what == "send" { "send" } else { "draft" }.to_owned()),
    ];
    let form = SignedOutPage {
        frame: frame.of_a_mistake(),
        action: place.address(),
        title: typed.title,
        text: typed.text,
        hidden: hidden.into_iter().filter(|(_, value)| !value.is_empty()).collect(),
    };
    page(StatusCode::UNAUTHORIZED, &form, &Reader(None))
}

fn typed(filled: &Filled) -> Typed {
    let typed = |name| filled.get(name).to_owned();
    Typed {
        form_key: typed("form_key"),
        title: typed("title"),
        text: typed("text"),
        metal: typed("metal"),
        thread: typed("thread"),
        drill: typed("drill"),
        depth: typed("depth"),
        lubricant: typed("lubricant"),
        speed: typed("speed"),
        machine: typed("machine"),
        on: typed("on"),
        is_pressure: !filled.get("pressure").is_empty(),
    }
}

/// A note of the member's own that can still be changed. Of another's nobody learns here whether it
/// exists.
async fn own(app: &App, member: &SignedIn, id: NoteId) -> Result<Note, Error> {
    let note = read::note(&app.database, id).await?;
    let note = note.filter(|note| note.is_by(member.id));
    let note = note.ok_or(Error::NotFound("no note of yours stands at this address"))?;
    if note.withdrawn_why.is_some() {
        return Err(Error::Conflict("the note is withdrawn: write another".to_owned()));
    }
    Ok(note)
}

fn new_key() -> Result<String, Error> {
    let token = Token::new().map_err(|error| Error::Internal(error.into()))?;
    Ok(token.secret().to_owned())
}
