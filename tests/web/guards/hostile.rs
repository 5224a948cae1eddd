//! Ten thousand random and hostile strings in every parameter and every part of a path: the answer
//! is always one that was thought of, and what was typed comes back as text.
//!
//! The strings come from a seed, so a failure comes again. In one request of two every parameter
//! holds one; in the other one alone does and the rest make sense, so that the work behind the
//! reading is reached as well. Requests without a socket have no address and are not limited.

use std::collections::BTreeMap;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::Request;
use tokio::task::JoinSet;
use tower::ServiceExt;

use super::binary::{self, Running};
use super::strings::Chance;
use crate::page::shows;
use crate::support::Server;
use crate::{html, markup};

const SEED: u64 = 20_261_124;

/// Requests in all, shared by the doors. Half of those for a plan have a string in each of its 21
/// parameters, so that more than twenty thousand strings are put in.
const REQUESTS: usize = 10_000;

/// What is looked at closely, one answer in so many: reading a page takes longer than making it.
const CLOSELY: usize = 5;

/// The statuses that were thought of.
fn is_expected(status: u16) -> bool {
    matches!(status, 200 | 300..=399 | 400 | 404 | 414 | 422 | 429 | 431)
}

/// What became of the strings.
#[derive(Debug, Default)]
struct Seen {
    statuses: BTreeMap<u16, usize>,
    /// Pages and problems that should say what was typed, and were read.
    echoes: usize,
}

impl Seen {
    fn note(&mut self, status: u16, is_read: bool) {
        *self.statuses.entry(status).or_default() += 1;
        self.echoes += usize::from(is_read && status == 422);
    }

    fn and(mut self, other: Self) -> Self {
        for (status, count) in other.statuses {
            *self.statuses.entry(status).or_default() += count;
        }
        self.echoes += other.echoes;
        self
    }
}

/// What may stand bare in a query, and in a part of a path.
const IN_QUERY: &[u8] = b"!$'()*+,-./:;=?@_~%&[]{}|\\^`";
const IN_PATH: &[u8] = b"!$'()*+,-.:;=@_~%&/";

