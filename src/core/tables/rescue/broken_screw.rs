//! A stud or a screw sheared off in its hole.

use super::{EYES, PRESSURE, See, Trouble, practice, way};

#[rustfmt::skip]
pub(super) const TROUBLE: Trouble = Trouble {
    slug: "broken-screw",
    title: "A stud or screw sheared off",
    first: practice("Stop before it is hammered or welded at: a stump that still turns comes out with patience, and one that was burred over does not."),
    names: &["sheared stud", "broken stud", "snapped stud", "sheared screw", "broken screw", "snapped screw", "stud sheared", "screw sheared", "sheared bolt", "broken bolt", "screw extractor", "extractor"],
    signs: &[[&["stud", "studs", "screw", "screws", "bolt", "bolts"], &["broken", "broke", "snapped", "sheared", "shear", "bust", "busted", "stuck", "seized"]]],
    dangers: &[EYES, PRESSURE],
    ways: &[
        way("Soak it", &[practice("Penetrating oil, a light tapping on the stump to let it creep, and a night. Warming the part about it, where it may be warmed, loosens more than force.")]),
        way("Turn what stands out", &[practice("File two flats or a screwdriver slot, or run two nuts on it and lock them against each other, and rock it out.")]),
        way("Drill down its middle", &[
            practice("Face the stump flat, pop or spot its true centre, and drill small; a left-hand drill often brings it out by itself."),
            practice("A screw extractor is harder than any drill: a small one that breaks is worse than the stud."),
        ]),
        way("Drill to the tapping size", &[practice("Set up on the machine over the true centre, drill up to the tapping size, and pick the spiral of old thread out with a scriber; then run a tap through.")]),
        way("Insert, bush or next size", &[practice("Where the hole ran off its centre, treat it as a stripped thread.")]),
    ],
    stop: practice("Stop when the drill leaves the stud for the softer metal beside it: bore it on the lathe or the mill, where the drill cannot run."),
    see: &[
        See { url: "/rescue/stripped-thread", words: "A stripped thread" },
        See { url: "/rescue/broken-tap", words: "A broken tap" },
    ],
};
