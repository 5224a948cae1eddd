//! The drawer of the reader who asks, as far as the answer turns on it.

use holewright_pages::drawer::Carried;

/// The cookie that holds it.
pub const DRAWER: &str = "drawer";

/// On a request whose answer turns on the reader's drawer: it is for this reader alone.
#[derive(Clone, Debug, PartialEq)]
pub struct Personal(pub Carried);
