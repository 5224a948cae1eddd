//! Where the material rows were read, and short makers for a sentence with its source.

use super::{Advice, Designation, Standing};
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
    HSSCO = "hssco.ru, casting alloy designation table A.3";
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
published! {
    HSE_LEAD_LEAFLET = "HSE, Lead and you, INDG305 (read in a summary)";
    AALCO_CA104 = "Aalco, bronze CA104 data sheet, 2006";
    AALCO_CW451K = "Aalco, data sheet CW451K";
    AALCO_CZ108 = "Aalco, brass CZ108 data sheet, 2006";
    AALCO_CZ114 = "Aalco, brass CZ114 data sheet, 2006";
    ANCHOR_C46400 = "Anchor Bronze, C46400 sheet";
    AVIVA_C54400 = "Aviva Metals, C54400 page";
    AZOM_CA104 = "AZoM, article 2847, bronze alloy CA104";
    AZOM_CZ108 = "AZoM, article 2820, brass alloy CZ108";
    AZOM_CZ114 = "AZoM, article 2821, brass alloy CZ114";
    BHARAT_CZ128 = "Bharat Metal Alloy, CZ128 data sheet";
    BOYNES_CB101 = "Boynes Springs, beryllium copper CB 101 data";
    BRASSLAND_C35330 = "Brassland, C35330 page";
    CASTINGS_C62400 = "brass-copper-castings.com, C62400";
    CASTINGS_C83600 = "brass-copper-castings.com, C83600";
    CDA_120_ROD = "CDA Publication 120, Table 14";
    CDA_120_SHEET = "CDA Publication 120, Table 16, brass sheet, strip and plate (read as run-together text)";
    CDA_C54400 = "Copper Development Association Inc., alloy C54400, alloys.copper.org";
    CDA_CUPRO_NICKEL = "Copper Development Association Inc., Mechanical properties of copper-nickel alloys, Table 1, copper.org";
    CDA_TEMPER = "Copper Alliance, Copper and its alloys, mechanical properties, copperalliance.org.uk";
    CW408J = "CW408J data sheet, scribd 348453160";
    CW481K = "cw481k.com, PB1 data";
    DURBIN_CW721R = "Durbin Metals, data sheet CW721R";
    FINKELSTEIN_CC495K = "Finkelstein Metals, CC495K data sheet";
    FITSCHER = "Fitscher Guss, fitscherguss.de";
    HUSSEY_C11000 = "Hussey Copper, C110 data sheet";
    HUSSEY_C70600 = "Hussey Copper, C706 data sheet";
    JSK_C17200 = "JSK Traders, C17200 data sheet";
    KMM_CC492K = "KMM Bronze, alloys directory, CC492K";
    KMM_CC496K = "KMM Bronze, alloys directory, CC496K";
    OSHA_BERYLLIUM = "OSHA, Hazard Information Bulletin, Preventing adverse health effects from exposure to beryllium on the job, 1999";
    PW_FOUNDRY = "PW Foundry, alloy specifications";
    RAJHANS_CZ108 = "Rajhans, CZ108 data sheet";
    RAJHANS_CZ115 = "Rajhans, CZ115 data sheet";
    RAJHANS_CZ132 = "Rajhans, CZ132 data sheet";
    RAJHANS_CZ137 = "Rajhans, CZ137 data sheet";
    RIGHTON_C106 = "Righton, data sheet C106 and CW024A";
    SCRIBD_BRASS = "scribd 220928843, brass specification sheet";
    SHREE_CZ114 = "Shree Extrusion, CZ114 data sheet";
}

