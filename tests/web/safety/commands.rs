//! The program's commands, run as a person runs them.

use std::path::Path;
use std::process::{Command, Output};

use crate::process;

/// The program without any setting from the environment of the test.
pub(crate) fn program() -> Command {
    let mut program = Command::new(env!("CARGO_BIN_EXE_holewright"));
    for (name, _) in std::env::vars_os() {
        if name.to_string_lossy().starts_with("HOLEWRIGHT_") {
            program.env_remove(name);
        }
    }
    program
}

/// Runs a command on this data folder.
pub(crate) fn run(data: &Path, arguments: &[&str]) -> Output {
    process::run(program().args(arguments).arg("--data-dir").arg(data))
}

/// What a start on this folder says that cannot serve it.
pub(super) fn serve(data: &Path) -> Output {
    run(data, &["--listen", "127.0.0.1:0"])
}

/// What a command printed that did what it was asked to.
#[track_caller]
pub(crate) fn done(output: &Output) -> String {
    let errors = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(0), "{errors}");
    assert_eq!(errors, "");
    String::from_utf8(output.stdout.clone()).unwrap()
}

/// A command that could not: one line, with these words, and nothing claimed.
#[track_caller]
pub(super) fn refused(output: &Output, words: &[&str]) {
    let errors = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(1), "{errors}");
    assert_eq!(errors.lines().count(), 1, "{errors}");
    assert!(output.stdout.is_empty());
    for word in words {
        assert!(errors.contains(word), "{word} in: {errors}");
    }
}

/// Every file of a folder with its bytes.
pub(super) fn bytes(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap())
        .filter(|entry| entry.path().is_file())
        .map(|entry| {
            (entry.file_name().into_string().unwrap(), std::fs::read(entry.path()).unwrap())
        })
        .collect();
    files.sort();
    files
}

/// The names in a folder.
pub(super) fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}
