//! S19: who gets what at every address, in one table. An address that is not in it fails the test.

use std::collections::BTreeSet;

use axum::http::Method;
use holewright_server::front::place::Route;
use holewright_server::front::routes::ROUTES;

use super::club::{Browser, Club, INSPECTOR, MODERATOR, PASSWORD, PLAIN, SECRETARY};
use crate::support::Answer;

/// What an address answers to whom: the status, for somebody who is not signed in, a member, a
/// moderator, an inspector, the secretary, and a member whom the secretary has stopped.
struct Row {
    method: &'static str,
    path: &'static str,
    told: [u16; 6],
}

const fn row(method: &'static str, path: &'static str, told: [u16; 6]) -> Row {
    Row { method, path, told }
}

/// Everybody gets the same.
const ALL: [u16; 6] = [200; 6];
/// A member gets it; who is not signed in, or is stopped, is sent to sign in.
const MEMBERS: [u16; 6] = [303, 200, 200, 200, 200, 303];
/// The secretary gets it.
const SECRETARYS: [u16; 6] = [303, 403, 403, 403, 200, 303];
/// The author gets it; for the others there is nothing.
const AUTHORS: [u16; 6] = [303, 200, 404, 404, 404, 303];
/// Something is wrong with the form, so its author is told so.
const AUTHORS_FORM: [u16; 6] = [303, 422, 404, 404, 404, 303];
/// Something is wrong with the form, so a member who may send it is told so.
const MEMBERS_FORM: [u16; 6] = [303, 422, 422, 422, 422, 303];

