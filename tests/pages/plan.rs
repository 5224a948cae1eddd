//! The plan's page: the answer, the form that made it, and errors that keep everything typed.

use holewright_core::tables::threads;
use holewright_pages::plan::Request;

use crate::{body, inside, visit};

const MAIN_JOB: &str = "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=free-cutting-brass&over_thickness=4mm&series=number%2Cmetric";

#[test]
fn the_main_job_is_answered_first_and_whole() {
    let page = body(200, MAIN_JOB);
    assert!(inside(&page, "title").contains("No. 36, 69.9 %"));
    let main = inside(&page, "main");
    let place = |words: &str| main.find(words).unwrap_or_else(|| panic!("{words}"));
    let order = [
        "No. 36",
        "2.65 mm",
        "77.7 %",
        "2.75 mm",
        "63.6 %",
        "beyond",
        "3.4 mm",
        "class=\"drawing\"",
        "Steps, in order",
    ];
    let places: Vec<usize> = order.iter().map(|words| place(words)).collect();
    assert!(places.is_sorted(), "{order:?} at {places:?}");
    let steps = inside(&page, "ol");
    let opened = steps.find("<h3>Open out").unwrap();
    let tapped = steps.find("<h3>Tap").unwrap();
    assert!(
        steps.find("<h3>Drill").unwrap() < tapped && tapped < opened,
        "opened after the thread"
    );
    assert!(steps.contains("upper part"));
}

#[test]
fn what_is_at_hand_decides() {
    let with = |more: &str| body(200, &format!("{MAIN_JOB}&{more}"));
    assert!(inside(&with("owned=2.65mm%2C+3.4mm"), "title").contains("2.65 mm, 77.7 %"));
    let metric = body(200, &MAIN_JOB.replace("number%2Cmetric", "metric"));
    assert!(!inside(&metric, "dl").contains("No. "), "no number drill in a metric drawer");
    let alone = body(200, "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm");
    assert!(!inside(&alone, "ol").contains("upper part"));
}

#[test]
fn a_millimetre_more_thread_is_a_millimetre_more_hole() {
    let depth = |thread: &str| {
        let page =
            body(200, &format!("/plan?thread=5ba&material=gunmetal&hole=blind&depth={thread}"));
        let cell = page.split("<dt>Drill, full diameter</dt><dd>").nth(1).unwrap();
        cell.split(" mm").next().unwrap().parse::<f64>().unwrap()
    };
    assert!((depth("9mm") - depth("8mm") - 1.0).abs() < 1e-9);
}

#[test]
fn the_canonical_address_has_one_order_and_no_strangers() {
    let page = body(200, "/plan?depth=8mm&utm=x&material=gunmetal&thread=5ba&hole=blind");
    assert!(page.contains(
        "rel=\"canonical\" href=\"https://club.example/plan?thread=5ba&#38;material=gunmetal&#38;hole=blind&#38;depth=8mm\""
    ));
    assert!(
        page.contains("/api/v1/plan?thread=5ba&#38;material=gunmetal&#38;hole=blind&#38;depth=8mm")
    );
}

#[test]
fn without_a_thread_there_is_the_form_and_what_was_said_so_far() {
    assert!(!body(200, "/plan").contains("class=\"errors\""));
    assert!(body(200, "/plan?material=gunmetal").contains("value=\"gunmetal\" selected"));
}

