//! A note from its first word to its last: written, passed, shown everywhere, confirmed, corrected,
//! changed, reported, withdrawn.

use axum::http::StatusCode;

use super::club::{Club, Right};

const NOTE: [(&str, &str); 6] = [
    ("title", "Tapping 4 BA in gunmetal"),
    ("text", "Drilled **No. 32**, dry. The tap ran free after a café break."),
    ("material", "gunmetal"),
    ("thread", "4 BA"),
    ("machine", "bench drill"),
    ("on", "calculators/tapping"),
];

#[tokio::test]
async fn a_note_is_written_passed_and_shown_everywhere() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;

    let form = club.get("/notes/new?on=materials/gunmetal", Some(&author)).await;
    assert_eq!(form.status, StatusCode::OK);
    assert!(form.body.contains("name=\"form_key\""), "{}", form.body);
    assert!(form.body.contains("value=\"Gunmetal\""), "{}", form.body);

    // A plan's link brings what is known of the job, and a reader who is signed out comes back to it.
    let job =
        "/notes/new?title=5+BA+in+gunmetal&material=Gunmetal&thread=5+BA&drill=No.+36&depth=8+mm";
    let form = club.get(job, Some(&author)).await;
    for known in ["5 BA in gunmetal", "Gunmetal", "5 BA", "No. 36", "8 mm"] {
        assert!(form.body.contains(&format!("value=\"{known}\"")), "{known}: {}", form.body);
    }
    // So does a link from before the field had this name, and a form that was open meanwhile.
    let once = club.get(&job.replace("&material=", "&metal="), Some(&author)).await;
    assert!(once.body.contains("name=\"material\" value=\"Gunmetal\""), "{}", once.body);
    let sent = [
        ("form_key", "kept-from-before-1"),
        ("do", "preview"),
        ("title", "5 BA"),
        ("text", "Dry."),
        ("metal", "LG2"),
    ];
    let once = club.post("/notes/new", Some(&author), &sent).await;
    assert!(once.body.contains("value=\"LG2\""), "{}", once.body);
    let out = club.get(job, None).await;
    assert_eq!(out.status, StatusCode::SEE_OTHER, "{}", out.body);
    let door = out.header("location");
    assert!(door.starts_with("/sign-in?next=%2Fnotes%2Fnew%3F"), "{door}");
    assert!(door.contains("thread%3D5%2BBA"), "{door}");

    let tag = club.get("/threads/ba/4", None).await.header("etag").to_owned();
    let note = club.send_in(&author, &NOTE).await;
    assert_eq!(club.get("/threads/ba/4", None).await.header("etag"), tag, "nothing shows yet");
    let mine = club.get("/notes/mine", Some(&author)).await.body;
    assert!(mine.contains("Waiting for a moderator."), "{mine}");

    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert!(queue.contains("Tapping 4 BA in gunmetal") && queue.contains("Ada Penn"), "{queue}");
    let passed = club.decide(&moderator, note, ("pass", "")).await;
    assert_eq!(passed.status, StatusCode::SEE_OTHER, "{}", passed.body);

    let page = format!("/notes/{note}");
    for path in [
        "/notes",
        page.as_str(),
        "/threads/ba/4",
        "/materials/gunmetal",
        "/calculators/tapping",
        "/notes?on=4+BA",
        "/notes?q=cafe",
        "/notes?q=TAPP&on=gunmetal",
        "/search?q=cafe",
        "/notes.atom",
        "/notes.csv",
        "/notes.json",
    ] {
        let answer = club.get(path, None).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}");
        // A page joins a number to its unit.
        let body = answer.body.replace('\u{a0}', " ");
        assert!(body.contains("Tapping 4 BA in gunmetal"), "{path}: {body}");
    }
    let hits = club.get("/api/v1/search?q=caf%C3%A9", None).await.json();
    assert_eq!(hits["hits"][0]["kind"], "note");
    assert_eq!(hits["hits"][0]["url"], page);
    let shown = club.get(&page, None).await.body;
    for words in
        ["By Ada Penn", "not a figure of the tables", "href=\"/drills/number/32\"", "bench drill"]
    {
        assert!(shown.contains(words), "{words}: {shown}");
    }
    let reference = club.get("/threads/ba/4", None).await;
    assert_ne!(reference.header("etag"), tag, "the page has a note more");
    assert!(reference.body.contains("members’ experience, which alters no figure"));
    assert!(club.get("/notes/mine", Some(&author)).await.body.contains("Shown."));
    let tidy = club.get("/notes?q=&on=4+BA&confirmed=", None).await;
    assert_eq!(tidy.header("location"), "/notes?on=4+BA");
    for (path, absent) in [("/notes?q=unheard", page.as_str()), ("/notes?on=M3", page.as_str())] {
        let answer = club.get(path, None).await;
        assert_eq!(answer.status, StatusCode::OK);
        assert!(!answer.body.contains(absent), "{path}");
    }
}

