//! The database: the only module with SQL.
//!
//! Reads go through a pool of readers that cannot write; writes go through one connection, so no
//! write ever meets another. Leaves out: what the rows mean.

pub mod accounts;
pub mod acts;
pub mod club;
pub mod connection;
mod copies;
pub mod copy;
pub mod demo;
mod error;
pub mod export;
pub mod feeds;
mod lock;
mod migrate;
pub mod notes;
pub mod open_slips;
pub mod own_data;
pub mod people;
mod privacy;
pub mod reference;
mod room;
pub mod sessions;
pub mod slips;
pub mod spare_codes;
mod standing;
mod whole_schema;

use std::path::{Path, PathBuf};
use std::sync::Arc;

use sqlx::sqlite::SqlitePool;
use sqlx::{Sqlite, Transaction};
use tokio::time::timeout;

use crate::rules::Generations;
use crate::rules::clock::UnixSeconds;
use crate::whole_file::{WholeFile, folder_of, give, with_suffix};

pub use error::Error;
pub use lock::FolderLock;
pub use migrate::newest_schema;
use standing::Standing;

/// The file in the data folder.
pub const FILE_NAME: &str = "holewright.sqlite";

/// The open database.
#[derive(Clone, Debug)]
pub struct Database {
    folder: Arc<Path>,
    standing: Standing,
    readers: SqlitePool,
    writer: SqlitePool,
    shown: Arc<Generations>,
}

impl Database {
    /// Opens the database in this folder, making the folder and the file if need be, and brings its
    /// schema up to date, after a copy of what it was.
    ///
    /// # Errors
    /// The folder cannot be written, the file is no database or a newer program's, or the SQLite
    /// compiled in is too old.
    pub async fn open(folder: &Path) -> Result<Self, Error> {
        let file = file_in(folder)?;
        privacy::mend(folder, &copies::folder_in(folder));
        if first_look(&file)? == Found::Nothing {
            create(&file).await?;
        }
        let unopened = |source| Error::Open { file: file.clone(), user: user_id(), source };
        let known = newest_schema();
        let schema = copy::schema(&file).await.map_err(unopened)?;
        if let Some(fault) = copy::first_fault(&file).await.map_err(unopened)? {
            return Err(Error::unsound(&file, &fault));
        }
        match schema {
            Some(found) if found > known => {
                let copy = copies::newest_up_to(folder, known).await;
                let folder = folder.to_owned();
                return Err(Error::NewerSchema { found, known, folder, copy });
            }
            Some(found) if found < known => {
                let copy = copies::keep(folder, known)
                    .await
                    .map_err(|error| Error::Uncopied(Box::new(error)))?;
                tracing::info!(found, known, "the database was copied to {}", copy.display());
            }
            Some(_) => {}
            None => return Err(Error::unsound(&file, "it is no database of holewright")),
        }
        // SQLite opens a file that may only be read, and says so at the first write.
        for place in [file.as_path(), folder] {
            privacy::check_writable(place).map_err(|error| unopened(error.into()))?;
        }
        let standing = Standing::default();
        let writer = connection::writer(&file, &standing).await.map_err(unopened)?;
        connection::check_version(&writer).await?;
        migrate::up(&writer).await?;
        let readers = connection::readers(&file, &standing).await.map_err(unopened)?;
        standing.note_down(folder, &file);
        Ok(Self { folder: folder.into(), standing, readers, writer, shown: Arc::default() })
    }

    /// Opens the database for a command that a server may run beside, and makes none: a link would join a
    /// club that nobody serves. The schema is brought up to date only where nobody holds the folder: an
    /// older server would serve on with a schema it does not know.
    ///
    /// # Errors
    /// As [`Database::open`], there is no database, or the schema is an older one and another program holds
    /// the folder.
    pub async fn open_beside(folder: &Path) -> Result<Self, Error> {
        let file = folder.join(FILE_NAME);
        if first_look(&file)? == Found::Nothing {
            return Err(Error::NoClub { folder: folder.to_owned() });
        }
        let unopened = |source| Error::Open { file: file.clone(), user: user_id(), source };
        let known = newest_schema();
        let found = copy::schema(&file).await.map_err(unopened)?;
        if found.is_some_and(|found| found >= known) {
            return Self::open(folder).await;
        }
        // Held until the schema is up to date; a server may start beside what comes after.
        let _folder = match FolderLock::take(folder) {
            Err(Error::InUse { folder }) => {
                return Err(Error::OlderSchemaInUse { found, known, folder });
            }
            taken => taken?,
        };
        Self::open(folder).await
    }