#[rustfmt::skip]
const MATRIX: &[Row] = &[
    row("GET", "/healthz", ALL),
    row("GET", "/readyz", ALL),
    row("GET", "/api/v1", ALL),
    row("GET", "/api/v1/openapi.json", ALL),
    row("GET", "/api/v1/threads", ALL),
    row("GET", "/api/v1/threads/{system}", ALL),
    row("GET", "/api/v1/threads/{system}/{size}", ALL),
    row("GET", "/api/v1/drills", ALL),
    row("GET", "/api/v1/drills/{series}/{size}", ALL),
    row("GET", "/api/v1/materials", ALL),
    row("GET", "/api/v1/materials/{slug}", ALL),
    row("GET", "/api/v1/rescue", ALL),
    row("GET", "/api/v1/rescue/{slug}", ALL),
    row("GET", "/api/v1/fasteners", ALL),
    row("GET", "/api/v1/fasteners/{table}", ALL),
    row("GET", "/api/v1/plan", [422; 6]),
    row("GET", "/api/v1/search", ALL),
    // Every calculator by one route; nothing is asked of it.
    row("GET", "/api/v1/calc/{name}", [422; 6]),
    row("ANY", "/api/v1/{*rest}", [404; 6]),
    row("ANY", "/api/{*rest}", [404; 6]),
    row("GET", "/reference.sqlite", ALL),
    row("GET", "/privacy", ALL),
    row("GET", "/drawer", ALL),
    row("POST", "/drawer", [422; 6]),
    row("GET", "/sign-in", ALL),
    row("POST", "/sign-in", [422; 6]),
    // Nobody here waits for a code.
    row("GET", "/sign-in/code", [303; 6]),
    row("POST", "/sign-in/code", [303; 6]),
    row("POST", "/sign-out", [303; 6]),
    row("GET", "/join/{token}", [400; 6]),
    row("POST", "/join/{token}", [400; 6]),
    row("GET", "/reset", ALL),
    row("POST", "/reset", [422; 6]),
    row("GET", "/reset/{token}", [400; 6]),
    row("POST", "/reset/{token}", [400; 6]),
    row("GET", "/prove", MEMBERS),
    row("POST", "/prove", MEMBERS_FORM),
    row("GET", "/me", MEMBERS),
    row("POST", "/me", [303, 404, 404, 404, 404, 303]),
    row("GET", "/me/password", MEMBERS),
    row("POST", "/me/password", MEMBERS_FORM),
    row("GET", "/me/second-factor", MEMBERS),
    row("POST", "/me/second-factor", MEMBERS_FORM),
    row("GET", "/me/feed", MEMBERS),
    row("POST", "/me/feed", [303, 404, 404, 404, 404, 303]),
    row("GET", "/me/leave", MEMBERS),
    row("POST", "/me/leave", MEMBERS_FORM),
    row("GET", "/me/data.json", [401, 200, 200, 200, 200, 401]),
    row("GET", "/people", SECRETARYS),
    row("POST", "/people", [303, 403, 403, 403, 404, 303]),
    row("GET", "/people/invite", SECRETARYS),
    row("POST", "/people/invite", SECRETARYS),
    row("GET", "/people/sheet", SECRETARYS),
    row("POST", "/people/sheet", [303, 403, 403, 403, 422, 303]),
    row("GET", "/people/club", SECRETARYS),
    row("POST", "/people/club", [303, 403, 403, 403, 303, 303]),
    row("GET", "/people/acts", SECRETARYS),
    row("GET", "/people/{id}", SECRETARYS),
    row("POST", "/people/{id}", [303, 403, 403, 403, 404, 303]),
    row("GET", "/notes", ALL),
    row("GET", "/notes.atom", ALL),
    // Nobody has a feed here.
    row("GET", "/notes/feed/{token}", [404; 6]),
    row("GET", "/notes.csv", ALL),
    row("GET", "/notes.json", ALL),
    row("GET", "/notes/new", MEMBERS),
    // Who is not signed in gets the page back, with all that was typed.
    row("POST", "/notes/new", [401, 303, 303, 303, 303, 401]),
    row("GET", "/notes/import", [303, 403, 200, 200, 200, 303]),
    row("POST", "/notes/import", [303, 403, 422, 422, 422, 303]),
    row("GET", "/notes/newsletter", ALL),
    row("GET", "/notes/newsletter/{issue}", ALL),
    row("GET", "/notes/compare", ALL),
    row("GET", "/notes/mine", MEMBERS),
    // Nothing is said of what was read.
    row("POST", "/notes/mine", [303, 404, 404, 404, 404, 303]),
    // The first note is the member's draft, which is nobody else's to see.
    row("GET", "/notes/{id}", [404, 200, 404, 404, 404, 404]),
    row("GET", "/notes/{id}/history", [404, 200, 404, 404, 404, 404]),
    row("GET", "/notes/{id}/edit", AUTHORS),
    row("POST", "/notes/{id}/edit", [401, 303, 404, 404, 404, 401]),
    row("POST", "/notes/{id}/verdict", AUTHORS_FORM),
    row("POST", "/notes/{id}/remark", AUTHORS_FORM),
    row("POST", "/notes/{id}/report", AUTHORS_FORM),
    row("POST", "/notes/{id}/correct", AUTHORS_FORM),
    row("POST", "/notes/{id}/withdraw", AUTHORS_FORM),
    row("GET", "/queue", [303, 403, 200, 200, 200, 303]),
    row("POST", "/queue/reports", [303, 403, 404, 404, 404, 303]),
    row("GET", "/queue/decided", [303, 403, 200, 200, 200, 303]),
    row("GET", "/queue/{id}/mend", [303, 403, 404, 404, 404, 303]),
    row("POST", "/queue/{id}/mend", [303, 403, 409, 409, 409, 303]),
    row("GET", "/queue/remarks", [303, 403, 200, 200, 200, 303]),
    row("POST", "/queue/remarks", [303, 403, 404, 404, 404, 303]),
    row("POST", "/queue/{id}", [303, 403, 404, 404, 404, 303]),
];

/// The addresses without a part to fill in that anybody may read.
pub(crate) fn open_to_all() -> impl Iterator<Item = &'static str> {
    let is_open = |row: &&Row| row.method == "GET" && row.told[0] == 200 && !row.path.contains('{');
    MATRIX.iter().filter(is_open).map(|row| row.path)
}

/// The method and path of every route.
pub(crate) fn routes() -> BTreeSet<(String, String)> {
    let each = |route: &'static Route| {
        route.methods.iter().map(|method| (method.to_uppercase(), route.path.to_owned()))
    };
    ROUTES.iter().flat_map(each).collect()
}

#[test]
fn s19_every_route_is_in_the_matrix_and_no_other() {
    let routes = routes();
    assert!(routes.len() > 40, "{routes:?}");
    let listed: BTreeSet<(String, String)> =
        MATRIX.iter().map(|row| (row.method.to_owned(), row.path.to_owned())).collect();
    let missing: Vec<_> = routes.difference(&listed).collect();
    assert!(missing.is_empty(), "routes that the matrix lacks: {missing:?}");
    let gone: Vec<_> = listed.difference(&routes).collect();
    assert!(gone.is_empty(), "rows without a route: {gone:?}");
    assert_eq!(listed.len(), MATRIX.len(), "a row stands twice");
}

