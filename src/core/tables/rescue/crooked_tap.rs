//! A tap that goes in crooked.

use super::{EYES, PRESSURE, See, Trouble, practice, way};

#[rustfmt::skip]
pub(super) const TROUBLE: Trouble = Trouble {
    slug: "crooked-tap",
    title: "A tap going in crooked",
    first: practice("Stop within the first two turns: a tap that has cut more than that follows its own thread, and pulling it straight breaks it."),
    names: &["crooked tap", "tap crooked", "tap not square", "crooked thread", "thread not square", "leaning tap"],
    signs: &[[&["tap", "tapping", "taps", "thread", "tapped"], &["crooked", "askew", "skew", "leaning", "leans", "squint", "wonky", "slanting", "wandered", "wanders"]]],
    dangers: &[
        EYES,
        practice("Where a drill chuck or a lathe guides the tap, isolate the machine, take the chuck key out, and turn the chuck by hand."),
        PRESSURE,
    ],
    ways: &[
        way("Back it out and look", &[
            practice("Set a small square to the tap from two sides, a quarter apart: the eye alone is out by three degrees and more."),
            practice("See that the part itself lies flat, and that the hole is square: a tap follows the hole."),
        ]),
        way("Start it again with a guide", &[
            practice("A block with a hole square through it that the tap just passes, held on the face, straightens the first turns."),
            practice("Or put the tap in the drill chuck over the hole it was drilled in, without moving the part, and turn by hand; or from the tailstock in the lathe."),
            practice("Light downward pressure, the taper tap, and let go of the guide once it has bitten square."),
        ]),
        way("From the other side", &[practice("A through hole can be tapped from the far face: the taper tap goes square there and cleans the thread as it comes through.")]),
        way("The next size up", &[practice("Where two or three turns are spoilt, open the hole out on the machine, which straightens it, and tap the next size square.")]),
        way("Live with the lean", &[
            practice("A screw that only holds may lean a little: give its clearance hole what the lean takes, and let the head bear on a spotface square to the thread or on a spherical washer."),
            practice("A stud that has to stand upright cannot be bent straight: bush the hole, or make a stud with a stepped end."),
        ]),
    ],
    stop: practice("Stop when the tap is in by more than its diameter and leans so that it can be seen: from there it is bushed or moved, not corrected."),
    see: &[
        See { url: "/calculators/position", words: "What a lean takes of the clearance" },
        See { url: "/rescue/broken-tap", words: "If it broke: a broken tap" },
    ],
};
