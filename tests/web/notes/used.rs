//! Which drills members used: counted from notes and verdicts below the dividing line, and nowhere else.

use super::club::{Club, Person, Right};

const PLAN: &str = "/plan?thread=8+BA&material=silver+steel";
const COMPARE: &str = "/notes/compare?thread=8+BA&material=silver+steel";
const NAMES: [&str; 5] = ["Ada Penn", "Cora Lund", "Dan Firth", "Eve Marsh", "Fay Stead"];

async fn members(club: &Club) -> (Vec<Person>, Person) {
    let mut members = Vec::new();
    for name in NAMES {
        members.push(club.join(name, Right::None).await);
    }
    (members, club.join("Bert Stone", Right::Moderator).await)
}

async fn wrote(
    club: &Club,
    (author, moderator): (&Person, &Person),
    title: &str,
    drill: &str,
) -> i64 {
    let fields = [
        ("title", title),
        ("text", "It cut clean."),
        ("thread", "8 BA"),
        ("material", "silver steel"),
        ("drill", drill),
    ];
    club.shown(author, moderator, &fields).await
}

async fn judged(club: &Club, note: i64, by: &Person, fields: &[(&str, &str)]) {
    let answer = club.post(&format!("/notes/{note}/verdict"), Some(by), fields).await;
    assert!(answer.status.is_redirection(), "{}", answer.body);
}

/// A page, with every space a plain one.
async fn read(club: &Club, path: &str) -> String {
    club.get(path, None).await.body.replace('\u{a0}', " ")
}

/// The plan in two parts: above the dividing line and below it.
async fn plan(club: &Club) -> (String, String) {
    let body = read(club, PLAN).await;
    let (above, below) = body.split_once("<section class=\"experience\"").unwrap();
    (above.to_owned(), below.to_owned())
}

#[tokio::test]
async fn three_members_make_a_count_and_two_make_none() {
    let club = Club::open().await;
    let (people, moderator) = members(&club).await;
    let [ada, cora, dan, eve, fay] = people.as_slice() else { panic!() };
    let first = wrote(&club, (ada, &moderator), "Plain", "1.8 mm").await;
    judged(&club, first, cora, &[("found", "worked")]).await;
    let (above, below) = plan(&club).await;
    assert!(!below.contains("Of 2 members") && !below.contains(" used 1.8 mm"), "{below}");
    let compared = read(&club, COMPARE).await;
    assert!(compared.contains("Which drills were used is counted"), "{compared}");

    judged(&club, first, dan, &[("found", "did-not")]).await;
    wrote(&club, (eve, &moderator), "With the next one", "No. 50").await;
    // What was done in another metal is no experience of this one, wherever the note stands.
    judged(&club, first, fay, &[("found", "worked"), ("material", "brass")]).await;
    let (after, below) = plan(&club).await;
    let line = "Of 4 members, 3 used 1.8 mm; it did not work for everybody who said.";
    assert!(below.contains(line), "{below}");
    let figures = |page: &str| page.split("<h2").skip(1).collect::<Vec<_>>().concat();
    assert_eq!(figures(&above), figures(&after), "a note alters no figure");
    assert!(below.contains("#used\">Every drill that was used</a>"), "{below}");
    let compared = read(&club, COMPARE).await;
    for words in [
        line,
        "<a href=\"/drills/metric/1.8\">1.8 mm</a></th><td>3</td><td>it did not work for everybody</td>",
        "<a href=\"/drills/number/50\">No. 50</a></th><td>fewer than three</td><td>fewer than three said</td>",
        &format!("<a href=\"/notes/{first}\">Note {first}</a>"),
    ] {
        assert!(compared.contains(words), "{words}: {compared}");
    }

    // A third who says whether it worked makes that a figure too; elsewhere is told apart on the note.
    judged(&club, first, eve, &[("found", "worked"), ("size", "8 BA, 1.8 mm drill")]).await;
    let below = plan(&club).await.1;
    let line = "Of 4 members, 4 used 1.8 mm; of 3 who said, it worked for 2.";
    assert!(below.contains(line), "{below}");
    let note = read(&club, &format!("/notes/{first}")).await;
    for words in [
        "Worked for 2 members, did not for 1 member.",
        "Of another size, drill or material: worked for 1 member.",
    ] {
        assert!(note.contains(words), "{words}: {note}");
    }
    // What nobody reads before it is shown is a name of the reference; whoever may take it away sees all of it.
    judged(&club, first, cora, &[("found", "worked"), ("material", "hold it by hand")]).await;
    let path = format!("/notes/{first}");
    assert!(!read(&club, &path).await.contains("hold it by hand"));
    let seen = club.get(&path, Some(&moderator)).await.body;
    assert!(seen.contains("Worked: hold it by hand"), "{seen}");
    judged(&club, first, cora, &[("found", "worked"), ("material", "silver steel")]).await;
    assert!(read(&club, &path).await.contains("Worked: silver steel"));
}

