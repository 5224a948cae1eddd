//! What becomes of the form that fills a drawer.

use super::contents::Drawer;
use super::page;
use super::typed::Typed;
use crate::{Context, FieldError, Query, Reply, Visit};

/// What becomes of what was sent.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// Save this drawer in the place of any other.
    Keep(Drawer),
    /// Keep none.
    Empty,
    /// Something is to be put right: the page that says what, with everything typed in it.
    Refused(Reply),
}

/// What becomes of a form that was sent: `act` says which button, the rest what is owned.
///
/// # Examples
/// ```
/// use holewright_pages::{Context, drawer::{Outcome, decide}};
/// let context = Context::default();
/// let kept = decide(b"act=keep&drill_set=1-60&drills=2.05mm", &context);
/// assert!(matches!(kept, Outcome::Keep(drawer) if drawer.drills.held().len() == 61));
/// assert_eq!(decide(b"act=keep&drills=", &context), Outcome::Empty);
/// assert!(matches!(decide(b"act=keep&drills=spoons", &context), Outcome::Refused(_)));
/// ```
#[must_use]
pub fn decide(form: &[u8], context: &Context) -> Outcome {
    let typed = Typed::read(form);
    let carried = context.drawer.drawer();
    let switched = |on| carried.map(|drawer| Drawer { on, ..drawer.clone() });
    match typed.act.as_str() {
        "keep" => keep(&typed, context),
        "empty" => Outcome::Empty,
        // Without a drawer there is nothing to switch, and nothing to keep.
        "off" => switched(false).map_or(Outcome::Empty, Outcome::Keep),
        "on" => switched(true).map_or(Outcome::Empty, Outcome::Keep),
        _ => {
            let message = "Nothing was asked for here: press one of the buttons below.";
            refused(&typed, vec![FieldError::new("keep", message)], context)
        }
    }
}

fn keep(typed: &Typed, context: &Context) -> Outcome {
    match typed.drawer(on(context)) {
        Ok(drawer) if drawer.is_empty() => Outcome::Empty,
        Ok(drawer) => Outcome::Keep(drawer),
        Err(errors) => refused(typed, errors, context),
    }
}

/// A drawer that was switched off stays so until it is switched on.
fn on(context: &Context) -> bool {
    context.drawer.drawer().is_none_or(|drawer| drawer.on)
}

fn refused(typed: &Typed, errors: Vec<FieldError>, context: &Context) -> Outcome {
    let visit = Visit { path: "/drawer".to_owned(), query: Query::default(), context };
    Outcome::Refused(page::refuse(&visit, typed, errors))
}
