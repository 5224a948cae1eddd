//! `/notes/compare`: the notes on one thread in one material, side by side.

use std::sync::Arc;

use askama::Template;
use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::Response;
use form_urlencoded::Serializer;

use super::super::apart::aside;
use super::super::page::own_of;
use super::super::when::day;
use super::item::author;
use super::page::{page, see_other};
use super::text::ANCHOR;
use crate::db::notes::Listed;
use crate::db::notes::{lists, used};
use crate::extract::{Asker, Reader};
use crate::rules::limits::Client;
use crate::rules::notes::belongs::{self, Group, Named, Thing};
use crate::rules::notes::found::Sense;
use crate::rules::notes::meant::meant;
use crate::rules::notes::used::{FEWEST_IN_WORDS, Used, counted};
use crate::rules::notes::{dangers, markdown};
use crate::{App, Error};
use holewright_core::units::print;
use holewright_pages::field::Field;
use holewright_pages::layout::{Frame, Section};
use holewright_pages::{FieldError, Query};

/// The most notes side by side.
const MOST: i64 = 50;
/// The most words of what names a thread.
const WORDS: usize = 8;
/// What was done, in the columns between the note and what others found of it.
const COLUMNS: [&str; 6] = ["material", "drill", "depth", "lubricant", "speed", "machine"];
/// Characters of what happened.
const EXTRACT: usize = 120;
/// What is compared: the field of the address, its label, what may be typed, and of which group it is.
const ASKED: [(&str, &str, &str, Group); 2] = [
    ("thread", "Thread", "8 BA, M3, 1/4 x 40 ME", Group::Threads),
    ("material", "Material", "silver steel, gunmetal, bronze", Group::Materials),
];

#[derive(Template)]
#[template(path = "web/notes/compare.html")]
struct ComparePage {
    frame: Frame,
    heading: String,
    errors: Vec<FieldError>,
    fields: Vec<Field>,
    /// What was read otherwise than it was typed.
    read_as: Vec<String>,
    columns: Vec<&'static str>,
    rows: Vec<Row>,
    /// Which drills were used, where enough members have said.
    used: Option<Used>,
    /// How many more there are than are shown.
    more: i64,
    /// Whether a thread and a material are named.
    is_asked: bool,
    /// The notes on either one, where there are none on both: address and words.
    either: Vec<(String, String)>,
    new: String,
}

/// One note.
struct Row {
    id: i64,
    title: String,
    by: String,
    day: String,
    is_warning: bool,
    /// A correction stands above it: what was done is struck out.
    is_corrected: bool,
    /// What can hurt in it, in a word each.
    danger: Option<String>,
    done: Vec<String>,
    /// The first words of what happened.
    extract: String,
    found: String,
}

/// The address of the notes on these side by side, each as it is typed; one of them may be left open.
pub(in crate::web) fn address(thread: &str, material: &str) -> String {
    let mut query = Serializer::new(String::new());
    for (name, typed) in [("thread", thread), ("material", material)] {
        if !typed.is_empty() {
            query.append_pair(name, typed);
        }
    }
    format!("/notes/compare?{}", query.finish())
}

/// The address where a page of this thing leads to, if that can be compared.
pub(in crate::web) fn address_of(thing: &Thing) -> Option<String> {
    if Group::Threads.holds(thing) {
        return Some(address(&thing.title, ""));
    }
    Group::Materials.holds(thing).then(|| address("", &print::running(&thing.title)))
}

/// The notes.
///
/// # Errors
/// The database cannot be read.
pub async fn show(
    State(app): State<Arc<App>>,
    reader: Reader,
    asker: Asker,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    let raw = query.unwrap_or_default();
    let query = Query::read(&raw);
    // As for the list: a form leaves every field in its address.
    if form_urlencoded::parse(raw.as_bytes()).any(|(_, value)| value.trim().is_empty()) {
        return see_other(&address(query.get("thread"), query.get("material")));
    }
    let by = reader.0.as_ref().map(|member| Client::Member(member.id)).or(asker.client);
    let typed = ASKED.map(|(name, ..)| query.get(name).to_owned());
    let (named, errors, read_as) = app.apart.run(by, move || read_each(&typed)).await?;
    let (heading, found) = match &named {
        [Some(thread), Some(material)] => {
            let on = [thread, material].map(|named| named.things.as_slice());
            let found = lists::on_each(&app.database, on, MOST).await?;
            let said = used::said(&app.database, on).await?;
            // Of a kind of material each has its own drill.
            let job =
                if on.iter().all(|things| things.len() == 1) { on.concat() } else { Vec::new() };
            let material = print::running(&material.title);
            let heading = format!("Notes on {} in {material}, side by side", thread.title);
            (heading, Some((found, said, job)))
        }
        _ => ("Notes side by side".to_owned(), None),
    };
    let is_asked = found.is_some();
    let ((notes, count), said, job) = found.unwrap_or_default();
    let more = count - i64::try_from(notes.len()).unwrap_or(i64::MAX);
    let (rows, used) = aside(move || {
        (
            notes.iter().map(Row::of).collect(),
            (!job.is_empty()).then(|| counted(&said, &job)).flatten(),
        )
    })
    .await?;
    let title = if errors.is_empty() { heading.clone() } else { format!("Error: {heading}") };
    let description = "What members found of one thread in one material, note by note.";
    let frame = Frame::at(&app.context, Section::Notes, "/notes/compare", &title, description);
    let status = if errors.is_empty() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY };
    let things = named.iter().flatten().filter_map(|named| match named.things.as_slice() {
        [thing] => Some(thing.as_str()),
        _ => None,
    });
    let on = Serializer::new(String::new())
        .extend_pairs(things.take(1).map(|thing| ("on", thing)))
        .extend_pairs(named_pairs(&named))
        .finish();
    let compare = ComparePage {
        frame: frame.of_a_mistake().for_reader(own_of(reader.0.as_ref())),
        heading,
        fields: fields(&query, &errors),
        errors,
        read_as,
        columns: columns(),
        rows,
        used,
        more,
        is_asked,
        either: if is_asked { named.iter().flatten().map(all_on).collect() } else { Vec::new() },
        new: format!("/notes/new?{on}"),
    };
    page(status, &compare, &reader)
}

