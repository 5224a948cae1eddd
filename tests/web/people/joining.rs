//! Joining and resetting by a slip, and S09: what a slip is worth.

use axum::http::StatusCode;
use holewright_server::db;
use holewright_server::rules::auth::{Token, phrase};

use super::club::{Club, MODERATOR, PASSWORD, PLAIN, SECRETARY};

const NEW: &str = "nine copper kettles humming";

#[tokio::test]
async fn the_secretary_makes_a_slip_and_its_bearer_joins() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    let made = secretary
        .post("/people/invite", &[("meant_for", "Enid from the back bench"), ("moderator", "yes")])
        .await;
    assert_eq!(made.status, StatusCode::OK);
    assert!(made.body.contains("<svg class=\"qr\" role=\"img\""), "{}", made.body);
    assert!(!made.body.contains("style="));
    let link = made.body.split("<code>https://club.test").nth(1).unwrap();
    let link = link.split('<').next().unwrap().to_owned();
    assert!(link.starts_with("/join/"), "{link}");

    let mut browser = club.browser();
    let form = browser.get(&link).await;
    assert_eq!(form.status, StatusCode::OK);
    assert!(form.body.contains("You join as a moderator."), "{}", form.body);
    assert!(
        !form.body.contains(&format!("club.test{link}")),
        "the frame must not print the secret"
    );
    let joined =
        browser.post(&link, &[("name", "  Enid   Hathersage "), ("new_password", PASSWORD)]).await;
    assert_eq!(joined.status, StatusCode::SEE_OTHER, "{}", joined.body);
    let page = browser.get("/me").await;
    assert!(page.body.contains("<h1>Enid Hathersage</h1>"), "{}", page.body);
    assert!(page.body.contains("You are a moderator"), "{}", page.body);
}

#[tokio::test]
async fn a_phrase_is_offered_and_taken_with_one_tick() {
    let club = Club::start().await;
    let slip = club.slip(PLAIN).await;
    let mut browser = club.browser();
    let form = browser.get(&slip).await.body;
    let phrase = form.split("name=\"phrase\" value=\"").nth(1).unwrap();
    let phrase = phrase.split('"').next().unwrap().to_owned();
    assert_eq!(phrase.split('-').count(), 5, "{phrase}");
    let other = club.browser().get(&slip).await.body;
    assert!(!other.contains(&phrase), "another reader is offered another");

    // A mistake elsewhere keeps the phrase that was written down, and the tick.
    let ticked = [("name", ""), ("phrase", &phrase), ("use_phrase", "yes")];
    let refused = browser.post(&slip, &ticked).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(refused.body.contains(&format!("<code>{phrase}</code>")), "{}", refused.body);
    assert!(refused.body.contains("value=\"yes\" checked"), "{}", refused.body);

    let ticked = [("name", "Enid"), ("phrase", &phrase), ("use_phrase", "yes")];
    assert_eq!(browser.post(&slip, &ticked).await.status, StatusCode::SEE_OTHER);
    // As it is drawn, and as a telephone or a hand that writes it down dresses it.
    let mut dressed = phrase.replace('-', " ");
    dressed[..1].make_ascii_uppercase();
    for typed in
        [&phrase, &dressed, &phrase.to_uppercase(), &format!(" {} ", phrase.replace('-', " - "))]
    {
        let told = club.browser().sign_in("Enid", typed).await;
        assert_eq!(told.status, StatusCode::SEE_OTHER, "{typed}");
    }
    let other = phrase.rsplit_once('-').unwrap().0.replace('-', " ") + " acorn acorn";
    for typed in [&other, &phrase.replace('-', ""), &phrase[1..].to_owned()] {
        let told = club.browser().sign_in("Enid", typed).await;
        assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY, "{typed}");
    }
}

/// A password of one's own is what was typed, be it made of the words that phrases are drawn from.
#[tokio::test]
async fn a_password_of_ones_own_is_not_taken_for_a_phrase() {
    let club = Club::start().await;
    let slip = club.slip(PLAIN).await;
    let own = phrase::words()[..5].join(" ").to_uppercase();
    let fields = [("name", "Enid"), ("new_password", own.as_str())];
    let joined = club.browser().post(&slip, &fields).await;
    assert_eq!(joined.status, StatusCode::SEE_OTHER, "{}", joined.body);
    assert_eq!(club.browser().sign_in("Enid", &own).await.status, StatusCode::SEE_OTHER);
    let drawn = own.to_lowercase().replace(' ', "-");
    let told = club.browser().sign_in("Enid", &drawn).await;
    assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test]
async fn a_spent_slip_leads_to_the_sign_in_and_that_says_what_to_do() {
    let club = Club::start().await;
    let slip = club.slip(PLAIN).await;
    let fields = [("name", "Enid Hathersage"), ("new_password", PASSWORD)];
    club.browser().post(&slip, &fields).await;
    let spent = club.browser().get(&slip).await;
    assert_eq!(spent.status, StatusCode::BAD_REQUEST);
    for words in ["<a href=\"/sign-in\">It was used by you? Sign in</a>", "<a href=\"/reset\">"] {
        assert!(spent.body.contains(words), "{words} in {}", spent.body);
    }
    let door = club.browser().get("/sign-in").await.body;
    for words in ["Forgotten the password? Ask the secretary", "Lost a slip", "<a href=\"/reset\">"]
    {
        assert!(door.contains(words), "{words} in {door}");
    }
}

