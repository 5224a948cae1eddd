//! Thread systems, and threads with their tapping drills and clearance holes.

use axum::extract::Path;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;

use super::clearance::{self, Clearance};
use super::tapping::Candidate;
use super::{figures, reply};
use crate::calc::{limits, tapping, thread_form};
use crate::server::Error;
use crate::tables::threads;

#[derive(Debug, Serialize)]
struct Systems {
    systems: Vec<System>,
}

#[derive(Debug, Serialize)]
struct System {
    id: &'static str,
    name: &'static str,
    standard: &'static str,
    thread_angle_deg: f64,
    count: usize,
}

#[derive(Debug, Serialize)]
struct SystemWithThreads {
    #[serde(flatten)]
    system: System,
    threads: Vec<Thread>,
}

/// The figures of one thread.
#[derive(Debug, Serialize)]
pub(super) struct Thread {
    system: &'static str,
    size: &'static str,
    designation: &'static str,
    pitch_mm: f64,
    tpi: f64,
    major_mm: f64,
    effective_mm: f64,
    minor_mm: f64,
    minor_internal_mm: f64,
    thread_depth_mm: f64,
    thread_angle_deg: f64,
    tensile_area_mm2: f64,
    largest_hole_mm: Option<f64>,
    note: Option<&'static str>,
    sources: Vec<String>,
}

#[derive(Debug, Serialize)]
struct ThreadWithHoles {
    #[serde(flatten)]
    thread: Thread,
    tapping: Vec<Candidate>,
    /// Null for a taper thread: its screw is meant to jam.
    clearance: Option<Clearance>,
}

/// `/threads`
///
/// # Errors
/// None that a request can cause.
pub async fn systems(headers: HeaderMap) -> Result<Response, Error> {
    let systems = threads::systems().iter().map(|system| System::from(*system)).collect();
    reply::json(&headers, &Systems { systems })
}

/// `/threads/{system}`
///
/// # Errors
/// No such system: 404.
pub async fn system(Path(slug): Path<String>, headers: HeaderMap) -> Result<Response, Error> {
    let system = threads::system(&slug)
        .ok_or(Error::NotFound("no such thread system; /api/v1/threads lists them"))?;
    let threads = system.threads.iter().map(Thread::from).collect();
    reply::json(&headers, &SystemWithThreads { system: system.into(), threads })
}

/// `/threads/{system}/{size}`
///
/// # Errors
/// No such thread: 404.
pub async fn show(
    Path((system, size)): Path<(String, String)>,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let thread = threads::find(&system, &size)
        .ok_or(Error::NotFound("no such thread; /api/v1/threads/{system} lists the sizes"))?;
    reply::json(&headers, &ThreadWithHoles::from(thread))
}

impl From<&'static threads::System> for System {
    fn from(system: &'static threads::System) -> Self {
        Self {
            id: system.slug,
            name: system.name,
            standard: system.standard,
            thread_angle_deg: figures::degrees(thread_form::thread_angle(system.form)),
            count: system.threads.len(),
        }
    }
}

impl From<&'static threads::Thread> for Thread {
    fn from(thread: &'static threads::Thread) -> Self {
        let geometry = thread_form::geometry(thread);
        let largest_hole = limits::largest_hole(thread, &geometry);
        Self {
            system: thread.system.system().slug,
            size: thread.size,
            designation: thread.designation,
            pitch_mm: figures::mm(geometry.pitch),
            tpi: figures::number(geometry.threads_per_inch),
            major_mm: figures::mm(geometry.major),
            effective_mm: figures::mm(geometry.effective),
            minor_mm: figures::mm(geometry.minor),
            minor_internal_mm: figures::mm(geometry.minor_internal),
            thread_depth_mm: figures::mm(geometry.thread_depth),
            thread_angle_deg: figures::degrees(geometry.thread_angle),
            tensile_area_mm2: figures::mm2(geometry.tensile_area),
            largest_hole_mm: largest_hole.map(|hole| figures::mm(hole.diameter)),
            note: thread.note,
            sources: thread.sources.iter().map(|source| figures::source(*source)).collect(),
        }
    }
}

impl From<&'static threads::Thread> for ThreadWithHoles {
    fn from(thread: &'static threads::Thread) -> Self {
        let major = thread_form::geometry(thread).major;
        let is_parallel = thread.taper.is_none();
        Self {
            // A taper thread has no engagement figure, so no drill is listed by it.
            tapping: tapping::candidates(thread)
                .map_or_else(|_| Vec::new(), |found| found.iter().map(Candidate::from).collect()),
            clearance: is_parallel.then(|| clearance::of(thread, major)),
            thread: thread.into(),
        }
    }
}
