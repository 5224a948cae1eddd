//! The README's pictures, taken of the demonstration: each page still shows what its picture is
//! for, and the README names these files and no others. They are written anew only when asked.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use serde_json::json;

use crate::browser::{Browser, PHONE, Scheme, Scripts};
use crate::few_colours::in_few_colours;
use crate::started::Site;

/// Set, the pictures in the repository are written anew. The program itself refuses a setting
/// `HOLEWRIGHT_…` that it does not know, so this is none.
const WRITE: &str = "WRITE_README_PICTURES";
const FOLDER: &str = "tests/browser/readme";
/// The largest picture, in bytes.
const LARGEST: usize = 60_000;

/// One picture: the window of the phone on a page of the demonstration.
struct Picture {
    name: &'static str,
    scheme: Scheme,
    /// Who is signed in, if anybody.
    who: Option<&'static str>,
    address: &'static str,
    /// A link that is followed from there, if any.
    press: Option<&'static str>,
    /// What stands at the top of the window, if not the page's own.
    from: Option<&'static str>,
    /// Words that can be read in the window.
    seen: &'static [&'static str],
}

const PLAN: &str = "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm";
const PLAIN: Picture = Picture {
    name: "plan",
    scheme: Scheme::Light,
    who: None,
    address: PLAN,
    press: None,
    from: None,
    seen: &["5 BA in gunmetal, blind", "Tapping size", "No. 36", "within BS 93", "medium fit"],
};

const PICTURES: [Picture; 6] = [
    PLAIN,
    Picture {
        name: "drawing",
        scheme: Scheme::Dark,
        from: Some(".sheet"),
        seen: &["5 BA", "full thread 8 mm", "scale bar", "drill 9.8 mm"],
        ..PLAIN
    },
    Picture {
        name: "steps",
        from: Some(".steps > li:nth-child(3)"),
        seen: &["No. 36 drill", "rev/min", "Why", "Countersink, 90°"],
        ..PLAIN
    },
    Picture {
        name: "notes",
        address: "/materials/gunmetal",
        from: Some(".experience"),
        seen: &["What members found", "Stoning the lips for gunmetal", "Worked for 1 member."],
        ..PLAIN
    },
    Picture {
        name: "correction",
        address: "/notes?q=nipple&corrected=yes",
        press: Some("main .doors a"),
        seen: &["Nipple for the pump outlet", "By Mabel Thornscar", "Correction,", "struck out"],
        ..PLAIN
    },
    Picture {
        name: "queue",
        who: Some("Walter Brinscombe"),
        address: "/queue?open=49",
        seen: &["The queue", "Holding a small block by hand", "Reported, and hidden since"],
        ..PLAIN
    },
];

/// The words in the window, those cut off at its edge left out.
const READ: &str = "
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const words = [], range = document.createRange();
    while (walker.nextNode()) {
        range.selectNodeContents(walker.currentNode);
        const box = range.getBoundingClientRect();
        if (box.height > 0 && box.top >= 0 && box.bottom <= innerHeight)
            words.push(walker.currentNode.data);
    }
    return words.join(' ').replace(/\\s+/g, ' ')";

#[test]
fn each_picture_of_the_readme_can_be_taken_again() {
    let (site, password) = Site::start_on_the_demonstration();
    let browser = Browser::on(site, PHONE, Scripts::Refused);
    browser.window.tell("Emulation.setScrollbarsHidden", &json!({"hidden": true}));
    for picture in PICTURES {
        browser.prefer(picture.scheme);
        match picture.who {
            Some(name) => browser.sign_in_with(name, &password, picture.address),
            None => browser.visit(picture.address),
        }
        if let Some(link) = picture.press {
            browser.follow(link);
        }
        if let Some(place) = picture.from {
            let script = format!("document.querySelector('{place}').scrollIntoView()");
            browser.window.run(&script);
        }
        let words: String = browser.ask(READ);
        for seen in picture.seen {
            assert!(words.contains(seen), "{}: no “{seen}” in: {words}", picture.name);
        }
        let png = in_few_colours(&browser.window.picture());
        assert!(png.len() <= LARGEST, "{}: {} bytes", picture.name, png.len());
        if std::env::var_os(WRITE).is_some() {
            std::fs::create_dir_all(folder()).unwrap();
            std::fs::write(folder().join(format!("{}.png", picture.name)), png).unwrap();
        }
    }
    the_readme_names_what_is_there();
}

#[track_caller]
fn the_readme_names_what_is_there() {
    let readme = Path::new(env!("CARGO_MANIFEST_DIR")).join("README.md");
    let readme = std::fs::read_to_string(readme).unwrap();
    let mut named = BTreeSet::new();
    for image in readme.split("<img ").skip(1) {
        let image = image.split('>').next().unwrap();
        let attribute = |name: &str| {
            let value =
                image.split(&format!("{name}=\"")).nth(1).and_then(|rest| rest.split('"').next());
            value.unwrap_or_else(|| panic!("no {name} in {image}"))
        };
        assert!(attribute("alt").len() > 20, "what is shown is said to who cannot see it: {image}");
        let name = attribute("src").strip_prefix(FOLDER).and_then(|rest| rest.strip_prefix('/'));
        named.insert(name.unwrap_or_else(|| panic!("{image}")).to_owned());
    }
    let taken = PICTURES.map(|picture| format!("{}.png", picture.name));
    assert_eq!(named, BTreeSet::from(taken), "the README's pictures are those of the table above");

    let kept = std::fs::read_dir(folder()).unwrap();
    let kept: BTreeSet<String> =
        kept.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    assert_eq!(named, kept, "{WRITE}=1 writes them anew");
    for name in kept {
        let png = std::fs::read(folder().join(&name)).unwrap();
        assert!(png.len() <= LARGEST, "{name}: {} bytes", png.len());
        let picture = lodepng::decode24(&png).unwrap();
        let size = (PHONE.width * PHONE.ratio, PHONE.height * PHONE.ratio);
        assert_eq!((picture.width, picture.height), (size.0 as usize, size.1 as usize), "{name}");
    }
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(FOLDER)
}
