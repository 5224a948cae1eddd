//! Where the material rows were read, and short makers for a sentence with its source.

use super::{Advice, Designation, Validity};
use crate::tables::source::Source;

/// Advice of the trade with no published source.
pub(super) const fn practice(text: &'static str) -> Advice {
    Advice { text, source: Source::common_practice("workshop practice") }
}

/// Advice recalled, not read.
pub(super) const fn recalled(text: &'static str) -> Advice {
    Advice { text, source: Source::memory("recalled, no source read") }
}

/// Advice read in the source named.
pub(super) const fn read(text: &'static str, source: Source) -> Advice {
    Advice { text, source }
}

/// A designation in force, read in the source named.
pub(super) const fn mark(mark: &'static str, source: Source) -> Designation {
    Designation { mark, validity: Validity::Current, source }
}

/// A designation recalled, not read.
pub(super) const fn recalled_mark(mark: &'static str) -> Designation {
    Designation {
        mark,
        validity: Validity::Current,
        source: Source::memory("recalled, no source read"),
    }
}

impl Designation {
    /// The same mark, of a standard withdrawn.
    pub(super) const fn old(self) -> Self {
        Self { validity: Validity::Old, ..self }
    }

    /// The same mark, of another country's standard.
    pub(super) const fn abroad(self) -> Self {
        Self { validity: Validity::Abroad, ..self }
    }
}

macro_rules! published {
    ($($name:ident = $cite:literal;)*) => {
        $(pub(super) const $name: Source = Source::published($cite);)*
    };
}

// Advice.
published! {
    ALUM_1945 = "American Horologist, March 1945, article 26";
    BOEDEKER = "a plastics stockholder's guide to drilling";
    CAST_NYLONS = "a nylon maker's technical bulletin 106";
    ENSINGER = "a plastics maker's machining guide";
    HSE_FLUIDS = "HSE, Ill health from metalworking and water-mix wash fluids";
    MH_FLUIDS = "Machinery's Handbook, 31st ed., Part A p. 1250, Cutting fluids recommended";
    POLYMER_FUME = "a medical reference, Polymer fume fever";
    POPULAR_MECHANICS = "a workshop magazine's page on lubricants";
    SMITH = "Drilling and Associated Cutting Tool Technology, p. 96 (cartridge brass)";
    VMS_TAPPING = "a shop course, Threads, taps and tapping, 11";
}

// Speeds and feeds.
published! {
    CLARKSON = "a tap maker's recommended speeds for HSS taps, 2018";
    EL_HOFY = "Fundamentals of Machining Processes, table 5.4, p. 143";
    JET = "a drilling machine's operating instructions, p. 12";
    LAVALLEE = "a tap and reamer maker's tapping speeds";
    MH_TAP_1020 = "Machinery's Handbook, 31st ed., Part B p. 2178";
    MH_TAP_303 = "Machinery's Handbook, 31st ed., Part A p. 1141";
    NAVY = "US Navy training course 14345, p. 93";
    NOMINAL = "a teaching table of cutting speeds and feeds, table 1";
    NORSEMAN = "a drill maker's feeds and speeds";
    PROTO_CAST = "a reamer maker's HSS drilling speeds, ferrous cast metals";
    PROTO_LIGHT = "a reamer maker's HSS drilling speeds, light metals";
    PROTO_STEEL = "a reamer maker's HSS drilling speeds, plain carbon and alloy steels";
    PROTO_TOOL = "a reamer maker's HSS drilling speeds, tool and stainless steels";
    QUIZ_COPPER = "an examination question, Cutting data for drilling";
    SPEEDS_LIST = "Machine tool speeds and feeds, a shop list (first column taken as the drill's)";
    TAP_CHART = "a one-page chart of suggested tapping speeds";
}

