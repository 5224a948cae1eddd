//! Where the material rows were read, and short makers for a sentence with its source.

use super::{Advice, Designation, Standing};
use crate::tables::source::Source;

/// Advice of the trade that nobody has printed with authority.
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
    Designation { mark, standing: Standing::Current, source }
}

/// A designation recalled, not read.
pub(super) const fn recalled_mark(mark: &'static str) -> Designation {
    Designation {
        mark,
        standing: Standing::Current,
        source: Source::memory("recalled, no source read"),
    }
}

impl Designation {
    /// The same mark, of a standard withdrawn.
    pub(super) const fn old(self) -> Self {
        Self { standing: Standing::Old, ..self }
    }

    /// The same mark, of another country's standard.
    pub(super) const fn abroad(self) -> Self {
        Self { standing: Standing::Abroad, ..self }
    }
}

macro_rules! published {
    ($($name:ident = $cite:literal;)*) => {
        $(pub(super) const $name: Source = Source::published($cite);)*
    };
}

// Advice.
published! {
    ALUM_1945 = "American Horologist, March 1945, contest article 26; a model engineering society's page on broken taps";
    BOEDEKER = "Boedeker, Drilling guidelines for plastics";
    CAST_NYLONS = "Cast Nylons, Technical bulletin 106";
    ENSINGER = "Ensinger, Machining information";
    HSE_FLUIDS = "HSE, Ill health from metalworking and water-mix wash fluids, hse.gov.uk/metalworking";
    MH_FLUIDS = "Machinery's Handbook, 31st ed., Part A p. 1250, Cutting fluids recommended";
    POLYMER_FUME = "StatPearls, Polymer fume fever, ncbi.nlm.nih.gov/books/NBK594276";
    POPULAR_MECHANICS = "Popular Mechanics, workshop page 1274426";
    SMITH = "Smith, Drilling and associated cutting tool technology, p. 96 (cartridge brass)";
    VMS_TAPPING = "Training page, Threads, taps and tapping, 11, the-vms.com";
}

// Speeds and feeds.
published! {
    CLARKSON = "Clarkson-Osborn, Recommended cutting speeds for HSS taps, 2018";
    EL_HOFY = "El-Hofy, Fundamentals of Machining Processes, Table 5.4 p. 143";
    JET = "Jet, drill press operating instructions J-2221VS p. 12";
    LAVALLEE = "Lavallee & Ide, Tapping speeds";
    MH_TAP_1020 = "Machinery's Handbook, 31st ed., Part B p. 2178";
    MH_TAP_303 = "Machinery's Handbook, 31st ed., Part A p. 1141";
    NAVY = "US Navy training course 14345, p. 93";
    NOMINAL = "Nominal tutorial cutting speeds and feeds, Table 1 (teaching table)";
    NORSEMAN = "Norseman Drill, Drill feeds and speeds";
    PROTO_CAST = "Proto Cutter, HSS drilling speeds, ferrous cast metals";
    PROTO_LIGHT = "Proto Cutter, HSS drilling speeds, light metals";
    PROTO_STEEL = "Proto Cutter, HSS drilling speeds, plain carbon and alloy steels";
    PROTO_TOOL = "Proto Cutter, HSS drilling speeds, tool and stainless steels";
    QUIZ_COPPER = "CuriousTab, Cutting data for drilling (examination question 64801)";
    SPEEDS_LIST = "Machine tool speeds and feeds, docslib.org 5103932 (read as run-together text; first column taken as the drill's)";
    TAP_CHART = "Suggested tapping speeds, one-page chart, scribd 318370577";
}

// Designations.
published! {
    AALCO_303 = "Aalco, grade 303 data sheet";
    AALCO_BS_EN = "Aalco, BS and equivalent EN grades";
    ALLIED = "Allied Founders, specification table";
    AUDHE = "Aluminium castings chart, audhe.com";
    BIOLOGY_INSIGHTS = "biologyinsights.com, silver steel article";
    CDA_GUNMETAL = "Copper Development Association, Gunmetals";
    DURBIN = "Durbin Metals and Aalco, data sheet CW614N";
    EN_STEELS = "EN steels, basic steel selection based on BS 970, scribd 517393355";
    HOOD_PB1 = "John Hood & Co, data sheet PB1";
    HOOD_PB102 = "John Hood & Co, data sheet PB102";
    HSSCO = "Principal alloy designations, cast products, Table A.3, hssco.ru";
    KEMPER = "Kemper, cast products data sheets";
    KNIGHT = "Knight Precision Wire, alloy table";
    LUCEFIN = "Lucefin, technical card 11SMn30 (EN 10277-3)";
    NATIONAL_STEEL = "National Steel Processors, EN3B page";
    ROUND_STEEL = "round-steel.com, EN8 page";
    SHEFFIELD_GAUGE = "Sheffield Gauge Plate, AISI O1 page";
    SHYAM = "Shyam Metal, EN 1A page";
    TRAFITEC = "Trafitec, 1.4301 bar page";
    TRE_S = "Tre-S, table of equivalents";
    ZUIN = "Modelleria Zuin, pig-iron table (UNI EN 1561)";
}

