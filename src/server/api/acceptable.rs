//! Whether a program takes the form an answer has: its `Accept` header (RFC 9110, 12.5.1).

use axum::http::HeaderMap;
use axum::http::header::ACCEPT;

/// Whether `Accept` allows this media type. Without the header every form will do. The most
/// specific range that covers the type decides, and weight 0 is a no.
pub(super) fn is_acceptable(request: &HeaderMap, media: &str) -> bool {
    let ranges: Vec<&str> = request
        .get_all(ACCEPT)
        .iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(|value| value.split(','))
        .map(str::trim)
        .filter(|range| !range.is_empty())
        .collect();
    let family = media.split_once('/').map_or(media, |(family, _)| family);
    let best = ranges
        .iter()
        .filter_map(|range| {
            let (name, parameters) = range.split_once(';').unwrap_or((*range, ""));
            let name = name.trim();
            let specific = if name.eq_ignore_ascii_case(media) {
                2
            } else if name.strip_suffix("/*").is_some_and(|own| own.eq_ignore_ascii_case(family)) {
                1
            } else if name == "*/*" {
                0
            } else {
                return None;
            };
            Some((specific, !is_refused(parameters)))
        })
        .max();
    ranges.is_empty() || best.is_some_and(|(_, taken)| taken)
}

/// `q=0`, `q=0.000`: not this one.
fn is_refused(parameters: &str) -> bool {
    parameters
        .split(';')
        .filter_map(|parameter| parameter.split_once('='))
        .filter(|(name, _)| name.trim().eq_ignore_ascii_case("q"))
        .any(|(_, weight)| weight.trim().parse::<f64>().is_ok_and(|weight| weight <= 0.0))
}
