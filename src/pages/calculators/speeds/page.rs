//! The page: the form, the answer over it, or what stands in the way.

use askama::Template;

use super::details::{PeckPlan, ReamingShown, RuleRow, SinkShown, SpotShown, TappingShown};
use super::fields::form;
use super::machine::{Headline, Large};
use super::rows::{
    PrintedRow, SpeedRow, duration, feed, feed_rate, printed, revolutions, row, surface,
};
use super::{details, machine};
use crate::calculators::drawer::with_drawer;
use crate::calculators::form::{Form, answering, asking, refusing};
use crate::calculators::{asked, json};
use crate::figures::Both;
use crate::key::{Key, KeyLine, PRACTICE, Sign, Signed};
use crate::layout::Frame;
use crate::link::Link;
use crate::warnings::{WarningGroup, by_level};
use crate::{FieldError, Reply, Visit, drawer};
use holewright_core::asking::Asked;
use holewright_core::calc::cutting_speed::{THUMB_GIVE, THUMB_SOURCE, thumb_feed};
use holewright_core::calc::drill_feed::{OF_DIAMETER_SOURCE, SMALL};
use holewright_core::calc::setting::SetTo;
use holewright_core::calc::speed_choice::Reach;
use holewright_core::calculators::speeds::{
    self, DECLARATION, Detail, SpeedAtHand, TAP_LEAD, Tool, Work, answer_to, work_of,
};
use holewright_core::plan::Level;
use holewright_core::tables::materials::Family;
use holewright_core::units::{in_mm, in_rpm, print};

#[derive(Template)]
#[template(path = "calculators/speeds.html")]
struct SpeedsPage {
    frame: Frame,
    heading: String,
    errors: Vec<FieldError>,
    answer: Option<Shown>,
    form: Form,
}

/// The answer as the page prints it.
struct Shown {
    /// What to set, in the largest letters.
    headline: Headline,
    /// The machine's speed to set; none where no machine was named, or its slowest is too fast.
    set: Option<SpeedRow>,
    /// What the material takes: `11000 to 17000`.
    takes: String,
    /// `metal`
    kind: &'static str,
    size: Both,
    tool: &'static str,
    steel: &'static str,
    thing: Option<Link>,
    material: Link,
    surface: String,
    feed: Option<String>,
    feed_rate: Option<String>,
    time: Option<String>,
    /// What the time is reckoned over, and leaves out.
    time_words: Option<String>,
    /// The slowest speed, where even that is too fast.
    slowest: Option<SpeedRow>,
    /// What to make of the machine, in a sentence or two.
    machine: Option<String>,
    ends: Option<String>,
    rows: Vec<SpeedRow>,
    has_times: bool,
    has_machines: bool,
    rules: Vec<Signed>,
    in_print: Vec<PrintedRow>,
    pecks: Option<PeckPlan>,
    reaming: Option<ReamingShown>,
    sink: Option<SinkShown>,
    spot: Option<SpotShown>,
    tapping: Option<TappingShown>,
    other_reaming: Vec<RuleRow>,
    lubricant: Option<&'static str>,
    /// A depth was given for a work that has none.
    unused_depth: bool,
    /// Of which speed is set.
    choice: Sign,
    why_feed: Vec<Signed>,
    warnings: Vec<WarningGroup<Signed>>,
    /// What the signs of the page stand for.
    key: Vec<KeyLine>,
    json: String,
}

/// The page.
pub(in crate::calculators) fn show(visit: &Visit<'_>) -> Reply {
    let typed = asked(&DECLARATION, &visit.query);
    if DECLARATION.only_asks(|field| visit.query.was_sent(field)) {
        return Reply::html(200, &blank(visit, &typed));
    }
    let fills: &[drawer::Fill] = match work_of(&typed) {
        Work::Reaming => &drawer::SPEEDS_TO_REAM,
        _ => &drawer::SPEEDS,
    };
    let (used, filled, notice) = with_drawer(visit, &DECLARATION, fills);
    match answer_to(&used) {
        Ok(found) => {
            let page = answered(visit, &used, &found);
            let frame = page.frame.with_drawer(notice);
            Reply::html(200, &SpeedsPage { frame, form: form(&typed, &[]).beside(&filled), ..page })
        }
        Err(errors) => Reply::html(422, &refused(visit, &typed, errors)),
    }
}

fn blank(visit: &Visit<'_>, typed: &Asked) -> SpeedsPage {
    let description = "How fast to turn a drill, a reamer, a tap or a countersink: material, diameter and the speeds of the machine.";
    SpeedsPage {
        frame: asking(visit, &DECLARATION, description),
        heading: DECLARATION.title.to_owned(),
        errors: Vec::new(),
        answer: None,
        form: form(typed, &[]),
    }
}

