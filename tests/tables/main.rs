//! The tables: whole, sourced, and read in every usual spelling.

mod clearance;
mod drills;
mod grades;
mod lists;
mod materials;
mod systems;
mod threads;
