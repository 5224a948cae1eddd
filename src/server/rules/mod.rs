//! What is decided without a request at hand and without SQL: who may do what and how often, what a note
//! must hold, what a reader has already, how time and cookies are read.

pub mod auth;
mod base_url;
pub(crate) mod chance;
pub mod clock;
pub mod club;
pub mod cookie;
pub mod deed;
mod generations;
pub mod limits;
pub mod notes;
pub mod plain;
mod second_factor;
pub mod shares;
mod trusted_proxy;
pub mod validator;
pub mod zone;

pub use base_url::{BaseUrl, reachable};
pub use generations::{Generation, Generations, Keep};
pub use second_factor::SecondFactor;
pub use trusted_proxy::{TrustedProxy, UnnamedProxies};
