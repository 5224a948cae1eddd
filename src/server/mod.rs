//! The web server.
