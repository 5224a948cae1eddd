//! Threads as model engineers mean them, where the text could be another too. What is usual is common
//! practice, no source.

use holewright_core::tables::threads::read::{ReadError, as_meant, read};
use holewright_core::tables::threads::{SystemId, Thread, all};

/// What was taken, and the addresses of the others.
#[track_caller]
fn taken(typed: &str) -> (String, Vec<String>) {
    let address = |path: String| path.trim_start_matches("/threads/").to_owned();
    let read = as_meant(typed).unwrap_or_else(|error| panic!("{typed:?}: {error}"));
    let others = read.taken.iter().flat_map(|taken| &taken.others);
    (address(read.thread.path()), others.map(|other| address(other.path())).collect())
}

#[test]
fn a_diameter_by_40_32_or_26_is_model_engineer_unless_un_is_said() {
    for (typed, usual, other) in [
        ("1/4 x 40", "me-40/1-4", "uns/1-4-40"),
        ("1/4 40", "me-40/1-4", "uns/1-4-40"),
        ("1/4-40", "me-40/1-4", "uns/1-4-40"),
        ("3/16 x 40", "me-40/3-16", "model-taper-pipe/3-16x40"),
        ("3/8 x 32", "me-32/3-8", "unef/3-8-32"),
        ("5/16 x 32 TPI", "me-32/5-16", "unef/5-16-32"),
        ("1/2 x 26", "me-26/1-2", "bsb/1-2"),
        ("3/8 x 26", "me-26/3-8", "bsc/3-8"),
        ("1/4 ME", "me-40/1-4", "me-32/1-4"),
        ("1/8 BSP", "bspp/1-8", "bspt/1-8"),
        ("1/4 gas", "bspp/1-4", "bspt/1-4"),
        ("1/8 pipe", "bspp/1-8", "npt/1-8"),
        ("1/4-20", "unc/1-4-20", "bsw/1-4"),
        ("1/4 x 20", "bsw/1-4", "unc/1-4-20"),
        ("1/2 x 20", "unf/1-2-20", "bsc/1-2x20"),
        ("three sixteenths x 40", "me-40/3-16", "model-taper-pipe/3-16x40"),
        ("tap 1/4 x 40", "me-40/1-4", "uns/1-4-40"),
    ] {
        let (thread, others) = taken(typed);
        assert_eq!(thread, usual, "{typed}");
        assert!(others.iter().any(|it| it == other), "{typed}: {others:?}");
        assert!(!others.contains(&thread), "{typed}: {others:?}");
    }
}

#[test]
fn what_can_be_no_other_is_taken_for_nothing() {
    for (typed, thread) in [
        ("1/4 x 40 UN", "uns/1-4-40"),
        ("1/4 x 40 UNS", "uns/1-4-40"),
        ("5/16 26 brass", "bsb/5-16"),
        ("1/2 BSPT", "bspt/1-2"),
        ("5 BA", "ba/5"),
        ("tap 5 BA", "ba/5"),
        ("5 BA tap", "ba/5"),
        ("0 BA stud", "ba/0"),
        ("2BA cheesehead", "ba/2"),
        ("2 BA cheese head screws", "ba/2"),
        ("M6 set screw", "metric/m6"),
        ("quarter whit", "bsw/1-4"),
        ("half inch bsf", "bsf/1-2"),
        ("inch and a quarter bsw", "bsw/1-1-4"),
    ] {
        assert_eq!(taken(typed), (thread.to_owned(), Vec::new()), "{typed}");
    }
}

#[test]
fn where_no_reading_is_usual_it_asks() {
    for typed in ["1/4", "5", "No 10", "1/4 x 26", "1/2 ME", "1 UNC", "3mm"] {
        let read = as_meant(typed);
        assert!(matches!(read, Err(ReadError::Ambiguous { .. })), "{typed}: {read:?}");
    }
    for typed in ["", "stud", "tap", "nonsense", "27 BA", "5 BA x 0.6"] {
        assert!(as_meant(typed).is_err(), "{typed}");
    }
}

#[test]
fn what_a_strict_reader_takes_is_taken_alike() {
    for thread in all() {
        let meant = as_meant(thread.designation).expect(thread.designation);
        assert_eq!(read(thread.designation), Ok(meant.thread), "{}", thread.designation);
        // A cycle thread without its pitch is the finer of two where there are two.
        let coarser = |other: &&Thread| {
            thread.system == SystemId::Bsc
                && other.system == SystemId::Bsc
                && other.basic == thread.basic
                && other.pitch.length() > thread.pitch.length()
        };
        let others = meant.taken.map(|taken| taken.others).unwrap_or_default();
        let coarser: Vec<_> = all().filter(coarser).collect();
        assert_eq!(others, coarser, "{}", thread.designation);
    }
    assert_eq!(as_meant("9/16 cycle").unwrap().taken.unwrap().others.len(), 1);
}
