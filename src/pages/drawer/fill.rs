//! What a drawer fills where an address leaves it open. It never overrides the address.

use super::Drawer;
use crate::field::Field;
use crate::{Query, Visit};

/// One parameter a drawer can fill.
pub(crate) struct Fill {
    /// The parameter.
    field: &'static str,
    /// Those that must all be empty for it: any of them says what this one would.
    open: &'static [&'static str],
    /// What the drawer puts there; empty where it holds nothing of the kind.
    text: fn(&Drawer) -> String,
}

const DRILLS: Fill =
    Fill { field: "owned", open: &["owned", "series"], text: |drawer| drawer.drills.text() };

const SPINDLE: Fill = Fill {
    field: "spindle_speeds",
    open: &["spindle_speeds", "spindle_max"],
    text: |drawer| drawer.speeds.text(),
};

/// On a plan.
pub(crate) static PLAN: [Fill; 2] = [DRILLS, SPINDLE];
/// On the calculator of tapping sizes.
pub(crate) static TAPPING: [Fill; 1] = [DRILLS];
/// On the calculator of clearance holes.
pub(crate) static CLEARANCE: [Fill; 1] = [DRILLS];
/// On the calculator of speeds.
pub(crate) static SPEEDS: [Fill; 1] = [SPINDLE];
/// On the calculator of speeds, for a reamer: a hole is drilled before it.
pub(crate) static SPEEDS_TO_REAM: [Fill; 2] = [DRILLS, SPINDLE];

/// What the drawer fills of a question with these fields.
pub(crate) fn fills_of(fields: &[&str]) -> Vec<Fill> {
    [DRILLS, SPINDLE].into_iter().filter(|fill| fields.contains(&fill.field)).collect()
}

/// A page's query with what the reader's drawer filled in.
pub(crate) struct Filled<'a> {
    /// The query: what was asked, then what was filled.
    pub(crate) query: Query,
    /// The drawer in use.
    drawer: Option<&'a Drawer>,
    /// What was filled.
    fields: Vec<&'static str>,
    /// The fields that, left empty, mean what was filled.
    left_to_it: Vec<&'static str>,
}

/// Fills what a page's address leaves open.
pub(crate) fn filled<'a>(visit: &Visit<'a>, fills: &[Fill]) -> Filled<'a> {
    let drawer = visit.drawer();
    let mut query = visit.query.clone();
    let (mut fields, mut left_to_it) = (Vec::new(), Vec::new());
    for fill in fills {
        let open = fill.open.iter().all(|field| visit.query.get(field).is_empty());
        let text = drawer.filter(|_| open).map(fill.text).unwrap_or_default();
        if !text.is_empty() {
            query.fill(fill.field, &text);
            fields.push(fill.field);
            left_to_it.extend(fill.open);
        }
    }
    Filled { query, drawer, fields, left_to_it }
}

impl<'a> Filled<'a> {
    /// The drawer in use.
    pub(crate) fn drawer(&self) -> Option<&'a Drawer> {
        self.drawer
    }

    /// Whether the drawer filled a parameter.
    pub(crate) fn has(&self, field: &str) -> bool {
        self.fields.contains(&field)
    }

    /// Says at the fields that were left to the drawer that they were.
    pub(crate) fn say_at<'f>(&self, fields: impl IntoIterator<Item = &'f mut Field>) {
        for field in fields {
            if self.left_to_it.contains(&field.name) {
                field.hint = "Left empty: what is in your drawer".into();
            }
        }
    }

    /// Whether the drawer says which drills there are.
    pub(crate) fn chooses_drills(&self) -> bool {
        self.has("owned")
    }

    /// Whether the drawer changed anything asked.
    pub(crate) fn changed(&self) -> bool {
        !self.fields.is_empty()
    }
}
