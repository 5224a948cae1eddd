//! Where each depth of a section stands on the sheet: one scale for both axes, and a break where a
//! length is too great to show, or was not given.

use crate::drawing::hole_section::section::{Bottom, Section};
use crate::units::{Length, degrees, in_degrees, in_mm, mm};

/// Tallest metal drawn.
const TALLEST: f64 = 190.0;
/// Narrowest thread drawn: below this its thin line runs into its thick one.
const NARROWEST: f64 = 30.0;
/// Widest thread drawn: beyond this a small screw looks like a pipe.
const WIDEST: f64 = 62.0;
/// Metal shown, in diameters of the widest hole.
const METAL_SHOWN: f64 = 2.5;
/// A stretch is never cut shorter than this.
const SHORTEST_CUT: f64 = 54.0;
/// The solid metal under a blind hole is cut to this.
const SOLID_CUT: f64 = 46.0;
/// Gap between two break lines.
const GAP: f64 = 8.0;
/// A stretch not given is drawn this many diameters long.
const NOMINAL: f64 = 1.5;
/// Sizes beyond these are typing slips; they are drawn at the limit so that nothing overflows.
const SMALLEST: Length = mm(0.01);
const LARGEST: Length = mm(10_000.0);

/// Drawing units to the millimetre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Scale(f64);

impl Scale {
    /// A length on the sheet.
    pub(super) fn of(self, length: Length) -> f64 {
        self.0 * in_mm(length)
    }
}

/// Depths on the sheet.
#[derive(Clone, Debug)]
pub(super) struct Axial {
    pub(super) scale: Scale,
    stretches: Vec<Stretch>,
}

/// The depths that shape the metal, each not above the one before; but the bottom may lie anywhere
/// below the face, and what is below it is air.
#[derive(Clone, Copy, Debug)]
pub(super) struct Levels {
    /// Face of the upper part; the tapped part's own face where there is none.
    pub(super) top: Length,
    /// End of full thread.
    pub(super) full_thread: Length,
    /// End of the drill's full diameter; of the metal in a through hole.
    pub(super) full_diameter: Length,
    /// Tip of the drilled cone.
    pub(super) tip: Length,
    /// Far face, or where the drawing stops if that is not known.
    pub(super) bottom: Length,
}

/// A length along the hole between two depths that matter.
#[derive(Clone, Copy, Debug)]
struct Stretch {
    from: Length,
    to: Length,
    top: f64,
    drawn: f64,
    shown: Shown,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Shown {
    /// To scale from end to end.
    Whole,
    /// Too long to show whole.
    Cut,
    /// Of unknown length.
    Unknown,
}

/// Whether and why a stretch was broken.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Broken {
    /// Somewhere a length was too great to show.
    pub(super) too_long: bool,
    /// Somewhere a length was not given.
    pub(super) unknown: bool,
}

/// A length kept to what can be drawn.
pub(super) fn sane(length: Length) -> Length {
    if length >= SMALLEST { length.min(LARGEST) } else { SMALLEST }
}

/// Radius of the widest hole drawn.
pub(super) fn widest_radius(section: &Section) -> Length {
    let major = sane(section.major).max(sane(section.tapping.diameter));
    let clearance = section.upper.as_ref().map_or(major, |upper| sane(upper.clearance.diameter));
    major.max(clearance) / 2.0
}

/// The depths that shape the metal.
pub(super) fn levels(section: &Section) -> Levels {
    let nominal = sane(section.major) * NOMINAL;
    let top =
        -section.upper.as_ref().map_or(mm(0.0), |upper| upper.thickness.map_or(nominal, sane));
    match section.bottom {
        Bottom::Through { thickness } => {
            let bottom = thickness.map_or(nominal, sane);
            Levels { top, full_thread: bottom, full_diameter: bottom, tip: bottom, bottom }
        }
        Bottom::Blind { depths, part_thickness } => {
            let full_thread = depths.map_or(nominal, |depths| sane(depths.full_thread));
            let full_diameter = depths
                .map_or(nominal * 1.4, |depths| sane(depths.drill_full_diameter))
                .max(full_thread);
            let tip = full_diameter + point_length(section);
            let below = tip + sane(section.major) * 0.6;
            Levels {
                top,
                full_thread,
                full_diameter,
                tip,
                bottom: part_thickness.map_or(below, sane),
            }
        }
    }
}

/// From the end of the drill's full diameter to its tip.
fn point_length(section: &Section) -> Length {
    let half = in_degrees(section.point_angle) / 2.0;
    let half = degrees(if half.is_finite() { half.clamp(30.0, 90.0) } else { 59.0 });
    sane(section.tapping.diameter) / 2.0 / libm::tan(half.value)
}

/// Lays a section out downwards from `top`, in metal `width` wide.
pub(super) fn lay_out(section: &Section, width: f64, top: f64) -> Axial {
    let levels = levels(section);
    let stretches = stretches(section, levels);
    // Solid metal under the hole counts for little: it can be cut short and nothing is lost.
    let solid = sane(section.major);
    let length: f64 = stretches
        .iter()
        .filter(|stretch| stretch.shown == Shown::Whole)
        .map(|stretch| (stretch.from, stretch.to - stretch.from))
        .map(|(from, long)| in_mm(if from >= levels.tip { long.min(solid) } else { long }))
        .sum();
    let major = in_mm(sane(section.major));
    let broadest = (width / METAL_SHOWN / in_mm(widest_radius(section) * 2.0)).min(WIDEST / major);
    let scale =
        Scale((TALLEST / length.max(1e-9)).clamp(NARROWEST / major, WIDEST / major).min(broadest));
    let mut axial = Axial { scale, stretches };
    axial.draw();
    axial.cut(levels.tip);
    axial.stack(top);
    axial
}

