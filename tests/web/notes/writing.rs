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

/// The values of the list that a browser offers for this field, in their order.
fn offered(body: &str, field: &str) -> Vec<String> {
    let list = body.split_once(&format!("<datalist id=\"{field}-offered\">"));
    let list = list.and_then(|(_, list)| list.split_once("</datalist>"));
    let Some((list, _)) = list else { return Vec::new() };
    assert!(body.contains(&format!(" list=\"{field}-offered\"")), "{body}");
    let values = list.split("<option value=\"").skip(1);
    values.map(|value| value.split('"').next().unwrap().to_owned()).collect()
}

const DRAWER: &str = "drawer=drills=1mm%2C+2.65mm%2C+6mm\
    &speeds=lathe%3A+350%2C+500%3B+bench+drill%3A+600-2000&on=yes";

#[tokio::test]
async fn the_machines_and_drills_of_the_drawer_are_offered_where_a_note_is_written() {
    let (club, author) = scene().await;
    let with = |cookies: &str| author.with_cookies(&format!("{}; {cookies}", author.cookie()));
    let mine = with(&format!("{DRAWER}; machine=Old+mill"));
    let form = club.get("/notes/new", Some(&mine)).await;
    assert_eq!(form.header("cache-control"), "private, no-store");
    let form = form.body;
    assert_eq!(offered(&form, "machine"), ["Old mill", "lathe", "bench drill"], "{form}");
    assert!(form.contains("In your drawer: lathe, bench drill"), "{form}");
    assert!(form.contains("name=\"machine\" value=\"Old mill\""), "{form}");
    assert_eq!(offered(&form, "drill"), ["1 mm", "2.65 mm", "6 mm"], "{form}");
    assert!(!form.contains("the plan takes"), "for which thread: {form}");
    assert_eq!(offered(&form, "material"), [""; 0]);

    // What the plan takes comes first: by the fields, by what the note is on, and when the form comes back.
    let words = "Of your drawer the plan takes 2.65 mm for 5 BA in gunmetal.";
    let preview = [("title", "Studs"), ("thread", "5BA"), ("material", "LG2"), ("do", "preview")];
    let on = [("title", "Studs"), ("on", "5 BA, gunmetal"), ("do", "preview")];
    let wrong = [("thread", "5 BA"), ("material", "gunmetal"), ("do", "send")];
    for body in [
        club.get("/notes/new?thread=5+BA&material=gunmetal", Some(&mine)).await.body,
        club.post("/notes/new", Some(&mine), &preview).await.body,
        club.post("/notes/new", Some(&mine), &on).await.body,
        club.post("/notes/new", Some(&mine), &wrong).await.body,
    ] {
        assert_eq!(offered(&body, "drill"), ["2.65 mm", "1 mm", "6 mm"], "{body}");
        assert!(body.contains(words), "{body}");
    }
    let plan = club.get("/plan?thread=5+BA&material=gunmetal", Some(&mine)).await.body;
    assert!(plan.replace('\u{a0}', " ").contains("2.65 mm"), "the plan takes it: {plan}");
    // A thread that nobody reads is not the thread of the page.
    let other = club.get("/notes/new?on=threads/ba/5&thread=the+odd+one", Some(&mine)).await.body;
    assert!(!other.contains("the plan takes"), "{other}");
    // Nor is a note the place for a drawer once it is kept.
    let kept = [&preview[..3], &[("text", "Dry."), ("do", "draft")]].concat();
    let kept = club.post("/notes/new", Some(&mine), &kept).await;
    let edit = kept.header("location").to_owned();
    assert_eq!(offered(&club.get(&edit, Some(&mine)).await.body, "drill").len(), 3);
    assert_eq!(offered(&club.get(&edit, Some(&author)).await.body, "drill"), [""; 0]);
}

#[tokio::test]
async fn without_a_drawer_in_use_nothing_is_offered_and_a_broken_one_is_none() {
    let (club, author) = scene().await;
    let path = "/notes/new?thread=5+BA&material=gunmetal";
    let plain = club.get(path, Some(&author)).await.body;
    let keyless = |body: &str| {
        let (before, key) = body.split_once("name=\"form_key\" value=\"").unwrap();
        format!("{before}{}", key.split_once('"').unwrap().1)
    };
    assert!(!plain.contains("datalist") && !plain.contains("your drawer"), "{plain}");
    for cookie in [
        DRAWER.replace("on=yes", "on=no"),
        "drawer=".to_owned(),
        "drawer=speeds=%22%3E%3Cscript%3Ealert%281%29%3C%2Fscript%3E%3A+500&on=yes".to_owned(),
        "drawer=drills=%22+onfocus%3Dalert%281%29&on=yes".to_owned(),
        "drawer=drills=%FF%FE&on=yes".to_owned(),
        format!("drawer=speeds=lathe%3A+{}&on=yes", "350%2C+".repeat(500)),
        "drawer=speeds=350%2C+500&on=yes; a=b".replace("drawer=speeds", "drawers=speeds"),
    ] {
        let odd = author.with_cookies(&format!("{}; {cookie}", author.cookie()));
        let form = club.get(path, Some(&odd)).await;
        assert_eq!(form.status, StatusCode::OK, "{cookie}");
        assert_eq!(keyless(&form.body), keyless(&plain), "{cookie}");
    }
    // One machine without a name has none to offer.
    let unnamed = "drawer=speeds=350%2C+500&on=yes";
    let unnamed = author.with_cookies(&format!("{}; {unnamed}", author.cookie()));
    let form = club.get(path, Some(&unnamed)).await.body;
    assert!(!form.contains("datalist") && !form.contains("In your drawer"), "{form}");
}

