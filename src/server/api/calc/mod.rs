//! The calculators: the pages' queries, the pages' figures.
//!
//! Address, parameters and description come from each calculator's declaration. One that answers in
//! rows needs nothing here; one with an answer of its own has its body here, or nothing compiles.

mod clearance;
mod description;
mod plain;
mod speeds;
mod tapping;

use axum::extract::RawQuery;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use super::reply;
use super::segments::Segments;
use super::taken::WithTaken;
use crate::Error;
use holewright_core::calculators::{AnswerKind, Declaration, find};
use holewright_core::tables::threads;
use holewright_pages::Query;

pub(super) use description::{Described, describe};

/// The answer of one calculator.
///
/// # Errors
/// There is none of this name: 404. A field makes no sense: 422.
pub async fn show(
    Segments(name): Segments<String>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Result<Response, Error> {
    match find(&name) {
        Some(calculator) => answer(calculator, query.as_deref().unwrap_or_default(), &headers),
        None => Err(super::nothing_here().await),
    }
}

/// The answer to a query.
///
/// # Errors
/// A field that makes no sense.
pub(super) fn answer(
    calculator: &Declaration,
    query: &str,
    headers: &HeaderMap,
) -> Result<Response, Error> {
    let query = Query::read(query);
    let asked = calculator.asked(query.pairs());
    let taken = calculator.taken(&asked);
    match calculator.answer {
        AnswerKind::Rows(rows) => {
            reply::json(headers, &WithTaken::new(plain::answer(rows, &asked)?, taken))
        }
        AnswerKind::Speeds => reply::json(headers, &WithTaken::new(speeds::answer(&asked)?, taken)),
        AnswerKind::Tapping => {
            reply::json(headers, &WithTaken::new(tapping::answer(&asked)?, taken))
        }
        AnswerKind::Clearance => {
            reply::json(headers, &WithTaken::new(clearance::answer(&asked)?, taken))
        }
    }
}

fn described(calculator: &Declaration) -> Described {
    match calculator.answer {
        AnswerKind::Rows(rows) => plain::described(calculator, rows),
        AnswerKind::Speeds => speeds::described(),
        AnswerKind::Tapping => tapping::described(),
        AnswerKind::Clearance => clearance::described(),
    }
}

/// A thread, by its address and its name.
#[derive(Debug, Serialize, ToSchema)]
struct ThreadName {
    /// The id of its system.
    #[schema(example = "ba")]
    system: &'static str,
    /// The size in address dress.
    #[schema(example = "5")]
    size: &'static str,
    /// Its name in the shop.
    #[schema(example = "5 BA")]
    designation: &'static str,
}

impl From<&'static threads::Thread> for ThreadName {
    fn from(thread: &'static threads::Thread) -> Self {
        Self {
            system: thread.system.system().slug,
            size: thread.size,
            designation: thread.designation,
        }
    }
}
