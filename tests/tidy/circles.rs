//! No two files use each other: what both need stands in a third.

use std::collections::{BTreeMap, BTreeSet};

use super::paths::{Parts, Source, all};

/// A name may be given on so often before it is found where it stands.
const STEPS: usize = 8;

#[test]
fn no_two_files_use_each_other() {
    let files = all();
    let by_module: BTreeMap<&Parts, &Source> =
        files.iter().map(|source| (&source.module, source)).collect();
    let used: BTreeSet<(&str, &str)> = files
        .iter()
        .flat_map(|source| source.uses.iter().map(move |path| (source, path)))
        .filter_map(|(source, path)| Some((source, place(&by_module, path)?)))
        .filter(|(source, other)| !is_one(source, other))
        .map(|(source, other)| (source.file.as_str(), other.file.as_str()))
        .collect();
    let circles: Vec<String> = used
        .iter()
        .filter(|(one, other)| one < other && used.contains(&(*other, *one)))
        .map(|(one, other)| format!("{one} and {other}"))
        .collect();
    assert!(used.len() > 500, "only {} uses were found", used.len());
    assert!(circles.is_empty(), "these use each other:\n{}", circles.join("\n"));
}

/// The file in which a path ends, through every name that is given on.
fn place<'a>(by_module: &BTreeMap<&Parts, &'a Source>, path: &Parts) -> Option<&'a Source> {
    let mut path = path.clone();
    for _ in 0..STEPS {
        let (length, source) = (1..=path.len())
            .rev()
            .find_map(|length| Some((length, *by_module.get(&path[..length].to_vec())?)))?;
        match path.get(length).and_then(|name| source.given_on.get(name)) {
            Some(from) => path = [from.as_slice(), &path[length + 1..]].concat(),
            None => return Some(source),
        }
    }
    None
}

/// A folder's `mod.rs` and the files in it are one; `lib.rs` puts the crate together and is used by
/// all that it holds.
fn is_one(one: &Source, other: &Source) -> bool {
    let is_above = |above: &Source, below: &Source| below.module.starts_with(&above.module);
    one.file == other.file || is_above(one, other) || is_above(other, one)
}