fn refused(visit: &Visit<'_>, typed: &Asked, errors: Vec<FieldError>) -> SpeedsPage {
    SpeedsPage {
        frame: refusing(visit, &DECLARATION),
        form: form(typed, &errors),
        errors,
        ..blank(visit, typed)
    }
}

fn answered(visit: &Visit<'_>, used: &Asked, found: &speeds::Answer) -> SpeedsPage {
    let shown = shown(used, found);
    let heading = format!("{} in {}", machine::named(found), found.question.material.name);
    let title = format!("{heading}: {}", found.setting.words());
    let description = format!(
        "{heading}: {}. The {} would take {} rev/min, from {}.",
        found.setting.words(),
        shown.kind,
        shown.takes,
        shown.surface
    );
    SpeedsPage {
        frame: answering(visit, &DECLARATION, used, [&title, &description]),
        heading,
        errors: Vec::new(),
        answer: Some(shown),
        form: form(used, &[]),
    }
}

fn shown(used: &Asked, figures: &speeds::Answer) -> Shown {
    let asked = &figures.question;
    let turning = figures.turning();
    let held = figures.set.as_ref();
    let (set, slowest) = if turning.is_some() { (held, None) } else { (None, held) };
    let is_set = |found: &SpeedAtHand| {
        set.is_some_and(|set| set.speed == found.speed && set.machine == found.machine)
    };
    let rows: Vec<SpeedRow> =
        figures.at_hand.iter().map(|found| row(found, is_set(found))).collect();
    let at = |speed, words: String| {
        // A speed of the machine is one of its own, an end of the range is a round figure.
        let turns =
            if set.is_some() { print::trimmed(in_rpm(speed), 0) } else { revolutions(speed) };
        format!("{words} at {turns} rev/min")
    };
    let time = turning.and_then(|speed| Some((speed, figures.time_at(speed)?)));
    // In the order of the page, so that its signs run from a.
    let mut key = Key::default();
    let (mut pecks, mut reaming, mut sink, mut spot) = (None, None, None, None);
    match &figures.detail {
        Detail::None => {}
        Detail::Pecks(found) => pecks = Some(details::pecks(figures, found, &mut key)),
        Detail::Reaming(found) => reaming = Some(details::reaming(figures, found, &mut key)),
        Detail::Sink(found) => sink = Some(details::sink(figures, found, &mut key)),
        Detail::Spot(found) => spot = Some(details::spot(found, &mut key)),
    }
    let other_reaming = details::other_reaming(figures, &mut key);
    let tapping = (asked.work == Work::Tapping).then(|| details::tapping(figures, &mut key));
    let in_print = &figures.basis.in_print;
    let in_print = in_print.iter().map(|range| printed(figures, range, &mut key)).collect();
    let choice = key.sign(PRACTICE);
    let rules = figures.basis.rules.iter();
    let rules = rules.map(|rule| key.signed(&rule.words, rule.source)).collect();
    let why_feed = why_feed(figures, &mut key);
    let warnings = warnings(figures, &mut key);
    Shown {
        headline: machine::headline(figures),
        set: set.map(|found| row(found, true)),
        takes: machine::takes(&figures.by_machine),
        kind: asked.material.kind(),
        size: Both::of(figures.diameter),
        tool: asked.work.tool(),
        steel: asked.tool_steel.name(),
        thing: thing(asked.tool),
        material: Link::material(asked.material),
        surface: surface(figures.basis.low, figures.basis.high),
        feed: figures.feed.map(feed),
        feed_rate: figures
            .feed
            .zip(turning)
            .map(|(feed, speed)| at(speed, format!("{} mm/min", feed_rate(feed, speed)))),
        time: time.map(|(speed, time)| at(speed, duration(time))),
        time_words: time.and_then(|_| time_words(figures)),
        slowest: slowest.map(|found| row(found, false)),
        machine: machine::machine(figures),
        ends: machine::ends(figures),
        has_times: rows.iter().any(|row| row.time.is_some()),
        has_machines: rows.iter().any(|row| row.machine.is_some()),
        rows,
        rules,
        in_print,
        pecks,
        reaming,
        sink,
        spot,
        tapping,
        other_reaming,
        lubricant: lubricant(figures),
        unused_depth: asked.depth.is_some()
            && matches!(asked.work, Work::Countersinking | Work::Spotting),
        choice,
        why_feed,
        warnings,
        key: key.lines(),
        json: json(&DECLARATION, used),
    }
}

/// The page of what turns.
fn thing(tool: Tool) -> Option<Link> {
    match tool {
        Tool::Drill(drill) => Some(Link::drill(drill)),
        Tool::Tap(thread) | Tool::Screw(thread) => Some(Link::thread(thread)),
        Tool::Size(_) => None,
    }
}

