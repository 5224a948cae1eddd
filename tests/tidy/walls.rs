//! Which room inside a crate may use which other, and which crates. What a whole crate may use is the
//! compiler's business.

use std::collections::BTreeSet;
use std::fs;

use super::paths::{Parts, Source, all};
use super::{read, rooted};

/// One room: the files it covers, and what they may use.
struct Wall {
    /// A folder below `src`, or a crate: whatever in it has no wall of its own.
    files: &'static str,
    /// Rooms of its own crate that it may use besides itself.
    ours: &'static [&'static str],
    /// Crates it may use.
    crates: &'static [&'static str],
    reach: Reach,
}

/// Whether a room may touch files, the network, the clock and threads.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Reach {
    /// It works out and decides, and no more.
    Pure,
    /// It is part of the server.
    Server,
}

/// The smallest one that covers a file counts.
#[rustfmt::skip]
const WALLS: &[Wall] = &[
    pure("core", &[], &[]),
    pure("core/units", &[], &["uom", "thiserror"]),
    pure("core/tables", &["units"], &["thiserror"]),
    pure("core/finder", &["units", "tables", "plan", "calculators"], &[]),
    pure("core/calc", &["units", "tables"], &["libm", "thiserror"]),
    pure("core/asking", &["units", "tables", "calc", "plan"], &[]),
    pure("core/calculators", &["units", "tables", "calc", "drawing", "asking"], &[]),
    pure("core/plan", &["units", "tables", "calc"], &["thiserror"]),
    pure("core/drawing", &["units", "tables", "calc", "plan"], &["libm"]),
    pure("core/export", &["units", "tables", "calc", "plan", "calculators"], &[]),
    pure("pages", &["*"], &["askama", "form_urlencoded", "memchr", "thiserror", "holewright_core"]),
    // What stands loose puts the rooms together.
    server("server", &["*"], &[
        "axum", "holewright_core", "holewright_pages", "rustix", "sha2", "thiserror", "time", "tokio", "tower", "tracing",
    ]),
    // From the top: each may use those below it.
    server("server/front", &["api", "error", "extract", "rules", "web"], &["axum", "holewright_pages", "tower", "tower_http"]),
    server("server/front/accept", &["extract", "rules"], &["axum", "hyper", "hyper_util", "rustix", "tokio", "tower", "tracing"]),
    server("server/front/bytes", &["extract", "rules"], &["axum", "brotli", "flate2", "tokio", "tracing", "zstd"]),
    server("server/front/log", &["rules"], &["form_urlencoded", "holewright_core", "rustix", "time", "tracing", "tracing_subscriber"]),
    server("server/front/metrics", &[], &["axum", "prometheus_client", "thiserror", "tokio", "tracing"]),
    server("server/front/middleware", &["api", "error", "extract", "rules", "web"], &[
        "axum", "holewright_core", "holewright_pages", "hyper", "thiserror", "tokio", "tracing",
    ]),
    server("server/web", &["db", "extract", "rules"], &[
        "askama", "axum", "form_urlencoded", "holewright_core", "holewright_pages", "hyper", "qrcode", "serde",
        "serde_json", "time", "tokio", "tracing",
    ]),
    server("server/api", &["db", "entries", "rules"], &[
        "axum", "form_urlencoded", "holewright_core", "holewright_pages", "serde", "serde_json", "tokio", "tracing",
        "utoipa",
    ]),
    server("server/extract", &["db", "rules"], &["axum", "form_urlencoded", "holewright_pages", "thiserror"]),
    // The only SQL.
    server("server/db", &["entries", "rules", "whole_file"], &[
        "rustix", "serde", "serde_json", "sqlx", "thiserror", "time", "tokio", "tracing",
    ]),
    server("server/rules", &[], &["axum", "cookie", "icu_properties", "ipnet", "jiff", "sha2", "thiserror"]),
    server("server/rules/auth", &[], &[
        "argon2", "axum", "form_urlencoded", "getrandom", "sha2", "thiserror", "tokio", "totp_rs",
    ]),
    pure("server/rules/notes", &[], &[
        "ammonia", "csv", "decancer", "holewright_core", "holewright_pages", "icu_normalizer", "icu_properties",
        "pulldown_cmark", "rust_stemmers", "serde", "sha2", "similar", "thiserror", "time",
    ]),
    // Of the command line.
    server("server/backup", &["db", "rules", "whole_file"], &[
        "serde", "serde_json", "sha2", "tar", "thiserror", "time", "tokio",
    ]),
    server("server/config", &["rules"], &["clap", "thiserror", "tracing"]),
    server("server/demo", &["config", "db", "entries", "rules"], &["thiserror", "tokio"]),
];

const fn pure(
    files: &'static str,
    ours: &'static [&'static str],
    crates: &'static [&'static str],
) -> Wall {
    Wall { files, ours, crates, reach: Reach::Pure }
}

