//! What members find of a note: asked in its sense, said with why, and told in the same words everywhere.

use axum::http::StatusCode;

use super::club::{Club, Person, Right};

const WAY: [(&str, &str); 3] =
    [("title", "Tapping gunmetal"), ("text", "Slowly."), ("drill", "No. 43")];
const WARNING: [(&str, &str); 4] = [
    ("title", "A tap that snapped"),
    ("text", "It went in dry."),
    ("drill", "No. 43"),
    ("warning", "yes"),
];

async fn people(club: &Club) -> [Person; 3] {
    [
        club.join("Ada Penn", Right::None).await,
        club.join("Bert Stone", Right::Moderator).await,
        club.join("Cyril Marsh", Right::None).await,
    ]
}

/// The forms of a verdict on a page: each from its tag to its end.
fn forms(page: &str) -> Vec<&str> {
    let forms = page.split("/verdict\" method=\"post\"").skip(1);
    forms.filter_map(|form| form.split("</form>").next()).collect()
}

#[tokio::test]
async fn one_tap_says_it_and_nothing_is_ticked_beforehand() {
    let club = Club::open().await;
    let [author, moderator, reader] = people(&club).await;
    let note = club.shown(&author, &moderator, &WAY).await;
    let page = format!("/notes/{note}");
    let body = club.get(&page, Some(&reader)).await.body;
    let quick = forms(&body)[0];
    assert!(quick.contains("name=\"found\" value=\"worked\">It worked for me</button>"), "{quick}");
    assert!(quick.contains("name=\"found\" value=\"did-not\">It did not</button>"), "{quick}");
    assert!(!body.contains(" checked"), "{body}");

    let version = club.version(note, "shown").await.to_string();
    let tap = [("version", version.as_str()), ("found", "worked")];
    let answer = club.post(&format!("{page}/verdict"), Some(&reader), &tap).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let body = club.get(&page, Some(&reader)).await.body;
    assert!(body.contains("Worked for 1 member.") && body.contains("You said: Worked"), "{body}");
    let all = forms(&body).join("\n");
    assert!(!all.contains("It worked for me</button>"), "asked again: {all}");
    assert!(all.contains(" checked") && all.contains("Take it back"), "{all}");
}

