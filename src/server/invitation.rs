//! Links that the program itself hands out: to the first secretary at start, and from the command
//! line to whoever runs the server.
//!
//! A link is a secret, so it goes to whoever stands at the terminal and never into the log.

use std::io::{self, Write};

use super::config::{Config, Invite};
use super::db::Database;
use super::{App, StartError, db};
use crate::rules::BaseUrl;
use crate::rules::auth::{Rights, Token, name};
use crate::rules::clock::Clock;

/// Why no link is printed.
#[derive(Debug, thiserror::Error)]
pub(super) enum NoLink {
    /// The database or the system fails.
    #[error(transparent)]
    Start(#[from] StartError),
    /// Nobody has this name.
    #[error("no member is called {0}; names are compared without accents, spaces and capitals")]
    Nobody(String),
}

impl From<db::Error> for NoLink {
    fn from(error: db::Error) -> Self {
        Self::Start(error.into())
    }
}

/// Prints the link for the first secretary, if the club has none. An earlier one is void then.
pub(super) async fn welcome(app: &App) -> Result<(), StartError> {
    let token = Token::new()?;
    let now = app.clock.now();
    if db::slips::invite_first_secretary(&app.database, now, token.hash()).await? {
        tracing::warn!("the club has no secretary yet: the link to join stands on standard error");
        let link = format!("{}/join/{}", app.base_url, token.secret());
        // With standard error closed there is nobody to join.
        let _ = writeln!(
            io::stderr(),
            "\nThe club has no secretary yet. The first joins here, once, within a fortnight:\n\n  {link}\n"
        );
    }
    if !app.config.is_listen_given && app.base_url.is_http_by_name() {
        tracing::warn!(
            "only this machine reaches the server: for others add --listen 0.0.0.0: and the port, or put a proxy \
             in front"
        );
    }
    if !app.base_url.is_https() {
        tracing::warn!(
            "without https passwords cross the network in the clear: fit for a home network alone"
        );
    }
    Ok(())
}

/// Prints a link to join with.
pub(super) fn print_slip(config: &Config, invite: &Invite) -> Result<(), NoLink> {
    let token = Token::new().map_err(StartError::from)?;
    let rights = Rights {
        moderator: invite.moderator,
        inspector: invite.inspector,
        secretary: invite.secretary,
    };
    let meant_for: String = invite.meant_for.chars().take(60).collect();
    let base_url = at_the_database(config, async |database| {
        let now = Clock::System.now();
        let hash = token.hash();
        db::slips::invite(&database, now, None, hash, rights, &meant_for).await?;
        Ok(reached_at(config, &database).await?)
    })?;
    print(&base_url, "join", &token);
    Ok(())
}

/// Prints a link to choose a new password with.
pub(super) fn print_reset(config: &Config, typed: &str) -> Result<(), NoLink> {
    let token = Token::new().map_err(StartError::from)?;
    let base_url = at_the_database(config, async |database| {
        let nobody = || NoLink::Nobody(typed.to_owned());
        let account =
            db::accounts::named(&database, &name::key(typed)).await?.ok_or_else(nobody)?;
        let now = Clock::System.now();
        db::slips::reset(&database, now, None, token.hash(), account.id).await?;
        Ok(reached_at(config, &database).await?)
    })?;
    print(&base_url, "reset", &token);
    Ok(())
}

/// Works on the database, which a running server of the same schema may have open too.
fn at_the_database<T>(
    config: &Config,
    work: impl AsyncFnOnce(Database) -> Result<T, NoLink>,
) -> Result<T, NoLink> {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(StartError::from)?;
    runtime.block_on(async {
        let database = Database::open_beside(&config.data_dir).await?;
        let done = work(database.clone()).await;
        database.close().await;
        done
    })
}

/// Where readers reach the club: as the command says, else as the server that served it last did.
async fn reached_at(config: &Config, database: &Database) -> Result<BaseUrl, db::Error> {
    if let Some(given) = &config.base_url {
        return Ok(given.clone());
    }
    let noted = db::club::address(database).await?;
    Ok(noted.parse().unwrap_or_else(|_| BaseUrl::of_listener(config.listen)))
}

fn print(base_url: &BaseUrl, door: &str, token: &Token) {
    // With standard output closed there is nobody to read it.
    let _ = writeln!(io::stdout(), "{base_url}/{door}/{}", token.secret());
}
