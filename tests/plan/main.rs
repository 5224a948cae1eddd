//! The hole plan, case by case, and its drawings.

mod cases;
mod drawing;
mod limits;
mod machines;
mod sheet;
mod steps;
mod warnings;