#[tokio::test]
async fn s09_a_slip_to_join_works_once_and_for_a_fortnight() {
    let club = Club::start().await;
    let slip = club.slip(PLAIN).await;
    let fields = [("name", "Enid Hathersage"), ("new_password", PASSWORD)];
    let mut browser = club.browser();
    assert_eq!(browser.post(&slip, &fields).await.status, StatusCode::SEE_OTHER);
    for answer in [browser.get(&slip).await, club.browser().post(&slip, &fields).await] {
        assert_eq!(answer.status, StatusCode::BAD_REQUEST);
        assert!(answer.body.contains("This slip is no longer good"), "{}", answer.body);
    }
    assert_eq!(club.count("SELECT COUNT(*) FROM member").await, 1);

    let late = club.slip(PLAIN).await;
    let after = club.later(14 * 24 * 60 * 60 + 1).await;
    assert_eq!(after.browser().get(&late).await.status, StatusCode::BAD_REQUEST);
    let unknown = format!("/join/{}", "0".repeat(64));
    assert_eq!(club.browser().get(&unknown).await.status, StatusCode::BAD_REQUEST);
    assert_eq!(club.browser().get("/join/short").await.status, StatusCode::BAD_REQUEST);
}

#[tokio::test]
async fn s09_two_who_use_one_slip_at_once_make_one_member() {
    let club = Club::start().await;
    let slip = club.slip(PLAIN).await;
    let (mut one, mut two) = (club.browser(), club.browser());
    let first = [("name", "Enid Hathersage"), ("new_password", PASSWORD)];
    let second = [("name", "Percy Wainscott"), ("new_password", PASSWORD)];
    let (one, two) = tokio::join!(one.post(&slip, &first), two.post(&slip, &second));
    let mut told = [one.status, two.status];
    told.sort();
    assert_eq!(told, [StatusCode::SEE_OTHER, StatusCode::BAD_REQUEST]);
    assert_eq!(club.count("SELECT COUNT(*) FROM member").await, 1);
}

#[tokio::test]
async fn s09_a_slip_to_reset_works_once_within_a_week_and_the_old_password_till_then() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    let mut member = club.join("Enid Hathersage", PLAIN).await;
    let address = format!("/people/{}", club.number_of("Enid Hathersage").await);
    let made = secretary.post(&address, &[("do", "reset")]).await;
    assert_eq!(made.status, StatusCode::OK, "{}", made.body);
    let link = made.body.split("<code>https://club.test").nth(1).unwrap();
    let link = link.split('<').next().unwrap().to_owned();
    let token = link.strip_prefix("/reset/").unwrap();
    assert_eq!(token.len(), 64, "256 bits in hexadecimal");
    assert!(!club.dump().await.to_lowercase().contains(token), "only its hash is kept");

    assert_eq!(
        club.browser().sign_in("Enid Hathersage", PASSWORD).await.status,
        StatusCode::SEE_OTHER
    );
    let late = club.later(7 * 24 * 60 * 60 + 1).await;
    assert_eq!(late.browser().get(&link).await.status, StatusCode::BAD_REQUEST);

    let mut browser = club.browser();
    assert_eq!(browser.get(&link).await.status, StatusCode::OK);
    let set = browser.post(&link, &[("new_password", NEW)]).await;
    assert_eq!((set.status, set.header("location")), (StatusCode::SEE_OTHER, "/sign-in"));
    assert_eq!(browser.cookie, None, "the slip stands for the password, not for the code");
    assert!(!member.is_in().await, "every session ended");
    let again = browser.post(&link, &[("new_password", PASSWORD)]).await;
    assert_eq!(again.status, StatusCode::BAD_REQUEST);
    assert_eq!(club.browser().sign_in("Enid Hathersage", NEW).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn a_later_slip_to_reset_makes_the_earlier_void() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    let id = holewright_server::rules::auth::MemberId(club.number_of("Enid Hathersage").await);
    let (first, second) = (Token::new().unwrap(), Token::new().unwrap());
    let (database, now) = (&club.app.database, club.app.clock.now());
    assert!(db::slips::reset(database, now, None, first.hash(), id).await.unwrap());
    assert!(db::slips::reset(database, now, None, second.hash(), id).await.unwrap());
    let mut browser = club.browser();
    let spent = browser.get(&format!("/reset/{}", first.secret())).await;
    assert_eq!(spent.status, StatusCode::BAD_REQUEST);
    assert_eq!(browser.get(&format!("/reset/{}", second.secret())).await.status, StatusCode::OK);
    // And it is no slip to join with.
    let crossed = browser.get(&format!("/join/{}", second.secret())).await;
    assert_eq!(crossed.status, StatusCode::BAD_REQUEST);
}

