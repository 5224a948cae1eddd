//! The calculators: the pages' queries, the pages' figures.

use axum::extract::{Path, RawQuery};
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;

use super::drills::Drill;
use super::tapping::Candidate;
use super::{figures, reply};
use crate::calc::thread_form::engagement_basis;
use crate::pages::calculators::{clearance, speeds, tapping};
use crate::server::Error;
use crate::tables::clearance::Row;
use crate::tables::materials::SpeedRange;
use crate::tables::threads;
use crate::units::{Velocity, in_metres_per_minute, print};

/// `/calc/{name}?…`
///
/// # Errors
/// No such calculator: 404. A field that makes no sense: 422.
pub async fn show(
    Path(name): Path<String>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let query = query.as_deref().unwrap_or_default();
    match name.as_str() {
        "speeds" => {
            let found = speeds::Request::read(query).answer().map_err(Error::Invalid)?;
            reply::json(&headers, &Speeds::from(&found))
        }
        "tapping" => {
            let found = tapping::Request::read(query).answer().map_err(Error::Invalid)?;
            reply::json(&headers, &Tapping::from(&found))
        }
        "clearance" => {
            let found = clearance::Request::read(query).answer().map_err(Error::Invalid)?;
            reply::json(&headers, &Clearance::from(&found))
        }
        _ => Err(Error::NotFound("no calculator has this name")),
    }
}

/// A thread, by its address and its name.
#[derive(Debug, Serialize)]
struct ThreadName {
    system: &'static str,
    size: &'static str,
    designation: &'static str,
}

impl From<&'static threads::Thread> for ThreadName {
    fn from(thread: &'static threads::Thread) -> Self {
        Self {
            system: thread.system.system().slug,
            size: thread.size,
            designation: thread.designation,
        }
    }
}

#[derive(Debug, Serialize)]
struct Speeds {
    material: &'static str,
    work: &'static str,
    diameter_mm: f64,
    /// Null where no drill was named.
    drill: Option<Drill>,
    /// Null where no tap was named by its thread.
    thread: Option<ThreadName>,
    speed_low_rpm: f64,
    speed_high_rpm: f64,
    /// The first is the range gone by.
    in_print: Vec<Printed>,
    /// Null where no feed is in print, or the pitch of the tap is not known.
    feed: Option<Feed>,
    reach: &'static str,
    set: Option<AtHand>,
    at_hand: Vec<AtHand>,
}

/// A range in print.
#[derive(Debug, Serialize)]
struct Printed {
    printed_as: &'static str,
    surface_low_m_per_min: f64,
    surface_high_m_per_min: f64,
    source: String,
}

#[derive(Debug, Serialize)]
struct Feed {
    low_mm_per_rev: f64,
    high_mm_per_rev: f64,
    /// Null for a tap: its feed is its pitch.
    source: Option<String>,
}

/// A speed of the machine.
#[derive(Debug, Serialize)]
struct AtHand {
    speed_rpm: f64,
    surface_m_per_min: f64,
    feed_low_mm_per_min: Option<f64>,
    feed_high_mm_per_min: Option<f64>,
    verdict: &'static str,
    suits_up_to_mm: f64,
}

impl From<&speeds::Answer> for Speeds {
    fn from(found: &speeds::Answer) -> Self {
        let (drill, thread) = match found.tool {
            speeds::Tool::Drill(drill) => (Some(Drill::from(drill)), None),
            speeds::Tool::Tap(thread) => (None, Some(ThreadName::from(thread))),
            speeds::Tool::Size(_) => (None, None),
        };
        Self {
            material: found.material.slug,
            work: match found.work {
                speeds::Work::Drilling => "drilling",
                speeds::Work::Tapping => "tapping",
            },
            diameter_mm: figures::mm(found.tool.diameter()),
            drill,
            thread,
            speed_low_rpm: figures::rpm(found.low),
            speed_high_rpm: figures::rpm(found.high),
            in_print: found.in_print.iter().map(Printed::from).collect(),
            feed: found.feed.map(Feed::from),
            reach: match found.reach {
                speeds::Reach::NotSaid => "not-said",
                speeds::Reach::Within => "within",
                speeds::Reach::Between => "between",
                speeds::Reach::TooSlow => "too-slow",
                speeds::Reach::TooFast => "too-fast",
            },
            set: found.set.as_ref().map(AtHand::from),
            at_hand: found.at_hand.iter().map(AtHand::from).collect(),
        }
    }
}

