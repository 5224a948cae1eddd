//! A tap broken off in its hole: what frees it, what dissolves it and what it would take with it.

use super::{EYES, PRESSURE, See, Trouble, Way, practice, read, way};
use crate::tables::materials::{Advice, BrokenTap};
use crate::tables::source::Source;
use crate::tables::tool_steel::ToolSteel;

const ALUM_1945: Source = Source::published("American Horologist, March 1945, article 26");
const SOCIETY: Source = Source::published("a model engineering society's page on broken taps");

const GRIP: [Advice; 3] = [
    practice("Where some stands out, grip it with pliers or file two flats for a small wrench."),
    practice(
        "Rock it a hair either way, feeling for the chip that holds it, with cutting oil; then back, a little and a little.",
    ),
    practice("Both ways gently: a twist hard enough to move it at once breaks it lower down."),
];
const FORK: [Advice; 3] = [
    practice(
        "Two, three or four legs of hard wire, or a tube filed to fingers, go down the flutes beside the stump; a ring about them keeps them in.",
    ),
    practice("Turn back by the legs, rocking as before."),
    practice("When the legs bend, stop: they break too, and are harder to get out than the tap."),
];
const FROM_BEHIND: [Advice; 2] = [
    practice(
        "In a through hole look from the far side: what stands out there may be turned on through, or back.",
    ),
    practice(
        "Support the part close about the hole, and tap on the stump with a small brass drift only to loosen it.",
    ),
];
const ALUM: [Advice; 6] = [
    practice(
        "Take off every other piece of steel first: a pin, a spring or a stud goes the same way as the tap.",
    ),
    read(
        "One part of alum to three of water by volume, boiled in glass, had small steel out in 3 to 15 minutes; how strong it is hardly matters.",
        ALUM_1945,
    ),
    read(
        "A saturated solution near the boil, in an aluminium pan, took about an hour for a carbon steel tap of 1/8 in, and left brass, phosphor bronze and silver-soldered copper unmarked.",
        SOCIETY,
    ),
    practice(
        "The two differ in time and in the pan: go by what the stump does, and expect hours where the hole is deep and narrow.",
    ),
    practice(
        "Degrease the hole, stand it mouth upwards with the solution well over it, and brush the black off now and then.",
    ),
    read(
        "Make up with hot water what boils away, and rinse in boiling water at the end.",
        ALUM_1945,
    ),
];
const ALUM_DANGERS: [Advice; 2] = [
    practice(
        "In the open or in a strong draught, with goggles and gloves: hot alum spits, and the steel gives off hydrogen, so no flame and no lid.",
    ),
    practice(
        "No pan that is used for food, then or later; label what is kept; wash it away with plenty of water.",
    ),
];
const SCRAP_FIRST: [Advice; 2] = [
    practice(
        "Whether hot alum leaves this metal unmarked is not confirmed: reports differ. Try it on a scrap of the same metal first, for as long as it would take.",
    ),
    practice("If the scrap dulls or pits, leave alum alone and go on to the next way."),
];
const HIGH_SPEED: [Advice; 2] = [
    practice(
        "Reports on high-speed steel are mixed: some of it dissolves slowly, some not at all. Try the other half of the tap in a jar first.",
    ),
    practice(
        "Where that half is no smaller after a fair trial near the boil, go on to the next way.",
    ),
];
const NEVER: [Advice; 1] = [read(
    "No bath: never put iron or steel work in alum, since the work dissolves with the tap.",
    ALUM_1945,
)];
const ATTACKS: [Advice; 1] = [practice(
    "No bath of any kind: alum is acid enough to eat magnesium and zinc, and gives off hydrogen as it does.",
)];
const SOFTEN: [Advice; 2] = [
    practice(
        "A carbon steel tap is soft after a dull red heat and slow cooling, and can then be drilled, on its centre, and picked out.",
    ),
    practice(
        "Only where the part may be heated so: not near a soldered or hardened place, and no thin iron casting, which cracks or turns glass-hard.",
    ),
];
const PLASTIC: [Advice; 1] = [practice(
    "Prick round the tap with a hot needle or a scriber and wind it out: a plastic gives way. No solvent: it crazes many of them.",
)];
const SHATTER: [Advice; 3] = [
    practice(
        "A small tap is brittle: crack it with a hard, flat-ended punch, a light blow at a time, and pick the pieces out with a scriber or tweezers.",
    ),
    practice(
        "Strike along the axis only: aside, the thread goes with it. Stop when pieces no longer come.",
    ),
    practice(
        "Where there is a fast spindle, a small carbide or diamond burr grinds the core away instead.",
    ),
];
const GRINDING_DUST: [Advice; 1] =
    [practice("Grinding: goggles and a mask, and no loose sleeve near the spindle.")];
