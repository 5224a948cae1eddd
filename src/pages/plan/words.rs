//! The words an address may hold where a plan offers a choice; the first is what an empty field means.

use holewright_core::asking::{Word, word};
use holewright_core::calc::aim::Aim;
use holewright_core::calc::depth::LastTap;
use holewright_core::plan::{Head, Hole, Tap, TapSteel, UpperHole};
use holewright_core::tables::threads::read::Hand;

/// `hole`
pub(super) static HOLES: &[Word<Hole>] =
    &[word("through", "Through", Hole::Through), word("blind", "Blind", Hole::Blind)];

/// `aim`
pub(super) static AIMS: &[Word<Aim>] = &[
    word("usual", "The usual", Aim::Usual),
    word("strong", "Strong: more thread, a harder tap", Aim::Strong),
    word("easy", "Easy: less thread, an easier tap", Aim::Easy),
];

/// `tap`
pub(super) static TAPS: &[Word<Tap>] = &[
    word("hand", "Hand taps", Tap::Hand),
    word("machine", "Machine tap under power", Tap::Machine),
    word("forming", "Forming tap", Tap::Forming),
];

/// `tap_steel`
pub(super) static TAP_STEELS: &[Word<TapSteel>] = &[
    word("hss", "High-speed steel", TapSteel::HighSpeed),
    word("carbon", "Carbon steel", TapSteel::Carbon),
];

/// `finish`: empty leaves it to the plan.
pub(super) static FINISHES: &[Word<Option<LastTap>>] = &[
    word("taper", "Taper", Some(LastTap::Taper)),
    word("second", "Second", Some(LastTap::Second)),
    word("plug", "Plug (bottoming)", Some(LastTap::Plug)),
];

/// `upper_hole`
pub(super) static UPPER_HOLES: &[Word<UpperHole>] = &[
    word("tapping", "Not drilled yet, or at tapping size", UpperHole::Tapping),
    word("clearance", "Already at clearance size", UpperHole::Clearance),
];

/// `head`: empty means that no seat is wanted.
pub(super) static HEADS: &[Word<Option<Head>>] = &[
    word("countersunk", "Countersunk", Some(Head::Countersunk)),
    word("cheese", "Cheese, let in", Some(Head::Cheese)),
    word("hexagon", "Hexagon", Some(Head::Hexagon)),
];

/// `hand`: empty leaves it to the thread as typed.
pub(super) static HANDS: &[Word<Option<Hand>>] =
    &[word("right", "Right hand", Some(Hand::Right)), word("left", "Left hand", Some(Hand::Left))];
