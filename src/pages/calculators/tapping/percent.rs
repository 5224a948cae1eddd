//! Reading a percentage: `70`, `70 %`.

use crate::form::quoted;
use holewright_core::units::read::{plain, take};

/// An engagement in percent, above 0 and up to 100.
///
/// # Errors
/// In words: what was typed and what is taken.
pub(super) fn percent(typed: &str) -> Result<f64, String> {
    let text = plain(typed);
    let found = take(&text).filter(|(number, rest)| {
        matches!(rest.trim(), "" | "%" | "percent" | "per cent")
            && number.value > 0.0
            && number.value <= 100.0
    });
    found.map(|(number, _)| number.value).ok_or_else(|| {
        format!(
            "{} is no engagement. Write a percentage above 0 and up to 100: 70, 65 %.",
            quoted(typed)
        )
    })
}

#[cfg(test)]
mod tests {
    use super::percent;

    #[test]
    fn a_percentage_is_read_with_its_sign_or_without() {
        assert_eq!(percent("70"), Ok(70.0));
        assert_eq!(percent("62.5 %"), Ok(62.5));
        assert_eq!(percent("100 per cent"), Ok(100.0));
        for wrong in ["0", "101", "-5", "most", "70 mm"] {
            assert!(percent(wrong).is_err(), "{wrong}");
        }
    }
}
