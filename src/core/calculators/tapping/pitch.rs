//! Reading a pitch: a length, `0.6 mm`, or threads in an inch, `40 tpi`.

use crate::asking::{Choice, FieldError, Typed, quoted, sentence};
use crate::units::read::{Bare, length, plain, take_mixed};
use crate::units::{Pitch, in_mm};

/// What stands behind a number of threads in an inch.
const PER_INCH: [&str; 7] =
    ["tpi", "t.p.i.", "t.p.i", "threads per inch", "threads an inch", "per inch", "threads/inch"];
/// The fewest and the most threads in an inch that make sense.
const THREADS: std::ops::RangeInclusive<f64> = 1.0..=500.0;
/// No pitch in millimetres is so coarse that a whole number from here on is not threads in an inch.
const COARSEST_MM: f64 = 8.0;

/// A pitch. A bare number is millimetres, as everywhere, but from 8
/// up it is asked whether threads in an inch are meant.
pub(super) fn pitch(typed: Typed<'_>) -> Result<Pitch, FieldError> {
    let text = plain(typed.text);
    let number = take_mixed(&text).map(|(number, rest)| (number.value, rest.trim()));
    match number {
        Some((threads, unit)) if PER_INCH.contains(&unit) => {
            return if THREADS.contains(&threads) {
                Ok(Pitch::PerInch(threads))
            } else {
                Err(typed.error(format!(
                    "{} is no pitch: between 1 and 500 threads in an inch are taken.",
                    quoted(typed.text)
                )))
            };
        }
        Some((threads, "")) if threads >= COARSEST_MM && THREADS.contains(&threads) => {
            let value = format!("{threads} tpi");
            let choices = vec![Choice { words: value.clone(), value }];
            let message = format!(
                "{} without a unit would be millimetres. Write mm, or tpi for threads in an inch.",
                quoted(typed.text)
            );
            return Err(FieldError { choices, ..typed.error(message) });
        }
        _ => {}
    }
    length(typed.text, Bare::Mm).map(|pitch| Pitch::Mm(in_mm(pitch))).map_err(|error| {
        typed.error(format!("{} Or threads in an inch: 40 tpi.", sentence(&error.to_string())))
    })
}

#[cfg(test)]
mod tests {
    use super::{Pitch, Typed, pitch};

    fn read(text: &str) -> Result<Pitch, Vec<String>> {
        pitch(Typed { field: "pitch", text })
            .map_err(|error| error.choices.into_iter().map(|choice| choice.value).collect())
    }

    #[test]
    fn a_pitch_is_a_length_or_threads_in_an_inch() {
        assert_eq!(read("0.59"), Ok(Pitch::Mm(0.59)));
        assert_eq!(read("0,5 mm"), Ok(Pitch::Mm(0.5)));
        assert_eq!(read("40 tpi"), Ok(Pitch::PerInch(40.0)));
        assert_eq!(read("11 1/2 TPI"), Ok(Pitch::PerInch(11.5)));
    }

    #[test]
    fn a_bare_forty_is_asked_about() {
        assert_eq!(read("40"), Err(vec!["40 tpi".to_owned()]));
        assert_eq!(read("fine"), Err(Vec::new()));
        assert_eq!(read("0 tpi"), Err(Vec::new()));
    }
}
