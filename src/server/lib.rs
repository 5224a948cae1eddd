//! The web server around the pages, with its database.
//!
//! Three ways through it:
//!
//! - *A thread page:* [`front::routes`] → `web::reference` (entry and notes in one query) → the pages' own
//!   `answer` → tables, formulas and drawing of the core → template.
//! - *The plan:* its query → a request that keeps what was typed → the core's `HoleSpec` and `build` →
//!   page or JSON.
//! - *A note:* `web::notes::write` → `rules::notes::wording` → `db::notes::write` (rules, wording and act in
//!   one transaction) → 303; shown once `web::notes::queue` passes it.
//!
//! Its rooms, from the top; a call goes to the same room or to one further down:
//!
//! - [`front`]: the sockets, the route table, what happens around every answer, its bytes, the log.
//! - [`extract`]: who sent a request, and what it holds.
//! - [`web`]: answers for people; [`api`]: answers for programs; [`error`]: refusals at both.
//! - [`db`]: the only SQL; [`entries`]: the compiled tables as rows.
//! - [`rules`]: what is decided without a request and without SQL.
//!
//! Beside them, by the command line alone: [`config`], [`backup`], [`demo`], `invitation`, [`healthcheck`];
//! `housekeeping` forgets what is old, [`whole_file`] makes files that appear whole.

pub mod api;
pub mod backup;
pub mod config;
pub mod db;
pub mod demo;
pub mod entries;
pub mod error;
pub mod extract;
pub mod front;
pub mod healthcheck;
mod housekeeping;
mod invitation;
pub mod live;
pub mod readiness;
pub mod rules;
pub mod web;
pub mod whole_file;

use std::fmt;
use std::io::{self, Write};
use std::net::SocketAddr;
use std::process::ExitCode;
use std::sync::Arc;
use std::time::Duration;

use tokio::time::timeout;

use backup::{Existing, Place, Wanted};
use config::{Command, CommandLine, Config};
use db::{Database, FolderLock};
use front::accept::{self, Limits};
use front::bytes::Kept;
use front::metrics::{self, Metrics};
use front::middleware::budget;
use front::place::Route;
use front::{log, routes};
use holewright_pages as pages;
use live::Live;
use readiness::Readiness;
use rules::auth;
use rules::auth::password::Hashing;
use rules::auth::second_factor::Setting;
use rules::auth::tries::Tries;
use rules::clock::Clock;
use rules::limits::{Allowance, RateLimit};
use rules::validator::Build;
use rules::{BaseUrl, Generations, UnnamedProxies, plain};

use web::apart::Apart;

pub use error::Error;

/// Time for the database to close. With the drain before it and the log's last lines behind it this
/// stays below [`accept::signals::DEADLINE`].
const CLOSE: Duration = Duration::from_secs(1);

/// How long a start waits until the stored notes are judged by rules of pressure that have changed; a club's
/// notes take less.
const JUDGED_FIRST: Duration = Duration::from_secs(10);

/// Tries to sign in from one address: ten, then one a minute.
const SIGN_INS: Allowance = Allowance { burst: 10, every: Duration::from_secs(60) };

/// What a request needs, made once at start.
#[derive(Debug)]
pub struct App {
    /// The settings.
    pub config: Config,
    /// The address readers see.
    pub base_url: BaseUrl,
    /// What the pages need to know.
    pub context: Live,
    /// Held while that is read anew.
    learning: tokio::sync::Mutex<()>,
    /// The database.
    pub database: Database,
    /// The wall clock.
    pub clock: Clock,
    /// Whether the server can do its work.
    pub readiness: Readiness,
    /// How far a client may go.
    pub limits: Limits,
    /// What a page's validator holds besides its figures.
    pub build: Build,
    /// How often one address may ask for what costs work.
    pub rate_limit: RateLimit,
    /// How often one address may try to sign in.
    pub sign_in_limit: RateLimit,
    /// Wrong passwords and codes at every account.
    pub tries: Tries,
    /// How passwords are hashed.
    pub passwords: Hashing,
    /// From which second factors are offered.
    pub second_factor: Setting,
    /// What forms and their answers may take of the memory.
    pub in_hand: budget::InHand,
    /// Where work is done that takes long.
    pub apart: Apart,
    /// Proxies that nobody named.
    pub unnamed_proxies: UnnamedProxies,
    /// How often one member may write.
    pub write_limit: RateLimit,
    /// The route table, as far as more than the router must know of it.
    pub routes: &'static [Route],
    /// What an operator watches.
    pub metrics: Metrics,
    /// Which state of the data readers see: the database counts them.
    pub shown: Arc<Generations>,
    /// Finished answers.
    pub kept: Kept,
}

