//! A list of bare sizes, `2,2.5,3.3,4.2,5`: where every one is a metric drill's and some can be nothing
//! else, all are millimetres.

use super::super::Series;
use super::super::read::read;

/// The list with its unit at every size, where it can be taken as millimetres throughout: two sizes or
/// more, each bare and that of a metric drill, and one at least with a decimal point that no drill of
/// another series has.
///
/// # Source
/// Common practice, no source: nobody mixes number drills with millimetres in one list without a word.
///
/// # Examples
/// ```
/// use holewright_core::tables::drills::owned::in_millimetres;
/// assert_eq!(in_millimetres("2,2.5,3.3").as_deref(), Some("2 mm, 2.5 mm, 3.3 mm"));
/// assert_eq!(in_millimetres("2, 5"), None);
/// assert_eq!(in_millimetres("46, 2.5"), None);
/// ```
#[must_use]
pub fn in_millimetres(list: &str) -> Option<String> {
    let sizes = list.split([',', '，', ';', '；', '\n', '\r']).map(str::trim);
    let sizes: Vec<&str> = sizes.filter(|size| !size.is_empty()).collect();
    let is_bare = |size: &&str| size.chars().all(|mark| mark.is_ascii_digit() || mark == '.');
    let is_taken = sizes.len() > 1
        && sizes.iter().all(is_bare)
        && sizes.iter().all(|size| is_of_metric(size))
        && sizes.iter().any(|size| size.contains('.') && is_only_metric(size));
    let with_unit = || sizes.iter().map(|size| format!("{size} mm")).collect::<Vec<_>>().join(", ");
    is_taken.then(with_unit)
}

/// Whether a metric drill has this size.
fn is_of_metric(size: &str) -> bool {
    read(&format!("{size} mm")).is_ok_and(|drill| drill.series == Series::Metric)
}

/// Whether it can be nothing but millimetres by itself.
fn is_only_metric(size: &str) -> bool {
    read(size).is_ok_and(|drill| drill.series == Series::Metric)
}
