//! What to make of the machine, in a sentence or two.

use super::rows::{metres, revolutions};
use holewright_core::calc::setting::{SetTo, Setting, bench_fastest};
use holewright_core::calc::speed_choice::Reach;
use holewright_core::calculators::speeds::{self};
use holewright_core::calculators::speeds::{Tool, Work};
use holewright_core::units::{in_metres_per_minute, in_rpm, print};

/// What to do where no speed of the machine lies in the range.
pub(super) fn machine(figures: &speeds::Answer) -> Option<String> {
    let set = figures.set.as_ref()?;
    let work = figures.question.work;
    if matches!(figures.by_machine.to, SetTo::SlowestThatCutsClean(_)) {
        return None;
    }
    let speed = print::trimmed(in_rpm(set.speed), 0);
    let on = set.machine.as_ref().map_or_else(String::new, |name| format!(" on the {name}"));
    let edge = metres(set.surface);
    let part = |end| in_metres_per_minute(set.surface) / in_metres_per_minute(end);
    Some(match figures.reach {
        Reach::NotSaid | Reach::Within => return None,
        Reach::TooSlow if figures.by_machine.is_near_enough() => return None,
        Reach::Between if work == Work::Reaming => format!(
            "{speed} rev/min{on} is the next below the slow end, which a reamer goes by: slower does it no harm."
        ),
        Reach::Between => format!(
            "No speed at hand lies in the range. {speed} rev/min{on} is the next below it: slower does no harm, too fast burns the edge."
        ),
        Reach::TooSlow => format!(
            "No machine at hand goes fast enough: at {speed} rev/min{on} the edge moves at {edge} m/min, {} % of the slow end. It still cuts. {}",
            rough(100.0 * part(figures.basis.low)),
            slow_words(figures)
        ),
        Reach::TooFast => format!(
            "No machine at hand goes slowly enough: at {speed} rev/min{on}, the slowest, the edge moves at {edge} m/min, {} the fast end of the range. {}",
            over(part(figures.basis.high)),
            fast_words(figures)
        ),
    })
}

const fn slow_words(figures: &speeds::Answer) -> &'static str {
    match figures.question.work {
        Work::Drilling | Work::Spotting => figures.question.material.feed_when_slow(),
        Work::Reaming => "A reamer takes no harm from turning slowly: feed it steadily.",
        Work::Tapping => "A tap takes no harm from turning slowly.",
        Work::Countersinking => "A countersink chatters the less for turning slowly.",
    }
}

fn fast_words(figures: &speeds::Answer) -> String {
    let largest = figures.set.as_ref().map_or_else(String::new, |set| print::mm(set.largest, 1));
    let name = figures.question.material.name;
    match figures.question.work {
        Work::Drilling => format!(
            "{} The largest drill that speed suits in {name} is {largest}: open the hole out to there, then bore, ream or file it, or use a slower machine.",
            figures.question.material.harm_when_fast()
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
    // A bench machine holds no larger tool, whatever the sum says.
    let largest = found.largest.filter(|(_, largest)| *largest <= speeds::LARGEST_TOOL);
    let largest = largest.map_or_else(String::new, |(slowest, largest)| {
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

/// The answer in the largest letters, and what stands beside it, small.
pub(super) struct Headline {
    pub(super) label: &'static str,
    pub(super) large: Large,
    /// `on the lathe; its fastest`
    pub(super) aside: Option<String>,
}

/// The answer in the largest letters.
pub(super) enum Large {
    /// `350`, `to 1100 rev/min`
    Figure(String, String),
    /// `As fast as the machine goes`
    Words(&'static str),
}

/// The headline: nothing that a bench machine cannot do.
pub(super) fn headline(figures: &speeds::Answer) -> Headline {
    let set = &figures.setting;
    let (low, high) = range(set);
    let one = |figure: String| Large::Figure(figure, "rev/min".to_owned());
    let (large, place) = match &set.to {
        // A reamer goes by the slow end alone.
        SetTo::About(_) if figures.question.work == Work::Reaming => (one(low), None),
        SetTo::About(_) if set.takes.high > bench_fastest() => {
            (one(low), Some("or faster, as far as the machine goes".to_owned()))
        }
        SetTo::About(_) => match high {
            Some(high) => (Large::Figure(low, format!("to {high} rev/min")), None),
            None => (one(low), None),
        },
        SetTo::On(held) => {
            let place = held.machine.as_ref().map(|name| format!("on the {name}"));
            (one(print::trimmed(in_rpm(held.speed), 0)), place)
        }
        SetTo::AsFastAsItGoes => (Large::Words("As fast as the machine goes"), None),
        SetTo::NoneSlowEnough(_) => (Large::Words("No machine at hand is slow enough"), None),
        SetTo::SlowestThatCutsClean(held) => {
            let start = held.as_ref().map(|held| format!("start at {}", held.words()));
            (Large::Words("The slowest that cuts clean"), start)
        }
        SetTo::ByHand => (Large::Words("By hand"), None),
    };
    let is_set = set.on_machine().is_some() && set.speed().is_some();
    let label = if is_set { "Machine speed to set" } else { "Machine speed" };
    // What the material takes stands below in full.
    let said_below = matches!(set.to, SetTo::AsFastAsItGoes | SetTo::NoneSlowEnough(_));
    let aside = set.aside(figures.question.material.kind()).filter(|_| !said_below);
    let asides: Vec<String> = place.into_iter().chain(aside).collect();
    Headline { label, large, aside: (!asides.is_empty()).then(|| asides.join("; ")) }
}

/// What the material takes: `11000 to 17000`.
pub(super) fn takes(set: &Setting) -> String {
    let (low, high) = range(set);
    high.map_or_else(|| low.clone(), |high| format!("{low} to {high}"))
}

/// The range in revolutions, one figure where both ends are the same.
fn range(set: &Setting) -> (String, Option<String>) {
    let (low, high) = (revolutions(set.takes.low), revolutions(set.takes.high));
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
