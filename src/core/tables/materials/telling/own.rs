//! Materials whose answers are not those of their family.

use super::super::sources::practice;
use super::Telling;
use super::families::{
    ALUMINIUM, BRASS, BRONZE, CAST_IRON, COPPER, DUST, EYES, PLASTIC, STAINLESS, STEEL,
};

/// Materials whose tests differ from their family's.
pub(super) type Own = (&'static str, Telling);

#[rustfmt::skip]
pub(super) const OWN: &[Own] = &[
    ("spheroidal-graphite-iron", Telling {
        file: practice("It files like a soft steel, with a short curl among black powder."),
        spark: practice("Dull red near the wheel as grey iron, with more and brighter small stars."),
        apart: &[practice("It rings like steel where grey iron gives a dull note, and bends a little before it breaks.")],
        ..CAST_IRON
    }),
    ("malleable-iron", Telling {
        file: practice("It files like mild steel, with a short curl."),
        colour: practice("A steely white rim with a dark heart where it is broken."),
        apart: &[practice("Old pipe fittings and brackets: it bends before it breaks, and grey iron does not.")],
        ..CAST_IRON
    }),
    ("gunmetal", Telling {
        file: practice("It cuts cleanly in short crumbs, easier than bronze, a little tougher than brass."),
        colour: practice("Pinkish gold where it is filed: redder than brass, yellower than copper."),
        apart: &[
            practice("Brass beside it is plainly yellow; phosphor bronze is nearly the same red but springs and curls."),
            practice("A casting with a sandy skin and that colour is gunmetal far oftener than bronze."),
        ],
        ..BRONZE
    }),
    ("gunmetal-lg4", Telling {
        file: practice("It cuts cleanly in short crumbs, easier than bronze."),
        colour: practice("Pinkish gold where it is filed, a shade yellower than copper."),
        apart: &[practice("It cannot be told from the other leaded gunmetals without a mark: they are worked alike.")],
        ..BRONZE
    }),
    ("aluminium-bronze", Telling {
        file: practice("Very tough: a file that bites gunmetal slides on it."),
        colour: practice("Bright gold, lighter than any other bronze, and it hardly tarnishes."),
        apart: &[practice("Kinds with iron in them are drawn by a strong magnet a little.")],
        ..BRONZE
    }),
    ("phosphor-bronze-drawn", Telling {
        file: practice("Hard and springy: the file bites reluctantly and lifts a curl."),
        apart: &[practice("Bend a wire or a strip: it springs back, where copper and brass stay bent.")],
        ..BRONZE
    }),
    ("nickel-silver", Telling {
        colour: practice("Silver-white with a yellow cast, where other brasses are yellow."),
        apart: &[practice("Softer than stainless and not magnetic; worn plate shows yellow at the corners.")],
        ..BRASS
    }),
    ("cupro-nickel", Telling {
        colour: practice("Silver-white, pinkish in the kinds with ten of nickel."),
        apart: &[practice("Nickel silver is yellower; stainless is harder and gives a spark.")],
        ..COPPER
    }),
    ("beryllium-copper", Telling {
        file: practice("Do not file it: the dust can scar the lungs for life."),
        spark: practice("Do not grind it, and strike no spark."),
        colour: practice("Golden, between brass and copper; springs, contacts and tools marked as free of sparks."),
        apart: &[practice("A hard, springy, golden strip from a switch or a relay may be this: leave it whole, and do not work it to find out.")],
        cautions: &[practice("No file, no wheel, no flame: look and weigh, and leave it alone.")],
        ..COPPER
    }),
    ("silver-steel", Telling {
        file: practice("As it is sold it files easily, a little harder than mild steel; hardened, a file skates on it."),
        spark: practice("White-yellow bushy bursts close to the wheel, a great many forks."),
        colour: practice("Ground bright and round to a thou or so of its size, usually in 13 in or 333 mm lengths."),
        apart: &[practice("Bright mild steel is drawn, not ground, and its sparks are long with few forks. The quench settles it: silver steel goes glass hard.")],
        ..STEEL
    }),
    ("gauge-plate", Telling {
        file: practice("It files like a carbon steel, harder than mild steel, until it is hardened."),
        spark: practice("Bushy yellow bursts, fewer than silver steel."),
        colour: practice("Flat, ground on all faces to size, usually wrapped or marked with its grade."),
        ..STEEL
    }),
    ("spring-steel", Telling {
        file: practice("A file skates on it as it comes; softened, it files like a carbon steel."),
        spark: practice("Many forked bursts, whitish-yellow."),
        ..STEEL
    }),
    ("free-cutting-mild-steel", Telling {
        spark: practice("Long straw streaks with few forks, as other mild steel: sparks do not tell it."),
        apart: &[practice("In the lathe its chip breaks short and the finish is bright; plain mild steel tears and strings.")],
        ..STEEL
    }),
    ("leaded-free-cutting-steel", Telling {
        apart: &[practice("Chips like needles and a very bright finish; it may hold lead, which no spark shows.")],
        cautions: &[EYES, DUST],
        ..STEEL
    }),
    ("black-mild-steel", Telling {
        colour: practice("A blue-black scale as it comes, round-cornered and loose in size; bright below."),
        ..STEEL
    }),
    ("cast-steel", Telling {
        colour: practice("Grey with a rough cast skin, and bright where it is cut."),
        apart: &[practice("Iron gives powder and breaks; a cast steel gives a curl and bends.")],
        ..STEEL
    }),
    ("stainless-303", Telling {
        file: practice("It files more easily than 304, with short chips."),
        apart: &[
            practice("In the lathe its chips break, where 304 winds off blue strings: that is the surest test at the bench."),
            practice("Neither magnet nor spark tells it from 304: where it matters, buy it marked."),
        ],
        ..STAINLESS
    }),
    ("stainless-416", Telling {
        magnet: practice("A magnet takes it as it takes steel: so it is not of the 300 kinds."),
        spark: practice("Longer orange streaks than 304, with some forks."),
        apart: &[practice("Chips break; it rusts in time where 303 does not.")],
        ..STAINLESS
    }),
    ("stainless-431", Telling {
        magnet: practice("A magnet takes it as it takes steel: so it is not of the 300 kinds."),
        spark: practice("Longer orange streaks than 304, with some forks."),
        apart: &[practice("Hard under the file as supplied; knives, pump and valve spindles.")],
        ..STAINLESS
    }),
    ("aluminium-2014", Telling {
        file: practice("It files crisply and does not clog, with a bright hard surface."),
        colour: practice("White, and duller or browner with age than 6082; anodises yellowish."),
        ..ALUMINIUM
    }),
    ("aluminium-6063", Telling {
        file: practice("Soft, and clogs the file; it is bent by hand in the thin."),
        ..ALUMINIUM
    }),
    ("cast-aluminium", Telling {
        file: practice("It cuts more crisply than soft bar, and dulls the file where it is rich in silicon."),
        colour: practice("Grey with a cast skin; a grey, granular break."),
        ..ALUMINIUM
    }),
    ("ptfe", Telling {
        file: practice("Waxy and soft: a finger nail marks it and it scrapes to fluff."),
        colour: practice("Dead white and slippery; very heavy for a plastic."),
        ..PLASTIC
    }),
    ("acrylic", Telling {
        apart: &[practice("Scored and bent it snaps clean, where polycarbonate bends double.")],
        colour: practice("Clear with a clean edge, or in colours; it rings when it is tapped."),
        ..PLASTIC
    }),
    ("polycarbonate", Telling {
        apart: &[practice("It bends double without breaking, where acrylic snaps.")],
        colour: practice("Clear, with a greyish or bluish edge; it thuds when it is tapped."),
        ..PLASTIC
    }),
    ("laminated-phenolic", Telling {
        file: practice("It files to a dry brown dust that smells of carbolic, and the edge shows cloth or paper."),
        colour: practice("Brown to black, in layers; with a weave for cloth, plain for paper."),
        apart: &[],
        cautions: &[practice("The dust irritates skin and lungs: a mask, and take it up, do not blow it.")],
        ..PLASTIC
    }),
];
