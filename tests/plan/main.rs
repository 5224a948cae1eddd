//! The hole plan, case by case, and its drawings.

mod cases;
mod drawing;
mod finishing;
mod limits;
mod placed;
mod sheet;
mod steps;
mod warnings;