#[tokio::test]
async fn members_judge_once_and_may_change_their_mind() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let page = format!("/notes/{note}");
    let verdict = format!("/notes/{note}/verdict");
    let before = club.get("/threads/ba/4", None).await.header("etag").to_owned();

    let worked = [("found", "worked"), ("material", "LG2"), ("size", "4 BA")];
    for _ in 0..2 {
        let answer = club.post(&verdict, Some(&other), &worked).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    let body = club.get(&page, None).await.body;
    assert!(body.contains("Worked for 1 member.") && body.contains("Worked: LG2, 4 BA"), "{body}");
    assert!(club.get("/notes?confirmed=yes", None).await.body.contains(&page));
    assert_ne!(club.get("/threads/ba/4", None).await.header("etag"), before);

    club.post(&verdict, Some(&other), &[("found", "did-not")]).await;
    let body = club.get(&page, None).await.body;
    assert!(body.contains("Did not work for 1 member."), "{body}");
    assert!(!club.get("/notes?confirmed=yes", None).await.body.contains(&page));

    assert_eq!(club.post(&verdict, Some(&author), &worked).await.status, StatusCode::FORBIDDEN);
    assert_eq!(club.post(&verdict, None, &worked).await.status, StatusCode::UNAUTHORIZED);
    let bare = [("found", "worked")];
    assert_eq!(club.post(&verdict, None, &bare).await.status, StatusCode::SEE_OTHER);
    assert_eq!(club.post(&verdict, Some(&other), &[]).await.status.as_u16(), 422);
    assert_eq!(club.count("SELECT count(*) FROM verdict").await, 1);
}

#[tokio::test]
async fn a_correction_stands_above_and_the_old_text_is_struck() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let version = club.version(note, "shown").await.to_string();
    let correct = format!("/notes/{note}/correct");
    let fields = [("version", version.as_str()), ("correction", "Use *paraffin*, never dry.")];
    assert_eq!(club.post(&correct, Some(&author), &fields).await.status, StatusCode::FORBIDDEN);
    for _ in 0..2 {
        let answer = club.post(&correct, Some(&moderator), &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    let body = club.get(&format!("/notes/{note}"), None).await.body;
    let (above, below) = body.split_once("<del>").unwrap();
    assert!(above.contains("Use <em>paraffin</em>, never dry."), "{body}");
    assert!(below.contains("The tap ran free"), "{body}");
    assert_eq!(body.matches("Correction, ").count(), 1);
    assert!(club.get("/threads/ba/4", None).await.body.contains("<strong>Corrected:</strong>"));
    assert!(club.get("/notes?corrected=yes", None).await.body.contains("Tapping 4 BA"));
    assert!(club.get("/notes?q=paraffin", None).await.body.contains("Tapping 4 BA"));
    let feed = club.get("/notes.atom", None).await.body;
    assert!(feed.contains("&lt;h3&gt;Correction&lt;/h3&gt;"), "{feed}");
    assert!(club.get("/notes.csv", None).await.body.contains("Correction: Use *paraffin*"));
}

#[tokio::test]
async fn a_correction_stays_in_the_history_when_the_author_has_taken_it_in() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let (page, history) = (format!("/notes/{note}"), format!("/notes/{note}/history"));
    assert!(!club.get(&page, None).await.body.contains("How it changed"));
    let version = club.version(note, "shown").await.to_string();
    let fields = [("version", version.as_str()), ("correction", "Use *paraffin*, never dry.")];
    club.post(&format!("{page}/correct"), Some(&moderator), &fields).await;
    let body = club.get(&page, None).await.body;
    assert!(body.contains("How it changed"), "{body}");
    let body = club.get(&history, None).await.body;
    let (correction, first) = body.split_once("as first shown").unwrap();
    assert!(correction.contains("Use <em>paraffin</em>, never dry."), "{body}");
    assert!(first.contains("café"), "{body}");

    // All that was an hour ago.
    let [_, writer] = club.app.database.pools();
    for earlier in [
        "UPDATE correction SET made_at = made_at - 3600",
        "UPDATE note_version SET decided_at = decided_at - 3700",
    ] {
        sqlx::query(earlier).execute(writer).await.unwrap();
    }
    let mut changed = NOTE.to_vec();
    changed[1].1 = "Drilled **No. 31**, with paraffin.";
    changed.push(("do", "send"));
    club.post(&format!("{page}/edit"), Some(&author), &changed).await;
    club.decide(&moderator, note, ("pass", "")).await;
    let body = club.get(&page, None).await.body;
    assert!(!body.contains("never dry"), "it spoke of another text: {body}");
    let body = club.get(&history, None).await.body;
    let (changed, before) = body.split_once("corrected</h2>").unwrap();
    assert!(changed.contains("<ins>") && before.contains("never dry"), "{body}");
}