#[test]
fn errors_keep_everything_typed_and_say_what_is_read() {
    let typed = [
        ("thread", "7zz"),
        ("material", "unobtainium"),
        ("hole", "sideways"),
        ("depth", "8foo"),
        ("over", "cheese"),
        ("over_thickness", "thick"),
        ("upper_hole", "square"),
        ("fit", "loose-ish"),
        ("aim", "high"),
        ("series", "roman"),
        ("owned", "a few"),
        ("tap", "blunt"),
        ("tap_steel", "tin"),
        ("finish", "gloss"),
        ("hand", "third"),
        ("part_thickness", "thin"),
        ("measured_hole", "-1"),
        ("screw", "rubber"),
        ("centre_error", "some"),
        ("point_angle", "900"),
        ("spindle_speeds", "several"),
        ("spindle_max", "fast"),
        ("head", "square"),
    ];
    let query: Vec<String> =
        typed.iter().map(|(name, value)| format!("{name}={}", value.replace(' ', "+"))).collect();
    let page = body(422, &format!("/plan?{}", query.join("&")));
    assert!(inside(&page, "title").starts_with("Error:"));
    let main = inside(&page, "main").trim_start();
    assert!(main.starts_with("<div class=\"errors\""), "the summary comes first");
    for (name, value) in typed {
        assert!(page.contains(&format!("value=\"{value}\"")), "{name} lost {value}");
    }
    for (name, _) in typed {
        assert!(page.contains(&format!("href=\"#{name}\"")), "{name} has no error");
        assert!(page.contains(&format!("id=\"{name}-error\"")), "{name} has no words at the field");
    }
    assert!(page.contains("aria-invalid=\"true\"") && page.contains("<details open"));
}

#[test]
fn what_is_typed_is_never_markup() {
    let page = body(422, "/plan?thread=%3Cscript%3Ealert(1)%3C%2Fscript%3E&material=%22%3E%3Cb%3E");
    assert!(!page.contains("<script") && !page.contains("<b>"));
}

#[test]
fn an_ambiguous_thread_offers_links_that_fill_it_in_and_keep_the_rest() {
    let page = body(422, "/plan?thread=1%2F4&material=gunmetal&depth=8mm");
    assert!(page.contains("could be more than one thread"));
    let link = "/plan?thread=1%2F4+in+BSF&#38;material=gunmetal&#38;depth=8mm";
    assert!(page.contains(&format!("href=\"{link}\"")));
    assert_eq!(visit(&link.replace("&#38;", "&")).status, 200);
}

#[test]
fn every_thread_with_an_engagement_can_be_planned_from_its_own_page() {
    for thread in threads::all().filter(|thread| thread.taper.is_none()) {
        let page = visit(&thread.path()).text().to_owned();
        let Some(name) = page.split("name=\"thread\" value=\"").nth(1) else {
            assert!(
                page.contains("Bore the hole to"),
                "{}: no plan and no bore",
                thread.designation
            );
            continue;
        };
        let name = name.split('"').next().unwrap();
        assert_eq!(name, thread.designation, "needs no escaping");
        let spec = Request::parse(&format!("thread={}&material=gunmetal", encode(name)));
        assert_eq!(spec.map(|spec| spec.thread.path()), Ok(thread.path()), "{name}");
    }
}

fn encode(text: &str) -> String {
    text.bytes().map(|byte| format!("%{byte:02X}")).collect()
}

#[test]
fn the_impossible_is_answered_with_what_is_possible() {
    // 3/16 in of thread in a part 3/16 in thick, blind.
    let page = body(
        422,
        "/plan?thread=5ba&material=gunmetal&hole=blind&depth=3%2F16in&part_thickness=3%2F16in",
    );
    assert!(page.contains("is possible"), "says what would be");
    let choice = page.split("id=\"depth-error\"").nth(1).unwrap().split("href=\"").nth(1).unwrap();
    let address = choice.split('"').next().unwrap().replace("&#38;", "&");
    assert_eq!(visit(&address).status, 200, "{address} is possible");
    for query in [
        "thread=5ba&material=gunmetal&tap=forming",
        "thread=m5&material=grey-cast-iron&tap=forming",
        "thread=5ba&material=gunmetal&measured_hole=4mm",
        "thread=1%2F8+NPT&material=gunmetal&tap=machine",
        "thread=5ba+LH&material=gunmetal&hand=right",
    ] {
        body(422, &format!("/plan?{query}"));
    }
}