#[tokio::test]
async fn no_two_members_have_names_that_look_alike() {
    let club = Club::start().await;
    club.join("Zoë O’Leary", PLAIN).await;
    let slip = club.slip(PLAIN).await;
    let mut browser = club.browser();
    for name in ["Zoe O'Leary", "ZOË OLEARY", "zoe  o-leary", "Z0ë O'Leary"] {
        let answer = browser.post(&slip, &[("name", name), ("new_password", PASSWORD)]).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{name}");
        assert!(answer.body.contains("Another member has this name"), "{name}");
    }
    for name in ["", "  ", "---", "Zoe<script>", "Ζoe", "a\u{202e}b", &"x".repeat(61)] {
        let answer = browser.post(&slip, &[("name", name), ("new_password", PASSWORD)]).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{name}");
        assert!(answer.body.contains("href=\"#name\""), "{name}");
        assert!(!answer.body.contains("Zoe<script>"), "shown as text");
    }
    // The slip was not spent by any of these.
    let answer = browser.post(&slip, &[("name", "Zoë Leary"), ("new_password", PASSWORD)]).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn a_newcomer_looks_like_no_member_and_like_no_role() {
    let club = Club::start().await;
    club.join("Sela Marsh", PLAIN).await;
    let slip = club.slip(PLAIN).await;
    let mut browser = club.browser();
    for (name, words) in [
        ("SeIa Marsh", "one that looks the same"),
        ("Sela Ma\u{155}sh", "one that looks the same"),
        ("the server", "what somebody does in the club"),
        ("Inspector", "what somebody does in the club"),
        ("Moderator", "what somebody does in the club"),
        ("Secretary", "what somebody does in the club"),
    ] {
        let answer = browser.post(&slip, &[("name", name), ("new_password", PASSWORD)]).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{name}");
        assert!(answer.body.contains(words), "{name}: {}", answer.body);
        assert!(answer.body.contains(&format!("value=\"{name}\"")), "{name} is given back");
    }
    let answer = browser.post(&slip, &[("name", "Selia Marsh"), ("new_password", PASSWORD)]).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn the_first_secretary_joins_by_the_last_link_that_was_made() {
    let club = Club::start().await;
    let (first, second, third) =
        (Token::new().unwrap(), Token::new().unwrap(), Token::new().unwrap());
    let (database, now) = (&club.app.database, club.app.clock.now());
    assert!(db::slips::invite_first_secretary(database, now, first.hash()).await.unwrap());
    assert!(db::slips::invite_first_secretary(database, now, second.hash()).await.unwrap());
    let fields = [("name", "Una Secretary"), ("new_password", PASSWORD)];
    let mut browser = club.browser();
    let spent = browser.post(&format!("/join/{}", first.secret()), &fields).await;
    assert_eq!(spent.status, StatusCode::BAD_REQUEST, "the earlier is void");
    let joined = browser.post(&format!("/join/{}", second.secret()), &fields).await;
    assert_eq!(joined.status, StatusCode::SEE_OTHER);
    assert_eq!(browser.get("/people").await.status, StatusCode::OK);
    assert!(!db::slips::invite_first_secretary(database, now, third.hash()).await.unwrap());
    let spent = club.browser().get(&format!("/join/{}", third.secret())).await;
    assert_eq!(spent.status, StatusCode::BAD_REQUEST, "the club has one");
}

#[tokio::test]
async fn the_servers_own_link_is_void_once_the_club_has_a_secretary() {
    let club = Club::start().await;
    let (printed, second) = (Token::new().unwrap(), Token::new().unwrap());
    let (database, now) = (&club.app.database, club.app.clock.now());
    assert!(db::slips::invite_first_secretary(database, now, printed.hash()).await.unwrap());
    // Whoever runs the server made two, one for the other secretary to be.
    db::slips::invite(database, now, None, second.hash(), SECRETARY, "").await.unwrap();
    club.join("Una Secretary", SECRETARY).await;
    let spent = club.browser().get(&format!("/join/{}", printed.secret())).await;
    assert_eq!(spent.status, StatusCode::BAD_REQUEST);
    let open = club.browser().get(&format!("/join/{}", second.secret())).await;
    assert_eq!(open.status, StatusCode::OK);
}

#[tokio::test]
async fn the_rights_are_the_slips_and_no_others() {
    let club = Club::start().await;
    club.join("Una Secretary", SECRETARY).await;
    let mut moderator = club.join("Enid Hathersage", MODERATOR).await;
    assert_eq!(moderator.get("/people").await.status, StatusCode::FORBIDDEN);
}

/// The name on the slip is offered where it may be one, to be written over.
#[tokio::test]
async fn joining_offers_the_name_on_the_slip() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    for (meant_for, offered) in [
        ("Percy  Wainscott", "Percy Wainscott"),
        ("", ""),
        ("the first secretary", ""),
        ("p@q", ""),
    ] {
        let slip = una.post("/people/invite", &[("meant_for", meant_for)]).await.body;
        let link = slip.split("<code>https://club.test").nth(1).unwrap();
        let form = club.browser().get(link.split('<').next().unwrap()).await.body;
        let field = format!("name=\"name\" value=\"{offered}\" autocapitalize=\"words\"");
        assert!(form.contains(&field), "{field}: {form}");
    }
}