#[tokio::test]
async fn a_changed_note_waits_while_the_old_one_stays_and_its_history_can_be_read() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let (page, edit) = (format!("/notes/{note}"), format!("/notes/{note}/edit"));
    let mut changed = NOTE.to_vec();
    changed[1].1 = "Drilled **No. 31**, with paraffin.";
    changed.push(("do", "send"));
    assert_eq!(club.post(&edit, Some(&author), &changed).await.status, StatusCode::SEE_OTHER);
    let body = club.get(&page, None).await.body;
    assert!(body.contains("café") && !body.contains("paraffin"), "{body}");
    assert!(!club.get("/notes?q=paraffin", None).await.body.contains(&page));
    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert!(queue.contains("What changes") && queue.contains("<ins>"), "{queue}");

    club.decide(&moderator, note, ("pass", "")).await;
    let body = club.get(&page, None).await.body;
    assert!(!body.contains("café") && body.contains("paraffin"), "{body}");
    assert!(body.contains("How it changed"), "{body}");
    assert!(!club.get("/notes?q=cafe", None).await.body.contains(&page));
    let history = club.get(&format!("/notes/{note}/history"), None).await.body;
    assert!(history.contains("<ins>") && history.contains("<del>"), "{history}");
    assert!(history.contains("café"), "{history}");
}

#[tokio::test]
async fn a_report_hides_at_once_and_a_withdrawn_note_says_so() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let page = format!("/notes/{note}");
    let report = [("danger", "The work is held by hand.")];
    let answer = club.post(&format!("{page}/report"), Some(&other), &report).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    let hidden = club.get(&page, None).await;
    assert_eq!(hidden.status, StatusCode::NOT_FOUND);
    assert!(hidden.body.contains("hidden"), "{}", hidden.body);
    for path in ["/notes", "/threads/ba/4", "/notes?q=gunmetal", "/notes.atom", "/notes.csv"] {
        let body = club.get(path, None).await.body;
        assert!(!body.contains("Tapping 4 BA in gunmetal"), "{path}: {body}");
    }
    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert!(queue.contains("The work is held by hand."), "{queue}");
    let settled = club.decide(&moderator, note, ("settle", "")).await;
    assert_eq!(settled.status, StatusCode::SEE_OTHER, "{}", settled.body);
    assert_eq!(club.get(&page, None).await.status, StatusCode::OK);
    assert!(club.get("/notes?q=gunmetal", None).await.body.contains(&page));

    let withdraw = format!("{page}/withdraw");
    assert_eq!(club.post(&withdraw, Some(&other), &[("why", "x")]).await.status.as_u16(), 403);
    assert_eq!(club.post(&withdraw, Some(&author), &[("why", " ")]).await.status.as_u16(), 422);
    let why = [("why", "It was another metal.")];
    assert_eq!(club.post(&withdraw, Some(&author), &why).await.status, StatusCode::SEE_OTHER);
    let gone = club.get(&page, None).await;
    assert_eq!(gone.status, StatusCode::GONE);
    assert!(gone.body.contains("Its author took it back."), "{}", gone.body);
    assert!(!gone.body.contains("It was another metal."), "nobody read it: {}", gone.body);
    assert!(!gone.body.contains("Drilled"), "{}", gone.body);
    for path in ["/notes", "/threads/ba/4", "/notes?q=gunmetal", "/notes.json"] {
        let body = club.get(path, None).await.body;
        assert!(!body.contains("Tapping 4 BA in gunmetal"), "{path}: {body}");
    }
    // Nobody waits for an answer twice: what is withdrawn stays so.
    let again = club.post(&withdraw, Some(&author), &why).await;
    assert_eq!(again.status, StatusCode::CONFLICT);
    assert!(again.body.contains("the note is withdrawn"), "{}", again.body);
}

