//! What stands in front of every answer and behind it: the sockets, the route table, what happens around an
//! answer, its bytes, what is logged and counted of it.

pub mod accept;
pub mod bytes;
pub(crate) mod log;
pub mod metrics;
pub mod middleware;
pub mod place;
pub mod routes;
