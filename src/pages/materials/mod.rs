//! The material pages: the list, one material.

mod index;
mod names;
mod properties;
mod show;
mod speeds;
mod telling;

pub(super) use index::index;
pub(super) use show::show;
