//! A request of a history, sent to the server, and its answer read.

use std::sync::{Arc, Mutex};

use axum::http::StatusCode;
use holewright_server::db::notes;
use holewright_server::rules::notes::state::Refused;

use super::model::{Answer, Asked, Item, Listed, Number, Seen, Standing, Text, What, Who, Why};
use crate::notes::club::{Club, Person};
use crate::support::Answer as Page;

/// What every note here belongs to, and the page that shows it.
const DRILL: &str = "No. 43";
const KEPT: &str = "/drills/number/43";

/// One note and those who ask about it.
pub(super) struct Scene {
    pub(super) club: Arc<Club>,
    /// Its words are found in no other note.
    pub(super) history: usize,
    pub(super) note: i64,
    /// In the order of [`Who::ALL`].
    pub(super) people: [Person; 4],
    /// The server's numbers of the wordings, in the order in which answers told them.
    numbers: Mutex<Vec<i64>>,
}

impl Scene {
    /// Sends in a new note with the first text.
    pub(super) async fn open(club: &Arc<Club>, history: usize, people: [Person; 4]) -> Self {
        let club = Arc::clone(club);
        let mut scene = Self { club, history, note: 0, people, numbers: Mutex::default() };
        let [title, text] = scene.wording(0);
        let fields = [("title", title.as_str()), ("text", text.as_str()), ("drill", DRILL)];
        scene.note = scene.club.send_in(scene.person(Who::Author), &fields).await;
        scene
    }

    /// Takes the note out of the way of those that follow.
    pub(super) async fn close(&self) {
        let author = Some(self.person(Who::Author));
        let path = format!("/notes/{}/withdraw", self.note);
        let answer = self.club.post(&path, author, &[("why", "It is over.")]).await;
        let is_over = [StatusCode::SEE_OTHER, StatusCode::CONFLICT].contains(&answer.status);
        assert!(is_over, "{}: {}", answer.status, answer.body);
    }

    pub(super) async fn ask(&self, Asked { by, what }: Asked) -> Answer {
        match what {
            What::Save(text) => self.write("draft", text).await,
            What::SendIn(text) => self.write("send", text).await,
            What::Pass(number) => self.decide(by, "pass", number).await,
            What::AskForChange(number) => self.decide(by, "change", number).await,
            What::Decline(number) => self.decide(by, "decline", number).await,
            What::Settle(number) => self.decide(by, "settle", number).await,
            What::Undo => {
                let path = format!("/queue/{}", self.note);
                done(&self.club.post(&path, Some(self.person(by)), &[("do", "undo")]).await)
            }
            What::Mend(number, text) => {
                let version = self.version(number);
                let [title, words] = self.wording(text);
                let fields = [
                    ("version", version.as_str()),
                    ("last", "9223372036854775807"),
                    ("correction", "9223372036854775807"),
                    ("title", &title),
                    ("text", &words),
                    ("drill", DRILL),
                ];
                let path = format!("/queue/{}/mend", self.note);
                done(&self.club.post(&path, Some(self.person(by)), &fields).await)
            }
            // One of the two moderators withdraws it in the queue, the other on its page.
            What::Withdraw if by == Who::Moira => self.decide(by, "withdraw", None).await,
            What::Withdraw => self.post(by, "withdraw", &[("why", &reason(by))]).await,
            What::Correct(number, text) => {
                let (version, said) = (self.version(number), self.sentence('c', text));
                self.post(by, "correct", &[("version", &version), ("correction", &said)]).await
            }
            What::Report(text) => {
                self.post(by, "report", &[("danger", &self.sentence('d', text))]).await
            }
            What::Judge(worked) => {
                let found = if worked { "worked" } else { "did-not" };
                self.post(by, "verdict", &[("found", found), ("material", "brass")]).await
            }
            What::TakeBack => self.post(by, "verdict", &[("do", "away")]).await,
            What::TakeAway => {
                let of = self.person(Who::Reader).id.to_string();
                self.post(by, "verdict", &[("do", "away"), ("of", &of)]).await
            }
            What::Remark(text) => {
                self.post(by, "remark", &[("remark", &self.sentence('r', text))]).await
            }
            What::TakeRemarkBack(text) => {
                let of = self.remark(text).await;
                self.post(by, "remark", &[("do", "away"), ("of", &of)]).await
            }
            What::ShowRemark(text) => self.decide_remark(by, "show", text).await,
            What::DeclineRemark(text) => self.decide_remark(by, "decline", text).await,
            What::Look => self.queue(&self.get("/queue", Some(by)).await),
            What::Open => {
                let path = format!("/notes/{}", self.note);
                let answer = self.club.get(&path, Some(self.person(by))).await;
                Answer::Page(self.page(&answer))
            }
            What::FindWording(text) => self.search(self.word('w', text)).await,
            What::FindCorrection(text) => self.search(self.word('c', text)).await,
            What::List => self.listed(&self.get("/notes.json", None).await),
            What::Kept => self.item(&self.get(KEPT, None).await),
        }
    }

