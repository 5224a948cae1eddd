//! A drawer, and the cookie it is kept in.
//!
//! The cookie is a form: `drills=1-60%2C+1-6x0.1mm&taps=BA+0-10&speeds=350%2C+500&on=yes`, so that
//! once its percent codes are read it can be understood by eye.

use form_urlencoded::{Serializer, parse};

use super::reading::{Drills, Reamers, Speeds, Taps};

/// The most bytes the cookie may take, its name and the sign behind it counted.
pub const LONGEST: usize = 1024;

/// `drawer=`
const NAME: usize = 7;

/// What a person owns.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawer {
    /// The drills.
    pub drills: Drills,
    /// The taps.
    pub taps: Taps,
    /// The reamers.
    pub reamers: Reamers,
    /// The machines and their speeds.
    pub speeds: Speeds,
    /// Pages use it; otherwise it is kept and left alone.
    pub on: bool,
}

/// A cookie that holds no drawer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("this is no drawer that can be read here")]
pub struct Unreadable;

impl Drawer {
    /// Reads the value of a cookie.
    ///
    /// # Errors
    /// [`Unreadable`] for anything that is not, in every part, a drawer with something in it.
    ///
    /// # Examples
    /// ```
    /// use holewright_pages::drawer::Drawer;
    /// let drawer = Drawer::read("drills=1-60%2C+2.05mm&speeds=350%2C+500&on=yes").unwrap();
    /// assert_eq!(drawer.drills.held().len(), 61);
    /// assert_eq!(drawer.cookie_value(), "drills=1-60%2C+2.05mm&speeds=350%2C+500&on=yes");
    /// assert!(Drawer::read("drills=all+of+them&on=yes").is_err());
    /// ```
    pub fn read(value: &str) -> Result<Self, Unreadable> {
        if value.len() + NAME > LONGEST {
            return Err(Unreadable);
        }
        let pairs: Vec<_> = parse(value.as_bytes()).collect();
        let text = |name: &str| {
            pairs.iter().find(|(held, _)| held == name).map_or("", |(_, text)| text.as_ref())
        };
        let drawer = Self {
            drills: Drills::read(text("drills")).map_err(|_| Unreadable)?,
            taps: Taps::read(text("taps")).map_err(|_| Unreadable)?,
            reamers: Reamers::read(text("reamers")).map_err(|_| Unreadable)?,
            speeds: Speeds::read(text("speeds")).map_err(|_| Unreadable)?,
            on: match text("on") {
                "yes" => true,
                "no" => false,
                _ => return Err(Unreadable),
            },
        };
        if drawer.is_empty() { Err(Unreadable) } else { Ok(drawer) }
    }

    /// The value of the cookie it is kept in: letters, digits and `-._%+&=`, which need no quotes.
    #[must_use]
    pub fn cookie_value(&self) -> String {
        let parts = [
            ("drills", self.drills.text()),
            ("taps", self.taps.text()),
            ("reamers", self.reamers.text()),
            ("speeds", self.speeds.text()),
        ];
        let on = if self.on { "yes" } else { "no" };
        let filled = parts.iter().filter(|(_, text)| !text.is_empty());
        Serializer::new(String::new()).extend_pairs(filled).append_pair("on", on).finish()
    }

    /// The bytes its cookie takes.
    #[must_use]
    pub fn weight(&self) -> usize {
        NAME + self.cookie_value().len()
    }

    /// Nothing is in it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.drills.held().is_empty()
            && self.taps.held().is_empty()
            && self.reamers.held().is_empty()
            && self.speeds.machines().is_empty()
    }
}
