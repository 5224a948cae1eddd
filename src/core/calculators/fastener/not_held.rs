//! What no table here holds, in words: no figure is made up for it.

use super::answer::Answer;
use super::head::HeadOf;

/// A sentence for each figure that is missing.
pub(super) fn not_held(found: &Answer) -> Vec<String> {
    let name = found.thread.designation;
    let is_hexagon =
        matches!(found.head, HeadOf::Hexagon | HeadOf::SmallHexagon | HeadOf::OldHexagon);
    let mut sentences = Vec::new();
    let mut say = |sentence: String| sentences.push(sentence);
    if is_hexagon && found.hexagon.is_none() {
        say(format!(
            "No {} is held for {name}: measure the nut across its flats.",
            found.head.words()
        ));
    }
    if is_hexagon && found.hexagon.is_some() {
        if found.head_height().is_none() {
            say(format!("No height of the head is held for this hexagon of {name}: measure it."));
        }
        if found.nut_thickness().is_none() {
            say(format!("No thickness of the nut is held for this hexagon of {name}: measure it."));
        }
    }
    match found.head {
        HeadOf::Cheese | HeadOf::Cap if found.held.is_none() => {
            say(format!(
                "No {} is held for {name}: measure the head, and bore for what you measure.",
                found.head.words()
            ));
        }
        HeadOf::Countersunk if found.held.is_none() => {
            say(format!(
                "No countersunk head is held for {name}: its mouth is by the usual range; measure the head."
            ));
        }
        HeadOf::Cap if found.key().is_none() => {
            say(format!("No key is held for the cap head of {name}."));
        }
        _ => {}
    }
    if found.washer.is_none() && found.head != HeadOf::Countersunk {
        say(format!("No table of washers is held for {name}."));
    }
    sentences
}
