//! The calculators: the answer first, honest where the machine or the drawer cannot do it, and errors
//! that keep everything typed.

use holewright_core::calculators::{CALCULATORS, speeds, tapping};
use holewright_core::units::degrees;
use holewright_pages::{Query, plan};

use crate::{body, inside, moves, visit};

/// The page's first figure.
pub(crate) fn big(page: &str) -> String {
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

/// The answer to a term of the list under the figure.
pub(crate) fn term<'a>(page: &'a str, name: &str) -> &'a str {
    let Some(after) = page.split(&format!("<dt>{name}</dt><dd>")).nth(1) else { return "" };
    after.split("</dd>").next().unwrap()
}

#[test]
fn speeds_says_the_speed_to_set_the_range_and_the_source() {
    // Norseman prints 150 to 300 ft/min for ordinary brass and bronze: 5.5 mm, 2645 to 5291 rev/min.
    let page = body(
        200,
        "/calculators/speeds?material=gunmetal&diameter=5.5mm&depth=20mm&spindle_speeds=500%2C+1000%2C+3000%2C+9000",
    );
    assert_eq!(big(&page), "3000 rev/min");
    assert!(page.contains("<strong>2600 to 5300 rev/min</strong>"));
    let edge = term(&page, "Cutting speed");
    assert!(edge.contains("51.8 m/min, 170 ft/min") && edge.contains("in the range"), "{edge}");
    // 0.002 to 0.004 in a revolution for drills from 1/8 to 1/4 in (US Navy 14345, p. 93).
    assert_eq!(term(&page, "Feed"), "0.051 to 0.102 mm/rev");
    assert_eq!(term(&page, "Feed rate"), "152 to 305 mm/min at 3000 rev/min");
    // 20 mm and a point of 1.65 mm: 21.65 over 304.8 and over 152.4 mm/min.
    assert_eq!(term(&page, "Time"), "4.3 to 8.5 s at 3000 rev/min");
    assert!(page.contains("The time is for 21.65 mm"));
    // Gunmetal: 3 d, then 1 d.
    assert!(page.contains("after 16.5 mm, then every 5.5 mm: at 16.5, 20 mm"));
    assert!(page.contains("a drill maker’s feeds and speeds"));
    assert!(page.contains("US Navy training course 14345, p. 93"));
    let range = body(200, "/calculators/speeds?material=gunmetal&diameter=5.5mm");
    assert_eq!(big(&range), "2600 rev/min");
    assert!(term(&range, "Feed rate").ends_with("at 2600 rev/min"));
}

#[test]
fn the_ends_of_the_machine_are_said() {
    // Silver steel, 50 to 60 ft/min (Jet): 18.288 m/min at 500 rev/min is 11.64 mm.
    let query = "material=silver-steel&diameter=6mm&spindle_speeds=500%2C+1000%2C+2000";
    let page = body(200, &format!("/calculators/speeds?{query}"));
    assert!(
        page.contains(
            "For the slowest speed, 500 rev/min, the largest drill in silver steel is 11.6 mm."
        ),
        "{page}"
    );
    assert!(page.contains("Below 2.4 mm even the fastest, 2000 rev/min, is slower than the range"));
    let reamed = body(
        200,
        "/calculators/speeds?material=gunmetal&work=reaming&diameter=1%2F4&spindle_speeds=60%2C700%2C1200",
    );
    assert_eq!(big(&reamed), "700 rev/min");
    assert!(!reamed.contains("the largest reamer") && reamed.contains("over 102"), "{reamed}");
    let big_drill = body(
        200,
        "/calculators/speeds?material=silver-steel&diameter=12mm&spindle_speeds=500%2C+1000%2C+2000",
    );
    assert_eq!(big(&big_drill), "No machine at hand is slow enough");
    assert!(big_drill.contains("the metal would take about <strong>400 to 490 rev/min</strong>"));
    // 18.85 over 18.288 m/min.
    assert!(big_drill.contains("18.8 m/min, 3 % above the fast end of the range"));
    assert!(big_drill.contains("The largest drill that speed suits in silver steel is 11.6 mm"));
}

