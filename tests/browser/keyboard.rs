//! The Tab key alone: the skip link comes first, and the focus can always be seen.

use thirtyfour::Key;

use crate::browser::{Browser, PHONE, Scripts};

/// How the focus shows, and where it stands in the window.
const FOCUS: &str = "
    const at = document.activeElement, box = at.getBoundingClientRect();
    const style = getComputedStyle(at);
    const line = style.outlineStyle === 'solid' ? parseFloat(style.outlineWidth) : 0;
    const seen = box.width > 0 && box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
    return [line >= 2 ? '' : 'no outline', seen ? '' : 'out of sight']
        .filter(Boolean).map(what => `${what}: ${at.outerHTML.slice(0, 90)}`)";

#[test]
fn the_focus_goes_through_the_page_in_sight() {
    let browser = Browser::open(PHONE, Scripts::Refused);
    for address in ["/", "/threads/ba/5", "/plan?thread=5ba&material=gunmetal"] {
        browser.visit(address);
        let mut visited = 0;
        let mut before_the_page = 0;
        loop {
            tab(&browser);
            let tag: String = browser.ask("return document.activeElement.tagName");
            // Behind a page's last stop stands the browser's own bar, and a new page may begin there.
            if tag == "BODY" && visited == 0 && before_the_page < 3 {
                before_the_page += 1;
                continue;
            }
            if tag == "BODY" || visited == 200 {
                break;
            }
            let wrong: Vec<String> = browser.ask(FOCUS);
            assert!(wrong.is_empty(), "{address}: {wrong:?}");
            visited += 1;
        }
        assert!(visited > 10, "{address}: only {visited} stops");
    }
}

#[test]
fn the_skip_link_comes_first_and_skips() {
    let browser = Browser::open(PHONE, Scripts::Refused);
    browser.visit("/threads/ba/5");
    tab(&browser);
    let skip = browser.window.active();
    assert_eq!(skip.text(), "Skip to the answer");
    browser.window.press(Key::Enter);
    browser.until("the main part", || browser.address().ends_with("#main"));
    tab(&browser);
    let inside: bool = browser.ask("return document.activeElement.closest('main') !== null");
    assert!(inside, "the next stop is in the page, not in the head");
}

fn tab(browser: &Browser) {
    browser.window.press(Key::Tab);
}
