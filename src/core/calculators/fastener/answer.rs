//! The figures: each with where it comes from, and none where none is held.

use super::head::HeadOf;
use crate::calc::clearance::{ClearanceHole, Fit, drill_for, hole, hole_by_rule};
use crate::calc::countersink::{USUAL_HEAD, sink_depth, usual_head};
use crate::calc::fastener::{
    HexagonOf, ROOM, ScrewHexagon, across_corners, hexagon, least_edge, room_for,
};
use crate::calc::tapped_in::TappedIn;
use crate::calc::tapping::DrillChoice;
use crate::calc::thread_form::{Geometry, geometry};
use crate::drawing::{DrawingIds, DrawnHead, FastenerView, fastener};
use crate::tables::countersinks::{HeadAngle, head_angle};
use crate::tables::drills::{self, Drill};
use crate::tables::fasteners::{self, Head, HeadKind, HexagonPattern, Washer, washer, washers};
use crate::tables::materials::{Advice, PressureWork};
use crate::tables::source::Source;
use crate::tables::threads::{HeadFamily, SystemId, Thread};
use crate::units::{Length, in_mm, print};

/// A length and where it comes from.
type Sourced = (Length, Source);

/// Where geometry alone speaks.
pub(super) const GEOMETRY: Source = Source::common_practice("geometry of a hexagon");
/// Where the spanner is called by its hexagon.
const MARKS: Source = Source::common_practice("a spanner is called by its screw or by its width");

const CLAMP: Advice = Advice {
    text: "Eyes: wear glasses. Clamp the work: a countersink, a counterbore or a facing cutter grabs, most of all in brass and bronze.",
    source: Source::common_practice("workshop practice"),
};
const PRESSURE: Advice = Advice {
    text: "Steam, boilers, pressure: these figures are no design. The national boiler code and the club’s boiler inspector decide, before cutting.",
    source: Source::common_practice("the usual rule of clubs"),
};
const MEASURE: Advice = Advice {
    text: "Measure the screw in hand before its seat is cut: heads of one name differ between makers and years.",
    source: Source::common_practice("workshop practice"),
};
const NO_STRENGTH: Advice = Advice {
    text: "The edge is for marking out: what a joint bears is not reckoned here.",
    source: Source::common_practice("workshop practice"),
};

/// Everything the card says.
pub(super) struct Answer {
    pub(super) thread: &'static Thread,
    pub(super) geometry: Geometry,
    pub(super) head: HeadOf,
    tapped_in: TappedIn,
    tapping: Option<DrillChoice>,
    pub(super) hexagon: Option<ScrewHexagon>,
    pub(super) held: Option<&'static Head>,
    pub(super) washer: Option<&'static Washer>,
}

impl Answer {
    pub(super) fn of(thread: &'static Thread, head: HeadOf, tapped_in: TappedIn) -> Self {
        let which = match head {
            HeadOf::Hexagon => Some(HexagonOf::Usual),
            HeadOf::SmallHexagon => Some(HexagonOf::OneSmaller),
            HeadOf::OldHexagon => Some(HexagonOf::Older),
            HeadOf::Countersunk | HeadOf::Cheese | HeadOf::Cap => None,
        };
        let kind = match head {
            HeadOf::Countersunk => Some(HeadKind::Countersunk),
            HeadOf::Cheese => Some(HeadKind::Cheese),
            HeadOf::Cap => Some(HeadKind::Cap),
            HeadOf::Hexagon | HeadOf::SmallHexagon | HeadOf::OldHexagon => None,
        };
        Self {
            thread,
            geometry: geometry(thread),
            head,
            tapped_in,
            tapping: tapped_in.choice(thread).ok(),
            hexagon: which.and_then(|which| hexagon(thread, which)),
            held: kind.and_then(|kind| fasteners::head(kind, thread)),
            washer: washer(thread),
        }
    }

    pub(super) fn heading(&self) -> String {
        format!("{}, {}", self.thread.designation, self.head.words())
    }

    pub(super) const fn major(&self) -> Length {
        self.geometry.major
    }

    pub(super) fn tapping_words(&self) -> String {
        self.tapping.as_ref().map_or_else(
            || "Bored: no drill held is of its size".to_owned(),
            |choice| {
                let chosen = choice.planned();
                let percent = print::percent(chosen.engagement_percent);
                format!("{}, {percent}", chosen.drill.label)
            },
        )
    }

    pub(super) fn tapped_in(&self) -> String {
        let is_beyond = |choice: &DrillChoice| choice.planned().within_standard == Some(false);
        let beyond = if self.tapping.as_ref().is_some_and(is_beyond) {
            "; the drill is beyond the standard’s largest hole"
        } else {
            ""
        };
        format!("{}{beyond}", print::sentence(&self.tapped_in.words()))
    }

