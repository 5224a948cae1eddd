//! The calculators beside the plan, each a form whose query string is the answer's permanent address.
//!
//! What they ask and answer is declared in [`holewright_core::calculators`]; here is how it is shown. One
//! that answers in rows has the page they all have, [`plain`].

mod clearance;
mod drawer;
mod form;
mod index;
mod plain;
mod speeds;
mod tapping;

use super::link::Link;
use super::{Query, Reply, Visit, not_found, query};
use holewright_core::asking::Asked;
use holewright_core::calculators::{AnswerKind, CALCULATORS, Declaration, find};

pub(super) use index::{in_a_sentence, index};
pub(super) use plain::{drawing, table};

/// One calculator, or the list of them where there is none of this name.
pub(super) fn show(visit: &Visit<'_>, name: &str) -> Reply {
    let Some(calculator) = find(name) else {
        return not_found::page(visit, CALCULATORS.iter().copied().map(link).collect());
    };
    match calculator.answer {
        AnswerKind::Rows(rows) => plain::show(visit, calculator, rows),
        AnswerKind::Speeds => speeds::show(visit),
        AnswerKind::Tapping => tapping::show(visit),
        AnswerKind::Clearance => clearance::show(visit),
    }
}

fn link(calculator: &Declaration) -> Link {
    Link::new(calculator.path(), calculator.title)
}

/// What a query asks of a calculator.
fn asked(calculator: &Declaration, query: &Query) -> Asked {
    calculator.asked(query.pairs())
}

/// The page of an answer: the fields that were filled, in one order.
fn address(calculator: &Declaration, asked: &Asked) -> String {
    query::address(&calculator.path(), asked.filled())
}

/// The same answer for a program.
fn json(calculator: &Declaration, asked: &Asked) -> String {
    query::address(&format!("/api/v1/calc/{}", calculator.slug), asked.filled())
}
