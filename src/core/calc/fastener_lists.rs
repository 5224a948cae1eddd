//! The tables of hexagons, heads and washers, each as the pages list it. BA hexagons are worked out, the
//! others are rows of [`crate::tables::fasteners`].

use crate::calc::fastener::{HexagonOf, hexagon, nominal_name};
use crate::tables::fasteners::{self, Head, HeadKind, Hexagon, HexagonPattern, Washer};
use crate::tables::source::Source;
use crate::tables::threads::{Basic, HeadFamily, Thread, system};
use crate::units::{Length, Printed, in_mm};

/// One table.
pub struct FastenerList {
    /// Its part of the address, a promise: `hexagons-ba`.
    pub slug: &'static str,
    /// What it is called: `BA hexagons`.
    pub title: &'static str,
    /// What its figures are, in a sentence.
    pub says: &'static str,
    of: Of,
}

/// What a table lists.
enum Of {
    Ba,
    Hexagons(HexagonPattern, &'static str),
    Heads(HeadKind, HeadFamily, &'static str),
    Washers(HeadFamily, &'static str),
}

/// One size of a table; a length that it has not is none.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FastenerSizes {
    /// Across flats.
    pub across_flats: Option<Length>,
    /// Across corners, as printed.
    pub across_corners: Option<Length>,
    /// Across flats of the nut, where it is not the bolt's.
    pub nut_across_flats: Option<Length>,
    /// Diameter of a head that is no hexagon.
    pub head_diameter: Option<Length>,
    /// Height of the head.
    pub head_height: Option<Length>,
    /// Thickness of the plain nut.
    pub nut_thickness: Option<Length>,
    /// The key of a socket.
    pub key: Option<Length>,
    /// Hole of a washer.
    pub inside: Option<Length>,
    /// Outside diameter of a washer.
    pub outside: Option<Length>,
    /// Thickness of a washer.
    pub thickness: Option<Length>,
}

/// One row of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct FastenerRow {
    /// The screw's size as it is named: `M6`, `1/4 in`, `5 BA`.
    pub size: String,
    /// A thread of that size, whose card has the rest.
    pub thread: Option<&'static Thread>,
    /// Its figures.
    pub sizes: FastenerSizes,
    /// Where they were read.
    pub source: Source,
}

/// A figure of a row.
type Figure = fn(&FastenerSizes) -> Option<Length>;

/// Every figure a row may have: its name for programs, its heading.
pub const FIGURES: [(&str, &str, Figure); 10] = [
    ("across_flats", "Across flats", |row| row.across_flats),
    ("nut_across_flats", "Across flats of the nut", |row| row.nut_across_flats),
    ("across_corners", "Across corners", |row| row.across_corners),
    ("head_diameter", "Head", |row| row.head_diameter),
    ("head_height", "Height of the head", |row| row.head_height),
    ("nut_thickness", "Nut", |row| row.nut_thickness),
    ("key", "Key", |row| row.key),
    ("inside", "Hole", |row| row.inside),
    ("outside", "Outside", |row| row.outside),
    ("thickness", "Thickness", |row| row.thickness),
];

const fn list(slug: &'static str, title: &'static str, says: &'static str, of: Of) -> FastenerList {
    FastenerList { slug, title, says, of }
}

#[rustfmt::skip]
static LISTS: [FastenerList; 14] = [
    list("hexagons-ba", "BA hexagons", "Across flats of BA bolts and nuts, 1¾ times the major diameter; no heights are held.", Of::Ba),
    list("hexagons-bs-1083", "BSW and BSF hexagons, BS 1083", "Hexagons of BS 1083:1965, the same for BSW and BSF: all figures are the largest.", Of::Hexagons(HexagonPattern::Bs1083, "bsf")),
    list("hexagons-old-whitworth", "Older Whitworth hexagons", "The larger hexagons that BS 1083 did away with, and the marks of their spanners.", Of::Hexagons(HexagonPattern::OldWhitworth, "bsw")),
    list("hexagons-iso", "Metric hexagons, ISO", "Hexagons of ISO 4014 bolts and ISO 4032 nuts: across flats and the nut are the largest, across corners is the least, the head is basic.", Of::Hexagons(HexagonPattern::Iso, "metric")),
    list("hexagons-old-metric", "Older metric hexagons", "The sizes at which the older DIN hexagon is not the one of ISO.", Of::Hexagons(HexagonPattern::OldMetric, "metric")),
    list("hexagons-unified", "Unified hexagons", "Hexagons of ASME B18.2.1 bolts and B18.2.2 nuts, basic sizes.", Of::Hexagons(HexagonPattern::UnifiedBolt, "unc")),
    list("hexagons-unified-small", "Nuts of numbered Unified screws", "Across flats of the nuts for screws called by number.", Of::Hexagons(HexagonPattern::UnifiedSmall, "unc")),
    list("heads-countersunk-metric", "Metric countersunk heads", "Heads of 90°: the diameter where the cone would end in a sharp edge, and the height.", Of::Heads(HeadKind::Countersunk, HeadFamily::Metric, "metric")),
    list("heads-countersunk-unified", "Unified countersunk heads", "Heads of 82°: the diameter and the height in print. A cone as deep as that height is wider at its mouth: deepen until the screw in hand lies flush.", Of::Heads(HeadKind::Countersunk, HeadFamily::Unified, "unc")),
    list("heads-cheese-metric", "Metric cheese heads", "Cheese heads of ISO 1207, the largest.", Of::Heads(HeadKind::Cheese, HeadFamily::Metric, "metric")),
    list("heads-cap-metric", "Metric cap heads", "Heads with a hexagon socket, ISO 4762, the largest, and their keys.", Of::Heads(HeadKind::Cap, HeadFamily::Metric, "metric")),
    list("heads-cap-unified", "Unified cap heads", "Heads with a hexagon socket, ASME B18.3, the largest; no keys are held.", Of::Heads(HeadKind::Cap, HeadFamily::Unified, "unc")),
    list("washers-metric", "Metric washers", "Plain washers of the normal series, ISO 7089.", Of::Washers(HeadFamily::Metric, "metric")),
    list("washers-unified", "Unified washers", "Plain washers of type B, regular, ASME B18.21.1.", Of::Washers(HeadFamily::Unified, "unc")),
];

/// Every table, in the order of the page.
#[must_use]
pub fn lists() -> &'static [FastenerList] {
    &LISTS
}

