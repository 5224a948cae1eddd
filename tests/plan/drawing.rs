//! The drawings: whole, legible, to scale, and saying nothing that is not also said in words.

#![expect(
    clippy::expect_used,
    clippy::unwrap_used,
    reason = "a helper that finds nothing on the sheet ends its test"
)]

use std::collections::HashSet;

use holewright_core::drawing::hole_section::draw;
use holewright_core::drawing::svg::{Element, number};
use holewright_core::drawing::{
    BlindDepths, Bottom, Dimension, DrawingIds, Drilled, Section, Upper, dimensions, thread_profile,
};
use holewright_core::plan::{Hole, HoleSpec, Over, UpperHole, build};
use holewright_core::tables::materials;
use holewright_core::tables::threads::{self, Finish, Thread};
use holewright_core::units::{Length, degrees, in_mm, mm};
use proptest::prelude::*;

use crate::sheet::{self, Line, Sheet, check_clear};

const PREFIX: &str = "hole";
/// Coordinates are printed to two places.
const PRINTED: f64 = 0.021;

fn hole(diameter: f64) -> Drilled {
    Drilled { diameter: mm(diameter), name: None }
}

fn named(diameter: f64, name: &str) -> Drilled {
    Drilled { diameter: mm(diameter), name: Some(name.into()) }
}

fn through(thickness: f64) -> Bottom {
    Bottom::Through { thickness: Some(mm(thickness)) }
}

/// A blind hole whose drill has a 118° point.
fn blind(full_thread: f64, full_diameter: f64, drill: f64, part: Option<f64>) -> Bottom {
    let depths = BlindDepths {
        full_thread: mm(full_thread),
        drill_full_diameter: mm(full_diameter),
        drill_to_point: mm(full_diameter + drill / 2.0 / libm::tan(59.0_f64.to_radians())),
    };
    Bottom::Blind { depths: Some(depths), part_thickness: part.map(mm) }
}

fn section(designation: &str, major: f64, tapping: Drilled, bottom: Bottom) -> Section {
    Section {
        designation: designation.into(),
        major: mm(major),
        tapping,
        point_angle: degrees(118.0),
        bottom,
        upper: None,
    }
}

fn under(mut section: Section, thickness: Option<f64>, clearance: Drilled) -> Section {
    section.upper = Some(Upper { thickness: thickness.map(mm), clearance });
    section
}

fn m6() -> Section {
    section("M6", 6.0, hole(5.1), through(10.0))
}

fn five_ba() -> Section {
    let lower = section("5 BA", 3.2, named(2.705, "No. 36"), blind(8.0, 10.36, 2.705, None));
    under(lower, Some(4.0), hole(3.4))
}

fn quarter_bsw() -> Section {
    let bottom = blind(12.7, 17.8, 5.105, Some(25.4));
    section("1/4 in BSW", 6.35, named(5.105, "No. 7"), bottom)
}

fn ten_ba_deep() -> Section {
    section("10 BA", 1.7, hole(1.45), blind(20.0, 21.4, 1.45, Some(40.0)))
}

fn nothing_known() -> Section {
    let bottom = Bottom::Through { thickness: None };
    under(section("M4", 4.0, hole(3.4), bottom), None, hole(4.5))
}

fn every_kind() -> Vec<Section> {
    let blind_unknown = Bottom::Blind { depths: None, part_thickness: None };
    vec![
        m6(),
        five_ba(),
        quarter_bsw(),
        ten_ba_deep(),
        nothing_known(),
        section("M20", 20.0, hole(17.5), through(25.0)),
        section("M4", 4.0, hole(3.4), blind_unknown),
        under(section("M4", 4.0, hole(3.4), blind_unknown), Some(2.0), hole(4.5)),
        section("M6", 6.0, hole(5.1), through(0.4)),
        // The point comes out of the far side.
        section("M6", 6.0, hole(5.1), blind(8.0, 10.0, 5.1, Some(11.0))),
        section("M6", 6.0, hole(5.1), blind(8.0, 10.0, 5.1, Some(6.0))),
    ]
}