#[tokio::test]
async fn s19_everybody_gets_what_the_matrix_says() {
    let club = Club::start().await;
    let secretary = club.join("Una Secretary", SECRETARY).await;
    let stopped = club.join("Alec Stopped", PLAIN).await;
    let alec = club.number_of("Alec Stopped").await;
    // Stopped behind the server's back, so that the session itself still stands.
    let stop = "UPDATE member SET stopped_at = 1 WHERE id = ?";
    sqlx::query(stop).bind(alec).execute(club.app.database.pools()[1]).await.unwrap();
    let mut readers: [(&str, Browser); 6] = [
        ("anonymous", club.browser()),
        ("member", club.join("Enid Hathersage", PLAIN).await),
        ("moderator", club.join("Mabel Moderator", MODERATOR).await),
        ("inspector", club.join("Ivo Inspector", INSPECTOR).await),
        ("secretary", secretary),
        ("stopped", stopped),
    ];
    let mut wrong = Vec::new();
    for row in MATRIX {
        let path = filled(row.path);
        for ((who, browser), expected) in readers.iter_mut().zip(row.told) {
            let kept = browser.cookie.clone();
            let answer = match row.method {
                "POST" => browser.post(&path, &[]).await,
                "ANY" => {
                    browser.send(Method::DELETE, &path, &[("sec-fetch-site", "none")], "").await
                }
                _ => browser.get(&path).await,
            };
            if answer.status.as_u16() != expected {
                wrong.push(format!(
                    "{} {path} as {who}: {} for {expected}",
                    row.method, answer.status
                ));
            }
            if !leads_out(row, who, &answer) {
                wrong.push(format!("{} {path} as {who} does not lead to the sign-out", row.method));
            }
            let is_out = matches!(*who, "anonymous" | "stopped");
            let is_shut_out = is_out && row.told[0] != row.told[4];
            if answer.status.as_u16() == 303 && expected == 303 && is_shut_out {
                let door = answer.header("location");
                if !door.starts_with("/sign-in") {
                    wrong.push(format!("{} {path} as {who} leads to {door}", row.method));
                }
            }
            if path == "/sign-out" {
                // The others' sessions are wanted for what follows.
                browser.cookie = kept;
                if browser.cookie.is_some() {
                    let name = match *who {
                        "member" => "Enid Hathersage",
                        "moderator" => "Mabel Moderator",
                        "inspector" => "Ivo Inspector",
                        "secretary" => "Una Secretary",
                        _ => continue,
                    };
                    browser.sign_in(name, PASSWORD).await;
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Pages that are the same for every reader, signed in or not.
const SAME_FOR_ALL: [&str; 6] =
    ["/sign-in", "/reset", "/privacy", "/drawer", "/notes/newsletter", "/notes/newsletter/{issue}"];

/// Whether a page that knows its member has the button to sign out at its foot, and nobody else's has.
fn leads_out(row: &Row, who: &str, answer: &Answer) -> bool {
    let is_page = matches!(answer.status.as_u16(), 200 | 422)
        && answer.header("content-type").starts_with("text/html");
    let foot = answer.body.split("<footer").nth(1).unwrap_or_default();
    let leads = foot.contains("<form action=\"/sign-out\" method=\"post\">");
    let is_in = !matches!(who, "anonymous" | "stopped") && !SAME_FOR_ALL.contains(&row.path);
    !is_page || leads == is_in
}

/// An address of this kind that there is.
pub(crate) fn filled(path: &str) -> String {
    path.replace("{token}", &"0".repeat(64))
        .replace("{id}", "1")
        .replace("{issue}", "best")
        .replace("{series}/{size}", "number/46")
        .replace("{system}", "ba")
        .replace("{size}", "5")
        .replace("rescue/{slug}", "rescue/broken-tap")
        .replace("{table}", "hexagons-iso")
        .replace("{slug}", "gunmetal")
        .replace("{name}", "speeds")
        .replace("{*rest}", "nothing-here")
}
