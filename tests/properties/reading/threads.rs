//! Names of threads.

use super::typed;
use holewright_core::tables::threads::read::{Hand, ReadError, read, read_with_hand};
use holewright_core::tables::threads::{Thread, all};
use holewright_core::units::Pitch;
use proptest::prelude::*;

fn address(thread: &Thread) -> String {
    format!("{}/{}", thread.system.system().slug, thread.size)
}

fn addresses(threads: &[&'static Thread]) -> Vec<String> {
    threads.iter().map(|thread| address(thread)).collect()
}

#[track_caller]
fn check(typed: &str, expected: &str) {
    match read(typed) {
        Ok(thread) => assert_eq!(address(thread), expected, "{typed:?}"),
        Err(ReadError::Ambiguous { candidates, .. }) => {
            panic!("{typed:?} is {expected}, not one of {:?}", addresses(&candidates))
        }
        Err(error) => panic!("{typed:?} is {expected}: {error}"),
    }
}

/// The text asks, and these are among what can be meant.
#[track_caller]
fn check_asks(typed: &str, expected: &[&str]) -> usize {
    let candidates = match read(typed) {
        Err(ReadError::Ambiguous { candidates, .. }) => addresses(&candidates),
        Ok(thread) => panic!("{typed:?} is taken for {}", address(thread)),
        Err(error) => panic!("{typed:?} does not ask: {error}"),
    };
    for address in expected {
        assert!(candidates.iter().any(|other| other == address), "{typed:?}: {candidates:?}");
    }
    candidates.len()
}

#[track_caller]
fn check_unknown(typed: &str, nearest_of_all: &str) {
    match read(typed) {
        Err(ReadError::Unknown { nearest, .. }) => {
            assert_eq!(
                addresses(&nearest).first().map(String::as_str),
                Some(nearest_of_all),
                "{typed:?}"
            );
            assert!(nearest.len() <= 5, "{typed:?}");
        }
        other => panic!("{typed:?} is understood: {other:?}"),
    }
}

#[test]
fn every_usual_spelling_is_read() {
    for (typed, expected) in [
        ("5BA", "ba/5"),
        ("5 ba", "ba/5"),
        ("BA5", "ba/5"),
        ("BA 5", "ba/5"),
        ("No 5 BA", "ba/5"),
        ("No.5 BA", "ba/5"),
        ("#5 BA", "ba/5"),
        ("5 B.A.", "ba/5"),
        ("5 B A", "ba/5"),
        ("５ＢＡ", "ba/5"),
        ("ba/5", "ba/5"),
        ("/threads/ba/5", "ba/5"),
        ("5-BA", "ba/5"),
        ("British Association 5", "ba/5"),
        ("5 BA thread", "ba/5"),
        ("5 BA x 0.59", "ba/5"),
        ("5 BA 0,59 mm", "ba/5"),
        ("5 BA 43.1 tpi", "ba/5"),
        ("0BA", "ba/0"),
        ("OBA", "ba/0"),
        ("M3", "metric/m3"),
        ("m 3", "metric/m3"),
        ("M 3,0", "metric/m3"),
        ("M3 coarse", "metric/m3"),
        ("metric 3", "metric/m3"),
        ("3mm metric", "metric/m3"),
        ("m3x0.5", "metric/m3"),
        ("M3 x .5", "metric/m3"),
        ("M3x.5", "metric/m3"),
        ("M3×0,5", "metric/m3"),
        ("M3*0.5", "metric/m3"),
        ("M3-0.5", "metric/m3"),
        ("3x0.5", "metric/m3"),
        ("3mmx0.5", "metric/m3"),
        ("metric/m3x0.5", "metric/m3"),
        ("M6-6H", "metric/m6"),
        ("M2,5", "metric/m2.5"),
        ("M8x1", "metric-fine/m8x1"),
        ("M8 x 1.0", "metric-fine/m8x1"),
        ("M8 1", "metric-fine/m8x1"),
        ("8x1", "metric-fine/m8x1"),
        ("M3 fine", "metric-fine/m3x0.35"),
        ("MF3x0.35", "metric-fine/m3x0.35"),
        ("M10x1.25-6g", "metric-fine/m10x1.25"),
        ("S0.8", "miniature/s0.8"),
        ("S.8", "miniature/s0.8"),
        ("S 0,8 x 0.2", "miniature/s0.8"),
        ("0.80 UNM", "unm/0.80"),
        (".8 UNM", "unm/0.80"),
        ("1/4 BSW", "bsw/1-4"),
        ("1/4BSW", "bsw/1-4"),
        ("BSW 1/4", "bsw/1-4"),
        ("BSW 1-4", "bsw/1-4"),
        ("1/4\" Whit", "bsw/1-4"),
        ("1/4 whit.", "bsw/1-4"),
        ("1/4 in. Whitworth", "bsw/1-4"),
        ("¼″ B.S.W.", "bsw/1-4"),
        (".25 BSW", "bsw/1-4"),
        ("1/4 BSW 20", "bsw/1-4"),
        ("1/4 BSW x 20 tpi", "bsw/1-4"),
        ("1/4 British Standard Whitworth", "bsw/1-4"),
        ("2 in BSW", "bsw/2"),
        ("2 BSW", "bsw/2"),
        ("2 BSW 4½", "bsw/2"),
        ("1 1/4 BSW", "bsw/1-1-4"),
        ("1-1/4\" BSW", "bsw/1-1-4"),
        ("1¼ BSW", "bsw/1-1-4"),
        ("BSF 3/8", "bsf/3-8"),
        ("3/8\"x20 BSF", "bsf/3-8"),
        ("3/8-20 BSF", "bsf/3-8"),
        ("3/8 British Standard Fine", "bsf/3-8"),
        ("26tpi brass 5/16", "bsb/5-16"),
        ("5/16 brass", "bsb/5-16"),
        ("5/16 x 26 brass thread", "bsb/5-16"),
        ("5/16 BSB", "bsb/5-16"),
        ("1/4x40 ME", "me-40/1-4"),
        ("1/4 ME 40", "me-40/1-4"),
        ("1/4 x 40T ME", "me-40/1-4"),
        ("ME 1/4x40", "me-40/1-4"),
        ("ME40 1/4", "me-40/1-4"),
        ("1/4 in 40 tpi Model Engineer", "me-40/1-4"),
        ("me-40/1-4", "me-40/1-4"),
        ("3/8 ME 32", "me-32/3-8"),
        ("G1/4", "bspp/1-4"),
        ("G 1/4", "bspp/1-4"),
        ("BSPP 1/4", "bspp/1-4"),
        ("1/4 BSP parallel", "bspp/1-4"),
        ("G 1 1/4", "bspp/1-1-4"),
        ("R 1/4", "bspt/1-4"),
        ("Rc 1/8", "bspt/1-8"),
        ("Rp1/8", "bspt/1-8"),
        ("1/4 BSP taper", "bspt/1-4"),
        ("1/4 BSPT", "bspt/1-4"),
        ("1/8 NPT", "npt/1-8"),
        ("1/8-27 NPT", "npt/1-8"),
        ("1/8-27", "npt/1-8"),
        ("1/4 x 40 taper pipe", "model-taper-pipe/1-4x40"),
        ("cycle 1/4", "bsc/1-4"),
        ("1/4 CEI", "bsc/1-4"),
        ("9/16 BSC", "bsc/9-16"),
        ("9/16 x 20 BSC", "bsc/9-16x20"),
        ("4-40", "unc/4-40"),
        ("#4-40", "unc/4-40"),
        ("No. 4-40 UNC", "unc/4-40"),
        ("4-40 UNC-2B", "unc/4-40"),
        ("4 x 40", "unc/4-40"),
        (".112-40", "unc/4-40"),
        ("4 UNC", "unc/4-40"),
        ("4-36", "uns/4-36"),
        ("10-32", "unf/10-32"),
        ("UNF 10", "unf/10-32"),
        ("10 unified fine", "unf/10-32"),
        ("1-64", "unc/1-64"),
        ("1-72", "unf/1-72"),
        ("1/4 UNC", "unc/1-4-20"),
        ("1/4-20 UNC", "unc/1-4-20"),
        ("1-4-20", "unc/1-4-20"),
        ("unc 1-4-20", "unc/1-4-20"),
        ("1/4-28", "unf/1-4-28"),
        ("1/4\"-28", "unf/1-4-28"),
        ("1-1/4-7 UNC", "unc/1-1-4-7"),
        ("1 1/4 UNC", "unc/1-1-4-7"),
        ("1-1-4-7", "unc/1-1-4-7"),
        ("1 in UNC", "unc/1-8"),
        ("00-90", "unm/00-90"),
        ("No. 00-90", "unm/00-90"),
        ("0000-160", "unm/0000-160"),
        ("0-80", "unf/0-80"),
    ] {
        check(typed, expected);
    }
}

#[test]
fn what_can_be_two_threads_asks() {
    let all = ["bsw/1-4", "bsf/1-4", "bsb/1-4", "me-40/1-4", "bspp/1-4", "bspt/1-4", "bsc/1-4"];
    let count = check_asks("1/4", &all);
    assert_eq!(check_asks("1/4", &["unc/1-4-20", "unf/1-4-28", "npt/1-4"]), count);
    assert_eq!(check_asks("¼″", &all), count);
    assert_eq!(check_asks(" 1 / 4 in", &all), count);
    check_asks("1/4-20", &["bsw/1-4", "unc/1-4-20"]);
    check_asks("1-1/4-7", &["bsw/1-1-4", "unc/1-1-4-7"]);
    check_asks("1/4 x 40", &["me-40/1-4", "uns/1-4-40", "model-taper-pipe/1-4x40"]);
    check_asks("1/4 40tpi", &["me-40/1-4", "uns/1-4-40"]);
    check_asks("1/4x26", &["bsf/1-4", "bsb/1-4", "bsc/1-4"]);
    check_asks("5/16x32", &["me-32/5-16", "unef/5-16-32", "model-taper-pipe/5-16x32"]);
    check_asks("1/4 ME", &["me-40/1-4", "me-32/1-4"]);
    check_asks("1/4 BSP", &["bspp/1-4", "bspt/1-4"]);
    check_asks("1 UNC", &["unc/1-64", "unc/1-8"]);
    check_asks("BSW 1-8", &["bsw/1-8", "bsw/1"]);
    check_asks("M8 fine", &["metric-fine/m8x1", "metric-fine/m8x0.75"]);
    check_asks("5", &["ba/5", "metric/m5", "unc/5-40", "unf/5-44"]);
    check_asks("#5", &["ba/5", "unc/5-40", "unf/5-44"]);
    check_asks("3mm", &["metric/m3", "metric-fine/m3x0.35"]);
    check_asks("0.8", &["miniature/s0.8", "unm/0.80"]);
    check_asks("1-1-4", &["bsw/1-1-4", "bsf/1-1-4"]);
    let said = read("#5").expect_err("#5").to_string();
    assert!(said.contains("5 BA, No. 5-40 UNC or No. 5-44 UNF"), "{said}");
    // Only one thread is called 13, and still a bare number names none.
    assert_eq!(check_asks("13", &["ba/13"]), 1);
}

#[test]
fn a_thread_not_held_names_the_nearest() {
    check_unknown("M3x0.6", "metric/m3");
    check_unknown("5 BA 0.6", "ba/5");
    check_unknown("5 BA 26 tpi", "ba/5");
    check_unknown("1/4 BSW 26", "bsw/1-4");
    check_unknown("1/4 BSF 20", "bsf/1-4");
    check_unknown("26 BA", "ba/25");
    check_unknown("M40", "metric/m36");
    check_unknown("1/4 BBW", "bsw/1-4");
    check_unknown("1/4-20 BA", "bsw/1-4");
    for typed in ["nonsense", "BA", "x", "ACME", "40 tpi", "1/4 1/4", "5 BA x"] {
        let read = read(typed);
        assert!(matches!(read, Err(ReadError::Unknown { .. })), "{typed:?}: {read:?}");
    }
    let said = read("1/2 Acme").expect_err("Acme").to_string();
    assert!(said.contains("not covered yet"), "{said}");
    assert_eq!(read(" \u{a0}"), Err(ReadError::Empty));
    assert_eq!(read(&"5".repeat(61)), Err(ReadError::TooLong));
}

#[test]
fn the_hand_is_read_with_the_thread() {
    for (typed, expected, hand) in [
        ("M8 LH", "metric/m8", Hand::Left),
        ("M8-LH", "metric/m8", Hand::Left),
        ("M8x1 L.H.", "metric-fine/m8x1", Hand::Left),
        ("M8x1LH", "metric-fine/m8x1", Hand::Left),
        ("LH 1/4 BSP taper", "bspt/1-4", Hand::Left),
        ("1/4 BSW left-hand", "bsw/1-4", Hand::Left),
        ("1/4 BSW left hand thread", "bsw/1-4", Hand::Left),
        ("1/4 BSW RH", "bsw/1-4", Hand::Right),
        ("1/4 BSW", "bsw/1-4", Hand::Right),
    ] {
        let read = read_with_hand(typed).unwrap_or_else(|error| panic!("{typed:?}: {error}"));
        assert_eq!((address(read.thread).as_str(), read.hand), (expected, hand), "{typed:?}");
    }
}

#[test]
fn every_thread_reads_as_itself() {
    for thread in all() {
        let own = address(thread);
        let designation = thread.designation;
        check(&own, &own);
        check(&thread.path(), &own);
        check(&own.to_uppercase(), &own);
        check(designation, &own);
        check(&designation.to_uppercase(), &own);
        check(&designation.to_lowercase(), &own);
        check(&format!("\u{2003}{}\t", designation.replace(' ', " \u{a0} ")), &own);
        check(&designation.replace('.', ",").replace("No,", "No."), &own);
        check(&designation.replace('×', "x").replace(" x ", "x"), &own);
        check(&format!("{designation} LH"), &own);
    }
}

#[test]
fn a_system_and_a_size_in_address_dress_mean_the_thread_or_ask() {
    for thread in all() {
        let typed = address(thread).replace('/', " ");
        let is_offered = match read(&typed) {
            Ok(read) => address(read) == address(thread),
            Err(ReadError::Ambiguous { candidates, .. }) => {
                addresses(&candidates).contains(&address(thread))
            }
            Err(_) => false,
        };
        assert!(is_offered, "{typed:?}: {:?}", read(&typed));
    }
}

#[test]
fn the_right_pitch_changes_nothing_and_a_wrong_one_is_not_taken() {
    for thread in all() {
        let (right, wrong) = match thread.pitch {
            Pitch::Mm(pitch) => (format!("{pitch}"), format!("{}", pitch + 0.013)),
            Pitch::PerInch(tpi) => (format!("{tpi}"), format!("{}", tpi + 1.0)),
        };
        let mut name = thread.designation;
        // Where the designation gives the pitch, what stands before it is the size.
        for joint in [" × ", &format!("-{right}")] {
            if let Some((size, _)) = name.split_once(joint) {
                name = size;
            }
        }
        let named = format!("{} {name}", thread.system.system().mark);
        let name = if name == thread.designation { name.to_string() } else { named };
        check(&format!("{name} {right}"), &address(thread));
        check(&format!("{name} x {right}"), &address(thread));
        let with_wrong = format!("{name} x {wrong}");
        match read(&with_wrong) {
            Ok(read) => assert_ne!(address(read), address(thread), "{with_wrong:?}"),
            Err(ReadError::Unknown { nearest, .. }) => {
                assert!(addresses(&nearest).contains(&address(thread)), "{with_wrong:?}");
            }
            Err(ReadError::Ambiguous { candidates, .. }) => {
                assert!(!addresses(&candidates).contains(&address(thread)), "{with_wrong:?}");
            }
            Err(error) => panic!("{with_wrong:?}: {error}"),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn reading_a_thread_never_panics(typed in typed(70)) {
        let _ = read_with_hand(&typed).map_err(|error| error.to_string());
    }
}
