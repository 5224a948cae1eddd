//! How much there is to see to stands in the head of a member's own pages, and on none that is the same for all.

use axum::http::StatusCode;

use super::club::{Club, Person, Right};
use super::scene::Scene;
use crate::people::access::routes;
use crate::support::{Answer, NOW};

/// The words of the link to the notes in the head.
fn door(page: &str) -> &str {
    let (_, head) = page.split_once("<ul class=\"club\">").unwrap();
    let (_, link) = head.split_once("href=\"/notes\"").unwrap();
    link.split_once('>').unwrap().1.split('<').next().unwrap()
}

/// The words of each door of the members' part.
fn doors(page: &str) -> Vec<&str> {
    let (_, head) = page.split_once("<ul class=\"club\">").unwrap();
    let (head, _) = head.split_once("</ul>").unwrap();
    let links = head.split("</a>").filter_map(|link| link.rsplit_once('>'));
    links.map(|(_, words)| words.trim()).filter(|words| !words.is_empty()).collect()
}

/// Says that the member has read what the page tells.
pub(super) async fn read_news(club: &Club, by: &Person, page: &str) -> Answer {
    let field = |name: &str| {
        let (_, rest) = page.split_once(&format!("name=\"{name}\" value=\"")).unwrap();
        rest.split('"').next().unwrap().to_owned()
    };
    let (until, count) = (field("until"), field("count"));
    let fields = [("until", until.as_str()), ("count", count.as_str())];
    club.post("/notes/mine", Some(by), &fields).await
}

async fn told(club: &Club, path: &str, by: &Person) -> String {
    door(&club.get(path, Some(by)).await.body).to_owned()
}

#[tokio::test]
async fn the_head_counts_what_a_member_has_to_see_to() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Ina Flint", Right::Inspector).await;
    let own = ["/notes", "/notes/mine", "/notes/new", "/me", "/notes/compare"];
    for path in own {
        assert_eq!(told(&club, path, &author).await, "Notes", "{path}");
    }
    let shown = club.shown(&author, &moderator, &[("title", "A"), ("text", "T")]).await;
    let back = club.send_in(&author, &[("title", "B"), ("text", "T")]).await;
    club.send_in(&author, &[("title", "C"), ("text", "For the boiler.")]).await;
    club.post(&format!("/notes/{shown}/remark"), Some(&author), &[("remark", "More.")]).await;
    assert_eq!(told(&club, "/me", &moderator).await, "Notes (3)");
    assert_eq!(told(&club, "/me", &inspector).await, "Notes (1)");
    assert_eq!(told(&club, "/me", &author).await, "Notes (1)", "one was shown");
    let mine = club.get("/notes/mine", Some(&author)).await.body;
    read_news(&club, &author, &mine).await;
    assert_eq!(told(&club, "/me", &author).await, "Notes", "the others wait for others");
    let page = club.get("/me", Some(&moderator)).await.body;
    assert!(page.contains("The queue (3 to decide)"), "{page}");

    club.decide(&moderator, back, ("change", "Say how.")).await;
    for path in own.into_iter().chain([format!("/notes/{shown}").as_str()]) {
        assert_eq!(told(&club, path, &author).await, "Notes (1)", "{path}");
    }
    assert!(club.get("/me", Some(&author)).await.body.contains("Your notes (1 to change)"));
    assert_eq!(told(&club, "/me", &moderator).await, "Notes (2)");
    // What is the same for all says nothing of anybody.
    for path in ["/", "/threads/ba/8", "/drawer", "/privacy"] {
        let (page, all) = (club.get(path, Some(&author)).await, club.get(path, None).await);
        assert_eq!(page.body, all.body, "{path}");
        assert!(!page.body.contains("Notes ("), "{path}");
    }
    // A hidden note is to be looked at; one's own is for another.
    club.post(&format!("/notes/{shown}/report"), Some(&inspector), &[("danger", "It bites.")])
        .await;
    assert_eq!(told(&club, "/me", &moderator).await, "Notes (3)");
    assert_eq!(told(&club, "/me", &inspector).await, "Notes (1)");
}