    fn person(&self, who: Who) -> &Person {
        &self.people[Who::ALL.iter().position(|one| *one == who).unwrap()]
    }

    /// A word that stands nowhere else: it ends in a letter, so that none begins as another.
    fn word(&self, kind: char, text: Text) -> String {
        format!("h{}{kind}{text}z", self.history)
    }

    fn sentence(&self, kind: char, text: Text) -> String {
        format!("Rather {} than not.", self.word(kind, text))
    }

    /// The words of this kind, in their order.
    fn words(&self, kind: char, body: &str) -> Vec<Text> {
        let begin = format!("h{}{kind}", self.history);
        let ends = body.split(begin.as_str()).skip(1);
        ends.filter_map(|end| end.split_once('z')?.0.parse().ok()).collect()
    }

    fn wording(&self, text: Text) -> [String; 2] {
        [format!("History {}, wording {text}", self.history), self.sentence('w', text)]
    }

    /// The wording with this title.
    fn titled(&self, body: &str) -> Text {
        let title = format!("History {}, wording ", self.history);
        let (_, text) = body.split_once(title.as_str()).unwrap_or_else(|| panic!("{body}"));
        text.split(|c: char| !c.is_ascii_digit()).next().unwrap().parse().unwrap()
    }

    /// The wording that stands here whole: its title with its own text.
    fn whole(&self, body: &str) -> Text {
        let text = self.titled(body);
        assert!(self.words('w', body).contains(&text), "wording {text} without its text: {body}");
        text
    }

    /// The server's number.
    fn version(&self, number: Option<Number>) -> String {
        let numbers = self.numbers.lock().unwrap();
        number.map_or(0, |number| numbers[number]).to_string()
    }

    /// The history's number for the one in this form, if there is such a form.
    fn number(&self, body: &str) -> Option<Number> {
        let (_, version) = body.split_once("name=\"version")?;
        let (_, version) = version.split_once("value=\"")?;
        let version: i64 = version.split_once('"')?.0.parse().unwrap();
        let mut numbers = self.numbers.lock().unwrap();
        Some(numbers.iter().position(|known| *known == version).unwrap_or_else(|| {
            numbers.push(version);
            numbers.len() - 1
        }))
    }

