//! U10: what a member typed is not lost by another window, an old form, a moderator or a refusal.

use axum::http::StatusCode;

use super::club::{Club, Person, Right};
use crate::page::filled;
use crate::support::Answer;

const KEY: &str = "0123456789abcdef0123456789abcdef";

/// A club with an author and a moderator.
async fn club() -> (Club, Person, Person) {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    (club, author, moderator)
}

/// A form as a window has it open.
#[derive(Clone)]
struct Window {
    path: String,
    fields: Vec<(String, String)>,
}

impl Window {
    async fn open(club: &Club, by: &Person, path: &str) -> Self {
        let answer = club.get(path, Some(by)).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}: {}", answer.body);
        Self::of(path, &answer)
    }

    fn of(path: &str, answer: &Answer) -> Self {
        let mut fields = filled(&answer.body);
        // The field of the search that stands on every page is no part of it.
        fields.retain(|(name, _)| name != "q");
        Self { path: path.to_owned(), fields }
    }

    /// The same with other words typed.
    fn typed(&self, text: &str) -> Self {
        let mut window = self.clone();
        for (name, value) in &mut window.fields {
            if name == "text" {
                text.clone_into(value);
            }
        }
        window
    }

    fn held(&self, name: &str) -> &str {
        self.fields.iter().find(|(held, _)| held == name).map_or("", |(_, value)| value.as_str())
    }

    async fn send(&self, club: &Club, by: Option<&Person>, what: &str) -> Answer {
        let fields = self.fields.iter().map(|(name, value)| (name.as_str(), value.as_str()));
        let all: Vec<(&str, &str)> = fields.chain([("do", what)]).collect();
        club.post(&self.path, by, &all).await
    }
}

/// The texts of a note, oldest first, each with its state.
async fn texts(club: &Club, note: i64) -> Vec<(String, String)> {
    let [readers, _] = club.app.database.pools();
    sqlx::query_as("SELECT state, text FROM note_version WHERE note_id = ? ORDER BY id")
        .bind(note)
        .fetch_all(readers)
        .await
        .unwrap()
}

fn told(texts: &[(String, String)]) -> Vec<(&str, &str)> {
    texts.iter().map(|(state, text)| (state.as_str(), text.as_str())).collect()
}

#[tokio::test]
async fn u10_a_second_window_overwrites_nothing_unasked() {
    let (club, author, _) = club().await;
    for what in ["draft", "send"] {
        let note = club.send_in(&author, &[("title", "A"), ("text", "First words")]).await;
        let edit = format!("/notes/{note}/edit");
        let one = Window::open(&club, &author, &edit).await;
        let other = Window::open(&club, &author, &edit).await;
        let answer = one.typed("Words of the one").send(&club, Some(&author), what).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        let late = other.typed("Words of the other").send(&club, Some(&author), what).await;
        assert_eq!(late.status, StatusCode::CONFLICT, "{what}: {}", late.body);
        let stands = if what == "send" { "waiting" } else { "draft" };
        assert_eq!(told(&texts(&club, note).await), [(stands, "Words of the one")], "{what}");
        // Both texts are on the page, and the form holds what was typed.
        let body = &late.body;
        assert!(body.contains("<p>Words of the one</p>"), "{body}");
        assert!(
            body.contains("<del>") && body.contains("<ins>"),
            "what would go, and come: {body}"
        );
        assert!(body.contains("<title>Error: "), "{body}");
        assert!(body.contains(&format!("href=\"{edit}\"")), "a way to what stands: {body}");
        let again = Window::of(&edit, &late);
        assert_eq!(again.held("text"), "Words of the other");
        // There is one button that keeps it, and it does what was asked for.
        let keep = format!("name=\"do\" value=\"{what}\"");
        assert_eq!(body.matches(&keep).count(), 1, "{body}");
        let no = if what == "send" { "draft" } else { "send" };
        assert!(!body.contains(&format!("name=\"do\" value=\"{no}\"")), "{body}");
        let kept = again.send(&club, Some(&author), what).await;
        assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.body);
        assert_eq!(told(&texts(&club, note).await), [(stands, "Words of the other")], "{what}");
    }
}

