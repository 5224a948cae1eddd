//! How much there is for a member to see to.

use crate::rules::clock::UnixSeconds;

/// The most news that is told at once. It is counted so far and one further, at which there is more.
pub const MOST_NEWS: i64 = 50;

/// What is open for a member.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Open {
    /// Notes of their own with a change asked for.
    pub asked: i64,
    /// What became of their notes and remarks since they last said that they had read it, counted to one more than
    /// [`MOST_NEWS`].
    pub news: i64,
    /// Notes that wait for their decision, or are hidden until it.
    pub notes: i64,
    /// Remarks that wait for it.
    pub remarks: i64,
    /// When the newest of what waits came.
    pub newest: UnixSeconds,
    /// Slips that ran out unused, for whoever makes them.
    pub slips: Option<i64>,
}

impl Open {
    /// What waits for a decision.
    #[must_use]
    pub const fn waiting(self) -> i64 {
        self.notes + self.remarks
    }

    /// All that is to see to among the notes.
    #[must_use]
    pub const fn all(self) -> i64 {
        self.asked + self.news + self.waiting()
    }

    /// What there is to see to of their own notes.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::open::Open;
    /// let open = Open { asked: 1, news: 2, ..Open::default() };
    /// assert_eq!(open.own_words().as_deref(), Some("1 to change, 2 new"));
    /// assert_eq!(Open::default().own_words(), None);
    /// ```
    #[must_use]
    pub fn own_words(self) -> Option<String> {
        let asked = (self.asked > 0).then(|| format!("{} to change", self.asked));
        let news = match self.news {
            ..=0 => None,
            1..=MOST_NEWS => Some(format!("{} new", self.news)),
            _ => Some(format!("more than {MOST_NEWS} new")),
        };
        let parts: Vec<String> = asked.into_iter().chain(news).collect();
        (!parts.is_empty()).then(|| parts.join(", "))
    }

    /// What is open for the same member without any right.
    #[must_use]
    pub const fn of_their_own(self) -> Self {
        Self { asked: self.asked, news: self.news, notes: 0, remarks: 0, newest: 0, slips: None }
    }
}
