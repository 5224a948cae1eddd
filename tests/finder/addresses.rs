//! Whether an address that the finder gives is that of a page.

use holewright_core::finder::PAGES;
use holewright_core::tables::drills::{self, Series};
use holewright_core::tables::{materials, threads};

/// Whether there is a page at an address: it is looked up in the tables, and a plan's thread and
/// material are read.
pub(crate) fn exists(url: &str) -> bool {
    if PAGES.iter().any(|page| page.url == url) {
        return true;
    }
    if let Some(series) = url.strip_prefix("/drills?series=") {
        return Series::from_slug(series).is_some();
    }
    if let Some(query) = url.strip_prefix("/plan?") {
        return plan_exists(query);
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

fn plan_exists(query: &str) -> bool {
    let Some((thread, material)) = query.split_once('&') else { return false };
    let (Some(thread), Some(material)) =
        (thread.strip_prefix("thread="), material.strip_prefix("material="))
    else {
        return false;
    };
    threads::read::read(&decoded(thread)).is_ok()
        && materials::find(&decoded(material)).is_some()
        && query.chars().all(|letter| letter.is_ascii_graphic() && !"<>\"'`#".contains(letter))
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
