//! How long a plan, a plan page and a thread page take to make.
//!
//! Bars: plan 20 µs, plan page 200 µs, thread page 100 µs. `cargo bench --bench plan`.

use holewright_core::plan::{self, Hole, HoleSpec, Over, UpperHole};
use holewright_core::tables::{materials, threads};
use holewright_core::units::mm;
use holewright_pages::Context;

fn main() {
    divan::main();
}

const QUERY: &str = "thread=5ba&material=gunmetal&hole=blind&depth=8mm\
    &over=free-cutting-brass&over_thickness=4mm&series=number,metric";

#[divan::bench]
fn build_plan(bencher: divan::Bencher<'_, '_>) {
    let (Some(five), Some(gunmetal)) = (threads::find("ba", "5"), materials::find("gunmetal"))
    else {
        return;
    };
    let spec = HoleSpec {
        hole: Hole::Blind,
        depth: Some(mm(8.0)),
        over: materials::find("free-cutting-brass").map(|material| Over {
            material,
            thickness: Some(mm(4.0)),
            hole: UpperHole::Tapping,
        }),
        ..HoleSpec::new(five, gunmetal)
    };
    bencher.bench(|| plan::build(divan::black_box(&spec)).map(|plan| plan.operations.len()));
}

#[divan::bench]
fn plan_page() -> holewright_pages::Reply {
    holewright_pages::answer("/plan", divan::black_box(QUERY), &Context::default())
}

#[divan::bench]
fn thread_page() -> holewright_pages::Reply {
    holewright_pages::answer(divan::black_box("/threads/ba/5"), "", &Context::default())
}
