//! Whatever a club does in whatever order, with kills, ends, backups and restores between: everybody reads
//! what a plain model says. Some begin with a database of an older schema. The orders of the long run are new each time; the seed is printed, and with it
//! a run comes again: `SWEEP_SEED=… cargo test --test web -- sweep`, one of the long run with `--ignored` behind it.

mod begin;
mod house;
mod model;
mod reading;

use std::hash::{BuildHasher, RandomState};
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::Duration;

use proptest::collection::vec;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed, TestRunner};

use self::begin::{Begin, MEMBERS};
use self::house::House;
use self::model::{Act, Decision, Password, Rights, Who};
use super::storm;

/// The variable that holds the seed of a run that is to come again.
const VARIABLE: &str = "SWEEP_SEED";
/// The seed in the gate: what it has found stays found, and no landing fails by another's luck.
const SEED: u64 = 20_261_130;
/// As many runs at once as the machines have processors.
const RUNNERS: u64 = 2;

/// One step of a run.
#[derive(Clone, Copy, Debug)]
enum Step {
    /// A member acts.
    Act(Who, Act),
    /// Whoever may signs in again.
    SignIn,
    /// A member acts and the program is killed so many microseconds later.
    Kill(Who, Act, u64),
    Restart,
    Save,
    Restore,
}

/// Anybody, a stranger too.
fn anybody() -> impl Strategy<Value = Who> {
    0..=MEMBERS.len()
}

fn member() -> impl Strategy<Value = Who> {
    0..MEMBERS.len()
}

/// Mostly whoever decides.
fn decider() -> impl Strategy<Value = Who> {
    prop_oneof![4 => Just(2), 3 => Just(3), 3 => Just(4), 1 => anybody()]
}

/// Mostly the one that everybody begins with.
fn password() -> impl Strategy<Value = Password> {
    prop_oneof![3 => Just(0), 2 => Just(1)]
}

fn act() -> impl Strategy<Value = (Who, Act)> {
    // The first ones are begun, and most is done to them.
    let note = || prop_oneof![4 => Just(0_usize), 2 => Just(1), 1 => 2_usize..5];
    let rarely = || prop::bool::weighted(0.2);
    let decision = prop_oneof![
        5 => Just(Decision::Pass),
        1 => Just(Decision::Change),
        1 => Just(Decision::Decline),
        2 => Just(Decision::Settle)
    ];
    let rights = (any::<bool>(), any::<bool>(), rarely())
        .prop_map(|(moderator, inspector, secretary)| Rights { moderator, inspector, secretary });
    let often = || prop::bool::weighted(0.8);
    let author = || prop_oneof![4 => Just(0_usize), 2 => Just(1), 1 => anybody()];
    prop_oneof![
        6 => (author(), often(), rarely())
            .prop_map(|(by, sends, pressure)| (by, Act::Write { sends, pressure })),
        4 => (author(), note(), often(), rarely())
            .prop_map(|(by, note, sends, pressure)| (by, Act::Edit { note, sends, pressure })),
        12 => (decider(), note(), decision, rarely())
            .prop_map(|(by, note, what, stale)| (by, Act::Decide { note, what, stale })),
        2 => (decider(), note(), rarely()).prop_map(|(by, note, stale)| (by, Act::Mend { note, stale })),
        3 => (decider(), note()).prop_map(|(by, note)| (by, Act::Undo { note })),
        3 => (decider(), note(), rarely(), rarely())
            .prop_map(|(by, note, pressure, stale)| (by, Act::Correct { note, pressure, stale })),
        1 => (anybody(), note()).prop_map(|(by, note)| (by, Act::Withdraw { note })),
        4 => (anybody(), note()).prop_map(|(by, note)| (by, Act::Report { note })),
        5 => (anybody(), note(), any::<bool>(), rarely())
            .prop_map(|(by, note, worked, pressure)| (by, Act::Judge { note, worked, pressure })),
        3 => (anybody(), note(), rarely())
            .prop_map(|(by, note, pressure)| (by, Act::Remark { note, pressure })),
        3 => (decider(), note(), often())
            .prop_map(|(by, note, shows)| (by, Act::DecideRemark { note, shows })),
        2 => prop_oneof![3 => Just(4_usize), 1 => anybody()].prop_map(|by| (by, Act::Import)),
        2 => (prop_oneof![3 => Just(4_usize), 1 => anybody()], 0..3_u8)
            .prop_map(|(by, name)| (by, Act::NameClub { name })),
        2 => (anybody(), note(), member())
            .prop_map(|(by, note, of)| (by, Act::TakeAway { note, of })),
        1 => (decider(), member()).prop_map(|(by, of)| (by, Act::SettleAll { of })),
        2 => (prop_oneof![3 => Just(4), 1 => anybody()], member(), rights)
            .prop_map(|(by, of, rights)| (by, Act::SetRights { of, rights })),
        2 => (prop_oneof![3 => Just(4), 1 => anybody()], member(), 0..4)
            .prop_map(|(by, of, what)| (by, match what {
                0 => Act::Stop { of },
                1 => Act::Allow { of },
                2 => Act::Remove { of, keep: true },
                _ => Act::Remove { of, keep: false },
            })),
        1 => member().prop_map(|by| (by, Act::SignOut)),
        1 => (anybody(), password()).prop_map(|(by, password)| (by, Act::Enter { password })),
        2 => (anybody(), often()).prop_map(|(by, makes)| (by, Act::Feed { makes })),
        1 => (member(), password(), password())
            .prop_map(|(by, old, new)| (by, Act::ChangePassword { old, new })),
    ]
}