#[tokio::test]
async fn a_metal_that_names_a_kind_is_asked_about_and_may_stay_one() {
    let (club, author) = scene().await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let fields = |material, answer| {
        [
            ("title", "Bush"),
            ("text", "It rang."),
            ("material", material),
            ("meant_material", answer),
        ]
    };
    let send = |material, answer| [&fields(material, answer)[..], &[("do", "send")]].concat();
    for (material, first) in [("bronze", "gunmetal"), ("Stainless", "stainless-303")] {
        let asked = club.post("/notes/new", Some(&author), &send(material, "")).await;
        assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", asked.body);
        let question = format!("“{material}”: which {}?", material.to_lowercase());
        assert!(asked.body.contains(&question), "{}", asked.body);
        let mut values = asked.body.split("name=\"meant_material\" value=\"").skip(1);
        assert!(values.next().unwrap().starts_with(&format!("{first}\"")), "{}", asked.body);
        assert!(
            values.last().unwrap().starts_with("unknown\"> I don’t know which"),
            "{}",
            asked.body
        );
        // An answer to another question is none.
        let other = club.post("/notes/new", Some(&author), &send(material, "yes")).await;
        assert_eq!(other.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", other.body);
    }
    assert_eq!(club.count("SELECT count(*) FROM note").await, 0);
    // So many that they do not stand side by side are a list.
    let steel = club.post("/notes/new", Some(&author), &send("steel", "")).await.body;
    assert!(steel.contains("<select id=\"meant_material\""), "{steel}");
    assert!(steel.contains("<option value=\"\" selected>Choose one</option>"), "{steel}");

    let note = club.shown(&author, &moderator, &fields("bronze", "leaded-bronze")).await;
    let listed = format!("href=\"/notes/{note}\"");
    assert!(club.get("/materials/leaded-bronze", None).await.body.contains(&listed));
    let page = club.get(&format!("/notes/{note}"), None).await.body;
    assert!(page.contains("<dd>bronze</dd>"), "as it was typed: {page}");
    let form = club.get(&format!("/notes/{note}/edit"), Some(&author)).await.body;
    assert!(form.contains("name=\"on\" value=\"Leaded bronze\""), "{form}");

    // Whoever does not know says so; the line after sending says where it stands.
    let words = "It will be shown among the notes, and on no page of the reference";
    let found = "A search of the notes for “bronze” finds it.";
    let sent = club.post("/notes/new", Some(&author), &send("bronze", "unknown")).await;
    assert_eq!(sent.status, StatusCode::SEE_OTHER, "{}", sent.body);
    let set = sent.headers.get_all("set-cookie").iter().map(|set| set.to_str().unwrap());
    let done = set.into_iter().find(|set| set.starts_with("done=")).unwrap();
    let done = done.split(';').next().unwrap();
    let after = author.with_cookies(&format!("{}; {done}", author.cookie()));
    let mine = club.get("/notes/mine", Some(&after)).await.body;
    assert!(mine.contains(words) && mine.contains(found), "{mine}");
    let unknown = club.count("SELECT max(id) FROM note").await;
    club.decide(&moderator, unknown, ("pass", "")).await;
    let search = club.get("/notes?q=bronze", None).await.body;
    assert!(search.contains(&format!("href=\"/notes/{unknown}\"")), "{search}");
    let on = "SELECT count(*) FROM note_entry JOIN note ON version_id = shown_version
              WHERE note.id = (SELECT max(id) FROM note)";
    assert_eq!(club.count(on).await, 0);
    let kept = club.post("/notes/new", None, &send("bronze", "unknown")).await.body;
    assert!(kept.contains("name=\"meant_material\" value=\"unknown\""), "signed out too: {kept}");
}

/// What the preview of a note with this text in a field asks, and where it says the note will stand.
async fn asked_of(
    club: &Club,
    author: &Person,
    (field, typed): (&str, &str),
) -> (Vec<String>, String) {
    let fields = [("title", "A"), ("text", "T"), (field, typed), ("do", "preview")];
    let body = club.post("/notes/new", Some(author), &fields).await.body;
    let kept = format!("name=\"{field}\" value=\"{}\"", typed.replace('"', "&#34;"));
    assert!(body.contains(&kept), "as it was typed, {typed}: {body}");
    let name = format!("name=\"meant_{field}\"");
    let asked = body.split_once(&name).map(|(_, behind)| {
        let until = behind.split("name=\"title\"").next().unwrap_or_default();
        let until = until.split("name=\"form_key\"").next().unwrap_or_default();
        let values = until.split("value=\"").skip(1);
        values.map(|value| value.split('"').next().unwrap().to_owned())
    });
    let asked = asked.map(|values| values.filter(|value| !value.is_empty()).collect());
    let stands = body.split_once("It will be shown").map(|(_, behind)| behind);
    let stands = stands.and_then(|behind| behind.split('<').next()).unwrap_or_default();
    (asked.unwrap_or_default(), stands.trim().to_owned())
}

#[tokio::test]
async fn a_metal_with_its_size_is_that_metal_and_no_grade_of_another() {
    let (club, author) = scene().await;
    for (typed, page) in [
        ("3/16 silver steel", "silver steel"),
        ("silver steel 3/16", "silver steel"),
        ("silver steel, 1/4 dia", "silver steel"),
        ("4 mm silver steel", "silver steel"),
        ("5/16 mild steel", "bright mild steel"),
        ("brass bar 3/16 dia", "free-cutting brass"),
        ("round brass 303 thou", "free-cutting brass"),
        ("brass sheet 1 mm", "sheet brass"),
        ("half hard brass sheet", "sheet brass"),
        ("angle iron", "black mild steel"),
    ] {
        let (asked, stands) = asked_of(&club, &author, ("material", typed)).await;
        assert_eq!(asked, [""; 0], "{typed}");
        assert_eq!(stands, format!("on the page of {page}."), "{typed}");
    }
    // The plan reads them alike.
    let plan = club.get("/plan?thread=4+BA&material=3%2F16+silver+steel", None).await;
    assert_eq!(plan.status, StatusCode::OK);
    assert!(plan.body.contains("href=\"/materials/silver-steel\""), "{}", plan.body);
    // A grade of another family than the one that is named is not offered.
    let (asked, _) = asked_of(&club, &author, ("material", "round brass 303")).await;
    assert_eq!(asked, ["yes", "no"]);
    let fields = [("title", "A"), ("text", "T"), ("material", "round brass 303"), ("do", "send")];
    let body = club.post("/notes/new", Some(&author), &fields).await.body;
    assert!(body.contains("on the page of free-cutting brass?"), "{body}");
    assert!(!body.contains("stainless"), "{body}");
}

#[tokio::test]
async fn a_kind_is_asked_about_however_it_is_written() {
    let (club, author) = scene().await;
    for (typed, first) in [
        ("stainles", "stainless-303"),
        ("stainless steal", "stainless-303"),
        ("stainless 999", "stainless-303"),
        ("SS", "stainless-303"),
        ("bronse", "gunmetal"),
        ("phosphor broze 1/4 rod", "phosphor-bronze-cast"),
        ("ph bronze", "phosphor-bronze-cast"),
        ("alli", "aluminium-6082"),
        ("ali", "aluminium-6082"),
        ("aluminium", "aluminium-6082"),
        ("Aluminum rod 1/2", "aluminium-6082"),
        ("3/16 bronze", "gunmetal"),
    ] {
        let (asked, stands) = asked_of(&club, &author, ("material", typed)).await;
        assert_eq!(asked.first().map(String::as_str), Some(first), "{typed}: {asked:?}");
        assert_eq!(asked.last().map(String::as_str), Some("unknown"), "{typed}: {asked:?}");
        assert!(stands.contains("on no page"), "{typed}: {stands}");
    }
}

#[tokio::test]
async fn a_bare_number_of_a_drill_is_asked_about_and_words_of_its_make_are_left_aside() {
    let (club, author) = scene().await;
    for (typed, page) in [("1.8mm HSS", "1.8 mm"), ("4.1mm stub", "4.1 mm"), ("43", "No. 43")] {
        let (asked, stands) = asked_of(&club, &author, ("drill", typed)).await;
        assert_eq!(asked, [""; 0], "{typed}");
        let stands = stands.replace('\u{a0}', " ");
        assert_eq!(stands, format!("on the page of the {page} drill."), "{typed}");
    }
    for typed in ["6", "3"] {
        let (asked, _) = asked_of(&club, &author, ("drill", typed)).await;
        assert_eq!(asked, ["metric", "number", "unknown"], "{typed}");
    }
    let fields = |answer| [("title", "A"), ("text", "T"), ("drill", "6"), ("meant_drill", answer)];
    let send = [&fields("")[..], &[("do", "send")]].concat();
    let asked = club.post("/notes/new", Some(&author), &send).await;
    assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", asked.body);
    let question = "“6”: the 6 mm drill or the No. 6 drill?";
    assert!(asked.body.replace('\u{a0}', " ").contains(question), "{}", asked.body);
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    for (answer, page) in [("number", "/drills/number/6"), ("metric", "/drills/metric/6")] {
        let note = club.shown(&author, &moderator, &fields(answer)).await;
        let listed = format!("href=\"/notes/{note}\"");
        assert!(club.get(page, None).await.body.contains(&listed), "{answer}");
    }
}
