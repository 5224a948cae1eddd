//! What is shown without waiting passes the inspector's gate too: corrections, and the words of verdicts.

use axum::http::StatusCode;

use super::club::{Club, Right};
use crate::process::HANG;

const NOTE: [(&str, &str); 2] = [("title", "Bushes"), ("text", "Turned from LG2, dry.")];
/// As a reader sees them, words of pressure.
const HIDDEN: [&str; 4] = [
    "Good for a boi\u{ad}ler at 120 psi",
    "Made for a b\u{43e}iler",
    "Ｓｔｅａｍ fitting",
    "For safety valves",
];

#[tokio::test]
async fn a_correction_that_speaks_of_pressure_is_the_inspectors() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let (page, address) = (format!("/notes/{note}"), format!("/notes/{note}/correct"));
    let version = club.version(note, "shown").await.to_string();
    let marked = ["A bo**il**er bush", "A b&shy;oiler bush", "A &#98;oiler bush"];
    for said in HIDDEN.into_iter().chain(marked) {
        let fields = [("version", version.as_str()), ("correction", said)];
        let answer = club.post(&address, Some(&moderator), &fields).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{said}: {}", answer.body);
        let kept = said.replace('&', "&#38;");
        assert!(answer.body.contains(&kept), "{kept}: {}", answer.body);
        assert!(!club.get(&page, None).await.body.contains("Correction"), "{said}");
    }
    // An inspector may, and from then on the note is one on pressure.
    let fields = [("version", version.as_str()), ("correction", "Not for a boiler.")];
    let answer = club.post(&address, Some(&inspector), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let shown = club.get(&page, None).await.body;
    assert!(shown.contains("Not for a boiler.") && shown.contains("inspector decide"), "{shown}");
    let fields = [("version", version.as_str()), ("correction", "Mild steel will do.")];
    let answer = club.post(&address, Some(&moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    // What has nothing to do with it stays the moderator's.
    let other = club.shown(&author, &moderator, &NOTE).await;
    let version = club.version(other, "shown").await.to_string();
    let fields = [("version", version.as_str()), ("correction", "Slower.")];
    let address = format!("/notes/{other}/correct");
    assert_eq!(club.post(&address, Some(&inspector), &fields).await.status, StatusCode::FORBIDDEN);
    let answer = club.post(&address, Some(&moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
}

#[tokio::test]
async fn a_verdict_says_nothing_of_pressure_that_no_inspector_read() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let (page, address) = (format!("/notes/{note}"), format!("/notes/{note}/verdict"));
    for said in HIDDEN {
        for field in ["material", "size"] {
            let fields = [("found", "worked"), (field, said)];
            for by in [&other, &moderator] {
                let answer = club.post(&address, Some(by), &fields).await;
                assert_eq!(answer.status.as_u16(), 422, "{said}: {}", answer.body);
                assert!(answer.body.contains(said), "{said}: {}", answer.body);
                assert!(answer.body.contains(&format!("id=\"{field}-error\"")), "{said}");
            }
            assert!(!club.get(&page, None).await.body.contains(said), "{said}");
        }
    }
    // Nor do two fields that say it only together.
    let halves = [("found", "worked"), ("material", "For safety"), ("size", "valves")];
    let answer = club.post(&address, Some(&other), &halves).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", answer.body);
    assert!(answer.body.contains("For safety"), "what was typed: {}", answer.body);
    assert!(!club.get(&page, None).await.body.contains("For safety"));
    let fields = [("found", "worked"), ("material", "steam bronze")];
    let answer = club.post(&address, Some(&inspector), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    // What the reference knows nothing of stands before whoever said it alone.
    assert!(club.get(&page, Some(&inspector)).await.body.contains("Worked: steam bronze"));
    assert!(!club.get(&page, None).await.body.contains("steam bronze"));
}

#[tokio::test]
async fn a_reason_of_pressure_is_not_shown_to_readers() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let marked = ["A bo**il**er bush", "A b&shy;oiler bush", "A &#98;oiler bush"];
    for said in HIDDEN.into_iter().chain(marked) {
        let note = club.shown(&author, &moderator, &NOTE).await;
        let page = format!("/notes/{note}");
        let withdraw = format!("{page}/withdraw");
        let answer = club.post(&withdraw, Some(&moderator), &[("why", said)]).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "it is taken: {}", answer.body);
        let kept = said.replace('&', "&#38;");
        let gone = club.get(&page, None).await;
        assert_eq!(gone.status, StatusCode::GONE);
        assert!(!gone.body.contains(&kept), "{said}: {}", gone.body);
        assert!(gone.body.contains("nobody has checked it"), "{}", gone.body);
        // Its author and whoever moderates read what was typed.
        for by in [&author, &moderator] {
            let seen = club.get(&page, Some(by)).await.body;
            assert!(seen.contains(&format!("Withdrawn: {kept}")), "{said}: {seen}");
        }
    }
    // Any other reason of theirs is for everybody.
    let note = club.shown(&author, &moderator, &NOTE).await;
    let withdraw = format!("/notes/{note}/withdraw");
    club.post(&withdraw, Some(&moderator), &[("why", "It was another metal.")]).await;
    let gone = club.get(&format!("/notes/{note}"), None).await.body;
    assert!(gone.contains("Why: It was another metal."), "{gone}");
    assert!(!gone.contains("speaks of"), "{gone}");
}

#[tokio::test]
async fn a_verdict_form_from_before_the_field_had_its_name_keeps_its_material() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let address = format!("/notes/{note}/verdict");
    for blank in ["", " "] {
        let fields = [("found", "worked"), ("material", blank), ("metal", "leaded gunmetal")];
        let answer = club.post(&address, Some(&other), &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        let page = club.get(&format!("/notes/{note}"), None).await.body;
        assert!(page.contains("Worked: leaded gunmetal"), "{page}");
    }
}

#[tokio::test]
async fn a_verdict_is_taken_back_or_away() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::Moderator).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let third = club.join("Eva Lund", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let (page, address) = (format!("/notes/{note}"), format!("/notes/{note}/verdict"));
    let said = [("found", "worked"), ("material", "Said in haste")];
    let counted = "SELECT count(*) FROM verdict";
    club.post(&address, Some(&other), &said).await;
    assert_eq!(club.count(counted).await, 1);
    assert!(club.get(&page, Some(&other)).await.body.contains("Take it back"));
    assert!(!club.get(&page, Some(&third)).await.body.contains("Take it"));

    // Its own member.
    let answer = club.post(&address, Some(&other), &[("do", "away")]).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert_eq!(club.count(counted).await, 0);
    assert_eq!(club.count("SELECT count(*) FROM note WHERE confirmed_at IS NOT NULL").await, 0);
    assert!(!club.get("/notes?confirmed=yes", None).await.body.contains(&page));

    // A moderator, but neither another member nor the note's own author.
    club.post(&address, Some(&other), &said).await;
    let of = other.id.to_string();
    let away = [("do", "away"), ("of", of.as_str())];
    for by in [&third, &author] {
        let answer = club.post(&address, Some(by), &away).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    }
    assert!(!club.get(&page, Some(&author)).await.body.contains("Take it away"));
    let offered = club.get(&page, Some(&moderator)).await.body;
    assert!(offered.contains(&format!("name=\"of\" value=\"{of}\"")), "{offered}");
    let answer = club.post(&address, Some(&moderator), &away).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert!(!club.get(&page, None).await.body.contains("Said in haste"));
    let recorded = "SELECT count(*) FROM act WHERE what IN
        ('note-verdict-taken-back', 'note-verdict-taken-away')";
    assert_eq!(club.count(recorded).await, 2);
}

#[tokio::test]
async fn what_a_leaver_found_confirms_nothing_any_more() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let secretary = club.join("Una Oakes", Right::Secretary).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &secretary, &NOTE).await;
    let listed = format!("href=\"/notes/{note}\"");
    club.post(&format!("/notes/{note}/verdict"), Some(&other), &[("found", "worked")]).await;
    assert!(club.get("/notes?confirmed=yes", None).await.body.contains(&listed));
    let remove = [("do", "remove"), ("notes", "keep")];
    let answer = club.post(&format!("/people/{}", other.id), Some(&secretary), &remove).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert!(!club.get("/notes?confirmed=yes", None).await.body.contains(&listed));
    assert_eq!(club.count("SELECT count(*) FROM note WHERE confirmed_at IS NOT NULL").await, 0);
}

