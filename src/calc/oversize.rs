//! How large a drilled hole really comes out.