    async fn get(&self, path: &str, by: Option<Who>) -> Page {
        let answer = self.club.get(path, by.map(|by| self.person(by))).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}: {}", answer.body);
        answer
    }

    async fn write(&self, what: &str, text: Text) -> Answer {
        let [title, words] = self.wording(text);
        let fields = [("do", what), ("title", &title), ("text", &words), ("drill", DRILL)];
        self.post(Who::Author, "edit", &fields).await
    }

    async fn decide(&self, by: Who, what: &str, number: Option<Number>) -> Answer {
        let tells = matches!(what, "change" | "decline" | "withdraw");
        let reason = if tells { reason(by) } else { String::new() };
        let version = self.version(number);
        // Every report and correction was read: what comes between is another test's.
        let fields = [
            ("version", version.as_str()),
            ("do", what),
            ("reason", &reason),
            ("last", "9223372036854775807"),
            ("correction", "9223372036854775807"),
        ];
        done(
            &self.club.post(&format!("/queue/{}", self.note), Some(self.person(by)), &fields).await,
        )
    }

    async fn post(&self, by: Who, act: &str, fields: &[(&str, &str)]) -> Answer {
        let path = format!("/notes/{}/{act}", self.note);
        done(&self.club.post(&path, Some(self.person(by)), fields).await)
    }

    /// The server's number of a remark; of one that is not there yet none.
    async fn remark(&self, text: Text) -> String {
        let number: i64 =
            sqlx::query_scalar("SELECT coalesce(max(id), 0) FROM remark WHERE text = ?")
                .bind(self.sentence('r', text))
                .fetch_one(self.club.app.database.pools()[0])
                .await
                .unwrap();
        number.to_string()
    }

    async fn decide_remark(&self, by: Who, what: &str, text: Text) -> Answer {
        let number = self.remark(text).await;
        let reason = if what == "show" { String::new() } else { reason(by) };
        let fields = [("remark", number.as_str()), ("do", what), ("reason", &reason)];
        done(&self.club.post("/queue/remarks", Some(self.person(by)), &fields).await)
    }

    async fn search(&self, word: String) -> Answer {
        self.item(&self.get(&format!("/notes?q={word}"), None).await)
    }

    /// The note in a list.
    fn item(&self, answer: &Page) -> Answer {
        let begin = format!("<li><a href=\"/notes/{}\">", self.note);
        let item = answer.body.split_once(begin.as_str()).map(|(_, item)| {
            let (item, _) = item.split_once("</li>").unwrap();
            // The newest correction stands in the place of the text.
            let corrected = item.split_once("<strong>Corrected:</strong>");
            let corrections = corrected.map(|(_, said)| self.words('c', said));
            Listed {
                text: self.titled(item),
                corrections: corrections.unwrap_or_default(),
                found: [["Worked for "; 2], ["Did not work for ", "did not for "]]
                    .map(|words| words.iter().find_map(|before| count(item, before)).unwrap_or(0)),
            }
        });
        Answer::Shown(item)
    }

    /// The note among all as JSON.
    fn listed(&self, answer: &Page) -> Answer {
        let all = answer.json();
        let mut notes = all["notes"].as_array().unwrap().iter();
        Answer::Shown(notes.find(|note| note["id"] == self.note).map(|note| {
            let corrections = note["corrections"].as_array().unwrap().iter();
            let said: String = corrections.map(|said| said["text"].as_str().unwrap()).collect();
            let text = format!("{} {}", note["title"], note["text"]);
            let found = ["worked", "did_not"].map(|key| note[key].as_u64().unwrap());
            Listed {
                text: self.whole(&text),
                corrections: self.words('c', &said),
                found: found.map(|count| usize::try_from(count).unwrap()),
            }
        }))
    }

    fn queue(&self, answer: &Page) -> Answer {
        let begin = format!("<h2 id=\"note-{}\">", self.note);
        Answer::Queue(answer.body.split_once(begin.as_str()).map(|(_, item)| {
            let (item, _) = item.split_once("</section>").unwrap();
            let reports = item.split("<li>").skip(1).filter_map(|report| {
                let (name, said) = report.split_once("</li>")?.0.split_once(": ")?;
                Some((who(name)?, *self.words('d', said).first()?))
            });
            let reports = reports.collect();
            let fix = item.split_once("<h3>A new wording waits</h3>").map(|(_, fix)| {
                let (_, fix) = fix.split_once("<h3>As it would stand</h3>").unwrap();
                (*self.words('w', fix).first().unwrap(), self.number(fix).unwrap())
            });
            Item { text: self.whole(item), number: self.number(item).unwrap(), reports, fix }
        }))
    }

    fn page(&self, answer: &Page) -> Seen {
        // What its author wrote since stands folded beside what readers see.
        let newer = answer.body.split_once("<summary>Your newer wording</summary>");
        let rest =
            newer.and_then(|(before, newer)| Some((before, newer.split_once("</details>")?.1)));
        let body =
            &rest.map_or_else(|| answer.body.clone(), |(before, after)| format!("{before}{after}"));
        match answer.status {
            // Whoever reported it is told that the report is in.
            StatusCode::OK if body.contains("Your report is in") => return Seen::Hidden,
            StatusCode::OK => {}
            // What an author says is read by nobody first, and so not shown.
            StatusCode::GONE if body.contains("Its author took it back.") => {
                return Seen::Withdrawn(Who::Author);
            }
            StatusCode::GONE => return Seen::Withdrawn(giver(body, "Why: ").unwrap()),
            StatusCode::NOT_FOUND if body.contains("this note is hidden") => return Seen::Hidden,
            StatusCode::NOT_FOUND => return Seen::Nothing,
            other => panic!("{other}: {body}"),
        }
        let standing = if body.contains("Hidden from readers") {
            Standing::Hidden
        } else if body.contains("A draft that only you see.") {
            Standing::Draft
        } else if body.contains("Waiting for a moderator.") {
            Standing::Waiting
        } else if let Some(by) = giver(body, "<strong>Withdrawn: ") {
            Standing::Withdrawn(by)
        } else if let Some(by) = giver(body, "A change is asked for: ") {
            Standing::Change(by)
        } else if let Some(by) = giver(body, "Declined: ") {
            Standing::NotTaken(by)
        } else {
            Standing::Shown
        };
        // What only its reader sees of their own is said so.
        let remarks = body.split("<li id=\"remark-").skip(1);
        let remarks = remarks.map(|remark| remark.split("</li>").next().unwrap());
        let remarks = remarks.filter(|remark| !remark.contains("Only you see it"));
        Seen::Wording {
            text: self.whole(body),
            corrections: self.words('c', body),
            standing,
            remarks: remarks.filter_map(|it| self.words('r', it).first().copied()).collect(),
            number: body.split_once("/correct\"").and_then(|(_, form)| self.number(form)),
        }
    }
}

