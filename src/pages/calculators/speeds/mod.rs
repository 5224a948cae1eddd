//! `/calculators/speeds`: how fast to turn a drill, a reamer, a tap under power, a countersink or a
//! spotting drill in a metal, and what follows from it: feed, time, pecks, the hole to leave.

mod details;
mod fields;
mod machine;
mod page;
mod rows;

pub(super) use page::show;
