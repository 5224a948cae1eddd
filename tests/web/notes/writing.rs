//! What the form of a note asks and offers: what is nearly named, on which pages it will stand, the machine of last
//! time.

use axum::http::StatusCode;

use super::club::{Club, Person, Right};

const NOTE: [(&str, &str); 3] =
    [("title", "Tapping a pivot"), ("text", "Slowly."), ("material", "silver stel")];

async fn scene() -> (Club, Person) {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    (club, author)
}

fn with<'a>(more: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    [&NOTE[..], more].concat()
}

#[tokio::test]
async fn a_misspelt_metal_is_asked_about_before_the_note_is_sent_in() {
    let (club, author) = scene().await;
    let asked = club.post("/notes/new", Some(&author), &with(&[("do", "send")])).await;
    assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", asked.body);
    let question = "“silver stel”: put the note on the page of silver steel?";
    assert!(asked.body.contains(question), "{}", asked.body);
    assert!(asked.body.contains("name=\"meant_material\" value=\"yes\""), "{}", asked.body);
    assert!(asked.body.contains("value=\"silver stel\""), "what was typed: {}", asked.body);
    assert_eq!(club.count("SELECT count(*) FROM note").await, 0);

    // A draft and a preview are not held up; a preview asks.
    let preview = club.post("/notes/new", Some(&author), &with(&[("do", "preview")])).await;
    assert_eq!(preview.status, StatusCode::OK);
    assert!(preview.body.contains(question), "{}", preview.body);
    let draft = club.post("/notes/new", Some(&author), &with(&[("do", "draft")])).await;
    assert_eq!(draft.status, StatusCode::SEE_OTHER, "{}", draft.body);
    let kept = club.get(draft.header("location"), Some(&author)).await.body;
    assert!(kept.contains("value=\"silver stel\""), "as it was typed: {kept}");
}

#[tokio::test]
async fn yes_puts_it_on_the_page_and_no_leaves_it_as_it_was_typed() {
    let (club, author) = scene().await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    for (answer, stands) in [("yes", true), ("no", false)] {
        let note = club.shown(&author, &moderator, &with(&[("meant_material", answer)])).await;
        let page = club.get(&format!("/notes/{note}"), None).await.body;
        assert!(page.contains("silver stel<"), "as it was typed: {page}");
        let on_page = club.get("/materials/silver-steel", None).await.body;
        let is_there = on_page.contains(&format!("href=\"/notes/{note}\""));
        assert_eq!(is_there, stands, "{answer}: {on_page}");
        // Changed again, what was answered once with yes is not asked once more.
        let form = club.get(&format!("/notes/{note}/edit"), Some(&author)).await.body;
        let on = form.split("name=\"on\" value=\"").nth(1).unwrap().split('"').next().unwrap();
        assert_eq!(!on.is_empty(), stands, "{form}");
        let fields = with(&[("on", on), ("lubricant", "tallow"), ("do", "send")]);
        let again = club.post(&format!("/notes/{note}/edit"), Some(&author), &fields).await;
        let is_asked = again.body.contains("name=\"meant_material\"");
        assert_eq!(is_asked, !stands, "{answer}: {}", again.body);
    }
    let kept = club.post("/notes/new", None, &with(&[("meant_material", "no")])).await.body;
    assert!(kept.contains("name=\"meant_material\" value=\"no\""), "also signed out: {kept}");
}

#[tokio::test]
async fn the_preview_says_in_words_where_the_note_will_stand() {
    let (club, author) = scene().await;
    for (fields, words) in [
        (
            &[
                ("thread", "8 B.A"),
                ("meant_thread", "yes"),
                ("drill", "No 50"),
                ("material", "silver steel"),
            ][..],
            "It will be shown on the pages of the No. 50 drill, silver steel and 8 BA.",
        ),
        (&[("thread", "8 BA")], "It will be shown on the page of 8 BA."),
        (&[("material", "the blue bar")], "on no page of the reference"),
    ] {
        let all = [&NOTE[..2], fields, &[("do", "preview")]].concat();
        let preview = club.post("/notes/new", Some(&author), &all).await;
        assert!(preview.body.contains(words), "{words}: {}", preview.body);
    }
}

