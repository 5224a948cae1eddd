//! What to do when something goes wrong: times and mixtures in print, and the holes for wire inserts.

use holewright_core::tables::inserts::{self, DESIGN, InsertHole};
use holewright_core::tables::materials::{self, Advice, BrokenTap};
use holewright_core::tables::rescue::find;
use holewright_core::tables::source::{Grade, Source};
use holewright_core::tables::threads::find as find_thread;
use holewright_core::units::in_inch;

use crate::readings;
use crate::replay::{Family, Kind, Row};
use crate::size::{dash, fraction};

const NO_ACID: &str = "an acid: none is advised, and the page says so";
const BLANK: &str = "the blank that a tap is made from, no hole";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "drills_materials/broken_tap_removal.csv",
        context: &["method"],
        unused: &[],
        replay: broken_tap,
    },
    Family {
        file: "lathe_layout/thread_inserts.csv",
        context: &["insert_thread", "tpi_or_pitch", "tap_type", "unit"],
        unused: &[],
        replay: insert,
    },
];

/// The sentences of the page on a broken tap that were read in a source.
fn said(place: &str) -> Vec<Advice> {
    let read_there = |source: Source| readings::of(source.cite).iter().any(|it| it.contains(place));
    let trouble = find("broken-tap").expect("the page");
    trouble.sentences().filter(|advice| read_there(advice.source)).collect()
}

fn broken_tap(row: &mut Row) {
    if !row.text("method").starts_with("alum") {
        return row.leave_out(NO_ACID);
    }
    let (place, figures) = if row.text("source").starts_with("American Horologist") {
        (
            "American Horologist",
            &[
                "One part of alum to three of water",
                "3 to 15 minutes",
                "glass",
                "rinse in boiling water",
            ][..],
        )
    } else {
        (
            "page56",
            &["saturated solution", "about an hour", "1/8 in", "phosphor bronze", "aluminium pan"]
                [..],
        )
    };
    let sentences = said(place);
    let text: Vec<&str> = sentences.iter().map(|advice| advice.text).collect();
    let text = text.join(" ");
    let missing: Vec<&str> =
        figures.iter().copied().filter(|figure| !text.contains(figure)).collect();
    let fact = row.text("fact").to_owned();
    let agrees = missing.is_empty()
        && sentences.iter().all(|advice| advice.source.grade == Grade::Published);
    row.claim("fact", Kind::Table, fact, format!("{text} (missing: {missing:?})"), agrees);
    // What the bath spares and what it takes is the metal's own to say.
    let treats = |slug: &str| materials::find(slug).map(|metal| metal.broken_tap);
    let spared = ["free-cutting-brass", "phosphor-bronze-cast", "copper", "nickel-silver"];
    let spares = spared.iter().all(|slug| treats(slug) == Some(BrokenTap::HotAlum));
    let ok = row.text("workpiece_ok").to_owned();
    row.claim("workpiece_ok", Kind::Table, ok, format!("{spares}"), spares);
    let eaten = ["grey-cast-iron", "bright-mild-steel", "stainless-303", "silver-steel"];
    let eats = eaten.iter().all(|slug| treats(slug) == Some(BrokenTap::NeverAlum));
    let not = row.text("workpiece_not").to_owned();
    row.claim("workpiece_not", Kind::Table, not, format!("{eats}"), eats);
}

/// `STI No. 4 UNC` of 40 threads an inch is the insert of No. 4-40 UNC.
fn hole_of(row: &Row) -> Option<&'static InsertHole> {
    let name = row.text("insert_thread").strip_prefix("STI ")?;
    let (size, system) = name.rsplit_once(' ')?;
    let size = match size.strip_prefix("No. ") {
        Some(number) => number.to_owned(),
        None => dash(fraction(size)?),
    };
    let slug = format!("{size}-{}", row.text("tpi_or_pitch"));
    let thread = find_thread(&system.to_lowercase(), &slug)?;
    inserts::all().iter().find(|hole| hole.thread() == Some(thread))
}

fn insert(row: &mut Row) {
    match row.text("tap_type") {
        "cold forming" => {
            let hole = hole_of(row).unwrap_or_else(|| panic!("no hole for {row:?}"));
            for (column, size) in [
                ("minor_min", hole.least),
                ("minor_max", hole.most),
                ("recommended_drill", hole.drill),
            ] {
                row.check(column, Kind::Table, in_inch(size.length()));
            }
        }
        "tap blank" => row.leave_out(BLANK),
        "cutting" => {
            let printed = row.text("note").to_owned();
            let trouble = find("stripped-thread").expect("the page");
            let ours: Vec<&str> = trouble
                .sentences()
                .filter(|advice| advice.source == DESIGN)
                .map(|advice| advice.text)
                .collect();
            let ours = ours.join(" ");
            let says = [
                "¾ to 1½ turns below the face",
                "one turn thicker than the insert",
                "twice the diameter of its tap",
            ];
            let agrees = says.iter().all(|words| ours.contains(words))
                && printed.contains("insert length + 1 pitch")
                && printed.contains("2 x STI tap diameter")
                && printed.contains("3/4 to 1-1/2 pitch");
            row.claim("note", Kind::Table, printed, ours, agrees);
        }
        other => panic!("no tap {other}"),
    }
}
