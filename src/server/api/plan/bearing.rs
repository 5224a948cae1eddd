//! What the tap takes and what the thread carries.

use serde::Serialize;
use utoipa::ToSchema;

use crate::api::figures;
use holewright_core::plan;
use holewright_core::units::{Force, Torque, in_newton_metres, in_newtons, print};

/// A second tap by hand in the planned hole.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = PlannedTap)]
pub(super) struct TapEffort {
    /// Torque of the cut, in newton metres.
    cutting_torque_nm: f64,
    /// About what breaks the tap, in newton metres: an estimate, and no promise.
    breaking_torque_nm: f64,
    /// What is left between the two, in words.
    #[schema(example = "fair to ample")]
    margin_words: String,
    /// The metal whose figure is taken.
    #[schema(example = "CuZn40")]
    metal: &'static str,
    /// That figure is borrowed from another metal.
    borrowed: bool,
    /// Both torques are estimates.
    unconfirmed: bool,
    /// What the next easier drill alters; null where none is at hand.
    #[schema(required)]
    easier: Option<Compared>,
}

/// A drill beside the chosen one.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = EasierDrill)]
struct Compared {
    /// Its effort, of the effort with the chosen drill, as a percentage.
    effort_percent: f64,
    /// The strip area of the screw's thread with it, of that with the chosen drill, as a percentage.
    strength_percent: f64,
}

/// What the thread carries: loads at which something breaks, and none to use.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ThreadStrength)]
pub(super) struct Strength {
    /// Length of thread engaged, in millimetres.
    engaged_mm: f64,
    /// Length at which the screw breaks before a thread strips, in millimetres; null where there is none.
    #[schema(required)]
    strip_length_mm: Option<f64>,
    /// What gives way first.
    #[schema(pattern = "^(screw|screw-thread|tapped-thread)$", example = "screw")]
    weakest: &'static str,
    /// What breaks the screw, in newtons.
    screw_load_n: f64,
    /// What strips its thread, in newtons.
    screw_thread_load_n: f64,
    /// What strips the thread in the hole, in newtons.
    tapped_thread_load_n: f64,
}

impl From<&plan::TapEffort> for TapEffort {
    fn from(found: &plan::TapEffort) -> Self {
        let torque = |torque: Torque| figures::number(in_newton_metres(torque));
        Self {
            cutting_torque_nm: torque(found.cutting),
            breaking_torque_nm: torque(found.breaking),
            margin_words: found.margin.to_string(),
            metal: found.resists.row.printed_as,
            borrowed: found.resists.is_borrowed,
            unconfirmed: true,
            easier: found.easier.map(|compared| Compared {
                effort_percent: figures::percent(compared.effort_percent),
                strength_percent: figures::percent(compared.strength_percent),
            }),
        }
    }
}

impl From<&plan::Strength> for Strength {
    fn from(found: &plan::Strength) -> Self {
        let newtons = |force: Force| print::round(in_newtons(force), 0);
        Self {
            engaged_mm: figures::mm(found.engaged),
            strip_length_mm: found.holding_length.map(figures::mm),
            weakest: found.loads.weakest().slug(),
            screw_load_n: newtons(found.loads.screw),
            screw_thread_load_n: newtons(found.loads.screw_thread),
            tapped_thread_load_n: newtons(found.loads.tapped_thread),
        }
    }
}
