//! What was done by a form, as the page after it says it at its head: what was done, and what comes next.
//!
//! It travels in a cookie of a minute that names that page, since a browser sends it to those below it too. No
//! address says it, so that no link makes a page tell somebody that a thing was done which was not.

use axum::http::{HeaderMap, HeaderValue};

use super::BaseUrl;
use super::cookie;

/// The cookie's name.
const NAME: &str = "done";
/// How long the next page says it, in seconds: also where it is opened again.
pub const LASTS: i64 = 60;

/// Makes of its rows the acts, each with the word in the cookie, what was done and what comes next.
macro_rules! acts {
    ($($act:ident $word:literal: $what:literal, $next:literal;)+) => {
        /// What was done.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Deed {
            $(#[doc = $what] $act,)+
        }

        impl Deed {
            /// Every one.
            pub const ALL: &[Self] = &[$(Self::$act),+];

            const fn word(self) -> &'static str {
                match self { $(Self::$act => $word),+ }
            }

            /// What was done, in a sentence.
            #[must_use]
            pub const fn what(self) -> &'static str {
                match self { $(Self::$act => $what),+ }
            }

            /// What was done, to the note with this title or the member of this name.
            #[must_use]
            pub fn what_of(self, named: &str) -> String {
                let what = self.what();
                let rest = ["The note", "The member"].iter().find_map(|begin| what.strip_prefix(begin));
                rest.map_or_else(|| what.to_owned(), |rest| format!("{named}{rest}"))
            }

            /// What comes next; empty where nothing does.
            #[must_use]
            pub const fn next(self) -> &'static str {
                match self { $(Self::$act => $next),+ }
            }
        }
    };
}

acts! {
    Saved "saved": "Your draft is kept.", "Only you see it. Send it in when it is ready.";
    SentIn "sent-in": "Your note is sent in.", "";
    SentTips "sent-tips": "The tips are sent in.", "Each waits in the queue, and nobody decides about their own.";
    Judged "judged": "What you found is counted.", "It stands below, and you can change it.";
    JudgedWithWhy "judged-with-why": "What you found is counted.", "Somebody who decides about notes reads your line before it is shown.";
    TookBack "took-back": "What you found is taken back.", "It no longer counts.";
    TookAway "took-away": "What they found is taken away.", "It no longer counts.";
    Remarked "remarked": "Your remark is sent in.", "Somebody who decides about notes reads it before it is shown.";
    TookRemarkBack "took-remark-back": "Your remark is taken back.", "Readers do not see it.";
    ShowedRemark "showed-remark": "The remark is shown.", "It stands below its note.";
    DeclinedRemark "declined-remark": "The remark is not shown.", "Whoever wrote it reads why.";
    TookRemarkAway "took-remark-away": "The remark is taken away.", "Readers see it no more, and whoever wrote it reads why.";
    ReadNews "read-news": "You have read what is new.", "What happens from now on stands here anew.";
    VoidedFeed "voided-feed": "The address of your feed is cancelled.", "Nobody can read it any more.";
    Reported "reported": "Your report is in.", "The note is hidden until somebody who decides about it has looked.";
    Corrected "corrected": "The correction stands above the text.", "Readers see it now.";
    Withdrew "withdrew": "The note is withdrawn.", "Its address says so from now on.";
    Discarded "discarded": "The note is off your desk.", "Readers never saw it.";
    Showed "showed": "The note is shown.", "Readers see it now.";
    AskedBack "asked-back": "The note is back with its author.", "They are told what to change.";
    TurnedDown "turned-down": "The note is declined.", "Its author is told why.";
    Settled "settled": "The note is shown again.", "Its reports are settled.";
    SettledAll "settled-all": "The notes are shown again.", "Their reports are settled.";
    HandedOver "handed-over": "The note is with an inspector now.", "Only an inspector can pass it.";
    TurnedBack "turned-back": "The note is with the moderators again.", "A moderator can pass it.";
    Undid "undid": "The note stands as before.", "The decision is undone.";
    UsedSpareCode "used-spare-code": "A spare code was used.", "";
    SignedOut "signed-out": "You are signed out.", "";
    Joined "joined": "You are a member, and signed in.", "Here are your own pages.";
    Left "left": "You have left the club.", "Your account and its sessions are gone.";
    ChangedPassword "changed-password": "Your new password counts from now on.", "Every other session of yours has ended.";
    ResetPassword "reset-password": "Your new password counts from now on.", "Sign in with it.";
    SetSecondFactor "set-second-factor": "The second factor is set up.", "From now on signing in asks for a code too. Spare codes let you in without the telephone.";
    DroppedSecondFactor "dropped-second-factor": "The second factor is taken away.", "Signing in asks for the password alone.";
    EndedSession "ended-session": "That session has ended.", "Whoever had it has to sign in again.";
    EndedOthers "ended-others": "Every other session of yours has ended.", "You stay signed in here.";
    VoidedSlip "voided-slip": "The slip is cancelled.", "Nobody can use it any more.";
    PutSlipAway "put-slip-away": "The slip is put away.", "It had run out, and lets nobody in.";
    SetRights "set-rights": "The rights are changed.", "They have to sign in again.";
    Stopped "stopped": "Stopped.", "They are signed out, and cannot sign in until you allow it again.";
    Allowed "allowed": "Allowed again.", "They can sign in.";
    TookSecondFactor "took-second-factor": "Their second factor is taken away.", "They can set up another.";
    SetClock "set-clock": "The club’s clock is changed.", "Slips go by it from now on.";
    NamedClub "named-club": "What the club says is changed.", "It stands on every page from now on.";
    Removed "removed": "The member is removed.", "";
}

