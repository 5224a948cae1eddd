//! F18: silent sockets and slow heads, few and in crowds.

use std::time::Duration;

use holewright_server::accept::Limits;
use rustix::process::Signal;

use super::client::{closed_after, connect, get};
use super::crowd::{Manner, Witness, wave};
use super::in_process::{Serving, beside, short};
use super::running::Running;

/// What no limit on a client that does nothing may exceed.
const BAR: Duration = Duration::from_secs(15);
const PROMPT: Duration = Duration::from_millis(200);

#[test]
fn f18_the_limits_are_within_the_bar() {
    let limits = Limits::default();
    assert!(limits.header <= BAR && limits.reader <= BAR, "{limits:?}");
}

#[tokio::test(flavor = "multi_thread")]
async fn f18_silent_sockets_are_closed() {
    let serving = Serving::start(short()).await;
    let address = serving.address;
    for sent in
        ["", "G", "GET / HTTP/1.1\r\nHost: x\r\n", "GET /healthz HTTP/1.1\r\nHost: x\r\n\r\n"]
    {
        let closed = beside(move || closed_after(address, sent.as_bytes())).await;
        assert!((250..2_000).contains(&closed), "{sent:?} closed after {closed} ms");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn f18_a_head_that_comes_byte_by_byte_is_given_up() {
    let serving = Serving::start(short()).await;
    let address = serving.address;
    let closed = beside(move || wave(address, Manner::SlowHeader, 4, Duration::from_secs(3))).await;
    assert!(closed >= Duration::from_millis(250), "closed after {closed:?}");
}

/// The fourth thing to show: a thousand silent sockets, and a page that stays prompt.
#[test]
fn f18_a_thousand_silent_sockets_do_not_hold_up_a_page() {
    let mut server = Running::start();
    get(server.address, "/threads/ba/5");
    let before = server.descriptors();
    let witness = Witness::start(server.address);
    for count in [300, 300, 300, 100] {
        let closed = wave(server.address, Manner::Silent, count, BAR);
        assert!(server.descriptors() < before + 310, "{} are open", server.descriptors());
        println!("{count} silent sockets closed after {closed:?}");
    }
    let (answers, most) = witness.end();
    println!("{answers} pages meanwhile, 99 of 100 within {most:?}");
    assert!(answers > 200, "{answers} pages");
    assert!(most <= PROMPT, "99 of 100 pages within {most:?}");
    check_given_back(&server, before);
    server.signal(Signal::TERM);
    assert_eq!(server.ends_within(Duration::from_secs(10)).0, Some(0));
}

#[test]
fn f18_slow_heads_and_slow_readers_do_not_hold_up_a_page() {
    crowds_of(100);
}

#[test]
#[ignore = "a minute and a half of crowds in full size: tests/run --soak"]
fn f18_a_thousand_of_each_do_not_hold_up_a_page() {
    for count in [300, 300, 300, 100] {
        crowds_of(count);
    }
}

fn crowds_of(count: usize) {
    let server = Running::start();
    let address = server.address;
    get(address, "/threads/ba/5");
    let before = server.descriptors();
    let witness = Witness::start(address);
    let heads = std::thread::spawn(move || wave(address, Manner::SlowHeader, count, BAR));
    let readers = wave(address, Manner::SlowReader, count, BAR);
    let heads = heads.join().unwrap();
    let (answers, most) = witness.end();
    println!(
        "{count} slow heads closed after {heads:?}, slow readers after {readers:?}; \
         {answers} pages meanwhile, 99 of 100 within {most:?}"
    );
    assert!(most <= PROMPT, "99 of 100 pages within {most:?}");
    check_given_back(&server, before);
}

#[track_caller]
fn check_given_back(server: &Running, before: usize) {
    std::thread::sleep(Duration::from_millis(200));
    let now = server.descriptors();
    assert!(now <= before + 10, "{before} descriptors before, {now} after");
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
