//! axe-core finds nothing on any kind of page, in both colour schemes, narrow and wide.

use std::path::PathBuf;

use crate::browser::{Browser, NARROW, Scheme, Scripts, WIDE};
use crate::kinds::kinds;
use crate::open::OPEN;

/// Every rule that is on by default, and the one for the size of targets.
const RUN: &str = "
    const done = arguments[0];
    axe.run(document, {resultTypes: ['violations'], rules: {'target-size': {enabled: true}}})
        .then(found => done(found.violations.flatMap(rule => rule.nodes.map(node =>
            `${rule.id}: ${node.html.slice(0, 160)} (${node.any.concat(node.all, node.none).map(check => check.message).join('; ').slice(0, 200)})`))))
        .catch(error => done(['axe failed: ' + error]))";

#[test]
fn axe_finds_nothing() {
    let axe = axe();
    let browser = Browser::open(NARROW, Scripts::Allowed);
    let mut found = Vec::new();
    for kind in kinds().iter().chain(OPEN) {
        browser.visit(&kind.address);
        browser.unfold();
        browser.window.run(axe.as_str());
        for screen in [NARROW, WIDE] {
            browser.resize(screen);
            for scheme in Scheme::BOTH {
                browser.prefer(scheme);
                let (width, scheme) = (screen.width, scheme.name());
                let here = run(&browser);
                found.extend(
                    here.into_iter()
                        .map(|what| format!("{} {width} px, {scheme}: {what}", kind.address)),
                );
            }
        }
    }
    assert!(found.is_empty(), "{} violations: {found:#?}", found.len());

    // What the check is worth: pale text in the dark scheme is found.
    let script = "document.querySelector('h1').style.color = '#14233c'";
    browser.window.run(script);
    let heard = run(&browser);
    assert!(heard.iter().any(|what| what.starts_with("color-contrast")), "{heard:#?}");
}

pub(crate) fn run(browser: &Browser) -> Vec<String> {
    serde_json::from_value(browser.window.run_until_done(RUN)).unwrap()
}

/// The source of axe-core, fetched by `tests/run`.
pub(crate) fn axe() -> String {
    let place = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("target/tools/axe/node_modules/axe-core/axe.min.js");
    std::fs::read_to_string(&place)
        .unwrap_or_else(|error| panic!("{}: {error}; tests/run fetches it", place.display()))
}
