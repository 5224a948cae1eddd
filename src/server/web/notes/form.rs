//! The form of a note as a page: its fields as typed, what is said beside them, the preview; and the
//! page that gives everything back to somebody whose sign-in has ended. Leaves out what becomes of
//! what was sent, which is in [`super::write`].

use std::slice;

use askama::Template;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::page::{own, words};
use super::at_hand::AtHand;
use super::late::Late;
use super::page::page;
use super::text::Text;
use crate::db::notes::alike::Like;
use crate::extract::{Fields, Reader};
use crate::rules::auth::SignedIn;
use crate::rules::deed::Did;
use crate::rules::notes::fields::{Done, Lines, NoteField, TEXT, TITLE};
use crate::rules::notes::meant::{Answer, Answers, Question};
use crate::rules::notes::within;
use crate::rules::notes::wording::{Typed, Wording};
use crate::rules::notes::{NoteId, belongs};
use crate::{App, Error};
use holewright_core::units::print;
use holewright_core::units::read::one_of;
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind, items};
use holewright_pages::layout::{Frame, Section};

/// The field that says which wording the form was filled with.
pub(super) const MADE_FROM: &str = "made_from";

/// The tick of a note that warns.
const WARNING: &str = "warning";

/// The field that names a material.
const MATERIAL: &str = "material";

/// More answers than stand side by side are a list.
const MOST_SIDE_BY_SIDE: usize = 8;

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

/// Whoever writes, and what they have at hand.
#[derive(Clone)]
pub(super) struct Writer {
    pub(super) member: SignedIn,
    pub(super) at_hand: AtHand,
}

/// What the page says beside the form.
#[derive(Default)]
pub(super) struct Remarks {
    /// What stands meanwhile, and was not overwritten.
    pub(super) late: Option<Late>,
    /// What a moderator asked for, or why the last wording was declined.
    pub(super) asked: Option<String>,
    /// What was wrong with a field.
    pub(super) errors: Vec<FieldError>,
    /// How the note would look.
    pub(super) preview: Option<Wording>,
    /// What is asked of what it nearly names.
    pub(super) questions: Vec<Question>,
    /// An earlier note that says much the same.
    pub(super) like: Option<Like>,
    /// The status, where it is not that of a form that could not be read.
    pub(super) status: Option<StatusCode>,
    /// What was done a moment ago.
    pub(super) did: Option<Did>,
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
    late: Option<Late>,
    errors: Vec<FieldError>,
    preview: Option<Text>,
    preview_title: String,
    like: Option<Like>,
    /// On which pages it will be shown.
    pages: String,
    /// What is asked of what it nearly names.
    questions: Vec<Field>,
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
        made_from: typed(MADE_FROM),
        title: typed(TITLE.name),
        text: typed(TEXT.name),
        done: Done::from_each(|field| field.filled_in(|name| fields.as_typed(name)).to_owned()),
        on: typed(belongs::FIELD),
        is_pressure: fields.ticked("pressure"),
        is_warning: fields.ticked(WARNING),
        meant: Answers::read(|field| fields.as_typed(field)),
    }
}

