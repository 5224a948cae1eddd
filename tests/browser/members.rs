//! The members' pages: joining and signing in on a phone without scripts, and what axe-core and a
//! narrow screen say of each page.

use holewright_server::rules::auth::second_factor::Secret;
use holewright_server::rules::clock::Clock;

use crate::access::{axe, run};
use crate::browser::{Browser, NARROW, PHONE, Scheme, Scripts};
use crate::club;
use crate::reach::too_wide;

const PASSWORD: &str = "seven brass otters dancing";

/// The secretary joins by the link of the command line, and sets up the second factor that is due.
fn join_as_secretary(browser: &Browser) {
    let link = browser.site.link(&["invite", "--secretary"]);
    browser.visit(&link);
    browser.write("#name", "Una Oakes");
    browser.write("#new_password", PASSWORD);
    browser.follow("main form button");
    assert_eq!(browser.address(), "/me/second-factor");
    let written = browser.text("code.phrase");
    browser.write("#code", &code(&written));
    browser.follow("main form button");
    assert_eq!(browser.address(), "/me");
    assert_eq!(browser.text("h1"), "Una Oakes");
}

/// The code of this half minute for a secret in letters.
fn code(written: &str) -> String {
    let letters = b"ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
    let bits: String = written
        .bytes()
        .filter_map(|letter| letters.iter().position(|known| *known == letter))
        .map(|value| format!("{value:05b}"))
        .collect();
    let bytes: Vec<u8> = (0..bits.len() / 8)
        .map(|place| u8::from_str_radix(&bits[place * 8..place * 8 + 8], 2).unwrap())
        .collect();
    Secret::kept(&bytes).unwrap().code_at(Clock::System.now()).unwrap()
}

#[test]
fn u04_a_club_is_started_and_a_member_let_in_without_scripts() {
    let browser = Browser::open(PHONE, Scripts::Refused);
    join_as_secretary(&browser);
    browser.follow("a[href='/people']");
    browser.follow("a[href='/people/invite']");
    browser.write("#meant_for", "A slip that was lost");
    browser.follow("main form button");
    let lost = browser.text(".slip code").replace(&browser.site.base, "");
    browser.visit("/people");
    browser.sees(&["A slip that was lost", "Joins as a member", "Made by Una Oakes."]);
    // The server's own for the first secretary went when she came by that of the command line.
    browser.sees_none_of(&["the first secretary"]);
    browser.follow("form[action='/people'] button");
    assert_eq!(browser.address(), "/people#slips");
    browser.sees(&["No slip is open"]);
    browser.visit(&lost);
    assert_eq!(browser.status(), 400, "a void slip is spent");

    browser.visit("/people/invite");
    browser.write("#meant_for", "Enid from the back bench");
    browser.follow("main form button");
    let slip = browser.text(".slip code").replace(&browser.site.base, "");
    assert!(slip.starts_with("/join/"), "{slip}");
    browser.visit("/me");
    browser.follow("form[action='/sign-out'] button");
    assert_eq!(browser.address(), "/sign-in");

    browser.visit(&slip);
    browser.overwrite("#name", "Enid Hathersage");
    browser.follow("main form button");
    assert!(browser.window.title().starts_with("Error: "), "no password yet");
    assert_eq!(browser.value("#name"), "Enid Hathersage");
    let phrase = browser.text(".phrase code");
    browser.press("input[name=use_phrase]");
    browser.follow("main form button");
    assert_eq!(browser.address(), "/me");
    browser.follow("form[action='/sign-out'] button");

    browser.visit("/me/password");
    assert_eq!(browser.address(), "/sign-in?next=%2Fme%2Fpassword");
    browser.write("#name", "enid hathersage");
    browser.write("#password", &phrase);
    browser.follow("main form button");
    assert_eq!(browser.address(), "/me/password", "on to the page that was asked for");
}

