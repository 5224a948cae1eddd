//! The pages of the notes: what axe-core, a narrow screen and a thumb say of each, and pictures.

use crate::access::{axe, run};
use crate::browser::{Browser, NARROW, Scheme, Scripts};
use crate::club;
use crate::pictures;
use crate::reach::too_wide;
use crate::targets::SMALL;

const MODERATOR: &str = "Ralph Tansley";
const AUTHOR: &str = "Enid Hathersage";

/// What is found wrong on the way.
struct Look<'a> {
    browser: &'a Browser,
    axe: String,
    found: Vec<String>,
}

impl Look<'_> {
    /// An address, which must answer with this status.
    #[track_caller]
    fn visit(&mut self, address: &str, status: u16) {
        self.browser.visit(address);
        assert_eq!(self.browser.status(), status, "{address}: {}", self.browser.text("main"));
        self.at(address);
    }

    /// The page that is open.
    fn at(&mut self, place: &str) {
        let browser = self.browser;
        let wide = too_wide(browser).into_iter();
        self.found.extend(wide.map(|what| format!("{place}, {what}")));
        browser.window.run(&self.axe);
        for scheme in Scheme::BOTH {
            browser.prefer(scheme);
            let here = run(browser).into_iter();
            self.found.extend(here.map(|what| format!("{place}, {}: {what}", scheme.name())));
        }
        let small: Vec<String> = browser.ask(SMALL);
        self.found.extend(small.into_iter().map(|what| format!("{place}, too small: {what}")));
    }
}

#[test]
fn pages_of_notes_are_fit_for_everybody_and_for_a_narrow_screen() {
    let browser = club::open(NARROW, Scripts::Allowed);
    let mut look = Look { browser: &browser, axe: axe(), found: Vec::new() };
    let author = browser.site.link(&["invite", "--for", AUTHOR]);
    let moderator = browser.site.link(&["invite", "--moderator", "--for", MODERATOR]);

    browser.join(&author, AUTHOR);
    look.visit("/notes/mine", 200);
    look.visit("/notes/new?on=materials/gunmetal", 200);
    browser.follow("button[value=send]");
    look.at("a form to put right");
    fill(&browser, "Tapping 4 BA in gunmetal");
    browser.follow("button[value=preview]");
    look.at("a preview");
    pictures::take(&browser, "note-preview");
    browser.follow("button[value=send]");
    look.at("what waits, for its author");
    look.visit("/notes/1", 200);

    // A second note, sent when the sign-in has ended.
    browser.visit("/notes/new?on=materials/gunmetal");
    fill(&browser, "A second note");
    browser.window.tell("Network.clearBrowserCookies", &serde_json::json!({}));
    browser.follow("button[value=send]");
    assert_eq!(browser.status(), 401);
    look.at("signed out with a note in hand");

    browser.join(&moderator, MODERATOR);
    look.visit("/queue", 200);
    pictures::take(&browser, "queue");
    browser.follow("button[value=decline]");
    look.at("a decision without its reason");
    look.visit("/queue/1/mend", 200);
    browser.visit("/queue");
    browser.follow("button[value=drill]");
    look.at("a decision that can be undone");
    browser.sees(&["Tapping 4 BA in gunmetal is back with its author.", "Nothing waits."]);
    browser.follow("button[value=undo]");
    browser.sees(&["The note stands as before.", "1 waits: 1 new."]);
    browser.follow("button[value=pass]");
    look.at("an empty queue");
    look.visit("/queue/decided", 200);
    look.visit("/queue/remarks", 200);
    look.visit("/notes/compare?thread=4+BA&material=gunmetal", 200);
    look.visit("/notes/1", 200);
    browser.write("#correction", "Use paraffin: dry, the second tap broke.");
    browser.follow("form[action='/notes/1/correct'] button");
    look.at("a corrected note");
    browser.visit("/notes/1");
    pictures::take(&browser, "note");
    look.visit("/materials/gunmetal", 200);
    browser.visit("/materials/gunmetal#members");
    pictures::take(&browser, "notes-on-material");
    look.visit("/search?q=squealed", 200);
    look.visit("/notes?q=squealed", 200);
    // The search and its filters stand on the first screen, whatever was found.
    let bottom = "return Math.max(...[...document.querySelectorAll('#q, main form > details')]
        .map(it => it.getBoundingClientRect().bottom)) / innerHeight";
    let screens: f64 = browser.ask(bottom);
    assert!(screens <= 1.0, "the search ends {screens} screens down");
    browser.sign_out();

    browser.sign_in(AUTHOR, "/notes/1/edit");
    look.at("a note to change");
    browser.overwrite("#text", "Drilled **No. 32**, with paraffin.");
    browser.follow("button[value=send]");
    browser.sign_out();
    browser.sign_in(MODERATOR, "/queue");
    browser.sees(&["1 waits: 1 new wording."]);
    look.at("a change in the queue");
    pictures::take(&browser, "queue-change");
    browser.write("#reason-1", "Say which paraffin.");
    browser.follow("button[value=change]");
    browser.sign_out();
    browser.sign_in(AUTHOR, "/notes/1/edit");
    browser.sees(&["What you were asked to change", "Say which paraffin."]);
    look.at("a note to change as asked");
    browser.follow("button[value=send]");
    browser.sign_out();
    browser.sign_in(MODERATOR, "/queue");
    browser.sees(&["asked for a change", "Say which paraffin.", "What changed since"]);
    browser.follow("button[value=pass]");
    look.visit("/notes/1/history", 200);
    pictures::take(&browser, "note-history");

    browser.visit("/notes/1");
    browser.unfold();
    browser.write("#danger", "It can splash.");
    browser.follow("form[action='/notes/1/report'] button");
    look.visit("/queue", 200);
    browser.write("#reason-1", "It splashed.");
    browser.follow("button[value=withdraw]");
    browser.sign_out();
    look.visit("/notes/1", 410);

    let found = look.found;
    assert!(found.is_empty(), "{} found: {found:#?}", found.len());
}

/// A note with a list, code and a quotation, each with a word that is nearly as wide as the screen.
fn fill(browser: &Browser, title: &str) {
    browser.write("#title", title);
    browser.write(
        "#text",
        "Drilled **No. 32**, dry.\n\n- It squealed.\n- `a-line-of-code-that-is-wider-than-the-screen`\n\n\
         > As said before: donaudampfschifffahrtsgesellschaftskapitaen\n\nThen 4 BA.",
    );
    browser.write("#thread", "4 BA");
    browser.write("#drill", "No. 32");
    browser.write("#machine", "bench drill");
}
