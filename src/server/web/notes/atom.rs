//! `/notes.atom`: the newest notes as a feed (RFC 4287).
//!
//! Ids are made of the address readers see and the note's number, so a feed reader knows a note again
//! after any change; what was changed shows in `updated`, which nothing else moves.
//!
//! It is the same for every reader, and kept until something changes.

use std::fmt::Write;
use std::sync::Arc;

use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::when::moment;
use super::item::author;
use super::page::answer;
use crate::db::notes::lists::{self, Filter, Listed};
use crate::extract::{Asker, Reader};
use crate::rules::Keep;
use crate::rules::notes::found::Sense;
use crate::rules::notes::markdown;
use crate::{App, Error};

/// How many notes stand in the feed.
const MOST: i64 = 50;
/// The year in every id: ids were first given out in it (RFC 4151).
const SINCE: &str = "2026";

/// The feed.
///
/// # Errors
/// The database cannot be read.
pub async fn show(State(app): State<Arc<App>>, asker: Asker) -> Result<Response, Error> {
    let notes = lists::shown(&app.database, &Filter::default(), None, MOST).await?;
    let base = app.base_url.as_str().to_owned();
    let club = app.context.club.name.clone();
    let feed = app.apart.run(asker.client, move || feed(&base, &club, &notes)).await?;
    let media = "application/atom+xml; charset=utf-8";
    let mut response = answer(StatusCode::OK, media, feed, &Reader(None));
    response.extensions_mut().insert(Keep);
    Ok(response)
}

fn feed(base: &str, club: &str, notes: &[Listed]) -> String {
    let title = match club {
        "" => "Shop notes".to_owned(),
        club => format!("Shop notes – {}", escaped(club)),
    };
    let tag = tag(base);
    let base = escaped(base);
    // An empty feed has not changed since ids were first given out.
    let updated = notes.iter().map(Listed::changed_at).max();
    let updated = updated.map_or_else(|| format!("{SINCE}-01-01T00:00:00Z"), moment);
    let mut feed = format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n\
         <feed xmlns=\"http://www.w3.org/2005/Atom\" xml:lang=\"en-GB\" xml:base=\"{base}/\">\n\
         <id>{tag}</id>\n<title>{title}</title>\n\
         <subtitle>Members’ experience, not figures of the tables</subtitle>\n\
         <updated>{updated}</updated>\n\
         <link rel=\"self\" type=\"application/atom+xml\" href=\"{base}/notes.atom\"/>\n\
         <link rel=\"alternate\" type=\"text/html\" href=\"{base}/notes\"/>\n"
    );
    for note in notes {
        let (title, by) = (escaped(&note.wording.title), escaped(&author(note.author.as_deref())));
        let (made, changed) = (moment(note.made_at), moment(note.changed_at()));
        let _ = write!(
            feed,
            "<entry>\n<id>{tag}/{id}</id>\n<title>{title}</title>\n\
             <author><name>{by}</name></author>\n<published>{made}</published>\n\
             <updated>{changed}</updated>\n\
             <link rel=\"alternate\" type=\"text/html\" href=\"{base}/notes/{id}\"/>\n\
             <content type=\"html\">{content}</content>\n</entry>\n",
            id = note.id,
            content = escaped(&content(note)),
        );
    }
    feed.push_str("</feed>\n");
    feed
}

/// The corrections, then what they correct. What others found changes no text, and so stands elsewhere.
fn content(note: &Listed) -> String {
    let mut html = String::new();
    if note.wording.sense == Sense::Warning {
        html.push_str("<p><strong>A warning:</strong> it says what went wrong.</p>");
    }
    for correction in &note.corrections {
        let _ = write!(html, "<h3>Correction</h3>{}", markdown::html(&correction.text));
    }
    let text = markdown::html(&note.wording.text);
    if note.corrections.is_empty() {
        html.push_str(&text);
    } else {
        let _ = write!(html, "<del>{text}</del>");
    }
    html
}

/// `tag:club.example,2026:notes`: of the host alone, whatever port or scheme it is reached by.
pub(super) fn tag(base: &str) -> String {
    let host = base.split_once("://").map_or(base, |(_, rest)| rest);
    let host = host.split(['/', ':']).next().unwrap_or_default();
    format!("tag:{},{SINCE}:notes", escaped(host))
}

/// Text as XML may hold it: five marks coded, what no document may hold left out.
pub(super) fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\'' => escaped.push_str("&#39;"),
            '\n' | '\t' => escaped.push(c),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => {}
            c => escaped.push(c),
        }
    }
    escaped
}
