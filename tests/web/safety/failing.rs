//! Every call on a file fails once, in whatever is done: nothing acknowledged is lost, nothing is half
//! there, and it can be done again at once.

use std::collections::BTreeSet;
use std::fs;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use holewright_server::db::FILE_NAME;

use super::asked::send;
use super::commands::{done, program, run};
use super::inject::{self, ERRORS, Fault, Lasts, Met, Numbers};
use super::storm::Victim;
use super::{notes, storm, stormed, upgrades};
use crate::process::{self, Process, wait_until};
use crate::support::Folder;

/// How soon it must write again.
const BACK: Duration = Duration::from_secs(2);

/// Something that is done from the command line, on copies of a prepared folder.
struct Job {
    name: &'static str,
    folder: Folder,
    /// The notes that are there before.
    before: BTreeSet<String>,
    /// The notes that are there after it, where it is done.
    after: BTreeSet<String>,
    /// What an old release left without its act.
    half: BTreeSet<String>,
    command: fn(&Path) -> Command,
}

fn on(data: &Path, arguments: &[&str]) -> Command {
    let mut command = program();
    command.args(arguments).arg("--data-dir").arg(data.join("data"));
    command
}

impl Job {
    /// Does it once with this fault, on a fresh copy, then once more without.
    fn fail(&self, fault: Fault) -> Met {
        let name = self.name;
        let place = self.folder.path().join("place");
        let log = self.folder.path().join("log");
        copy(&self.folder.path().join("ready"), &place);
        let (data, saved) = (place.join("data"), place.join("club.tar"));
        let command = (self.command)(&place);
        let said = told(&inject::with(fault, &command, &[&place, &data], &log));
        let met = inject::met(&log);

        let found = match data.join(FILE_NAME).exists() {
            true => notes::read(&data),
            // None was made yet.
            false => notes::Found::default(),
        };
        assert_eq!(found.half, self.half, "{name} {fault:?}: half");
        match said {
            Told::Done => assert_eq!(found.whole, self.after, "{name} {fault:?}: not what it says"),
            Told::Refused(_) => {
                let is_old_or_new = found.whole == self.before || found.whole == self.after;
                assert!(is_old_or_new, "{name} {fault:?}: neither the old nor the new");
            }
        }
        if name == "backup" && saved.exists() {
            done(&run(&data, &["verify", saved.to_str().unwrap()]));
            fs::remove_file(&saved).unwrap();
        } else if name == "backup" {
            assert!(!matches!(said, Told::Done), "{name} {fault:?}: done, and no file");
        }
        wait_until("a start after that", || match told(&command) {
            Told::Done => true,
            // The one before was killed a moment ago.
            Told::Refused(why) if why.contains("another holewright is at work") => false,
            Told::Refused(why) => panic!("{name} {fault:?}: and not the second time: {why}"),
        });
        let found = notes::read(&data);
        assert_eq!((&found.whole, &found.half), (&self.after, &self.half), "{name} {fault:?}");
        met
    }

    fn fail_at(&self, numbers: Numbers) -> u32 {
        let count = inject::each(numbers, |fault| self.fail(fault));
        println!("every call fails once: {}: {count} failures", self.name);
        assert!(count > 3, "{}: hardly any call was met: {count}", self.name);
        count
    }
}

/// What a program said that was asked to do something, or to serve.
#[derive(Debug)]
enum Told {
    Done,
    Refused(String),
}

/// Lets it end, or serve until it says that it is ready; that is as well as done.
fn told(command: &Command) -> Told {
    let mut process = Process::start(command, Stdio::piped());
    drop(process.stdin.take());
    let mut lines = BufReader::new(process.stdout.take().unwrap()).lines();
    let is_serving = lines.any(|line| line.is_ok_and(|line| line.contains("Holewright is ready")));
    if is_serving {
        return Told::Done;
    }
    let mut why = String::new();
    std::io::Read::read_to_string(&mut process.stderr.take().unwrap(), &mut why).unwrap();
    if process.ends().success() { Told::Done } else { Told::Refused(why) }
}

fn copy(from: &Path, to: &Path) {
    let _ = fs::remove_dir_all(to);
    let mut cp = Command::new("cp");
    cp.arg("-r").args([from, to]);
    assert!(process::run(&cp).status.success());
}

