//! What happens around every answer: its request id and log line, its security headers, the body
//! of a refusal, the limit on how often one address may ask, and a panic turned into a refusal.

pub mod client;
pub mod observe;
pub mod panics;
pub mod rate;
pub mod refusals;
pub mod request_id;
pub mod security_headers;
