//! Queries with what must come first.

use holewright_core::finder::{Kind, LONGEST, find};

/// What a query must lead to.
#[derive(Clone, Copy, Debug)]
enum Leads {
    /// Straight to the one page that can be meant.
    To(&'static str),
    /// To a list that begins with this, since it is not the one thing that can be meant.
    First(&'static str),
    /// To nothing, with this as the first suggestion.
    Suggests(&'static str),
    /// To nothing at all.
    Nowhere,
}

use Leads::{First, Nowhere, Suggests, To};

#[rustfmt::skip]
const NAMED: [(&str, Leads); 42] = [
    ("5BA", To("/threads/ba/5")),
    (" No. 5 B.A. ", To("/threads/ba/5")),
    ("M3 x .5", To("/threads/metric/m3")),
    ("1/4\" Whit", To("/threads/bsw/1-4")),
    ("1/4x40 ME", To("/threads/me-40/1-4")),
    ("#4-40", To("/threads/unc/4-40")),
    ("ba/5", To("/threads/ba/5")),
    ("M8 LH", To("/threads/metric/m8")),
    // A bare fraction is a size of a dozen systems and a drill.
    ("1/4", First("/threads/bsw/1-4")),
    ("5", First("/threads/ba/5")),
    // One thread has this gauge, but no system is written.
    ("000", First("/threads/unm/000-120")),
    ("2.05", To("/drills/metric/2.05")),
    ("2,05 mm", To("/drills/metric/2.05")),
    (".081", To("/drills/number/46")),
    ("81 thou", To("/drills/number/46")),
    ("7/64", To("/drills/fraction/7-64")),
    ("No 46", To("/drills/number/46")),
    ("letter F", To("/drills/letter/f")),
    ("Øf", To("/drills/letter/f")),
    // The drill, and 5 BA has that major diameter.
    ("3.2 mm", First("/drills/metric/3.2")),
    // No drill has this size: the nearest one.
    ("2.07 mm", First("/drills/number/46")),
    ("gunmetal", To("/materials/gunmetal")),
    ("LG2", To("/materials/gunmetal")),
    ("EN1A", To("/materials/free-cutting-mild-steel")),
    ("18/8 stainless", To("/materials/stainless-304")),
    ("silversteel", To("/materials/silver-steel")),
    ("drill rod", To("/materials/silver-steel")),
    ("stainless", First("/materials/stainless-303")),
    // A thread system and a metal.
    ("brass", First("/threads/bsb")),
    ("brass thread", To("/threads/bsb")),
    ("BSF", To("/threads/bsf")),
    ("gas", First("/threads/bspp")),
    ("metric fine", To("/threads/metric-fine")),
    ("me 40", To("/threads/me-40")),
    ("model engineer 40", First("/threads/me-40")),
    ("number drills", To("/drills?series=number")),
    ("hole plan", To("/plan")),
    ("threads", To("/threads")),
    ("Drill chart", To("/drills")),
    ("materials", To("/materials")),
    // The list says nothing of it: the pages of the metals do, and the members.
    ("broken tap", First("/rescue/broken-tap")),
    ("Stuck tap", First("/rescue/broken-tap")),
];

#[rustfmt::skip]
const PARTIAL: [(&str, Leads); 8] = [
    ("phos", First("/materials/phosphor-bronze-cast")),
    ("gunm", First("/materials/gunmetal")),
    ("cz12", First("/materials/free-cutting-brass")),
    ("whitw", First("/threads/bsw")),
    ("1/4 bs", First("/threads/bsw/1-4")),
    ("m6x", First("/threads/metric-fine/m6x0.5")),
    ("clear", First("/calculators/clearance")),
    ("calcul", First("/calculators")),
];

#[rustfmt::skip]
const MISSPELT: [(&str, Leads); 22] = [
    // A letter changed, left out, put in, swapped with the next.
    ("gunmetel", First("/materials/gunmetal")),
    ("stanless", First("/materials/stainless-303")),
    ("alumnium", First("/materials/aluminium-6082")),
    ("accetal", First("/materials/acetal")),
    ("silver stele", First("/materials/silver-steel")),
    ("guage plate", First("/materials/gauge-plate")),
    ("phosphur bronze", First("/materials/phosphor-bronze-cast")),
    ("materail", First("/materials")),
    ("clearnace", First("/calculators/clearance")),
    ("spindel speed", First("/calculators/speeds")),
    ("withworth", First("/threads/bsw")),
    ("metirc fine", First("/threads/metric-fine")),
    ("britsh association", First("/threads/ba")),
    ("1/4 withworth", First("/threads/bsw/1-4")),
    ("leter f", First("/drills/letter/f")),
    ("drlil 46", First("/drills/number/46")),
    ("nunber 46", First("/drills/number/46")),
    ("alluminum", First("/materials/aluminium-6082")),
    // Two letters of a long word; three are too many, and so is one of a short word.
    ("gunnmetel", First("/materials/gunmetal")),
    ("gonnmetel", Nowhere),
    ("bsq", Nowhere),
    ("ptfw", First("/materials/ptfe")),
];

#[rustfmt::skip]
const TWO_THINGS: [(&str, Leads); 16] = [
    ("copper 4ba", First("/plan?thread=4+BA&material=copper")),
    ("4 BA in copper", First("/plan?thread=4+BA&material=copper")),
    ("tap 4ba in copper", First("/plan?thread=4+BA&material=copper")),
    ("coppr 4ba", First("/plan?thread=4+BA&material=copper")),
    ("M3 brass", First("/plan?thread=M3&material=free-cutting-brass")),
    ("m3 stainless 303", First("/plan?thread=M3&material=stainless-303")),
    ("brass 1/4 bsw", First("/plan?thread=1%2F4+in+BSW&material=free-cutting-brass")),
    ("m6x0.75 EN 1A bar", First("/plan?thread=M6+%C3%97+0.75&material=free-cutting-mild-steel")),
    ("tapping drill for 4 ba in phosphur bronze",
        First("/plan?thread=4+BA&material=phosphor-bronze-cast")),
    // Half a metal, or a kind of metal: a plan for each.
    ("phos 4ba", First("/plan?thread=4+BA&material=phosphor-bronze-cast")),
    ("bronze 4ba", First("/plan?thread=4+BA&material=gunmetal")),
    // This names a thread of the brass thread.
    ("1/4 brass", To("/threads/bsb/1-4")),
    ("5ba tapping drill", First("/threads/ba/5")),
    ("7/64 brass", First("/drills/fraction/7-64")),
    // No one thread, so no plan.
    ("1/4 copper", First("/materials/copper")),
    ("5 copper", First("/materials/copper")),
];

#[rustfmt::skip]
const HOPELESS: [(&str, Leads); 14] = [
    ("4ba unobtainium", Suggests("/threads/ba/4")),
    ("5 BA x 0.6", Suggests("/threads/ba/5")),
    ("27 BA", First("/threads/ba")),
    ("No 98", Suggests("/drills/number/97")),
    (".0805 in", First("/drills/metric/2.05")),
    ("copper flange", Suggests("/materials/copper")),
    ("5ba no 46", Suggests("/threads/ba/5")),
    ("5 qab", Suggests("/threads/ba/5")),
    ("unobtainium", Nowhere),
    ("qwertyuiop", Nowhere),
    ("<script>alert('x')</script>", Nowhere),
    ("%\"*^NEAR", Nowhere),
    ("", Nowhere),
    (" \t\u{200b} ", Nowhere),
];

#[track_caller]
fn check(table: &[(&str, Leads)]) {
    let wrong: Vec<String> = table
        .iter()
        .filter_map(|(query, expected)| {
            let found = find(query);
            let only = found.only().map(|hit| hit.url.as_ref());
            let first = found.hits.first().map(|hit| hit.url.as_ref());
            let suggested = found.suggestions.first().map(|hit| hit.url.as_ref());
            let is_right = match *expected {
                To(url) => only == Some(url) && first == only,
                First(url) => first == Some(url) && only.is_none(),
                Suggests(url) => first.is_none() && suggested == Some(url),
                Nowhere => first.is_none() && suggested.is_none(),
            };
            let got = format!("only {only:?}, first {first:?}, suggested {suggested:?}");
            (!is_right).then(|| format!("{query:?} leads {expected:?}, not {got}"))
        })
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn what_is_named_is_found() {
    check(&NAMED);
}

#[test]
fn what_is_half_written_is_found() {
    check(&PARTIAL);
}

#[test]
fn what_is_misspelt_is_found() {
    check(&MISSPELT);
}

#[test]
fn two_things_combine() {
    check(&TWO_THINGS);
}

#[test]
fn the_hopeless_has_suggestions_or_nothing() {
    check(&HOPELESS);
}

fn urls(query: &str) -> Vec<String> {
    find(query).hits.iter().map(|hit| hit.url.to_string()).collect()
}

#[test]
fn every_meaning_of_an_ambiguous_text_is_a_hit() {
    for (query, expected) in [
        (
            "1/4",
            &[
                "/threads/bsw/1-4",
                "/threads/bsf/1-4",
                "/threads/me-40/1-4",
                "/threads/unc/1-4-20",
                "/drills/fraction/1-4",
            ][..],
        ),
        ("2", &["/threads/ba/2", "/threads/metric/m2", "/drills/number/2", "/drills/metric/2"]),
        (
            "bronze",
            &[
                "/materials/gunmetal",
                "/materials/phosphor-bronze-cast",
                "/materials/phosphor-bronze-drawn",
            ],
        ),
        ("metric", &["/threads/metric", "/threads/metric-fine", "/drills?series=metric"]),
        ("brass", &["/threads/bsb", "/materials/free-cutting-brass"]),
        ("copper 4ba", &["/threads/ba/4", "/materials/copper"]),
        (
            "bronze 4ba",
            &[
                "/plan?thread=4+BA&material=gunmetal",
                "/plan?thread=4+BA&material=phosphor-bronze-drawn",
            ],
        ),
        (
            "5 copper",
            &["/threads/ba/5", "/threads/metric/m5", "/drills/number/5", "/drills/metric/5"],
        ),
    ] {
        let found = urls(query);
        for url in expected {
            assert!(found.iter().any(|other| other == url), "{query:?} has no {url}: {found:?}");
        }
    }
}

#[test]
fn a_figure_does_not_begin_another() {
    let found = urls("1 bs");
    assert!(found.iter().any(|url| url == "/threads/bsw/1"), "{found:?}");
    assert!(found.iter().all(|url| url != "/threads/bsw/1-1-4"), "{found:?}");
    // 2-11.5 NPT has no 11.
    let found = urls("11 np");
    assert!(found.iter().all(|url| !url.starts_with("/threads/npt/")), "{found:?}");
}

#[test]
fn a_size_that_a_system_does_not_have_is_no_drill() {
    assert_eq!(urls("27 BA"), ["/threads/ba"]);
}

#[test]
fn half_a_word_is_not_put_right() {
    // One letter short of "taper".
    let found = find("tape");
    assert!(found.hits.iter().any(|hit| hit.url == "/threads/bspt"), "{found:?}");
    assert!(found.hits.iter().all(|hit| !hit.why.contains("read as")), "{found:?}");
}

#[test]
fn a_size_has_its_drill_then_threads_then_neighbours() {
    // 5 BA is 3.2 mm (BS 93); 1/8 in is 3.175 mm, No. 30 is 0.1285 in (ASME B94.11M).
    assert_eq!(
        urls("3.2 mm"),
        ["/drills/metric/3.2", "/threads/ba/5", "/drills/fraction/1-8", "/drills/number/30"]
    );
    // No. 46 is 0.0810 in, 2.0574 mm; 5/64 in is 1.984 mm. No letter is anywhere near.
    let found = find("2.05");
    let whys: Vec<&str> = found.hits.iter().map(|hit| hit.why.as_str()).collect();
    assert_eq!(
        whys,
        [
            "metric drill, 0.0807 in",
            "neighbour of 2.05 mm, 0.007 mm larger",
            "neighbour of 2.05 mm, 0.066 mm smaller"
        ]
    );
    // Letter E is 0.250 in to the last figure.
    let found = find("letter E");
    let quarter = found.hits.iter().find(|hit| hit.url == "/drills/fraction/1-4").expect("1/4 in");
    assert_eq!(quarter.why, "same size as Letter E");
}

#[test]
fn a_hit_says_what_it_is_and_why() {
    for (query, kind, title, why) in [
        ("5ba", Kind::Thread, "5 BA", "British Association"),
        ("bsf", Kind::System, "British Standard Fine", "BSF, thread system of 18 sizes"),
        ("no 46", Kind::Drill, "No. 46", "number drill, 2.057 mm"),
        ("letter drills", Kind::Series, "Letter drills", "26 drills, Letter A to Letter Z"),
        ("lg 2", Kind::Material, "Gunmetal", "also called LG2"),
        ("gunmetel", Kind::Material, "Gunmetal", "LG2, CC491K; read as gunmetal"),
        ("threads", Kind::List, "Threads", "every thread system"),
        (
            "copper 4ba",
            Kind::Calculator,
            "Hole plan: 4 BA in copper",
            "tapping drill, depths, speeds and steps",
        ),
    ] {
        let found = find(query);
        let hit = found.hits.first().expect(query);
        assert_eq!((hit.kind, hit.title.as_ref(), hit.why.as_str()), (kind, title, why), "{query}");
    }
}

#[test]
fn the_query_is_trimmed_and_cut() {
    assert_eq!(find("  5 BA\n").query, "5 BA");
    // What stands behind the limit is not looked at.
    let long = format!("gunmetal{}copper", " ".repeat(LONGEST));
    let found = find(&long);
    assert_eq!(found.query, "gunmetal");
    assert_eq!(found.only().map(|hit| hit.url.as_ref()), Some("/materials/gunmetal"));
    let all: String = "é".repeat(LONGEST + 1);
    assert_eq!(find(&all).query.chars().count(), LONGEST);
}

#[test]
fn two_sizes_with_a_work_each_are_offered_each_with_its_own() {
    let reamed = "/calculators/speeds?work=reaming&diameter=1%2F4";
    for (query, expected) in [
        ("drill 7/32 ream 1/4", ["/drills/fraction/7-32", reamed]),
        ("1/4 reamer, 7/32 drill", [reamed, "/drills/fraction/7-32"]),
        (
            "drill 7/32 ream 1/4 in copper",
            [
                "/drills/fraction/7-32",
                "/calculators/speeds?material=copper&work=reaming&diameter=1%2F4",
            ],
        ),
    ] {
        let found = urls(query);
        let places = expected.map(|url| found.iter().position(|other| other == url));
        assert!(matches!(places, [Some(first), Some(next)] if first < next), "{query}: {found:?}");
    }
}

#[test]
fn the_hand_that_is_said_goes_into_the_plan_wherever_it_stands() {
    for query in ["M6 LH brass", "left hand M6 brass", "M6 in brass, left-hand", "M6 brass L.H."] {
        let found = urls(query);
        let plan = "/plan?thread=M6&material=free-cutting-brass&hand=left";
        assert_eq!(found.first().map(String::as_str), Some(plan), "{query}");
    }
}
