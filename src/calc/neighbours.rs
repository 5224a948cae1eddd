//! The nearest drills each way, in every series.
