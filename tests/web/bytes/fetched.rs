//! An answer as its bytes came, and what they say once decoded.

use std::io::Read;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Method, Request, StatusCode};
use tower::ServiceExt;

pub(super) struct Fetched {
    pub(super) status: StatusCode,
    pub(super) headers: HeaderMap,
    pub(super) body: Vec<u8>,
}

impl Fetched {
    pub(super) fn header(&self, name: &str) -> Option<&str> {
        self.headers.get(name).map(|value| value.to_str().unwrap())
    }

    #[track_caller]
    pub(super) fn tag(&self) -> String {
        self.header("etag").unwrap().to_owned()
    }

    /// The text, whatever its coding.
    #[track_caller]
    pub(super) fn text(&self) -> String {
        let mut text = String::new();
        match self.header("content-encoding") {
            None => text.push_str(std::str::from_utf8(&self.body).unwrap()),
            Some("br") => {
                brotli::Decompressor::new(&*self.body, 4096).read_to_string(&mut text).unwrap();
            }
            Some("zstd") => {
                zstd::Decoder::new(&*self.body).unwrap().read_to_string(&mut text).unwrap();
            }
            Some("gzip") => {
                flate2::read::GzDecoder::new(&*self.body).read_to_string(&mut text).unwrap();
            }
            Some(other) => panic!("coded as {other}"),
        }
        text
    }
}

pub(super) async fn fetch(
    router: &Router,
    method: Method,
    path: &str,
    headers: &[(&str, &str)],
) -> Fetched {
    let mut request = Request::builder().method(method).uri(path);
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    let request = request.body(Body::empty()).unwrap();
    let (parts, body) = router.clone().oneshot(request).await.unwrap().into_parts();
    let body = to_bytes(body, usize::MAX).await.unwrap().to_vec();
    Fetched { status: parts.status, headers: parts.headers, body }
}

/// GET by a reader who accepts these codings.
pub(super) async fn get(router: &Router, path: &str, accepts: &str) -> Fetched {
    fetch(router, Method::GET, path, &[("accept-encoding", accepts)]).await
}
