//! The drawer's cookie at the server: what it changes, for whom, and who may set it.

use axum::http::{HeaderMap, HeaderValue, Method};
use holewright_server::front::middleware::same_origin::{Foreign, check};
use holewright_server::front::{bytes::Coding, routes};
use holewright_server::rules::BaseUrl;

use crate::support::{Answer, Folder, Server, open, send};

const MINE: &str = "drawer=drills=2.4mm%2C+2.5mm%2C+2.6mm&on=yes";
const OTHER: &str = "a=b; drawer=drills=1-60%2C+61-80&taps=BA+0-10&on=yes; c=d";
const OFF: &str = "drawer=drills=2.4mm%2C+2.5mm%2C+2.6mm&on=no";
const PLAN: &str = "/plan?thread=5+BA&material=gunmetal&hole=blind&depth=8mm";

/// Pages a drawer has a part in, and pages it has none in.
const PAGES: [&str; 8] = [
    "/threads/ba/5",
    "/threads/ba",
    "/drills",
    "/drills/number/36",
    "/drawer",
    "/",
    PLAN,
    "/calculators/clearance?thread=M3",
];

async fn with(server: &Server, path: &str, cookie: &str) -> Answer {
    server.ask(Method::GET, path, &[("cookie", cookie)]).await
}

async fn post(server: &Server, headers: &[(&str, &str)], form: &str) -> Answer {
    let kind = [("content-type", "application/x-www-form-urlencoded")];
    let headers = [&kind, headers].concat();
    send(&server.router, Method::POST, "/drawer", &headers, form).await
}

const SAME: [(&str, &str); 1] = [("sec-fetch-site", "same-origin")];

#[tokio::test]
async fn s41_a_page_with_a_drawer_is_its_readers_alone() {
    let server = Server::start().await;
    for path in PAGES {
        let answer = with(&server, path, MINE).await;
        assert_eq!(answer.status, 200, "{path}");
        assert_eq!(answer.header("cache-control"), "private, no-cache", "{path}");
        assert_eq!(answer.header("vary"), "Accept-Encoding, Cookie", "{path}");
        assert_eq!(server.app.kept.weight(), 0, "{path} is kept");
    }
    for path in PAGES {
        let answer = server.get(path).await;
        assert_eq!(answer.header("cache-control"), "no-cache", "{path}");
        assert_eq!(answer.header("vary"), "Accept-Encoding, Cookie", "{path}");
    }
    assert!(server.app.kept.get("/threads/ba/5", Coding::Identity).is_some(), "not kept for all");
}

#[tokio::test]
async fn s41_each_reader_gets_their_own_however_often_the_other_asks() {
    let server = Server::start().await;
    let plain = server.get("/threads/ba/5").await;
    for _ in 0..2 {
        let mine = with(&server, "/threads/ba/5", MINE).await;
        let other = with(&server, "/threads/ba/5", OTHER).await;
        assert!(mine.body.contains("drills 2.4mm, 2.5mm, 2.6mm"), "{}", mine.body);
        assert!(other.body.contains("drills 1–60, 61–80"));
        assert_eq!(server.get("/threads/ba/5").await.body, plain.body);
        let tags = [&mine, &other, &plain].map(|answer| answer.header("etag").to_owned());
        assert!(tags[0] != tags[1] && tags[1] != tags[2] && tags[0] != tags[2], "{tags:?}");
    }
    let chosen = |answer: &Answer| {
        let figure = answer.body.split("class=\"figure\"><strong>").nth(1).unwrap();
        figure.split("</strong>").next().unwrap().replace('\u{a0}', " ")
    };
    let mine = with(&server, PLAN, MINE).await;
    let other = with(&server, PLAN, OTHER).await;
    assert!(chosen(&mine).contains("2.6 mm") && chosen(&other).contains("No. 36"));
    assert!(!plain.body.contains("your drawer") && !plain.body.contains("class=\"yours\""));
}

