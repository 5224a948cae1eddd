//! What a few words can mean: the threads, drills and materials they name, and those that come near.
//!
//! A reading of the whole text, not a search: the finder is later work.

use super::link::Link;
use crate::tables::{drills, materials, threads};

/// What words can mean.
#[derive(Clone, Debug, Default)]
pub(super) struct Meanings {
    /// What they name.
    pub(super) sure: Vec<Link>,
    /// What comes near.
    pub(super) near: Vec<Link>,
}

/// No reading is shown more near matches than this.
const NEAR: usize = 8;

impl Meanings {
    /// What these words can mean.
    pub(super) fn of(words: &str) -> Self {
        let mut found = Self::default();
        found.threads(words);
        found.drills(words);
        found.materials(words);
        found.near.retain(|link| !found.sure.contains(link));
        found.near.truncate(NEAR);
        found
    }

    fn threads(&mut self, words: &str) {
        use threads::read::{ReadError, read};
        match read(words) {
            Ok(thread) => self.sure.push(Link::thread(thread)),
            Err(ReadError::Ambiguous { candidates, .. }) => {
                self.sure.extend(candidates.into_iter().map(Link::thread));
            }
            Err(ReadError::Unknown { nearest, .. }) => {
                self.near.extend(nearest.into_iter().map(Link::thread));
            }
            Err(_) => {}
        }
    }

    fn drills(&mut self, words: &str) {
        use drills::read::{ReadError, read};
        match read(words) {
            Ok(drill) => self.sure.push(Link::drill(drill)),
            Err(ReadError::Ambiguous { candidates, .. }) => {
                self.sure.extend(candidates.into_iter().map(Link::drill));
            }
            Err(ReadError::Unknown { nearest, .. }) => {
                self.near.extend(nearest.into_iter().map(Link::drill));
            }
            Err(_) => {}
        }
    }

    fn materials(&mut self, words: &str) {
        use materials::read::{ReadError, read};
        match read(words) {
            Ok(material) => self.sure.push(Link::material(material)),
            Err(ReadError::Ambiguous { candidates, .. }) => {
                self.sure.extend(candidates.into_iter().map(Link::material));
            }
            Err(ReadError::Unknown { nearest, .. }) => {
                self.near.extend(nearest.into_iter().map(Link::material));
            }
        }
    }
}
