//! The drill pages: the chart, one drill.

mod chart;
mod screws;
mod show;

pub(super) use chart::{chart, kept};
pub(super) use show::show;
