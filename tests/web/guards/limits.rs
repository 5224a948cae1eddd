//! S12: how often one address may search and plan, and whose address counts.

use std::net::{IpAddr, SocketAddr};
use std::sync::Arc;
use std::time::{Duration, Instant};

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::Request;
use holewright_server::App;
use holewright_server::extract::client::{self, Peer};
use holewright_server::front::routes;
use holewright_server::rules::clock::Clock;
use holewright_server::rules::limits::{Allowance, Client, RateLimit};
use tower::ServiceExt;

use super::binary::{self, Running};
use crate::html;
use crate::process::wait_until;
use crate::support::{Folder, NOW, config};

/// Ten at once, and no more for as long as a test runs.
const TEN: Allowance = Allowance { burst: 10, every: Duration::from_secs(3600) };

/// A server that limits, behind these proxies.
struct Limited {
    router: Router,
    _folder: Folder,
}

struct Told {
    status: u16,
    retry_after: Option<u64>,
    content_type: String,
    body: String,
}

impl Limited {
    async fn start(arguments: &[&str]) -> Self {
        let folder = Folder::new();
        let base_url = "https://club.test".parse().unwrap();
        let config = config(&folder, arguments);
        let mut app = App::open(config, base_url, Clock::Fixed(NOW)).await.unwrap();
        app.rate_limit = RateLimit::of(TEN);
        Self { router: routes::router(Arc::new(app)), _folder: folder }
    }

    async fn ask(&self, peer: &str, path: &str, forwarded: &[&str]) -> Told {
        let mut request = Request::get(path).header("host", "club.test");
        for line in forwarded {
            request = request.header("x-forwarded-for", *line);
        }
        let mut request = request.body(Body::empty()).unwrap();
        let peer: IpAddr = peer.parse().unwrap();
        request.extensions_mut().insert(Peer(SocketAddr::new(peer, 50_000)));
        let (parts, body) = self.router.clone().oneshot(request).await.unwrap().into_parts();
        let header = |name| parts.headers.get(name).map(|value| value.to_str().unwrap().to_owned());
        Told {
            status: parts.status.as_u16(),
            retry_after: header("retry-after").map(|seconds| seconds.parse().unwrap()),
            content_type: header("content-type").unwrap_or_default(),
            body: String::from_utf8(to_bytes(body, usize::MAX).await.unwrap().to_vec()).unwrap(),
        }
    }

    /// The number of the first request of so many that is refused.
    async fn refused_at(&self, peer: &str, forwarded: impl Fn(u32) -> String) -> Option<u32> {
        for number in 1..=15 {
            if self.ask(peer, "/search?q=zz", &[&forwarded(number)]).await.status == 429 {
                return Some(number);
            }
        }
        None
    }
}

#[tokio::test]
async fn s12_without_a_proxy_the_forwarded_address_is_ignored() {
    let server = Limited::start(&[]).await;
    let refused = server.refused_at("203.0.113.9", |number| format!("198.51.100.{number}")).await;
    assert_eq!(refused, Some(11));
    let refused = server.refused_at("203.0.113.10", |_| "203.0.113.9".to_owned()).await;
    assert_eq!(refused, Some(11), "another peer has an allowance of its own");
}

#[tokio::test]
async fn s12_behind_a_proxy_the_right_most_untrusted_hop_counts() {
    let server = Limited::start(&["--trusted-proxy", "10.0.0.0/8"]).await;
    let rotated = |number: u32| format!("192.0.2.{number}, 198.51.100.7, 10.0.0.2");
    assert_eq!(server.refused_at("10.0.0.1", rotated).await, Some(11), "left of it is hearsay");
    let readers = |number: u32| format!("192.0.2.1, 198.51.100.{}", 100 + number);
    assert_eq!(server.refused_at("10.0.0.1", readers).await, None, "each reader has their own");
    let direct = |number: u32| format!("192.0.2.{number}");
    assert_eq!(server.refused_at("203.0.113.9", direct).await, Some(11), "no proxy of ours");
}

#[test]
fn s12_what_cannot_be_read_ends_the_list_of_hops() {
    let trusted = ["10.0.0.0/8".parse().unwrap()];
    let address = |lines: &[&[u8]]| {
        let name: axum::http::HeaderName = "x-forwarded-for".parse().unwrap();
        let lines = lines.iter().map(|line| (name.clone(), line.to_vec().try_into().unwrap()));
        let headers = lines.collect();
        client::address("10.0.0.1".parse().unwrap(), &headers, &trusted).to_string()
    };
    assert_eq!(address(&[b"192.0.2.1", b"198.51.100.7"]), "198.51.100.7");
    assert_eq!(address(&[b"192.0.2.1", b"\xff, 198.51.100.7"]), "198.51.100.7");
    assert_eq!(address(&[b"192.0.2.1", b"198.51.100.7, \xff"]), "10.0.0.1");
    assert_eq!(address(&[b"192.0.2.1", b"\xff"]), "10.0.0.1", "the line before is not believed");
    assert_eq!(address(&[b"198.51.100.7:51000"]), "198.51.100.7");
    assert_eq!(address(&[b"[2001:db8::5]:51000"]), "2001:db8::5");
}

#[tokio::test]
async fn s12_a_household_on_ipv6_has_one_allowance() {
    let server = Limited::start(&[]).await;
    for number in 1..=10 {
        let peer = format!("2001:db8:1:2:{number:x}::1");
        assert_ne!(server.ask(&peer, "/search?q=zz", &[]).await.status, 429, "{peer}");
    }
    assert_eq!(server.ask("2001:db8:1:2:ffff::1", "/search?q=zz", &[]).await.status, 429);
    assert_ne!(server.ask("2001:db8:1:3::1", "/search?q=zz", &[]).await.status, 429);
}

