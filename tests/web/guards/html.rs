//! A page as a browser's tokeniser reads it (WHATWG), whatever state its markup is in.

use html5gum::{Token, Tokenizer};

/// The nodes of a page.
#[derive(Debug, Default)]
pub(crate) struct Page {
    pub(crate) tags: Vec<Tag>,
    pub(crate) text: String,
    pub(crate) comments: Vec<String>,
}

/// An element's start.
#[derive(Debug)]
pub(crate) struct Tag {
    pub(crate) name: String,
    pub(crate) attributes: Vec<(String, String)>,
}

impl Tag {
    pub(crate) fn attribute(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(held, _)| held == name).map(|(_, value)| value.as_str())
    }
}

impl Page {
    /// Whether a reader sees these words: as text, in a field, or in what the page says of itself.
    pub(crate) fn shows(&self, words: &str) -> bool {
        let shown = ["value", "content"];
        let attributes = self.tags.iter().flat_map(|tag| &tag.attributes);
        self.text.contains(words)
            || attributes
                .into_iter()
                .any(|(name, value)| shown.contains(&name.as_str()) && value.contains(words))
    }
}

/// Reads a page.
pub(crate) fn read(page: &str) -> Page {
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    let mut read = Page::default();
    for Ok(token) in Tokenizer::new(page) {
        match token {
            Token::StartTag(tag) => read.tags.push(Tag {
                name: text(&tag.name),
                attributes: tag
                    .attributes
                    .iter()
                    .map(|(name, value)| (text(name), text(&value.value)))
                    .collect(),
            }),
            Token::String(words) => read.text.push_str(&text(&words.value)),
            Token::Comment(words) => read.comments.push(text(&words.value)),
            Token::EndTag(_) | Token::Doctype(_) | Token::Error(_) => {}
        }
    }
    read
}

/// Nothing on the page runs, styles itself, or comes from elsewhere.
#[track_caller]
pub(crate) fn check_inert(page: &Page, place: &str) {
    for tag in &page.tags {
        let name = tag.name.as_str();
        let active = ["style", "iframe", "object", "embed", "base", "frame", "applet", "template"];
        assert!(!active.contains(&name), "{place}: <{name}>");
        // A script of ours would have a source and nothing inside; see `check_local`.
        assert!(name != "script" || tag.attribute("src").is_some(), "{place}: inline script");
        for (attribute, value) in &tag.attributes {
            assert!(!attribute.starts_with("on"), "{place}: <{name} {attribute}>");
            assert!(attribute != "style" && attribute != "srcdoc", "{place}: <{name} {attribute}>");
            check_address(attribute, value, &format!("{place}: <{name} {attribute}={value:?}>"));
        }
        let refreshes = tag.attribute("http-equiv").is_some();
        assert!(!refreshes, "{place}: <{name} http-equiv>");
    }
}

/// Attributes a browser follows by itself.
const FETCHED: [&str; 7] =
    ["src", "srcset", "poster", "data", "background", "xlink:href", "action"];

#[track_caller]
fn check_address(attribute: &str, value: &str, place: &str) {
    let bare: String = value.chars().filter(|c| !c.is_whitespace() && !c.is_control()).collect();
    let bare = bare.to_lowercase();
    let is_address =
        attribute == "href" || attribute == "formaction" || FETCHED.contains(&attribute);
    if is_address {
        let scripted = ["javascript:", "vbscript:", "data:"];
        assert!(!scripted.iter().any(|scheme| bare.starts_with(scheme)), "{place}");
    }
    if FETCHED.contains(&attribute) {
        let local = bare.starts_with('/') && !bare.starts_with("//") || bare.starts_with('#');
        assert!(local, "{place}: off-site");
    }
}
