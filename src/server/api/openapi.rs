//! The description of this interface as OpenAPI 3.1, made from the types and routes themselves, and
//! the list of its addresses.

use std::sync::LazyLock;

use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::openapi::OpenApi as Description;
use utoipa::{OpenApi, ToSchema};

use super::problem::{Always, Problem};
use super::{calc, drills, fasteners, materials, plan, reply, rescue, search, threads};
use crate::Error;

#[derive(OpenApi)]
#[openapi(
    info(
        title = "Holewright",
        version = "1",
        description = "Threads, drills and materials of the reference, and a plan for every hole. \
            Figures are plain numbers with the unit at the end of the key: `_mm`, `_in`, `_mm2`, \
            `_deg`, `_percent`, `_rpm`, `_mm_per_rev`, `_m_per_min`, `_mm_per_min`. Keys are added, never dropped \
            or renamed. Every figure names its source; one that was not read in its standard says \
            so in brackets. Every address may be asked from a script on any page. Any page's \
            address with `.json` behind its path gives the same body; /reference.sqlite holds \
            the tables in one file."
    ),
    paths(
        index,
        show,
        threads::systems,
        threads::system,
        threads::show,
        drills::list,
        drills::show,
        materials::list,
        materials::show,
        rescue::list,
        rescue::show,
        fasteners::list,
        fasteners::show,
        plan::show,
        search::find_all,
    ),
    tags(
        (name = "about", description = "This interface"),
        (name = "threads", description = "Thread systems and threads"),
        (name = "drills", description = "Drills of every series"),
        (name = "materials", description = "Materials"),
        (name = "rescue", description = "What to do when something goes wrong"),
        (name = "fasteners", description = "Hexagons, heads and washers"),
        (name = "plan", description = "A plan for one hole"),
        (name = "calculators", description = "The other calculators"),
        (name = "search", description = "The finder"),
    ),
    components(schemas(Problem))
)]
struct Ours;

static DESCRIPTION: LazyLock<Description> = LazyLock::new(|| {
    let mut description = Ours::openapi();
    // The macro writes an empty licence where the manifest names none.
    description.info.license = None;
    calc::describe(&mut description);
    for item in description.paths.paths.values_mut() {
        let operation = item.get.iter_mut();
        operation
            .for_each(|get| get.description = get.description.as_deref().and_then(for_readers));
    }
    description
});

/// A handler's documentation as far as it is for readers of the description: the part on errors is
/// for whoever calls the handler.
fn for_readers(documentation: &str) -> Option<String> {
    let words = documentation.split("# Errors").next().unwrap_or_default().trim();
    (!words.is_empty()).then(|| words.to_owned())
}

/// Where the answers of this server are described and listed.
#[derive(Debug, Serialize, ToSchema)]
struct Index {
    /// What this is.
    title: &'static str,
    /// The description as OpenAPI 3.1.
    #[schema(example = "/api/v1/openapi.json")]
    description: &'static str,
    /// The tables as one SQLite file.
    #[schema(example = "/reference.sqlite")]
    file: &'static str,
    /// Every address under /api/v1.
    routes: Vec<Route>,
}

/// An address and what it answers.
#[derive(Debug, Serialize, ToSchema)]
struct Route {
    /// The path; what stands in braces is filled in.
    #[schema(example = "/api/v1/threads/{system}")]
    path: &'static str,
    /// What it answers.
    answers: &'static str,
}

/// The addresses of this interface.
///
/// # Errors
/// The answer is in no form the program takes: 406.
#[utoipa::path(
    get,
    path = "/api/v1",
    operation_id = "index",
    tag = "about",
    responses((status = 200, description = "The addresses", body = Index), Always)
)]
pub async fn index(headers: HeaderMap) -> Result<Response, Error> {
    let routes = DESCRIPTION.paths.paths.iter().map(|(path, item)| Route {
        path,
        answers: item.get.as_ref().and_then(|get| get.summary.as_deref()).unwrap_or_default(),
    });
    reply::json(
        &headers,
        &Index {
            title: "Holewright",
            description: "/api/v1/openapi.json",
            file: "/reference.sqlite",
            routes: routes.collect(),
        },
    )
}

/// This description, as OpenAPI 3.1.
///
/// # Errors
/// The answer is in no form the program takes: 406.
#[utoipa::path(
    get,
    path = "/api/v1/openapi.json",
    operation_id = "description",
    tag = "about",
    responses((status = 200, description = "The description", body = Object), Always)
)]
pub async fn show(headers: HeaderMap) -> Result<Response, Error> {
    reply::json(&headers, &*DESCRIPTION)
}
