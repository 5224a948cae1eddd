//! `/notes.csv` and `/notes.json`: every shown note, newest first, sent as it is read.
//!
//! A club's notes may be many: they are read a hundred at a time, and each hundred goes out before the
//! next is read.

use std::iter::repeat;
use std::pin::Pin;
use std::sync::{Arc, LazyLock};
use std::task::{Context, Poll};

use axum::body::{Body, Bytes, HttpBody};
use axum::extract::State;
use axum::http::HeaderValue;
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::Response;
use hyper::body::Frame;
use serde_json::{Map, Value, json};
use tokio::sync::mpsc::{Receiver, Sender, channel};

use super::super::apart::aside;
use super::super::when::moment;
use super::inspection;
use crate::db::notes::lists::{self, Filter, Listed};
use crate::rules::notes::fields;
use crate::rules::notes::found::Sense;
use crate::rules::notes::state::Subject;
use crate::{App, Error};
use holewright_core::export::{Cell, Table};

/// How many notes are read at once.
const BATCH: i64 = 100;

/// A column of the CSV and a key of the JSON.
#[derive(Clone, Copy)]
struct Column {
    name: &'static str,
    value: fn(&App, &Listed) -> Value,
}

/// The columns before those of what was done.
const ABOUT: [Column; 10] = [
    Column { name: "id", value: |_, note| note.id.into() },
    Column { name: "url", value: |app, note| address(app, note).into() },
    Column { name: "title", value: |_, note| note.wording.title.as_str().into() },
    Column { name: "author", value: |_, note| note.author.as_deref().into() },
    Column { name: "made_at", value: |_, note| moment(note.made_at).into() },
    Column { name: "shown_at", value: |_, note| moment(note.shown_at).into() },
    Column { name: "confirmed_at", value: |_, note| note.confirmed_at.map(moment).into() },
    Column { name: "worked", value: |_, note| note.worked.into() },
    Column { name: "did_not", value: |_, note| note.did_not.into() },
    Column {
        name: "pressure",
        value: |_, note| (note.wording.subject == Subject::Pressure).into(),
    },
];

/// What others found, in words: `worked` and `did_not` alone say of a warning what they do not mean.
fn found(note: &Listed) -> String {
    note.wording.sense.counts((note.worked, note.did_not))
}

/// The columns that came later, behind all that shipped before them.
const LATER: [Column; 4] = [
    Column { name: "found", value: |_, note| found(note).into() },
    Column { name: "warning", value: |_, note| (note.wording.sense == Sense::Warning).into() },
    Column {
        name: "inspected",
        value: |_, note| inspection::read(note.wording.subject, note.inspected_at).into(),
    },
    Column { name: "inspected_at", value: |_, note| note.inspected_at.map(moment).into() },
];

/// The columns behind them.
const BELONGS_TO: &str = "belongs_to";
const TEXT: &str = fields::TEXT.name;

static COLUMNS: LazyLock<Vec<&str>> = LazyLock::new(|| {
    let about = ABOUT.iter().map(|column| column.name);
    let done = fields::DONE.iter().map(|field| field.name);
    let later = LATER.iter().map(|column| column.name);
    about.chain(done).chain([BELONGS_TO, TEXT]).chain(later).collect()
});

/// The notes as CSV.
///
/// # Errors
/// The database cannot be read.
pub async fn csv(State(app): State<Arc<App>>) -> Result<Response, Error> {
    send(
        app,
        Form { media: "text/csv; charset=utf-8", ends: "csv", begin: head, each: row, end: "" },
    )
    .await
}

/// The notes as JSON.
///
/// # Errors
/// The database cannot be read.
pub async fn json(State(app): State<Arc<App>>) -> Result<Response, Error> {
    let form =
        Form { media: "application/json", ends: "json", begin: opening, each: object, end: "]}\n" };
    send(app, form).await
}

/// How one sort of file is written.
#[derive(Clone, Copy)]
struct Form {
    media: &'static str,
    ends: &'static str,
    begin: fn(&App) -> String,
    /// A note; whether it is the first.
    each: fn(&App, &Listed, Place) -> String,
    end: &'static str,
}

/// Where a note stands in the file.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    First,
    Later,
}

async fn send(app: Arc<App>, form: Form) -> Result<Response, Error> {
    // The first hundred before the status: a database that cannot be read is not half a file.
    let first = lists::shown(&app.database, &Filter::default(), None, BATCH).await?;
    let day = moment(app.clock.now()).chars().take(10).collect::<String>();
    let name = format!("attachment; filename=\"shop-notes-{day}.{}\"", form.ends);
    let (sender, receiver) = channel(2);
    tokio::spawn(async move {
        if let Err(error) = write(&app, form, first, sender).await {
            tracing::error!(%error, "the notes cannot be sent to their end");
        }
    });
    let mut response = Response::new(Body::new(Pieces(receiver)));
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static(form.media));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("no-cache"));
    let name = HeaderValue::from_str(&name).map_err(|error| Error::Internal(error.into()))?;
    headers.insert(CONTENT_DISPOSITION, name);
    Ok(response)
}

