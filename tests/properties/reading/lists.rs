//! Lists of drills at hand, and lists of series.

use super::typed;
use holewright_core::tables::drills::owned::{
    Fault, OwnedError, RangeError, SeriesError, owned, series,
};
use holewright_core::tables::drills::read::ReadError;
use holewright_core::tables::drills::{Drill, Series, all};
use proptest::prelude::*;

#[track_caller]
fn check(typed: &str, count: usize, some: &[&str]) {
    let drills = owned(typed).unwrap_or_else(|error| panic!("{typed:?}: {error}"));
    let labels: Vec<&str> = drills.iter().map(|drill| drill.label.as_str()).collect();
    assert_eq!(labels.len(), count, "{typed:?}: {labels:?}");
    for label in some {
        assert!(labels.contains(label), "{typed:?} lacks {label}: {labels:?}");
    }
}

#[track_caller]
fn check_not(typed: &str, bad: &[&str], rest: usize) -> Vec<Fault> {
    let Err(OwnedError::NotUnderstood { items, rest: good }) = owned(typed) else {
        panic!("{typed:?} is understood: {:?}", owned(typed));
    };
    let got: Vec<&str> = items.iter().map(|item| item.item.as_str()).collect();
    assert_eq!(got, bad, "{typed:?}");
    assert_eq!(good.len(), rest, "{typed:?}");
    items.into_iter().map(|item| item.fault).collect()
}

#[test]
fn every_usual_list_is_read() {
    check("1-60", 60, &["No. 1", "No. 60"]);
    check("60-1", 60, &["No. 1", "No. 60"]);
    check("No 1-60", 60, &["No. 1", "No. 60"]);
    check("No. 1 to No. 60", 60, &["No. 1", "No. 60"]);
    check("#61–#80", 20, &["No. 61", "No. 80"]);
    check("numbers 61-80", 20, &["No. 61", "No. 80"]);
    check("A-Z", 26, &["Letter A", "Letter Z"]);
    check("letters a to f", 6, &["Letter A", "Letter F"]);
    check("1/16-1/2x64ths", 29, &["1/16 in", "5/64 in", "1/2 in"]);
    check("1/16 - 1/2 x 64ths", 29, &["1/16 in", "1/2 in"]);
    check("1/16-1/2", 29, &["5/64 in"]);
    check("1/16\" - 1/2\" by 64ths", 29, &["5/64 in"]);
    check("1/16-1/2x64", 29, &["5/64 in"]);
    check("1/16-1/2x1/32", 15, &["3/32 in"]);
    check("1/16-1/2 x 32nds", 15, &["3/32 in"]);
    check("1/4-1", 49, &["1/4 in", "1 in"]);
    check("1/4-1in", 49, &["1/4 in", "1 in"]);
    check("1-6x0.1mm", 51, &["1 mm", "1.1 mm", "6 mm"]);
    check("1 mm - 6 mm x 0,1 mm", 51, &["1 mm", "1.1 mm", "6 mm"]);
    check("1,0-6,0x0,1mm", 51, &["1 mm", "1.1 mm", "6 mm"]);
    check("1-13 x 0.5 mm", 25, &["1 mm", "1.5 mm", "13 mm"]);
    check("1-13x0.5", 25, &["1 mm", "1.5 mm", "13 mm"]);
    check("1-13×0,5", 25, &["1.5 mm"]);
    // Every metric drill from 5 to 6 mm, and of those by quarters the three that exist.
    check("5-6mm", 11, &["5.1 mm"]);
    check("5-6x0.25mm", 3, &["5.5 mm"]);
    check("46, 48; 50\n2.05mm", 4, &["No. 46", "2.05 mm"]);
    check("46,48", 2, &["No. 46", "No. 48"]);
    check("2,05mm", 1, &["2.05 mm"]);
    check("1-60,61-80,2,05mm", 81, &["2.05 mm"]);
    check("2,05mm,2,1mm", 2, &["2.05 mm", "2.1 mm"]);
    check("30,5mm", 2, &["No. 30", "5 mm"]);
    check("2.05, 2.05mm, 2,05 mm", 1, &["2.05 mm"]);
    check("F, letter Q, 7/64, #46", 4, &["Letter F", "Letter Q", "7/64 in", "No. 46"]);
    check("number, metric", 97 + 227, &["No. 97", "25 mm"]);
    check("all", 414, &[]);
    check("1-60, 1/16-1/2x64ths, 1-6x0.1mm, 2.05mm", 60 + 29 + 51 + 1, &["2.05 mm"]);
}

