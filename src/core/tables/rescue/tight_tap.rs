//! A tap that turns too hard, before it breaks.

use super::{EYES, NO_AIR_LINE, PRESSURE, See, Trouble, practice, way};

#[rustfmt::skip]
pub(super) const TROUBLE: Trouble = Trouble {
    slug: "tight-tap",
    title: "A tap that turns too hard",
    first: practice("Stop as soon as the tap springs under the wrench: what it turns after that, it turns in its own core."),
    names: &["tight tap", "stiff tap", "tap too tight", "tap turns hard", "tap too stiff"],
    signs: &[[&["tap", "tapping", "taps"], &["tight", "stiff", "binding", "binds", "springs", "squeaks", "squealing"]]],
    dangers: &[EYES, PRESSURE],
    ways: &[
        way("Back off and clear", &[
            practice("Back until it runs free, take it right out, and clear tap and hole."),
            NO_AIR_LINE,
            practice("A blind hole full of chips feels just like a tap on the bottom: measure the depth with a rod."),
        ]),
        way("Oil it", &[practice("Use what the metal asks for, on the tap and in the hole; dry stainless, copper and bronze grip a tap.")]),
        way("Start with the taper", &[practice("Taper, second, plug: a plug tap alone cuts the whole thread with its first two turns.")]),
        way("Measure the hole", &[
            practice("A hole below the core jams any tap: try the shank of the tapping drill in it, and drill again if it does not go."),
            practice("The next easier drill costs a little thread and saves much turning: the plan gives it with its figure."),
        ]),
        way("Look at the tap", &[
            practice("A blunt or chipped tap, or one with metal welded to its lands, goes no easier for waiting: stone the faces of its flutes, or take a new one."),
            practice("A tap for another form or pitch bites after a turn or two: look at its shank."),
        ]),
        way("Look whether it is square", &[practice("A leaning tap cuts on one side and binds on the other: start it again with a guide.")]),
        way("Shorten the wrench", &[practice("A wrench no longer than the size asks for lets the hand feel the tap; small taps want a pin chuck or the fingers.")]),
    ],
    stop: practice("Stop when it turns no easier after a clean hole, fresh oil and the taper tap: drill larger, or make the thread in another place."),
    see: &[
        See { url: "/plan", words: "Plan a hole: the drill for this metal, and the next easier" },
        See { url: "/rescue/broken-tap", words: "If it broke: a broken tap" },
    ],
};
