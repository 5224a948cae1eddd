//! S40: the program asks nothing of another machine. It is watched from its start to its end while
//! everything it answers is asked of it: nobody's pages and members', every route, a sign-in, notes
//! written, previewed, passed, found, fed and exported; and so are its commands.

use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::net::SocketAddr;
use std::path::Path;

use form_urlencoded::Serializer;
use rustix::process::Signal;

use super::watched::{self, calls, reaching_out};
use crate::faults::{Running, get, send, status};
use crate::html;
use crate::people::access::{filled, routes};
use crate::support::Folder;

const PASSWORD: &str = "seven brass otters dancing";

/// Somebody at the server, perhaps signed in.
struct Client {
    address: SocketAddr,
    cookie: String,
    asked: u32,
}

impl Client {
    fn at(address: SocketAddr) -> Self {
        Self { address, cookie: String::new(), asked: 0 }
    }

    fn ask(&mut self, method: &str, path: &str, form: &[(&str, &str)]) -> String {
        let form = Serializer::new(String::new()).extend_pairs(form).finish();
        self.asked += 1;
        // Each request from another reader behind the proxy: one alone would soon be told to wait.
        let reader = format!("10.0.{}.{}", self.asked / 250, self.asked % 250);
        let cookie = &self.cookie;
        let request = format!(
            "{method} {path} HTTP/1.1\r\nHost: {}\r\nX-Forwarded-For: {reader}\r\n\
             Sec-Fetch-Site: same-origin\r\nCookie: {cookie}\r\n\
             Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {}\r\n\
             Connection: close\r\n\r\n{form}",
            self.address,
            form.len()
        );
        let answer = send(self.address, request.as_bytes());
        let set = answer.lines().find_map(|line| line.strip_prefix("set-cookie: holewright="));
        if let Some(set) = set {
            self.cookie = format!("holewright={}", set.split(';').next().unwrap());
        }
        answer
    }

    #[track_caller]
    fn get(&mut self, path: &str) -> String {
        let answer = self.ask("GET", path, &[]);
        assert_eq!(status(&answer), 200, "{path}: {answer}");
        answer
    }

    /// Sends a form that does what it should, or shows something.
    #[track_caller]
    fn post(&mut self, path: &str, told: u16, form: &[(&str, &str)]) -> String {
        let answer = self.ask("POST", path, form);
        assert_eq!(status(&answer), told, "{path}: {answer}");
        answer
    }
}

#[test]
fn s40_whatever_is_asked_of_it_the_server_asks_nothing_of_another_machine() {
    let folder = Folder::new();
    let trace = folder.path().join("trace");
    let settings = ["HOLEWRIGHT_SECOND_FACTOR=relaxed", "HOLEWRIGHT_TRUSTED_PROXY=127.0.0.1"];
    let mut starter = vec!["env"];
    starter.extend(settings);
    starter.extend(watched::starter(&trace));
    let mut server = Running::by(Folder::new(), &starter);
    let data = server.folder.path().join("data");

    let mut moderator = join(&server, &data, "Una Secretary", &["--secretary", "--moderator"]);
    let mut author = join(&server, &data, "Enid Hathersage", &[]);
    write_a_note(&mut author, &mut moderator);
    let mut nobody = Client::at(server.address);
    read_the_note(&mut nobody, &mut author);
    for client in [&mut nobody, &mut author, &mut moderator] {
        let kinds = crawl(client);
        assert!(kinds > 40, "only {kinds} kinds of page were found");
        for (method, path) in routes().iter().filter(|(_, path)| path != "/sign-out") {
            let method = if method == "ANY" { "DELETE" } else { method };
            let answer = client.ask(method, &filled(path), &[]);
            assert!(status(&answer) < 500, "{method} {path}: {answer}");
        }
    }
    author.post("/sign-out", 303, &[]);
    save(&data);

    server.signal(Signal::TERM);
    assert_eq!(server.ends(), Some(0));
    let trace = watched::read(&trace);
    let calls = calls(&trace);
    let accepted = calls.iter().filter(|(name, _)| name.starts_with("accept")).count();
    assert!(accepted > 500, "the watch saw {accepted} connections come in");
    assert_eq!(reaching_out(&calls), []);
    // It listened where it was told to, on the loopback, and nowhere else.
    let bound: Vec<_> = calls.iter().filter(|(name, _)| *name == "bind").collect();
    let there = "{sa_family=AF_INET, sin_port=htons(0), sin_addr=inet_addr(\"127.0.0.1\")}";
    assert!(matches!(bound.as_slice(), [(_, given)] if given.contains(there)), "{bound:?}");
    assert_eq!(calls.iter().filter(|(name, _)| *name == "listen").count(), 1);
}

