//! Placeholder.

use super::{Form, System, SystemId};

pub(super) static BSW: System = System {
    id: SystemId::Bsw,
    slug: "bsw",
    name: "BSW",
    mark: "BSW",
    standard: "",
    form: Form::Whitworth,
    used_for: "",
    threads: &[],
};

pub(super) static BSF: System = System {
    id: SystemId::Bsf,
    slug: "bsf",
    name: "BSF",
    mark: "BSF",
    standard: "",
    form: Form::Whitworth,
    used_for: "",
    threads: &[],
};

pub(super) static BSB: System = System {
    id: SystemId::Bsb,
    slug: "bsb",
    name: "BSB",
    mark: "BSB",
    standard: "",
    form: Form::Whitworth,
    used_for: "",
    threads: &[],
};
