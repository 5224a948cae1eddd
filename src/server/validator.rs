//! Validators: the `ETag` of an answer, and the 304 for a reader who has it already.

use std::sync::LazyLock;

use axum::body::Body;
use axum::http::header::{ETAG, IF_NONE_MATCH};
use axum::http::{HeaderMap, HeaderValue, StatusCode};
use axum::response::Response;
use sha2::{Digest, Sha256};

use super::config::BaseUrl;
use super::entries::hexadecimal;

/// A strong validator: the same tag means the same bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tag(String);

/// What every page depends on besides its own figures: the program, and the address it is served at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Build(String);

impl Build {
    /// This program, serving at this address.
    #[must_use]
    pub fn serving(base_url: &BaseUrl) -> Self {
        Self(format!("{} {base_url}", *PROGRAM))
    }
}

/// The version alone would call two builds of one version the same, so the program's own bytes
/// count. A program that cannot read itself gives no lasting tags: they then hold for one run.
static PROGRAM: LazyLock<String> = LazyLock::new(|| {
    let bytes = std::env::current_exe().and_then(std::fs::read);
    let build = match bytes {
        Ok(bytes) => hexadecimal(&Sha256::digest(bytes)),
        Err(_) => super::middleware::request_id::random(),
    };
    format!("{} {build}", env!("CARGO_PKG_VERSION"))
});

impl Tag {
    /// The tag of a reference page: the digest of its entry's figures, and the program.
    #[must_use]
    pub fn of_entry(digest: &str, build: &Build) -> Self {
        Self::of_bytes(format!("{digest} {}", build.0).as_bytes())
    }

    /// The tag of anything else: of its bytes.
    #[must_use]
    pub fn of_bytes(bytes: &[u8]) -> Self {
        let digest = Sha256::digest(bytes);
        Self(format!("\"{}\"", hexadecimal(digest.get(..16).unwrap_or_default())))
    }

    /// Whether the reader has this version already.
    #[must_use]
    pub fn is_held(&self, request: &HeaderMap) -> bool {
        request
            .get_all(IF_NONE_MATCH)
            .iter()
            .filter_map(|value| value.to_str().ok())
            .flat_map(|value| value.split(','))
            .map(|tag| tag.trim())
            .any(|tag| tag == "*" || tag.strip_prefix("W/").unwrap_or(tag) == self.0)
    }

    /// The answer with this tag on it.
    #[must_use]
    pub fn mark(&self, mut response: Response) -> Response {
        if let Ok(value) = HeaderValue::from_str(&self.0) {
            response.headers_mut().insert(ETAG, value);
        }
        response
    }

    /// 304, for a reader who has this version.
    #[must_use]
    pub fn not_modified(&self) -> Response {
        let mut response = Response::new(Body::empty());
        *response.status_mut() = StatusCode::NOT_MODIFIED;
        self.mark(response)
    }
}
