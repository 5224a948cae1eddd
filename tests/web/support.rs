//! What every test of the server needs: a folder of its own, an opened server, and a way to ask it.

use std::net::SocketAddr;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicU32, Ordering};

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Method, Request, StatusCode};
use clap::Parser;
use holewright_server::config::{CommandLine, Config};
use holewright_server::rules::BaseUrl;
use holewright_server::rules::clock::Clock;
use holewright_server::{App, front::routes};
use tower::ServiceExt;

/// A folder that goes when the test ends.
pub(crate) struct Folder(PathBuf);

impl Folder {
    pub(crate) fn new() -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let name =
            format!("holewright-{}-{}", std::process::id(), COUNT.fetch_add(1, Ordering::Relaxed));
        let folder = std::env::temp_dir().join(name);
        std::fs::create_dir_all(&folder).unwrap();
        Self(folder)
    }

    pub(crate) fn path(&self) -> &Path {
        &self.0
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

/// The time every test runs at.
pub(crate) const NOW: i64 = 1_800_000_000;

/// The settings with the data in this folder and these further arguments.
pub(crate) fn config(folder: &Folder, arguments: &[&str]) -> Config {
    let data_dir = ["--data-dir", folder.path().to_str().unwrap()];
    CommandLine::try_parse_from(["holewright"].iter().chain(&data_dir).chain(arguments))
        .unwrap()
        .config
}

/// A server opened on this folder.
pub(crate) async fn open(folder: &Folder, base_url: &str) -> Arc<App> {
    let base_url: BaseUrl = base_url.parse().unwrap();
    Arc::new(App::open(config(folder, &[]), base_url, Clock::Fixed(NOW)).await.unwrap())
}

/// A server of the club's with a folder of its own.
pub(crate) struct Server {
    pub(crate) app: Arc<App>,
    pub(crate) router: Router,
    _folder: Folder,
}

impl Server {
    pub(crate) async fn start() -> Self {
        let folder = Folder::new();
        let app = open(&folder, "https://club.test").await;
        Self { router: routes::router(Arc::clone(&app)), app, _folder: folder }
    }

    pub(crate) async fn get(&self, path: &str) -> Answer {
        self.ask(Method::GET, path, &[]).await
    }

    pub(crate) async fn ask(&self, method: Method, path: &str, headers: &[(&str, &str)]) -> Answer {
        ask(&self.router, method, path, headers).await
    }
}

/// What came back.
pub(crate) struct Answer {
    pub(crate) status: StatusCode,
    pub(crate) headers: HeaderMap,
    pub(crate) body: String,
}

impl Answer {
    #[track_caller]
    pub(crate) fn header(&self, name: &str) -> &str {
        match self.headers.get(name) {
            Some(value) => value.to_str().unwrap(),
            None => panic!("no {name} on a {} answer", self.status),
        }
    }

    #[track_caller]
    pub(crate) fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.body).unwrap()
    }
}

pub(crate) async fn ask(
    router: &Router,
    method: Method,
    path: &str,
    headers: &[(&str, &str)],
) -> Answer {
    send(router, method, path, headers, "").await
}

/// As [`ask`], with a body.
pub(crate) async fn send(
    router: &Router,
    method: Method,
    path: &str,
    headers: &[(&str, &str)],
    body: &str,
) -> Answer {
    let mut request = Request::builder().method(method).uri(path);
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    let request = request.body(Body::from(body.to_owned())).unwrap();
    let (parts, body) = router.clone().oneshot(request).await.unwrap().into_parts();
    let body = to_bytes(body, usize::MAX).await.unwrap();
    Answer {
        status: parts.status,
        headers: parts.headers,
        body: String::from_utf8(body.to_vec()).unwrap(),
    }
}

/// A free port on the loopback; another program could take it before it is used, none does.
pub(crate) fn free_address() -> SocketAddr {
    std::net::TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap()
}