/// What the time is reckoned over, and what it leaves out.
fn time_words(figures: &speeds::Answer) -> Option<String> {
    let way = figures.way?;
    let depth = print::mm(way.depth, 2);
    let whole = print::mm(way.way, 2);
    Some(match figures.question.work {
        Work::Drilling => format!(
            "The time is for {whole}: the depth of {depth} and the drill’s point, which goes through as well or lies under a blind hole. It is cutting time alone: no withdrawing to clear, no setting up."
        ),
        Work::Reaming => format!(
            "The time is for {depth}, once through: the reamer’s lead, drawing it out and setting up are not in it."
        ),
        Work::Tapping => format!(
            "The time is for {whole}: the depth of {depth} and {} threads of lead, in and out again at the same speed.",
            print::trimmed(TAP_LEAD.most, 0)
        ),
        Work::Countersinking | Work::Spotting => return None,
    })
}

/// What the feed goes by, and how to feed.
fn why_feed(figures: &speeds::Answer, key: &mut Key) -> Vec<Signed> {
    match figures.question.work {
        Work::Drilling if figures.feed.is_some() => {
            let small = figures.feed.and_then(|feed| feed.source) == Some(OF_DIAMETER_SOURCE);
            let by_size = if small {
                key.practice(
                    "Below 3 mm a drill is fed 1 to 2 % of its diameter a turn at most, below 1 mm by feel: the printed 0.001 to 0.002 in is too much for it.",
                )
            } else {
                let source = figures.feed.and_then(|feed| feed.source).unwrap_or(PRACTICE);
                key.signed("Feed by the drill’s size, whatever the metal.", source)
            };
            let slow =
                figures.reach == Reach::TooSlow || figures.setting.to == SetTo::AsFastAsItGoes;
            let slow = slow.then(|| key.practice(figures.question.material.feed_when_slow()));
            std::iter::once(by_size).chain(slow).chain(thumb(figures, key)).collect()
        }
        Work::Drilling => vec![key.practice(figures.question.material.feed_by_feel())],
        Work::Reaming => vec![
            key.practice(
                "Feed two to three times as far a turn as a drill of its size; print says only slower than the drill, and with more feed.",
            ),
            key.practice(
                "A reamer fed too finely rubs and cuts large. By hand: turn it forwards only, steadily, with a light push; never backwards, which chips its edges. Lubricate as for drilling, and clear the flutes.",
            ),
        ],
        Work::Tapping if figures.feed.is_some() => {
            vec![key.practice("The feed is the pitch, and the tap sets it.")]
        }
        Work::Tapping => {
            vec![key.practice("Name the tap by its thread for its feed, which is its pitch.")]
        }
        Work::Countersinking => vec![key.practice(
            "No feed is in print: press steadily, enough to keep it cutting. Chatter: go slower still, press a little harder, hold the work firmly; a countersink with one lip or an odd number chatters less. Stop often and try the screw.",
        )],
        Work::Spotting => vec![key.practice(
            "No feed is in print: feed it by feel, and look at the spot before drilling on.",
        )],
    }
}

/// What to put on the tool, in the words of the shed.
fn lubricant(figures: &speeds::Answer) -> Option<&'static str> {
    let material = figures.question.material;
    match figures.question.work {
        Work::Tapping => Some(material.on_the_tap().text),
        Work::Drilling | Work::Reaming => Some(material.on_the_drill().text),
        Work::Countersinking | Work::Spotting => None,
    }
}

/// The rule of thumb for iron and steel beside the list; a small drill is held to its size instead.
fn thumb(figures: &speeds::Answer, key: &mut Key) -> Option<Signed> {
    let ferrous = matches!(
        figures.question.material.family,
        Family::CastIron | Family::Steel | Family::Stainless
    );
    let feed = thumb_feed(figures.diameter);
    let [low, high] = [feed - THUMB_GIVE, feed + THUMB_GIVE].map(in_mm);
    let low = low.max(0.0);
    let listed = figures.diameter >= SMALL;
    let words = format!(
        "A rule of thumb for iron and steel, 0.001 in a revolution for each 1/16 in of diameter, give or take 0.001, says {} to {} mm/rev.",
        print::trimmed(low, 3),
        print::trimmed(high, 3)
    );
    (ferrous && listed).then(|| key.signed(&words, THUMB_SOURCE))
}

/// What can hurt.
fn warnings(figures: &speeds::Answer, key: &mut Key) -> Vec<WarningGroup<Signed>> {
    let eyes = key.signed(
        "Wear glasses. Clamp the work: a tool that catches spins it. No gloves, loose sleeves or rings near the spindle. Move swarf with a brush, never by hand or with an air line.",
        PRACTICE,
    );
    let dangers = figures.question.material.dangers.iter();
    let dangers = dangers.filter(|danger| danger.work.is_of_any_cut());
    let dangers = key.all(dangers.map(|danger| &danger.advice));
    by_level(std::iter::once(eyes).chain(dangers).map(|item| (Level::Danger, item)))
}