/// Joins with a slip from the command line, signs out, and signs in.
fn join(server: &Running, data: &Path, name: &str, rights: &[&str]) -> Client {
    let slip = command(data, &[&["invite"], rights].concat());
    let slip = slip.trim().split_at(slip.find("/join/").unwrap()).1;
    let mut client = Client::at(server.address);
    client.post(slip, 303, &[("name", name), ("new_password", PASSWORD)]);
    client.post("/sign-out", 303, &[]);
    client.post("/sign-in", 303, &[("name", name), ("password", PASSWORD)]);
    client.get("/me");
    client
}

fn write_a_note(author: &mut Client, moderator: &mut Client) {
    let note = [
        ("title", "A slow drill in gunmetal"),
        ("text", "**No. 43**, see [here](https://elsewhere.test/x) ![x](https://elsewhere.test/y)"),
        ("on", "gunmetal, 4 BA"),
    ];
    let with = |button| [&note[..], &[("do", button)]].concat();
    assert!(author.post("/notes/new", 200, &with("preview")).contains("<strong>"));
    author.post("/notes/new", 303, &with("draft"));
    author.post("/notes/1/edit", 303, &with("send"));
    let queue = moderator.get("/queue");
    let page = html::read(&queue);
    let version = page.tags.iter().find(|tag| tag.attribute("name") == Some("version-1")).unwrap();
    let version = version.attribute("value").unwrap();
    moderator.post("/queue/1", 303, &[("version", version), ("do", "pass")]);
}

/// The note, found and carried away in every way there is.
fn read_the_note(nobody: &mut Client, author: &mut Client) {
    for path in [
        "/notes/1",
        "/notes/1/history",
        "/notes?q=slow",
        "/search?q=slow",
        "/notes.atom",
        "/notes.csv",
        "/notes.json",
        "/materials/gunmetal",
    ] {
        assert!(nobody.get(path).contains("A slow drill in gunmetal"), "{path}");
    }
    assert!(author.get("/me/data.json").contains("A slow drill in gunmetal"));
}

/// Follows the links from the front door, a few of each kind; how many kinds there were.
fn crawl(client: &mut Client) -> usize {
    let mut waiting = VecDeque::from(["/".to_owned()]);
    let mut seen = BTreeSet::new();
    let mut kinds: BTreeMap<String, u32> = BTreeMap::new();
    while let Some(address) = waiting.pop_front() {
        let count = kinds.entry(kind(&address)).or_default();
        *count += 1;
        if *count > 2 {
            continue;
        }
        let answer = client.ask("GET", &address, &[]);
        assert!(status(&answer) < 400, "{address}: {answer}");
        if !answer.contains("content-type: text/html") {
            continue;
        }
        for tag in &html::read(answer.split_once("\r\n\r\n").unwrap().1).tags {
            let link = tag.attribute("href").or_else(|| tag.attribute("src")).unwrap_or_default();
            let link = link.split('#').next().unwrap_or_default();
            if link.starts_with('/') && seen.insert(link.to_owned()) {
                waiting.push_back(link.to_owned());
            }
        }
    }
    kinds.len()
}

/// Addresses of one kind differ in their last part and in what their fields hold.
fn kind(address: &str) -> String {
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    let mut parts: Vec<&str> = path.split('/').collect();
    let last = parts.pop().unwrap_or_default();
    let last =
        if parts.len() > 1 { last.rsplit_once('.').map_or("", |(_, end)| end) } else { last };
    let fields: Vec<&str> = query.split('&').filter_map(|field| field.split('=').next()).collect();
    format!("{}/{last}?{}", parts.join("/"), fields.join("&"))
}

