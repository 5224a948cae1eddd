//! What the browser complains of: refused by the policy, missing, or not understood.

use crate::browser::{Browser, PHONE, Scripts};
use crate::kinds::kinds;
use crate::open::OPEN;

#[test]
fn no_page_gives_the_browser_cause_to_complain() {
    let browser = Browser::open(PHONE, Scripts::Allowed);
    let mut complaints = Vec::new();
    for kind in kinds().iter().chain(OPEN) {
        browser.visit(&kind.address);
        assert_eq!(browser.status(), kind.status, "{}", kind.address);
        let page = format!("{}{}", browser.site.base, kind.address);
        // Of a page that answers 404 or 422 the browser says so, once.
        let expected = format!("{page} - Failed to load resource");
        let said = browser.window.console();
        complaints.extend(
            said.into_iter().filter(|line| kind.status == 200 || !line.contains(&expected)),
        );
    }
    assert!(complaints.is_empty(), "{complaints:#?}");

    // What the check is worth: an inline style is refused, and heard of.
    let script = "document.body.setAttribute('style', 'color: red'); \
        document.body.append(Object.assign(new Image(), {src: 'https://elsewhere.test/x.png'}))";
    browser.window.run(script);
    let heard = browser.window.console();
    let refused = heard.iter().filter(|line| line.contains("Content Security Policy"));
    assert_eq!(refused.count(), 2, "{heard:#?}");
}
