//! `/me/data.json`: what is kept of a member, for the member.

use std::sync::Arc;

use axum::body::Body;
use axum::extract::State;
use axum::http::HeaderValue;
use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::Response;
use serde::Serialize;

use crate::db::own_data::{self, OwnData};
use crate::db::{accounts, sessions};
use crate::extract::Member;
use crate::{App, Error};

/// All of it, as `/privacy` lists it. Times are seconds since 1970, UTC.
#[derive(Serialize)]
struct Data {
    member: MemberData,
    sessions: Vec<SessionData>,
    #[serde(flatten)]
    own: OwnData,
}

#[derive(Serialize)]
struct MemberData {
    number: i64,
    name: String,
    is_moderator: bool,
    is_inspector: bool,
    is_secretary: bool,
    has_second_factor: bool,
    spare_codes_left: i64,
    joined_at: i64,
    wrong_tries_since_sign_in: i64,
    last_wrong_try_at: Option<i64>,
    news_read_at: i64,
}

#[derive(Serialize)]
struct SessionData {
    number: i64,
    made_at: i64,
    seen_at: i64,
    password_given_at: i64,
    agent: String,
}

/// Gives it.
///
/// # Errors
/// Nobody is signed in, or the database cannot be read.
pub async fn show(State(app): State<Arc<App>>, Member(member): Member) -> Result<Response, Error> {
    let account = accounts::numbered(&app.database, member.id).await?;
    let account = account.ok_or(Error::Unauthenticated)?;
    let open = sessions::of_member(&app.database, member.id, app.clock.now()).await?;
    let session = |open: sessions::Open| SessionData {
        number: open.number,
        made_at: open.made_at,
        seen_at: open.seen_at,
        password_given_at: open.proved_at,
        agent: open.agent,
    };
    let data = Data {
        member: MemberData {
            number: account.id.0,
            name: account.name,
            is_moderator: account.rights.moderator,
            is_inspector: account.rights.inspector,
            is_secretary: account.rights.secretary,
            has_second_factor: account.second_factor.is_some(),
            spare_codes_left: account.spare_codes,
            joined_at: account.joined_at,
            wrong_tries_since_sign_in: account.failures,
            last_wrong_try_at: account.failed_at,
            news_read_at: account.news_read_at,
        },
        sessions: open.into_iter().map(session).collect(),
        own: own_data::of(&app.database, member.id).await?,
    };
    let named = "attachment; filename=\"holewright-my-data.json\"";
    let body = serde_json::to_string_pretty(&data);
    let body = body.map_err(|error| Error::Internal(error.into()))?;
    let mut response = Response::new(Body::from(body));
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static("application/json"));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("private, no-store"));
    headers.insert(CONTENT_DISPOSITION, HeaderValue::from_static(named));
    Ok(response)
}