#[track_caller]
fn read(section: &Section) -> Sheet {
    sheet::read(&draw(section, DrawingIds::new(PREFIX)), PREFIX)
}

/// Drawing units to the millimetre, as the scale bar says.
#[track_caller]
fn scale(sheet: &Sheet) -> f64 {
    let says = sheet.words("note").into_iter().find_map(|words| words.strip_prefix("scale bar "));
    let bar: f64 =
        says.and_then(|words| words.strip_suffix(" mm")).expect("a bar").parse().unwrap();
    let longest = sheet.of("scale-bar").map(|line| (line.to.0 - line.from.0).abs());
    longest.fold(0.0, f64::max) / bar
}

#[track_caller]
fn check_near(what: &str, drawn: f64, meant: f64) {
    assert!((drawn - meant).abs() < PRINTED, "{what}: drawn {drawn}, meant {meant}");
}

/// From the leftmost to the rightmost upright line of a class.
fn span(sheet: &Sheet, class: &str) -> f64 {
    let at: Vec<f64> =
        sheet.of(class).filter(|line| line.upright()).map(|line| line.from.0).collect();
    at.iter().copied().fold(f64::MIN, f64::max) - at.iter().copied().fold(f64::MAX, f64::min)
}

/// Heights of the level lines of the outline, from the top, each once.
fn levels(sheet: &Sheet) -> Vec<f64> {
    let mut levels: Vec<f64> =
        sheet.of("outline").filter(|line| line.level()).map(|line| line.from.1).collect();
    levels.sort_by(f64::total_cmp);
    levels.dedup_by(|a, b| (*a - *b).abs() < PRINTED);
    levels
}

#[test]
fn every_section_is_whole_and_clear() {
    for section in every_kind() {
        check_clear(&read(&section));
    }
}

#[test]
fn every_figure_drawn_stands_in_the_dimensions() {
    for section in every_kind() {
        check_said(&section);
    }
}

/// Both ways: nothing is drawn that is not listed, nothing is listed that is not drawn.
#[track_caller]
fn check_said(section: &Section) {
    let sheet = read(section);
    let listed = dimensions(section);
    let words =
        |dimension: &Dimension| [dimension.drawn(), dimension.short.clone(), dimension.mm.clone()];
    let mut said: HashSet<String> = listed.iter().flat_map(words).collect();
    said.insert(section.designation.clone());
    let without_figures =
        |words: &str| !words.contains(|letter: char| letter.is_ascii_digit() || letter == '⌀');
    for drawn in sheet.words("dimension-text") {
        assert!(said.contains(drawn) || without_figures(drawn), "{drawn:?} not in {listed:?}");
    }
    let drawn = sheet.words("dimension-text").join("\n");
    for dimension in &listed {
        let by_name = dimension.label.starts_with(&section.designation);
        let words = if by_name { &section.designation } else { &dimension.mm };
        assert!(drawn.contains(words.as_str()), "{dimension:?} not in {drawn:?}");
        let described = format!("{}: {} ({})", dimension.label, dimension.mm, dimension.inch);
        assert!(sheet.description.contains(&described), "{described} not described");
    }
}

#[test]
fn dimensions_are_given_in_both_units() {
    let listed = dimensions(&five_ba());
    let find = |label: &str| listed.iter().find(|dimension| dimension.label == label).unwrap();
    let check = |label: &str, mm: &str, inch: &str| {
        let dimension = find(label);
        assert_eq!((dimension.mm.as_str(), dimension.inch.as_str()), (mm, inch), "{label}");
    };
    check("full thread", "8 mm", "0.3150 in");
    check("drill to full diameter", "10.36 mm", "0.408 in");
    check("drill to point", "11.17 mm", "0.440 in");
    check("tapping size No. 36", "⌀2.705 mm", "⌀0.1065 in");
    check("clearance", "⌀3.4 mm", "⌀0.1339 in");
    check("upper part", "4 mm", "0.1575 in");
    check("5 BA major diameter", "⌀3.2 mm", "⌀0.1260 in");
    assert_eq!(listed.len(), 7);
}

