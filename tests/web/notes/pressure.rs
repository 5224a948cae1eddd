//! Words of pressure in every dress that a reader sees through: each is heard.

use holewright_server::rules::notes::fields::Done;
use holewright_server::rules::notes::folded::folded;
use holewright_server::rules::notes::pressure::{marked_text_speaks_of_it, speaks_of_it};
use holewright_server::rules::notes::seen::is_blank;
use holewright_server::rules::notes::state::Subject;
use holewright_server::rules::notes::wording::{Aim, Typed, Wording};
use proptest::prelude::*;
use proptest::sample::select;

/// What members call it. The list is ours and entered apart from the one that hears.
const WORDS: [&str; 67] = [
    "dome ring",
    "dome bush",
    "longitudinal stays",
    "top feed",
    "manifolds",
    "blower ring",
    "acetylene",
    "burner jets",
    "gas canister",
    "regulator fittings",
    "displacement lubricator",
    "fire extinguishers",
    "regulator body",
    "vaporisers",
    "boiler",
    "boilers",
    "steam",
    "steamed",
    "pressure",
    "pressurised",
    "firebox",
    "firetubes",
    "flues",
    "superheater",
    "clack",
    "blowdown",
    "injectors",
    "hydraulic",
    "hydrostatic",
    "pneumatics",
    "safety valve",
    "safety valves",
    "water gauges",
    "fusible plugs",
    "crown stays",
    "check valves",
    "relief valves",
    "regulator valve",
    "compressed air",
    "backhead",
    "tubeplate",
    "tube plates",
    "throatplate",
    "firehole",
    "fire hole",
    "smokebox",
    "washout plug",
    "kilopascals",
    "bioler",
    "presure",
    "saftey valve",
    "air receiver",
    "air receivers",
    "air reservoir",
    "air tank",
    "compressor tank",
    "gas tank",
    "butane tanks",
    "bursting disc",
    "pop valve",
    "blower valve",
    "gauge glass",
    "gauge cocks",
    "try cock",
    "foundation ring",
    "girder stays",
    "palm stay",
];

/// Letters that look like these, from other alphabets and from the mathematicians.
const ALIKE: [(char, &[char]); 14] = [
    ('a', &['а', 'ａ', '𝐚', 'ɑ', 'á', 'A', 'Α', 'А', 'ᴀ']),
    ('b', &['ｂ', '𝐛', 'B', 'Β', 'В', 'ʙ', 'ⓑ']),
    ('c', &['с', 'ｃ', 'ϲ', 'C', 'С', 'ç']),
    ('d', &['ԁ', 'ｄ', '𝐝', 'ⅾ', 'D']),
    ('e', &['е', 'ｅ', '𝐞', 'é', 'E', 'Ε', 'Е', 'ᴇ']),
    ('i', &['і', 'ｉ', '𝐢', 'ι', 'í', 'I', 'Ι', 'І', '1', 'l', '|', 'ɪ']),
    ('l', &['ｌ', '𝐥', 'ⅼ', '1', 'I', 'L', 'ʟ']),
    ('o', &['о', 'ｏ', '𝐨', 'ο', '0', 'ø', 'O', 'Ο', 'О', 'ᴏ']),
    ('p', &['р', 'ｐ', '𝐩', 'ρ', 'P', 'Ρ', 'Р', 'ᴘ']),
    ('r', &['ｒ', '𝐫', 'R', 'ʀ', 'г']),
    ('s', &['ѕ', 'ｓ', '𝐬', 'S', 'Ѕ', 'ꜱ']),
    ('t', &['ｔ', '𝐭', 'T', 'Τ', 'Т', 'ᴛ']),
    ('u', &['ｕ', '𝐮', 'υ', 'ü', 'U', 'ᴜ']),
    ('x', &['х', 'ｘ', '𝐱', 'X', 'Χ', 'Х']),
];

/// Marks that take no room, or lie upon the letter before.
const UNSEEN: [&str; 12] = [
    "\u{ad}",
    "\u{200b}",
    "\u{200c}",
    "\u{200d}",
    "\u{2060}",
    "\u{feff}",
    "\u{34f}",
    "\u{fe0f}",
    "\u{115f}",
    "\u{e0061}",
    "\u{336}",
    "\u{301}",
];

/// What stands between two letters and is not seen once the Markdown is read.
const MARKED: [&str; 9] = [
    "&shy;",
    "&#173;",
    "&#xAD;",
    "&#8203;",
    "&ZeroWidthSpace;",
    "&zwj;",
    "****",
    "~~~~",
    "\\\u{ad}",
];

