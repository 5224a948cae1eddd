//! What is forgotten when it is old: sessions that are over, spent slips, the oldest acts.

use std::sync::Arc;
use std::time::Duration;

use super::{App, db};

/// How often.
const EVERY: Duration = Duration::from_secs(24 * 60 * 60);

/// Does it now, and each day for as long as the process runs.
pub(super) fn start(app: &Arc<App>) {
    let app = Arc::clone(app);
    tokio::spawn(async move {
        let mut days = tokio::time::interval(EVERY);
        loop {
            days.tick().await;
            if let Err(error) = forget(&app).await {
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
