//! What a source file uses: every path in it, written out from the root of its crate.

use std::collections::{BTreeMap, BTreeSet};

use syn::visit::{self, Visit};

use super::{read, relative, sources};

/// A path as its parts.
pub(crate) type Parts = Vec<String>;

/// One source file.
pub(crate) struct Source {
    /// Its path below `src`, `server/bytes/kept.rs`.
    pub(crate) file: String,
    /// Its module, the crate first: `server`, `bytes`, `kept`.
    pub(crate) module: Parts,
    /// Every path in it, of our crates from the crate on: `server`, `validator`, `Tag`.
    pub(crate) uses: BTreeSet<Parts>,
    /// The names that it gives on, and where they come from.
    pub(crate) given_on: BTreeMap<String, Parts>,
}

/// Every source file of the library crates.
pub(crate) fn all() -> Vec<Source> {
    sources("src", "rs")
        .iter()
        .filter(|path| relative(path, "src").contains('/'))
        .map(|path| Source::read(relative(path, "src"), &read(path)))
        .collect()
}

impl Source {
    fn read(file: String, text: &str) -> Self {
        let mut module: Parts =
            file.trim_end_matches(".rs").split('/').map(str::to_owned).collect();
        if module.last().is_some_and(|last| last == "mod" || last == "lib") {
            module.pop();
        }
        let mut reading = Reading { module: module.clone(), ..Reading::default() };
        let parsed = syn::parse_file(text).unwrap();
        // Names first: a path may stand above the `use` it hangs on.
        for item in &parsed.items {
            reading.note_item(item);
        }
        reading.visit_file(&parsed);
        let Reading { uses, given_on, .. } = reading;
        Self { file, module, uses, given_on }
    }
}

#[derive(Default)]
struct Reading {
    module: Parts,
    /// What each name brought in by `use` or `mod` stands for.
    names: BTreeMap<String, Parts>,
    given_on: BTreeMap<String, Parts>,
    uses: BTreeSet<Parts>,
}

impl Reading {
    fn note_item(&mut self, item: &syn::Item) {
        match item {
            syn::Item::Mod(item) if item.content.is_none() => {
                let name = item.ident.to_string();
                let path = [self.module.clone(), vec![name.clone()]].concat();
                self.names.insert(name, path);
            }
            syn::Item::Use(item) => {
                let mut leaves = Vec::new();
                leaves_of(&item.tree, &mut Vec::new(), &mut leaves);
                let is_private = matches!(item.vis, syn::Visibility::Inherited);
                for (name, path) in leaves {
                    let path = self.written_out(path);
                    if !is_private {
                        self.given_on.insert(name.clone(), path.clone());
                    }
                    self.names.insert(name, path);
                }
            }
            _ => {}
        }
    }

    /// The path from its crate on.
    fn written_out(&self, path: Parts) -> Parts {
        let mut module = self.module.clone();
        let mut rest = path.as_slice();
        let ours = |name: &str| name.strip_prefix("holewright_").map(str::to_owned);
        match rest {
            [first, tail @ ..] if first == "crate" => {
                module.truncate(1);
                rest = tail;
            }
            [first, tail @ ..] if first == "self" => rest = tail,
            [first, ..] if first == "super" => {
                while let [first, tail @ ..] = rest
                    && first == "super"
                {
                    module.pop();
                    rest = tail;
                }
            }
            [first, tail @ ..] if let Some(name) = ours(first) => {
                module = vec![name];
                rest = tail;
            }
            [first, tail @ ..] if let Some(known) = self.names.get(first) => {
                module.clone_from(known);
                rest = tail;
            }
            _ => return path,
        }
        [module.as_slice(), rest].concat()
    }

    fn note(&mut self, path: Parts) {
        if path.len() > 1 || path.first().is_some_and(|name| self.names.contains_key(name)) {
            let path = self.written_out(path);
            self.uses.insert(path);
        }
    }
}

impl<'ast> Visit<'ast> for Reading {
    fn visit_path(&mut self, path: &'ast syn::Path) {
        self.note(path.segments.iter().map(|segment| segment.ident.to_string()).collect());
        visit::visit_path(self, path);
    }

    fn visit_item_use(&mut self, item: &'ast syn::ItemUse) {
        let mut leaves = Vec::new();
        leaves_of(&item.tree, &mut Vec::new(), &mut leaves);
        // To give a name on is not to use it.
        if matches!(item.vis, syn::Visibility::Inherited) {
            leaves.into_iter().for_each(|(_, path)| self.note(path));
        }
    }

    fn visit_item_mod(&mut self, item: &'ast syn::ItemMod) {
        // Tests within a file may use what they like.
        let is_test = item.attrs.iter().any(|attribute| attribute.path().is_ident("cfg"));
        if !is_test {
            visit::visit_item_mod(self, item);
        }
    }

    fn visit_macro(&mut self, item: &'ast syn::Macro) {
        // A macro's body is tokens, not paths: read `name ::` pairs out of its text.
        let text = item.tokens.to_string().replace(' ', "");
        for piece in text.split(|c: char| !(c.is_alphanumeric() || c == '_' || c == ':')) {
            let parts: Parts = piece.split("::").map(str::to_owned).collect();
            if parts.len() > 1 && parts.iter().all(|part| !part.is_empty()) {
                self.note(parts);
            }
        }
        visit::visit_macro(self, item);
    }
}

/// Every name that a `use` brings in, with its path.
fn leaves_of(tree: &syn::UseTree, stem: &mut Parts, found: &mut Vec<(String, Parts)>) {
    let mut leaf = |name: String, last: Option<String>| {
        found.push((name, stem.iter().cloned().chain(last).collect()));
    };
    match tree {
        syn::UseTree::Path(path) => {
            stem.push(path.ident.to_string());
            leaves_of(&path.tree, stem, found);
            stem.pop();
        }
        syn::UseTree::Group(group) => {
            group.items.iter().for_each(|tree| leaves_of(tree, stem, found));
        }
        syn::UseTree::Name(name) if name.ident == "self" => {
            leaf(stem.last().cloned().unwrap_or_default(), None);
        }
        syn::UseTree::Name(name) => leaf(name.ident.to_string(), Some(name.ident.to_string())),
        syn::UseTree::Rename(rename) => {
            leaf(rename.rename.to_string(), Some(rename.ident.to_string()));
        }
        syn::UseTree::Glob(_) => leaf("*".to_owned(), Some("*".to_owned())),
    }
}
