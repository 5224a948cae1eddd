//! `/notes/newsletter`: the notes of a month, or the best confirmed, as a page for paper and as plain text.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::Response;

use super::super::when::day;
use super::inspection;
use super::item::author;
use super::page::{answer, page};
use super::text::{Text, caution};
use crate::db::notes::{Listed, printed};
use crate::extract::{Asker, Reader};
use crate::rules::notes::found::Sense;
use crate::rules::notes::newsletter::{self, Issue, MOST, Plain};
use crate::rules::notes::{dangers, markdown};
use crate::{App, Error};
use holewright_pages::layout::{Frame, Section};
use holewright_pages::link::Link;

const NO_SUCH: Error = Error::NotFound(
    "there is no newsletter of this name: a month that has come is, such as 2026-11",
);

#[derive(Template)]
#[template(path = "web/notes/newsletters.html")]
struct IndexPage {
    frame: Frame,
    best: Link,
    months: Vec<Link>,
}

#[derive(Template)]
#[template(path = "web/notes/newsletter.html")]
struct NewsletterPage {
    frame: Frame,
    title: String,
    /// Whose notes they are; empty where the club has no name.
    club: String,
    plain: String,
    notes: Vec<NoteShown>,
    /// How many more there are than fit.
    more: Option<String>,
    /// What is said of every note.
    caution: &'static str,
}

/// A note on the page.
struct NoteShown {
    title: String,
    by: String,
    corrections: Vec<String>,
    text: Text,
    counts: String,
    inspected: Option<String>,
    address: String,
}

/// What newsletters there are.
///
/// # Errors
/// The page cannot be written.
pub async fn index(State(app): State<Arc<App>>) -> Result<Response, Error> {
    let link = |issue: Issue| Link::new(place(issue), issue.title());
    let frame = Frame::at(
        &app.context,
        Section::Notes,
        "/notes/newsletter",
        "Notes for the newsletter",
        "The members’ notes of a month, or the best confirmed, for paper.",
    );
    let index = IndexPage {
        frame,
        best: link(Issue::Best),
        months: Issue::recent(app.clock.now()).into_iter().map(link).collect(),
    };
    page(StatusCode::OK, &index, &Reader(None))
}

/// One, as a page or, where its name ends in `.txt`, as plain text.
///
/// # Errors
/// There is none of this name; no turn comes; or the database cannot be read.
pub async fn show(
    State(app): State<Arc<App>>,
    Path(name): Path<String>,
    asker: Asker,
) -> Result<Response, Error> {
    let (name, is_plain) = match name.strip_suffix(".txt") {
        Some(name) => (name, true),
        None => (name.as_str(), false),
    };
    let issue = Issue::read(name, app.clock.now()).ok_or(NO_SUCH)?;
    let most = i64::try_from(MOST).unwrap_or(i64::MAX);
    let (notes, count) = match issue.span() {
        Some(span) => printed::of_span(&app.database, span, most).await?,
        None => printed::best(&app.database, most).await?,
    };
    let here = Arc::clone(&app);
    let work = move || {
        let mut notes = notes;
        notes.truncate(newsletter::fitting(
            notes.iter().map(|note| note.wording.text.chars().count()),
        ));
        let more = usize::try_from(count).unwrap_or_default().saturating_sub(notes.len());
        let more = match more {
            0 => None,
            1 => Some("One more is among the notes: it did not fit.".to_owned()),
            more => Some(format!("{more} more are among the notes: they did not fit.")),
        };
        if is_plain {
            let text = plain(&here, issue, &notes, more);
            return Ok(answer(StatusCode::OK, "text/plain; charset=utf-8", text, &Reader(None)));
        }
        let title = format!("Shop notes: {}", issue.title());
        let description = "Members’ experience at the bench, for paper.";
        let newsletter = NewsletterPage {
            frame: Frame::at(&here.context, Section::Notes, &place(issue), &title, description)
                .of_a_mistake(),
            title,
            club: here.context.club.name.clone(),
            plain: format!("{}.txt", place(issue)),
            notes: notes.iter().map(|note| shown(&here, note)).collect(),
            more,
            caution: newsletter::CAUTION,
        };
        page(StatusCode::OK, &newsletter, &Reader(None))
    };
    app.apart.run(asker.client, work).await?
}

fn place(issue: Issue) -> String {
    format!("/notes/newsletter/{}", issue.address())
}

/// What others found, in the sense of the note.
fn found(note: &Listed) -> String {
    note.wording.sense.counts((note.worked, note.did_not))
}

/// On paper too a warning is one from its first word.
fn title(note: &Listed) -> String {
    match note.wording.sense {
        Sense::Way => note.wording.title.clone(),
        Sense::Warning => format!("Warning: {}", note.wording.title),
    }
}

fn by(note: &Listed) -> String {
    format!("{}, {}", author(note.author.as_deref()), day(note.shown_at))
}

fn shown(app: &App, note: &Listed) -> NoteShown {
    NoteShown {
        title: title(note),
        by: by(note),
        corrections: note.corrections.iter().map(|said| markdown::html(&said.text)).collect(),
        text: Text::of(&note.wording).of_place(note.id).struck(!note.corrections.is_empty()),
        counts: found(note),
        inspected: inspection::read(note.wording.subject, note.inspected_at),
        address: format!("{}/notes/{}", app.base_url, note.id),
    }
}

fn plain(app: &App, issue: Issue, notes: &[Listed], more: Option<String>) -> String {
    let club = &app.context.club.name;
    let whose = if club.is_empty() { String::new() } else { format!("{club}\n") };
    let mut text = format!(
        "{}SHOP NOTES: {}\nMembers’ experience, not figures of the tables. {}\n\n\n",
        whose,
        issue.title().to_uppercase(),
        app.base_url
    );
    for note in notes {
        let done: Vec<_> =
            note.wording.done.filled().map(|(field, typed)| (field.label, typed)).collect();
        let corrections: Vec<_> = note.corrections.iter().map(|said| said.text.as_str()).collect();
        let mut cautions = dangers::plain(&note.wording);
        cautions.extend(caution(&note.wording).map(str::to_owned));
        let cautions = Some(cautions.join("\n")).filter(|said| !said.is_empty());
        let inspected = inspection::read(note.wording.subject, note.inspected_at);
        let plain = Plain {
            title: &title(note),
            by: &by(note),
            done: &done,
            corrections: &corrections,
            text: &note.wording.text,
            caution: cautions.as_deref(),
            counts: &found(note),
            inspected: inspected.as_deref(),
            address: &format!("{}/notes/{}", app.base_url, note.id),
        };
        newsletter::add(&mut text, &plain);
    }
    if notes.is_empty() {
        text.push_str("No note was shown.\n");
    }
    text.extend(more.map(|more| format!("{more}\n")));
    text.push_str(newsletter::CAUTION);
    text.push('\n');
    text
}