#[test]
fn deep_holes_are_cautioned() {
    let page = |depth| {
        body(
            200,
            &format!("/calculators/speeds?material=silver-steel&diameter=3mm&depth={depth}mm"),
        )
    };
    assert!(page("5").contains("Shallow enough for one go"));
    // Tough metal: 2 d, then half d.
    assert!(page("9").contains("after 6 mm, then every 1.5 mm: at 6, 7.5, 9 mm"));
    assert!(page("16").contains("5.3 diameters deep") && !page("16").contains("Strong caution"));
    assert!(page("31").contains("Strong caution: the hole is 10.3 diameters deep"));
    let slip = body(422, "/calculators/speeds?material=silver-steel&diameter=3mm&depth=200mm");
    assert!(slip.contains("over 60 diameters"));
}

#[test]
fn carbon_steel_runs_at_half_and_what_is_not_held_is_refused() {
    let query = "material=gunmetal&diameter=5.5mm";
    let carbon = body(200, &format!("/calculators/speeds?{query}&tool_steel=carbon"));
    assert_eq!(big(&carbon), "1300 to 2600 rev/min");
    assert!(
        carbon.contains("half of that for carbon steel")
            && carbon.contains("drill of carbon steel")
    );
    for steel in ["cobalt", "carbide"] {
        let page = body(422, &format!("/calculators/speeds?{query}&tool_steel={steel}"));
        assert!(page.contains("We hold no published speeds for tools of"), "{steel}");
    }
}

#[test]
fn reaming_gives_the_hole_to_leave_with_every_source() {
    let query = "material=gunmetal&work=reaming&diameter=6mm&series=metric";
    let page = body(200, &format!("/calculators/speeds?{query}&depth=10mm"));
    // A third of 150 to a half of 300 ft/min at 6 mm, since no pair is printed for bronze.
    assert_eq!(big(&page), "810 rev/min");
    assert!(page.contains("0.33 to 0.5 of the drilling speed"));
    // Raymond 0.005 in, the general 1/100 to 1/64; Proto 0.008 to 0.012, TM 1-420 0.005 to 0.010.
    assert!(page.contains("5.603 to 5.873") && page.contains("0.127 to 0.397"), "{page}");
    let hand = term(&page, "Drill, to ream by hand");
    assert!(hand.contains(">5.8 mm</a>") && hand.contains("leaves 0.2 mm"), "{hand}");
    let machine = term(&page, "Drill, to ream in a machine");
    assert!(machine.contains(">5.7 mm</a>"), "{machine}");
    for source in ["a reamer maker’s chart", "Modern Shop Practice", "Applied Science", "TM 1-420"]
    {
        assert!(page.contains(source), "{source}");
    }
    assert!(page.contains("The most any of them leaves is 3.1 times the least"));
    // Twice 0.002 to three times 0.004 in: 0.102 to 0.305 mm.
    assert_eq!(term(&page, "Feed"), "0.102 to 0.305 mm/rev");
    let small = body(200, "/calculators/speeds?material=gunmetal&work=reaming&diameter=1.5mm");
    assert!(small.contains("(not counted)"));
    assert!(term(&small, "Drill, to ream in a machine").contains("leaves 0.1"), "{small}");
}