impl From<&SpeedRange> for Printed {
    fn from(range: &SpeedRange) -> Self {
        Self {
            printed_as: range.printed_as,
            surface_low_m_per_min: figures::metres_per_minute(range.low),
            surface_high_m_per_min: figures::metres_per_minute(range.high),
            source: figures::source(range.source),
        }
    }
}

impl From<speeds::Feed> for Feed {
    fn from(feed: speeds::Feed) -> Self {
        Self {
            low_mm_per_rev: figures::mm(feed.low),
            high_mm_per_rev: figures::mm(feed.high),
            source: feed.source.map(figures::source),
        }
    }
}

impl From<&speeds::SpeedAtHand> for AtHand {
    fn from(found: &speeds::SpeedAtHand) -> Self {
        let feed = found.feed.map(|feed| feed.map(mm_per_minute));
        Self {
            speed_rpm: figures::rpm(found.speed),
            surface_m_per_min: figures::metres_per_minute(found.surface),
            feed_low_mm_per_min: feed.map(|[low, _]| low),
            feed_high_mm_per_min: feed.map(|[_, high]| high),
            verdict: match found.verdict {
                speeds::Verdict::Slow => "slow",
                speeds::Verdict::Within => "within",
                speeds::Verdict::Fast => "fast",
            },
            suits_up_to_mm: figures::mm(found.largest),
        }
    }
}

/// Millimetres a minute, to a tenth.
fn mm_per_minute(rate: Velocity) -> f64 {
    print::round(in_metres_per_minute(rate) * 1000.0, 1)
}

#[derive(Debug, Serialize)]
struct Tapping {
    /// Null for a thread no table holds.
    thread: Option<ThreadName>,
    major_mm: f64,
    pitch_mm: f64,
    tpi: f64,
    effective_mm: f64,
    minor_mm: f64,
    minor_internal_mm: f64,
    thread_depth_mm: f64,
    thread_angle_deg: f64,
    /// Null where no limit of the standard's is held.
    largest_hole_mm: Option<f64>,
    /// What every `engagement_percent` here is a percentage of.
    engagement_basis: &'static str,
    wanted: Wanted,
    /// Null where no hole was given.
    hole: Option<Left>,
    tapping: Vec<Candidate>,
}

#[derive(Debug, Serialize)]
struct Wanted {
    engagement_percent: f64,
    engagement_of_five_eighths_h_percent: Option<f64>,
    hole_mm: f64,
    nearest: Option<Candidate>,
}

#[derive(Debug, Serialize)]
struct Left {
    hole_mm: f64,
    drill: Option<Drill>,
    engagement_percent: f64,
    engagement_of_five_eighths_h_percent: Option<f64>,
    within_standard: Option<bool>,
    below_least_minor: bool,
}

