//! The hole plan, case by case, and its drawings.

mod drawing;
mod sheet;
