//! A form filled in wrongly: nothing typed is lost, and the reader is taken to what is wrong.

use crate::browser::{Browser, PHONE, Scripts};

#[test]
fn bad_input_is_kept_and_the_summary_has_the_focus() {
    let browser = Browser::open(PHONE, Scripts::Refused);
    browser.visit("/plan");
    browser.write("#thread", "99 <b>BA");
    browser.press("#material option[value=gunmetal]");
    browser.press("input[name=hole][value=blind]");
    browser.write("#depth", "eight");
    browser.press("main form summary");
    browser.write("#owned", "rubbish");
    browser.press("#fit option[value=free]");
    browser.follow("form[action='/plan'] button");

    assert_eq!(browser.status(), 422);
    assert!(browser.window.title().starts_with("Error:"));
    browser.until("the focus", || browser.focused().as_deref() == Some("errors"));
    assert_eq!(browser.value("#thread"), "99 <b>BA");
    assert_eq!(browser.value("#material"), "gunmetal");
    assert_eq!(browser.value("#depth"), "eight");
    assert_eq!(browser.value("#owned"), "rubbish");
    assert_eq!(browser.value("#fit"), "free");
    assert!(browser.window.find("input[name=hole][value=blind]").is_chosen());
    assert!(browser.window.find("#owned").is_shown(), "its fold stands open");

    let links = browser.window.find_all("#errors li a");
    assert_eq!(links.len(), 3, "one link for each of the three mistakes");
    for link in links {
        let field = link.attribute("href").unwrap().replace('#', "");
        let message = link.text();
        link.press();
        browser.until("the focus", || browser.focused().as_deref() == Some(&field));
        assert!(browser.text(&format!("#{field}-error")).starts_with(&message), "{message}");
        let marked = browser.window.find(&format!("#{field}")).attribute("aria-invalid");
        assert_eq!(marked.as_deref(), Some("true"), "{field}");
    }

    // Put right in place, it plans.
    for (field, right) in [("#thread", "5 BA"), ("#depth", "8"), ("#owned", "1-60")] {
        browser.window.find(field).clear();
        browser.write(field, right);
    }
    browser.follow("form[action='/plan'] button");
    assert_eq!(browser.status(), 200);
    assert_eq!(browser.text(".answer .figure strong"), "No. 36");
}