// Designations.
published! {
    AALCO_303 = "a metal stockholder's data sheet, grade 303";
    AALCO_BS_EN = "a metal stockholder's table of BS and EN grades";
    ALLIED = "an iron foundry's table of specifications";
    AUDHE = "a foundry's chart of aluminium castings";
    BIOLOGY_INSIGHTS = "an article on silver steel";
    CDA_GUNMETAL = "Copper Development Association, Gunmetals";
    DURBIN = "two metal stockholders' data sheets, CW614N";
    EN_STEELS = "EN steels, basic selection based on BS 970";
    HOOD_PB1 = "a bronze maker's data sheet, PB1";
    HOOD_PB102 = "a bronze maker's data sheet, PB102";
    HSSCO = "a table of casting alloy designations, A.3";
    KEMPER = "a bronze founder's data sheets";
    KNIGHT = "a wire maker's table of alloys";
    LUCEFIN = "a steel maker's technical card, 11SMn30 (EN 10277-3)";
    NATIONAL_STEEL = "a steel stockholder's sheet, EN3B";
    ROUND_STEEL = "a steel stockholder's sheet, EN8";
    SHEFFIELD_GAUGE = "a gauge plate maker's sheet, AISI O1";
    SHYAM = "a steel stockholder's sheet, EN1A";
    TRAFITEC = "a bar drawer's sheet, 1.4301";
    TRE_S = "a metal stockholder's table of equivalents";
    ZUIN = "a pattern maker's table of irons (UNI EN 1561)";
}

// Iron and steel.
published! {
    AALCO_316L = "a metal stockholder's data sheet, 1.4404 bar";
    AALCO_303_BAR = "a metal stockholder's data sheet, 1.4305 bar";
    ATLAS_431 = "a steel stockholder's sheet, 431";
    BSI_MALLEABLE = "BS EN 1562, Founding, malleable cast irons, scope";
    BUFFALO_O1 = "a tool steel maker's data sheet, O1";
    CHICAGO_TUBE = "a tube stockholder's table of machinability, cold finished (1212 is 100)";
    COLT_O1 = "a tool steel stockholder's sheet, O1";
    COOPER_EN36 = "a steel stockholder's data sheet, 655M13";
    DANDONG_BS_1452 = "a foundry's table of BS 1452, grade 250";
    DANDONG_EN_1563 = "a foundry's table of EN 1563:1997";
    DANDONG_GJS_400 = "a foundry's sheet, EN-GJS-400-15";
    ENGINEERING_TOOLBOX = "a table of the machinability of metals (AISI 1112 and 1212 are 100)";
    GLUE_IT = "a model maker's notes on heat treating silver steel";
    GREY_IRON_SDS = "a founder's safety data sheet for grey iron castings, rev. 13";
    GROUND_FLAT_STOCK = "a ground stock maker's sheet, O1 tool steel heat treatment";
    HEYE_EN24 = "a steel stockholder's sheet, EN24T";
    HSE_LEAD = "HSE, Lead (toolbox on harmful substances)";
    INDUSTRIAL_TUBE = "a stockholder's sheet of continuous cast iron bar, class 40";
    INTERLLOY_12L14 = "a steel stockholder's sheet, 12L14 bright mild steel";
    INTERWIRE = "a wire maker's sheet, music wire, tensile requirements";
    LASER_EDGE = "a laser cutter's note, Does laser cutting harden mild steel";
    LEADED_SDS = "a steel stockholder's safety data sheet, leaded carbon and alloy steels, 2016";
    LUCCHINI = "a steel maker's comparison tables, Steels explained";
    LUCEFIN_LEADED = "a steel maker's technical card, 11SMnPb30 (2018)";
    MACSTEEL_070M20 = "a steel stockholder's catalogue of special steels, 2021, 070M20";
    MAKEITFROM_A228 = "a table of ASTM A228, music wire";
    MALLEABLE_A47 = "a table of ASTM A47M-90, hardness of malleable cast iron";
    MALLEABLE_DENSITY = "a table of material properties, malleable iron";
    METAL_DRILLING = "a drill maker's reference guide to drilling metal";
    METALS_CHINA = "a foundry's table of EN-GJL (DIN EN 1561)";
    METAL_SUPPLIES_316 = "a metal stockholder's sheet, 316";
    NIFTY_416 = "an alloy stockholder's sheet, 416";
    NIFTY_EN16 = "an alloy stockholder's sheet, EN16T";
    NJR_EN19 = "a steel stockholder's sheet, 709M40";
    NJR_EN36 = "a steel stockholder's sheet, 655M13";
    ODYSSEY_EN24 = "a steel stockholder's sheet, EN24";
    PAKDEN = "a tool dealer's sheet, silver steel, quoting a stockholder";
    PROTO_CAST_REAMING = "a reamer maker's HSS drilling and reaming speeds, ferrous cast metals";
    PROTO_STEEL_REAMING = "a reamer maker's HSS drilling and reaming speeds, plain carbon and alloy steels";
    PROTO_TOOL_REAMING = "a reamer maker's HSS drilling and reaming speeds, tool and stainless steels";
    READLE_EN_10025 = "BS EN 10025-2, table 7, as reprinted in a guide to the Eurocodes";
    REGAL = "a tap maker's notes, Tapping difficulties and percent of thread";
    SAARSTAHL_C67S = "a steel maker's specification sheet, C67S";
    SCHMITZ_C15 = "a metallographer's sheet, 1.0401 (C15) normalised";
    SOLIMAN = "a foundry's table of cast irons";
    STAINLESS_SDS = "a steel maker's safety data sheet, stainless steel, 2015";
    STEELPIPES_EN36 = "a steel and pipe stockholder's sheet, EN36";
    TRADEKEY_431 = "a dealer's sheet, 431 bar";
    TRAFITEC_416 = "a bar drawer's sheet, 1.4005";
    TUBINGCHINA = "a table of BS 3100:1991, composition of cast steel";
    VENUS_416 = "a stainless wire and bar maker's sheet, 416";
    VENUS_431 = "a stainless wire and bar maker's sheet, 431";
    WEST_YORKSHIRE = "a steel stockholder's notes, Case hardening steel";
    WORLD_MATERIAL = "tables of BS 970";
}

