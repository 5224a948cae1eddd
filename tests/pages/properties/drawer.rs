//! What must hold of every drawer: it comes back out of its cookie, it decides which drill is chosen,
//! and it changes no figure.

use std::collections::BTreeSet;

use holewright_core::calc::engagement;
use holewright_core::calc::thread_form::geometry;
use holewright_core::plan::{AtHand, Hole, HoleSpec, build};
use holewright_core::tables::drills::{self, Drill};
use holewright_core::tables::materials::{self, Material};
use holewright_core::tables::threads::{self, Thread};
use holewright_core::units::mm;
use holewright_pages::drawer::{Carried, DRILL_SETS, Drawer, LONGEST, Outcome, TAP_SETS, decide};
use holewright_pages::{Context, answer};
use proptest::prelude::*;

fn any_thread() -> impl Strategy<Value = &'static Thread> {
    let threads: Vec<_> = threads::all().filter(|thread| engagement::applies(thread)).collect();
    proptest::sample::select(threads)
}

fn any_material() -> impl Strategy<Value = &'static Material> {
    proptest::sample::select(materials::all().iter().collect::<Vec<_>>())
}

/// Drills of every size, or a crowd of them about the size wanted.
fn any_drills() -> impl Strategy<Value = Vec<&'static Drill>> {
    let all = drills::all().len();
    (0..all, 1usize..60).prop_flat_map(move |(from, span)| {
        let to = (from + span).min(all);
        proptest::collection::btree_set(from..to, 1..=20.min(to - from)).prop_map(|picked| {
            picked.into_iter().filter_map(|index| drills::all().get(index)).collect()
        })
    })
}

/// Some of the drills about a thread's tapping size, so that most of them leave a thread.
fn about(thread: &Thread, picked: &BTreeSet<usize>) -> Vec<&'static Drill> {
    let wanted = geometry(thread).minor_internal;
    let middle = drills::all().iter().filter(|drill| drill.diameter < wanted).count();
    let from = middle.saturating_sub(20);
    picked.iter().filter_map(|place| drills::all().get(from + place)).collect()
}

/// A list as a person may type it.
fn typed(drills: &[&Drill]) -> String {
    drills.iter().map(|drill| drill.label.clone()).collect::<Vec<_>>().join(", ")
}

fn sent(form: &[(&str, &str)]) -> Option<Drawer> {
    let form = form_urlencoded::Serializer::new(String::new()).extend_pairs(form).finish();
    match decide(form.as_bytes(), &Context::default()) {
        Outcome::Keep(drawer) => Some(drawer),
        _ => None,
    }
}

fn page(query: &str, drawer: Carried) -> (u16, String) {
    let context = Context { drawer, ..Context::default() };
    let answer = answer("/plan", query, &context);
    (answer.status, answer.text().to_owned())
}

