//! What whoever decides reads beside a note, and what they and its author are told of the decision.

use axum::http::StatusCode;
use holewright_server::rules::notes::ready::{READY, Sends};

use super::scene::Scene;

#[tokio::test]
async fn the_dangers_of_a_material_stand_beside_a_note_on_it() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let fields = [
        ("title", "Magnesium, drill dry and fast"),
        ("text", "No oil, and let the swarf pile up."),
        ("material", "magnesium alloy"),
    ];
    let danger = "Danger, Magnesium alloy:";
    let words = "burning swarf is covered, never soaked";
    let preview = [&[("do", "preview")], &fields[..]].concat();
    let mut pages = vec![club.post("/notes/new", Some(author), &preview).await.body];
    let note = club.send_in(author, &fields).await;
    pages.push(scene.queue("").await);
    club.decide(moderator, note, ("pass", "")).await;
    pages.push(club.get(&format!("/notes/{note}"), None).await.body);
    pages.push(club.get("/notes/newsletter/2027-01", None).await.body);
    for page in pages {
        assert!(page.contains(danger) && page.contains(words), "{page}");
        assert!(page.contains("href=\"/materials/magnesium-alloy\">All its dangers"), "{page}");
        // One line before the note's own figures and text, which stand before the whole list.
        let at = |words: &str| page.find(words).unwrap_or_else(|| panic!("{words}: {page}"));
        let title = at(">Magnesium, drill dry and fast</h");
        let line = at("<strong>Danger, magnesium alloy:</strong> <a href=\"#dangers");
        let figures = title + page[title..].find("<dl class=\"figures\">").unwrap();
        let text = title + page[title..].find("No oil, and let the swarf pile up.</p>").unwrap();
        let order = [title, line, figures, text, at(danger), at(words)];
        assert!(order.is_sorted(), "{order:?}: {page}");
        let (_, anchor) = page[line..].split_once("href=\"#").unwrap();
        let (anchor, _) = anchor.split_once('"').unwrap();
        assert_eq!(page.matches(&format!(" id=\"{anchor}\"")).count(), 1, "{anchor}: {page}");
        // On paper the whole of it stands.
        let (_, list) = page.split_once(&format!("<div id=\"{anchor}\">")).unwrap();
        assert!(list.starts_with("\n<div class=\"warning danger\">\n<p><strong>Danger"), "{list}");
    }
    let plain = club.get("/notes/newsletter/2027-01.txt", None).await.body;
    assert!(plain.contains("Danger, magnesium alloy: ") && plain.contains(words), "{plain}");
    // Of a usual metal the way to its dangers, and nothing of a note that names none.
    let usual = [("title", "Bush"), ("text", "It rang."), ("material", "gunmetal")];
    let usual = club.shown(author, moderator, &usual).await;
    let page = club.get(&format!("/notes/{usual}"), None).await.body;
    assert!(page.contains("<a href=\"/materials/gunmetal\">the dangers of Gunmetal</a>"), "{page}");
    assert_eq!(
        page.matches("Danger, ").count(),
        1,
        "its lead, and nothing that harms at once: {page}"
    );
    assert!(
        page.find("It rang.").unwrap() < page.find("the dangers of Gunmetal").unwrap(),
        "{page}"
    );
    // The lead in it is said itself: on paper there is no way to another page.
    let lead = "<p><strong>Danger, Gunmetal:</strong> The swarf holds lead: wash your hands";
    let paper = club.get("/notes/newsletter/2027-01", None).await.body;
    for page in [&page, &paper] {
        assert!(page.contains(lead), "{page}");
    }
    let plain = club.get("/notes/newsletter/2027-01.txt", None).await.body;
    assert!(plain.contains("\nDanger, gunmetal: The swarf holds lead: wash your hands"), "{plain}");
    let none = club.shown(author, moderator, &[("title", "A rag"), ("text", "It is clean.")]).await;
    let page = club.get(&format!("/notes/{none}"), None).await.body;
    assert!(!page.contains("dangers of") && !page.contains("Danger, "), "{page}");
}

