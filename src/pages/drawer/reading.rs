//! What stands in each part of a drawer, read from its list: drills, taps, reamers, speeds.
//!
//! Each keeps its items in one order, the named sets first, so that the same things make the same
//! cookie. Leaves out what the names mean: the readers of the tables say that.

use super::pieces::pieces;
use super::sets::{DRILL_SETS, DrillSet, TAP_SETS, TapSet};
use holewright_core::asking::sentence;
use holewright_core::calc::machines::Machines;
use holewright_core::tables::drills::{self, Drill, SAME_SIZE, owned};
use holewright_core::tables::threads::read::{Hand, Read, read_with_hand};
use holewright_core::tables::threads::{self, Thread};
use holewright_core::units::read::{Bare, length, plain, shown};
use holewright_core::units::{Length, in_mm};

/// Drills, by size.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drills {
    items: Vec<String>,
    held: Vec<&'static Drill>,
}

/// Taps, in the order written.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Taps {
    items: Vec<String>,
    held: Vec<Read>,
}

/// Reamers, in the order written.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reamers {
    items: Vec<String>,
    held: Vec<Length>,
}

/// The machines and their speeds, as written and as read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Speeds {
    text: String,
    machines: Machines,
}

impl Drills {
    /// Reads a list of drills and named sets.
    ///
    /// # Errors
    /// In words: what was not understood.
    ///
    /// # Examples
    /// ```
    /// use holewright_pages::drawer::Drills;
    /// let drills = Drills::read("2.05mm, 1-60").unwrap();
    /// assert_eq!((drills.text().as_str(), drills.held().len()), ("1-60, 2.05mm", 61));
    /// ```
    pub fn read(typed: &str) -> Result<Self, String> {
        let items = in_order(pieces(typed), DRILL_SETS.iter().map(|set| set.item));
        if items.is_empty() {
            return Ok(Self::default());
        }
        let held = owned::owned(&items.join(", ")).map_err(|error| sentence(&error.to_string()))?;
        Ok(Self { items, held })
    }

    /// The drills, by size.
    #[must_use]
    pub fn held(&self) -> &[&'static Drill] {
        &self.held
    }

    /// Whether a drill is among them.
    #[must_use]
    pub fn has(&self, drill: &Drill) -> bool {
        self.held.iter().any(|held| held.series == drill.series && held.size == drill.size)
    }

    /// The list, as an address and the cookie write it.
    #[must_use]
    pub fn text(&self) -> String {
        self.items.join(", ")
    }

    /// The sets that are ticked.
    pub(super) fn sets(&self) -> impl Iterator<Item = &'static DrillSet> {
        DRILL_SETS.iter().filter(|set| has_item(&self.items, set.item))
    }

    /// What is typed beside the sets.
    pub(super) fn singles(&self) -> String {
        singles(&self.items, |item| DRILL_SETS.iter().any(|set| set.item == item))
    }

    /// In words: `1–60, 1–6 × 0.1 mm, 2.05mm`.
    pub(crate) fn words(&self) -> String {
        words(&self.items, |item| {
            DRILL_SETS.iter().find(|set| set.item == item).map(|set| set.words)
        })
    }
}

impl Taps {
    /// Reads a list of threads and named sets.
    ///
    /// # Errors
    /// In words: the first item that was not understood.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::tables::threads::{find, read::Hand};
    /// use holewright_pages::drawer::Taps;
    /// let taps = Taps::read("BA even 0-10, 1/4 x 40 ME, M3 LH").unwrap();
    /// assert!(taps.has(find("ba", "4").unwrap(), Hand::Right));
    /// assert!(!taps.has(find("metric", "m3").unwrap(), Hand::Right));
    /// ```
    pub fn read(typed: &str) -> Result<Self, String> {
        let items = in_order(pieces(typed), TAP_SETS.iter().map(|set| set.item));
        let mut held = Vec::new();
        for item in &items {
            match TAP_SETS.iter().find(|set| set.item == item) {
                Some(set) => held.extend(set.taps()),
                None => {
                    held.push(read_with_hand(item).map_err(|error| sentence(&error.to_string()))?)
                }
            }
        }
        Ok(Self { items, held })
    }

    /// The taps.
    #[must_use]
    pub fn held(&self) -> &[Read] {
        &self.held
    }

    /// Whether a tap for this thread and hand is among them.
    #[must_use]
    pub fn has(&self, thread: &Thread, hand: Hand) -> bool {
        let is_it = |held: &Read| {
            held.hand == hand
                && held.thread.system == thread.system
                && held.thread.size == thread.size
        };
        self.held.iter().any(is_it)
    }

    /// The list, as the cookie writes it.
    #[must_use]
    pub fn text(&self) -> String {
        self.items.join(", ")
    }

