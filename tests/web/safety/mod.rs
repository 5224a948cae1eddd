//! Nothing is lost: kills, storms of writes, copies, restores, upgrades. Each test is named for its
//! line of the quality bars.

#![expect(clippy::print_stdout, reason = "what was measured is shown beside the bar it keeps")]

pub(crate) mod asked;
mod clock;
pub(crate) mod commands;
mod contention;
mod damaged;
mod durability;
mod failing;
mod foreign;
mod full;
mod inject;
mod kills;
mod locks;
mod moved;
mod nightly;
mod no_club;
mod notes;
mod private;
mod put_back;
mod readme;
mod saved;
mod small_disk;
pub(crate) mod storm;
mod stormed;
mod sweep;
mod upgrades;
mod writer;
