//! What people are asked for: fields declared once, what was typed in them, and what was wrong with it.
//!
//! A [`Field`] says everything about itself: its name in an address, its words on a page and in the
//! description of the JSON, its limits, its usual value, and how it is read. Leaves out forms, pages and
//! percent codes.

mod asked;
mod at_hand;
mod diameter;
mod error;
mod field;
mod ground;
mod limits;
mod line;
mod longest;
mod metal;
mod reading;
mod screw;
mod taken;
mod typed;
mod word;

pub use asked::Asked;
pub use at_hand::{
    OWNED, SERIES, SPINDLE_MAX, SPINDLE_SPEEDS, at_hand, in_both, machines, owned, owned_taken,
    series, speeds_of,
};
pub use diameter::{Diameter, diameter, diameter_taken};
pub use error::{Choice, FieldError, material_choices, quoted, sentence, thread_error};
pub use field::{About, AnyField, Control, Field, Need};
pub use ground::{GROUND, POINT_ANGLE};
pub use limits::Limits;
pub use line::Line;
pub use longest::{cut, is_carried, longest, too_long};
pub use metal::metal;
pub use reading::Reading;
pub use screw::screw;
pub use taken::{Taken, parallel_thread, thread, thread_as_meant, thread_taken};
pub use typed::{Typed, keep};
pub use word::{FITS, TOOL_STEELS, Word, word};
