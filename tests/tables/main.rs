//! The tables: whole, sourced, and read in every usual spelling.

mod clearance;
mod drills;
mod lists;
mod materials;
//! The tables test themselves: what must hold of every row.

mod threads;
