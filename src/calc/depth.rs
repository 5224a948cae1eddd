//! How deep to drill so that enough full threads are left.
