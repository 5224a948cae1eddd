//! A drill broken off in its hole.

use super::{EYES, NO_AIR_LINE, PRESSURE, See, Trouble, Way, practice, way};
use crate::tables::materials::{Advice, BrokenTap};
use crate::tables::tool_steel::ToolSteel;

const ALUM: [Advice; 2] = [
    practice(
        "A carbon steel drill in brass, bronze, gunmetal or copper goes the way of a carbon steel tap, in hot alum: read that way with its dangers before it is tried.",
    ),
    practice("Reports on high-speed steel are mixed, and carbide is not touched by it."),
];

#[rustfmt::skip]
pub(super) const TROUBLE: Trouble = Trouble {
    slug: "broken-drill",
    title: "A drill broken in the hole",
    first: practice("Stop the machine, leave the part clamped as it is, and mark how deep the drill was: the same set-up is wanted again."),
    names: &["broken drill", "drill broken", "drill snapped", "drill broke", "broken drill bit", "snapped drill", "carbide drill broken"],
    signs: &[[&["drill", "drills", "bit"], &["broken", "broke", "breaks", "snapped", "snap", "bust", "busted", "shattered", "stuck", "jammed"]]],
    dangers: &[
        EYES,
        practice("Carbide under a punch goes to splinters: a screen or a rag over the hole, and the face away."),
        practice("Nothing that burns or bangs is put in a hole to blow a drill out, and no acid."),
        PRESSURE,
    ],
    ways: &[
        way("Shake it out", &[
            NO_AIR_LINE,
            practice("Turn the part mouth downwards and rap it; a drill that snapped on break-through is often loose. A magnet or a spot of glue on a wire lifts it."),
        ]),
        way("Turn it back", &[
            practice("Two wires down the flutes, or fine-nosed pliers on what stands out, turned against the cut, with oil."),
        ]),
        way("Push it from behind", &[
            practice("Where the hole is through, or can be met from the far side by a smaller one, push the stump out with a flat pin, a little at a time."),
        ]),
        Way { name: "Dissolve it", parts: &[BrokenTap::HotAlum], taps: &[ToolSteel::Carbon], says: &ALUM, dangers: &[] },
        way("Break it up", &[
            practice("A carbide or a small hard drill is brittle: crack it with a hard flat-ended punch, light blows along the axis, and pick the pieces out. From the back where that can be."),
            practice("A small carbide or diamond burr in a fast spindle grinds a high-speed stump away."),
        ]),
        way("Have it spark-eroded", &[practice("Spark erosion takes the stump out of any metal and spares the part: ask before a good part is given up.")]),
        way("Move the hole", &[practice("Beside the old one where it does no harm, or plug it. A drill put down on a broken one runs off and breaks too.")]),
    ],
    stop: practice("Stop when the hole begins to grow: a hole that is still round can be plugged, and one that was dug out cannot."),
    see: &[
        See { url: "/rescue/broken-tap", words: "Alum, and all that goes with it: a broken tap" },
        See { url: "/calculators/speeds", words: "Speed, feed and when to clear" },
    ],
};