#[tokio::test]
async fn a_note_in_a_list_says_in_a_word_what_can_hurt_in_it() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    for (title, material, words) in [
        ("Spring", "beryllium copper", Some("not to be worked, dust")),
        ("Casting", "magnesium alloy", Some("fire")),
        ("Gland", "PTFE", Some("fume")),
        ("Bush", "gunmetal", Some("lead")),
        ("Clip", "copper or beryllium copper", Some("not to be worked, dust")),
        ("Lug", "magnesum casting", Some("fire")),
        ("Stud", "silver steel", None),
    ] {
        let fields = [
            ("title", title),
            ("text", "T"),
            ("material", material),
            ("on", "8 BA, silver steel"),
            ("meant_material", "no"),
        ];
        let note = club.shown(author, moderator, &fields).await;
        let marker = "<strong>Danger:</strong> ";
        let way = format!("<a href=\"/notes/{note}#dangers\">{marker}");
        for list in ["/notes", "/threads/ba/8", "/notes/compare?thread=8+BA&material=silver+steel"]
        {
            let page = club.get(list, None).await.body;
            let (_, row) = page.split_once(&format!("<a href=\"/notes/{note}\">")).unwrap();
            // The newest of a list stands first, and the rows of the other notes follow it.
            let row = row.split("<a href=\"/notes/").take(2).collect::<Vec<_>>().join("");
            let said = row.split_once(marker).map(|(_, said)| said.split_once("</a>").unwrap().0);
            assert_eq!(said, words, "{title} in {list}: {row}");
            assert_eq!(page.contains(&way), words.is_some(), "{title} in {list}: {page}");
        }
        // It leads to the note's own words.
        let page = club.get(&format!("/notes/{note}"), None).await.body;
        assert!(page.contains(" id=\"dangers\""), "{page}");
        club.post(&format!("/notes/{note}/withdraw"), Some(author), &[("why", "Done.")]).await;
    }
}

#[tokio::test]
async fn what_harms_in_a_reported_note_and_in_its_new_wording_is_one_line() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let fields = [("title", "Dry"), ("text", "It cut."), ("material", "magnesium alloy")];
    let note = club.shown(author, moderator, &fields).await;
    scene.report(note).await;
    let again = [("title", "Dry"), ("text", "It cut well."), ("material", "magnesium alloy")];
    scene.change(note, &again).await;
    let page = scene.queue("").await;
    assert!(page.contains("It cut well."), "{page}");
    assert_eq!(page.matches("<strong>Danger, magnesium alloy:</strong>").count(), 1, "{page}");
    // The whole list stands with each of the two.
    assert_eq!(page.matches("Danger, Magnesium alloy:").count(), 2, "{page}");
    // One of another metal has its own line.
    let other = [("title", "Dry"), ("text", "It cut ill."), ("material", "PTFE")];
    scene.change(note, &other).await;
    let page = scene.queue("").await;
    assert_eq!(page.matches("<p class=\"said danger\"><strong>Danger, ").count(), 2, "{page}");
}