/// The form with what was typed.
pub(super) fn form_with(
    app: &App,
    Writer { member, at_hand }: Writer,
    place: &Place,
    typed: &Typed,
    remarks: Remarks,
) -> Result<Response, Error> {
    let heading = place.heading();
    let is_wrong = !remarks.errors.is_empty() || remarks.late.is_some();
    let title =
        if is_wrong { format!("Error: {}", heading.to_lowercase()) } else { heading.to_owned() };
    let frame = Frame::at(
        &app.context,
        Section::Notes,
        &place.address(),
        &title,
        "What a material, a thread or a drill did.",
    );
    let [fields, done, last] = fields(typed, &remarks.errors);
    let form = FormPage {
        frame: frame.of_a_mistake().for_reader(Some(own(&member))).saying(words(remarks.did)),
        heading,
        action: place.address(),
        asked: remarks.asked,
        late: remarks.late,
        like: remarks.like,
        preview_title: remarks
            .preview
            .as_ref()
            .map(|wording| wording.title.clone())
            .unwrap_or_default(),
        preview: remarks.preview.as_ref().map(Text::prompting),
        pages: remarks.preview.as_ref().map(shown_on).unwrap_or_default(),
        questions: remarks.questions.iter().map(|asked| question(asked, &remarks.errors)).collect(),
        fields,
        done: at_hand.offered(done, typed),
        last,
        errors: remarks.errors,
    };
    let usual = if is_wrong { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    page(remarks.status.unwrap_or(usual), &form, &Reader(Some(member)))
}

/// On which pages a note will be shown, in a sentence.
pub(super) fn shown_on(wording: &Wording) -> String {
    let typed = wording.done.text(MATERIAL);
    let kind = within::of_kind(typed);
    let is_left_open = !kind.is_empty() && !kind.iter().any(|thing| wording.things.contains(thing));
    let found = if is_left_open {
        format!(" A search of the notes for “{typed}” finds it.")
    } else {
        String::new()
    };
    match wording.things.as_slice() {
        [] => format!(
            "It will be shown among the notes, and on no page of the reference: name the material and the thread in \
             the fields, one each, for that.{found}"
        ),
        [_] => format!(
            "It will be shown on the page of {}.{found}",
            belongs::in_words(&wording.things)
        ),
        _ => format!(
            "It will be shown on the pages of {}.{found}",
            belongs::in_words(&wording.things)
        ),
    }
}

/// What is asked of a field that only nearly names something, or names a kind.
pub(super) fn asks(question: &Question) -> String {
    if question.field == "meant_drill" && question.is_of_a_kind() {
        let drills = question.things.iter().map(|thing| belongs::in_words(slice::from_ref(thing)));
        let drills: Vec<String> = drills.collect();
        let drills: Vec<&str> = drills.iter().map(String::as_str).collect();
        return format!("“{}”: {}?", question.typed, one_of(&drills));
    }
    if question.is_of_a_kind() {
        let has_figure = question.typed.chars().any(|letter| letter.is_ascii_digit());
        let is_its_name = !has_figure && !within::of_kind(&question.typed).is_empty();
        let kind =
            if is_its_name { print::running(&question.typed) } else { "of these".to_owned() };
        return format!("“{}”: which {kind}?", question.typed);
    }
    let page = belongs::in_words(&question.things);
    format!("“{}”: put the note on the page of {page}?", question.typed)
}

/// The same as a field of a form.
pub(super) fn question(question: &Question, errors: &[FieldError]) -> Field {
    let answers: Vec<(Answer, String)> = if question.is_of_a_kind() {
        let of_it = question.things.iter().filter_map(|thing| {
            // The slug of a material, the series of a drill.
            let word = thing.id.split('/').nth(1)?;
            Some((Answer::read(word), thing.title.clone()))
        });
        of_it.chain([(Answer::Unknown, "I don’t know which".to_owned())]).collect()
    } else {
        let page = belongs::in_words(&question.things);
        let yes = format!("Yes, on the page of {page}");
        vec![(Answer::Yes, yes), (Answer::No, "No, as I typed it".to_owned())]
    };
    let is_long = answers.len() > MOST_SIDE_BY_SIDE;
    let open = is_long.then(|| (Answer::Open, "Choose one".to_owned()));
    let choices = open.into_iter().chain(answers);
    let choices = choices.map(|(answer, words)| (answer.word(), words, question.answer == answer));
    let label = match question.field {
        "meant_material" => "The material",
        "meant_thread" => "The thread",
        _ => "The drill",
    };
    let items = items(choices);
    let kind = if is_long { Kind::List(items) } else { Kind::Pick(items) };
    let is_missed = errors.iter().any(|error| error.field == question.field);
    let hint = if is_missed { String::new() } else { asks(question) };
    Field::new(question.field, label, hint, kind).judged(errors, |_, _| String::new())
}

/// The fields: what every note has, what was done, and where it belongs.
fn fields(typed: &Typed, errors: &[FieldError]) -> [Vec<Field>; 3] {
    let key = Field::text("form_key", "", "", &typed.form_key).known();
    let made_from = Field::text(MADE_FROM, "", "", &typed.made_from).known();
    let is_pressure = [("yes", "It is about a boiler, steam or pressure", typed.is_pressure)];
    let ticks = Kind::Ticks(items(is_pressure));
    let is_warning = [("yes", "This note is a warning", typed.is_warning)];
    let warns = Field::new(
        WARNING,
        "What went wrong",
        "Others are then asked whether it happened to them too, not whether it worked.",
        Kind::Ticks(items(is_warning)),
    );
    let all = [
        vec![key, made_from, control(TITLE, &typed.title), control(TEXT, &typed.text)],
        typed.done.each().map(|(field, typed)| control(field, typed)).collect(),
        vec![
            warns,
            Field::text(
                belongs::FIELD,
                "Show it on the pages of",
                "Materials, threads, drills, calculators, with commas: gunmetal, 4 BA",
                &typed.on,
            ),
            Field::new(
                "pressure",
                "Boilers and pressure",
                "Such a note waits for an inspector.",
                ticks,
            ),
        ],
    ];
    let judged = |field: Field| field.judged(errors, |_, _| String::new());
    all.map(|fields| fields.into_iter().map(judged).collect())
}

/// A field of a note as the form shows it.
pub(super) fn control(field: NoteField, typed: &str) -> Field {
    let kind = match field.lines {
        Lines::One if field.name == TITLE.name => Kind::Words(typed.to_owned()),
        Lines::One => Kind::Text(typed.to_owned()),
        Lines::Several => Kind::Long(typed.to_owned()),
    };
    Field::new(field.name, field.label, field.hint, kind)
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
    let warning = if typed.is_warning { "yes" } else { "" };
    let send = if what == "send" { "send" } else { "draft" };
    let done = typed.done.each().map(|(field, typed)| (field.name, typed.to_owned()));
    let known = [("form_key", typed.form_key), (MADE_FROM, typed.made_from)];
    let hidden = known.into_iter().chain(done).chain([
        (belongs::FIELD, typed.on),
        ("pressure", pressure.to_owned()),
        (WARNING, warning.to_owned()),
        ("do", send.to_owned()),
    ]);
    let meant = typed.meant.each().map(|(field, answer)| (field, answer.word().to_owned()));
    let hidden = hidden.chain(meant);
    let form = SignedOutPage {
        frame: frame.of_a_mistake(),
        action: place.address(),
        title: typed.title,
        text: typed.text,
        hidden: hidden.filter(|(_, value)| !value.is_empty()).collect(),
    };
    page(StatusCode::UNAUTHORIZED, &form, &Reader(None))
}