/// Why the server cannot start.
#[derive(Debug, thiserror::Error)]
pub enum StartError {
    /// The address cannot be listened on.
    #[error("cannot listen on {address}: {source}; choose another address with --listen")]
    Listen {
        /// The address.
        address: SocketAddr,
        /// What the system said.
        source: io::Error,
    },
    /// The metrics cannot be shown where they should.
    #[error(transparent)]
    Metrics(#[from] metrics::CannotListen),
    /// The database cannot be used.
    #[error(transparent)]
    Database(#[from] db::Error),
    /// The stored notes cannot be judged by the rules of today.
    #[error(transparent)]
    Notes(#[from] db::notes::Error),
    /// There is no chance to make secrets of.
    #[error(transparent)]
    NoChance(#[from] auth::NoChance),
    /// The system refuses something a server needs.
    #[error("the system refuses what a server needs: {0}")]
    System(#[from] io::Error),
}

impl App {
    /// Opens the database and projects the tables into it. Who serves holds a [`FolderLock`] besides.
    ///
    /// # Errors
    /// The database cannot be opened or written, or the system gives no random bytes.
    pub async fn open(config: Config, base_url: BaseUrl, clock: Clock) -> Result<Self, StartError> {
        let database = Database::open(&config.data_dir).await?;
        let projected = db::reference::project(&database, &entries::all(), clock.now()).await?;
        tracing::debug!(?projected, "the tables are in the database");
        housekeeping::judge(&database, clock, JUDGED_FIRST).await?;
        let shown = Arc::clone(database.shown());
        Ok(Self {
            context: Live::new(context(&base_url, db::club::read(&database).await?.as_shown())),
            learning: tokio::sync::Mutex::default(),
            build: Build::serving(&base_url),
            readiness: Readiness::default(),
            limits: Limits::default(),
            rate_limit: RateLimit::default(),
            sign_in_limit: RateLimit::of(SIGN_INS),
            tries: Tries::default(),
            passwords: Hashing::default(),
            second_factor: Setting::new()?,
            in_hand: budget::InHand::default(),
            apart: Apart::default(),
            unnamed_proxies: UnnamedProxies::default(),
            write_limit: RateLimit::of(Allowance::of_a_writer()),
            routes: routes::ROUTES,
            metrics: Metrics::default(),
            kept: Kept::holding(Kept::USUAL, Arc::clone(&shown)),
            shown,
            config,
            base_url,
            database,
            clock,
        })
    }

    /// Has the pages say of the club what the database holds, from now on.
    ///
    /// # Errors
    /// The database cannot be read.
    pub async fn know_club(&self) -> Result<(), db::Error> {
        // Who comes last reads last.
        let _turn = self.learning.lock().await;
        self.context.set(context(&self.base_url, db::club::read(&self.database).await?.as_shown()));
        // Pages that were made since the commit, of what stood before, are old too.
        self.shown.changed();
        Ok(())
    }

    /// How many seconds ago a backup was last saved; none where nobody can tell. The disk may be slow:
    /// nobody else waits for it.
    pub async fn last_backup(&self) -> Option<u32> {
        let (data, now) = (self.config.data_dir.clone(), self.clock.now());
        let made_at = tokio::task::spawn_blocking(move || backup::last::made_at(&data)).await;
        u32::try_from(now.saturating_sub(made_at.ok()??).max(0)).ok()
    }
}

/// What the pages need to know of a server at this address, and of its club.
fn context(base_url: &BaseUrl, club: rules::club::Club) -> pages::Context {
    pages::Context {
        base_url: base_url.as_str().to_owned(),
        club: pages::Club { name: club.name, place: club.place, welcome: club.welcome },
        notes: pages::Notes { are_kept: true, ..pages::Notes::default() },
        ..pages::Context::default()
    }
}

/// The program: reads its settings, then does what it was asked to.
#[must_use]
pub fn main() -> ExitCode {
    let line = match CommandLine::read() {
        Ok(line) => line,
        Err(stop) => stop.exit(),
    };
    match line.command.unwrap_or_default() {
        Command::Serve => {
            let _log = log::start(line.config.log);
            outcome(run(line.config))
        }
        Command::Healthcheck => outcome(healthcheck::ask(line.config.listen)),
        Command::Backup { file, replace, keep } => {
            let existing = if replace { Existing::Replace } else { Existing::Keep };
            let wanted = Wanted { place: Place::read(file), existing, keep };
            told(backup::alone(backup::save(&line.config.data_dir, wanted, Clock::System)))
        }
        Command::Verify { file } => told(backup::alone(backup::verify(&file))),
        Command::Restore { file } => {
            told(backup::alone(backup::restore(&line.config.data_dir, &file, Clock::System)))
        }
        Command::Invite(invite) => outcome(invitation::print_slip(&line.config, &invite)),
        Command::Demo { remove } => {
            let config = &line.config;
            if remove { told(demo::remove_from(config)) } else { told(demo::fill_into(config)) }
        }
        Command::Reset { name } => outcome(invitation::print_reset(&line.config, &name)),
    }
}

/// Serves until the process is told to stop.
///
/// # Errors
/// The server cannot start.
pub fn run(config: Config) -> Result<(), StartError> {
    tokio::runtime::Builder::new_multi_thread().enable_all().build()?.block_on(serve(config))
}

async fn serve(config: Config) -> Result<(), StartError> {
    // The address first: a second server started by mistake stops before it touches the data.
    let listener = accept::listen(config.listen)
        .map_err(|source| StartError::Listen { address: config.listen, source })?;
    let metrics = metrics::MetricsListener::open(config.metrics_listen).await?;
    let here = BaseUrl::of_listener(listener.local_addr()?);
    let base_url = config.base_url.clone().unwrap_or_else(|| here.clone());
    // Held till the end: it keeps a second server, and a restore, out of the data folder.
    let _folder = FolderLock::take(&config.data_dir)?;
    let app = Arc::new(App::open(config, base_url, Clock::System).await?);
    if let Err(error) = db::club::note_address(&app.database, app.base_url.as_str()).await {
        tracing::warn!(%error, "where readers come is not noted: invite and reset may print another address");
    }
    let limits = app.limits.within(accept::descriptors::raise());
    let mut signals = accept::Signals::listen()?;
    tracing::info!("Holewright is ready: open {here}");
    if limits.connections < app.limits.connections {
        let connections = limits.connections;
        tracing::warn!(connections, "the limit on open files is low: fewer connections at once");
    }
    metrics.serve(&app);
    // Before anything is recorded by a clock that may be wrong.
    let newest = db::acts::newest(&app.database).await?;
    invitation::welcome(&app).await?;
    housekeeping::start(&app, newest);
    housekeeping::judge_rest(&app);
    housekeeping::look(&app);
    let router = routes::router(Arc::clone(&app));
    let stop = async || {
        signals.next().await;
        app.readiness.stop();
    };
    let proxies = app.config.trusted_proxy.clone();
    accept::serve(accept::Door { listener, limits, proxies }, router, stop).await;
    if timeout(CLOSE, app.database.close()).await.is_err() {
        tracing::warn!(
            "the database did not close in time; its log is folded in at the next start"
        );
    }
    tracing::info!("stopped");
    Ok(())
}

/// As [`outcome`], with what was done on standard output.
fn told<T: fmt::Display, E: fmt::Display>(result: Result<T, E>) -> ExitCode {
    outcome(result.map(|done| {
        // What was asked for is done, whether or not anybody reads so.
        for line in done.to_string().lines() {
            let _ = writeln!(io::stdout(), "{}", plain::line(line));
        }
    }))
}

fn outcome<E: fmt::Display>(result: Result<(), E>) -> ExitCode {
    match result {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            // With standard error closed there is nobody left to tell.
            let _ = writeln!(io::stderr(), "holewright: {}", plain::line(&error.to_string()));
            ExitCode::FAILURE
        }
    }
}
