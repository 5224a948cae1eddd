//! Lettering: how much room words take, and how labels keep clear of each other.

use crate::drawing::frame::{FONT, LINE};

/// Space added to a label of several lines.
const APART: f64 = 4.0;
/// How much wider heavy lettering stands.
const HEAVY: f64 = 1.12;

/// About how wide words stand at the size of the sheet's lettering.
///
/// The reader's font is not known, so each letter is given its width in a wide sans-serif.
pub(super) fn width(words: &str) -> f64 {
    words.chars().map(letter).sum::<f64>() * FONT
}

fn letter(letter: char) -> f64 {
    match letter {
        'm' | 'M' | 'W' | '½' | '%' | '⌀' | '×' => 1.0,
        'w' | 'C' | 'D' | 'G' | 'H' | 'N' | 'O' | 'Q' | 'U' => 0.83,
        'i' | 'j' | 'l' | 'I' | ' ' | '.' | ',' | ':' | ';' | '\'' => 0.34,
        'f' | 't' | 'r' | '/' | '-' | '(' | ')' => 0.43,
        '0'..='9' | 'a'..='z' => 0.65,
        _ => 0.72,
    }
}

/// One line of a label.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Line {
    /// The name of the thread, in heavy lettering.
    Name(String),
    /// Anything else.
    Words(String),
}

impl Line {
    /// About how wide it stands.
    pub(super) fn width(&self) -> f64 {
        match self {
            Self::Name(words) => width(words) * HEAVY,
            Self::Words(words) => width(words),
        }
    }
}

/// A label of one or more lines that wants to stand level with something.
#[derive(Clone, Debug)]
pub(super) struct Label {
    /// The lines, top first.
    pub(super) lines: Vec<Line>,
    /// Where its middle would like to be.
    pub(super) wanted: f64,
}

impl Label {
    /// Its height, with the space that keeps its lines together and the next label's apart.
    pub(super) fn height(&self) -> f64 {
        let lines: f64 = self.lines.iter().map(|_| LINE).sum();
        if self.lines.len() > 1 { lines + APART } else { lines }
    }
}

/// From the line that leads to a label to its words.
pub(super) const BEFORE: f64 = 4.0;
/// A label this near its line is led to straight: a line bent by less looks like a mistake.
const STRAIGHT: f64 = 2.5;

/// Where the line from a level ends beside a label whose middle is given.
pub(super) fn lead(level: f64, middle: f64) -> f64 {
    if (middle - level).abs() < STRAIGHT { level } else { middle }
}

/// Labels that touch, each hanging on the one above.
struct Stack {
    top: f64,
    height: f64,
    labels: usize,
    /// Sum over the labels of where the stack's top would suit each best.
    wished: f64,
}

/// Tops of labels, given in order from the top, so that none overlaps and each is as near as may
/// be to where it wants to stand, none above `least`.
pub(super) fn spread<'label>(
    labels: impl Iterator<Item = &'label Label> + Clone,
    least: f64,
) -> Vec<f64> {
    let mut stacks: Vec<Stack> = Vec::new();
    for label in labels.clone() {
        let wish = label.wanted - label.height() / 2.0;
        let mut stack =
            Stack { top: wish.max(least), height: label.height(), labels: 1, wished: wish };
        while let Some(above) = stacks.pop_if(|above| above.top + above.height > stack.top) {
            let count = above.labels + stack.labels;
            // Each label of the lower stack would have the joined stack start higher by the upper's height.
            let wished = above.wished + stack.wished - repeated(above.height, stack.labels);
            stack = Stack {
                top: (wished / repeated(1.0, count)).max(least),
                height: above.height + stack.height,
                labels: count,
                wished,
            };
        }
        stacks.push(stack);
    }
    let mut tops = Vec::new();
    let mut labels = labels;
    for stack in stacks {
        let mut top = stack.top;
        for label in labels.by_ref().take(stack.labels) {
            tops.push(top);
            top += label.height();
        }
    }
    tops
}

fn repeated(value: f64, times: usize) -> f64 {
    std::iter::repeat_n(value, times).sum()
}
