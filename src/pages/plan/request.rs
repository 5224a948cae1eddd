//! A plan's address: what was typed in each field, kept as typed, and the hole it describes.

use super::fields;
use super::words;
use crate::query::address;
use crate::{FieldError, Query};
use holewright_core::asking::{self, Choice, FITS, Line, Taken, Typed, keep, thread_taken};
use holewright_core::calc::machines::Machines;
use holewright_core::plan::{HoleSpec, Over, Scale};
use holewright_core::tables::drills::owned;
use holewright_core::tables::materials::Material;
use holewright_core::tables::threads::Thread;
use holewright_core::tables::threads::read::with_depth;
use holewright_core::units::read;

/// The fields of a plan by their names in the address, in the order a person thinks.
const NAMES: [&str; 23] = [
    "thread",
    "material",
    "hole",
    "depth",
    "over",
    "over_thickness",
    "upper_hole",
    "fit",
    "head",
    "aim",
    "series",
    "owned",
    "tap",
    "tap_steel",
    "finish",
    "hand",
    "part_thickness",
    "measured_hole",
    "screw",
    "centre_error",
    "point_angle",
    "spindle_speeds",
    "spindle_max",
];

/// What was typed in each field of a plan.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Request {
    query: Query,
    /// What the thread's field was taken for, where a depth was typed in it.
    with_depth: Option<Taken>,
}

impl Request {
    /// Reads a query, what follows the `?`. Parameters that are no fields of a plan are left alone.
    #[must_use]
    pub fn read(query: &str) -> Self {
        Self::of(Query::read(query))
    }

    /// The request a page's query makes. A depth typed behind the thread goes to its own field, where
    /// nothing stands there yet: it is the full thread of a blind hole.
    pub(crate) fn of(query: Query) -> Self {
        let query = query.cut(&NAMES);
        let mut taken_apart = query.clone();
        let Some((thread, depth)) =
            with_depth(query.get("thread")).filter(|_| query.get("depth").is_empty())
        else {
            return Self { query, with_depth: None };
        };
        taken_apart.put("thread", thread);
        taken_apart.put("depth", depth);
        taken_apart.put("hole", "blind");
        // A form always sends its hole, so `through` is not plainly chosen: the way back is offered.
        let was_through = query.get("hole").eq_ignore_ascii_case("through");
        let through = Choice { value: "through".into(), words: format!("through, {depth} thick") };
        let with_depth = Some(Taken {
            field: if was_through { "hole" } else { "thread" },
            typed: asking::quoted(query.get("thread")),
            taken_as: format!("{thread}, blind, {depth} deep"),
            why: "the depth stands in its own field now",
            others: if was_through { vec![through] } else { Vec::new() },
        });
        Self { query: taken_apart, with_depth }
    }

    /// A request that names a thread and nothing more.
    pub(super) fn for_thread(thread: &Thread) -> Self {
        Self::of(Query::of([("thread", thread.designation)]))
    }

    /// A request that names a metal and nothing more.
    pub(super) fn for_material(material: &Material) -> Self {
        Self::of(Query::of([("material", material.slug)]))
    }

    /// Reads a query straight into the hole it describes.
    ///
    /// # Errors
    /// As [`Self::spec`].
    ///
    /// # Examples
    /// ```
    /// use holewright_core::units::mm;
    /// use holewright_pages::plan::Request;
    /// let spec = Request::parse("thread=5ba&material=gunmetal&hole=blind&depth=8mm").unwrap();
    /// assert_eq!(spec.thread.designation, "5 BA");
    /// assert_eq!(spec.depth, Some(mm(8.0)));
    /// let errors = Request::parse("thread=5ba&material=unobtainium").unwrap_err();
    /// assert_eq!(errors.first().map(|error| error.field), Some("material"));
    /// ```
    pub fn parse(query: &str) -> Result<HoleSpec, Vec<FieldError>> {
        Self::read(query).spec()
    }

    /// What was typed in a field, trimmed; empty where nothing was.
    #[must_use]
    pub fn typed(&self, field: &str) -> &str {
        self.query.get(field)
    }

    /// The plan's address at a door: the fields that were filled, in one order.
    #[must_use]
    pub fn address(&self, path: &str) -> String {
        address(path, self.query.only(&NAMES))
    }

    /// The page's address with one field filled otherwise; the rest is kept.
    pub(super) fn address_with(&self, field: &str, value: &str) -> String {
        let filled = NAMES.into_iter().filter_map(|name| {
            let text = if name == field { value } else { self.typed(name) };
            (!text.is_empty()).then_some((name, text))
        });
        address("/plan", filled)
    }

    /// What was taken for one thing in it and could mean another.
    #[must_use]
    pub fn taken(&self) -> Vec<Taken> {
        let thread = Typed { field: "thread", text: self.typed("thread") };
        let owned = Typed { field: "owned", text: self.typed("owned") };
        let taken = [self.with_depth.clone(), thread_taken(thread), asking::owned_taken(owned)];
        taken.into_iter().flatten().collect()
    }