#[tokio::test]
async fn what_follows_an_inspectors_correction_is_the_inspectors() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let version = club.version(note, "shown").await.to_string();
    let warned = [("version", version.as_str()), ("correction", "Never in a boiler.")];
    club.post(&format!("/notes/{note}/correct"), Some(&inspector), &warned).await;
    let comma = [("title", "Bushes"), ("text", "Turned from LG2, and dry."), ("do", "send")];
    club.post(&format!("/notes/{note}/edit"), Some(&author), &comma).await;
    let answer = club.decide(&moderator, note, ("pass", "")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    assert!(club.get(&format!("/notes/{note}"), None).await.body.contains("Never in a boiler."));
    let answer = club.decide(&inspector, note, ("pass", "")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
}

#[tokio::test]
async fn a_report_that_came_after_the_queue_was_read_is_not_settled() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let report = format!("/notes/{note}/report");
    for (name, danger) in [("Cyril Moss", "It grabs."), ("Eva Lund", "I lost a fingertip.")] {
        let by = club.join(name, Right::None).await;
        club.post(&report, Some(&by), &[("danger", danger)]).await;
    }
    let version = club.version(note, "shown").await.to_string();
    for last in [&[("last", "1")][..], &[]] {
        let settle = [&[("version", version.as_str()), ("do", "settle")], last].concat();
        let answer = club.post(&format!("/queue/{note}"), Some(&moderator), &settle).await;
        assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
        assert!(answer.body.contains("I lost a fingertip."), "{}", answer.body);
        assert!(answer.body.contains("name=\"last-1\" value=\"2\""), "{}", answer.body);
    }
    assert_eq!(club.get(&format!("/notes/{note}"), None).await.status, StatusCode::NOT_FOUND);
    let answer = club.decide(&moderator, note, ("settle", "")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
}

#[tokio::test]
async fn what_a_moderator_may_not_show_stands_behind_what_they_may() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    for number in 0..25 {
        let title = format!("Boiler bush {number}");
        club.send_in(&author, &[("title", &title), ("text", "In LG2.")]).await;
    }
    club.send_in(&author, &[("title", "A plain note"), ("text", "It rang.")]).await;
    let queue = club.get("/queue", Some(&moderator)).await.body;
    let (plain, boiler) = (queue.find("A plain note").unwrap(), queue.find("Boiler bush").unwrap());
    assert!(plain < boiler, "{queue}");
}

