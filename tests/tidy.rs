//! House rules as tests: which module may use what, and what must be absent.

#![expect(
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a rule that cannot be read ends its test"
)]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use syn::visit::{self, Visit};

/// One room: the files it covers, and what its paths may start with. What a whole crate may use is
/// the compiler's business; these are the walls inside one.
struct Wall {
    files: &'static str,
    /// Rooms of its own crate that it may use.
    ours: &'static [&'static str],
    /// Watched crates it may use.
    crates: &'static [&'static str],
}

/// The longest matching `files` wins; two for the same files are a mistake.
const WALLS: &[Wall] = &[
    Wall { files: "core/units", ours: &["units"], crates: &["uom", "libm"] },
    Wall { files: "core/tables", ours: &["units", "tables"], crates: &[] },
    Wall {
        files: "core/asking",
        ours: &["units", "tables", "calc", "plan", "asking"],
        crates: &[],
    },
    Wall {
        files: "core/calculators",
        ours: &["units", "tables", "calc", "drawing", "asking", "calculators"],
        crates: &[],
    },
    Wall { files: "core/finder", ours: &["units", "tables", "calculators", "finder"], crates: &[] },
    Wall { files: "core/calc", ours: &["units", "tables", "calc"], crates: &["libm"] },
    Wall { files: "core/plan", ours: &["units", "tables", "calc", "plan"], crates: &[] },
    Wall {
        files: "core/drawing",
        ours: &["units", "tables", "calc", "plan", "drawing"],
        crates: &["libm"],
    },
    Wall {
        files: "core/export",
        ours: &["units", "tables", "calc", "plan", "calculators", "export"],
        crates: &[],
    },
    Wall { files: "pages", ours: &["*"], crates: &["askama", "form_urlencoded"] },
    Wall {
        files: "server/db",
        ours: &["auth", "clock", "db", "entries", "notes", "whole_file"],
        crates: &["sqlx", "tokio", "tracing", "serde", "serde_json"],
    },
    Wall {
        files: "server/api",
        ours: &["api", "db", "validator"],
        crates: &["axum", "form_urlencoded", "serde", "serde_json", "tokio", "tracing", "utoipa"],
    },
    Wall {
        files: "server/web",
        ours: &[
            "auth",
            "bytes",
            "clock",
            "db",
            "extract",
            "limits",
            "middleware",
            "notes",
            "validator",
            "web",
        ],
        crates: &[
            "askama",
            "axum",
            "form_urlencoded",
            "hyper",
            "serde",
            "serde_json",
            "time",
            "tokio",
            "tracing",
        ],
    },
    Wall { files: "server/notes", ours: &["auth", "notes"], crates: &[] },
];

#[test]
fn every_path_stays_within_its_wall() {
    let mut broken = Vec::new();
    for file in sources("src", "rs") {
        let relative = relative(&file, "src");
        let Some(wall) = wall_of(&relative) else { continue };
        let parsed = syn::parse_file(&read(&file)).unwrap();
        let mut paths = Paths::default();
        paths.visit_file(&parsed);
        for path in &paths.found {
            if !allowed(wall, path) {
                broken.push(format!("{relative}: {}", path.join("::")));
            }
        }
    }
    assert!(broken.is_empty(), "paths outside their wall:\n{}", broken.join("\n"));
}

#[test]
fn every_file_says_what_it_answers() {
    let silent: Vec<String> = sources("src", "rs")
        .into_iter()
        .chain(sources("tests", "rs"))
        .filter(|file| !read(file).starts_with("//! "))
        .map(|file| file.display().to_string())
        .collect();
    assert!(silent.is_empty(), "files without an opening //! line: {silent:?}");
}

#[test]
fn no_code_file_is_too_long() {
    // Tables are one row a line and may be as long as their source.
    let long: Vec<String> = sources("src", "rs")
        .into_iter()
        .filter(|file| !relative(file, "src").starts_with("core/tables/"))
        .map(|file| (read(&file).lines().count(), file))
        .filter(|(lines, _)| *lines > 450)
        .map(|(lines, file)| format!("{} ({lines} lines)", file.display()))
        .collect();
    assert!(long.is_empty(), "split these: {long:?}");
}

#[test]
fn no_file_is_named_for_leftovers() {
    let bad: Vec<PathBuf> = sources("src", "rs")
        .into_iter()
        .filter(|file| {
            let stem = file.file_stem().unwrap().to_string_lossy().into_owned();
            ["utils", "util", "helpers", "common", "misc"].contains(&stem.as_str())
        })
        .collect();
    assert!(bad.is_empty(), "name these for what they hold: {bad:?}");
}

#[test]
fn no_unfinished_marks() {
    let marks = [concat!("TO", "DO"), concat!("FIX", "ME"), concat!("unimplemented", "!")];
    let mut found = Vec::new();
    for file in ["src", "tests", "templates", "static", "migrations"]
        .iter()
        .flat_map(|folder| sources(folder, ""))
    {
        let Ok(text) = fs::read_to_string(&file) else { continue };
        for (number, line) in text.lines().enumerate() {
            if marks.iter().any(|mark| line.contains(mark)) {
                found.push(format!("{}:{}", file.display(), number + 1));
            }
        }
    }
    assert!(found.is_empty(), "unfinished: {found:?}");
}