#[tokio::test]
async fn s41_two_readers_pages_differ_by_nothing_but_the_drawer() {
    let server = Server::start().await;
    // Whatever else a browser sends, the same drawer is the same page.
    let one = server
        .ask(Method::GET, PLAN, &[("cookie", MINE), ("user-agent", "a"), ("accept-language", "de")])
        .await;
    let two = with(&server, PLAN, &format!("holewright=someone; {MINE}; theme=dark")).await;
    assert_eq!((one.body, one.headers["etag"].clone()), (two.body, two.headers["etag"].clone()));
    // Without a drawer in use other cookies change nothing, and the page is the kept one.
    let plain = server.get("/threads/ba/5").await;
    for cookie in [OFF, "holewright=someone", "drawer=", "drawer=broken", "drawers=x; my_drawer=y"]
    {
        let answer = with(&server, "/threads/ba/5", cookie).await;
        assert_eq!(answer.body, plain.body, "{cookie}");
        assert_eq!(answer.header("cache-control"), "no-cache", "{cookie}");
        assert_eq!(answer.header("etag"), plain.header("etag"), "{cookie}");
    }
}

#[tokio::test]
async fn a_reader_who_has_these_bytes_gets_none_and_a_changed_drawer_is_seen() {
    let server = Server::start().await;
    let first = with(&server, "/threads/ba/5", MINE).await;
    let held = [("cookie", MINE), ("if-none-match", first.header("etag"))];
    let again = server.ask(Method::GET, "/threads/ba/5", &held).await;
    assert_eq!(again.status, 304);
    assert_eq!(again.header("cache-control"), "private, no-cache");
    let changed = [("cookie", OTHER), ("if-none-match", first.header("etag"))];
    assert_eq!(server.ask(Method::GET, "/threads/ba/5", &changed).await.status, 200);
    let without = [("if-none-match", first.header("etag"))];
    assert_eq!(server.ask(Method::GET, "/threads/ba/5", &without).await.status, 200);
}

#[tokio::test]
async fn files_and_figures_for_programs_never_look_at_it() {
    let server = Server::start().await;
    for path in [
        "/plan.json?thread=5+BA&material=gunmetal",
        "/plan.csv?thread=5+BA&material=gunmetal",
        "/plan.svg?thread=5+BA&material=gunmetal",
        "/threads/ba/5.csv",
        "/threads/ba/5.json",
        "/api/v1/plan?thread=5+BA&material=gunmetal",
        "/api/v1/drills",
        holewright_pages::assets::style_sheet(),
        "/healthz",
    ] {
        let plain = server.get(path).await;
        let mine = with(&server, path, MINE).await;
        assert_eq!(mine.body, plain.body, "{path}");
        let header = |answer: &Answer, name: &str| answer.headers.get(name).cloned();
        for name in ["cache-control", "vary", "etag"] {
            assert_eq!(header(&mine, name), header(&plain, name), "{path}: {name}");
        }
        let vary = mine.headers.get("vary").map_or("", |value| value.to_str().unwrap());
        assert!(!vary.contains("Cookie"), "{path}");
    }
}

#[tokio::test]
async fn the_charts_cut_to_a_list_is_the_same_in_every_form() {
    let server = Server::start().await;
    let list = "owned=No.+36%2C+2.65mm&to=2.7mm";
    let rows = server.get(&format!("/drills?{list}")).await.body.matches("<tr id=").count();
    let json = server.get(&format!("/drills.json?{list}")).await.json();
    let csv = server.get(&format!("/drills.csv?{list}")).await.body.lines().count();
    // No. 36 is 2.705 mm: past the end.
    assert_eq!((rows, json["drills"].as_array().unwrap().len(), csv), (1, 1, 2));
    assert_eq!(server.get("/drills.json?owned=spoons").await.status, 422);
}

#[tokio::test]
async fn a_link_that_lists_drills_leaves_the_drawer_out() {
    let server = Server::start().await;
    let link = format!("{PLAN}&owned=No.+36%2C+No.+37");
    let plain = server.get(&link).await;
    let mine = with(&server, &link, MINE).await;
    assert!(mine.body.contains("By the drills listed in this address, not your drawer."));
    assert!(!mine.headers.contains_key("set-cookie"), "opening a link sets nothing");
    let figure = |body: &str| {
        body.split("class=\"answer\"").nth(1).unwrap().split("<dl").next().unwrap().to_owned()
    };
    assert_eq!(figure(&mine.body), figure(&plain.body));
}

