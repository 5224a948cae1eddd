//! Deciding: the queue of many notes on a small screen, the reasons at one tap, what is undone, what is mended.

use axum::http::StatusCode;
use holewright_server::rules::notes::ready::READY;

use super::club::{Club, Person, Right};
use super::scene::Scene;
use crate::page::filled;

const SHOWN: [(&str, &str); 3] =
    [("title", "Gland nut"), ("text", "Turned from LG2, dry."), ("drill", "2.3 mm")];
const NEXT: [(&str, &str); 3] =
    [("title", "Gland nut"), ("text", "Turned from LG2, with oil."), ("drill", "2.5 mm")];

/// The titles of the notes on a page, and which of them are open.
fn listed(body: &str) -> (Vec<String>, Vec<usize>) {
    let items = body.split("<details class=\"queued\"").skip(1);
    let mut titles = Vec::new();
    let mut open = Vec::new();
    for (place, item) in items.enumerate() {
        if item.starts_with(" open>") {
            open.push(place);
        }
        let (_, title) = item.split_once("<h2 id=\"note-").unwrap();
        let title = title.split_once('>').unwrap().1.split_once("</h2>").unwrap().0;
        titles.push(title.to_owned());
    }
    (titles, open)
}

#[tokio::test]
async fn everything_that_waits_is_counted_and_reached() {
    let scene = Scene::open().await;
    let mut notes = Vec::new();
    for number in 0..28 {
        notes.push(scene.send_in(&format!("Nut {number}")).await);
    }
    let mut reported = Vec::new();
    for number in 0..2 {
        let title = format!("Screw {number}");
        let fields = [("title", title.as_str()), ("text", "It held.")];
        let note = scene.club.shown(&scene.author, &scene.moderator, &fields).await;
        scene.report(note).await;
        reported.push(note);
    }
    scene
        .execute("UPDATE note_version SET made_at = made_at - 260000, saved_at = saved_at - 260000")
        .await;
    let first = scene.queue("").await;
    assert!(first.contains("30 wait: 2 reported, 28 new."), "{first}");
    assert!(first.contains("By Ada Penn · 3 days · new<"), "{first}");
    assert!(first.contains("By Ada Penn · less than an hour · reported<"), "{first}");
    let (titles, open) = listed(&first);
    assert_eq!(titles.len(), 20);
    assert_eq!(open, [0], "the first is open and no other");
    assert!(first.contains("href=\"/queue?from=20\""), "{first}");
    let (rest, open) = listed(&scene.queue("?from=20").await);
    assert_eq!((rest.len(), open), (10, vec![0]));
    let all: std::collections::BTreeSet<_> = titles.into_iter().chain(rest.clone()).collect();
    assert_eq!(all.len(), 30, "each of them once");
    // Each has an address of its own, where it is open.
    let last = notes[27];
    let at = listed(&scene.queue(&format!("?open={last}")).await);
    let of_its_page =
        |titles: Vec<String>| titles.into_iter().collect::<std::collections::BTreeSet<_>>();
    assert_eq!(at.1, [0], "before the lines of the others");
    assert_eq!(of_its_page(at.0.clone()), of_its_page(rest));
    assert_eq!(at.1.iter().map(|place| at.0[*place].as_str()).collect::<Vec<_>>(), ["Nut 27"]);
    for nonsense in ["?from=9999999", "?from=x", "?open=0", "?open=-1"] {
        assert_eq!(listed(&scene.queue(nonsense).await).0.len(), 20, "{nonsense}");
    }
}

#[tokio::test]
async fn reports_and_what_waits_keep_each_other_from_no_page() {
    let scene = Scene::open().await;
    for number in 0..25 {
        let title = format!("Screw {number}");
        let fields = [("title", title.as_str()), ("text", "It held.")];
        let note = scene.club.shown(&scene.author, &scene.moderator, &fields).await;
        scene.report(note).await;
    }
    for number in 0..25 {
        scene.send_in(&format!("Nut {number}")).await;
    }
    for (part, reported) in [("", 10), ("?from=20", 10), ("?from=40", 5)] {
        let (titles, _) = listed(&scene.queue(part).await);
        let found = titles.iter().filter(|title| title.starts_with("Screw")).count();
        assert_eq!(found, reported, "{part}: {titles:?}");
    }
}