/// The reason that somebody gives: whose it is can be read.
fn reason(by: Who) -> String {
    format!("{by:?} says so.")
}

/// Who gave the reason behind these words.
fn giver(body: &str, before: &str) -> Option<Who> {
    who(body.split_once(before)?.1)
}

/// Whose name, or whose reason, stands at the beginning.
fn who(words: &str) -> Option<Who> {
    Who::ALL.into_iter().find(|who| words.starts_with(&format!("{who:?}")))
}

/// The number behind these words.
fn count(item: &str, before: &str) -> Option<usize> {
    item.split_once(before)?.1.split_once(' ')?.0.parse().ok()
}

/// What came of a request that would change something.
fn done(answer: &Page) -> Answer {
    let sentences = [
        (notes::Error::OutOfDate.to_string(), Why::OutOfDate),
        (Refused::NotWaiting.to_string(), Why::NotWaiting),
        (Refused::NotShown.to_string(), Why::NotShown),
        (Refused::NotHidden.to_string(), Why::NotHidden),
        (Refused::Hidden.to_string(), Why::Hidden),
        (Refused::Withdrawn.to_string(), Why::Withdrawn),
        (Refused::WentOn.to_string(), Why::WentOn),
        (Refused::AnothersDecision.to_string(), Why::Anothers),
    ];
    let said = |sentence: &str| {
        let begins = ["Nothing was done: ", "The note was not kept: ", "Here is what happened: "];
        begins.iter().any(|begin| answer.body.contains(&format!("{begin}{sentence}")))
    };
    let why = match answer.status {
        StatusCode::SEE_OTHER => return Answer::Done,
        StatusCode::NOT_FOUND => Some(Why::NotHere),
        StatusCode::CONFLICT if answer.body.contains("These very words were not taken") => {
            Some(Why::Declined)
        }
        StatusCode::CONFLICT
            if answer.body.contains("was decided about already, or was taken back") =>
        {
            Some(Why::Decided)
        }
        StatusCode::CONFLICT => {
            sentences.into_iter().find(|(sentence, _)| said(sentence)).map(|(_, why)| why)
        }
        _ => None,
    };
    let strange = || Answer::Strange(format!("{}: {}", answer.status, answer.body));
    why.map_or_else(strange, Answer::Refused)
}
