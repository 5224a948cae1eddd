//! Reading the thread names people type.
