//! No page scrolls sideways at 320 px, with the reader's own letter spacing or with letters twice
//! as large neither.

use crate::browser::{Browser, NARROW, Scripts};
use crate::kinds::kinds;
use crate::open::OPEN;

/// How a reader sets the page, and what that lays over the page's own style.
const WAYS: [(&str, &str); 3] = [
    ("as it is", ""),
    // WCAG 1.4.12.
    (
        "spaced",
        "* { line-height: 1.5 !important; letter-spacing: .12em !important; \
         word-spacing: .16em !important } p { margin-block-end: 2em !important }",
    ),
    // WCAG 1.4.4.
    ("twice as large", "html { font-size: 200% !important }"),
];

/// How wide the page is and, where too wide, what sticks out. A region that scrolls inside itself
/// hides its contents; a text cut off by its own box is told of too.
const STICKING_OUT: &str = "
    const inside = element => element.closest('.table') && !element.matches('.table');
    const named = element => element.tagName + '.' + element.className + ' ' + element.textContent.trim().slice(0, 40);
    const seen = [...document.body.querySelectorAll('*')].filter(element =>
        !element.closest('svg, .hidden, .skip') && !inside(element));
    const out = seen.filter(element => element.getBoundingClientRect().right > 320.5).map(named);
    const cut = seen.filter(element => getComputedStyle(element).overflowX === 'hidden'
        && element.scrollWidth > element.clientWidth).map(element => 'cut: ' + named(element));
    const width = document.documentElement.scrollWidth;
    return (width > 320 ? [String(width) + ' px'] : []).concat(out, cut)";

/// What is too wide on the page that is open, in each way, on a screen of 320 px. The page is left
/// as it is without them.
#[track_caller]
pub(crate) fn too_wide(browser: &Browser) -> Vec<String> {
    browser.resize(NARROW);
    browser.unfold();
    let width: u32 = browser.ask("return screen.width");
    assert_eq!(width, 320, "the page is laid out at the width of the screen");
    let mut wide = Vec::new();
    for (way, style) in WAYS {
        let lay = format!(
            "const sheet = new CSSStyleSheet(); sheet.replaceSync('{style}'); \
             document.adoptedStyleSheets = [sheet]"
        );
        browser.window.run(&lay);
        let out: Vec<String> = browser.ask(STICKING_OUT);
        wide.extend(out.into_iter().map(|what| format!("{way}: {what}")));
    }
    browser.window.run("document.adoptedStyleSheets = []");
    wide
}

#[test]
fn no_page_scrolls_sideways() {
    let browser = Browser::open(NARROW, Scripts::Allowed);
    let mut wide = Vec::new();
    for kind in kinds().iter().chain(OPEN) {
        browser.visit(&kind.address);
        let here = too_wide(&browser).into_iter();
        wide.extend(here.map(|what| format!("{} {what}", kind.address)));
    }
    assert!(wide.is_empty(), "{wide:#?}");

    // What the check is worth: one long word sticks out, and one that only large letters make long.
    for (letters, ways) in [(80, 3), (20, 1)] {
        browser.visit("/");
        let script = format!(
            "const word = document.querySelector('.site .name'); word.textContent = 'x'.repeat({letters})"
        );
        browser.window.run(&script);
        let out = too_wide(&browser);
        let noticed = WAYS.iter().filter(|(way, _)| out.iter().any(|what| what.starts_with(way)));
        assert_eq!(noticed.count(), ways, "a word of {letters} letters: {out:#?}");
    }
}

#[test]
fn the_list_of_materials_fits_a_narrow_screen() {
    let browser = Browser::open(NARROW, Scripts::Refused);
    browser.visit("/materials");
    let script = "return [...document.querySelectorAll('.table')] \
        .filter(table => table.scrollWidth > table.clientWidth).map(table => table.innerText)";
    let scrolling: Vec<String> = browser.ask(script);
    assert!(scrolling.is_empty(), "{scrolling:#?}");
    browser.visit("/threads/ba/5");
    let scrolling: Vec<String> = browser.ask(script);
    assert!(!scrolling.is_empty(), "a table of many columns scrolls, so the check sees one");
}
