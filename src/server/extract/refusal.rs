//! Why a body is not taken.

use axum::http::StatusCode;

/// Why a body is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refusal {
    /// More bytes than so many, which are taken here.
    #[error(
        "what was sent is too large: {} kB are taken here at most, and none of it was; go back, what you \
         typed is still there, and send less of it", .0 / 1000
    )]
    TooLarge(u64),
    /// It came in too many pieces for its size.
    #[error("what was sent comes in too many small pieces")]
    TooManyPieces,
    /// More form fields than any form has.
    #[error("too many fields were sent")]
    TooManyFields,
    /// It must be sent as it is.
    #[error("what was sent is compressed; send it as it is")]
    Compressed,
    /// Too few bytes in too long a time.
    #[error("what was sent comes too slowly")]
    TooSlow,
    /// It broke off, or is not framed as HTTP asks.
    #[error("what was sent is not complete")]
    Broken,
}

impl Refusal {
    /// The HTTP status.
    #[must_use]
    pub const fn status(self) -> StatusCode {
        match self {
            Self::TooLarge(_) => StatusCode::PAYLOAD_TOO_LARGE,
            Self::TooSlow => StatusCode::REQUEST_TIMEOUT,
            Self::TooManyPieces | Self::TooManyFields | Self::Compressed | Self::Broken => {
                StatusCode::BAD_REQUEST
            }
        }
    }
}