#[test]
fn countersinking_goes_by_the_screw_or_the_head() {
    let page = |rest: &str| {
        body(
            200,
            &format!("/calculators/speeds?material=bright-mild-steel&work=countersinking&{rest}"),
        )
    };
    // (6 − 3.4)/2 at 90°.
    let head = page("diameter=6mm&hole_size=3.4mm");
    assert_eq!(
        (term(&head, "Angle"), term(&head, "Sink")),
        ("90°", "1.3 mm <span class=\"soft\">0.051 in</span>")
    );
    let screw = page("diameter=M3&head=5.5mm");
    assert!(screw.contains("medium clearance hole by ISO 273 medium"));
    assert_eq!(term(&screw, "Sink").split(' ').next(), Some("1.05"), "{}", term(&screw, "Sink"));
    let unified = page("diameter=4-40+UNC");
    assert_eq!(term(&unified, "Angle"), "82°");
    assert!(unified.contains("1¾ to 2 times its screw; measure it (common practice)"));
    // 80 to 110 ft/min at 6 mm is 1294 to 1779 rev/min; at the mean of 4.7 mm 1652 to 2271; a quarter of the
    // first, and 80 to 85 % of it.
    assert_eq!(big(&head), "The slowest that cuts clean");
    assert!(head.contains("320 to 440") && head.contains("1700 to 2300"), "{head}");
    assert!(head.contains("1000 to 1500"), "{head}");
    let wide = body(
        422,
        "/calculators/speeds?material=bright-mild-steel&work=countersinking&diameter=6mm&hole_size=7mm",
    );
    assert!(wide.contains("leaves nothing to sink"));
}

#[test]
fn spotting_goes_by_the_drill_that_follows() {
    let page = body(
        200,
        "/calculators/speeds?material=bright-mild-steel&work=spotting&diameter=6mm&point_angle=135",
    );
    assert!(page.contains("<h1>Spot for 6 mm drill in bright mild steel</h1>"));
    assert_eq!(term(&page, "Spot"), "1.5 mm to 6.3 mm wide");
    assert_eq!(term(&page, "Its angle"), "135° or more");
    assert!(page.contains("common practice, no source"));
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
    assert!(page.contains("No machine at hand goes fast enough"), "{page}");
    assert!(page.contains("3.1 m/min, 5.2 % of the slow end"));
    assert!(page.contains("The feed a turn stays the same") && !page.contains("finely"));
}

#[test]
fn a_machine_too_fast_for_twelve_millimetres_is_told_so() {
    // 304: 30 to 40 ft/min (US Navy 14345): 12 mm wants 243 to 323 rev/min.
    let page = body(
        200,
        "/calculators/speeds?material=stainless-304&diameter=12mm&spindle_speeds=500%2C+1000%2C+2000",
    );
    assert_eq!(big(&page), "No machine at hand is slow enough");
    assert!(page.contains("<strong>240 to 320 rev/min</strong>"));
    assert!(page.contains("No machine at hand goes slowly enough"));
    assert!(page.contains("18.8 m/min, 1.5 times the fast end"));
    // 40 ft/min at 500 rev/min is 7.76 mm.
    assert!(
        page.contains("The largest drill that speed suits in stainless steel 304 is 7.8 mm"),
        "{page}"
    );
}

#[test]
fn nothing_is_headlined_that_a_bench_machine_cannot_do() {
    // Brass at 60 m/min: 0.5 mm wants 38,000 rev/min.
    let page = body(200, "/calculators/speeds?material=free-cutting-brass&diameter=0.5+mm");
    assert_eq!(big(&page), "As fast as the machine goes");
    assert!(
        page.contains("the metal would take about <strong>38000 to 48000 rev/min</strong>"),
        "{page}"
    );
    assert!(inside(&page, "title").contains("as fast as the machine goes"));
    assert_eq!(term(&page, "Feed"), "", "by feel below 1 mm");
    assert!(page.contains("By feel: keep a chip coming"));
    // A plastic is no metal.
    let nylon = body(200, "/calculators/speeds?material=nylon&diameter=1.5+mm");
    assert!(nylon.contains("the plastic would take about"), "{nylon}");
    let sink =
        body(200, "/calculators/speeds?material=bright-mild-steel&work=countersinking&diameter=M4");
    assert_eq!(big(&sink), "The slowest that cuts clean");
    assert!(sink.contains("80 to 85 % of the drilling speed"));
}

