//! `/calculators/speeds`: how fast to turn a drill, a reamer, a tap under power, a countersink or a
//! spotting drill in a metal, and what follows from it: feed, time, pecks, the hole to leave.

mod answer;
mod basis;
mod details;
mod drawer;
mod fields;
mod machine;
mod page;
mod request;
mod rows;
mod sink;
mod work;

pub use answer::{Answer, Detail, Ends, Feed, Pecks, Question, SpeedAtHand, Way, answer};
pub use basis::{Basis, Rule};
pub use request::Request;
pub use sink::Sink;
pub use work::{Tool, Work};

pub(super) use page::show;
