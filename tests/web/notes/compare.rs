//! The notes on one thread in one material, side by side.

use axum::http::StatusCode;

use super::club::{Club, Right};

fn fields<'a>(title: &'a str, more: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let note = [("title", title), ("text", "T"), ("thread", "8 BA"), ("material", "silver steel")];
    let note = note.into_iter().filter(|(name, _)| !more.iter().any(|(other, _)| other == name));
    [&note.collect::<Vec<_>>()[..], more].concat()
}

/// The titles in the order of the table.
fn titles(page: &str) -> Vec<&str> {
    let rows = page.split("<th scope=\"row\" class=\"words\">").skip(1);
    let title = |row: &'_ str| row.find("\">").map(|at| at + 2);
    rows.map(|row| {
        let row = &row[title(row).unwrap()..];
        row.split("</a>").next().unwrap()
    })
    .collect()
}

#[tokio::test]
async fn notes_stand_side_by_side_and_what_warns_comes_first() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let more = [
        ("drill", "No. 50"),
        ("depth", "6 mm"),
        ("lubricant", "tallow"),
        ("machine", "Lathe"),
        ("speed", "200 rev/min"),
        ("text", "It cut clean. "),
    ];
    let first = club.shown(&author, &moderator, &fields("Plain", &more)).await;
    let warns = [("warning", "yes")];
    club.shown(&author, &moderator, &fields("It snapped", &warns)).await;
    let hidden = club.shown(&author, &moderator, &fields("Dangerous", &[])).await;
    let danger = [("danger", "It flew.")];
    club.post(&format!("/notes/{hidden}/report"), Some(&moderator), &danger).await;
    let other = [("title", "Elsewhere"), ("text", "T"), ("thread", "8 BA"), ("material", "brass")];
    club.shown(&author, &moderator, &other).await;
    club.post(&format!("/notes/{first}/verdict"), Some(&moderator), &[("found", "worked")]).await;

    let page = club.get("/notes/compare?thread=8+BA&material=silver+steel", None).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.body);
    let body = page.body;
    assert_eq!(titles(&body), ["It snapped", "Plain"], "{body}");
    for words in [
        "No. 50",
        "6 mm",
        "tallow",
        "Lathe",
        "200 rev/min",
        "It cut clean.",
        "Worked for 1 member.",
        "Warning:",
    ] {
        assert!(body.contains(words), "{words}: {body}");
    }
    // What is counted over all of them stands before the rows, of which there may be many.
    let (used, rows) = (body.find("id=\"used\"").unwrap(), body.find("id=\"rows\"").unwrap());
    assert!(used < rows && rows < body.find("It snapped").unwrap(), "{body}");
    // What happened stands under a fold, and nowhere else: the rows stay low.
    let (before, _) = body.split_once("It cut clean.").unwrap();
    assert!(before.ends_with("What happened</summary>\n<p>"), "{body}");
    assert_eq!(body.matches("It cut clean.").count(), 1, "{body}");
    assert!(body.contains(&format!("href=\"/notes/{first}\"")), "{body}");
    assert!(!body.contains("Dangerous") && !body.contains("Elsewhere"), "{body}");

    // A kind of material asks of all that are of it; misspellings are read as the finder reads them.
    for (query, words) in [
        ("thread=8+BA&material=silver+stel", "“silver stel” is read as Silver steel."),
        ("thread=8BA&material=brass", "Elsewhere"),
        ("thread=8+BA&material=gunmetal", "No note on both yet."),
        ("thread=8+BA", "Name a thread and a material"),
    ] {
        let answer = club.get(&format!("/notes/compare?{query}"), None).await;
        assert_eq!(answer.status, StatusCode::OK, "{query}: {}", answer.body);
        assert!(answer.body.contains(words), "{query}: {}", answer.body);
    }
    let none = club.get("/notes/compare?thread=8+BA&material=gunmetal", None).await.body;
    for address in ["/notes?on=threads%2Fba%2F8", "/notes?on=materials%2Fgunmetal"] {
        assert!(none.contains(&format!("href=\"{address}\"")), "{address}: {none}");
    }
    let unread = club.get("/notes/compare?thread=M3+by+point+five&material=brass", None).await;
    assert_eq!(unread.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(unread.body.contains("Possible here: M3."), "{}", unread.body);
    let list = club.get("/notes", None).await.body;
    assert!(list.contains("href=\"/notes/compare\">Compare two side by side<"), "{list}");
    let wrong = club.get("/notes/compare?thread=gunmetal&material=unobtainium", None).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(wrong.body.contains("Write a thread, like 8 BA."), "{}", wrong.body);
    assert!(wrong.body.contains("value=\"unobtainium\""), "{}", wrong.body);
    let tidy = club.get("/notes/compare?thread=8+BA&material=", None).await;
    assert_eq!(tidy.header("location"), "/notes/compare?thread=8+BA");
}

#[tokio::test]
async fn where_several_notes_stand_a_link_leads_to_the_comparison() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let places = [
        ("/threads/ba/8", "/notes/compare?thread=8+BA"),
        ("/materials/silver-steel", "/notes/compare?material=silver+steel"),
        (
            "/plan?thread=8+BA&material=silver+steel",
            "/notes/compare?thread=8+BA&#38;material=silver+steel",
        ),
    ];
    club.shown(&author, &moderator, &fields("One", &[])).await;
    for (path, _) in places {
        assert!(!club.get(path, None).await.body.contains("/notes/compare"), "{path}: of one note");
    }
    club.shown(&author, &moderator, &fields("Two", &[])).await;
    for (path, address) in places {
        let body = club.get(path, None).await.body;
        assert!(body.contains(&format!("href=\"{address}\"")), "{path}: {body}");
    }
    let listed = club.get("/notes?on=threads%2Fba%2F8", None).await.body;
    assert!(listed.contains("href=\"/notes/compare?thread=8+BA\""), "{listed}");
}

#[tokio::test]
async fn no_more_than_fifty_notes_are_compared_and_the_rest_is_counted() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    for number in 0..53 {
        club.shown(&author, &moderator, &fields(&format!("Note {number}"), &[])).await;
    }
    let body = club.get("/notes/compare?thread=8+BA&material=silver+steel", None).await.body;
    assert_eq!(titles(&body).len(), 50);
    assert!(body.contains("3 more are not shown here."), "{body}");
}
