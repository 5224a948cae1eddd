//! How deep to drill so that enough full threads are left.
/// The last tap run down the hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LastTap {
    /// Taper tap.
    Taper,
    /// Second tap.
    Second,
    /// Plug (bottoming) tap.
    Plug,
}
