//! What was done stands in a line at the head of the next page.

use axum::http::StatusCode;
use holewright_server::rules::deed::Deed;

use super::club::{Browser, Club, INSPECTOR, MODERATOR, PASSWORD, PLAIN, SECRETARY};
use super::second_factor::set_up;
use crate::support::{Answer, NOW};

/// What was told so far.
#[derive(Default)]
struct Told(Vec<Deed>);

impl Told {
    /// The page says that this was done, for a screen reader too, above everything else.
    #[track_caller]
    fn on(&mut self, page: &Answer, deed: Deed) {
        self.said(page, deed, deed.what());
    }

    /// The same where it says to whom, or to how many.
    #[track_caller]
    fn said(&mut self, page: &Answer, deed: Deed, what: &str) {
        let (_, main) =
            page.body.split_once(&line(what)).unwrap_or_else(|| panic!("{what}: {}", page.body));
        assert!(main.contains(deed.next()), "{}: {}", deed.next(), page.body);
        self.0.push(deed);
    }
}

impl Told {
    /// The page says so where one lands on it, and not at its head, which is scrolled away.
    #[track_caller]
    fn below(&mut self, page: &Answer, deed: Deed, place: &str) {
        let line = format!("<p class=\"done\" role=\"status\"><strong>{}</strong>", deed.what());
        let (head, there) = page.body.split_once(place).unwrap();
        assert!(there.trim_start().starts_with(&line), "{}: {}", deed.what(), page.body);
        assert!(!head.contains("class=\"done\"") && there.contains(deed.next()), "{}", page.body);
        self.0.push(deed);
    }

    /// The queue says that this was done to the note with this title, and offers to undo it.
    #[track_caller]
    fn named(&mut self, page: &Answer, deed: Deed, title: &str) {
        let said = deed.what_of(title);
        let line = format!("<p class=\"done\" role=\"status\"><strong>{said}</strong>");
        let (_, main) = page.body.split_once("<main id=\"main\">\n").unwrap();
        assert!(main.starts_with(&line) && said.starts_with(title), "{said}: {}", page.body);
        // Undo stands right below it, before the page's own head.
        let (below, _) = main.split_once("<h1>The queue</h1>").unwrap();
        let undo = "name=\"do\" value=\"undo\">Undo: within the minute</button>";
        assert!(below.contains(undo), "{said}: {}", page.body);
        self.0.push(deed);
    }
}

/// The line of a page that says what was made.
fn line(made: &str) -> String {
    format!("<main id=\"main\">\n<p class=\"done\" role=\"status\"><strong>{made}</strong>")
}

const NOTE: [(&str, &str); 3] =
    [("title", "Tapping 4 BA in gunmetal"), ("text", "It went well."), ("material", "gunmetal")];

fn with<'a>(more: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    NOTE.iter().chain(more).copied().collect()
}

/// The number in the address that a page stands for.
fn number_in(page: &Answer, before: &str) -> String {
    let (_, rest) = page.body.split_once(before).unwrap();
    rest.chars().take_while(char::is_ascii_digit).collect()
}

async fn pass(moderator: &mut Browser, id: &str) {
    let queue = moderator.get("/queue").await;
    let version = number_in(&queue, &format!("name=\"version-{id}\" value=\""));
    moderator.post(&format!("/queue/{id}"), &[("version", version.as_str()), ("do", "pass")]).await;
}

