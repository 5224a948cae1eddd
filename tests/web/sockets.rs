//! Real sockets and the real binary: start, health, stop, and clients that never finish.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::process::{Child, Command, Stdio};
use std::sync::Arc;
use std::time::{Duration, Instant};

use axum::Router;
use axum::routing::get as answer;
use holewright::server::accept::{self, Limits};
use holewright::server::routes;
use tokio::runtime::Handle;
use tokio::sync::Notify;
use tokio::task::JoinHandle;

use crate::support::{Folder, Server};

/// The binary, serving on a port of its own.
struct Running {
    child: Child,
    address: SocketAddr,
    log: BufReader<std::process::ChildStdout>,
    folder: Folder,
}

impl Running {
    fn start() -> Self {
        let folder = Folder::new();
        let mut child = Command::new(env!("CARGO_BIN_EXE_holewright"))
            .args(["--listen", "127.0.0.1:0"])
            .arg("--data-dir")
            .arg(folder.path().join("data"))
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let mut log = BufReader::new(child.stdout.take().unwrap());
        let mut line = String::new();
        log.read_line(&mut line).unwrap();
        let address = line.split("http://").nth(1).unwrap().split('"').next().unwrap();
        Self { address: address.parse().unwrap(), child, log, folder }
    }

    fn signal(&self, name: &str) {
        let process = self.child.id().to_string();
        assert!(Command::new("kill").args(["-s", name, &process]).status().unwrap().success());
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn get(address: SocketAddr, path: &str) -> String {
    let mut stream = TcpStream::connect(address).unwrap();
    write!(stream, "GET {path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n").unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    answer
}

#[test]
fn it_serves_is_healthy_and_stops_when_told() {
    for signal in ["TERM", "INT"] {
        let mut server = Running::start();
        for (path, status) in [("/", "200"), ("/healthz", "200"), ("/readyz", "200"), ("/x", "404")]
        {
            let answer = get(server.address, path);
            assert!(answer.starts_with(&format!("HTTP/1.1 {status} ")), "{path}: {answer}");
        }
        let health = Command::new(env!("CARGO_BIN_EXE_holewright"))
            .args(["healthcheck", "--listen", &server.address.to_string()])
            .status()
            .unwrap();
        assert_eq!(health.code(), Some(0));

        server.signal(signal);
        assert_eq!(server.child.wait().unwrap().code(), Some(0));
        let left: Vec<_> = std::fs::read_dir(server.folder.path().join("data"))
            .unwrap()
            .map(|entry| entry.unwrap().file_name())
            .collect();
        assert_eq!(left, ["holewright.sqlite"], "the log is folded into the file");

        let mut log = String::new();
        server.log.read_to_string(&mut log).unwrap();
        let lines: Vec<serde_json::Value> =
            log.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
        let answered = lines.iter().filter(|line| line["message"] == "answered");
        assert_eq!(answered.clone().count(), 5, "one line a request: {log}");
        let missing = answered.clone().find(|line| line["path"] == "/x").unwrap();
        assert_eq!(missing["status"], 404);
        assert_eq!(missing["client"], "127.0.0.1");
        assert_eq!(missing["span"]["id"].as_str().unwrap().len(), 16);
    }
}

#[test]
fn a_half_sent_request_does_not_hold_up_the_stop() {
    let mut server = Running::start();
    let mut half = TcpStream::connect(server.address).unwrap();
    half.write_all(b"GET / HTTP/1.1\r\nHost: x\r\n").unwrap();
    let _silent = TcpStream::connect(server.address).unwrap();
    // Both are known to be let in once a later connection has been answered.
    get(server.address, "/healthz");
    let asked = Instant::now();
    server.signal("TERM");
    assert_eq!(server.child.wait().unwrap().code(), Some(0));
    assert!(asked.elapsed() < Duration::from_secs(10), "{:?}", asked.elapsed());
}

const SHORT: Limits = Limits {
    header: Duration::from_millis(300),
    drain: Duration::from_millis(300),
    connections: 8,
};

/// A server with short limits, on a port of its own.
async fn serve(server: &Server) -> (SocketAddr, Arc<Notify>, JoinHandle<()>) {
    serve_routes(routes::router(Arc::clone(&server.app)), SHORT).await
}

async fn serve_routes(router: Router, limits: Limits) -> (SocketAddr, Arc<Notify>, JoinHandle<()>) {
    let listener = tokio::net::TcpListener::bind("127.0.0.1:0").await.unwrap();
    let address = listener.local_addr().unwrap();
    let stop = Arc::new(Notify::new());
    let asked = Arc::clone(&stop);
    let task = tokio::task::spawn_blocking(move || {
        let stop = async || asked.notified().await;
        Handle::current().block_on(accept::serve(listener, router, limits, stop));
    });
    (address, stop, task)
}

/// Milliseconds until the server closes a client that sends this and no more.
fn closed_after(address: SocketAddr, sent: &[u8]) -> u128 {
    let mut stream = TcpStream::connect(address).unwrap();
    stream.set_read_timeout(Some(Duration::from_secs(10))).unwrap();
    stream.write_all(sent).unwrap();
    let since = Instant::now();
    let mut answer = Vec::new();
    stream.read_to_end(&mut answer).unwrap();
    since.elapsed().as_millis()
}

#[tokio::test(flavor = "multi_thread")]
async fn silent_clients_are_closed() {
    let server = Server::start().await;
    let (address, _stop, _task) = serve(&server).await;
    for sent in
        ["", "G", "GET / HTTP/1.1\r\nHost: x\r\n", "GET /healthz HTTP/1.1\r\nHost: x\r\n\r\n"]
    {
        let closed =
            tokio::task::spawn_blocking(move || closed_after(address, sent.as_bytes())).await;
        let closed = closed.unwrap();
        assert!((250..2_000).contains(&closed), "{sent:?} closed after {closed} ms");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn more_connections_than_slots_wait_their_turn() {
    let server = Server::start().await;
    let (address, _stop, _task) = serve(&server).await;
    let answered = tokio::task::spawn_blocking(move || {
        let silent: Vec<_> =
            (0..SHORT.connections).map(|_| TcpStream::connect(address).unwrap()).collect();
        let since = Instant::now();
        let answer = get(address, "/healthz");
        drop(silent);
        (answer, since.elapsed().as_millis())
    });
    let (answer, waited) = answered.await.unwrap();
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
    assert!((150..2_000).contains(&waited), "waited {waited} ms for a slot");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_stop_refuses_new_clients_and_ends_in_time() {
    let server = Server::start().await;
    let (address, stop, task) = serve(&server).await;
    tokio::task::spawn_blocking(move || get(address, "/healthz")).await.unwrap();
    let since = Instant::now();
    stop.notify_one();
    task.await.unwrap();
    assert!(since.elapsed() < Duration::from_secs(1), "{:?}", since.elapsed());
    assert!(TcpStream::connect(address).is_err());
}

/// A server whose answer takes so long, with a request already waiting for it.
async fn slow(takes: Duration) -> (Arc<Notify>, JoinHandle<()>, JoinHandle<String>) {
    let begun = Arc::new(Notify::new());
    let begins = Arc::clone(&begun);
    let handler = async move || {
        begins.notify_one();
        tokio::time::sleep(takes).await;
        "slow"
    };
    let limits = Limits { drain: Duration::from_secs(5), ..SHORT };
    let router = Router::new().route("/", answer(handler));
    let (address, stop, task) = serve_routes(router, limits).await;
    let waiting = tokio::task::spawn_blocking(move || get(address, "/"));
    begun.notified().await;
    (stop, task, waiting)
}

#[tokio::test(flavor = "multi_thread")]
async fn a_request_in_hand_is_finished_before_the_stop() {
    let (stop, task, waiting) = slow(Duration::from_millis(400)).await;
    stop.notify_one();
    task.await.unwrap();
    let answer = waiting.await.unwrap();
    assert!(answer.starts_with("HTTP/1.1 200") && answer.ends_with("slow"), "{answer}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_second_stop_does_not_wait() {
    let (stop, task, _waiting) = slow(Duration::from_secs(3)).await;
    let since = Instant::now();
    stop.notify_one();
    tokio::time::sleep(Duration::from_millis(100)).await;
    stop.notify_one();
    task.await.unwrap();
    assert!(since.elapsed() < Duration::from_secs(1), "{:?}", since.elapsed());
}