/// Runs a command of the program watched; it opens no socket at all.
fn command(data: &Path, arguments: &[&str]) -> String {
    let folder = Folder::new();
    let trace = folder.path().join("trace");
    let data = data.to_str().unwrap();
    let done = watched::run(&trace, &[arguments, &["--data-dir", data]].concat());
    assert!(done.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&done.stderr));
    let trace = watched::read(&trace);
    let calls: Vec<_> =
        calls(&trace).into_iter().filter(|(name, _)| *name != "socketpair").collect();
    assert!(matches!(calls.as_slice(), [("execve", _)]), "{arguments:?}: {calls:?}");
    String::from_utf8(done.stdout).unwrap()
}

fn save(data: &Path) {
    let folder = Folder::new();
    let file = folder.path().join("club.tar");
    let file = file.to_str().unwrap();
    command(data, &["backup", file]);
    command(data, &["verify", file]);
    let elsewhere = folder.path().join("elsewhere");
    command(&elsewhere, &["restore", file]);
    command(&folder.path().join("try"), &["demo"]);
}

/// The one command that connects, to the server beside it: the watch sees it do so.
#[test]
fn s40_a_connection_is_seen_where_there_is_one() {
    let server = Running::start();
    assert_eq!(status(&get(server.address, "/readyz")), 200);
    let folder = Folder::new();
    let trace = folder.path().join("trace");
    let address = server.address.to_string();
    assert!(watched::run(&trace, &["healthcheck", "--listen", &address]).status.success());
    let trace = watched::read(&trace);
    let found = reaching_out(&calls(&trace)).into_iter().map(|call| call.0).collect::<Vec<_>>();
    assert_eq!(found, ["connect"], "{trace}");
    assert!(trace.contains(&format!("sin_port=htons({})", server.address.port())), "{trace}");
}

#[test]
fn s40_every_way_out_is_told_from_an_answer() {
    for (line, reaches_out) in [
        ("7 connect(5, {sa_family=AF_INET, sin_port=htons(80), ...}, 16) = 0", true),
        ("7 connect(5, {sa_family=AF_UNIX, sun_path=\"/var/run/nscd/socket\"}, 110) = -1", true),
        ("7  connect(5, {sa_family=AF_INET, ...}, 16 <unfinished ...>", true),
        ("7 socket(AF_INET, SOCK_DGRAM|SOCK_CLOEXEC, IPPROTO_IP) = 5", true),
        ("7 socket(AF_NETLINK, SOCK_RAW|SOCK_CLOEXEC, NETLINK_ROUTE) = 5", true),
        ("7 socket(AF_UNIX, SOCK_STREAM|SOCK_CLOEXEC, 0) = 5", true),
        ("7 sendto(5, \"\"..., 30, MSG_NOSIGNAL, {sa_family=AF_INET, ...}, 16) = 30", true),
        ("7 sendmmsg(5, [{msg_hdr={msg_name={sa_family=AF_INET}, ...}}], 2, 0) = 2", true),
        ("7 io_uring_setup(8, {...}) = 5", true),
        ("8 execve(\"/bin/sh\", [\"sh\"], 0x7ffc /* 20 vars */) = 0", true),
        ("7 socket(AF_INET, SOCK_STREAM|SOCK_CLOEXEC, IPPROTO_IP) = 5", false),
        ("7 socketpair(AF_UNIX, SOCK_STREAM|SOCK_CLOEXEC, 0, [5, 6]) = 0", false),
        ("7 accept4(5, {sa_family=AF_INET, ...}, [128 => 16], SOCK_CLOEXEC) = 9", false),
        ("7 sendto(9, \"\"..., 300, MSG_NOSIGNAL, NULL, 0) = 300", false),
        ("7 sendmsg(9, {msg_name=NULL, msg_namelen=0, msg_iov=[...]}, 0) = 300", false),
        ("7 <... connect resumed>) = 0", false),
        ("7 --- SIGTERM {si_signo=SIGTERM} ---", false),
    ] {
        let trace = format!("7 execve(\"/bin/holewright\", [\"holewright\"], 0x7ff) = 0\n{line}\n");
        let found = reaching_out(&calls(&trace)).len();
        assert_eq!(found, usize::from(reaches_out), "{line}");
    }
}
