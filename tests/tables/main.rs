//! The tables test themselves: counts, order, addresses, and rows against a second transcription.

mod clearance;
mod drills;
mod lists;
mod materials;
mod threads;