#[tokio::test]
async fn what_was_typed_at_a_note_on_another_page_is_carried() {
    let scene = Scene::open().await;
    let mut notes = Vec::new();
    for number in 0..22 {
        notes.push(scene.send_in(&format!("Nut {number}")).await);
    }
    let body = scene.queue("").await;
    let mut fields = filled(&body);
    fields.retain(|(name, _)| name != "q");
    let typed = [(format!("reason-{}", notes[0]), "Which oil?".to_owned())];
    fields.retain(|(name, _)| *name != typed[0].0);
    fields.extend(typed.clone());
    fields.push(("do".to_owned(), "decline".to_owned()));
    let fields: Vec<_> = fields.iter().map(|(name, it)| (name.as_str(), it.as_str())).collect();
    // About a note of the second page: nothing is said of why.
    let path = format!("/queue/{}", notes[21]);
    let answer = scene.club.post(&path, Some(&scene.moderator), &fields).await;
    assert_eq!(answer.status.as_u16(), 422, "{}", answer.body);
    assert_eq!(listed(&answer.body).0.len(), 2, "{}", answer.body);
    assert!(filled(&answer.body).contains(&typed[0]), "{}", answer.body);
}

#[tokio::test]
async fn fourteen_decisions_take_fourteen_taps_and_no_typing() {
    let scene = Scene::open().await;
    for number in 0..14 {
        scene.send_in(&format!("Nut {number}")).await;
    }
    let mut body = scene.queue("").await;
    let mut taps = 0;
    let mut taken = ["pass", "drill", "told", "pass", "metal"].into_iter().cycle();
    while !body.contains("Nothing waits.") && taps < 100 {
        let what = taken.next().unwrap();
        // The button stands in the note that is open, and the whole form is sent with it.
        let open = body.split("<details class=\"queued\" open>").nth(1).unwrap();
        let open = open.split("</details>").next().unwrap();
        let button = format!("name=\"do\" value=\"{what}\"");
        let (before, _) = open.split_once(&button).unwrap_or_else(|| panic!("{what}: {open}"));
        let path = before.rsplit_once("formaction=\"").unwrap().1.split_once('"').unwrap().0;
        let mut fields = filled(&body);
        fields.retain(|(name, _)| name != "q");
        fields.push(("do".to_owned(), what.to_owned()));
        let fields: Vec<_> = fields.iter().map(|(name, it)| (name.as_str(), it.as_str())).collect();
        let answer = scene.club.post(path, Some(&scene.moderator), &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        taps += 1;
        let next = answer.header("location").strip_prefix("/queue").unwrap().to_owned();
        body = scene.queue(&next).await;
    }
    assert_eq!(taps, 14, "one for each: {body}");
    let mine = scene.club.get("/notes/mine", Some(&scene.author)).await.body;
    for words in ["A change is asked for: Which drill", "Declined: Already told", "Shown."] {
        assert!(mine.contains(words), "{words}: {mine}");
    }
}

#[tokio::test]
async fn a_ready_reason_goes_with_what_was_typed_beside_it() {
    let scene = Scene::open().await;
    for ready in READY {
        let note = scene.send_in(ready.name).await;
        let queue = scene.queue("").await;
        let button = format!("name=\"do\" value=\"{}\">{}</button>", ready.name, ready.words);
        assert!(queue.contains(&button), "{button}: {queue}");
        let answer =
            scene.club.decide(&scene.moderator, note, (ready.name, "The third one.")).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        let page = scene.club.get(&format!("/notes/{note}"), Some(&scene.author)).await.body;
        assert!(page.contains(ready.words) && page.contains("The third one."), "{page}");
    }
    // Not where it would be too long together.
    let note = scene.send_in("Long").await;
    let long = "x".repeat(1_990);
    let answer = scene.club.decide(&scene.moderator, note, ("drill", &long)).await;
    assert_eq!(answer.status.as_u16(), 422, "{}", answer.body);
    assert!(answer.body.contains(&long), "{}", answer.body);
}

#[tokio::test]
async fn a_decision_undone_leaves_every_row_as_it_was() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, inspector, reader, .. } = &scene;
    // A first wording, and one that follows a shown one with a verdict and a correction; one that is reported.
    let first = scene.send_in("First").await;
    let changed = club.shown(author, moderator, &SHOWN).await;
    let verdict = [("found", "worked"), ("material", "brass")];
    club.post(&format!("/notes/{changed}/verdict"), Some(reader), &verdict).await;
    let version = club.version(changed, "shown").await.to_string();
    let said = [("version", version.as_str()), ("correction", "Slower.")];
    club.post(&format!("/notes/{changed}/correct"), Some(moderator), &said).await;
    scene.change(changed, &NEXT).await;
    let reported = club.shown(author, moderator, &SHOWN).await;
    scene.report(reported).await;
    let boiler = club.send_in(author, &[("title", "Boiler bush"), ("text", "LG2")]).await;
    for (note, what, by) in [
        (first, "pass", moderator),
        (first, "change", moderator),
        (first, "decline", moderator),
        (first, "over", moderator),
        (changed, "pass", moderator),
        (changed, "change", moderator),
        (changed, "decline", moderator),
        (reported, "settle", moderator),
        (boiler, "pass", inspector),
        (boiler, "back", inspector),
        (boiler, "decline", moderator),
    ] {
        let before = scene.rows().await;
        let reason = if matches!(what, "change" | "decline") { "Which oil?" } else { "" };
        let answer = club.decide(by, note, (what, reason)).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{note} {what}: {}", answer.body);
        assert_ne!(scene.rows().await, before, "{note} {what}");
        let answer = scene.undo(note, by).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{note} {what}: {}", answer.body);
        assert_eq!(answer.header("location"), format!("/queue?open={note}"));
        assert_eq!(scene.rows().await, before, "{note} {what}");
        let again = scene.undo(note, by).await;
        assert_eq!(again.status, StatusCode::CONFLICT, "{}", again.body);
        assert!(again.body.contains("it was undone already"), "{}", again.body);
    }
    let undone = "SELECT count(*) FROM act WHERE what = 'note-decision-undone'";
    assert_eq!(club.count(undone).await, 11);
}

