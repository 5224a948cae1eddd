//! The demonstration from the command line, on the data folder of the settings.
//!
//! A running server keeps finished pages and would not notice the change, so this takes the lock on the folder.

use std::fmt;

use super::fill::{self, Filled, NotDone};
use crate::config::Config;
use crate::db::demo::Counted;
use crate::db::{Database, FolderLock};
use crate::rules::auth::password::Hashing;
use crate::rules::clock::Clock;

/// What was taken away, in words.
pub(crate) struct Gone(Counted);

impl fmt::Display for Gone {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Counted { members, notes } = self.0;
        write!(out, "the demonstration is gone: {members} members, {notes} notes")
    }
}

/// Fills the folder.
pub(crate) fn fill_into(config: &Config) -> Result<Filled, NotDone> {
    at_the_database(config, async |database| {
        fill::fill(&database, Clock::System.now(), &Hashing::default()).await
    })
}

/// Takes the demonstration out of the folder.
pub(crate) fn remove_from(config: &Config) -> Result<Gone, NotDone> {
    at_the_database(config, async |database| {
        fill::remove(&database, Clock::System.now()).await.map(Gone)
    })
}

fn at_the_database<T>(
    config: &Config,
    work: impl AsyncFnOnce(Database) -> Result<T, NotDone>,
) -> Result<T, NotDone> {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(NotDone::System)?;
    runtime.block_on(async {
        let _folder = FolderLock::take(&config.data_dir)?;
        let database = Database::open(&config.data_dir).await?;
        let done = work(database.clone()).await;
        database.close().await;
        done
    })
}
