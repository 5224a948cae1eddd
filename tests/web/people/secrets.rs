//! S38: nothing secret stands in the log; the command line makes links and the server prints one.

#![expect(clippy::print_stdout, reason = "what was measured is shown beside the bar it keeps")]

use std::io::Read;
use std::net::SocketAddr;
use std::process::Stdio;
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process};

use crate::guards::binary::{self, Running, program};
use crate::process::{self, Process, wait_until};
use crate::support::{Folder, free_address};

const PASSWORD: &str = "seven brass otters dancing";

/// What a command prints, and how it ends.
fn told(folder: &Folder, arguments: &[&str]) -> (Option<i32>, String, String) {
    let output = process::run(program().args(["--data-dir"]).arg(folder.path()).args(arguments));
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    (output.status.code(), text(&output.stdout), text(&output.stderr))
}

/// Sends a form to a running server.
fn post(address: SocketAddr, path: &str, headers: &str, body: &str) -> String {
    let request = format!(
        "POST {path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\nSec-Fetch-Site: same-origin\r\n\
         Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {}\r\n{headers}\r\n{body}",
        body.len()
    );
    binary::send(address, request.as_bytes())
}

fn cookie(answer: &str) -> String {
    let given = answer.lines().find_map(|line| line.strip_prefix("set-cookie: holewright="));
    let given = given.unwrap_or_else(|| panic!("{answer}"));
    format!("holewright={}", given.split(';').next().unwrap())
}

#[test]
fn s38_no_password_session_slip_or_code_is_in_the_log() {
    let server = Running::start(&["--second-factor", "relaxed"]);
    let data = server.database();
    let data = data.parent().unwrap().to_str().unwrap().to_owned();
    let link = process::run(program().args(["--data-dir", &data, "invite", "--secretary"]));
    let link = String::from_utf8(link.stdout).unwrap();
    let token = link.trim().rsplit('/').next().unwrap().to_owned();
    let slip = format!("/join/{token}");

    let joined = post(
        server.address,
        &slip,
        "",
        &format!("name=Una+Oakes&new_password={}", PASSWORD.replace(' ', "+")),
    );
    assert_eq!(binary::status(&joined), 303, "{joined}");
    let session = cookie(&joined);
    let wrong = "password=wrong+words+entirely+mine&name=Una+Oakes";
    assert_eq!(binary::status(&post(server.address, "/sign-in", "", wrong)), 422);
    let right = format!("name=una+oakes%0d%0a%1b[31m&password={}", PASSWORD.replace(' ', "+"));
    let again = post(server.address, "/sign-in?next=/me", "", &right);
    let with = format!("Cookie: {session}\r\n");
    let page = binary::get(server.address, "/me/second-factor", &with);
    assert_eq!(binary::status(&page), 200, "{page}");
    let invited = post(server.address, "/people/invite", &with, "meant_for=Percy");
    assert_eq!(binary::status(&invited), 200, "{invited}");
    let second = invited.split("/join/").nth(1).unwrap().split('<').next().unwrap().to_owned();
    binary::get(server.address, &format!("/join/{second}"), "");
    binary::get(server.address, &format!("/reset/{second}"), "");
    post(server.address, "/sign-out", &with, "");

    let mut secrets = vec![token, second, session.split('=').nth(1).unwrap().to_owned()];
    if let Some(given) = binary::header(&again, "set-cookie") {
        secrets.push(given.split(';').next().unwrap().split('=').nth(1).unwrap().to_owned());
    }
    secrets.extend(
        [
            "seven brass",
            "seven+brass",
            "wrong words",
            "wrong+words",
            "$argon2id$v=",
            "Oakes",
            "oakes",
        ]
        .map(str::to_owned),
    );
    let log = server.stop();
    let answered = log.iter().filter(|line| line["message"] == "answered").count();
    assert!(answered >= 8, "{answered}");
    for line in &log {
        let line = line.to_string();
        for secret in secrets.iter().filter(|secret| !secret.is_empty()) {
            assert!(!line.contains(secret.as_str()), "{secret} in {line}");
        }
    }
    let joins: Vec<_> = log.iter().filter(|line| line["route"] == "/join/{token}").collect();
    assert!(joins.len() >= 2, "{joins:?}");
    assert!(joins.iter().all(|line| line["path"] == "/join/…"), "{joins:?}");
}