#[tokio::test]
async fn bronze_that_nobody_knows_is_told_of_as_beryllium_copper() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let danger = "Danger, Unknown copper or bronze:";
    let words = "whose dust harms the lungs for good: leave it alone";
    for (title, material, is_told) in [
        ("Left at the kind", "bronze", true),
        ("Left at its grade", "phosphor bronze", true),
        ("Out of the box", "Bronze, drawn, unmarked, from the scrap box, springy", true),
        ("Springs", "spring bronze unmarked", true),
        ("Strip of unknown copper", "", true),
        ("Known", "gunmetal", false),
        ("Cast", "cast bronze", false),
        ("Another kind", "stainless", false),
        ("Steel", "spring steel, unmarked", false),
    ] {
        let fields = [
            ("title", title),
            ("text", "T"),
            ("material", material),
            ("meant_material", "unknown"),
        ];
        let preview = [&[("do", "preview")], &fields[..]].concat();
        let mut pages = vec![club.post("/notes/new", Some(author), &preview).await.body];
        let note = club.send_in(author, &fields).await;
        pages.push(scene.queue(&format!("?open={note}")).await);
        club.decide(moderator, note, ("pass", "")).await;
        pages.push(club.get(&format!("/notes/{note}"), None).await.body);
        for (at, page) in pages.iter().enumerate() {
            assert!(page.contains(title), "{title}, {at}: {page}");
            let said = page.contains(danger) && page.contains(words);
            assert_eq!(said, is_told, "{title}, {at}: {page}");
            assert_eq!(page.contains("Danger, unknown copper"), is_told, "{title}, {at}: {page}");
        }
    }
    // Of one that is known the row itself says it, once.
    let known = [("title", "K"), ("text", "T"), ("material", "phosphor bronze, drawn, from scrap")];
    let known = [&known[..], &[("on", "drawn phosphor bronze")]].concat();
    let note = club.shown(author, moderator, &known).await;
    let page = club.get(&format!("/notes/{note}"), None).await.body;
    assert_eq!((page.matches(words).count(), page.contains(danger)), (1, false), "{page}");
}

#[tokio::test]
async fn what_burns_poisons_or_maims_in_a_notes_own_words_is_prompted_and_blocks_nothing() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let fields = [
        ("title", "Gloves at the drill"),
        ("text", "Blew it off with an air line."),
        ("lubricant", "carbon tet"),
    ];
    let said = ["Heard in its words:", "Gloves at a turning", "Air drives", "Carbon tetrachloride"];
    let preview = [&[("do", "preview")], &fields[..]].concat();
    let mut pages = vec![club.post("/notes/new", Some(author), &preview).await.body];
    let note = club.send_in(author, &fields).await;
    pages.push(scene.queue("").await);
    for page in pages {
        for words in said {
            assert_eq!(page.matches(words).count(), 1, "{words}: {page}");
        }
    }
    let passed = club.decide(moderator, note, ("pass", "")).await;
    assert_eq!(passed.status, StatusCode::SEE_OTHER, "{}", passed.body);
    let page = club.get(&format!("/notes/{note}"), None).await.body;
    assert!(page.contains("Gloves at the drill") && !page.contains("Heard in its words"), "{page}");
    scene.send_in("Gland nut").await;
    let page = scene.queue("").await;
    assert!(page.contains("Gland nut") && !page.contains("Heard in its words"), "{page}");
}

#[tokio::test]
async fn a_note_tells_of_its_own_material_and_of_another_only_what_burns() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let fields = [
        ("title", "Stoning the lips"),
        ("text", "It does not grab."),
        ("material", "gunmetal"),
        ("on", "gunmetal, free-cutting brass, magnesium alloy"),
    ];
    let note = club.shown(author, moderator, &fields).await;
    for path in [format!("/notes/{note}"), "/notes/newsletter/2027-01".to_owned()] {
        let page = club.get(&path, None).await.body;
        assert!(page.contains("the dangers of Gunmetal"), "{page}");
        assert!(page.contains("<li><a href=\"/materials/free-cutting-brass\">"), "{page}");
        assert!(!page.contains("the dangers of Free-cutting brass"), "{page}");
        assert!(page.contains("Danger, Magnesium alloy:"), "{page}");
    }
    // Where its field names none outright, those that it was put on are what its author said.
    let fields = [
        ("title", "Bush"),
        ("text", "T"),
        ("material", "the red bar"),
        ("on", "gunmetal, free-cutting brass"),
    ];
    let note = club.shown(author, moderator, &fields).await;
    let page = club.get(&format!("/notes/{note}"), None).await.body;
    assert!(page.contains("the dangers of Gunmetal"), "{page}");
    assert!(page.contains("the dangers of Free-cutting brass"), "{page}");
}

