//! What members type is found among the notes of the invented club.

use holewright_server::db::notes::lists::Filter;
use holewright_server::db::notes::search::{Hit, find};
use holewright_server::demo;
use holewright_server::rules::auth::password::Hashing;

use super::club::{Club, Right};
use crate::support::NOW;

/// Among so many the note must be.
const FIRST: usize = 4;

async fn club_of_the_demonstration() -> Club {
    let club = Club::open().await;
    demo::fill(&club.app.database, NOW, &Hashing::default()).await.unwrap();
    club
}

async fn search(club: &Club, typed: &str) -> Vec<Hit> {
    find(&club.app.database, typed, &Filter::default(), 20).await.unwrap()
}

fn titles(hits: &[Hit]) -> Vec<&str> {
    hits.iter().map(|hit| hit.note.wording.title.as_str()).collect()
}

#[tokio::test]
async fn what_members_ask_in_their_own_words_is_found() {
    let club = club_of_the_demonstration().await;
    let mut rows = csv::Reader::from_reader(include_bytes!("searches.csv").as_slice());
    let (mut asked, mut wrong) = (0, Vec::new());
    for row in rows.deserialize::<(String, String)>() {
        let (typed, expected) = row.unwrap();
        let hits = search(&club, &typed).await;
        let first: Vec<&str> = titles(&hits).into_iter().take(FIRST).collect();
        let is_right = if expected.is_empty() {
            hits.iter().all(|hit| !hit.has_all)
        } else {
            first.contains(&&*expected)
        };
        if !is_right {
            wrong.push(format!("{typed}: {expected} is not among {first:?}"));
        }
        asked += 1;
    }
    assert!(asked >= 40, "{asked}");
    assert_eq!(wrong, [""; 0]);
}

/// All of it before some of it, and each told apart.
#[tokio::test]
async fn notes_with_all_the_words_stand_before_those_with_some() {
    let club = club_of_the_demonstration().await;
    let hits = search(&club, "copper thread").await;
    let all = hits.iter().take_while(|hit| hit.has_all).count();
    assert!(all >= 1 && all < hits.len(), "{:?}", titles(&hits));
    assert!(hits.iter().skip(all).all(|hit| !hit.has_all));
    let page = club.get("/notes?q=copper+thread", None).await;
    let [first, some] = page.body.split("With some of these words").collect::<Vec<_>>()[..] else {
        panic!("{}", page.body);
    };
    assert!(first.contains("Tapping soft copper") && !some.contains("Tapping soft copper"));
}

/// A word that more than a thousand notes have picks none out beside a rarer one, wherever it is looked for; alone it is
/// looked for as before.
#[tokio::test]
async fn a_word_that_most_notes_have_picks_none_out() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let on = |title, text| [("title", title), ("text", text), ("thread", "8 BA")];
    club.shown(&author, &moderator, &on("Zebra", "It squealed.")).await;
    club.shown(&author, &moderator, &on("Bush", "A note of a bush.")).await;
    let [_, writer] = club.app.database.pools();
    for number in 1..=1001_i64 {
        for what in [
            "INSERT INTO note (author_id, form_key, made_at) VALUES (?1, printf('many%028d', ?2), 1)",
            "INSERT INTO note_version (id, note_id, state, title, text, made_at, saved_at)
             SELECT id + 5000, id, 'shown', 'Note', 'Of nothing.', ?1, 1 FROM note
             WHERE form_key = printf('many%028d', ?2)",
            "UPDATE note SET shown_version = id + 5000, shown_at = ?1
             WHERE form_key = printf('many%028d', ?2)",
            "INSERT INTO note_text (rowid, title, text, done, marks) SELECT id, 'Note', 'Of nothing.', '', ''
             FROM note WHERE ?1 > 0 AND form_key = printf('many%028d', ?2)",
        ] {
            sqlx::query(what).bind(author.id).bind(number).execute(writer).await.unwrap();
        }
    }
    let on_8_ba = Filter { on: vec!["threads/ba/8".into()], ..Filter::default() };
    let found = async |typed: &str, filter: &Filter| {
        let hits = find(&club.app.database, typed, filter, 20).await.unwrap();
        let all = hits.iter().filter(|hit| hit.has_all).count();
        (titles(&hits).join(", "), all)
    };
    assert_eq!(found("note zebra", &on_8_ba).await, ("Zebra".to_owned(), 0));
    assert_eq!(found("note", &on_8_ba).await, ("Bush".to_owned(), 1));
    assert_eq!(found("note quagga", &on_8_ba).await, ("Bush".to_owned(), 0));
    assert_eq!(found("note zebra", &Filter::default()).await, ("Zebra".to_owned(), 0));
}

