//! A thread that is loose.

use super::{EYES, PRESSURE, See, Trouble, practice, way};

#[rustfmt::skip]
pub(super) const TROUBLE: Trouble = Trouble {
    slug: "loose-thread",
    title: "A thread that is loose",
    first: practice("Measure both before either is blamed: the screw over its thread, and the hole at its crests."),
    names: &["loose thread", "thread too loose", "sloppy thread", "slack thread", "thread is loose", "hole too big", "tapped hole too big", "hole too large", "tapping hole too big"],
    signs: &[[&["thread", "threads", "screw", "screws", "stud"], &["loose", "sloppy", "slack", "wobbly", "wobbles", "shaky"]]],
    dangers: &[EYES, PRESSURE],
    ways: &[
        way("See that they are a pair", &[
            practice("Near alikes go in for a few turns and then bind, or shake all the way: 0 BA and M6 have one pitch and two angles. The thread's page lists its near relations."),
        ]),
        way("Measure the screw", &[practice("Bought screws are made small, and rolled ones smaller: a new one, or one cut here with the die opened a little, may be all it wants.")]),
        way("Work out what the hole leaves", &[
            practice("The calculator of tapping sizes gives the engagement of the hole as measured. Shake is no sign of it: a thread at 60 % holds nearly as well as one at 75."),
        ]),
        way("Cut the screw to the hole", &[practice("Leave the die open and cut the screw a shade full, trying it in the hole: the fit is then made and not found. Mark it for that hole.")]),
        way("Lock it", &[practice("A lock nut, or thread-locking compound of the strength that still comes apart, holds a screw that only shakes. Neither mends a thread that is about to strip.")]),
        way("An insert or the next size", &[practice("Under half of the full thread, treat it as stripped.")]),
    ],
    stop: practice("Stop where a loose thread holds a part that can hurt somebody if it comes off: that one is made again."),
    see: &[
        See { url: "/calculators/tapping", words: "What a hole leaves of its thread" },
        See { url: "/rescue/stripped-thread", words: "A stripped thread" },
    ],
};