#[tokio::test]
async fn each_act_is_told_on_the_page_after_it() {
    let club = Club::start().await;
    let mut told = Told::default();
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let mut bert = club.join("Bert Stone", MODERATOR).await;
    let slip = club.slip(PLAIN).await;
    let mut ada = club.browser();
    let fields = [("name", "Ada Penn"), ("new_password", PASSWORD)];
    told.on(&ada.submit(&slip, &fields).await, Deed::Joined);

    // A note from the desk to the day it is withdrawn.
    let page = ada.submit("/notes/new", &with(&[("do", "draft")])).await;
    told.on(&page, Deed::Saved);
    let id = number_in(&page, "action=\"/notes/");
    let place = format!("/notes/{id}");
    told.on(
        &ada.submit(&format!("{place}/withdraw"), &[("why", "Not now")]).await,
        Deed::Discarded,
    );
    let page = ada.submit("/notes/new", &with(&[("do", "send")])).await;
    told.below(&page, Deed::SentIn, "<li id=\"note-2\">");
    assert!(page.body.contains("A moderator reads it first;"), "{}", page.body);
    let id = number_in(&page, "id=\"note-");
    let place = format!("/notes/{id}");
    pass(&mut bert, &id).await;
    let verdict = format!("{place}/verdict");
    told.on(&bert.submit(&verdict, &[("found", "worked"), ("size", "4 BA")]).await, Deed::Judged);
    let page = ada.get("/notes/mine").await;
    let until = number_in(&page, "name=\"until\" value=\"");
    let count = number_in(&page, "name=\"count\" value=\"");
    let fields = [("until", until.as_str()), ("count", count.as_str())];
    told.on(&ada.submit("/notes/mine", &fields).await, Deed::ReadNews);
    let why = [("found", "worked"), ("reason", "Paraffin helped.")];
    told.on(&bert.submit(&verdict, &why).await, Deed::JudgedWithWhy);
    told.on(&bert.submit(&verdict, &[("do", "away")]).await, Deed::TookBack);
    una.post(&verdict, &[("found", "did-not"), ("size", "4 BA")]).await;
    let of = club.number_of("Una Secretary").await.to_string();
    let page = bert.submit(&verdict, &[("do", "away"), ("of", of.as_str())]).await;
    told.on(&page, Deed::TookAway);
    for (what, deed) in [("show", Deed::ShowedRemark), ("decline", Deed::DeclinedRemark)] {
        let page = una.submit(&format!("{place}/remark"), &[("remark", what)]).await;
        told.on(&page, Deed::Remarked);
        let remark = club.count("SELECT max(id) FROM remark").await.to_string();
        let fields = [("remark", remark.as_str()), ("do", what), ("reason", "No.")];
        told.on(&bert.submit("/queue/remarks", &fields).await, deed);
        if deed == Deed::ShowedRemark {
            let fields =
                [&[("do", "decline"), ("back", "note")], &fields[..1], &fields[2..]].concat();
            told.on(&bert.submit("/queue/remarks", &fields).await, Deed::TookRemarkAway);
        }
    }
    una.submit(&format!("{place}/remark"), &[("remark", "Mine too.")]).await;
    let remark = club.count("SELECT max(id) FROM remark").await.to_string();
    let back = [("of", remark.as_str()), ("do", "away")];
    told.on(&una.submit(&format!("{place}/remark"), &back).await, Deed::TookRemarkBack);
    let version = club.count("SELECT max(id) FROM note_version").await.to_string();
    let fields = [("version", version.as_str()), ("correction", "Use paraffin.")];
    told.on(&bert.submit(&format!("{place}/correct"), &fields).await, Deed::Corrected);
    let page = bert.submit(&format!("{place}/report"), &[("danger", "The swarf flies.")]).await;
    told.on(&page, Deed::Reported);
    told.on(&ada.submit(&format!("{place}/withdraw"), &[("why", "Wrong")]).await, Deed::Withdrew);

    decisions(&club, &mut told, [&mut una, &mut bert]).await;

    // A member's own pages.
    let feed = ada.post("/me/feed", &[("do", "make")]).await.body;
    assert!(feed.contains(&line("The address is made.")), "{feed}");
    told.on(&ada.submit("/me/feed", &[("do", "void")]).await, Deed::VoidedFeed);
    let mut other = club.browser();
    for (ends, deed) in [("others", Deed::EndedOthers), ("one", Deed::EndedSession)] {
        other.sign_in("Ada Penn", PASSWORD).await;
        let newest = club.count("SELECT max(number) FROM session").await.to_string();
        let ends = if ends == "one" { newest.as_str() } else { ends };
        told.on(&ada.submit("/me", &[("end", ends)]).await, deed);
    }
    let new = "seven brass otters sleeping";
    let fields = [("password", PASSWORD), ("new_password", new)];
    told.on(&ada.submit("/me/password", &fields).await, Deed::ChangedPassword);
    set_up(&mut ada, NOW).await;
    told.on(&ada.get("/me").await, Deed::SetSecondFactor);
    let page = ada.get("/me").await;
    let next = "<a href=\"/me/second-factor#spare\">Next, make ten spare codes</a></p>";
    assert!(page.body.contains(next), "{}", page.body);
    let codes = ada.post("/me/second-factor", &[("do", "spare")]).await.body;
    assert!(codes.contains(&line("Ten spare codes are made.")), "{codes}");
    assert!(!codes.contains("Codes from before"), "{codes}");
    let mut elsewhere = club.browser();
    elsewhere.sign_in("Ada Penn", new).await;
    let form = elsewhere.get("/sign-in/code").await.body;
    let (above, below) = form.split_once("<form action=\"/sign-in/code\"").unwrap();
    assert!(!above.contains("spare codes") && below.contains("ask the secretary"), "{form}");
    let code = codes.split("<li><strong>").nth(1).unwrap().split('<').next().unwrap();
    let page = elsewhere.submit("/sign-in/code", &[("code", code)]).await;
    told.on(&page, Deed::UsedSpareCode);
    assert!(page.body.contains("</strong> 9 are left."), "{}", page.body);
    let codes = ada.post("/me/second-factor", &[("do", "spare")]).await.body;
    assert!(codes.contains("Codes from before are no longer good."), "{codes}");
    let page = ada.submit("/me/second-factor", &[("do", "drop")]).await;
    told.on(&page, Deed::DroppedSecondFactor);
    told.on(&ada.submit("/sign-out", &[]).await, Deed::SignedOut);

    // What the secretary does.
    let tips = "title,text,source\nReaming,Slow.,\"Newsletter 12, 1987\"\n";
    let page = una.submit("/notes/import", &[("tips", tips)]).await;
    assert!(page.body.contains(&line("One tip is sent in.")), "{}", page.body);
    assert!(page.body.contains(Deed::SentTips.next()), "{}", page.body);
    let again = una.submit("/notes/import", &[("tips", tips)]).await;
    assert!(again.body.contains(&line("No tip is sent in.")), "{}", again.body);
    let tips = "title,text,source\nBoring,Slow.,\"Newsletter 13, 1988\"\nFiling,Slow.,\"Newsletter 13, 1988\"\n";
    let page = una.submit("/notes/import", &[("tips", tips)]).await;
    let counted = Deed::SentTips.what().replace("The tips", "2 tips");
    told.said(&page, Deed::SentTips, &counted);
    let number = club.number_of("Ada Penn").await;
    let member = format!("/people/{number}");
    told.on(&una.submit(&member, &[("do", "stop")]).await, Deed::Stopped);
    told.on(&una.submit(&member, &[("do", "allow")]).await, Deed::Allowed);
    let page = una.submit(&member, &[("do", "rights"), ("moderator", "yes")]).await;
    told.on(&page, Deed::SetRights);
    let page = una.submit(&member, &[("do", "drop-second-factor")]).await;
    told.on(&page, Deed::TookSecondFactor);
    let code = una.post(&member, &[("do", "read-out")]).await.body;
    assert!(code.contains(&line("The code is made.")), "{code}");
    let slip = una.post(&member, &[("do", "reset")]).await;
    assert!(slip.body.contains(&line("The slip is made.")), "{}", slip.body);
    assert!(slip.body.contains("works until the new one is chosen."), "{}", slip.body);
    let (_, rest) = slip.body.split_once("https://club.test/reset/").unwrap();
    let reset = format!("/reset/{}", rest.split('<').next().unwrap());
    let page = ada.submit(&reset, &[("new_password", PASSWORD)]).await;
    told.on(&page, Deed::ResetPassword);
    una.post("/people/invite", &[("meant_for", "Cyril")]).await;
    let run_out = "UPDATE slip SET made_at = 1, ends_at = 2 WHERE meant_for = 'Cyril'";
    sqlx::query(run_out).execute(club.app.database.pools()[1]).await.unwrap();
    let people = una.get("/people").await;
    let (_, mark) = people.body.split_once("name=\"away\" value=\"").unwrap();
    let page = una.submit("/people", &[("away", mark.split('"').next().unwrap())]).await;
    told.below(&page, Deed::PutSlipAway, "<h2 id=\"slips\">Open slips</h2>");
    una.post("/people/invite", &[("meant_for", "Cyril")]).await;
    let people = una.get("/people").await;
    let (_, mark) = people.body.split_once("name=\"void\" value=\"").unwrap();
    let mark = mark.split('"').next().unwrap();
    let page = una.submit("/people", &[("void", mark)]).await;
    told.below(&page, Deed::VoidedSlip, "<h2 id=\"slips\">Open slips</h2>");
    let page = una.submit("/people/club", &[("club_name", "Marlbeck")]).await;
    told.on(&page, Deed::NamedClub);
    let fields = [("club_name", "Marlbeck"), ("zone", "London")];
    told.on(&una.submit("/people/club", &fields).await, Deed::SetClock);
    let page = una.submit(&member, &[("do", "remove"), ("notes", "keep")]).await;
    told.said(&page, Deed::Removed, &Deed::Removed.what().replace("The member", "Ada Penn"));
    let fields = [("password", PASSWORD), ("notes", "keep")];
    told.on(&bert.submit("/me/leave", &fields).await, Deed::Left);

    let silent: Vec<_> = Deed::ALL.iter().filter(|deed| !told.0.contains(deed)).collect();
    assert!(silent.is_empty(), "nothing here does this: {silent:?}");
}

