//! What stands behind the `?` of an address: the pages' own links and forms, filled otherwise.
//!
//! Which addresses and fields there are is read off the pages, so that a new one is tried unasked.

use std::collections::{BTreeMap, BTreeSet};

use axum::http::Uri;
use form_urlencoded::Serializer;
use holewright_core::tables::{drills, materials, threads};
use holewright_pages::{Reply, answer};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::{Index, select};
use roxmltree::Document;
use tokio::runtime::Runtime;

use super::addresses::{Addresses, Fields, context, fields, found, split};
use super::slips::slipped;
use super::timed::{Outcome, hunt};
use crate::notes::club::{Club, Right};
use crate::{html, markup};

/// What only the server answers.
const SERVERS: [&str; 9] = [
    "/notes?q=brass&on=materials/gunmetal&page=2",
    "/notes.csv?on=threads/ba/5",
    "/notes.json?q=tap",
    "/notes.atom?on=materials/gunmetal",
    "/search?q=cut clean",
    "/api/v1/search?q=1/4",
    "/api/v1/drills?from=2mm&to=3mm&series=metric",
    "/api/v1/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm",
    "/api/v1/calc/speeds?material=gunmetal&diameter=2mm",
];

/// What somebody may put in a field who means harm, or slips.
#[rustfmt::skip]
const PIECES: &[&str] = &[
    "<script>", "\"><img src=x onerror=x>", "' onfocus='x", "javascript:x", "//evil.test", "\\",
    "%00", "%ff", "%", "%2", "&", "=", "#", "?", "+", ";", ",", "-", ".", "..", "/", " ", "\0",
    "\r\n", "\u{202e}", "🔩", "nan", "1e999", "-0", "0", "1/0", "99999999999", "1", "5", "1/4",
    "7/64", "2.05", "mm", "in", "thou", "BA", "x", "A-Z", "1-60", "NEAR", "AND", "*", "\"", "(",
    "title:", "^", "true",
];

/// A change to one field.
#[derive(Clone, Debug)]
enum Change {
    /// With what the pages put in a field of this name.
    FillAsUsual(Index),
    Fill(String),
    Drop,
    Repeat(String),
    Add(String, String),
}

/// Which door it goes through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Door {
    /// The pages alone, with nothing around them.
    Pages,
    /// The whole server with its database.
    Server,
}

#[derive(Clone, Debug)]
struct Asked {
    door: Door,
    path: String,
    query: String,
}

/// Everything that can be asked.
fn asked() -> impl Strategy<Value = Asked> {
    let Addresses { queries, values } = found();
    for path in ["/plan", "/drills", "/search", "/calculators/speeds", "/calculators/tapping"] {
        assert!(queries.contains_key(path), "no page leads to {path}: {:?}", queries.keys());
    }
    assert!(values.len() > 25, "the pages have more fields: {:?}", values.keys());
    let right: Vec<String> = values
        .values()
        .flatten()
        .cloned()
        .chain(threads::all().map(|thread| thread.designation.to_owned()))
        .chain(drills::all().iter().map(|drill| drill.label.clone()))
        .chain(materials::all().iter().map(|metal| metal.slug.to_owned()))
        .chain(["8 mm", "0.25 in", "1/8", "30°", "400, 800, 1600", "1-60, A-Z"].map(str::to_owned))
        .collect();
    let right = select(right).boxed();
    let value = prop_oneof![
        3 => right.clone(),
        3 => slipped(right, PIECES),
        1 => select(PIECES).prop_map(str::to_owned),
        1 => "\\PC{0,30}",
        1 => (select(PIECES), 1_usize..400).prop_map(|(piece, count)| piece.repeat(count)),
    ];
    let value = value.boxed();
    let name = select(values.keys().cloned().collect::<Vec<_>>());
    let change = prop_oneof![
        8 => any::<Index>().prop_map(Change::FillAsUsual),
        4 => value.clone().prop_map(Change::Fill),
        1 => Just(Change::Drop),
        1 => value.clone().prop_map(Change::Repeat),
        1 => (name, value).prop_map(|(name, value)| Change::Add(name, value)),
    ];
    let changes = vec((any::<Index>(), change), 0..4);
    (real(queries), changes, raw_slips()).prop_map(
        move |((door, path, mut fields), changes, raw)| {
            for (place, change) in changes {
                make(&mut fields, place, change, &values);
            }
            let mut query = Serializer::new(String::new()).extend_pairs(fields).finish();
            if let Some((place, piece)) = raw {
                query.insert_str(place.index(query.len() + 1), piece);
            }
            Asked { door, path, query }
        },
    )
}

/// An address as the pages have it, or of the file beside the page, at one of the doors.
fn real(
    queries: BTreeMap<String, BTreeSet<Fields>>,
) -> impl Strategy<Value = (Door, String, Fields)> {
    let paths: Vec<(String, Vec<Fields>)> =
        queries.into_iter().map(|(path, queries)| (path, queries.into_iter().collect())).collect();
    let doors = select(vec![Door::Pages, Door::Pages, Door::Pages, Door::Server]);
    let ending =
        prop_oneof![9 => Just(""), 1 => Just(".csv"), 1 => Just(".svg"), 1 => Just(".json")];
    let pages = (doors, select(paths), any::<Index>(), ending);
    let pages = pages.prop_map(|(door, (path, queries), which, ending)| {
        let query = which.get(&queries).clone();
        match (door, ending) {
            _ if path.starts_with("/api") => (Door::Server, path, query),
            // The server alone has this file of a page.
            (_, ".json") => (Door::Server, format!("{path}.json"), query),
            _ => (door, format!("{path}{ending}"), query),
        }
    });
    let servers = select(SERVERS.to_vec()).prop_map(|address| {
        let (path, query) = split(address);
        (Door::Server, path.to_owned(), fields(query))
    });
    prop_oneof![4 => pages, 1 => servers]
}