/// What a reader sees between two letters and reads over.
const BETWEEN: [&str; 5] = ["-", ".", "_", "·", "\u{2011}"];

fn spread(word: &str, mark: &str) -> String {
    word.chars().map(|c| c.to_string()).collect::<Vec<_>>().join(mark)
}

/// Each place inside the word, with what stands before and after.
fn places(word: &str) -> Vec<(&str, &str)> {
    let places = word.char_indices().map(|(place, _)| place);
    places.filter(|place| *place > 0).map(|place| word.split_at(place)).collect()
}

/// A whole word put on otherwise.
fn dressed(word: &str) -> Vec<String> {
    let each = |dress: fn(char) -> char| word.chars().map(dress).collect::<String>();
    let shifted = |c: char, start: u32| match c {
        'a'..='z' => char::from_u32(start + (c as u32 - 'a' as u32)).unwrap(),
        c => c,
    };
    let mut all = vec![
        word.to_uppercase(),
        word.replace(' ', "\n"),
        word.replace(' ', " \u{a0} "),
        word.replace('m', "rn"),
        word.chars().map(|c| shifted(c, 'ａ' as u32)).collect(),
        word.chars().map(|c| shifted(c, '𝐚' as u32)).collect(),
        word.chars().map(|c| shifted(c, '𝔞' as u32)).collect(),
        word.chars().map(|c| shifted(c, 'ⓐ' as u32)).collect(),
        each(|c| ALIKE.iter().find(|(plain, _)| *plain == c).map_or(c, |(_, alike)| alike[0])),
    ];
    all.extend(UNSEEN.iter().map(|mark| spread(word, mark)));
    if !word.contains(' ') {
        all.extend(BETWEEN.iter().map(|mark| spread(word, mark)));
        all.push(spread(word, " "));
        all.extend(places(word).iter().map(|(one, other)| format!("{one}-\n{other}")));
    }
    for (letter, alike) in ALIKE {
        all.extend(alike.iter().map(|c| word.replace(letter, &c.to_string())));
    }
    all
}

/// A whole word under marks of Markdown.
fn marked(word: &str) -> Vec<String> {
    let references = |form: fn(u32) -> String| word.chars().map(|c| form(c as u32)).collect();
    let mut all: Vec<String> =
        vec![references(|c| format!("&#{c};")), references(|c| format!("&#x{c:X};"))];
    for (one, other) in places(word) {
        all.extend(MARKED.iter().map(|mark| format!("{one}{mark}{other}")));
        if [one.chars().last(), other.chars().next()].contains(&Some(' ')) {
            continue;
        }
        all.push(format!("{one}**{other}**"));
        all.push(format!("*{one}*{other}"));
        all.push(format!("{one}~~{other}~~"));
        all.push(format!("{one}`{other}`"));
        all.push(format!("{one}[{other}](https://club.test/)"));
        all.push(format!("{one}[{other}][x]\n\n[x]: https://club.test/"));
    }
    all
}

#[test]
fn a_word_of_pressure_is_heard_in_every_dress() {
    let mut missed = Vec::new();
    let mut tried = 0;
    for word in WORDS {
        for text in dressed(word) {
            for text in [format!("Turned a {text} end"), text] {
                tried += 1;
                if !speaks_of_it(&text) || !marked_text_speaks_of_it(&text) {
                    missed.push(format!("{word}: {}", text.escape_unicode()));
                }
            }
        }
        for text in marked(word) {
            tried += 1;
            if !marked_text_speaks_of_it(&format!("Turned a {text}")) {
                missed.push(format!("{word}: {text}"));
            }
        }
    }
    assert!(tried > 5_000, "{tried}");
    assert!(missed.is_empty(), "{} of {tried}:\n{}", missed.len(), missed.join("\n"));
}

#[test]
fn units_of_pressure_are_heard_behind_a_figure() {
    for text in [
        "80 psi",
        "80psi",
        "100PSI",
        "160psig.",
        "90 p.s.i.",
        "ｐｓｉ",
        "5 lbf/in²",
        "5 lb/sq in",
        "five pounds per square inch",
        "6 kg/cm²",
        "600 kPa",
        "tested to 10 bar",
        "pumped up to 10bar",
        "held at 2.5 bar",
        "a hydro test",
    ] {
        assert!(speaks_of_it(text), "{text}");
    }
}

