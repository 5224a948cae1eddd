//! What is pressed with an oily thumb is large enough: 44 px each way, 24 for a link in a sentence.

use crate::browser::{Browser, PHONE, Scripts};
use crate::kinds::kinds;
use crate::open::OPEN;

/// Every target too small, with its size. A tick or a pick is as large as its label. A link in a
/// sentence is one that stands in a paragraph or a list item with words around it.
pub(crate) const SMALL: &str = "
    const all = document.querySelectorAll('a[href], button, input:not([type=hidden]), select, summary');
    const small = [];
    for (const target of all) {
        if (target.matches('.skip')) continue;
        const box = (target.closest('label') ?? target).getBoundingClientRect();
        if (box.width === 0) continue;
        const around = target.closest('main p, main li');
        const inline = getComputedStyle(target).display === 'inline'
            && around && around.textContent.trim() !== target.textContent.trim();
        const least = inline ? [24, 24] : [44, 44];
        if (box.width < least[0] || box.height < least[1])
            small.push(`${target.outerHTML.slice(0, 90)}: ${box.width.toFixed(1)} x ${box.height.toFixed(1)}`);
    }
    return small";

#[test]
fn every_target_is_large_enough() {
    let browser = Browser::open(PHONE, Scripts::Allowed);
    let mut small = Vec::new();
    for kind in kinds().iter().chain(OPEN) {
        browser.visit(&kind.address);
        browser.unfold();
        let found: Vec<String> = browser.ask(SMALL);
        small.extend(found.into_iter().map(|what| format!("{}: {what}", kind.address)));
    }
    assert!(small.is_empty(), "{small:#?}");

    // What the check is worth: a bare link and a bare button are too small.
    let script = "document.body.innerHTML = '<a href=\"/\">x</a><button>x</button>'; \
        document.querySelector('link[rel=stylesheet]').disabled = true";
    browser.window.run(script);
    assert_eq!(browser.ask::<Vec<String>>(SMALL).len(), 2);
}
