//! The secretary, and members who have given their password within the last minutes.

use std::sync::Arc;

use axum::extract::FromRequestParts;
use axum::http::request::Parts;

use super::{AnyMember, Member};
use crate::rules::auth::{Right, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::{App, Error};

/// For so long after the password was given it need not be given again.
pub(super) const PROVED_FOR: UnixSeconds = 15 * 60;

/// The secretary.
#[derive(Clone, Debug)]
pub struct Secretary(pub SignedIn);

/// The secretary, who has given the password within the last quarter of an hour.
#[derive(Clone, Debug)]
pub struct ProvedSecretary(pub SignedIn);

/// A member who has given the password within the last quarter of an hour, even one who must set up a
/// second factor first.
#[derive(Clone, Debug)]
pub struct ProvedMember(pub SignedIn);

impl FromRequestParts<Arc<App>> for Secretary {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Error> {
        let Member(member) = Member::from_request_parts(parts, app).await?;
        if member.rights.may(Right::Manage) {
            Ok(Self(member))
        } else {
            Err(Error::Forbidden("only the secretary may do this"))
        }
    }
}

impl FromRequestParts<Arc<App>> for ProvedSecretary {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Error> {
        let Secretary(secretary) = Secretary::from_request_parts(parts, app).await?;
        proved(secretary, app).map(Self)
    }
}

impl FromRequestParts<Arc<App>> for ProvedMember {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Error> {
        let AnyMember(member) = AnyMember::from_request_parts(parts, app).await?;
        proved(member, app).map(Self)
    }
}

/// Whether the member gave the password within the last quarter of an hour. A clock that was set back must
/// not make an old proof a new one.
#[must_use]
pub fn is_proved(member: &SignedIn, app: &App) -> bool {
    (0..=PROVED_FOR).contains(&(app.clock.now() - member.proved_at))
}

fn proved(member: SignedIn, app: &App) -> Result<SignedIn, Error> {
    if is_proved(&member, app) { Ok(member) } else { Err(Error::ProveFirst) }
}
