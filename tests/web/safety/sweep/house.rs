//! The real club: the program on a folder of its own, asked by its members over the network, killed, ended,
//! saved and put back.

use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;
use std::time::Duration;

use holewright_server::db::{Database, FILE_NAME};
use holewright_server::rules::auth::Token;
use serde_json::Value;
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions, Connection, SqliteConnection};

use super::super::asked::send;
use super::super::commands::{done, run};
use super::super::notes::{self, block};
use super::super::storm::Victim;
use super::super::stormed;
use super::model::{Act, Club, Decision, Outcome, Rights, View, Who, Word};
use crate::process;
use crate::support::Folder;

/// The members at the beginning, and what they may do; behind them a stranger.
pub(super) const MEMBERS: [(&str, Rights); 5] = [
    ("Ada Penn", Rights { moderator: false, inspector: false, secretary: false }),
    ("Bert Stone", Rights { moderator: false, inspector: false, secretary: false }),
    ("Cyril Moss", Rights { moderator: true, inspector: false, secretary: false }),
    ("Dora Vale", Rights { moderator: false, inspector: true, secretary: false }),
    ("Una Oakes", Rights { moderator: false, inspector: false, secretary: true }),
];

/// What the tests know of the rows of a database; it goes back in time with it.
#[derive(Clone, Debug, Default)]
struct Known {
    /// Of each note its number.
    notes: Vec<i64>,
    /// Of each note its words, in their order.
    words: Vec<Vec<Word>>,
    /// Of each word the number of its wording.
    versions: BTreeMap<Word, i64>,
}

/// A club, the program that serves it and the archive that was saved of it.
pub(super) struct House {
    folder: Folder,
    server: Option<Victim>,
    /// Of each member the session: those that are over stay known.
    sessions: [u32; MEMBERS.len()],
    begun: u32,
    known: Known,
    saved: Option<(Club, Known)>,
    pub(super) club: Club,
}

/// A word as it is typed.
fn typed(word: Word) -> String {
    format!("w{word:04}")
}

/// The words in a text, in their order.
fn words_in(text: &str) -> Vec<Word> {
    let parts = text.split(|letter: char| !letter.is_ascii_alphanumeric());
    let word = |part: &str| part.strip_prefix('w').filter(|rest| rest.len() == 4)?.parse().ok();
    parts.filter_map(word).collect()
}

fn place(state: &str) -> Option<&'static str> {
    ["draft", "waiting", "shown"].into_iter().find(|known| *known == state)
}

impl House {
    /// A club that has just begun, on a copy of this folder.
    pub(super) fn begin(template: &Folder) -> Self {
        let folder = Folder::new();
        let mut copy = std::process::Command::new("cp");
        copy.arg("-r").args([template.path().join("data"), folder.path().join("data")]);
        assert!(process::run(&copy).status.success());
        let mut club = Club::default();
        for (_, rights) in MEMBERS {
            club.members.push(super::model::Member { rights, ..Default::default() });
        }
        club.members.push(super::model::Member::default());
        let mut house = Self {
            folder,
            server: None,
            sessions: [0; MEMBERS.len()],
            begun: 0,
            known: Known::default(),
            saved: None,
            club,
        };
        house.sign_in();
        house.start();
        house
    }

