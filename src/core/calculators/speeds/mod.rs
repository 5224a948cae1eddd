//! `/calculators/speeds`: how fast to turn a drill, a reamer, a tap under power, a countersink or a
//! spotting drill in a metal, and what follows from it: feed, time, pecks, the hole to leave.

mod answer;
mod basis;
mod fields;
mod question;
mod sink;

pub use answer::{Answer, Detail, Ends, Feed, Pecks, SpeedAtHand, TAP_LEAD, Way, answer};
pub use basis::{Basis, Rule};
pub use fields::{DECLARATION, LARGEST_TOOL, SMALLEST_TOOL, answer_to, work_of};
pub use question::{Question, Tool, Work};
pub use sink::Sink;
