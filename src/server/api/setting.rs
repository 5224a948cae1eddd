//! What a machine is set to, in a plan's steps and in the answer of speeds.

use serde::Serialize;
use utoipa::ToSchema;

use crate::api::figures;
use holewright_core::calc::setting;
use holewright_core::calc::speed_choice::Reach;

/// What to set a machine to for one tool.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = MachineSetting)]
pub(super) struct Setting<'a> {
    /// What to set: about a speed where no machine is known; as-fast-as-it-goes where the material takes more
    /// than a bench machine turns; a machine's speed; none-slow-enough; slowest-that-cuts-clean; by-hand.
    #[schema(
        pattern = "^(about|as-fast-as-it-goes|machine|none-slow-enough|slowest-that-cuts-clean|by-hand)$",
        example = "about"
    )]
    outcome: &'static str,
    /// The speed to set, in revolutions a minute; null where none is.
    #[schema(required)]
    speed_rpm: Option<f64>,
    /// The machine's name; null where none was given.
    #[schema(required)]
    machine: Option<&'a str>,
    /// Whether a machine at hand can do it: not-said, within, between, too-slow, too-fast.
    #[schema(pattern = "^(not-said|within|between|too-slow|too-fast)$", example = "within")]
    machine_fit: &'static str,
    /// The slow end of what the material takes, in revolutions a minute.
    material_low_rpm: f64,
    /// The fast end, in revolutions a minute.
    material_high_rpm: f64,
    /// In words.
    words: String,
}

impl<'a> From<&'a setting::Setting> for Setting<'a> {
    fn from(set: &'a setting::Setting) -> Self {
        Self {
            outcome: set.slug(),
            speed_rpm: set.speed().map(figures::rpm),
            machine: set.on_machine().and_then(|held| held.machine.as_deref()),
            machine_fit: reach(set.reach()),
            material_low_rpm: figures::rpm(set.takes.low),
            material_high_rpm: figures::rpm(set.takes.high),
            words: set.words(),
        }
    }
}

/// The word in JSON.
pub(super) const fn reach(reach: Reach) -> &'static str {
    match reach {
        Reach::NotSaid => "not-said",
        Reach::Within => "within",
        Reach::Between => "between",
        Reach::TooSlow => "too-slow",
        Reach::TooFast => "too-fast",
    }
}
