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

/// The lot that the plans below are drawn by.
const SEED: u64 = 20_261_130;

/// What a plan may be asked, one of each line drawn by lot; the last is left out as often as not.
const ASKED: [(&str, &[&str]); 6] = [
    (
        "thread",
        &[
            "0ba", "2ba", "4ba", "6ba", "8ba", "10ba", "12ba", "1/8x40ME", "1/4x32ME", "1/8BSW",
            "1/4BSW", "1/2BSW", "1/4BSF", "m2", "m2.5", "m3", "m5", "m8", "m12", "4-40UNC", "R1/8",
        ],
    ),
    (
        "material",
        &[
            "free-cutting-brass",
            "gunmetal",
            "grey-cast-iron",
            "bright-mild-steel",
            "stainless-303",
            "stainless-304",
            "copper",
            "silver-steel",
            "aluminium-6082",
            "phosphor-bronze-drawn",
            "acetal",
            "sheet-brass",
        ],
    ),
    ("hole", &["through", "blind"]),
    ("owned", &["", "1-60", "1-60, A-Z", "1-13x0.5mm", "1-6x0.1mm", "1/16-1/2 in"]),
    ("spindle_speeds", &["", "130,250,500", "lathe: 60,120,240,400,700; bench drill: 600-2900"]),
    ("over", &["copper", "stainless-304", "free-cutting-brass", "grey-cast-iron", "", "", "", ""]),
];

#[test]
fn the_first_step_is_near_in_plans_drawn_by_lot_too() {
    let browser = Browser::open(PHONE, Scripts::Allowed);
    let mut state = SEED;
    let mut draw = |of: usize| -> usize {
        state =
            state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(state >> 33).unwrap() % of
    };
    let (mut seen, mut far) = (0, Vec::new());
    for _ in 0..70 {
        let fields = ASKED.map(|(name, of)| (name, of[draw(of.len())]));
        let lengths =
            ["depth", "over_thickness"].map(|name| (name, ["3mm", "6mm", "10mm"][draw(3)]));
        let mut plan = form_urlencoded::Serializer::new(String::from("/plan?"));
        plan.extend_pairs(fields.into_iter().chain(lengths).filter(|(_, value)| !value.is_empty()));
        let plan = plan.finish();
        browser.visit(&plan);
        // A hole too deep for its part, or no drill near it: the form comes back instead of steps.
        let top: Option<f64> = browser.ask(
            "return document.querySelector('.steps > li')?.getBoundingClientRect().top ?? null",
        );
        seen += usize::from(top.is_some());
        if top.is_some_and(|top| top > SCREENS * f64::from(PHONE.height)) {
            far.push(format!("{plan}: {top:?} px"));
        }
    }
    assert!(far.is_empty(), "seed {SEED}: {far:#?}");
    assert!(seen > 50, "seed {SEED}: only {seen} plans");
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