// Iron and steel.
published! {
    AALCO_316L = "Aalco, 1.4404 bar data sheet";
    AALCO_303_BAR = "Aalco, 1.4305 bar data sheet";
    ATLAS_431 = "Atlas, 431 sheet";
    BSI_MALLEABLE = "BSI, Founding, malleable cast irons (BS EN 1562), scope";
    BUFFALO_O1 = "Buffalo Precision, O1 oil hardening tool steel, technical data sheet";
    CHICAGO_TUBE = "Chicago Tube, cold-finished table (1212 is 100)";
    COLT_O1 = "Colt Materials, O1 page";
    COOPER_EN36 = "D. A. Cooper & Sons, material data sheet 655M13";
    DANDONG_BS_1452 = "Dandong Foundry, BS 1452 grade 250 page, iron-foundry.com";
    DANDONG_EN_1563 = "Dandong Foundry, table of EN 1563:1997, iron-foundry.com";
    DANDONG_GJS_400 = "Dandong Foundry, EN-GJS-400-15 page, iron-foundry.com";
    ENGINEERING_TOOLBOX = "Engineering ToolBox, Metals, machinability (AISI 1112 and 1212 are 100)";
    GLUE_IT = "glue-it.com, Heat treating silver steel";
    GREY_IRON_SDS = "Gray iron castings, safety data sheet SC-000-041 rev. 13, docslib.org 1974933";
    GROUND_FLAT_STOCK = "groundflatstock.com, O1 tool steel heat treatment information";
    HEYE_EN24 = "Heye Steel, EN24T page";
    HSE_LEAD = "HSE, Lead, hse.gov.uk/toolbox/harmful/lead.htm";
    INDUSTRIAL_TUBE = "Industrial Tube, gray iron page (continuous cast bar, class 40)";
    INTERLLOY_12L14 = "Interlloy, 12L14 bright mild steel page";
    INTERWIRE = "Interwire, music wire page, tensile requirements";
    LASER_EDGE = "laserdt.com, Does laser cutting harden mild steel";
    LEADED_SDS = "Parker Steel, safety data sheet, leaded carbon and alloy steels, 2016";
    LUCCHINI = "Lucchini RS, Steels explained, comparison tables";
    LUCEFIN_LEADED = "Lucefin, technical card 11SMnPb30 (rev. 2018)";
    MACSTEEL_070M20 = "Macsteel, Special steels product catalogue 2021, 070M20";
    MAKEITFROM_A228 = "makeitfrom.com, ASTM A228 music wire page";
    MALLEABLE_A47 = "bmment.com, Malleable cast iron hardness requirements (ASTM A47M-90)";
    MALLEABLE_DENSITY = "material-properties.org, Malleable iron page";
    METAL_DRILLING = "Metal drilling reference guide, studylib.net 18232362 (read as run-together text)";
    METALS_CHINA = "metals-china.com, EN-GJL table (DIN EN 1561)";
    METAL_SUPPLIES_316 = "metalsupplies.com, 316 stainless steel page";
    NIFTY_416 = "Nifty Alloys, 416 stainless steel page";
    NIFTY_EN16 = "Nifty Alloys, EN16T page";
    NJR_EN19 = "NJR Steel, 709M40 page";
    NJR_EN36 = "NJR Steel, 655M13 page";
    ODYSSEY_EN24 = "Odyssey Steel, EN24 page";
    PAKDEN = "pakden.com, silver steel page, quoting West Yorkshire Steel";
    PROTO_CAST_REAMING = "Proto Cutter, HSS drilling and reaming speeds, ferrous cast metals";
    PROTO_STEEL_REAMING = "Proto Cutter, HSS drilling and reaming speeds, plain carbon and alloy steels";
    PROTO_TOOL_REAMING = "Proto Cutter, HSS drilling and reaming speeds, tool and stainless steels";
    READLE_EN_10025 = "readle.co.uk, Steel grades to Eurocodes, Table 7 of BS EN 10025-2";
    REGAL = "Regal Cutting Tools, Tapping difficulties and percent of thread";
    SAARSTAHL_C67S = "Saarstahl, material specification sheet C67S";
    SCHMITZ_C15 = "schmitz-metallographie.de, 1.0401 C15 normalised";
    SOLIMAN = "Fonderie Soliman, table of cast irons, solimangroup.com";
    STAINLESS_SDS = "Precision Specialty Metals, Stainless steel safety data sheet, 2015";
    STEELPIPES_EN36 = "Steel, Pipes and Fittings, EN36 page, steelpipespe.co.za";
    TRADEKEY_431 = "tradekey, 431 bar page";
    TRAFITEC_416 = "Trafitec, 1.4005 bar page";
    TUBINGCHINA = "tubingchina.com, BS 3100:1991 cast steel chemical composition";
    VENUS_416 = "Venus Wires, 416 sheet";
    VENUS_431 = "Venus Wires, 431 sheet";
    WEST_YORKSHIRE = "West Yorkshire Steel, Case hardening steel";
    WORLD_MATERIAL = "theworldmaterial.com, BS970 tables";
}

// Copper and its alloys.
published! {}

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.
published! {}
