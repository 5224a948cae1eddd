//! How to tell each family: what every material of it answers, unless it has an answer of its own.

use super::super::Advice;
use super::super::sources::practice;
use super::Telling;

pub(super) const EYES: Advice = practice(
    "Goggles for every spark test, a guarded wheel, and nobody in the line of the sparks.",
);
pub(super) const LOADS_A_WHEEL: Advice = practice(
    "Do not grind it: it loads the wheel, which may then burst, and gives no spark that tells anything.",
);
pub(super) const NO_MAGNET: Advice = practice("A magnet does not take it.");
pub(super) const MAGNET: Advice = practice("A magnet takes it strongly.");
pub(super) const SOFT_NO_WHEEL: Advice =
    practice("Do not grind soft metal: the wheel loads and may burst. Tell it by file and weight.");
pub(super) const FIRE: Advice = practice(
    "Filings, grindings and sparks burn fiercely, and water makes it worse: clean wheel or none, no steel sparks near, dry sand at hand.",
);
pub(super) const DUST: Advice = practice(
    "Filings may hold lead: no dust in the mouth, wash before food, and sweep, never blow.",
);

pub(super) const CAST_IRON: Telling = Telling {
    file: practice(
        "It files easily under a hard skin and gives black powder that dirties the fingers, no curl.",
    ),
    spark: practice("Short, dull red streaks close to the wheel, with a few small stars."),
    magnet: MAGNET,
    colour: practice("Dark grey where it is cut, grey and grainy where it is broken."),
    apart: &[
        practice("Steel gives a curled chip where iron gives powder, and rings when it is struck."),
        practice(
            "A corner struck with a hammer breaks off; that of steel or malleable iron bends first.",
        ),
    ],
    cautions: &[
        EYES,
        practice("The dust is fine and black: keep it out of your lungs and off the slides."),
    ],
};

pub(super) const BRASS: Telling = Telling {
    file: practice(
        "It cuts at once, with bright yellow dust or chips; free-cutting brass scatters in small needles, sheet brass drags.",
    ),
    spark: LOADS_A_WHEEL,
    magnet: practice("A magnet does not take it; if one does, it is brass plate on steel."),
    colour: practice(
        "Yellow where it is cut, paler with more zinc; it goes brown, not green, indoors.",
    ),
    apart: &[
        practice(
            "Gunmetal and bronze are redder where freshly filed, side by side under one light.",
        ),
        practice(
            "Bronze is tougher under the file than brass and gives a curl where free-cutting brass gives needles.",
        ),
        practice("A turned chip of free-cutting brass flies as dust; bronze and copper wind off."),
    ],
    cautions: &[DUST],
};

pub(super) const BRONZE: Telling = Telling {
    file: practice(
        "It cuts cleanly and is a little tougher than brass; gunmetal gives short crumbs, phosphor bronze a springy curl.",
    ),
    spark: LOADS_A_WHEEL,
    magnet: NO_MAGNET,
    colour: practice(
        "Red-gold where it is cut, between brass and copper; brown when old, green in the wet.",
    ),
    apart: &[
        practice(
            "Gunmetal is usually a casting with a sandy skin; phosphor bronze mostly comes as drawn or chilled bar, harder and springier.",
        ),
        practice("Brass beside it is yellower; copper is redder and far softer."),
    ],
    cautions: &[DUST],
};

pub(super) const COPPER: Telling = Telling {
    file: practice("Soft: it clogs the file with long red pins. Chalk on the file helps."),
    spark: LOADS_A_WHEEL,
    magnet: NO_MAGNET,
    colour: practice("Salmon red where it is cut; no other metal here has that colour."),
    apart: &[practice(
        "Bend a strip: soft copper stays where you put it and stiffens as it is bent, bronze springs back.",
    )],
    cautions: &[],
};

pub(super) const STEEL: Telling = Telling {
    file: practice(
        "Soft steel files easily with a bright curl; a file drags on medium carbon and alloy steel, and skates where it is hardened.",
    ),
    spark: practice(
        "Long straw-coloured streaks with few forks for mild steel; the more carbon, the shorter and the more they burst into forks.",
    ),
    magnet: MAGNET,
    colour: practice(
        "Bright silver-grey where it is cut; black scale on hot-rolled, plain and bright on drawn bar.",
    ),
    apart: &[
        practice(
            "For carbon, heat a slice to cherry red, quench it in water and file it: mild steel still files, carbon steel is skated on and snaps.",
        ),
        practice(
            "Free-cutting steel gives short broken chips in the lathe where plain mild steel gives strings.",
        ),
        practice(
            "Grind a bar you know beside the one you do not: sparks tell by comparison, hardly alone.",
        ),
    ],
    cautions: &[
        EYES,
        practice(
            "Quench away from yourself, with dry tongs: a hardened slice can fly when it is struck.",
        ),
    ],
};

