//! People of a club who take turns at one browser: each joins or signs in, does something, and
//! signs out again.

use crate::browser::{Browser, Screen, Scripts};
use crate::started::Site;

const PASSWORD: &str = "seven brass otters dancing";

/// A browser on a club that does not ask for a second factor.
pub(crate) fn open(screen: Screen, scripts: Scripts) -> Browser {
    Browser::on(Site::start_with(&["--second-factor", "relaxed"]), screen, scripts)
}

impl Browser {
    /// Joins by the link of a slip, and is signed in then.
    #[track_caller]
    pub(crate) fn join(&self, slip: &str, name: &str) {
        self.visit(slip);
        self.sees(&["Join the club’s pages"]);
        // The name on the slip stands there.
        self.overwrite("#name", name);
        self.write("#new_password", PASSWORD);
        self.follow("main form button");
        assert_eq!(self.address(), "/me", "{name} joins: {}", self.text("main"));
        assert_eq!(self.text("h1"), name);
    }

    /// Opens a members' page, which asks to sign in first.
    #[track_caller]
    pub(crate) fn sign_in(&self, name: &str, to: &str) {
        self.sign_in_with(name, PASSWORD, to);
    }

    /// The same with a password of their own.
    #[track_caller]
    pub(crate) fn sign_in_with(&self, name: &str, password: &str, to: &str) {
        self.visit(to);
        let (asked, address) = (self.text("h1"), self.address());
        assert_eq!(asked, "Sign in", "{address} asks who is there");
        self.write("#name", name);
        self.write("#password", password);
        self.follow("main form button");
        assert_eq!(self.address(), to, "{name} signs in: {}", self.text("main"));
    }

    #[track_caller]
    pub(crate) fn sign_out(&self) {
        self.visit("/me");
        self.follow("form[action='/sign-out'] button");
        assert_eq!(self.address(), "/sign-in");
        self.sees(&["You are signed out."]);
    }

    /// Writes over what a field holds.
    #[track_caller]
    pub(crate) fn overwrite(&self, selector: &str, text: &str) {
        self.window.find(selector).clear();
        self.write(selector, text);
    }

    /// The page says all of this.
    #[track_caller]
    pub(crate) fn sees(&self, words: &[&str]) {
        let page = self.text("main");
        for words in words {
            assert!(page.contains(words), "{} lacks “{words}”; it says:\n{page}", self.address());
        }
    }

    /// The page says none of this.
    #[track_caller]
    pub(crate) fn sees_none_of(&self, words: &[&str]) {
        let page = self.text("main");
        for words in words {
            assert!(!page.contains(words), "{} says “{words}”:\n{page}", self.address());
        }
    }
}
