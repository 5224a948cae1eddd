//! What must hold of the pages' own rules for every input, shown on many.

mod drawer;
