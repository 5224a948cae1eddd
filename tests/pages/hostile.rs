//! Whatever is put in an address, an answer comes out, and nothing typed becomes markup.

use std::collections::BTreeSet;

use proptest::prelude::*;

use crate::html::read;
use crate::kinds::kinds;
use crate::markup::check_inert;
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
    check_inert(&read(answer.text()), address);
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
    let queries = queries();
    assert!(queries.len() > 60, "{queries:?}");
    for word in words.into_iter().chain([long.as_str()]) {
        for path in paths() {
            is_answered(&format!("{path}{word}"));
        }
        for query in &queries {
            is_answered(&format!("{query}{word}"));
        }
        for ending in [".csv", ".svg"] {
            is_answered(&format!("/{word}{ending}"));
            is_answered(&format!("/threads/ba/{word}{ending}"));
        }
    }
}

/// Each kind of page with the last part of its path left open.
fn paths() -> BTreeSet<String> {
    let kinds = kinds();
    let paths = kinds.iter().filter_map(|kind| kind.address.split('?').next());
    let open =
        paths.filter_map(|path| path.rsplit_once('/')).map(|(before, _)| format!("{before}/"));
    open.chain(["/drills/metric/", "/static/holewright-"].map(String::from)).collect()
}

/// Each kind of page, and the files beside it, with one field of its form left open and the others as they
/// are in its address.
pub(crate) fn queries() -> BTreeSet<String> {
    let mut queries = BTreeSet::new();
    for kind in kinds().iter().filter(|kind| kind.status == 200) {
        let (path, query) = kind.address.split_once('?').unwrap_or((&kind.address, ""));
        let page = read(visit(&kind.address).text());
        for name in page.tags.iter().filter_map(|tag| tag.attribute("name")) {
            let others = query.split('&').filter(|field| field.split('=').next() != Some(name));
            let others: String = others.map(|field| format!("{field}&")).collect();
            let files = if path == "/plan" || path == "/drills" {
                &["", ".csv", ".svg"][..]
            } else {
                &[""]
            };
            queries.extend(files.iter().map(|ending| format!("{path}{ending}?{others}{name}=")));
        }
    }
    queries
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
