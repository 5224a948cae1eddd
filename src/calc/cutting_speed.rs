//! Spindle speed from surface speed.
