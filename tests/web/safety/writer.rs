//! A server that does not sync its commits, so that a test can see what it would miss: the real accept
//! loop, layers and database, and one route that only this test binary has. It is this binary,
//! started again.

use std::net::SocketAddr;
use std::path::Path;
use std::process::Command;
use std::sync::Arc;

use axum::Router;
use axum::extract::{Path as Segment, State};
use axum::http::StatusCode;
use axum::routing::{get, post};
use clap::Parser;
use holewright_server::config::CommandLine;
use holewright_server::front::accept::{self, Door, Limits};
use holewright_server::rules::clock::Clock;
use holewright_server::{App, Error, db, front::routes, web};

use super::asked::status;
use super::notes;
use super::storm::Victim;

/// Names the data folder for a process that is to be the writer.
const FOLDER: &str = "STORM_WRITER_FOLDER";
/// Set where its commits are not to be synced: what a test must be able to see.
const UNSYNCED: &str = "STORM_WRITER_UNSYNCED";
/// The test that becomes the writer if it is asked to.
const DOOR: &str = "safety::kills::f01_nothing_acknowledged_is_lost_by_a_kill_in_a_storm";

/// Starts the writer on this data folder, without a sync at each commit.
pub(super) fn start_unsynced(data: &Path) -> Victim {
    Victim::start(command(data).env(UNSYNCED, "1"))
}

/// Asks for one note; whether it was acknowledged.
pub(super) fn write(address: SocketAddr, key: &str) -> bool {
    let request = format!(
        "POST /storm/{key} HTTP/1.1\r\nHost: club.test\r\nOrigin: https://club.test\r\n\
         Content-Length: 0\r\nConnection: close\r\n\r\n"
    );
    status(address, &request) == Some(303)
}

/// Serves until it is killed, if this process was started as the writer.
pub(super) fn become_one_if_asked() {
    let Some(data) = std::env::var_os(FOLDER) else { return };
    tokio::runtime::Builder::new_multi_thread().enable_all().build().unwrap().block_on(async {
        let config =
            CommandLine::parse_from(["holewright", "--data-dir", data.to_str().unwrap()]).config;
        let base_url = "https://club.test".parse().unwrap();
        let app = Arc::new(App::open(config, base_url, Clock::System).await.unwrap());
        if std::env::var_os(UNSYNCED).is_some() {
            let [_, writer] = app.database.pools();
            sqlx::query("PRAGMA synchronous = OFF").execute(writer).await.unwrap();
        }
        let table = Router::new()
            .route("/readyz", get(web::health::ready))
            .route("/storm/{key}", post(create));
        let router = routes::layered(table, app);
        let listener = accept::listen("127.0.0.1:0".parse().unwrap()).unwrap();
        println!("\nthe writer is ready: http://{}", listener.local_addr().unwrap());
        let door = Door { listener, limits: Limits::default(), proxies: Vec::new() };
        accept::serve(door, router, std::future::pending).await;
    });
}

async fn create(
    State(app): State<Arc<App>>,
    Segment(key): Segment<String>,
) -> Result<StatusCode, Error> {
    notes::write(&app.database, &key).await.map_err(db::Error::from)?;
    Ok(StatusCode::SEE_OTHER)
}

fn command(data: &Path) -> Command {
    let mut command = Command::new(std::env::current_exe().unwrap());
    command
        .args([DOOR, "--exact", "--include-ignored", "--nocapture", "--test-threads=1"])
        .env(FOLDER, data);
    command
}
