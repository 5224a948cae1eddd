//! The real club: the program on a folder of its own, asked by its members over the network, killed, ended,
//! saved and put back. What everybody then reads is in `reading.rs`.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::time::Duration;

use holewright_server::db::FILE_NAME;
use holewright_server::rules::auth::Token;
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions, Connection, SqliteConnection};

use super::super::asked::send;
use super::super::commands::{done, run};
use super::super::notes::block;
use super::super::storm::Victim;
use super::super::stormed;
use super::begin::{self, Begin};
use super::model::{Act, Club, Decision, Outcome, Who, Word};
use super::reading::outcome;
use crate::process;
use crate::support::Folder;

/// What the tests know of the rows of a database; it goes back in time with it.
#[derive(Clone, Debug, Default)]
pub(super) struct Known {
    /// Of each note its number.
    pub(super) notes: Vec<i64>,
    /// Of each note its words, in their order.
    pub(super) words: Vec<Vec<Word>>,
    /// Of each word the number of its wording.
    pub(super) versions: BTreeMap<Word, i64>,
    /// Of each word the number of its remark.
    pub(super) remarks: BTreeMap<Word, i64>,
}

/// A club, the program that serves it and the archive that was saved of it.
pub(super) struct House {
    folder: Folder,
    server: Option<Victim>,
    /// Of each member what the browser holds: of a session that is over too.
    sessions: [Option<Token>; begin::MEMBERS.len()],
    /// The sessions that are over: none opens anything any more.
    pub(super) over: Vec<Token>,
    /// The addresses of members' feeds, and the act that made each: all but the last of each are void.
    pub(super) feeds: Vec<(Who, Word, String)>,
    begun: u32,
    pub(super) known: Known,
    saved: Option<(Club, Known)>,
    pub(super) club: Club,
}

/// A word as it is typed.
pub(super) fn typed(word: Word) -> String {
    format!("w{word:04}")
}

impl House {
    /// A club as it stands at the beginning, in a folder of its own.
    pub(super) fn begin(begin: &Begin) -> Self {
        let folder = Folder::new();
        let mut copy = std::process::Command::new("cp");
        copy.arg("-r").args([begin.folder.path().join("data"), folder.path().join("data")]);
        assert!(process::run(&copy).status.success());
        let mut house = Self {
            folder,
            server: None,
            sessions: Default::default(),
            over: Vec::new(),
            feeds: Vec::new(),
            begun: 0,
            known: begin.known.clone(),
            saved: None,
            club: begin.club.clone(),
        };
        // An older database is brought up to date first.
        house.start();
        house.sign_in();
        house
    }

    pub(super) fn data(&self) -> PathBuf {
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
        for who in 0..begin::MEMBERS.len() {
            let member = &mut self.club.members[who];
            if member.is_signed_in || member.is_stopped || member.is_gone {
                continue;
            }
            member.is_signed_in = true;
            self.begun += 1;
            let session = Token::read(&format!("{:064x}", self.begun)).unwrap();
            let hash = session.hash().bytes().to_vec();
            self.hold(who, Some(session));
            self.ask_database(async |connection| {
                sqlx::query(
                    "INSERT INTO session (token_hash, number, member_id, made_at, seen_at, proved_at)
                     SELECT ?, coalesce(max(number), 0) + 1, ?, unixepoch(), unixepoch(), unixepoch()
                     FROM session",
                )
                .bind(hash)
                .bind(id(who))
                .execute(connection)
                .await
                .unwrap();
            });
        }
    }

    /// The member's browser holds another session from now on; none where its cookie never came.
    fn hold(&mut self, who: Who, session: Option<Token>) {
        let before = std::mem::replace(&mut self.sessions[who], session);
        self.over.extend(before);
    }

    /// What is sent, in the version of HTTP whose answers come in one piece. Each comes from an address of its own: no
    /// reader asks so much.
    fn request(&self, head: &str, by: Who, form: &str) -> String {
        self.request_in(self.sessions.get(by).and_then(Option::as_ref), head, form)
    }