fn step() -> impl Strategy<Value = Step> {
    prop_oneof![
        24 => act().prop_map(|(by, act)| Step::Act(by, act)),
        3 => Just(Step::SignIn),
        2 => (act(), 0_u64..12_000).prop_map(|((by, act), after)| Step::Kill(by, act, after)),
        1 => Just(Step::Restart),
        1 => Just(Step::Save),
        1 => Just(Step::Restore),
    ]
}

/// What is tried right after an act: chance alone would hardly try it.
fn tried_after(by: Who, act: Act) -> Vec<(Who, Act)> {
    match act {
        Act::ChangePassword { old, new } => {
            [old, new].map(|password| (by, Act::Enter { password })).into()
        }
        // Often enough, and by somebody else too.
        Act::Decide { note, .. } | Act::Mend { note, .. } if note % 2 == 1 => {
            vec![((by + 1) % MEMBERS.len(), Act::Undo { note }), (by, Act::Undo { note })]
        }
        // The same table twice.
        Act::Import => vec![(by, act)],
        Act::Stop { of } | Act::Remove { of, .. } => vec![(of, Act::Enter { password: 0 })],
        _ => Vec::new(),
    }
}

/// Goes through the steps, one after another, and looks after each that could lose something.
fn run(steps: &[Step], begin: &Begin) {
    let mut house = House::begin(begin);
    let older: Vec<_> = begin.known.versions.keys().copied().collect();
    for (word, step) in steps.iter().enumerate() {
        let latest = || word.saturating_sub(2)..=word;
        match *step {
            Step::Act(by, act) => {
                if word % 3 == 0 {
                    house.keep();
                }
                house.act(by, act, word);
                for (by, act) in tried_after(by, act) {
                    house.act(by, act, word);
                }
            }
            Step::SignIn => house.sign_in(),
            Step::Kill(by, act, after) => {
                house.kill((by, act, word), Duration::from_micros(after));
                house.check(latest());
            }
            Step::Restart => house.restart(),
            Step::Save => house.save(),
            Step::Restore => {
                house.restore();
                house.check(latest());
            }
        }
    }
    house.check((0..steps.len()).chain(older));
    house.check_file();
}

/// So many runs, shared among the runners, from this seed if no other is set.
fn sweep(runs: u32, seed: u64) {
    let seed = match std::env::var(VARIABLE) {
        Ok(seed) => seed.parse().unwrap_or_else(|_| panic!("{VARIABLE} is a whole number: {seed}")),
        Err(_) => seed,
    };
    println!("{VARIABLE}={seed}: {runs} runs");
    let _disk = storm::with_others();
    let begins = &[Begin::new(), Begin::lively(), Begin::older()];
    let begun = &AtomicU32::new(0);
    std::thread::scope(|scope| {
        let runners: Vec<_> = (0..RUNNERS)
            .map(|runner| {
                scope.spawn(move || {
                    let mut runner = TestRunner::new(Config {
                        cases: runs / u32::try_from(RUNNERS).unwrap(),
                        failure_persistence: None,
                        rng_seed: RngSeed::Fixed(seed + runner),
                        max_shrink_time: 60_000,
                        ..Config::default()
                    });
                    let begin = prop_oneof![2 => Just(0), 2 => Just(1), 1 => Just(2_usize)];
                    let found = runner.run(&(begin, vec(step(), 4..15)), |(begin, steps)| {
                        begun.fetch_add(1, Ordering::Relaxed);
                        run(&steps, &begins[begin]);
                        Ok(())
                    });
                    found.map_err(|error| (begun.load(Ordering::Relaxed), error))
                })
            })
            .collect();
        for runner in runners {
            if let Err((begun, error)) = runner.join().unwrap() {
                panic!(
                    "{VARIABLE}={seed}, after {begun} runs with those that made it smaller: {error}"
                );
            }
        }
    });
}

#[test]
fn whatever_a_club_does_everybody_reads_what_a_plain_model_says() {
    sweep(300, SEED);
}

#[test]
#[ignore = "an hour of clubs: tests/run --soak"]
fn whatever_ten_thousand_clubs_do_everybody_reads_what_a_plain_model_says() {
    sweep(10_000, RandomState::new().hash_one("sweep") >> 32);
}
