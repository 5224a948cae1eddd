//! F21: more clients than slots, and no file descriptor left.

use std::net::{SocketAddr, TcpStream};
use std::time::{Duration, Instant};

use holewright_server::accept::descriptors;

use super::client::{connect, get, status};
use super::in_process::{Serving, beside, short};
use super::running::Running;

fn crowd(address: SocketAddr, count: usize) -> Vec<TcpStream> {
    let _ = descriptors::raise();
    (0..count).map(|_| connect(address)).collect()
}

#[tokio::test(flavor = "multi_thread")]
async fn f21_more_clients_than_slots_wait_their_turn() {
    let serving = Serving::start(short()).await;
    let address = serving.address;
    let (answer, waited) = beside(move || {
        let silent = crowd(address, short().connections);
        let since = Instant::now();
        let answer = get(address, "/healthz");
        drop(silent);
        (answer, since.elapsed().as_millis())
    })
    .await;
    assert_eq!(status(&answer), 200, "{answer}");
    assert!((150..2_000).contains(&waited), "waited {waited} ms for a slot");
}

/// With 256 descriptors a thousand idle clients are a queue: no descriptor runs out, nothing spins.
#[test]
fn f21_few_descriptors_and_a_thousand_idle_clients() {
    let mut server = Running::under("ulimit -n 256");
    let idle = crowd(server.address, 1000);
    let load = server.load_over(Duration::from_millis(1500));
    assert!(load < 0.2, "{load} of a core while nothing is asked");
    let open = server.descriptors();
    assert!((150..256).contains(&open), "{open} are open");
    drop(idle);
    let since = Instant::now();
    assert_eq!(status(&get(server.address, "/readyz")), 200);
    assert!(since.elapsed() < Duration::from_secs(3), "{:?}", since.elapsed());
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
    let idle = crowd(server.address, 30);
    let load = server.load_over(Duration::from_millis(3500));
    assert!(load < 0.2, "{load} of a core while nothing is asked");
    let log = server.log();
    let lines = log.lines().filter(|line| line.contains("cannot accept")).count();
    assert!((3..=4).contains(&lines), "{lines} lines in 3.5 s: {log}");
    assert!(log.contains("Too many open files"), "{log}");
    drop(idle);
    let since = Instant::now();
    assert_eq!(status(&get(server.address, "/readyz")), 200);
    assert!(since.elapsed() < Duration::from_secs(3), "{:?}", since.elapsed());
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
