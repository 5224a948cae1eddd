//! Dimensioned drawings as SVG.
//!
//! - [`hole_section`]: a tapped hole cut through its axis.
//! - [`thread_profile`]: the true form of a thread.
//! - [`effort_graph`]: effort and strength over the size of the hole.
//! - [`fastener`]: a screw in its clearance hole, with its head from above.
//! - [`worst_case`]: two holes whose centres are off, with the screw between them.
//!
//! Each drawing is complete with presentation attributes alone. For a page's own style it names its
//! lines by class: `outline`, `hatch`, `thread`, `centre-line`, `break-line`, `dimension`, `arrowhead`,
//! `dimension-text`, `note`, `scale-bar`. Three rules recolour the whole: the stroke of `.drawing`, the
//! fill of `.ink` and the fill of `.paper`. Leaves out pages and files.

mod dimension;
mod effort_graph;
mod fastener;
mod frame;
mod hatch;
pub mod hole_section;
mod label;
pub mod svg;
pub mod thread_profile;
mod worst_case;

pub use dimension::Dimension;
pub use effort_graph::{EffortGraph, Marked, effort_graph};
pub use fastener::{DrawnHead, FastenerView, fastener, fastener_dimensions};
pub use hole_section::{BlindDepths, Bottom, Drilled, Section, Upper, dimensions, hole_section};
pub use thread_profile::thread_profile;
pub use worst_case::{WorstCase, worst_case, worst_case_dimensions};

/// What makes a drawing's element ids its own on a page that holds several.
///
/// # Examples
/// ```
/// use holewright_core::drawing::DrawingIds;
/// assert_eq!(DrawingIds::new("hole").id("title"), "hole-title");
/// assert_eq!(DrawingIds::new("5 BA").id("title"), "d5-BA-title");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DrawingIds<'prefix> {
    prefix: &'prefix str,
}

impl<'prefix> DrawingIds<'prefix> {
    /// Ids that begin with this word, which no other drawing on the page may use.
    #[must_use]
    pub const fn new(prefix: &'prefix str) -> Self {
        Self { prefix }
    }

    /// The id of one part of the drawing.
    #[must_use]
    pub fn id(self, part: &str) -> String {
        let mut id = String::new();
        // An id must start with a letter to be a plain name in a style sheet or an address.
        if !self.prefix.starts_with(|first: char| first.is_ascii_alphabetic()) {
            id.push('d');
        }
        let plain = |letter: char| if letter.is_ascii_alphanumeric() { letter } else { '-' };
        id.extend(self.prefix.chars().map(plain));
        id.push('-');
        id.push_str(part);
        id
    }
}
