//! Tapping speeds under power as the sources print them, for high-speed steel taps, one row a line.
//!
//! A tap turned by hand needs none of these. The gentlest of a material's is the one the plan uses.

use super::SpeedRange;
use super::sources::{CLARKSON, LAVALLEE, MH_TAP_303, MH_TAP_1020, TAP_CHART};
use crate::tables::source::Source;

pub(super) const LAVALLEE_ALUMINIUM: SpeedRange = SpeedRange::feet(50.0, 150.0, "aluminium", LAVALLEE);
pub(super) const LAVALLEE_BRASS: SpeedRange = SpeedRange::feet(50.0, 200.0, "brass", LAVALLEE);
pub(super) const LAVALLEE_BRONZE: SpeedRange = SpeedRange::feet(50.0, 100.0, "bronze", LAVALLEE);
pub(super) const LAVALLEE_IRON: SpeedRange = SpeedRange::feet(50.0, 100.0, "cast iron", LAVALLEE);
pub(super) const LAVALLEE_COPPER: SpeedRange = SpeedRange::feet(30.0, 60.0, "copper", LAVALLEE);
pub(super) const LAVALLEE_THERMOPLASTIC: SpeedRange = SpeedRange::feet(50.0, 100.0, "plastic, thermoplastic", LAVALLEE);
pub(super) const LAVALLEE_FREE_STEEL: SpeedRange = SpeedRange::feet(40.0, 80.0, "steel, free machining", LAVALLEE);
pub(super) const LAVALLEE_STAINLESS: SpeedRange = SpeedRange::feet(5.0, 35.0, "stainless steel", LAVALLEE);

pub(super) const CHART_IRON: SpeedRange = SpeedRange::feet(70.0, 70.0, "grey cast iron", TAP_CHART);
pub(super) const CHART_CAST_BRONZE: SpeedRange = SpeedRange::feet(50.0, 50.0, "cast bronze", TAP_CHART);
pub(super) const CHART_BRASS: SpeedRange = SpeedRange::feet(60.0, 60.0, "brass, free machining", TAP_CHART);
pub(super) const CHART_LOW_CARBON: SpeedRange = SpeedRange::feet(55.0, 55.0, "low carbon steel", TAP_CHART);
pub(super) const CHART_MEDIUM_CARBON: SpeedRange = SpeedRange::feet(35.0, 35.0, "medium carbon steel", TAP_CHART);
pub(super) const CHART_HIGH_CARBON: SpeedRange = SpeedRange::feet(10.0, 10.0, "high carbon steel", TAP_CHART);
pub(super) const CHART_300_STAINLESS: SpeedRange = SpeedRange::feet(20.0, 20.0, "300 series stainless steel", TAP_CHART);
pub(super) const CHART_ALUMINIUM: SpeedRange = SpeedRange::feet(80.0, 80.0, "aluminium, wrought", TAP_CHART);
pub(super) const CHART_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(60.0, 60.0, "aluminium, cast alloys", TAP_CHART);
pub(super) const CHART_COPPER: SpeedRange = SpeedRange::feet(60.0, 60.0, "copper", TAP_CHART);
pub(super) const CHART_THERMOPLASTIC: SpeedRange = SpeedRange::feet(80.0, 80.0, "plastic, thermoplastic", TAP_CHART);

pub(super) const CLARKSON_IRON: SpeedRange = SpeedRange::feet(30.0, 40.0, "cast iron, lamellar graphite, 150 to 300 HB", CLARKSON);
pub(super) const CLARKSON_CARBON_STEEL: SpeedRange = SpeedRange::feet(50.0, 60.0, "plain carbon steel, under 250 HB", CLARKSON);
pub(super) const CLARKSON_ALLOY_STEEL: SpeedRange = SpeedRange::feet(32.0, 50.0, "alloyed steel, under 250 HB", CLARKSON);
pub(super) const CLARKSON_FREE_STAINLESS: SpeedRange = SpeedRange::feet(22.0, 32.0, "stainless steel, free machining, under 250 HB", CLARKSON);
pub(super) const CLARKSON_AUSTENITIC: SpeedRange = SpeedRange::feet(16.0, 22.0, "stainless steel, austenitic, under 250 HB", CLARKSON);
pub(super) const CLARKSON_COPPER: SpeedRange = SpeedRange::feet(22.0, 40.0, "copper, unalloyed, under 100 HB", CLARKSON);
pub(super) const CLARKSON_THERMOPLASTIC: SpeedRange = SpeedRange::feet(60.0, 105.0, "plastic, thermoplastic", CLARKSON);

pub(super) const MH_1020: SpeedRange = SpeedRange::feet(45.0, 60.0, "1020 steel", MH_TAP_1020);
pub(super) const MH_303: SpeedRange = SpeedRange::feet(35.0, 45.0, "303 stainless, coated HSS tap, 12 and 50 tpi", MH_TAP_303);

