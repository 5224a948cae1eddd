//! What to make of the machine, in a sentence or two.

use super::rows::{metres, revolutions};
use holewright_core::calc::speed_choice::Reach;
use holewright_core::calculators::speeds::{self};
use holewright_core::calculators::speeds::{Tool, Work};
use holewright_core::units::{in_metres_per_minute, in_rpm, print};

/// What to do where no speed of the machine lies in the range.
pub(super) fn machine(figures: &speeds::Answer) -> Option<String> {
    let set = figures.set?;
    let speed = print::trimmed(in_rpm(set.speed), 0);
    let edge = metres(set.surface);
    let part = |end| in_metres_per_minute(set.surface) / in_metres_per_minute(end);
    Some(match figures.reach {
        Reach::NotSaid | Reach::Within => return None,
        Reach::Between => format!(
            "No speed at hand lies in the range. {speed} rev/min is the next below it: slower does no harm, too fast burns the edge."
        ),
        Reach::TooSlow => format!(
            "The machine cannot go fast enough: at its fastest, {speed} rev/min, the edge moves at {edge} m/min, {} % of the slow end. It still cuts, only slowly. {}",
            rough(100.0 * part(figures.basis.low)),
            slow_words(figures)
        ),
        Reach::TooFast => format!(
            "The machine cannot go slowly enough: at its slowest, {speed} rev/min, the edge moves at {edge} m/min, {} the fast end of the range. {}",
            over(part(figures.basis.high)),
            fast_words(figures)
        ),
    })
}

const fn slow_words(figures: &speeds::Answer) -> &'static str {
    match figures.question.work {
        Work::Drilling => {
            "Hold the drill short, feed it finely by feel and clear it often: a small drill breaks from force, not from turning slowly."
        }
        Work::Reaming => "A reamer takes no harm from turning slowly: feed it steadily.",
        Work::Tapping => "A tap takes no harm from turning slowly.",
        Work::Countersinking => "A countersink chatters the less for turning slowly.",
        Work::Spotting => "Hold the spotting drill short and feed it finely.",
    }
}

fn fast_words(figures: &speeds::Answer) -> String {
    let largest = figures.set.map_or_else(String::new, |set| print::mm(set.largest, 1));
    let name = figures.question.material.name;
    match figures.question.work {
        Work::Drilling => format!(
            "It overheats and goes blunt. The largest drill that speed suits in {name} is {largest}: open the hole out to there, then bore, ream or file it, or use a slower machine."
        ),
        Work::Reaming => {
            "It chatters, cuts large and goes blunt. Turn the reamer by hand, the chuck only guiding it.".to_owned()
        }
        Work::Tapping => "Turn the tap by hand, the chuck only guiding it.".to_owned(),
        Work::Countersinking => {
            "It chatters. Turn the countersink by hand, in a brace or the chuck pulled round.".to_owned()
        }
        Work::Spotting => format!(
            "Spot no wider than {largest}, the most that speed suits in {name}: the drill’s web needs no more."
        ),
    }
}

/// What the ends of the machine's speeds mean in this metal, for the tools whose size sets the speed.
pub(super) fn ends(figures: &speeds::Answer) -> Option<String> {
    let found = figures.ends?;
    let work = figures.question.work;
    if !matches!(work, Work::Drilling | Work::Reaming | Work::Tapping) {
        return None;
    }
    let name = figures.question.material.name;
    let tool = work.tool();
    let (fastest, smallest) = found.smallest;
    let largest = found.largest.map_or_else(String::new, |(slowest, largest)| {
        format!(
            "For the slowest speed, {} rev/min, the largest {tool} in {name} is {}. ",
            print::trimmed(in_rpm(slowest), 0),
            print::mm(largest, 1)
        )
    });
    Some(format!(
        "{largest}Below {} even the fastest, {} rev/min, is slower than the range, which does no harm.",
        print::mm(smallest, if smallest.value < 1.0 { 2 } else { 1 }),
        print::trimmed(in_rpm(fastest), 0)
    ))
}

/// What it is the speed of, at the head of a line: `No. 46 drill`.
pub(super) fn named(figures: &speeds::Answer) -> String {
    let work = figures.question.work;
    match figures.question.tool {
        Tool::Drill(drill) if work == Work::Spotting => format!("Spot for {} drill", drill.label),
        Tool::Drill(drill) => format!("{} {}", drill.label, work.tool()),
        Tool::Tap(thread) => format!("{} tap", thread.designation),
        Tool::Screw(thread) => format!("Countersink for {}", thread.designation),
        Tool::Size(size) => {
            let size = print::mm(size, 3);
            match work {
                Work::Countersinking => {
                    format!("Countersink for {} head", print::with_article(&size))
                }
                Work::Spotting => format!("Spot for {size} drill"),
                _ => format!("{size} {}", work.tool()),
            }
        }
    }
}

/// The range in revolutions, one figure where both ends are the same.
pub(super) fn range(figures: &speeds::Answer) -> (String, Option<String>) {
    let (low, high) = (revolutions(figures.low), revolutions(figures.high));
    let high = (high != low).then_some(high);
    (low, high)
}

/// How far above: `1.5 times`, `3 % above`.
fn over(ratio: f64) -> String {
    if ratio < 1.2 {
        format!("{} % above", print::trimmed((ratio - 1.0) * 100.0, 0))
    } else {
        format!("{} times", rough(ratio))
    }
}

/// A ratio to two figures or so: `1.5`, `24`.
fn rough(ratio: f64) -> String {
    print::trimmed(ratio, if ratio < 10.0 { 1 } else { 0 })
}
