//! Words that name a kind of material and not one: what each could mean. Leaves out the names of the
//! materials themselves, which stand in their rows.

/// A word, folded, with the slugs it could mean.
pub(super) type Kind = (&'static str, &'static [&'static str]);

/// Words that name a kind.
pub(super) const KINDS: &[Kind] = &[
    ("iron", &IRONS),
    ("steel", &STEELS),
    ("carbonsteel", &CARBON_STEELS),
    ("highcarbonsteel", &["spring-steel", "silver-steel"]),
    ("brightsteel", &["free-cutting-mild-steel", "leaded-free-cutting-steel", "bright-mild-steel"]),
    ("alloysteel", &ALLOY_STEELS),
    ("hightensilesteel", &ALLOY_STEELS),
    ("lowalloysteel", &ALLOY_STEELS),
    ("toolsteel", &["silver-steel", "gauge-plate"]),
    ("hardeningsteel", &["case-hardening-steel", "silver-steel", "gauge-plate"]),
    ("stainless", &STAINLESS),
    ("stainlesssteel", &STAINLESS),
    ("austeniticstainless", &["stainless-303", "stainless-304", "stainless-316"]),
    ("martensiticstainless", &["stainless-416", "stainless-431"]),
    ("bronze", &BRONZES),
    ("castbronze", &CAST_BRONZES),
    ("bronzecasting", &CAST_BRONZES),
    ("phosphorbronze", &PHOSPHOR_BRONZES),
    ("phosbronze", &PHOSPHOR_BRONZES),
    ("pb", &["phosphor-bronze-cast", "phosphor-bronze-drawn"]),
    ("casting", &CASTINGS),
    ("diecasting", &["cast-aluminium", "zinc-die-casting-alloy", "magnesium-alloy"]),
    ("aluminiumalloy", &ALUMINIUM),
    ("wroughtaluminium", &WROUGHT_ALUMINIUM),
    ("ms", &["bright-mild-steel", "free-cutting-mild-steel", "black-mild-steel"]),
    ("hotrolled", &["black-mild-steel"]),
    ("hotrolledsteel", &["black-mild-steel"]),
    ("coldrolled", &["bright-mild-steel"]),
    ("crs", &["bright-mild-steel"]),
    ("crca", &["bright-mild-steel"]),
    ("keysteel", &["bright-mild-steel", "medium-carbon-steel"]),
    ("screwstock", &["free-cutting-mild-steel", "leaded-free-cutting-steel"]),
    ("en9", &["medium-carbon-steel", "spring-steel"]),
    ("stubssteel", &["silver-steel"]),
    ("stubbssteel", &["silver-steel"]),
    ("6al4v", &["titanium-grade-5"]),
    ("titanium64", &["titanium-grade-5"]),
    ("boilerplate", &["copper", "black-mild-steel"]),
    ("boilercopper", &["copper"]),
    ("ali", &ALUMINIUM),
    ("alu", &ALUMINIUM),
    ("alum", &ALUMINIUM),
    ("ally", &ALUMINIUM),
    ("alloy", &ALUMINIUM),
    ("lightalloy", &ALUMINIUM),
    ("castalloy", &["cast-aluminium", "cast-aluminium-lm25"]),
    ("castali", &["cast-aluminium", "cast-aluminium-lm25"]),
    ("dural", &DURALS),
    ("duralium", &DURALS),
    ("duralumin", &DURALS),
    ("duraluminium", &DURALS),
    ("aircraftaluminium", &["aluminium-2014", "aluminium-7075"]),
    // Casting alloys that have no row: by their silicon they cut like the row named first.
    ("lm2", &["cast-aluminium", "cast-aluminium-lm25"]),
    ("lm6", &["cast-aluminium-lm25", "cast-aluminium"]),
    ("lm9", &["cast-aluminium-lm25", "cast-aluminium"]),
    ("lm24", &["cast-aluminium", "cast-aluminium-lm25"]),
    ("lm27", &["cast-aluminium", "cast-aluminium-lm25"]),
    // Grades of fasteners (ISO 3506) and of bolts (ISO 898).
    ("a1", &["stainless-303"]),
    ("a2", &["stainless-304"]),
    ("a270", &["stainless-304"]),
    ("a280", &["stainless-304"]),
    ("a4", &["stainless-316"]),
    ("a470", &["stainless-316"]),
    ("a480", &["stainless-316"]),
    ("marinestainless", &["stainless-316"]),
    ("marinegradestainless", &["stainless-316"]),
    ("magneticstainless", &["stainless-416", "stainless-431"]),
    ("hightensile", &ALLOY_STEELS),
    ("ht", &ALLOY_STEELS),
    ("hts", &ALLOY_STEELS),
    ("carbontoolsteel", &["silver-steel", "gauge-plate"]),
    ("sgiron", &["spheroidal-graphite-iron"]),
    ("bronzebush", &["leaded-bronze", "phosphor-bronze-cast", "gunmetal"]),
    ("bearingmetal", &["leaded-bronze", "phosphor-bronze-cast", "white-metal"]),
    ("bearingbronze", &["leaded-bronze", "phosphor-bronze-cast", "gunmetal"]),
    ("titanium", &["titanium-grade-2", "titanium-grade-5"]),
    ("titaniumalloy", &["titanium-grade-2", "titanium-grade-5"]),
    ("zinc", &["zinc-die-casting-alloy"]),
    ("plastic", &PLASTICS),
    ("sheetplastic", &SHEET_PLASTICS),
    ("plasticsheet", &SHEET_PLASTICS),
    ("clearplastic", &["acrylic", "polycarbonate"]),
    ("laminate", &["laminated-phenolic"]),
    // Rolled sections keep the name of the wrought iron they once were.
    ("angleiron", &["black-mild-steel"]),
    ("ironangle", &["black-mild-steel"]),
    ("channeliron", &["black-mild-steel"]),
    ("teeiron", &["black-mild-steel"]),
];

/// Kinds of which no row is held: what they stand for is only the nearest.
pub(super) const NEAREST_ONLY: [&str; 6] = ["lm2", "lm6", "lm9", "lm24", "lm27", "en9"];

/// Words that people type and no page shows: trade marks, which are no name for a material here, and
/// what is short or misspelt.
pub(super) const TYPED_ONLY: &[Kind] = &[
    ("meehanite", &["grey-cast-iron"]),
    ("monel", &["nickel-copper-400"]),
    ("monelmetal", &["nickel-copper-400"]),
    ("delrin", &["acetal"]),
    ("teflon", &["ptfe"]),
    ("perspex", &["acrylic"]),
    ("plexiglas", &["acrylic"]),
    ("plexiglass", &["acrylic"]),
    ("lexan", &["polycarbonate"]),
    ("tufnol", &["laminated-phenolic"]),
    ("paxolin", &["laminated-phenolic"]),
    ("bakelite", &["laminated-phenolic"]),
    ("ss", &STAINLESS_OR_SILVER),
    ("alli", &ALUMINIUM),
    ("phbronze", &PHOSPHOR_BRONZES),
    ("pbronze", &PHOSPHOR_BRONZES),
    ("mazak", &["zinc-die-casting-alloy"]),
    ("zamak", &["zinc-die-casting-alloy"]),
];

/// Inside a longer name these names stand for more than they do alone: `mild steel EN1A`.
pub(super) const WIDER_IN_COMPANY: &[Kind] = &[
    ("mildsteel", &MILD_STEELS),
    ("freecuttingsteel", &["free-cutting-mild-steel", "leaded-free-cutting-steel"]),
    ("castiron", &IRONS),
    ("aluminium", &ALUMINIUM),
    ("gunmetal", &["gunmetal", "gunmetal-lg4"]),
    ("leadedgunmetal", &["gunmetal", "gunmetal-lg4"]),
    ("leadedbrass", &LEADED_BRASSES),
    ("brass", &BRASSES),
    ("copper", &["copper", "cupro-nickel", "beryllium-copper"]),
];

/// Forms of stock that are rolled or drawn thin.
const THIN: &[&str] = &["sheet", "strip", "plate", "tube", "wire", "shim"];

/// A metal of one of these forms is another than the one its name alone stands for: the words left
/// aside, the forms, the material.
///
/// # Source
/// Common practice, no source.
pub(super) const OF_A_FORM: &[(&str, &[&str], &str)] = &[
    ("brass", THIN, "sheet-brass"),
    ("bronze", &["sheet", "strip", "wire", "shim"], "phosphor-bronze-drawn"),
    ("phosphorbronze", THIN, "phosphor-bronze-drawn"),
    ("phosbronze", THIN, "phosphor-bronze-drawn"),
    ("phbronze", THIN, "phosphor-bronze-drawn"),
    ("pb", THIN, "phosphor-bronze-drawn"),
];

/// Metals that are sold cast or as bar, and not as sheet, strip or plate.
///
/// # Source
/// Common practice, no source.
pub(super) const NO_SHEET: &[&str] = &[
    "grey-cast-iron",
    "continuous-cast-iron",
    "spheroidal-graphite-iron",
    "malleable-iron",
    "cast-steel",
    "gunmetal",
    "gunmetal-lg4",
    "leaded-bronze",
    "phosphor-bronze-cast",
    "free-cutting-phosphor-bronze",
    "free-cutting-mild-steel",
    "leaded-free-cutting-steel",
    "silver-steel",
    "stainless-303",
    "stainless-416",
    "stainless-431",
    "aluminium-6063",
    "aluminium-2011",
    "cast-aluminium",
    "cast-aluminium-lm25",
];

const IRONS: [&str; 4] =
    ["grey-cast-iron", "continuous-cast-iron", "spheroidal-graphite-iron", "malleable-iron"];

const MILD_STEELS: [&str; 4] = [
    "free-cutting-mild-steel",
    "leaded-free-cutting-steel",
    "bright-mild-steel",
    "black-mild-steel",
];

const CARBON_STEELS: [&str; 6] = [
    "bright-mild-steel",
    "black-mild-steel",
    "medium-carbon-steel",
    "case-hardening-steel",
    "spring-steel",
    "silver-steel",
];

const ALLOY_STEELS: [&str; 3] = ["alloy-steel-en16", "alloy-steel-en19", "alloy-steel-en24"];

const STAINLESS: [&str; 5] =
    ["stainless-303", "stainless-304", "stainless-316", "stainless-416", "stainless-431"];

const STAINLESS_OR_SILVER: [&str; 6] = [
    "stainless-303",
    "stainless-304",
    "stainless-316",
    "stainless-416",
    "stainless-431",
    "silver-steel",
];

const STEELS: [&str; 18] = [
    "free-cutting-mild-steel",
    "leaded-free-cutting-steel",
    "bright-mild-steel",
    "black-mild-steel",
    "medium-carbon-steel",
    "case-hardening-steel",
    "spring-steel",
    "cast-steel",
    "alloy-steel-en16",
    "alloy-steel-en19",
    "alloy-steel-en24",
    "silver-steel",
    "gauge-plate",
    "stainless-303",
    "stainless-304",
    "stainless-316",
    "stainless-416",
    "stainless-431",
];

const BRONZES: [&str; 7] = [
    "gunmetal",
    "gunmetal-lg4",
    "leaded-bronze",
    "phosphor-bronze-cast",
    "phosphor-bronze-drawn",
    "free-cutting-phosphor-bronze",
    "aluminium-bronze",
];

const CAST_BRONZES: [&str; 5] =
    ["gunmetal", "gunmetal-lg4", "leaded-bronze", "phosphor-bronze-cast", "aluminium-bronze"];

const PHOSPHOR_BRONZES: [&str; 3] =
    ["phosphor-bronze-cast", "phosphor-bronze-drawn", "free-cutting-phosphor-bronze"];

const LEADED_BRASSES: [&str; 3] =
    ["free-cutting-brass", "engraving-brass", "dezincification-resistant-brass"];

const BRASSES: [&str; 6] = [
    "free-cutting-brass",
    "engraving-brass",
    "dezincification-resistant-brass",
    "sheet-brass",
    "naval-brass",
    "high-tensile-brass",
];

const CASTINGS: [&str; 13] = [
    "grey-cast-iron",
    "spheroidal-graphite-iron",
    "malleable-iron",
    "cast-steel",
    "gunmetal",
    "gunmetal-lg4",
    "leaded-bronze",
    "phosphor-bronze-cast",
    "aluminium-bronze",
    "cast-aluminium",
    "cast-aluminium-lm25",
    "zinc-die-casting-alloy",
    "magnesium-alloy",
];

const WROUGHT_ALUMINIUM: [&str; 5] =
    ["aluminium-6082", "aluminium-6063", "aluminium-2011", "aluminium-2014", "aluminium-7075"];

const ALUMINIUM: [&str; 7] = [
    "aluminium-6082",
    "aluminium-6063",
    "aluminium-2011",
    "aluminium-2014",
    "aluminium-7075",
    "cast-aluminium",
    "cast-aluminium-lm25",
];

/// The strong alloy with copper first: that is what the word was for.
const DURALS: [&str; 2] = ["aluminium-2014", "aluminium-6082"];

const PLASTICS: [&str; 8] =
    ["acetal", "nylon", "ptfe", "peek", "acrylic", "polycarbonate", "pvc", "laminated-phenolic"];

const SHEET_PLASTICS: [&str; 4] = ["acrylic", "polycarbonate", "pvc", "laminated-phenolic"];
