//! U31: the worst that members may write and readers may ask takes only so long.

mod search;
mod shown;