#[tokio::test]
async fn a_small_fix_is_asked_what_its_author_would_be_asked() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let fields = [("title", "Cross pin"), ("text", "It blued."), ("material", "the blue bar")];
    let note = club.send_in(author, &fields).await;
    let form = club.get(&format!("/queue/{note}/mend"), Some(moderator)).await.body;
    assert!(form.contains("on no page of the reference"), "{form}");
    let notes = "<a href=\"/notes\" aria-current=\"true\">";
    assert!(form.contains(notes), "{form}");
    let typed = [("title", "Cross pin"), ("text", "It blued."), ("material", "silver stel")];
    let asked = scene.mend(note, &typed).await;
    assert_eq!(asked.status.as_u16(), 422, "{}", asked.body);
    let words = "“silver stel”: put the note on the page of silver steel?";
    assert!(asked.body.contains(words) && asked.body.contains(notes), "{}", asked.body);
    assert_eq!(club.count("SELECT count(*) FROM note_version").await, 1);
    let yes = [&typed[..], &[("meant_material", "yes")]].concat();
    let shown = scene.mend(note, &yes).await;
    assert_eq!(shown.status, StatusCode::SEE_OTHER, "{}", shown.body);
    let on = "SELECT count(*) FROM note_entry WHERE entry_id = 'materials/silver-steel'";
    assert_eq!(club.count(on).await, 1);
}

#[tokio::test]
async fn the_open_note_stands_first_with_undo_below_what_was_done() {
    let scene = Scene::open().await;
    let Scene { club, author, reader, .. } = &scene;
    let mut notes = Vec::new();
    for title in ["One", "Two", "Three"] {
        notes.push(club.send_in(author, &[("title", title), ("text", "It cut clean.")]).await);
    }
    for note in 0..3 {
        let title = format!("Screw {note}");
        let fields = [("title", title.as_str()), ("text", "It held.")];
        let note = club.shown(author, &scene.moderator, &fields).await;
        let danger = [("danger", "The wall is left too thin.")];
        club.post(&format!("/notes/{note}/report"), Some(reader), &danger).await;
    }
    let page = scene.queue(&format!("?open={}", notes[2])).await;
    let at = |words: &str| page.find(words).unwrap_or_else(|| panic!("{words}: {page}"));
    assert!(at("<details class=\"queued\" open>") == at("<details class=\"queued\""));
    assert!(at(">Three</h2>") < at(">One</h2>") && at(">One</h2>") < at(">Two</h2>"));
    assert!(at(">Two</h2>") < at("Cyril Moss reported 3 notes"), "after what waits");
    assert_eq!(page.matches(">Screw 1<").count(), 1, "{page}");
}

#[tokio::test]
async fn a_reason_that_is_missing_is_said_at_its_field() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let note = club.send_in(author, &[("title", "One"), ("text", "It cut clean.")]).await;
    let other = club.send_in(author, &[("title", "Two"), ("text", "It cut clean too.")]).await;
    for what in ["change", "decline"] {
        let answer = club.decide(moderator, note, (what, "")).await;
        assert_eq!(answer.status.as_u16(), 422, "{}", answer.body);
        for words in [
            format!("<a href=\"#reason-{note}\">One: Say what to change, or why"),
            format!("<div class=\"error\" id=\"reason-{note}-error\"><p>Say what to change"),
            format!("describedby=\"reason-{note}-error reason-{note}-hint\" aria-invalid=\"true\""),
        ] {
            assert!(answer.body.contains(&words), "{words}: {}", answer.body);
        }
        assert!(!answer.body.contains(&format!("reason-{other}-error")), "{}", answer.body);
    }
}

#[tokio::test]
async fn what_was_told_before_says_where() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let text = "Opened with a 3.3 mm drill, then tapped 4 BA by hand. It squealed and I stopped.";
    let first = [("title", "Tapping gunmetal"), ("text", text)];
    let earlier = club.shown(author, moderator, &first).await;
    let note = club.send_in(author, &[("title", "Four BA"), ("text", text)]).await;
    let answer = club.decide(moderator, note, ("told", "")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let mine = club.get("/notes/mine", Some(author)).await.body;
    let words = format!("Already told in an earlier note: “Tapping gunmetal”, /notes/{earlier}");
    assert!(mine.contains(&words), "{mine}");
}