    /// The sets that are ticked.
    pub(super) fn sets(&self) -> impl Iterator<Item = &'static TapSet> {
        TAP_SETS.iter().filter(|set| has_item(&self.items, set.item))
    }

    /// What is typed beside the sets.
    pub(super) fn singles(&self) -> String {
        singles(&self.items, |item| TAP_SETS.iter().any(|set| set.item == item))
    }

    /// In words.
    pub(super) fn words(&self) -> String {
        words(&self.items, |item| TAP_SETS.iter().find(|set| set.item == item).map(|set| set.words))
    }
}

impl TapSet {
    /// Its taps, right hand.
    fn taps(&self) -> impl Iterator<Item = Read> {
        let find = |size: &&str| threads::find(self.system, size);
        self.sizes.iter().filter_map(find).map(|thread| Read { thread, hand: Hand::Right })
    }
}

impl Reamers {
    /// Reads a list of sizes: drills by name, or lengths; a bare number is millimetres.
    ///
    /// # Errors
    /// In words: the first item that was not understood.
    pub fn read(typed: &str) -> Result<Self, String> {
        let items = pieces(typed);
        let held = items.iter().map(|item| size(item)).collect::<Result<Vec<_>, _>>()?;
        Ok(Self { items, held })
    }

    /// Their sizes.
    #[must_use]
    pub fn held(&self) -> &[Length] {
        &self.held
    }

    /// Whether one of this size is among them.
    #[must_use]
    pub fn has(&self, size: Length) -> bool {
        self.held.iter().any(|held| in_mm(*held - size).abs() < in_mm(SAME_SIZE))
    }

    /// The list, as the cookie writes it.
    #[must_use]
    pub fn text(&self) -> String {
        self.items.join(", ")
    }

    /// In words.
    pub(super) fn words(&self) -> String {
        words(&self.items, |_| None)
    }
}

impl Speeds {
    /// Reads the speeds of a machine, `350, 500, 1000` or `200-2000`, or of several with their names, each
    /// on a line of its own or behind a semicolon: `lathe: 350, 500; bench drill: 600-2000`.
    ///
    /// # Errors
    /// In words: what was not understood.
    ///
    /// # Examples
    /// ```
    /// use holewright_pages::drawer::Speeds;
    /// let shed = Speeds::read("lathe: 350, 500\nbench drill: 600-2000").unwrap();
    /// assert_eq!(shed.text(), "lathe: 350, 500; bench drill: 600-2000");
    /// assert_eq!(shed.machines().each.len(), 2);
    /// assert_eq!(Speeds::read("350, 500").unwrap().text(), "350, 500");
    /// ```
    pub fn read(typed: &str) -> Result<Self, String> {
        let lines = typed.lines().map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "));
        let text = lines.filter(|line| !line.is_empty()).collect::<Vec<_>>().join("; ");
        let machines = Machines::read(&text).map_err(|error| sentence(&error.to_string()))?;
        // Commas alone are no speed.
        let text = if machines.is_empty() { String::new() } else { text };
        Ok(Self { text, machines })
    }

    /// The machines, in the order written.
    #[must_use]
    pub fn machines(&self) -> &Machines {
        &self.machines
    }

    /// The list, as an address and the cookie write it.
    #[must_use]
    pub fn text(&self) -> String {
        self.text.clone()
    }
}

fn size(item: &str) -> Result<Length, String> {
    if let Ok(drill) = drills::read::read(item) {
        return Ok(drill.diameter);
    }
    length(item, Bare::Mm)
        .map_err(|error| format!("“{}”: {}", shown(item), sentence(&error.to_string())))
}

/// The items with the named sets in front, in the order of their table and in its spelling.
fn in_order(items: Vec<String>, sets: impl Iterator<Item = &'static str>) -> Vec<String> {
    let mut rest: Vec<(String, String)> =
        items.into_iter().map(|item| (plain(&item), item)).collect();
    let mut ordered: Vec<String> = Vec::new();
    for set in sets {
        let spelling = plain(set);
        let before = rest.len();
        rest.retain(|(item, _)| *item != spelling);
        if rest.len() < before {
            ordered.push(set.to_owned());
        }
    }
    ordered.extend(rest.into_iter().map(|(_, item)| item));
    ordered
}

fn has_item(items: &[String], item: &str) -> bool {
    items.iter().any(|held| held == item)
}

fn singles(items: &[String], is_set: impl Fn(&str) -> bool) -> String {
    let singles: Vec<&str> =
        items.iter().map(String::as_str).filter(|item| !is_set(item)).collect();
    singles.join(", ")
}

/// The most items a line names: it must stay a line.
const NAMED: usize = 8;

fn words(items: &[String], named: impl Fn(&str) -> Option<&'static str>) -> String {
    let mut words: Vec<&str> =
        items.iter().take(NAMED).map(|item| named(item).unwrap_or(item)).collect();
    let more;
    if items.len() > NAMED {
        more = format!("{} more", items.len() - NAMED);
        words.push(&more);
    }
    words.join(", ")
}
