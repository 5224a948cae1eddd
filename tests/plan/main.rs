//! The hole plan, case by case, and its drawings.

mod cases;
mod choices;
mod drawing;
mod limits;
mod machines;
mod sheet;
mod steps;
mod table;
mod warnings;
