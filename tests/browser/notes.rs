//! A note from the slip that let its author in to the history of its wordings, on a phone, with
//! scripts refused and allowed.

use crate::browser::{Browser, PHONE, Scripts};
use crate::club;

const SECRETARY: &str = "Una Oakes";
const AUTHOR: &str = "Enid Hathersage";
const MODERATOR: &str = "Ralph Tansley";
const OTHER: &str = "Olive Birch";

const TITLE: &str = "Tapping 4 BA in a gunmetal casting";
const FIRST: &str = "Drilled **No. 32**, dry. The tap squealed in the thistle-shaped boss.";
const CORRECTION: &str = "Use paraffin: dry, the second tap broke.";
const SECOND: &str =
    "Drilled **No. 32**, with paraffin. The tap ran free in the thistle-shaped boss.";

/// Where readers find a note that is shown.
const PLACES: [&str; 5] = [
    "/materials/gunmetal",
    "/threads/ba/4",
    "/search?q=thistle",
    "/notes",
    "/notes?q=thistle&on=gunmetal",
];

#[test]
fn a_note_goes_its_whole_way_without_scripts() {
    whole_way(Scripts::Refused);
}

#[test]
fn a_note_goes_its_whole_way_with_scripts_allowed() {
    whole_way(Scripts::Allowed);
}

fn whole_way(scripts: Scripts) {
    let browser = club::open(PHONE, scripts);
    let [author, moderator, other] = invited(&browser);

    browser.join(&author, AUTHOR);
    written_on_a_material_page(&browser);
    waits(&browser);

    browser.join(&moderator, MODERATOR);
    passed(&browser, &[TITLE, AUTHOR, "thistle-shaped boss"]);
    browser.sign_out();
    shown_where_it_belongs(&browser);

    browser.join(&other, OTHER);
    confirmed(&browser);
    browser.sign_out();

    browser.sign_in(MODERATOR, "/queue");
    corrected(&browser);
    browser.sign_out();
    struck(&browser);

    mended(&browser);
    browser.sign_in(MODERATOR, "/queue");
    passed(&browser, &[TITLE, "What changes", "As it would stand"]);
    browser.sign_out();
    its_history_is_read(&browser);
}

/// The secretary joins by the link of the command line and makes three slips: for the author, the
/// moderator and another member.
fn invited(browser: &Browser) -> [String; 3] {
    browser.join(&browser.site.link(&["invite", "--secretary"]), SECRETARY);
    let slips = [(AUTHOR, "member"), (MODERATOR, "moderator"), (OTHER, "member")];
    let links = slips.map(|(name, rights)| {
        browser.visit("/people");
        browser.follow("main a[href='/people/invite']");
        browser.write("#meant_for", name);
        if rights == "moderator" {
            browser.press("input[name=moderator]");
        }
        browser.follow("main form button");
        browser.sees(&["Slip to join with", name, rights]);
        let link = browser.text(".slip code").replace(&browser.site.base, "");
        assert!(link.starts_with("/join/"), "the slip of {name} shows {link}");
        link
    });
    browser.sign_out();
    links
}

/// From the material's page by its link to the form, looked at first, then sent in.
fn written_on_a_material_page(browser: &Browser) {
    browser.visit("/materials/gunmetal");
    browser.sees(&["What members found", "No note yet."]);
    browser.follow("#main a[href='/notes/new?on=materials/gunmetal']");
    assert_eq!(browser.text("h1"), "Write a note");
    assert_eq!(browser.value("#material"), "Gunmetal", "the page it comes from is known");
    assert_eq!(browser.value("#on"), "Gunmetal");
    browser.write("#title", TITLE);
    browser.write("#text", FIRST);
    browser.write("#thread", "4 BA");
    browser.write("#drill", "No. 32");
    browser.write("#machine", "bench drill");

    browser.follow("button[value=preview]");
    browser.sees(&["Nothing is saved yet", TITLE, "The tap squealed"]);
    assert_eq!(browser.text("section[aria-labelledby=preview] .note-text strong"), "No. 32");
    for (field, typed) in [("#title", TITLE), ("#text", FIRST), ("#machine", "bench drill")] {
        assert_eq!(browser.value(field).trim(), typed, "kept over the preview: {field}");
    }
    browser.follow("button[value=send]");
    assert_eq!(browser.address(), "/notes/mine#note-1");
}

/// Its author sees that it waits; a reader who is not signed in sees nothing of it.
fn waits(browser: &Browser) {
    let row = browser.text("#note-1");
    assert!(row.contains(TITLE) && row.contains("Waiting for a moderator."), "{row}");
    browser.follow("#note-1 > a");
    browser.sees(&[TITLE, "Waiting for a moderator."]);
    browser.sign_out();

    for place in PLACES {
        browser.visit(place);
        browser.sees_none_of(&[TITLE, AUTHOR]);
    }
    browser.visit("/notes/1");
    assert_eq!(browser.status(), 404, "a waiting note is nobody else's");
    browser.sees_none_of(&[TITLE, AUTHOR, "thistle"]);
}

