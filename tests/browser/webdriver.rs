//! As much of the W3C WebDriver protocol as the tests speak: JSON over HTTP to chromedriver.
//!
//! Our own, because a client crate would bring thirty crates into every build of every test, the
//! pure library's among them.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::Duration;

use serde_json::{Value, json};

/// The key under which the protocol hands over an element.
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";

/// What the protocol calls the Tab and Enter keys.
pub(crate) const TAB: &str = "\u{e004}";
pub(crate) const ENTER: &str = "\u{e007}";

/// One browser window, open until it is dropped.
pub(crate) struct Session {
    driver: SocketAddr,
    /// `/session/…`
    path: String,
}

impl Session {
    pub(crate) fn open(driver: SocketAddr, capabilities: &Value) -> Self {
        let wanted = json!({"capabilities": {"alwaysMatch": capabilities}});
        let opened = ask(driver, "POST", "/session", &wanted);
        let opened = opened.unwrap_or_else(|error| panic!("no browser: {error}; see tests/run"));
        Self { driver, path: format!("/session/{}", word(&opened["sessionId"])) }
    }

    #[track_caller]
    fn get(&self, what: &str) -> Value {
        self.ask("GET", what, &Value::Null)
    }

    #[track_caller]
    pub(crate) fn post(&self, what: &str, body: &Value) -> Value {
        self.ask("POST", what, body)
    }

    #[track_caller]
    fn ask(&self, method: &str, what: &str, body: &Value) -> Value {
        let answer = ask(self.driver, method, &format!("{}{what}", self.path), body);
        answer.unwrap_or_else(|error| panic!("{method} {what} {body}: {error}"))
    }

    pub(crate) fn go(&self, url: &str) {
        self.post("/url", &json!({"url": url}));
    }

    pub(crate) fn url(&self) -> String {
        word(&self.get("/url"))
    }

    pub(crate) fn title(&self) -> String {
        word(&self.get("/title"))
    }

    /// The one element, or the first, that a CSS selector names.
    #[track_caller]
    pub(crate) fn find(&self, selector: &str) -> Element<'_> {
        let found = self.post("/element", &by(selector));
        Element { session: self, path: element_path(&found) }
    }

    #[track_caller]
    pub(crate) fn find_all(&self, selector: &str) -> Vec<Element<'_>> {
        let found = self.post("/elements", &by(selector));
        let found = found.as_array().unwrap().iter();
        found.map(|one| Element { session: self, path: element_path(one) }).collect()
    }

    pub(crate) fn active(&self) -> Element<'_> {
        Element { session: self, path: element_path(&self.get("/element/active")) }
    }

    /// What a function body returns.
    #[track_caller]
    pub(crate) fn run(&self, script: &str) -> Value {
        self.post("/execute/sync", &json!({"script": script, "args": []}))
    }

    /// What a function body hands to its one argument, at once or later.
    #[track_caller]
    pub(crate) fn run_until_done(&self, script: &str) -> Value {
        self.post("/execute/async", &json!({"script": script, "args": []}))
    }

    /// Presses and lets go one key, wherever the focus is.
    pub(crate) fn press(&self, key: &str) {
        let strokes = json!([{"type": "keyDown", "value": key}, {"type": "keyUp", "value": key}]);
        let keyboard = json!({"type": "key", "id": "keyboard", "actions": strokes});
        self.post("/actions", &json!({"actions": [keyboard]}));
    }

    /// The window as a PNG.
    pub(crate) fn picture(&self) -> Vec<u8> {
        from_base64(&word(&self.get("/screenshot")))
    }

    /// One command of Chromium's own tools.
    pub(crate) fn tell(&self, command: &str, parameters: &Value) {
        self.post("/goog/cdp/execute", &json!({"cmd": command, "params": parameters}));
    }

    /// What the browser wrote in its console since it was last asked.
    pub(crate) fn console(&self) -> Vec<String> {
        let entries = self.post("/se/log", &json!({"type": "browser"}));
        let entries = entries.as_array().unwrap().iter();
        entries
            .map(|entry| format!("{} {}", word(&entry["level"]), word(&entry["message"])))
            .collect()
    }
}

impl Drop for Session {
    fn drop(&mut self) {
        // A test that failed has said why; the browser ends with its driver in any case.
        let _ = ask(self.driver, "DELETE", &self.path, &Value::Null);
    }
}