#[test]
fn what_has_nothing_to_do_with_pressure_is_left_alone() {
    for text in [
        "Bar stock, 20 mm",
        "a firm hand on the drill, paraffin and patience",
        "Water pump body in LG2; valve gear in 303",
        "Oil every cup since it runs hot; the hob oiler stayed dry",
        "Tapped 4 BA at 1.5 D, No. 32, 850 rev/min, dry",
        "M3 x 0.5, 2.5 mm drill: 83 %, 1/4 x 40 T.P.I.",
        "The tap ran free after a café break",
        "A stay of the crown wheel; gauge plate; check twice",
        "20 mm bar, turned to 10 mm; 3 bars at once; Op 10: bar off",
        "A receiver for the telephone; glass for the gauge of the clock; tube and plate",
        "Tapped 8 BA blind 10 mm",
    ] {
        assert!(!marked_text_speaks_of_it(text), "{text}");
    }
}

/// The few words that count most, as they are mistyped or hidden.
#[test]
fn the_strongest_words_are_heard_in_pieces_misspelt_and_inside_others() {
    let missed: Vec<&str> = [
        "bo il er",
        "boi ler",
        "b oil er",
        "b o iler",
        "st e am",
        "s t eam",
        "pres su re",
        "pre ssu re",
        "safe ty valve",
        "saf ety val ve",
        "boilr",
        "boler",
        "biler",
        "boier",
        "bioler",
        "obiler",
        "boielr",
        "boiiler",
        "booiler",
        "boilers",
        "staem",
        "setam",
        "steeam",
        "stteam",
        "pessure",
        "prssure",
        "pressre",
        "pressue",
        "perssure",
        "presssure",
        "safty valve",
        "safey valve",
        "safety vavle",
        "relief vlave",
        "superhat",
        "suprheater",
        "st3am",
        "5team",
        "5t34m",
        "s7eam",
        "b0iler",
        "6oiler",
        "8oiler",
        "bo1ler",
        "bo!ler",
        "ste@m",
        "$team",
        "pre55ure",
        "overpressure",
        "over-pressure",
        "underpressure",
        "livesteam",
        "repressurised",
        "overpresure",
    ]
    .into_iter()
    .filter(|text| !speaks_of_it(text) || !speaks_of_it(&format!("Turned the {text} end")))
    .collect();
    assert!(missed.is_empty(), "{missed:?}");
}

/// Words that are one letter or one gap away from them, and mean something else.
#[test]
fn honest_words_beside_the_strongest_are_left_alone() {
    let heard: Vec<&str> = [
        "steel",
        "a steel stem",
        "stem",
        "steal",
        "seam",
        "team",
        "steady rest",
        "stead",
        "stream",
        "upstream",
        "esteem",
        "stamped",
        "start a M4",
        "boulder",
        "bolder",
        "oiler",
        "an oil cup",
        "coil it",
        "boiled",
        "bowl",
        "roller",
        "rollers",
        "holler",
        "bolt er",
        "pressed",
        "presses",
        "press it",
        "presser foot",
        "pleasure",
        "compressor",
        "safety glasses",
        "safe to use",
        "valve gear",
        "box of fire clay",
        "set a M3",
        "EN8 M5, 5 off",
        "55 mm, 8 holes, 3 of 4",
        "303, 304 and 316",
        "1/4 x 40, 6 off",
        "M3 to M8, 7 tpi",
        "Mild steel, Ste el",
        "Stub mandrel",
        "The club’s team drilled it",
        "my son's team",
    ]
    .into_iter()
    .filter(|text| speaks_of_it(text))
    .collect();
    assert!(heard.is_empty(), "{heard:?}");
    // Steel in whatever dress, in pieces and mistyped, is never steam.
    for text in dressed("steel")
        .into_iter()
        .chain(["stele", "stel", "steell", "ste el", "st33l"].map(str::to_owned))
    {
        assert!(!speaks_of_it(&text), "{}", text.escape_unicode());
    }
}

/// Every word of the reference is honest, but for those that are about pressure.
#[test]
fn the_names_of_the_reference_are_left_alone() {
    use holewright_core::tables::{materials, threads};
    let mut heard = Vec::new();
    let mut tried = 0;
    for material in materials::all() {
        for name in [material.name, material.slug] {
            tried += 1;
            heard.extend(speaks_of_it(name).then(|| name.to_owned()));
        }
    }
    for system in threads::systems() {
        tried += 1;
        heard.extend(speaks_of_it(system.name).then(|| system.name.to_owned()));
    }
    assert!(tried > 50, "{tried}");
    assert_eq!(heard, Vec::<String>::new());
}

