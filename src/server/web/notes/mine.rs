//! `/notes/mine`: what became of a member's own notes.

use std::sync::Arc;

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::Response;

use super::super::page::{own_of, words};
use super::super::when::day;
use super::form::shown_on;
use super::history::Difference;
use super::inspection;
use super::item::author;
use super::news::{News, titled};
use super::page::{MOST, page};
use crate::db::notes::queue::{self, Own};
use crate::db::notes::read::{self, WordingState};
use crate::db::notes::{inspectors, news};
use crate::extract::{JustDid, Member, Reader};
use crate::rules::deed::{Deed, Did};
use crate::rules::notes::belongs::{self, Thing};
use crate::rules::notes::difference::Effort;
use crate::rules::notes::inspection::{Awaited, awaited};
use crate::{App, Error};
use holewright_pages::Query;
use holewright_pages::layout::{DoneWords, Frame, Section};

#[derive(Template)]
#[template(path = "web/notes/mine.html")]
struct MinePage {
    frame: Frame,
    /// What became of them since it was last read; on the first page of the list.
    news: Option<News>,
    rows: Vec<NoteLine>,
    older: Option<String>,
}

struct NoteLine {
    id: i64,
    title: String,
    day: String,
    state: String,
    /// On which pages it stands or will stand.
    place: Option<String>,
    /// What was done to it just now: one lands at its row, below the head of the page.
    done: Option<DoneWords>,
    may_edit: bool,
    /// What was on its way when the note was withdrawn: it is still its author’s.
    words: Option<String>,
    /// What was mended before it was shown.
    mended: Option<Difference>,
}

/// The list, newest first.
///
/// # Errors
/// Nobody is signed in.
pub async fn show(
    State(app): State<Arc<App>>,
    Member(member): Member,
    JustDid(did): JustDid,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    let query = Query::read(query.as_deref().unwrap_or_default());
    let before = query.get("before").parse().ok();
    let mut own = queue::own(&app.database, member.id, before, MOST + 1).await?;
    let mut older = None;
    if own.len() > usize::try_from(MOST).unwrap_or_default() {
        own.pop();
        older = own.last().map(|note| format!("/notes/mine?before={}", note.id.0));
    }
    let awaited = awaited(Some(member.id), &inspectors::all(&app.database).await?);
    let title = "Your notes";
    let frame =
        Frame::at(&app.context, Section::Notes, "/notes/mine", title, "What became of them.");
    let sent = match did {
        Some(Did { deed: Deed::SentIn, of }) => own.iter().find(|own| Some(own.id.0) == of),
        _ => None,
    };
    let mut done = words(did);
    if let (Some(done), Some(sent)) = (done.as_mut(), sent) {
        let usual = queue::usual_days(&app.database, app.clock.now()).await?;
        let note = read::note(&app.database, sent.id).await?;
        let newest = note.as_ref().and_then(|note| note.on_its_way().or(note.versions.last()));
        let place = newest.map(|version| shown_on(&version.wording)).unwrap_or_default();
        done.next = format!("{} {place}", comes_next(sent.is_pressure, usual));
    }
    // Told at the row where it stands here, at the head where it does not.
    let sent = sent.map(|sent| sent.id.0);
    let told = sent.and_then(|sent| Some((sent, done.take()?)));
    let mut rows = Vec::with_capacity(own.len());
    let mut effort = Effort::of_a_page();
    for own in own {
        let words = if own.withdrawn_why.is_some() && own.state == "draft" {
            let note = read::note(&app.database, own.id).await?;
            note.and_then(|note| Some(note.on_its_way()?.wording.as_lines()))
        } else {
            None
        };
        let mended = if own.is_mended && own.withdrawn_why.is_none() {
            read::note(&app.database, own.id).await?.and_then(|note| fix(&note, &mut effort))
        } else {
            None
        };
        rows.push(row(own, awaited, (words, mended)));
    }
    if let Some((sent, told)) = told {
        rows.iter_mut().filter(|row| row.id == sent).for_each(|row| row.done = Some(told.clone()));
    }
    let news = match before {
        None => News::of(news::of(&app.database, member.id).await?, member.open.news),
        Some(_) => None,
    };
    let mine = MinePage {
        news,
        frame: frame.of_a_mistake().for_reader(own_of(Some(&member))).saying(done),
        rows,
        older,
    };
    page(StatusCode::OK, &mine, &Reader(Some(member)))
}

/// What becomes of a note that was sent in just now.
fn comes_next(is_pressure: bool, usual: Option<i64>) -> String {
    let who = if is_pressure { "An inspector" } else { "A moderator" };
    match usual {
        None => format!("{who} reads it first; what became of it will stand here."),
        Some(1) => format!("{who} reads it first; most are answered within a day."),
        Some(days) => format!("{who} reads it first; most are answered within {days} days."),
    }
}

/// Who mended what is shown, and what they changed.
fn fix(note: &read::Note, effort: &mut Effort) -> Option<(String, Difference)> {
    let shown = note.in_state(WordingState::Shown)?;
    let (mended, before) = note.mended(shown)?;
    let difference = Difference::between(&before.wording, &shown.wording, effort);
    Some((author(mended.by.as_deref()), difference))
}

fn row(
    own: Own,
    awaited: Awaited,
    (words, mended): (Option<String>, Option<(String, Difference)>),
) -> NoteLine {
    let mut state = state(&own, awaited);
    if let Some((by, _)) = &mended {
        state = format!("{} with a small fix by {by}.", state.trim_end_matches('.'));
    }
    NoteLine {
        id: own.id.0,
        place: place(&own),
        title: titled(&own.title).to_owned(),
        day: day(own.at),
        state,
        done: None,
        may_edit: own.withdrawn_why.is_none(),
        words,
        mended: mended.map(|(_, difference)| difference),
    }
}

/// On which pages its newest wording stands, or will once it is shown.
fn place(own: &Own) -> Option<String> {
    let verb = match own.state.as_str() {
        _ if own.is_hidden || own.withdrawn_why.is_some() => return None,
        "shown" => "It stands",
        "waiting" | "draft" => "It will stand",
        _ => return None,
    };
    let things: Vec<Thing> = own.things.iter().filter_map(|thing| belongs::at(thing)).collect();
    Some(match things.as_slice() {
        [] => format!("{verb} among the notes, and on no page of the reference."),
        [_] => format!("{verb} on the page of {}.", belongs::in_words(&things)),
        _ => format!("{verb} on the pages of {}.", belongs::in_words(&things)),
    })
}

fn state(own: &Own, awaited: Awaited) -> String {
    let meanwhile = if own.is_shown { " The earlier wording is shown meanwhile." } else { "" };
    if let Some(why) = &own.withdrawn_why {
        let who = if own.withdrawn_by_another { "Withdrawn" } else { "You took it back" };
        return format!("{who}: {why}");
    }
    if own.is_hidden {
        return "Hidden until somebody who decides about it has looked. A changed wording that you send in goes to them as \
                well."
            .to_owned();
    }
    match own.state.as_str() {
        "draft" if !own.reason.is_empty() => {
            format!("A change is asked for: {}{meanwhile}", own.reason)
        }
        "draft" => format!("A draft that only you see.{meanwhile}"),
        "waiting" if own.is_pressure => format!("{}{meanwhile}", inspection::waits(awaited)),
        "waiting" => format!("Waiting for a moderator.{meanwhile}"),
        "declined" => format!("Declined: {}{meanwhile}", own.reason),
        _ => "Shown.".to_owned(),
    }
}