/// The moderator finds it in the queue, reads it and shows it.
fn passed(browser: &Browser, read: &[&str]) {
    browser.visit("/me");
    browser.follow("main a[href='/queue']");
    browser.sees(read);
    browser.follow("form[action='/queue/1'] button[value=pass]");
    assert_eq!(browser.address(), "/queue");
    browser.sees(&["Nothing waits."]);
}

fn shown_where_it_belongs(browser: &Browser) {
    for place in PLACES {
        browser.visit(place);
        browser.sees(&[TITLE, AUTHOR, "The tap squealed", "Nobody else has said yet"]);
    }
    browser.visit("/threads/ba/4");
    browser.sees(&["Below it is members’ experience, which alters no figure."]);
    browser.follow("#main .experience a[href='/notes/1']");
    assert_eq!(browser.text("h1"), TITLE);
    browser.sees(&["By Enid Hathersage", "not a figure of the tables", "bench drill"]);
    browser.follow(".note-text a[href='/drills/number/32']");
    assert_eq!(browser.text("h1"), "No. 32 drill", "a size in a note leads to its page");
}

/// Another member says that it worked, in what material and at what size.
fn confirmed(browser: &Browser) {
    browser.visit("/notes/1");
    browser.press("details:has(form[action='/notes/1/verdict']) > summary");
    browser.press("input[name=found][value=worked]");
    browser.write("#material", "LG2");
    browser.write("#size", "4 BA");
    browser.follow("form[action='/notes/1/verdict'] button[value=count]");
    assert_eq!(browser.address(), "/notes/1");
    browser.sees(&["Worked for 1 member.", "Worked: LG2, 4 BA"]);
    browser.visit("/materials/gunmetal");
    browser.sees(&[TITLE, "Worked for 1 member."]);
}

fn corrected(browser: &Browser) {
    browser.visit("/materials/gunmetal");
    browser.follow("#main .experience a[href='/notes/1']");
    browser.press("details:has(form[action='/notes/1/correct']) > summary");
    browser.write("#correction", CORRECTION);
    browser.follow("form[action='/notes/1/correct'] button");
    assert_eq!(browser.address(), "/notes/1");
}

/// The correction stands above the text, which can still be read, struck out.
fn struck(browser: &Browser) {
    browser.visit("/notes/1");
    browser.sees(&["Correction, ", CORRECTION, "The text below is what was corrected."]);
    let old = browser.text(".note-text del");
    assert!(old.contains("The tap squealed"), "struck is: {old}");
    let line: String = browser.ask(
        "return getComputedStyle(document.querySelector('.note-text del')).textDecorationLine",
    );
    assert_eq!(line, "line-through");
    let [correction, text]: [f64; 2] = browser.ask(
        "return ['main .warning', 'main del'].map(which => \
            document.querySelector(which).getBoundingClientRect().top)",
    );
    assert!(correction < text, "the correction at {correction} px, what it corrects at {text} px");
    for place in ["/materials/gunmetal", "/threads/ba/4"] {
        browser.visit(place);
        let members = browser.text("#main .experience");
        assert!(members.contains(&format!("Corrected: {CORRECTION}")), "{place}: {members}");
        assert!(!members.contains("The tap squealed"), "{place} shows what is struck: {members}");
    }
}

/// The author puts the wording right; the corrected one stays until the new one is passed.
fn mended(browser: &Browser) {
    browser.sign_in(AUTHOR, "/notes/mine");
    browser.follow("#note-1 a[href='/notes/1/edit']");
    assert_eq!(browser.value("#text").trim(), FIRST);
    browser.overwrite("#text", SECOND);
    browser.follow("button[value=send]");
    let row = browser.text("#note-1");
    assert!(row.contains("The earlier wording is shown meanwhile."), "{row}");
    browser.sign_out();
    browser.visit("/notes/1");
    browser.sees(&[CORRECTION, "The tap squealed"]);
    browser.sees_none_of(&["The tap ran free"]);
}

/// Anybody reads what changed: taken out struck, put in underlined.
fn its_history_is_read(browser: &Browser) {
    browser.visit("/notes/1");
    browser.sees(&["The tap ran free"]);
    browser.sees_none_of(&["The tap squealed"]);
    browser.follow("main a[href='/notes/1/history']");
    browser.sees(&[TITLE, "as first shown", "The tap squealed"]);
    for (mark, line, word) in
        [("del", "line-through", "squealed"), ("ins", "underline", "paraffin")]
    {
        let (text, drawn): (String, String) = browser.ask(&format!(
            "const marks = [...document.querySelectorAll('.difference {mark}')]; \
             return [marks.map(mark => mark.textContent).join(' '), \
                 marks.length ? getComputedStyle(marks[0]).textDecorationLine : 'none']"
        ));
        assert!(text.contains(word), "{mark} holds: {text}");
        assert_eq!(drawn, line, "{mark}");
    }
}
