//! The hole plan.
