//! The slips on the page of the members: those that are open, and making one void; those that ran out unused, and
//! putting one away.

use std::sync::Arc;

use axum::response::Response;

use super::super::page;
use super::super::sign_in::proved::{self, ProvedForm};
use super::as_a;
use super::slip::When;
use crate::db::open_slips::{self, Lets, OpenSlip};
use crate::extract::{Fields, Secretary, WORD, room};
use crate::rules::auth::SignedIn;
use crate::rules::deed::Deed;
use crate::rules::plain;
use crate::{App, Error};

/// The bytes of the mark of a slip and of proof.
pub const TAKES: u64 = room(&[WORD]) + proved::TAKES;

/// The most slips that stand open at once: a club of hundreds is let in by sheets of sixty all the same.
const MOST_OPEN: usize = 300;

/// What is said where so many would be open.
pub(super) fn too_many(open: usize) -> Option<String> {
    (open > MOST_OPEN).then(|| {
        format!("With these {open} slips would be open, and {MOST_OPEN} may be: cancel those that nobody needs.")
    })
}

/// What is said of a name with a character in it that nobody sees.
pub(super) fn unseen_in(name: &str) -> String {
    format!(
        "A character in “{}” cannot be seen. Type it anew, in plain letters.",
        plain::line(name)
    )
}

/// A slip in the list.
pub(super) struct SlipRow {
    pub(super) mark: String,
    pub(super) who: String,
    pub(super) lets: String,
    pub(super) made_by: String,
    pub(super) ends: String,
}

/// The slips as the list has them.
pub(super) fn rows(slips: Vec<OpenSlip>, when: &When) -> Vec<SlipRow> {
    slips.into_iter().map(|slip| row(slip, when)).collect()
}

fn row(slip: OpenSlip, when: &When) -> SlipRow {
    let (who, lets) = match slip.lets {
        Lets::Reset { name, is_read_out: false } => (name, "Chooses a new password".to_owned()),
        Lets::Reset { name, is_read_out: true } => {
            (name, "Chooses a new password, by a code that is read out".to_owned())
        }
        Lets::Join { meant_for, rights } => {
            let who = if meant_for.trim().is_empty() { "Somebody".to_owned() } else { meant_for };
            (who, format!("Joins as {}", as_a(rights)))
        }
    };
    SlipRow {
        mark: slip.mark,
        who,
        lets,
        made_by: slip.made_by.unwrap_or_else(|| "the server, or a former member".to_owned()),
        ends: when.told(slip.ends_at),
    }
}

/// Makes the slip void, or puts it away, that the form names.
///
/// # Errors
/// Not the secretary, no such slip, or the database cannot be written.
pub async fn make_void(form: ProvedForm<Secretary>) -> Result<Response, Error> {
    form.does(done_with).await
}

async fn done_with(app: Arc<App>, secretary: SignedIn, fields: Fields) -> Result<Response, Error> {
    if fields.has("away") {
        away(app, secretary, fields).await
    } else {
        void(app, secretary, fields).await
    }
}

async fn away(app: Arc<App>, secretary: SignedIn, fields: Fields) -> Result<Response, Error> {
    const NONE: Error = Error::NotFound("no such slip has run out: it was put away already");
    let (now, mark) = (app.clock.now(), fields.get("away"));
    if !open_slips::put_away(&app.database, now, &secretary, mark).await? {
        return Err(NONE);
    }
    Ok(page::did(&app, "/people#slips", Deed::PutSlipAway))
}

async fn void(app: Arc<App>, secretary: SignedIn, fields: Fields) -> Result<Response, Error> {
    const NONE: Error =
        Error::NotFound("no such slip is open: it was used, has ended, or was cancelled already");
    let (now, mark) = (app.clock.now(), fields.get("void"));
    if !open_slips::make_void(&app.database, now, &secretary, mark).await? {
        return Err(NONE);
    }
    Ok(page::did(&app, "/people#slips", Deed::VoidedSlip))
}
