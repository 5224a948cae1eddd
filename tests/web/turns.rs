//! How many writers and readers at once are served: in what turn, and how soon.

#![expect(clippy::print_stdout, reason = "what was measured is shown beside the bar it keeps")]

use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

/// The writes that were answered so far.
#[derive(Default)]
pub(crate) struct Answered(AtomicU64);

impl Answered {
    pub(crate) fn one_more(&self) {
        self.0.fetch_add(1, Ordering::SeqCst);
    }

    /// Somebody asks now.
    pub(crate) fn begin(&self) -> Begun<'_> {
        Begun { answered: self, before: self.0.load(Ordering::SeqCst), since: Instant::now() }
    }
}

/// A question that is not answered yet.
pub(crate) struct Begun<'a> {
    answered: &'a Answered,
    before: u64,
    since: Instant,
}

impl Begun<'_> {
    pub(crate) fn end(self) -> Waited {
        let overtaken = self.answered.0.load(Ordering::SeqCst) - self.before;
        Waited { overtaken, took: self.since.elapsed() }
    }
}

/// What it cost to ask.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Waited {
    /// Writes of others that were answered meanwhile. A count: on a busy machine everybody is slower,
    /// and nobody is overtaken by more.
    overtaken: u64,
    took: Duration,
}

/// Everything that was asked in a storm.
pub(crate) struct Storm {
    pub(crate) writes: Vec<Waited>,
    pub(crate) reads: Vec<Waited>,
}

impl Storm {
    /// Whoever writes is answered before each of the others has had two turns, and whoever reads does
    /// not stand in their queue.
    pub(crate) fn check_fair(&self, writers: usize) {
        let writers = u64::try_from(writers).unwrap();
        let [writes, reads] = self.show(|waited| waited.overtaken);
        assert!(writes.p99 <= 2 * writers, "writes overtaken by others: {writes:?}");
        assert!(reads.half <= writers / 10, "reads overtaken by writes: {reads:?}");
        assert!(reads.p99 <= writers, "reads overtaken by writes: {reads:?}");
    }

    /// For a machine that does nothing else.
    pub(crate) fn check_prompt(&self) {
        let [writes, reads] = self.show(|waited| waited.took);
        assert!(writes.p99 <= Duration::from_millis(250), "the times of writes: {writes:?}");
        assert!(reads.p99 <= Duration::from_millis(50), "the times of reads: {reads:?}");
    }

    /// This figure of the writes and of the reads.
    fn show<T: Ord + Copy + std::fmt::Debug>(
        &self,
        figure: impl Fn(&Waited) -> T,
    ) -> [Quantiles<T>; 2] {
        let quantiles = [&self.writes, &self.reads].map(|waits| {
            let mut figures: Vec<T> = waits.iter().map(&figure).collect();
            figures.sort_unstable();
            let count = figures.len();
            Quantiles { count, half: figures[count / 2], p99: figures[count * 99 / 100] }
        });
        println!("F15: writes {:?}, reads {:?}", quantiles[0], quantiles[1]);
        quantiles
    }
}

/// What half of them, and 99 of 100, do not exceed.
#[derive(Clone, Copy, Debug)]
struct Quantiles<T> {
    #[expect(dead_code, reason = "it is shown")]
    count: usize,
    half: T,
    p99: T,
}
