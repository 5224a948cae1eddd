//! What a handler asks of a request: who sent it.

mod reader;

pub use reader::{Member, Reader};
