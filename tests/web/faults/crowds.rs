//! F21: more clients than slots, and no file descriptor left.

use std::io::Write;
use std::net::{SocketAddr, TcpStream};
use std::time::{Duration, Instant};

use holewright_server::front::accept::{Limits, descriptors};

use super::client::{connect, get, read, status};
use super::in_process::{Serving, beside, patient};
use super::running::Running;
use crate::process::wait_until;

fn crowd(address: SocketAddr, count: usize) -> Vec<TcpStream> {
    let _ = descriptors::raise();
    (0..count).map(|_| connect(address)).collect()
}

#[tokio::test(flavor = "multi_thread")]
async fn f21_more_clients_than_slots_wait_their_turn() {
    let silence = Duration::from_millis(300);
    let serving = Serving::start(Limits { header: silence, ..patient() }).await;
    let address = serving.address;
    let (answer, waited) = beside(move || {
        let since = Instant::now();
        let silent = crowd(address, patient().connections);
        let answer = get(address, "/healthz");
        drop(silent);
        (answer, since.elapsed())
    })
    .await;
    assert_eq!(status(&answer), 200, "{answer}");
    assert!(waited >= silence, "waited {waited:?} for a slot");
}

/// No limit on time is ever met here, so nobody is answered from a slot that is not given back.
#[tokio::test(flavor = "multi_thread")]
async fn f21_clients_that_went_away_hold_no_slot() {
    let serving = Serving::start(patient()).await;
    let address = serving.address;
    let answers = beside(move || {
        let silent = crowd(address, 5 * patient().connections);
        let mut waiting = connect(address);
        waiting
            .write_all(b"GET /healthz HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n")
            .unwrap();
        drop(silent);
        [read(&mut waiting), get(address, "/healthz")]
    })
    .await;
    for answer in answers {
        assert_eq!(status(&answer), 200, "{answer}");
    }
}

/// With 256 descriptors a thousand idle clients are a queue: no descriptor runs out, nothing spins.
#[test]
fn f21_few_descriptors_and_a_thousand_idle_clients() {
    let mut server = Running::under("ulimit -n 256");
    let idle = crowd(server.address, 1000);
    wait_until("all that come in", || server.descriptors() >= 150);
    let load = server.load_during(|| std::thread::sleep(Duration::from_millis(1500)));
    assert!(load < 0.2, "{load} of a core while nothing is asked");
    let open = server.descriptors();
    assert!((150..256).contains(&open), "{open} are open");
    drop(idle);
    assert_eq!(status(&get(server.address, "/readyz")), 200);
    let log = server.log();
    assert!(log.contains("fewer connections at once"), "{log}");
    assert!(!log.contains("cannot accept"), "{log}");
}

/// The limit sinks under a running server, so that even fewer clients than slots are too many.
#[test]
fn f21_out_of_descriptors_is_logged_once_a_second_and_passes() {
    let mut server = Running::under("ulimit -n 256");
    assert_eq!(status(&get(server.address, "/readyz")), 200);
    server.limit_descriptors(server.descriptors() + 5);
    let since = Instant::now();
    let idle = crowd(server.address, 30);
    let lines = |log: &str| log.lines().filter(|line| line.contains("cannot accept")).count();
    let load = server.load_during(|| {
        wait_until("its complaints", || lines(&server.log_so_far()) >= 4);
    });
    assert!(load < 0.2, "{load} of a core while nothing is asked");
    let log = server.log();
    let most = since.elapsed().as_secs() + 1;
    assert!(u64::try_from(lines(&log)).unwrap() <= most, "more than {most} lines: {log}");
    assert!(log.contains("Too many open files"), "{log}");
    drop(idle);
    assert_eq!(status(&get(server.address, "/readyz")), 200);
}

#[test]
#[ignore = "half a minute of a very long queue: tests/run --soak"]
fn f21_five_thousand_idle_clients_are_worked_off() {
    let server = Running::start();
    let since = Instant::now();
    let address = server.address;
    // Only so many fit into the queue; the rest knock again, so each has a thread to wait in.
    let idle: Vec<_> = (0..5)
        .map(|_| std::thread::spawn(move || crowd(address, 1000)))
        .collect::<Vec<_>>()
        .into_iter()
        .flat_map(|clients| clients.join().unwrap())
        .collect();
    assert!(server.descriptors() < 1024 + 64, "{} are open", server.descriptors());
    assert_eq!(status(&get(address, "/readyz")), 200);
    assert!(since.elapsed() < Duration::from_secs(60), "{:?}", since.elapsed());
    drop(idle);
}
