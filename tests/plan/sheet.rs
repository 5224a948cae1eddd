//! Reads a drawing back from its SVG: lines, lettering and the room they take.

#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a drawing that cannot be read ends its test"
)]

use std::collections::HashSet;

use roxmltree::{Document, Node};

/// A place on the sheet.
pub(crate) type Point = (f64, f64);

/// A straight line of the drawing and the class it was drawn under.
#[derive(Clone, Debug)]
pub(crate) struct Line {
    pub(crate) class: String,
    pub(crate) from: Point,
    pub(crate) to: Point,
}

/// Lettering and the box it fills in a wide sans-serif.
#[derive(Clone, Debug)]
pub(crate) struct Text {
    pub(crate) class: String,
    pub(crate) words: String,
    pub(crate) left: f64,
    pub(crate) right: f64,
    pub(crate) top: f64,
    pub(crate) bottom: f64,
}

/// A drawing as read back.
pub(crate) struct Sheet {
    pub(crate) width: f64,
    pub(crate) height: f64,
    pub(crate) description: String,
    pub(crate) lines: Vec<Line>,
    pub(crate) texts: Vec<Text>,
    /// Radii of arcs, under the class of their path.
    pub(crate) arcs: Vec<(String, f64)>,
}

/// Reads a drawing, and checks what must hold of every one.
#[track_caller]
pub(crate) fn read(svg: &str, prefix: &str) -> Sheet {
    assert!(!svg.contains("NaN") && !svg.contains("inf"), "a number is no number: {svg}");
    let document = Document::parse(svg).expect("well-formed XML");
    let root = document.root_element();
    assert_eq!(root.tag_name().name(), "svg");
    assert_eq!(root.tag_name().namespace(), Some("http://www.w3.org/2000/svg"));
    assert_eq!(root.attribute("role"), Some("img"));
    let named: Vec<_> = root.children().take(2).map(|node| node.tag_name().name()).collect();
    assert_eq!(named, ["title", "desc"], "named first");
    let expected = format!("{prefix}-title {prefix}-desc");
    assert_eq!(root.attribute("aria-labelledby"), Some(expected.as_str()));
    let mut ids = HashSet::new();
    for node in document.descendants().filter(Node::is_element) {
        assert_ne!(node.tag_name().name(), "style");
        assert_eq!(node.attribute("style"), None, "presentation attributes alone");
        if let Some(id) = node.attribute("id") {
            assert!(id.starts_with(prefix) && ids.insert(id.to_owned()), "id {id}");
        }
    }
    let view = numbers(root.attribute("viewBox").expect("a viewBox"));
    let mut sheet = Sheet {
        width: view[2],
        height: view[3],
        description: words(root.children().nth(1).expect("desc")),
        lines: Vec::new(),
        texts: Vec::new(),
        arcs: Vec::new(),
    };
    for node in document.descendants().filter(Node::is_element) {
        match node.tag_name().name() {
            "path" => path(&mut sheet, node),
            "text" => sheet.texts.push(text(node)),
            _ => {}
        }
    }
    sheet
}

/// Checks that nothing leaves the sheet, no words meet, and no line runs through words.
#[track_caller]
pub(crate) fn check_clear(sheet: &Sheet) {
    for text in &sheet.texts {
        assert!(
            text.left >= 0.0 && text.right <= sheet.width && text.top >= 0.0,
            "off the sheet: {text:?}"
        );
        assert!(text.bottom <= sheet.height, "below the sheet: {text:?} of {}", sheet.height);
    }
    for line in &sheet.lines {
        for (x, y) in [line.from, line.to] {
            let inside = (0.0..=sheet.width).contains(&x) && (0.0..=sheet.height).contains(&y);
            assert!(inside, "off the sheet: {line:?}");
        }
    }
    for (index, a) in sheet.texts.iter().enumerate() {
        for b in &sheet.texts[index + 1..] {
            let meet = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
            assert!(!meet, "words meet: {a:?} and {b:?}");
        }
        for line in &sheet.lines {
            assert!(!crosses(line, a), "{line:?} runs through {a:?}");
        }
    }
}

impl Sheet {
    /// The lines of one class.
    pub(crate) fn of<'a>(&'a self, class: &'a str) -> impl Iterator<Item = &'a Line> {
        self.lines.iter().filter(move |line| line.class == class)
    }

