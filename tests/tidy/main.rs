//! House rules as tests, as far as the compiler cannot keep them: which room may use which, what must
//! stand in a file, and what must be absent.

#![expect(
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a rule that cannot be read ends its test"
)]

mod asvs;
mod circles;
mod paths;
mod walls;

use std::fs;
use std::path::{Path, PathBuf};

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
fn every_file_is_part_of_its_crate() {
    let dead: Vec<String> = sources("src", "rs")
        .into_iter()
        .filter(|file| relative(file, "src").contains('/') && !file.ends_with("lib.rs"))
        .filter(|file| {
            let is_folder = file.ends_with("mod.rs");
            let module = if is_folder { file.parent().unwrap() } else { file };
            let name = module.file_stem().unwrap().to_string_lossy();
            let folder = module.parent().unwrap();
            let declared = format!("mod {name};");
            let above = [folder.join("mod.rs"), folder.join("lib.rs"), folder.with_extension("rs")];
            !above.iter().filter_map(|above| fs::read_to_string(above).ok()).any(|above| {
                above.lines().any(|line| {
                    let line = line.trim_start();
                    !line.starts_with("//") && line.ends_with(&declared)
                })
            })
        })
        .map(|file| file.display().to_string())
        .collect();
    assert!(dead.is_empty(), "no `mod` names these, so nothing compiles them: {dead:?}");
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

/// Whatever is committed may change what readers see, and one function says so. Beside it: a row that nobody
/// reads, and a file that nobody serves.
#[test]
fn the_database_commits_in_one_place() {
    let is_commit =
        |line: &&str| line.split("//").next().is_some_and(|code| code.contains(".commit()"));
    let places: Vec<(String, usize)> = sources("src", "rs")
        .into_iter()
        .map(|file| (relative(&file, "src"), read(&file).lines().filter(is_commit).count()))
        .filter(|(_, count)| *count > 0)
        .collect();
    let known = [("server/db/copy.rs", 1), ("server/db/mod.rs", 2)];
    assert_eq!(places, known.map(|(file, count)| (file.to_owned(), count)));
}

/// S40 from the other side: there is no shell to get at, and nobody's input becomes a command.
#[test]
fn the_program_starts_no_other() {
    let found: Vec<String> = sources("src", "rs")
        .into_iter()
        .filter(|file| {
            let text = read(file);
            ["process::Command", "Command::new", "execve", "posix_spawn"]
                .iter()
                .any(|way| text.contains(way))
        })
        .map(|file| relative(&file, "src"))
        .collect();
    assert!(found.is_empty(), "these start another program: {found:?}");
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn rooted(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
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
