//! A small club: members with their sessions, and a way to send forms as one of them.

use std::sync::Arc;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{Method, Request, StatusCode};
use form_urlencoded::Serializer;
use holewright_server::rules::auth::Token;
use holewright_server::rules::limits::{Allowance, RateLimit};
use holewright_server::{App, front::routes};
use tower::ServiceExt;

use crate::support::{Answer, Folder, NOW, config};

/// What a member of the tests may do.
#[derive(Clone, Copy)]
pub(crate) enum Right {
    None,
    Moderator,
    Inspector,
    Secretary,
}

/// A server with members.
pub(crate) struct Club {
    pub(crate) app: Arc<App>,
    pub(crate) router: Router,
    folder: Folder,
}

/// A signed-in member.
#[derive(Clone)]
pub(crate) struct Person {
    cookie: String,
    pub(crate) id: i64,
}

impl Person {
    pub(crate) fn cookie(&self) -> &str {
        &self.cookie
    }

    /// The same member with these cookies.
    pub(crate) fn with_cookies(&self, cookies: &str) -> Self {
        Self { cookie: cookies.to_owned(), id: self.id }
    }
}

impl Club {
    pub(crate) async fn open() -> Self {
        Self::open_with(|_| {}).await
    }

    /// A server that was changed in this before it began.
    pub(crate) async fn open_with(change: impl FnOnce(&mut App)) -> Self {
        Self::in_folder(Folder::new(), change).await
    }

    /// The same where each member may write only so much at once, as in a club.
    pub(crate) async fn limited(self) -> Self {
        self.again(|app| app.write_limit = RateLimit::of(Allowance::of_a_writer())).await
    }

    /// The same folder, served anew and changed in this.
    pub(crate) async fn again(self, change: impl FnOnce(&mut App)) -> Self {
        self.app.database.close().await;
        Self::in_folder(self.folder, change).await
    }

    async fn in_folder(folder: Folder, change: impl FnOnce(&mut App)) -> Self {
        use holewright_server::rules::clock::Clock;
        let base_url = "https://club.test".parse().unwrap();
        let mut app = App::open(
            config(&folder, &["--second-factor", "relaxed"]),
            base_url,
            Clock::Fixed(NOW),
        )
        .await
        .unwrap();
        app.write_limit = RateLimit::off();
        change(&mut app);
        let app = Arc::new(app);
        Self { router: routes::router(Arc::clone(&app)), app, folder }
    }

    /// The same folder after the process went and came again.
    pub(crate) async fn restarted(self) -> Self {
        self.again(|_| {}).await
    }

    pub(crate) fn folder(&self) -> &Folder {
        &self.folder
    }

    /// A new member, signed in.
    pub(crate) async fn join(&self, name: &str, right: Right) -> Person {
        let [_, writer] = self.app.database.pools();
        let (moderator, inspector, secretary) = match right {
            Right::None => (0, 0, 0),
            Right::Moderator => (1, 0, 0),
            Right::Inspector => (0, 1, 0),
            Right::Secretary => (0, 0, 1),
        };
        let (id,): (i64,) = sqlx::query_as(
            "INSERT INTO member (name, name_key, password_hash, is_moderator, is_inspector, is_secretary, joined_at)
             VALUES (?, ?, '$argon2id$x', ?, ?, ?, ?) RETURNING id",
        )
        .bind(name)
        .bind(name.to_lowercase())
        .bind(moderator)
        .bind(inspector)
        .bind(secretary)
        .bind(NOW)
        .fetch_one(writer)
        .await
        .unwrap();
        let token = Token::new().unwrap();
        sqlx::query(
            "INSERT INTO session (token_hash, number, member_id, made_at, seen_at, proved_at) VALUES (?, ?, ?, ?, ?, ?)",
        )
        .bind(token.hash().bytes())
        .bind(id)
        .bind(id)
        .bind(NOW)
        .bind(NOW)
        .bind(NOW)
        .execute(writer)
        .await
        .unwrap();
        Person { cookie: format!("__Host-holewright={}", token.secret()), id }
    }

    pub(crate) async fn get(&self, path: &str, by: Option<&Person>) -> Answer {
        self.send(Method::GET, path, by, Body::empty()).await
    }

    pub(crate) async fn post(
        &self,
        path: &str,
        by: Option<&Person>,
        fields: &[(&str, &str)],
    ) -> Answer {
        let body = Serializer::new(String::new()).extend_pairs(fields).finish();
        self.send(Method::POST, path, by, Body::from(body)).await
    }

    async fn send(&self, method: Method, path: &str, by: Option<&Person>, body: Body) -> Answer {
        let mut request = Request::builder()
            .method(&method)
            .uri(path)
            .header("origin", "https://club.test")
            .header("sec-fetch-site", "same-origin");
        if method == Method::POST {
            request = request.header("content-type", "application/x-www-form-urlencoded");
        }
        if let Some(by) = by {
            request = request.header("cookie", &by.cookie);
        }
        let request = request.body(body).unwrap();
        let (parts, body) = self.router.clone().oneshot(request).await.unwrap().into_parts();
        let body = to_bytes(body, usize::MAX).await.unwrap();
        Answer {
            status: parts.status,
            headers: parts.headers,
            body: String::from_utf8(body.to_vec()).unwrap(),
        }
    }

    /// Sends a note in; its number.
    pub(crate) async fn send_in(&self, by: &Person, fields: &[(&str, &str)]) -> i64 {
        let all: Vec<_> = [("do", "send")].into_iter().chain(fields.iter().copied()).collect();
        let answer = self.post("/notes/new", Some(by), &all).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        let (_, id) = answer.header("location").split_once("#note-").unwrap();
        id.parse().unwrap()
    }

    /// The number of the wording that waits, or is shown.
    pub(crate) async fn version(&self, note: i64, state: &str) -> i64 {
        let [readers, _] = self.app.database.pools();
        let (id,): (i64,) =
            sqlx::query_as("SELECT id FROM note_version WHERE note_id = ? AND state = ?")
                .bind(note)
                .bind(state)
                .fetch_one(readers)
                .await
                .unwrap();
        id
    }

    /// A decision in the queue about the wording in this state.
    pub(crate) async fn decide(
        &self,
        by: &Person,
        note: i64,
        (what, reason): (&str, &str),
    ) -> Answer {
        let state = if what == "settle" { "shown" } else { "waiting" };
        let version = self.version(note, state).await.to_string();
        let last = self.count("SELECT coalesce(max(id), 0) FROM safety_report").await.to_string();
        let correction = self.count("SELECT coalesce(max(id), 0) FROM correction").await;
        let correction = correction.to_string();
        let fields = [
            ("version", version.as_str()),
            ("last", last.as_str()),
            ("correction", correction.as_str()),
            ("do", what),
            ("reason", reason),
        ];
        self.post(&format!("/queue/{note}"), Some(by), &fields).await
    }

    /// A note that is shown.
    pub(crate) async fn shown(
        &self,
        by: &Person,
        moderator: &Person,
        fields: &[(&str, &str)],
    ) -> i64 {
        let note = self.send_in(by, fields).await;
        let answer = self.decide(moderator, note, ("pass", "")).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        note
    }

    /// One number that a query counts.
    pub(crate) async fn count(&self, query: &'static str) -> i64 {
        let [readers, _] = self.app.database.pools();
        let (count,): (i64,) = sqlx::query_as(query).fetch_one(readers).await.unwrap();
        count
    }
}