#[tokio::test]
async fn s17_reading_never_sets_a_cookie() {
    let server = Server::start().await;
    for path in
        PAGES.into_iter().chain(["/drawer?act=empty", "/drawer?act=keep&drills=1-60", "/Drawer/"])
    {
        for cookie in [MINE, OFF, "drawer=broken", "a=b"] {
            for method in [Method::GET, Method::HEAD] {
                let answer = server.ask(method, path, &[("cookie", cookie)]).await;
                assert!(!answer.headers.contains_key("set-cookie"), "{path} {cookie}");
                assert!(matches!(answer.status.as_u16(), 200 | 301), "{path} {cookie}");
            }
        }
    }
}

#[tokio::test]
async fn what_is_kept_comes_back_in_one_cookie() {
    let server = Server::start().await;
    let answer =
        post(&server, &SAME, "act=keep&drill_set=1-60&drills=2.05mm&speeds=350%2C+500").await;
    assert_eq!(answer.status, 303);
    assert_eq!(answer.header("location"), "/drawer");
    assert_eq!(answer.header("cache-control"), "no-store");
    assert_eq!(answer.headers.get_all("set-cookie").iter().count(), 1);
    assert_eq!(
        answer.header("set-cookie"),
        "drawer=drills=1-60%2C+2.05mm&speeds=350%2C+500&on=yes; Path=/; Max-Age=31536000; SameSite=Lax; HttpOnly; Secure"
    );
    let cookie = answer.header("set-cookie").split(';').next().unwrap().to_owned();
    let page = with(&server, "/drawer", &cookie).await;
    assert!(page.body.contains("value=\"1-60\" checked") && page.body.contains("value=\"2.05mm\""));

    let off = post(&server, &[SAME[0], ("cookie", &cookie)], "act=off").await;
    assert!(
        off.header("set-cookie")
            .starts_with("drawer=drills=1-60%2C+2.05mm&speeds=350%2C+500&on=no; ")
    );
    for form in ["act=empty", "act=keep&drills=&taps="] {
        let empty = post(&server, &[SAME[0], ("cookie", &cookie)], form).await;
        let gone = "drawer=; Path=/; Max-Age=0; SameSite=Lax; HttpOnly; Secure";
        assert_eq!(empty.header("set-cookie"), gone, "{form}");
    }
}

#[tokio::test]
async fn over_plain_http_the_cookie_is_not_secure() {
    let folder = Folder::new();
    let router = routes::router(open(&folder, "http://shed.test:8080").await);
    let answer = send(&router, Method::POST, "/drawer", &SAME, "act=keep&drills=1-60").await;
    let cookie = answer.header("set-cookie");
    assert!(cookie.ends_with("; Max-Age=31536000; SameSite=Lax; HttpOnly"), "{cookie}");
}

#[tokio::test]
async fn a_form_with_errors_sets_nothing_and_keeps_what_was_typed() {
    let server = Server::start().await;
    let answer = post(&server, &SAME, "act=keep&drills=spoons&taps=5+BA").await;
    assert_eq!(answer.status, 422);
    assert!(!answer.headers.contains_key("set-cookie"));
    assert_eq!(answer.header("cache-control"), "no-store");
    assert!(answer.body.contains("value=\"spoons\"") && answer.body.contains("value=\"5 BA\""));
    for form in ["", "act=", "%", "drills=%ff&act=keep", "act=keep&drills=%00", "\u{1f529}"] {
        assert_eq!(post(&server, &SAME, form).await.status, 422, "{form}");
    }
}