#[tokio::test]
async fn what_can_not_be_undone_says_why() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, second, reader, .. } = &scene;
    let pass = async |title: &str| {
        let note = scene.send_in(title).await;
        club.decide(moderator, note, ("pass", "")).await;
        note
    };
    let says = async |note: i64, by: &Person, words: &str| {
        let answer = scene.undo(note, by).await;
        assert_eq!(answer.status, StatusCode::CONFLICT, "{words}: {}", answer.body);
        assert!(answer.body.contains(words), "{words}: {}", answer.body);
    };
    // Another's.
    let note = pass("One").await;
    says(note, second, "only whoever decided can undo it").await;
    let refused = scene.undo(note, author).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN, "{}", refused.body);
    // Later than a minute.
    scene.execute("UPDATE undoable SET decided_at = decided_at - 61").await;
    says(note, moderator, "the minute is over").await;
    // Another of the club decided since, and what could be undone was cleared away.
    scene.execute("DELETE FROM undoable").await;
    scene.execute("UPDATE act SET at = at - 61").await;
    says(note, moderator, "the minute is over").await;
    says(note, second, "something else has happened to the note since").await;
    // Something else happened: a verdict, a correction, a report, a wording sent in, a draft written on.
    let judged = pass("Two").await;
    club.post(&format!("/notes/{judged}/verdict"), Some(reader), &[("found", "worked")]).await;
    let corrected = pass("Three").await;
    let version = club.version(corrected, "shown").await.to_string();
    let said = [("version", version.as_str()), ("correction", "Slower.")];
    club.post(&format!("/notes/{corrected}/correct"), Some(second), &said).await;
    let reported = pass("Four").await;
    scene.report(reported).await;
    let followed = pass("Five").await;
    scene.change(followed, &NEXT).await;
    let asked = scene.send_in("Six").await;
    club.decide(moderator, asked, ("change", "Which oil?")).await;
    let draft = [&[("do", "draft")], &NEXT[..]].concat();
    club.post(&format!("/notes/{asked}/edit"), Some(author), &draft).await;
    let withdrawn = pass("Seven").await;
    club.post(&format!("/notes/{withdrawn}/withdraw"), Some(author), &[("why", "Wrong.")]).await;
    for note in [judged, corrected, reported, followed, asked] {
        let before = scene.rows().await;
        says(note, moderator, "something else has happened to the note since").await;
        assert_eq!(scene.rows().await, before);
    }
    says(withdrawn, moderator, "something else has happened").await;
    assert_eq!(club.get(&format!("/notes/{withdrawn}"), None).await.status, StatusCode::GONE);
}

