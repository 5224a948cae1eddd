//! The answers that are kept: by path and coding, the least recently used let go first.

use std::collections::HashMap;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, PoisonError, RwLock, RwLockReadGuard, RwLockWriteGuard};

use tokio::sync::{Mutex, MutexGuard};

use super::{Coding, Ready};
use crate::rules::validator::Tag;
use crate::rules::{Generation, Generations};

/// Answers that every reader gets alike, up to a number of bytes.
#[derive(Debug)]
pub struct Kept {
    most: usize,
    shown: Arc<Generations>,
    /// Counts readings: a larger number is a later one.
    readings: AtomicU64,
    shelf: RwLock<Shelf>,
    turn: Mutex<()>,
}

#[derive(Debug, Default)]
struct Shelf {
    by_path: HashMap<String, Vec<Slot>>,
    weight: usize,
}

/// The answer at one path to readers who like one coding best.
#[derive(Debug)]
struct Slot {
    best: Coding,
    /// Of the plain body: the same for every coding.
    tag: Tag,
    ready: Arc<Ready>,
    generation: AtomicU64,
    read: AtomicU64,
}

impl Kept {
    /// 64 MB: every page of the reference in every coding, twice over.
    pub const USUAL: usize = 64 << 20;

    /// Room for this many bytes of what shows these states of the data.
    #[must_use]
    pub fn holding(most: usize, shown: Arc<Generations>) -> Self {
        Self {
            most,
            shown,
            readings: AtomicU64::new(0),
            shelf: RwLock::default(),
            turn: Mutex::default(),
        }
    }

    /// The states of the data that it shows.
    #[must_use]
    pub fn shown(&self) -> &Generations {
        &self.shown
    }

    /// The answer at this path for a reader who likes this coding best.
    #[must_use]
    pub fn get(&self, path: &str, best: Coding) -> Option<Arc<Ready>> {
        let Generation(now) = self.shown.now();
        let shelf = self.read();
        let slot = shelf.slot(path, best)?;
        if slot.generation.load(Ordering::Acquire) != now {
            return None;
        }
        slot.read.store(self.readings.fetch_add(1, Ordering::Relaxed), Ordering::Relaxed);
        Some(Arc::clone(&slot.ready))
    }

    /// The answer that is kept already, if it has this tag; it counts from now on as made in this
    /// generation.
    #[must_use]
    pub fn renew(
        &self,
        path: &str,
        best: Coding,
        tag: &Tag,
        made: Generation,
    ) -> Option<Arc<Ready>> {
        let shelf = self.read();
        let slot = shelf.slot(path, best).filter(|slot| slot.tag == *tag)?;
        slot.generation.fetch_max(made.0, Ordering::AcqRel);
        Some(Arc::clone(&slot.ready))
    }

    /// Keeps an answer. What was read longest ago goes, until there is room.
    pub fn put(&self, path: &str, best: Coding, tag: Tag, ready: Arc<Ready>, made: Generation) {
        let read = self.readings.fetch_add(1, Ordering::Relaxed);
        let slot = Slot {
            best,
            tag,
            ready,
            generation: AtomicU64::new(made.0),
            read: AtomicU64::new(read),
        };
        let mut shelf = self.write();
        shelf.put(path, slot);
        while shelf.weight > self.most && shelf.drop_oldest() {}
    }

    /// How many bytes are kept.
    #[must_use]
    pub fn weight(&self) -> usize {
        self.read().weight
    }

    /// Waits until nobody else codes an answer to keep.
    pub(super) async fn turn(&self) -> MutexGuard<'_, ()> {
        self.turn.lock().await
    }

    // A thread that panicked left the shelf whole: nothing in it is changed in two steps that can
    // fail between.
    fn read(&self) -> RwLockReadGuard<'_, Shelf> {
        self.shelf.read().unwrap_or_else(PoisonError::into_inner)
    }

    fn write(&self) -> RwLockWriteGuard<'_, Shelf> {
        self.shelf.write().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Shelf {
    fn slot(&self, path: &str, best: Coding) -> Option<&Slot> {
        self.by_path.get(path)?.iter().find(|slot| slot.best == best || slot.ready.is_for_all())
    }

    fn put(&mut self, path: &str, slot: Slot) {
        self.take(path, slot.best);
        self.weight += slot.weight(path);
        self.by_path.entry(path.to_owned()).or_default().push(slot);
    }

    fn take(&mut self, path: &str, best: Coding) {
        let Some(slots) = self.by_path.get_mut(path) else { return };
        let is_it = |slot: &Slot| slot.best == best || slot.ready.is_for_all();
        if let Some(place) = slots.iter().position(is_it) {
            self.weight -= slots.swap_remove(place).weight(path);
        }
        if slots.is_empty() {
            self.by_path.remove(path);
        }
    }

    /// Looks at every slot. There are a few thousand, and it only happens beside a coding that
    /// takes a hundred times as long.
    fn drop_oldest(&mut self) -> bool {
        let oldest = self
            .by_path
            .iter()
            .flat_map(|(path, slots)| slots.iter().map(move |slot| (path, slot)))
            .min_by_key(|(_, slot)| slot.read.load(Ordering::Relaxed))
            .map(|(path, slot)| (path.clone(), slot.best));
        match oldest {
            Some((path, best)) => {
                self.take(&path, best);
                true
            }
            None => false,
        }
    }
}

impl Slot {
    fn weight(&self, path: &str) -> usize {
        path.len() + size_of::<Self>() + self.ready.weight()
    }
}
