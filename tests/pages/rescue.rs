//! When it goes wrong: what can hurt first, the ways that serve this metal, and the ways there.

use holewright_core::tables::rescue;

use crate::{body, inside, visit};

fn place(page: &str, words: &str) -> usize {
    page.find(words).unwrap_or_else(|| panic!("{words}: {page}"))
}

#[test]
fn what_can_hurt_stands_before_the_ways() {
    for trouble in rescue::all() {
        let page = body(200, &trouble.path());
        let danger = place(&page, "<section class=\"warning danger\">");
        assert!(danger < place(&page, "The ways out, in order"), "{}", trouble.slug);
        assert!(place(&page, &format!("<h1>{}</h1>", trouble.title)) < danger, "{}", trouble.slug);
        let stop = place(&page, "<h2>When to stop</h2>");
        assert!(place(&page, "<h3>1. ") < stop, "{}", trouble.slug);
        assert!(inside(&body(200, "/rescue"), "main").contains(&trouble.path()));
    }
}

#[test]
fn a_broken_tap_has_the_ways_of_its_metal_and_its_steel() {
    let tap = |rest: &str| body(200, &format!("/rescue/broken-tap?{rest}"));
    let (dissolve, never) = ("Dissolve it in hot alum", "never put iron or steel work in alum");
    let gunmetal = tap("material=gunmetal&tap_steel=carbon");
    for words in [dissolve, "3 to 15 minutes", "about an hour", "American Horologist, March 1945"] {
        assert!(gunmetal.contains(words), "{words}: {gunmetal}");
    }
    assert!(!inside(&gunmetal, "main").contains(never), "{gunmetal}");
    let high_speed = tap("material=gunmetal&tap_steel=hss");
    assert!(!high_speed.contains(dissolve) && high_speed.contains("are mixed"), "{high_speed}");
    let steel = tap("material=bright-mild-steel&tap_steel=carbon");
    assert!(!steel.contains(dissolve) && steel.contains(never), "{steel}");
    // With nothing known, each way says what it is for.
    let any = body(200, "/rescue/broken-tap");
    assert!(any.contains(dissolve) && any.contains("For iron and steel."), "{any}");
    assert!(inside(&gunmetal, "title").starts_with("A broken tap in gunmetal"), "{gunmetal}");
}

#[test]
fn a_metal_that_is_not_known_is_refused_and_kept() {
    let page = body(422, "/rescue/broken-tap?material=unobtainium&tap_steel=tin");
    assert!(page.contains("<title>Error:"), "{page}");
    for field in ["material", "tap_steel"] {
        assert!(page.contains(&format!("href=\"#{field}\"")), "{field}: {page}");
    }
    assert!(page.contains("unobtainium") && page.contains("tin (not a choice)"), "{page}");
    let near = body(404, "/rescue/cheese");
    assert!(near.contains("href=\"/rescue/broken-tap\""), "{near}");
}

#[test]
fn a_stripped_thread_has_the_holes_for_inserts_in_print() {
    let page = body(200, "/rescue/stripped-thread");
    // A maker's catalogue, p. 209: No. 4-40 UNC, 0.1323 to 0.1339, drill 0.1327 in.
    let row = page.split("/threads/unc/4-40\"").nth(1).unwrap();
    for figure in ["3.371", "0.1327", "0.1323", "0.1339"] {
        assert!(row.split("</tr>").next().unwrap().contains(figure), "{figure}: {row}");
    }
    assert!(!body(200, "/rescue/torn-thread").contains("wire inserts, before a tap"));
}

#[test]
fn a_plan_and_a_metal_lead_to_a_tap_broken_in_it() {
    let plan = "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm";
    let link = "href=\"/rescue/broken-tap?material=gunmetal\">If the tap breaks in gunmetal";
    assert!(body(200, plan).contains(link));
    let carbon = body(200, &format!("{plan}&tap_steel=carbon"));
    assert!(
        carbon.contains("/rescue/broken-tap?material=gunmetal&#38;tap_steel=carbon"),
        "{carbon}"
    );
    let metal = body(200, "/materials/gunmetal");
    assert!(metal.contains("href=\"/rescue/broken-tap?material=gunmetal\""), "{metal}");
    assert!(body(200, "/").contains("href=\"/rescue\""));
}

/// The address of the first link that begins so, as a browser reads it.
fn link(page: &str, begins: &str) -> String {
    let start = place(page, &format!("href=\"{begins}")) + "href=\"".len();
    page[start..].split('"').next().unwrap().replace("&#38;", "&")
}

#[test]
fn a_blind_plan_leads_to_its_depths_by_themselves() {
    let plan =
        body(200, "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm&part_thickness=12mm");
    let address = link(&plan, "/calculators/blind-hole");
    let depths = body(200, &address);
    for page in [&plan, &depths] {
        assert!(page.contains("No. 36"), "{page}");
    }
    assert!(
        inside(&depths, "h1").contains("5 BA, 8 mm of full thread, blind in 12 mm"),
        "{depths}"
    );
    let through = body(200, "/plan?thread=5ba&material=gunmetal&depth=8mm");
    assert!(!through.contains("/calculators/blind-hole?"), "{through}");
}

#[test]
fn a_plan_that_comes_through_leads_to_what_would_make_it_possible() {
    let address =
        "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm&part_thickness=9mm&finish=second";
    let refused = body(422, address);
    let depths = body(200, &link(&refused, "/calculators/blind-hole"));
    assert!(depths.contains("not possible: the drill comes through by"), "{depths}");
    let ways = depths.split("<h2>What would make it possible</h2>").nth(1).unwrap();
    assert!(ways.split("</ul>").next().unwrap().contains("Run the plug (bottoming) tap"), "{ways}");
    assert!(!body(422, "/plan?thread=5ba&material=cheese").contains("/calculators/blind-hole"));
}

#[test]
fn holes_that_are_out_say_what_to_do_and_show_it() {
    let out = body(200, "/calculators/position?thread=M3&upper_error=0.3&lower_error=0.2");
    assert!(out.contains("not at the worst: 0.3 mm short"), "{out}");
    let to_do = out.split("<h2>What to do</h2>").nth(1).unwrap().split("</ul>").next().unwrap();
    assert!(to_do.contains("Open the clearance hole to 4 mm"), "{to_do}");
    assert!(out.contains("<svg") && out.contains("The screw fouls the hole."), "{out}");
    let fits = body(200, "/calculators/position?thread=M3&upper_error=0.1&lower_error=0.1");
    assert!(fits.contains("yes, at the worst") && !fits.contains("<h2>What to do</h2>"), "{fits}");
    let svg = visit("/calculators/position.svg?thread=M3&upper_error=0.1&lower_error=0.1");
    assert_eq!(svg.status, 200);
    assert!(svg.text().starts_with("<svg"), "{}", svg.text());
}
