//! A club's week on a phone, with scripts refused: what each errand costs in taps and letters, and that each
//! page says what was done. A field counts a tap before anything is typed into it.

use std::cell::Cell;

use crate::browser::{Browser, PHONE, Scripts};
use crate::club;

const SECRETARY: &str = "Una Oakes";
const MODERATOR: &str = "Ralph Tansley";
const INSPECTOR: &str = "Ina Flint";
const MEMBER: &str = "Enid Hathersage";

/// A hand at the phone, which counts what it does.
struct Hand<'a> {
    browser: &'a Browser,
    errand: &'static str,
    taps: Cell<usize>,
    letters: Cell<usize>,
}

impl<'a> Hand<'a> {
    /// An errand that begins at this page.
    fn begin(browser: &'a Browser, errand: &'static str, at: &str) -> Self {
        browser.visit(at);
        assert_eq!(browser.status(), 200, "{errand} begins at {at}");
        Self { browser, errand, taps: Cell::new(0), letters: Cell::new(0) }
    }

    /// Taps what leads to another page.
    #[track_caller]
    fn tap(&self, selector: &str) {
        self.taps.set(self.taps.get() + 1);
        self.browser.follow(selector);
    }

    #[track_caller]
    fn write(&self, selector: &str, text: &str) {
        self.taps.set(self.taps.get() + 1);
        self.letters.set(self.letters.get() + text.chars().count());
        self.browser.write(selector, text);
    }

    /// The page says at its head what was done.
    #[track_caller]
    fn told(&self, words: &str) {
        let told = self.browser.text("main > .done");
        assert!(told.contains(words), "{} ends with “{told}”, not with “{words}”", self.errand);
    }

    /// The errand is done, with so much at most.
    #[expect(clippy::print_stdout, reason = "what each errand costs is asked for")]
    #[track_caller]
    fn end(self, taps: usize, letters: usize) {
        let (errand, tapped, typed) = (self.errand, self.taps.get(), self.letters.get());
        println!("{errand}: {tapped} taps of {taps}, {typed} letters of {letters}");
        assert!(tapped <= taps, "{errand}: {tapped} taps, {taps} are allowed");
        assert!(typed <= letters, "{errand}: {typed} letters, {letters} are allowed");
    }
}

/// Fourteen tips that were printed before, as a table.
fn fourteen() -> String {
    let metals =
        ["gunmetal", "cast bronze", "silver steel", "brass", "copper", "cast iron", "acetal"];
    let rows = metals.iter().flat_map(|metal| {
        [
            format!("Drilling {metal},It went well and the drill cleared every turn.,\"Newsletter 3, 1987\",{metal}\n"),
            format!("Reaming {metal},Slow and with paraffin: it grabs where it breaks through.,\"Newsletter 9, 1991\",{metal}\n"),
        ]
    });
    format!("title,text,source,material\n{}", rows.collect::<String>())
}

#[test]
fn a_week_of_a_club_in_taps() {
    let browser = club::open(PHONE, Scripts::Refused);
    let slip = |arguments: &[&str]| browser.site.link(arguments);
    let secretary = slip(&["invite", "--secretary"]);
    let moderator = slip(&["invite", "--moderator", "--for", MODERATOR]);
    let inspector = slip(&["invite", "--inspector", "--for", INSPECTOR]);

    browser.join(&secretary, SECRETARY);
    let hand = Hand::begin(&browser, "An invitation of one", "/me");
    hand.tap("main a[href='/people/invite']");
    hand.write("#meant_for", MEMBER);
    hand.tap("main form button");
    browser.sees(&["Slip to join with", MEMBER, "Point your camera here"]);
    let member = browser.text(".slip code").replace(&browser.site.base, "");
    hand.end(3, 20);

    browser.visit("/notes/import");
    browser.write("#tips", &fourteen());
    browser.follow("main form button");
    assert!(browser.text("main > .done").contains("14 tips are sent in."));
    browser.sign_out();

    browser.join(&member, MEMBER);
    let hand = Hand::begin(&browser, "A draft", "/");
    hand.tap("header a[href='/notes']");
    hand.tap("main a[href='/notes/new']");
    hand.write("#title", "Reaming cast bronze");
    hand.write("#text", "It grabs.");
    hand.tap("button[value=draft]");
    hand.told("Your draft is kept. Only you see it.");
    hand.end(6, 40);
    browser.sign_out();

    browser.join(&moderator, MODERATOR);
    decided(&browser);
    browser.sign_out();

    let hand = Hand::begin(&browser, "A note on bronze", "/");
    hand.write("#q", "bronze grabs");
    hand.tap("form[action='/search'] button");
    hand.tap("main a[href^='/notes/']");
    browser.sees(&[
        "Reaming cast bronze",
        "it grabs where it breaks through",
        "Newsletter 9, 1991",
    ]);
    let note = browser.address();
    hand.end(3, 12);

    browser.sign_in(MEMBER, "/notes/mine");
    let hand = Hand::begin(&browser, "A verdict", &note);
    hand.tap("button[name=found][value=worked]");
    hand.told("What you found is counted.");
    browser.sees(&["Worked for 1 member."]);
    hand.end(2, 0);
    browser.visit("/notes/new");
    browser.write("#title", "Seats of a safety valve");
    browser.write("#text", "Lapped by hand.");
    browser.follow("button[value=send]");
    // Where one lands: at the row of the note.
    let told = browser.text("main .done");
    assert!(told.contains("Your note is sent in. An inspector reads it first;"), "{told}");
    browser.sign_out();

    browser.join(&inspector, INSPECTOR);
    let hand = Hand::begin(&browser, "An inspector’s note", "/me");
    hand.tap("main a[href='/queue']");
    hand.tap("details[open] button[value=pass]");
    hand.told("Seats of a safety valve is shown.");
    hand.end(3, 0);
    browser.sign_out();
    browser.visit("/notes?q=safety+valve");
    browser.follow(".doors a[href^='/notes/']");
    browser.sees(&["Lapped by hand.", "inspector of the club read"]);
}

/// Fourteen decisions: most are shown, some go back at one tap, one with words of the moderator's own.
fn decided(browser: &Browser) {
    let hand = Hand::begin(browser, "Fourteen decisions", "/me");
    hand.tap("main a[href='/queue']");
    let mut titles = Vec::new();
    for turn in 0..14 {
        let open = "details.queued[open]";
        let title = browser.text(&format!("{open} summary h2"));
        let ready = format!("{open} .ready button");
        let told = match turn {
            4 => {
                hand.write(
                    &format!("{open} textarea"),
                    "Which drill, and did the hole come out to size?",
                );
                hand.tap(&format!("{open} button[value=change]"));
                "is back with its author"
            }
            5 | 9 => {
                hand.tap(&format!("{ready}[value=depth]"));
                "is back with its author"
            }
            7 => {
                hand.tap(&format!("{ready}[value=told]"));
                "is declined"
            }
            _ => {
                hand.tap(&format!("{open} button[value=pass]"));
                "is shown"
            }
        };
        hand.told(&title);
        hand.told(told);
        titles.push(title);
    }
    browser.sees(&["Nothing waits."]);
    titles.sort();
    titles.dedup();
    assert_eq!(titles.len(), 14, "each was decided once: {titles:?}");
    hand.end(16, 60);
}
