//! U31: the worst request of each route and page, and what it costs. As a club runs it, on a quiet machine:
//! `cargo test --locked --release --workspace --test web -- --nocapture worst::routes`, the slowest first.

use std::cmp::Reverse;
use std::collections::BTreeSet;
use std::time::Duration;

use holewright_server::rules::notes::markdown::html;

use super::club::Worst;
use super::meter::{Cost, Steps, cost, runtime};
use super::requests::{at_the_end, worst};
use crate::addresses::rows;
use crate::notes::marks::on_a_core;
use crate::people::access::routes;

/// The thread that answers everybody is held no longer than so many honest notes of the greatest length
/// take to show. It was ninety before what is written was read and shown beside it.
const HELD: u32 = 6;
/// The most bytes of an answer: all that is kept of a member who wrote sixty notes of the greatest length.
const BYTES: usize = 4 << 20;
/// The most steps of SQLite's machine, in hundreds, in a club of two hundred. It was four hundred before each page of a
/// member counted what is new to them: sending a note in then took 402.
const STEPS: u64 = 440;

/// So many notes at least is such a form about, or it is not the worst.
const NOTES: u64 = 50;

/// Every route and every page.
fn all() -> BTreeSet<(String, String)> {
    let pages = rows("Pages").into_keys().map(|page| ("GET".to_owned(), page));
    routes().into_iter().chain(pages).collect()
}

/// How long an honest note takes to show.
fn unit() -> Duration {
    let note = "Opened with a **3.3 mm** drill, then 4 BA by hand in gunmetal.\n".repeat(310);
    let once = |_| {
        let since = on_a_core();
        let _ = html(&note);
        on_a_core() - since
    };
    (0..5).map(once).min().unwrap()
}

/// What the worst requests of all routes cost, the first time and again where it changes nothing; each with the
/// most steps that it may take.
async fn costs() -> Vec<(String, Cost, u64)> {
    let club = Worst::open().await;
    let router = &club.club.router;
    let steps = Steps::of(&club.club.app.database).await;
    let (mut costs, mut wrong) = (Vec::new(), Vec::new());
    for (method, route) in all() {
        let asks = worst(&club, &method, &route);
        assert!(!asks.is_empty(), "{method} {route}: its worst request is not written down");
        for (number, ask) in asks.iter().enumerate() {
            let what = format!("{method} {route}, {number}");
            let mut told = cost(router, &steps, ask.request("identity")).await;
            if told.status != ask.status {
                wrong.push(format!("{what}: {} for {}: {}", told.status, ask.status, told.begin));
            } else if method == "GET" || ask.status != 303 {
                for coding in ["br", "identity"] {
                    told = told.least(cost(router, &steps, ask.request(coding)).await);
                }
            }
            costs.push((what, told, STEPS));
        }
    }
    let notes = club.hide_all().await;
    assert!(notes >= NOTES, "{notes}");
    let read = club.as_read().await;
    for (what, ask, each) in at_the_end(&club, &read) {
        let told = cost(router, &steps, ask.request("identity")).await;
        if told.status != ask.status {
            wrong.push(format!("{what}: {} for {}: {}", told.status, ask.status, told.begin));
        }
        costs.push((what.to_owned(), told, each * notes));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    costs
}

#[test]
fn u31_the_worst_request_of_each_route_holds_nobody_up() {
    let unit = unit();
    let mut costs = runtime().block_on(costs());
    costs.sort_by_key(|(_, cost, _)| Reverse(cost.held));
    println!("an honest note: {unit:?}");
    for (what, cost, most) in &costs {
        let Cost { held, took, bytes, steps, .. } = cost;
        println!("{what}: {held:?} of {took:?}, {bytes} bytes, {steps}00 steps of {most}00");
    }
    let is_dear = |(_, cost, most): &&(String, Cost, u64)| {
        cost.held > unit * HELD || cost.bytes > BYTES || cost.steps > *most
    };
    let dear: Vec<_> = costs.iter().filter(is_dear).collect();
    assert!(dear.is_empty(), "{dear:#?}, an honest note {unit:?}");
}
