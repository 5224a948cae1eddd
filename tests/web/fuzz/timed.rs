//! Tries a property on new inputs, so many at least and until a stated time is over, and says on how
//! many.

use std::cell::Cell;
use std::io::Write;
use std::time::{Duration, Instant};

use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};

/// The variable that sets the time, in whole seconds. It is not one of the program's settings, so it
/// does not begin as they do: the program refuses to start beside a setting it does not know.
const VARIABLE: &str = "FUZZ_SECONDS";
/// The time where it is not set.
const USUAL: u64 = 30;
/// So many of a hundred inputs must be taken, and as many refused: else one side was not tried.
const FEWEST_PERCENT: u64 = 2;

/// What became of an input that did no harm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    /// It was understood.
    Taken,
    /// It was not, and that was said.
    Refused,
}

impl Outcome {
    /// Taken if this is so.
    pub(super) fn taken_if(is_taken: bool) -> Self {
        if is_taken { Self::Taken } else { Self::Refused }
    }
}

/// Tries the property for the time set, and on a slow machine for longer: until so many inputs were
/// tried for each second set. A failing input is made as short as it goes and shown.
pub(super) fn hunt<S: Strategy>(
    subject: &str,
    fewest_a_second: u64,
    inputs: S,
    property: impl Fn(S::Value) -> Result<Outcome, TestCaseError>,
) {
    let seconds = seconds();
    let mut runner = TestRunner::new(Config {
        failure_persistence: None,
        max_shrink_time: 60_000,
        ..Config::default()
    });
    let began = Instant::now();
    let mut tried = 0_u64;
    let taken = Cell::new(0_u64);
    while began.elapsed() < Duration::from_secs(seconds) || tried < fewest_a_second * seconds {
        let input = inputs.new_tree(&mut runner).unwrap();
        let outcome = runner.run_one(input, |input| {
            taken.set(taken.get() + u64::from(property(input)? == Outcome::Taken));
            Ok(())
        });
        if let Err(error) = outcome {
            panic!("{subject}, after {tried} inputs that did no harm: {error}");
        }
        tried += 1;
    }
    let taken = taken.get();
    // Past the harness, which keeps what a test prints that passes.
    let took = began.elapsed().as_secs();
    let said = format!("{subject}: {tried} inputs in {took} s, {taken} of them taken\n");
    std::io::stderr().write_all(said.as_bytes()).unwrap();
    assert!(taken * 100 >= tried * FEWEST_PERCENT, "{said}");
    assert!((tried - taken) * 100 >= tried * FEWEST_PERCENT, "{said}");
}

fn seconds() -> u64 {
    let Ok(set) = std::env::var(VARIABLE) else { return USUAL };
    let seconds = set.parse().ok().filter(|seconds| *seconds > 0);
    seconds.unwrap_or_else(|| panic!("{VARIABLE} is {set:?}, not a number of seconds"))
}

#[test]
fn a_hunt_shows_the_shortest_input_that_does_harm() {
    let caught = std::panic::catch_unwind(|| {
        hunt("numbers", 1, 0_u32..1000, |number| {
            prop_assert!(number < 500, "too large");
            Ok(Outcome::taken_if(number % 2 == 0))
        });
    });
    let said = caught.unwrap_err();
    let said = said.downcast_ref::<String>().unwrap();
    assert!(said.contains("too large") && said.ends_with("500"), "{said}");
}
