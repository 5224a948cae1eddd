//! Placeholder.

use super::{Form, System, SystemId};

pub(super) static BSPP: System = System {
    id: SystemId::Bspp,
    slug: "bspp",
    name: "BSPP",
    mark: "BSPP",
    standard: "",
    form: Form::Pipe,
    used_for: "",
    threads: &[],
};

pub(super) static BSPT: System = System {
    id: SystemId::Bspt,
    slug: "bspt",
    name: "BSPT",
    mark: "BSPT",
    standard: "",
    form: Form::Pipe,
    used_for: "",
    threads: &[],
};

pub(super) static NPT: System = System {
    id: SystemId::Npt,
    slug: "npt",
    name: "NPT",
    mark: "NPT",
    standard: "",
    form: Form::TaperPipe,
    used_for: "",
    threads: &[],
};

pub(super) static MODEL_TAPER_PIPE: System = System {
    id: SystemId::ModelTaperPipe,
    slug: "model-taper-pipe",
    name: "MODEL_TAPER_PIPE",
    mark: "MODEL_TAPER_PIPE",
    standard: "",
    form: Form::TaperPipe,
    used_for: "",
    threads: &[],
};
