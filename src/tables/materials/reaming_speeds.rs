//! Reaming speeds in a machine as the sources print them, for high-speed steel reamers, one row a line.
//!
//! A reamer turned by hand needs none of these. The first a material lists is the one the
//! calculator uses.

// Iron and steel.

// Copper and its alloys.

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.
