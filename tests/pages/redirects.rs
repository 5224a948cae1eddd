//! One address a page; every other spelling goes there in one hop.

use crate::{body, moves, visit};

#[test]
fn a_final_slash_capitals_and_percent_codes_are_tidied() {
    moves("/threads/", "/threads");
    moves("/Threads/BA/5", "/threads/ba/5");
    moves("/threads//ba/5/", "/threads/ba/5");
    moves("/threads/%62a/5", "/threads/ba/5");
    moves("/MATERIALS/Gunmetal/", "/materials/gunmetal");
    moves("/drills/letter/F", "/drills/letter/f");
}

#[test]
fn other_names_of_a_thing_go_to_its_own_address() {
    moves("/threads/metric/m3x0.5", "/threads/metric/m3");
    moves("/threads/metric/M3x0.5/", "/threads/metric/m3");
    moves("/threads/metric/m3x0.35", "/threads/metric-fine/m3x0.35");
    moves("/threads/ba/5ba", "/threads/ba/5");
    moves("/drills/metric/3.0", "/drills/metric/3");
    moves("/drills/metric/2.050", "/drills/metric/2.05");
    moves("/materials/aluminium", "/materials/aluminium-6082");
}

#[test]
fn a_forms_empty_fields_leave_the_address() {
    moves(
        "/plan?thread=5+BA&material=gunmetal&hole=blind&depth=&over=&fit=",
        "/plan?thread=5+BA&material=gunmetal&hole=blind",
    );
    moves("/drills?from=&to=&series=number&series=metric", "/drills?series=number%2Cmetric");
    moves("/plan/?thread=5+BA&material=gunmetal&depth=", "/plan?thread=5+BA&material=gunmetal");
}

#[test]
fn a_parameter_repeated_alike_counts_once_and_one_repeated_otherwise_is_refused() {
    moves("/plan?thread=5+BA&material=gunmetal&thread=5+BA", "/plan?thread=5+BA&material=gunmetal");
    moves("/drills?from=&from=2mm&from=2mm", "/drills?from=2mm");
    for (address, said) in [
        ("/plan?thread=5+BA&material=gunmetal&thread=4+BA", "5 BA | 4 BA"),
        ("/drills?from=2mm&from=3mm", "2mm | 3mm"),
        (
            "/calculators/strength?thread=5+BA&material=gunmetal&duty=fixing&duty=pressure",
            "fixing | pressure",
        ),
        (
            "/calculators/strength?thread=5+BA&material=gunmetal&duty=fixing&thread=boiler+stay",
            "5 BA | boiler stay",
        ),
    ] {
        assert!(body(422, address).contains(said), "{address}: what was typed is kept");
    }
}

#[test]
fn a_redirect_never_leaves_the_site() {
    for path in
        ["//evil.example/", "/\\evil.example", "//evil.example/threads/", "/%2F%2Fevil.example/"]
    {
        let answer = visit(path);
        if let Some(location) = answer.location() {
            assert!(
                location.starts_with('/') && !location.starts_with("//"),
                "{path} → {location}"
            );
        }
    }
    assert_eq!(visit("//evil.example/").status, 404);
}

#[test]
fn words_kept_for_the_server_are_not_answered() {
    for word in [
        "sign-in",
        "join",
        "me",
        "queue",
        "people",
        "api",
        "api/v1/plan",
        "healthz",
        "readyz",
        "metrics",
        "notes",
        "sw.js",
    ] {
        body(404, &format!("/{word}"));
    }
}
