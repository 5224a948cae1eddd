//! The tables: whole, sourced, and read in every usual spelling.

mod clearance;
mod drills;
mod grades;
mod lists;
mod materials;
#[path = "../readme_table.rs"]
mod readme_table;
mod systems;
mod telling;
mod threads;
