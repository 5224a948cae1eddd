//! The settings, read by the real binary: what is wrong is named, and the exit code says so.

use std::process::{Command, Output, Stdio};

use holewright_server::config::CommandLine;
use holewright_server::extract::client;
use holewright_server::rules::BaseUrl;
use holewright_server::rules::TrustedProxy;

use rustix::process::{Pid, Signal, kill_process};

use crate::guards::binary;
use crate::process::{Process, run, wait_until};
use crate::support::{Folder, free_address};

fn program() -> Command {
    let mut program = Command::new(env!("CARGO_BIN_EXE_holewright"));
    for (name, _) in std::env::vars_os() {
        if name.to_string_lossy().starts_with("HOLEWRIGHT_") {
            program.env_remove(name);
        }
    }
    program
}

fn words(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

#[track_caller]
fn check_refused(program: &mut Command, named: &[&str]) {
    let output = run(program);
    assert_eq!(output.status.code(), Some(2), "{}", words(&output));
    for name in named {
        assert!(words(&output).contains(name), "{name} in: {}", words(&output));
    }
}

#[test]
fn a_bad_setting_is_named_with_its_value_and_what_is_allowed() {
    for (flag, variable, value, allowed) in [
        ("--listen", "HOLEWRIGHT_LISTEN", "8080", "127.0.0.1:8080"),
        ("--listen", "HOLEWRIGHT_LISTEN", "localhost:99999", "127.0.0.1:8080"),
        ("--base-url", "HOLEWRIGHT_BASE_URL", "club.example", "https://club.example"),
        ("--base-url", "HOLEWRIGHT_BASE_URL", "https://club.example/shop", "nothing after it"),
        ("--base-url", "HOLEWRIGHT_BASE_URL", "http://192.168.1.20:0", "a port from 1 to 65535"),
        (
            "--base-url",
            "HOLEWRIGHT_BASE_URL",
            "http://192.168.1.20:99999",
            "a port from 1 to 65535",
        ),
        ("--base-url", "HOLEWRIGHT_BASE_URL", "http://[::1]:65536", "a port from 1 to 65535"),
        ("--base-url", "HOLEWRIGHT_BASE_URL", "http://club.example:", "a port from 1 to 65535"),
        ("--trusted-proxy", "HOLEWRIGHT_TRUSTED_PROXY", "10.0.0.0/33", "172.16.0.0/12"),
        ("--log", "HOLEWRIGHT_LOG", "loud", "debug"),
    ] {
        check_refused(program().args([flag, value]), &[flag, variable, value, allowed]);
        check_refused(program().env(variable, value), &[flag, variable, value, allowed]);
    }
}

#[test]
fn an_unknown_setting_is_refused() {
    check_refused(program().arg("--listne"), &["--listne", "--listen"]);
    check_refused(
        program().env("HOLEWRIGHT_LISTNE", "127.0.0.1:1"),
        &["HOLEWRIGHT_LISTNE", "HOLEWRIGHT_LISTEN"],
    );
    check_refused(program().arg("serv"), &["serv", "serve"]);
}

#[test]
fn help_shows_every_setting_and_an_example() {
    let output = run(program().arg("--help"));
    assert_eq!(output.status.code(), Some(0));
    let help = String::from_utf8(output.stdout).unwrap();
    for word in [
        "--listen",
        "HOLEWRIGHT_LISTEN",
        "127.0.0.1:8080",
        "--data-dir",
        "HOLEWRIGHT_DATA_DIR",
        "--base-url",
        "HOLEWRIGHT_BASE_URL",
        "--trusted-proxy",
        "HOLEWRIGHT_TRUSTED_PROXY",
        "holewright --listen 0.0.0.0:8080",
    ] {
        assert!(help.contains(word), "{word}");
    }
}

#[test]
fn the_version_is_the_packages() {
    let output = run(program().arg("--version"));
    assert_eq!(output.status.code(), Some(0));
    let expected = format!("holewright {}\n", env!("CARGO_PKG_VERSION"));
    assert_eq!(String::from_utf8(output.stdout).unwrap(), expected);
}

#[track_caller]
fn check_cannot_start(program: &mut Command, named: &[&str]) {
    let output = run(program);
    assert_eq!(output.status.code(), Some(1), "{}", words(&output));
    assert_eq!(words(&output).lines().count(), 1, "{}", words(&output));
    for name in named {
        assert!(words(&output).contains(name), "{name} in: {}", words(&output));
    }
}

#[test]
fn a_taken_port_is_one_clear_line_and_the_data_is_not_touched() {
    let taken = std::net::TcpListener::bind("127.0.0.1:0").unwrap();
    let address = taken.local_addr().unwrap().to_string();
    let folder = Folder::new();
    let data = folder.path().join("data");
    check_cannot_start(
        program().args(["--listen", &address]).arg("--data-dir").arg(&data),
        &[&address, "--listen"],
    );
    assert!(!data.exists());
}

#[test]
fn a_data_folder_that_cannot_be_had_is_one_clear_line() {
    let folder = Folder::new();
    let file = folder.path().join("file");
    std::fs::write(&file, "in the way").unwrap();
    let below = file.join("data");
    check_cannot_start(
        program().args(["--listen", "127.0.0.1:0"]).arg("--data-dir").arg(&below),
        &[below.to_str().unwrap(), "--data-dir", "user "],
    );
    // The database's place is taken by a folder.
    let data = folder.path().join("data");
    std::fs::create_dir_all(data.join("holewright.sqlite")).unwrap();
    check_cannot_start(
        program().args(["--listen", "127.0.0.1:0"]).arg("--data-dir").arg(&data),
        &["holewright.sqlite", "--data-dir", "user "],
    );
}

#[test]
fn a_health_check_without_a_server_fails() {
    let address = free_address().to_string();
    check_cannot_start(program().args(["healthcheck", "--listen", &address]), &[&address]);
}

#[test]
fn a_base_url_loses_its_final_slash_only() {
    let base_url: BaseUrl = "https://club.example:8443/".parse().unwrap();
    assert_eq!(base_url.as_str(), "https://club.example:8443");
    for wrong in
        ["", "/", "https://", "https://u@h", "https://h/?q", "https://h/x", "h:80", "ftp://h"]
    {
        assert!(wrong.parse::<BaseUrl>().is_err(), "{wrong}");
    }
}

#[test]
fn a_base_url_of_a_home_network_is_listened_on() {
    for (words, listen) in [
        (&["--base-url", "http://192.168.1.20:8080"][..], "192.168.1.20:8080"),
        (&["--base-url", "http://192.168.1.20"], "192.168.1.20:80"),
        (&["--base-url", "http://[fd00::20]:8080/"], "[fd00::20]:8080"),
        (&["--base-url", "http://[fd00::20]"], "[fd00::20]:80"),
        (&["serve", "--base-url", "http://192.168.1.20:8080"], "192.168.1.20:8080"),
        // What is said outright counts, before the command or behind it.
        (&["--base-url", "http://192.168.1.20:8080", "--listen", "0.0.0.0:9000"], "0.0.0.0:9000"),
        (&["--listen", "[::]:1", "serve", "--base-url", "http://192.168.1.20"], "[::]:1"),
        (&["serve", "--listen", "[::]:1", "--base-url", "http://192.168.1.20"], "[::]:1"),
        // A name says nothing of where to listen, and https comes through a proxy.
        (&["--base-url", "http://club.example:9000"], "127.0.0.1:8080"),
        (&["--base-url", "https://192.168.1.20:8080"], "127.0.0.1:8080"),
        (&[], "127.0.0.1:8080"),
    ] {
        let line = CommandLine::of(["holewright"].iter().chain(words)).unwrap();
        assert_eq!(line.config.listen.to_string(), listen, "{words:?}");
    }
}

#[test]
fn commands_print_the_address_of_the_server_that_serves() {
    let folder = Folder::new();
    let address = free_address();
    let base = format!("http://{address}");
    let mut serve = program();
    // No more is said than where readers come.
    serve.args(["--base-url", &base, "--data-dir"]).arg(folder.path());
    let mut server = Process::start(&serve, Stdio::null());
    wait_until("readiness", || binary::try_status(address, "/readyz") == 200);
    let made = |more: &[&str]| {
        let output = run(program()
            .args(["invite", "--secretary"])
            .args(more)
            .arg("--data-dir")
            .arg(folder.path()));
        assert_eq!(output.status.code(), Some(0), "{}", words(&output));
        String::from_utf8(output.stdout).unwrap()
    };
    let link = made(&[]);
    assert!(link.starts_with(&format!("{base}/join/")), "{link}");
    let path = link.trim().strip_prefix(&base).unwrap();
    assert_eq!(binary::try_status(address, path), 200, "the link works as it is printed");
    let given = made(&["--base-url", "https://club.example"]);
    assert!(given.starts_with("https://club.example/join/"), "{given}");
    kill_process(Pid::from_child(&server), Signal::TERM).unwrap();
    assert_eq!(server.ends().code(), Some(0));
    assert!(made(&[]).starts_with(&base), "as it was served last");
}

#[test]
fn a_name_without_a_proxy_is_told_what_to_add() {
    for (base, is_told) in [
        ("http://club.example:8080", true),
        ("https://club.example", false),
        ("http://localhost:8080", false),
    ] {
        let url: BaseUrl = base.parse().unwrap();
        assert_eq!(url.is_http_by_name(), is_told, "{base}");
    }
}

#[test]
fn only_trusted_proxies_are_believed() {
    let trusted: Vec<TrustedProxy> =
        ["10.0.0.0/8", "::1"].iter().map(|proxy| proxy.parse().unwrap()).collect();
    for (peer, forwarded, expected) in [
        ("203.0.113.9", "198.51.100.7", "203.0.113.9"),
        ("10.0.0.1", "198.51.100.7", "198.51.100.7"),
        ("10.0.0.1", "192.0.2.1, 198.51.100.7, 10.0.0.2", "198.51.100.7"),
        ("10.0.0.1", "", "10.0.0.1"),
        ("10.0.0.1", "198.51.100.7, rubbish", "10.0.0.1"),
        ("::ffff:10.0.0.1", "198.51.100.7", "198.51.100.7"),
        ("::1", "2001:db8::5", "2001:db8::5"),
    ] {
        let headers = [("x-forwarded-for".parse().unwrap(), forwarded.parse().unwrap())];
        let headers = headers.into_iter().collect();
        let address = client::address(peer.parse().unwrap(), &headers, &trusted);
        assert_eq!(address.to_string(), expected, "{peer} {forwarded}");
    }
}
