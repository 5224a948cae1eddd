//! The commands of the README about copies, run as they stand there.

use std::process::Command;

use holewright_server::config::CommandLine;

use super::commands::program;
use super::notes;
use crate::process;
use crate::support::Folder;

/// The lines of every block of commands in this section.
fn commands(section: &str) -> String {
    let readme = include_str!("../../../README.md");
    let heading = format!("\n## {section}\n");
    let text = readme.split(&heading).nth(1).unwrap().split("\n## ").next().unwrap();
    let blocks: Vec<&str> =
        text.split("```sh\n").skip(1).map(|block| block.split("```").next().unwrap()).collect();
    assert!(!blocks.is_empty(), "{section} has no commands");
    blocks.concat()
}

/// Runs them where a person would: in the folder above the data.
fn run(folder: &Folder, section: &str) -> String {
    let binary = program();
    let path = std::path::Path::new(binary.get_program()).parent().unwrap();
    let path = format!("{}:{}", path.display(), std::env::var("PATH").unwrap());
    let mut shell = Command::new("sh");
    shell.args(["-euc", &commands(section)]).current_dir(folder.path()).env("PATH", path);
    let output = process::run(&shell);
    let said = String::from_utf8(output.stdout).unwrap();
    assert!(output.status.success(), "{said}{}", String::from_utf8_lossy(&output.stderr));
    said
}

/// Every line that starts the program, out of shell, units and crontabs: the words behind its name.
fn started() -> Vec<Vec<&'static str>> {
    let readme = include_str!("../../../README.md");
    let blocks = readme.split("```").skip(1).step_by(2).flat_map(str::lines);
    let words = |line: &'static str| {
        let words: Vec<&str> = line.split_whitespace().collect();
        let is_it = |word: &&str| word.rsplit(['/', '=']).next() == Some("holewright");
        let place = words.iter().position(is_it)?;
        Some(words[place..].to_vec())
    };
    blocks.filter_map(words).collect()
}

#[test]
fn o11_every_way_to_start_it_in_the_readme_is_one() {
    let started = started();
    let unit = started.iter().filter(|words| words.contains(&"--base-url")).count();
    assert!(started.len() >= 6 && unit >= 1, "{started:?}");
    for words in started {
        let read = CommandLine::of(&words);
        assert!(read.is_ok(), "{words:?}: {}", read.unwrap_err());
    }
    let unit = CommandLine::of(["holewright", "--base-url", "http://192.168.1.20:8080"]).unwrap();
    assert_eq!(unit.config.listen.to_string(), "192.168.1.20:8080", "as the README says");
}

#[test]
fn o11_the_commands_of_the_readme_do_what_it_says() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    notes::fill(&data, "readme", 5, 50);
    let said = run(&folder, "Keep a copy");
    assert!(said.contains("saved in") && said.contains("is sound"), "{said}");
    notes::fill(&data, "later", 1, 50);
    let said = run(&folder, "Put a copy back");
    assert!(said.contains("restored data/holewright.sqlite"), "{said}");
    assert_eq!(notes::read(&data).whole.len(), 5);
}
