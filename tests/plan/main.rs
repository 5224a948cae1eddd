//! The hole plan, case by case.

mod cases;
