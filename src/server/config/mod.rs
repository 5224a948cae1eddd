//! The settings: from the command line, else from the environment, else the default.
//!
//! A bad setting ends the program with exit code 2 and a line that names the setting, the value
//! and what is allowed.

use std::ffi::OsString;
use std::net::SocketAddr;
use std::num::NonZeroUsize;
use std::path::PathBuf;

use clap::error::ErrorKind;
use clap::parser::ValueSource;
use clap::{ArgMatches, Args, CommandFactory, FromArgMatches, Parser, Subcommand};
use tracing::Level;

use crate::rules::{BaseUrl, SecondFactor, TrustedProxy};

/// Every variable of ours starts with this.
const PREFIX: &str = "HOLEWRIGHT_";

const EXAMPLES: &str = "\
Examples:
  holewright
      serves on this machine alone, with the database in ./data
  holewright --listen 0.0.0.0:8080 --data-dir /var/lib/holewright --base-url https://club.example
      serves the club, behind its own address
  holewright backup club.tar
      saves everything in one file, while the server runs
  holewright backup --keep 14 /mnt/backups
      the same every night, with the date in its name; keeps a fortnight of them
  holewright restore club.tar
      puts it back; the server must be stopped, and what is there now is kept aside
  holewright --base-url http://192.168.1.20:8080
      serves a home network: put this machine's own address in it
  holewright invite --secretary
      prints a link for another secretary, should the first be lost
  holewright demo --data-dir try
      fills an empty folder with an invented club, to look round in

Exit codes: 0 done, or stopped as asked; 1 cannot start, not ready, or not done; 2 a setting is wrong.";

/// The thread, drill and material reference of a model-engineering club, with a plan for every hole.
#[derive(Debug, Parser)]
#[command(name = "holewright", version, after_help = EXAMPLES, disable_help_subcommand = true)]
pub struct CommandLine {
    /// What to do; without a word it serves.
    #[command(subcommand)]
    pub command: Option<Command>,
    /// The settings.
    #[command(flatten)]
    pub config: Config,
}

/// What the program can do.
#[derive(Clone, Debug, Default, PartialEq, Eq, Subcommand)]
pub enum Command {
    /// Serve the pages (also without this word)
    #[default]
    Serve,
    /// Ask the server at --listen whether it is ready: exit 0 if so, else 1
    Healthcheck,
    /// Save everything in one file, also while the server runs
    Backup {
        /// The file to write, such as club.tar, which has its name once it is whole; or a folder, for a
        /// name with the date; or - for standard output [default: the folder one stands in]
        file: Option<PathBuf>,
        /// Write over the file if it is there
        #[arg(long)]
        replace: bool,
        /// Of the backups that were saved into the folder with --keep, delete all but so many of the newest
        #[arg(long, value_name = "HOW MANY")]
        keep: Option<NonZeroUsize>,
    },
    /// Check a saved file, changing nothing
    Verify {
        /// The file that backup wrote, or a copy from the data folder's copies
        file: PathBuf,
    },
    /// Put back what a saved file holds; the server must be stopped. What is there now is kept aside
    Restore {
        /// The file that backup wrote, or a copy from the data folder's copies
        file: PathBuf,
    },
    /// Print a link that a new member joins with, once, within a fortnight
    #[command(
        after_help = "Example: holewright invite --moderator --for 'Enid' --base-url https://club.example"
    )]
    Invite(Invite),
    /// Print a link that a member chooses a new password with, once, within a week
    #[command(
        after_help = "Example: holewright reset 'Enid Hathersage' --base-url https://club.example"
    )]
    Reset {
        /// The member's name
        name: String,
    },
    /// Fill an empty data folder with an invented club to try; the server must be stopped
    #[command(
        after_help = "Example: holewright demo --data-dir try, then holewright --data-dir try --second-factor relaxed"
    )]
    Demo {
        /// Take the invented club away again, if nobody and nothing else is in the folder
        #[arg(long)]
        remove: bool,
    },
}

/// Who is to join.
#[derive(Clone, Debug, Default, PartialEq, Eq, Args)]
pub struct Invite {
    /// As a secretary
    #[arg(long)]
    pub secretary: bool,
    /// As a moderator
    #[arg(long)]
    pub moderator: bool,
    /// As a boiler inspector
    #[arg(long)]
    pub inspector: bool,
    /// Who it is for, in your own words
    #[arg(long = "for", value_name = "WORDS", default_value = "", hide_default_value = true)]
    pub meant_for: String,
}

/// The settings of the server.
#[derive(Clone, Debug, PartialEq, Eq, Args)]
pub struct Config {
    /// Address and port to serve on; where not given, that of a base URL such as http://192.168.1.20:8080
    #[arg(long, env = "HOLEWRIGHT_LISTEN", value_name = "ADDRESS:PORT", global = true)]
    #[arg(default_value = "127.0.0.1:8080", value_parser = listen_address)]
    pub listen: SocketAddr,

