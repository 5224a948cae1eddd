//! A strength in words.

use crate::tables::screw_metals::Strength;
use crate::units::{in_newtons_per_mm2, print};

/// `Gunmetal, 200 N/mm², sand casting (a foundry's sheet)`
pub(super) fn strength_words(name: &str, strength: &Strength) -> String {
    let Strength { stress, condition, source } = strength;
    let figure = print::trimmed(in_newtons_per_mm2(*stress), 0);
    let condition = if condition.is_empty() { String::new() } else { format!(", {condition}") };
    format!("{}, {figure} N/mm²{condition} ({})", print::sentence(name), source.cite)
}
