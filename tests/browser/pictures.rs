//! Pictures of the pages a member opens most, on the phone, to be looked at: `target/screenshots`.

use std::path::Path;

use serde_json::json;

use crate::browser::{Browser, PHONE, Scheme, Scripts};

const PAGES: [(&str, &str); 10] = [
    ("home", "/"),
    ("thread", "/threads/ba/5"),
    ("drills", "/drills"),
    ("plan", "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm"),
    ("material", "/materials/gunmetal"),
    ("material-steel", "/materials/silver-steel"),
    ("material-refused", "/materials/beryllium-copper"),
    ("materials", "/materials"),
    (
        "speeds",
        "/calculators/speeds?material=silver-steel&diameter=12mm&spindle_speeds=500%2C1000%2C2000",
    ),
    ("drawer", "/drawer"),
];

/// Pictures of the page that is open, at the size of the phone, which is the screen from then on.
pub(crate) fn take(browser: &Browser, name: &str) {
    browser.resize(PHONE);
    browser.window.tell("Emulation.setScrollbarsHidden", &json!({"hidden": true}));
    let mut papers = Vec::new();
    for scheme in Scheme::BOTH {
        browser.prefer(scheme);
        let script = "return getComputedStyle(document.documentElement).backgroundColor";
        papers.push(browser.ask::<String>(script));
        let picture = browser.window.picture();
        // A PNG's width and height stand in its first chunk.
        let size = (PHONE.width * PHONE.ratio, PHONE.height * PHONE.ratio);
        assert_eq!(size_of(&picture), size, "{name}");
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/screenshots");
        std::fs::create_dir_all(&folder).unwrap();
        std::fs::write(folder.join(format!("{name}-{}.png", scheme.name())), picture).unwrap();
    }
    assert_eq!(papers, ["rgb(247, 243, 232)", "rgb(12, 42, 76)"], "{name}");
}

#[test]
fn each_page_has_its_picture_in_both_schemes() {
    let browser = Browser::open(PHONE, Scripts::Refused);
    for (name, address) in PAGES {
        browser.visit(address);
        take(&browser, name);
    }
}

fn size_of(png: &[u8]) -> (u32, u32) {
    let number = |from: usize| {
        let bytes = png.get(from..from + 4).and_then(|bytes| bytes.try_into().ok());
        u32::from_be_bytes(bytes.unwrap_or_else(|| panic!("a picture of {} bytes", png.len())))
    };
    (number(16), number(20))
}
