//! One browser with one window on a server of its own, and what the tests do with it.

use std::time::{Duration, Instant};

use serde::de::DeserializeOwned;
use serde_json::json;
use thirtyfour::{
    ChromeCapabilities, ChromiumLikeCapabilities, DesiredCapabilities, LoggingPrefsLogLevel,
};

use crate::process::HANG;
use crate::started::{Driver, Folder, Site};
use crate::window::Window;

/// Everything Chromium does that has nothing to do with the page, off. It runs as root in a
/// container, where its sandbox cannot.
const ARGUMENTS: [&str; 8] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
];

/// What starts Chromium so that it does not outlive its driver.
const CHROMIUM: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/browser/chromium");

/// Whether pages may run scripts.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Scripts {
    Allowed,
    Refused,
}

/// What the reader's machine prefers.
#[derive(Clone, Copy)]
pub(crate) enum Scheme {
    Light,
    Dark,
}

impl Scheme {
    pub(crate) const BOTH: [Self; 2] = [Self::Light, Self::Dark];

    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }
}

/// A screen's size in CSS pixels, and how many of its own pixels make one of those.
#[derive(Clone, Copy)]
pub(crate) struct Screen {
    pub(crate) width: u32,
    pub(crate) height: u32,
    pub(crate) ratio: u32,
}

/// The phone of the journeys.
pub(crate) const PHONE: Screen = Screen { width: 360, height: 740, ratio: 2 };
/// The narrowest a page must bear, also a wide screen at 400 %.
pub(crate) const NARROW: Screen = Screen { width: 320, height: 740, ratio: 2 };
/// A bench computer.
pub(crate) const WIDE: Screen = Screen { width: 1280, height: 800, ratio: 1 };

/// A browser, the server it looks at and the driver between them.
pub(crate) struct Browser {
    // Ended in this order: the window, its driver, then the server.
    pub(crate) window: Window,
    _driver: Driver,
    pub(crate) site: Site,
    _profile: Folder,
}

impl Browser {
    pub(crate) fn open(screen: Screen, scripts: Scripts) -> Self {
        Self::on(Site::start(), screen, scripts)
    }

    /// A browser that looks at this server.
    pub(crate) fn on(site: Site, screen: Screen, scripts: Scripts) -> Self {
        let driver = Driver::start();
        let profile = Folder::new();
        let window = Window::open(driver.address, capabilities(&profile, scripts));
        let browser = Self { window, _driver: driver, site, _profile: profile };
        browser.resize(screen);
        browser
    }

    /// Opens an address of the site, `/threads/ba/5`.
    #[track_caller]
    pub(crate) fn visit(&self, address: &str) {
        self.window.go(&format!("{}{address}", self.site.base));
    }

    /// The address that is open, from its first slash.
    #[track_caller]
    pub(crate) fn address(&self) -> String {
        let url = self.window.url();
        url.strip_prefix(&self.site.base).unwrap_or_else(|| panic!("left for {url}")).to_owned()
    }

    pub(crate) fn resize(&self, Screen { width, height, ratio }: Screen) {
        let metrics =
            json!({"width": width, "height": height, "deviceScaleFactor": ratio, "mobile": true});
        self.window.tell("Emulation.setDeviceMetricsOverride", &metrics);
    }

    pub(crate) fn prefer(&self, scheme: Scheme) {
        let feature = json!({"name": "prefers-color-scheme", "value": scheme.name()});
        self.window.tell("Emulation.setEmulatedMedia", &json!({"features": [feature]}));
    }

    /// The page as it is printed on A4, or on the screen again.
    pub(crate) fn on_paper(&self, is_printed: bool) {
        let media = if is_printed { "print" } else { "" };
        self.window.tell("Emulation.setEmulatedMedia", &json!({"media": media}));
        // 182 mm between the margins of A4.
        self.resize(if is_printed { Screen { width: 688, height: 972, ratio: 1 } } else { PHONE });
    }

    /// What a script of the test's own returns. The page's policy does not bind it, nor does the
    /// refusal of scripts.
    #[track_caller]
    pub(crate) fn ask<T: DeserializeOwned>(&self, script: &str) -> T {
        serde_json::from_value(self.window.run(script)).unwrap()
    }

    /// The status the open page came with.
    pub(crate) fn status(&self) -> u16 {
        self.ask("return performance.getEntriesByType('navigation')[0].responseStatus")
    }

    /// Opens every fold, so that what is in it is looked at too.
    pub(crate) fn unfold(&self) {
        self.window
            .run("for (const fold of document.querySelectorAll('details')) fold.open = true");
    }

    #[track_caller]
    pub(crate) fn text(&self, selector: &str) -> String {
        self.window.find(selector).text()
    }

    #[track_caller]
    pub(crate) fn value(&self, selector: &str) -> String {
        self.window.find(selector).value()
    }

    #[track_caller]
    pub(crate) fn press(&self, selector: &str) {
        self.window.find(selector).press();
    }

    /// Presses what leads to another page, and waits until that is there: a form is sent only
    /// after the press is done.
    #[track_caller]
    pub(crate) fn follow(&self, selector: &str) {
        let document = "return performance.timeOrigin + ' ' + document.readyState";
        let before: String = self.ask(document);
        self.press(selector);
        self.until("another page", || {
            let now: String = self.ask(document);
            now != before && now.ends_with("complete")
        });
    }

    /// Waits for something that comes a moment after the press.
    #[track_caller]
    pub(crate) fn until(&self, what: &str, is_so: impl Fn() -> bool) {
        let asked = Instant::now();
        while !is_so() {
            assert!(asked.elapsed() < HANG, "{}: {what} never came", self.window.url());
            std::thread::sleep(Duration::from_millis(10));
        }
    }

    #[track_caller]
    pub(crate) fn write(&self, selector: &str, text: &str) {
        self.window.find(selector).write(text);
    }

    /// The id of what has the focus.
    pub(crate) fn focused(&self) -> Option<String> {
        self.window.active().attribute("id")
    }
}

fn capabilities(profile: &Folder, scripts: Scripts) -> ChromeCapabilities {
    let mut chrome = DesiredCapabilities::chrome();
    chrome.set_binary(CHROMIUM).unwrap();
    let profile = format!("--user-data-dir={}", profile.path().display());
    for argument in ARGUMENTS.into_iter().chain([profile.as_str()]) {
        chrome.add_arg(argument).unwrap();
    }
    if scripts == Scripts::Refused {
        let preference = json!({"profile.managed_default_content_settings.javascript": 2});
        chrome.add_experimental_option("prefs", preference).unwrap();
    }
    chrome.set_browser_log_level(LoggingPrefsLogLevel::All).unwrap();
    chrome
}