#[tokio::test]
async fn a_small_fix_is_shown_in_the_name_of_whoever_made_it() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, inspector, reader, .. } = &scene;
    let fields = [("title", "Glnad nut"), ("text", "Turned, dry."), ("material", "gunmetal")];
    let note = club.send_in(author, &fields).await;
    let mend = format!("/queue/{note}/mend");
    assert!(scene.queue("").await.contains(&format!("href=\"{mend}\"")));
    for (by, status) in [
        (Some(author), StatusCode::FORBIDDEN),
        (Some(reader), StatusCode::FORBIDDEN),
        (Some(inspector), StatusCode::FORBIDDEN),
        (None, StatusCode::SEE_OTHER),
    ] {
        assert_eq!(club.get(&mend, by).await.status, status);
    }
    let page = club.get(&mend, Some(moderator)).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.body);
    let form = |changes: &[(&str, &str)]| {
        let mut fields = filled(&page.body);
        fields.retain(|(name, _)| name != "q");
        for (name, value) in &mut fields {
            if let Some((_, typed)) = changes.iter().find(|(changed, _)| changed == name) {
                (*typed).clone_into(value);
            }
        }
        fields
    };
    let send = async |by: Option<&Person>, changes: &[(&str, &str)]| {
        let fields = form(changes);
        let fields: Vec<_> = fields.iter().map(|(name, it)| (name.as_str(), it.as_str())).collect();
        club.post(&mend, by, &fields).await
    };
    let before = scene.rows().await;
    for (by, changes, status, words) in [
        (Some(moderator), vec![], 422, "Nothing is changed"),
        (Some(moderator), vec![("title", " ")], 422, "Give the note a title"),
        // Words of pressure are an inspector’s to show, whoever writes them.
        (Some(moderator), vec![("title", "Boiler gland nut")], 403, "Boiler gland nut"),
        (None, vec![("title", "Gland nut")], 401, "Gland nut"),
    ] {
        let answer = send(by, &changes).await;
        assert_eq!(answer.status.as_u16(), status, "{words}: {}", answer.body);
        assert!(answer.body.contains(words), "{words}: {}", answer.body);
        assert_eq!(scene.rows().await, before, "{words}");
    }
    let changes = [("title", "Gland nut"), ("material", "free-cutting-brass")];
    // Elsewhere than before: that is told first, and then it is shown.
    let told = send(Some(moderator), &changes).await;
    assert_eq!(told.status.as_u16(), 422, "{}", told.body);
    let words = "It will be shown on the page of free-cutting brass.";
    assert!(told.body.contains(words), "{}", told.body);
    assert_eq!(scene.rows().await, before);
    let fields = filled(&told.body);
    let fields = fields.iter().filter(|(name, _)| name != "q");
    let fields: Vec<_> = fields.map(|(name, it)| (name.as_str(), it.as_str())).collect();
    let answer = club.post(&mend, Some(moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let shown = club.get(&format!("/notes/{note}"), None).await.body;
    assert!(shown.contains("Gland nut") && !shown.contains("Glnad"), "{shown}");
    assert!(club.get("/materials/free-cutting-brass", None).await.body.contains("Gland nut"));
    assert!(!club.get("/materials/gunmetal", None).await.body.contains("Gland nut"));
    // Its author sees who changed what; other readers do not see their first words.
    let mine = club.get("/notes/mine", Some(author)).await.body;
    assert!(mine.contains("with a small fix by Bert Stone"), "{mine}");
    assert!(mine.contains("<del>Glnad</del><ins>Gland</ins>"), "{mine}");
    let history = format!("/notes/{note}/history");
    let own = club.get(&history, Some(author)).await.body;
    assert!(own.contains("Small fix by Bert Stone") && own.contains("<del>Glnad</del>"), "{own}");
    for by in [None, Some(reader)] {
        assert!(!club.get(&history, by).await.body.contains("Glnad"));
    }
    let data = club.get("/me/data.json", Some(author)).await.body;
    assert!(data.contains("Glnad") && data.contains("Shown with a small fix."), "{data}");
    // It can be undone like any decision.
    let answer = scene.undo(note, moderator).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert_eq!(scene.rows().await, before);
    // It was read as it stood: what its author sent in since is another wording.
    scene.change(note, &NEXT).await;
    let late = send(Some(moderator), &changes).await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.body);
    assert!(late.body.contains("value=\"Gland nut\""), "{}", late.body);
}

