//! Placeholder.

use super::{Form, System, SystemId};

pub(super) static ME_40: System = System {
    id: SystemId::Me40,
    slug: "me-40",
    name: "ME_40",
    mark: "ME_40",
    standard: "",
    form: Form::Whitworth,
    used_for: "",
    threads: &[],
};

pub(super) static ME_32: System = System {
    id: SystemId::Me32,
    slug: "me-32",
    name: "ME_32",
    mark: "ME_32",
    standard: "",
    form: Form::Whitworth,
    used_for: "",
    threads: &[],
};

pub(super) static ME_26: System = System {
    id: SystemId::Me26,
    slug: "me-26",
    name: "ME_26",
    mark: "ME_26",
    standard: "",
    form: Form::Whitworth,
    used_for: "",
    threads: &[],
};
