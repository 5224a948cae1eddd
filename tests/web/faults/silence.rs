//! F18: silent sockets and slow heads, few and in crowds.

use std::io::Write;
use std::time::Duration;

use holewright_server::front::accept::Limits;
use rustix::process::Signal;

use super::client::{closed_after, connect, get, is_open};
use super::crowd::{Manner, Seen, Witness, wave};
use super::in_process::{Serving, beside, patient};
use super::running::Running;
use crate::process::wait_until;

/// What no limit on a client that does nothing may exceed.
const BAR: Duration = Duration::from_secs(15);
/// Within which 99 of 100 pages come, whatever the crowd: where the machine is ours alone.
const PROMPT: Duration = Duration::from_millis(200);
/// Pages take no longer than so many times as many from a server without a crowd.
const BESIDE_A_CROWD: f64 = 4.0;

/// The limit on a head in these tests.
const HEAD: Duration = Duration::from_millis(300);
/// Longer by far, and still shorter than what the library sets by itself.
const LONGER: Duration = Duration::from_secs(20);

#[test]
fn f18_the_limits_are_within_the_bar() {
    let limits = Limits::default();
    assert!(limits.header <= BAR && limits.reader <= BAR, "{limits:?}");
}

#[tokio::test(flavor = "multi_thread")]
async fn f18_silent_sockets_are_closed() {
    let serving = Serving::start(Limits { header: HEAD, ..patient() }).await;
    let longer = Serving::start(Limits { header: LONGER, ..patient() }).await;
    let (address, beside_it) = (serving.address, longer.address);
    for sent in
        ["", "G", "GET / HTTP/1.1\r\nHost: x\r\n", "GET /healthz HTTP/1.1\r\nHost: x\r\n\r\n"]
    {
        let (closed, is_held) = beside(move || {
            let mut same = connect(beside_it);
            same.write_all(sent.as_bytes()).unwrap();
            (closed_after(address, sent.as_bytes()), is_open(&mut same))
        })
        .await;
        assert!(closed >= HEAD, "{sent:?} closed after {closed:?}");
        assert!(is_held, "{sent:?}: closed later than where the limit is {LONGER:?}");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn f18_a_head_that_comes_byte_by_byte_is_given_up() {
    let serving = Serving::start(Limits { header: HEAD, ..patient() }).await;
    let address = serving.address;
    let closed = beside(move || wave(address, Manner::SlowHeader, 4)).await;
    assert!(closed >= HEAD, "closed after {closed:?}");
}

/// The sizes of crowds of a thousand in all.
const THOUSAND: [usize; 4] = [300, 300, 300, 100];

#[test]
fn f18_a_thousand_silent_sockets_do_not_hold_up_a_page() {
    check_ratio(&silent_crowds());
}

#[test]
#[ignore = "wants the machine to itself: tests/run --soak"]
fn f18_a_page_is_prompt_beside_a_thousand_silent_sockets() {
    check_prompt(&silent_crowds());
}

fn silent_crowds() -> Seen {
    let (mut server, quiet) = (Running::start(), Running::start());
    let before = server.descriptors();
    let witness = Witness::start(server.address, quiet.address);
    for count in THOUSAND {
        let closed = wave(server.address, Manner::Silent, count);
        assert!(server.descriptors() < before + 310, "{} are open", server.descriptors());
        println!("{count} silent sockets closed after {closed:?}");
    }
    let seen = witness.end();
    check_given_back(&server, before);
    server.signal(Signal::TERM);
    assert_eq!(server.ends(), Some(0));
    seen
}

#[test]
fn f18_slow_heads_and_slow_readers_do_not_hold_up_a_page() {
    check_ratio(&slow_crowds(100));
}

#[test]
#[ignore = "a minute and a half of crowds in full size: tests/run --soak"]
fn f18_a_thousand_of_each_do_not_hold_up_a_page() {
    for count in THOUSAND {
        check_prompt(&slow_crowds(count));
    }
}

fn slow_crowds(count: usize) -> Seen {
    let (server, quiet) = (Running::start(), Running::start());
    let address = server.address;
    let before = server.descriptors();
    let witness = Witness::start(address, quiet.address);
    let heads = std::thread::spawn(move || wave(address, Manner::SlowHeader, count));
    let readers = wave(address, Manner::SlowReader, count);
    let heads = heads.join().unwrap();
    println!("{count} slow heads closed after {heads:?}, slow readers after {readers:?}");
    let seen = witness.end();
    check_given_back(&server, before);
    seen
}

#[track_caller]
fn check_ratio(seen: &Seen) {
    println!("{seen:?}");
    assert!(seen.pages >= 8, "too few to compare: {seen:?}");
    assert!(seen.ratio <= BESIDE_A_CROWD, "{seen:?}");
}

#[track_caller]
fn check_prompt(seen: &Seen) {
    println!("{seen:?}");
    assert!(seen.most <= PROMPT, "{seen:?}");
}

fn check_given_back(server: &Running, before: usize) {
    wait_until("the descriptors of the crowd", || server.descriptors() <= before + 10);
}

#[test]
fn f18_the_soft_limit_on_descriptors_is_raised_to_the_hard_one() {
    let server = Running::under("ulimit -S -n 100");
    let (soft, hard) = server.descriptor_limits();
    assert_eq!(soft, hard);
    let crowd: Vec<_> = (0..150).map(|_| connect(server.address)).collect();
    assert!(get(server.address, "/healthz").starts_with("HTTP/1.1 200"));
    assert!(server.descriptors() > 150, "{} are open", server.descriptors());
    drop(crowd);
}
