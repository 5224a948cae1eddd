//! The route table: every address the server answers, and what answers it.

use std::sync::Arc;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware::{from_fn, from_fn_with_state};
use axum::routing::{any, get, post};
use tower::ServiceBuilder;
use tower_http::catch_panic::CatchPanicLayer;

use super::bytes;
use super::middleware::{
    beside_page, body, budget, cors, drawer, host, observe, panics, rate, refusals, same_origin,
    security_headers, to_the_end,
};
use super::place::{Kind, Route};
use crate::{App, Error, api, web};

/// Every route, with what happens around each answer.
pub fn router(app: Arc<App>) -> Router {
    layered(all(), app)
}

/// Makes of its rows the routes and the list of them. A row is what it answers with, its path, and
/// the handler of each method; behind them stands, where it is not the usual one, how large a body
/// it takes: `takes 8 << 20`.
macro_rules! table {
    ($(#[$about:meta])* $seen:vis $list:ident, $routes:ident: $(
        $kind:ident $path:literal => $first:ident($handler:path) $(.$also:ident($other:path))* $(takes $bytes:expr)?;
    )+) => {
        $(#[$about])*
        $seen const $list: &[Route] = &[$(Route {
            path: $path,
            methods: &[stringify!($first) $(, stringify!($also))*],
            kind: Kind::$kind,
            takes: [$(Some($bytes),)? None][0],
        }),+];

        fn $routes() -> Router<Arc<App>> {
            Router::new()$(.route($path, $first($handler)$(.$also($other))*))+
        }
    };
}

table! {
    /// Every route. What is counted, what a reader may ask how often, and what the tests try of
    /// every address come from this list.
    pub ROUTES, routes:
    Open "/healthz" => get(web::health::alive);
    Open "/readyz" => get(web::health::ready);
    Figures "/api/v1" => get(api::openapi::index);
    Figures "/api/v1/openapi.json" => get(api::openapi::show);
    Figures "/api/v1/threads" => get(api::threads::systems);
    Figures "/api/v1/threads/{system}" => get(api::threads::system);
    Figures "/api/v1/threads/{system}/{size}" => get(api::threads::show);
    Figures "/api/v1/drills" => get(api::drills::list);
    Figures "/api/v1/drills/{series}/{size}" => get(api::drills::show);
    Figures "/api/v1/materials" => get(api::materials::list);
    Figures "/api/v1/materials/{slug}" => get(api::materials::show);
    Figures "/api/v1/rescue" => get(api::rescue::list);
    Figures "/api/v1/rescue/{slug}" => get(api::rescue::show);
    Figures "/api/v1/fasteners" => get(api::fasteners::list);
    Figures "/api/v1/fasteners/{table}" => get(api::fasteners::show);
    WorkedFigures "/api/v1/plan" => get(api::plan::show);
    WorkedFigures "/api/v1/search" => get(api::search::find_all);
    Figures "/api/v1/calc/{name}" => get(api::calc::show);
    Notes "/notes" => get(web::notes::list::show);
    NotesFile "/notes.atom" => get(web::notes::atom::show);
    NotesFile "/notes/feed/{token}" => get(web::notes::feed::show);
    NotesFile "/notes.csv" => get(web::notes::export::csv);
    NotesFile "/notes.json" => get(web::notes::export::json);
    Private "/notes/import" => get(web::notes::import::form).post(web::notes::import::take) takes web::notes::import::TAKES;
    Open "/notes/newsletter" => get(web::notes::newsletter::index);
    Compared "/notes/newsletter/{issue}" => get(web::notes::newsletter::show);
    Open "/notes/new" => get(web::notes::write::begin).post(web::notes::write::create) takes web::notes::write::TAKES;
    Notes "/notes/compare" => get(web::notes::compare::show);
    Open "/notes/mine" => get(web::notes::mine::show).post(web::notes::news::have_read) takes web::notes::news::TAKES;
    Open "/notes/{id}" => get(web::notes::show::show);
    Compared "/notes/{id}/history" => get(web::notes::history::show);
    Open "/notes/{id}/edit" => get(web::notes::write::edit).post(web::notes::write::change) takes web::notes::write::TAKES;
    Open "/notes/{id}/verdict" => post(web::notes::member_acts::judge) takes web::notes::member_acts::VERDICT;
    Open "/notes/{id}/remark" => post(web::notes::remarks::remark) takes web::notes::remarks::REMARKED;
    Open "/notes/{id}/report" => post(web::notes::member_acts::report) takes web::notes::member_acts::REPORTED;
    Open "/notes/{id}/correct" => post(web::notes::member_acts::correct) takes web::notes::member_acts::CORRECTED;
    Open "/notes/{id}/withdraw" => post(web::notes::member_acts::withdraw) takes web::notes::member_acts::WITHDRAWN;
    Private "/queue" => get(web::notes::queue::show);
    Private "/queue/reports" => post(web::notes::deciding::settle_all) takes web::notes::deciding::SETTLED;
    Private "/queue/decided" => get(web::notes::decided::show);
    Private "/queue/{id}/mend" => get(web::notes::mend::form).post(web::notes::mend::mend) takes web::notes::mend::TAKES;
    Private "/queue/remarks" => get(web::notes::remarks::show).post(web::notes::remarks::decide) takes web::notes::remarks::DECIDED;
    Private "/queue/{id}" => post(web::notes::deciding::decide) takes web::notes::deciding::DECIDED;
    Figures "/api/v1/{*rest}" => any(api::nothing_here);
    NoFigures "/api/{*rest}" => any(api::nothing_here);
    Open "/sign-in" => get(web::sign_in::form).post(web::sign_in::sign_in) takes web::sign_in::TAKES;
    Open "/sign-in/code" => get(web::sign_in::code::form).post(web::sign_in::code::check_code) takes web::sign_in::code::TAKES;
    Open "/sign-out" => post(web::sign_in::sign_out) takes web::sign_in::TAKES_NOTHING;
    Open "/prove" => get(web::sign_in::prove::form).post(web::sign_in::prove::prove) takes web::sign_in::prove::TAKES;
    Open "/join/{token}" => get(web::join::form).post(web::join::join) takes web::join::TAKES;
    Open "/reset" => get(web::join::by_code::form).post(web::join::by_code::check_code) takes web::join::by_code::TAKES;
    Open "/reset/{token}" => get(web::join::reset::form).post(web::join::reset::set_password) takes web::join::reset::TAKES;
    Private "/me" => get(web::me::form).post(web::me::end_session) takes web::me::TAKES;
    Private "/me/password" => get(web::me::password::form).post(web::me::password::change_password) takes web::me::password::TAKES;
    Private "/me/second-factor" => get(web::me::second_factor::form).post(web::me::second_factor::change_second_factor) takes web::me::second_factor::TAKES;
    Private "/me/feed" => get(web::me::feed::form).post(web::me::feed::change_feed) takes web::me::feed::TAKES;
    Private "/me/leave" => get(web::me::leave::form).post(web::me::leave::leave) takes web::me::leave::TAKES;
    Private "/me/data.json" => get(web::me::data::show);
    Private "/people" => get(web::people::list).post(web::people::open_slips::make_void) takes web::people::open_slips::TAKES;
    Private "/people/invite" => get(web::people::invite::form).post(web::people::invite::invite) takes web::people::invite::TAKES;
    Private "/people/sheet" => get(web::people::sheet::form).post(web::people::sheet::print) takes web::people::sheet::TAKES;
    Private "/people/club" => get(web::people::club::form).post(web::people::club::change) takes web::people::club::TAKES;
    Private "/people/acts" => get(web::people::acts::list);
    Private "/people/{id}" => get(web::people::show::form).post(web::people::show::change_member) takes web::people::show::TAKES;
    Open "/privacy" => get(web::privacy::show);
    Tables "/reference.sqlite" => get(api::reference_file::download);
    Page "/drawer" => get(web::reference::answer).post(web::drawer::keep) takes 64 << 10;
}

fn all() -> Router<Arc<App>> {
    routes()
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
        .layer(from_fn_with_state(state(), budget::hold))
        .layer(from_fn(drawer::carry))
        .layer(from_fn_with_state(state(), bytes::finish))
        .layer(from_fn_with_state(state(), security_headers::set))
        .layer(from_fn(cors::answer_preflight))
        .layer(from_fn_with_state(state(), refusals::write_body))
        .layer(from_fn(host::refuse_unclear))
        .layer(from_fn_with_state(state(), same_origin::refuse_foreign))
        .layer(from_fn_with_state(state(), rate::limit))
        .layer(from_fn_with_state(state(), body::limit))
        // The limit above is the only one.
        .layer(DefaultBodyLimit::disable())
        .layer(CatchPanicLayer::custom(panics::answer))
        .layer(from_fn(to_the_end::go_on))
        .layer(from_fn(bytes::refuse_unreadable))
        .layer(from_fn_with_state(state(), beside_page::answer));
    table.layer(around).with_state(app)
}

async fn method_not_allowed() -> Error {
    Error::MethodNotAllowed
}

#[cfg(test)]
mod tests {
    use super::{App, Arc, Kind, Route, Router, post};

    async fn nothing() {}

    table! {
        /// One that takes more than the others.
        SCRATCH, scratch:
        Open "/photo" => post(nothing).put(nothing) takes 8 << 20;
        Private "/form" => post(nothing);
    }

    #[test]
    fn a_row_says_its_methods_and_what_it_takes() {
        let _ = scratch();
        let told = |route: &Route| (route.path, route.methods, route.kind, route.takes);
        assert_eq!(
            SCRATCH.iter().map(told).collect::<Vec<_>>(),
            [
                ("/photo", ["post", "put"].as_slice(), Kind::Open, Some(8 << 20)),
                ("/form", ["post"].as_slice(), Kind::Private, None),
            ]
        );
    }
}