/// The button of the queue's form that decides this of the note, up to its words.
fn button(note: i64, class: &str, decides: &str) -> String {
    format!("<button{class} formaction=\"/queue/{note}\" name=\"do\" value=\"{decides}\">")
}

#[tokio::test]
async fn a_page_that_comes_back_names_only_wordings_that_were_read() {
    let scene = Scene::open().await;
    let Scene { club, moderator, second, .. } = &scene;
    let (note, other) = (scene.send_in("One").await, scene.send_in("Two").await);
    let read = [note, other].map(|note| (format!("version-{note}"), note));
    let mut versions = Vec::new();
    for (name, note) in &read {
        versions.push((name.as_str(), club.version(*note, "waiting").await.to_string()));
    }
    let (chosen, reason) = (format!("ready-{note}"), format!("reason-{note}"));
    let send = async |what: &str| {
        let known = versions.iter().map(|(name, version)| (*name, version.as_str()));
        let more = [(chosen.as_str(), "drill"), (&reason, "In my own words."), ("do", what)];
        let fields: Vec<_> = known.chain(more).collect();
        club.post(&format!("/queue/{note}"), Some(moderator), &fields).await
    };
    // The other one is changed while the page is open: whatever comes back, it still names what was read.
    scene.change(other, &[("title", "Two"), ("text", "Something else.")]).await;
    let name = format!("version-{other}");
    for (what, status) in [("words", StatusCode::OK), ("pass", StatusCode::UNPROCESSABLE_ENTITY)] {
        let answer = send(what).await;
        assert_eq!(answer.status, status, "{}", answer.body);
        let filled = crate::page::filled(&answer.body);
        assert!(filled.contains(&(name.clone(), versions[1].1.clone())), "{what}: {filled:?}");
    }
    // And of one that is changed or decided meanwhile no words are put anywhere, and none are lost.
    scene.change(note, &[("title", "One"), ("text", "Anew.")]).await;
    let late = async || {
        let answer = send("words").await;
        assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
        assert!(answer.body.contains("In my own words."), "{}", answer.body);
        answer.body
    };
    let now = club.version(note, "waiting").await.to_string();
    let filled = crate::page::filled(&late().await);
    assert!(filled.contains(&(format!("version-{note}"), now)), "to be read: {filled:?}");
    let declined = club.decide(second, note, ("decline", "Not so.")).await;
    assert_eq!(declined.status, StatusCode::SEE_OTHER, "{}", declined.body);
    late().await;
}

