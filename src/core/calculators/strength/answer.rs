//! The figures: a joint, what each member bears, and what a larger drill costs.

use super::words::strength_words;
use crate::asking::Diameter;
use crate::calc::engagement;
use crate::calc::strength::{Joint, Loads};
use crate::calc::strip::{self, StripSizes};
use crate::calc::thread_form::Geometry;
use crate::tables::drills::Drill;
use crate::tables::materials::{Advice, Family, Material};
use crate::tables::screw_metals::{Screw, Strength, least_tensile};
use crate::tables::source::Source;
use crate::tables::threads::Thread;
use crate::units::{Area, Force, Length, print};

const fn practice(text: &'static str) -> Advice {
    Advice { text, source: Source::common_practice("workshop practice") }
}

const NO_DESIGN: Advice = practice(
    "These are loads at which something breaks, not loads to use: where failure can hurt, a part is worked out by a person who answers for it.",
);
const LEFT_OUT: Advice = practice(
    "Tightening uses much of what a screw bears; shock, shaking, heat and a thread that starts torn are not reckoned.",
);
const IRON: Advice = Advice {
    text: "At what part of its strength cast iron shears is recalled and unconfirmed: with six tenths, as of steel, the thread in the hole bears that much less and may be the weakest.",
    source: Source::memory("recalled, no source read"),
};

/// Everything the page says.
pub(super) struct Answer {
    pub(super) thread: &'static Thread,
    pub(super) geometry: Geometry,
    pub(super) material: &'static Material,
    pub(super) shear: Strength,
    pub(super) screw: Option<Screw>,
    pub(super) engaged: Length,
    pub(super) hole: Diameter,
    pub(super) sizes: StripSizes,
    pub(super) larger: Option<&'static Drill>,
}

impl Answer {
    pub(super) fn joint(&self) -> Option<Joint> {
        let screw = self.screw?;
        Some(Joint {
            sizes: self.sizes,
            tensile_area: self.geometry.tensile_area,
            screw: screw.tensile.stress,
            tapped_shear: self.shear.stress,
        })
    }

    pub(super) fn loads(&self) -> Option<Loads> {
        self.joint().map(|joint| joint.loads(self.engaged))
    }

    pub(super) fn weakest(&self) -> String {
        self.loads().map_or_else(
            || "Say what the screw is of".to_owned(),
            |loads| print::sentence(&loads.in_words()),
        )
    }

    pub(super) fn tapped_load(&self) -> Force {
        let area: Area = self.sizes.nut_area(self.engaged);
        strip::load(area, self.shear.stress)
    }

    pub(super) fn tapped_metal(&self) -> String {
        least_tensile(self.material)
            .map_or_else(String::new, |found| strength_words(self.material.name, &found))
    }

    pub(super) fn hole_words(&self) -> String {
        self.hole.drill.map_or_else(
            || self.with_percent(&print::mm(self.hole.size, 3), self.hole.size),
            |drill| self.drill_words(drill),
        )
    }

    pub(super) fn drill_words(&self, drill: &Drill) -> String {
        self.with_percent(&drill.label, drill.diameter)
    }

    fn with_percent(&self, name: &str, hole: Length) -> String {
        let percent = engagement::percent(self.thread.form(), &self.geometry, hole);
        format!("{name}, {}", print::percent(percent))
    }

    pub(super) fn at_larger(&self) -> Option<StripSizes> {
        let drill = self.larger?;
        Some(StripSizes::of(self.thread, &self.geometry, drill.diameter))
    }

    pub(super) fn notes(&self) -> Vec<Advice> {
        let iron = (self.material.family == Family::CastIron).then_some(IRON);
        let basic = self.sizes.pair.is_basic.then_some(Advice {
            text: "No limits of the screw are held for this thread, so basic sizes are taken: a loose screw bears less.",
            source: self.sizes.pair.source,
        });
        [NO_DESIGN, LEFT_OUT].into_iter().chain(iron).chain(basic).collect()
    }
}
