//! What a part from the scrap box is usually made of, and how to tell. A guess to be tried, never a name.

use super::folded::fold;
use super::sources::practice;
use super::{Advice, Material, find};

/// A part from scrap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scrap {
    /// What people call it, the first as it is shown.
    pub words: &'static [&'static str],
    /// What it is usually made of, the likeliest first.
    usually: &'static [&'static str],
    /// How to tell whether it is.
    pub tell: Advice,
}

impl Scrap {
    /// What it is called, as it begins a sentence: `A sash weight`.
    #[must_use]
    pub fn name(&self) -> String {
        let word = self.words.first().copied().unwrap_or_default();
        let article = if word.starts_with(['a', 'e', 'i', 'o', 'u']) { "An" } else { "A" };
        format!("{article} {word}")
    }

    /// What it is usually made of, the likeliest first.
    #[must_use]
    pub fn materials(&self) -> Vec<&'static Material> {
        self.usually.iter().filter_map(|slug| find(slug)).collect()
    }
}

const fn usually(
    words: &'static [&'static str],
    usually: &'static [&'static str],
    tell: &'static str,
) -> Scrap {
    Scrap { words, usually, tell: practice(tell) }
}

/// The parts.
///
/// # Source
/// Common practice, no source.
#[rustfmt::skip]
pub static SCRAP: &[Scrap] = &[
    usually(&["half shaft", "halfshaft", "drive shaft", "driveshaft"], &["alloy-steel-en16", "alloy-steel-en19", "alloy-steel-en24"],
        "a file drags on it, the splined ends may be hard right through, and its sparks fork less than those of an old file; anneal a slice before you trust it."),
    usually(&["axle", "car axle", "trailer axle", "wagon axle"], &["medium-carbon-steel", "alloy-steel-en16"],
        "it files harder than mild steel and sparks with more forks; heat a slice to cherry red, quench it and file it again: one that turns hard has carbon in it."),
    usually(&["sash weight", "window weight", "sash weights"], &["grey-cast-iron"],
        "it breaks with a grey face and gives powder, no curl; the skin and thin ends may be chilled too hard to file, so break off an end and try it, and lead ones exist."),
    usually(&["hydraulic ram", "ram", "ram rod", "piston rod", "shock absorber rod", "damper rod"], &["medium-carbon-steel", "alloy-steel-en16"],
        "a bright chrome skin that a file skates on, over steel that files well; turn under the skin, or grind it off, and do not breathe that dust."),
    usually(&["bed iron", "bedstead", "bed frame", "bed angle"], &["medium-carbon-steel", "black-mild-steel"],
        "often rolled from old rail: a file drags, it cracks when bent cold and has hard spots; soften it at red heat and cool it slowly."),
    usually(&["leaf spring", "coil spring", "road spring", "car spring", "torsion bar", "valve spring", "clock spring"], &["spring-steel"],
        "a file skates on it as it comes; it sparks in bright bushy forks, and must be softened before it is drilled."),
    usually(&["printer rod", "printer shaft", "printer bar", "photocopier rod", "copier shaft"], &["leaded-free-cutting-steel", "stainless-416", "free-cutting-mild-steel"],
        "a magnet takes it; it turns with short chips where it is free-cutting steel, and a plated or chromed skin skates under a file where it is not."),
    usually(&["car piston", "piston", "engine piston"], &["cast-aluminium"],
        "light, no magnet, a grey silvery break; there are steel inserts and hard silicon in many, which take the edge off a tool."),
    usually(&["alloy wheel", "car wheel", "mag wheel"], &["cast-aluminium-lm25", "magnesium-alloy"],
        "nearly always aluminium: a drop of vinegar on a bright spot fizzes on magnesium and not on aluminium. Try that before a saw, and never a spark or a flame."),
    usually(&["brake disc", "brake drum", "disc brake", "brake disk"], &["grey-cast-iron"],
        "dull red short sparks and black powder from a file; turn below the glazed skin at once. An old drum may bear asbestos dust: wash it wet, never blow it."),
    usually(&["flywheel", "engine block", "cylinder block", "lathe bed", "exercise weight", "barbell", "dumbbell"], &["grey-cast-iron", "spheroidal-graphite-iron"],
        "black powder from the file and short dull red sparks; ductile iron gives a chip that curls a little, and rings when struck."),
    usually(&["manhole cover", "drain cover", "crankshaft", "cast crankshaft"], &["spheroidal-graphite-iron", "grey-cast-iron", "medium-carbon-steel"],
        "grey powder and dull red sparks for iron, a curled chip and forked sparks for a forged steel one."),
    usually(&["gudgeon pin", "wrist pin", "king pin", "kingpin", "cam follower"], &["case-hardening-steel"],
        "a file skates on the skin and bites inside: grind a flat and try it there. Anneal it before drilling."),
    usually(&["high tensile bolt", "bolt 8.8", "grade 8.8 bolt", "8.8 bolt", "10.9 bolt", "12.9 bolt", "cap screw", "head bolt", "con rod bolt"], &["medium-carbon-steel", "alloy-steel-en16", "alloy-steel-en19"],
        "the figure on the head says it: 8.8 is carbon or low alloy steel, 10.9 and 12.9 alloy steel that wants slow speeds."),
    usually(&["threaded rod", "studding", "allthread", "all thread", "coach bolt"], &["bright-mild-steel", "black-mild-steel"],
        "soft under the file and long-stringed under the drill where it bears no mark; plated: grind the zinc off before any heat."),
    usually(&["gas pipe", "water pipe", "iron pipe", "conduit", "scaffold tube", "railing", "railings", "gate"], &["black-mild-steel"],
        "a magnet takes it and a file bites; galvanised tube must not be heated: the zinc fume makes you ill."),
    usually(&["copper pipe", "busbar", "bus bar", "hot water cylinder", "lightning conductor"], &["copper"],
        "red under the file, heavy, no magnet; soft and sticky under the drill. Busbar and pipe are nearly pure."),
    usually(&["gate valve", "stop tap", "stopcock", "plumbing fitting", "compression fitting", "radiator valve", "bib tap"], &["dezincification-resistant-brass", "free-cutting-brass", "gunmetal"],
        "yellow for brass, redder for gunmetal; the letters CR or DZR stand on the resistant one."),
    usually(&["stair rod", "curtain rail", "curtain rod", "door furniture", "door knob", "finger plate"], &["sheet-brass", "free-cutting-brass"],
        "try a magnet and a file at the edge: many are plated or brassed steel tube."),
    usually(&["prop shaft", "propeller shaft", "boat shaft"], &["stainless-316", "naval-brass", "high-tensile-brass"],
        "yellow is brass or bronze; white and hardly magnetic is stainless."),
    usually(&["propeller", "boat propeller"], &["aluminium-bronze", "high-tensile-brass"],
        "golden and very tough under the file is aluminium bronze; yellower and easier is high-tensile brass."),
    usually(&["window frame", "greenhouse frame", "patio door", "ladder", "ali section"], &["aluminium-6063"],
        "light and soft, no magnet; it drags in the flutes and wants paraffin."),
    usually(&["carburettor", "carburetor", "door handle", "toy casting", "lock body"], &["zinc-die-casting-alloy", "cast-aluminium"],
        "weigh it in the hand: zinc is two and a half times as heavy as aluminium, with a grey crystalline break."),
    usually(&["big end bearing", "bearing shell", "main bearing"], &["white-metal"],
        "dull grey, soft enough for a fingernail edge or a knife; it melts in a ladle and holds lead: wash before food."),
    usually(&["old file", "files", "file"], &["silver-steel", "gauge-plate"],
        "not the same steel but as near as one held here, with about 1.2 % carbon: it must be softened right through before a drill looks at it."),
    usually(&["drill shank", "silver rod", "dowel pin", "dowel"], &["silver-steel", "alloy-steel-en16"],
        "ground bright and close to size; a file bites where it is soft and skates where it has been hardened."),
    usually(&["sink", "kitchen sink", "beer barrel", "beer keg", "cutlery", "exhaust", "catering tray"], &["stainless-304", "stainless-431"],
        "hardly a magnet on 304; knives are a hardening grade that a magnet takes."),
    usually(&["railway line", "rail", "railway track", "tramline"], &["spring-steel", "medium-carbon-steel"],
        "hard under the file with 0.6 to 0.8 % carbon, and the running face harder still; cut it slowly with a carbide or well-cooled tool."),
    usually(&["shell case", "cartridge case", "bullet case"], &["sheet-brass"],
        "yellow, no magnet. Leave alone any that may be live or still has its primer."),
    usually(&["condenser tube", "heat exchanger tube"], &["cupro-nickel", "naval-brass"],
        "white and not magnetic for copper-nickel, yellow for brass."),
    usually(&["spark free tool", "non sparking tool", "non sparking spanner"], &["beryllium-copper"],
        "leave it alone: its dust and fume can scar the lungs for life."),
];

