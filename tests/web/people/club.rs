//! A club for a test: a server with cheap hashes, members who joined by the front door, and browsers
//! that hold their cookies.

use std::net::{IpAddr, SocketAddr};
use std::sync::Arc;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::header::{CONTENT_TYPE, COOKIE, SET_COOKIE};
use axum::http::{Method, Request, StatusCode};
use holewright_server::extract::client::Peer;
use holewright_server::rules::auth::password::{Cost, Hashing};
use holewright_server::rules::auth::{Rights, Token};
use holewright_server::rules::clock::Clock;
use holewright_server::{App, db, front::routes};
use tower::ServiceExt;

use crate::support::{Answer, Folder, NOW, config};

/// A password that is taken.
pub(super) const PASSWORD: &str = "seven brass otters dancing";

pub(super) const PLAIN: Rights = Rights { moderator: false, inspector: false, secretary: false };
pub(super) const MODERATOR: Rights = Rights { moderator: true, ..PLAIN };
pub(super) const INSPECTOR: Rights = Rights { inspector: true, ..PLAIN };
pub(super) const SECRETARY: Rights = Rights { secretary: true, ..PLAIN };

/// The name of the cookie over https.
pub(super) const COOKIE_NAME: &str = "__Host-holewright";

/// The server, and the folder of its data.
pub(super) struct Club {
    pub(super) app: Arc<App>,
    pub(super) router: Router,
    folder: Arc<Folder>,
    arguments: Vec<String>,
}

impl Club {
    /// A new club that leaves the second factor to its members.
    pub(super) async fn start() -> Self {
        Self::with(&["--second-factor", "relaxed"]).await
    }

    /// A new club with these settings.
    pub(super) async fn with(arguments: &[&str]) -> Self {
        let arguments = arguments.iter().map(|argument| (*argument).to_owned()).collect();
        Self::open(Arc::new(Folder::new()), arguments, NOW, Cost::FOR_TESTS).await
    }

    /// A new club that hashes as a real one does.
    pub(super) async fn at_full_cost() -> Self {
        let relaxed = vec!["--second-factor".to_owned(), "relaxed".to_owned()];
        Self::open(Arc::new(Folder::new()), relaxed, NOW, Cost::default()).await
    }

    /// The same club with dearer hashes.
    pub(super) async fn at_cost(&self, cost: Cost) -> Self {
        Self::open(Arc::clone(&self.folder), self.arguments.clone(), NOW, cost).await
    }

    /// The same club, so many seconds later, after a restart.
    pub(super) async fn later(&self, seconds: i64) -> Self {
        Self::open(Arc::clone(&self.folder), self.arguments.clone(), NOW + seconds, Cost::FOR_TESTS)
            .await
    }

    async fn open(folder: Arc<Folder>, arguments: Vec<String>, now: i64, cost: Cost) -> Self {
        let given: Vec<&str> = arguments.iter().map(String::as_str).collect();
        let base_url = "https://club.test".parse().unwrap();
        let config = config(&folder, &given);
        let mut app = App::open(config, base_url, Clock::Fixed(now)).await.unwrap();
        app.passwords = Hashing::at(cost);
        let app = Arc::new(app);
        Self { router: routes::router(Arc::clone(&app)), app, folder, arguments }
    }

    /// The address of a slip to join.
    pub(super) async fn slip(&self, rights: Rights) -> String {
        let token = Token::new().unwrap();
        let now = self.app.clock.now();
        db::slips::invite(&self.app.database, now, None, token.hash(), rights, "").await.unwrap();
        format!("/join/{}", token.secret())
    }

    /// Somebody who joins with a slip, and stays signed in.
    pub(super) async fn join(&self, name: &str, rights: Rights) -> Browser {
        let slip = self.slip(rights).await;
        let mut browser = self.browser();
        let answer = browser.post(&slip, &[("name", name), ("new_password", PASSWORD)]).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        browser
    }

    /// A browser without a session.
    pub(super) fn browser(&self) -> Browser {
        Browser { router: self.router.clone(), cookie: None, peer: None, told: None }
    }

    /// The number of a member.
    pub(super) async fn number_of(&self, name: &str) -> i64 {
        let key = holewright_server::rules::auth::name::key(name);
        db::accounts::named(&self.app.database, &key).await.unwrap().unwrap().id.0
    }

    /// One figure out of the database.
    pub(super) async fn count(&self, query: &'static str) -> i64 {
        sqlx::query_scalar(query).fetch_one(self.app.database.pools()[0]).await.unwrap()
    }

