//! The route table: every address the server answers, and what answers it.

use std::sync::Arc;

use axum::Router;
use axum::middleware::{from_fn, from_fn_with_state};
use axum::routing::{any, get, post};
use tower::ServiceBuilder;
use tower_http::catch_panic::CatchPanicLayer;

use super::middleware::{
    body, drawer, observe, panics, rate, refusals, same_origin, security_headers,
};
use super::{App, Error, api, bytes, web};

/// Every route, with what happens around each answer.
pub fn router(app: Arc<App>) -> Router {
    layered(table(), app)
}

#[rustfmt::skip]
fn table() -> Router<Arc<App>> {
    Router::new()
        .route("/healthz", get(web::health::alive))
        .route("/readyz", get(web::health::ready))
        .route("/api/v1", get(api::openapi::index))
        .route("/api/v1/openapi.json", get(api::openapi::show))
        .route("/api/v1/threads", get(api::threads::systems))
        .route("/api/v1/threads/{system}", get(api::threads::system))
        .route("/api/v1/threads/{system}/{size}", get(api::threads::show))
        .route("/api/v1/drills", get(api::drills::list))
        .route("/api/v1/drills/{series}/{size}", get(api::drills::show))
        .route("/api/v1/materials", get(api::materials::list))
        .route("/api/v1/materials/{slug}", get(api::materials::show))
        .route("/api/v1/plan", get(api::plan::show))
        .route("/api/v1/search", get(api::search::find_all))
        .route("/api/v1/calc/{name}", get(api::calc::show))
        .route("/notes", get(web::notes::list::show))
        .route("/notes.atom", get(web::notes::atom::show))
        .route("/notes.csv", get(web::notes::export::csv))
        .route("/notes.json", get(web::notes::export::json))
        .route("/notes/new", get(web::notes::write::begin).post(web::notes::write::create))
        .route("/notes/mine", get(web::notes::mine::show))
        .route("/notes/{id}", get(web::notes::show::show))
        .route("/notes/{id}/history", get(web::notes::history::show))
        .route("/notes/{id}/edit", get(web::notes::write::edit).post(web::notes::write::change))
        .route("/notes/{id}/verdict", post(web::notes::member_acts::judge))
        .route("/notes/{id}/report", post(web::notes::member_acts::report))
        .route("/notes/{id}/correct", post(web::notes::member_acts::correct))
        .route("/notes/{id}/withdraw", post(web::notes::member_acts::withdraw))
        .route("/queue", get(web::notes::queue::show))
        .route("/queue/{id}", post(web::notes::queue::decide))
        .route("/api/{*rest}", any(api::nothing_here))
        .route("/sign-in", get(web::sign_in::form).post(web::sign_in::take))
        .route("/sign-in/code", get(web::sign_in::code::form).post(web::sign_in::code::take))
        .route("/sign-out", post(web::sign_in::out::take))
        .route("/prove", get(web::sign_in::prove::form).post(web::sign_in::prove::take))
        .route("/join/{token}", get(web::join::form).post(web::join::take))
        .route("/reset/{token}", get(web::join::reset::form).post(web::join::reset::take))
        .route("/me", get(web::me::form).post(web::me::take))
        .route("/me/password", get(web::me::password::form).post(web::me::password::take))
        .route("/me/second-factor", get(web::me::second_factor::form).post(web::me::second_factor::take))
        .route("/me/leave", get(web::me::leave::form).post(web::me::leave::take))
        .route("/me/data.json", get(web::me::data::show))
        .route("/people", get(web::people::list).post(web::people::open_slips::make_void))
        .route("/people/invite", get(web::people::invite::form).post(web::people::invite::take))
        .route("/people/acts", get(web::people::acts::list))
        .route("/people/{id}", get(web::people::show::form).post(web::people::show::take))
        .route("/privacy", get(web::privacy::show))
        .route("/reference.sqlite", get(api::reference_file::download))
        .route("/drawer", get(web::reference::answer).post(web::drawer::keep))
        // Every other address is a page: `pages::answer` knows which.
        .fallback(web::reference::answer)
        .method_not_allowed_fallback(method_not_allowed)
}

/// Puts around a table what every answer needs. The first line is outermost.
///
/// It is one layer of many parts, not many layers: axum boxes each layer by itself and copies every
/// box below it, for each request.
pub fn layered(table: Router<Arc<App>>, app: Arc<App>) -> Router {
    let state = || Arc::clone(&app);
    let around = ServiceBuilder::new()
        .layer(from_fn_with_state(state(), observe::observe))
        .layer(from_fn(drawer::carry))
        .layer(from_fn_with_state(state(), bytes::finish))
        .layer(from_fn_with_state(state(), security_headers::set))
        .layer(from_fn(api::cors::answer_preflight))
        .layer(from_fn_with_state(state(), refusals::write_body))
        .layer(from_fn_with_state(state(), same_origin::refuse_foreign))
        .layer(from_fn_with_state(state(), rate::limit))
        .layer(from_fn_with_state(state(), body::limit))
        .layer(CatchPanicLayer::custom(panics::answer))
        .layer(from_fn(bytes::refuse_unreadable))
        .layer(from_fn_with_state(state(), api::beside_page::answer));
    table.layer(around).with_state(app)
}

async fn method_not_allowed() -> Error {
    Error::MethodNotAllowed
}