/// Something on the page that is open.
pub(crate) struct Element<'a> {
    session: &'a Session,
    /// `/element/…`
    path: String,
}

impl Element<'_> {
    #[track_caller]
    fn get(&self, what: &str) -> Value {
        self.session.get(&format!("{}/{what}", self.path))
    }

    #[track_caller]
    fn post(&self, what: &str, body: &Value) {
        self.session.post(&format!("{}/{what}", self.path), body);
    }

    /// Presses it, which fails where a reader could not.
    #[track_caller]
    pub(crate) fn press(&self) {
        self.post("click", &json!({}));
    }

    #[track_caller]
    pub(crate) fn write(&self, text: &str) {
        self.post("value", &json!({"text": text}));
    }

    #[track_caller]
    pub(crate) fn clear(&self) {
        self.post("clear", &json!({}));
    }

    /// The text a reader sees.
    pub(crate) fn text(&self) -> String {
        word(&self.get("text"))
    }

    /// An attribute, where it is there.
    pub(crate) fn attribute(&self, name: &str) -> Option<String> {
        self.get(&format!("attribute/{name}")).as_str().map(str::to_owned)
    }

    /// What a field holds now.
    pub(crate) fn value(&self) -> String {
        word(&self.get("property/value"))
    }

    pub(crate) fn is_shown(&self) -> bool {
        self.get("displayed") == true
    }

    pub(crate) fn is_chosen(&self) -> bool {
        self.get("selected") == true
    }
}

fn by(selector: &str) -> Value {
    json!({"using": "css selector", "value": selector})
}

fn element_path(found: &Value) -> String {
    format!("/element/{}", word(&found[ELEMENT]))
}

#[track_caller]
fn word(value: &Value) -> String {
    value.as_str().unwrap_or_else(|| panic!("{value} is no text")).to_owned()
}

/// The bytes of a Base64 text: four letters of six bits make three bytes.
fn from_base64(text: &str) -> Vec<u8> {
    let letters = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut value = [0_u32; 256];
    for (bits, &letter) in (0..).zip(letters) {
        value[usize::from(letter)] = bits;
    }
    let text = text.trim_end_matches('=').as_bytes();
    text.chunks(4)
        .flat_map(|four| {
            let shifts = [18, 12, 6, 0].into_iter();
            let bits: u32 =
                four.iter().zip(shifts).map(|(&c, by)| value[usize::from(c)] << by).sum();
            let [_, three @ ..] = bits.to_be_bytes();
            three.into_iter().take(four.len() - 1)
        })
        .collect()
}

/// The `value` of the answer, or the driver's words for what went wrong.
fn ask(driver: SocketAddr, method: &str, path: &str, body: &Value) -> Result<Value, String> {
    let answer = exchange(driver, method, path, body).map_err(|error| error.to_string())?;
    let answer: Value = serde_json::from_slice(&answer).map_err(|error| error.to_string())?;
    let value = &answer["value"];
    match value["error"].as_str() {
        Some(error) => Err(format!("{error}: {}", value["message"])),
        None => Ok(value.clone()),
    }
}

fn exchange(
    driver: SocketAddr,
    method: &str,
    path: &str,
    body: &Value,
) -> std::io::Result<Vec<u8>> {
    let mut stream = TcpStream::connect(driver)?;
    stream.set_read_timeout(Some(Duration::from_secs(60)))?;
    let body = if body.is_null() { String::new() } else { body.to_string() };
    write!(
        stream,
        "{method} {path} HTTP/1.1\r\nHost: {driver}\r\nContent-Type: application/json\r\n\
         Content-Length: {}\r\n\r\n{body}",
        body.len()
    )?;
    let mut reader = BufReader::new(stream);
    let mut length = 0;
    loop {
        let mut line = String::new();
        reader.read_line(&mut line)?;
        let line = line.trim().to_ascii_lowercase();
        if let Some(stated) = line.strip_prefix("content-length:") {
            length = stated.trim().parse().map_err(std::io::Error::other)?;
        }
        if line.is_empty() {
            break;
        }
    }
    let mut answer = vec![0; length];
    reader.read_exact(&mut answer)?;
    Ok(answer)
}