    /// A folder with the members in it.
    pub(super) fn template() -> Folder {
        let folder = Folder::new();
        block(async {
            let database = Database::open(&folder.path().join("data")).await.unwrap();
            let [_, writer] = database.pools();
            for (name, rights) in MEMBERS {
                sqlx::query(
                    "INSERT INTO member (name, name_key, password_hash, is_moderator, is_inspector,
                       is_secretary, joined_at)
                     VALUES (?1, lower(?1), '$argon2id$', ?2, ?3, ?4, unixepoch())",
                )
                .bind(name)
                .bind(rights.moderator)
                .bind(rights.inspector)
                .bind(rights.secretary)
                .execute(writer)
                .await
                .unwrap();
            }
            database.close().await;
        });
        folder
    }

    fn data(&self) -> PathBuf {
        self.folder.path().join("data")
    }

    fn ask_database<T>(&self, question: impl AsyncFnOnce(&mut SqliteConnection) -> T) -> T {
        block(async {
            let options = SqliteConnectOptions::new().filename(self.data().join(FILE_NAME));
            let options = options.busy_timeout(Duration::from_secs(30));
            let mut connection = options.connect().await.unwrap();
            let answer = question(&mut connection).await;
            connection.close().await.unwrap();
            answer
        })
    }

    fn start(&mut self) {
        let mut serve = stormed::serving(&self.data());
        serve.args(["--trusted-proxy", "127.0.0.1"]);
        self.server = Some(Victim::start(&serve));
    }

    /// Every member who may signs in.
    pub(super) fn sign_in(&mut self) {
        for who in 0..MEMBERS.len() {
            let member = &mut self.club.members[who];
            if member.is_signed_in || member.is_stopped || member.is_gone {
                continue;
            }
            member.is_signed_in = true;
            self.begun += 1;
            self.sessions[who] = self.begun;
            let number = self.begun;
            self.ask_database(async |connection| {
                sqlx::query(
                    "INSERT INTO session (token_hash, number, member_id, made_at, seen_at, proved_at)
                     VALUES (?, ?, ?, unixepoch(), unixepoch(), unixepoch())",
                )
                .bind(token(number).hash().bytes().to_vec())
                .bind(i64::from(number))
                .bind(id(who))
                .execute(connection)
                .await
                .unwrap();
            });
        }
    }

    /// What is sent, in the version of HTTP whose answers come in one piece. Each comes from an address of its own: no
    /// reader asks so much.
    fn request(&self, head: &str, by: Who, form: &str) -> String {
        let cookie = self
            .sessions
            .get(by)
            .map(|session| format!("Cookie: holewright={}\r\n", token(*session).secret()));
        format!(
            "{head} HTTP/1.0\r\nHost: club.test\r\nSec-Fetch-Site: same-origin\r\n{}\
             X-Forwarded-For: {}\r\nContent-Type: application/x-www-form-urlencoded\r\n\
             Content-Length: {}\r\nConnection: close\r\n\r\n{form}",
            cookie.unwrap_or_default(),
            std::net::Ipv4Addr::from(rand_address()),
            form.len()
        )
    }

    fn server(&self) -> &Victim {
        self.server.as_ref().unwrap()
    }

    fn get(&self, path: &str, by: Who) -> String {
        let request = self.request(&format!("GET {path}"), by, "");
        send(self.server().address, &request).unwrap()
    }

    /// The act as its form sends it.
    fn form(&self, by: Who, act: Act, word: Word) -> String {
        let note = |place: usize| self.known.notes.get(place).copied().unwrap_or(9_999_999);
        let written = |sends: bool, pressure: bool| {
            let what = if pressure { "For+a+boiler." } else { "It+cut+clean." };
            let sends = if sends { "send" } else { "draft" };
            format!("title={}&text={what}&do={sends}", typed(word))
        };
        let word = typed(word);
        let (path, form) = match act {
            Act::Write { sends, pressure } => ("/notes/new".to_owned(), written(sends, pressure)),
            Act::Edit { note: at, sends, pressure } => {
                (format!("/notes/{}/edit", note(at)), written(sends, pressure))
            }
            Act::Decide { note: at, what, stale } => {
                let version = self.version(at, what == Decision::Settle, stale);
                let what = match what {
                    Decision::Pass => "pass",
                    Decision::Change => "change&reason=More",
                    Decision::Decline => "decline&reason=No",
                    Decision::Settle => "settle",
                };
                // Every report and every correction was read: what comes between is another test's.
                let all = i64::MAX;
                let read = format!("last={all}&correction={all}");
                (format!("/queue/{}", note(at)), format!("version={version}&do={what}&{read}"))
            }
            Act::Correct { note: at, pressure, stale } => {
                let version = self.version(at, true, stale);
                let what = if pressure { "not+for+a+boiler" } else { "instead" };
                let form = format!("version={version}&correction={word}+{what}");
                (format!("/notes/{}/correct", note(at)), form)
            }
            Act::Withdraw { note: at } => {
                (format!("/notes/{}/withdraw", note(at)), "why=It+was+wrong".to_owned())
            }
            Act::Report { note: at } => {
                (format!("/notes/{}/report", note(at)), format!("danger={word}"))
            }
            Act::Judge { note: at, worked, pressure } => {
                let found = if worked { "worked" } else { "did-not" };
                let material = if pressure { "boiler+plate" } else { "brass" };
                let form = format!("found={found}&material={material}");
                (format!("/notes/{}/verdict", note(at)), form)
            }
            Act::TakeAway { note: at, of } => {
                (format!("/notes/{}/verdict", note(at)), format!("do=away&of={}", id(of)))
            }
            Act::SettleAll { of } => {
                let all = i64::MAX;
                let read = self.known.notes.iter().enumerate();
                let read: Vec<String> = read
                    .map(|(at, note)| format!("{note}.{}.{all}", self.version(at, true, false)))
                    .collect();
                let form = format!("of={}&last={all}&read={}", id(of), read.join("+"));
                ("/queue/reports".to_owned(), form)
            }
            Act::SetRights { of, rights } => {
                let ticked = [
                    (rights.moderator, "&moderator=on"),
                    (rights.inspector, "&inspector=on"),
                    (rights.secretary, "&secretary=on"),
                ];
                let ticked = ticked.iter().filter(|(is_so, _)| *is_so).map(|(_, field)| *field);
                let form = format!("do=rights{}", ticked.collect::<String>());
                (format!("/people/{}", id(of)), form)
            }
            Act::Stop { of } => (format!("/people/{}", id(of)), "do=stop".to_owned()),
            Act::Allow { of } => (format!("/people/{}", id(of)), "do=allow".to_owned()),
            Act::Remove { of, keep } => {
                let notes = if keep { "keep" } else { "remove" };
                (format!("/people/{}", id(of)), format!("do=remove&notes={notes}"))
            }
            Act::SignOut => ("/sign-out".to_owned(), String::new()),
        };
        self.request(&format!("POST {path}"), by, &form)
    }

    /// The number of the wording that a form is about: the one that waits or is shown, or an older one.
    fn version(&self, place: usize, of_shown: bool, stale: bool) -> i64 {
        let Some(note) = self.club.notes.get(place) else { return 0 };
        let wording = if of_shown { note.shown } else { note.queue };
        let current = wording.map(|wording| wording.word);
        let mut words = self.known.words[place].iter().rev();
        let word =
            if stale { words.find(|word| Some(**word) != current) } else { current.as_ref() };
        word.and_then(|word| self.known.versions.get(word)).copied().unwrap_or_default()
    }

    /// Somebody acts: what came of it must be what the model says.
    pub(super) fn act(&mut self, by: Who, act: Act, word: Word) {
        let request = self.form(by, act, word);
        let answer = send(self.server().address, &request).unwrap();
        let expected = self.club.act(by, act, word);
        let found = outcome(&answer);
        let is_right =
            found == expected || (expected == Outcome::Refused && found == Outcome::Unseen);
        assert!(is_right, "{act:?} by {by}: {expected:?} expected: {request}\n\n{answer}");
        if found == Outcome::Done {
            self.learn(act, word);
        }
    }

    /// What was written has numbers now.
    fn learn(&mut self, act: Act, word: Word) {
        let place = match act {
            Act::Write { .. } => self.known.notes.len(),
            Act::Edit { note, .. } => note,
            _ => return,
        };
        let (note, version) = self.ask_database(async |connection| {
            sqlx::query_as("SELECT note_id, id FROM note_version WHERE title = ?")
                .bind(typed(word))
                .fetch_one(connection)
                .await
                .unwrap()
        });
        if place == self.known.notes.len() {
            self.known.notes.push(note);
            self.known.words.push(Vec::new());
        }
        self.known.words[place].push(word);
        self.known.versions.insert(word, version);
    }

    /// How many acts the record holds.
    fn recorded(&self) -> i64 {
        self.ask_database(async |connection| {
            let count = sqlx::query_scalar("SELECT count(*) FROM act");
            count.fetch_one(connection).await.unwrap()
        })
    }

    /// Whether a wording of this word stands: what is kept on a desk is in no record.
    fn is_written(&self, word: Word) -> bool {
        self.ask_database(async |connection| {
            sqlx::query_scalar("SELECT EXISTS (SELECT 1 FROM note_version WHERE title = ?)")
                .bind(typed(word))
                .fetch_one(connection)
                .await
                .unwrap()
        })
    }

    /// Somebody acts, and the program is killed so much later. What was acknowledged is there; the rest is
    /// there or not, and nothing between.
    pub(super) fn kill(&mut self, (by, act, word): (Who, Act, Word), after: Duration) {
        let request = self.form(by, act, word);
        let before = self.recorded();
        let address = self.server().address;
        let asking = std::thread::spawn(move || send(address, &request));
        std::thread::sleep(after);
        self.server.take().unwrap().kill();
        let answer = asking.join().unwrap().unwrap_or_default();
        let is_there = self.recorded() > before || self.is_written(word);
        let mut then = self.club.clone();
        let expected = then.act(by, act, word);
        if answer.is_empty() {
            assert!(!is_there || expected == Outcome::Done, "{act:?} by {by}: it was done");
        } else {
            let found = outcome(&answer);
            let is_right =
                found == expected || (expected == Outcome::Refused && found == Outcome::Unseen);
            assert!(is_right, "{act:?} by {by}: {expected:?} expected: {answer}");
        }
        // Signing out is not written in the record, nor what changes nothing.
        let is_acknowledged = outcome(&answer) == Outcome::Done;
        let is_out = matches!(act, Act::SignOut) && !self.is_in(by);
        if is_there || is_acknowledged || is_out {
            self.club = then;
            self.learn(act, word);
        }
        self.start();
    }

    /// Whether the member's session stands.
    fn is_in(&self, who: Who) -> bool {
        let Some(session) = self.sessions.get(who).copied() else { return false };
        self.ask_database(async |connection| {
            sqlx::query_scalar("SELECT EXISTS (SELECT 1 FROM session WHERE number = ?)")
                .bind(i64::from(session))
                .fetch_one(connection)
                .await
                .unwrap()
        })
    }

    /// Ends the program and starts it again.
    pub(super) fn restart(&mut self) {
        self.server.take().unwrap().end();
        self.start();
    }

    /// Saves the club while it is served.
    pub(super) fn save(&mut self) {
        let archive = self.folder.path().join("club.tar");
        done(&run(&self.data(), &["backup", archive.to_str().unwrap(), "--replace"]));
        self.saved = Some((self.club.clone(), self.known.clone()));
    }

    /// Puts back what was saved, if anything was. Everybody signs in again.
    pub(super) fn restore(&mut self) {
        let Some((club, known)) = self.saved.clone() else { return };
        self.server.take().unwrap().end();
        let archive = self.folder.path().join("club.tar");
        done(&run(&self.data(), &["restore", archive.to_str().unwrap()]));
        (self.club, self.known) = (club, known);
        self.club.members.iter_mut().for_each(|member| member.is_signed_in = false);
        self.sign_in();
        self.start();
    }

    /// Looks whether everybody reads what the model says, and whether the file is in order.
    pub(super) fn check(&self, words: impl Iterator<Item = Word>) {
        let mut expected = self.club.view();
        let words: BTreeSet<Word> = words.collect();
        expected.found.retain(|(_, word)| words.contains(word));
        assert_eq!(self.view(&words), expected);
    }

    /// Reads the rows: each with all it belongs to. Only a note that went has but its record, and only one
    /// that was emptied has no wording.
    pub(super) fn check_file(&self) {
        assert_eq!(notes::read(&self.data()).half.len(), self.club.gone_or_empty());
    }

    fn view(&self, words: &BTreeSet<Word>) -> View {
        let mut view = View::default();
        let stranger = MEMBERS.len();
        let place_of = |number: i64| self.known.notes.iter().position(|known| *known == number);
        let listed = json(&self.get("/notes.json", stranger));
        for note in listed["notes"].as_array().unwrap() {
            let number = |key| note[key].as_u64().unwrap_or_else(|| panic!("{key}: {note}"));
            let place =
                place_of(note["id"].as_i64().unwrap_or_else(|| panic!("{listed}"))).unwrap();
            let [word] = words_in(note["title"].as_str().unwrap())[..] else { panic!("{note}") };
            let counted = ["worked", "did_not"].map(number);
            let is_confirmed = !note["confirmed_at"].is_null();
            view.shown.insert(place, (word, BTreeSet::new(), counted, is_confirmed));
        }
        for (place, number) in self.known.notes.iter().enumerate() {
            let page = self.get(&format!("/notes/{number}"), stranger);
            if status(&page) == Some("404") {
                view.unknown.insert(place);
            }
            let mut on_it: BTreeSet<Word> = words_in(&page).into_iter().collect();
            match view.shown.get_mut(&place) {
                Some((word, corrections, ..)) => {
                    assert!(on_it.remove(word), "{page}");
                    *corrections = on_it;
                }
                None => assert_eq!(on_it, BTreeSet::new(), "not shown: {page}"),
            }
        }
        for word in words {
            let page = self.get(&format!("/notes?q={}", typed(*word)), stranger);
            let is_listed = |number: &i64| page.contains(&format!("href=\"/notes/{number}\""));
            let places = self.known.notes.iter().enumerate();
            let places = places.filter(|(_, number)| is_listed(number));
            view.found.extend(places.map(|(place, _)| (place, *word)));
        }
        for who in (0..MEMBERS.len()).filter(|who| self.club.members[*who].is_signed_in) {
            let own = json(&self.get("/me/data.json", who));
            let notes = own["notes"].as_array().unwrap_or_else(|| panic!("{own}"));
            let wordings = notes.iter().flat_map(|note| note["wordings"].as_array().unwrap());
            let words = wordings.filter_map(|wording| {
                let state = place(wording["state"].as_str().unwrap())?;
                Some((state, words_in(wording["title"].as_str().unwrap())[0]))
            });
            view.own.insert(who, words.collect());
            let queue = self.get("/queue", who);
            if status(&queue) == Some("200") {
                let items = queue.split("<h2 id=\"note-").skip(1);
                let titles = items.filter_map(|item| item.split("</h2>").next());
                view.queue.insert(who, titles.flat_map(words_in).collect());
            }
        }
        view
    }
}