#[tokio::test]
async fn what_was_asked_stays_beside_the_form_until_it_is_answered() {
    let (club, author) = scene().await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let fields = [("title", "Vague"), ("text", "It went well.")];
    let note = club.send_in(&author, &fields).await;
    club.decide(&moderator, note, ("change", "Say in what metal.")).await;
    let edit = format!("/notes/{note}/edit");
    for more in [("do", "preview"), ("on", "unobtainium")] {
        let all = [&fields[..], &[more]].concat();
        let answer = club.post(&edit, Some(&author), &all).await;
        assert!(answer.body.contains("Say in what metal."), "{more:?}: {}", answer.body);
    }
}

#[tokio::test]
async fn the_machine_of_the_last_note_is_offered_in_the_next() {
    let (club, author) = scene().await;
    let machine = "Mill/drill, “old” & slow";
    let fields = [("title", "Facing"), ("text", "Dry."), ("machine", machine), ("do", "draft")];
    let kept = club.post("/notes/new", Some(&author), &fields).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.body);
    let set = kept.headers.get_all("set-cookie").iter().map(|value| value.to_str().unwrap());
    let set = set.into_iter().find(|cookie| cookie.starts_with("machine=")).unwrap();
    for part in ["machine=", "; Path=/notes;", "HttpOnly", "SameSite=Lax", "Secure"] {
        assert!(set.contains(part), "{part}: {set}");
    }
    let pair = set.split(';').next().unwrap();
    let again = author.with_cookies(&format!("{}; {pair}", author.cookie()));
    let form = club.get("/notes/new", Some(&again)).await;
    assert!(form.headers.get("set-cookie").is_none(), "no page sets a cookie");
    let field = form.body.split("name=\"machine\" value=\"").nth(1).unwrap();
    assert!(field.starts_with("Mill/drill, “old” &#38; slow\""), "{field}");
    assert!(
        form.body.contains("name=\"title\" value=\"\" autocomplete=\"off\" spellcheck=\"true\"")
    );
    // What the address says of a job comes first.
    let form = club.get("/notes/new?machine=Lathe", Some(&again)).await.body;
    assert!(form.contains("name=\"machine\" value=\"Lathe\""), "{form}");
    // Without a machine, or with another's nonsense, nothing is offered.
    for cookie in ["machine=%FF%FE", "machine=", &format!("machine={}", "x".repeat(101))] {
        let odd = author.with_cookies(&format!("{}; {cookie}", author.cookie()));
        let form = club.get("/notes/new", Some(&odd)).await;
        assert_eq!(form.status, StatusCode::OK);
        assert!(!form.body.contains(&"x".repeat(101)), "{cookie}");
    }
    let plain = club.post("/notes/new", Some(&author), &[("title", "A"), ("do", "draft")]).await;
    let mut set = plain.headers.get_all("set-cookie").iter();
    assert!(set.all(|cookie| !cookie.to_str().unwrap().starts_with("machine=")));
    assert!(club.get("/privacy", None).await.body.contains("the machine you typed last in a note"));
}

#[tokio::test]
async fn a_note_that_is_sent_straight_in_says_where_it_will_stand() {
    let (club, author) = scene().await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    for (thread, material, words) in [
        ("8 BA", "silver steel", "It will be shown on the pages of silver steel and 8 BA."),
        (
            "brass 2BA",
            "the blue bar",
            "on no page of the reference: name the material and the thread",
        ),
    ] {
        let fields = [("title", "A"), ("text", "T"), ("do", "send"), ("meant_thread", "no")];
        let fields = [&fields[..], &[("thread", thread), ("material", material)]].concat();
        let answer = club.post("/notes/new", Some(&author), &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        let done = answer.headers.get_all("set-cookie").iter().map(|set| set.to_str().unwrap());
        let done = done.into_iter().find(|set| set.starts_with("done=")).unwrap();
        let done = done.split(';').next().unwrap();
        let after = author.with_cookies(&format!("{}; {done}", author.cookie()));
        let mine = club.get("/notes/mine", Some(&after)).await.body;
        assert!(mine.contains(words), "{words}: {mine}");
    }
    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert_eq!(queue.matches("On no page of the reference.").count(), 1, "{queue}");
}

#[tokio::test]
async fn a_question_stands_above_the_preview() {
    let (club, author) = scene().await;
    let fields = [("title", "A"), ("text", "T"), ("material", "silver stel"), ("do", "preview")];
    let body = club.post("/notes/new", Some(&author), &fields).await.body;
    let at = |words: &str| body.find(words).unwrap_or_else(|| panic!("{words}: {body}"));
    assert!(at("name=\"meant_material\"") < at("<h2 id=\"preview\">"), "{body}");
    assert!(at("<form action=\"/notes/new\"") < at("name=\"meant_material\""), "{body}");
}