#[test]
fn a_through_hole_is_to_scale() {
    let sheet = read(&m6());
    let scale = scale(&sheet);
    let levels = levels(&sheet);
    check_near("thickness", levels.last().unwrap() - levels[0], 10.0 * scale);
    check_near("tapping size", span(&sheet, "outline"), 5.1 * scale);
    check_near("major diameter", span(&sheet, "thread"), 6.0 * scale);
}

#[test]
fn a_blind_hole_is_to_scale_with_its_cone_at_the_point_angle() {
    let sheet = read(&quarter_bsw());
    let scale = scale(&sheet);
    let levels = levels(&sheet);
    let face = levels[0];
    for depth in [12.7, 17.8, 25.4] {
        let met = levels.iter().any(|level| (level - face - depth * scale).abs() < PRINTED);
        assert!(met, "nothing {depth} mm deep in {levels:?} at {scale}");
    }
    let cone =
        sheet.of("outline").find(|line| is_flank(line, face + 17.0 * scale)).expect("a cone");
    let (across, down) = (cone.to.0 - cone.from.0, cone.to.1 - cone.from.1);
    let angle = 2.0 * libm::atan((across / down).abs()).to_degrees();
    assert!((angle - 118.0).abs() < 0.1, "{angle}");
    check_near("to point", cone.from.1.max(cone.to.1) - face, (17.8 + 1.53373) * scale);
}

fn is_flank(line: &Line, below: f64) -> bool {
    !line.upright() && !line.level() && line.from.1.min(line.to.1) > below
}

#[test]
fn two_parts_are_lined_opposite_ways() {
    let sheet = read(&five_ba());
    let joint = levels(&sheet)[1];
    for line in sheet.of("hatch") {
        let leans_right = (line.to.0 - line.from.0) * (line.to.1 - line.from.1) < 0.0;
        let lower = f64::midpoint(line.from.1, line.to.1) > joint;
        assert_eq!(leans_right, lower, "{line:?}");
    }
    assert!(sheet.of("hatch").count() > 40);
}

#[test]
fn lining_keeps_out_of_the_hole() {
    let sheet = read(&m6());
    let walls: Vec<f64> =
        sheet.of("outline").filter(|line| line.upright()).map(|line| line.from.0).collect();
    let (left, right) = (walls[0].min(walls[1]), walls[0].max(walls[1]));
    for line in sheet.of("hatch") {
        let middle = f64::midpoint(line.from.0, line.to.0);
        assert!(middle < left || middle > right, "{line:?}");
    }
}

#[test]
fn a_hole_thirty_diameters_deep_is_broken_and_says_so() {
    let deep = section("10 BA", 1.7, hole(1.45), blind(51.0, 53.0, 1.45, None));
    let sheet = read(&deep);
    check_clear(&sheet);
    assert!(sheet.words("note").contains(&"Cut short at the break: not to scale there."));
    assert!(sheet.height < 420.0, "{}", sheet.height);
    check_near("tapping size", span(&sheet, "outline"), 1.45 * scale(&sheet));
    assert!(span(&sheet, "thread") >= 29.0, "the hole can still be seen");
}

#[test]
fn what_was_not_given_is_said_not_to_be() {
    let sheet = read(&nothing_known());
    let words = sheet.words("dimension-text").join(" ");
    assert_eq!(words.matches("not given").count(), 2, "{words}");
    assert!(sheet.words("note").contains(&"Broken where a length was not given."));
    assert_eq!(dimensions(&nothing_known()).len(), 3);
    let whole = read(&m6());
    assert_eq!(whole.words("note").len(), 1, "a whole drawing has its scale bar alone");
    assert_eq!(whole.of("break-line").filter(|line| line.level()).count(), 0);
}

