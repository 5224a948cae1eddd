//! The pages of the shop notes: reading, writing, the queue, and what stands on reference pages.
//!
//! Signed-in readers get pages of their own that nobody may keep; everybody else gets the same bytes.

mod at_hand;
pub mod atom;
mod back;
pub mod compare;
pub mod decided;
pub mod deciding;
pub mod export;
pub mod feed;
mod form;
pub(super) mod fragment;
pub mod history;
pub mod import;
mod inspection;
mod item;
mod judged;
mod kept;
mod last_machine;
mod late;
mod lines;
pub mod list;
pub mod member_acts;
pub mod mend;
pub mod mine;
pub mod news;
pub mod newsletter;
mod number;
mod page;
pub mod queue;
mod queued;
mod remarked;
pub mod remarks;
mod reported;
pub mod show;
mod text;
mod text_form;
mod typed;
pub mod write;
