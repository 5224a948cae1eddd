//! A page as a browser's tokeniser reads it (WHATWG), whatever state its markup is in. Every test that
//! reads HTML reads it with this.

use html5gum::{Error, Token, Tokenizer};

/// What stands on a page.
#[derive(Debug, Default)]
pub(crate) struct Page {
    /// Every element, in the order of the start tags.
    pub(crate) tags: Vec<Tag>,
    /// All the text.
    pub(crate) text: String,
    pub(crate) comments: Vec<String>,
    /// What is wrong with the markup: an element that does not end where it should, and whatever the
    /// tokeniser complains of.
    pub(crate) faults: Vec<String>,
}

/// An element.
#[derive(Debug)]
pub(crate) struct Tag {
    pub(crate) name: String,
    pub(crate) attributes: Vec<(String, String)>,
    /// The text in it, without that of the elements inside.
    pub(crate) text: String,
    /// The place among the page's tags of the element it stands in.
    pub(crate) parent: Option<usize>,
}

/// Elements that have no end tag.
const VOID: [&str; 6] = ["meta", "link", "input", "br", "hr", "img"];

impl Tag {
    pub(crate) fn attribute(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(held, _)| held == name).map(|(_, value)| value.as_str())
    }
}

impl Page {
    /// The elements with this name.
    pub(crate) fn named<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a Tag> {
        self.tags.iter().filter(move |tag| tag.name == name)
    }
}

/// Reads a page or a piece of one.
pub(crate) fn read(html: &str) -> Page {
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    let mut page = Page::default();
    let mut open: Vec<usize> = Vec::new();
    for Ok(token) in Tokenizer::new(html) {
        match token {
            Token::StartTag(tag) => {
                let name = text(&tag.name);
                let is_open = !tag.self_closing && !VOID.contains(&name.as_str());
                let attributes = tag.attributes.iter();
                let attributes = attributes.map(|(name, value)| (text(name), text(&value.value)));
                let attributes = attributes.collect();
                let parent = open.last().copied();
                page.tags.push(Tag { name, attributes, text: String::new(), parent });
                if is_open {
                    open.push(page.tags.len() - 1);
                }
            }
            Token::EndTag(tag) => {
                let ended = open.pop().map(|place| page.tags[place].name.as_str());
                if ended != Some(&text(&tag.name)) {
                    page.faults.push(format!("</{}> ends {ended:?}", text(&tag.name)));
                }
            }
            Token::String(words) => {
                let words = text(&words.value);
                if let Some(place) = open.last() {
                    page.tags[*place].text.push_str(&words);
                }
                page.text.push_str(&words);
            }
            Token::Comment(words) => page.comments.push(text(&words.value)),
            // Characters of no meaning are no fault of the markup.
            Token::Error(error) if *error == Error::NoncharacterInInputStream => {}
            Token::Error(error) => page.faults.push(format!("{:?}", *error)),
            Token::Doctype(_) => {}
        }
    }
    for place in open {
        page.faults.push(format!("<{}> does not end", page.tags[place].name));
    }
    page
}
