//! Materials: names, groups, and every figure and sentence with its source.

use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use super::material_properties::Properties;
use super::problem::{Always, NotHeld};
use super::segments::Segments;
use super::{figures, reply};
use crate::Error;
use holewright_core::tables::materials::feeds::FeedRange;
use holewright_core::tables::materials::{
    self, Advice, Designation, SpeedRange, Validity, scrap, telling,
};

/// Every material.
#[derive(Debug, Serialize, ToSchema)]
struct Materials {
    /// The materials, in the order of the page.
    materials: Vec<Brief>,
}

/// A material's names.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = MaterialNames)]
struct Brief {
    /// Its word in addresses.
    #[schema(example = "gunmetal")]
    slug: &'static str,
    /// Its name.
    #[schema(example = "gunmetal")]
    name: &'static str,
    /// Its marks in standards: LG2, CW614N.
    designations: Vec<&'static str>,
    /// The group it is in for the engagement aimed at.
    #[schema(example = "iron-and-gunmetal")]
    group: &'static str,
}

/// Everything held on a material.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct Material {
    #[serde(flatten)]
    brief: Brief,
    /// Other words that answer in addresses.
    aliases: &'static [&'static str],
    /// Other names people use.
    other_names: &'static [&'static str],
    /// Its marks, with where they hold.
    marks: Vec<Mark>,
    /// Why it is not to be cut at all; null for all that may be.
    #[schema(required)]
    not_to_be_cut: Option<Sentence>,
    /// What a model engineer uses it for, and where it is found.
    uses: Vec<Sentence>,
    /// It pulls a drill in.
    grabs_drill: bool,
    /// It hardens under a rubbing drill.
    work_hardens: bool,
    /// A hole in it closes in after drilling.
    hole_closes_in: bool,
    #[serde(flatten)]
    properties: Properties,
    /// Cutting speeds with a high-speed steel drill, the one the plan uses first.
    drilling_speeds: Vec<Speed>,
    /// Cutting speeds with a high-speed steel reamer in a machine; may be empty.
    reaming_speeds: Vec<Speed>,
    /// Cutting speeds of a tap under power; the plan uses the gentlest.
    tapping_speeds: Vec<Speed>,
    /// Feeds printed for this metal alone, by drill diameter; may be empty.
    feeds: Vec<Feed>,
    /// What to put on the drill, in the words of the shed.
    on_the_drill: Sentence,
    /// What to put on the tap, in the words of the shed.
    on_the_tap: Sentence,
    /// What print has for the drill, as a mixture.
    drilling_lubricant: Sentence,
    /// What print has for the tap, as a mixture.
    tapping_lubricant: Sentence,
    /// How often to turn a hand tap back.
    back_off: Sentence,
    /// How to grind the drill for it.
    drill_advice: Vec<Sentence>,
    /// Which tap, and how to run it.
    tap_advice: Vec<Sentence>,
    /// How it behaves under drill and tap.
    behaviour: Vec<Sentence>,
    /// What may be done about a tap broken in it.
    broken_tap: Vec<Sentence>,
    /// What it must not be used for.
    not_for_use_in: Vec<Sentence>,
    /// What old or unmarked stock is mistaken for it.
    mistaken_for: Vec<Sentence>,
    /// How to tell it.
    telling: Telling,
    /// What can hurt the work.
    cautions: Vec<Sentence>,
    /// What can hurt the person: dust, fume, fire, lead.
    dangers: Vec<Sentence>,
}

/// A mark of a standard.
#[derive(Debug, Serialize, ToSchema)]
struct Mark {
    /// The mark.
    #[schema(example = "CC491K")]
    mark: &'static str,
    /// `current`, `old` for a standard withdrawn, `abroad` for another country's, the same metal or the nearest.
    #[schema(example = "current")]
    validity: &'static str,
    /// Where it was read, or what stands in a source's place.
    source: String,
    /// How far to trust it: `published`, `library`, `derived`, `common-practice`, `memory`.
    grade: &'static str,
}