    /// Whether somebody chose it.
    #[arg(skip)]
    pub is_listen_given: bool,

    /// Folder for the database; made if it is not there
    #[arg(long, env = "HOLEWRIGHT_DATA_DIR", value_name = "FOLDER", global = true)]
    #[arg(default_value = "data")]
    pub data_dir: PathBuf,

    /// Scheme and host that readers see, for links that leave the page [default: the address served on; of
    /// invite and reset, what the server that was started last has]
    #[arg(long, env = "HOLEWRIGHT_BASE_URL", value_name = "URL", global = true)]
    pub base_url: Option<BaseUrl>,

    /// Address or network of a proxy whose X-Forwarded-For is believed; may be given again
    #[arg(long, env = "HOLEWRIGHT_TRUSTED_PROXY", value_name = "ADDRESS", global = true)]
    #[arg(value_delimiter = ',')]
    pub trusted_proxy: Vec<TrustedProxy>,

    /// Address and port to show metrics on, apart from the readers'; none where not given
    #[arg(long, env = "HOLEWRIGHT_METRICS_LISTEN", value_name = "ADDRESS:PORT", global = true)]
    #[arg(value_parser = metrics_address)]
    pub metrics_listen: Option<SocketAddr>,

    /// Whether secretary and moderators must give a code besides their password: compulsory or relaxed
    #[arg(long, env = "HOLEWRIGHT_SECOND_FACTOR", value_name = "RULE", global = true)]
    #[arg(default_value = "compulsory")]
    pub second_factor: SecondFactor,

    /// How much to log: error, warn, info, debug or trace
    #[arg(long, env = "HOLEWRIGHT_LOG", value_name = "LEVEL", global = true)]
    #[arg(default_value = "info", value_parser = log_level)]
    pub log: Level,
}

impl CommandLine {
    /// Reads the command line and the environment of this process.
    ///
    /// # Errors
    /// A setting that is unknown or cannot be read; also `--help` and `--version`, whose text is
    /// the "error" to print.
    pub fn read() -> Result<Self, clap::Error> {
        let line = Self::of(std::env::args_os())?;
        match unknown_variable(std::env::vars_os().filter_map(|(name, _)| name.into_string().ok()))
        {
            Some(name) => Err(Self::command().error(ErrorKind::UnknownArgument, name)),
            None => Ok(line),
        }
    }
}

impl CommandLine {
    /// These words, and the environment. Without `--listen`, a base URL that is an address of the network is
    /// listened on: nobody else would reach the server at it.
    ///
    /// # Errors
    /// A setting that is unknown or cannot be read.
    pub fn of(
        words: impl IntoIterator<Item = impl Into<OsString> + Clone>,
    ) -> Result<Self, clap::Error> {
        let matches = Self::command().try_get_matches_from(words)?;
        let mut line =
            Self::from_arg_matches(&matches).map_err(|error| error.format(&mut Self::command()))?;
        line.config.is_listen_given = is_given(&matches, "listen");
        if !line.config.is_listen_given
            && let Some(address) = line.config.base_url.as_ref().and_then(BaseUrl::to_listen_on)
        {
            line.config.listen = address;
        }
        Ok(line)
    }
}

/// Whether somebody gave this setting, before the command or behind it.
fn is_given(matches: &ArgMatches, name: &str) -> bool {
    let here = matches.value_source(name).is_some_and(|from| from != ValueSource::DefaultValue);
    here || matches.subcommand().is_some_and(|(_, behind)| is_given(behind, name))
}

/// A variable with our prefix that is no setting: most likely a slip of the pen.
fn unknown_variable(names: impl Iterator<Item = String>) -> Option<String> {
    let command = CommandLine::command();
    let known: Vec<_> = command.get_arguments().filter_map(|argument| argument.get_env()).collect();
    let unknown = names
        .filter(|name| name.starts_with(PREFIX))
        .find(|name| !known.iter().any(|env| *env == name.as_str()))?;
    let known: Vec<_> = known.iter().map(|env| env.to_string_lossy()).collect();
    Some(format!(
        "unknown setting '{unknown}' in the environment; allowed are {}",
        known.join(", ")
    ))
}

fn listen_address(typed: &str) -> Result<SocketAddr, String> {
    typed.parse().map_err(|_| {
        "allowed is an address and a port, such as 127.0.0.1:8080, 0.0.0.0:8080 or [::1]:8080 \
         (--listen or HOLEWRIGHT_LISTEN)"
            .to_owned()
    })
}

fn metrics_address(typed: &str) -> Result<SocketAddr, String> {
    typed.parse().map_err(|_| {
        "allowed is an address and a port, such as 127.0.0.1:9090 \
         (--metrics-listen or HOLEWRIGHT_METRICS_LISTEN)"
            .to_owned()
    })
}

fn log_level(typed: &str) -> Result<Level, String> {
    typed.parse().map_err(|_| {
        "allowed is error, warn, info, debug or trace (--log or HOLEWRIGHT_LOG)".to_owned()
    })
}
