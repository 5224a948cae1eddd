//! `/notes`: the shown notes, newest first, or those with some words, best first.

use std::sync::Arc;

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::Response;
use form_urlencoded::Serializer;

use super::super::apart::aside;
use super::super::page::own_of;
use super::compare;
use super::item::Item;
use super::page::{MOST, page, see_other};
use crate::db::notes::lists::{self, Filter};
use crate::db::notes::search;
use crate::extract::Reader;
use crate::rules::notes::belongs::{self, Named};
use crate::rules::notes::open::Open;
use crate::{App, Error};
use holewright_pages::field::{Field, Kind, items};
use holewright_pages::layout::{Frame, Section};
use holewright_pages::{FieldError, Query};

#[derive(Template)]
#[template(path = "web/notes/list.html")]
struct ListPage {
    frame: Frame,
    heading: String,
    errors: Vec<FieldError>,
    items: Vec<Item>,
    /// What was typed as it was read, where that is otherwise.
    read_as: Option<String>,
    /// Those that have some of the words only.
    partly: Vec<Item>,
    /// Why the list is empty.
    nothing: &'static str,
    /// The best of more than are shown.
    is_cut: bool,
    older: Option<String>,
    /// What is looked for.
    words: Field,
    /// What cuts the list down.
    filters: Vec<Field>,
    is_filtered: bool,
    new: String,
    /// Where the notes on this thing stand side by side.
    compare: Option<String>,
    is_signed_in: bool,
    decides: bool,
    /// What there is for its reader to see to.
    open: Open,
}

/// The list.
///
/// # Errors
/// The database cannot be read.
pub async fn show(
    State(app): State<Arc<App>>,
    reader: Reader,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    let raw = query.unwrap_or_default();
    let query = Query::read(&raw);
    // A form leaves every field in its address, also the empty ones: such a view has another address.
    if form_urlencoded::parse(raw.as_bytes()).any(|(_, value)| value.trim().is_empty()) {
        return see_other(&tidy(&query));
    }
    let (typed, on) = (query.get("q"), query.get("on"));
    let mut errors = Vec::new();
    let named = match on {
        "" => None,
        on => belongs::named(on).map_err(|error| errors.push(error)).ok(),
    };
    let filter = Filter {
        on: named.as_ref().map(|named| named.things.clone()).unwrap_or_default(),
        confirmed_only: query.get("confirmed") == "yes",
        corrected_only: query.get("corrected") == "yes",
    };
    let mut older = None;
    let mut is_cut = false;
    let mut partly = Vec::new();
    let mut read_as = None;
    let items: Vec<Item> = if !errors.is_empty() {
        Vec::new()
    } else if typed.is_empty() {
        let before = query.get("before").parse().ok();
        let mut notes = lists::shown(&app.database, &filter, before, MOST + 1).await?;
        if notes.len() > usize::try_from(MOST).unwrap_or_default() {
            notes.pop();
            older = notes.last().map(|note| older_address(named.as_ref(), &filter, note.id));
        }
        aside(move || notes.iter().map(Item::of).collect()).await?
    } else {
        let found = search::found(&app.database, typed, &filter, MOST).await?;
        let hits = found.hits;
        read_as = found.read_as;
        is_cut = hits.len() >= usize::try_from(MOST).unwrap_or_default();
        let work = move || {
            let (all, some): (Vec<_>, Vec<_>) = hits.iter().partition(|hit| hit.has_all);
            (
                all.into_iter().map(Item::found).collect(),
                some.into_iter().map(Item::found).collect(),
            )
        };
        let (all, some) = aside(work).await?;
        partly = some;
        all
    };
    let heading = match &named {
        Some(named) => format!("Notes on {}", named.title),
        None => "Shop notes".to_owned(),
    };
    let is_wrong = !errors.is_empty();
    let title = if is_wrong { "Error: shop notes" } else { &heading };
    let description =
        "What members found at the bench. A note never alters a figure of the tables.";
    let address = named.as_ref().map_or_else(|| "/notes".to_owned(), address_on);
    let frame = Frame::at(&app.context, Section::Notes, &address, title, description)
        .for_reader(own_of(reader.0.as_ref()));
    let list = ListPage {
        // A search, or a list cut down or turned over, is a view of the list and not a page to list.
        frame: if is_wrong || !typed.is_empty() { frame.of_a_mistake() } else { frame },
        heading,
        items,
        read_as,
        partly,
        nothing: match typed {
            "" => "No note here yet.",
            _ => "No note has any of these words.",
        },
        is_cut,
        older,
        words: Field::text("q", "Words in the note", "", typed),
        filters: filters(&query, &errors),
        is_filtered: ["on", "confirmed", "corrected"]
            .iter()
            .any(|name| !query.get(name).is_empty()),
        errors,
        new: match named.as_ref().map(|named| named.things.as_slice()) {
            Some([thing]) => format!("/notes/new?on={thing}"),
            _ => "/notes/new".to_owned(),
        },
        compare: match named.as_ref().map(|named| named.things.as_slice()) {
            Some([thing]) => belongs::at(thing).and_then(|thing| compare::address_of(&thing)),
            _ => None,
        },
        is_signed_in: reader.0.is_some(),
        open: reader.0.as_ref().map(|member| member.open).unwrap_or_default(),
        decides: reader.0.as_ref().is_some_and(|member| super::queue::decides(member.rights)),
    };
    let status = if is_wrong { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    page(status, &list, &reader)
}

fn address_on(named: &Named) -> String {
    let on = Serializer::new(String::new()).append_pair("on", &named.id).finish();
    format!("/notes?{on}")
}

/// The address of the same view without what was left empty.
fn tidy(query: &Query) -> String {
    let mut tidy = Serializer::new(String::new());
    for name in ["q", "on", "confirmed", "corrected", "before"] {
        if !query.get(name).is_empty() {
            tidy.append_pair(name, query.get(name));
        }
    }
    let tidy = tidy.finish();
    if tidy.is_empty() { "/notes".to_owned() } else { format!("/notes?{tidy}") }
}

/// The next page of the same list.
fn older_address(named: Option<&Named>, filter: &Filter, before: i64) -> String {
    let mut query = Serializer::new(String::new());
    if let Some(named) = named {
        query.append_pair("on", &named.id);
    }
    for (name, only) in [("confirmed", filter.confirmed_only), ("corrected", filter.corrected_only)]
    {
        if only {
            query.append_pair(name, "yes");
        }
    }
    query.append_pair("before", &before.to_string());
    format!("/notes?{}", query.finish())
}

fn filters(query: &Query, errors: &[FieldError]) -> Vec<Field> {
    let tick = |name: &'static str, label: &'static str, words: &str| {
        let choice = [("yes", words.to_owned(), query.get(name) == "yes")];
        Field::new(name, label, "", Kind::Ticks(items(choice)))
    };
    let fields = [
        Field::text(
            "on",
            "On a material, a thread, a drill",
            "gunmetal, 4 BA, No. 43",
            query.get("on"),
        ),
        tick("confirmed", "Confirmed", "Another member found the same"),
        tick("corrected", "Corrected", "With a correction above it"),
    ];
    fields.into_iter().map(|field| field.judged(errors, |_, _| String::new())).collect()
}