    fn clearance(&self, fit: Fit) -> ClearanceHole {
        hole(self.thread, self.major(), fit)
    }

    pub(super) fn clearance_hole(&self, fit: Fit) -> Option<Sourced> {
        let clears = self.clearance(fit);
        Some((clears.hole, clears.basis.source()))
    }

    fn clearance_drill(&self, fit: Fit) -> Option<&'static Drill> {
        drill_for(self.clearance(fit).hole, drills::all().iter())
    }

    pub(super) fn clearance_words(&self, fit: Fit) -> Option<String> {
        self.clearance_drill(fit).map(|drill| drill.label.to_owned())
    }

    /// The hole of the medium fit, as it is drilled.
    pub(super) fn passing(&self) -> Length {
        let drill = self.clearance_drill(Fit::Medium);
        drill.map_or_else(|| self.clearance(Fit::Medium).hole, |drill| drill.diameter)
    }

    pub(super) fn across_flats(&self) -> Option<Sourced> {
        self.hexagon.as_ref().map(|hexagon| (hexagon.across_flats, hexagon.source))
    }

    pub(super) fn whose(&self) -> Option<(String, Source)> {
        self.hexagon.as_ref().map(|it| (print::sentence(&it.named), it.source))
    }

    /// `2 BA`, `10 mm`, `1/4 BS, marked 3/16 W when it was old, 0.445 in`.
    pub(super) fn spanner(&self) -> Option<(String, Source)> {
        let hexagon = self.hexagon.as_ref()?;
        let flats = hexagon.across_flats;
        let Some(row) = hexagon.row else {
            return hexagon.screw.map(|screw| (screw.designation.to_owned(), MARKS));
        };
        let nominal = print_inch(row.nominal);
        let words = match row.pattern {
            HexagonPattern::Iso | HexagonPattern::OldMetric => print::mm(flats, 2),
            HexagonPattern::UnifiedBolt | HexagonPattern::UnifiedSmall => {
                print_inch(row.across_flats)
            }
            HexagonPattern::OldWhitworth => {
                format!("{nominal} W, {}", print::inch(flats, 3))
            }
            HexagonPattern::Bs1083 => {
                let is_old = |old: &&fasteners::Hexagon| {
                    old.pattern == HexagonPattern::OldWhitworth
                        && in_mm(old.across_flats.length() - flats).abs() < 0.01
                };
                let old = fasteners::hexagons().find(is_old);
                let older = old
                    .map(|old| format!(", or {} W", print_inch(old.nominal)))
                    .unwrap_or_default();
                format!("{nominal} BS{older}, {}", print::inch(flats, 3))
            }
        };
        Some((words, MARKS))
    }

    /// The nut's own spanner, where it is not the bolt's.
    pub(super) fn nut_flats(&self) -> Option<Sourced> {
        let row = self.hexagon.as_ref()?.row?;
        row.nut_across_flats.map(|flats| (flats.length(), row.source))
    }

    pub(super) fn corners(&self) -> Option<Sourced> {
        let flats = self.hexagon.as_ref()?.across_flats;
        let nut = self.nut_flats().map_or(flats, |(nut, _)| nut);
        let widest = if nut > flats { nut } else { flats };
        Some((across_corners(widest), GEOMETRY))
    }

    pub(super) fn head_height(&self) -> Option<Sourced> {
        let of_hexagon = self.hexagon.as_ref().and_then(|it| Some((it.head?, it.source)));
        of_hexagon.or_else(|| self.held.map(|head| (head.height.length(), head.source)))
    }

    pub(super) fn nut_thickness(&self) -> Option<Sourced> {
        self.hexagon.as_ref().and_then(|it| Some((it.nut?, it.source)))
    }

    pub(super) fn head_diameter(&self) -> Option<Sourced> {
        let round = self.held.filter(|head| head.kind != HeadKind::Countersunk);
        round.map(|head| (head.diameter.length(), head.source))
    }

    pub(super) fn key(&self) -> Option<Sourced> {
        self.held.and_then(|head| Some((head.key?.length(), head.source)))
    }

    pub(super) fn countersink(&self) -> Option<HeadAngle> {
        (self.head == HeadOf::Countersunk).then(|| head_angle(Some(self.thread)))
    }

    /// The mouth, least and largest: one figure where the head is held, the usual range elsewhere.
    fn mouths(&self) -> Option<([Length; 2], Source)> {
        self.countersink()?;
        Some(self.held.map_or_else(
            || (usual_head(self.major()), USUAL_HEAD),
            |head| ([head.diameter.length(); 2], head.source),
        ))
    }

    pub(super) fn mouth(&self) -> Option<Sourced> {
        self.mouths().map(|([least, _], source)| (least, source))
    }

    /// The mouth of the largest of the usual heads, where none is held.
    pub(super) fn largest_mouth(&self) -> Option<Sourced> {
        let ([_, most], source) = self.mouths()?;
        self.held.is_none().then_some((most, source))
    }

    pub(super) fn sink(&self) -> Option<Sourced> {
        let (mouth, source) = self.mouth()?;
        Some((sink_depth(mouth, self.passing(), self.countersink()?.angle), source))
    }

    pub(super) fn counterbore(&self) -> Option<Sourced> {
        self.head_diameter().map(|(head, _)| (room_for(head), ROOM))
    }

    pub(super) fn counterbore_depth(&self) -> Option<Sourced> {
        self.head_diameter().and(self.head_height())
    }

    /// What takes room on the face: the corners of a hexagon, the counterbore or the mouth of another head, or
    /// the washer where that is wider.
    pub(super) fn bearing(&self) -> Option<Length> {
        let head = self
            .corners()
            .or_else(|| self.counterbore())
            .or_else(|| self.largest_mouth())
            .or_else(|| self.mouth());
        let washer = self.washer.filter(|_| self.takes_washer()).or_else(|| self.beside());
        let washer = washer.map(|washer| washer.outside.length());
        let sizes = head.map(|(size, _)| size).into_iter().chain(washer);
        sizes.reduce(|wide, size| if size > wide { size } else { wide })
    }

    pub(super) fn spotface(&self) -> Option<Sourced> {
        self.hexagon.as_ref()?;
        self.bearing().map(|wide| (room_for(wide), ROOM))
    }

    pub(super) fn edge(&self) -> Length {
        let wide = self.spotface().map(|(size, _)| size).or_else(|| self.bearing());
        least_edge(self.major(), wide.unwrap_or_default())
    }

    fn takes_washer(&self) -> bool {
        self.head != HeadOf::Countersunk
    }

    pub(super) fn washer_size(&self, of: fn(&Washer) -> Length) -> Option<Sourced> {
        let washer = self.washer.filter(|_| self.takes_washer())?;
        Some((of(washer), washer.source))
    }

    fn beside(&self) -> Option<&'static Washer> {
        if self.washer.is_some() || !self.takes_washer() {
            return None;
        }
        let close = hole_by_rule(self.major(), Fit::Close).hole;
        washers().find(|one| one.family == HeadFamily::Metric && one.inside.length() >= close)
    }

    /// A metric washer that goes over a screw no washer is held for.
    pub(super) fn washer_beside(&self) -> Option<(String, Source)> {
        let fits = self.beside()?;
        let [inside, outside] =
            [fits.inside, fits.outside].map(|size| print::trimmed(in_mm(size.length()), 2));
        let nominal = print::trimmed(in_mm(fits.nominal.length()), 2);
        Some((format!("M{nominal}: {inside} mm hole, {outside} mm across"), fits.source))
    }

    /// The screw and its head in the medium clearance hole, to scale.
    pub(super) fn drawing(&self) -> String {
        let view = FastenerView {
            screw: self.major(),
            minor: self.geometry.minor,
            hole: self.passing(),
            head: self.drawn_head(),
        };
        fastener(&view, DrawingIds::new("fastener"))
    }

    fn drawn_head(&self) -> DrawnHead {
        if let (Some((mouth, _)), Some((depth, _))) = (self.mouth(), self.sink()) {
            return DrawnHead::Countersunk { mouth, depth };
        }
        if let Some(hexagon) = &self.hexagon {
            return DrawnHead::Hexagon { across_flats: hexagon.across_flats, height: hexagon.head };
        }
        let Some(head) = self.held else { return DrawnHead::Unknown };
        let (diameter, height) = (head.diameter.length(), head.height.length());
        match head.kind {
            HeadKind::Cap => DrawnHead::Cap {
                diameter,
                height,
                counterbore: room_for(diameter),
                key: head.key.map(|key| key.length()),
            },
            HeadKind::Cheese | HeadKind::Countersunk => DrawnHead::Round { diameter, height },
        }
    }

    pub(super) fn notes(&self) -> Vec<Advice> {
        let pipe = matches!(
            self.thread.system,
            SystemId::Bspp | SystemId::Me40 | SystemId::Me32 | SystemId::Me26 | SystemId::Bsb
        );
        let metal = match self.tapped_in {
            TappedIn::Material(material) => material.pressure_work == PressureWork::Plausible,
            TappedIn::UsualGroup => false,
        };
        let pressure = (pipe || metal).then_some(PRESSURE);
        pressure.into_iter().chain([CLAMP, MEASURE, NO_STRENGTH]).collect()
    }
}

/// A size in inches as its source prints it: `7/16 in`.
fn print_inch(size: crate::units::Printed) -> String {
    match size {
        crate::units::Printed::Fraction(fraction) => fraction.to_string(),
        other => print::inch(other.length(), 3),
    }
}
