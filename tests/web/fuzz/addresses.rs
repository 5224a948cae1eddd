//! The addresses with a query that the pages themselves have: in their links, and made of their forms.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use form_urlencoded::parse;
use holewright_pages::{Context, answer};

use crate::html::{self, Page, Tag};

/// Where the look begins.
const SEEDS: [&str; 6] = [
    "/",
    "/search?q=1/4",
    "/threads/ba/5",
    "/materials/gunmetal",
    "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=copper&over_thickness=4mm&series=number,metric",
    "/drills?from=2mm&to=3mm&series=metric",
];

/// What stands behind the `?`, in order: names and values.
pub(super) type Fields = Vec<(String, String)>;

/// What was found.
#[derive(Debug, Default)]
pub(super) struct Addresses {
    /// The queries of each path.
    pub(super) queries: BTreeMap<String, BTreeSet<Fields>>,
    /// What stands in the fields of each name, or can be chosen there.
    pub(super) values: BTreeMap<String, BTreeSet<String>>,
}

pub(super) fn context() -> Context {
    Context { base_url: "https://club.test".to_owned(), ..Context::default() }
}

/// Path and query.
pub(super) fn split(address: &str) -> (&str, &str) {
    address.split_once('?').unwrap_or((address, ""))
}

pub(super) fn fields(query: &str) -> Fields {
    parse(query.as_bytes()).into_owned().collect()
}

/// Follows the pages' links: a few pages of each kind lead to all that there is.
pub(super) fn found() -> Addresses {
    let mut waiting: VecDeque<String> = SEEDS.map(str::to_owned).into();
    let mut kinds: BTreeMap<String, u32> = BTreeMap::new();
    let mut found = Addresses::default();
    while let Some(address) = waiting.pop_front() {
        let (path, query) = split(&address);
        let kind = path.split('/').take(3).collect::<Vec<_>>().join("/");
        let count = kinds.entry(kind).or_default();
        *count += 1;
        if *count > 3 {
            continue;
        }
        let answer = answer(path, query, &context());
        if answer.header("content-type").is_none_or(|kind| !kind.starts_with("text/html")) {
            continue;
        }
        if !query.is_empty() {
            found.take(path, fields(query));
        }
        let page = html::read(answer.text());
        found.take_forms(&page);
        let links = page.tags.iter().filter(|tag| tag.name == "a");
        let links = links.filter_map(|tag| tag.attribute("href"));
        let links = links.filter_map(|href| href.split('#').next());
        waiting.extend(links.filter(|href| href.starts_with('/')).map(str::to_owned));
    }
    found
}

impl Addresses {
    fn take(&mut self, path: &str, fields: Fields) {
        for (name, value) in &fields {
            self.values.entry(name.clone()).or_default().insert(value.clone());
        }
        self.queries.entry(path.to_owned()).or_default().insert(fields);
    }

    /// Each form as it would be sent if nothing were typed.
    fn take_forms(&mut self, page: &Page) {
        let mut forms: Vec<(String, Fields)> = Vec::new();
        let mut list = None;
        for tag in &page.tags {
            if tag.name == "form" {
                forms.push((held(tag, "action"), Vec::new()));
            }
            let Some((_, fields)) = forms.last_mut() else { continue };
            match tag.name.as_str() {
                "input" if tag.attribute("name").is_some() => {
                    fields.push((held(tag, "name"), held(tag, "value")));
                }
                "select" => {
                    fields.push((held(tag, "name"), String::new()));
                    list = Some(held(tag, "name"));
                }
                "option" => {
                    let Some(name) = &list else { continue };
                    self.values.entry(name.clone()).or_default().insert(held(tag, "value"));
                    if let Some(last) =
                        fields.last_mut().filter(|_| tag.attribute("selected").is_some())
                    {
                        last.1 = held(tag, "value");
                    }
                }
                _ => {}
            }
        }
        for (path, fields) in forms {
            self.take(&path, fields);
        }
    }
}

fn held(tag: &Tag, attribute: &str) -> String {
    tag.attribute(attribute).unwrap_or_default().to_owned()
}