/// The jobs, each with what it starts from.
fn jobs() -> Vec<Job> {
    let keys = |prefix: &str| (0..4).map(|number| notes::key(prefix, number)).collect();
    let job = |name, command, prepare: &dyn Fn(&Path), before, after| {
        let folder = Folder::new();
        let ready = folder.path().join("ready");
        fs::create_dir(&ready).unwrap();
        prepare(&ready);
        let half = match name {
            "upgrade" => notes::read(&ready.join("data")).half,
            _ => BTreeSet::new(),
        };
        Job { name, folder, before, after, half, command }
    };
    let kept = |ready: &Path| notes::fill(&ready.join("data"), "kept", 4, 500);
    let older = |ready: &Path| upgrades::released(&ready.join("data"), upgrades::RELEASED[1].1);
    let saved = |ready: &Path| {
        notes::fill(&ready.join("data"), "saved", 4, 500);
        let file = ready.join("club.tar");
        done(&run(&ready.join("data"), &["backup", file.to_str().unwrap()]));
        fs::remove_dir_all(ready.join("data")).unwrap();
        kept(ready);
    };
    let folder = Folder::new();
    let data = folder.path().join("data");
    upgrades::released(&data, upgrades::RELEASED[1].1);
    notes::block(async {
        holewright_server::db::Database::open(&data).await.unwrap().close().await
    });
    let of_old = notes::read(&data).whole;
    let serve: fn(&Path) -> Command = |place| on(place, &["--listen", "127.0.0.1:0"]);
    let back_up: fn(&Path) -> Command = |place| {
        let file = place.join("club.tar");
        on(place, &["backup", file.to_str().unwrap()])
    };
    let restore: fn(&Path) -> Command = |place| {
        let file = place.join("club.tar");
        on(place, &["restore", file.to_str().unwrap()])
    };
    vec![
        job(
            "first start",
            serve,
            &|ready| fs::create_dir(ready.join("data")).unwrap(),
            BTreeSet::new(),
            BTreeSet::new(),
        ),
        job("start", serve, &kept, keys("kept"), keys("kept")),
        job("backup", back_up, &kept, keys("kept"), keys("kept")),
        job("restore", restore, &saved, keys("kept"), keys("saved")),
        job("upgrade", serve, &older, of_old.clone(), of_old),
    ]
}

fn fail_jobs(numbers: Numbers) {
    let _disk = storm::with_others();
    std::thread::scope(|scope| {
        for job in jobs() {
            scope.spawn(move || job.fail_at(numbers));
        }
    });
}

#[test]
fn every_call_fails_once_in_a_start_a_backup_a_restore_and_an_upgrade() {
    fail_jobs(Numbers::Some);
}

#[test]
#[ignore = "every single call: tests/run --soak"]
fn every_single_call_fails_once_in_a_start_a_backup_a_restore_and_an_upgrade() {
    fail_jobs(Numbers::Every);
}

/// A server whose members are all moderators too.
struct Acting {
    server: Victim,
    folder: Folder,
    member: u32,
    acknowledged: BTreeSet<String>,
}

/// An act that is about to be done.
struct Ready {
    member: u32,
    path: String,
    form: String,
    /// The page that shows it done, and what then stands on it.
    shown: (String, String),
}

/// What members do, by name.
const ACTS: [&str; 7] = ["write", "edit", "decide", "correct", "remark", "mend", "undo"];

impl Acting {
    fn start() -> Self {
        let folder = Folder::new();
        let data = folder.path().join("data");
        stormed::seed(&data);
        notes::execute(&data.join(FILE_NAME), "UPDATE member SET is_moderator = 1");
        let server = Victim::start(&stormed::serving(&data));
        Self { server, folder, member: 0, acknowledged: BTreeSet::new() }
    }

    /// Whoever comes next: no one writes more than one member may.
    fn next(&mut self) -> u32 {
        self.member += 1;
        self.member
    }

    fn ask(&self, request: &str) -> String {
        send(self.server.address, request).unwrap()
    }

    fn page(&self, member: u32, path: &str) -> String {
        self.ask(&stormed::page(self.server.address, member, path))
    }

    /// Sends a form that must be taken.
    #[track_caller]
    fn taken(&self, member: u32, path: &str, form: &str) -> String {
        let answer = self.ask(&stormed::post(self.server.address, member, path, form));
        assert!(answer.starts_with("HTTP/1.1 303 "), "{path}: {answer}");
        answer
    }

