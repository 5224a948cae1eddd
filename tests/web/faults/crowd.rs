//! Many clients that misbehave at once, and one that behaves meanwhile.

use std::io::{ErrorKind, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use holewright_server::front::accept::descriptors;

use super::client::{get, is_whole, status};
use crate::process::wait_until;

const PAGE: &str = "/threads/ba/5";
const TICK: Duration = Duration::from_millis(100);

/// How a client misbehaves.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Manner {
    /// Sends nothing.
    Silent,
    /// Sends its head a byte at a time.
    SlowHeader,
    /// Asks for many pages and reads a byte at a time.
    SlowReader,
}

/// Opens so many such clients at once, which go on until the server has closed the last of them, and
/// says how long that took.
#[track_caller]
pub(crate) fn wave(address: SocketAddr, manner: Manner, count: usize) -> Duration {
    let _ = descriptors::raise();
    let since = Instant::now();
    let mut open: Vec<_> = (0..count).map(|_| begin(address, manner)).collect();
    wait_until("the end of the last that misbehaves", || {
        std::thread::sleep(TICK);
        open.retain_mut(|stream| !is_closed(stream, manner));
        open.is_empty()
    });
    since.elapsed()
}

fn begin(address: SocketAddr, manner: Manner) -> TcpStream {
    let mut stream = TcpStream::connect(address).unwrap();
    match manner {
        Manner::Silent => {}
        Manner::SlowHeader => stream.write_all(b"GET / HTTP/1.1\r\nX-Slow: ").unwrap(),
        Manner::SlowReader => {
            let page = format!("GET {PAGE} HTTP/1.1\r\nHost: x\r\n\r\n");
            stream.write_all(page.repeat(100).as_bytes()).unwrap();
        }
    }
    stream.set_nonblocking(true).unwrap();
    stream
}

/// Goes on misbehaving.
fn is_closed(stream: &mut TcpStream, manner: Manner) -> bool {
    if let Manner::SlowHeader = manner
        && stream.write_all(b"x").is_err()
    {
        return true;
    }
    // A reset shows here at once, to a reader only after all that it has not read yet.
    if stream.take_error().unwrap().is_some() {
        return true;
    }
    match stream.read(&mut [0]) {
        Ok(bytes) => bytes == 0,
        Err(error) => error.kind() != ErrorKind::WouldBlock,
    }
}

/// A client that asks two servers for a page by turns, again and again and each time on a new
/// connection: one that is crowded, and a quiet one on the same machine at the same time.
pub(crate) struct Witness {
    enough: Arc<AtomicBool>,
    thread: JoinHandle<[Vec<Duration>; 2]>,
}

/// What it saw.
#[derive(Debug)]
pub(crate) struct Seen {
    /// Pages from the crowded server.
    pub(crate) pages: usize,
    /// The time waited for all of them, in the time waited for all the others: half of them would not
    /// tell, since of a server that holds everybody up for seconds few pages are asked.
    pub(crate) ratio: f64,
    /// The time within which 99 of 100 of them came.
    pub(crate) most: Duration,
}

impl Witness {
    pub(crate) fn start(crowded: SocketAddr, quiet: SocketAddr) -> Self {
        let enough = Arc::new(AtomicBool::new(false));
        let told = Arc::clone(&enough);
        let thread = std::thread::spawn(move || {
            let mut times = [Vec::new(), Vec::new()];
            while !told.load(Ordering::Relaxed) {
                for (address, times) in [crowded, quiet].into_iter().zip(&mut times) {
                    let since = Instant::now();
                    let answer = get(address, PAGE);
                    times.push(since.elapsed());
                    assert!(status(&answer) == 200 && is_whole(&answer), "{answer}");
                }
                std::thread::sleep(Duration::from_millis(10));
            }
            times
        });
        Self { enough, thread }
    }

    pub(crate) fn end(self) -> Seen {
        self.enough.store(true, Ordering::Relaxed);
        let [mut crowded, quiet] = self.thread.join().unwrap();
        crowded.sort();
        let pages = crowded.len();
        let all = |times: &[Duration]| times.iter().sum::<Duration>().as_secs_f64();
        Seen {
            pages,
            ratio: all(&crowded) / all(&quiet),
            most: crowded[(pages * 99).div_ceil(100) - 1],
        }
    }
}
