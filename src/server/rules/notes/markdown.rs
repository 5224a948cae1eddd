//! The text of a note as HTML: Markdown without raw HTML, images or deep nesting, the threads and
//! drills it names linked, and an allow-list last.
//!
//! Whatever the earlier steps let through, [`ammonia`] builds the HTML anew from the few tags allowed.

use std::collections::{HashMap, HashSet};
use std::sync::LazyLock;

use ammonia::{Builder, UrlRelative};
use pulldown_cmark::{
    CowStr, Event, HeadingLevel, LinkType, Options, Parser, Tag, TagEnd, TextMergeStream, html,
};

use super::fields::TEXT;
use super::figures::{self, Budget};
use super::seen::is_seen;

/// Lists, quotations and emphasis stand in each other so deep; deeper ones are flattened.
const DEEPEST: usize = 12;

/// What a note may hold: the names of HTML's elements.
const TAGS: [&str; 16] = [
    "a",
    "blockquote",
    "br",
    "code",
    "del",
    "em",
    "h3",
    "h4",
    "h5",
    "h6",
    "hr",
    "li",
    "ol",
    "p",
    "pre",
    "strong",
];

static CLEANER: LazyLock<Builder<'static>> = LazyLock::new(|| {
    let mut cleaner = Builder::empty();
    cleaner
        .tags(TAGS.into_iter().chain(["ul"]).collect())
        // Otherwise any of them may have a title, which a telephone never shows.
        .generic_attributes(HashSet::new())
        .tag_attributes(HashMap::from([
            ("a", HashSet::from(["href"])),
            ("ol", HashSet::from(["start"])),
        ]))
        .url_schemes(HashSet::from(["http", "https", "mailto"]))
        .url_relative(UrlRelative::PassThrough)
        .link_rel(Some("nofollow ugc noopener"));
    cleaner
});

/// The text as HTML, to stand under a heading of the second level.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::markdown::html;
/// assert_eq!(html("**Slow.**").trim(), "<p><strong>Slow.</strong></p>");
/// assert!(html("<script>alert(1)</script>").contains("&lt;script&gt;"));
/// assert!(html("a 4 BA tap").contains("href=\"/threads/ba/4\""));
/// ```
#[must_use]
pub fn html(text: &str) -> String {
    let mut written = String::new();
    html::push_html(&mut written, Linked::new(flat(cut(text))));
    CLEANER.clean(&written).to_string()
}

/// The words of the text alone, for finding and for a short extract.
#[must_use]
pub fn plain(text: &str) -> String {
    let mut words = String::new();
    for event in flat(cut(text)) {
        match event {
            Event::Text(text) | Event::Code(text) => words.push_str(&text),
            Event::SoftBreak | Event::HardBreak | Event::Rule => words.push(' '),
            Event::End(end) if !is_within_a_word(end) => {
                words.push(' ');
            }
            _ => {}
        }
    }
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Whether what ends there may end in the middle of a word.
const fn is_within_a_word(end: TagEnd) -> bool {
    matches!(end, TagEnd::Emphasis | TagEnd::Strong | TagEnd::Strikethrough | TagEnd::Link)
}

/// The first words, so many characters at most, with a mark where more follows.
#[must_use]
pub fn extract(text: &str, most: usize) -> String {
    let words = plain(text);
    if words.chars().count() <= most {
        return words;
    }
    let start: String = words.chars().take(most).collect();
    let whole = start.rsplit_once(' ').map_or(start.as_str(), |(whole, _)| whole);
    format!("{whole} …")
}

/// A form takes no longer text; nothing longer is looked at, whoever asks.
fn cut(text: &str) -> &str {
    text.char_indices().nth(TEXT.longest).map_or(text, |(end, _)| text.get(..end).unwrap_or(text))
}

/// The events of the text: HTML as plain text, images as their words, headings below the page's own,
/// nothing deeper than [`DEEPEST`].
fn flat(text: &str) -> impl Iterator<Item = Event<'_>> {
    let parser = Parser::new_ext(text, Options::ENABLE_STRIKETHROUGH);
    let mut depth = 0_usize;
    let events = parser.filter_map(move |event| match event {
        Event::Start(tag) => {
            depth += 1;
            (depth <= DEEPEST || is_a_line(&tag)).then_some(tag).and_then(kept).map(Event::Start)
        }
        Event::End(tag) => {
            let kept = depth <= DEEPEST || is_a_lines_end(tag);
            depth = depth.saturating_sub(1);
            kept.then_some(tag).and_then(kept_end).map(Event::End)
        }
        Event::Text(words) | Event::Html(words) | Event::InlineHtml(words) => {
            Some(Event::Text(seen(words)))
        }
        Event::Code(_) | Event::SoftBreak | Event::HardBreak | Event::Rule => Some(event),
        _ => None,
    });
    TextMergeStream::new(events)
}