/// A page without what differs between a drawer and the same list in the address: the drawer's own
/// lines, and the form with what was typed.
fn figures(page: &str) -> String {
    let without = |page: &str, from: &str, to: &str| match page.split_once(from) {
        Some((before, rest)) => {
            let (_, after) = rest.split_once(to).unwrap_or(("", ""));
            format!("{before}{after}")
        }
        None => page.to_owned(),
    };
    let page = without(page, "<div class=\"drawer\">", "</div>\n");
    without(&page, "<details id=\"change\"", "<figure")
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn a_drawer_comes_back_out_of_its_cookie(
        drill_sets in proptest::sample::subsequence(DRILL_SETS.map(|set| set.item).to_vec(), 0..6),
        tap_sets in proptest::sample::subsequence(TAP_SETS.map(|set| set.item).to_vec(), 0..6),
        singles in any_drills(),
        taps in proptest::collection::vec(any_thread(), 0..6),
        reamers in proptest::collection::vec(1u32..400, 0..6),
        speeds in proptest::collection::vec(10u32..30_000, 0..8),
    ) {
        let drills = typed(&singles);
        let taps: Vec<&str> = taps.iter().map(|thread| thread.designation).collect();
        let reamers: Vec<String> = reamers.iter().map(|size| format!("{}.{} mm", size / 10, size % 10)).filter(|size| size != "0.0 mm").collect();
        let speeds: Vec<String> = speeds.iter().map(u32::to_string).collect();
        let (taps, reamers, speeds) = (taps.join("; "), reamers.join(", "), speeds.join(", "));
        let mut form = vec![("act", "keep"), ("drills", drills.as_str()), ("taps", &taps)];
        form.extend([("reamers", reamers.as_str()), ("speeds", &speeds)]);
        form.extend(drill_sets.iter().map(|item| ("drill_set", *item)));
        form.extend(tap_sets.iter().map(|item| ("tap_set", *item)));
        let drawer = sent(&form);
        prop_assert!(drawer.is_some(), "{form:?}");
        if let Some(drawer) = drawer {
            let value = drawer.cookie_value();
            prop_assert!(drawer.weight() <= LONGEST && value.len() < LONGEST);
            prop_assert!(singles.iter().all(|drill| drawer.drills.has(drill)));
            let off = Drawer { on: false, ..drawer.clone() };
            prop_assert_eq!(Drawer::read(&off.cookie_value()), Ok(off));
            prop_assert_eq!(Drawer::read(&value), Ok(drawer));
        }
    }

    #[test]
    fn any_cookie_is_a_drawer_or_none(value in "(drills|taps|reamers|speeds|on|x)?=?[\\PC%&=+, -]{0,60}(&on=(yes|no))?") {
        if let Carried::Drawer(drawer) = Carried::of(&value) {
            prop_assert_eq!(Drawer::read(&drawer.cookie_value()), Ok(drawer));
        }
    }

    #[test]
    fn a_figure_is_its_drills_whatever_else_is_in_the_drawer(
        thread in any_thread(), material in any_material(), picked in proptest::collection::btree_set(0usize..40, 1..15), depth in 1.0f64..40.0,
    ) {
        let held = about(thread, &picked);
        let spec = |at_hand| HoleSpec {
            hole: Hole::Blind,
            depth: Some(mm(depth)),
            at_hand,
            ..HoleSpec::new(thread, material)
        };
        let (all, mine) = (spec(AtHand::All), spec(AtHand::Only(held.clone())));
        let (all, mine) = (build(&all), build(&mine));
        prop_assume!(all.is_ok() && mine.is_ok());
        let (Ok(all), Ok(mine)) = (all, mine) else { return Ok(()) };
        let chosen = mine.tapping.chosen;
        prop_assert!(held.contains(&chosen.drill));
        prop_assert_eq!(all.clearance.hole, mine.clearance.hole);
        prop_assert_eq!(all.tapping.largest_hole, mine.tapping.largest_hole);
        let alone = spec(AtHand::Only(vec![chosen.drill]));
        let alone = build(&alone);
        prop_assert!(alone.is_ok());
        if let Ok(alone) = alone {
            prop_assert_eq!(alone.tapping.chosen, chosen);
            prop_assert_eq!(alone.hole, mine.hole);
            prop_assert_eq!(alone.depths, mine.depths);
            prop_assert_eq!(alone.clearance.hole, mine.clearance.hole);
        }
        if all.tapping.chosen.drill == chosen.drill {
            prop_assert_eq!(all.tapping.chosen, chosen);
            prop_assert_eq!(all.hole, mine.hole);
            prop_assert_eq!(all.depths, mine.depths);
        }
    }

    #[test]
    fn a_page_with_a_drawer_is_the_page_with_its_list(
        thread in any_thread(), material in any_material(), picked in proptest::collection::btree_set(0usize..40, 1..15), depth in 1u8..40,
    ) {
        let held = about(thread, &picked);
        let asked = format!("thread={}&material={}&hole=blind&depth={depth}mm", thread.path().trim_start_matches("/threads/"), material.slug);
        // Beyond the largest drill there are none to hold.
        prop_assume!(!held.is_empty());
        let drawer = sent(&[("act", "keep"), ("drills", &typed(&held))]);
        prop_assert!(drawer.is_some());
        let Some(drawer) = drawer else { return Ok(()) };
        let list = form_urlencoded::Serializer::new(String::new())
            .append_pair("owned", &drawer.drills.text())
            .finish();
        let (status, mine) = page(&asked, Carried::Drawer(drawer.clone()));
        let (listed_status, listed) = page(&format!("{asked}&{list}"), Carried::Nothing);
        prop_assert_eq!(status, listed_status);
        prop_assume!(status == 200);
        prop_assert!(mine.contains("By your drawer: drills"));
        prop_assert_eq!(figures(&mine), figures(&listed));
        let (_, plain) = page(&asked, Carried::Nothing);
        let (_, off) = page(&asked, Carried::Drawer(Drawer { on: false, ..drawer }));
        prop_assert_eq!(off, plain);
    }
}