#[tokio::test]
async fn u10_one_window_is_kept_from_as_often_as_it_likes() {
    let (club, author, _) = club().await;
    let note = club.send_in(&author, &[("title", "A"), ("text", "First words")]).await;
    let edit = format!("/notes/{note}/edit");
    // The answers are lost on the way, and the window stays as it is.
    let window = Window::open(&club, &author, &edit).await;
    for text in ["Second", "Third", "Third", "Fourth"] {
        let answer = window.typed(text).send(&club, Some(&author), "draft").await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{text}: {}", answer.body);
        assert_eq!(told(&texts(&club, note).await), [("draft", text)]);
    }
    // Or they come, and the window shows the form anew.
    let mut window = window;
    for text in ["Fifth", "Sixth"] {
        let answer = window.typed(text).send(&club, Some(&author), "draft").await;
        assert_eq!((answer.status, answer.header("location")), (StatusCode::SEE_OTHER, &*edit));
        window = Window::open(&club, &author, &edit).await;
        assert_eq!(window.held("text"), text);
    }
    for _ in 0..2 {
        let answer = window.typed("Last").send(&club, Some(&author), "send").await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    assert_eq!(told(&texts(&club, note).await), [("waiting", "Last")]);
    assert_eq!(club.count("SELECT count(*) FROM act WHERE what = 'note-sent-in'").await, 2);
}

#[tokio::test]
async fn u10_what_a_moderator_said_meanwhile_is_read_first() {
    let (club, author, moderator) = club().await;
    for (what, reason, shown) in [
        ("change", "Which oil?", "A change is asked for: Which oil?"),
        ("decline", "We have it.", "Declined: We have it."),
    ] {
        let note = club.send_in(&author, &[("title", "A"), ("text", "First words")]).await;
        let edit = format!("/notes/{note}/edit");
        let window = Window::open(&club, &author, &edit).await;
        club.decide(&moderator, note, (what, reason)).await;
        let before = texts(&club, note).await;
        for text in ["First words", "Better words"] {
            let late = window.typed(text).send(&club, Some(&author), "send").await;
            assert_eq!(late.status, StatusCode::CONFLICT, "{what}, {text}: {}", late.body);
            assert!(late.body.contains(shown), "{}", late.body);
            assert_eq!(Window::of(&edit, &late).held("text"), text);
            assert_eq!(texts(&club, note).await, before, "{what}, {text}");
        }
    }
    // That it was shown meanwhile takes nothing from anybody.
    let note = club.send_in(&author, &[("title", "A"), ("text", "First words")]).await;
    let window = Window::open(&club, &author, &format!("/notes/{note}/edit")).await;
    club.decide(&moderator, note, ("pass", "")).await;
    let answer = window.typed("Better words").send(&club, Some(&author), "send").await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let now = texts(&club, note).await;
    assert_eq!(told(&now), [("shown", "First words"), ("waiting", "Better words")]);
}

#[tokio::test]
async fn u10_an_old_first_form_deletes_no_draft() {
    let (club, author, moderator) = club().await;
    let first = [("form_key", KEY), ("title", "A"), ("text", "First words"), ("do", "send")];
    let note = club.send_in(&author, &first).await;
    club.decide(&moderator, note, ("pass", "")).await;
    let further = [("title", "A"), ("text", "Further words"), ("do", "draft")];
    club.post(&format!("/notes/{note}/edit"), Some(&author), &further).await;
    let before = texts(&club, note).await;
    assert_eq!(told(&before), [("shown", "First words"), ("draft", "Further words")]);
    for what in ["send", "draft"] {
        let fields = [("form_key", KEY), ("title", "A"), ("text", "First words"), ("do", what)];
        let answer = club.post("/notes/new", Some(&author), &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        assert_eq!(texts(&club, note).await, before, "{what}");
    }
    // With other words it makes another note; that one's draft stands as fast.
    let other = [("form_key", KEY), ("title", "A"), ("text", "Other words"), ("do", "send")];
    let beside = club.send_in(&author, &other).await;
    let further = [("title", "A"), ("text", "Further still"), ("do", "draft")];
    club.post(&format!("/notes/{beside}/edit"), Some(&author), &further).await;
    let answer = club.post("/notes/new", Some(&author), &other).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let now = texts(&club, beside).await;
    assert_eq!(told(&now), [("draft", "Further still")]);
    assert_eq!(club.count("SELECT count(*) FROM note").await, 3, "the words are kept");
}

#[tokio::test]
async fn u10_a_withdrawn_notes_words_stay_its_authors() {
    let (club, author, moderator) = club().await;
    for further in ["draft", "send"] {
        let note = club.shown(&author, &moderator, &[("title", "A"), ("text", "Shown")]).await;
        let fields = [("title", "B & c"), ("text", "Further <words>"), ("do", further)];
        club.post(&format!("/notes/{note}/edit"), Some(&author), &fields).await;
        let why = [("why", "It is wrong.")];
        let path = format!("/notes/{note}/withdraw");
        assert_eq!(club.post(&path, Some(&moderator), &why).await.status, StatusCode::SEE_OTHER);
        let kept = texts(&club, note).await;
        assert_eq!(told(&kept), [("shown", "Shown"), ("draft", "Further <words>")], "{further}");
        // It waits for nobody.
        let queue = club.get("/queue", Some(&moderator)).await.body;
        assert!(queue.contains("Nothing waits."), "{queue}");
        let mine = club.get("/notes/mine", Some(&author)).await.body;
        assert!(mine.contains("Withdrawn: It is wrong."), "{mine}");
        assert!(mine.contains("Further &#60;words&#62;"), "{mine}");
        let own = club.get("/me/data.json", Some(&author)).await.body;
        assert!(own.contains("Further <words>"), "{own}");
        // Nobody else reads it.
        for reader in [None, Some(&moderator)] {
            let page = club.get(&format!("/notes/{note}"), reader).await.body;
            assert!(!page.contains("Further"), "{page}");
        }
        // A new note begins from it.
        let begin = format!("/notes/new?from={note}");
        assert!(mine.contains(&format!("href=\"{begin}\"")), "{mine}");
        let window = Window::open(&club, &author, &begin).await;
        assert_eq!((window.held("title"), window.held("text")), ("B & c", "Further <words>"));
        let window = Window { path: "/notes/new".to_owned(), ..window };
        let answer = window.send(&club, Some(&author), "draft").await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        assert_ne!(answer.header("location"), format!("/notes/{note}/edit"));
        assert_eq!(club.get(&begin, Some(&moderator)).await.status, StatusCode::NOT_FOUND);
    }
}

#[tokio::test]
async fn u10_a_form_of_a_withdrawn_note_can_become_a_note_of_its_own() {
    let (club, author, moderator) = club().await;
    let note = club.shown(&author, &moderator, &[("title", "A"), ("text", "Shown")]).await;
    let edit = format!("/notes/{note}/edit");
    let window = Window::open(&club, &author, &edit).await;
    club.post(&format!("/notes/{note}/withdraw"), Some(&moderator), &[("why", "Wrong.")]).await;
    let late = window.typed("Better").send(&club, Some(&author), "send").await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.body);
    assert!(late.body.contains("action=\"/notes/new\""), "{}", late.body);
    let again = Window::of("/notes/new", &late);
    assert_eq!(again.held("text"), "Better");
    for _ in 0..2 {
        let answer = again.send(&club, Some(&author), "send").await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    assert_eq!(club.count("SELECT count(*) FROM note").await, 2);
}

#[tokio::test]
async fn u10_declined_words_are_sent_in_again_on_purpose_alone() {
    let (club, author, moderator) = club().await;
    let first = [("form_key", KEY), ("title", "A"), ("text", "First words"), ("do", "send")];
    let note = club.send_in(&author, &first).await;
    let edit = format!("/notes/{note}/edit");
    club.decide(&moderator, note, ("decline", "We have it.")).await;
    // The first form once more: nothing is queued, and it is said.
    for _ in 0..2 {
        let answer = club.post("/notes/new", Some(&author), &first).await;
        assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
        assert!(answer.body.contains("Declined: We have it."), "{}", answer.body);
        assert!(answer.body.contains(&format!("action=\"{edit}\"")), "{}", answer.body);
        assert_eq!(Window::of(&edit, &answer).held("text"), "First words");
        assert_eq!(told(&texts(&club, note).await), [("declined", "First words")]);
    }
    // From a form that says so, it is meant.
    let window = Window::open(&club, &author, &edit).await;
    for _ in 0..2 {
        let answer = window.send(&club, Some(&author), "send").await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        let now = texts(&club, note).await;
        assert_eq!(told(&now), [("declined", "First words"), ("waiting", "First words")]);
    }
    // It is declined again, and the old window's double click comes late: not queued a third time.
    club.decide(&moderator, note, ("decline", "Still.")).await;
    let answer = window.send(&club, Some(&author), "send").await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
    let again = Window::of(&edit, &answer);
    assert_eq!(again.send(&club, Some(&author), "send").await.status, StatusCode::SEE_OTHER);
    assert_eq!(club.count("SELECT count(*) FROM note_version WHERE state = 'waiting'").await, 1);
}

#[tokio::test]
async fn u10_a_signed_out_window_still_knows_what_it_was_made_from() {
    let (club, author, _) = club().await;
    let note = club.send_in(&author, &[("title", "A"), ("text", "First words")]).await;
    let edit = format!("/notes/{note}/edit");
    let window = Window::open(&club, &author, &edit).await.typed("Typed meanwhile");
    let out = window.send(&club, None, "draft").await;
    assert_eq!(out.status, StatusCode::UNAUTHORIZED, "{}", out.body);
    let held = Window::of(&edit, &out);
    assert_eq!(held.held("text"), "Typed meanwhile");
    let other = [("title", "A"), ("text", "Of another window"), ("do", "draft")];
    club.post(&edit, Some(&author), &other).await;
    // The button of that page does what was asked for.
    let fields: Vec<_> = held.fields.iter().map(|(n, v)| (n.as_str(), v.as_str())).collect();
    let late = club.post(&edit, Some(&author), &fields).await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.body);
    let again = Window::of(&edit, &late);
    assert_eq!(again.send(&club, Some(&author), "draft").await.status, StatusCode::SEE_OTHER);
    assert_eq!(told(&texts(&club, note).await), [("draft", "Typed meanwhile")]);
    // Signed in again as another: it is theirs as a note of its own.
    let other = club.join("Cyril Moss", Right::None).await;
    let answer = club.post(&edit, Some(&other), &fields).await;
    assert_eq!(answer.status, StatusCode::NOT_FOUND);
    assert_eq!(Window::of("/notes/new", &answer).held("text"), "Typed meanwhile");
}

#[tokio::test]
async fn u10_too_much_at_once_gives_the_text_of_a_change_back() {
    let (club, author, _) = club().await;
    let note = club.send_in(&author, &[("title", "A"), ("text", "First words")]).await;
    let club = club.limited().await;
    let edit = format!("/notes/{note}/edit");
    let window = Window::open(&club, &author, &edit).await;
    let mut refused = None;
    for number in 0..100 {
        let typed = window.typed(&format!("Words {number}"));
        let answer = typed.send(&club, Some(&author), "draft").await;
        if answer.status == StatusCode::TOO_MANY_REQUESTS {
            refused = Some((number, answer));
            break;
        }
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    let (number, answer) = refused.expect("a limit");
    let held = Window::of(&edit, &answer);
    assert_eq!(held.held("text"), format!("Words {number}"));
    assert!(!answer.header("retry-after").is_empty());
    // What it was made from is kept with it: sent again it is no other window.
    assert_eq!(held.held("made_from"), window.held("made_from"));
    assert_eq!(held.held("form_key"), window.held("form_key"));
}

#[tokio::test]
async fn u10_ten_times_too_long_is_given_back_whole() {
    let (club, author, _) = club().await;
    let long = "Word ".repeat(50_000);
    for path in ["/notes/new", "/notes/1/edit"] {
        let fields = [("title", "A"), ("text", long.as_str()), ("do", "send")];
        if path == "/notes/1/edit" {
            club.send_in(&author, &[("title", "A"), ("text", "First words")]).await;
        }
        let answer = club.post(path, Some(&author), &fields).await;
        assert_eq!(answer.status.as_u16(), 422, "{path}");
        assert!(answer.body.contains("characters; 20000 are taken"), "{path}");
        assert_eq!(Window::of(path, &answer).held("text"), long, "{path}");
    }
}