/// Advice with its source.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Advice)]
pub(super) struct Sentence {
    /// The advice.
    text: &'static str,
    /// Where it was read, or what stands in a source's place.
    source: String,
    /// How far to trust it: `published`, `library`, `derived`, `common-practice`, `memory`.
    grade: &'static str,
}

/// How to tell a material from those it is mistaken for.
#[derive(Debug, Serialize, ToSchema)]
struct Telling {
    /// Magnet, colour, file and spark; the weight stands among the properties.
    tests: Vec<Test>,
    /// What tells it from its look-alikes.
    apart: Vec<Sentence>,
    /// Where a test can hurt.
    cautions: Vec<Sentence>,
    /// Parts from the scrap box that are usually of it.
    scrap: Vec<Scrap>,
}

/// One test.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = MaterialTest)]
struct Test {
    /// What is tried.
    #[schema(example = "Magnet")]
    test: &'static str,
    /// What it shows.
    shows: Sentence,
}

/// A part from the scrap box.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ScrapPart)]
struct Scrap {
    /// What people call it.
    words: &'static [&'static str],
    /// How to tell whether it is of this material.
    tell: Sentence,
}

/// A range of cutting speeds.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = CuttingSpeed)]
struct Speed {
    /// The slowest, in metres a minute.
    #[schema(example = 24.0)]
    low_m_per_min: f64,
    /// The fastest, in metres a minute; equal to the slowest where the source prints one figure.
    #[schema(example = 30.0)]
    high_m_per_min: f64,
    /// The metal in the source's own words: it may be wider than ours, or only near it.
    printed_as: &'static str,
    /// Where it was read.
    source: String,
    /// How far to trust it: `published`, `library`, `derived`, `common-practice`, `memory`.
    grade: &'static str,
}

/// A range of feeds for a range of drills.
#[derive(Debug, Serialize, ToSchema)]
struct Feed {
    /// The smallest drill it is printed for, in millimetres.
    from_mm: f64,
    /// The largest, itself included, in millimetres; null where the source says "and over".
    #[schema(required)]
    to_mm: Option<f64>,
    /// The finest, in millimetres a revolution.
    low_mm_per_rev: f64,
    /// The coarsest, in millimetres a revolution; equal to the finest where the source prints one figure.
    high_mm_per_rev: f64,
    /// The metal in the source's own words: it may be wider than ours, or only near it.
    printed_as: &'static str,
    /// Where it was read.
    source: String,
    /// How far to trust it: `published`, `library`, `derived`, `common-practice`, `memory`.
    grade: &'static str,
}

/// Every material, by name.
///
/// # Errors
/// The answer is in no form the program takes: 406.
#[utoipa::path(
    get,
    path = "/api/v1/materials",
    operation_id = "materials",
    tag = "materials",
    responses((status = 200, description = "Every material", body = Materials), Always)
)]
pub async fn list(headers: HeaderMap) -> Result<Response, Error> {
    let materials = materials::all().iter().map(Brief::from).collect();
    reply::json(&headers, &Materials { materials })
}

/// One material: every figure and sentence held, each with its source. An alias answers too.
///
/// # Errors
/// No such material: 404.
#[utoipa::path(
    get,
    path = "/api/v1/materials/{slug}",
    operation_id = "material",
    tag = "materials",
    params(("slug" = String, Path, description = "A material or an alias", example = "gunmetal")),
    responses(
        (status = 200, description = "Everything held on the material", body = Material),
        NotHeld,
        Always,
    )
)]
pub async fn show(Segments(slug): Segments<String>, headers: HeaderMap) -> Result<Response, Error> {
    let material = materials::find(&slug)
        .ok_or(Error::NotFound("no such material; /api/v1/materials lists them"))?;
    reply::json(&headers, &Material::from(material))
}

impl From<&'static materials::Material> for Brief {
    fn from(material: &'static materials::Material) -> Self {
        Self {
            slug: material.slug,
            name: material.name,
            designations: material.designations.iter().map(|known| known.mark).collect(),
            group: material.group.slug(),
        }
    }
}