#[test]
fn every_character_has_a_look() {
    for c in '\0'..=char::MAX {
        let text = format!("b{c}oiler");
        let looks = folded(&text);
        if is_blank(&c.to_string()) && !c.is_whitespace() && !c.is_control() && c != '\u{2800}' {
            assert!(speaks_of_it(&text), "{}: {looks}", c.escape_unicode());
        }
    }
}

/// One letter in some dress, with or without a mark behind it that is not seen.
fn letter(plain: char) -> BoxedStrategy<String> {
    let alike = ALIKE.iter().find(|(held, _)| *held == plain).map_or(&[][..], |(_, alike)| alike);
    let dresses: Vec<char> = [plain].into_iter().chain(alike.iter().copied()).collect();
    let marks: Vec<&str> =
        ["", "", ""].into_iter().chain(UNSEEN).chain(["&shy;", "&#8203;"]).collect();
    (select(dresses), select(marks)).prop_map(|(c, mark)| format!("{c}{mark}")).boxed()
}

proptest! {
    #[test]
    fn a_word_of_pressure_is_heard_in_any_mixture_of_dresses(
        (word, dressed) in select(WORDS.to_vec()).prop_flat_map(|word| {
            (Just(word), word.chars().map(letter).collect::<Vec<_>>())
        })
    ) {
        let text = dressed.concat();
        prop_assert!(marked_text_speaks_of_it(&text), "{}: {}", word, text.escape_unicode());
    }
}

/// How a gauge is read and what a vessel is called, as members wrote it.
#[test]
fn figures_and_names_of_pressure_are_heard_as_they_are_written() {
    let missed: Vec<&str> = [
        "80 lb/in²",
        "80lb/sq.in.",
        "80 lbs/sq in",
        "80lb per sq in",
        "3kg/cm²",
        "5 bar on the gauge",
        "6bar and no leaks",
        "5.5 bar",
        "0.5 MPa",
        "0.5 N/mm2",
        "5 atm",
        "blows off at 80 lb",
        "held 120 lb for ten minutes",
        "an air reciever",
        "air receivers",
        "air reciver",
        "safety valv spring",
        "safetey valve",
        "saftey vavle",
        "valve, safety",
        "preasure",
        "a boilar",
        "boilor",
        "boylers",
        "steem",
        "hydrolic test",
        "compresed air",
        "compresser tank",
        "injecter",
        "clak valve",
        "gage glass",
        "a boss on to the gas bottle",
        "gas cylinder",
        "propane cylinder",
        "air bottle",
        "air vessel",
        "autoclave",
        "expansion vessel",
        "stop valve",
        "snifting valve",
        "non-return valve",
        "whistle valve",
        "wet header",
        "tube sheet",
        "proof tested",
        "leak tested with air",
        "a boyler bush",
        "preassure",
        "preshure",
        "newmatic",
        "water guage",
        "fusable plug",
        "180 lbs/sq.in.",
        "80 pounds per sq inch",
        "5,5 bar working",
    ]
    .into_iter()
    .filter(|text| !speaks_of_it(text))
    .collect();
    assert_eq!(missed, [""; 0]);
    let heard: Vec<&str> = [
        "made from 3/4 bar",
        "a length of 303 bar",
        "20 mm bar, 2 bars of brass",
        "LG2 bar",
        "a 2 lb hammer",
        "turned between centres in a 5 lb block",
        "stop, valve out",
    ]
    .into_iter()
    .filter(|text| speaks_of_it(text))
    .collect();
    assert_eq!(heard, ["stop, valve out"], "as a pair, to be on the safe side");
}

