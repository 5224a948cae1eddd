//! What changes something goes on to its end, whoever hangs up meanwhile: between the commit and what
//! follows from it, such as a page that must no longer show a note, nobody's going leaves a gap.

use std::panic::resume_unwind;

use axum::extract::Request;
use axum::http::Method;
use axum::middleware::Next;
use axum::response::Response;

use crate::Error;

/// Answers a form apart from the connection it came on.
///
/// # Errors
/// The process is about to end.
pub async fn go_on(request: Request, next: Next) -> Result<Response, Error> {
    if *request.method() != Method::POST {
        return Ok(next.run(request).await);
    }
    match tokio::spawn(next.run(request)).await {
        Ok(answer) => Ok(answer),
        Err(ended) => match ended.try_into_panic() {
            // It is answered where every panic is.
            Ok(panic) => resume_unwind(panic),
            Err(ended) => Err(Error::Internal(ended.into())),
        },
    }
}
