//! The drill pages: the chart, one drill.

mod chart;
pub mod cut;
mod screws;
mod show;

pub(super) use chart::chart;
pub(super) use show::show;
