//! The browser a request came from: its address, its own name for itself, the token it holds.

use std::convert::Infallible;
use std::sync::Arc;

use axum::extract::FromRequestParts;
use axum::http::header::USER_AGENT;
use axum::http::request::Parts;

use crate::App;
use crate::extract::client::{self, Peer};
use crate::rules::auth::{TokenHash, cookie};
use crate::rules::limits::Client;

/// What is known of a browser before anybody signs in.
#[derive(Clone, Debug)]
pub struct Asker {
    /// Who shares its allowance; none if the request came through no socket.
    pub client: Option<Client>,
    /// The browser in its own words.
    pub agent: String,
    /// The hashes of the sessions' tokens it holds, whether or not those sessions stand.
    pub held: Vec<TokenHash>,
}

impl FromRequestParts<Arc<App>> for Asker {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, app: &Arc<App>) -> Result<Self, Infallible> {
        let trusted = &app.config.trusted_proxy;
        let address = parts
            .extensions
            .get::<Peer>()
            .map(|Peer(peer)| client::address(peer.ip(), &parts.headers, trusted));
        let agent = parts.headers.get(USER_AGENT).and_then(|agent| agent.to_str().ok());
        Ok(Self {
            client: address.map(Client::from),
            agent: agent.unwrap_or_default().to_owned(),
            held: cookie::read(&parts.headers, &app.base_url).map(|token| token.hash()).collect(),
        })
    }
}