// Iron and steel.
pub(super) const CLARKSON_SOFT_IRON: SpeedRange = SpeedRange::feet(50.0, 80.0, "cast iron, lamellar graphite, under 150 HB", CLARKSON);
pub(super) const CLARKSON_NODULAR: SpeedRange = SpeedRange::feet(30.0, 40.0, "cast iron, nodular graphite or malleable, under 200 HB", CLARKSON);
pub(super) const CLARKSON_NODULAR_HARD: SpeedRange = SpeedRange::feet(20.0, 30.0, "cast iron, nodular graphite or malleable, 200 to 300 HB", CLARKSON);
pub(super) const CLARKSON_STRUCTURAL: SpeedRange = SpeedRange::feet(50.0, 60.0, "structural steel, under 200 HB", CLARKSON);
pub(super) const CLARKSON_TEMPERED_ALLOY: SpeedRange = SpeedRange::feet(22.0, 32.0, "alloyed steel, hardened and tempered, 250 to 350 HB", CLARKSON);
pub(super) const LAVALLEE_MALLEABLE: SpeedRange = SpeedRange::feet(35.0, 60.0, "malleable iron", LAVALLEE);
pub(super) const CHART_DUCTILE_IRON: SpeedRange = SpeedRange::feet(50.0, 50.0, "ductile cast iron", TAP_CHART);
pub(super) const CHART_CAST_STEEL: SpeedRange = SpeedRange::feet(25.0, 25.0, "cast steel", TAP_CHART);
pub(super) const CHART_400_STAINLESS: SpeedRange = SpeedRange::feet(15.0, 15.0, "400 series stainless steel", TAP_CHART);

// Copper and its alloys.
pub(super) const LAVALLEE_ALUMINIUM_BRONZE: SpeedRange = SpeedRange::feet(20.0, 80.0, "aluminum bronze", LAVALLEE);
pub(super) const CLARKSON_BRASS_BRONZE: SpeedRange = SpeedRange::feet(82.0, 115.0, "brass and bronze, under 200 HB", CLARKSON);
pub(super) const CLARKSON_BRASS: SpeedRange = SpeedRange::feet(50.0, 65.0, "brass, under 200 HB", CLARKSON);
pub(super) const CLARKSON_STRONG_BRONZE: SpeedRange = SpeedRange::feet(10.0, 16.0, "bronze, high strength, under 470 HB", CLARKSON);

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.

pub(super) const LAVALLEE_MAGNESIUM: SpeedRange = SpeedRange::feet(75.0, 200.0, "magnesium", LAVALLEE);
pub(super) const LAVALLEE_NICKEL_COPPER: SpeedRange = SpeedRange::feet(20.0, 40.0, "Monel", LAVALLEE);
pub(super) const LAVALLEE_TITANIUM: SpeedRange = SpeedRange::feet(10.0, 40.0, "titanium alloys", LAVALLEE);
pub(super) const LAVALLEE_THERMOSETTING: SpeedRange = SpeedRange::feet(50.0, 100.0, "plastic, thermosetting", LAVALLEE);
pub(super) const CHART_THERMOSETTING: SpeedRange = SpeedRange::feet(40.0, 40.0, "plastic, thermosetting", TAP_CHART);
pub(super) const CHART_ZINC: SpeedRange = SpeedRange::feet(80.0, 80.0, "zinc diecastings", TAP_CHART);
pub(super) const RECALLED_WHITE_METAL: SpeedRange = SpeedRange::metres(10.0, 20.0, "white metal", Source::memory("recalled, no source read"));

// Gathered later, each printed as its source has it. A bench goes by the gentlest of a material's.
const TAP_SUPPLIER: Source =
    Source::published("a tap supplier's list, speeds for machine tapping, high-speed steel taps");
const TAP_CATALOGUE: Source =
    Source::published("A tap maker’s catalogue, p. 405, speeds of general-purpose taps");
const TECHNICAL_ORDER_TAPPING: Source =
    Source::published("Technical Order 1-1A-9 (TM 43-0106), par. 2-109, tapping");
const TRAINING_TAPPING: Source =
    Source::published("Thread Cutting by Dies and Taps, a trainees' handbook, instruction example 5.4");