/// A drill's number above a text on a bar is no gauge; everything that could be one is heard as before.
#[test]
fn a_figure_before_bar_is_a_drills_number_only_where_it_can_be_nothing_else() {
    assert!(!speaks_of_it("Cross pin\nsilver steel\nNo 50\n10 mm\nBar was bright"));
    // As a note has them: the field of the drill above the text.
    let subject = |title: &str, drill: &str, depth: &str, text: &str| {
        let done = Done::from_each(|field| match field.name {
            "drill" => drill.to_owned(),
            "depth" => depth.to_owned(),
            _ => String::new(),
        });
        let (title, text) = (title.to_owned(), text.to_owned());
        let typed = Typed { title, text, done, ..Typed::default() };
        Wording::read(&typed, Aim::SendIn).unwrap().subject
    };
    for (drill, text) in [
        ("No 50", "Bar was **bright**, and tapped blind 10 mm."),
        ("No. 50", "Bar of silver steel, tapped 8 BA blind 10 mm"),
        ("No 50", "Bar stock. The gauge plate was drilled after it."),
    ] {
        assert_eq!(subject("Cross pin", drill, "", text), Subject::Usual, "{drill}: {text}");
    }
    for (title, drill, depth, text) in [
        ("Cross pin", "50", "", "Bar was bright."),
        ("Cross pin", "No 50", "", "bar and no leaks."),
        ("Cross pin", "No 50", "bar", "It cut clean."),
        ("Cross pin", "at 50", "", "Bar was bright."),
        ("Pumped up to", "No 50", "", "Bar was bright."),
        ("Cross pin", "No 50", "", "Bar was reached."),
        ("Cross pin", "No 50", "", "Bar was the most it took."),
        ("Cross pin", "No 50", "", "Bar is what the dial gave."),
        ("Cross pin", "No 50", "", "Bar was held for an hour."),
        // A text's own lines are no field.
        ("Cross pin", "", "", "The dial went round to\nNo 50\nBar was bright."),
        ("Cross pin", "", "", "It stood when I had\n\nNo 50\nBar was bright."),
        ("Cross pin", "", "", "No 50  \nBar was bright."),
    ] {
        assert_eq!(subject(title, drill, depth, text), Subject::Pressure, "{drill}, {text}");
    }
    let missed: Vec<&str> = [
        "50\nbar",
        "50\nBar was reached",
        "No 50 bar",
        "There is no 50 bar in it",
        "No 50\nbar was what it showed",
        "No 50\nBar",
        "No 50\nBar on the gauge",
        "No 50\nBar was bright",
        "No. 50\nBar of silver steel",
        "it went to No 50\nBar was bright",
        "No 50\n50 bar",
        "№ 50\nBar was bright",
        "N\u{43e} 50\nBar was bright",
        "No 5\u{200b}0\nBar was bright",
    ]
    .into_iter()
    .filter(|text| !speaks_of_it(text) || !marked_text_speaks_of_it(text))
    .collect();
    assert_eq!(missed, [""; 0]);
}

/// What a boiler and a gas fitting are made of, in the words of the bench.
#[test]
fn parts_of_a_boiler_and_of_gas_are_heard_by_their_plain_names() {
    let missed: Vec<&str> = [
        "Drilled through the dome ring for the regulator",
        "Dome bush tapped 26",
        "DOME, gunmetal",
        "d-o-m-e bush",
        "Tapped the dome",
        "two domes",
        "Longitudinal stays 1/4 x 40",
        "Stays threaded 5 BA, nutted",
        "stay-bolts",
        "Staybolts tapped through",
        "the stays",
        "six holes for stays",
        "5/32 copper stays",
        "24 stays at half an inch",
        "Stay rod, bronze",
        "Bushes in the barrel",
        "barrel bush",
        "The barrel wants three bushes",
        "a rolled barrel",
        "copper barrel",
        "Top feed",
        "top-feed fitting",
        "manifold",
        "an inlet manifold",
        "Blower ring",
        "the blower jet",
        "Oxy-acetylene regulator fitting",
        "Gas burner jet",
        "gas canister adaptor",
        "Gas jet, No. 80",
        "butane canister",
        "the burner nozzle",
    ]
    .into_iter()
    .filter(|text| !speaks_of_it(text) || !marked_text_speaks_of_it(text))
    .collect();
    assert_eq!(missed, [""; 0]);
}

#[test]
fn the_same_words_of_the_bench_are_left_alone() {
    let heard: Vec<&str> = [
        "a domed nut",
        "dome nut",
        "Dome-headed rivets, countersunk",
        "the drill stays cool",
        "stays put",
        "It stays put in the chuck",
        "Copper stays soft once annealed",
        "A No. 43 stays sharp in brass",
        "The tap should stay in line with the hole",
        "Steel stays bright under oil",
        "a stay of the crown wheel",
        "top slide feed",
        "feed from the top",
        "Feed the drill in from the top of the block",
        "the barrel of the vice",
        "barrel of a micrometer",
        "Barrel arbor of the clock, 4 BA",
        "Mainspring barrel cover, naval brass",
        "The tailstock barrel locked, a drill bush in the vee block",
        "bushed in brass, pressed home",
        "The regulator of the clock, 8 BA",
        "Burnt oil on the burner of the forge",
        "Acetal and acetone",
        "Gasket of oiled paper, gas-tight thread none",
        "A feed of a thou a turn",
        "the top of the feed screw",
    ]
    .into_iter()
    .filter(|text| speaks_of_it(text) || marked_text_speaks_of_it(text))
    .collect();
    assert_eq!(heard, [""; 0]);
}