#[tokio::test]
async fn what_is_counted_is_what_they_may_decide() {
    let club = Club::open().await;
    let una = club.join("Una Oakes", Right::Secretary).await;
    let own = club.send_in(&una, &[("title", "A"), ("text", "T")]).await;
    assert_eq!(told(&club, "/me", &una).await, "Notes (1)", "nobody else could decide");
    club.send_in(&una, &[("title", "B"), ("text", "For the boiler.")]).await;
    assert_eq!(told(&club, "/me", &una).await, "Notes (2)", "to send back");
    let bert = club.join("Bert Stone", Right::Moderator).await;
    assert_eq!(told(&club, "/me", &una).await, "Notes (1)", "the other moderator’s now");
    assert_eq!(told(&club, "/me", &bert).await, "Notes (2)");
    club.decide(&bert, own, ("pass", "")).await;
    let ada = club.join("Ada Penn", Right::None).await;
    club.post(&format!("/notes/{own}/remark"), Some(&ada), &[("remark", "So did mine.")]).await;
    assert_eq!(told(&club, "/me", &bert).await, "Notes (2)");
    assert_eq!(
        told(&club, "/me", &una).await,
        "Notes (2)",
        "hers is shown; a remark on a note of her own"
    );
}

#[tokio::test]
async fn what_became_of_ones_notes_is_news_until_one_has_read_it() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, reader, .. } = &scene;
    let fields = [("title", "Gland nut"), ("text", "Turned dry."), ("material", "gunmetal")];
    let shown = club.shown(author, moderator, &fields).await;
    let no = club.send_in(author, &[("title", "Washer"), ("text", "It held.")]).await;
    club.decide(moderator, no, ("decline", "Which metal?")).await;
    let verdict = [("found", "did-not"), ("size", "4 BA")];
    club.post(&format!("/notes/{shown}/verdict"), Some(reader), &verdict).await;
    let remark = [("remark", "Mine squealed.")];
    club.post(&format!("/notes/{shown}/remark"), Some(reader), &remark).await;
    assert_eq!(told(club, "/me", author).await, "Notes (3)", "the remark waits");
    club.post("/queue/remarks", Some(moderator), &[("remark", "1"), ("do", "show")]).await;
    assert_eq!(told(club, "/me", author).await, "Notes (4)");
    assert_eq!(told(club, "/me", reader).await, "Notes (1)", "the remark of theirs is shown");
    let mine = club.get("/notes/mine", Some(author)).await.body;
    let (_, news) = mine.split_once("<h2 id=\"news\">What is new</h2>").unwrap();
    let (news, rest) = news.split_once("</section>").unwrap();
    for (note, words) in [
        (shown, "Shown."),
        (no, "Not taken: Which metal?"),
        (shown, "It did not work for another member: 4 BA"),
        (shown, "A remark on your note: Mine squealed."),
    ] {
        let row = format!("<p>{words}</p>\n<p class=\"soft\">");
        let (before, after) = news.split_once(&row).unwrap_or_else(|| panic!("{words}: {news}"));
        let (_, link) = before.rsplit_once("<li>").unwrap();
        assert!(link.starts_with(&format!("<a href=\"/notes/{note}\">")), "{words}: {news}");
        assert!(after.starts_with("15 January 2027<"), "{after}");
    }
    assert!(rest.contains("It stands on the page of gunmetal."), "{rest}");
    assert!(club.get("/me", Some(author)).await.body.contains("Your notes (4 new)"));
    // To read the page changes nothing; what came since the page was made is not read with it.
    let again = club.get("/notes/mine", Some(author)).await.body;
    assert!(again.contains("What is new"), "{again}");
    club.post(&format!("/notes/{shown}/verdict"), Some(moderator), &[("found", "worked")]).await;
    let late = read_news(club, author, &mine).await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.body);
    assert_eq!(told(club, "/me", author).await, "Notes (5)");
    let page = club.get("/notes/mine", Some(author)).await.body;
    let read = read_news(club, author, &page).await;
    assert_eq!(read.status, StatusCode::SEE_OTHER, "{}", read.body);
    assert_eq!(told(club, "/me", author).await, "Notes");
    let mine = club.get("/notes/mine", Some(author)).await.body;
    assert!(!mine.contains("What is new"), "{mine}");
    // Sent twice, it is done once; and nothing is read that has not happened yet.
    assert_eq!(read_news(club, author, &page).await.status, StatusCode::SEE_OTHER);
    let ahead = [("until", "9999999999"), ("count", "0")];
    club.post("/notes/mine", Some(author), &ahead).await;
    let at = format!("SELECT count(*) FROM member WHERE news_read_at > {NOW}");
    assert_eq!(club.count(at.leak()).await, 0);
}