    /// Every row of the tables that hold people, but for when somebody was last seen.
    pub(super) async fn dump(&self) -> String {
        let mut dump = String::new();
        for query in [
            "SELECT group_concat(printf('%d %s %s %s %d %d %d %s %s %s %s', id, name, name_key, password_hash, \
             is_moderator, is_inspector, is_secretary, hex(totp_secret), totp_step, stopped_at, failures), ';') \
             FROM member",
            "SELECT group_concat(printf('%s %s %s %s', hex(token_hash), purpose, used_at, ends_at), ';') FROM slip",
            "SELECT group_concat(printf('%s %d %d %s', hex(token_hash), number, member_id, proved_at), ';') \
             FROM session",
            "SELECT group_concat(printf('%d %s %s %s', id, what, subject, detail), ';') FROM act",
            "SELECT group_concat(printf('%d %s %s %s', member_id, mark, code_hash, used_at), ';') FROM spare_code",
            "SELECT printf('%s %s %s %s', name, place, welcome, zone) FROM club",
        ] {
            let row: Option<String> =
                sqlx::query_scalar(query).fetch_one(self.app.database.pools()[0]).await.unwrap();
            dump.push_str(&row.unwrap_or_default());
            dump.push('\n');
        }
        dump
    }

    /// How often this stands in the log.
    pub(super) async fn acts(&self, what: &str) -> i64 {
        let query = "SELECT COUNT(*) FROM act WHERE what = ?";
        let query = sqlx::query_scalar(query).bind(what.to_owned());
        query.fetch_one(self.app.database.pools()[0]).await.unwrap()
    }
}

/// A browser: what it holds of the site, and where it stands.
#[derive(Clone)]
pub(super) struct Browser {
    pub(super) router: Router,
    /// The value of the session's cookie.
    pub(super) cookie: Option<String>,
    pub(super) peer: Option<IpAddr>,
    /// What the last form said of itself, for the page after it.
    pub(super) told: Option<String>,
}

impl Browser {
    /// The same at another club: the one a while later.
    pub(super) fn at(&self, club: &Club) -> Self {
        Self { router: club.router.clone(), ..self.clone() }
    }

    /// The same, from this network address.
    pub(super) fn from(&self, peer: &str) -> Self {
        Self { peer: Some(peer.parse().unwrap()), ..self.clone() }
    }

    pub(super) async fn get(&mut self, path: &str) -> Answer {
        self.send(Method::GET, path, &[], "").await
    }

    /// Sends a form, as a browser would from a page of this site.
    pub(super) async fn post(&mut self, path: &str, fields: &[(&str, &str)]) -> Answer {
        let body = form_urlencoded::Serializer::new(String::new()).extend_pairs(fields).finish();
        let headers = [
            (CONTENT_TYPE.as_str(), "application/x-www-form-urlencoded"),
            ("sec-fetch-site", "same-origin"),
        ];
        self.send(Method::POST, path, &headers, &body).await
    }

    pub(super) async fn sign_in(&mut self, name: &str, password: &str) -> Answer {
        self.post("/sign-in", &[("name", name), ("password", password)]).await
    }

    /// Sends a request, and keeps the cookie that comes back.
    pub(super) async fn send(
        &mut self,
        method: Method,
        path: &str,
        headers: &[(&str, &str)],
        body: &str,
    ) -> Answer {
        let mut request = Request::builder().method(method).uri(path);
        if self.peer.is_some() && !headers.iter().any(|(name, _)| *name == "host") {
            request = request.header("host", "club.test");
        }
        for (name, value) in headers {
            request = request.header(*name, *value);
        }
        if let Some(cookie) = &self.cookie {
            request = request.header(COOKIE, format!("{COOKIE_NAME}={cookie}"));
        }
        if let Some(told) = &self.told {
            let mut parts = told.split("; ");
            let (value, place) = (parts.next().unwrap(), parts.next().unwrap());
            if path.starts_with(place.strip_prefix("Path=").unwrap()) {
                request = request.header(COOKIE, value);
            }
        }
        let mut request = request.body(Body::from(body.to_owned())).unwrap();
        if let Some(peer) = self.peer {
            request.extensions_mut().insert(Peer(SocketAddr::new(peer, 50_000)));
        }
        let (parts, body) = self.router.clone().oneshot(request).await.unwrap().into_parts();
        let body = to_bytes(body, usize::MAX).await.unwrap();
        for cookie in parts.headers.get_all(SET_COOKIE) {
            let cookie = cookie.to_str().unwrap();
            let (name, value) = cookie.split(';').next().unwrap().split_once('=').unwrap();
            match name {
                COOKIE_NAME => {
                    self.cookie = Some(value.to_owned()).filter(|value| !value.is_empty());
                }
                "done" => self.told = Some(cookie.to_owned()),
                other => panic!("nobody knows a cookie {other}"),
            }
        }
        Answer {
            status: parts.status,
            headers: parts.headers,
            // A file that is no text is not looked into.
            body: String::from_utf8_lossy(&body).into_owned(),
        }
    }

    /// Sends a form, and opens the page that it leads to.
    pub(super) async fn submit(&mut self, path: &str, fields: &[(&str, &str)]) -> Answer {
        self.told = None;
        let answer = self.post(path, fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{path}: {}", answer.body);
        let next = answer.header("location").split('#').next().unwrap().to_owned();
        self.get(&next).await
    }

    /// Whether a member is signed in here.
    pub(super) async fn is_in(&mut self) -> bool {
        self.get("/me").await.status == StatusCode::OK
    }
}
