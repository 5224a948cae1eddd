//! What a drawer fills where an address leaves it open. It never overrides the address.

use super::Drawer;
use crate::pages::{Query, Visit};

/// One parameter a drawer can fill.
pub(in crate::pages) struct Fill {
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
pub(in crate::pages) static PLAN: [Fill; 2] = [DRILLS, SPINDLE];
/// On the calculator of tapping sizes.
pub(in crate::pages) static TAPPING: [Fill; 1] = [DRILLS];
/// On the calculator of clearance holes.
pub(in crate::pages) static CLEARANCE: [Fill; 1] = [DRILLS];
/// On the calculator of spindle speeds.
pub(in crate::pages) static SPEEDS: [Fill; 1] = [SPINDLE];

/// A page's query with what the reader's drawer filled in.
pub(in crate::pages) struct Filled<'a> {
    /// The query: what was asked, then what was filled.
    pub(in crate::pages) query: Query,
    /// The drawer in use.
    drawer: Option<&'a Drawer>,
    /// What was filled.
    fields: Vec<&'static str>,
}

/// Fills what a page's address leaves open.
pub(in crate::pages) fn filled<'a>(visit: &Visit<'a>, fills: &[Fill]) -> Filled<'a> {
    let drawer = visit.drawer();
    let mut query = visit.query.clone();
    let mut fields = Vec::new();
    for fill in fills {
        let open = fill.open.iter().all(|field| visit.query.get(field).is_empty());
        let text = drawer.filter(|_| open).map(fill.text).unwrap_or_default();
        if !text.is_empty() {
            query.fill(fill.field, &text);
            fields.push(fill.field);
        }
    }
    Filled { query, drawer, fields }
}

impl<'a> Filled<'a> {
    /// The drawer in use.
    pub(in crate::pages) fn drawer(&self) -> Option<&'a Drawer> {
        self.drawer
    }

    /// Whether the drawer filled a parameter.
    pub(in crate::pages) fn has(&self, field: &str) -> bool {
        self.fields.contains(&field)
    }

    /// Whether the drawer says which drills there are.
    pub(in crate::pages) fn chooses_drills(&self) -> bool {
        self.has("owned")
    }

    /// Whether the drawer changed anything asked.
    pub(in crate::pages) fn changed(&self) -> bool {
        !self.fields.is_empty()
    }
}
