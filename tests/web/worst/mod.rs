//! U31: the worst that members may write and readers may ask takes only so long, route by route.

mod club;
mod meter;
mod requests;
mod routes;
mod search;
mod shown;
