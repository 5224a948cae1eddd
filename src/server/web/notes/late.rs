//! What stands of a note where a form came too late to be kept unread: beside what was typed, with one button
//! that keeps that after all. Nothing is overwritten before.

use super::history::Difference;
use super::inspection;
use super::show::state;
use super::text::Text;
use crate::db::notes::read::{Note, WordingState};
use crate::rules::notes::difference::Effort;
use crate::rules::notes::inspection::Awaited;
use crate::rules::notes::wording::{Aim, Wording};
use crate::{App, Error};

/// Why the form was not kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Why {
    /// Its author has not read what stands.
    Unread,
    /// These very words were declined.
    Declined,
}

/// What the page says of it.
pub(super) struct Late {
    pub(super) heading: &'static str,
    pub(super) words: &'static str,
    /// How the note stands.
    pub(super) state: String,
    /// What stands, and what would become of it; none where it has the same words.
    pub(super) stands: Option<(Text, Difference)>,
    /// Where to go on from what stands.
    pub(super) address: String,
    /// What the one button sends, and says.
    pub(super) keep: (&'static str, &'static str),
}

/// How the note stands, in words.
pub(super) async fn stands(app: &App, note: &Note) -> Result<String, Error> {
    let Some(newest) = note.versions.last() else { return Ok(String::new()) };
    let awaited: Awaited = inspection::of(app, note, newest).await?;
    Ok(match state(note, newest, awaited) {
        // What is said of a report does not stand in the way of what was said of the wording.
        Some(words) if !words.contains(&newest.reason) => format!("{words} {}", newest.reason),
        Some(words) => words,
        None if newest.state == WordingState::Shown => "It is shown.".to_owned(),
        None => "It was shown before.".to_owned(),
    })
}

impl Late {
    /// Beside this note, which stands so, for words with this aim.
    pub(super) fn of(
        (note, state): (&Note, String),
        why: Why,
        (wording, aim): (&Wording, Aim),
    ) -> Self {
        let newest = note.versions.last().filter(|newest| newest.wording != *wording);
        let stands = newest.map(|newest| {
            let mut effort = Effort::of_a_page();
            (
                Text::of(&newest.wording).of_place("stands"),
                Difference::between(&newest.wording, wording, &mut effort),
            )
        });
        let (heading, words) = match why {
            Why::Declined => (
                "These very words were not taken",
                "They were not sent in again. Change them below; or send them in again all the same, and a \
                 moderator reads them once more.",
            ),
            Why::Unread => (
                "The note was changed meanwhile",
                "Since this form was opened something else was kept, in another window, or a moderator has said \
                 something. Nothing was overwritten, and what you typed is below.",
            ),
        };
        let keep = match (why, aim) {
            (Why::Declined, _) => ("send", "Send it in again all the same"),
            (Why::Unread, Aim::SendIn) => ("send", "Keep mine anyway: send it in"),
            (Why::Unread, Aim::Draft) => ("draft", "Keep mine anyway: save it as a draft"),
        };
        let address = format!("/notes/{}/edit", note.id.0);
        Self { heading, words, state, stands, address, keep }
    }
}
