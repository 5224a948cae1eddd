//! A thread that comes out torn.

use super::{A_THREAD, EYES, NO_AIR_LINE, PRESSURE, See, Trouble, practice, way};

#[rustfmt::skip]
pub(super) const TROUBLE: Trouble = Trouble {
    slug: "torn-thread",
    title: "A torn thread",
    first: practice("Stop at the first rough turn and look at the chips: torn thread comes from the tap, the oil or the hole, and more turning mends none of them."),
    names: &["torn thread", "torn threads", "rough thread", "ragged thread", "thread tearing"],
    signs: &[[&["thread", "threads", A_THREAD], &["torn", "tearing", "tears", "rough", "ragged", "crumbling", "crumbles"]]],
    dangers: &[EYES, PRESSURE],
    ways: &[
        way("Clear and oil", &[
            NO_AIR_LINE,
            practice("Oil as the metal asks. Copper, stainless, drawn bronze and soft steel tear dry; grey iron and free-cutting brass are cut dry, and crumble with a clogged tap."),
        ]),
        way("Look at the tap", &[
            practice("Chipped, blunt or with metal welded on its lands: stone the flutes' faces, or take another."),
            practice("Second-hand carbon steel taps are often worn at the start of the lead, where all the cutting is."),
        ]),
        way("Measure the hole", &[practice("A hole too small makes the tap rub the crests off: try the drill in it, and take the next easier one.")]),
        way("Turn back more often", &[practice("Half a turn on, and back until the chip breaks, in metals with long chips; grey iron and brass want clearing more than turning back.")]),
        way("Finish with a fresh tap", &[practice("A thread torn only at its crests is often saved by the second and the plug tap with fresh oil, and does its work.")]),
        way("Start it square", &[practice("A thread torn on one side alone was cut leaning: look at the tap with a square.")]),
    ],
    stop: practice("Stop where more than every third turn is torn: that thread will strip. The next size, or an insert."),
    see: &[
        See { url: "/materials", words: "What each metal wants on the tap" },
        See { url: "/rescue/stripped-thread", words: "A stripped thread" },
    ],
};
