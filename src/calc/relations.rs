//! Threads that are the same under two names, or nearly so.
