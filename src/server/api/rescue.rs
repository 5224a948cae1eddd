//! What to do when something goes wrong: the list of troubles, and each with its ways out.

use axum::extract::RawQuery;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use super::materials::Sentence;
use super::problem::{Always, NotHeld, NotUnderstood};
use super::segments::Segments;
use super::{figures, reply};
use crate::Error;
use holewright_core::tables::inserts::{self, InsertHole};
use holewright_core::tables::materials::Advice;
use holewright_core::tables::rescue::{self, Way};
use holewright_pages::Query;
use holewright_pages::rescue::asked::Asked;

/// What can go wrong.
#[derive(Debug, Serialize, ToSchema)]
struct Troubles {
    /// The troubles, in the order of the page.
    troubles: Vec<Brief>,
}

/// A trouble by name.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = TroubleName)]
struct Brief {
    /// Its word in addresses.
    #[schema(example = "broken-tap")]
    slug: &'static str,
    /// What it is called.
    #[schema(example = "A broken tap")]
    title: &'static str,
    /// What to do before anything else.
    first: Sentence,
}

/// One trouble, with the ways out that serve.
#[derive(Debug, Serialize, ToSchema)]
struct Trouble {
    #[serde(flatten)]
    brief: Brief,
    /// What can hurt, before any way.
    dangers: Vec<Sentence>,
    /// What may be done about a tap broken in the material asked; empty where none was asked.
    in_material: Vec<Sentence>,
    /// The ways out, the cheapest and safest first; those that do not serve what was asked are left out.
    ways: Vec<WayOut>,
    /// Holes for wire inserts; empty where no way is one.
    insert_holes: Vec<Insert>,
    /// When to stop.
    stop: Sentence,
}

/// One way out.
#[derive(Debug, Serialize, ToSchema)]
struct WayOut {
    /// What is done, in a few words.
    #[schema(example = "Wind it back")]
    name: &'static str,
    /// The metals and tools it is for, where it is not for all; else empty.
    only_for: String,
    /// What can hurt in it.
    dangers: Vec<Sentence>,
    /// How, in order.
    steps: Vec<Sentence>,
}

/// The hole before the tap of a wire insert, one that forms.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = InsertHole)]
struct Insert {
    /// The screw that the insert takes.
    #[schema(example = "No. 4-40 UNC")]
    thread: &'static str,
    /// The drill that the maker gives, in millimetres.
    drill_mm: f64,
    /// The least hole, in millimetres.
    least_mm: f64,
    /// The largest hole, in millimetres.
    largest_hole_mm: f64,
    /// Where it was read.
    source: String,
}

/// What can go wrong, by name, with what to do first.
///
/// # Errors
/// The answer is in no form the program takes: 406.
#[utoipa::path(
    get,
    path = "/api/v1/rescue",
    operation_id = "troubles",
    tag = "rescue",
    responses((status = 200, description = "Every trouble", body = Troubles), Always)
)]
pub async fn list(headers: HeaderMap) -> Result<Response, Error> {
    reply::json(&headers, &Troubles { troubles: rescue::all().iter().map(Brief::from).collect() })
}

/// One trouble: what can hurt, what to do first, and every way out in order, each with its source.
///
/// # Errors
/// No such trouble: 404. A field makes no sense: 422.
#[utoipa::path(
    get,
    path = "/api/v1/rescue/{slug}",
    operation_id = "trouble",
    tag = "rescue",
    params(
        ("slug" = String, Path, description = "A trouble", example = "broken-tap"),
        ("material" = Option<String>, Query, description = "The metal of the part, by any name or mark", example = "gunmetal"),
        ("tap_steel" = Option<String>, Query, description = "The steel of the tap or the drill: `carbon` or `hss`", example = "carbon"),
    ),
    responses(
        (status = 200, description = "The trouble with its ways out", body = Trouble),
        NotHeld,
        NotUnderstood,
        Always,
    )
)]
pub async fn show(
    Segments(slug): Segments<String>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let trouble =
        rescue::find(&slug).ok_or(Error::NotFound("no such trouble; /api/v1/rescue lists them"))?;
    let query = Query::read(query.as_deref().unwrap_or_default());
    let asked = Asked::read(&query).map_err(Error::Invalid)?;
    reply::json(&headers, &body(trouble, asked))
}

fn body(trouble: &'static rescue::Trouble, asked: Asked) -> Trouble {
    let of_metal = asked.material.filter(|_| trouble.is_of_broken_tap());
    let holes = if trouble.has_inserts() { inserts::all() } else { &[] };
    Trouble {
        brief: trouble.into(),
        dangers: sentences(trouble.dangers),
        in_material: of_metal.map_or_else(Vec::new, |it| sentences(it.broken_tap.advice())),
        ways: trouble.ways_for(asked.material, asked.steel).map(WayOut::from).collect(),
        insert_holes: holes.iter().filter_map(insert).collect(),
        stop: Sentence::from(&trouble.stop),
    }
}

fn sentences(advice: &[Advice]) -> Vec<Sentence> {
    advice.iter().map(Sentence::from).collect()
}

fn insert(hole: &InsertHole) -> Option<Insert> {
    Some(Insert {
        thread: hole.thread()?.designation,
        drill_mm: figures::mm(hole.drill.length()),
        least_mm: figures::mm(hole.least.length()),
        largest_hole_mm: figures::mm(hole.most.length()),
        source: figures::source(hole.source),
    })
}

impl From<&'static rescue::Trouble> for Brief {
    fn from(trouble: &'static rescue::Trouble) -> Self {
        let first = Sentence::from(&trouble.first);
        Self { slug: trouble.slug, title: trouble.title, first }
    }
}

impl From<&'static Way> for WayOut {
    fn from(way: &'static Way) -> Self {
        Self {
            name: way.name,
            only_for: way.only_for(),
            dangers: sentences(way.dangers),
            steps: sentences(way.says),
        }
    }
}
