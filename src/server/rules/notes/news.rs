//! What can be new to a member: each kind declared here once, with the word that the view `concern` has for it and what
//! a page says of it.

/// Makes of its rows the kinds, each with its word and what it says.
macro_rules! kinds {
    ($($name:ident $word:literal: $what:literal;)+) => {
        /// A kind of news.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum NewsKind {
            $(#[doc = $what] $name,)+
        }

        impl NewsKind {
            /// Every one.
            pub const ALL: &[Self] = &[$(Self::$name),+];

            /// Its word.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $(Self::$name => $word),+ }
            }

            /// What happened.
            #[must_use]
            pub const fn what(self) -> &'static str {
                match self { $(Self::$name => $what),+ }
            }
        }
    };
}

kinds! {
    Change "change": "A change is asked for";
    Declined "declined": "Not taken";
    Shown "shown": "Shown";
    Withdrawn "withdrawn": "Withdrawn by a moderator";
    Corrected "corrected": "Corrected";
    Reported "reported": "Reported as a danger, and hidden until somebody has looked";
    ReportSettled "report-settled": "Nothing was found against it: readers see it again";
    Remarked "remarked": "A remark on your note";
    Worked "worked": "It worked for another member";
    DidNot "did-not": "It did not work for another member";
    Happened "happened": "It happened to another member too";
    DidNotHappen "did-not-happen": "It did not happen to another member";
    RemarkShown "remark-shown": "Your remark is shown";
    RemarkDeclined "remark-declined": "Your remark was not taken";
}

impl NewsKind {
    /// The one with this word.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::news::NewsKind;
    /// assert_eq!(NewsKind::read("did-not"), Some(NewsKind::DidNot));
    /// assert_eq!(NewsKind::read("did"), None);
    /// ```
    #[must_use]
    pub fn read(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|kind| kind.word() == word)
    }

    /// Whether it is what somebody found of a note: its page counts that, and no feed tells it.
    #[must_use]
    pub const fn is_found(self) -> bool {
        match self {
            Self::Worked | Self::DidNot | Self::Happened | Self::DidNotHappen => true,
            Self::Change
            | Self::Declined
            | Self::Shown
            | Self::Withdrawn
            | Self::Corrected
            | Self::Reported
            | Self::ReportSettled
            | Self::Remarked
            | Self::RemarkShown
            | Self::RemarkDeclined => false,
        }
    }
}
