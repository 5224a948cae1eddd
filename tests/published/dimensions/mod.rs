//! Dimensions of threads: what the tables hold, and what the forms make of it.

mod american;
mod ba;
mod metric;
mod pipe;
mod unified;
mod whitworth;

use crate::replay::Family;
pub(crate) use unified::{SQUARE_INCH_MM2, minor_area_mm2};

/// Every file of thread dimensions.
pub(crate) fn families() -> impl Iterator<Item = &'static Family> {
    [
        ba::FAMILIES,
        whitworth::FAMILIES,
        pipe::FAMILIES,
        metric::FAMILIES,
        unified::FAMILIES,
        american::FAMILIES,
    ]
    .into_iter()
    .flatten()
}
