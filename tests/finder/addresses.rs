//! Whether an address that the finder gives is that of a page.

use holewright_core::calculators::{self, speeds};
use holewright_core::finder::PAGES;
use holewright_core::tables::drills::{self, Series};
use holewright_core::tables::{materials, rescue, threads};
use holewright_core::units::read::{Bare, length};

/// Whether there is a page at an address: it is looked up in the tables, and a plan's thread and
/// material are read.
pub(crate) fn exists(url: &str) -> bool {
    if PAGES.iter().any(|page| page.url == url) {
        return true;
    }
    if let Some(series) = url.strip_prefix("/drills?series=") {
        return Series::from_slug(series).is_some();
    }
    if let Some((path, query)) = url.split_once('?') {
        return asks_what_is_asked(path, query);
    }
    match url.split('/').collect::<Vec<_>>().as_slice() {
        ["", "threads", system] => threads::system(system).is_some(),
        ["", "threads", system, size] => threads::find(system, size).is_some(),
        ["", "drills", series, size] => {
            Series::from_slug(series).is_some_and(|series| drills::find(series, size).is_some())
        }
        // An alias is no page but a redirect.
        ["", "materials", slug] => {
            materials::find(slug).is_some_and(|material| material.slug == *slug)
        }
        _ => false,
    }
}

/// Whether a form's address has fields of that form alone, filled with what is read there.
fn asks_what_is_asked(path: &str, query: &str) -> bool {
    let is_coded =
        query.chars().all(|letter| letter.is_ascii_graphic() && !"<>\"'`#".contains(letter));
    let fields: Option<Vec<(&str, String)>> = query
        .split('&')
        .map(|field| field.split_once('=').map(|(name, value)| (name, decoded(value))))
        .collect();
    let Some(fields) = fields else { return false };
    let pairs = || fields.iter().map(|(name, value)| (*name, value.as_str()));
    let are_read = match path.strip_prefix("/calculators/") {
        Some(slug) => calculators::find(slug).is_some_and(|calculator| {
            pairs().all(|(name, value)| {
                let field = calculator.fields().find(|field| field.about().name == name);
                // How a tool is read depends on the work.
                field.is_some_and(|field| name == "diameter" || field.check(value).is_ok())
            }) && (slug != "speeds"
                || pairs().count() == 1
                || speeds::answer_to(&calculator.asked(in_some_material(&fields))).is_ok())
        }),
        None if path.starts_with("/rescue/") => {
            let known = rescue::all().iter().any(|trouble| trouble.path() == path);
            known && pairs().all(|(name, value)| name == "material" && plan_reads(name, value))
        }
        None if path == "/notes" => {
            pairs().all(|(name, on)| name == "on" && exists(&format!("/{on}")))
        }
        None => path == "/plan" && pairs().all(|(name, value)| plan_reads(name, value)),
    };
    is_coded && are_read
}

/// The fields, with a material where the form still asks for one.
fn in_some_material<'a>(fields: &'a [(&'a str, String)]) -> Vec<(&'a str, &'a str)> {
    let asked = [("material", "bright-mild-steel")].into_iter();
    let typed = || fields.iter().map(|(name, value)| (*name, value.as_str()));
    let is_named = typed().any(|(name, _)| name == "material");
    asked.filter(|_| !is_named).chain(typed()).collect()
}

/// Whether a field of a plan takes this.
fn plan_reads(name: &str, value: &str) -> bool {
    match name {
        "thread" => threads::read::read(value).is_ok(),
        "material" => materials::find(value).is_some(),
        "hole" => matches!(value, "blind" | "through"),
        "head" => value == "cheese",
        "tap" => value == "forming",
        "hand" => value == "left",
        "depth" => length(value, Bare::Mm).is_ok(),
        _ => false,
    }
}

/// A form's coding undone; a code that is none stays as it is.
pub(crate) fn decoded(coded: &str) -> String {
    let mut bytes = Vec::new();
    let mut rest = coded.as_bytes();
    while let [first, behind @ ..] = rest {
        rest = behind;
        match (first, behind) {
            (b'+', _) => bytes.push(b' '),
            (b'%', [high, low, after @ ..]) => match byte(*high, *low) {
                Some(byte) => {
                    bytes.push(byte);
                    rest = after;
                }
                None => bytes.push(b'%'),
            },
            _ => bytes.push(*first),
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// The byte of two hexadecimal digits.
fn byte(high: u8, low: u8) -> Option<u8> {
    let digit = |letter: u8| char::from(letter).to_digit(16);
    u8::try_from(digit(high)? * 16 + digit(low)?).ok()
}

#[test]
fn what_is_no_page_is_known_as_none() {
    for url in [
        "/threads/ba/26",
        "/drills/number/98",
        "/materials/brass",
        "/plan?thread=5+BA&material=unobtainium",
        "/plan?thread=5+BQ&material=copper",
        "/drills?series=imperial",
        "threads/ba/5",
        "",
    ] {
        assert!(!exists(url), "{url:?}");
    }
    assert_eq!(decoded("M3+%C3%97+0.35"), "M3 × 0.35");
}