const SPARK: [Advice; 2] = [
    practice(
        "Spark erosion eats the core out of any tap in any metal and leaves the thread: ask in the club, or a toolroom near by, before a good casting is given up.",
    ),
    practice("It wants the part clean, and to be told where the hole is and how deep."),
];
const MOVE: [Advice; 2] = [
    practice(
        "Move the hole, if one more beside it does no harm, or drill the place out with a larger annular cutter and plug it.",
    ),
    practice("Weigh it against a new part: a plate is sooner made again than rescued."),
];

const HOT: &[BrokenTap] = &[BrokenTap::HotAlum];
const ANY: Way = Way { name: "", parts: &[], taps: &[], says: &[], dangers: &[] };

#[rustfmt::skip]
pub(super) const TROUBLE: Trouble = Trouble {
    slug: "broken-tap",
    title: "A broken tap",
    first: practice("Stop turning. More is lost in the minute after a tap breaks than by the break: clear the chips, oil it, and look."),
    names: &[
        "broken tap", "broken taps", "snapped tap", "tap snapped", "tap broke", "bust tap", "broken tap removal",
        "remove broken tap", "stuck tap", "alum for broken tap", "alum bath",
    ],
    signs: &[[
        &["tap", "taps"],
        &["broken", "broke", "breaks", "snapped", "snap", "snaps", "bust", "busted", "sheared", "shattered", "stuck", "jammed", "seized"],
    ]],
    dangers: &[
        EYES,
        practice("No acid, for this or any metal: neither nitric acid nor drain cleaner is advised here. They burn, fume, and eat more than the tap."),
        PRESSURE,
    ],
    ways: &[
        way("Clear the hole", &[super::NO_AIR_LINE, practice("Oil it, and let the oil creep while you make a fork.")]),
        way("Wind it back", &GRIP),
        way("Turn it by its flutes", &FORK),
        way("Look from behind", &FROM_BEHIND),
        Way { name: "Wind it out of a plastic", parts: &[BrokenTap::NoNeed], says: &PLASTIC, ..ANY },
        Way { name: "Dissolve it in hot alum", parts: HOT, taps: &[ToolSteel::Carbon], says: &ALUM, dangers: &ALUM_DANGERS },
        Way { name: "Try alum on the other half of the tap", parts: HOT, taps: &[ToolSteel::HighSpeed], says: &HIGH_SPEED, dangers: &ALUM_DANGERS },
        Way { name: "Try alum on a scrap of the metal", parts: &[BrokenTap::AlumUnconfirmed], taps: &[ToolSteel::Carbon], says: &SCRAP_FIRST, dangers: &ALUM_DANGERS },
        Way { name: "No alum", parts: &[BrokenTap::NeverAlum], says: &NEVER, ..ANY },
        Way { name: "No bath", parts: &[BrokenTap::AlumAttacks], says: &ATTACKS, ..ANY },
        Way { name: "Soften it and drill it", parts: &[BrokenTap::NeverAlum], taps: &[ToolSteel::Carbon], says: &SOFTEN, ..ANY },
        Way { name: "Break it up", says: &SHATTER, dangers: &GRINDING_DUST, ..ANY },
        Way { name: "Have it spark-eroded", parts: &[BrokenTap::HotAlum, BrokenTap::NeverAlum, BrokenTap::AlumUnconfirmed, BrokenTap::AlumAttacks], says: &SPARK, ..ANY },
        way("Move the hole", &MOVE),
    ],
    stop: practice("Stop when a way has gained nothing in a quarter of an hour, when the thread begins to go, or when the next way costs more than a new part."),
    see: &[
        See { url: "/rescue/tight-tap", words: "Why taps break: a tap that turns too hard" },
        See { url: "/materials", words: "Each metal, with what a bath does to it" },
    ],
};