#[test]
fn a_bad_item_is_named_and_the_rest_is_kept() {
    let faults = check_not("1-60, foo, 2.05mm", &["foo"], 61);
    assert!(matches!(faults.as_slice(), [Fault::Drill(ReadError::Unknown { .. })]));
    let faults = check_not("2, 46", &["2"], 1);
    assert!(matches!(faults.as_slice(), [Fault::Drill(ReadError::Ambiguous { .. })]));
    let faults = check_not("46, 5,25mm", &["5,25mm"], 1);
    assert!(matches!(faults.as_slice(), [Fault::Drill(ReadError::Unknown { nearest, .. })]
        if nearest.iter().any(|drill| drill.label == "5.2 mm")));
    // From 1 to 6.5 mm, or Nos. 1 to 6 and a 5 mm drill?
    assert_eq!(check_not("1-6,5mm", &["1-6,5mm"], 0), [Fault::CommaUnclear]);
    for (typed, fault) in [
        ("1.5-3", RangeError::NoUnit),
        ("1-", RangeError::Unread),
        ("1-60x", RangeError::Unread),
        ("1-6x0mm", RangeError::Unread),
        ("1-6x0.00000001mm", RangeError::Unread),
        ("30-40mm", RangeError::NoDrills),
        ("98-120", RangeError::NoDrills),
        ("1/16-1/2mm", RangeError::Mixed),
        ("1-6mmx64ths", RangeError::Mixed),
        ("No 1-6mm", RangeError::Mixed),
        ("1in-6mm", RangeError::Mixed),
    ] {
        assert_eq!(check_not(typed, &[typed], 0), [Fault::Range(fault)], "{typed:?}");
    }
    let said = owned("foo, 5.25 mm").unwrap_err().to_string();
    assert!(said.contains("“foo”") && said.contains("5.2 mm"), "{said}");
    assert_eq!(owned(" ,;\n "), Err(OwnedError::Empty));
    assert_eq!(owned(&"1,".repeat(251)), Err(OwnedError::TooLong));
}

#[test]
fn series_are_read() {
    assert_eq!(series("number,metric"), Ok(vec![Series::Number, Series::Metric]));
    assert_eq!(series("Metric; NUMBERS metric"), Ok(vec![Series::Number, Series::Metric]));
    assert_eq!(series("fractional letter"), Ok(vec![Series::Letter, Series::Fraction]));
    assert_eq!(series("all"), Ok(Series::ALL.to_vec()));
    assert_eq!(series("number, wire"), Err(SeriesError::Unknown { item: "wire".into() }));
    assert_eq!(series(" , "), Err(SeriesError::Empty));
    assert_eq!(series(&"a".repeat(501)), Err(SeriesError::TooLong));
}

/// The labels of the drills a list reads as.
fn read_labels(typed: &str) -> Vec<&'static str> {
    let drills = owned(typed).unwrap_or_else(|error| panic!("{typed:?}: {error}"));
    drills.into_iter().map(|drill| drill.label.as_str()).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn reading_a_list_never_panics(items in prop::collection::vec(typed(60), 0..8)) {
        for list in [items.join(","), items.join("; "), items.join("-")] {
            match owned(&list) {
                Ok(drills) | Err(OwnedError::NotUnderstood { rest: drills, .. }) => {
                    prop_assert!(drills.len() <= all().len());
                }
                Err(error) => prop_assert!(!error.to_string().is_empty()),
            }
            let _ = series(&list).map_err(|error| error.to_string());
        }
    }

    #[test]
    fn a_printed_list_reads_as_itself(
        drills in prop::sample::subsequence(all().iter().collect::<Vec<&Drill>>(), 1..40),
        joint in prop::sample::select(vec![", ", ";", "\n", " , ", ","]),
    ) {
        let labels: Vec<&str> = drills.iter().map(|drill| drill.label.as_str()).collect();
        prop_assert_eq!(read_labels(&labels.join(joint)), labels.clone());
        prop_assert_eq!(read_labels(&labels.join(joint).to_uppercase()), labels.clone());
        let commas: Vec<String> = labels
            .iter()
            .map(|label| label.replace('.', ",").replace("No,", "No."))
            .collect();
        prop_assert_eq!(read_labels(&commas.join("; ")), labels);
    }
}

#[test]
fn bare_sizes_that_are_all_of_metric_drills_are_millimetres() {
    check("2,2.5,3.3,4.2,5", 5, &["2 mm", "2.5 mm", "3.3 mm", "4.2 mm", "5 mm"]);
    check("2; 2.5\n5", 3, &["2 mm", "2.5 mm", "5 mm"]);
    // None with a decimal point, or one that is no metric drill: each means what it means by itself.
    check_not("2, 5", &["2", "5"], 0);
    check_not("2, 2.5, 46", &["2"], 2);
    check_not("2, .0785", &["2"], 1);
    check_not("1-60, 2, 2.5", &["2"], 61);
}
