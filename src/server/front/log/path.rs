//! A path as it may stand in the log. What follows two doors, `/join/` and `/reset/`, is a secret, and
//! stays one however its address is spelt: with capitals, slashes too many, percent codes, a line end
//! where a letter was wrapped, or without its door.

use form_urlencoded::parse;

/// What stands on the slips.
const DOORS: [&str; 2] = ["join", "reset"];

/// So many hexadecimal digits in a row are half of what stands behind a door.
const HALF: usize = 32;

/// Percent codes are undone so often: a code of a code of a code, and what is left then is hidden.
const DEEPEST: usize = 3;

/// The path, but for what may be a secret.
pub(crate) fn loggable(path: String) -> String {
    let plain = plain(&path);
    match DOORS.into_iter().find(|door| plain.contains(door)) {
        Some(door) => format!("/{door}/…"),
        None if plain.contains('%') || longest_in_hexadecimal(&plain) >= HALF => "/…".to_owned(),
        None => path,
    }
}

/// Small letters, without percent codes.
fn plain(path: &str) -> String {
    let mut plain = path.to_ascii_lowercase();
    for _ in 0..DEEPEST {
        if !plain.contains('%') {
            break;
        }
        plain = parse(plain.as_bytes()).flat_map(|(name, value)| [name, value]).collect();
        plain.make_ascii_lowercase();
    }
    plain
}

/// The most digits in a row, whatever marks stand between them.
fn longest_in_hexadecimal(plain: &str) -> usize {
    let (mut longest, mut run) = (0, 0);
    for letter in plain.chars().filter(|letter| letter.is_alphanumeric()) {
        run = if letter.is_ascii_hexdigit() { run + 1 } else { 0 };
        longest = longest.max(run);
    }
    longest
}
