//! The named sets of drills and taps that are ticked rather than typed, as the trade describes them.

/// A set of drills: one item of a list of drills.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DrillSet {
    /// The item, as a list of drills at hand writes it.
    pub item: &'static str,
    /// The words of a line: `1–6 × 0.1 mm`.
    pub words: &'static str,
    /// The words beside a tick.
    pub label: &'static str,
}

/// A set of taps: sizes of one system.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TapSet {
    /// Its item in a list of taps.
    pub item: &'static str,
    /// The words beside a tick and in a line.
    pub words: &'static str,
    /// The system's address part.
    pub system: &'static str,
    /// The sizes, as addresses write it.
    pub sizes: &'static [&'static str],
}

/// The sets of drills, in the order of the form and of every list.
#[rustfmt::skip]
pub static DRILL_SETS: [DrillSet; 13] = [
    drills("1-60", "1–60", "Number 1 to 60"),
    drills("61-80", "61–80", "Number 61 to 80"),
    drills("A-Z", "A–Z", "Letter A to Z"),
    drills("1/16-1/4x64ths", "1/16–1/4 × 1/64 in", "1/16 to 1/4 in by 64ths"),
    drills("1/16-3/8x64ths", "1/16–3/8 × 1/64 in", "1/16 to 3/8 in by 64ths"),
    drills("1/16-1/2x64ths", "1/16–1/2 × 1/64 in", "1/16 to 1/2 in by 64ths"),
    drills("1/16-1/2x32nds", "1/16–1/2 × 1/32 in", "1/16 to 1/2 in by 32nds"),
    drills("0.5-1x0.1mm", "0.5–1 × 0.1 mm", "0.5 to 1 mm by 0.1"),
    drills("1-3x0.05mm", "1–3 × 0.05 mm", "1 to 3 mm by 0.05"),
    drills("1-6x0.1mm", "1–6 × 0.1 mm", "1 to 6 mm by 0.1"),
    drills("6-10x0.1mm", "6–10 × 0.1 mm", "6 to 10 mm by 0.1"),
    drills("1-10x0.5mm", "1–10 × 0.5 mm", "1 to 10 mm by 0.5"),
    drills("1-13x0.5mm", "1–13 × 0.5 mm", "1 to 13 mm by 0.5"),
];

/// The sets of taps, in the order of the form and of every list.
#[rustfmt::skip]
pub static TAP_SETS: [TapSet; 16] = [
    taps("BA 0-10", "BA, 0 to 10", "ba", &["0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10"]),
    taps("BA even 0-10", "BA, the even sizes 0 to 10", "ba", &["0", "2", "4", "6", "8", "10"]),
    taps("BA 11-16", "BA, 11 to 16", "ba", &["11", "12", "13", "14", "15", "16"]),
    taps("ME 40 1/8-1/4", "ME 40 tpi, 1/8 to 1/4", "me-40", &["1-8", "5-32", "3-16", "7-32", "1-4"]),
    taps("ME 40 5/16-1/2", "ME 40 tpi, 5/16 to 1/2", "me-40", &["5-16", "3-8", "7-16", "1-2"]),
    taps("ME 32 1/4-1/2", "ME 32 tpi, 1/4 to 1/2", "me-32", &["1-4", "5-16", "3-8", "7-16", "1-2"]),
    taps("ME 26 3/8-1/2", "ME 26 tpi, 3/8 to 1/2", "me-26", &["3-8", "7-16", "1-2"]),
    taps("BSB 1/4-1/2", "Brass 26 tpi, 1/4 to 1/2", "bsb", &["1-4", "5-16", "3-8", "7-16", "1-2"]),
    taps("BSW 1/8-1/2", "BSW, 1/8 to 1/2", "bsw", &["1-8", "5-32", "3-16", "1-4", "5-16", "3-8", "7-16", "1-2"]),
    taps("BSF 3/16-1/2", "BSF, 3/16 to 1/2", "bsf", &["3-16", "7-32", "1-4", "5-16", "3-8", "7-16", "1-2"]),
    taps("G 1/8-1/2", "BSP parallel, 1/8 to 1/2", "bspp", &["1-8", "1-4", "3-8", "1-2"]),
    taps("M1-M1.8", "Metric, M1 to M1.8", "metric", &["m1", "m1.2", "m1.4", "m1.6", "m1.8"]),
    taps("M2-M6", "Metric, M2 to M6", "metric", &["m2", "m2.5", "m3", "m4", "m5", "m6"]),
    taps("M8-M12", "Metric, M8 to M12", "metric", &["m8", "m10", "m12"]),
    taps("UNC 2-10", "UNC, No. 2 to No. 10", "unc", &["2-56", "4-40", "6-32", "8-32", "10-24"]),
    taps("UNF 0-10", "UNF, No. 0 to No. 10", "unf", &["0-80", "2-64", "4-48", "6-40", "8-36", "10-32"]),
];

const fn drills(item: &'static str, words: &'static str, label: &'static str) -> DrillSet {
    DrillSet { item, words, label }
}

const fn taps(
    item: &'static str,
    words: &'static str,
    system: &'static str,
    sizes: &'static [&'static str],
) -> TapSet {
    TapSet { item, words, system, sizes }
}