fn stretches(section: &Section, levels: Levels) -> Vec<Stretch> {
    let part_known = match section.bottom {
        Bottom::Through { thickness } => thickness.is_some(),
        Bottom::Blind { depths, .. } => depths.is_some(),
    };
    let upper_known = section.upper.as_ref().is_none_or(|upper| upper.thickness.is_some());
    let zero = mm(0.0);
    let mut depths = vec![levels.top, zero, levels.full_thread, levels.full_diameter, levels.tip];
    depths.push(levels.bottom);
    depths.sort_by(|a, b| in_mm(*a).total_cmp(&in_mm(*b)));
    depths
        .iter()
        .zip(depths.iter().skip(1))
        .filter(|(from, to)| to > from)
        .map(|(&from, &to)| {
            let known =
                if from < zero { upper_known } else { part_known || from >= levels.full_thread };
            let shown = if known { Shown::Whole } else { Shown::Unknown };
            Stretch { from, to, top: 0.0, drawn: 0.0, shown }
        })
        .collect()
}

impl Axial {
    /// Gives every stretch its length at the scale.
    fn draw(&mut self) {
        for stretch in &mut self.stretches {
            stretch.drawn = self.scale.of(stretch.to - stretch.from);
            if stretch.shown == Shown::Unknown {
                stretch.drawn = stretch.drawn.clamp(SHORTEST_CUT, TALLEST / 3.0);
            }
        }
    }

    /// Cuts stretches until the whole is no taller than the sheet allows: first the solid metal under
    /// a blind hole, then the longest.
    fn cut(&mut self, tip: Length) {
        let most = if self.height() > TALLEST { SOLID_CUT + GAP } else { SOLID_CUT * 1.5 };
        for stretch in self.stretches.iter_mut().filter(|stretch| stretch.from >= tip) {
            if stretch.shown == Shown::Whole && stretch.drawn > most {
                stretch.cut_to(SOLID_CUT);
            }
        }
        let excess = self.height() - TALLEST;
        if excess < 0.5 {
            return;
        }
        // The longest are cut to one common length, found by halving the range it can lie in.
        let lengths: Vec<f64> = self.cuttable().map(|stretch| stretch.drawn).collect();
        let (mut least, mut most) = (SHORTEST_CUT, TALLEST);
        for _ in 0..20 {
            let common = f64::midpoint(least, most);
            let saved: f64 = lengths.iter().map(|length| (length - common).max(0.0)).sum();
            if saved < excess { most = common } else { least = common }
        }
        for stretch in self.cuttable().filter(|stretch| stretch.drawn > least) {
            stretch.cut_to(least - GAP);
        }
    }

    fn cuttable(&mut self) -> impl Iterator<Item = &mut Stretch> {
        self.stretches
            .iter_mut()
            .filter(|stretch| stretch.shown == Shown::Whole && stretch.drawn > SHORTEST_CUT)
    }

    fn stack(&mut self, top: f64) {
        let mut y = top;
        for stretch in &mut self.stretches {
            stretch.top = y;
            y += stretch.drawn;
        }
    }

    fn height(&self) -> f64 {
        self.stretches.iter().map(|stretch| stretch.drawn).sum()
    }

    /// Where a depth stands. Inside a broken stretch it holds near the ends alone.
    pub(super) fn y(&self, depth: Length) -> f64 {
        let mut below = 0.0;
        for stretch in &self.stretches {
            if depth <= stretch.to {
                return stretch.y(self.scale, depth);
            }
            below = stretch.top + stretch.drawn;
        }
        below
    }

    /// The gaps between break lines, from y to y, from the top.
    pub(super) fn gaps(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        self.stretches.iter().filter(|stretch| stretch.shown != Shown::Whole).map(|stretch| {
            let middle = stretch.top + stretch.drawn / 2.0;
            (middle - GAP / 2.0, middle + GAP / 2.0)
        })
    }

    /// Why the drawing is broken, if it is.
    pub(super) fn broken(&self) -> Broken {
        let any = |shown| self.stretches.iter().any(|stretch| stretch.shown == shown);
        Broken { too_long: any(Shown::Cut), unknown: any(Shown::Unknown) }
    }
}

impl Stretch {
    fn cut_to(&mut self, drawn: f64) {
        self.drawn = drawn;
        self.shown = Shown::Cut;
    }

    fn y(&self, scale: Scale, depth: Length) -> f64 {
        let from_top = scale.of(depth - self.from).max(0.0);
        let from_bottom = scale.of(self.to - depth).max(0.0);
        match self.shown {
            Shown::Whole => self.top + from_top.min(self.drawn),
            _ if from_top < from_bottom => self.top + from_top.min(self.drawn / 2.0),
            _ => self.top + self.drawn - from_bottom.min(self.drawn / 2.0),
        }
    }
}