async fn write(
    app: &Arc<App>,
    form: Form,
    first: Vec<Listed>,
    sender: Sender<Result<Bytes, Error>>,
) -> Result<(), Error> {
    let mut text = (form.begin)(app);
    let mut place = Place::First;
    let mut notes = first;
    loop {
        let last = notes.last().map(|note| note.id);
        let app_too = Arc::clone(app);
        let lines = aside(move || {
            let places = [place].into_iter().chain(repeat(Place::Later));
            let lines = notes.iter().zip(places);
            lines.map(|(note, place)| (form.each)(&app_too, note, place)).collect::<String>()
        });
        text.push_str(&lines.await?);
        place = Place::Later;
        // A reader who has gone needs no more.
        if sender.send(Ok(std::mem::take(&mut text).into())).await.is_err() {
            return Ok(());
        }
        let Some(last) = last else { break };
        notes = match lists::shown(&app.database, &Filter::default(), Some(last), BATCH).await {
            Ok(notes) if notes.is_empty() => break,
            Ok(notes) => notes,
            Err(error) => {
                // The connection breaks off, so that nobody takes the part for the whole.
                let _ = sender.send(Err(Error::Stopping)).await;
                return Err(error.into());
            }
        };
    }
    let _ = sender.send(Ok(Bytes::from_static(form.end.as_bytes()))).await;
    Ok(())
}

fn head(_: &App) -> String {
    Table { columns: &COLUMNS, rows: Vec::new() }.csv()
}

fn row(app: &App, note: &Listed, _: Place) -> String {
    let about = ABOUT.iter().map(|column| cell((column.value)(app, note)));
    let done = note.wording.done.each().map(|(_, typed)| Cell::Text(typed.to_owned()));
    let last = [things(note).join(" "), whole_text(note)].map(Cell::Text);
    let later = LATER.iter().map(|column| cell((column.value)(app, note)));
    let row = about.chain(done).chain(last).chain(later).collect();
    let table = Table { columns: &COLUMNS, rows: vec![row] }.csv();
    table.split_once("\r\n").map(|(_, row)| row.to_owned()).unwrap_or_default()
}

fn cell(value: Value) -> Cell {
    match value {
        Value::String(text) => Cell::Text(text),
        Value::Number(number) => Cell::Number(number.to_string()),
        Value::Bool(is_so) => Cell::Text(if is_so { "yes" } else { "no" }.to_owned()),
        _ => Cell::Text(String::new()),
    }
}

/// The corrections first: a text that was corrected must not travel without them.
fn whole_text(note: &Listed) -> String {
    let corrections = note.corrections.iter().map(|said| format!("Correction: {}\n\n", said.text));
    corrections.chain([note.wording.text.clone()]).collect()
}

fn opening(app: &App) -> String {
    let source = serde_json::Value::from(app.base_url.as_str());
    let program = concat!("Holewright ", env!("CARGO_PKG_VERSION"));
    format!(
        "{{\"source\":{source},\"version\":\"{program}\",\"standing\":\"members’ experience, not figures of the tables\",\"notes\":["
    )
}

fn object(app: &App, note: &Listed, place: Place) -> String {
    let about = ABOUT.iter().map(|column| (column.name, (column.value)(app, note)));
    let done = note.wording.done.each().map(|(field, typed)| (field.name, typed.into()));
    let corrections = note.corrections.iter();
    let corrections: Vec<Value> = corrections
        .map(|said| json!({ "text": said.text, "made_at": moment(said.made_at) }))
        .collect();
    let later = LATER.iter().map(|column| (column.name, (column.value)(app, note)));
    let last = [
        (BELONGS_TO, things(note).into()),
        ("corrections", corrections.into()),
        (TEXT, note.wording.text.as_str().into()),
    ];
    let object: Map<String, Value> = about
        .chain(done)
        .chain(last)
        .chain(later)
        .map(|(name, value)| (name.to_owned(), value))
        .collect();
    let comma = if place == Place::First { "" } else { "," };
    format!("{comma}\n{}", Value::Object(object))
}

fn address(app: &App, note: &Listed) -> String {
    format!("{}/notes/{}", app.base_url.as_str(), note.id)
}

fn things(note: &Listed) -> Vec<String> {
    note.wording.things.iter().map(|thing| format!("/{}", thing.id)).collect()
}

/// A body that comes in pieces.
struct Pieces(Receiver<Result<Bytes, Error>>);

impl HttpBody for Pieces {
    type Data = Bytes;
    type Error = Error;

    fn poll_frame(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
    ) -> Poll<Option<Result<Frame<Bytes>, Error>>> {
        self.0.poll_recv(context).map(|piece| piece.map(|piece| piece.map(Frame::data)))
    }
}