/// Una writes, and Bert decides.
async fn decisions(club: &Club, told: &mut Told, [una, bert]: [&mut Browser; 2]) {
    let title = "Tapping 4 BA in gunmetal";
    let page = una.submit("/notes/new", &with(&[("do", "send")])).await;
    let id = number_in(&page, "id=\"note-");
    let path = format!("/queue/{id}");
    for (what, deed) in [
        ("pass", Deed::Showed),
        ("change", Deed::AskedBack),
        ("decline", Deed::TurnedDown),
        ("over", Deed::HandedOver),
    ] {
        let version = club.count("SELECT max(id) FROM note_version").await.to_string();
        let reason = if matches!(what, "change" | "decline") { "Which oil?" } else { "" };
        let fields = [("version", version.as_str()), ("do", what), ("reason", reason)];
        told.named(&bert.submit(&path, &fields).await, deed, title);
        let page = bert.submit(&path, &[("do", "undo")]).await;
        told.on(&page, Deed::Undid);
        assert!(!page.body.contains("value=\"undo\""), "{}", page.body);
    }
    // One that is reported, and one after which nothing waits.
    pass(bert, &id).await;
    bert.submit(&format!("/notes/{id}/report"), &[("danger", "It flies.")]).await;
    let version = club.count("SELECT max(id) FROM note_version").await.to_string();
    let last = club.count("SELECT max(id) FROM safety_report").await.to_string();
    let correction = club.count("SELECT coalesce(max(id), 0) FROM correction").await.to_string();
    let read = [("version", &*version), ("last", &*last), ("correction", &*correction)];
    let settle = [&read[..], &[("do", "settle")]].concat();
    told.named(&bert.submit(&path, &settle).await, Deed::Settled, title);
    // Several of one member's.
    let page = una.submit("/notes/new", &with(&[("do", "send")])).await;
    let other = number_in(&page, "id=\"note-");
    pass(bert, &other).await;
    let mut cara = club.join("Cara Finch", PLAIN).await;
    for id in [&id, &other] {
        cara.submit(&format!("/notes/{id}/report"), &[("danger", "Again.")]).await;
    }
    let queue = bert.get("/queue").await;
    let (_, form) = queue.body.split_once("action=\"/queue/reports\"").unwrap();
    let field = |name: &str| {
        let begin = format!("name=\"{name}\" value=\"");
        form.split_once(&begin).unwrap().1.split('"').next().unwrap().to_owned()
    };
    let all = ["of", "last", "read"].map(|name| (name, field(name)));
    let all = all.each_ref().map(|(name, value)| (*name, value.as_str()));
    told.on(&bert.submit("/queue/reports", &all).await, Deed::SettledAll);
    // An inspector finds that it is a usual one.
    let mut ina = club.join("Ina Flint", INSPECTOR).await;
    let boiler = [("title", "Boiler bush"), ("text", "LG2"), ("do", "send")];
    let page = una.submit("/notes/new", &boiler).await;
    let id = number_in(&page, "id=\"note-");
    let version = club.count("SELECT max(id) FROM note_version").await.to_string();
    let back = [("version", version.as_str()), ("do", "back")];
    told.named(&ina.submit(&format!("/queue/{id}"), &back).await, Deed::TurnedBack, "Boiler bush");
}

