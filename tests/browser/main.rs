//! The pages in a real browser, served by the real binary: journeys without scripts, reach on a
//! phone, axe-core in both colour schemes, and pictures to look at.
//!
//! Needs chromium, chromedriver and axe-core, which `tests/run` installs; without them it fails.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a page that lacks what a test asks for must stop the test"
)]

mod access;
mod browser;
mod club;
mod console;
mod few_colours;
mod journey;
mod keyboard;
#[path = "../site/kinds.rs"]
mod kinds;
mod members;
mod mistakes;
mod note_pages;
mod notes;
#[path = "../site/members.rs"]
mod open;
mod pictures;
mod plan;
#[path = "../process.rs"]
mod process;
mod reach;
mod readme;
mod started;
mod targets;
mod week;
mod window;