    /// Makes ready for an act.
    fn ready(&mut self, act: &str) -> Ready {
        let (author, other) = (self.next(), self.next());
        let key = notes::key(act, u64::from(author));
        let title = notes::key("note", u64::from(author));
        match act {
            "write" => Ready {
                member: author,
                path: "/notes/new".to_owned(),
                form: stormed::sent_in(&key),
                shown: ("/notes/mine".to_owned(), key),
            },
            "edit" => {
                let draft = stormed::sent_in(&title).replace("do=send", "do=draft");
                let kept = self.taken(author, "/notes/new", &draft);
                let path = kept.split("location: ").nth(1).unwrap().lines().next().unwrap();
                Ready {
                    member: author,
                    path: path.to_owned(),
                    form: stormed::sent_in(&key),
                    shown: ("/notes/mine".to_owned(), key),
                }
            }
            "decide" | "correct" | "remark" | "mend" | "undo" => {
                self.taken(author, "/notes/new", &stormed::sent_in(&title));
                self.acknowledged.insert(title);
                // Whichever waits longest.
                let queue = self.page(other, "/queue");
                let form = queue.split("action=\"/queue/").nth(1).unwrap();
                let id = form.split('"').next().unwrap();
                let version = form.split("name=\"version-").nth(1).unwrap();
                let version = version.split('"').nth(2).unwrap();
                let pass = format!("version={version}&do=pass");
                let (decide, note) = (format!("/queue/{id}"), format!("/notes/{id}"));
                if act == "decide" {
                    let shown = (note, "What others found".to_owned());
                    return Ready { member: other, path: decide, form: pass, shown };
                }
                if act == "mend" {
                    let path = format!("{decide}/mend");
                    let form = format!("version={version}&title={key}&text=It+cut+clean.");
                    return Ready { member: other, path, form, shown: (note, key) };
                }
                self.taken(other, &decide, &pass);
                if act == "remark" {
                    let (path, form) = (format!("{note}/remark"), format!("remark={key}"));
                    return Ready { member: other, path, form, shown: (note, key) };
                }
                if act == "undo" {
                    let form = "do=undo".to_owned();
                    let shown = (format!("/queue?open={id}"), format!("version-{id}"));
                    return Ready { member: other, path: decide, form, shown };
                }
                let path = format!("{note}/correct");
                let form = format!("version={version}&correction={key}");
                Ready { member: other, path, form, shown: (note, key) }
            }
            _ => panic!("{act} is not made ready"),
        }
    }

    /// Does the act once with this fault, and again without, if it was refused.
    fn fail(&mut self, act: &str, fault: Fault) -> Met {
        let Ready { member, path, form, shown: (place, words) } = self.ready(act);
        let request = stormed::post(self.server.address, member, &path, &form);
        let (data, log) = (self.folder.path().join("data"), self.folder.path().join("log"));
        let (mut answer, met) =
            inject::into(self.server.id(), fault, &data, &log, || self.ask(&request));
        let since = Instant::now();
        while !answer.starts_with("HTTP/1.1 303 ") {
            let status = &answer[9..12];
            assert!(["503", "507"].contains(&status), "{act} {fault:?}: {answer}");
            assert!(since.elapsed() < BACK, "{act} {fault:?}: not written again: {answer}");
            answer = self.ask(&request);
        }
        let page = self.page(member, &place);
        assert!(page.contains(&words), "{act} {fault:?}: acknowledged and not there: {page}");
        if act == "write" {
            self.acknowledged.insert(words);
        }
        met
    }

    /// Ends it as a power cut does and looks for what was acknowledged.
    fn end(mut self) {
        self.server.kill();
        let found = notes::read(&self.folder.path().join("data"));
        assert_eq!(found.half, BTreeSet::new());
        let lost: Vec<_> = self.acknowledged.difference(&found.whole).collect();
        assert!(lost.is_empty(), "{lost:?}");
    }
}

fn fail_acts(numbers: Numbers) {
    let _disk = storm::with_others();
    let mut acting = Acting::start();
    for act in ACTS {
        let count = inject::each(numbers, |fault| acting.fail(act, fault));
        println!("every call fails once: {act}: {count} failures");
        assert!(count > 3, "{act}: hardly any call was met: {count}");
    }
    acting.end();
}

#[test]
fn every_call_fails_once_in_what_members_do() {
    fail_acts(Numbers::Some);
}

#[test]
#[ignore = "every single call: tests/run --soak"]
fn every_single_call_fails_once_in_what_members_do() {
    fail_acts(Numbers::Every);
}

#[test]
fn f03_what_the_disk_does_not_take_is_not_acknowledged() {
    let _disk = storm::with_others();
    let mut acting = Acting::start();
    let address = acting.server.address;
    let (data, log) = (acting.folder.path().join("data"), acting.folder.path().join("log"));
    for round in 0..3 {
        for error in ERRORS {
            let fault = Fault { call: "fsync", error, number: 1, lasts: Lasts::ForEver };
            let (refused, met) = inject::into(acting.server.id(), fault, &data, &log, || {
                (0..5).all(|number| {
                    let key = notes::key("unsynced", round * 10 + number);
                    let answer = stormed::answer(address, &key);
                    assert!(answer.contains(&key), "the draft: {answer}");
                    ["503", "507"].contains(&&answer[9..12])
                })
            });
            assert!(refused && met == Met::Yes, "{error}");
            let since = Instant::now();
            let key = notes::key("synced", round * 10 + error.len() as u64);
            while !stormed::write(address, &key) {
                assert!(since.elapsed() < BACK, "{error}: not written again");
            }
            acting.acknowledged.insert(key);
        }
    }
    acting.end();
}
