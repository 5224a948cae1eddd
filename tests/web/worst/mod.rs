//! U31, F20: the worst that members may write and readers may ask takes only so long, and only so much.

#![expect(clippy::print_stdout, reason = "what was measured is shown beside the bar it keeps")]

mod club;
mod forms;
mod meter;
mod requests;
mod routes;
mod search;
mod shown;
