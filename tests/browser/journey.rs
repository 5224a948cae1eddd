//! From the home page to a plan with a phone in one hand, pages running no script.

use crate::browser::{Browser, PHONE, Scripts};

const TELLTALE: &str = "data:text/html,<title>silent</title><script>document.title='ran'</script>";

#[test]
fn scripts_are_refused_where_a_test_says_so() {
    for (scripts, title) in [(Scripts::Refused, "silent"), (Scripts::Allowed, "ran")] {
        let browser = Browser::open(PHONE, scripts);
        browser.window.go(TELLTALE);
        assert_eq!(browser.window.title(), title);
    }
}

#[test]
fn a_thread_is_found_and_its_hole_planned() {
    let browser = Browser::open(PHONE, Scripts::Refused);
    browser.visit("/");
    browser.write("#q", "5ba");
    browser.follow("form[action='/search'] button");
    assert_eq!(browser.address(), "/threads/ba/5");
    assert_eq!(browser.text("h1"), "5 BA");

    browser.press("#material option[value=gunmetal]");
    browser.press("input[name=hole][value=blind]");
    browser.write("#depth", "8 mm");
    browser.follow("form[action='/plan'] button");
    let plan = browser.address();
    assert!(plan.starts_with("/plan?thread="), "{plan}");
    assert_eq!(browser.text(".answer .label"), "Tapping size");
    assert_eq!(browser.text(".answer .figure strong"), "No. 36");
    assert!(browser.text(".steps").contains("No. 36"), "the steps name the drill");

    // The address is the plan: opened afresh it says the same, and going back loses nothing.
    browser.visit(&plan);
    assert_eq!(browser.text(".answer .figure strong"), "No. 36");
    browser.press("#change > summary");
    assert_eq!(browser.value("#depth"), "8 mm");
    assert_eq!(browser.value("#material"), "gunmetal");
}

#[test]
fn a_drawer_is_filled_named_on_a_plan_and_switched_off() {
    const PLAN: &str = "/plan?thread=5+BA&material=gunmetal&hole=blind&depth=8mm";
    let browser = Browser::open(PHONE, Scripts::Refused);
    browser.visit("/");
    browser.follow(".title-block a[href='/drawer']");
    assert_eq!(browser.text("h1"), "My drawer");
    browser.press("input[name=drill_set][value='1-6x0.1mm']");
    browser.write("#drills", "spoons");
    browser.follow("#keep");
    assert_eq!(browser.status(), 422);
    assert!(browser.window.title().starts_with("Error:"));
    assert_eq!(browser.value("#drills"), "spoons");

    // What was ticked is kept over the error; put right, the form is taken.
    browser.window.find("#drills").clear();
    browser.write("#drills", "2.05 mm");
    browser.write("#speeds", "350, 2000");
    browser.follow("#keep");
    assert_eq!((browser.status(), browser.address().as_str()), (200, "/drawer"));
    assert!(browser.text(".below").starts_with("In use"), "{}", browser.text(".below"));
    assert!(browser.text(".figures").contains("1–6 × 0.1 mm, 2.05 mm (52 in all)"));

    browser.visit(PLAN);
    assert!(browser.text(".drawer").contains("By your drawer: drills 1–6 × 0.1 mm"));
    assert_eq!(browser.text(".answer .figure strong"), "2.7 mm");
    browser.follow(".drawer a[href='/drawer']");
    browser.follow("button[value=off]");
    assert!(browser.text(".below").starts_with("Switched off"));
    browser.visit(PLAN);
    assert_eq!(browser.text(".answer .figure strong"), "No. 36");
    let named: bool = browser.ask("return document.querySelector('.drawer') !== null");
    assert!(!named, "a drawer that is switched off is not named");
}

#[test]
fn the_drill_chart_is_cut_down_and_a_row_linked_to() {
    let browser = Browser::open(PHONE, Scripts::Refused);
    browser.visit("/");
    browser.follow(".site a[href='/drills']");
    assert_eq!(browser.text("h1"), "Drill chart");
    let whole = diameters(&browser).len();
    assert!(whole > 300, "{whole} drills");

    browser.press("main summary");
    browser.write("#from", "2 mm");
    browser.write("#to", ".1 in");
    browser.follow("form[action='/drills'] button");
    let cut = diameters(&browser);
    assert!((10..40).contains(&cut.len()), "{} drills from 2 to 2.54 mm", cut.len());
    assert!(cut.is_sorted() && cut[0] >= 2.0 && cut[cut.len() - 1] <= 2.54, "{cut:?}");

    let row = "tr#number-46";
    assert!(!browser.window.find(&format!("{row} .cue")).is_shown());
    browser.press(&format!("{row} a[href='#number-46']"));
    browser.until("the row", || browser.address().ends_with("#number-46"));
    assert_eq!(browser.text(&format!("{row} .cue")), "this one");
    browser.follow(&format!("{row} th a"));
    assert_eq!(browser.address(), "/drills/number/46");
    assert_eq!(browser.text("h1"), "No. 46 drill");
}

/// The millimetres of each row of the chart.
fn diameters(browser: &Browser) -> Vec<f64> {
    let column = "return [...document.querySelectorAll('tbody td:nth-child(2)')] \
        .map(cell => Number(cell.textContent))";
    browser.ask(column)
}
