//! F19: bodies that come too slowly, and bodies that only come slowly.

use std::io::Write;
use std::net::{SocketAddr, TcpStream};
use std::sync::Arc;
use std::time::{Duration, Instant};

use axum::Router;
use axum::body::{Body, Bytes, HttpBody};
use axum::routing::post;
use holewright_server::App;
use holewright_server::front::accept::Limits;
use holewright_server::front::middleware::body;
use tokio::time::sleep;

use holewright_server::front::routes::ROUTES;
use holewright_server::rules::notes::fields::TEXT;

use super::client::{connect, read, send, status};
use super::in_process::{Serving, beside, patient, with_window};

/// The window in these tests.
const WINDOW: Duration = Duration::from_millis(500);

/// A route that takes a body and says how long it was: the product has none yet.
pub(crate) fn counting() -> Router<Arc<App>> {
    Router::new().route("/count", post(async |body: Bytes| body.len().to_string()))
}

/// Sends a body in pieces of this size, one every so often, and gives the answer and its time.
fn drip(address: SocketAddr, length: usize, piece: usize, every: Duration) -> (String, Duration) {
    let since = Instant::now();
    let mut stream = connect(address);
    write!(
        stream,
        "POST /count HTTP/1.1\r\nHost: x\r\nContent-Length: {length}\r\nConnection: close\r\n\r\n"
    )
    .unwrap();
    let mut left = length;
    stream.set_nodelay(true).unwrap();
    while left > 0 && !is_answered(&stream) {
        let next = piece.min(left);
        stream.write_all(&vec![b'x'; next]).unwrap();
        left -= next;
        std::thread::sleep(every);
    }
    let answer = read(&mut stream);
    (answer, since.elapsed())
}

fn is_answered(stream: &TcpStream) -> bool {
    stream.set_nonblocking(true).unwrap();
    let seen = stream.peek(&mut [0]).is_ok();
    stream.set_nonblocking(false).unwrap();
    seen
}

#[test]
fn f19_the_limits_are_within_the_bar() {
    let Limits { header, body, .. } = Limits::default();
    // One byte a second for a whole window is far from enough, and the window ends in time.
    assert!(body.window <= Duration::from_secs(28) && body.least > 60, "{body:?}");
    // 50 kbit/s brings more than twice what each window must.
    assert!(6250 * body.window.as_secs() > 2 * body.least, "{body:?}");
    // It brings a head as long as a browser ever sends, too.
    assert!(6250 * header.as_secs() > 16 * 1024, "{header:?}");
    // The longest note is taken with each of its letters as twelve: four bytes in percent codes.
    let longest = u64::try_from(12 * TEXT.longest).unwrap();
    let notes =
        ROUTES.iter().filter(|route| ["/notes/new", "/notes/{id}/edit"].contains(&route.path));
    let taken: Vec<_> = notes.map(|route| body.taking(route.takes).bytes).collect();
    assert!(taken.len() == 2 && taken.iter().all(|bytes| *bytes >= longest), "{taken:?}");
}

#[tokio::test(flavor = "multi_thread")]
async fn f19_a_body_that_trickles_is_closed() {
    let serving = Serving::with(with_window(WINDOW), counting()).await;
    let address = serving.address;
    let (answer, took) = beside(move || drip(address, 4000, 1, Duration::from_millis(25))).await;
    assert_eq!(status(&answer), 408, "{answer}");
    assert!(answer.contains("connection: close") && answer.contains("too slowly"), "{answer}");
    assert!(answer.contains("content-security-policy"), "{answer}");
    assert!(took >= WINDOW, "closed after {took:?}");
}

