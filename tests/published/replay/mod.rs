//! The runner: reads a copied file row by row, compares each printed figure with the library's,
//! and settles what remains with the two ledgers.

mod family;
mod ledger;
mod outcome;
mod printed;
mod proof;
mod row;
mod summary;

pub(crate) use family::{Family, data_folder, read};
pub(crate) use ledger::{Differences, NotHeld};
pub(crate) use outcome::{Outcome, replay};
pub(crate) use printed::{Printed, decimal};
pub(crate) use row::{Kind, Row};
pub(crate) use summary::{by_folder, line, markdown, totals};
