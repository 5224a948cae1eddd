//! What happens around every answer: its request id and log line, the reader's drawer, its security
//! headers, what other sites may not send, the limits
//! on what was sent and on how often one address may ask, the body of a refusal, and a panic turned
//! into one.

pub mod beside_page;
pub mod body;
pub mod budget;
pub mod cors;
pub mod drawer;
pub mod host;
pub mod observe;
pub mod panics;
pub mod rate;
pub mod refusals;
pub mod request_id;
pub mod same_origin;
pub mod security_headers;
pub mod to_the_end;