    /// Closes every connection; the last one folds the log back into the file.
    pub async fn close(&self) {
        self.readers.close().await;
        self.writer.close().await;
    }

    /// The pools, readers first: for a test that asks every member for its settings.
    #[must_use]
    pub fn pools(&self) -> [&SqlitePool; 2] {
        [&self.readers, &self.writer]
    }

    /// Which state of the data readers see.
    #[must_use]
    pub const fn shown(&self) -> &Arc<Generations> {
        &self.shown
    }

    /// Whether what is open is still what stands in the data folder.
    ///
    /// # Errors
    /// It was moved, deleted or replaced: nothing is written.
    pub fn look(&self) -> Result<(), Error> {
        match self.standing.gone() {
            Some(file) => Err(Error::Gone { file: file.to_owned() }),
            None => Ok(()),
        }
    }

    /// A transaction that holds the write lock from its first statement.
    ///
    /// The wait for the one connection and the wait for another program's lock count together: who
    /// comes second to a locked file would else wait twice as long.
    async fn write(&self) -> Result<Transaction<'static, Sqlite>, Error> {
        self.look()?;
        let begun = self.writer.begin_with("BEGIN IMMEDIATE");
        match timeout(connection::PATIENCE, begun).await {
            Ok(begun) => Ok(begun?),
            Err(_) => Err(sqlx::Error::PoolTimedOut.into()),
        }
    }

    /// Commits, and says that what readers see may have changed. Nothing in this room commits in another
    /// way, so no act can forget to say so; `tests/tidy` looks.
    async fn commit(&self, transaction: Transaction<'static, Sqlite>) -> Result<(), sqlx::Error> {
        let done = transaction.commit().await;
        // Also after a failure: some come when all is on the disk.
        self.shown.changed();
        done
    }
}

/// What is in the place of the database before it is opened.
#[derive(PartialEq, Eq)]
enum Found {
    Nothing,
    File,
}

/// Nothing new is made over what may be the remains of a club.
fn first_look(file: &Path) -> Result<Found, Error> {
    let size = |path: &Path| path.metadata().map(|found| found.len()).ok();
    match size(file) {
        Some(0) => Err(Error::unsound(file, "it is empty (if no club was ever in it, delete it)")),
        Some(_) => Ok(Found::File),
        None if size(&with_suffix(file, "-wal")).is_some_and(|log| log > 0) => {
            Err(Error::unsound(file, "it is not there, and its log is"))
        }
        None => Ok(Found::Nothing),
    }
}

/// Makes a new database, which has its name only once it is whole: an empty file under that name is then
/// always a fault.
async fn create(file: &Path) -> Result<(), Error> {
    let failed = |source| Error::Open {
        file: file.to_owned(),
        user: user_id(),
        source: sqlx::Error::Io(source),
    };
    let begun = WholeFile::begin(file).map_err(failed)?;
    migrate::make(begun.path()).await?;
    let owner = std::fs::metadata(folder_of(file)).map_err(failed)?;
    give(begun.path(), &owner).map_err(failed)?;
    begun.finish().map_err(failed)
}

fn file_in(folder: &Path) -> Result<PathBuf, Error> {
    make(folder)?;
    Ok(folder.join(FILE_NAME))
}

fn make(folder: &Path) -> Result<(), Error> {
    privacy::make_folder(folder).map_err(|source| Error::Folder {
        folder: folder.to_owned(),
        user: user_id(),
        source,
    })
}

/// The user this process runs as, for the message that says who may not write; the standard library
/// has no other way to ask.
fn user_id() -> String {
    #[cfg(unix)]
    if let Ok(process) = std::fs::metadata("/proc/self") {
        return std::os::unix::fs::MetadataExt::uid(&process).to_string();
    }
    "unknown".to_owned()
}

/// Reads the probe row and writes it.
///
/// # Errors
/// The database cannot be read or written, or its disk has no room.
pub async fn probe(database: &Database, now: UnixSeconds) -> Result<(), Error> {
    if !room::is_there(&database.folder) {
        return Err(Error::NoRoom { folder: database.folder.to_path_buf() });
    }
    sqlx::query_scalar!("SELECT written_at FROM write_probe WHERE id = 1")
        .fetch_one(&database.readers)
        .await?;
    let mut transaction = database.write().await?;
    sqlx::query!("UPDATE write_probe SET written_at = ? WHERE id = 1", now)
        .execute(&mut *transaction)
        .await?;
    // Nobody reads this row.
    Ok(transaction.commit().await?)
}
