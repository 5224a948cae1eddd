//! The calculators: the answer first, honest where the machine or the drawer cannot do it, and errors
//! that keep everything typed.

use crate::html::inside;
use crate::{body, moves, visit};

/// The page's first figure.
fn big(page: &str) -> String {
    let figure = page.split("class=\"figure\">").nth(1).unwrap().split("</p>").next().unwrap();
    let mut text = String::new();
    let mut within = false;
    for letter in figure.chars() {
        match letter {
            '<' => within = true,
            '>' => within = false,
            _ if !within => text.push(letter),
            _ => {}
        }
    }
    text
}

#[test]
fn speeds_says_the_range_the_speed_to_set_and_the_source() {
    // Norseman prints 150 to 300 ft/min for ordinary brass and bronze: 5.5 mm, 2645 to 5291 rev/min.
    let page = body(
        200,
        "/calculators/speeds?material=gunmetal&diameter=5.5mm&spindle_speeds=500%2C+1000%2C+3000%2C+9000",
    );
    assert_eq!(big(&page), "2600 to 5300");
    let set = page.split("<dt>Set</dt>").nth(1).unwrap().split("</dd>").next().unwrap();
    assert!(set.contains("3000 rev/min") && set.contains("in the range"), "{set}");
    assert!(set.contains("51.8 m/min, 170 ft/min"), "{set}");
    // 0.002 to 0.004 in a revolution for drills from 1/8 to 1/4 in (US Navy 14345, p. 93).
    assert!(page.contains("0.051 to 0.102 mm/rev"));
    assert!(page.contains("152 to 305 mm/min at 3000 rev/min"));
    assert!(page.contains("Norseman Drill, Drill feeds and speeds"));
    assert!(page.contains("US Navy training course 14345, p. 93"));
}

#[test]
fn a_drill_goes_by_any_name() {
    let speed = |name: &str| {
        big(&body(200, &format!("/calculators/speeds?material=gunmetal&diameter={name}")))
    };
    assert_eq!(speed("No.+46"), speed("2.0574mm"));
    assert_eq!(speed("81+thou"), speed("2.0574mm"));
    assert_eq!(speed("1%2F2"), speed("12.7+mm"));
}

#[test]
fn a_machine_too_slow_for_half_a_millimetre_is_told_so() {
    let page = body(
        200,
        "/calculators/speeds?material=free-cutting-brass&diameter=0.5+mm&spindle_max=2000",
    );
    assert!(page.contains("cannot go fast enough"), "{page}");
    assert!(page.contains("3.1 m/min, 5.2 % of the slow end"));
    assert!(page.contains("feed it finely by feel"));
}

#[test]
fn a_machine_too_fast_for_twelve_millimetres_is_told_so() {
    // 304: 30 to 40 ft/min (US Navy 14345): 12 mm wants 243 to 323 rev/min.
    let page = body(
        200,
        "/calculators/speeds?material=stainless-304&diameter=12mm&spindle_speeds=500%2C+1000%2C+2000",
    );
    assert_eq!(big(&page), "240 to 320");
    assert!(page.contains("cannot go slowly enough"));
    assert!(page.contains("18.8 m/min, 1.5 times the fast end"));
    // 40 ft/min at 500 rev/min is 7.76 mm.
    assert!(
        page.contains("The largest drill that speed suits in stainless steel 304 is 7.8 mm"),
        "{page}"
    );
}

#[test]
fn a_drive_without_steps_is_set_to_the_slow_end() {
    let page =
        body(200, "/calculators/speeds?material=gunmetal&diameter=5.5mm&spindle_speeds=200-4000");
    let set = page.split("<dt>Set</dt>").nth(1).unwrap();
    assert!(set.split("</dd>").next().unwrap().contains("2600 rev/min"));
}

#[test]
fn a_tap_under_power_feeds_by_its_pitch() {
    let page = body(
        200,
        "/calculators/speeds?material=bright-mild-steel&work=tapping&diameter=1%2F4+BSW&spindle_speeds=920",
    );
    assert_eq!(big(&page), "690 to 920");
    // Machinery's Handbook 31st ed. p. 2178: 20 tpi at 920 rev/min goes in at 46 in a minute.
    assert!(page.contains("1.27 mm/rev") && page.contains("1168 mm/min at 920 rev/min"), "{page}");
    let drill = body(422, "/calculators/speeds?material=gunmetal&diameter=M3");
    assert!(drill.contains("M3 is a thread. Choose tapping under power"));
}

