//! A hole in the wrong place.

use super::{EYES, PRESSURE, See, Trouble, practice, way};

#[rustfmt::skip]
pub(super) const TROUBLE: Trouble = Trouble {
    slug: "hole-astray",
    title: "A hole in the wrong place",
    first: practice("Stop and measure how far it is out, and which way, before anything is done about it: much of what is out still goes together."),
    names: &["hole astray", "hole in the wrong place", "hole in wrong place", "hole wandered", "misplaced hole", "drill wandered"],
    signs: &[[&["hole", "holes", "drill", "centre"], &["astray", "wandered", "misplaced", "misdrilled", "wrong", "strayed"]]],
    dangers: &[EYES, PRESSURE],
    ways: &[
        way("Ask whether it matters", &[
            practice("The float of the screw is shared by both parts: the calculator says whether they go together with the centre so far out."),
            practice("In a pattern try the part each way round, and mark the one that goes."),
        ]),
        way("Mark it again", &[practice("While it is only a pop: pop again where it belongs, light first, checked from both edges. Stone the old dot flat, or the drill finds it.")]),
        way("Draw it over", &[
            practice("While it is only a cone, narrower than the drill: cut a groove down the side it must move towards with a small round-nosed chisel, drill a touch more, and look again at the scribed circle."),
            practice("Once the full diameter has entered, it cannot be drawn."),
        ]),
        way("Open the clearance hole", &[practice("Where the screw only holds, drill the clearance hole to what the error asks for, and put a washer under the head.")]),
        way("Make it long", &[practice("File the clearance hole long towards where it binds, and no wider; head or washer must cover it.")]),
        way("Let dowels locate", &[practice("Where the holes have to place the part, open them and ream two dowels through both parts, clamped where they belong.")]),
        way("Plug it and drill again", &[
            practice("Tap the hole out, screw in a plug of the same metal with retaining compound, face it off, and mark out again."),
            practice("A drill that meets plug and part together runs to the softer: spot with a slot drill, or through the mate."),
        ]),
    ],
    stop: practice("Stop before the third correction of one hole: plug it, or make the part again."),
    see: &[See { url: "/calculators/position", words: "Do they go together? Holes out of place" }],
};