/// Words that may stand before the name of a part.
const BEFORE: [&str; 6] = ["a", "an", "some", "scrap", "old", "the"];

/// The part that a text names: the words as they stand, one or several, with `old` or `scrap` before.
///
/// # Examples
/// ```
/// use holewright_core::tables::materials::scrap::scrap;
/// let weight = scrap("old sash weights").unwrap();
/// assert_eq!(weight.name(), "A sash weight");
/// assert_eq!(weight.materials().first().map(|iron| iron.slug), Some("grey-cast-iron"));
/// assert!(scrap("gunmetal").is_none());
/// ```
#[must_use]
pub fn scrap(typed: &str) -> Option<&'static Scrap> {
    let lower = typed.to_lowercase();
    let words: Vec<&str> = lower.split_whitespace().collect();
    let before = words.iter().take_while(|word| BEFORE.contains(word)).count();
    let bare = fold(&words.get(before..).unwrap_or_default().join(" "));
    let one = bare.strip_suffix('s').unwrap_or(&bare);
    // "Old file" is called so: the word that may stand before others belongs to it.
    let names = [fold(typed), bare.clone(), one.to_owned()];
    let is_called = |part: &&Scrap| part.words.iter().any(|word| names.contains(&fold(word)));
    SCRAP.iter().find(is_called)
}

/// The parts that are usually of a material, with how to tell.
pub fn of(material: &Material) -> impl Iterator<Item = &'static Scrap> {
    SCRAP.iter().filter(|part| part.usually.contains(&material.slug))
}

#[cfg(test)]
mod tests {
    use super::{SCRAP, find};

    #[test]
    fn every_part_is_of_materials_that_are_held() {
        for slug in SCRAP.iter().flat_map(|part| part.usually) {
            assert!(find(slug).is_some(), "{slug} is no material");
        }
    }
}
