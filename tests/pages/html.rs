//! Reading a page as a list of tags: enough to check its structure, and no more.

/// A tag with its attributes.
#[derive(Debug, Clone)]
pub(crate) struct Tag {
    pub(crate) name: String,
    pub(crate) attributes: Vec<(String, String)>,
    pub(crate) closing: bool,
    pub(crate) closed: bool,
}

impl Tag {
    pub(crate) fn attribute(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(held, _)| held == name).map(|(_, value)| value.as_str())
    }
}

/// Elements that have no end tag.
const VOID: [&str; 5] = ["meta", "link", "input", "br", "hr"];

/// The tags of a page, in order.
pub(crate) fn tags(page: &str) -> Vec<Tag> {
    let mut tags = Vec::new();
    let mut rest = page;
    while let Some(start) = rest.find('<') {
        rest = &rest[start + 1..];
        let end = rest.find('>').expect("a tag that ends");
        let inside = &rest[..end];
        rest = &rest[end + 1..];
        if !inside.starts_with('!') {
            tags.push(tag(inside));
        }
    }
    tags
}

fn tag(inside: &str) -> Tag {
    let (closing, inside) = inside.strip_prefix('/').map_or((false, inside), |rest| (true, rest));
    let (closed, inside) = inside.strip_suffix('/').map_or((false, inside), |rest| (true, rest));
    let name_end = inside.find(char::is_whitespace).unwrap_or(inside.len());
    let name = inside[..name_end].to_owned();
    let mut attributes = Vec::new();
    let mut rest = inside[name_end..].trim_start();
    while !rest.is_empty() {
        let end = rest.find(|c: char| c == '=' || c.is_whitespace()).unwrap_or(rest.len());
        let attribute = rest[..end].to_owned();
        rest = &rest[end..];
        let value = match rest.strip_prefix("=\"") {
            Some(quoted) => {
                let close = quoted.find('"').expect("a quoted value that ends");
                rest = &quoted[close + 1..];
                quoted[..close].to_owned()
            }
            None => {
                assert!(!rest.starts_with('='), "a value without quotes in <{inside}>");
                String::new()
            }
        };
        attributes.push((attribute, value));
        rest = rest.trim_start();
    }
    let closed = closed || VOID.contains(&name.as_str());
    Tag { name, attributes, closing, closed }
}

/// What the first element of a name holds, tags and all.
pub(crate) fn inside<'a>(page: &'a str, name: &str) -> &'a str {
    let open = page.find(&format!("<{name}")).unwrap_or_else(|| panic!("no <{name}>"));
    let start = open + page[open..].find('>').unwrap() + 1;
    let end = start + page[start..].find(&format!("</{name}>")).unwrap();
    &page[start..end]
}
