//! `Accept-Encoding`: whatever a reader says, it gets what it likes best of what it takes.

use axum::http::{HeaderMap, HeaderValue, StatusCode};
use holewright_server::front::bytes::{Accepts, Coding};

use super::fetched::get;
use crate::support::Server;

const BROTLI: Option<Coding> = Some(Coding::Brotli);
const ZSTD: Option<Coding> = Some(Coding::Zstd);
const GZIP: Option<Coding> = Some(Coding::Gzip);
const PLAIN: Option<Coding> = Some(Coding::Identity);

#[test]
#[rustfmt::skip]
fn the_coding_liked_best() {
    for (header, best) in [
        ("", PLAIN),
        ("br", BROTLI),
        ("gzip, deflate, br, zstd", BROTLI),
        ("gzip, deflate", GZIP),
        ("x-gzip", GZIP),
        ("GZIP;Q=0.5", GZIP),
        ("deflate, compress", PLAIN),
        ("gzip, deflate, zstd", ZSTD),
        ("ZStd", ZSTD),
        ("zstd;q=0.7, gzip;q=0.7, br;q=0.6", ZSTD),
        ("zstd;q=0.7, gzip;q=0.8, br;q=0.6", GZIP),
        ("zstd;q=0.7, br;q=0.8", BROTLI),
        ("zstd;q=0, gzip;q=0.1", GZIP),
        ("zstd;q=0, *", BROTLI),
        ("zstd;q=0.2, zstd;q=0.9, gzip;q=0.5", GZIP),
        ("zstd;q=1.5, gzip;q=0.5", GZIP),
        ("br;q=0.5, gzip;q=0.8", GZIP),
        ("br ; q=0.8 , gzip ; q=0.8", BROTLI),
        ("br;q=0.001", BROTLI),
        ("br;q=0, gzip", GZIP),
        ("br;q=0.000, gzip;q=0", PLAIN),
        ("identity, br;q=0.5", PLAIN),
        ("identity;q=0.5, br;q=0.5", BROTLI),
        ("*", BROTLI),
        ("*;q=0.5, br;q=0", ZSTD),
        ("*;q=0.5, br;q=0, zstd;q=0.4", GZIP),
        ("br;q=0.2, gzip;q=0.2, *;q=0.5", ZSTD),
        ("br;q=0.2, zstd;q=0.2, gzip;q=0.2, *;q=0.5", PLAIN),
        ("identity;q=0, gzip", GZIP),
        ("*;q=0, gzip", GZIP),
        ("identity;q=0", None),
        ("*;q=0", None),
        ("br;q=0, gzip;q=0, zstd;q=0, identity;q=0", None),
        ("*;q=0, identity", PLAIN),
        // Weights that are none: the item does not count.
        ("br;q=2", PLAIN),
        ("br;q=-1, gzip", GZIP),
        ("br;q=0.0001, gzip;q=nan", PLAIN),
        ("br;q=", PLAIN),
        ("br;level=1, gzip", GZIP),
        (";;,,q=1,", PLAIN),
    ] {
        let headers = HeaderMap::from_iter([(axum::http::header::ACCEPT_ENCODING, HeaderValue::from_static(header))]);
        assert_eq!(Accepts::read(&headers).best(), best, "{header}");
    }
    assert_eq!(Accepts::read(&HeaderMap::new()).best(), PLAIN);
}

#[tokio::test]
async fn a_short_body_stays_plain_unless_plain_is_refused() {
    let server = Server::start().await;
    let short = get(&server.router, "/healthz", "gzip, br").await;
    assert_eq!(short.header("content-encoding"), None);
    assert_eq!(short.header("vary"), Some("Accept-Encoding"));
    for (accepts, coding) in
        [("identity;q=0, gzip", "gzip"), ("identity;q=0, zstd", "zstd"), ("*;q=0, br", "br")]
    {
        let coded = get(&server.router, "/healthz", accepts).await;
        assert_eq!(coded.header("content-encoding"), Some(coding), "{accepts}");
        assert_eq!(coded.text(), "alive\n");
    }
}

#[tokio::test]
async fn a_reader_who_takes_nothing_is_told_so() {
    let server = Server::start().await;
    for path in ["/", "/threads/ba/5", "/healthz", "/plan?thread=5ba"] {
        let answer = get(&server.router, path, "identity;q=0").await;
        assert_eq!(answer.status, StatusCode::NOT_ACCEPTABLE, "{path}");
        assert!(answer.text().contains("Accept-Encoding"), "{path}");
    }
    let answer = get(&server.router, "/api/v1/threads", "deflate, *;q=0").await;
    assert_eq!(answer.status, StatusCode::NOT_ACCEPTABLE);
    assert_eq!(answer.header("content-type"), Some("application/problem+json"));
}

#[tokio::test]
async fn every_kind_of_text_is_coded() {
    let server = Server::start().await;
    let plan = "/plan?thread=5ba&material=gunmetal&hole=through&depth=6mm";
    for (path, status) in [
        ("/threads/ba/5", 200),
        ("/drills", 200),
        ("/drills?series=number", 200),
        (plan, 200),
        ("/plan?thread=nonsense", 422),
        ("/nothing-here", 404),
        ("/api/v1/threads/ba/5", 200),
        ("/api/v1/drills", 200),
    ] {
        let plain = get(&server.router, path, "identity").await;
        assert_eq!(plain.status.as_u16(), status, "{path}");
        for coding in ["br", "zstd", "gzip"] {
            let coded = get(&server.router, path, coding).await;
            assert_eq!(coded.status, plain.status, "{path}");
            assert_eq!(coded.header("content-encoding"), Some(coding), "{path}");
            let is_page = !path.starts_with("/api/");
            let vary = if is_page { "Accept-Encoding, Cookie" } else { "Accept-Encoding" };
            assert_eq!(coded.header("vary"), Some(vary), "{path}");
            assert_eq!(coded.header("content-type"), plain.header("content-type"), "{path}");
            assert_eq!(coded.text(), plain.text(), "{path}");
            assert!(coded.body.len() < plain.body.len() / 2, "{path}");
        }
    }
}
