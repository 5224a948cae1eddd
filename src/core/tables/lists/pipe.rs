//! Pipe tapping lists: G and Rp parallel, Rc into a straight hole, NPT direct and before a reamer.
//!
//! Lists for the taper threads follow different definitions and are not to be mixed. Left out: an
//! article whose G 1/2, 5/8 and 3/4 lie below the minor diameter, and one whose 1 1/2 in taper does.

use super::{List, ListedDrill, TaperHole};
use crate::tables::source::Source;
use crate::tables::threads::SystemId;
use crate::units::Printed::{self, Inch, Mm};

const ENCYCLOPEDIA: Source =
    Source::published("an encyclopedia, British standard pipe thread, table of sizes");
const ARTICLE: Source = Source::published("an article on BSPP and BSPT tapping drills");
const RC_MAKER: Source = Source::published(
    "a tap maker's catalogue, 2021, p. 720, largest straight bored hole for Rc (ISO 7-1)",
);
const NPT_HANDBOOK: Source = Source::published(
    "Machinery's Handbook 31st ed. p. 1005, table 24a, direct tapping without reaming",
);
const NPT_MAKER: Source = Source::published("a tap maker's catalogue, 2019, p. 537, pipe taps");
const REAMED_RECALLED: Source =
    Source::memory("ASME B1.20.1 drills before a taper reamer, recalled");

const fn fraction(numerator: u8, denominator: u8) -> Printed {
    Printed::fraction(numerator, denominator)
}

const fn mixed(whole: u8, numerator: u8, denominator: u8) -> Printed {
    Printed::mixed(whole, numerator, denominator)
}

const G_ENCYCLOPEDIA: List =
    List { name: "G, parallel", system: SystemId::Bspp, source: ENCYCLOPEDIA };
const G_ARTICLE: List = List { name: "G, parallel", system: SystemId::Bspp, source: ARTICLE };
const RP: TaperList = TaperList {
    list: List { name: "Rp, parallel", system: SystemId::Bspt, source: ENCYCLOPEDIA },
    hole: TaperHole::ParallelThread,
};
const RC_STRAIGHT: TaperList = TaperList {
    list: List { name: "Rc, straight hole at most", system: SystemId::Bspt, source: RC_MAKER },
    hole: TaperHole::Straight,
};
const NPT_DIRECT: TaperList = TaperList {
    list: List { name: "NPT, tapped direct", system: SystemId::Npt, source: NPT_HANDBOOK },
    hole: TaperHole::Straight,
};
const NPT_DIRECT_MAKER: TaperList = TaperList {
    list: List { name: "NPT, tapped direct", system: SystemId::Npt, source: NPT_MAKER },
    hole: TaperHole::Straight,
};
const NPT_REAMED: TaperList = TaperList {
    list: List {
        name: "NPT, before a taper reamer",
        system: SystemId::Npt,
        source: REAMED_RECALLED,
    },
    hole: TaperHole::Reamed,
};

/// A list of a taper thread, in holes made one way.
struct TaperList {
    list: List,
    hole: TaperHole,
}

impl TaperList {
    const fn row(&self, size: &'static str, drill: Printed, label: &'static str) -> ListedDrill {
        self.list.row(size, drill, label).of_taper(self.hole)
    }
}

/// Size, drill, and the drill as the list names it.
#[rustfmt::skip]
pub(super) static ROWS: &[ListedDrill] = &[
    G_ENCYCLOPEDIA.row("1-16", Mm(6.8), "6.8 mm"),
    G_ENCYCLOPEDIA.row("1-8", Mm(8.8), "8.8 mm"),
    G_ENCYCLOPEDIA.row("1-4", Mm(11.8), "11.8 mm"),
    G_ENCYCLOPEDIA.row("1-2", Mm(19.0), "19 mm"),
    G_ENCYCLOPEDIA.row("3-4", Mm(24.5), "24.5 mm"),
    G_ENCYCLOPEDIA.row("1", Mm(30.75), "30.75 mm"),
    G_ENCYCLOPEDIA.row("1-1-4", Mm(39.5), "39.5 mm"),
    G_ENCYCLOPEDIA.row("2", Mm(57.0), "57 mm"),
    G_ARTICLE.row("3-8", Mm(15.25), "15.25 mm"),
    G_ARTICLE.row("5-8", Mm(21.0), "21 mm"),
    G_ARTICLE.row("7-8", Mm(28.25), "28.25 mm"),
    G_ARTICLE.row("1-1-2", Mm(45.5), "45.5 mm"),
    G_ARTICLE.row("1-3-4", Mm(51.0), "51 mm"),
    RP.row("1-8", Mm(8.6), "8.6 mm"),
    RP.row("3-8", Mm(15.0), "15 mm"),
    RP.row("1-2", Mm(18.75), "18.75 mm"),
    RP.row("3-4", Mm(24.25), "24.25 mm"),
    RP.row("1", Mm(30.4), "30.4 mm"),
    RP.row("1-1-4", Mm(39.0), "39 mm"),
    RP.row("2", Mm(56.75), "56.75 mm"),
    RC_STRAIGHT.row("1-16", Mm(6.2), "6.2 mm"),
    RC_STRAIGHT.row("1-8", Mm(8.2), "8.2 mm"),
    RC_STRAIGHT.row("1-4", Mm(10.9), "10.9 mm"),
    RC_STRAIGHT.row("1-2", Mm(17.9), "17.9 mm"),
    RC_STRAIGHT.row("5-8", Mm(19.8), "19.8 mm"),
    RC_STRAIGHT.row("3-4", Mm(23.3), "23.3 mm"),
    RC_STRAIGHT.row("7-8", Mm(27.0), "27 mm"),
    RC_STRAIGHT.row("1", Mm(29.3), "29.3 mm"),
    RC_STRAIGHT.row("1-1-8", Mm(33.9), "33.9 mm"),
    RC_STRAIGHT.row("1-1-4", Mm(37.9), "37.9 mm"),
    RC_STRAIGHT.row("1-1-2", Mm(43.8), "43.8 mm"),
    RC_STRAIGHT.row("1-3-4", Mm(49.7), "49.7 mm"),
    RC_STRAIGHT.row("3-8", Mm(14.2), "14.2 mm").with_note("With incomplete threads at the small end"),
    RC_STRAIGHT.row("2", Mm(55.0), "55 mm").with_note("With incomplete threads at the small end"),
    NPT_DIRECT.row("1-16", Inch(0.242), "Letter C"),
    NPT_DIRECT.row("1-8", Inch(0.332), "Letter Q"),
    NPT_DIRECT.row("1-4", fraction(7, 16), "7/16 in"),
    NPT_DIRECT.row("1-2", fraction(45, 64), "45/64 in"),
    NPT_DIRECT.row("3-4", fraction(29, 32), "29/32 in"),
    NPT_DIRECT.row("1", mixed(1, 9, 64), "1 9/64 in"),
    NPT_DIRECT.row("1-1-4", mixed(1, 31, 64), "1 31/64 in"),
    NPT_DIRECT.row("1-1-2", mixed(1, 23, 32), "1 23/32 in"),
    NPT_DIRECT.row("2", mixed(2, 3, 16), "2 3/16 in"),
    NPT_DIRECT_MAKER.row("3-8", fraction(9, 16), "9/16 in"),
    NPT_REAMED.row("1-16", fraction(15, 64), "15/64 in"),
    NPT_REAMED.row("1-8", fraction(21, 64), "21/64 in"),
    NPT_REAMED.row("1-4", fraction(27, 64), "27/64 in"),
    NPT_REAMED.row("3-8", fraction(9, 16), "9/16 in"),
];