#[tokio::test]
async fn nobody_mends_their_own_note_around_the_rule() {
    let club = Club::open().await;
    let alone = club.join("Una Oakes", Right::Secretary).await;
    let note = club.send_in(&alone, &SHOWN).await;
    let version = club.version(note, "waiting").await.to_string();
    let fields = [&NEXT[..], &[("version", version.as_str())]].concat();
    let answer = club.post(&format!("/queue/{note}/mend"), Some(&alone), &fields).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    assert_eq!(club.count("SELECT count(*) FROM note_version").await, 1);
    let queue = club.get("/queue", Some(&alone)).await.body;
    assert!(!queue.contains("/mend\""), "{queue}");
}

#[tokio::test]
async fn a_note_that_came_back_shows_what_was_asked_and_what_changed_since() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let note = club.send_in(author, &SHOWN).await;
    club.decide(moderator, note, ("change", "Which oil?")).await;
    let draft = [&[("do", "draft")], &NEXT[..]].concat();
    club.post(&format!("/notes/{note}/edit"), Some(author), &draft).await;
    scene.change(note, &NEXT).await;
    let queue = scene.queue("").await;
    assert!(queue.contains("Bert Stone asked for a change"), "{queue}");
    assert!(queue.contains("Which oil?"), "{queue}");
    assert!(queue.contains("<del>dry.</del><ins>with oil.</ins>"), "{queue}");
    // Declined, it says why.
    club.decide(moderator, note, ("decline", "We have it.")).await;
    scene.change(note, &SHOWN).await;
    let queue = scene.queue("").await;
    assert!(queue.contains("Declined before") && queue.contains("We have it."), "{queue}");
    assert!(queue.contains("<del>with oil.</del><ins>dry.</ins>"), "{queue}");
    // Once it is shown, that is over.
    scene.execute("UPDATE change_asked SET asked_at = asked_at - 10").await;
    club.decide(moderator, note, ("pass", "")).await;
    scene.change(note, &NEXT).await;
    let queue = scene.queue("").await;
    assert!(!queue.contains("asked for a change") && !queue.contains("Declined before"), "{queue}");
}

#[tokio::test]
async fn a_note_like_an_earlier_one_is_pointed_out() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, reader, .. } = &scene;
    let text = "Opened with a 3.3 mm drill, then tapped 4 BA by hand in gunmetal. It squealed and I stopped.";
    let first = [("title", "Tapping gunmetal"), ("text", text)];
    let earlier = club.shown(author, moderator, &first).await;
    let again = format!("{text} Again today.");
    let words = format!("Like an earlier note: <a href=\"/notes/{earlier}\">Tapping gunmetal</a>");
    // By the same author under another title; by another under the same.
    for (by, title) in [(author, "Four BA"), (reader, "Tapping gunmetal, twice")] {
        let fields = [("title", title), ("text", again.as_str())];
        let preview = [&[("do", "preview")], &fields[..]].concat();
        let seen = club.post("/notes/new", Some(by), &preview).await.body;
        let is_same = by.id == author.id;
        assert_eq!(seen.contains(&words), is_same || title.contains("Tapping"), "{title}: {seen}");
    }
    let note = club.send_in(author, &[("title", "Four BA"), ("text", &again)]).await;
    let queue = scene.queue("").await;
    assert!(queue.contains(&words), "{queue}");
    // What only waits is nobody else's to hear of.
    let fields = [("title", "Four BA"), ("text", again.as_str()), ("do", "preview")];
    let seen = club.post("/notes/new", Some(reader), &fields).await.body;
    assert!(!seen.contains(&format!("/notes/{note}\"")), "{seen}");
    // Other words are like nothing.
    let other =
        [("title", "Tapping gunmetal"), ("text", "A slow helix and a long nose, by lathe.")];
    let preview = [&[("do", "preview")], &other[..]].concat();
    let seen = club.post("/notes/new", Some(author), &preview).await.body;
    assert!(!seen.contains("Like an earlier note"), "{seen}");
}