    /// As [`House::request`], in this session.
    fn request_in(&self, session: Option<&Token>, head: &str, form: &str) -> String {
        let cookie = session.map(|session| format!("Cookie: holewright={}\r\n", session.secret()));
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

    pub(super) fn get(&self, path: &str, by: Who) -> String {
        let request = self.request(&format!("GET {path}"), by, "");
        send(self.server().address, &request).unwrap()
    }

    /// What a session gets that may be over.
    pub(super) fn get_in(&self, session: &Token, path: &str) -> String {
        let request = self.request_in(Some(session), &format!("GET {path}"), "");
        send(self.server().address, &request).unwrap()
    }

    /// The act as its form sends it.
    fn form(&self, by: Who, act: Act, word: Word) -> String {
        let note = |place: usize| self.known.notes.get(place).copied().unwrap_or(9_999_999);
        let written = |sends: bool, pressure: bool| {
            let what = if pressure { "For+a+boiler." } else { "It+cut+clean." };
            let sends = if sends { "send" } else { "draft" };
            format!("title={}&text={what}&drill=No.+43&do={sends}", typed(word))
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
            Act::Mend { note: at, stale } => {
                let version = self.version(at, false, stale);
                let all = i64::MAX;
                let read = format!("version={version}&last={all}&correction={all}");
                let form = format!("title={word}&text=It+cut+clean.&drill=No.+43&{read}");
                (format!("/queue/{}/mend", note(at)), form)
            }
            Act::Undo { note: at } => (format!("/queue/{}", note(at)), "do=undo".to_owned()),
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
            Act::Remark { note: at, pressure } => {
                let what = if pressure { "so+did+my+boiler" } else { "so+did+mine" };
                (format!("/notes/{}/remark", note(at)), format!("remark={word}+{what}"))
            }
            Act::Import => {
                let table = format!(
                    "title,text,drill,source%0A{word},It+cut+clean.,No.+43,Newsletter+1987%0A"
                );
                ("/notes/import".to_owned(), format!("tips={table}"))
            }
            Act::NameClub { name } => (
                "/people/club".to_owned(),
                format!("club_name={}", begin::club(name)).replace(' ', "+"),
            ),
            Act::DecideRemark { note: at, shows } => {
                let held = self.club.notes.get(at).filter(|note| !note.is_gone);
                let waiting = held.and_then(|note| Some(note.remarks[note.waiting_remark()?].word));
                let number = waiting.and_then(|word| self.known.remarks.get(&word));
                let number = number.copied().unwrap_or(9_999_999);
                let what = if shows { "show" } else { "decline&reason=No" };
                ("/queue/remarks".to_owned(), format!("remark={number}&do={what}"))
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
            Act::Enter { password } => {
                let name = begin::MEMBERS.get(by).map_or("Nobody", |(name, _)| name);
                let form = format!("name={name}&password={}", begin::password(password));
                ("/sign-in".to_owned(), form.replace(' ', "+"))
            }
            Act::ChangePassword { old, new } => {
                let [old, new] = [old, new].map(begin::password);
                let form = format!("password={old}&new_password={new}");
                ("/me/password".to_owned(), form.replace(' ', "+"))
            }
            Act::Feed { makes } => {
                let what = if makes { "make" } else { "void" };
                ("/me/feed".to_owned(), format!("do={what}"))
            }
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
        self.hold_the_minute();
        let request = self.form(by, act, word);
        let answer = send(self.server().address, &request).unwrap();
        let expected = self.club.act(by, act, word);
        let found = outcome(&answer);
        let is_right =
            found == expected || (expected == Outcome::Refused && found == Outcome::Unseen);
        assert!(is_right, "{act:?} by {by}: {expected:?} expected: {request}\n\n{answer}");
        if found == Outcome::Done {
            self.learn(act, word);
            self.take_session(by, act, &answer);
            self.take_feed(by, word, &answer);
        }
    }

    /// The browser takes the session that an answer gives it. One that never came is nobody's.
    fn take_session(&mut self, by: Who, act: Act, answer: &str) {
        if act.tries() {
            let session = answer.split("\r\nset-cookie: holewright=").nth(1);
            let session = session.and_then(|rest| Token::read(rest.split(';').next()?));
            self.club.members[by].is_signed_in = session.is_some();
            self.hold(by, session);
        }
    }

    /// The member writes down the address of their feed, where an answer shows it.
    fn take_feed(&mut self, by: Who, word: Word, answer: &str) {
        let address = answer.split("/notes/feed/").nth(1).and_then(|rest| rest.get(..64));
        self.feeds.extend(address.map(|token| (by, word, format!("/notes/feed/{token}"))));
    }

    /// What was written has numbers now.
    fn learn(&mut self, act: Act, word: Word) {
        if let Act::Remark { .. } = act {
            let number = self.ask_database(async |connection| {
                sqlx::query_scalar("SELECT id FROM remark WHERE text LIKE ? || ' %'")
                    .bind(typed(word))
                    .fetch_one(connection)
                    .await
                    .unwrap()
            });
            self.known.remarks.insert(word, number);
            return;
        }
        if self.known.versions.contains_key(&word) {
            // The same table once more.
            return;
        }
        let place = match act {
            Act::Write { .. } | Act::Import => self.known.notes.len(),
            Act::Edit { note, .. } | Act::Mend { note, .. } => note,
            Act::Remove { .. } => {
                return self.ask_database(async |connection| {
                    sqlx::query("DELETE FROM undoable").execute(connection).await.unwrap();
                });
            }
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

    /// However slow this machine is, no minute is over in which a decision can be undone.
    fn hold_the_minute(&self) {
        self.ask_database(async |connection| {
            let now = sqlx::query("UPDATE undoable SET decided_at = unixepoch()");
            now.execute(connection).await.unwrap();
        });
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
        self.hold_the_minute();
        let request = self.form(by, act, word);
        let before = self.recorded();
        let address = self.server().address;
        let asking = std::thread::spawn(move || send(address, &request));
        std::thread::sleep(after);
        self.server.take().unwrap().kill();
        let answer = asking.join().unwrap().unwrap_or_default();
        let mut then = self.club.clone();
        let expected = then.act(by, act, word);
        let is_refusal = act.tries() && expected != Outcome::Done;
        let is_there = !is_refusal && (self.recorded() > before || self.is_written(word));
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
            if expected == Outcome::Done {
                self.take_session(by, act, &answer);
                self.take_feed(by, word, &answer);
            }
        }
        self.start();
    }

    /// Whether the member's session stands.
    fn is_in(&self, who: Who) -> bool {
        let Some(Some(session)) = self.sessions.get(who) else { return false };
        let hash = session.hash().bytes().to_vec();
        self.ask_database(async |connection| {
            sqlx::query_scalar("SELECT EXISTS (SELECT 1 FROM session WHERE token_hash = ?)")
                .bind(hash)
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

    /// Puts back what was saved, if anything was. Everybody signs in again, and no feed has an address.
    pub(super) fn restore(&mut self) {
        let Some((club, known)) = self.saved.clone() else { return };
        self.server.take().unwrap().end();
        let archive = self.folder.path().join("club.tar");
        done(&run(&self.data(), &["restore", archive.to_str().unwrap()]));
        (self.club, self.known) = (club, known);
        // What opens a door by itself is in no archive.
        for member in &mut self.club.members {
            (member.is_signed_in, member.feed) = (false, None);
        }
        self.sign_in();
        self.start();
    }
}

/// The number of a member of the template.
fn id(who: Who) -> i64 {
    i64::try_from(who).unwrap() + 1
}

fn rand_address() -> u32 {
    use std::hash::{BuildHasher, RandomState};
    u32::try_from(RandomState::new().hash_one(0) & 0x00ff_ffff).unwrap() | 0x0a00_0000
}
