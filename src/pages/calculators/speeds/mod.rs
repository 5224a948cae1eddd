//! `/calculators/speeds`: how fast to turn a drill, or a tap under power, in a metal.

mod answer;
mod drawer;
mod page;
mod request;
mod spindle;

pub use answer::{Answer, Feed, Reach, SpeedAtHand, Tool, Verdict, Work, answer};
pub use request::Request;
pub use spindle::{SpeedStep, Spindle, SpindleError};

pub(super) use page::show;
