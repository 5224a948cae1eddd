//! The effort of a tap and the strength of a thread, as their pages print them.

use crate::{body, visit};

/// The answer to a term of the list under the figure.
fn term<'a>(page: &'a str, name: &str) -> &'a str {
    let Some(after) = page.split(&format!("<dt>{name}</dt><dd>")).nth(1) else { return "" };
    after.split("</dd>").next().unwrap()
}

fn figure(page: &str) -> &str {
    let after = page.split("class=\"figure\"><strong>").nth(1).unwrap();
    after.split("</strong>").next().unwrap()
}

#[test]
fn the_effort_of_a_tap_is_the_maker_s_and_its_margin_is_a_word() {
    // The maker's own sum for M6 in a 5 mm hole in Ck45 is 2.026 N·m; the rougher formula 1.875.
    let page = body(
        200,
        "/calculators/tap-effort?thread=M6&material=medium-carbon-steel&hole=5mm&series=metric",
    );
    assert_eq!(figure(&page), "Fair");
    assert_eq!(term(&page, "Effort of the second tap"), "2 N·m");
    assert_eq!(term(&page, "By a rougher formula"), "1.9 N·m");
    assert_eq!(term(&page, "Metal reckoned with"), "Ck45, kc 3900 N/mm², K 1.35");
    // (6 − 5.1)² (6 + 10.2) over 1 · 16; 5.1 (0.5 + tan 30° · 0.112) over 5 (0.5 + tan 30° · 0.212).
    assert_eq!(term(&page, "One drill larger"), "5.1 mm, 69.3 %");
    assert_eq!(term(&page, "Effort with it"), "82.0 %");
    assert_eq!(term(&page, "Thread that holds with it"), "92.5 %");
    assert!(term(&page, "Two drills larger").starts_with("5.2 mm"));
    for said in ["common practice, no source", "twice the torque for 5 % more strength", "glasses"]
    {
        assert!(page.contains(said), "{said}");
    }
}

#[test]
fn a_borrowed_figure_is_told_and_widens_the_word() {
    let page = body(200, "/calculators/tap-effort?thread=5BA&material=gunmetal&hole=No.+36");
    assert_eq!(figure(&page), "Fair to ample");
    assert_eq!(term(&page, "Effort of the second tap"), "0.14 N·m");
    assert!(term(&page, "Metal reckoned with").ends_with("borrowed for gunmetal"), "{page}");
    // No figure is held for drilling gunmetal.
    assert_eq!(term(&page, "Thrust of the drill, fed by hand"), "–");
    let plastic = body(422, "/calculators/tap-effort?thread=5BA&material=nylon");
    assert!(plastic.contains("No maker prints how hard nylon is to tap"));
    let taper = body(422, "/calculators/tap-effort?thread=1%2F8+NPT&material=gunmetal");
    assert!(taper.contains("is a taper thread"), "{taper}");
    let wide = body(422, "/calculators/tap-effort?thread=5BA&material=gunmetal&hole=3.2mm");
    assert!(wide.contains("Write one that leaves 20 to 110 %"));
}

#[test]
fn the_graph_marks_the_drills_and_says_their_figures() {
    let query = "thread=M6&material=medium-carbon-steel&hole=5mm&series=metric";
    let page = body(200, &format!("/calculators/tap-effort?{query}"));
    assert!(page.contains("<svg") && page.contains(">5 mm, chosen</text>"), "{page}");
    assert!(page.contains("5.1 mm: effort 82 %, strength 93 %."), "{page}");
    let alone = visit(&format!("/calculators/tap-effort.svg?{query}"));
    assert_eq!(alone.status, 200);
    let table = body(200, &format!("/calculators/tap-effort.csv?{query}"));
    assert!(table.contains("effort_nm,2.026,"), "{table}");
}

#[test]
fn the_weakest_member_is_named_with_the_screw_s_metal_alone() {
    // 6g in 6H, 6 mm long: 73.145 mm² in print; 0.6 · 290 N/mm² makes 12.7 kN; the screw 20.1 · 800.
    let query = "thread=M6&material=aluminium-6082&hole=5mm&series=metric&engaged=6mm&duty=fixing";
    let page = body(200, &format!("/calculators/strength?{query}&screw=8.8"));
    assert_eq!(figure(&page), "The thread in the hole strips first");
    assert_eq!(term(&page, "The joint bears about"), "12700 N");
    assert_eq!(term(&page, "Strip area of the thread in the hole"), "73.15 mm²");
    assert_eq!(term(&page, "Tensile area of the screw"), "20.12 mm²");
    assert!(term(&page, "Thread until the screw breaks first").starts_with("7.589 mm"), "{page}");
    assert_eq!(term(&page, "Proof load of the screw"), "11700 N");
    assert_eq!(term(&page, "The screw’s thread then holds"), "92.5 %");
    assert_eq!(term(&page, "The joint then bears"), "100.0 %");
    assert_eq!(term(&page, "Reckoned for"), "A 6g screw in a 6H nut");
    let without = body(200, &format!("/calculators/strength?{query}"));
    assert_eq!(figure(&without), "Say what the screw is of");
    assert!(!without.contains("strips first"), "{without}");
    assert_eq!(term(&without, "The joint bears about"), "–");
}

