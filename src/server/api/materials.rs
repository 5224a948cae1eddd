//! Materials: names, groups, and every figure and sentence with its source.

use axum::extract::Path;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;

use super::{figures, reply};
use crate::server::Error;
use crate::tables::materials::feeds::FeedRange;
use crate::tables::materials::{self, Advice, SpeedRange};

#[derive(Debug, Serialize)]
struct Materials {
    materials: Vec<Brief>,
}

#[derive(Debug, Serialize)]
struct Brief {
    slug: &'static str,
    name: &'static str,
    designations: Vec<&'static str>,
    group: &'static str,
}

/// Everything held on a material.
#[derive(Debug, Serialize)]
pub(super) struct Material {
    #[serde(flatten)]
    brief: Brief,
    aliases: &'static [&'static str],
    known_as: &'static [&'static str],
    grabs: bool,
    work_hardens: bool,
    closes_in: bool,
    drilling_speeds: Vec<Speed>,
    tapping_speeds: Vec<Speed>,
    feeds: Vec<Feed>,
    drilling_lubricant: Sentence,
    tapping_lubricant: Sentence,
    back_off: Sentence,
    behaviour: Vec<Sentence>,
    broken_tap: Vec<Sentence>,
    cautions: Vec<Sentence>,
    dangers: Vec<Sentence>,
}

#[derive(Debug, Serialize)]
struct Sentence {
    text: &'static str,
    source: String,
}

#[derive(Debug, Serialize)]
struct Speed {
    low_m_per_min: f64,
    high_m_per_min: f64,
    printed_as: &'static str,
    source: String,
}

#[derive(Debug, Serialize)]
struct Feed {
    from_mm: f64,
    to_mm: Option<f64>,
    low_mm_per_rev: f64,
    high_mm_per_rev: f64,
    printed_as: &'static str,
    source: String,
}

/// `/materials`
///
/// # Errors
/// None that a request can cause.
pub async fn list(headers: HeaderMap) -> Result<Response, Error> {
    let materials = materials::all().iter().map(Brief::from).collect();
    reply::json(&headers, &Materials { materials })
}

/// `/materials/{slug}`; an alias answers too.
///
/// # Errors
/// No such material: 404.
pub async fn show(Path(slug): Path<String>, headers: HeaderMap) -> Result<Response, Error> {
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
        let sentences = |advice: &[Advice]| advice.iter().map(Sentence::from).collect();
        Self {
            brief: material.into(),
            aliases: material.aliases,
            known_as: material.known_as,
            grabs: material.grabs,
            work_hardens: material.work_hardens,
            closes_in: material.closes_in,
            drilling_speeds: material.drilling.iter().map(Speed::from).collect(),
            tapping_speeds: material.tapping.iter().map(Speed::from).collect(),
            feeds: material.feeds.iter().map(Feed::from).collect(),
            drilling_lubricant: Sentence::from(&material.drilling_lubricant),
            tapping_lubricant: Sentence::from(&material.tapping_lubricant),
            back_off: Sentence::from(&material.back_off),
            behaviour: sentences(material.behaviour),
            broken_tap: sentences(material.broken_tap.advice()),
            cautions: sentences(material.cautions),
            dangers: sentences(material.dangers),
        }
    }
}

impl From<&Advice> for Sentence {
    fn from(advice: &Advice) -> Self {
        Self { text: advice.text, source: figures::source(advice.source) }
    }
}

impl From<&SpeedRange> for Speed {
    fn from(range: &SpeedRange) -> Self {
        Self {
            low_m_per_min: figures::metres_per_minute(range.low),
            high_m_per_min: figures::metres_per_minute(range.high),
            printed_as: range.printed_as,
            source: figures::source(range.source),
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
        }
    }
}