#[tokio::test]
async fn the_last_decisions_are_listed_for_those_who_decide() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, inspector, reader, .. } = &scene;
    let note = scene.send_in("A plain note").await;
    club.decide(moderator, note, ("decline", "We have it.")).await;
    let boiler = club.send_in(author, &[("title", "Boiler bush"), ("text", "LG2")]).await;
    club.decide(inspector, boiler, ("pass", "")).await;
    let asked = scene.send_in("Asked").await;
    club.decide(moderator, asked, ("change", "Which oil?")).await;
    let secret = [("do", "draft"), ("title", "Only on the desk"), ("text", "Words")];
    club.post(&format!("/notes/{asked}/edit"), Some(author), &secret).await;
    let mended = club.send_in(author, &SHOWN).await;
    let version = club.version(mended, "waiting").await.to_string();
    let fields = [&NEXT[..], &[("version", version.as_str())]].concat();
    club.post(&format!("/queue/{mended}/mend"), Some(moderator), &fields).await;
    // What its author takes off their desk, and why, is nobody else's to read.
    let why = [("why", "Only the author knows.")];
    club.post(&format!("/notes/{asked}/withdraw"), Some(author), &why).await;
    let page = club.get("/queue/decided", Some(moderator)).await.body;
    assert!(!page.contains("Only the author knows."), "{page}");
    for words in [
        "A plain note",
        "Bert Stone declined it. We have it.",
        "Boiler bush",
        "Dora Vale showed it.",
        "Bert Stone showed it with a small fix.",
        "Asked",
        "Bert Stone asked for a change. Which oil?",
        "UTC",
    ] {
        assert!(page.contains(words), "{words}: {page}");
    }
    assert!(!page.contains("Only on the desk"), "{page}");
    // An inspector reads of what is an inspector's.
    let page = club.get("/queue/decided", Some(inspector)).await.body;
    assert!(page.contains("Boiler bush") && !page.contains("plain note"), "{page}");
    assert!(!page.contains("We have it."), "{page}");
    assert_eq!(club.get("/queue/decided", Some(reader)).await.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn the_last_decisions_stand_twenty_on_a_page() {
    let scene = Scene::open().await;
    let Scene { club, moderator, .. } = &scene;
    let note = scene.send_in("Stud").await;
    for number in 1..=45 {
        let act = format!(
            "INSERT INTO act (at, member_name, what, subject, detail)
             VALUES (1, 'Bert Stone', 'note-declined', 'note/{note}', 'Reason {number}.')"
        );
        scene.execute(act.leak()).await;
    }
    let page = async |query: &str| {
        let page = club.get(&format!("/queue/decided{query}"), Some(moderator)).await.body;
        let reasons: Vec<i64> = page
            .split("declined it. Reason ")
            .skip(1)
            .map(|rest| rest.split('.').next().unwrap().parse().unwrap())
            .collect();
        let links = ["Newer decisions", "Older decisions"].map(|words| {
            let (before, _) = page.split_once(&format!("\">{words}</a>"))?;
            Some(before.rsplit_once("href=\"").unwrap().1.to_owned())
        });
        (reasons, links)
    };
    let at = |from: &str| Some(format!("/queue/decided{from}"));
    let newest = (45, 26, [None, at("?from=20")]);
    for (query, (first, last, links)) in [
        ("", newest.clone()),
        ("?from=20", (25, 6, [at(""), at("?from=40")])),
        ("?from=40", (5, 1, [at("?from=20"), None])),
        ("?from=4000", newest.clone()),
        ("?from=x", newest),
    ] {
        let found = page(query).await;
        assert_eq!(found, ((last..=first).rev().collect(), links), "{query}");
    }
}

#[tokio::test]
async fn a_note_on_pressure_says_that_an_inspector_read_it_and_when() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, inspector, .. } = &scene;
    let note = club.send_in(author, &[("title", "Boiler bush"), ("text", "LG2")]).await;
    let page = async |note: i64| club.get(&format!("/notes/{note}"), Some(author)).await.body;
    let words = "An inspector of the club read it, ";
    assert!(!page(note).await.contains(words));
    club.decide(inspector, note, ("pass", "")).await;
    let shown = club.get(&format!("/notes/{note}"), None).await.body;
    let day = shown.split_once(words).unwrap_or_else(|| panic!("{shown}")).1;
    assert!(day.starts_with("15 January 2027."), "{day}");
    // Of a usual note nothing is said; once an inspector's correction speaks of pressure, it is.
    let usual = club.shown(author, moderator, &SHOWN).await;
    assert!(!page(usual).await.contains(words));
    let version = club.version(usual, "shown").await.to_string();
    let said = [("version", version.as_str()), ("correction", "Not for a boiler.")];
    let answer = club.post(&format!("/notes/{usual}/correct"), Some(inspector), &said).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert!(page(usual).await.contains(words));
}