impl From<&'static materials::Material> for Material {
    fn from(material: &'static materials::Material) -> Self {
        // Field by field, so that what a material gains does not compile before it is answered here.
        let &materials::Material {
            slug: _,
            name: _,
            aliases,
            known_as,
            designations,
            met_in,
            refused,
            group: _,
            family: _,
            chips: _,
            grabs,
            work_hardens,
            closes_in,
            properties,
            drilling,
            tapping,
            reaming,
            feeds,
            drilling_lubricant,
            tapping_lubricant,
            back_off,
            drill_advice,
            tap_advice,
            forming_tap: _,
            broken_tap,
            pressure_work: _,
            behaviour,
            not_for,
            salvage,
            cautions,
            dangers,
        } = material;
        let telling = material.telling();
        let sentences = |advice: &[Advice]| advice.iter().map(Sentence::from).collect();
        let speeds = |ranges: &[SpeedRange]| ranges.iter().map(Speed::from).collect();
        Self {
            brief: material.into(),
            aliases,
            other_names: known_as,
            marks: designations.iter().map(Mark::from).collect(),
            not_to_be_cut: refused.as_ref().map(Sentence::from),
            uses: sentences(met_in),
            grabs_drill: grabs,
            work_hardens,
            hole_closes_in: closes_in,
            properties: Properties::of(properties),
            drilling_speeds: speeds(drilling),
            reaming_speeds: speeds(reaming),
            tapping_speeds: speeds(tapping),
            feeds: feeds.iter().map(Feed::from).collect(),
            on_the_drill: Sentence::from(&material.on_the_drill()),
            on_the_tap: Sentence::from(&material.on_the_tap()),
            drilling_lubricant: Sentence::from(&drilling_lubricant),
            tapping_lubricant: Sentence::from(&tapping_lubricant),
            back_off: Sentence::from(&back_off),
            drill_advice: sentences(drill_advice),
            tap_advice: sentences(tap_advice),
            behaviour: sentences(behaviour),
            broken_tap: sentences(broken_tap.advice()),
            not_for_use_in: sentences(not_for),
            mistaken_for: sentences(salvage),
            telling: Telling {
                tests: telling.tests().into_iter().map(Test::from).collect(),
                apart: sentences(telling.apart),
                cautions: sentences(telling.cautions),
                scrap: scrap::of(material).map(Scrap::from).collect(),
            },
            cautions: cautions.iter().map(|caution| Sentence::from(&caution.advice)).collect(),
            dangers: dangers.iter().map(|danger| Sentence::from(&danger.advice)).collect(),
        }
    }
}

impl From<&Designation> for Mark {
    fn from(designation: &Designation) -> Self {
        Self {
            mark: designation.mark,
            validity: match designation.validity {
                Validity::Current => "current",
                Validity::Old => "old",
                Validity::Abroad => "abroad",
            },
            source: figures::source(designation.source),
            grade: designation.source.grade.slug(),
        }
    }
}

impl From<telling::Test> for Test {
    fn from(test: telling::Test) -> Self {
        Self { test: test.name, shows: Sentence::from(&test.shows) }
    }
}

impl From<&'static scrap::Scrap> for Scrap {
    fn from(part: &'static scrap::Scrap) -> Self {
        Self { words: part.words, tell: Sentence::from(&part.tell) }
    }
}

impl From<&Advice> for Sentence {
    fn from(advice: &Advice) -> Self {
        Self {
            text: advice.text,
            source: figures::source(advice.source),
            grade: advice.source.grade.slug(),
        }
    }
}

impl From<&SpeedRange> for Speed {
    fn from(range: &SpeedRange) -> Self {
        Self {
            low_m_per_min: figures::metres_per_minute(range.low),
            high_m_per_min: figures::metres_per_minute(range.high),
            printed_as: range.printed_as,
            source: figures::source(range.source),
            grade: range.source.grade.slug(),
        }
    }
}

impl From<&FeedRange> for Feed {
    fn from(range: &FeedRange) -> Self {
        Self {
            from_mm: figures::mm(range.from),
            to_mm: range.to.map(figures::mm),
            low_mm_per_rev: figures::mm(range.low),
            high_mm_per_rev: figures::mm(range.high),
            printed_as: range.printed_as,
            source: figures::source(range.source),
            grade: range.source.grade.slug(),
        }
    }
}