#[test]
fn two_drawings_on_a_page_share_no_id() {
    let (a, b) = (DrawingIds::new("a"), DrawingIds::new("b"));
    assert!(draw(&m6(), a).contains("id=\"a-title\""));
    assert!(!draw(&m6(), b).contains("id=\"a-"));
}

#[test]
fn words_cannot_break_the_markup() {
    let mut odd = m6();
    odd.designation = "M6 <b>&\"'\u{1}\u{fffe}".into();
    let sheet = read(&odd);
    assert!(sheet.words("dimension-text").contains(&"M6 <b>&\"'"));
    let escaped = Element::new("g").with("id", "\"<&>").to_string();
    assert_eq!(escaped, "<g id=\"&quot;&lt;&amp;&gt;\"/>");
}

#[test]
fn numbers_print_short_and_without_minus_nought() {
    for (value, printed) in
        [(0.0, "0"), (-0.0049, "0"), (1.005, "1.01"), (-0.5, "-.5"), (320.0, "320")]
    {
        assert_eq!(number(value), printed);
    }
    assert_eq!(number(f64::INFINITY), "0");
}

#[test]
fn nonsense_is_drawn_without_harm() {
    for bad in [f64::NAN, f64::INFINITY, -5.0, 0.0, 1e300] {
        for bottom in [through(bad), blind(bad, bad, 1.0, Some(bad)), blind(4.0, bad, 1.0, None)] {
            let mut odd = under(section("odd", bad, hole(bad), bottom), Some(bad), hole(bad));
            odd.point_angle = degrees(bad);
            let svg = draw(&odd, DrawingIds::new(PREFIX));
            roxmltree::Document::parse(&svg).expect("well-formed XML");
        }
    }
}

