//! `/people/sheet`: slips to join with for a list of names, to print six on a page and cut apart.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::apart::aside;
use super::super::form_page::FormPage;
use super::super::page::{self, Seen};
use super::super::sign_in::proved::{self, ProvedForm};
use super::open_slips::{too_many, unseen_in};
use super::slip::{Slip, When};
use crate::db::open_slips::{self, Lets};
use crate::db::slips;
use crate::extract::{Fields, Secretary, WORD, room};
use crate::rules::auth::{SignedIn, Token, name};
use crate::rules::plain;
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind, items};
use holewright_pages::layout::Frame;
use holewright_pages::link::Link;

/// The most slips of one sheet.
const MOST: usize = 60;
/// The most characters of who a slip is for.
const LONGEST: usize = 60;
/// How many stand on a page of A4.
const A_PAGE: usize = 6;

/// The tick that makes also what was asked about.
const SAME: &str = "same";

/// The bytes of so many names on lines, a tick, and proof.
pub const TAKES: u64 = room(&[MOST * (LONGEST + 2), WORD]) + proved::TAKES;

#[derive(Template)]
#[template(path = "web/people/sheet.html")]
struct SheetPage {
    frame: Frame,
    count: usize,
    pages: Vec<Vec<Slip>>,
}

/// Shows the form.
///
/// # Errors
/// Not the secretary.
pub async fn form(
    State(app): State<Arc<App>>,
    Secretary(secretary): Secretary,
) -> Result<Response, Error> {
    form_with(&app, &secretary, "", Vec::new(), false)
}

/// Makes all the slips or none, and shows them, this once.
///
/// # Errors
/// Not the secretary, or the database cannot be written.
pub async fn print(form: ProvedForm<Secretary>) -> Result<Response, Error> {
    form.does(make).await
}

async fn make(app: Arc<App>, secretary: SignedIn, fields: Fields) -> Result<Response, Error> {
    let typed = fields.as_typed("names");
    // What a file begins with is no letter of a name.
    let lines = typed.trim_start_matches('\u{feff}').lines();
    let names: Vec<&str> = lines.map(str::trim).filter(|name| !name.is_empty()).collect();
    if let Some(fault) = fault(&names) {
        return form_with(&app, &secretary, typed, vec![FieldError::new("names", fault)], false);
    }
    let now = app.clock.now();
    let open = open(&app).await?;
    if let Some(words) = too_many(open.len() + names.len()) {
        return form_with(&app, &secretary, typed, vec![FieldError::new("names", words)], false);
    }
    if !fields.ticked(SAME)
        && let Some(words) = again(&names, &open)
    {
        return form_with(&app, &secretary, typed, vec![FieldError::new("names", words)], true);
    }
    let mut made = Vec::with_capacity(names.len());
    for name in names {
        made.push((Token::new()?, name.to_owned()));
    }
    let to_keep: Vec<_> = made.iter().map(|(token, name)| (token.hash(), name.as_str())).collect();
    slips::invite_all(&app.database, now, &secretary, &to_keep).await?;
    let until = When::of(&app).await?.told(now + slips::JOIN_LASTS);
    // Sixty drawings take a while, and their page is a megabyte.
    aside(move || drawn(&app, &secretary, &made, &until)).await?
}

fn drawn(
    app: &App,
    secretary: &SignedIn,
    made: &[(Token, String)],
    until: &str,
) -> Result<Response, Error> {
    let slips = made.iter().map(|(token, name)| Slip::to_join(app, token, name, until));
    let slips: Vec<Slip> = slips.collect::<Result<_, _>>()?;
    let heading = "Slips to join with";
    let page = SheetPage {
        frame: page::frame(&app.context, "/people", heading, false, Seen::by(secretary))
            .saying(page::made("The slips are made.")),
        count: slips.len(),
        pages: slips.chunks(A_PAGE).map(<[Slip]>::to_vec).collect(),
    };
    page::respond(StatusCode::OK, &page)
}

fn fault(names: &[&str]) -> Option<String> {
    if names.is_empty() {
        return Some("Write at least one name.".to_owned());
    }
    if names.len() > MOST {
        let count = names.len();
        return Some(format!(
            "At most {MOST} names at once, and these are {count}. Nothing was made: send the rest on a second sheet."
        ));
    }
    if let Some(unseen) = names.iter().find(|name| plain::line(name) != **name) {
        return Some(unseen_in(unseen));
    }
    let long = names.iter().find(|name| name.chars().count() > LONGEST)?;
    let begins: String = long.chars().take(20).collect();
    Some(format!("At most {LONGEST} characters to a name, one name a line: “{begins}…” has more."))
}

/// Who has an open slip to join with, as names are compared.
async fn open(app: &App) -> Result<Vec<String>, Error> {
    let open = open_slips::all(&app.database, app.clock.now()).await?;
    let keys = open.into_iter().filter_map(|slip| match slip.lets {
        Lets::Join { meant_for, .. } => Some(name::key(&meant_for)),
        Lets::Reset { .. } => None,
    });
    Ok(keys.collect())
}

/// What is asked where a name stands twice in the list, or among these that have a slip.
fn again(names: &[&str], open: &[String]) -> Option<String> {
    let keys: Vec<String> = names.iter().map(|named| name::key(named)).collect();
    let mut twice = Vec::new();
    let mut before = Vec::new();
    for (place, (named, key)) in names.iter().zip(&keys).enumerate() {
        let earlier = keys.iter().take(place).filter(|earlier| *earlier == key).count();
        match earlier {
            _ if key.is_empty() => {}
            1 => twice.push(*named),
            0 if open.contains(key) => before.push(*named),
            _ => {}
        }
    }
    let said = |names: &[&str], one: &str, several: &str| {
        let verb = if names.len() == 1 { one } else { several };
        (!names.is_empty()).then(|| format!("{} {verb}. ", quoted(names)))
    };
    let twice = said(&twice, "stands twice in the list", "stand twice in the list");
    let before = said(&before, "has an open slip already", "have open slips already");
    let words = [twice, before].into_iter().flatten().collect::<String>();
    (!words.is_empty()).then(|| {
        format!(
            "{words}Nothing was made: take out what is too much, or tick “Make them all the same”."
        )
    })
}

fn quoted(names: &[&str]) -> String {
    names.iter().map(|named| format!("“{named}”")).collect::<Vec<_>>().join(", ")
}

fn form_with(
    app: &App,
    secretary: &SignedIn,
    typed: &str,
    errors: Vec<FieldError>,
    asks: bool,
) -> Result<Response, Error> {
    let heading = "Slips on a sheet";
    let mut form =
        FormPage::at(&app.context, "/people/sheet", heading, errors, Seen::by(secretary));
    form.words = vec![format!(
        "One slip for each name, {A_PAGE} on a page, to print, cut apart and hand over at a meeting. Each lets one \
         person join as a member, once, within a fortnight. They choose their own name and password."
    )];
    let hint = format!("One a line, at most {MOST}");
    form.fields = vec![Field::new("names", "The names", hint, Kind::Long(typed.to_owned()))];
    if asks {
        let tick = [("yes", "Make them all the same", false)];
        let kind = Kind::Ticks(items(tick));
        form.fields.push(Field::new(SAME, "The same name again", "", kind));
    }
    form.button = "Make the slips";
    form.links = vec![
        Link::new("/people/invite", "One slip, or one with rights"),
        Link::new("/people#slips", "Open slips"),
    ];
    form.answer()
}
