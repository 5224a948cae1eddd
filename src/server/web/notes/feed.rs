//! `/notes/feed/{token}`: what concerns one member, as a feed (RFC 4287). Its address is a secret: whoever has it
//! reads it, without signing in.

use std::fmt::Write;
use std::sync::Arc;

use axum::extract::{Path, State};
use axum::http::header::CACHE_CONTROL;
use axum::http::{HeaderValue, StatusCode};
use axum::response::Response;

use super::super::when::moment;
use super::atom::{escaped, tag};
use super::news::titled;
use super::page::answer;
use crate::db::feeds::{self, Owner};
use crate::db::notes::news::Concern;
use crate::db::notes::open::{self, Whose};
use crate::extract::{Asker, Reader};
use crate::rules::auth::{Rights, Token};
use crate::rules::notes::open::Open;
use crate::{App, Error};

/// The feed of the member whose token it is.
///
/// # Errors
/// It is nobody's, or the database cannot be read.
pub async fn show(
    State(app): State<Arc<App>>,
    asker: Asker,
    Path(token): Path<String>,
) -> Result<Response, Error> {
    let nothing = Error::NotFound("there is no feed at this address");
    let Some(token) = Token::read(&token) else { return Err(nothing) };
    let owner = feeds::owner(&app.database, token.hash()).await?;
    let Some(owner) = owner else { return Err(nothing) };
    let concerns = feeds::concerns(&app.database, owner.id).await?;
    let (rights, news_read_at) = (rights(&app, owner), owner.news_read_at);
    let whose = Whose { id: owner.id, rights, news_read_at };
    let open = open::of(&app.database, app.clock.now(), whose).await?;
    let base = app.base_url.as_str().to_owned();
    let work = move || feed(&base, owner, &concerns, open);
    let feed = app.apart.run(asker.client, work).await?;
    let media = "application/atom+xml; charset=utf-8";
    let mut response = answer(StatusCode::OK, media, feed, &Reader(None));
    // It is one member's: no cache on the way keeps it.
    let private = HeaderValue::from_static("private, no-store");
    response.headers_mut().insert(CACHE_CONTROL, private);
    Ok(response)
}

/// As on every page: none before a second factor is set up, where one is due.
fn rights(app: &App, owner: Owner) -> Rights {
    let is_due = owner.rights.need_second_factor() && app.config.second_factor.is_compulsory();
    if is_due && !owner.has_second_factor { Rights::default() } else { owner.rights }
}

fn feed(base: &str, owner: Owner, concerns: &[Concern], open: Open) -> String {
    let tag = format!("{}/of/{}", tag(base), owner.id.0);
    let base = escaped(base);
    let newest = concerns.iter().map(|concern| concern.at).fold(open.newest, i64::max);
    let updated = moment(newest);
    let mut feed = format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n\
         <feed xmlns=\"http://www.w3.org/2005/Atom\" xml:lang=\"en-GB\" xml:base=\"{base}/\">\n\
         <id>{tag}</id>\n<title>Your shop notes</title>\n<updated>{updated}</updated>\n\
         <author><name>Holewright</name></author>\n\
         <link rel=\"alternate\" type=\"text/html\" href=\"{base}/notes/mine\"/>\n"
    );
    if open.waiting() > 0 {
        let at = moment(open.newest);
        let (title, words) = (waits(open), "What waits stands in the queue.");
        let _ = entry(
            &mut feed,
            (&format!("{tag}/queue"), &at),
            (&title, words),
            &format!("{base}/queue"),
        );
    }
    for concern in concerns {
        let (title, words) = told(concern);
        let id = format!("{tag}/{}/{}", concern.kind.word(), concern.number);
        let address = format!("{base}/notes/{}", concern.note);
        let _ = entry(&mut feed, (&id, &moment(concern.at)), (&title, &words), &address);
    }
    feed.push_str("</feed>\n");
    feed
}

fn entry(
    feed: &mut String,
    (id, at): (&str, &str),
    (title, words): (&str, &str),
    address: &str,
) -> std::fmt::Result {
    let (title, words) = (escaped(title), escaped(words));
    write!(
        feed,
        "<entry>\n<id>{id}</id>\n<title>{title}</title>\n<updated>{at}</updated>\n\
         <link rel=\"alternate\" type=\"text/html\" href=\"{address}\"/>\n\
         <content type=\"text\">{words}</content>\n</entry>\n"
    )
}

/// How much waits for a decision.
fn waits(open: Open) -> String {
    let many = |count: i64, one: &str| match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        count => Some(format!("{count} {one}s")),
    };
    let both = [many(open.notes, "note"), many(open.remarks, "remark")];
    let both: Vec<String> = both.into_iter().flatten().collect();
    let verb = if open.waiting() == 1 { "waits" } else { "wait" };
    format!("{} {verb} for a decision", both.join(" and "))
}

/// What happened, and its words.
fn told(concern: &Concern) -> (String, String) {
    let (what, title) = (concern.kind.what(), titled(&concern.title));
    (format!("{what}: {title}"), concern.text.clone())
}
