//! Reaming speeds in a machine as the sources print them, for high-speed steel reamers, one row a line.
//!
//! A reamer turned by hand needs none of these. The first a material lists is the one the
//! calculator uses.

use super::SpeedRange;
use super::sources::PROTO_REAM_LIGHT;

// Iron and steel.

// Copper and its alloys.

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.

pub(super) const PROTO_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(350.0, 500.0, "aluminium sand and permanent-mould castings", PROTO_REAM_LIGHT);
pub(super) const PROTO_DIE_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(300.0, 300.0, "aluminium die castings, as cast", PROTO_REAM_LIGHT);
pub(super) const PROTO_WROUGHT_MAGNESIUM: SpeedRange = SpeedRange::feet(500.0, 500.0, "wrought magnesium", PROTO_REAM_LIGHT);
pub(super) const PROTO_CAST_MAGNESIUM: SpeedRange = SpeedRange::feet(450.0, 450.0, "cast magnesium", PROTO_REAM_LIGHT);