#[test]
fn no_strength_is_given_under_steam_or_pressure_or_unsaid() {
    let query = "/calculators/strength?thread=M6&material=gunmetal&screw=8.8";
    for duty in ["", "&duty=pressure"] {
        let page = body(422, &format!("{query}{duty}"));
        assert!(page.contains("no strength is given") || page.contains("No strength is given"));
        assert!(!page.contains("strips first") && !page.contains(" N</dd>"), "{page}");
    }
    let page = body(200, &format!("{query}&duty=fixing"));
    assert!(term(&page, "Metal tapped").starts_with("Gunmetal, 200 N/mm², sand casting"));
}

/// What burns or poisons is said wherever something is reckoned for the material.
#[test]
fn a_calculator_says_what_the_material_can_do() {
    for (address, said) in [
        ("fastener?thread=M6&material=magnesium-alloy", "dry sand"),
        ("tap-effort?thread=M6&material=magnesium-alloy", "dry sand"),
        ("fastener?thread=M6&material=engraving-brass", "lead"),
    ] {
        let page = body(200, &format!("/calculators/{address}"));
        assert!(
            page.contains("class=\"warning danger\"") && page.contains(said),
            "{address}: {page}"
        );
    }
    let page = body(200, "/calculators/fastener?thread=M6&material=bright-mild-steel");
    assert!(!page.contains("class=\"warning danger\""), "{page}");
}

/// A plan that says no strength of the screw that was named says why, and where it is asked.
#[test]
fn a_plan_that_keeps_a_strength_back_says_so() {
    let plan = |material: &str, screw: &str| {
        let query = "thread=M6&hole=through&depth=6mm";
        body(200, &format!("/plan?{query}&material={material}{screw}"))
    };
    let why = "no strength is given on a plan in a metal that may hold steam or pressure";
    assert!(plan("gunmetal", "&screw=8.8").contains(why));
    assert!(!plan("gunmetal", "").contains(why), "no screw was named");
    let said = plan("aluminium-6082", "&screw=8.8");
    assert!(!said.contains(why) && said.contains("that is where something breaks"), "{said}");
}

#[test]
fn a_screw_turned_from_bar_goes_by_its_metal() {
    let page = |screw: &str, status| {
        let query = "thread=2BA&material=gunmetal&duty=fixing&engaged=8mm";
        body(status, &format!("/calculators/strength?{query}&screw={screw}"))
    };
    assert!(term(&page("free-cutting+brass", 200), "Metal of the screw").contains("370 N/mm²"));
    assert!(page("7.7", 422).contains("is no class held"));
    assert!(page("nylon", 422).contains("No strength is held for a screw of nylon"));
    assert!(page("unobtainium", 422).contains("unobtainium"));
}

/// Every letter of the graph lies on its sheet, whatever the thread and the drills.
#[test]
fn the_graph_keeps_to_its_sheet() {
    for (thread, material) in [
        ("M6", "copper"),
        ("5BA", "gunmetal"),
        ("1/4x40ME", "free-cutting-brass"),
        ("16BA", "gunmetal"),
    ] {
        let address = format!("/calculators/tap-effort.svg?thread={thread}&material={material}");
        let drawing = body(200, &address);
        let height: f64 = between(&drawing, "height=\"").parse().unwrap();
        let texts = drawing.split("<text x=\"").skip(1);
        let mut lines = Vec::new();
        for text in texts {
            let x: f64 = text.split('"').next().unwrap().parse().unwrap();
            let y: f64 = between(text, " y=\"").parse().unwrap();
            assert!((0.0..300.0).contains(&x) && (0.0..height).contains(&y), "{thread}: {x} {y}");
            lines.push(y);
        }
        assert!(lines.len() > 5, "{thread}");
        assert!(drawing.contains(", chosen</text>"), "{thread}");
    }
}

fn between<'a>(text: &'a str, before: &str) -> &'a str {
    text.split(before).nth(1).unwrap().split('"').next().unwrap()
}