#[test]
fn a_metal_that_is_not_to_be_cut_is_refused_with_the_reason() {
    let material = body(200, "/materials/beryllium-copper");
    assert!(material.contains("<strong>None</strong>"));
    assert!(material.contains("lung disease"));
    for gone in ["Surface speeds", "Plan a hole in it", "rev/min"] {
        assert!(!material.contains(gone), "{gone}");
    }
    for field in ["material=beryllium+copper", "material=brass&over=c17200"] {
        let page = body(422, &format!("/plan?thread=4ba&{field}"));
        assert!(page.contains("no hole is planned") || page.contains("No hole is planned"));
        assert!(page.contains("lung disease"), "{field}");
    }
    assert_eq!(visit("/calculators/speeds?material=beryllium-copper&diameter=3").status, 422);
    assert!(!body(200, "/plan").contains("<option value=\"beryllium-copper\""));
}

#[test]
fn a_taper_thread_is_answered_by_its_list_and_its_gauge_length() {
    let page = body(200, "/plan?thread=R+1%2F8&material=free-cutting-brass&hole=blind");
    let answer = between(&page, "class=\"answer\"", "</div>");
    assert!(
        answer.contains("Taper thread, straight hole") && answer.contains("8.2 mm"),
        "{answer}"
    );
    let beside = between(&page, "class=\"beside\"", "</dl>");
    assert!(beside.contains("hole taper reamed") && beside.contains("8.1 mm"), "{beside}");
    assert!(beside.contains("Parallel thread for a taper fitting (Rp)"), "{beside}");
    assert!(page.contains("Fitting by hand, gauge length"));
    assert!(page.contains("The national boiler code and the club’s boiler inspector decide"));
    for file in ["/plan.csv", "/plan.svg"] {
        body(200, &format!("{file}?thread=R+1%2F8&material=free-cutting-brass"));
    }
}

fn between<'a>(page: &'a str, from: &str, to: &str) -> &'a str {
    let (_, rest) = page.split_once(from).unwrap_or_else(|| panic!("no {from}"));
    rest.split(to).next().unwrap_or(rest)
}

#[test]
fn a_depth_typed_behind_the_thread_goes_to_its_own_field() {
    for (typed, depth, thread) in
        [("2+BA+x+3/8+deep", "3/8", "2 BA"), ("6BA+x+1/4+DP", "1/4", "6BA")]
    {
        let page = body(200, &format!("/plan?thread={typed}&material=gunmetal&hole=through"));
        assert!(
            page.contains(&format!("<strong>{thread}, blind, {depth} deep</strong>")),
            "{page}"
        );
        assert!(page.contains(&format!("value=\"{depth}\"")), "{page}");
        let spec = Request::parse(&format!("thread={typed}&material=gunmetal")).unwrap();
        assert!(spec.depth.is_some() && spec.hole == holewright_core::plan::Hole::Blind);
    }
    // Where a depth stands in its field already, two would be one too many.
    assert!(Request::parse("thread=2+BA+x+3/8+deep&material=gunmetal&depth=6+mm").is_err());
}

#[test]
fn a_list_of_bare_millimetres_says_what_it_was_taken_for() {
    let page = body(200, "/plan?thread=M3&material=gunmetal&owned=2%2C2.5%2C3.3%2C5");
    assert!(page.contains("is taken as <strong>2 mm, 2.5 mm, 3.3 mm, 5 mm</strong>"), "{page}");
    assert!(!page.contains("Or ?"), "{page}");
}

#[test]
fn the_most_thread_that_is_offered_is_the_most_that_is_said() {
    for thickness in ["8.1", "8.37", "9.03", "9.68", "10.11"] {
        let query = format!(
            "thread=5ba&material=gunmetal&hole=blind&depth=8mm&part_thickness={thickness}mm"
        );
        let request = Request::read(&query);
        let Err(error) = holewright_core::plan::build(&request.spec().unwrap()) else { continue };
        let refused = holewright_pages::plan::refusal(&request, &error);
        for choice in &refused.choices {
            assert!(refused.message.contains(&format!("up to {} of", choice.words)), "{refused:?}");
        }
    }
}
