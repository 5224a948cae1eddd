//! What a reader sees of a page, and what a browser would send of its forms.

use crate::html::{self, Page};

/// Whether a reader sees these words: as text, in a field, or in what the page says of itself.
pub(crate) fn shows(page: &Page, words: &str) -> bool {
    let shown = ["value", "content"];
    let attributes = page.tags.iter().flat_map(|tag| &tag.attributes);
    page.text.contains(words)
        || attributes
            .into_iter()
            .any(|(name, value)| shown.contains(&name.as_str()) && value.contains(words))
}

/// What a browser would send of a page's forms: the fields in order, each with what is in it.
pub(crate) fn filled(page: &str) -> Vec<(String, String)> {
    let page = html::read(page);
    let fields = page.tags.iter().filter_map(|tag| {
        let name = tag.attribute("name")?.to_owned();
        let is_off = matches!(tag.attribute("type"), Some("checkbox" | "radio"))
            && tag.attribute("checked").is_none();
        match tag.name.as_str() {
            "input" if !is_off => Some((name, tag.attribute("value").unwrap_or_default().into())),
            // A browser takes one line end from the front of a textarea.
            "textarea" => Some((name, tag.text.strip_prefix('\n').unwrap_or(&tag.text).into())),
            _ => None,
        }
    });
    fields.collect()
}