/// Sections as a shop may ask for them, and some it may not.
fn sections() -> impl Strategy<Value = Section> {
    let depth = || 0.05_f64..30.0;
    let part = proptest::option::of(0.05_f64..60.0);
    let bottom = prop_oneof![
        proptest::option::of(depth()).prop_map(|thickness| (thickness, None, None)),
        (depth(), 0.0_f64..4.0, part).prop_map(|(thread, beyond, part)| (
            Some(thread),
            Some(beyond),
            part
        )),
    ];
    let upper = proptest::option::of((proptest::option::of(0.05_f64..20.0), 1.01_f64..1.3));
    let name =
        proptest::sample::select(vec!["M6", "1 1/4 in BSW", "1/4 in × 40 ME", "No. 10-32 UNF"]);
    let drill =
        proptest::sample::select(vec![None, Some("No. 36"), Some("1 63/64 in"), Some("Letter W")]);
    (-0.5_f64..1.7, 0.72_f64..0.98, bottom, upper, name, drill, 90.0_f64..150.0).prop_map(
        |(size, ratio, (depth, beyond, part), upper, name, drill, angle)| {
            let major = libm::pow(10.0, size);
            let times = |diameters: f64| mm(major * diameters);
            let bore = major * ratio;
            let bottom = match (depth, beyond) {
                (Some(thread), Some(beyond)) => Bottom::Blind {
                    depths: Some(BlindDepths {
                        full_thread: times(thread),
                        drill_full_diameter: times(thread + beyond),
                        drill_to_point: times(thread + beyond)
                            + mm(bore / 2.0 / libm::tan((angle / 2.0_f64).to_radians())),
                    }),
                    part_thickness: part.map(times),
                },
                _ => Bottom::Through { thickness: depth.map(times) },
            };
            let drilled =
                |diameter: f64| Drilled { diameter: mm(diameter), name: drill.map(str::to_owned) };
            Section {
                designation: name.into(),
                major: mm(major),
                tapping: drilled(bore),
                point_angle: degrees(angle),
                bottom,
                upper: upper.map(|(thickness, clearance)| Upper {
                    thickness: thickness.map(times),
                    clearance: drilled(major * clearance),
                }),
            }
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_section_is_clear_and_to_scale(section in sections()) {
        let sheet = read(&section);
        check_clear(&sheet);
        check_said(&section);
        let scale = scale(&sheet);
        // The bar is printed to two places, so a short one says a little less than its drawing.
        let near = |drawn: f64, meant: Length| (drawn - in_mm(meant) * scale).abs() < 0.05;
        prop_assert!(near(span(&sheet, "thread"), section.major));
        let notes = sheet.words("note").len();
        if let (Bottom::Through { thickness: Some(thickness) }, None, 1) =
            (section.bottom, &section.upper, notes)
        {
            let levels = levels(&sheet);
            prop_assert!(near(levels.last().unwrap() - levels[0], thickness));
        }
        prop_assert!(sheet.height < 460.0, "{}", sheet.height);
    }
}

fn profiles() -> impl Iterator<Item = (&'static Thread, String)> {
    threads::all().map(|thread| (thread, thread_profile(thread, DrawingIds::new("form"))))
}

#[test]
fn every_profile_is_whole_clear_and_small() {
    assert!(threads::all().count() > 200);
    for (thread, svg) in profiles() {
        assert!(svg.len() < 3_100, "{}: {} bytes", thread.designation, svg.len());
        check_clear(&sheet::read(&svg, "form"));
    }
}

#[test]
fn every_figure_of_a_profile_stands_in_its_dimensions() {
    for (thread, svg) in profiles() {
        let sheet = sheet::read(&svg, "form");
        let listed = thread_profile::dimensions(thread);
        let words = |dimension: &Dimension| {
            [dimension.drawn(), dimension.short.clone(), dimension.mm.clone()]
        };
        let said: HashSet<String> = listed.iter().flat_map(words).collect();
        for drawn in sheet.words("dimension-text") {
            assert!(said.contains(drawn), "{}: {drawn:?}", thread.designation);
        }
        for dimension in &listed {
            let drawn = sheet.words("dimension-text").join("\n");
            assert!(drawn.contains(&dimension.mm), "{}: {dimension:?}", thread.designation);
            assert!(sheet.description.contains(&dimension.mm));
        }
    }
}

/// Between a rising and a falling flank: the longest sloping line of each sort.
fn flank_angle(sheet: &Sheet) -> f64 {
    let lean = |line: &Line| (line.to.0 - line.from.0) / (line.to.1 - line.from.1);
    let longest = |sign: f64| {
        let flanks = sheet.of("outline").filter(|line| lean(line) * sign > 0.0);
        let flank = flanks.max_by(|a, b| height(a).total_cmp(&height(b))).expect("a flank");
        libm::atan(lean(flank).abs()).to_degrees()
    };
    longest(1.0) + longest(-1.0)
}

fn height(line: &Line) -> f64 {
    (line.to.1 - line.from.1).abs()
}

/// Angle as the standard gives it, and the radius of the round crest over the pitch.
///
/// The outline runs two pitches, so its width gives the pitch as drawn.
#[track_caller]
fn check_form(system: &str, size: &str, angle: f64, radius: Option<f64>) {
    let thread = threads::find(system, size).expect("a thread");
    let sheet = sheet::read(&thread_profile(thread, DrawingIds::new("form")), "form");
    let drawn = flank_angle(&sheet);
    assert!((drawn - angle).abs() < 0.25, "{system} {size}: {drawn}°");
    let xs: Vec<f64> = sheet.of("outline").flat_map(|line| [line.from.0, line.to.0]).collect();
    let pitch = (xs.iter().copied().fold(f64::MIN, f64::max)
        - xs.iter().copied().fold(f64::MAX, f64::min))
        / 2.0;
    let arcs: Vec<f64> = sheet
        .arcs
        .iter()
        .filter(|(class, _)| class == "outline")
        .map(|arc| arc.1 / pitch)
        .collect();
    match radius {
        Some(radius) => {
            assert!(!arcs.is_empty(), "{system} {size} is rounded");
            for arc in arcs {
                assert!((arc - radius).abs() < 0.004, "{system} {size}: radius {arc} p");
            }
        }
        None => assert!(arcs.is_empty(), "{system} {size} has flats"),
    }
}

#[test]
fn forms_have_the_angle_and_radius_of_their_standard() {
    // Angles and radii: BS 93, BS 84, BS 811; ISO 68-1 root H/6; ASME B1.1 and B1.20.1 flats.
    check_form("ba", "0", 47.5, Some(0.180_83));
    check_form("bsw", "1-4", 55.0, Some(0.137_329));
    check_form("bsc", "1-4", 60.0, Some(1.0 / 6.0));
    check_form("metric", "m6", 60.0, Some(0.866_025 / 6.0));
    check_form("unc", "1-4-20", 60.0, None);
    check_form("npt", "1-4", 60.0, None);
}

#[test]
fn a_profile_is_as_deep_as_its_figures_say() {
    for (thread, svg) in profiles().filter(|(thread, _)| thread.taper.is_none()) {
        let sheet = sheet::read(&svg, "form");
        let points: Vec<(f64, f64)> =
            sheet.of("outline").flat_map(|line| [line.from, line.to]).collect();
        let range = |part: fn(&(f64, f64)) -> f64| {
            let (least, most) = points
                .iter()
                .map(part)
                .fold((f64::MAX, f64::MIN), |(least, most), at| (least.min(at), most.max(at)));
            most - least
        };
        let geometry = holewright_core::calc::thread_form::geometry(thread);
        let meant = in_mm((geometry.major - geometry.minor) / 2.0) / in_mm(geometry.pitch);
        // A round crest is drawn by its ends, so the depth is read off the dimension's extension lines.
        let flat = thread.form().shape().root == Finish::Flat;
        let drawn = if flat { range(|point| point.1) } else { depth_dimension(&sheet) };
        let drawn = drawn / (range(|point| point.0) / 2.0);
        assert!((drawn - meant).abs() < 0.003, "{}: {drawn} for {meant}", thread.designation);
    }
}

/// The length of the depth's dimension line: the leftmost upright one.
fn depth_dimension(sheet: &Sheet) -> f64 {
    let upright = sheet.of("dimension").filter(|line| line.upright());
    let leftmost = upright.min_by(|a, b| a.from.0.total_cmp(&b.from.0)).expect("a dimension line");
    (leftmost.to.1 - leftmost.from.1).abs()
}

#[test]
fn a_plan_is_drawn_with_its_own_figures() {
    let brass = materials::find("free-cutting-brass").unwrap();
    let spec = HoleSpec {
        hole: Hole::Blind,
        depth: Some(mm(8.0)),
        part_thickness: Some(mm(20.0)),
        over: Some(Over { material: brass, thickness: Some(mm(4.0)), hole: UpperHole::Tapping }),
        ..HoleSpec::new(threads::find("ba", "5").unwrap(), brass)
    };
    let plan = build(&spec).unwrap();
    let section = Section::from(&plan);
    let upper = section.upper.expect("an upper part");
    assert_eq!(upper.thickness, Some(mm(4.0)));
    assert_eq!(section.major, plan.geometry.major);
    assert_eq!(section.tapping.diameter, plan.tapping.chosen.drill.diameter);
    let Bottom::Blind { depths: Some(depths), part_thickness } = section.bottom else {
        panic!("a blind hole with depths: {:?}", section.bottom)
    };
    assert_eq!(Some(depths.full_thread), plan.depths.full_thread);
    // As the stop is set: what is drawn is what is drilled.
    assert_eq!(Some(depths.drill_full_diameter), plan.depths.stop);
    assert_eq!(Some(depths.drill_to_point), plan.depths.set_to_point());
    assert_eq!(part_thickness, Some(mm(20.0)));
}
