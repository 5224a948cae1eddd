//! Passwords as they are kept: argon2id, and how many are hashed at once.
//!
//! A hash takes a core some twenty milliseconds and 19 MiB, so no more run at once than there are
//! cores, away from the threads that answer readers. Leaves out: which passwords are too weak.

use std::fmt;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use argon2::password_hash::phc::{Output, PasswordHash, Salt};
use argon2::{Algorithm, Argon2, Block, Params, Version};
use tokio::sync::Semaphore;
use tokio::task::spawn_blocking;
use tokio::time::timeout;

/// How long a sign-in waits for a core; after that the reader is asked to come again.
const PATIENCE: Duration = Duration::from_secs(4);

/// The work behind one hash.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cost {
    /// Memory, in KiB.
    pub memory_kib: u32,
    /// Passes over it.
    pub passes: u32,
}

impl Default for Cost {
    /// The least that the OWASP cheat sheet on password storage asks of argon2id on one lane.
    fn default() -> Self {
        Self { memory_kib: 19_456, passes: 2 }
    }
}

impl Cost {
    /// Next to nothing: for tests that sign in again and again, and never for a club.
    pub const FOR_TESTS: Self = Self { memory_kib: 64, passes: 1 };

    fn params(self) -> Result<Params, Trouble> {
        Params::new(self.memory_kib, self.passes, 1, Some(32)).map_err(broken)
    }
}

/// A password as somebody typed it. It never shows itself in a log.
#[derive(Clone, PartialEq, Eq)]
pub struct Password(String);

impl Password {
    /// As typed: nothing is cut off, folded or left out.
    #[must_use]
    pub fn typed(text: &str) -> Self {
        Self(text.to_owned())
    }

    /// The text itself.
    #[must_use]
    pub fn secret(&self) -> &str {
        &self.0
    }
}

impl fmt::Debug for Password {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Password(…)")
    }
}

/// Why a password was neither hashed nor checked.
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// Every core has been busy with others' for too long.
    #[error("too many passwords are being checked")]
    Busy,
    /// The library or the system refused.
    #[error("a password cannot be hashed: {0}")]
    Broken(Box<dyn std::error::Error + Send + Sync>),
}

/// Hashes passwords, a few at a time.
#[derive(Debug)]
pub struct Hashing {
    cost: Cost,
    turns: Arc<Semaphore>,
    desks: Arc<Desks>,
}

/// The memory that hashes are worked out in, one piece a turn, used again and again: allocated anew
/// for each, it would stay with every thread of the blocking pool that ever did one.
#[derive(Default)]
struct Desks(Mutex<Vec<Vec<Block>>>);

impl fmt::Debug for Desks {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Desks(…)")
    }
}

impl Default for Hashing {
    fn default() -> Self {
        Self::at(Cost::default())
    }
}

impl Hashing {
    /// As many at once as there are cores, at this cost.
    #[must_use]
    pub fn at(cost: Cost) -> Self {
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        Self { cost, turns: Arc::new(Semaphore::new(cores)), desks: Arc::default() }
    }

    /// How many more could be hashed at this moment.
    #[must_use]
    pub fn free(&self) -> usize {
        self.turns.available_permits()
    }

    /// Whether a hash was made at today's cost. One that was not is made anew at the next sign-in, or
    /// its member could be told from nobody by the time it takes.
    #[must_use]
    pub fn is_current(&self, hash: &str) -> bool {
        hash.starts_with(&form(self.cost))
    }

    /// The hash to keep, in the PHC form, with a salt of its own.
    ///
    /// # Errors
    /// The cores are busy, or the system gives no chance.
    pub async fn hash(&self, password: Password) -> Result<String, Trouble> {
        let cost = self.cost;
        self.in_turn(move |desk| {
            let salt = Salt::new(&chance::<16>()?).map_err(broken)?;
            let mut output = [0; 32];
            work_out(&cost.params()?, &password, &salt, &mut output, desk)?;
            Ok(written(cost, &salt, &Output::new(&output).map_err(broken)?))
        })
        .await
    }

    /// Whether this is the password behind the hash. Without a hash the answer is no, after as much
    /// work as any other: an unknown name takes as long as a wrong password.
    ///
    /// # Errors
    /// The cores are busy, or the hash is none.
    pub async fn verify(&self, password: Password, hash: Option<String>) -> Result<bool, Trouble> {
        let hash = match hash {
            Some(hash) => hash,
            None => self.nobodys()?,
        };
        self.in_turn(move |desk| {
            let kept = PasswordHash::new(&hash).map_err(broken)?;
            let (Some(salt), Some(expected)) = (kept.salt, kept.hash) else {
                return Err(broken(argon2::password_hash::Error::EncodingInvalid));
            };
            let params = Params::try_from(&kept).map_err(broken)?;
            let mut output = [0; Output::MAX_LENGTH];
            let output = output.get_mut(..expected.len()).unwrap_or_default();
            work_out(&params, &password, &salt, output, desk)?;
            // The comparison takes as long wherever the first difference is.
            Ok(Output::new(output).map_err(broken)? == expected)
        })
        .await
    }

    /// A hash of nobody's password at today's cost: chance where salt and hash stand.
    fn nobodys(&self) -> Result<String, Trouble> {
        let salt = Salt::new(&chance::<16>()?).map_err(broken)?;
        let output = Output::new(&chance::<32>()?).map_err(broken)?;
        Ok(written(self.cost, &salt, &output))
    }

    /// Does the work on the blocking pool, when a core is free for it.
    async fn in_turn<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Vec<Block>) -> Result<T, Trouble> + Send + 'static,
    ) -> Result<T, Trouble> {
        let waiting = timeout(PATIENCE, Arc::clone(&self.turns).acquire_owned()).await;
        let turn = waiting.map_err(|_| Trouble::Busy)?.map_err(broken)?;
        let desks = Arc::clone(&self.desks);
        // The turn goes with the work: a reader who hangs up does not free a core that is busy.
        let task = spawn_blocking(move || {
            let mut desk = desks.take();
            let done = work(&mut desk);
            desks.put_back(desk);
            drop(turn);
            done
        });
        task.await.map_err(broken)?
    }
}

impl Desks {
    fn take(&self) -> Vec<Block> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).pop().unwrap_or_default()
    }

    fn put_back(&self, desk: Vec<Block>) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).push(desk);
    }
}

/// Works a hash out in this memory, which grows to what the cost asks for.
fn work_out(
    params: &Params,
    password: &Password,
    salt: &Salt,
    output: &mut [u8],
    desk: &mut Vec<Block>,
) -> Result<(), Trouble> {
    desk.resize(params.block_count(), Block::new());
    let argon2 = Argon2::new(Algorithm::Argon2id, Version::V0x13, params.clone());
    argon2
        .hash_password_into_with_memory(password.0.as_bytes(), salt, output, desk.as_mut_slice())
        .map_err(broken)
}

/// The PHC form.
fn written(cost: Cost, salt: &Salt, output: &Output) -> String {
    format!("{}{salt}${output}", form(cost))
}

/// How every hash at this cost begins.
fn form(Cost { memory_kib, passes }: Cost) -> String {
    format!("$argon2id$v=19$m={memory_kib},t={passes},p=1$")
}

fn chance<const N: usize>() -> Result<[u8; N], Trouble> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(broken)?;
    Ok(bytes)
}

fn broken(error: impl std::error::Error + Send + Sync + 'static) -> Trouble {
    Trouble::Broken(Box::new(error))
}
