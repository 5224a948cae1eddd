//! The finder: what is typed at the search box, to the first hit.

mod addresses;
mod every_row;
mod first;
mod properties;
mod queries;
mod suggestions;
