//! The worst request that each route takes.

use std::iter::repeat_n;

use axum::body::Body;
use axum::http::Request;
use form_urlencoded::Serializer;
use holewright_core::asking::longest;
use holewright_core::calculators;
use holewright_server::rules::notes::fields::{DONE, TITLE};
use holewright_server::rules::notes::tips::{LONGEST, MOST};

use super::club::Worst;
use crate::notes::club::Person;

/// What is sent, and what comes of it.
pub(super) struct Ask {
    path: String,
    body: Option<String>,
    by: Option<Person>,
    pub(super) status: u16,
}

impl Ask {
    fn get(path: impl Into<String>, by: Option<&Person>) -> Self {
        Self { path: path.into(), body: None, by: by.cloned(), status: 200 }
    }

    fn post(path: impl Into<String>, by: Option<&Person>, fields: &[(&str, &str)]) -> Self {
        let body = Serializer::new(String::new()).extend_pairs(fields).finish();
        Self { path: path.into(), body: Some(body), by: by.cloned(), status: 303 }
    }

    fn told(self, status: u16) -> Self {
        Self { status, ..self }
    }

    /// The request, packed or not.
    pub(super) fn request(&self, coding: &str) -> Request<Body> {
        let method = if self.body.is_some() { "POST" } else { "GET" };
        let mut request = Request::builder()
            .method(method)
            .uri(&self.path)
            .header("accept-encoding", coding)
            .header("origin", "https://club.test")
            .header("sec-fetch-site", "same-origin");
        if self.body.is_some() {
            request = request.header("content-type", "application/x-www-form-urlencoded");
        }
        if let Some(by) = &self.by {
            request = request.header("cookie", by.cookie());
        }
        request.body(Body::from(self.body.clone().unwrap_or_default())).unwrap()
    }
}

fn with(path: &str, pairs: &[(&str, &str)]) -> String {
    format!("{path}?{}", Serializer::new(String::new()).extend_pairs(pairs).finish())
}

/// As long as the field may be, of this piece.
fn full(field: &str, piece: &str) -> String {
    piece.chars().cycle().take(longest(field)).collect()
}

/// All drills there are, as often as they may be written.
fn owned() -> String {
    full("owned", "1-80, A-Z, 1/64-1/2x64ths, 0.3-14mm, ")
        .rsplit_once(',')
        .map(|(list, _)| list.to_owned())
        .unwrap()
}

/// A plan of everything that may be asked, each field filled.
fn plan() -> Vec<(&'static str, String)> {
    let mut pairs: Vec<(&str, String)> = [
        ("thread", "5 BA"),
        ("material", "gunmetal"),
        ("hole", "blind"),
        ("depth", "8 mm"),
        ("over", "free-cutting-brass"),
        ("over_thickness", "4 mm"),
        ("series", "number,letter,fraction,metric"),
        ("screw", "free-cutting brass"),
        ("centre_error", "0.1 mm"),
        ("spindle_max", "2000"),
    ]
    .map(|(name, value)| (name, value.to_owned()))
    .into();
    pairs.push(("owned", owned()));
    let speeds: Vec<String> = (1..=40).map(|step| (step * 50).to_string()).collect();
    pairs.push(("spindle_speeds", speeds.join(", ")));
    pairs
}

/// The same with nonsense in each field.
fn nonsense(names: impl Iterator<Item = &'static str>) -> Vec<(&'static str, String)> {
    names.map(|name| (name, full(name, "\"<stele"))).collect()
}

fn as_str<'a>(pairs: &'a [(&'static str, String)]) -> Vec<(&'static str, &'a str)> {
    pairs.iter().map(|(name, value)| (*name, value.as_str())).collect()
}

/// A note in which everything is as long as may be.
fn note<'a>(text: &'a str, lines: &'a [(&'static str, String)]) -> Vec<(&'static str, &'a str)> {
    let mut fields = as_str(lines);
    fields.push(("text", text));
    fields
}

fn lines(on: &str) -> Vec<(&'static str, String)> {
    let line = |name, length| (name, repeat_n('"', length).collect::<String>());
    let mut lines = vec![line(TITLE.name, TITLE.longest)];
    lines.extend(DONE.iter().map(|field| line(field.name, field.longest)));
    lines.push(("on", on.to_owned()));
    lines
}

/// The most steps of SQLite's machine, in hundreds, for each of the notes that one form is about: what it does to
/// them is done to one after the other.
const STEPS_A_NOTE: u64 = 40;
/// And for each tip of a table.
const STEPS_A_TIP: u64 = 30;