    /// The words drawn under a class.
    pub(crate) fn words(&self, class: &str) -> Vec<&str> {
        let of_class = self.texts.iter().filter(|text| text.class == class);
        of_class.map(|text| text.words.as_str()).collect()
    }
}

impl Line {
    /// True of a line that stands upright.
    pub(crate) fn upright(&self) -> bool {
        (self.from.0 - self.to.0).abs() < 0.02 && (self.from.1 - self.to.1).abs() > 0.02
    }

    /// True of a line that lies level.
    pub(crate) fn level(&self) -> bool {
        (self.from.1 - self.to.1).abs() < 0.02 && (self.from.0 - self.to.0).abs() > 0.02
    }
}

fn words(node: Node<'_, '_>) -> String {
    node.text().unwrap_or_default().to_owned()
}

fn class(node: Node<'_, '_>) -> String {
    let own = node.attribute("class");
    let class = own.or_else(|| node.parent()?.attribute("class")).unwrap_or_default();
    class.split(' ').next().unwrap_or_default().to_owned()
}

fn number(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).and_then(|value| value.parse().ok()).expect(name)
}

fn numbers(list: &str) -> Vec<f64> {
    list.split_whitespace().map(|number| number.parse().expect(list)).collect()
}

fn path(sheet: &mut Sheet, node: Node<'_, '_>) {
    let class = class(node);
    let data = node.attribute("d").expect("data");
    let (mut start, mut last) = ((0.0, 0.0), (0.0, 0.0));
    let mut rest = data;
    while let Some(command) = rest.chars().next() {
        let end = rest[1..].find(|c: char| c.is_ascii_alphabetic()).map_or(rest.len(), |at| at + 1);
        let values = numbers(&rest[1..end]);
        rest = &rest[end..];
        let to = match (command, values.as_slice()) {
            ('M' | 'L', [x, y]) | ('A', [_, _, _, _, _, x, y]) => (*x, *y),
            ('Z', []) => start,
            other => panic!("what is {other:?} in {data}"),
        };
        match command {
            'M' => start = to,
            'A' => sheet.arcs.push((class.clone(), values[0])),
            _ => {}
        }
        if command != 'M' {
            sheet.lines.push(Line { class: class.clone(), from: last, to });
        }
        last = to;
    }
}

fn text(node: Node<'_, '_>) -> Text {
    let heavy = node.attribute("font-weight") == Some("bold");
    let words = words(node);
    // Every drawing letters at 12 units; the root says so once.
    let size = number(node.document().root_element(), "font-size");
    assert!(size >= 11.0, "readable at 320 px");
    let width = words.chars().map(advance).sum::<f64>() * size * if heavy { 1.13 } else { 1.0 };
    let (x, y) = (number(node, "x"), number(node, "y"));
    Text {
        class: class(node),
        words,
        left: x,
        right: x + width,
        top: y - size * 0.76,
        bottom: y + size * 0.24,
    }
}

/// Advance widths of DejaVu Sans, the widest common sans-serif, in ems.
fn advance(letter: char) -> f64 {
    match letter {
        ' ' | '.' | ',' => 0.32,
        'i' | 'j' | 'l' | 'I' | 'J' => 0.295,
        'f' | '/' | '-' | ':' => 0.361,
        't' | 'r' | '(' | ')' => 0.411,
        'c' | 's' | 'z' => 0.55,
        'k' | 'v' | 'x' | 'y' => 0.592,
        'm' => 0.974,
        'w' => 0.818,
        '⌀' | '×' => 0.838,
        '½' => 0.969,
        'M' => 0.863,
        'W' => 0.989,
        'G' | 'N' | 'O' | 'Q' | 'D' | 'H' | 'U' => 0.787,
        'A'..='Z' => 0.698,
        _ => 0.636,
    }
}

/// True where a line enters the box of words.
fn crosses(line: &Line, text: &Text) -> bool {
    let (dx, dy) = (line.to.0 - line.from.0, line.to.1 - line.from.1);
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    let sides = [
        (-dx, line.from.0 - text.left),
        (dx, text.right - line.from.0),
        (-dy, line.from.1 - text.top),
        (dy, text.bottom - line.from.1),
    ];
    for (towards, room) in sides {
        if towards.abs() < 1e-9 {
            if room < 0.0 {
                return false;
            }
        } else if towards < 0.0 {
            enter = enter.max(room / towards);
        } else {
            leave = leave.min(room / towards);
        }
    }
    enter < leave
}
