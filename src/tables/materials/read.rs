//! Reading the material names people type.