impl Deed {
    /// Where what comes next is done, and its words.
    #[must_use]
    pub const fn leads_to(self) -> Option<(&'static str, &'static str)> {
        match self {
            Self::SetSecondFactor => {
                Some(("/me/second-factor#spare", "Next, make ten spare codes"))
            }
            _ => None,
        }
    }
}

/// What was done, and to which: the number of a note or of a member, how many spare codes are left, or how many tips
/// were sent in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Did {
    /// What.
    pub deed: Deed,
    /// To which, or how many.
    pub of: Option<i64>,
}

impl Did {
    /// What the cookie of a request for the page at this path says.
    #[must_use]
    pub fn read(headers: &HeaderMap, path: &str) -> Option<Self> {
        let values = cookie::values(headers, NAME);
        let value = values.filter_map(|value| {
            value.split_once(':').filter(|(_, at)| *at == path).map(|(said, _)| said.to_owned())
        });
        let value = value.into_iter().next()?;
        let (word, of) = match value.split_once('.') {
            Some((word, of)) => (word, Some(of.parse().ok()?)),
            None => (value.as_str(), None),
        };
        let deed = Deed::ALL.iter().copied().find(|deed| deed.word() == word)?;
        Some(Self { deed, of })
    }

    /// The header that says it on the page at this path.
    #[must_use]
    pub fn cookie(self, path: &str, base_url: &BaseUrl) -> Option<HeaderValue> {
        let secure = if base_url.is_https() { "; Secure" } else { "" };
        let of = self.of.map(|of| format!(".{of}")).unwrap_or_default();
        let word = self.deed.word();
        let text = format!(
            "{NAME}={word}{of}:{path}; Path={path}; Max-Age={LASTS}; HttpOnly; SameSite=Strict{secure}"
        );
        HeaderValue::from_str(&text).ok()
    }
}

impl From<Deed> for Did {
    fn from(deed: Deed) -> Self {
        Self { deed, of: None }
    }
}

#[cfg(test)]
mod tests {
    use super::{BaseUrl, Deed, Did, HeaderMap};
    use axum::http::HeaderValue;
    use axum::http::header::COOKIE;

    fn read(line: &str) -> Option<Did> {
        let mut headers = HeaderMap::new();
        headers.insert(COOKIE, HeaderValue::from_str(line).unwrap());
        Did::read(&headers, "/queue")
    }

    #[test]
    fn what_is_told_is_read_again_and_nothing_else_is() {
        let base_url: BaseUrl = "https://club.test".parse().unwrap();
        for deed in Deed::ALL.iter().copied() {
            for of in [None, Some(12)] {
                let told = Did { deed, of };
                let header = told.cookie("/queue", &base_url).unwrap();
                let text = header.to_str().unwrap().to_owned();
                assert!(
                    text.ends_with("; Path=/queue; Max-Age=60; HttpOnly; SameSite=Strict; Secure")
                );
                assert_eq!(read(text.split(';').next().unwrap()), Some(told));
            }
        }
        let both = "done=joined:/queue/remarks; done=saved.7:/queue";
        assert_eq!(read(both), Some(Did { deed: Deed::Saved, of: Some(7) }));
        for other in ["", "nothing", "sent-in.x", "sent-in.", "saved/"] {
            assert_eq!(read(&format!("done={other}:/queue")), None, "{other}");
        }
        for other in
            ["done=saved", "undone=saved:/queue", "done=saved:/queue/remarks", "done=saved:/"]
        {
            assert_eq!(read(other), None, "{other}");
        }
    }
}