impl From<&tapping::Answer> for Tapping {
    fn from(found: &tapping::Answer) -> Self {
        let subject = &found.subject;
        let geometry = &subject.geometry;
        Self {
            thread: subject.thread.map(ThreadName::from),
            major_mm: figures::mm(geometry.major),
            pitch_mm: figures::mm(geometry.pitch),
            tpi: figures::number(geometry.threads_per_inch),
            effective_mm: figures::mm(geometry.effective),
            minor_mm: figures::mm(geometry.minor),
            minor_internal_mm: figures::mm(geometry.minor_internal),
            thread_depth_mm: figures::mm(geometry.thread_depth),
            thread_angle_deg: figures::degrees(geometry.thread_angle),
            largest_hole_mm: subject.largest_hole.map(|limit| figures::mm(limit.diameter)),
            engagement_basis: engagement_basis(subject.form),
            wanted: Wanted {
                engagement_percent: figures::percent(found.wanted_percent),
                engagement_of_five_eighths_h_percent: found
                    .wanted_of_five_eighths_h
                    .map(figures::percent),
                hole_mm: figures::mm(found.hole),
                nearest: found.nearest.as_ref().map(Candidate::from),
            },
            hole: found.left.map(|left| Left {
                hole_mm: figures::mm(left.hole),
                drill: left.drill.map(Drill::from),
                engagement_percent: figures::percent(left.percent),
                engagement_of_five_eighths_h_percent: left
                    .percent_of_five_eighths_h
                    .map(figures::percent),
                within_standard: left.within_standard,
                below_least_minor: left.below_minor,
            }),
            tapping: found.candidates.iter().map(Candidate::from).collect(),
        }
    }
}

#[derive(Debug, Serialize)]
struct Clearance {
    /// Null for a screw given by its diameter.
    thread: Option<ThreadName>,
    major_mm: f64,
    screw_mm: f64,
    fit: &'static str,
    /// The hole to make: for the fit, or for the centres where they ask for more.
    hole_mm: f64,
    drill: Option<Drill>,
    /// Null where no centre error was given.
    for_errors: Option<ForErrors>,
    fits: Vec<Fit>,
    printed: Vec<PrintedHoles>,
}

#[derive(Debug, Serialize)]
struct ForErrors {
    hole_mm: f64,
    drill: Option<Drill>,
    fit_will_do: bool,
}

#[derive(Debug, Serialize)]
struct Fit {
    fit: &'static str,
    hole_mm: f64,
    drill: Option<Drill>,
    float_mm: Option<f64>,
    basis: String,
    source: String,
}

/// A row in print; the first is the ruling one, where there is one.
#[derive(Debug, Serialize)]
struct PrintedHoles {
    standard: String,
    close_mm: f64,
    medium_mm: f64,
    free_mm: f64,
    source: String,
}

impl From<&clearance::Answer> for Clearance {
    fn from(found: &clearance::Answer) -> Self {
        Self {
            thread: found.screw.thread.map(ThreadName::from),
            major_mm: figures::mm(found.screw.major),
            screw_mm: figures::mm(found.screw.size()),
            fit: found.fit.slug(),
            hole_mm: figures::mm(found.hole()),
            drill: found.drill().map(Drill::from),
            for_errors: found.for_errors.map(|errors| ForErrors {
                hole_mm: figures::mm(errors.hole),
                drill: errors.drill.map(Drill::from),
                fit_will_do: errors.fit_will_do,
            }),
            fits: found
                .fits
                .iter()
                .map(|(fit, drilled)| Fit::new(fit.slug(), drilled))
                .chain(found.model.iter().map(|drilled| Fit::new("model", drilled)))
                .collect(),
            printed: found
                .ruling
                .into_iter()
                .chain(found.also_printed.iter().copied())
                .map(PrintedHoles::from)
                .collect(),
        }
    }
}

impl Fit {
    fn new(fit: &'static str, drilled: &clearance::Drilled) -> Self {
        Self {
            fit,
            hole_mm: figures::mm(drilled.hole.hole),
            drill: drilled.drill.map(Drill::from),
            float_mm: drilled.float.map(figures::mm),
            basis: drilled.hole.basis.to_string(),
            source: figures::source(drilled.hole.basis.source()),
        }
    }
}

impl From<&'static Row> for PrintedHoles {
    fn from(row: &'static Row) -> Self {
        Self {
            standard: row.standard.to_string(),
            close_mm: figures::mm(row.close.length()),
            medium_mm: figures::mm(row.medium.length()),
            free_mm: figures::mm(row.free.length()),
            source: figures::source(row.source),
        }
    }
}
