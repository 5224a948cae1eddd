//! The calculators: the pages' queries, the pages' figures.

pub mod clearance;
pub mod speeds;
pub mod tapping;

use serde::Serialize;
use utoipa::ToSchema;

use holewright_core::tables::threads;

/// A thread, by its address and its name.
#[derive(Debug, Serialize, ToSchema)]
struct ThreadName {
    /// The id of its system.
    #[schema(example = "ba")]
    system: &'static str,
    /// The size in address dress.
    #[schema(example = "5")]
    size: &'static str,
    /// Its name in the shop.
    #[schema(example = "5 BA")]
    designation: &'static str,
}

impl From<&'static threads::Thread> for ThreadName {
    fn from(thread: &'static threads::Thread) -> Self {
        Self {
            system: thread.system.system().slug,
            size: thread.size,
            designation: thread.designation,
        }
    }
}
