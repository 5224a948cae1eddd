//! Published tapping lists: every entry names a real drill, for a real thread, above its minor.

use std::collections::HashSet;

use holewright_core::calc::engagement;
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::drills::{self, Series};
use holewright_core::tables::lists::{self, ListedDrill};
use holewright_core::tables::source::Grade;
use holewright_core::tables::threads::{self, SystemId};
use holewright_core::units::{Printed, in_mm, print};

#[test]
fn labels_name_the_size_they_stand_beside() {
    for listed in lists::all() {
        let size = in_mm(listed.drill.length());
        let named = match listed.label.split_once(' ') {
            Some(("No.", number)) => drills::find(Series::Number, number),
            Some(("Letter", letter)) => drills::find(Series::Letter, &letter.to_lowercase()),
            _ => None,
        };
        if let Some(drill) = named {
            assert!((in_mm(drill.diameter) - size).abs() < 1e-6, "{listed:?}");
            continue;
        }
        let spelt = match listed.drill {
            Printed::Mm(value) => format!("{} mm", print::trimmed(value, 3)),
            Printed::Fraction(fraction) => format!("{fraction} in"),
            Printed::Inch(_) => panic!("no drill is called {}", listed.label),
        };
        assert_eq!(spelt, listed.label, "{listed:?}");
    }
}

#[test]
fn no_entry_stands_twice() {
    let mut seen = HashSet::new();
    for listed in lists::all() {
        let key = (listed.list, listed.system, listed.size, listed.label);
        assert!(seen.insert(key), "{listed:?}");
    }
}

#[test]
fn entries_are_found_by_the_table_of_their_system() {
    // A row in a table its system does not look in would never be shown.
    for listed in lists::all() {
        let mut thread = *threads::find("ba", "5").unwrap();
        thread.system = listed.system;
        thread.size = listed.size;
        assert!(lists::for_thread(&thread).any(|found| found == listed), "{listed:?}");
    }
}

#[test]
fn recalled_entries_say_so() {
    let recalled: HashSet<_> = lists::all()
        .filter(|listed| listed.source.grade == Grade::Memory)
        .map(|listed| (listed.list, listed.system))
        .collect();
    let expected = [("BS 1157", SystemId::Ba), ("NPT, before a taper reamer", SystemId::Npt)];
    assert_eq!(recalled, HashSet::from(expected));
}

/// Two lists print drills below the minor diameter; the entries stand, with a warning.
#[test]
fn slips_of_the_lists_carry_a_warning() {
    let warned = |system, size, label| {
        lists::all()
            .find(|listed| (listed.system, listed.size, listed.label) == (system, size, label))
            .and_then(|listed: &ListedDrill| listed.note)
    };
    assert!(warned(SystemId::Ba, "14", "No. 70").unwrap().contains("0.72 mm"));
    assert!(warned(SystemId::Me32, "3-8", "Letter Q").unwrap().contains("0.335 in"));
    assert_eq!(warned(SystemId::Ba, "5", "No. 37"), None);
}

#[test]
fn the_lists_a_reader_may_have_on_the_wall() {
    let printed = |system, size, list| -> Vec<&str> {
        lists::all()
            .filter(|listed| (listed.system, listed.size) == (system, size) && listed.list == list)
            .map(|listed| listed.label)
            .collect()
    };
    assert_eq!(printed(SystemId::Metric, "m3", "ISO 2306"), ["2.5 mm"]);
    assert_eq!(printed(SystemId::Metric, "m12", "ISO 2306"), ["10.2 mm"]);
    assert_eq!(printed(SystemId::MetricFine, "m6x0.75", "training handbook"), ["5.2 mm"]);
    assert_eq!(printed(SystemId::Bsw, "1-4", "BS 1157"), ["5.1 mm"]);
    assert_eq!(printed(SystemId::Bsf, "1-1-8", "BS 1157"), ["25.5 mm"]);
    assert_eq!(printed(SystemId::Ba, "7", "live steamers' list"), ["No. 46"]);
    assert_eq!(printed(SystemId::Unc, "1-4-20", "Machinery's Handbook"), ["No. 7"]);
    assert_eq!(printed(SystemId::Unf, "10-32", "Machinery's Handbook"), ["No. 21"]);
    assert_eq!(printed(SystemId::Me40, "1-4", "model engineers' list"), ["5.8 mm", "No. 1"]);
    assert_eq!(printed(SystemId::Bspp, "1-4", "G, parallel"), ["11.8 mm"]);
    assert_eq!(printed(SystemId::Npt, "1-8", "NPT, tapped direct"), ["Letter Q"]);
}

/// Engagement from 48 to 100 %: what a list may well print. Beyond it an entry carries a warning.
#[test]
fn every_entry_is_for_a_thread_we_hold_and_leaves_it_a_thread() {
    for listed in lists::all() {
        let threads = listed.system.system().threads;
        let thread = threads.iter().find(|thread| thread.size == listed.size);
        let thread = thread.unwrap_or_else(|| panic!("no such thread: {listed:?}"));
        if engagement::applies(thread) && listed.note.is_none() {
            let drill = listed.drill.length();
            let percent = engagement::percent(thread.form(), &geometry(thread), drill);
            assert!((48.0..=100.0).contains(&percent), "{percent:.1} % {listed:?}");
        }
    }
}
