//! Reaming speeds in a machine as the sources print them, for high-speed steel reamers, one row a line.
//!
//! A reamer turned by hand needs none of these. The first a material lists is the one the
//! calculator uses.

use super::SpeedRange;
use super::sources::PROTO_REAM_LIGHT;
use crate::tables::source::Source;

// Iron and steel.

// Copper and its alloys. No reaming table for them was found to read: these are recalled, the two
// first from drill makers' charts, the last from the rule of a third to a half of drilling speed.
pub(super) const RECALLED_BRASS_BRONZE: SpeedRange = SpeedRange::feet(130.0, 200.0, "brass and bronze, ordinary", RECALLED_CHART);
pub(super) const RECALLED_STRONG_BRONZE: SpeedRange = SpeedRange::feet(50.0, 70.0, "bronze, high tensile", RECALLED_CHART);
pub(super) const RECALLED_COPPER: SpeedRange = SpeedRange::metres(8.0, 20.0, "copper, a third to a half of its drilling speed", RECALLED_RULE);

const RECALLED_CHART: Source = Source::memory("recalled reaming chart, no source read");
const RECALLED_RULE: Source = Source::memory("recalled rule for reamers, no source read");

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.

pub(super) const PROTO_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(350.0, 500.0, "aluminium sand and permanent-mould castings", PROTO_REAM_LIGHT);
pub(super) const PROTO_DIE_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(300.0, 300.0, "aluminium die castings, as cast", PROTO_REAM_LIGHT);
pub(super) const PROTO_WROUGHT_MAGNESIUM: SpeedRange = SpeedRange::feet(500.0, 500.0, "wrought magnesium", PROTO_REAM_LIGHT);
pub(super) const PROTO_CAST_MAGNESIUM: SpeedRange = SpeedRange::feet(450.0, 450.0, "cast magnesium", PROTO_REAM_LIGHT);
