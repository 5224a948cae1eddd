//! A plan as it is used at the machine: the first step near the top, few cautions before it, what the
//! machine is set by large enough for arm's length.

use crate::browser::{Browser, PHONE, Scripts, WIDE};

/// Screens down to the first step, at most.
const SCREENS: f64 = 1.5;
const ROOT: f64 = 16.0;

/// The holes whose drill was worked by an independent reckoning, and three with more to say: a part
/// on top, the head full, nothing given.
const PLANS: [&str; 15] = [
    "thread=5ba&material=gunmetal&depth=8mm&hole=blind",
    "thread=2ba&material=free-cutting-mild-steel&depth=10mm",
    "thread=1ba&material=bright-mild-steel&depth=6mm",
    "thread=2ba&material=bright-mild-steel&depth=6mm",
    "thread=m3&material=stainless-303&depth=3mm",
    "thread=1/4+x+40+ME&material=free-cutting-brass&depth=6.3mm",
    "thread=1/4+BSW&material=bright-mild-steel&depth=12mm",
    "thread=8ba&material=stainless-304&depth=12mm",
    "thread=10ba&material=silver-steel&depth=3mm",
    "thread=4ba&material=copper&depth=3mm",
    "thread=m2&material=phosphor-bronze-drawn&depth=4mm&hole=blind",
    "thread=m3&material=bright-mild-steel&depth=6mm&aim=easy",
    "thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=free-cutting-brass&over_thickness=4mm",
    "thread=8ba&material=stainless-304&depth=1.5mm&over=copper&over_thickness=12mm",
    "thread=m5&material=gunmetal&hole=blind&over=free-cutting-brass",
];

#[test]
fn the_first_step_is_near_and_few_cautions_stand_before_it() {
    let browser = Browser::open(PHONE, Scripts::Allowed);
    let mut far = Vec::new();
    for plan in PLANS {
        browser.visit(&format!("/plan?{plan}&series=number,metric"));
        let top: f64 =
            browser.ask("return document.querySelector('.steps > li').getBoundingClientRect().top");
        let head: usize = browser.ask("return document.querySelectorAll('main > .said').length");
        assert!(head <= 3, "{plan}: {head} cautions");
        if top > SCREENS * f64::from(PHONE.height) {
            far.push(format!("{plan}: {top} px, {head} cautions"));
        }
        let per_step: Vec<usize> = browser.ask(
            "return [...document.querySelectorAll('.steps > li')].map(step => step.querySelectorAll('.said').length)",
        );
        assert!(per_step.iter().all(|cautions| *cautions <= 2), "{plan}: {per_step:?}");
        let standing: Vec<bool> = browser
            .ask("return [...document.querySelectorAll('#cautions + details, .why')].map(fold => fold.open)");
        assert!(standing.len() > 5 && standing.iter().all(|open| !open), "{plan}: {standing:?}");
    }
    assert!(far.is_empty(), "{far:#?}");
}

#[test]
fn what_the_machine_is_set_by_is_read_at_arms_length() {
    let browser = Browser::open(PHONE, Scripts::Allowed);
    browser.visit(&format!("/plan?{}", PLANS[0]));
    let set: Vec<(String, f64)> = browser.ask(
        "return [...document.querySelectorAll('.set dd')].map(it => [it.previousElementSibling.textContent, parseFloat(getComputedStyle(it).fontSize)])",
    );
    let names: Vec<&str> = set.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(names, ["Size", "Stop", "Speed"]);
    assert!(set.iter().all(|(_, size)| *size >= 1.5 * ROOT), "{set:?}");
}

#[test]
fn depths_stand_beside_the_drawing_on_a_wide_screen_and_below_the_steps_on_a_narrow_one() {
    let browser = Browser::open(WIDE, Scripts::Allowed);
    browser.visit(&format!("/plan?{}", PLANS[0]));
    let place = "const box = name => document.querySelector(name).getBoundingClientRect();
        const [sheet, depths, steps] = ['.bench > .sheet', '.depths-part', '.steps-part'].map(box);
        return [depths.left >= sheet.right, depths.top < sheet.bottom, depths.top < steps.top]";
    assert_eq!(browser.ask::<[bool; 3]>(place), [true, true, true]);
    browser.resize(PHONE);
    assert_eq!(browser.ask::<[bool; 3]>(place), [false, false, false]);
}

#[test]
fn the_links_under_the_answer_lead_to_its_parts() {
    let browser = Browser::open(PHONE, Scripts::Refused);
    browser.visit(&format!("/plan?{}", PLANS[0]));
    for part in ["steps", "depths", "cautions", "change"] {
        browser.press(&format!(".within-page a[href='#{part}']"));
        assert!(browser.address().ends_with(&format!("#{part}")), "{}", browser.address());
        assert!(browser.window.find(&format!("#{part}")).is_shown());
    }
}
