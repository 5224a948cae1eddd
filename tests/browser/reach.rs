//! No page scrolls sideways at 320 px, with the reader's own letter spacing neither.

use crate::browser::{Browser, NARROW, Scripts};
use crate::kinds::KINDS;

/// The spacing of WCAG 1.4.12, laid over the page's own.
const SPACED: &str = "const sheet = new CSSStyleSheet(); \
    sheet.replaceSync('* { line-height: 1.5 !important; letter-spacing: .12em !important; \
        word-spacing: .16em !important } p { margin-block-end: 2em !important }'); \
    document.adoptedStyleSheets = [sheet]";

/// How wide the page is and, where too wide, what sticks out. A region that scrolls inside itself
/// hides its contents; a text cut off by its own box is told of too.
pub(crate) const STICKING_OUT: &str = "
    const inside = element => element.closest('.table') && !element.matches('.table');
    const named = element => element.tagName + '.' + element.className + ' ' + element.textContent.trim().slice(0, 40);
    const seen = [...document.body.querySelectorAll('*')].filter(element =>
        !element.closest('svg, .hidden, .skip') && !inside(element));
    const out = seen.filter(element => element.getBoundingClientRect().right > 320.5).map(named);
    const cut = seen.filter(element => getComputedStyle(element).overflowX === 'hidden'
        && element.scrollWidth > element.clientWidth).map(element => 'cut: ' + named(element));
    const width = document.documentElement.scrollWidth;
    return (width > 320 ? [String(width) + ' px'] : []).concat(out, cut)";

#[test]
fn no_page_scrolls_sideways() {
    let browser = Browser::open(NARROW, Scripts::Allowed);
    let mut wide = Vec::new();
    for kind in KINDS {
        browser.visit(kind.address);
        browser.unfold();
        let width: u32 = browser.ask("return document.documentElement.clientWidth");
        assert_eq!(width, 320, "the page is laid out at the width of the screen");
        for spacing in ["", SPACED] {
            browser.window.run(spacing);
            let out: Vec<String> = browser.ask(STICKING_OUT);
            let how = if spacing.is_empty() { "as it is" } else { "spaced" };
            wide.extend(out.into_iter().map(|what| format!("{} {how}: {what}", kind.address)));
        }
    }
    assert!(wide.is_empty(), "{wide:#?}");

    // What the check is worth: one long word sticks out.
    browser.visit("/");
    let script = "document.querySelector('h1').textContent = 'x'.repeat(80)";
    browser.window.run(script);
    let out: Vec<String> = browser.ask(STICKING_OUT);
    assert!(!out.is_empty(), "a word of 80 letters is not noticed");
}
