//! The lists the library itself holds, held against the rows of the source they were read in.
//!
//! A list leaves out what its source prints wrongly and sizes we do not hold; where it has an entry
//! for the thread, the printed drill must be among them.

use holewright_core::tables::lists::{self, ListedDrill};
use holewright_core::tables::threads::Thread;
use holewright_core::units::{Length, in_mm};

use crate::readings;
use crate::replay::{Kind, Row, read};

/// How a copied source starts, and the words by which our lists cite it.
const CITED: [(&str, &str); 14] = [
    ("FreeCAD", "FreeCAD"),
    ("Institut fuer Berufliche Entwicklung", "Institut für Berufliche Entwicklung"),
    ("IBE trainees' handbook", "Institut für Berufliche Entwicklung"),
    ("ministeam.net page30", "ministeam.net page 30"),
    ("IBLS wiki", "Live Steamers wiki"),
    ("British Fasteners", "British Fasteners"),
    ("recalled as the BS 1157:1975", "BS 1157:1975 recommended sizes for BA, recalled"),
    ("Wikipedia 'British standard pipe thread'", "encyclopedia's 'British standard pipe thread'"),
    ("0685.com", "0685.com"),
    ("Yamawa (tap maker) general catalogue 2021", "Yamawa general catalogue 2021"),
    ("Machinery's Handbook 31st ed. p.1005", "Machinery's Handbook 31st ed. p. 1005"),
    ("Machinery's Handbook 31st ed. p.2168", "Machinery's Handbook 31st ed. p. 2168"),
    ("YG-1 catalogue 2019", "YG-1 catalogue 2019"),
    ("bd_warehouse", "bd_warehouse"),
];

/// Less than the step between any two drills, more than binary noise.
const SAME_MM: f64 = 1e-6;

/// Claims that the drill a row prints is among the entries of our list of the same source.
#[track_caller]
pub(crate) fn check(row: &mut Row, column: &str, thread: &Thread, drill: Length) {
    let source = row.text("source");
    let Some((_, cite)) = CITED.iter().find(|(start, _)| source.starts_with(start)) else { return };
    let of_this_source = |listed: &&ListedDrill| {
        readings::of(listed.source.cite).iter().any(|read| read.contains(cite))
    };
    let entries: Vec<_> = lists::for_thread(thread).filter(of_this_source).collect();
    if entries.is_empty() {
        return;
    }
    let same =
        |listed: &&ListedDrill| (in_mm(listed.drill.length()) - in_mm(drill)).abs() < SAME_MM;
    let agrees = entries.iter().any(same);
    let held = entries.iter().map(|listed| listed.label).collect::<Vec<_>>().join(", ");
    let printed = row.text(column).to_owned();
    row.claim(&format!("{column}: list"), Kind::Table, printed, held, agrees);
}

#[test]
fn every_citation_is_of_a_copied_source_and_of_a_list_held() {
    let read_all = crate::families().into_iter().flat_map(|family| read(family.file));
    let sources: Vec<_> = read_all.filter_map(|(_, cells)| cells.get("source").cloned()).collect();
    for (start, cite) in CITED {
        assert!(sources.iter().any(|source| source.starts_with(start)), "{start}");
        let read_in = |listed: &ListedDrill| readings::of(listed.source.cite);
        let cited = lists::all().any(|row| read_in(row).iter().any(|read| read.contains(cite)));
        assert!(cited, "{cite}");
    }
}