#[test]
fn the_page_says_which_machine_and_its_speed() {
    let shed = "spindle_speeds=lathe%3A+350%2C+500%2C+1000%3B+bench+drill%3A+600-2000";
    let page = body(200, &format!("/calculators/speeds?material=silver-steel&diameter=5mm&{shed}"));
    assert_eq!(big(&page), "1000 rev/min");
    assert!(page.contains("<p class=\"basis\">on the lathe</p>"), "{page}");
    assert!(page.contains("<td>bench drill</td>"), "{page}");
    let small =
        body(200, &format!("/calculators/speeds?material=silver-steel&diameter=2mm&{shed}"));
    assert_eq!(big(&small), "2000 rev/min");
    let aside = "on the bench drill; its fastest; the metal would take about 2400 rev/min";
    assert!(small.contains(aside), "{small}");
    let bad = body(
        422,
        "/calculators/speeds?material=silver-steel&diameter=6mm&spindle_speeds=350%3B+drill%3A+600",
    );
    assert!(bad.contains("Name each machine"), "{bad}");
}

#[test]
fn a_reamer_goes_by_the_published_part_of_the_drilling_speed() {
    // Mild steel 80 to 110 ft/min (24.4 to 33.5 m/min); a reamer maker prints 0.65 of it: 15.8 m/min at 6 mm.
    let page =
        body(200, "/calculators/speeds?material=bright-mild-steel&work=reaming&diameter=6mm");
    assert_eq!(big(&page), "840 rev/min");
    assert!(page.contains("about <strong>840 to 1200 rev/min</strong>"));
    assert!(page.contains("0.65 of the drilling speed"));
    assert!(page.contains("0.33 to 0.5 of the drilling speed"), "what other print says");
    // Two to three times 0.002 to 0.004 in.
    assert_eq!(term(&page, "Feed"), "0.102 to 0.305 mm/rev");
    // Silver steel is reamed at 0.41 of it (35 over 85).
    let silver = body(200, "/calculators/speeds?material=silver-steel&work=reaming&diameter=6mm");
    assert!(silver.contains("0.41 of the drilling speed"));
}

#[test]
fn what_no_bench_machine_holds_is_refused_with_what_is_taken() {
    for (work, size) in
        [("reaming", "323+mm"), ("drilling", "1999+mm"), ("countersinking", "0.05+mm")]
    {
        let page = body(
            422,
            &format!("/calculators/speeds?material=gunmetal&work={work}&diameter={size}"),
        );
        assert!(page.contains("Write a size from 0.1 mm to 101.6 mm (4 in)."), "{work}: {page}");
    }
    let depth = body(
        200,
        "/calculators/speeds?material=gunmetal&work=countersinking&diameter=M4&depth=6mm",
    );
    assert!(depth.contains("The depth given is not used"));
}

#[test]
fn a_countersunk_screw_that_could_be_two_is_taken_for_the_usual_one() {
    let page =
        body(200, "/calculators/speeds?material=gunmetal&work=countersinking&diameter=1%2F4-20");
    assert!(page.contains("is taken as <strong>1/4-20 UNC</strong>"), "{page}");
}

#[test]
fn a_drive_without_steps_is_set_to_the_slow_end() {
    let page =
        body(200, "/calculators/speeds?material=gunmetal&diameter=5.5mm&spindle_speeds=200-4000");
    assert_eq!(big(&page), "2600 rev/min");
}

#[test]
fn a_tap_under_power_feeds_by_its_pitch() {
    let page = body(
        200,
        "/calculators/speeds?material=bright-mild-steel&work=tapping&diameter=1%2F4+BSW&spindle_speeds=700",
    );
    assert_eq!(big(&page), "By hand");
    assert!(term(&page, "Under power").starts_with("700 rev/min"));
    assert!(page.contains("reversing or tension holder"));
    // GTZ, 4 to 15 m/min, is the gentlest in print.
    assert!(
        page.contains("the metal would take about <strong>200 to 750 rev/min</strong>"),
        "{page}"
    );
    assert!(page.contains("1.27 mm/rev") && page.contains("889 mm/min at 700 rev/min"), "{page}");
    // Machinery's Handbook 31st ed. p. 2178: 20 tpi at 920 rev/min goes in at 46 in a minute. Brass is
    // tapped so fast; the gentlest range of mild steel ends below it.
    let brass = body(
        200,
        "/calculators/speeds?material=free-cutting-brass&work=tapping&diameter=1%2F4+BSW&spindle_speeds=920",
    );
    assert!(
        brass.contains("1.27 mm/rev") && brass.contains("1168 mm/min at 920 rev/min"),
        "{brass}"
    );
    let drill = body(422, "/calculators/speeds?material=gunmetal&diameter=M3");
    assert!(drill.contains("M3 is a thread. Choose tapping"));
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
    // 0.25 − 2 × 0.0178 + 0.2/36 + 0.004 in: the rule of BS 84.
    assert!(
        page.contains("0.2240 in") && page.contains("the rule of BS 84, second-hand"),
        "{page}"
    );
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
    let rule =
        "<dd>clearance as a part of the major diameter, within limits (common practice)</dd>";
    assert!(five.contains(rule));
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
    assert!(large.contains("No drill at hand comes near it: bore the hole"));
}