/// A piece that is put into the query as it stands, without the code a browser would give it.
fn raw_slips() -> impl Strategy<Value = Option<(Index, &'static str)>> {
    prop::option::weighted(0.2, (any::<Index>(), select(PIECES)))
}

fn make(
    fields: &mut Vec<(String, String)>,
    place: Index,
    change: Change,
    values: &BTreeMap<String, BTreeSet<String>>,
) {
    if let Change::Add(name, value) = change {
        return fields.push((name, value));
    }
    if fields.is_empty() {
        return;
    }
    let at = place.index(fields.len());
    match change {
        Change::FillAsUsual(which) => {
            let Some(values) = values.get(&fields[at].0) else { return };
            fields[at].1 = values.iter().nth(which.index(values.len())).unwrap().clone();
        }
        Change::Fill(value) => fields[at].1 = value,
        Change::Drop => drop(fields.remove(at)),
        Change::Repeat(value) => fields.push((fields[at].0.clone(), value)),
        Change::Add(..) => {}
    }
}

#[test]
fn whatever_an_address_asks_is_answered() {
    let runtime = Runtime::new().unwrap();
    let club = runtime.block_on(club_with_notes());
    hunt("the queries of the pages", 8, asked(), |asked| match asked.door {
        Door::Pages => of_the_pages(&asked),
        Door::Server => runtime.block_on(of_the_server(&club, &asked)),
    });
}

async fn club_with_notes() -> Club {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    for (title, on) in [("Tapping in gunmetal", "gunmetal, 5 BA"), ("100% of it_all", "5 BA")] {
        let fields = [("title", title), ("text", "AND NEAR it cut clean"), ("on", on)];
        club.shown(&author, &moderator, &fields).await;
    }
    club
}

fn of_the_pages(asked: &Asked) -> Result<Outcome, TestCaseError> {
    let answer = answer(&asked.path, &asked.query, &context());
    check(&answer, asked)?;
    let Some((path, query)) = answer.location().map(split) else {
        return Ok(Outcome::taken_if(answer.status == 200));
    };
    let there = self::answer(path, query, &context());
    prop_assert!(there.status != 301, "sent on to {path}?{query}, then to {:?}", there.location());
    check(&there, asked)?;
    Ok(Outcome::taken_if(there.status == 200))
}

fn check(answer: &Reply, asked: &Asked) -> Result<(), TestCaseError> {
    let status = answer.status;
    prop_assert!(matches!(status, 200 | 301 | 303 | 404 | 422), "{status}");
    if let Some(location) = answer.location() {
        is_ours(location)?;
        return Ok(());
    }
    let kind = answer.header("content-type").unwrap_or_default();
    body_is_sound(kind, answer.text(), &asked.path)
}

fn is_ours(location: &str) -> Result<(), TestCaseError> {
    prop_assert!(location.starts_with('/') && !location.starts_with("//"), "{location}");
    prop_assert!(location.bytes().all(|byte| byte.is_ascii_graphic()), "{location:?}");
    Ok(())
}

/// Nothing typed has become markup, and a file is whole.
fn body_is_sound(kind: &str, body: &str, place: &str) -> Result<(), TestCaseError> {
    match kind.split(';').next().unwrap_or_default() {
        "text/html" => {
            let page = html::read(body);
            markup::check_inert(&page, place);
            let is_forbidden = |name: &str| ["script", "img"].contains(&name);
            prop_assert!(!page.tags.iter().any(|tag| is_forbidden(&tag.name)), "{body}");
            prop_assert_eq!(page.tags.iter().filter(|tag| tag.name == "h1").count(), 1);
        }
        "image/svg+xml" | "application/atom+xml" => {
            prop_assert!(Document::parse(body).is_ok(), "{body}");
        }
        "text/csv" => {
            let mut rows = csv::Reader::from_reader(body.as_bytes());
            prop_assert!(rows.records().all(|row| row.is_ok()), "{body}");
        }
        "application/json" | "application/problem+json" => {
            prop_assert!(serde_json::from_str::<serde_json::Value>(body).is_ok(), "{body}");
        }
        kind => prop_assert!(false, "{kind}: {body}"),
    }
    Ok(())
}

async fn of_the_server(club: &Club, asked: &Asked) -> Result<Outcome, TestCaseError> {
    // What no request line can hold never reaches the server.
    let address = format!("{}?{}", asked.path, asked.query);
    let Ok(uri) = address.parse::<Uri>() else { return Ok(Outcome::Refused) };
    let query = uri.query().unwrap_or_default();
    let answer = club.get(&address, None).await;
    let status = answer.status.as_u16();
    prop_assert!(matches!(status, 200 | 301 | 303 | 400 | 404 | 414 | 422), "{status}");
    match answer.headers.get("location") {
        Some(location) => is_ours(location.to_str().unwrap())?,
        None => body_is_sound(answer.header("content-type"), &answer.body, &asked.path)?,
    }
    if asked.path == "/api/v1/plan" {
        // Two doors over one function; the pages' own tidies the address first.
        let mut table = self::answer("/plan.csv", query, &context());
        if let Some((path, query)) = table.location().map(split) {
            table = self::answer(path, query, &context());
        }
        prop_assert_eq!(status == 200, table.status == 200, "{} against {}", status, table.status);
    }
    Ok(Outcome::taken_if(status == 200))
}