/// However somebody, or some program that mends lines of a letter, spells the address on a slip.
#[test]
fn s38_a_slip_is_not_in_the_log_however_it_is_spelt() {
    let server = Running::start(&[]);
    let token = "3f9a".repeat(16);
    let coded: String = token.bytes().map(|byte| format!("%{byte:02x}")).collect();
    let twice = coded.replace('%', "%25");
    let (front, back) = token.split_at(31);
    for path in [
        format!("/JOIN/{token}"),
        format!("//join//{token}"),
        format!("/%6aoin/{token}"),
        format!("/reset%2F{token}"),
        format!("/x/../join/{token}"),
        format!("/join;/{token}"),
        format!("/{token}"),
        format!("/join{token}"),
        format!("/api/v1/join/{}", token.to_uppercase()),
        format!("/slips/{coded}"),
        format!("/slips/{twice}"),
        format!("/Join/{front}=%0d%0a{back}"),
        format!("/Reset/{front}"),
        format!("/threads/{front}%20{back}/5"),
        format!("/notes/feed/{token}"),
    ] {
        binary::get(server.address, &path, "");
    }
    binary::get(server.address, "/threads/ba/5", "");
    let log = server.stop();
    let paths: Vec<&str> = log.iter().filter_map(|line| line["path"].as_str()).collect();
    assert_eq!(paths.len(), 16, "{paths:?}");
    for path in &paths[..15] {
        let mut plain = path.to_lowercase();
        for _ in 0..3 {
            plain = form_urlencoded::parse(plain.as_bytes()).map(|(name, _)| name).collect();
        }
        let digits: String = plain.chars().filter(char::is_ascii_hexdigit).collect();
        assert!(!digits.contains("3f9a3f9a"), "{path}");
    }
    assert_eq!(paths[15], "/threads/ba/5");
}

/// Forty at once, by names and addresses of their own. Without turns they would take 40 × 19 MiB.
#[test]
fn s13_many_sign_ins_at_once_take_no_more_memory_than_the_cores_need() {
    const MIB: u64 = 1024;
    let server = Running::start(&["--trusted-proxy", "127.0.0.1"]);
    let address = server.address;
    let try_one = |number: usize| {
        let forwarded = format!("X-Forwarded-For: 10.1.0.{number}\r\n");
        let body = format!("name=Stray+{number}&password=some+other+words+here");
        binary::status(&post(address, "/sign-in", &forwarded, &body))
    };
    assert_eq!(binary::status(&binary::get(server.address, "/sign-in", "")), 200);
    let before = server.memory_kib();
    let mut most = before;
    let told: Vec<u16> = std::thread::scope(|scope| {
        let tries: Vec<_> = (0..40).map(|number| scope.spawn(move || try_one(number))).collect();
        while !tries.iter().all(std::thread::ScopedJoinHandle::is_finished) {
            most = most.max(server.memory_kib());
            std::thread::sleep(std::time::Duration::from_millis(2));
        }
        tries.into_iter().map(|told| told.join().unwrap()).collect()
    });
    assert!(told.iter().all(|status| [422, 503].contains(status)), "{told:?}");
    assert!(told.contains(&422), "{told:?}");
    let rise = most - before;
    let cores = u64::try_from(std::thread::available_parallelism().unwrap().get()).unwrap();
    assert!(rise >= 19 * MIB, "nothing was hashed: {rise} KiB");
    assert!(rise <= cores * 19 * MIB + 20 * MIB, "{rise} KiB");
}