#[test]
fn a_screw_that_is_not_of_its_thread_is_refused_at_its_diameter() {
    // 5 BA is 3.2 mm over the thread and 2.49 mm at the bottom of it.
    for (measured, is_one) in
        [("3.15", true), ("3.25", true), ("2.5", true), ("2.45", false), ("6", false)]
    {
        let address = format!("/calculators/clearance?thread=5ba&diameter={measured}");
        let page = body(if is_one { 200 } else { 422 }, &address);
        assert_ne!(
            page.contains("is no 5 BA, which is 3.2 mm over the thread"),
            is_one,
            "{measured}"
        );
        assert!(
            !page.contains("<dd>-") && !page.contains("\">-"),
            "no float below nothing: {measured}"
        );
    }
}

#[test]
fn a_drill_far_over_the_hole_is_not_taken_and_the_one_to_get_is_named() {
    let page = body(200, "/calculators/clearance?thread=M6&owned=1-60%2C+27%2F64");
    assert!(big(&page).starts_with("6.6 mm"), "{}", big(&page));
    assert!(page.contains("within 1/64 in of it or a tenth of it<sup"));
    assert!(page.contains("<dd>common practice, no source</dd>"));
    let get = "get <a href=\"/drills/metric/6.6\">6.6 mm</a>, or bore the hole";
    assert!(page.contains(get), "{page}");
}

#[test]
fn the_point_of_a_drill_says_the_angle_that_it_is_for() {
    for (angle, heading) in
        [("", "Point of an 8 mm drill, 118°"), ("&point_angle=135", "Point of an 8 mm drill, 135°")]
    {
        let page = body(200, &format!("/calculators/point-length?diameter=8{angle}"));
        assert!(page.contains(&format!("<h1>{heading}</h1>")), "{page}");
    }
    // 0.3004 of the diameter at 118° (trigonometry; a tap maker prints 0.3).
    assert_eq!(big(&body(200, "/calculators/point-length?diameter=8")), "2.403 mm 0.0946 in");
}

#[test]
fn a_form_sent_without_its_first_field_says_so() {
    for (address, field) in [
        ("/plan?thread=&material=gunmetal&depth=4", "thread"),
        ("/plan?thread=&material=", "thread"),
        ("/calculators/clearance?thread=&diameter=&fit=medium&upper_error=abc", "thread"),
        ("/calculators/speeds?material=gunmetal&diameter=", "diameter"),
        ("/calculators/tapping?thread=&form=&major=&pitch=&hole=2.5", "form"),
    ] {
        let page = body(422, address);
        assert!(page.contains(&format!("<li><a href=\"#{field}\">")), "{address}: {page}");
    }
    let both = body(422, "/calculators/clearance?thread=&diameter=&upper_error=abc");
    assert!(both.contains("<li><a href=\"#upper_error\">"), "{both}");
    // A link that fills in a part of it only asks.
    for address in ["/plan?material=gunmetal", "/calculators/speeds?material=gunmetal"] {
        assert!(!body(200, address).contains("id=\"errors\""), "{address}");
    }
}