#[tokio::test]
async fn what_was_done_is_told_on_that_page_alone_and_by_no_address() {
    let club = Club::start().await;
    let mut ada = club.join("Ada Penn", PLAIN).await;
    let fields = [("password", PASSWORD), ("new_password", "seven brass otters sleeping")];
    let page = ada.submit("/me/password", &fields).await;
    assert!(page.body.contains(Deed::ChangedPassword.what()));
    let cookie = ada.told.clone().unwrap();
    assert!(cookie.ends_with("; Path=/me; Max-Age=60; HttpOnly; SameSite=Strict; Secure"));
    for other in ["/notes/mine", "/me/feed", "/me/second-factor"] {
        assert!(!ada.get(other).await.body.contains("class=\"done\""), "{other}");
    }
    ada.told = None;
    for address in ["/me", "/me?done=changed-password", "/sign-in?done=signed-out"] {
        let page = ada.get(address).await;
        assert_eq!(page.status, StatusCode::OK);
        assert!(!page.body.contains("class=\"done\""), "{address}");
    }
}

#[tokio::test]
async fn it_says_how_long_most_notes_waited_of_late() {
    let club = Club::start().await;
    let mut ada = club.join("Ada Penn", PLAIN).await;
    let writer = club.app.database.pools()[1];
    // Ten were answered: seven within the day, one after two days, two after nine; one of long ago took a year.
    let days = [0, 0, 0, 0, 0, 0, 0, 2, 9, 9];
    let long_ago = (NOW - 100 * 86_400, 365);
    let waited = days.map(|days| (NOW - 86_400, days)).into_iter().chain([long_ago]);
    for (number, (decided, days)) in waited.enumerate() {
        let sent = decided - days * 86_400;
        let note = format!(
            "INSERT INTO note (id, form_key, made_at) VALUES ({number} + 100, 'key-of-a-note-{number:02}', {sent});
             INSERT INTO note_version (note_id, state, title, text, made_at, saved_at, decided_at, reason)
             VALUES ({number} + 100, 'declined', 'A', 'b', {sent}, {sent}, {decided}, 'no')"
        );
        sqlx::raw_sql(sqlx::AssertSqlSafe(note)).execute(writer).await.unwrap();
    }
    let page = ada.submit("/notes/new", &with(&[("do", "send")])).await;
    assert!(page.body.contains("most are answered within 2 days."), "{}", page.body);
    sqlx::raw_sql("DELETE FROM note WHERE id > 103").execute(writer).await.unwrap();
    let page = ada.submit("/notes/new", &with(&[("do", "send")])).await;
    assert!(page.body.contains("what became of it will stand here."), "{}", page.body);
}
