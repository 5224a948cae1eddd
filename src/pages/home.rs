//! `/`: the search box, a plan's short form, and the doors.

use askama::Template;

use super::calculators::in_a_sentence;
use super::field::Field;
use super::layout::{Frame, Section};
use super::plan::short_form;
use super::{Reply, Visit};

#[derive(Template)]
#[template(path = "home.html")]
struct HomePage {
    frame: Frame,
    plan_fields: Vec<Field>,
    calculators: String,
    /// The club’s name and place, and its words of welcome.
    whose: String,
    welcome: String,
}

/// The front page.
pub(super) fn show(visit: &Visit<'_>) -> Reply {
    let description = "Threads, drills and metals for the model engineer, and a plan for every hole: the drill, the depths and each step in order.";
    let frame =
        Frame::new(visit, Section::None, "Threads, drills and a plan for every hole", description);
    let club = &visit.context.club;
    let page = HomePage {
        plan_fields: short_form(),
        calculators: in_a_sentence(),
        whose: club.line(),
        welcome: club.welcome.clone(),
        frame,
    };
    Reply::html(200, &page)
}