#[test]
fn a_countersink_is_for_a_head_wider_than_its_screw_and_its_hole() {
    let address = "/calculators/speeds?material=gunmetal&work=countersinking";
    for (rest, words) in [
        ("diameter=M4&head=3mm", "A head of 3 mm is no wider than its screw, 4 mm."),
        ("diameter=M4&hole_size=9mm", "leaves nothing to sink: the head is 8 mm at most"),
    ] {
        let page = body(422, &format!("{address}&{rest}"));
        assert!(page.contains(words), "{rest}: {page}");
    }
    let point = body(200, &format!("{address}&diameter=8mm"));
    assert!(term(&point, "Sink").contains("to a point: no hole was given"));
}

#[test]
fn no_drill_near_the_engagement_wanted_is_told_with_the_nearest() {
    let page = body(200, "/calculators/tapping?thread=5ba&owned=2.6mm");
    let nearest = term(&page, "Nearest drill");
    assert_eq!(nearest, "none at hand leaves 60 to 80 %; those below come nearest");
    assert!(page.contains("84.7"));
    let none = body(200, "/calculators/tapping?thread=5ba&owned=1mm");
    assert_eq!(term(&none, "Nearest drill"), "none at hand leaves 60 to 80 %: bore the hole");
}

#[test]
fn errors_keep_everything_typed_and_stand_at_their_fields() {
    for calculator in CALCULATORS {
        let path = calculator.path();
        let names: Vec<&str> = calculator.fields().map(|field| field.about().name).collect();
        let typed = |name: &str| format!("no {name}");
        let query: Vec<String> = names.iter().map(|name| format!("{name}=no+{name}")).collect();
        let page = body(422, &format!("{path}?{}", query.join("&")));
        assert!(page.contains("<title>Error:"), "{path}");
        for field in names {
            let typed = typed(field);
            assert!(page.contains(&format!("value=\"{typed}\"")), "{path}: {field} is lost");
            assert!(page.contains(&format!("href=\"#{field}\"")), "{path}: no error for {field}");
            assert!(page.contains(&format!("id=\"{field}\"")), "{path}: no place for {field}");
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

/// The default that the hint of a field names: `118` of `Degrees; 118 if left empty`.
fn named_default(page: &str, field: &str) -> String {
    let field = page.split(&format!("<label for=\"{field}\">")).nth(1).unwrap();
    let (hint, _) = field.split_once(" if left empty</p>").unwrap();
    hint.rsplit([' ', '>']).next().unwrap().to_owned()
}

#[test]
fn a_field_left_empty_is_taken_as_its_hint_says() {
    let speeds = |typed: &str| {
        speeds::answer_to(&speeds::DECLARATION.asked(Query::read(typed).pairs())).unwrap()
    };
    let tapping = |typed: &str| {
        tapping::answer_to(&tapping::DECLARATION.asked(Query::read(typed).pairs())).unwrap()
    };
    let plan = |typed: &str| plan::Request::read(typed).spec().unwrap();

    let drill = "material=gunmetal&diameter=6mm&depth=20mm";
    let angle = named_default(&body(200, "/calculators/speeds"), "point_angle");
    assert_eq!(speeds(drill).question.point_angle, degrees(angle.parse().unwrap()));
    assert_ne!(speeds(&format!("{drill}&point_angle=90")), speeds(drill));

    let percent = named_default(&body(200, "/calculators/tapping"), "engagement");
    assert_eq!(tapping("thread=5ba").wanted_percent.to_string(), percent);

    let angle = named_default(&body(200, "/plan"), "point_angle");
    assert_eq!(plan("thread=5ba&material=gunmetal").point_angle, degrees(angle.parse().unwrap()));
}

#[test]
fn a_speed_warns_of_what_its_cut_does() {
    let brass = body(200, "/calculators/speeds?material=free-cutting-brass&diameter=6mm");
    assert!(brass.to_lowercase().contains("lead"), "lead is on the hands after any cut");
    assert!(
        !brass.contains("silver solder") && !brass.contains("Silver solder"),
        "nothing is soldered"
    );
    let magnesium = body(200, "/calculators/speeds?material=magnesium-alloy&diameter=6mm");
    assert!(magnesium.contains("can light the chips"), "{magnesium}");
}