#[tokio::test(flavor = "multi_thread")]
async fn f19_a_body_that_stops_half_way_is_closed() {
    let serving = Serving::with(with_window(WINDOW), counting()).await;
    let address = serving.address;
    let (answer, took) = beside(move || {
        let since = Instant::now();
        let mut stream = connect(address);
        stream
            .write_all(b"POST /count HTTP/1.1\r\nHost: x\r\nContent-Length: 9000\r\n\r\n")
            .unwrap();
        stream.write_all(&[b'x'; 8000]).unwrap();
        (read(&mut stream), since.elapsed())
    })
    .await;
    assert_eq!(status(&answer), 408, "{answer}");
    // The first window brought enough, the second nothing.
    assert!(took >= 2 * WINDOW, "closed after {took:?}");
}

/// Longer than two windows, at 50 kbit/s: a flat limit on the whole would have ended it. Windows of
/// two seconds, so that this client does not miss one where it waits for a core.
#[tokio::test(flavor = "multi_thread")]
async fn f19_a_slow_line_sends_its_whole_body() {
    let window = Duration::from_secs(2);
    let mut limits = with_window(window);
    // As much of it as of a window in full.
    limits.body.least = body::Limits::default().least / 10;
    let serving = Serving::with(limits, counting()).await;
    let address = serving.address;
    let (answer, took) =
        beside(move || drip(address, 31_250, 625, Duration::from_millis(100))).await;
    assert_eq!(status(&answer), 200, "{answer}");
    assert!(answer.ends_with("\r\n\r\n31250"), "{answer}");
    assert!(took > 2 * window, "{took:?}");
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "four minutes, with the limits in full: tests/run --soak"]
async fn f19_the_limits_in_full() {
    // Four minutes at 50 kbit/s, more than any route takes: it is the rates that are tried.
    let limits = Limits::default();
    let limits = Limits { body: body::Limits { bytes: 1_500_000, ..limits.body }, ..limits };
    let serving = Serving::with(limits, counting()).await;
    let address = serving.address;
    let trickle = beside(move || drip(address, 4000, 1, Duration::from_secs(1)));
    let honest = beside(move || drip(address, 1_500_000, 625, Duration::from_millis(100)));
    let ((trickled, closed), (answer, took)) = tokio::join!(trickle, honest);
    assert_eq!(status(&trickled), 408, "{trickled}");
    assert!(closed <= Duration::from_secs(30), "{closed:?}");
    assert!(answer.ends_with("\r\n\r\n1500000"), "{answer}");
    assert!(took >= Duration::from_secs(240), "{took:?}");
}

/// The time the handler takes for its own work does not count against the client.
#[tokio::test(flavor = "multi_thread")]
async fn f19_a_slow_handler_is_not_the_clients_fault() {
    let handler = async |body: Body| {
        let mut body = std::pin::pin!(body);
        let mut length = 0;
        while let Some(piece) =
            std::future::poll_fn(|context| body.as_mut().poll_frame(context)).await
        {
            length += piece.unwrap().into_data().unwrap().len();
            sleep(Duration::from_millis(700)).await;
        }
        length.to_string()
    };
    let table = Router::new().route("/count", post(handler));
    let serving = Serving::with(with_window(WINDOW), table).await;
    let address = serving.address;
    // All of it is there before the handler begins: what takes long is the handler alone.
    let chunk = "14\r\nxxxxxxxxxxxxxxxxxxxx\r\n";
    let sent = format!(
        "POST /count HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\n\
         {chunk}{chunk}{chunk}0\r\n\r\n"
    );
    let answer = beside(move || send(address, sent.as_bytes())).await;
    assert!(answer.ends_with("\r\n\r\n60"), "{answer}");
}

/// No route of ours takes a body: it is refused at once, however slowly the body comes.
#[tokio::test(flavor = "multi_thread")]
async fn f19_a_body_nobody_asked_for_is_not_waited_for() {
    let serving = Serving::start(patient()).await;
    let address = serving.address;
    let sent = b"POST /plan HTTP/1.1\r\nHost: x\r\nContent-Length: 9000\r\n\r\nx";
    // The rest never comes, and no limit would end the wait for it.
    let answer = beside(move || send(address, sent)).await;
    assert_eq!(status(&answer), 405, "{answer}");
}
