//! A thread system and what is said of it once: its names, its form, its lists.

use super::{Form, SystemId, Thread};

/// A thread system: its names, its form, its standard, what it is for, and its sizes in order.
#[derive(Debug)]
pub struct System {
    /// Which system.
    pub id: SystemId,
    /// The address part: `ba`, `metric-fine`.
    pub slug: &'static str,
    /// The system's full name.
    pub name: &'static str,
    /// The suffix or mark the trade writes: `BA`, `BSW`, `M`.
    pub mark: &'static str,
    /// What people write for it beside slug, name and mark. A word that other systems have too means
    /// them all: two words then narrow each other, `BSP taper`, `metric fine`.
    pub spellings: &'static [&'static str],
    /// By what its sizes are called.
    pub naming: Naming,
    /// When a size can mean one of its threads.
    pub meant: Meant,
    /// The standard, with its year where the figures depend on it.
    pub standard: &'static str,
    /// The shape.
    pub form: Form,
    /// Its standard's largest hole.
    pub largest_hole: SizeLimit,
    /// Which published tapping lists speak of it.
    pub lists: TappingLists,
    /// Which clearance holes its screws have.
    pub clearance: ClearanceFamily,
    /// Which countersunk heads its screws have.
    pub heads: HeadFamily,
    /// Which hexagons its bolts and nuts have.
    pub hexagons: HexagonFamily,
    /// Where a model engineer meets it.
    pub used_for: &'static str,
    /// The sizes, largest first where they are called by number and smallest first elsewhere, as the
    /// trade lists them.
    pub threads: &'static [Thread],
}

/// By what the sizes of a system are called.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Naming {
    /// By number: `5 BA`.
    Number,
    /// By the major diameter in millimetres: `M3`.
    Metric,
    /// By inches: `1/4 BSW`; for pipe, of the bore it was once named for.
    Inch,
    /// By number or inches, with the threads in an inch behind: `4-40`, `1/4-20`; by millimetres where
    /// the pitch is in millimetres: `0.80 UNM`.
    Unified,
}

/// When a size can mean a thread of a system.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meant {
    /// Always.
    BySize,
    /// Only beside its pitch, or where this other system is left out: `M8` is the coarse one (ISO 261).
    ByPitch {
        /// The system that the plain size means.
        plain: SystemId,
    },
    /// Only where a word is written that means this system alone: it is rare, and its sizes are those
    /// of a common one.
    ByName,
}

impl Meant {
    /// Whether a thread of a system can be meant, where these systems are named: for each name written,
    /// all that it can mean.
    ///
    /// # Examples
    /// A system that is meant by its name alone is not meant by a bare size, or by a word that it shares.
    /// ```
    /// use holewright_core::tables::threads::{Meant, SystemId};
    /// let [rare, usual] = [SystemId::Miniature, SystemId::Metric];
    /// assert!(Meant::BySize.admits(rare, &[]));
    /// assert!(!Meant::ByName.admits(rare, &[]));
    /// assert!(!Meant::ByName.admits(rare, &[vec![usual, rare]]));
    /// assert!(Meant::ByName.admits(rare, &[vec![usual, rare], vec![rare]]));
    /// assert!(!Meant::BySize.admits(rare, &[vec![rare], vec![usual]]));
    /// ```
    #[must_use]
    pub fn admits(self, system: SystemId, named: &[Vec<SystemId>]) -> bool {
        let is_named = named.iter().all(|systems| systems.contains(&system));
        is_named
            && match self {
                Self::BySize | Self::ByPitch { .. } => true,
                Self::ByName => named.iter().any(|systems| systems.as_slice() == [system]),
            }
    }
}

/// The rule for the largest hole of a system's sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeLimit {
    /// The rule of its form, where one is held.
    OfForm,
    /// BS 93, for the sizes that it names.
    Bs93,
    /// BS 84, by the threads in an inch.
    Bs84,
    /// As BS 84 allows, though it names no size of the system.
    LikeBs84,
    /// ISO 228-1, by the pitch.
    Iso228,
}

/// The tables of published tapping lists, each with some systems.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TappingLists {
    /// The lists for BSW, BSF and BA.
    British,
    /// The metric lists.
    Metric,
    /// The lists for brass and Model Engineer threads.
    ModelEngineer,
    /// The lists for pipe threads.
    Pipe,
    /// The Unified lists.
    Unified,
    /// No list is held.
    NotHeld,
}

/// Whose clearance holes rule for the screws of a system.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClearanceFamily {
    /// ISO 273, with BS 4186 beside it and the smaller holes of model work.
    Metric,
    /// ASME B18.2.8.
    Unified,
    /// No standard speaks of them: the stated rule.
    Rule,
}

/// Which countersunk heads the screws of a system have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeadFamily {
    /// The metric ones.
    Metric,
    /// The Unified ones.
    Unified,
    /// The British ones.
    British,
}

/// Which hexagons the bolts and nuts of a system have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HexagonFamily {
    /// By rule, of the major diameter.
    BritishAssociation,
    /// BS 1083, with the older and larger Whitworth hexagons beside it.
    Bs1083,
    /// ISO 4014 and ISO 4032.
    Iso,
    /// ASME B18.2.1 and B18.2.2.
    Unified,
    /// No table or rule is held.
    NotHeld,
}

/// Stops the build where a system stands under another's name, or a row in another's table.
pub(super) const fn check(id: SystemId, system: &System) {
    assert!(id as u8 == system.id as u8, "a system stands under another's name");
    let mut rows = system.threads;
    while let [row, rest @ ..] = rows {
        assert!(row.system as u8 == id as u8, "a row stands in another system's table");
        rows = rest;
    }
}

/// Declares the systems: one that is no part of the list does not compile.
macro_rules! systems {
    ($($(#[$doc:meta])* $id:ident = $system:path;)+) => {
        /// Every system we hold.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum SystemId { $($(#[$doc])* $id,)+ }

        static SYSTEMS: &[&System] = &[$(&$system,)+];

        impl SystemId {
            /// The system itself.
            #[must_use]
            pub fn system(self) -> &'static System {
                match self { $(Self::$id => &$system,)+ }
            }
        }

        const _: () = { $(system::check(SystemId::$id, &$system);)+ };
    };
}
