//! Who sent a request: a reader, or a member.

use std::sync::Arc;

use axum::extract::FromRequestParts;
use axum::http::HeaderMap;
use axum::http::request::Parts;

use crate::rules::auth::{Rights, SignedIn, cookie};
use crate::{App, Error, db};

/// Whoever sent it: a member, or somebody who is not signed in. A member who must set up a second
/// factor first counts as one without rights until then.
#[derive(Clone, Debug)]
pub struct Reader(pub Option<SignedIn>);

/// A member. Anybody else is refused: a page then offers the sign-in. Who must set up a second
/// factor first is sent there.
#[derive(Clone, Debug)]
pub struct Member(pub SignedIn);

/// A member, even one who must set up a second factor first: for that page and for signing out.
#[derive(Clone, Debug)]
pub struct AnyMember(pub SignedIn);

/// The member whose session these headers carry.
///
/// # Errors
/// The database cannot be read.
pub async fn signed_in(headers: &HeaderMap, app: &App) -> Result<Option<SignedIn>, Error> {
    for token in cookie::read(headers, &app.base_url) {
        let found = db::sessions::find(&app.database, token.hash(), app.clock.now()).await?;
        if found.is_some() {
            return Ok(found);
        }
    }
    Ok(None)
}

/// Whether this member must set up a second factor before anything else.
fn owes_second_factor(member: &SignedIn, app: &App) -> bool {
    let is_due = member.rights.need_second_factor() && app.config.second_factor.is_compulsory();
    is_due && !member.has_second_factor
}

impl FromRequestParts<Arc<App>> for Reader {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Error> {
        let mut reader = signed_in(&parts.headers, app).await?;
        if let Some(member) = reader.as_mut().filter(|member| owes_second_factor(member, app)) {
            member.rights = Rights::default();
            member.open = member.open.of_their_own();
        }
        Ok(Self(reader))
    }
}

impl FromRequestParts<Arc<App>> for Member {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Error> {
        let AnyMember(member) = AnyMember::from_request_parts(parts, app).await?;
        if owes_second_factor(&member, app) {
            return Err(Error::SecondFactorFirst);
        }
        Ok(Self(member))
    }
}

impl FromRequestParts<Arc<App>> for AnyMember {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Error> {
        let mut member = signed_in(&parts.headers, app).await?.ok_or(Error::Unauthenticated)?;
        if owes_second_factor(&member, app) {
            member.open = member.open.of_their_own();
        }
        Ok(Self(member))
    }
}