#[tokio::test]
async fn a_change_goes_on_to_its_end_whoever_hangs_up() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let fields = [("title", "Bushes"), ("text", "It rang."), ("on", "gunmetal")];
    let note = club.shown(&author, &moderator, &fields).await;
    assert!(club.get("/materials/gunmetal", None).await.body.contains("It rang."));
    let [_, writer] = club.app.database.pools();
    let held = writer.acquire().await.unwrap();
    let (address, why) = (format!("/notes/{note}/withdraw"), [("why", "Another metal.")]);
    {
        let asked = std::pin::pin!(club.post(&address, Some(&author), &why));
        let hung_up = tokio::time::timeout(std::time::Duration::from_millis(300), asked).await;
        assert!(hung_up.is_err(), "it waits for the database");
    }
    drop(held);
    let (path, pause) = (format!("/notes/{note}"), std::time::Duration::from_millis(10));
    let since = std::time::Instant::now();
    while club.get(&path, None).await.status != StatusCode::GONE {
        assert!(since.elapsed() < HANG, "the sender's going undid it");
        tokio::time::sleep(pause).await;
    }
    while club.get("/materials/gunmetal", None).await.body.contains("It rang.") {
        assert!(since.elapsed() < HANG, "a page still shows what was withdrawn");
        tokio::time::sleep(pause).await;
    }
}

