//! The doors for programs: figures, their description, the files beside the pages.

mod asking;
mod calc;
mod described;
mod description;
mod figures;
mod files;
mod plan;
mod reference_file;
mod search;
mod words;

use axum::http::StatusCode;
use serde_json::Value;

use crate::support::Answer;

#[track_caller]
pub(crate) fn body(answer: &Answer) -> Value {
    assert_eq!(answer.status, StatusCode::OK, "{}", answer.body);
    assert_eq!(answer.header("content-type"), "application/json");
    assert_eq!(answer.header("access-control-allow-origin"), "*");
    answer.json()
}

#[track_caller]
pub(crate) fn check_keys(value: &Value, keys: &[&str]) {
    let held = value.as_object().unwrap();
    for key in keys {
        assert!(held.contains_key(*key), "{key} in {value}");
    }
}

pub(crate) const THREAD: [&str; 13] = [
    "system",
    "size",
    "designation",
    "pitch_mm",
    "tpi",
    "major_mm",
    "effective_mm",
    "minor_mm",
    "minor_internal_mm",
    "thread_depth_mm",
    "thread_angle_deg",
    "tensile_area_mm2",
    "largest_hole_mm",
];
pub(crate) const DRILL: [&str; 5] = ["series", "size", "label", "diameter_mm", "diameter_in"];
