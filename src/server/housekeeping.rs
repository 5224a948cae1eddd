//! What is forgotten when it is old: sessions that are over, spent slips, the oldest acts. A look, each
//! second, at whether the data is still there. And at start, once, the stored notes by new rules of pressure.

use std::sync::Arc;
use std::time::Duration;

use super::db::Database;
use super::db::notes::anew::{self, Judged};
use super::rules::clock::{Clock, Moment, UnixSeconds};
use super::rules::notes::pressure;
use super::{App, db};

/// How often.
const EVERY: Duration = Duration::from_secs(24 * 60 * 60);
/// Nothing was done in the club for so long, or the clock is wrong: a start cannot tell.
const LONG_QUIET: UnixSeconds = 60 * 24 * 60 * 60;
/// How often it is looked for.
const LOOK_EVERY: Duration = Duration::from_secs(1);

/// How long the stored notes are judged at a time, beside readers.
const JUDGED_AT_ONCE: Duration = Duration::from_millis(200);
/// Where the database is held by another program, it is tried again after so long.
const JUDGED_AGAIN: Duration = Duration::from_secs(60);

/// Judges the stored notes by the rules of today, where they were judged by others, for so long.
pub(super) async fn judge(
    database: &Database,
    clock: Clock,
    time: Duration,
) -> Result<Judged, db::notes::Error> {
    let judged = anew::judge(database, clock.now(), &pressure::rule(), time).await?;
    if judged.heard > 0 {
        let heard = judged.heard;
        tracing::warn!(
            heard,
            "stored notes are now heard to speak of boilers, steam or pressure: an inspector reads them first"
        );
    }
    Ok(judged)
}

/// Judges what the start left, bit by bit.
pub(super) fn judge_rest(app: &Arc<App>) {
    let app = Arc::clone(app);
    tokio::spawn(async move {
        loop {
            match judge(&app.database, app.clock, JUDGED_AT_ONCE).await {
                Ok(judged) => {
                    if !judged.is_more {
                        return;
                    }
                    tokio::time::sleep(JUDGED_AT_ONCE).await;
                }
                Err(error) => {
                    tracing::warn!(%error, "not every stored note could be judged; tried again in a minute");
                    tokio::time::sleep(JUDGED_AGAIN).await;
                }
            }
        }
    });
}

/// Tells the log once when the data goes, and once when it is back.
pub(super) fn look(app: &Arc<App>) {
    let app = Arc::clone(app);
    tokio::spawn(async move {
        let mut seconds = tokio::time::interval(LOOK_EVERY);
        let mut was_there = true;
        loop {
            seconds.tick().await;
            let found = app.database.look();
            match &found {
                Err(error) if was_there => tracing::error!("{error}"),
                Ok(()) if !was_there => tracing::info!("the data is back"),
                _ => {}
            }
            was_there = found.is_ok();
        }
    });
}

/// Does it now, and each day for as long as the process runs, but for a day on which the clock may be
/// wrong: what is deleted does not come back once it is right. `newest` is when the newest act was done
/// before this start.
pub(super) fn start(app: &Arc<App>, newest: Option<UnixSeconds>) {
    let app = Arc::clone(app);
    tokio::spawn(async move {
        let mut days = tokio::time::interval(EVERY);
        let mut before: Option<Moment> = None;
        loop {
            days.tick().await;
            let now = Moment::at(app.clock);
            let is_right = match before.replace(now) {
                Some(before) => before.runs_true_to(now),
                None => newest.is_none_or(|at| now.wall - at < LONG_QUIET),
            };
            if !is_right {
                tracing::warn!("the clock may be wrong: nothing old is deleted until tomorrow");
            } else if let Err(error) = forget(&app).await {
                tracing::warn!(%error, "what is old could not be deleted; tried again tomorrow");
            }
        }
    });
}

async fn forget(app: &App) -> Result<(), db::Error> {
    let now = app.clock.now();
    db::sessions::forget_old(&app.database, now).await?;
    db::slips::forget_old(&app.database, now).await?;
    let dropped = db::acts::forget_old(&app.database, now).await?;
    tracing::debug!(dropped, "what is old has been deleted");
    Ok(())
}
