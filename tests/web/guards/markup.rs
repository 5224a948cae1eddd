//! S02: no refusal holds anything that runs, styles itself, or comes from elsewhere; and the checker sees
//! what it must refuse. The pages themselves are looked at in `tests/pages/structure.rs`.

use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::http::Method;
use axum::routing::get;
use holewright_server::{Error, front::routes};

use crate::support::{Server, ask};
use crate::{html, markup};

#[tokio::test]
async fn s02_no_refusal_holds_script_or_style() {
    let server = Server::start().await;
    let refusals = Router::new()
        .route("/failed", get(async || Error::Internal("x".into())))
        .route("/limited", get(async || Error::TooMany { wait: Duration::ZERO }));
    let refusals = routes::layered(refusals, Arc::clone(&server.app));
    for (router, method, path) in [
        (&server.router, Method::POST, "/"),
        (&refusals, Method::GET, "/failed"),
        (&refusals, Method::GET, "/limited"),
    ] {
        let answer = ask(router, method, path, &[]).await;
        assert!(answer.status.as_u16() >= 400, "{path}");
        markup::check_page(&answer.body, path);
    }
}

#[test]
fn the_reader_of_markup_sees_what_it_must_refuse() {
    for wrong in [
        "<script>x</script>",
        "<p onclick=x>",
        "<p style='x'>",
        "<style>x</style>",
        "<a href='java\nscript:x'>",
        "<img src=//elsewhere.example/x>",
        "<img src=https://elsewhere.example/x>",
        "<form action=https://elsewhere.example>",
        "<base href=/x>",
        "<meta http-equiv=refresh content=0>",
        "<svg/onload=x>",
    ] {
        let seen = std::panic::catch_unwind(|| markup::check_inert(&html::read(wrong), "here"));
        assert!(seen.is_err(), "{wrong}");
    }
    markup::check_inert(&html::read("<img src=/x><a href=https://club.example>x</a>"), "here");
}

#[test]
fn the_checker_sees_what_is_not_well_formed() {
    for wrong in [
        "<p><em>x</p></em>",
        "<p>x",
        "x</p>",
        "<p id=a></p><p id=a></p>",
        "<p id=''></p>",
        "<p class='a' class='b'>x</p>",
        "<!-- x -->",
    ] {
        let seen = std::panic::catch_unwind(|| markup::check_fragment(&html::read(wrong), "here"));
        assert!(seen.is_err(), "{wrong}");
    }
    markup::check_fragment(&html::read("<p id=\"a\">x<br><a href=\"#a\">y</a></p>"), "here");
}
