//! `/people/club`: what the club says of itself on every page, changed by the secretary.

use std::sync::Arc;

use axum::extract::State;
use axum::response::Response;

use super::super::form_page::FormPage;
use super::super::page::{self, Seen};
use super::super::sign_in::proved::{self, ProvedForm};
use crate::db;
use crate::extract::{Fields, Secretary, room};
use crate::rules::auth::SignedIn;
use crate::rules::club::{self, Club};
use crate::rules::deed::Deed;
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind};
use holewright_pages::link::Link;

/// The bytes of a name, a place, a welcome, a time zone and proof.
pub const TAKES: u64 = room(&[club::NAME, club::NAME, club::WELCOME, club::NAME]) + proved::TAKES;

/// Shows what it says now.
///
/// # Errors
/// Not the secretary, or the database cannot be read.
pub async fn form(
    State(app): State<Arc<App>>,
    Secretary(secretary): Secretary,
) -> Result<Response, Error> {
    let Club { name, place, welcome, zone } = db::club::read(&app.database).await?;
    form_with(&app, &secretary, [&name, &place, &welcome, &zone], Vec::new())
}

/// Changes it, on every page at once.
///
/// # Errors
/// Not the secretary, or the database cannot be written.
pub async fn change(form: ProvedForm<Secretary>) -> Result<Response, Error> {
    form.does(set).await
}

async fn set(app: Arc<App>, secretary: SignedIn, fields: Fields) -> Result<Response, Error> {
    let typed = ["club_name", "club_place", "welcome", "zone"].map(|name| fields.get(name));
    let [name, place, welcome, zone] = typed;
    let club = match Club::read(name, place, welcome, zone) {
        Ok(club) => club,
        Err(wrong) => {
            let errors = wrong.into_iter().map(|wrong| FieldError::new(wrong.part, wrong.words));
            return form_with(&app, &secretary, typed, errors.collect());
        }
    };
    let before = db::club::read(&app.database).await?;
    let is_clock_alone = before != club && Club { zone: club.zone.clone(), ..before } == club;
    let deed = if is_clock_alone { Deed::SetClock } else { Deed::NamedClub };
    db::club::change(&app.database, app.clock.now(), &secretary, &club).await?;
    app.know_club().await?;
    Ok(page::did(&app, "/people", deed))
}

fn form_with(
    app: &App,
    secretary: &SignedIn,
    typed: [&str; 4],
    errors: Vec<FieldError>,
) -> Result<Response, Error> {
    let [name, place, welcome, zone] = typed;
    let heading = "The club";
    let mut form = FormPage::at(&app.context, "/people/club", heading, errors, Seen::by(secretary));
    form.words = vec![
        "What you write here stands on the front page, at the foot of every page and print, on slips, in the feed \
         of the notes and in previews of links. Everybody can read it. Leave a field empty to say nothing."
            .to_owned(),
    ];
    form.fields = vec![
        Field::text("club_name", "The club’s name", "At most 60 characters", name),
        Field::text("club_place", "Where it meets", "At most 60 characters", place),
        Field::new(
            "welcome",
            "Words of welcome for the front page",
            "Plain words, at most 240 characters; they are shown as one paragraph",
            Kind::Long(welcome.to_owned()),
        ),
        Field::text(
            "zone",
            "The clock that slips go by",
            "The largest town with the same clock, such as London; empty for UTC",
            zone,
        ),
    ];
    form.button = "Set it";
    form.links = vec![Link::new("/people", "All members")];
    form.answer()
}
