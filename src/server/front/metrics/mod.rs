//! How long answers take, counted by route template, method and status: what an operator watches.
//!
//! - `listener`: the second listener, that shows the figures.
//!
//! Nothing a client sends becomes a label: a route is named as the route table and the pages name it
//! ([`crate::front::place`]), so that there are as many as there are routes.

mod listener;

use std::collections::HashMap;
use std::sync::atomic::AtomicU64;
use std::sync::{Mutex, PoisonError};
use std::time::Duration;

use axum::http::{Method, StatusCode};
use prometheus_client::encoding::{EncodeLabelSet, prometheus_text};
use prometheus_client::metrics::family::Family;
use prometheus_client::metrics::gauge::Gauge;
use prometheus_client::metrics::histogram::Histogram;
use prometheus_client::metrics::info::Info;
use prometheus_client::registry::{Registry, Unit};

pub use listener::{CannotListen, MetricsListener};

/// Bounds of the histogram in seconds. Among them the bars of a page: half of them within 3 ms, 99
/// of a hundred within 20 ms.
const BOUNDS: [f64; 5] = [0.001, 0.003, 0.02, 0.1, 1.0];

/// Label sets that each route has for itself besides its reading with 200. A client can bring about any
/// status at a route, so that after these they are counted together, by class of status; what it does at
/// one route leaves the others theirs.
const OTHERS: usize = 4;

/// The figures of this process.
#[derive(Debug)]
pub struct Metrics {
    registry: Registry,
    durations: Family<Labels, Histogram>,
    last_backup: Gauge<f64, AtomicU64>,
    made: Mutex<Made>,
}

#[derive(Clone, Debug, PartialEq, Eq, Hash, EncodeLabelSet)]
struct Labels {
    route: &'static str,
    method: &'static str,
    status: String,
}

#[derive(Clone, Debug, PartialEq, Eq, Hash, EncodeLabelSet)]
struct Build {
    version: &'static str,
}

/// How many label sets each route has besides its reading.
type Made = HashMap<&'static str, usize>;

impl Default for Metrics {
    fn default() -> Self {
        let mut registry = Registry::default();
        let durations = Family::new_with_constructor(histogram as fn() -> Histogram);
        registry.register_with_unit(
            "http_server_request_duration",
            "Time from a whole request head to the head of its answer",
            Unit::Seconds,
            durations.clone(),
        );
        let build = Build { version: env!("CARGO_PKG_VERSION") };
        registry.register("holewright_build", "The program that runs", Info::new(build));
        let last_backup = Gauge::default();
        registry.register_with_unit(
            "holewright_last_backup_age",
            "Time since a backup was last saved; infinite where none is known",
            Unit::Seconds,
            last_backup.clone(),
        );
        Self { registry, durations, last_backup, made: Mutex::default() }
    }
}

impl Metrics {
    /// Counts an answer. `route` is a template, never a path.
    pub fn answered(
        &self,
        route: &'static str,
        method: &Method,
        status: StatusCode,
        took: Duration,
    ) {
        let labels = Labels { route, method: known(method), status: status.as_str().to_owned() };
        let labels = if self.has_room_for(&labels) { labels } else { Labels::shared(status) };
        self.durations.get_or_create(&labels).observe(took.as_secs_f64());
    }

    /// The figures in the Prometheus text format, with the age of the last backup in seconds, if there is
    /// one.
    #[must_use]
    pub fn text(&self, last_backup: Option<u32>) -> String {
        // An alarm on an age rings where there is none, as it must.
        self.last_backup.set(last_backup.map_or(f64::INFINITY, f64::from));
        let mut text = String::new();
        // Writing into a `String` cannot fail; were it to, an empty answer is an honest one.
        if prometheus_text::encode(&mut text, &self.registry).is_err() {
            text.clear();
        }
        text
    }

    /// Whether this label set is there or may still be made; if so it is counted as there.
    fn has_room_for(&self, labels: &Labels) -> bool {
        if self.durations.get(labels).is_some() {
            return true;
        }
        let mut made = self.made.lock().unwrap_or_else(PoisonError::into_inner);
        // Made by another request while this one waited.
        if self.durations.get(labels).is_some() {
            return true;
        }
        if labels.method != "GET" || labels.status != "200" {
            let others = made.entry(labels.route).or_default();
            if *others == OTHERS {
                return false;
            }
            *others += 1;
        }
        drop(self.durations.get_or_create(labels));
        true
    }
}

impl Labels {
    /// What answers are counted under when there is no room for their own.
    fn shared(status: StatusCode) -> Self {
        let class = status.as_u16() / 100;
        Self { route: "any", method: "any", status: format!("{class}xx") }
    }
}

/// A method we answer, by name; any other under one name.
fn known(method: &Method) -> &'static str {
    match *method {
        Method::GET => "GET",
        Method::HEAD => "HEAD",
        _ => "other",
    }
}

fn histogram() -> Histogram {
    Histogram::new(BOUNDS)
}
