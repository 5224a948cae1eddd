//! The tables test themselves: what must hold of every row.

mod threads;