pub(super) const STAINLESS: Telling = Telling {
    file: practice("Tough: it files slowly, and polishes hard where the file is let rub."),
    spark: practice("Few, short, orange-red streaks with little forking."),
    magnet: practice(
        "A magnet hardly takes the 300 kinds, a little more where they were bent or drawn cold.",
    ),
    colour: practice("White to grey, and bright where nothing has been done for years."),
    apart: &[
        practice(
            "303 turns with chips that break, 304 and 316 wind off in blue strings and harden where the tool dwells.",
        ),
        practice(
            "Nickel-plated steel or brass looks the same: file an edge, and try a magnet there.",
        ),
        practice(
            "304 from 316 cannot be told by file, spark or magnet: go by the mark, or treat it as 304 where salt water matters.",
        ),
    ],
    cautions: &[EYES],
};

pub(super) const NICKEL: Telling = Telling {
    file: practice("Tough and gummy, harder work than mild steel."),
    spark: practice("Very few, short, orange streaks, no forks: hardly a spark at all."),
    magnet: practice("A magnet takes it weakly or not at all, by its warmth and make."),
    colour: practice(
        "Silver-white with a touch of yellow; it stays bright in salt water, where stainless pits.",
    ),
    apart: &[practice("Cupro-nickel looks like it and is softer; stainless is harder and sparks.")],
    cautions: &[EYES],
};

pub(super) const TITANIUM: Telling = Telling {
    file: practice(
        "It files like a tough steel, galls, and weighs little more than half of what your hand expects.",
    ),
    spark: practice(
        "Brilliant white sparks, which no other light metal gives: a touch on a clean wheel is enough, or leave it.",
    ),
    magnet: NO_MAGNET,
    colour: practice(
        "Grey, darker than stainless; a scratch with it on wet glass or tile leaves a grey line.",
    ),
    apart: &[practice("Aluminium is lighter and soft; stainless is nearly twice as heavy.")],
    cautions: &[FIRE, EYES],
};

pub(super) const ALUMINIUM: Telling = Telling {
    file: practice(
        "Soft: it fills the file, the pure and the 6063 kinds worst; the 2011 and 2014 kinds cut clean and crisp.",
    ),
    spark: LOADS_A_WHEEL,
    magnet: NO_MAGNET,
    colour: practice("White where it is cut, soon dull grey; the kinds with copper dull darker."),
    apart: &[
        practice(
            "Strong alloy (dural) rings when struck, files crisply and springs; soft alloy thuds, drags and stays bent.",
        ),
        practice(
            "A drop of caustic soda on a clean spot goes black on alloys with copper (2011, 2014) and stays white on 6082 and 6063: gloves and goggles, rinse at once.",
        ),
        practice("Magnesium is a third lighter again and fizzes in vinegar."),
    ],
    cautions: &[practice(
        "Caustic soda blinds and burns: goggles and gloves, a drop and no more, rinsed off.",
    )],
};

pub(super) const MAGNESIUM: Telling = Telling {
    file: practice(
        "Very easy and dry, with light bright chips. File over a clean tray and keep no filings.",
    ),
    spark: practice("Strike no spark and do not grind it: the dust explodes and burns white."),
    magnet: NO_MAGNET,
    colour: practice(
        "Silver-white where it is cut, grey and chalky when old; often a yellow or brown treated skin.",
    ),
    apart: &[practice(
        "A third lighter than aluminium. A drop of vinegar on a clean spot fizzes; on aluminium it does not.",
    )],
    cautions: &[FIRE],
};

pub(super) const ZINC: Telling = Telling {
    file: practice("Soft, and clogs the file; it breaks rather than bends."),
    spark: SOFT_NO_WHEEL,
    magnet: NO_MAGNET,
    colour: practice(
        "Blue-grey, with a bright crystalline break; fine detail and thin flash as it came from the die.",
    ),
    apart: &[practice(
        "As heavy as iron, where a casting of aluminium would be two fifths of that.",
    )],
    cautions: &[],
};

pub(super) const WHITE_METAL: Telling = Telling {
    file: practice("Very soft: a knife pares it and a thumb nail may mark it."),
    spark: SOFT_NO_WHEEL,
    magnet: NO_MAGNET,
    colour: practice("Dull silver, white with much tin, darker with much lead."),
    apart: &[practice(
        "A tin-base one crackles when it is bent near the ear; a lead-base one draws a grey line on paper.",
    )],
    cautions: &[DUST],
};

pub(super) const PLASTIC: Telling = Telling {
    file: practice(
        "It files to fluff, curl or powder according to the kind; a finger nail marks the soft ones.",
    ),
    spark: practice(
        "No spark. Do not burn a piece to smell it: the fumes of several are poisonous.",
    ),
    magnet: NO_MAGNET,
    colour: practice("Any colour: white and black tell nothing."),
    apart: &[
        practice(
            "Nylon sinks slowly, acetal faster, and PTFE sinks fast and feels waxy and heavy.",
        ),
        practice("Acetal turns to crisp white curls that break; nylon strings and bends."),
    ],
    cautions: &[practice(
        "Overheated PTFE, acetal and PVC give off fumes that harm the lungs: no flame test.",
    )],
};
