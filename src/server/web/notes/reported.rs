//! A note that a report hides, for whoever sent the report: it is in, who looks at it, and where to go on.
//! Everybody else is told only that it is hidden.

use askama::Template;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::page::own_of;
use super::page::page;
use crate::db::notes::inspectors;
use crate::db::notes::read::{Note, Sender, WordingState};
use crate::extract::Reader;
use crate::rules::notes::inspection::{Awaited, awaited};
use crate::rules::notes::state::{Act, Subject};
use crate::{App, Error};
use holewright_pages::layout::{Frame, Section};

#[derive(Template)]
#[template(path = "web/notes/reported.html")]
struct ReportedPage {
    frame: Frame,
    title: String,
    looks: &'static str,
    /// What this reader wrote, oldest first.
    said: Vec<String>,
}

/// The page for this reader; a form that was sent about the note has another status, since it changed nothing.
pub(super) async fn answer(
    app: &App,
    reader: Reader,
    note: &Note,
    status: StatusCode,
) -> Result<Response, Error> {
    let name = reader.0.as_ref().map(|member| member.name.as_str());
    let is_own = |by: &Sender| matches!(by, Sender::Member(by) if name == Some(by.as_str()));
    let own = note.reports.iter().filter(|report| is_own(&report.by));
    let said: Vec<String> = own.map(|report| report.text.clone()).collect();
    let shown = note.in_state(WordingState::Shown);
    let (Some(shown), false) = (shown, said.is_empty()) else { return Err(Error::Hidden) };
    let looks = match note.state().asks(Act::Settle) {
        Subject::Usual => "A moderator looks at it",
        Subject::Pressure => {
            let author = note.author.as_ref().map(|author| author.id);
            match awaited(author, &inspectors::all(&app.database).await?) {
                Awaited::Exists => "An inspector looks at it",
                _ => {
                    "It is for an inspector, and the club has none at present who could: tell the secretary. \
                     Until then a moderator looks at it"
                }
            }
        }
    };
    let heading = "Your report is in";
    let address = format!("/notes/{}", note.id.0);
    let frame = Frame::at(&app.context, Section::Notes, &address, heading, heading);
    let reported = ReportedPage {
        frame: frame.of_a_mistake().for_reader(own_of(reader.0.as_ref())),
        title: shown.wording.title.clone(),
        looks,
        said,
    };
    page(status, &reported, &reader)
}
