//! The club's clock: a time zone by its name, and a moment in words as the clock on the wall shows it.

use jiff::Timestamp;
use jiff::tz::TimeZone;

use super::clock::UnixSeconds;

/// A time zone of the data compiled in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Zone(String);

impl Zone {
    /// The zone of this name, or of this town: `Europe/London` and `london` are the same.
    ///
    /// # Examples
    ///
    /// ```
    /// use holewright_server::rules::zone::Zone;
    ///
    /// let zone = Zone::read("london").unwrap();
    /// assert_eq!(zone.name(), "Europe/London");
    /// assert_eq!(zone.minute(1_796_211_240), "Wednesday 2 December 2026, 11:34 (London time)");
    /// assert_eq!(zone.minute(1_781_519_400), "Monday 15 June 2026, 11:30 (London time)");
    /// assert!(Zone::read("the clubroom").is_none());
    /// ```
    #[must_use]
    pub fn read(typed: &str) -> Option<Self> {
        let folded = |text: &str| text.to_lowercase().replace(' ', "_");
        let typed = folded(typed.trim());
        // Short names such as EST say nothing of summer: a zone here is one of a place.
        let mut names = jiff::tz::db().available().map(|name| name.to_string());
        names
            .find(|name| {
                let small = folded(name);
                small.rsplit_once('/').is_some_and(|(_, town)| small == typed || town == typed)
            })
            .filter(|name| TimeZone::get(name).is_ok())
            .map(Self)
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.0
    }

    /// This moment on its clock.
    #[must_use]
    pub fn minute(&self, at: UnixSeconds) -> String {
        let town = self.0.rsplit('/').next().unwrap_or_default().replace('_', " ");
        match (Timestamp::from_second(at), TimeZone::get(&self.0)) {
            (Ok(at), Ok(zone)) => {
                let at = at.to_zoned_datetime(zone);
                format!("{} ({town} time)", at.strftime("%A %-d %B %Y, %H:%M"))
            }
            _ => "a time that cannot be told".to_owned(),
        }
    }
}