#[tokio::test]
async fn the_words_of_a_reason_are_changed_before_they_are_sent() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let note = scene.send_in("One").await;
    let other = scene.send_in("Two").await;
    let queue = scene.queue(&format!("?open={note}")).await;
    for ready in READY {
        let option = format!("<option value=\"{}\">{}</option>", ready.name, ready.words);
        assert_eq!(queue.matches(&option).count(), 2, "once at each note, {option}: {queue}");
    }
    let before = scene.rows().await;
    let (version, beside) =
        (club.version(note, "waiting").await.to_string(), format!("reason-{other}"));
    let (chosen, reason) = (format!("ready-{note}"), format!("reason-{note}"));
    let (its, path) = (format!("version-{note}"), format!("/queue/{note}"));
    let put = async |ready: &str, typed: &str| {
        let fields = [
            (beside.as_str(), "Dry?"),
            (&its, &version),
            (&chosen, ready),
            (&reason, typed),
            ("do", "words"),
        ];
        club.post(&path, Some(moderator), &fields).await
    };
    for ready in READY {
        let answer = put(ready.name, "The third one.").await;
        assert_eq!(answer.status, StatusCode::OK, "{}", answer.body);
        let filled = crate::page::filled(&answer.body);
        let both = format!("{}\n\nThe third one.", ready.words);
        assert!(filled.contains(&(reason.clone(), both)), "{filled:?}");
        assert!(filled.contains(&(beside.clone(), "Dry?".to_owned())), "{filled:?}");
        let (sends, does_not) = match ready.sends {
            Sends::Back => ("change", "decline"),
            Sends::Away => ("decline", "change"),
        };
        let first = answer.body.split("<details class=\"queued\"").nth(1).unwrap();
        assert!(first.starts_with(" open>") && first.contains(">One</h2>"), "{first}");
        assert!(first.contains(&button(note, "", sends)), "{sends}: {first}");
        assert!(first.contains(&button(note, " class=\"plain\"", does_not)), "{first}");
        assert_eq!(answer.body.matches(" autofocus>").count(), 1, "{}", answer.body);
        let at = format!("name=\"reason-{note}\"");
        let (_, field) = first.split_once(&at).unwrap();
        assert!(field.split_once('>').unwrap().0.ends_with(" autofocus"), "{field}");
    }
    // Put in once more, the words stand there once.
    let drill = "Which drill, and what did it measure?\n\nThe third one.";
    let again = put("drill", drill).await;
    assert!(crate::page::filled(&again.body).contains(&(reason.clone(), drill.to_owned())));
    // What the queue does not know, or is too long together, comes back with what was typed.
    for (ready, typed, told) in [
        ("nothing", "Which one?".to_owned(), "The queue knows no such reason"),
        ("", String::new(), "The queue knows no such reason"),
        ("drill", "x".repeat(1_990), "That is 2029 characters; 2000 are taken."),
    ] {
        let answer = put(ready, &typed).await;
        assert_eq!(answer.status.as_u16(), 422, "{}", answer.body);
        assert!(answer.body.contains(told), "{told}: {}", answer.body);
        let filled = crate::page::filled(&answer.body);
        assert!(filled.contains(&(reason.clone(), typed)), "{filled:?}");
        assert!(filled.contains(&(beside.clone(), "Dry?".to_owned())), "{filled:?}");
    }
    assert_eq!(scene.rows().await, before, "nothing is sent yet");
    // As they were changed they reach the author, and nothing of what stood there before.
    let answer = club.decide(moderator, note, ("change", "Which drill, by its letter?")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let mine = club.get("/notes/mine", Some(author)).await.body;
    assert!(mine.contains("A change is asked for: Which drill, by its letter?"), "{mine}");
    assert!(!mine.contains("what did it measure"), "{mine}");
}

#[tokio::test]
async fn the_earlier_note_stands_in_the_words_to_change_too() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, .. } = &scene;
    let text = "Opened with a 3.3 mm drill, then tapped 4 BA by hand. It squealed and I stopped.";
    let first = [("title", "Tapping gunmetal"), ("text", text)];
    let earlier = club.shown(author, moderator, &first).await;
    let note = club.send_in(author, &[("title", "Four BA"), ("text", text)]).await;
    let version = club.version(note, "waiting").await.to_string();
    let fields = [("version", version.as_str()), ("ready", "told"), ("do", "words")];
    let answer = club.post(&format!("/queue/{note}"), Some(moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::OK, "{}", answer.body);
    let words = format!("Already told in an earlier note: “Tapping gunmetal”, /notes/{earlier}");
    let filled = crate::page::filled(&answer.body);
    assert!(filled.contains(&(format!("reason-{note}"), words)), "{filled:?}");
    // Nobody who does not decide gets as far.
    let refused = club.post(&format!("/queue/{note}"), Some(author), &fields).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN, "{}", refused.body);
}

#[tokio::test]
async fn a_note_on_the_same_things_is_compared_whatever_its_title() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, reader, .. } = &scene;
    let things = [("material", "gunmetal"), ("thread", "4 BA"), ("drill", "3.3 mm")];
    let text = "Drilled 3.3 mm, paraffin, and the tap squealed in the third hole.";
    let first = [&[("title", "Tapping 4 BA in gunmetal"), ("text", text)], &things[..]].concat();
    let earlier = club.shown(author, moderator, &first).await;
    // Newer ones of theirs on something else, so that it is not among the last.
    for number in 0..12 {
        let title = format!("Washer {number}");
        let words = format!("Faced number {number} and parted it off.");
        club.shown(author, moderator, &[("title", &title), ("text", &words)]).await;
    }
    let like = format!("Like an earlier note: <a href=\"/notes/{earlier}\">");
    let trimmed = "Drilled 3.3 mm, paraffin, and the tap squealed.";
    let again = "The tap squealed in paraffin; drilled it 3.3 mm once more.";
    let other = "Soft jaws turned to fit, and a stop behind the work.";
    for (by, title, text, is_like) in [
        (reader, "Second thoughts", trimmed, true),
        (author, "Second thoughts", trimmed, true),
        (author, "Squeal", again, true),
        (reader, "Squeal", again, false),
        (author, "Holding it", other, false),
    ] {
        let fields = [&[("do", "preview"), ("title", title), ("text", text)], &things[..]].concat();
        let seen = club.post("/notes/new", Some(by), &fields).await.body;
        assert_eq!(seen.contains(&like), is_like, "{title}, {text}: {seen}");
    }
}

