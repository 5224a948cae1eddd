//! A browser window as a test sees it: it asks, waits for the answer, and fails where it is asked.
//!
//! thirtyfour speaks to the driver; this turns its futures and errors into plain calls.

use std::net::SocketAddr;

use serde_json::Value;
use thirtyfour::error::WebDriverResult;
use thirtyfour::{By, Capabilities, Key, WebDriver, WebElement};
use tokio::runtime::{Builder, Runtime};

use crate::process::HANG;

/// One browser window, open until it is dropped.
pub(crate) struct Window {
    runtime: Runtime,
    driver: WebDriver,
}

impl Window {
    #[track_caller]
    pub(crate) fn open(driver: SocketAddr, capabilities: impl Into<Capabilities>) -> Self {
        let runtime = Builder::new_current_thread().enable_all().build().unwrap();
        // A proxy in the environment is for the world outside.
        let client = reqwest::Client::builder().no_proxy().timeout(HANG).build().unwrap();
        let opening = WebDriver::builder(format!("http://{driver}"), capabilities).client(client);
        match runtime.block_on(opening.connect()) {
            Ok(driver) => Self { runtime, driver },
            Err(error) => panic!("no browser: {error}; see tests/run"),
        }
    }

    #[track_caller]
    fn wait<T>(&self, answer: impl Future<Output = WebDriverResult<T>>) -> T {
        match self.runtime.block_on(answer) {
            Ok(answer) => answer,
            Err(error) => panic!("{error}"),
        }
    }

    #[track_caller]
    pub(crate) fn go(&self, url: &str) {
        self.wait(self.driver.goto(url));
    }

    #[track_caller]
    pub(crate) fn url(&self) -> String {
        self.wait(self.driver.current_url()).into()
    }

    #[track_caller]
    pub(crate) fn title(&self) -> String {
        self.wait(self.driver.title())
    }

    /// The one element, or the first, that a CSS selector names.
    #[track_caller]
    pub(crate) fn find(&self, selector: &str) -> Element<'_> {
        self.element(self.wait(self.driver.find(By::Css(selector))))
    }

    #[track_caller]
    pub(crate) fn find_all(&self, selector: &str) -> Vec<Element<'_>> {
        let found = self.wait(self.driver.find_all(By::Css(selector)));
        found.into_iter().map(|one| self.element(one)).collect()
    }

    /// What has the focus.
    #[track_caller]
    pub(crate) fn active(&self) -> Element<'_> {
        self.element(self.wait(self.driver.active_element()))
    }

    fn element(&self, found: WebElement) -> Element<'_> {
        Element { window: self, found }
    }

    /// What a function body returns.
    #[track_caller]
    pub(crate) fn run(&self, script: &str) -> Value {
        self.wait(self.driver.execute(script, [])).json().clone()
    }

    /// What a function body hands to its one argument, at once or later.
    #[track_caller]
    pub(crate) fn run_until_done(&self, script: &str) -> Value {
        self.wait(self.driver.execute_async(script, [])).json().clone()
    }

    /// Presses and lets go one key, wherever the focus is.
    #[track_caller]
    pub(crate) fn press(&self, key: Key) {
        self.wait(self.driver.action_chain().key_down(key.value()).key_up(key.value()).perform());
    }

    /// The window as a PNG.
    #[track_caller]
    pub(crate) fn picture(&self) -> Vec<u8> {
        self.wait(self.driver.screenshot_as_png())
    }

    /// One command of Chromium's own tools.
    #[track_caller]
    pub(crate) fn tell(&self, command: &str, parameters: &Value) {
        self.wait(self.driver.cdp().send_raw(command, parameters));
    }

    /// What the browser wrote in its console since it was last asked.
    #[track_caller]
    pub(crate) fn console(&self) -> Vec<String> {
        let entries = self.wait(self.driver.browser_log()).into_iter();
        entries.map(|entry| format!("{} {}", entry.level, entry.message)).collect()
    }
}

impl Drop for Window {
    fn drop(&mut self) {
        // A test that failed has said why; the browser ends with its driver in any case.
        let _ = self.runtime.block_on(self.driver.clone().quit());
    }
}

/// Something on the page that is open.
pub(crate) struct Element<'a> {
    window: &'a Window,
    found: WebElement,
}

impl Element<'_> {
    /// Presses it, which fails where a reader could not.
    #[track_caller]
    pub(crate) fn press(&self) {
        self.window.wait(self.found.click());
    }

    #[track_caller]
    pub(crate) fn write(&self, text: &str) {
        self.window.wait(self.found.send_keys(text));
    }

    #[track_caller]
    pub(crate) fn clear(&self) {
        self.window.wait(self.found.clear());
    }

    /// The text a reader sees.
    #[track_caller]
    pub(crate) fn text(&self) -> String {
        self.window.wait(self.found.text())
    }

    /// An attribute, where it is there.
    #[track_caller]
    pub(crate) fn attribute(&self, name: &str) -> Option<String> {
        self.window.wait(self.found.attr(name))
    }

    /// What a field holds now.
    #[track_caller]
    pub(crate) fn value(&self) -> String {
        self.window.wait(self.found.value()).unwrap()
    }

    #[track_caller]
    pub(crate) fn is_shown(&self) -> bool {
        self.window.wait(self.found.is_displayed())
    }

    #[track_caller]
    pub(crate) fn is_chosen(&self) -> bool {
        self.window.wait(self.found.is_selected())
    }
}
