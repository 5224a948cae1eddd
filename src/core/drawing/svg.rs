//! A small SVG writer: elements, attributes and paths in, escaped XML out.
//!
//! Callers never write markup by hand. Leaves out what is drawn, and every attribute's meaning.

use std::fmt::{self, Write};

use crate::units::print;

/// A place on the sheet, in the drawing's own units, y downwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// From the left edge.
    pub x: f64,
    /// From the top edge.
    pub y: f64,
}

/// The place `x` across and `y` down.
#[must_use]
pub const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

/// A number as short as it can be printed to two decimals, and the same in every build.
///
/// A number that is no number prints as 0, so the sheet stays valid XML and SVG.
///
/// # Examples
/// ```
/// use holewright_core::drawing::svg::number;
/// assert_eq!(number(12.5), "12.5");
/// assert_eq!(number(-0.001), "0");
/// assert_eq!(number(0.254), ".25");
/// assert_eq!(number(f64::NAN), "0");
/// ```
#[must_use]
pub fn number(value: f64) -> String {
    let mut printed = String::new();
    push_number(&mut printed, value);
    printed
}

/// No sheet is this wide; the limit keeps any number within an integer.
const WIDEST: f64 = 1e9;

/// Prints a number in whole hundredths: a drawing has hundreds of them, and integers print fastest.
fn push_number(out: &mut String, value: f64) {
    let value = if value.is_finite() { value.clamp(-WIDEST, WIDEST) } else { 0.0 };
    #[expect(clippy::cast_possible_truncation, reason = "whole and clamped to the widest sheet")]
    let hundredths = print::round(value * 100.0, 0) as i64;
    let (whole, part) = (hundredths.abs() / 100, hundredths.abs() % 100);
    if hundredths < 0 {
        out.push('-');
    }
    if whole != 0 || part == 0 {
        push_integer(out, whole);
    }
    if part != 0 {
        out.push('.');
        if part < 10 {
            out.push('0');
        }
        push_integer(out, if part % 10 == 0 { part / 10 } else { part });
    }
}

/// The digits of a number that is not below zero.
fn push_integer(out: &mut String, value: i64) {
    if value >= 10 {
        push_integer(out, value / 10);
    }
    out.extend(u32::try_from(value % 10).ok().and_then(|digit| char::from_digit(digit, 10)));
}

/// One element with its attributes and what stands inside it.
///
/// # Examples
/// ```
/// use holewright_core::drawing::svg::Element;
/// let text = Element::new("text").with("x", 1.5).text("1/4 < 6 & \"over\"");
/// assert_eq!(text.to_string(), "<text x=\"1.5\">1/4 &lt; 6 &amp; &quot;over&quot;</text>");
/// ```
#[derive(Clone, Debug)]
pub struct Element {
    name: &'static str,
    attributes: Vec<(&'static str, String)>,
    inside: Vec<Inside>,
}

#[derive(Clone, Debug)]
enum Inside {
    Element(Element),
    Text(String),
}

impl Element {
    /// An empty element.
    #[must_use]
    pub const fn new(name: &'static str) -> Self {
        Self { name, attributes: Vec::new(), inside: Vec::new() }
    }

    /// The same with one more attribute.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        self.attributes.push((name, value.into().0));
        self
    }

    /// The same with one more element inside.
    #[must_use]
    pub fn child(mut self, child: Self) -> Self {
        self.inside.push(Inside::Element(child));
        self
    }

    /// The same with more elements inside.
    #[must_use]
    pub fn children(mut self, children: impl IntoIterator<Item = Self>) -> Self {
        self.inside.extend(children.into_iter().map(Inside::Element));
        self
    }

    /// The same with words inside.
    #[must_use]
    pub fn text(mut self, words: impl Into<String>) -> Self {
        self.inside.push(Inside::Text(words.into()));
        self
    }
}

impl fmt::Display for Element {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_char('<')?;
        out.write_str(self.name)?;
        for (name, value) in &self.attributes {
            out.write_char(' ')?;
            out.write_str(name)?;
            out.write_str("=\"")?;
            Escaped(value).fmt(out)?;
            out.write_char('"')?;
        }
        if self.inside.is_empty() {
            return out.write_str("/>");
        }
        out.write_char('>')?;
        for inside in &self.inside {
            match inside {
                Inside::Element(element) => element.fmt(out)?,
                Inside::Text(words) => Escaped(words).fmt(out)?,
            }
        }
        out.write_str("</")?;
        out.write_str(self.name)?;
        out.write_char('>')
    }
}

/// Text with the characters XML reserves escaped, and those it forbids left out.
struct Escaped<'text>(&'text str);

impl fmt::Display for Escaped<'_> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let plain = |byte: u8| byte >= b' ' && !matches!(byte, b'&' | b'<' | b'>' | b'"' | 0x7f..);
        if self.0.bytes().all(plain) {
            return out.write_str(self.0);
        }
        for character in self.0.chars() {
            match character {
                '&' => out.write_str("&amp;")?,
                '<' => out.write_str("&lt;")?,
                '>' => out.write_str("&gt;")?,
                '"' => out.write_str("&quot;")?,
                // XML 1.0 allows no other control characters, nor these two, even escaped.
                '\t' | '\n' => out.write_char(character)?,
                '\u{fffe}' | '\u{ffff}' => {}
                _ if character.is_control() => {}
                _ => out.write_char(character)?,
            }
        }
        Ok(())
    }
}

/// The value of an attribute: a word, a number, or a path.
pub struct Value(String);

impl From<&str> for Value {
    fn from(word: &str) -> Self {
        Self(word.to_owned())
    }
}

impl From<String> for Value {
    fn from(words: String) -> Self {
        Self(words)
    }
}

impl From<f64> for Value {
    fn from(value: f64) -> Self {
        Self(number(value))
    }
}

impl From<Path> for Value {
    fn from(path: Path) -> Self {
        Self(path.0)
    }
}

/// The data of a `path` element, in absolute coordinates.
#[derive(Clone, Debug, Default)]
pub struct Path(String);

impl Path {
    /// True while nothing is drawn.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Starts a new line.
    pub fn start(&mut self, point: Point) {
        self.command('M', point);
    }

    /// A straight line onwards.
    pub fn line_to(&mut self, point: Point) {
        self.command('L', point);
    }

    /// A circular arc onwards, turning the given way as seen on the sheet.
    pub fn arc_to(&mut self, radius: f64, turn: Turn, point: Point) {
        self.0.push('A');
        self.pair(at(radius, radius));
        self.0.push_str(match turn {
            Turn::Clockwise => " 0 0 1 ",
            Turn::Anticlockwise => " 0 0 0 ",
        });
        self.pair(point);
    }

    /// Back to where the line began.
    pub fn close(&mut self) {
        self.0.push('Z');
    }

    /// A line from one point to another.
    pub fn segment(&mut self, from: Point, to: Point) {
        self.start(from);
        self.line_to(to);
    }

    /// A line through points in turn.
    pub fn polyline(&mut self, points: impl IntoIterator<Item = Point>) {
        for (index, point) in points.into_iter().enumerate() {
            if index == 0 { self.start(point) } else { self.line_to(point) }
        }
    }

    fn command(&mut self, letter: char, point: Point) {
        self.0.push(letter);
        self.pair(point);
    }

    fn pair(&mut self, point: Point) {
        push_number(&mut self.0, point.x);
        self.0.push(' ');
        push_number(&mut self.0, point.y);
    }
}

/// Which way an arc turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// With the clock.
    Clockwise,
    /// Against the clock.
    Anticlockwise,
}