#[tokio::test]
async fn a_mended_note_is_told_as_shown_and_not_as_declined() {
    let scene = Scene::open().await;
    let Scene { club, author, .. } = &scene;
    let made = club.post("/me/feed", Some(author), &[("do", "make")]).await.body;
    let (_, feed) = made.split_once("https://club.test/notes/feed/").unwrap();
    let feed = format!("/notes/feed/{}", feed.split('<').next().unwrap());
    for number in 0..5 {
        let title = format!("Glnad nut {number}");
        let note = club.send_in(author, &[("title", &title), ("text", "It held.")]).await;
        let fixed = format!("Gland nut {number}");
        let shown = scene.mend(note, &[("title", &fixed), ("text", "It held.")]).await;
        assert_eq!(shown.status, StatusCode::SEE_OTHER, "{}", shown.body);
    }
    let feed = club.get(&feed, None).await.body;
    assert_eq!(feed.matches("<entry>").count(), 5, "{feed}");
    assert!(feed.contains("Gland nut 4") && !feed.contains("Glnad"), "{feed}");
    // What four of five took is counted of each note once: the author's own wording of it.
    let [_, writer] = club.app.database.pools();
    sqlx::query(
        "UPDATE note_version SET made_at = made_at - 864000, saved_at = saved_at - 864000
         WHERE mended_from IS NULL",
    )
    .execute(writer)
    .await
    .unwrap();
    let usual = holewright_server::db::notes::queue::usual_days;
    let days = usual(&club.app.database, crate::support::NOW).await.unwrap();
    assert_eq!(days, Some(10));
}

#[tokio::test]
async fn who_hid_notes_is_not_offered_to_show_them_again_where_another_could() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, second, .. } = &scene;
    for number in 0..3 {
        let title = format!("Screw {number}");
        let note = club.shown(author, second, &[("title", &title), ("text", "It held.")]).await;
        let danger = [("danger", "The wall is left too thin.")];
        let answer = club.post(&format!("/notes/{note}/report"), Some(moderator), &danger).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    let words = "Bert Stone reported 3 notes";
    assert!(!scene.queue("").await.contains(words));
    let theirs = club.get("/queue", Some(second)).await.body;
    assert!(theirs.contains(words), "{theirs}");
    let (_, read) = theirs.split_once("name=\"read\" value=\"").unwrap();
    let (of, read) = (moderator.id.to_string(), read.split_once('"').unwrap().0);
    let fields = [("of", of.as_str()), ("last", "1000"), ("read", read)];
    let hidden = "SELECT count(*) FROM note WHERE hidden_at IS NOT NULL";
    let refused = club.post("/queue/reports", Some(moderator), &fields).await;
    assert_eq!(refused.status, StatusCode::CONFLICT, "{}", refused.body);
    assert_eq!(club.count(hidden).await, 3);
    // Nobody else could look.
    let [_, writer] = club.app.database.pools();
    let stop = "UPDATE member SET stopped_at = 1 WHERE name = 'Moira Hale'";
    sqlx::query(stop).execute(writer).await.unwrap();
    assert!(scene.queue("").await.contains(words));
    let done = club.post("/queue/reports", Some(moderator), &fields).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.body);
    assert_eq!(club.count(hidden).await, 0);
}
