//! Who sent a request: a reader, a member, or a member with a right.

use std::sync::Arc;

use axum::extract::FromRequestParts;
use axum::http::request::Parts;

use crate::server::auth::{SignedIn, cookie};
use crate::server::{App, Error, db};

/// Whoever sent it: a member, or somebody who is not signed in.
#[derive(Clone, Debug)]
pub struct Reader(pub Option<SignedIn>);

/// A member. Anybody else is refused: a page then offers the sign-in.
#[derive(Clone, Debug)]
pub struct Member(pub SignedIn);

impl FromRequestParts<Arc<App>> for Reader {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Error> {
        let Some(token) = cookie::read(&parts.headers, &app.base_url) else {
            return Ok(Self(None));
        };
        Ok(Self(db::sessions::find(&app.database, token.hash(), app.clock.now()).await?))
    }
}

impl FromRequestParts<Arc<App>> for Member {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Error> {
        let Reader(reader) = Reader::from_request_parts(parts, app).await?;
        reader.map(Self).ok_or(Error::Unauthenticated)
    }
}