#[tokio::test]
async fn what_is_new_is_others_doing_and_what_is_asked_is_counted_once() {
    let club = Club::open().await;
    let una = club.join("Una Oakes", Right::Secretary).await;
    let own = club.send_in(&una, &[("title", "A"), ("text", "T")]).await;
    club.decide(&una, own, ("pass", "")).await;
    assert_eq!(told(&club, "/me", &una).await, "Notes", "she did it herself");
    let ada = club.join("Ada Penn", Right::None).await;
    let note = club.send_in(&ada, &[("title", "B"), ("text", "T")]).await;
    club.decide(&una, note, ("change", "Say how.")).await;
    let page = club.get("/me", Some(&ada)).await.body;
    assert!(door(&page) == "Notes (1)" && page.contains("Your notes (1 to change)"), "{page}");
}

#[tokio::test]
async fn every_page_that_is_a_members_own_counts() {
    let club = Club::open().await;
    let una = club.join("Una Oakes", Right::Secretary).await;
    let ada = club.join("Ada Penn", Right::None).await;
    let own = club.shown(&una, &una, &[("title", "A"), ("text", "T")]).await;
    let note = club.send_in(&ada, &[("title", "B"), ("text", "T")]).await;
    let mut pages = Vec::new();
    for (method, route) in routes() {
        let number = if route.starts_with("/queue/") { note } else { own };
        let path = route.replace("{id}", &number.to_string()).replace("{issue}", "best");
        // Of the files one is no text.
        if method != "GET" || path.contains(['{', '.']) {
            continue;
        }
        let (hers, all) = (club.get(&path, Some(&una)).await, club.get(&path, None).await);
        let is_page = hers.body.starts_with("<!doctype html>");
        if hers.status == StatusCode::OK && is_page && hers.body != all.body {
            assert_eq!(doors(&hers.body), ["Notes (1)", "Your page", "Members"], "{path}");
            pages.push(path);
        }
    }
    for path in ["/queue/decided", "/people", "/me/feed", "/notes/import", "/people/acts"] {
        assert!(pages.iter().any(|page| page == path), "{path}: {pages:?}");
    }
    assert!(pages.len() > 20, "{pages:?}");
    // The doors that are the same for all, and a form that comes back.
    for by in [None, Some(&una)] {
        assert_eq!(doors(&club.get("/drills", by).await.body), ["Notes", "Your page"]);
    }
    let back = club.post(&format!("/queue/{note}"), Some(&ada), &[("reason", "Why?")]).await;
    assert_eq!(back.status, StatusCode::FORBIDDEN, "{}", back.body);
    assert!(back.body.contains("<a href=\"/notes\" aria-current=\"true\">"), "{}", back.body);
    let back = club.post("/queue/1", Some(&una), &[("do", "decline")]).await;
    assert!(door(&back.body) == "Notes (1)", "{}", back.body);
}

#[tokio::test]
async fn a_secretary_reads_beside_the_members_how_many_slips_ran_out() {
    let club = Club::open().await;
    let una = club.join("Una Oakes", Right::Secretary).await;
    let bert = club.join("Bert Stone", Right::Moderator).await;
    for name in ["Cyril", "Dora"] {
        club.post("/people/invite", Some(&una), &[("meant_for", name)]).await;
    }
    let page = club.get("/people", Some(&una)).await.body;
    assert!(doors(&page).contains(&"Members") && !page.contains("Run out unused"), "{page}");
    let [_, writer] = club.app.database.pools();
    let run_out = "UPDATE slip SET made_at = 1, ends_at = 2 WHERE meant_for = 'Cyril'";
    sqlx::query(run_out).execute(writer).await.unwrap();
    let page = club.get("/people", Some(&una)).await.body;
    assert!(doors(&page).contains(&"Members (1)"), "{page}");
    let (open, run_out) = page.split_once("<h3 id=\"run-out\">Run out unused</h3>").unwrap();
    assert!(open.contains("<h3>Dora</h3>") && !open.contains("Cyril"), "{page}");
    assert!(run_out.contains("<h4>Cyril</h4>") && !run_out.contains("Dora"), "{page}");
    assert_eq!(doors(&club.get("/me", Some(&bert)).await.body), ["Notes", "Your page"]);
    let (_, mark) = run_out.split_once("name=\"away\" value=\"").unwrap();
    let away = [("away", mark.split('"').next().unwrap())];
    let refused = club.post("/people", Some(&bert), &away).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN, "{}", refused.body);
    let done = club.post("/people", Some(&una), &away).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.body);
    let page = club.get("/people", Some(&una)).await.body;
    assert!(doors(&page).contains(&"Members") && page.contains("<h3>Dora</h3>"), "{page}");
    let again = club.post("/people", Some(&una), &away).await;
    assert_eq!(again.status, StatusCode::NOT_FOUND, "{}", again.body);
}