#[test]
fn tapping_answers_for_a_thread_no_table_holds() {
    let page = body(
        200,
        "/calculators/tapping?form=whitworth&major=1%2F4+in&pitch=36+tpi&series=metric%2Cletter",
    );
    // 0.25 − 2 × 0.640327 × 0.7 / 36 in is 0.225098 in, 5.71750 mm less a millionth.
    assert_eq!(big(&page), "5.717 mm 0.2251 in");
    assert!(page.contains("No table here holds this thread"));
    assert!(page.contains("<dt>Nearest drill</dt><dd><a href=\"/drills/metric/5.7\">5.7 mm</a>"));
    assert!(page.contains("no limit held"), "no BS 84 limits are held");
}

#[test]
fn tapping_gives_both_bases_of_sixty_degrees() {
    // Yamawa prints 92.4 % for 2.5 mm in M3, on 5/8 H; on ¾ H it is 77.0.
    let page = body(200, "/calculators/tapping?form=metric&major=3&pitch=0.5&hole=2.5mm");
    assert_eq!(big(&page), "77.0 %");
    assert!(page.contains("Of 5/8 H, the other basis in print, it is 92.4 %"));
    assert!(page.contains("within 6H"));
    assert!(page.contains("<h1>Tapping M3</h1>"), "what is written is a thread with a name");
    assert!(!page.contains("class=\"warning"));
    // 2.0 mm is below the bottom of M3 itself: (3 − 2) / (1.299038 × 0.5).
    let jams = body(200, "/calculators/tapping?thread=M3&hole=2.0mm");
    assert_eq!(big(&jams), "154.0 %");
    assert!(jams.contains("a tap jams in it and breaks"));
    let ba = body(200, "/calculators/tapping?thread=5ba&hole=No.+36");
    assert_eq!(big(&ba), "69.9 %");
    assert!(!ba.contains("5/8 H"));
}

#[test]
fn a_known_thread_fills_what_is_left_empty() {
    let page = body(200, "/calculators/tapping?thread=5ba");
    assert!(page.contains("<h1>Tapping 5 BA</h1>") && page.contains("href=\"/threads/ba/5\""));
    assert_eq!(page, body(200, "/calculators/tapping?thread=5ba").as_str());
    let finer = body(200, "/calculators/tapping?thread=5ba&pitch=0.5");
    assert!(
        finer.contains("<h1>Tapping 3.2 mm × 0.5 mm, BA form</h1>"),
        "{}",
        inside(&finer, "h1")
    );
    let taper = body(422, "/calculators/tapping?thread=1%2F4+NPT");
    assert!(taper.contains("is a taper thread"));
}

#[test]
fn a_bare_forty_is_offered_as_threads_in_an_inch() {
    let page = body(422, "/calculators/tapping?form=whitworth&major=.25in&pitch=40");
    let link = "/calculators/tapping?form=whitworth&#38;major=.25in&#38;pitch=40+tpi";
    assert!(page.contains(link), "{page}");
    let deep = body(422, "/calculators/tapping?form=metric&major=1&pitch=1");
    assert!(deep.contains("A pitch of 1 mm cuts deeper than a thread of 1 mm is thick"));
}

#[test]
fn clearance_goes_by_the_standard_and_shows_what_else_is_in_print() {
    let page = body(200, "/calculators/clearance?thread=M12");
    assert_eq!(big(&page), "13.5 mm 0.5315 in");
    // ISO 273 medium 13.5, BS 4186 medium 14.0.
    for words in ["ISO 273 medium", "BS 4186", "14.000"] {
        assert!(page.contains(words), "{words}");
    }
    let five = body(200, "/calculators/clearance?thread=5ba&series=metric");
    assert_eq!(big(&five), "3.4 mm 0.1339 in");
    assert!(five.contains("common practice, no source"));
    assert!(five.contains("<dd>0.2 mm"), "float of 3.4 on 3.2");
}