#[tokio::test]
async fn a_broken_cookie_is_no_fault_and_no_drawer() {
    let server = Server::start().await;
    let long = format!("drawer=drills={}&on=yes", "1-60%2C+".repeat(20_000));
    let plain = server.get(PLAN).await;
    for cookie in [
        "drawer",
        "drawer=x",
        "drawer=on=yes",
        "drawer=drills=%&on=yes",
        "drawer=%00",
        "=; ;;; =",
        "drawer=\"",
        "drawer=\"\"",
        "drawer=drills=<script>&on=yes",
        "drawer=drills=nan&on=yes",
        "drawer=drills=1e999-2e999mm&on=yes",
        "drawer=drills=1-60x0mm&on=yes",
        "drawer=speeds=1-0&on=yes",
        "drawer=taps=7zz&on=yes",
        "drawer=drills=../../etc/passwd&on=yes",
        long.as_str(),
    ] {
        let page = with(&server, PLAN, cookie).await;
        assert_eq!((page.status, &page.body), (plain.status, &plain.body), "{cookie:.60}");
        let own = with(&server, "/drawer", cookie).await;
        assert_eq!(own.status, 200, "{cookie:.60}");
        assert!(!own.body.contains("<script"), "{cookie:.60}");
    }
    let bytes = HeaderValue::from_bytes(b"drawer=drills=\xff\xfe&on=yes").unwrap();
    let request = axum::http::Request::get("/drawer").header("cookie", bytes);
    let request = request.body(axum::body::Body::empty()).unwrap();
    let answer = tower::ServiceExt::oneshot(server.router.clone(), request).await.unwrap();
    assert_eq!(answer.status(), 200);
    assert!(with(&server, "/drawer", "drawer=x").await.body.contains("cannot be read here"));
}

#[tokio::test]
async fn s16_a_form_from_elsewhere_is_refused() {
    let server = Server::start().await;
    for (headers, allowed) in [
        (vec![("sec-fetch-site", "same-origin")], true),
        (vec![("sec-fetch-site", "none")], true),
        (vec![("sec-fetch-site", "cross-site")], false),
        (vec![("sec-fetch-site", "same-site")], false),
        (vec![("sec-fetch-site", "")], false),
        (vec![("sec-fetch-site", "cross-site"), ("origin", "https://club.test")], false),
        (vec![("sec-fetch-site", "same-origin"), ("origin", "https://elsewhere.test")], true),
        (vec![("origin", "https://club.test")], true),
        (vec![("origin", "https://club.test"), ("host", "inner:8080")], true),
        (vec![("origin", "https://shed.test"), ("host", "shed.test")], true),
        (vec![("origin", "http://shed.test"), ("host", "shed.test")], false),
        (vec![("origin", "https://elsewhere.test"), ("host", "club.test")], false),
        (vec![("origin", "https://club.test.elsewhere.test"), ("host", "club.test")], false),
        (vec![("origin", "null")], false),
        (vec![("origin", "null"), ("host", "null")], false),
        (vec![("origin", "")], false),
        (vec![("origin", "https://club.test"), ("origin", "https://elsewhere.test")], false),
        (vec![], true),
        (vec![("cookie", "a=b")], true),
        (vec![("cookie", "__Host-holewright=someone")], false),
        (vec![("cookie", "a=b; holewright=someone")], false),
        (vec![("cookie", "holewright=someone"), ("origin", "https://club.test")], true),
    ] {
        let answer = post(&server, &headers, "act=keep&drills=1-60").await;
        let status = if allowed { 303 } else { 403 };
        assert_eq!(answer.status, status, "{headers:?}");
        assert_eq!(answer.headers.contains_key("set-cookie"), allowed, "{headers:?}");
    }
    let refused = post(&server, &[("sec-fetch-site", "cross-site")], "act=empty").await;
    assert!(refused.body.contains("a page of another site"), "{}", refused.body);
    assert_eq!(refused.header("cache-control"), "no-store");
}

#[test]
fn s16_reading_from_elsewhere_is_never_refused() {
    let own: BaseUrl = "https://club.test".parse().unwrap();
    let mut headers = HeaderMap::new();
    headers.insert("sec-fetch-site", HeaderValue::from_static("cross-site"));
    for method in [Method::GET, Method::HEAD, Method::OPTIONS] {
        assert_eq!(check(&method, &headers, &own), Ok(()), "{method}");
    }
    for method in [Method::POST, Method::PUT, Method::PATCH, Method::DELETE] {
        assert_eq!(check(&method, &headers, &own), Err(Foreign), "{method}");
    }
}

#[tokio::test]
async fn the_drawers_address_says_which_methods_it_takes() {
    let server = Server::start().await;
    let answer = server.ask(Method::PUT, "/drawer", &[]).await;
    assert_eq!(answer.status, 405);
    assert_eq!(answer.header("allow"), "GET,HEAD,POST");
}