/// What is done to all notes of a member at once, when everything else was asked: it takes away what the rest
/// is about. The forms that are refused stand with their routes.
pub(super) fn at_the_end(club: &Worst, read: &str) -> [(&'static str, Ask, u64); 3] {
    let rows = (0..MOST).map(|n| format!("{n} steel,M3 4 BA No. 43 {n},x\n"));
    let tips = format!("title,text,source\n{}", rows.collect::<String>());
    let tips = Ask::post("/notes/import", Some(&club.moderator), &[("tips", &tips)]);
    let (of, last) = (Worst::REPORTER.to_string(), i64::MAX.to_string());
    let all = [("of", of.as_str()), ("last", last.as_str()), ("read", read)];
    let settled = Ask::post("/queue/reports", Some(&club.moderator), &all);
    let away = [("do", "remove"), ("notes", "remove")];
    let removed = format!("/people/{}", club.author.id);
    let removed = Ask::post(removed, Some(&club.secretary), &away);
    [
        ("POST /notes/import, of many tips", tips, STEPS_A_TIP),
        ("POST /queue/reports, of all notes", settled, STEPS_A_NOTE),
        ("POST /people/{id}, with all notes", removed, STEPS_A_NOTE),
    ]
}

/// The worst of this route, or of this page; none where nobody wrote it down.
pub(super) fn worst(club: &Worst, method: &str, route: &str) -> Vec<Ask> {
    let (nobody, author) = (None, Some(&club.author));
    let (moderator, secretary) = (Some(&club.moderator), Some(&club.secretary));
    let reader = Some(&club.reader);
    let shown = |end: &str| format!("/notes/{}{end}", club.shown);
    let search = full("q", "steel alumminiums zzz 1 1/4 withworthe hard 3 a+b ");
    let (owned, plan) = (owned(), plan());
    let long = |count| repeat_n('"', count).collect::<String>();
    let twelve = club.things.join(", ");
    let lines = lines(&twelve);
    match (method, route) {
        ("GET", "/healthz" | "/readyz" | "/privacy" | "/reference.sqlite")
        | ("GET", "/api/v1" | "/api/v1/openapi.json" | "/api/v1/threads")
        | ("GET", "/api/v1/materials" | "/api/v1/rescue" | "/rescue")
        | ("GET", "/api/v1/fasteners" | "/fasteners")
        | ("GET", "/" | "/materials" | "/calculators")
        | ("GET", "/notes.atom" | "/notes.csv" | "/notes.json") => vec![Ask::get(route, nobody)],
        ("GET", "/threads") => vec![Ask::get(route, reader)],
        ("GET", "/api/v1/threads/{system}") => {
            vec![Ask::get("/api/v1/threads/metric", nobody)]
        }
        ("GET", "/threads/{system}") => vec![
            Ask::get("/threads/metric?material=stainless-304", reader),
            Ask::get(with("/threads/metric", &[("material", &full("material", "stele "))]), nobody)
                .told(422),
        ],
        ("GET", "/api/v1/threads/{system}/{size}") => {
            vec![Ask::get("/api/v1/threads/ba/4", nobody)]
        }
        ("GET", "/threads/{system}/{size}") => vec![Ask::get("/threads/ba/4", reader)],
        ("GET", "/api/v1/drills") => {
            vec![Ask::get(with(route, &[("series", "number,letter,fraction,metric")]), nobody)]
        }
        ("GET", "/drills") => vec![
            Ask::get(route, reader),
            Ask::get(with(route, &[("owned", &owned)]), nobody),
            Ask::get(with(route, &as_str(&nonsense(["from", "to", "owned"].into_iter()))), nobody)
                .told(422),
        ],
        ("GET", "/api/v1/drills/{series}/{size}") => {
            vec![Ask::get("/api/v1/drills/number/46", nobody)]
        }
        ("GET", "/drills/{series}/{size}") => vec![Ask::get("/drills/number/46", reader)],
        ("GET", "/api/v1/materials/{slug}") => vec![Ask::get("/api/v1/materials/gunmetal", nobody)],
        ("GET", "/materials/{slug}") => vec![Ask::get("/materials/gunmetal", reader)],
        ("GET", "/api/v1/rescue/{slug}" | "/rescue/{slug}") => {
            let at = route.replace("{slug}", "broken-tap");
            let all = nonsense(["material", "tap_steel"].into_iter());
            vec![Ask::get(&at, reader), Ask::get(with(&at, &as_str(&all)), nobody).told(422)]
        }
        ("GET", "/api/v1/fasteners/{table}" | "/fasteners/{table}") => {
            vec![Ask::get(route.replace("{table}", "hexagons-iso"), reader)]
        }
        ("GET", "/api/v1/plan" | "/plan") => {
            let all = nonsense(plan.iter().map(|(name, _)| *name));
            vec![
                Ask::get(
                    with(route, &as_str(&plan)),
                    if route == "/plan" { reader } else { nobody },
                ),
                Ask::get(with(route, &as_str(&all)), nobody).told(422),
            ]
        }
        ("GET", "/api/v1/search" | "/search") => {
            let status = if route == "/search" { 404 } else { 200 };
            let hard = [
                // One of its words stands in a note.
                (search.clone(), 200),
                (full("q", "stele "), 200),
                (full("q", "1/4x40 "), status),
                (full("q", "🔩 "), status),
                ("a + b".to_owned(), 200),
            ];
            let ask = |(typed, status): (String, u16)| {
                Ask::get(with(route, &[("q", &typed)]), nobody).told(status)
            };
            hard.into_iter().map(ask).collect()
        }
        ("GET", "/api/v1/calc/{name}" | "/calculators/{name}") => {
            let at = |slug: &str| route.replace("{name}", slug);
            let each = calculators::CALCULATORS.iter().flat_map(|one| {
                let mut whole = one.whole_example();
                for (name, value) in &mut whole {
                    if *name == "owned" {
                        *value = &owned;
                    }
                }
                let wrong = nonsense(one.fields().map(|field| field.about().name));
                [
                    Ask::get(with(&at(one.slug), &whole), nobody),
                    Ask::get(with(&at(one.slug), &as_str(&wrong)), nobody).told(422),
                ]
            });
            each.collect()
        }
        ("GET", "/drawer") => vec![Ask::get(route, reader)],
        ("POST", "/drawer") => {
            let drills = repeat_n("2.4mm, No. 43, \"<", 1_500).collect::<String>();
            vec![Ask::post(route, nobody, &[("drills", &drills), ("do", "keep")]).told(422)]
        }
        ("GET", "/notes") => {
            let hard = ["a + b", "a+a+a+a+a+a a+a+a+a a+a+a a+a", "tapping a", "4 BA b"];
            let mut asks: Vec<Ask> =
                hard.map(|typed| Ask::get(with(route, &[("q", typed)]), nobody)).into();
            asks.push(Ask::get(route, nobody));
            asks.push(Ask::get("/notes?on=4+BA&confirmed=yes", nobody));
            asks.push(
                Ask::get(with(route, &[("on", &"\"<4 BA ".repeat(1_000))]), nobody).told(422),
            );
            asks
        }
        ("GET", "/notes/new") => {
            vec![Ask::get(with(route, &[("on", &twelve), ("title", &long(120))]), author)]
        }
        ("GET", "/notes/compare") => {
            let many = "8 BA ".repeat(400);
            vec![
                Ask::get(with(route, &[("thread", "4 BA"), ("material", "bronze")]), nobody),
                Ask::get(with(route, &[("thread", &many), ("material", &many)]), nobody).told(422),
            ]
        }
        (
            "GET",
            "/notes/mine" | "/me" | "/me/password" | "/me/second-factor" | "/me/leave" | "/me/feed",
        )
        | ("GET", "/me/data.json" | "/prove") => vec![Ask::get(route, author)],
        ("GET", "/notes/{id}") => vec![Ask::get(shown(""), moderator)],
        ("GET", "/notes/import") => vec![Ask::get(route, moderator)],
        ("POST", "/notes/import") => {
            let table = |row: &str| {
                let many = LONGEST / row.len();
                format!("title,text,source\n{}", row.repeat(many.saturating_sub(1)))
            };
            [(table("a,,\n"), 422), (table("\"\n"), 422)]
                .map(|(table, told)| Ask::post(route, moderator, &[("tips", &table)]).told(told))
                .into()
        }
        ("GET", "/notes/newsletter") => vec![Ask::get(route, nobody)],
        ("GET", "/notes/newsletter/{issue}") => {
            let issues = ["best", "2027-01", "best.txt", "2027-01.txt"];
            issues.map(|issue| Ask::get(format!("/notes/newsletter/{issue}"), nobody)).into()
        }
        ("GET", "/notes/{id}/history") => vec![Ask::get(shown("/history"), author)],
        ("GET", "/notes/{id}/edit") => vec![Ask::get(shown("/edit"), author)],
        ("GET", "/queue/remarks") => {
            vec![Ask::get(route, moderator), Ask::get(with(route, &[("note", "1")]), moderator)]
        }
        ("GET", "/queue" | "/queue/decided") => vec![Ask::get(route, moderator)],
        ("GET", "/queue/{id}/mend") => {
            vec![Ask::get(format!("/queue/{}/mend", club.waiting.0), moderator)]
        }
        ("POST", "/queue/{id}/mend") => {
            let (id, version) = club.mended;
            let (at, version) = (format!("/queue/{id}/mend"), version.to_string());
            let text = &format!("{} z", &club.mended_text[..19_990]);
            let read = [("version", version.as_str()), ("last", "0"), ("correction", "0")];
            let fields = [&note(text, &lines)[..], &read].concat();
            let over = long(20_001);
            let wrong = [&note(&over, &lines)[..], &read].concat();
            vec![Ask::post(&at, moderator, &wrong).told(422), Ask::post(&at, moderator, &fields)]
        }
        (
            "GET",
            "/people" | "/people/invite" | "/people/sheet" | "/people/club" | "/people/acts",
        ) => vec![Ask::get(route, secretary)],
        ("GET", "/people/{id}") => {
            vec![Ask::get(format!("/people/{}", club.author.id), secretary)]
        }
        ("GET", "/sign-in") => {
            let next = format!("/plan?{}", "a".repeat(1_900));
            vec![Ask::get(with(route, &[("next", &next)]), nobody)]
        }
        ("GET", "/reset") => vec![Ask::get(route, nobody)],
        ("GET", "/sign-in/code") => vec![Ask::get(route, nobody).told(303)],
        ("GET", "/notes/feed/{token}") => {
            vec![Ask::get(format!("/notes/feed/{}", club.feed), nobody)]
        }
        ("GET", "/join/{token}") => vec![Ask::get(format!("/join/{}", club.to_join), nobody)],
        ("GET", "/reset/{token}") => vec![Ask::get(format!("/reset/{}", club.to_reset), nobody)],
        ("ANY", "/api/v1/{*rest}" | "/api/{*rest}") => {
            vec![Ask::get(route.replace("{*rest}", &"x/".repeat(1_000)), nobody).told(404)]
        }
        ("POST", "/notes/new" | "/notes/{id}/edit") => {
            let at = if route == "/notes/new" { route.to_owned() } else { shown("/edit") };
            let mut asks = Vec::new();
            for text in &club.texts {
                let fields = [note(text, &lines), vec![("do", "preview")]].concat();
                asks.push(Ask::post(&at, author, &fields).told(200));
            }
            let over = format!("{}xxx", club.texts[0]);
            let wrong = [note(&over, &lines), vec![("do", "send")]].concat();
            asks.push(Ask::post(&at, author, &wrong).told(422));
            asks.push(Ask::post(&at, nobody, &wrong).told(401));
            let last = club.texts.last().unwrap();
            asks.push(Ask::post(&at, author, &[note(last, &lines), vec![("do", "send")]].concat()));
            asks
        }
        // Last of its kind in the order of the routes, and the note is hidden by then.
        ("POST", "/notes/{id}/verdict") => {
            let (material, size, why) = (long(100), long(100), long(200));
            let fields =
                [("found", "worked"), ("material", &*material), ("size", &size), ("reason", &why)];
            let over = long(500);
            let wrong = [("material", over.as_str()), ("size", &over), ("reason", &over)];
            vec![
                Ask::post(shown("/verdict"), moderator, &wrong).told(422),
                Ask::post(shown("/verdict"), moderator, &fields).told(409),
            ]
        }
        ("POST", "/notes/{id}/report" | "/notes/{id}/correct" | "/notes/{id}/withdraw") => {
            let (name, at, by) = match route {
                "/notes/{id}/report" => ("danger", "/report", moderator),
                "/notes/{id}/correct" => ("correction", "/correct", moderator),
                _ => ("why", "/withdraw", author),
            };
            let version = club.version.to_string();
            let (wrong, right) = (long(6_000), long(2_000));
            let fields = |typed| [("version", version.as_str()), (name, typed)];
            vec![
                Ask::post(shown(at), by, &fields(&wrong)).told(422),
                Ask::post(shown(at), by, &fields(&right)),
            ]
        }
        ("POST", "/queue/{id}") => {
            let (id, version) = club.waiting;
            let (at, version) = (format!("/queue/{id}"), version.to_string());
            let fields =
                |reason| [("version", version.as_str()), ("do", "decline"), ("reason", reason)];
            let (other, its) = club.passed;
            let its = its.to_string();
            let pass = [("version", its.as_str()), ("do", "pass")];
            let to_change = [("version", version.as_str()), ("do", "words"), ("ready", "told")];
            vec![
                Ask::post(&at, moderator, &to_change).told(200),
                Ask::post(&at, moderator, &fields(&long(6_000))).told(422),
                Ask::post(&at, moderator, &fields(&long(2_000))),
                Ask::post(format!("/queue/{other}"), moderator, &pass),
            ]
        }
        ("POST", "/notes/{id}/remark") => {
            let (wrong, right) = (long(600), long(500));
            vec![
                Ask::post(shown("/remark"), moderator, &[("remark", &*wrong)]).told(422),
                Ask::post(shown("/remark"), moderator, &[("remark", &*right)]),
            ]
        }
        ("POST", "/queue/remarks") => {
            let reason = long(2_000);
            let fields = [("remark", "1"), ("do", "decline"), ("reason", &*reason)];
            let over = long(6_000);
            let wrong = [("remark", "1"), ("do", "decline"), ("reason", &*over)];
            vec![
                Ask::post(route, moderator, &wrong).told(422),
                // Its note is withdrawn by then.
                Ask::post(route, moderator, &fields).told(409),
            ]
        }
        ("POST", "/queue/reports") => {
            let read = (1..=50).map(|id| format!("{id}.{id}.{}", i64::MAX)).collect::<Vec<_>>();
            let read = read.join(" ");
            let fields = [("of", "1"), ("last", "1"), ("read", read.as_str())];
            vec![Ask::post(route, moderator, &fields).told(409)]
        }
        ("POST", "/sign-in") => {
            let (name, password) = (long(60), long(128));
            vec![Ask::post(route, nobody, &[("name", &name), ("password", &password)]).told(422)]
        }
        ("POST", "/sign-in/code") => vec![Ask::post(route, nobody, &[("code", &long(400))])],
        ("POST", "/prove") => vec![Ask::post(route, author, &[("password", &long(128))])],
        ("POST", "/me/feed") => vec![Ask::post(route, author, &[("do", "make")]).told(200)],
        ("POST", "/notes/mine") => {
            let until = i64::MAX.to_string();
            let fields = [("until", until.as_str()), ("count", "1")];
            vec![Ask::post(route, author, &fields).told(409)]
        }
        ("POST", "/me") => vec![Ask::post(route, author, &[("end", &long(400))]).told(404)],
        ("POST", "/me/password" | "/me/leave") => {
            let fields = [("password", &*long(128)), ("new_password", &long(128))];
            vec![Ask::post(route, author, &fields).told(422)]
        }
        ("POST", "/me/second-factor") => {
            vec![Ask::post(route, author, &[("code", &long(400))]).told(422)]
        }
        ("POST", "/join/{token}") => {
            let name = "Ålesund ".chars().cycle().take(61).collect::<String>();
            let fields = [("name", name.as_str()), ("new_password", &"password1".repeat(14))];
            vec![Ask::post(format!("/join/{}", club.to_join), nobody, &fields).told(422)]
        }
        ("POST", "/reset") => {
            let fields = [("name", &*long(60)), ("code", "48 27 31 59 06")];
            vec![Ask::post(route, nobody, &fields).told(422)]
        }
        ("POST", "/reset/{token}") => {
            let fields = [("new_password", &*"password1".repeat(14))];
            vec![Ask::post(format!("/reset/{}", club.to_reset), nobody, &fields).told(422)]
        }
        ("POST", "/people") => {
            vec![Ask::post(route, secretary, &[("void", &long(400))]).told(404)]
        }
        ("POST", "/people/invite") => {
            vec![Ask::post(route, secretary, &[("meant_for", &long(60))]).told(200)]
        }
        ("POST", "/people/sheet") => {
            let names = vec![long(60); 60].join("\n");
            let over = long(61);
            vec![
                Ask::post(route, secretary, &[("names", &over)]).told(422),
                Ask::post(route, secretary, &[("names", &names), ("same", "yes")]).told(200),
            ]
        }
        ("POST", "/people/club") => {
            let (name, welcome) = (long(60), "4 BA bush ".repeat(24));
            let fields = |zone| {
                [
                    ("club_name", &*name),
                    ("club_place", &name),
                    ("welcome", &welcome),
                    ("zone", zone),
                ]
            };
            vec![
                Ask::post(route, secretary, &fields("nowhere at all")).told(422),
                Ask::post(route, secretary, &fields("London")),
            ]
        }
        ("POST", "/people/{id}") => {
            let at = format!("/people/{}", club.author.id);
            vec![Ask::post(at, secretary, &[("do", "rights"), ("moderator", "yes")])]
        }
        ("POST", "/sign-out") => vec![Ask::post(route, Some(&club.leaver), &[])],
        _ => Vec::new(),
    }
}