/// A word that is nowhere is read as the nearest, and the page says so; one that stands somewhere, is begun, or is near
/// nothing is left as it is.
#[tokio::test]
async fn a_misspelt_search_says_what_it_was_read_as() {
    let club = club_of_the_demonstration().await;
    for (typed, read) in [
        ("silver+stel", "silver steel"),
        ("drill+wanderd", "drill wandered"),
        ("phospher+bronze", "phosphor bronze"),
        ("cast+iorn", "cast iron"),
        ("Gunmettle", "gunmetal"),
    ] {
        let page = club.get(&format!("/notes?q={typed}"), None).await;
        assert!(page.body.contains(&format!("Read as: <strong>{read}</strong>")), "{}", page.body);
        let kept = format!("value=\"{}\"", typed.replace('+', " "));
        assert!(page.body.contains(&kept), "{kept}: {}", page.body);
    }
    let best = search(&club, "silver stel").await;
    let text = |hit: &Hit| format!("{:?}", hit.note.wording).to_lowercase();
    assert!(best[0].has_all && text(&best[0]).contains("silver steel"), "{:?}", titles(&best));
    for typed in ["silver+steel", "wand", "gunm", "drill", "carburettor", "no.+50+drill"] {
        let page = club.get(&format!("/notes?q={typed}"), None).await;
        assert!(!page.body.contains("Read as:"), "{typed}: {}", page.body);
    }
}

/// Members speak of a broken tap too, so that a search for it goes straight to no page: what to do stands first, and
/// their notes are among what it finds.
#[tokio::test]
async fn a_search_for_a_broken_tap_lists_what_members_found() {
    let club = club_of_the_demonstration().await;
    let page = club.get("/search?q=broken+tap", None).await;
    assert_eq!(page.status, axum::http::StatusCode::OK, "{}", page.header("location"));
    let (hits, notes) = page.body.split_once("<h2 id=\"members\">Members’ notes</h2>").unwrap();
    let (_, hits) = hits.split_once("<h1>").unwrap();
    let first = hits.split("<li>").nth(1).unwrap_or_default();
    assert!(first.starts_with("<a href=\"/rescue/broken-tap\">A broken tap</a>"), "{first}");
    assert!(notes.contains("<li><a href=\"/notes/"), "{notes}");
}

/// A kind of material has the notes of all that are of it.
#[tokio::test]
async fn notes_are_asked_on_a_kind_of_material() {
    let club = club_of_the_demonstration().await;
    let page = club.get("/notes?on=Bronze", None).await;
    assert!(page.body.contains("<h1>Notes on bronze</h1>"), "{}", page.body);
    for title in ["Gland nut from bronze stick", "Ball seat reamed in bronze", "Bearing pads"] {
        assert!(page.body.contains(title), "{title}");
    }
    assert!(!page.body.contains("Tapping soft copper"));
    let page = club.get("/notes?on=bronze&q=reamed", None).await;
    assert!(page.body.contains("Ball seat reamed in bronze"), "{}", page.body);
    assert!(!page.body.contains("Gland studs"), "{}", page.body);
}

/// The words that were looked for are shown in the text, and what was set up is not.
#[tokio::test]
async fn an_extract_shows_the_words_in_the_text() {
    let club = club_of_the_demonstration().await;
    let hits = search(&club, "wandering").await;
    let found: Vec<&str> = hits
        .iter()
        .flat_map(|hit| &hit.around)
        .filter(|stretch| stretch.is_found)
        .map(|stretch| stretch.text.as_str())
        .collect();
    assert_eq!(found, ["wandered", "wandered"]);
    // The material stands among the fields: the text is shown from its beginning.
    let hits = search(&club, "LG4").await;
    let first: String = hits[0].around.iter().map(|stretch| stretch.text.as_str()).collect();
    assert!(first.starts_with(demo::MARK), "{first}");
}

/// The plan leads to what members found on its thread in its material: first what warns.
#[tokio::test]
async fn a_plan_shows_the_notes_on_its_job() {
    let club = club_of_the_demonstration().await;
    let page = club.get("/plan?thread=5+BA&material=gunmetal&hole=blind&depth=8+mm", None).await;
    let lead = "<a href=\"#members\">A note by a member on 5 BA in gunmetal</a>";
    let (head, rest) = page.body.split_once(lead).unwrap_or_else(|| panic!("{}", page.body));
    assert!(head.contains("Tapping size") && !head.contains("id=\"steps\""));
    let (plan, notes) = rest.split_once("id=\"members\"").unwrap();
    assert!(plan.contains("id=\"steps\"") && notes.contains("Gland studs in the pump body"));
    let none = club.get("/plan?thread=0+BA&material=acetal", None).await;
    assert!(!none.body.contains("#members"), "{}", none.body);
}

#[tokio::test]
async fn the_first_page_and_the_head_of_a_thing_lead_to_the_notes() {
    let club = club_of_the_demonstration().await;
    let home = club.get("/", None).await;
    let (_, lately) = home.body.split_once("What members found lately").unwrap();
    assert_eq!(lately.matches("<li><a href=\"/notes/").count(), 3, "{lately}");
    let page = club.get("/materials/gunmetal", None).await;
    let (head, _) = page.body.split_once("<table>").unwrap();
    assert!(head.contains("<a href=\"#members\">3 notes by members</a>"), "{head}");
}
