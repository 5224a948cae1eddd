//! Where a reader goes on to after signing in: an address of this site and of no other.

use form_urlencoded::Serializer;

/// A member's own page: where one goes who was on the way to nowhere else.
const HOME: &str = "/me";

/// Doors that would lead in a circle.
const CIRCLES: [&str; 3] = ["/sign-in", "/sign-out", "/prove"];

/// A path of this site, with its query.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Next(String);

impl Next {
    /// The most characters of it.
    pub const LONGEST: usize = 2000;

    /// The address as it was carried along; home where it is none of ours.
    ///
    /// Browsers read `//host`, `/\host` and a tab between them as another site, and what has no
    /// slash in front as whatever its scheme says.
    #[must_use]
    pub fn read(typed: &str) -> Self {
        let is_plain = typed.bytes().all(|byte| byte.is_ascii_graphic() && byte != b'\\');
        let is_path = typed.starts_with('/') && !typed.starts_with("//");
        let path = typed.split(['?', '#']).next().unwrap_or_default();
        let is_circle = CIRCLES.into_iter().any(|door| {
            path.strip_prefix(door).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
        });
        let is_ours = is_plain && is_path && !is_circle && typed.len() <= Self::LONGEST;
        Self(if is_ours { typed } else { HOME }.to_owned())
    }

    /// The path and query.
    #[must_use]
    pub fn address(&self) -> &str {
        &self.0
    }

    /// The address of a door that carries this one along.
    #[must_use]
    pub fn carried_to(&self, door: &str) -> String {
        if self.0 == HOME {
            return door.to_owned();
        }
        let query = Serializer::new(String::new()).append_pair("next", &self.0).finish();
        format!("{door}?{query}")
    }
}
