//! The figures: a hole, its effort, the larger drills, and the drill that makes it.

use crate::calc::cutting_speed::spindle_speed;
use crate::calc::drill_feed::drill_feed;
use crate::calc::drill_force::{DrillCut, DrillForces, forces, power};
use crate::calc::tap_effort::{
    Compared, Margin, compared, effort, is_fine, rough_torque, tap_strength,
};
use crate::calc::thread_form::Geometry;
use crate::calc::tool_steel::ToolSteel;
use crate::drawing::{DrawingIds, EffortGraph, Marked, effort_graph};
use crate::tables::drill_force::{USUAL_CHISEL, WEAR, resistance};
use crate::tables::drills::Drill;
use crate::tables::materials::{Advice, Material};
use crate::tables::source::Source;
use crate::tables::tapping_force::{Resists, rough_force};
use crate::tables::threads::Thread;
use crate::units::{Length, Power, Torque, in_newtons_per_mm2, print};

const fn practice(text: &'static str) -> Advice {
    Advice { text, source: Source::common_practice("workshop practice") }
}

const GLASSES: Advice = practice("Wear glasses: a tap that breaks flies.");
const OTHER_CAUSES: Advice = practice(
    "It is reckoned for a keen tap kept square and clear: one that leans, a blunt one or packed chips break more small taps than the cut does, and may take twice as much.",
);
const DISAGREEMENT: Advice = Advice {
    text: "A tap maker says that 72 % of thread instead of 60 % takes twice the torque for 5 % more strength; by the formulas here it takes 1.4 times, for about 15 % more strip area. Nobody has settled it: trust the direction, not the figure.",
    source: Source::published("a tap maker's page, tapping difficulties and percent of thread"),
};
const RECALLED_DRILL: Advice = Advice {
    text: "How the metal resists the drill is recalled from the handbook and unconfirmed.",
    source: Source::memory("Machinery's Handbook, work material factors for drilling"),
};

/// A hole and what it leaves.
#[derive(Clone, Copy)]
pub(super) struct At {
    pub(super) hole: Length,
    pub(super) drill: Option<&'static Drill>,
    pub(super) percent: f64,
}

impl At {
    /// `No. 36, 69.9 %`
    pub(super) fn words(&self) -> String {
        format!("{}, {}", self.name(), print::percent(self.percent))
    }

    fn name(&self) -> String {
        self.drill.map_or_else(|| print::mm(self.hole, 3), |drill| drill.label.clone())
    }
}

/// Everything the page says.
pub(super) struct Answer {
    pub(super) thread: &'static Thread,
    pub(super) geometry: Geometry,
    pub(super) material: &'static Material,
    pub(super) resists: Resists,
    pub(super) steel: ToolSteel,
    pub(super) chosen: At,
    pub(super) larger: Vec<At>,
}

impl Answer {
    pub(super) fn effort(&self) -> Torque {
        effort(&self.geometry, &self.resists, self.chosen.hole)
    }

    pub(super) fn strength(&self) -> Torque {
        tap_strength(self.geometry.minor, self.steel)
    }

    pub(super) fn margin(&self) -> Margin {
        Margin::of(self.strength(), self.effort(), self.rough(), self.resists.is_borrowed)
    }

    pub(super) fn rough(&self) -> Option<Torque> {
        let row = rough_force(self.material)?;
        Some(rough_torque(row, self.geometry.major, self.geometry.pitch))
    }

    pub(super) fn metal(&self) -> String {
        let row = self.resists.row;
        let force = print::trimmed(in_newtons_per_mm2(row.force), 0);
        let borrowed = if self.resists.is_borrowed {
            format!(", borrowed for {}", self.material.name)
        } else {
            String::new()
        };
        let correction = print::trimmed(row.column.correction(is_fine(&self.geometry)), 2);
        format!("{}, kc {force} N/mm², K {correction}{borrowed}", row.printed_as)
    }

    pub(super) fn larger(&self, place: usize) -> Option<&At> {
        self.larger.get(place)
    }

    fn with(&self, hole: Length) -> Compared {
        compared(self.thread, &self.geometry, hole, self.chosen.hole)
    }

    pub(super) fn compared(&self, place: usize) -> Option<Compared> {
        self.larger(place).map(|at| self.with(at.hole))
    }

    /// What the tapping drill asks; none where no figure is held for the metal or the size is fed by feel.
    pub(super) fn drilling(&self) -> Option<DrillForces> {
        let resistance = *resistance(self.material)?;
        let [sharp, ..] = &WEAR;
        let (drill, chisel, wear) = (self.chosen.hole, USUAL_CHISEL, sharp.factor);
        let feed = drill_feed(drill)?.low;
        Some(forces(&DrillCut { drill, feed, resistance, chisel, wear }))
    }

    pub(super) fn drill_power(&self) -> Option<Power> {
        let slowest = self.material.drilling.first()?.low;
        Some(power(self.drilling()?.torque, spindle_speed(slowest, self.chosen.hole)))
    }

    pub(super) fn notes(&self) -> Vec<Advice> {
        let mut notes = vec![GLASSES, OTHER_CAUSES, DISAGREEMENT];
        notes.extend(self.drilling().map(|_| RECALLED_DRILL));
        notes
    }

    pub(super) fn graph(&self) -> String {
        let marks = std::iter::once(&self.chosen).chain(&self.larger).map(|at| {
            let Compared { effort_percent, strength_percent } = self.with(at.hole);
            Marked { name: at.name(), hole: at.hole, effort_percent, strength_percent }
        });
        let graph = EffortGraph {
            thread: self.thread.designation,
            form: self.thread.form(),
            geometry: self.geometry,
            marks: marks.collect(),
        };
        effort_graph(&graph, &|hole| self.with(hole), DrawingIds::new("effort"))
    }
}

#[cfg(test)]
mod tests {
    use super::DISAGREEMENT;
    use crate::calc::tap_effort::compared;
    use crate::calc::thread_form::geometry;
    use crate::tables::threads::find;
    use crate::units::mm;

    #[test]
    fn what_is_said_of_sixty_and_seventy_two_percent_is_what_the_formulas_give() {
        let thread = find("metric", "m6").unwrap();
        // The full depth of thread of M6 on diameter, 1.299038 mm.
        let hole = |percent: f64| mm(6.0 - 0.01299038 * percent);
        let found = compared(thread, &geometry(thread), hole(72.0), hole(60.0));
        let text = DISAGREEMENT.text.replace('\u{a0}', " ");
        for said in [
            format!("it takes {:.1} times", found.effort_percent / 100.0),
            format!("for about {:.0} % more strip area", found.strength_percent - 100.0),
        ] {
            assert!(text.contains(&said), "{said}: {text}");
        }
    }
}
