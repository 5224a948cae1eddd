//! Whether those with rights over others must give a second factor.

use std::str::FromStr;

/// The rule for secretary and moderators; any member may set one up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum SecondFactor {
    /// They set one up before they do anything else.
    #[default]
    Compulsory,
    /// It is left to them.
    Relaxed,
}

/// Neither of the two words.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("allowed is compulsory or relaxed (--second-factor or HOLEWRIGHT_SECOND_FACTOR)")]
pub struct NotARule;

impl SecondFactor {
    /// Whether they must.
    #[must_use]
    pub const fn is_compulsory(self) -> bool {
        matches!(self, Self::Compulsory)
    }
}

impl FromStr for SecondFactor {
    type Err = NotARule;

    fn from_str(typed: &str) -> Result<Self, NotARule> {
        match typed {
            "compulsory" => Ok(Self::Compulsory),
            "relaxed" => Ok(Self::Relaxed),
            _ => Err(NotARule),
        }
    }
}
