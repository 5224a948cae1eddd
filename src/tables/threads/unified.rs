//! Placeholder.

use super::{Form, System, SystemId};

pub(super) static UNC: System = System {
    id: SystemId::Unc,
    slug: "unc",
    name: "UNC",
    mark: "UNC",
    standard: "",
    form: Form::Unified,
    used_for: "",
    threads: &[],
};

pub(super) static UNF: System = System {
    id: SystemId::Unf,
    slug: "unf",
    name: "UNF",
    mark: "UNF",
    standard: "",
    form: Form::Unified,
    used_for: "",
    threads: &[],
};

pub(super) static UNEF: System = System {
    id: SystemId::Unef,
    slug: "unef",
    name: "UNEF",
    mark: "UNEF",
    standard: "",
    form: Form::Unified,
    used_for: "",
    threads: &[],
};

pub(super) static UNS: System = System {
    id: SystemId::Uns,
    slug: "uns",
    name: "UNS",
    mark: "UNS",
    standard: "",
    form: Form::Unified,
    used_for: "",
    threads: &[],
};

pub(super) static UNM: System = System {
    id: SystemId::Unm,
    slug: "unm",
    name: "UNM",
    mark: "UNM",
    standard: "",
    form: Form::Miniature,
    used_for: "",
    threads: &[],
};
