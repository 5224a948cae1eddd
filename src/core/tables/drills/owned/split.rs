//! Where one item of a list of drills ends and the next begins.
//!
//! A comma parts two items, `46, 48`, or marks decimals, `2,05 mm`. Only a comma with a figure
//! hard on either side can mark decimals; such commas are tried both ways.

use std::ops::Range;

use super::{Fault, ReadError};

/// The most parts one item can have: `1,0-6,0x0,1mm` is four.
const MOST_PARTS: usize = 4;

/// What one item reads as, or the item with what is wrong.
type Item<'a, T> = Result<T, (&'a str, Fault)>;

/// The pieces of a list between semicolons, line ends and commas that can only part items.
pub(super) fn segments(list: &str) -> impl Iterator<Item = &str> {
    list.split([';', '；', '\n', '\r'])
        .flat_map(|line| {
            parts(line, |before, behind| !is_tight(before, behind))
                .into_iter()
                .filter_map(|part| line.get(part))
        })
        .map(str::trim)
        .filter(|segment| !segment.is_empty())
}

/// The items of a segment whose commas all have a figure hard on either side.
///
/// The reading with the fewest bad items is taken; if two readings have none, the segment is unclear.
pub(super) fn items<'a, T>(
    segment: &'a str,
    read: impl Fn(&str) -> Result<T, Fault>,
) -> Vec<Item<'a, T>> {
    let parts = parts(segment, is_tight);
    let mut groupings = vec![Grouping { good: 1, ..Grouping::default() }];
    for done in 1..=parts.len() {
        let mut best: Option<Grouping> = None;
        let mut good: u32 = 0;
        for taken in 1..=MOST_PARTS.min(done) {
            let Some(before) = groupings.get(done - taken) else { continue };
            let result = read(spanned(segment, &parts, done, taken));
            match &result {
                Ok(_) => good = good.saturating_add(before.good),
                Err(fault) if taken > 1 && !is_drill_like(fault) => continue,
                Err(_) => {}
            }
            let bad = before.bad + u32::from(result.is_err());
            let grouping = Grouping { bad, items: before.items + 1, good: 0, taken };
            if best.is_none_or(|best| (grouping.bad, grouping.items) < (best.bad, best.items)) {
                best = Some(grouping);
            }
        }
        groupings.push(Grouping { good, ..best.unwrap_or_default() });
    }
    if groupings.last().is_some_and(|grouping| grouping.good > 1) {
        return vec![Err((segment, Fault::CommaUnclear))];
    }
    let mut items = Vec::new();
    let mut done = parts.len();
    while let Some(grouping) = groupings.get(done).filter(|grouping| grouping.taken > 0) {
        let text = spanned(segment, &parts, done, grouping.taken);
        items.push(read(text).map_err(|fault| (text, fault)));
        done -= grouping.taken;
    }
    items.reverse();
    items
}

/// The best way to make items of the first parts.
#[derive(Clone, Copy, Default)]
struct Grouping {
    /// How many of its items are not understood.
    bad: u32,
    /// How many items it has.
    items: u32,
    /// How many groupings there are in which every item is understood.
    good: u32,
    /// How many parts its last item takes.
    taken: usize,
}

/// A size well written, whether or not one drill has it: so the comma may well mark decimals.
fn is_drill_like(fault: &Fault) -> bool {
    match fault {
        Fault::Drill(ReadError::Unknown { nearest, .. }) => !nearest.is_empty(),
        Fault::Drill(ReadError::Ambiguous { .. }) => true,
        _ => false,
    }
}

/// The text of the last so many of the parts done, with the commas between them.
fn spanned<'a>(segment: &'a str, parts: &[Range<usize>], done: usize, taken: usize) -> &'a str {
    let span = match parts.get(done - taken..done) {
        Some([first, .., last]) => first.start..last.end,
        Some([only]) => only.clone(),
        _ => 0..0,
    };
    segment.get(span).unwrap_or_default()
}

/// Where a text lies between the commas that cut it, judged by what is before and behind.
fn parts(text: &str, cuts: impl Fn(&str, &str) -> bool) -> Vec<Range<usize>> {
    let mut parts = Vec::new();
    let mut start = 0;
    for (place, comma) in text.match_indices([',', '，']) {
        let end = place + comma.len();
        let before = text.get(..place).unwrap_or_default();
        let behind = text.get(end..).unwrap_or_default();
        if cuts(before, behind) {
            parts.push(start..place);
            start = end;
        }
    }
    parts.push(start..text.len());
    parts
}

fn is_tight(before: &str, behind: &str) -> bool {
    before.ends_with(|last: char| last.is_ascii_digit())
        && behind.starts_with(|next: char| next.is_ascii_digit())
}