// Aluminium, nickel, titanium, magnesium, zinc, white metal and plastics.
published! {
    ACRYLIC_BRIEF = "Acrylite, Fabrication brief 4, Drilling, scribd 560893074";
    ACRYLIC_MANUAL = "Plexiglas acrylic sheet, Drilling techniques, hitpages.com";
    AERO_PLASTICS = "Aero Plastics & Supply, Acrylic";
    ALRO = "Alro metals guide (docslib 3174256)";
    ALUMINIUM_MANUAL = "Aluminum manual, Table 4.2, Typical hardness values, scribd 390430133";
    ARIA = "ARIA, accident 43330, titanium swarf fire, aria.developpement-durable.gouv.fr";
    ASTM_B164 = "ASTM B164, mechanical properties of rod and bar, boltport.com";
    ASTM_TITANIUM = "ASTM titanium limits table (highmetal.co.in, tricormetals.com)";
    AZOM_EXTRUDED = "AZoM 3329, extruded alloys";
    B23_YIELD = "Babbitt alloys table (ASTM B23 grades), liquisearch.com";
    BABBITT_CHAPTER = "Taylor & Francis, chapter 10.1201/b18998-8, Babbitt metal";
    BORSODCHEM = "BorsodChem, Learn about PVC, Safety and handling";
    BPEL = "bpel.co.uk, Machining of die castings";
    CCT_ACRYLIC = "CCT Precision, Acrylic data sheet";
    COSMOS = "Cosmos Aluminium technical sheet (EN 755-2), scribd 433597598";
    CREASEY = "Creasey Castings, LM4 sheet";
    DGUV_MAGNESIUM = "DGUV Information 209-090e, Activities relating to magnesium";
    DURBIN_2011 = "Durbin Metals, data sheet aluminium alloy 2011 T3 rod and bar";
    DURBIN_6082 = "Durbin Metals, data sheet aluminium alloy 6082 T6 extrusions";
    ELEKTRON = "Magnesium Elektron, Datasheet 254, Machining magnesium";
    ENG_PLASTICS = "Engineering Plastics Handbook, Table 5.5 p. 91";
    ESA_7075 = "ESA, materials data A.1.5, 7075 aluminium-zinc alloy";
    EURALLIAGE = "Euralliage, 7075 sheet (EN 755-2)";
    EURALLIAGE_PLATE = "Euralliage, 7075 sheet (EN 485-2)";
    GOULD_L168 = "Gould Alloys, data sheet L168 T6511 bar";
    HANDBOOK_PTFE = "Handbook of Condensed Matter and Materials Data, Table 3.3-12 p. 497";
    HANDBOOK_PTFE_HEAT = "Handbook of Condensed Matter and Materials Data, Table 3.3-13 p. 497";
    HIGHLINE = "Highline, Drilling holes in polycarbonate sheet";
    INTERLLOY_2011 = "Interlloy, 2011 aluminium";
    ISAKOV = "Isakov, Tackling titanium, ctemag.com 2009";
    JAIN_PVC = "Jain, PVC sheet working techniques, scribd 249386465";
    LAIRD_NYLON = "Laird Plastics, nylon 101 data sheet";
    LM25_SHEET = "LM25 sheet (scribd 33733589, BS 1490:1988)";
    LM4_SHEET = "LM6 and LM4 sheet, scribd 554364879";
    LUNT = "Lunt, Material properties comparison";
    MATWEB_7075 = "MatWeb, 7075-T6";
    MATWEB_TITANIUM = "MatWeb, titanium grade 2";
    MRT_ZINC = "MRT Castings, pressure die casting alloy ZL3 (EN 1774)";
    NORTH_STEEL = "North Steel, titanium grade 5 data sheet";
    NORVA = "Norva Plastics, Phenolic machining";
    PROTO_REAM_LIGHT = "Proto Cutter, HSS reaming speeds, light metals";
    PVC_DATA_SHEET = "Safety data sheet, PVC compounds (rigid), 16 May 2008, section 10";
    QUIZ_PHENOLIC = "CuriousTab, Drilling bakelite and fibrous plastics (examination question 64762)";
    RMI = "RMI Titanium, Titanium alloy guide, properties of pure titanium";
    SPECIAL_METALS = "Special Metals, Monel 400 bulletin";
    STERLING_PVC = "Sterling Plastics, Type I PVC";
    SUBSTECH = "substech.com, 7075";
    TECHNICAL_ORDER = "Technical Order 1-1A-9 (TM 43-0106), magnesium machining safety";
    TI64 = "Ti6Al4V typical table (aseanbizs.com)";
    TRIDENT_CE = "Trident Plastics, CE canvas phenolic sheet";
    TRIDENT_PC = "Trident Plastics, machine grade polycarbonate rod";
    US_PLASTIC_ACRYLIC = "US Plastic, Physical properties for extruded acrylic sheet";
    ZAMAK_3 = "Zamak 3 page (EN 1774), zamak.au";
    ZINC_MACHINING = "diecasting.zinc.org, Machining, General comments";
}
