//! A form as a browser sent it.

use axum::body::Bytes;

/// The fields in the order they came. Of a field sent twice the first counts; a field no form of ours
/// has is passed over, whatever it is called.
#[derive(Debug)]
pub(super) struct Filled(Vec<(String, String)>);

impl Filled {
    /// Reads a body. Never fails: bytes that are no text become the replacement character.
    pub(super) fn read(body: &Bytes) -> Self {
        Self(form_urlencoded::parse(body).into_owned().collect())
    }

    /// What was typed, as typed; empty where the field is missing.
    pub(super) fn get(&self, name: &str) -> &str {
        self.0.iter().find(|(held, _)| held == name).map_or("", |(_, value)| value.as_str())
    }
}