#[tokio::test]
async fn a_form_that_comes_back_is_open() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let open = "<details class=\"no-print\" open>";
    assert!(!club.get(&format!("/notes/{note}"), Some(&moderator)).await.body.contains(open));
    for (act, by, field) in [
        ("report", &other, "danger"),
        ("correct", &moderator, "correction"),
        ("withdraw", &author, "why"),
    ] {
        let answer = club.post(&format!("/notes/{note}/{act}"), Some(by), &[(field, " ")]).await;
        assert_eq!(answer.status.as_u16(), 422, "{act}: {}", answer.body);
        let (_, behind) = answer.body.split_once(open).unwrap();
        let (inside, after) = behind.split_once("</details>").unwrap();
        assert!(inside.contains(&format!("id=\"{field}-error\"")), "{act}: {inside}");
        assert!(!after.contains(open), "{act}: {after}");
        assert!(answer.body.contains("<title>Error: "), "{act}: {}", answer.body);
    }
}

#[tokio::test]
async fn a_queue_that_wants_a_reason_leads_to_where_it_is_typed() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let note = club.send_in(&author, &NOTE).await;
    let answer = club.decide(&moderator, note, ("decline", " ")).await;
    assert_eq!(answer.status.as_u16(), 422, "{}", answer.body);
    let (link, place) = (format!("href=\"#reason-{note}\""), format!("id=\"reason-{note}\""));
    assert!(answer.body.contains(&link) && answer.body.contains(&place), "{}", answer.body);
    // It was decided meanwhile and is not in the queue any more.
    let version = club.version(note, "waiting").await.to_string();
    club.decide(&moderator, note, ("pass", "")).await;
    let late = [("version", version.as_str()), ("do", "decline"), ("reason", "Too late")];
    let answer = club.post(&format!("/queue/{note}"), Some(&moderator), &late).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
    assert!(answer.body.contains(&format!("href=\"/notes/{note}\"")), "{}", answer.body);
}

#[tokio::test]
async fn what_was_typed_comes_back_from_every_small_form() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let waiting = club.send_in(&author, &NOTE).await;
    let version = club.version(note, "shown").await.to_string();
    let words = "Kept & \"whole\" words";
    let escaped = "Kept &#38; &#34;whole&#34; words";
    let forms = [
        (format!("/notes/{note}/report"), &other, vec![("danger", words)]),
        (format!("/notes/{note}/withdraw"), &author, vec![("why", words)]),
        (format!("/notes/{note}/verdict"), &other, vec![("found", "did-not"), ("size", words)]),
        (
            format!("/notes/{note}/correct"),
            &moderator,
            vec![("version", version.as_str()), ("correction", words)],
        ),
        (
            format!("/queue/{waiting}"),
            &moderator,
            vec![("version", "9"), ("do", "decline"), ("reason", words)],
        ),
    ];
    // The session has ended meanwhile.
    for (address, _, fields) in &forms {
        let answer = club.post(address, None, fields).await;
        assert_eq!(answer.status, StatusCode::UNAUTHORIZED, "{address}: {}", answer.body);
        assert!(answer.body.contains(escaped), "{address}: {}", answer.body);
        assert!(answer.body.contains(&format!("action=\"{address}\"")), "{address}");
        // Beside this page: what was typed would go with it.
        assert!(answer.body.contains("href=\"/sign-in\" target=\"_blank\""), "{address}");
        for (name, _) in fields {
            assert!(answer.body.contains(&format!("name=\"{name}\"")), "{address}: {name}");
        }
        assert!(answer.header("cache-control").contains("no-store"), "{address}");
    }
    // Longer than the form takes: its end, which may be the warning, is not cut off.
    let long = format!("{}and never under power", "Word ".repeat(420));
    for (address, name) in [("report", "danger"), ("correct", "correction")] {
        let address = format!("/notes/{note}/{address}");
        let answer = club.post(&address, None, &[(name, &long)]).await;
        assert!(answer.body.contains("and never under power"), "{address}: {}", answer.body);
    }
    // With nothing typed there is nothing to give back.
    let nothing = club.post(&format!("/notes/{note}/report"), None, &[("danger", " ")]).await;
    assert_eq!(nothing.status, StatusCode::SEE_OTHER);

    // The database is busy: another program writes.
    let [_, writer] = club.app.database.pools();
    let held = writer.acquire().await.unwrap();
    for (address, by, fields) in &forms {
        let answer = club.post(address, Some(by), fields).await;
        assert_eq!(answer.status.as_u16(), 503, "{address}: {}", answer.body);
        assert!(answer.body.contains(escaped), "{address}: {}", answer.body);
    }
    drop(held);

    // The note was withdrawn meanwhile.
    club.post(&format!("/notes/{note}/withdraw"), Some(&author), &[("why", "Wrong.")]).await;
    for (address, by, fields) in forms.iter().take(4).filter(|(_, by, _)| by.id != author.id) {
        let answer = club.post(address, Some(by), fields).await;
        assert_eq!(answer.status, StatusCode::CONFLICT, "{address}: {}", answer.body);
        assert!(answer.body.contains(escaped), "{address}: {}", answer.body);
    }
}

