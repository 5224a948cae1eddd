//! The material pages: the list, one material.

mod index;
mod show;
mod speeds;

pub(super) use index::index;
pub(super) use show::show;
