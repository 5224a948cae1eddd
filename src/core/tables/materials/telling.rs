//! How to tell a material from its look-alikes with a file, a spark, a magnet, the hand and the eye.
//!
//! Each family answers for each test, and a material whose answer is another gives its own over its
//! family's. Weight comes from the density in print.

mod families;
mod own;

use super::{Advice, Family, Material};
use families::{
    ALUMINIUM, BRASS, BRONZE, CAST_IRON, COPPER, MAGNESIUM, NICKEL, PLASTIC, STAINLESS, STEEL,
    TITANIUM, WHITE_METAL, ZINC,
};
use own::OWN;

/// How to tell a material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Telling {
    /// Under a file, and the chip it gives.
    pub file: Advice,
    /// On a grindstone; what to do instead where no spark is to be struck.
    pub spark: Advice,
    /// Whether a magnet takes it.
    pub magnet: Advice,
    /// Its colour, cut and old.
    pub colour: Advice,
    /// What tells it from the metals it is mistaken for.
    pub apart: &'static [Advice],
    /// Where a test can hurt.
    pub cautions: &'static [Advice],
}

/// One test with what it shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Test {
    /// What is tried: `File`.
    pub name: &'static str,
    /// What it shows.
    pub shows: Advice,
}

impl Telling {
    /// The tests in the order in which they are worth trying.
    #[must_use]
    pub const fn tests(&self) -> [Test; 4] {
        [
            Test { name: "Magnet", shows: self.magnet },
            Test { name: "Colour", shows: self.colour },
            Test { name: "File", shows: self.file },
            Test { name: "Spark", shows: self.spark },
        ]
    }
}

impl Material {
    /// How to tell it.
    ///
    /// # Source
    /// Common practice, no source.
    #[must_use]
    pub fn telling(&self) -> Telling {
        let family = of_family(self.family);
        OWN.iter().find(|(slug, _)| *slug == self.slug).map_or(family, |(_, own)| *own)
    }
}

/// The slugs that have answers of their own.
#[must_use]
pub fn with_their_own() -> impl Iterator<Item = &'static str> {
    OWN.iter().map(|(slug, _)| *slug)
}

const fn of_family(family: Family) -> Telling {
    match family {
        Family::CastIron => CAST_IRON,
        Family::Brass => BRASS,
        Family::Bronze => BRONZE,
        Family::Copper => COPPER,
        Family::Steel => STEEL,
        Family::Stainless => STAINLESS,
        Family::Nickel => NICKEL,
        Family::Titanium => TITANIUM,
        Family::Aluminium => ALUMINIUM,
        Family::Magnesium => MAGNESIUM,
        Family::Zinc => ZINC,
        Family::WhiteMetal => WHITE_METAL,
        Family::Plastic => PLASTIC,
    }
}
