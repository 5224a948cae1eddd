//! What follows the `?`, as typed, and its tidy form.

use std::collections::BTreeSet;

use form_urlencoded::{Serializer, parse};
use holewright_core::asking::cut;

/// The parameters of an address, in the order given.
///
/// A parameter that is given twice alike counts once. Given twice and not alike, it holds the first two with a bar
/// between, which is no choice, no size and no name: which of them was meant is not for us to say. The one exception
/// is `series`, which check boxes send once each: its values are joined with commas, as an address writes them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Query {
    pairs: Vec<(String, String)>,
    /// The places of those that were given twice and not alike.
    twice: BTreeSet<usize>,
    left_empty: Vec<String>,
    untidy: bool,
}

/// Stands between two values of one parameter.
const BETWEEN: &str = " | ";

/// The one parameter that is a list.
const LIST: &str = "series";

impl Query {
    /// Reads a query. Never fails: bytes that are no text become the replacement character.
    #[must_use]
    pub fn read(query: &str) -> Self {
        let mut tidy = Self::default();
        for (name, value) in parse(query.as_bytes()) {
            tidy.untidy |= !tidy.take(&name, value.trim());
        }
        tidy
    }

    /// A query made by a page.
    pub(super) fn of<'a>(pairs: impl IntoIterator<Item = (&'a str, &'a str)>) -> Self {
        let mut query = Self::default();
        for (name, value) in pairs {
            query.take(name, value);
        }
        query
    }

    /// Takes a parameter in; says whether a tidy address would have held it just so.
    fn take(&mut self, name: &str, value: &str) -> bool {
        if value.is_empty() {
            self.left_empty.push(name.to_owned());
            return false;
        }
        match self.pairs.iter_mut().enumerate().find(|(_, (held, _))| held == name) {
            Some((_, (_, held))) if name == LIST => {
                held.push(',');
                held.push_str(value);
                false
            }
            Some((place, (_, held))) => {
                // The first two are enough: what is sent a thousand times must not grow.
                if held != value && self.twice.insert(place) {
                    held.push_str(BETWEEN);
                    held.push_str(value);
                }
                false
            }
            None => {
                self.pairs.push((name.to_owned(), value.to_owned()));
                true
            }
        }
    }

    /// Puts a value where nothing was typed; what was typed stands.
    pub(super) fn fill(&mut self, name: &str, value: &str) {
        if self.get(name).is_empty() {
            self.take(name, value);
        }
    }

    /// Puts a value in the place of what was typed.
    pub(super) fn put(&mut self, name: &str, value: &str) {
        match self.pairs.iter_mut().find(|(held, _)| held == name) {
            Some((_, held)) => value.clone_into(held),
            None => self.pairs.push((name.to_owned(), value.to_owned())),
        }
    }

    /// The same, with the fields of these names cut to what they may hold.
    pub(super) fn cut(mut self, names: &[&str]) -> Self {
        for (name, value) in &mut self.pairs {
            if names.contains(&name.as_str()) {
                let end = cut(name, value).len();
                value.truncate(end);
            }
        }
        self
    }

    /// What was typed for a parameter, trimmed; empty where nothing was.
    #[must_use]
    pub fn get(&self, name: &str) -> &str {
        self.pairs.iter().find(|(held, _)| held == name).map_or("", |(_, value)| value.as_str())
    }

    /// Whether a parameter stands in the address, filled or not.
    pub(super) fn was_sent(&self, name: &str) -> bool {
        !self.get(name).is_empty() || self.left_empty.iter().any(|held| held == name)
    }

    /// The parameters that were filled, in the order given.
    pub fn pairs(&self) -> impl Iterator<Item = (&str, &str)> + Clone {
        self.pairs.iter().map(|(name, value)| (name.as_str(), value.as_str()))
    }

    /// Empty or repeated parameters were dropped: a form leaves every field in its address.
    pub(super) fn is_untidy(&self) -> bool {
        self.untidy
    }

    /// The address of a path with these parameters.
    pub(super) fn after(&self, path: &str) -> String {
        address(path, self.pairs())
    }

    /// The parameters of these names that were given, in the order named.
    pub(super) fn only(&self, names: &[&'static str]) -> Vec<(&'static str, &str)> {
        names
            .iter()
            .map(|name| (*name, self.get(name)))
            .filter(|(_, value)| !value.is_empty())
            .collect()
    }
}

/// An address: a path and its parameters, percent-coded.
pub(super) fn address<'a>(
    path: &str,
    parameters: impl IntoIterator<Item = (&'a str, &'a str)>,
) -> String {
    let query = Serializer::new(String::new()).extend_pairs(parameters).finish();
    if query.is_empty() { path.to_owned() } else { format!("{path}?{query}") }
}
