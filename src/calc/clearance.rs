//! Clearance holes for the screw: close, medium and free, and the float they leave.
use crate::units::Length;
/// Fit of the screw in its clearance hole.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Fit {
    /// Close.
    Close,
    /// Medium.
    #[default]
    Medium,
    /// Free.
    Free,
}
/// The hole, and by what rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearanceHole {
    /// Its diameter.
    pub hole: Length,
}
