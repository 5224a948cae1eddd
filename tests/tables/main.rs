//! The tables: whole, sourced, and read in every usual spelling.

mod clearance;
mod drills;
mod fasteners;
mod grades;
mod lists;
mod materials;
#[path = "../site/outside.rs"]
mod outside;
#[path = "../readings.rs"]
mod readings;
#[path = "../readme_table.rs"]
mod readme_table;
mod rescue;
mod sources;
mod systems;
mod telling;
mod threads;