#[tokio::test]
async fn a_note_that_stands_beside_the_job_and_was_done_elsewhere_is_not_counted() {
    let club = Club::open().await;
    let (people, moderator) = members(&club).await;
    for author in people.iter().take(3) {
        let fields = [
            ("title", "In brass"),
            ("text", "It cut clean."),
            ("thread", "8 BA"),
            ("material", "free-cutting brass"),
            ("drill", "1.9 mm"),
            ("on", "silver steel"),
        ];
        club.shown(author, &moderator, &fields).await;
    }
    let below = plan(&club).await.1;
    assert!(below.contains("In brass") && !below.contains("used 1.9 mm"), "{below}");
    let brass = read(&club, "/plan?thread=8+BA&material=free-cutting+brass").await;
    assert!(brass.contains("Of 3 members, 3 used 1.9 mm"), "{brass}");
}

#[tokio::test]
async fn what_was_found_of_an_earlier_wording_is_not_counted() {
    let club = Club::open().await;
    let (people, moderator) = members(&club).await;
    let [ada, cora, dan, ..] = people.as_slice() else { panic!() };
    let first = wrote(&club, (ada, &moderator), "Plain", "1.8 mm").await;
    for by in [cora, dan] {
        judged(&club, first, by, &[("found", "worked")]).await;
    }
    assert!(plan(&club).await.1.contains("Of 3 members, 3 used 1.8 mm."));
    let fields = [
        ("title", "Plain"),
        ("text", "Another drill."),
        ("thread", "8 BA"),
        ("material", "silver steel"),
        ("drill", "1.85 mm"),
        ("do", "send"),
    ];
    let sent = club.post(&format!("/notes/{first}/edit"), Some(ada), &fields).await;
    assert!(sent.status.is_redirection(), "{}", sent.body);
    let answer = club.decide(&moderator, first, ("pass", "")).await;
    assert!(answer.status.is_redirection(), "{}", answer.body);
    assert!(!plan(&club).await.1.contains("Of 3 members"), "verdicts of another text are counted");
}

#[tokio::test]
async fn what_is_corrected_or_hidden_is_not_counted() {
    let club = Club::open().await;
    let (people, moderator) = members(&club).await;
    let [ada, cora, dan, ..] = people.as_slice() else { panic!() };
    let first = wrote(&club, (ada, &moderator), "Plain", "1.8 mm").await;
    for by in [cora, dan] {
        judged(&club, first, by, &[("found", "worked")]).await;
    }
    let line = "Of 3 members, 3 used 1.8 mm.";
    assert!(plan(&club).await.1.contains(line));

    let version = club.version(first, "shown").await.to_string();
    let said = [("version", version.as_str()), ("correction", "The drill was 1.85 mm.")];
    let second = wrote(&club, (cora, &moderator), "Another", "1.8 mm").await;
    let answer = club.post(&format!("/notes/{first}/correct"), Some(&moderator), &said).await;
    assert!(answer.status.is_redirection(), "{}", answer.body);
    assert!(!plan(&club).await.1.contains("Of 3 members"), "a corrected note is counted");

    for by in [ada, dan] {
        judged(&club, second, by, &[("found", "worked")]).await;
    }
    assert!(plan(&club).await.1.contains(line));
    let danger = [("danger", "It flew.")];
    club.post(&format!("/notes/{second}/report"), Some(dan), &danger).await;
    assert!(!plan(&club).await.1.contains("Of 3 members"), "a hidden note is counted");
}