    /// The same without what a link is not to carry.
    pub(super) fn carried(&self, errors: &[FieldError]) -> Self {
        let held = NAMES.map(|field| Typed { field, text: self.typed(field) });
        let carried = held.into_iter().filter(|typed| asking::is_carried(errors, *typed));
        let query = Query::of(carried.map(|typed| (typed.field, typed.text)));
        Self { query, with_depth: None }
    }

    /// The hole it describes.
    ///
    /// # Errors
    /// One [`FieldError`] for each field that makes no sense, in the order of the form.
    pub fn spec(&self) -> Result<HoleSpec, Vec<FieldError>> {
        let at = |field| Typed { field, text: self.typed(field) };
        let mut errors: Vec<FieldError> =
            NAMES.into_iter().map(at).filter_map(asking::too_long).collect();
        if !errors.is_empty() {
            return Err(errors);
        }
        let hand = keep(&mut errors, at("hand").one_of(words::HANDS));
        let thread = keep(&mut errors, fields::thread(at("thread"), hand).map(Some));
        let material = keep(&mut errors, fields::material(at("material")).map(Some));
        let hole = keep(&mut errors, at("hole").one_of(words::HOLES));
        let line = |field, others: [&'static str; 2]| {
            let others = others.map(|other| self.typed(other));
            thread.map(|(thread, _)| (Line::of(thread, &others), thread, at(field)))
        };
        let length = |field, others| match line(field, others) {
            Some((line, _, typed)) => line.length(typed),
            None => at(field).length(),
        };
        let depth = match line("depth", ["over_thickness", "part_thickness"]) {
            Some((line, thread, typed)) => line.for_depth(thread).length(typed),
            None => at("depth").length(),
        };
        let depth = keep(&mut errors, depth);
        let metal = keep(&mut errors, fields::optional_material(at("over")));
        let thickness = keep(&mut errors, length("over_thickness", ["depth", "part_thickness"]));
        let upper_hole = keep(&mut errors, at("upper_hole").one_of(words::UPPER_HOLES));
        let over = metal.map(|material| Over { material, thickness, hole: upper_hole });
        let fit = keep(&mut errors, at("fit").one_of(FITS));
        let head = keep(&mut errors, at("head").one_of(words::HEADS));
        let aim = keep(&mut errors, at("aim").one_of(words::AIMS));
        let series = keep(&mut errors, at("series").optional(owned::series));
        let listed = keep(&mut errors, at("owned").optional(owned::owned));
        let at_hand = keep(&mut errors, asking::in_both(at("owned"), series, listed));
        let tap = keep(&mut errors, at("tap").one_of(words::TAPS));
        let tap_steel = keep(&mut errors, at("tap_steel").one_of(words::TAP_STEELS));
        let finish = keep(&mut errors, at("finish").one_of(words::FINISHES));
        let part_thickness =
            keep(&mut errors, length("part_thickness", ["depth", "over_thickness"]));
        let measured_hole = keep(&mut errors, length("measured_hole", ["depth", "part_thickness"]));
        let screw = keep(&mut errors, fields::screw(at("screw")));
        let off = match line("centre_error", ["depth", "part_thickness"]) {
            Some((line, _, typed)) => line.for_centres().length(typed),
            None => at("centre_error").length(),
        };
        let centre_error = keep(&mut errors, off);
        let point_angle = keep(&mut errors, at("point_angle").optional(read::angle));
        let speeds =
            keep(&mut errors, at("spindle_speeds").optional(Machines::read)).unwrap_or_default();
        let fastest = keep(&mut errors, at("spindle_max").optional(read::spindle_speed));
        let machines = keep(&mut errors, asking::speeds_of(at("spindle_max"), speeds, fastest));

        let (Some((thread, hand)), Some(material), true) = (thread, material, errors.is_empty())
        else {
            return Err(errors);
        };
        let usual = HoleSpec::new(thread, material);
        Ok(HoleSpec {
            hand,
            hole,
            depth,
            scale: scale(self.typed("depth")),
            over,
            lone_thickness: thickness.filter(|_| over.is_none()),
            fit,
            head,
            centre_error,
            tap,
            tap_steel,
            aim,
            at_hand,
            machines,
            part_thickness,
            finish,
            point_angle: point_angle.unwrap_or(usual.point_angle),
            measured_hole,
            screw,
            ..usual
        })
    }
}

/// What a depth stop is set in: inches where the depth was typed in them.
fn scale(depth: &str) -> Scale {
    let depth = depth.to_lowercase();
    let is_metric = depth.contains("mm") || depth.contains("cm") || depth.contains("milli");
    let marks = ["in", "\"", "thou", "mil", "/", "½", "¼", "¾", "⅛", "⅜", "⅝", "⅞"];
    if !is_metric && marks.into_iter().any(|mark| depth.contains(mark)) {
        Scale::Inch
    } else {
        Scale::Metric
    }
}
