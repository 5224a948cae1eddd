//! F20: no form takes more than its own fields need.

use axum::http::Method;
use form_urlencoded::Serializer;
use holewright_server::front::routes::ROUTES;
use holewright_server::rules::auth::strength;
use holewright_server::rules::notes::fields::{TEXT, TITLE};

use crate::people::access::filled;
use crate::support::{Answer, Server, send};

/// The letter that takes most bytes in a form.
const LONGEST_LETTER: &str = "🔩";

async fn posted(server: &Server, path: &str, body: &str) -> Answer {
    let headers =
        [("content-type", "application/x-www-form-urlencoded"), ("sec-fetch-site", "same-origin")];
    send(&server.router, Method::POST, &filled(path), &headers, body).await
}

#[tokio::test]
async fn f20_every_form_says_how_much_it_takes_and_takes_no_more() {
    let server = Server::start().await;
    let mut small = 0;
    for route in ROUTES.iter().filter(|route| route.methods.contains(&"post")) {
        let most = route.takes.unwrap_or_else(|| panic!("{} takes as much as may be", route.path));
        let most = usize::try_from(most).unwrap();
        let begin = "word=";
        for (length, is_taken) in [(most, true), (most + 1, false)] {
            let body = format!("{begin}{}", "x".repeat(length - begin.len()));
            let answer = posted(&server, route.path, &body).await;
            assert_eq!(answer.status != 413, is_taken, "{}, {length} bytes", route.path);
            assert!(!answer.body.contains("xxx"), "{}: it is given back", route.path);
        }
        small += usize::from(most < 30 << 10);
    }
    assert!(small > 15, "{small}");
}

#[tokio::test]
async fn f20_sixty_kilobytes_are_no_sign_in() {
    let server = Server::start().await;
    let body = format!("name=Enid&password={}", "long+words+".repeat(5_600));
    assert!(body.len() > 60_000 && body.len() < 64 << 10);
    let answer = posted(&server, "/sign-in", &body).await;
    assert_eq!(answer.status, 413);
    assert!(!answer.body.contains("long words"), "{}", answer.body);
}

/// What a field takes is taken in whatever letters it is written.
#[tokio::test]
async fn f20_the_longest_in_the_longest_letters_is_taken() {
    let server = Server::start().await;
    let long = |count| LONGEST_LETTER.repeat(count);
    for (path, fields, told) in [
        (
            "/sign-in",
            vec![("name", long(60)), ("password", long(strength::LONGEST)), ("next", long(2_000))],
            422,
        ),
        // Nobody is signed in: all of it comes back.
        ("/notes/{id}/report", vec![("danger", long(2_000)), ("version", "1".to_owned())], 401),
        ("/notes/{id}/correct", vec![("correction", long(5_000))], 401),
        ("/queue/{id}", vec![("reason", long(2_000)), ("do", "decline".to_owned())], 401),
        (
            "/notes/new",
            vec![(TITLE.name, long(TITLE.longest)), (TEXT.name, long(TEXT.longest))],
            401,
        ),
    ] {
        let body = Serializer::new(String::new()).extend_pairs(&fields).finish();
        let answer = posted(&server, path, &body).await;
        assert_eq!(answer.status.as_u16(), told, "{path}: {}", answer.body);
        let kept = fields.iter().map(|(_, typed)| typed).max_by_key(|typed| typed.len()).unwrap();
        assert!(told != 401 || answer.body.contains(kept), "{path}: it is lost");
    }
}