/// A place that takes strings.
enum Door {
    /// Its parameters, each with a filling that makes sense.
    Query(&'static str, Vec<(String, String)>),
    /// `{}` stands for each string.
    Path(&'static str),
}

/// The job that exercises most of a plan.
const JOB: &str = "thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=free-cutting-brass&\
    over_thickness=4mm&upper_hole=&fit=&aim=&series=number,metric&owned=&tap=&tap_steel=&finish=&\
    hand=&part_thickness=20mm&measured_hole=&centre_error=&point_angle=&spindle_max=&screw=";

fn query(path: &'static str, fields: &str) -> Door {
    let fields = fields.split('&').map(|field| field.split_once('=').unwrap());
    Door::Query(path, fields.map(|(name, value)| (name.to_owned(), value.to_owned())).collect())
}

fn doors() -> Vec<Door> {
    vec![
        query("/plan", JOB),
        query("/api/v1/plan", JOB),
        query("/search", "q=5ba"),
        query("/api/v1/search", "q=5ba"),
        query("/drills", "from=2mm&to=3mm&series=number"),
        query("/api/v1/drills", "from_mm=2&to_mm=3&series=number"),
        Door::Path("/threads/{}"),
        Door::Path("/threads/{}/{}"),
        Door::Path("/threads/ba/{}"),
        Door::Path("/drills/{}/{}"),
        Door::Path("/drills/metric/{}"),
        Door::Path("/materials/{}"),
        Door::Path("/static/{}"),
        Door::Path("/{}"),
        Door::Path("/api/v1/threads/{}"),
        Door::Path("/api/v1/threads/{}/{}"),
        Door::Path("/api/v1/materials/{}"),
        Door::Path("/api/{}"),
    ]
}

impl Door {
    /// An address, and what was put alone into one of its parameters.
    fn address(&self, chance: &mut Chance) -> (String, Option<Vec<u8>>) {
        match self {
            Self::Path(template) => {
                let parts = template.split("{}").map(str::to_owned).reduce(|before, after| {
                    let string = chance.string();
                    format!("{before}{}{after}", chance.encoded(&string, IN_PATH))
                });
                (parts.unwrap(), None)
            }
            Self::Query(path, fields) => {
                let alone = (chance.below(2) == 0).then(|| chance.below(fields.len()));
                let mut typed = None;
                let mut filled = Vec::new();
                for (number, (name, usual)) in fields.iter().enumerate() {
                    let value = if alone.is_none_or(|alone| alone == number) {
                        let string = chance.string();
                        let bare = if alone.is_none() { IN_QUERY } else { b"" };
                        let value = chance.encoded(&string, bare);
                        typed = alone.is_some().then_some(string);
                        value
                    } else {
                        usual.clone()
                    };
                    filled.push(format!("{name}={value}"));
                }
                (format!("{path}?{}", filled.join("&")), typed)
            }
        }
    }
}

/// The text a browser makes of what was typed.
fn as_shown(typed: &[u8]) -> String {
    // What is longer than any single value comes back cut.
    let text: String = String::from_utf8_lossy(typed).chars().take(200).collect();
    text.trim().replace("\r\n", "\n").replace('\r', "\n").replace('\0', "\u{fffd}")
}

/// Asks at an address; says its status.
async fn ask(router: &Router, address: &str, typed: Option<&[u8]>, closely: bool) -> u16 {
    let request = Request::get(address).body(Body::empty());
    let request = request.unwrap_or_else(|error| panic!("{address}: {error}"));
    let answer = router.clone().oneshot(request).await.unwrap();
    let status = answer.status().as_u16();
    assert!(is_expected(status), "{status} for {address}");
    if let Some(location) = answer.headers().get("location") {
        let location = location.to_str().unwrap();
        let local = location.starts_with('/')
            && !location.starts_with("//")
            && !location.starts_with("/\\");
        assert!(local && location.bytes().all(|byte| byte.is_ascii_graphic()), "{location}");
    }
    let kind = answer.headers().get("content-type").map(|kind| kind.to_str().unwrap().to_owned());
    let body = to_bytes(answer.into_body(), usize::MAX).await.unwrap();
    let body = std::str::from_utf8(&body).unwrap();
    let kind = kind.unwrap_or_default();
    if kind == "text/html; charset=utf-8" {
        assert!(!body.contains("<hwx"), "{address}: {body}");
        if closely {
            let page = html::read(body);
            markup::check_inert(&page, address);
            if let Some(typed) = typed.filter(|_| status == 422) {
                let typed = as_shown(typed);
                assert!(shows(&page, &typed), "{address}: {typed:?} is not in {body}");
            }
        }
    } else if kind.ends_with("json") && closely {
        let json: serde_json::Value = serde_json::from_str(body).unwrap();
        assert!(status == 200 || json["status"] == status, "{address}: {body}");
    }
    status
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn ten_thousand_strings_in_every_parameter_are_answered() {
    let server = Server::start().await;
    let doors = doors();
    let times = REQUESTS.div_ceil(doors.len());
    let mut asking = JoinSet::new();
    for (door, seed) in doors.into_iter().zip(SEED..) {
        let router = server.router.clone();
        asking.spawn(async move {
            let mut chance = Chance(seed);
            let mut seen = Seen::default();
            for number in 0..times {
                let (address, typed) = door.address(&mut chance);
                let closely = number % CLOSELY == 0;
                let status = ask(&router, &address, typed.as_deref(), closely).await;
                seen.note(status, closely && typed.is_some());
            }
            seen
        });
    }
    let seen = asking.join_all().await.into_iter().fold(Seen::default(), Seen::and);
    assert!(seen.statuses.values().sum::<usize>() >= REQUESTS, "{seen:?}");
    // The strings are no use if they all end alike.
    assert!(
        [200, 301, 404, 422].iter().all(|status| seen.statuses.contains_key(status)),
        "{seen:?}"
    );
    assert!(seen.echoes > 60, "{seen:?}");
}

#[test]
fn hostile_strings_on_a_socket_are_answered() {
    // A trusted proxy names a new reader each time: nobody is limited.
    let server = Running::start(&["--trusted-proxy", "127.0.0.1"]);
    let mut chance = Chance(SEED);
    let doors = doors();
    let mut seen = Seen::default();
    for number in 0..300_usize {
        let (mut target, _) = doors[number % doors.len()].address(&mut chance);
        let mut header = format!("X-Forwarded-For: 198.51.{}.{}\r\n", number / 250, number % 250);
        match number % 20 {
            // As no client writes it: bytes bare, or far too long.
            0 => target.push_str("<\"\u{e9}\u{1f529}\">"),
            1 => target.push_str(&"x".repeat(9_000)),
            2 => target.push_str(&"x".repeat(70_000)),
            3 => header.push_str(&format!("If-None-Match: {}\r\n", "\"x\",".repeat(2_000))),
            4 => header.push_str(&"X-Many: x\r\n".repeat(150)),
            5 => header.push_str(&format!("Cookie: {}\r\n", "x".repeat(600_000))),
            6 => header.push_str("Range: bytes=0-,-1\r\nAccept: \u{1}\r\nTE: chunked\r\n"),
            7 => header.push_str("If-None-Match: *\r\nAccept-Encoding: \"\",;q=x\r\n"),
            _ => {}
        }
        let answer = binary::get(server.address, &target, &header);
        let status = binary::status(&answer);
        let start: String = target.chars().take(300).collect();
        assert!(is_expected(status), "{number}: {status} for {start}: {answer}");
        seen.note(status, false);
    }
    assert!(
        [200, 400, 404, 422, 431].iter().all(|status| seen.statuses.contains_key(status)),
        "{seen:?}"
    );
    assert!(!seen.statuses.contains_key(&429), "{seen:?}");
    server.stop();
}
