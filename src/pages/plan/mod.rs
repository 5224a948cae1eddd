//! The hole plan's page, and the reading of its address.
//!
//! [`Request`] knows nothing of templates: the JSON door reads its query with it too.

mod bearing;
mod beside;
mod depths;
mod elsewhere;
mod fields;
mod figure;
mod form;
mod note;
mod page;
mod request;
mod steps;
mod taper;
mod trouble;
mod wanted;
mod words;

pub use request::Request;
pub use trouble::refusal;

pub(super) use form::{short_form, short_form_for, short_form_in};
pub(super) use page::show;