#[test]
#[ignore = "wants the machine to itself: tests/run --soak"]
fn s13_pages_are_quick_beside_a_hundred_sign_ins_at_once() {
    let server = Running::start(&["--trusted-proxy", "127.0.0.1"]);
    let address = server.address;
    let try_one = |number: usize| {
        let forwarded = format!("X-Forwarded-For: 10.2.0.{number}\r\n");
        let body = format!("name=Stray+{number}&password=some+other+words+here");
        binary::status(&post(address, "/sign-in", &forwarded, &body))
    };
    let mut times = Vec::new();
    let told: Vec<u16> = std::thread::scope(|scope| {
        let tries: Vec<_> = (0..100).map(|number| scope.spawn(move || try_one(number))).collect();
        while !tries.iter().all(std::thread::ScopedJoinHandle::is_finished) {
            let begun = Instant::now();
            assert_eq!(binary::status(&binary::get(address, "/", "")), 200);
            times.push(begun.elapsed());
        }
        tries.into_iter().map(|told| told.join().unwrap()).collect()
    });
    times.sort();
    let slow = times[times.len() * 99 / 100];
    println!("S13: {} pages beside a hundred sign-ins, 99 in 100 within {slow:?}", times.len());
    assert!(told.iter().all(|status| [422, 429, 503].contains(status)), "{told:?}");
    assert!(times.len() >= 100, "too few to say anything: {}", times.len());
    assert!(slow <= Duration::from_millis(100), "{slow:?}");
}

#[test]
#[ignore = "wants the machine to itself: tests/run --soak"]
fn s14_a_megabyte_of_password_is_refused_at_once() {
    let server = Running::start(&[]);
    let body = format!("name=Enid&password={}", "long+words+of+brass+".repeat(50_000));
    let begun = Instant::now();
    let told = binary::status(&post(server.address, "/sign-in", "", &body));
    let time = begun.elapsed();
    println!("S14: a megabyte of password refused with {told} in {time:?}");
    assert_eq!(told, 413);
    assert!(time < Duration::from_millis(50), "{time:?}");
}

#[test]
fn the_first_start_prints_one_link_outside_the_log() {
    let folder = Folder::new();
    let address = free_address();
    let mut serve = program();
    serve
        .args(["--listen", &address.to_string(), "--base-url", "https://club.test", "--data-dir"])
        .arg(folder.path());
    let mut server = Process::start(&serve, Stdio::piped());
    wait_until("readiness", || binary::try_status(address, "/readyz") == 200);
    let (_, invited, _) = told(&folder, &["invite", "--base-url", "https://club.test"]);
    assert!(invited.starts_with("https://club.test/join/"), "while the server runs: {invited}");
    kill_process(Pid::from_child(&server), Signal::TERM).unwrap();
    assert_eq!(server.ends().code(), Some(0));
    let (mut log, mut told) = (String::new(), String::new());
    server.stdout.take().unwrap().read_to_string(&mut log).unwrap();
    server.stderr.take().unwrap().read_to_string(&mut told).unwrap();
    let link = told.split("https://club.test/join/").nth(1).unwrap_or_else(|| panic!("{told}"));
    let token: String = link.chars().take_while(char::is_ascii_hexdigit).collect();
    assert_eq!(token.len(), 64, "{told}");
    assert!(!log.contains(&token), "the log holds the link");
    assert!(log.contains("the club has no secretary yet"), "{log}");
}

#[test]
fn the_command_line_makes_links_and_says_whom_it_does_not_know() {
    let folder = Folder::new();
    // A link to a club that nobody ever served would be of no use.
    let (code, out, err) = told(&folder, &["invite", "--secretary"]);
    assert_eq!((code, out.as_str()), (Some(1), ""), "{err}");
    assert_eq!(told(&folder, &["demo"]).0, Some(0));
    let base = ["--base-url", "https://club.test"];
    let (code, link, _) = told(
        &folder,
        &[&["invite", "--moderator", "--inspector", "--for", "Percy"], base.as_slice()].concat(),
    );
    assert_eq!(code, Some(0));
    let token = link.trim().strip_prefix("https://club.test/join/").unwrap();
    assert_eq!(token.len(), 64);
    let (code, out, err) = told(&folder, &["reset", "Nobody Atall"]);
    assert_eq!((code, out.as_str()), (Some(1), ""));
    assert!(err.contains("no member is called Nobody Atall"), "{err}");
    let (code, _, err) = told(&folder, &["--second-factor", "sometimes", "invite"]);
    assert_eq!(code, Some(2));
    assert!(err.contains("allowed is compulsory or relaxed"), "{err}");
    let (code, _, err) = told(&folder, &["reset"]);
    assert_eq!(code, Some(2));
    assert!(err.contains("<NAME>"), "{err}");
}
