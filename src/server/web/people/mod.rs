//! `/people`: the members and the open slips, for the secretary.

pub mod acts;
pub mod club;
pub mod invite;
pub mod open_slips;
pub mod sheet;
pub mod show;
mod slip;

use std::sync::Arc;

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::Response;

use open_slips::SlipRow;

use super::page::{self, Seen};
use super::when;
use crate::db;
use crate::db::people::{self, Person};
use crate::extract::{JustDid, Secretary};
use crate::rules::auth::{MemberId, Rights, name};
use crate::rules::deed::{Deed, Did};
use crate::{App, Error};
use holewright_pages::field::Field;
use holewright_pages::layout::{DoneWords, Frame};

/// As many members are seen at a glance.
const SHORT: usize = 20;

#[derive(Template)]
#[template(path = "web/people/list.html")]
struct ListPage {
    frame: Frame,
    /// Where they are found by name, if there are many.
    finds: Option<Field>,
    /// Only some are shown.
    is_cut: bool,
    people: Vec<PersonRow>,
    slips: Vec<SlipRow>,
    /// Those that ran out unused.
    run_out: Vec<SlipRow>,
    /// What was done to a slip just now: one lands at the slips, below the head of the page.
    slips_done: Option<DoneWords>,
}

/// A member in a line.
struct PersonRow {
    number: i64,
    name: String,
    rights: String,
    code: &'static str,
    notes: i64,
    joined: String,
    seen: String,
    is_stopped: bool,
}

/// Shows the list.
///
/// # Errors
/// Not the secretary, or the database cannot be read.
pub async fn list(
    State(app): State<Arc<App>>,
    Secretary(secretary): Secretary,
    JustDid(did): JustDid,
    query: RawQuery,
) -> Result<Response, Error> {
    let all = people::all(&app.database).await?;
    let is_long = all.len() > SHORT;
    let name = if is_long { page::asked(&query, "q") } else { String::new() };
    let sought = name::key(&name);
    // Signs alone are part of no name.
    let is_sought =
        |person: &Person| !sought.is_empty() && name::key(&person.name).contains(&sought);
    let people: Vec<Person> =
        all.into_iter().filter(|person| name.is_empty() || is_sought(person)).collect();
    let now = app.clock.now();
    let slips = db::open_slips::all(&app.database, now).await?;
    let run_out = db::open_slips::run_out(&app.database, now).await?;
    let when = slip::When::of(&app).await?;
    let removed = match did {
        Some(Did { deed: Deed::Removed, of: Some(id) }) => {
            people::removed(&app.database, MemberId(id)).await?
        }
        _ => None,
    };
    let words = page::words(did).map(|words| match removed {
        Some(name) => DoneWords { what: Deed::Removed.what_of(&name), ..words },
        None => words,
    });
    let (slips_done, done) = match words {
        done if did.is_some_and(|did| matches!(did.deed, Deed::VoidedSlip | Deed::PutSlipAway)) => {
            (done, None)
        }
        done => (None, done),
    };
    let page = ListPage {
        frame: page::frame(&app.context, "/people", "All members", false, Seen::by(&secretary))
            .saying(done),
        finds: is_long.then(|| Field::text("q", "Part of a name", "", &name)),
        is_cut: !name.is_empty(),
        people: people.into_iter().map(row).collect(),
        slips: open_slips::rows(slips, &when),
        run_out: open_slips::rows(run_out, &when),
        slips_done,
    };
    page::respond(StatusCode::OK, &page)
}

fn row(person: Person) -> PersonRow {
    PersonRow {
        number: person.id.0,
        rights: named(person.rights),
        code: if person.has_second_factor { "yes" } else { "no" },
        notes: person.notes,
        joined: when::day(person.joined_at),
        seen: person.seen_at.map_or_else(|| "–".to_owned(), when::day),
        is_stopped: person.stopped_at.is_some(),
        name: person.name,
    }
}

/// Rights in words: `secretary and moderator`; `member` where there are none.
pub(super) fn named(rights: Rights) -> String {
    let all = [
        ("secretary", rights.secretary),
        ("moderator", rights.moderator),
        ("inspector", rights.inspector),
    ];
    let held: Vec<&str> = all.into_iter().filter(|(_, held)| *held).map(|(name, _)| name).collect();
    match held.as_slice() {
        [] => "member".to_owned(),
        [first @ .., last] if !first.is_empty() => format!("{} and {last}", first.join(", ")),
        held => held.concat(),
    }
}

/// The same with its article: `an inspector`, `a member`.
pub(super) fn as_a(rights: Rights) -> String {
    let named = named(rights);
    let article = if named.starts_with('i') { "an" } else { "a" };
    format!("{article} {named}")
}

/// The refusal of what would leave the club without a secretary.
pub(super) fn last_secretary() -> Error {
    let words = "this is the only secretary who can sign in, and a club cannot be without one: make another first; \
                 nothing was changed";
    Error::Conflict(words.to_owned())
}

/// The refusal to disarm one's own account where nobody else could.
pub(super) fn own_second_factor() -> Error {
    Error::Forbidden(
        "another secretary takes a secretary’s second factor away; nothing was changed",
    )
}