/// The words without marks that a reader cannot see: the text is kept without them, but a character
/// reference such as `&#8238;` brings them back.
fn seen(words: CowStr<'_>) -> CowStr<'_> {
    let is_kept = |c: char| matches!(c, '\n' | '\t') || is_seen(c);
    if words.chars().all(is_kept) {
        return words;
    }
    words.chars().filter(|c| is_kept(*c)).collect::<String>().into()
}

/// Paragraphs hold nothing but words, so they may stand at any depth.
fn is_a_line(tag: &Tag<'_>) -> bool {
    matches!(tag, Tag::Paragraph)
}

fn is_a_lines_end(tag: TagEnd) -> bool {
    matches!(tag, TagEnd::Paragraph)
}

fn kept(tag: Tag<'_>) -> Option<Tag<'_>> {
    match tag {
        Tag::Heading { level, .. } => Some(Tag::Heading {
            level: below(level),
            id: None,
            classes: Vec::new(),
            attrs: Vec::new(),
        }),
        // HTML that stands by itself is shown as a paragraph of text.
        Tag::HtmlBlock => Some(Tag::Paragraph),
        Tag::Paragraph
        | Tag::BlockQuote(_)
        | Tag::CodeBlock(_)
        | Tag::List(_)
        | Tag::Item
        | Tag::Emphasis
        | Tag::Strong
        | Tag::Strikethrough
        | Tag::Link { .. } => Some(tag),
        _ => None,
    }
}

fn kept_end(tag: TagEnd) -> Option<TagEnd> {
    match tag {
        TagEnd::Heading(level) => Some(TagEnd::Heading(below(level))),
        TagEnd::HtmlBlock => Some(TagEnd::Paragraph),
        TagEnd::Paragraph
        | TagEnd::BlockQuote(_)
        | TagEnd::CodeBlock
        | TagEnd::List(_)
        | TagEnd::Item
        | TagEnd::Emphasis
        | TagEnd::Strong
        | TagEnd::Strikethrough
        | TagEnd::Link => Some(tag),
        _ => None,
    }
}

/// The page has the first two levels.
const fn below(level: HeadingLevel) -> HeadingLevel {
    match level {
        HeadingLevel::H1 => HeadingLevel::H3,
        HeadingLevel::H2 => HeadingLevel::H4,
        HeadingLevel::H3 => HeadingLevel::H5,
        _ => HeadingLevel::H6,
    }
}

/// The events with a link around each thread and drill that the words name, outside links and code.
struct Linked<'a, I> {
    events: I,
    /// What is to come before the next event.
    waiting: std::collections::VecDeque<Event<'a>>,
    /// How many links and code blocks stand around.
    closed: usize,
    budget: Budget,
}

impl<'a, I: Iterator<Item = Event<'a>>> Linked<'a, I> {
    fn new(events: I) -> Self {
        Self {
            events,
            waiting: std::collections::VecDeque::new(),
            closed: 0,
            budget: Budget::default(),
        }
    }

    fn link(&mut self, text: &CowStr<'a>) {
        let mut done = 0;
        for named in figures::find(text, &mut self.budget) {
            let link = Tag::Link {
                link_type: LinkType::Inline,
                dest_url: named.address.into(),
                title: CowStr::Borrowed(""),
                id: CowStr::Borrowed(""),
            };
            let before = text.get(done..named.place.start).unwrap_or_default().to_owned();
            let name = text.get(named.place.clone()).unwrap_or_default().to_owned();
            self.waiting.extend([
                Event::Text(before.into()),
                Event::Start(link),
                Event::Text(name.into()),
                Event::End(TagEnd::Link),
            ]);
            done = named.place.end;
        }
        self.waiting.push_back(Event::Text(text.get(done..).unwrap_or_default().to_owned().into()));
    }
}

impl<'a, I: Iterator<Item = Event<'a>>> Iterator for Linked<'a, I> {
    type Item = Event<'a>;

    fn next(&mut self) -> Option<Event<'a>> {
        if let Some(event) = self.waiting.pop_front() {
            return Some(event);
        }
        let event = self.events.next()?;
        match &event {
            Event::Start(Tag::Link { .. } | Tag::CodeBlock(_)) => self.closed += 1,
            Event::End(TagEnd::Link | TagEnd::CodeBlock) => {
                self.closed = self.closed.saturating_sub(1)
            }
            Event::Text(text) if self.closed == 0 => {
                self.link(text);
                return self.waiting.pop_front();
            }
            _ => {}
        }
        Some(event)
    }
}