/// Figures of a gauge with hyphens, in the plural and in words, and forces on an area in their usual spellings.
#[test]
fn pressures_are_heard_with_hyphens_in_the_plural_and_in_words() {
    let missed: Vec<&str> = [
        "10-bar test",
        "a 10\u{2011}bar test",
        "a 5.5-bar gauge",
        "3-5 bar",
        "ten-bar fitting",
        "10 bars",
        "10bars",
        "2.5 bars on the dial",
        "ten bars",
        "Ten BAR",
        "Held ten bars for an hour",
        "twenty-five bar",
        "two and a half bars",
        "one and a half bar",
        "3 and a half bars",
        "up to one bar",
        "up to a limit, under two hundred bars",
        "at 160 bars",
        "stood two hundred bars",
        "5.0 bar",
        "ten bars of air",
        "three bars of CO2",
        "ten bars of course",
        "ten bars. Of brass it was",
        "It held 5 bar. Stock was brass",
        "It stood 5 bar.\nEnds were plugged",
        "It held 10 bar\nStock was brass",
        "Held ten bars\nof brass",
        "ten bars; at once it leaked",
        "It went to ten bars at once",
        "ten bars each",
        "ten bars long enough",
        "ten b\u{430}rs",
        "300 mbar",
        "5 barg",
        "millibars",
        "an 80-lb test",
        "80-lbs",
        "eighty lb",
        "one hundred and twenty lbs",
        "blows off at eighty pounds",
        "It goes to 80 pounds",
        "eighty pounds to the square inch",
        "80 pounds to the sq. in.",
        "80 pounds a square inch",
        "two pounds to a square inch",
        "ninety pounds on each square inch per gauge",
        "80 lb per sq in",
        "80 lb per sq. in.",
        "80-lb. per sq.-in.",
        "80 lb/sq. inch",
        "80lb to the sq in",
        "80 lbs per in²",
        "80 lb in⁻² or lb/in2",
        "6 kgf/cm²",
        "6kgf/cm2",
        "6 kg/cm2",
        "6 kg per sq cm",
        "6 kilos to the square centimetre",
        "600 kN/m²",
        "600kN/m2",
        "600 kN per m2",
        "5 N per mm2",
        "stay bolts",
        "stay-bolts",
        "a flash coil",
        "flash-coils",
        "water tubes",
        "water-tube",
        "mud hole",
        "mudholes",
        "mud plug",
        "manhole door",
        "man-hole doors",
        "gas bottles",
    ]
    .into_iter()
    .filter(|text| !speaks_of_it(text) || !marked_text_speaks_of_it(text))
    .collect();
    assert_eq!(missed, [""; 0]);
}

#[test]
fn bars_of_stock_and_weights_are_left_alone() {
    let heard: Vec<&str> = [
        "10 mm bar",
        "10mm-bar",
        "a 3/4-bar",
        "1-1/2 bar",
        "3/4 bars",
        "ten bars of brass",
        "2 bars of brass",
        "3 bars of 303",
        "2-off bars",
        "3 bars at once",
        "three bars at a time",
        "3 bar ends",
        "two bar stock pieces",
        "bar end",
        "bar-ends",
        "Bar was dull",
        "the bar was dull",
        "one bar",
        "two parts from one bar",
        "half a bar",
        "LG2 bar",
        "LG-2 bar",
        "EN-8 bars",
        "303-bar",
        "5\" bar",
        "a boring bar",
        "two boring bars",
        "ten tommy bars",
        "10-mm tommy bar",
        "steel bars",
        "ten steel bars",
        "Drill: No. 50: bar off",
        "a 2-lb hammer",
        "a two lb hammer",
        "a 1.25 lb hammer",
        "hammered to bars",
        "ten pounds",
        "eighty pounds",
        "It was sold for 80 pounds",
        "5 N to the M2 screws",
        "a pound a piece",
        "2 kg M2 screws",
        "square to the inch mark",
        "the flash of the coil, and water in a tube",
        "a man drilled the hole, in mud",
    ]
    .into_iter()
    .filter(|text| speaks_of_it(text) || marked_text_speaks_of_it(text))
    .collect();
    assert_eq!(heard, [""; 0]);
}
