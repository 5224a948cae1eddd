//! The bytes of an answer: static files (U01), pages and their validators (U02), HEAD and content
//! types (U03), the reader's choice of coding, and what is kept.

mod accepts;
mod fetched;
mod first_flight;
mod kept;
mod pictures;
mod u01_static_files;
mod u02_pages;
mod u03_head;
