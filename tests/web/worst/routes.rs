//! U31: the worst request of each route and page, and what it costs.

use std::cmp::Reverse;
use std::collections::BTreeSet;
use std::time::Duration;

use holewright_server::rules::notes::markdown::html;

use super::club::Worst;
use super::meter::{Cost, Steps, cost, runtime};
use super::requests::worst;
use crate::addresses::rows;
use crate::notes::marks::on_a_core;
use crate::people::access::routes;

/// The thread that answers everybody is held no longer than so many honest notes of the greatest length
/// take to show. It was ninety before what is written was read and shown beside it.
const HELD: u32 = 6;
/// The most bytes of an answer: all that is kept of a member who wrote sixty notes of the greatest length.
const BYTES: usize = 4 << 20;
/// The most steps of SQLite's machine, in hundreds, in a club of two hundred.
const STEPS: u64 = 400;

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

/// What the worst requests of all routes cost, the first time and again where it changes nothing.
async fn costs() -> Vec<(String, Cost)> {
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
            costs.push((what, told));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    costs
}

#[test]
fn u31_the_worst_request_of_each_route_holds_nobody_up() {
    let unit = unit();
    let mut costs = runtime().block_on(costs());
    costs.sort_by_key(|(_, cost)| Reverse(cost.held));
    println!("an honest note: {unit:?}");
    for (what, cost) in &costs {
        println!("{what}: {:?}, {} bytes, {}00 steps", cost.held, cost.bytes, cost.steps);
    }
    let is_dear = |cost: &Cost| cost.held > unit * HELD || cost.bytes > BYTES || cost.steps > STEPS;
    let dear: Vec<_> = costs.iter().filter(|(_, cost)| is_dear(cost)).collect();
    assert!(dear.is_empty(), "{dear:#?}, an honest note {unit:?}");
}
