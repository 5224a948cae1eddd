//! The form of a note as a page: its fields as typed, what is said beside them, the preview; and the
//! page that gives everything back to somebody whose sign-in has ended. Leaves out what becomes of
//! what was sent, which is in [`super::write`].

use askama::Template;
use axum::http::StatusCode;
use axum::response::Response;

use super::page::page;
use super::text::Text;
use crate::auth::SignedIn;
use crate::extract::{Fields, Reader};
use crate::notes::NoteId;
use crate::notes::wording::{Typed, Wording};
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind, items};
use holewright_pages::layout::{Frame, Section};

/// Where the form is sent, and what it makes.
pub(super) enum Place {
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

/// What the page says beside the form.
#[derive(Default)]
pub(super) struct Said {
    /// What a moderator asked for, or why the last wording was declined.
    pub(super) asked: Option<String>,
    /// What was wrong with a field.
    pub(super) errors: Vec<FieldError>,
    /// How the note would look.
    pub(super) preview: Option<Wording>,
    /// The status, where it is not that of a form that could not be read.
    pub(super) status: Option<StatusCode>,
}

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

/// What was typed in each field.
pub(super) fn typed(fields: &Fields) -> Typed {
    let typed = |name| fields.as_typed(name).to_owned();
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
        is_pressure: fields.ticked("pressure"),
    }
}

/// The form with what was typed.
pub(super) fn show(
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
        Section::Notes,
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
pub(super) fn signed_out(
    app: &App,
    place: &Place,
    typed: Typed,
    what: &str,
) -> Result<Response, Error> {
    let title = "You are signed out; your note is here";
    let frame = Frame::at(&app.context, Section::Notes, &place.address(), title, title);
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