/// The table at an address.
#[must_use]
pub fn find_list(slug: &str) -> Option<&'static FastenerList> {
    LISTS.iter().find(|list| list.slug == slug)
}

impl FastenerList {
    /// Its page: `/fasteners/hexagons-ba`.
    #[must_use]
    pub fn path(&self) -> String {
        format!("/fasteners/{}", self.slug)
    }

    /// Its rows, as their table has them.
    ///
    /// # Examples
    /// ISO 4032 has 10 mm across flats for M6.
    /// ```
    /// use holewright_core::{calc::fastener_lists::find_list, units::mm};
    /// let rows = find_list("hexagons-iso").unwrap().rows();
    /// let six = rows.iter().find(|row| row.size == "M6").unwrap();
    /// assert_eq!(six.sizes.across_flats, Some(mm(10.0)));
    /// assert_eq!(six.thread.map(|thread| thread.designation), Some("M6"));
    /// ```
    #[must_use]
    pub fn rows(&self) -> Vec<FastenerRow> {
        match &self.of {
            Of::Ba => threads_of("ba").iter().filter_map(of_ba).collect(),
            Of::Hexagons(pattern, slug) => {
                let rows = fasteners::hexagons().filter(|row| row.pattern == *pattern);
                rows.map(|row| of_hexagon(row, slug)).collect()
            }
            Of::Heads(kind, family, slug) => {
                let is_of = |row: &&Head| row.kind == *kind && row.family == *family;
                fasteners::heads().filter(is_of).map(|row| of_head(row, slug)).collect()
            }
            Of::Washers(family, slug) => {
                let rows = fasteners::washers().filter(|row| row.family == *family);
                rows.map(|row| of_washer(row, slug)).collect()
            }
        }
    }
}

fn threads_of(slug: &str) -> &'static [Thread] {
    system(slug).map_or(&[], |system| system.threads)
}

/// A thread of the system with this nominal diameter.
fn thread_of(nominal: Printed, slug: &str) -> Option<&'static Thread> {
    let is_it = |thread: &&Thread| match thread.basic {
        Basic::Major(major) => in_mm(major.length() - nominal.length()).abs() < 1e-6,
        Basic::EffectiveAtGauge(_) => false,
    };
    threads_of(slug).iter().find(is_it)
}

fn of_ba(thread: &'static Thread) -> Option<FastenerRow> {
    let found = hexagon(thread, HexagonOf::Usual)?;
    let sizes =
        FastenerSizes { across_flats: Some(found.across_flats), ..FastenerSizes::default() };
    let size = thread.designation.to_owned();
    Some(FastenerRow { size, thread: Some(thread), sizes, source: found.source })
}

fn row(nominal: Printed, slug: &str, sizes: FastenerSizes, source: Source) -> FastenerRow {
    FastenerRow { size: nominal_name(nominal), thread: thread_of(nominal, slug), sizes, source }
}

fn of_hexagon(held: &Hexagon, slug: &str) -> FastenerRow {
    let sizes = FastenerSizes {
        across_flats: Some(held.across_flats.length()),
        across_corners: held.across_corners.map(Printed::length),
        nut_across_flats: held.nut_across_flats.map(Printed::length),
        head_height: held.head.map(Printed::length),
        nut_thickness: held.nut.map(Printed::length),
        ..FastenerSizes::default()
    };
    row(held.nominal, slug, sizes, held.source)
}

fn of_head(held: &Head, slug: &str) -> FastenerRow {
    let sizes = FastenerSizes {
        head_diameter: Some(held.diameter.length()),
        head_height: Some(held.height.length()),
        key: held.key.map(Printed::length),
        ..FastenerSizes::default()
    };
    row(held.nominal, slug, sizes, held.source)
}

fn of_washer(held: &Washer, slug: &str) -> FastenerRow {
    let sizes = FastenerSizes {
        inside: Some(held.inside.length()),
        outside: Some(held.outside.length()),
        thickness: Some(held.thickness.length()),
        ..FastenerSizes::default()
    };
    row(held.nominal, slug, sizes, held.source)
}