#[tokio::test]
async fn s12_every_spelling_of_a_costly_door_is_counted_and_no_other() {
    let server = Limited::start(&[]).await;
    for _ in 0..10 {
        server.ask("203.0.113.9", "/plan?thread=5ba&material=gunmetal", &[]).await;
    }
    for path in [
        "/plan",
        "/Plan",
        "/plan/",
        "//plan",
        "/%70lan",
        "/plan.svg",
        "/plan.json",
        "/search",
        "/SEARCH?q=5ba",
        "/notes?q=5ba",
        "/notes.csv",
        "/notes.json",
        "/notes.atom",
        "/notes.atom?anything",
        "/notes/1/history",
        "/api/v1/plan",
        "/api/v1/search?q=5ba",
    ] {
        assert_eq!(server.ask("203.0.113.9", path, &[]).await.status, 429, "{path}");
    }
    for path in ["/", "/threads", "/threads/ba/5", "/drills", "/api/v1/threads", "/healthz"] {
        assert_eq!(server.ask("203.0.113.9", path, &[]).await.status, 200, "{path}");
    }
}

#[tokio::test]
async fn s12_the_refusal_says_when_to_come_back() {
    let server = Limited::start(&[]).await;
    for _ in 0..10 {
        // The bare form is kept and costs nothing, so it is not counted; a plan is.
        server.ask("203.0.113.9", "/plan?thread=m3", &[]).await;
    }
    let page = server.ask("203.0.113.9", "/plan?thread=5ba", &[]).await;
    let seconds = page.retry_after.unwrap();
    assert!((3590..=3600).contains(&seconds), "{seconds}");
    assert_eq!((page.status, page.content_type.as_str()), (429, "text/html; charset=utf-8"));
    let words = html::read(&page.body).text;
    assert!(words.contains(&format!("again in {seconds} seconds")), "{words}");

    let problem = server.ask("203.0.113.9", "/api/v1/plan?thread=5ba", &[]).await;
    assert_eq!((problem.status, problem.content_type.as_str()), (429, "application/problem+json"));
    let body: serde_json::Value = serde_json::from_str(&problem.body).unwrap();
    assert_eq!((&body["status"], &body["title"]), (&429.into(), &"Too Many Requests".into()));
    assert!(body["detail"].as_str().unwrap().contains("seconds"), "{body}");
}

#[test]
fn s12_an_allowance_comes_back_with_time() {
    let limit = RateLimit::default();
    let Allowance { burst, every } = Allowance::default();
    let who = Client::from("203.0.113.9".parse::<IpAddr>().unwrap());
    let start = Instant::now();
    let taken = |now| (0..1000).take_while(|_| limit.take(who, now).is_ok()).count();
    assert_eq!(taken(start), burst as usize);
    assert_eq!(limit.take(who, start), Err(every));
    let almost = start + every - Duration::from_millis(1);
    assert_eq!(limit.take(who, almost), Err(Duration::from_millis(1)));
    assert_eq!(taken(start + every), 1);
    assert_eq!(taken(start + every * 4), 3);
    assert_eq!(taken(start + every * 1000), burst as usize, "and no further than the burst");
    // One who clicks three times a second for an hour at the bench never meets it.
    let bench = Client::from("203.0.113.10".parse::<IpAddr>().unwrap());
    for click in 0..10_800 {
        assert_eq!(limit.take(bench, start + Duration::from_millis(333) * click), Ok(()));
    }
}

#[test]
fn s12_a_flood_of_addresses_fills_no_memory_and_frees_nobody_still_asking() {
    let limit = RateLimit::of(TEN);
    let now = Instant::now();
    let who = Client::from("203.0.113.9".parse::<IpAddr>().unwrap());
    for _ in 0..10 {
        limit.take(who, now).unwrap();
    }
    for number in 0..8000_u32 {
        limit.take(Client::from(IpAddr::from(number.to_be_bytes())), now).unwrap();
    }
    assert!(limit.take(who, now).is_err());
    for number in 0..200_000_u32 {
        limit.take(Client::from(IpAddr::from((number + 9000).to_be_bytes())), now).unwrap();
    }
    assert!(limit.remembered() <= 16_384, "{}", limit.remembered());
}

#[test]
fn s12_the_program_limits_by_itself_and_logs_the_true_peer() {
    let server = Running::start(&[]);
    let since = Instant::now();
    let (mut asked, mut refused) = (0, String::new());
    wait_until("a refusal", || {
        let forwarded = format!("X-Forwarded-For: 198.51.100.{}\r\n", asked % 250);
        refused = binary::get(server.address, "/search?q=zz", &forwarded);
        asked += 1;
        binary::status(&refused) == 429
    });
    // Sixty at once, and one more each fifth of a second.
    let most = 62 + 5 * since.elapsed().as_secs() + 5;
    assert!((61..=most).contains(&asked), "the first refused is number {asked}");
    assert_eq!(binary::header(&refused, "retry-after"), Some("1"));
    assert!(refused.contains("again in 1 second."), "{refused}");
    let log = server.stop();
    let clients: Vec<_> = log.iter().filter_map(|line| line["client"].as_str()).collect();
    assert_eq!(clients, vec!["127.0.0.1"; usize::try_from(asked).unwrap()]);
}