#[tokio::test]
async fn the_queue_withdraws_what_was_reported_and_settles_once() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let report = format!("/notes/{note}/report");
    club.post(&report, Some(&other), &[("danger", "One")]).await;
    club.decide(&moderator, note, ("settle", "")).await;
    let late = club.decide(&moderator, note, ("settle", "")).await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    assert!(late.body.contains("somebody settled it already"), "{}", late.body);
    club.post(&report, Some(&other), &[("danger", "Two")]).await;
    let fields = [("version", "1"), ("do", "withdraw"), ("reason", "Too dangerous.")];
    let answer = club.post(&format!("/queue/{note}"), Some(&moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let gone = club.get(&format!("/notes/{note}"), None).await;
    assert!(gone.body.contains("Too dangerous."), "{}", gone.body);
    assert!(club.get("/queue", Some(&moderator)).await.body.contains("Nothing waits."));
    let open = "SELECT count(*) FROM safety_report WHERE settled_at IS NULL";
    assert_eq!(club.count(open).await, 0);
}

#[tokio::test]
async fn a_correction_of_a_wording_that_was_replaced_comes_back_with_its_words() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let read = club.version(note, "shown").await.to_string();
    let changed = [("title", "A"), ("text", "Another text"), ("do", "send")];
    club.post(&format!("/notes/{note}/edit"), Some(&author), &changed).await;
    club.decide(&moderator, note, ("pass", "")).await;
    let fields = [("version", read.as_str()), ("correction", "Kept words")];
    let answer = club.post(&format!("/notes/{note}/correct"), Some(&moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::CONFLICT);
    assert!(answer.body.contains("Kept words</textarea>"), "{}", answer.body);
    assert!(answer.body.contains("Another text"), "{}", answer.body);
    assert_eq!(club.count("SELECT count(*) FROM correction").await, 0);
}

#[tokio::test]
async fn what_speaks_of_pressure_waits_for_the_inspector() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let plain = club.send_in(&author, &NOTE).await;
    let text = [("title", "Bushes"), ("text", "For the boiler barrel, 1/4 x 40 ME.")];
    let note = club.send_in(&author, &text).await;
    let mine = club.get("/notes/mine", Some(&author)).await.body;
    assert!(mine.contains("Waiting for an inspector."), "{mine}");
    let queue = club.get("/queue", Some(&inspector)).await.body;
    assert!(queue.contains("Bushes") && !queue.contains("Tapping 4 BA"), "{queue}");
    assert_eq!(club.decide(&moderator, note, ("pass", "")).await.status, StatusCode::FORBIDDEN);
    assert_eq!(club.get(&format!("/notes/{note}"), None).await.status, StatusCode::NOT_FOUND);
    assert_eq!(club.decide(&inspector, plain, ("pass", "")).await.status, StatusCode::FORBIDDEN);
    assert_eq!(club.decide(&inspector, note, ("pass", "")).await.status, StatusCode::SEE_OTHER);
    let page = club.get(&format!("/notes/{note}"), None).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.body.contains("the national boiler code"), "{}", page.body);
}

#[tokio::test]
async fn the_author_is_told_what_became_of_a_note() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let note = club.send_in(&author, &NOTE).await;
    assert_eq!(club.decide(&moderator, note, ("decline", "")).await.status.as_u16(), 422);
    club.decide(&moderator, note, ("change", "Say which lubricant.")).await;
    let mine = club.get("/notes/mine", Some(&author)).await.body;
    assert!(mine.contains("A change is asked for: Say which lubricant."), "{mine}");
    let edit = format!("/notes/{note}/edit");
    let form = club.get(&edit, Some(&author)).await.body;
    assert!(form.contains("Say which lubricant.") && form.contains("café"), "{form}");
    let mut changed = NOTE.to_vec();
    changed.extend([("lubricant", "none"), ("do", "send")]);
    assert_eq!(club.post(&edit, Some(&author), &changed).await.status, StatusCode::SEE_OTHER);
    club.decide(&moderator, note, ("decline", "Known already.")).await;
    let mine = club.get("/notes/mine", Some(&author)).await.body;
    assert!(mine.contains("Declined: Known already."), "{mine}");
    assert_eq!(club.count("SELECT count(*) FROM act WHERE what LIKE 'note-%'").await, 5);
}
