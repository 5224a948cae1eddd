//! Reading the drill names people type.
