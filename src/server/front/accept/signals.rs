//! The signals that ask the process to stop: SIGTERM, SIGINT. Heard on a thread of its own, which
//! waits for nothing else: whatever holds the others up, the process ends in time. One that tells of a
//! terminal that has gone, or asks other programs to read their settings anew, SIGHUP, asks nothing of
//! this one; nor does one that ends a program that writes more than the size of files is limited to: the
//! write fails, and that is answered.

use std::io;
use std::process;
use std::thread;
use std::time::Duration;

use tokio::runtime::{Builder, Runtime};
use tokio::signal::unix::{Signal, SignalKind, signal};
use tokio::sync::mpsc::{self, UnboundedReceiver, UnboundedSender};
use tokio::time::{Instant, sleep_until};

/// After the first of them the process ends, whatever it was about. What takes part in a stop is
/// given less: the drain, the database's end and the log's last lines together.
pub const DEADLINE: Duration = Duration::from_secs(9);

/// Both, caught.
#[derive(Debug)]
pub struct Signals {
    told: UnboundedReceiver<()>,
    /// Caught, so that they do not end the process.
    _heard: [Signal; 2],
}

impl Signals {
    /// Catches them from now on.
    ///
    /// # Errors
    /// The system refuses.
    pub fn listen() -> io::Result<Self> {
        let runtime = Builder::new_current_thread().enable_all().build()?;
        let (terminate, interrupt) = {
            let _within = runtime.enter();
            (signal(SignalKind::terminate())?, signal(SignalKind::interrupt())?)
        };
        let (tell, told) = mpsc::unbounded_channel();
        thread::Builder::new()
            .name("signals".to_owned())
            .spawn(move || hear(&runtime, [terminate, interrupt], &tell))?;
        let too_large = SignalKind::from_raw(rustix::process::Signal::XFSZ.as_raw());
        Ok(Self { told, _heard: [signal(SignalKind::hangup())?, signal(too_large)?] })
    }

    /// Waits for the next one.
    pub async fn next(&mut self) {
        if self.told.recv().await.is_none() {
            // The thread lives as long as the process; without it no signal would ever come.
            std::future::pending().await
        }
    }
}

/// Passes on each signal, and ends the process once the deadline after the first has gone by.
fn hear(
    runtime: &Runtime,
    [mut terminate, mut interrupt]: [Signal; 2],
    tell: &UnboundedSender<()>,
) {
    runtime.block_on(async {
        let mut deadline = None;
        loop {
            let over = async {
                match deadline {
                    Some(deadline) => sleep_until(deadline).await,
                    None => std::future::pending().await,
                }
            };
            tokio::select! {
                _ = terminate.recv() => {}
                _ = interrupt.recv() => {}
                () = over => {
                    tracing::error!("something holds up the stop: ended without it");
                    process::exit(1)
                }
            }
            deadline.get_or_insert_with(|| Instant::now() + DEADLINE);
            // Nobody listens any more once the stop is nearly over.
            let _ = tell.send(());
        }
    });
}