/// Where all notes on this are: address and words.
fn all_on(named: &Named) -> (String, String) {
    let on = Serializer::new(String::new()).append_pair("on", &named.id).finish();
    (format!("/notes?{on}"), format!("Notes on {}", print::running(&named.title)))
}

/// What is read of a thread and a material: each that is named, what was wrong, and what was read otherwise than it was
/// typed.
fn read_each(typed: &[String; 2]) -> ([Option<Named>; 2], Vec<FieldError>, Vec<String>) {
    let (mut errors, mut read_as) = (Vec::new(), Vec::new());
    let [thread, material] = typed;
    let [of_thread, of_material] = ASKED;
    let named =
        [(of_thread, thread), (of_material, material)].map(|((name, _, _, group), typed)| {
            if typed.is_empty() {
                return None;
            }
            match read(group, typed) {
                Ok((named, is_as_typed)) => {
                    if !is_as_typed {
                        read_as.push(format!("“{}” is read as {}.", short(typed), named.title));
                    }
                    Some(named)
                }
                Err(message) => {
                    errors.push(FieldError::new(name, message));
                    None
                }
            }
        });
    (named, errors, read_as)
}

/// What a new note says of what was compared.
fn named_pairs(named: &[Option<Named>; 2]) -> Vec<(&'static str, String)> {
    let each = ASKED.iter().zip(named);
    each.filter_map(|((name, ..), named)| Some((*name, named.as_ref()?.title.clone()))).collect()
}

/// What a text names of this group, a kind of material too; and whether it was typed so.
fn read(group: Group, typed: &str) -> Result<(Named, bool), String> {
    let one =
        |thing: Thing| Named { things: vec![thing.id.clone()], id: thing.id, title: thing.title };
    if let Some(thing) = group.named(typed) {
        return Ok((one(thing), true));
    }
    if let Some(thing) = meant(group, typed) {
        return Ok((one(thing), false));
    }
    let holds = |id: &String| belongs::at(id).is_some_and(|thing| group.holds(&thing));
    match belongs::named(typed) {
        Ok(named) if named.things.iter().all(holds) => Ok((named, true)),
        Ok(named) => Err(format!("{} is something else. {}", named.title, wanted(group))),
        Err(error) => Err(begins(group, typed).unwrap_or(error.message)),
    }
}

/// Where a text begins with something of the group and says more: that, to be written alone.
fn begins(group: Group, typed: &str) -> Option<String> {
    let words: Vec<&str> = typed.split_whitespace().take(WORDS).collect();
    let thing = (1..words.len()).rev().find_map(|count| {
        group.named(&words.iter().take(count).copied().collect::<Vec<_>>().join(" "))
    })?;
    let typed = short(typed);
    Some(format!(
        "“{typed}” does not name one thing of the reference. Possible here: {}.",
        thing.title
    ))
}

fn wanted(group: Group) -> &'static str {
    match group {
        Group::Threads => "Write a thread, like 8 BA.",
        Group::Materials | Group::Drills => "Write a material, like gunmetal.",
    }
}

fn short(typed: &str) -> String {
    typed.chars().take(60).collect()
}

fn fields(query: &Query, errors: &[FieldError]) -> Vec<Field> {
    let fields =
        ASKED.map(|(name, label, hint, _)| Field::text(name, label, hint, query.get(name)));
    fields.into_iter().map(|field| field.judged(errors, |_, _| String::new())).collect()
}

/// The labels of the columns of what was done.
fn columns() -> Vec<&'static str> {
    let fields = crate::rules::notes::fields::DONE;
    let label = |name: &&str| fields.iter().find(|field| field.name == *name);
    COLUMNS.iter().filter_map(label).map(|field| field.label).collect()
}

impl Row {
    fn of(note: &Listed) -> Self {
        let wording = &note.wording;
        Self {
            id: note.id,
            title: wording.title.clone(),
            by: author(note.author.as_deref()),
            day: day(note.shown_at),
            is_warning: wording.sense == Sense::Warning,
            is_corrected: !note.corrections.is_empty(),
            danger: dangers::in_words(wording),
            extract: markdown::extract(&wording.text, EXTRACT),
            done: COLUMNS.map(|name| wording.done.text(name).to_owned()).into(),
            found: wording.sense.counts((note.worked, note.did_not)),
        }
    }
}