// Copper and its alloys.
published! {
    HSE_LEAD_LEAFLET = "HSE, Lead and you, INDG305 (from a summary)";
    AALCO_CA104 = "a metal stockholder's data sheet, CA104, 2006";
    AALCO_CW451K = "a metal stockholder's data sheet, CW451K";
    AALCO_CZ108 = "a metal stockholder's data sheet, CZ108, 2006";
    AALCO_CZ114 = "a metal stockholder's data sheet, CZ114, 2006";
    ANCHOR_C46400 = "a bronze stockholder's sheet, C46400";
    AVIVA_C54400 = "a bronze stockholder's sheet, C54400";
    AZOM_CA104 = "a materials journal, article 2847, bronze CA104";
    AZOM_CZ108 = "a materials journal, article 2820, brass CZ108";
    AZOM_CZ114 = "a materials journal, article 2821, brass CZ114";
    BHARAT_CZ128 = "a brass maker's data sheet, CZ128";
    BOYNES_CB101 = "a spring maker's data, beryllium copper CB101";
    BRASSLAND_C35330 = "a brass maker's sheet, C35330";
    CASTINGS_C62400 = "a foundry's sheet, C62400";
    CASTINGS_C83600 = "a foundry's sheet, C83600";
    CDA_120_ROD = "Copper Development Association, Publication 120, table 14";
    CDA_120_SHEET = "Copper Development Association, Publication 120, table 16, brass sheet, strip and plate";
    CDA_C54400 = "Copper Development Association (USA), alloy C54400";
    CDA_CUPRO_NICKEL = "Copper Development Association (USA), Mechanical properties of copper-nickel alloys, table 1";
    CDA_TEMPER = "Copper Development Association, Copper and its alloys, mechanical properties";
    CW408J = "a metal stockholder's data sheet, CW408J";
    CW481K = "a bronze maker's data, PB1 (CW481K)";
    DURBIN_CW721R = "a metal stockholder's data sheet, CW721R";
    FINKELSTEIN_CC495K = "a bronze maker's data sheet, CC495K";
    FITSCHER = "a bronze founder's table of alloys";
    HUSSEY_C11000 = "a copper maker's data sheet, C110";
    HUSSEY_C70600 = "a copper maker's data sheet, C706";
    JSK_C17200 = "a metal stockholder's data sheet, C17200";
    KMM_CC492K = "a bronze maker's list of alloys, CC492K";
    KMM_CC496K = "a bronze maker's list of alloys, CC496K";
    OSHA_BERYLLIUM = "OSHA, Hazard Information Bulletin, Preventing adverse health effects from exposure to beryllium on the job, 1999";
    PW_FOUNDRY = "a foundry's alloy specifications";
    RAJHANS_CZ108 = "a brass maker's data sheet, CZ108";
    RAJHANS_CZ115 = "a brass maker's data sheet, CZ115";
    RAJHANS_CZ132 = "a brass maker's data sheet, CZ132";
    RAJHANS_CZ137 = "a brass maker's data sheet, CZ137";
    RIGHTON_C106 = "a metal stockholder's data sheet, C106 and CW024A";
    SCRIBD_BRASS = "a brass maker's specification sheet";
    SHREE_CZ114 = "a brass extruder's data sheet, CZ114";
}

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.
published! {
    ACRYLIC_BRIEF = "an acrylic maker's fabrication brief 4, Drilling";
    ACRYLIC_MANUAL = "an acrylic maker's manual, Drilling techniques";
    AERO_PLASTICS = "a plastics stockholder's notes, acrylic";
    ALRO = "a metal stockholder's guide";
    ALUMINIUM_MANUAL = "an aluminium manual, table 4.2, typical hardness";
    ARIA = "a national register of accidents, no. 43330, titanium swarf fire";
    ASTM_B164 = "ASTM B164, mechanical properties of rod and bar";
    ASTM_TITANIUM = "a stockholders' table of ASTM limits for titanium";
    AZOM_EXTRUDED = "a materials journal, article 3329, extruded alloys";
    B23_YIELD = "a table of Babbitt alloys (ASTM B23 grades)";
    BABBITT_CHAPTER = "a textbook chapter, Babbitt metal";
    BORSODCHEM = "a PVC maker's notes, Safety and handling";
    BPEL = "a die caster's notes, Machining of die castings";
    CCT_ACRYLIC = "a plastics stockholder's data sheet, acrylic";
    COSMOS = "an aluminium extruder's technical sheet (EN 755-2)";
    CREASEY = "a foundry's sheet, LM4";
    DGUV_MAGNESIUM = "DGUV Information 209-090e, Activities relating to magnesium";
    DURBIN_2011 = "a metal stockholder's data sheet, aluminium 2011 T3 rod and bar";
    DURBIN_6082 = "a metal stockholder's data sheet, aluminium 6082 T6 extrusions";
    ELEKTRON = "a magnesium maker's data sheet 254, Machining magnesium";
    ENG_PLASTICS = "Engineering Plastics Handbook, table 5.5, p. 91";
    ESA_7075 = "a space agency's materials data, A.1.5, 7075";
    EURALLIAGE = "an aluminium stockholder's sheet, 7075 (EN 755-2)";
    EURALLIAGE_PLATE = "an aluminium stockholder's sheet, 7075 (EN 485-2)";
    GOULD_L168 = "an alloy stockholder's data sheet, L168 T6511 bar";
    HANDBOOK_PTFE = "Handbook of Condensed Matter and Materials Data, table 3.3-12, p. 497";
    HANDBOOK_PTFE_HEAT = "Handbook of Condensed Matter and Materials Data, table 3.3-13, p. 497";
    HIGHLINE = "a sheet maker's notes, Drilling holes in polycarbonate";
    INTERLLOY_2011 = "a metal stockholder's sheet, 2011 aluminium";
    ISAKOV = "a machining journal, Tackling titanium, 2009";
    JAIN_PVC = "a PVC sheet maker's working techniques";
    LAIRD_NYLON = "a plastics stockholder's data sheet, nylon 101";
    LM25_SHEET = "a foundry's sheet, LM25 (BS 1490:1988)";
    LM4_SHEET = "a foundry's sheet, LM6 and LM4";
    LUNT = "a toolroom's comparison of material properties";
    MATWEB_7075 = "a database of materials, 7075-T6";
    MATWEB_TITANIUM = "a database of materials, titanium grade 2";
    MRT_ZINC = "a die caster's sheet, alloy ZL3 (EN 1774)";
    NORTH_STEEL = "a stockholder's data sheet, titanium grade 5";
    NORVA = "a plastics stockholder's notes, machining phenolics";
    PROTO_REAM_LIGHT = "a reamer maker's HSS reaming speeds, light metals";
    PVC_DATA_SHEET = "Safety data sheet, PVC compounds (rigid), 16 May 2008, section 10";
    QUIZ_PHENOLIC = "an examination question, Drilling bakelite and fibrous plastics";
    RMI = "a titanium maker's alloy guide, properties of pure titanium";
    SPECIAL_METALS = "a nickel alloy maker's bulletin, alloy 400";
    STERLING_PVC = "a plastics stockholder's sheet, type I PVC";
    SUBSTECH = "a substances and technologies table, 7075";
    TECHNICAL_ORDER = "Technical Order 1-1A-9 (TM 43-0106), magnesium machining safety";
    TI64 = "a table of typical values, Ti6Al4V";
    TRIDENT_CE = "a plastics stockholder's sheet, CE canvas phenolic";
    TRIDENT_PC = "a plastics stockholder's sheet, machine grade polycarbonate rod";
    US_PLASTIC_ACRYLIC = "a plastics dealer's physical properties, extruded acrylic sheet";
    ZAMAK_3 = "a die caster's sheet, zinc alloy 3 (EN 1774)";
    ZINC_MACHINING = "a zinc trade association, Machining, general comments";
}