/// The buttons of a page whose form goes to such an address, without those that lie back.
fn filled_buttons(body: &str, action: &str) -> Vec<String> {
    let forms = body.split("<form ").skip(1).filter_map(|form| form.split("</form>").next());
    let forms = forms.filter(|form| form.starts_with(&format!("action=\"{action}")));
    let buttons = forms.flat_map(|form| form.split("<button").skip(1));
    let buttons = buttons.map(|button| button.split("</button>").next().unwrap_or_default());
    buttons.filter(|button| !button.contains("class=\"plain\"")).map(str::to_owned).collect()
}

#[tokio::test]
async fn no_button_invites_where_harm_is_weighed() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let secretary = club.join("Una Oakes", Right::Secretary).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let page = format!("/notes/{note}");
    let seen = club.get(&page, Some(&moderator)).await.body;
    let theirs = club.get(&format!("/people/{}", other.id), Some(&secretary)).await.body;
    let own = club.get("/me", Some(&other)).await.body;
    let leave = club.get("/me/leave", Some(&other)).await.body;
    club.post(&format!("{page}/report"), Some(&other), &[("danger", "The wall.")]).await;
    club.send_in(&author, &NOTE).await;
    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert!(queue.contains("show it again"), "{queue}");
    for (body, actions) in [
        (&queue, vec!["/queue".to_owned()]),
        (&seen, ["report", "withdraw", "correct"].map(|act| format!("{page}/{act}")).into()),
        (&theirs, vec![format!("/people/{}", other.id)]),
        (&own, vec!["/sign-out".to_owned()]),
        (&leave, vec!["/me/leave".to_owned()]),
    ] {
        for action in actions {
            assert!(body.contains(&format!("action=\"{action}")), "{action}: {body}");
            let filled = filled_buttons(body, &action);
            assert!(filled.is_empty(), "{action}: {filled:?}");
        }
    }
}

#[tokio::test]
async fn a_note_that_a_report_hides_is_headed_by_that() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let page = format!("/notes/{note}");
    club.post(&format!("{page}/report"), Some(&other), &[("danger", "The wall.")]).await;
    let third = club.join("Dora Vale", Right::None).await;
    for reader in [None, Some(&third)] {
        let answer = club.get(&page, reader).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND);
        assert!(answer.body.contains("<h1>Hidden for now</h1>"), "{}", answer.body);
        assert!(!answer.body.contains("Nothing here"), "{}", answer.body);
    }
}
