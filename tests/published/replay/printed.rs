//! A figure as its source prints it, and the tolerance its last place gives.

/// Binary noise only: far below any printed place, so no printed tolerance is widened by it.
const NOISE: f64 = 1e-9;

/// A printed decimal and half of its last place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Printed {
    /// The figure.
    pub(crate) value: f64,
    /// Half of the last printed place.
    pub(crate) tolerance: f64,
}

impl Printed {
    /// Whether a computed figure rounds to the printed one.
    pub(crate) fn agrees(self, got: f64) -> bool {
        (got - self.value).abs() <= self.tolerance + NOISE
    }
}

/// Reads `2.49`, `.73`, `1,337` (decimal comma), `102`, `4½`; anything else is `None`.
pub(crate) fn decimal(text: &str) -> Option<Printed> {
    let text = text.trim().replace(',', ".").replace('½', ".5");
    let digits = text.strip_prefix('-').unwrap_or(&text);
    let plain = !digits.is_empty() && digits.chars().all(|c| c.is_ascii_digit() || c == '.');
    let value = plain.then(|| text.parse::<f64>().ok()).flatten()?;
    let places = text.split_once('.').map_or(0, |(_, places)| places.len());
    let tolerance = format!("0.{}5", "0".repeat(places)).parse().expect("a decimal");
    Some(Printed { value, tolerance })
}

#[test]
fn the_tolerance_is_half_of_the_last_printed_place() {
    let of = |text| decimal(text).map(|printed| (printed.value, printed.tolerance));
    assert_eq!(of("2.490"), Some((2.49, 0.0005)));
    assert_eq!(of(".73"), Some((0.73, 0.005)));
    assert_eq!(of("1,337"), Some((1.337, 0.0005)));
    assert_eq!(of("102"), Some((102.0, 0.5)));
    assert_eq!(of("-0.014"), Some((-0.014, 0.0005)));
    assert_eq!(of("4½"), Some((4.5, 0.05)));
    assert_eq!(of("1/4"), None);
    assert_eq!(of("approx 75"), None);
    assert!(decimal("77").expect("a decimal").agrees(77.5));
    assert!(!decimal("77").expect("a decimal").agrees(77.6));
    assert!(!decimal("0.640327").expect("a decimal").agrees(0.6403));
}
