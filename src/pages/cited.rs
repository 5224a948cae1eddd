//! Sources as pages print them: title and grade, so that nothing recalled passes for published.

use super::sentence::set;
use holewright_core::tables::source::{Grade, Source};

/// A source in one line: `BS 93:1951 …`, or what stands in a source's place.
pub(crate) fn source(source: Source) -> String {
    match (source.grade, source.cite) {
        (Grade::Published, cite) => set(cite),
        // The grade says it all.
        (grade, "" | "workshop practice" | "recalled, no source read") => grade.to_string(),
        (Grade::CommonPractice, cite) => format!("{} (common practice)", set(cite)),
        (grade, cite) => format!("{} ({grade})", set(cite)),
    }
}