#[test]
fn clearance_widens_the_hole_for_the_centres() {
    let errors = "upper_error=0.3&lower_error=10+thou";
    // 3.2 + 2 × (0.3 + 0.254) mm.
    let page = body(200, &format!("/calculators/clearance?thread=5ba&series=metric&{errors}"));
    assert!(big(&page).starts_with("4.4 mm"), "{}", big(&page));
    assert!(page.contains("4.308 mm") && page.contains("larger than the fit’s hole"));
    let small =
        body(200, "/calculators/clearance?thread=5ba&series=metric&upper_error=0.05&lower_error=0");
    assert!(big(&small).starts_with("3.4 mm") && small.contains("the fit’s hole will do"));
    // Measured thinner, the screw floats further.
    let thin = body(200, "/calculators/clearance?thread=5ba&diameter=3.15mm&series=metric");
    assert!(thin.contains("<dd>0.25 mm"), "float of 3.4 on 3.15");
    let large = body(200, "/calculators/clearance?diameter=40mm");
    assert!(large.contains("No drill at hand is large enough"));
}

/// Every field of every calculator, each with nonsense in it.
const NONSENSE: [(&str, &[(&str, &str)]); 3] = [
    (
        "speeds",
        &[
            ("material", "cheese"),
            ("work", "sawing"),
            ("diameter", "wide"),
            ("spindle_speeds", "several"),
            ("spindle_max", "fast"),
        ],
    ),
    (
        "tapping",
        &[
            ("thread", "7zz"),
            ("form", "round"),
            ("major", "big"),
            ("pitch", "fine"),
            ("hole", "small"),
            ("engagement", "most"),
            ("series", "roman"),
            ("owned", "a few"),
        ],
    ),
    (
        "clearance",
        &[
            ("thread", "7zz"),
            ("diameter", "thick"),
            ("fit", "loose-ish"),
            ("upper_error", "some"),
            ("lower_error", "none"),
            ("series", "roman"),
            ("owned", "a few"),
        ],
    ),
];

#[test]
fn errors_keep_everything_typed_and_stand_at_their_fields() {
    for (name, fields) in NONSENSE {
        let query: Vec<String> = fields
            .iter()
            .map(|(field, typed)| format!("{field}={}", typed.replace(' ', "+")))
            .collect();
        let page = body(422, &format!("/calculators/{name}?{}", query.join("&")));
        assert!(page.contains("<title>Error:"), "{name}");
        for (field, typed) in fields {
            assert!(page.contains(&format!("value=\"{typed}\"")), "{name}: {field} is lost");
            assert!(page.contains(&format!("href=\"#{field}\"")), "{name}: no error for {field}");
            assert!(page.contains(&format!("id=\"{field}\"")), "{name}: no place for {field}");
        }
    }
}

#[test]
fn a_forms_empty_fields_fall_out_of_the_address() {
    moves(
        "/calculators/clearance?thread=M3&diameter=&fit=medium&upper_error=&owned=&series=metric&series=number",
        "/calculators/clearance?thread=M3&fit=medium&series=metric%2Cnumber",
    );
    let page = body(200, "/calculators/speeds?utm=x&diameter=2mm&material=gunmetal");
    assert!(page.contains(
        "rel=\"canonical\" href=\"https://club.example/calculators/speeds?material=gunmetal&#38;diameter=2mm\""
    ));
}

#[test]
fn they_are_found_from_home_from_a_thread_and_from_a_metal() {
    assert!(inside(&body(200, "/"), "main").contains("href=\"/calculators\""));
    let thread = body(200, "/threads/ba/5");
    for address in ["/calculators/tapping?thread=5+BA", "/calculators/clearance?thread=5+BA"] {
        assert!(thread.contains(address), "{address}");
        assert_eq!(visit(address).status, 200);
    }
    let metal = body(200, "/materials/gunmetal");
    assert!(metal.contains("/calculators/speeds?material=gunmetal"));
    let asked = body(200, "/calculators/speeds?material=gunmetal");
    assert!(asked.contains("value=\"gunmetal\" selected") && !asked.contains("class=\"errors\""));
    let near = body(404, "/calculators/sines");
    assert!(near.contains("href=\"/calculators/speeds\""));
}
