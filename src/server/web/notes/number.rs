//! The number in a note's address.

use std::sync::Arc;

use axum::extract::{FromRequestParts, Path};
use axum::http::request::Parts;

use crate::rules::notes::NoteId;
use crate::{App, Error};

/// The note that an address names. What is no number names none.
#[derive(Clone, Copy, Debug)]
pub struct Number(pub NoteId);

impl FromRequestParts<Arc<App>> for Number {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Error> {
        const NOTHING: Error = Error::NotFound("there is no note at this address");
        let Ok(Path(written)) = Path::<String>::from_request_parts(parts, app).await else {
            return Err(NOTHING);
        };
        // One spelling: `+12` and `012` are no addresses of note 12.
        let number = written.parse::<i64>().ok().filter(|number| number.to_string() == written);
        number.map(|number| Self(NoteId(number))).ok_or(NOTHING)
    }
}
