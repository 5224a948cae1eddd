//! `/notes.csv` and `/notes.json`: every shown note, newest first, sent as it is read.
//!
//! A club's notes may be many: they are read a hundred at a time, and each hundred goes out before the
//! next is read.

use std::pin::Pin;
use std::sync::Arc;
use std::task::{Context, Poll};

use axum::body::{Body, Bytes, HttpBody};
use axum::extract::State;
use axum::http::HeaderValue;
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::Response;
use hyper::body::Frame;
use serde_json::json;
use tokio::sync::mpsc::{Receiver, Sender, channel};

use super::page::moment;
use crate::clock::UnixSeconds;
use crate::db::notes::lists::{self, Filter, Listed};
use crate::notes::state::Subject;
use crate::{App, Error};
use holewright_core::export::{Cell, Table};

/// How many notes are read at once.
const BATCH: i64 = 100;

const COLUMNS: [&str; 19] = [
    "id",
    "url",
    "title",
    "author",
    "made_at",
    "shown_at",
    "confirmed_at",
    "worked",
    "did_not",
    "pressure",
    "metal",
    "thread",
    "drill",
    "depth",
    "lubricant",
    "speed",
    "machine",
    "belongs_to",
    "text",
];

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
    app: &App,
    form: Form,
    first: Vec<Listed>,
    sender: Sender<Result<Bytes, Error>>,
) -> Result<(), Error> {
    let mut text = (form.begin)(app);
    let mut place = Place::First;
    let mut notes = first;
    loop {
        for note in &notes {
            text.push_str(&(form.each)(app, note, place));
            place = Place::Later;
        }
        let last = notes.last().map(|note| note.id);
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
    let text = |text: &str| Cell::Text(text.to_owned());
    let number = |number: i64| Cell::Number(number.to_string());
    let (wording, done) = (&note.wording, &note.wording.done);
    let row = vec![
        number(note.id),
        text(&address(app, note)),
        text(&wording.title),
        text(note.author.as_deref().unwrap_or_default()),
        text(&moment(note.made_at)),
        text(&moment(note.shown_at)),
        text(&note.confirmed_at.map(moment).unwrap_or_default()),
        number(note.worked),
        number(note.did_not),
        text(if wording.subject == Subject::Pressure { "yes" } else { "no" }),
        text(&done.metal),
        text(&done.thread),
        text(&done.drill),
        text(&done.depth),
        text(&done.lubricant),
        text(&done.speed),
        text(&done.machine),
        text(&things(note).join(" ")),
        text(&whole_text(note)),
    ];
    let table = Table { columns: &COLUMNS, rows: vec![row] }.csv();
    table.split_once("\r\n").map(|(_, row)| row.to_owned()).unwrap_or_default()
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
    let (wording, done) = (&note.wording, &note.wording.done);
    let at = |at: Option<UnixSeconds>| at.map(moment);
    let corrections = note.corrections.iter();
    let corrections: Vec<_> = corrections
        .map(|said| json!({ "text": said.text, "made_at": moment(said.made_at) }))
        .collect();
    let object = json!({
        "id": note.id,
        "url": address(app, note),
        "title": wording.title,
        "author": note.author,
        "made_at": moment(note.made_at),
        "shown_at": moment(note.shown_at),
        "confirmed_at": at(note.confirmed_at),
        "worked": note.worked,
        "did_not": note.did_not,
        "pressure": wording.subject == Subject::Pressure,
        "metal": done.metal,
        "thread": done.thread,
        "drill": done.drill,
        "depth": done.depth,
        "lubricant": done.lubricant,
        "speed": done.speed,
        "machine": done.machine,
        "belongs_to": things(note),
        "corrections": corrections,
        "text": wording.text,
    });
    let comma = if place == Place::First { "" } else { "," };
    format!("{comma}\n{object}")
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
