//! The guards of a server on the internet. A test begins with the line of the quality bars that it
//! holds: `s12_…`.

pub(crate) mod binary;
mod database;
mod echo;
mod faults;
mod headers;
mod hidden;
mod hostile;
mod hosts;
mod limits;
mod log;
mod markup;
mod metrics;
mod outbound;
pub(crate) mod strings;
mod watched;
