//! `/notes/import`: tips that were printed before, from a table, each sent in as a note that says where.

use std::sync::Arc;

use axum::extract::State;
use axum::response::Response;

use super::super::form_page::FormPage;
use super::super::page::Seen;
use super::kept::{Sent, given_back};
use super::page::{did, may_write};
use super::queue::decides;
use super::write::point_out;
use crate::db::notes::write;
use crate::extract::{Fields, Member, room};
use crate::rules::auth::{Right, Rights, SignedIn};
use crate::rules::deed::{Deed, Did};
use crate::rules::limits::Client;
use crate::rules::notes::tips::{self, FIELD, LONGEST, MOST};
use crate::rules::notes::wording;
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind};
use holewright_pages::link::Link;

/// The bytes of a table.
pub const TAKES: u64 = room(&[LONGEST]);

const NOT_YOURS: Error =
    Error::Forbidden("tips from a table are put in by the secretary, a moderator or an inspector");

fn may_import(rights: Rights) -> bool {
    decides(rights) || rights.may(Right::Manage)
}

/// Shows the form.
///
/// # Errors
/// It is for those who decide and for the secretary.
pub async fn form(State(app): State<Arc<App>>, Member(member): Member) -> Result<Response, Error> {
    if !may_import(member.rights) {
        return Err(NOT_YOURS);
    }
    form_with(&app, &member, "", Vec::new()).answer()
}

/// Sends all of them in, or none.
///
/// # Errors
/// As [`form`]; or they cannot be kept. A table that cannot be read comes back as typed.
pub async fn take(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    fields: Fields,
) -> Result<Response, Error> {
    let typed = wording::text(fields.as_typed(FIELD));
    let sent = || Sent {
        action: "/notes/import".to_owned(),
        fields: vec![field(&typed)],
        known: Vec::new(),
        carried: Vec::new(),
    };
    let member = match member {
        Ok(Member(member)) if may_import(member.rights) => member,
        Ok(Member(other)) => return given_back(&app, Some(&other), NOT_YOURS, sent()),
        Err(error) => return given_back(&app, None, error, sent()),
    };
    let (table, of) = (typed.clone(), member.id.0);
    let read = async {
        may_write(&app, &member)?;
        // A table is as much to read as sixty forms.
        app.apart.run(Some(Client::Member(member.id)), move || tips::read(&table, of)).await
    };
    let tips = match read.await {
        Ok(Ok(tips)) => tips,
        Ok(Err(errors)) => return form_with(&app, &member, &typed, errors).answer(),
        Err(error) => return given_back(&app, Some(&member), error, sent()),
    };
    match write::several(&app.database, app.clock.now(), &member, &tips).await {
        Ok(put) => {
            let count = i64::try_from(put.made).ok();
            let sent = put.stand.into_iter().zip(&tips);
            let sent: Vec<_> = sent.filter_map(|(note, tip)| Some((note?, &tip.wording))).collect();
            point_out(&app, &member, &sent).await;
            did(&app, "/notes/mine", Did { deed: Deed::SentTips, of: count })
        }
        Err(error) => given_back(&app, Some(&member), error.into(), sent()),
    }
}

fn field(typed: &str) -> Field {
    let hint = "The whole file, with the names of the columns in its first row";
    Field::new(FIELD, "The table", hint, Kind::Long(typed.to_owned()))
}

fn form_with(app: &App, member: &SignedIn, typed: &str, errors: Vec<FieldError>) -> FormPage {
    let heading = "Put in tips that were printed before";
    let mut page = FormPage::at(&app.context, "/notes/import", heading, errors, Seen::by(member));
    let columns: Vec<&str> = tips::columns().map(|field| field.name).collect();
    page.words = vec![
        "Old newsletters hold much that is still true. Write one tip a row into a table, save it as CSV, and paste \
         the file here; cells copied out of a spreadsheet do as well."
            .to_owned(),
        format!(
            "The columns, in any order: {}. Title, text and source must be there; the source says where it was \
             printed and in what year, and stands beside the note for good.",
            columns.join(", ")
        ),
        format!(
            "Up to {MOST} tips at once. Each waits in the queue as a note of yours, and somebody else decides \
             about it. The same row put in twice makes one note."
        ),
    ];
    page.fields = vec![field(typed)];
    page.button = "Send them all in";
    page.links = vec![Link::new("/queue", "The queue"), Link::new("/notes/mine", "Your notes")];
    page
}
