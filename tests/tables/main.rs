//! The tables: whole, sourced, and read in every usual spelling.

mod materials;