fn json(answer: &str) -> Value {
    let (_, body) = answer.split_once("\r\n\r\n").unwrap_or_else(|| panic!("{answer}"));
    let (from, to) = (body.find('{').unwrap_or_default(), body.rfind('}').unwrap_or_default());
    serde_json::from_str(&body[from..=to]).unwrap_or_else(|error| panic!("{error}: {answer}"))
}

fn status(answer: &str) -> Option<&str> {
    answer.get(9..12)
}

fn outcome(answer: &str) -> Outcome {
    let leads_to_the_door = || answer.contains("\r\nlocation: /sign-in");
    match status(answer) {
        Some("303") if !leads_to_the_door() => Outcome::Done,
        Some("404") => Outcome::Unseen,
        Some("303" | "401" | "403" | "409" | "422" | "429") | None => Outcome::Refused,
        _ => panic!("{answer}"),
    }
}

/// The number of a member of the template.
fn id(who: Who) -> i64 {
    i64::try_from(who).unwrap() + 1
}

fn token(number: u32) -> Token {
    Token::read(&format!("{number:064x}")).unwrap()
}

fn rand_address() -> u32 {
    use std::hash::{BuildHasher, RandomState};
    u32::try_from(RandomState::new().hash_one(0) & 0x00ff_ffff).unwrap() | 0x0a00_0000
}
