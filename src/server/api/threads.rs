//! Thread systems, and threads with their tapping drills and clearance holes.

use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use super::clearance::{self, Clearance};
use super::problem::{Always, NotHeld};
use super::segments::Segments;
use super::tapping::Candidate;
use super::{figures, reply};
use crate::Error;
use holewright_core::calc::{limits, tapping, thread_form};
use holewright_core::tables::threads;

/// Every thread system.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct Systems {
    /// The systems, in the order of the page.
    systems: Vec<System>,
}

/// A thread system.
#[derive(Debug, Serialize, ToSchema)]
struct System {
    /// Its word in addresses.
    #[schema(example = "ba")]
    id: &'static str,
    /// Its name.
    #[schema(example = "British Association")]
    name: &'static str,
    /// The standard that sets it.
    standard: &'static str,
    /// Included angle of the thread form, in degrees.
    #[schema(example = 47.5)]
    thread_angle_deg: f64,
    /// How many sizes are held.
    #[schema(example = 26)]
    count: usize,
}

/// A thread system and its threads.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct SystemWithThreads {
    #[serde(flatten)]
    system: System,
    /// Every size, in the order of the page.
    threads: Vec<Thread>,
}

/// The figures of one thread.
#[derive(Debug, Serialize, ToSchema)]
pub(super) struct Thread {
    /// The id of its system.
    #[schema(example = "ba")]
    system: &'static str,
    /// The size in address dress.
    #[schema(example = "5")]
    size: &'static str,
    /// Its name in the shop.
    #[schema(example = "5 BA")]
    designation: &'static str,
    /// Pitch, in millimetres.
    #[schema(example = 0.59)]
    pitch_mm: f64,
    /// Threads per inch.
    #[schema(example = 43.0508)]
    tpi: f64,
    /// Major diameter, in millimetres.
    #[schema(example = 3.2)]
    major_mm: f64,
    /// Effective diameter, in millimetres.
    #[schema(example = 2.845)]
    effective_mm: f64,
    /// Minor diameter of the screw, in millimetres.
    #[schema(example = 2.49)]
    minor_mm: f64,
    /// Minor diameter of the nut, in millimetres.
    #[schema(example = 2.49)]
    minor_internal_mm: f64,
    /// Depth of thread of the screw, in millimetres.
    #[schema(example = 0.355)]
    thread_depth_mm: f64,
    /// Included angle of the thread form, in degrees.
    #[schema(example = 47.5)]
    thread_angle_deg: f64,
    /// Tensile stress area, in square millimetres.
    #[schema(example = 5.59)]
    tensile_area_mm2: f64,
    /// The largest minor diameter of the nut in the standard, in millimetres; null where none is held.
    #[schema(required, example = 2.711)]
    largest_hole_mm: Option<f64>,
    /// What is worth knowing of this size; null where nothing is.
    #[schema(required)]
    note: Option<&'static str>,
    /// Where the figures were read; a grade in brackets where not from the standard itself.
    sources: Vec<String>,
}

/// A thread with its tapping drills and clearance holes.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ThreadWithHoles {
    #[serde(flatten)]
    thread: Thread,
    /// Every drill of every series between 50 % and 90 % engagement, largest engagement first.
    tapping: Vec<Candidate>,
    /// The clearance holes; null for a taper thread, since its screw is meant to jam.
    #[schema(required)]
    clearance: Option<Clearance>,
}

/// Every thread system.
///
/// # Errors
/// The answer is in no form the program takes: 406.
#[utoipa::path(
    get,
    path = "/api/v1/threads",
    operation_id = "thread_systems",
    tag = "threads",
    responses((status = 200, description = "Every thread system", body = Systems), Always)
)]
pub async fn systems(headers: HeaderMap) -> Result<Response, Error> {
    reply::json(&headers, &Systems::all())
}

/// One thread system with the figures of its threads.
///
/// # Errors
/// No such system: 404.
#[utoipa::path(
    get,
    path = "/api/v1/threads/{system}",
    operation_id = "thread_system",
    tag = "threads",
    params(("system" = String, Path, description = "The id of a system", example = "ba")),
    responses(
        (status = 200, description = "The system and its threads", body = SystemWithThreads),
        NotHeld,
        Always,
    )
)]
pub async fn system(
    Segments(slug): Segments<String>,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let system = threads::system(&slug)
        .ok_or(Error::NotFound("no such thread system; /api/v1/threads lists them"))?;
    reply::json(&headers, &SystemWithThreads::from(system))
}

/// One thread, with every tapping drill worth listing and its clearance holes.
///
/// # Errors
/// No such thread: 404.
#[utoipa::path(
    get,
    path = "/api/v1/threads/{system}/{size}",
    operation_id = "thread",
    tag = "threads",
    params(
        ("system" = String, Path, description = "The id of a system", example = "ba"),
        ("size" = String, Path, description = "A size in address dress", example = "5"),
    ),
    responses(
        (status = 200, description = "The thread, its drills and its holes", body = ThreadWithHoles),
        NotHeld,
        Always,
    )
)]
pub async fn show(
    Segments((system, size)): Segments<(String, String)>,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let thread = threads::find(&system, &size)
        .ok_or(Error::NotFound("no such thread; /api/v1/threads/{system} lists the sizes"))?;
    reply::json(&headers, &ThreadWithHoles::from(thread))
}

impl Systems {
    /// Every system.
    pub(super) fn all() -> Self {
        Self { systems: threads::systems().iter().map(|system| System::from(*system)).collect() }
    }
}

impl From<&'static threads::System> for SystemWithThreads {
    fn from(system: &'static threads::System) -> Self {
        Self { system: system.into(), threads: system.threads.iter().map(Thread::from).collect() }
    }
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
