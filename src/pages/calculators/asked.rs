//! What was typed in each field of one calculator, kept as typed.

use crate::Query;
use crate::query::address;
use crate::typed::Typed;

/// A calculator's path, its fields by their names in the address, and what was typed in them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Asked {
    path: &'static str,
    names: &'static [&'static str],
    query: Query,
}

impl Asked {
    pub(super) const fn new(
        path: &'static str,
        names: &'static [&'static str],
        query: Query,
    ) -> Self {
        Self { path, names, query }
    }

    /// What was typed in a field, trimmed; empty where nothing was.
    pub(super) fn typed(&self, field: &str) -> &str {
        self.query.get(field)
    }

    /// One field as typed, to be read.
    pub(super) fn at(&self, field: &'static str) -> Typed<'_> {
        Typed { field, text: self.typed(field) }
    }

    /// Nothing was typed in any of these.
    pub(super) fn lacks(&self, fields: &[&str]) -> bool {
        fields.iter().all(|field| self.typed(field).is_empty())
    }

    /// The address at a door: the fields that were filled, in one order.
    pub(super) fn address(&self, path: &str) -> String {
        address(path, self.query.only(self.names))
    }

    /// The page's address.
    pub(super) fn own_address(&self) -> String {
        self.address(self.path)
    }

    /// The page's address with one field filled otherwise; the rest is kept.
    pub(super) fn address_with(&self, field: &str, value: &str) -> String {
        let filled = self.names.iter().filter_map(|name| {
            let text = if *name == field { value } else { self.typed(name) };
            (!text.is_empty()).then_some((*name, text))
        });
        address(self.path, filled)
    }
}
