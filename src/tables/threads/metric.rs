//! Placeholder.

use super::{Form, System, SystemId};

pub(super) static COARSE: System = System {
    id: SystemId::Metric,
    slug: "metric",
    name: "COARSE",
    mark: "COARSE",
    standard: "",
    form: Form::IsoMetric,
    used_for: "",
    threads: &[],
};

pub(super) static FINE: System = System {
    id: SystemId::MetricFine,
    slug: "metric-fine",
    name: "FINE",
    mark: "FINE",
    standard: "",
    form: Form::IsoMetric,
    used_for: "",
    threads: &[],
};

pub(super) static MINIATURE: System = System {
    id: SystemId::Miniature,
    slug: "miniature",
    name: "MINIATURE",
    mark: "MINIATURE",
    standard: "",
    form: Form::Miniature,
    used_for: "",
    threads: &[],
};