#[tokio::test]
async fn why_waits_to_be_read_and_is_shown_with_a_name() {
    let club = Club::open().await;
    let [author, moderator, reader] = people(&club).await;
    let note = club.shown(&author, &moderator, &WAY).await;
    let page = format!("/notes/{note}");
    let said = "Hold it by hand, no vice needed; blow swarf out with the air line";
    let form = club.get(&page, Some(&reader)).await.body;
    assert!(form.contains("Somebody who decides about notes reads the line before it is shown"));
    let fields = [("found", "did-not"), ("material", "brass"), ("size", ""), ("reason", said)];
    let answer = club.post(&format!("{page}/verdict"), Some(&reader), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    for by in [None, Some(&author), Some(&moderator)] {
        let body = club.get(&page, by).await.body;
        assert!(body.contains("Did not work: brass"), "counted at once: {body}");
        assert!(!body.contains(said), "shown unread: {body}");
    }
    let own = club.get(&page, Some(&reader)).await.body;
    assert!(own.contains(&format!("It did not: {said}")) && own.contains("Only you see it"));
    let queue = club.get("/queue/remarks", Some(&moderator)).await.body;
    assert!(queue.contains(&format!("It did not: {said}")) && queue.contains("Cyril Marsh"));
    let remark = club.count("SELECT max(id) FROM remark").await.to_string();
    let show = [("remark", remark.as_str()), ("do", "show")];
    club.post("/queue/remarks", Some(&moderator), &show).await;
    let body = club.get(&page, None).await.body;
    assert!(body.contains(&format!("It did not: {said}")) && body.contains("Cyril Marsh, "));

    let long = "é".repeat(201);
    let (longest, over) = (&long[..400], long.as_str());
    for (why, status) in [(longest, 303), (over, 422), ("It was for my boiler", 303)] {
        let fields = [("found", "worked"), ("reason", why)];
        let answer = club.post(&format!("{page}/verdict"), Some(&reader), &fields).await;
        assert_eq!(answer.status.as_u16(), status, "{why}: {}", answer.body);
        assert!(status == 303 || answer.body.contains(why), "what was typed: {}", answer.body);
    }
    // Half the pair in one field and half in the next: an inspector reads it too.
    let fields = [("found", "worked"), ("size", "safety"), ("reason", "valve seat")];
    let answer = club.post(&format!("{page}/verdict"), Some(&reader), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let heard = "SELECT count(*) FROM remark WHERE is_pressure = 1 AND state = 'waiting'";
    assert_eq!(club.count(heard).await, 2);
    // Material and size are shown unread, and say nothing of it.
    for (material, size) in [("boiler plate", ""), ("safety", "valve seat")] {
        let fields = [("found", "worked"), ("material", material), ("size", size)];
        let answer = club.post(&format!("{page}/verdict"), Some(&reader), &fields).await;
        assert_eq!(answer.status.as_u16(), 422, "{material}: {}", answer.body);
        assert!(answer.body.contains("an inspector reads those first."), "{}", answer.body);
    }
}

#[tokio::test]
async fn a_warning_is_confirmed_and_nowhere_said_to_work() {
    let club = Club::open().await;
    let [author, moderator, reader] = people(&club).await;
    let note = club.shown(&author, &moderator, &WARNING).await;
    let page = format!("/notes/{note}");
    let body = club.get(&page, Some(&reader)).await.body;
    assert!(body.contains("Did it happen to you too?"), "{body}");
    assert!(body.contains("It happened to me too</button>"), "{body}");
    let fields = [("found", "worked"), ("material", "brass")];
    club.post(&format!("{page}/verdict"), Some(&reader), &fields).await;
    let words = "Confirmed by 1 member.";
    let shown = club.get(&page, None).await.body;
    assert!(shown.contains("Confirmed: brass"), "{shown}");
    let listed = &club.get("/notes.json", None).await.json()["notes"][0];
    assert_eq!((&listed["found"], &listed["warning"]), (&words.into(), &true.into()), "{listed}");
    assert_eq!(listed["worked"], 1, "what shipped stays: {listed}");
    for path in ["/notes", "/drills/number/43", "/notes.csv", page.as_str()] {
        let body = club.get(path, None).await.body;
        assert!(body.contains(words), "{path}: {body}");
        assert!(!body.contains("Worked for") && !body.contains("Worked: "), "{path}: {body}");
    }
    let feed = club.get("/notes.atom", None).await.body;
    assert!(feed.contains("A warning:"), "{feed}");
    let own = club.get("/me/data.json", Some(&author)).await.json();
    assert_eq!(own["notes"][0]["wordings"][0]["is_warning"], true, "{own}");
    // So does a verdict that is given back to whoever is signed out.
    let out = club
        .post(&format!("{page}/verdict"), None, &[("found", "did-not"), ("reason", "No")])
        .await;
    assert!(out.body.contains("It did not happen to me"), "{}", out.body);
    // The form knows, also after a sign-out, and so does whoever decides.
    let form = club.get(&format!("{page}/edit"), Some(&author)).await.body;
    let tick = form.split("name=\"warning\"").nth(1).unwrap();
    assert!(tick.split('>').next().unwrap().contains(" checked"), "{form}");
    let kept = club.post("/notes/new", None, &WARNING).await.body;
    assert!(kept.contains("name=\"warning\" value=\"yes\""), "{kept}");
}

#[tokio::test]
async fn a_wording_that_turns_into_a_warning_counts_anew() {
    let club = Club::open().await;
    let [author, moderator, reader] = people(&club).await;
    let note = club.shown(&author, &moderator, &WAY).await;
    let page = format!("/notes/{note}");
    club.post(&format!("{page}/verdict"), Some(&reader), &[("found", "worked")]).await;
    let form = club.get(&format!("{page}/edit"), Some(&author)).await.body;
    let mark = form.split("name=\"made_from\" value=\"").nth(1).unwrap().split('"').next().unwrap();
    let fields = [&WARNING[..], &[("made_from", mark), ("do", "send")]].concat();
    let answer = club.post(&format!("{page}/edit"), Some(&author), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    club.decide(&moderator, note, ("pass", "")).await;
    let body = club.get(&page, None).await.body;
    assert!(body.contains("nobody else has said yet whether it happened"), "{body}");
    assert!(
        body.contains(
            "An earlier wording, which may have said something else, worked for 1 member."
        )
    );
}
