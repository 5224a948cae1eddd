//! The notes on paper: those of a month and the best confirmed, as a page and as plain text.

use axum::http::StatusCode;

use super::club::{Club, Person, Right};
use crate::support::NOW;

/// What every note in gunmetal says on paper.
const LEAD: &str = "Danger, gunmetal: The swarf holds lead: wash your hands before food or drink, and do not sweep the swarf dry.";

struct Printed {
    club: Club,
    author: Person,
    moderator: Person,
}

impl Printed {
    async fn open() -> Self {
        let club = Club::open().await;
        let author = club.join("Ada Penn", Right::None).await;
        let moderator = club.join("Bert Stone", Right::Moderator).await;
        Self { club, author, moderator }
    }

    /// A shown note, passed so long before now.
    async fn note(&self, title: &str, text: &str, earlier: i64) -> i64 {
        let fields = [("title", title), ("text", text), ("material", "gunmetal")];
        let note = self.club.shown(&self.author, &self.moderator, &fields).await;
        let [_, writer] = self.club.app.database.pools();
        let moved = "UPDATE note SET shown_at = ? WHERE id = ?";
        sqlx::query(moved).bind(NOW - earlier).bind(note).execute(writer).await.unwrap();
        note
    }

    async fn get(&self, issue: &str) -> String {
        let answer = self.club.get(&format!("/notes/newsletter/{issue}"), None).await;
        assert_eq!(answer.status, StatusCode::OK, "{issue}: {}", answer.body);
        answer.body
    }
}

/// 15 January 2027 is now: so many seconds ago it was the last second of the year before.
const LAST_YEAR: i64 = NOW - 1_798_761_600 + 1;

#[tokio::test]
async fn a_month_holds_what_was_shown_in_it_and_nothing_else() {
    let printed = Printed::open().await;
    printed.note("Of January", "Went **well** < here.", 0).await;
    printed.note("Of the first second", "As well.", LAST_YEAR - 1).await;
    printed.note("Of December", "Did not.", LAST_YEAR).await;
    let hidden = printed.note("Reported", "Nobody sees it.", 0).await;
    let report = format!("/notes/{hidden}/report");
    printed.club.post(&report, Some(&printed.moderator), &[("danger", "It flies.")]).await;
    printed.club.send_in(&printed.author, &[("title", "Waits"), ("text", "Unread.")]).await;
    for (issue, held, not) in [
        ("2027-01", ["Of January", "Of the first second"].as_slice(), ["Of December"].as_slice()),
        ("2026-12", &["Of December"], &["Of January", "Of the first second"]),
        ("2026-11", &["No note was shown."], &["Of December"]),
    ] {
        for issue in [issue.to_owned(), format!("{issue}.txt")] {
            let page = printed.get(&issue).await;
            let text = page.to_lowercase();
            for title in held {
                assert!(text.contains(&title.to_lowercase()), "{issue} lacks {title}: {page}");
            }
            for title in not.iter().chain(&["Reported", "Nobody sees", "Waits", "Unread"]) {
                assert!(!text.contains(&title.to_lowercase()), "{issue} has {title}: {page}");
            }
        }
    }
    let plain = printed.club.get("/notes/newsletter/2027-01.txt", None).await;
    assert_eq!(plain.header("content-type"), "text/plain; charset=utf-8");
    let begins = format!(
        "OF JANUARY\nAda Penn, 15 January 2027\nMaterial: gunmetal\n\n{LEAD}\n\nWent **well** < here.\n"
    );
    assert!(plain.body.contains(&begins), "{}", plain.body);
    assert!(plain.body.contains("https://club.test/notes/1\n"), "{}", plain.body);
    for issue in ["2027-01", "2027-01.txt"] {
        let page = printed.get(issue).await;
        assert!(page.contains("Keep eyes covered and work clamped"), "{page}");
    }
    let page = printed.get("2027-01").await;
    assert!(page.contains("Went <strong>well</strong> &lt; here."), "{page}");
}

#[tokio::test]
async fn the_best_are_those_that_most_members_found_to_work() {
    let printed = Printed::open().await;
    let [one, two, _] = [
        printed.note("Worked once", "A.", 0).await,
        printed.note("Worked twice", "B.", 0).await,
        printed.note("Nobody said", "C.", 0).await,
    ];
    let other = printed.club.join("Cyril Moss", Right::None).await;
    for (note, by) in [(one, &other), (two, &other), (two, &printed.moderator)] {
        let verdict = format!("/notes/{note}/verdict");
        let answer = printed.club.post(&verdict, Some(by), &[("found", "worked")]).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    let page = printed.get("best").await;
    let at = |title| page.find(title).unwrap_or_else(|| panic!("{title}: {page}"));
    assert!(at("Worked twice") < at("Worked once"));
    assert!(!page.contains("Nobody said"), "{page}");
    assert!(page.contains("Worked for 2 members."), "{page}");
    // What a correction says travels with the text it corrects.
    let version = printed.club.version(two, "shown").await.to_string();
    let fields = [("version", version.as_str()), ("correction", "Use *paraffin*.")];
    printed.club.post(&format!("/notes/{two}/correct"), Some(&printed.moderator), &fields).await;
    let plain = printed.get("best.txt").await;
    let words =
        format!("Correction: Use *paraffin*.\n\n{LEAD}\n\nThe text that was corrected: B.\n");
    assert!(plain.contains(&words), "{plain}");
    let page = printed.get("best").await;
    assert!(page.contains("Use <em>paraffin</em>.") && page.contains("<del>"), "{page}");
}

#[tokio::test]
async fn what_does_not_fit_is_counted_and_what_is_no_month_is_not_there() {
    let printed = Printed::open().await;
    let long = "It went well. ".repeat(1_400);
    for title in ["First", "Second", "Third", "Fourth", "Fifth"] {
        printed.note(title, long.trim(), 0).await;
    }
    let page = printed.get("2027-01").await;
    assert!(page.contains("Third") && !page.contains("Fourth"), "60,000 letters");
    assert!(page.contains("2 more are among the notes: they did not fit."));
    for none in ["2027-02", "2026-13", "worst", "2027-01.csv", "2027-01.txt.txt", "best."] {
        let answer = printed.club.get(&format!("/notes/newsletter/{none}"), None).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{none}: {}", answer.body);
    }
    let index = printed.club.get("/notes/newsletter", None).await.body;
    for address in ["best", "2027-01", "2026-02"] {
        assert!(index.contains(&format!("href=\"/notes/newsletter/{address}\"")), "{index}");
    }
    let notes = printed.club.get("/notes", None).await.body;
    assert!(notes.contains("href=\"/notes/newsletter\""), "{notes}");
}