#[test]
fn templates_hold_no_script_and_no_style() {
    let mut found = Vec::new();
    for file in sources("templates", "") {
        let text = read(&file).to_lowercase();
        for needle in ["<script", "<style", " style=", "javascript:", " onclick", " onload"] {
            if text.contains(needle) {
                found.push(format!("{}: {needle}", file.display()));
            }
        }
    }
    assert!(found.is_empty(), "{found:?}");
}

#[test]
fn one_inch_factor() {
    let places: Vec<String> = sources("src", "rs")
        .into_iter()
        .filter(|file| {
            read(file)
                .lines()
                .any(|line| line.split("//").next().is_some_and(|code| code.contains("25.4")))
        })
        .map(|file| relative(&file, "src"))
        .collect();
    assert_eq!(places, ["core/units/quantity.rs"], "the inch is written once");
}

/// Collects every path, and every `use`, as its leading segments.
#[derive(Default)]
struct Paths {
    found: BTreeSet<Vec<String>>,
}

impl<'ast> Visit<'ast> for Paths {
    fn visit_path(&mut self, path: &'ast syn::Path) {
        self.note(path.segments.iter().map(|segment| segment.ident.to_string()).collect());
        visit::visit_path(self, path);
    }

    fn visit_item_use(&mut self, item: &'ast syn::ItemUse) {
        self.note_tree(&item.tree, &mut Vec::new());
    }

    fn visit_macro(&mut self, item: &'ast syn::Macro) {
        // A macro's body is tokens, not paths: read `name ::` pairs out of its text.
        let text = item.tokens.to_string().replace(' ', "");
        for piece in text.split(|c: char| !(c.is_alphanumeric() || c == '_' || c == ':')) {
            let parts: Vec<String> = piece.split("::").map(str::to_owned).collect();
            if parts.len() > 1 && parts.iter().all(|part| !part.is_empty()) {
                self.note(parts);
            }
        }
        visit::visit_macro(self, item);
    }
}

impl Paths {
    fn note(&mut self, segments: Vec<String>) {
        if segments.len() > 1 {
            self.found.insert(segments);
        }
    }

    fn note_tree(&mut self, tree: &syn::UseTree, stem: &mut Vec<String>) {
        match tree {
            syn::UseTree::Path(path) => {
                stem.push(path.ident.to_string());
                self.note_tree(&path.tree, stem);
                stem.pop();
            }
            syn::UseTree::Group(group) => {
                for tree in &group.items {
                    self.note_tree(tree, stem);
                }
            }
            syn::UseTree::Name(name) => self.note_leaf(stem, &name.ident.to_string()),
            syn::UseTree::Rename(rename) => self.note_leaf(stem, &rename.ident.to_string()),
            syn::UseTree::Glob(_) => self.note_leaf(stem, "*"),
        }
    }

    fn note_leaf(&mut self, stem: &[String], leaf: &str) {
        let mut full = stem.to_vec();
        full.push(leaf.to_owned());
        self.note(full);
    }
}

/// Crates that stay behind the walls that name them. `holewright_core` and `thiserror` may stand anywhere.
const WATCHED: &[&str] = &[
    "askama",
    "axum",
    "form_urlencoded",
    "hyper",
    "hyper_util",
    "libm",
    "serde",
    "serde_json",
    "sqlx",
    "time",
    "tokio",
    "tower",
    "tower_http",
    "tracing",
    "uom",
    "utoipa",
];

fn allowed(wall: &Wall, path: &[String]) -> bool {
    let first = path[0].as_str();
    let second = path[1].as_str();
    match first {
        // What the crate itself re-exports has a capital letter.
        "crate" => {
            ["*", second].iter().any(|room| wall.ours.contains(room))
                || second.starts_with(char::is_uppercase)
        }
        // Reading and writing files, the network and the clock belong to the server.
        "std" if !wall.files.starts_with("server") => {
            let is_clock = second == "time" && path.get(2).is_some_and(|what| what != "Duration");
            !is_clock && !["fs", "net", "env", "process", "thread"].contains(&second)
        }
        _ if WATCHED.contains(&first) => wall.crates.contains(&first),
        _ => true,
    }
}

fn wall_of(relative: &str) -> Option<&'static Wall> {
    WALLS
        .iter()
        .filter(|wall| {
            relative == wall.files
                || relative.starts_with(&format!("{}/", wall.files))
                || relative == format!("{}.rs", wall.files)
        })
        .max_by_key(|wall| wall.files.len())
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn relative(path: &Path, root: &str) -> String {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join(root);
    path.strip_prefix(root).unwrap().to_string_lossy().into_owned()
}

/// Every file below a folder with this extension (any, where empty).
fn sources(folder: &str, extension: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut folders = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join(folder)];
    while let Some(folder) = folders.pop() {
        let Ok(entries) = fs::read_dir(&folder) else { continue };
        for entry in entries {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if extension.is_empty() || path.extension().is_some_and(|ext| ext == extension) {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}
