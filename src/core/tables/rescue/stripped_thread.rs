//! A stripped thread: the next size, a bush, a wire insert with its hole.

use super::{A_THREAD, EYES, PRESSURE, See, Trouble, practice, read, way};
use crate::tables::inserts::DESIGN;

#[rustfmt::skip]
pub(super) const TROUBLE: Trouble = Trouble {
    slug: "stripped-thread",
    title: "A stripped thread",
    first: practice("Find out why before it is mended: too large a hole, too short a thread, the wrong screw, or too long a spanner. The mend fails the same way else."),
    names: &["stripped thread", "stripped threads", "thread stripped", "stripped hole", "thread pulled out", "thread insert", "wire insert", "helical insert", "thread repair", "crossthreaded", "cross threaded"],
    signs: &[[&["thread", "threads", "hole", "tapped", "nut", A_THREAD], &["stripped", "strip", "strips", "stripping", "pulled", "crossthreaded", "gone"]]],
    dangers: &[EYES, PRESSURE],
    ways: &[
        way("Look at the screw", &[practice("If the screw's thread is gone and the hole's is whole, a new screw is all it wants.")]),
        way("A longer screw", &[practice("Where the hole is tapped deeper than the screw went, or can be, whole thread is waiting below.")]),
        way("The next size up", &[
            practice("Drill the tapping size of the next thread that cleans the old one up, and tap it; the part on top then wants a larger clearance hole."),
            practice("See that the wall and the head allow it: from the middle of the hole to the edge at least half of the nut across its corners, and a little."),
        ]),
        way("A stepped stud", &[practice("Turn a stud with the larger thread at its root and the old one outside: the part on top stays as it is.")]),
        way("A wire insert", &[
            practice("Drill the insert's own size, tap with the insert's own tap, and wind the insert in: the old screw fits again, and holds better than before in soft metal."),
            read("Set the insert ¾ to 1½ turns below the face, in a part at least one turn thicker than the insert is long, with a wall of twice the diameter of its tap.", DESIGN),
            practice("The holes in print below are for a tap that forms; one that cuts wants the smaller hole its maker gives. Break the tang off, and count it out of the hole."),
        ]),
        way("A bush", &[
            practice("Tap the hole large, screw in a bush of the same metal with retaining compound or soft solder, face it off, and drill and tap it on the old centre."),
            practice("Retaining compound and soft solder let go with heat: neither in a part that runs hot."),
        ]),
        way("Plug it and move", &[practice("Plug the hole and put the next one between the old: in a cover that means a new pattern.")]),
    ],
    stop: practice("Stop when the mend leaves less wall than metal taken out: the casting cracks there next."),
    see: &[
        See { url: "/threads", words: "The next size: every thread with its tapping drill" },
        See { url: "/rescue/loose-thread", words: "Before it strips: a thread that is loose" },
    ],
};
