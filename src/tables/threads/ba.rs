//! British Association, BA 0 to 25: pitch and major diameter as printed.

use super::{Basic, Form, System, SystemId, Thread};
use crate::tables::source::Source;
use crate::units::{Pitch, Printed};

const BS_93: &[Source] = &[Source::published(
    "BS 93:1951 basic dimensions, as printed in Machinery's Handbook 31st ed. p. 2115",
)];

const fn ba(size: &'static str, designation: &'static str, pitch: f64, major: f64) -> Thread {
    Thread {
        system: SystemId::Ba,
        size,
        designation,
        basic: Basic::Major(Printed::Mm(major)),
        pitch: Pitch::Mm(pitch),
        taper: None,
        sources: BS_93,
        note: None,
    }
}

pub(super) static SYSTEM: System = System {
    id: SystemId::Ba,
    slug: "ba",
    name: "British Association",
    mark: "BA",
    standard: "BS 93:2008 (0 to 16)",
    form: Form::BritishAssociation,
    used_for: "Small screws in models, instruments and clocks",
    threads: &[ba("0", "0 BA", 1.00, 6.0), ba("5", "5 BA", 0.59, 3.2)],
};