const fn server(
    files: &'static str,
    ours: &'static [&'static str],
    crates: &'static [&'static str],
) -> Wall {
    Wall { files, ours, crates, reach: Reach::Server }
}

const CRATES: [&str; 3] = ["core", "pages", "server"];

#[test]
fn every_path_stays_within_its_wall() {
    let mut broken = Vec::new();
    for source in all() {
        let wall = wall_of(&source.file);
        let dependencies = dependencies_of(&source.module[0]);
        for path in &source.uses {
            if !allows(wall, &source, path, &dependencies) {
                broken.push(format!("{}: {}", source.file, path.join("::")));
            }
        }
    }
    assert!(broken.is_empty(), "paths outside their wall:\n{}", broken.join("\n"));
}

#[test]
fn a_wall_names_what_there_is() {
    let mut wrong = Vec::new();
    for wall in WALLS {
        let home = wall.files.split('/').next().unwrap_or_default();
        let dependencies = dependencies_of(home);
        let strange = wall.crates.iter().filter(|name| !dependencies.contains(**name));
        wrong.extend(strange.map(|name| format!("{}: {name} is no dependency", wall.files)));
        let is_there = |room: &str| {
            let place = rooted("src").join(home).join(room);
            room == "*" || place.is_dir() || place.with_extension("rs").is_file()
        };
        let gone = wall.ours.iter().filter(|room| !is_there(room));
        wrong.extend(gone.map(|room| format!("{}: there is no room {room}", wall.files)));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The rooms that an answer passes, from the top: a call goes to the same room or to one further down.
/// `web` and `api` stand side by side.
const LAYERS: [&str; 6] = ["front", "web", "api", "extract", "db", "rules"];

#[test]
fn no_room_of_an_answer_uses_one_above_it() {
    for wall in WALLS {
        let Some(room) = wall.files.strip_prefix("server/") else { continue };
        let room = room.split('/').next().unwrap();
        let Some(own) = LAYERS.iter().position(|layer| *layer == room) else { continue };
        let above: Vec<_> =
            LAYERS[..own].iter().filter(|layer| wall.ours.contains(layer)).collect();
        assert!(above.is_empty(), "{room} may use {above:?}");
    }
}

#[test]
fn every_room_has_one_wall() {
    let mut rooms: Vec<String> = CRATES.map(str::to_owned).to_vec();
    for home in ["core", "server"] {
        for entry in fs::read_dir(rooted("src").join(home)).unwrap() {
            let entry = entry.unwrap();
            if entry.path().is_dir() {
                rooms.push(format!("{home}/{}", entry.file_name().to_string_lossy()));
            }
        }
    }
    let walled: Vec<&str> = WALLS.iter().map(|wall| wall.files).collect();
    let without: Vec<&String> =
        rooms.iter().filter(|room| !walled.contains(&room.as_str())).collect();
    assert!(without.is_empty(), "rooms without a wall: {without:?}");
    for (place, wall) in walled.iter().enumerate() {
        assert!(!walled[..place].contains(wall), "{wall} has two");
        assert!(rooted("src").join(wall).is_dir(), "there is no room {wall}");
    }
}

fn allows(wall: &Wall, source: &Source, path: &Parts, dependencies: &BTreeSet<String>) -> bool {
    let (first, second) = (path[0].as_str(), path.get(1).map_or("", String::as_str));
    if first == source.module[0] {
        let own = source.module.get(1).map_or("", String::as_str);
        // What the crate itself gives on has a capital letter.
        return second == own
            || second.is_empty()
            || second.starts_with(char::is_uppercase)
            || ["*", second].iter().any(|room| wall.ours.contains(room));
    }
    if first == "std" {
        let is_clock = second == "time" && path.get(2).is_some_and(|what| what != "Duration");
        let is_outside = ["fs", "net", "env", "process", "thread"].contains(&second);
        return wall.reach == Reach::Server || !(is_clock || is_outside);
    }
    let name =
        if CRATES.contains(&first) { format!("holewright_{first}") } else { first.to_owned() };
    !dependencies.contains(&name) || wall.crates.contains(&name.as_str())
}

fn wall_of(file: &str) -> &'static Wall {
    WALLS
        .iter()
        .filter(|wall| file.starts_with(&format!("{}/", wall.files)))
        .max_by_key(|wall| wall.files.len())
        .unwrap_or_else(|| panic!("{file} stands behind no wall"))
}

/// Every dependency in the manifest of one of our crates, as code names it.
fn dependencies_of(home: &str) -> BTreeSet<String> {
    let manifest = read(&rooted("src").join(home).join("Cargo.toml"));
    manifest
        .lines()
        .skip_while(|line| *line != "[dependencies]")
        .skip(1)
        .take_while(|line| !line.starts_with('['))
        .filter_map(|line| line.split(['.', ' ', '=']).next())
        .filter(|name| !name.is_empty())
        .map(|name| name.replace('-', "_"))
        .collect()
}