pub(super) const SUPPLIER_BRONZE: SpeedRange = SpeedRange::feet(30.0, 40.0, "Bronze", TAP_SUPPLIER);
pub(super) const SUPPLIER_COPPER: SpeedRange = SpeedRange::feet(60.0, 80.0, "Copper", TAP_SUPPLIER);
pub(super) const SUPPLIER_MALLEABLE: SpeedRange = SpeedRange::feet(20.0, 40.0, "Malleable iron", TAP_SUPPLIER);
pub(super) const SUPPLIER_MAGNESIUM: SpeedRange = SpeedRange::feet(50.0, 70.0, "Magnesium alloy", TAP_SUPPLIER);
pub(super) const SUPPLIER_PLASTICS: SpeedRange = SpeedRange::feet(50.0, 70.0, "Plastics", TAP_SUPPLIER);
pub(super) const SUPPLIER_MILD_STEEL: SpeedRange = SpeedRange::feet(30.0, 50.0, "Mild steel", TAP_SUPPLIER);
pub(super) const SUPPLIER_CARBON_STEEL: SpeedRange = SpeedRange::feet(20.0, 30.0, "Carbon steel to 0.7 % (printed 7%)", TAP_SUPPLIER);
pub(super) const SUPPLIER_HIGH_CARBON: SpeedRange = SpeedRange::feet(15.0, 25.0, "Carbon steel over 0.7 % (printed 7%+)", TAP_SUPPLIER);
pub(super) const SUPPLIER_ALLOY: SpeedRange = SpeedRange::feet(15.0, 25.0, "Alloy steel to 60 ton", TAP_SUPPLIER);
pub(super) const SUPPLIER_TOOL_STEEL: SpeedRange = SpeedRange::feet(15.0, 25.0, "Tool steels", TAP_SUPPLIER);
pub(super) const CATALOGUE_LOW_CARBON: SpeedRange = SpeedRange::feet(20.0, 40.0, "Low carbon and free-cutting steel (12L14 1018 1020 1213-1215)", TAP_CATALOGUE);
pub(super) const CATALOGUE_MEDIUM_CARBON: SpeedRange = SpeedRange::feet(20.0, 30.0, "Medium carbon steel (1040-1095 4140 4340)", TAP_CATALOGUE);
pub(super) const CATALOGUE_TOOL_STEEL: SpeedRange = SpeedRange::feet(15.0, 25.0, "Tool steel (O1 A2 D2)", TAP_CATALOGUE);
pub(super) const CATALOGUE_AUSTENITIC: SpeedRange = SpeedRange::feet(10.0, 20.0, "Austenitic stainless 301-304L 310 316L 321", TAP_CATALOGUE);
pub(super) const CATALOGUE_MARTENSITIC: SpeedRange = SpeedRange::feet(10.0, 20.0, "Martensitic stainless 410 416 420 431", TAP_CATALOGUE);
pub(super) const CATALOGUE_DUCTILE: SpeedRange = SpeedRange::feet(15.0, 30.0, "Ductile iron", TAP_CATALOGUE);
pub(super) const CATALOGUE_GREY: SpeedRange = SpeedRange::feet(15.0, 30.0, "Grey iron", TAP_CATALOGUE);
pub(super) const CATALOGUE_MALLEABLE: SpeedRange = SpeedRange::feet(30.0, 60.0, "Malleable iron", TAP_CATALOGUE);
pub(super) const CATALOGUE_ALUMINIUM: SpeedRange = SpeedRange::feet(70.0, 90.0, "Aluminium 2014 2024 6061 7075", TAP_CATALOGUE);
pub(super) const CATALOGUE_SILICON_ALUMINIUM: SpeedRange = SpeedRange::feet(60.0, 80.0, "Aluminium high silicon", TAP_CATALOGUE);
pub(super) const CATALOGUE_MAGNESIUM: SpeedRange = SpeedRange::feet(60.0, 80.0, "Magnesium", TAP_CATALOGUE);
pub(super) const CATALOGUE_NICKEL: SpeedRange = SpeedRange::feet(10.0, 25.0, "Monel, nickel base", TAP_CATALOGUE);
pub(super) const ORDER_300: SpeedRange = SpeedRange::feet(10.0, 25.0, "18-8 (300 series) stainless", TECHNICAL_ORDER_TAPPING);
pub(super) const ORDER_FREE_300: SpeedRange = SpeedRange::feet(15.0, 30.0, "300 series free-machining", TECHNICAL_ORDER_TAPPING);
pub(super) const ORDER_400: SpeedRange = SpeedRange::feet(15.0, 25.0, "400 series straight chromium", TECHNICAL_ORDER_TAPPING);
pub(super) const CHART_DIE_CAST_ALUMINIUM: SpeedRange = SpeedRange::feet(70.0, 70.0, "Aluminium die castings", TAP_CHART);
pub(super) const CHART_NICKEL: SpeedRange = SpeedRange::feet(10.0, 10.0, "Nickel alloys", TAP_CHART);
pub(super) const CHART_TITANIUM: SpeedRange = SpeedRange::feet(10.0, 10.0, "Titanium", TAP_CHART);
pub(super) const LAVALLEE_ZINC: SpeedRange = SpeedRange::feet(60.0, 150.0, "Zinc die casting", LAVALLEE);
pub(super) const LATHE_STEEL: SpeedRange = SpeedRange::metres(4.0, 15.0, "Steel (example in 16CrMo4, M20, tap from the tailstock, wrench held, turned back to clear)", TRAINING_TAPPING);