#[tokio::test]
async fn what_became_of_a_note_is_told_apart() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let why = [("why", "It is wrong.")];
    let mut notes = Vec::new();
    for what in ["change", "decline"] {
        let note = scene.send_in(what).await;
        club.decide(moderator, note, (what, "Which oil?")).await;
        notes.push(note);
    }
    for by in [author, moderator] {
        let note = club.shown(author, moderator, &SHOWN).await;
        club.post(&format!("/notes/{note}/withdraw"), Some(by), &why).await;
        notes.push(note);
    }
    let mine = club.get("/notes/mine", Some(author)).await.body;
    let told = [
        "A change is asked for: Which oil?",
        "Declined: Which oil?",
        "You took it back: It is wrong.",
        "Withdrawn: It is wrong.",
    ];
    for (note, words) in notes.iter().zip(told) {
        let (_, item) = mine.split_once(&format!("<li id=\"note-{note}\">")).unwrap();
        let (item, _) = item.split_once("</li>").unwrap();
        let found: Vec<_> = told.iter().filter(|told| item.contains(**told)).collect();
        assert_eq!(found, [&words], "{item}");
    }
    for (note, words) in notes[..2].iter().zip(told) {
        let page = club.get(&format!("/notes/{note}"), Some(author)).await.body;
        assert!(page.contains(words), "{page}");
        let history = club.get(&format!("/notes/{note}/history"), Some(author)).await.body;
        assert!(history.contains("<p class=\"below\">Nothing"), "{history}");
    }
}

#[tokio::test]
async fn a_mended_warning_stays_a_warning() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let warns = [&SHOWN[..], &[("warning", "yes")]].concat();
    let note = club.send_in(author, &warns).await;
    let version = club.version(note, "waiting").await.to_string();
    let fields = [&NEXT[..], &[("version", version.as_str())]].concat();
    let answer = club.post(&format!("/queue/{note}/mend"), Some(moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let warning = "SELECT count(*) FROM note_version WHERE is_warning = 1 AND state = 'shown'";
    assert_eq!(club.count(warning).await, 1);
}

#[tokio::test]
async fn a_small_fix_is_small_and_readers_see_whose_it_is() {
    let scene = Scene::open().await;
    let note = scene.club.send_in(&scene.author, &SHOWN).await;
    let path = format!("/queue/{note}/mend");
    let version = scene.club.version(note, "waiting").await.to_string();
    let read = [("version", version.as_str()), ("last", "0"), ("correction", "0")];
    let other = "Hold the work by hand and leave the key in the chuck, then run the drill as fast as it goes.";
    let large =
        [&[("title", "Quicker so"), ("text", other), ("drill", "2.3 mm")][..], &read].concat();
    let answer = scene.club.post(&path, Some(&scene.moderator), &large).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(answer.body.contains("more than a small fix") && answer.body.contains(other));
    let small = [
        ("title", "Gland nut"),
        ("text", "Turned from LG2, dry, at 400 rpm."),
        ("drill", "2.3 mm"),
    ];
    let small = [&small[..], &read].concat();
    let answer = scene.club.post(&path, Some(&scene.moderator), &small).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let page = scene.club.get(&format!("/notes/{note}"), None).await.body;
    assert!(page.contains("By Ada Penn, with a small fix by Bert Stone, "), "{page}");
}

#[tokio::test]
async fn nothing_is_said_unread_beside_a_note_of_pressure() {
    let scene = Scene::open().await;
    let fields = [("title", "Feed pump"), ("text", "Packed before the boiler is filled.")];
    let note = scene.club.shown(&scene.author, &scene.inspector, &fields).await;
    let verdict = format!("/notes/{note}/verdict");
    let said = [("found", "worked"), ("material", "twice the figure stamped on it")];
    let answer = scene.club.post(&verdict, Some(&scene.reader), &said).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    assert!(answer.body.contains("twice the figure stamped on it"), "what was typed is kept");
    let answer = scene.club.post(&verdict, Some(&scene.reader), &[("found", "worked")]).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let page = scene.club.get(&format!("/notes/{note}"), None).await.body;
    assert!(page.contains("Worked for 1 member.") && !page.contains("twice the figure"), "{page}");
}
