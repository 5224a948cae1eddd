//! Whatever is put in an address, an answer comes out, and nothing typed becomes markup.

use proptest::prelude::*;

use crate::html::tags;
use crate::visit;

#[track_caller]
fn is_answered(address: &str) {
    let answer = visit(address);
    assert!(matches!(answer.status, 200 | 301 | 303 | 404 | 422), "{address}: {}", answer.status);
    if let Some(location) = answer.location() {
        assert!(location.starts_with('/') && !location.starts_with("//"), "{address} → {location}");
        assert!(location.bytes().all(|byte| byte.is_ascii_graphic()), "{address} → {location:?}");
    }
    assert!(!answer.text().contains("<script") && !answer.text().contains("<img"), "{address}");
    for tag in tags(answer.text()) {
        assert!(!tag.attributes.iter().any(|(name, _)| name.starts_with("on")), "{address}");
    }
}

#[test]
fn hostile_words_are_answered_everywhere() {
    let words = [
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "' onfocus='alert(1)",
        "%00",
        "%ff%fe",
        "%",
        "%2",
        "..%2f..%2fetc",
        "🔩",
        "1/0",
        "1e999mm",
        "nan",
        "-0",
        "٣ BA",
        "javascript:alert(1)",
        "a\r\nset-cookie: x=y",
    ];
    let long = "9".repeat(5000);
    for word in words.into_iter().chain([long.as_str()]) {
        for path in [
            "/",
            "/threads/",
            "/threads/ba/",
            "/drills/metric/",
            "/materials/",
            "/static/holewright-",
        ] {
            is_answered(&format!("{path}{word}"));
        }
        for query in [
            "/search?q=",
            "/drills?from=",
            "/drills?series=",
            "/plan?thread=",
            "/plan?thread=5ba&material=",
        ] {
            is_answered(&format!("{query}{word}"));
        }
        for query in [
            "/calculators/speeds?material=gunmetal&diameter=",
            "/calculators/speeds?diameter=2mm&material=",
            "/calculators/speeds?diameter=2mm&work=",
            "/calculators/speeds?diameter=2mm&material=gunmetal&spindle_speeds=",
            "/calculators/speeds?diameter=2mm&material=gunmetal&spindle_max=",
            "/calculators/tapping?thread=",
            "/calculators/tapping?thread=5ba&form=",
            "/calculators/tapping?thread=5ba&major=",
            "/calculators/tapping?thread=5ba&pitch=",
            "/calculators/tapping?thread=5ba&hole=",
            "/calculators/tapping?thread=5ba&engagement=",
            "/calculators/clearance?thread=",
            "/calculators/clearance?diameter=",
            "/calculators/clearance?thread=5ba&fit=",
            "/calculators/clearance?thread=5ba&upper_error=",
            "/calculators/clearance?thread=5ba&lower_error=",
            "/calculators/clearance?thread=5ba&owned=",
            "/plan.csv?thread=",
            "/plan.svg?thread=5ba&material=gunmetal&depth=",
            "/drills.csv?from=",
        ] {
            is_answered(&format!("{query}{word}"));
        }
        for ending in [".csv", ".svg"] {
            is_answered(&format!("/{word}{ending}"));
            is_answered(&format!("/threads/ba/{word}{ending}"));
        }
        for field in
            ["depth", "over", "owned", "series", "point_angle", "spindle_max", "hand", "fit"]
        {
            is_answered(&format!("/plan?thread=5ba&material=gunmetal&{field}={word}"));
        }
    }
}

proptest! {
    #[test]
    fn any_text_is_answered(path in "\\PC{0,40}", query in "\\PC{0,80}") {
        is_answered(&format!("/{}?{query}", path.replace('?', "")));
    }

    #[test]
    fn any_plan_is_answered(
        thread in "[0-9/. xXmMbBaAuUnNcC]{0,12}",
        depth in "[0-9./,]{0,6}(mm|in|thou|\")?",
        owned in "[0-9x,./ -]{0,20}",
    ) {
        is_answered(&format!("/plan?thread={thread}&material=gunmetal&hole=blind&depth={depth}&owned={owned}"));
    }
}
