//! The usual drill of every size of the bench in every group of metals from every series of drills: what
//! it was, what it is, and why it changed.
//!
//! `choices.csv` is written by `WRITE_CHOICES=1`; its column `before` is what was chosen while `usual`
//! might pass the standard by 2 % below 5 mm in every metal, and no limit of BS 84 was held.

use std::fmt::Write as _;
use std::path::PathBuf;

use holewright_core::calc::aim::{Aim, allowance};
use holewright_core::calc::tapping::{DrillChoice, judge, usual_of};
use holewright_core::calc::thread_form::geometry;
use holewright_core::calc::{limits, tapping};
use holewright_core::tables::drills::{Drill, Series, in_series};
use holewright_core::tables::materials::Group;
use holewright_core::tables::threads::{System, Thread, systems};
use holewright_core::units::{exceeds, mm, print};

const GROUPS: [Group; 5] = [
    Group::EasyCutting,
    Group::IronAndGunmetal,
    Group::FreeCuttingSteel,
    Group::MildSteelAndPhosphorBronze,
    Group::Tough,
];
const SERIES: [Series; 4] = [Series::Number, Series::Letter, Series::Fraction, Series::Metric];
const HEADER: &str = "thread,group,series,before,now,why";

/// The sizes of the bench: BA, Model Engineer, BSW, BSF and metric, to 12 mm.
fn threads() -> impl Iterator<Item = &'static Thread> {
    let of_the_bench = |system: &&&System| {
        matches!(system.slug, "ba" | "me-40" | "me-32" | "me-26" | "bsw" | "bsf" | "metric")
    };
    systems()
        .iter()
        .filter(of_the_bench)
        .flat_map(|system| system.threads)
        .filter(|thread| !exceeds(geometry(thread).major, mm(12.0)))
}

fn file() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/plan/choices.csv")
}

/// `2.65 mm 77.7 %`, `none`, `none will do: 2.5 mm 47.2 %`.
fn cell(choice: Option<&DrillChoice>) -> String {
    let Some(choice) = choice else { return "none".to_owned() };
    let chosen = choice.chosen;
    let words = format!("{} {}", chosen.drill.label, print::percent(chosen.engagement_percent));
    if choice.get.is_some() { format!("none will do: {words}") } else { words }
}

/// The drill that a cell names.
fn drill(cell: &str, series: Series) -> Option<&'static Drill> {
    in_series(series).iter().copied().find(|drill| {
        cell.strip_prefix(drill.label.as_str()).is_some_and(|rest| rest.starts_with(' '))
    })
}

/// Why the drill changed; empty where it did not.
fn why(
    thread: &Thread,
    group: Group,
    before: Option<&'static Drill>,
    choice: &DrillChoice,
) -> String {
    let now = choice.chosen;
    let Some(before) = before.filter(|before| *before != now.drill) else {
        return if choice.get.is_some() {
            "leaves too little or too much".to_owned()
        } else {
            String::new()
        };
    };
    let figures = geometry(thread);
    let limit = choice.largest_hole;
    let old = judge(thread, &figures, limit, before);
    let standard = limit.map_or("", |limit| limit.standard);
    let allowed = |drill: &Drill| {
        limit.is_none_or(|limit| {
            let most = limit.diameter + allowance(figures.major, Aim::Usual, group);
            !exceeds(drill.diameter, most)
        })
    };
    if old.below_minor {
        "not below the nut's least minor diameter".to_owned()
    } else if !allowed(before) && allowed(now.drill) {
        format!("keeps to {standard}")
    } else if old.likely_engagement_percent < 50.0 {
        "the likely hole keeps 50 %".to_owned()
    } else if allowed(before) && !allowed(now.drill) {
        format!("all within {standard} is over 83 %")
    } else if choice.is_beyond_by_need() {
        format!("all within {standard} is over 83 %: the least step beyond it")
    } else if allowed(now.drill) {
        "nearer the aim within the allowance".to_owned()
    } else {
        format!("none keeps to {standard}: at the aim or above")
    }
}

#[test]
fn every_choice_is_as_the_table_says() {
    let held = std::fs::read_to_string(file()).unwrap_or_default();
    let mut lines = held.lines().skip(1);
    let mut table = format!("{HEADER}\n");
    let mut wrong = Vec::new();
    for thread in threads() {
        for (group, series) in GROUPS.iter().flat_map(|group| SERIES.map(|series| (*group, series)))
        {
            let line = lines.next().unwrap_or_default();
            let before = line.split(',').nth(3).unwrap_or_default();
            let choice = usual_of(thread, group, in_series(series).iter().copied()).ok();
            let reason = choice
                .as_ref()
                .map(|choice| why(thread, group, drill(before, series), choice))
                .unwrap_or_default();
            let now = format!(
                "{},{group},{series},{before},{},{reason}",
                thread.designation,
                cell(choice.as_ref()),
                group = group.slug()
            );
            if now != line {
                wrong.push(format!("{line}\n  is now {now}"));
            }
            writeln!(table, "{now}").expect("a string takes a line");
        }
    }
    if std::env::var_os("WRITE_CHOICES").is_some() {
        std::fs::write(file(), table).expect("the table is written");
        return;
    }
    assert_eq!(lines.next(), None, "the table has a line too many");
    assert!(
        wrong.is_empty(),
        "{} lines differ: {:#?}",
        wrong.len(),
        wrong.get(..20.min(wrong.len()))
    );
}

#[test]
fn outside_tough_metal_no_usual_drill_passes_a_limit_that_one_at_hand_keeps() {
    let mut kept = 0;
    for thread in threads() {
        let figures = geometry(thread);
        let Some(limit) = limits::largest_hole(thread, &figures) else { continue };
        for (group, series) in GROUPS.iter().flat_map(|group| SERIES.map(|series| (*group, series)))
        {
            let at_hand = || in_series(series).iter().copied();
            let Ok(choice) = usual_of(thread, group, at_hand()) else { continue };
            let lawful = at_hand()
                .map(|drill| tapping::judge(thread, &figures, Some(limit), drill))
                .any(|candidate| {
                    candidate.within_standard == Some(true)
                        && !candidate.below_minor
                        && (40.0..=83.0).contains(&candidate.engagement_percent)
                });
            if group == Group::Tough || !lawful {
                continue;
            }
            kept += 1;
            assert_eq!(
                choice.chosen.within_standard,
                Some(true),
                "{} in {group} from {series}: {}",
                thread.designation,
                choice.chosen.drill.label
            );
        }
    }
    assert!(kept > 500, "only {kept} choices have a drill within the limit");
}
