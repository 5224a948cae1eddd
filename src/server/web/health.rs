//! `/healthz`: the process lives. `/readyz`: it can do its work.

use std::sync::Arc;

use axum::extract::State;

use crate::{App, Error};

/// The process answers, whatever the database does.
pub async fn alive() -> &'static str {
    "alive\n"
}

/// The database can be read and written, and the server is not about to stop.
///
/// # Errors
/// It cannot: 503.
pub async fn ready(State(app): State<Arc<App>>) -> Result<&'static str, Error> {
    app.readiness.check(&app.database, app.clock).await?;
    Ok("ready\n")
}
