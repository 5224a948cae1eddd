//! Reading the thread names people type.
/// Which way the thread turns.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Hand {
    /// Right hand.
    #[default]
    Right,
    /// Left hand.
    Left,
}
