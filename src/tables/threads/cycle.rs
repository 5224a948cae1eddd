//! Placeholder.

use super::{Form, System, SystemId};

pub(super) static SYSTEM: System = System {
    id: SystemId::Bsc,
    slug: "bsc",
    name: "SYSTEM",
    mark: "SYSTEM",
    standard: "",
    form: Form::Cycle,
    used_for: "",
    threads: &[],
};
