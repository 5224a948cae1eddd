//! The words of every page and file of the reference, and of whatever the server's own pages and messages
//! are written in.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use crate::addresses::reference;
use crate::html::read;
use crate::kinds::kinds;
use crate::{outside, visit, wordlist};

/// What is wrong with the words of some text; the club's own address may stand there.
fn faults(text: &str, place: &str) -> Vec<String> {
    let text = text.replace("https://club.example", "");
    let named = outside::named(&text).map(|word| format!("{place} names {word}"));
    let said = wordlist::replaced(&text)
        .map(|(before, after)| format!("{place} says {before:?}, which is now {after:?}"));
    named.into_iter().chain(said).collect()
}

#[test]
fn every_page_and_file_uses_our_words() {
    let mut found = BTreeSet::new();
    let kinds = kinds().into_iter().map(|kind| kind.address.into_owned());
    for address in reference().into_iter().chain(kinds) {
        let page = read(visit(&address).text());
        found.extend(faults(&page.text, &address));
        for value in page.tags.iter().filter_map(|tag| tag.attribute("aria-label")) {
            found.extend(faults(value, &address));
        }
        let (path, query) = address.split_once('?').unwrap_or((&address, ""));
        for file in [".csv", ".svg"].map(|ending| format!("{path}{ending}?{query}")) {
            let answer = visit(&file);
            if answer.status == 200 {
                let text = if file.contains(".svg?") {
                    read(answer.text()).text
                } else {
                    answer.text().to_owned()
                };
                found.extend(faults(&text, &file));
            }
        }
    }
    assert!(found.is_empty(), "{} faults: {found:#?}", found.len());
}

/// The words a person reads only with an account or after a mishap, too.
#[test]
fn templates_and_messages_use_our_words() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut found = BTreeSet::new();
    for (place, text) in ["templates", "src"].iter().flat_map(|name| files(&root.join(name))) {
        let said = if place.ends_with(".rs") { literals(&text) } else { vec![text] };
        for words in said {
            found.extend(
                wordlist::replaced(&words).map(|(before, after)| {
                    format!("{place} says {before:?}, which is now {after:?}")
                }),
            );
        }
    }
    assert!(found.is_empty(), "{} faults: {found:#?}", found.len());
}

/// What a program says: its literals, but for those in comments.
fn literals(program: &str) -> Vec<String> {
    let code = program.lines().filter(|line| !line.trim_start().starts_with("//"));
    let code = code.collect::<Vec<_>>().join("\n").replace("\\\"", "'").replace("\\\n", " ");
    code.split('"').skip(1).step_by(2).map(str::to_owned).collect()
}

fn files(folder: &Path) -> Vec<(String, String)> {
    let entries = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    entries
        .flat_map(|path| {
            if path.is_dir() {
                return files(&path);
            }
            let is_ours = path.extension().is_some_and(|kind| kind == "rs" || kind == "html");
            let text = fs::read_to_string(&path).ok().filter(|_| is_ours);
            text.map(|text| (path.display().to_string(), text)).into_iter().collect()
        })
        .collect()
}