#[test]
fn a_moderator_on_a_phone_reaches_what_is_theirs_from_any_page() {
    const PAGE: &str = "/threads/ba/5";
    let browser = club::open(PHONE, Scripts::Refused);
    browser.join(&browser.site.link(&["invite", "--moderator", "--for", "Ralph"]), "Ralph Tansley");

    browser.visit(PAGE);
    let tops: Vec<f64> = browser.ask(
        "return ['.site > .name', '.site a[href=\"/notes\"]', '.site a[href=\"/me\"]', '.site a[href=\"/plan\"]'] \
            .map(which => document.querySelector(which).getBoundingClientRect().top)",
    );
    let beside = |top: &f64| (top - tops[0]).abs() < 1.0;
    assert!(tops[1..3].iter().all(beside), "the members' doors stand beside the name: {tops:?}");
    assert!(tops[3] > tops[0] + 40.0, "the others stand below: {tops:?}");

    for (door, doors_of_the_page) in [
        ("/notes", ["/notes/mine", "/queue"].as_slice()),
        ("/me", &["/notes/mine", "/drawer", "/queue"]),
    ] {
        for to in doors_of_the_page {
            browser.visit(PAGE);
            browser.follow(&format!(".site a[href='{door}']"));
            browser.follow(&format!("main a[href='{to}']"));
            assert_eq!(browser.address(), *to, "through {door}");
            assert_eq!(browser.status(), 200, "{to}");
        }
    }
    browser.sign_out();
    browser.visit(PAGE);
    browser.follow(".site a[href='/me']");
    assert_eq!(browser.address(), "/sign-in", "who is not signed in is asked to");
}

#[test]
fn members_pages_are_fit_for_everybody_and_for_a_narrow_screen() {
    let axe = axe();
    let browser = Browser::open(NARROW, Scripts::Allowed);
    join_as_secretary(&browser);
    let slip = browser.site.link(&["invite", "--for", "Enid"]);
    let mut found = Vec::new();
    for address in [
        "/me",
        "/me/password",
        "/me/second-factor",
        "/me/feed",
        "/me/leave",
        "/people",
        "/people/1",
        "/people/invite",
        "/people/sheet",
        "/people/club",
        "/reset",
        "/people/acts",
        "/prove",
        &slip,
    ] {
        browser.visit(address);
        assert_eq!(browser.status(), 200, "{address}");
        look(&browser, address, &axe, &mut found);
    }
    browser.visit("/people/invite");
    browser.follow("main form button");
    look(&browser, "a slip", &axe, &mut found);
    browser.visit("/people/sheet");
    let long = "Olive Brandreth of the long name and of many parts";
    browser.write("#names", &format!("Percy Wainscott\n{long}"));
    browser.follow("main form button");
    browser.sees(&["Percy Wainscott", "Olive Brandreth", "Point your camera here."]);
    look(&browser, "a sheet of slips", &axe, &mut found);
    browser.on_paper(true);
    let cut: Vec<bool> = browser.ask(
        "return [...document.querySelectorAll('.slips .slip')]
            .map(slip => slip.scrollHeight > slip.clientHeight + 1)",
    );
    assert_eq!(cut, [false; 2], "a slip that is cut off has no address");
    browser.on_paper(false);
    browser.visit("/people/1");
    browser.follow("form:has(input[value='read-out']) button");
    browser.sees(&["Read this out to Una Oakes"]);
    look(&browser, "a code to read out", &axe, &mut found);
    browser.visit("/me/second-factor");
    browser.follow("form:has(input[value='spare']) button");
    browser.sees(&["Your spare codes"]);
    look(&browser, "spare codes", &axe, &mut found);
    browser.visit("/me/password");
    browser.follow("main form button");
    look(&browser, "a form to put right", &axe, &mut found);
    assert!(found.is_empty(), "{} found: {found:#?}", found.len());
}

fn look(browser: &Browser, place: &str, axe: &str, found: &mut Vec<String>) {
    let wide = too_wide(browser).into_iter();
    found.extend(wide.map(|what| format!("{place}, {what}")));
    browser.window.run(axe);
    for scheme in Scheme::BOTH {
        browser.prefer(scheme);
        let here = run(browser);
        found.extend(here.into_iter().map(|what| format!("{place}, {}: {what}", scheme.name())));
    }
}
