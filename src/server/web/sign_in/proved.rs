//! A form whose act needs the password once more. Where it was not given of late, the page that asks for it
//! holds the form, and one sending both proves and acts: nothing that was typed is lost, and nobody is led to
//! an act they did not ask for.

use std::marker::PhantomData;
use std::sync::Arc;

use axum::extract::{FromRequest, FromRequestParts, Request};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};

use super::super::form_page::FormPage;
use super::super::page::{self, Seen};
use super::{prove, with_session};
use crate::db::sessions;
use crate::extract::{AnyMember, Fields, Member, Secretary, WORD, is_proved, room};
use crate::rules::auth::{SignedIn, Token, cookie, strength};
use crate::{App, Error};
use holewright_pages::FieldError;

/// The bytes of the proof beside what a form takes.
pub const TAKES: u64 = room(&[strength::LONGEST, WORD]);

/// What is never carried on: whoever proves types it anew.
const SECRETS: [&str; 3] = ["password", "new_password", "code"];

/// A form of somebody who proved of late that they are who they say, or proves it with the form.
pub struct ProvedForm<Who> {
    app: Arc<App>,
    by: SignedIn,
    fields: Fields,
    /// The new token of the session, where this form proved it.
    token: Option<Token>,
    who: PhantomData<Who>,
}

/// Who may be asked for proof.
pub trait Provable: FromRequestParts<Arc<App>, Rejection = Error> {
    /// The member.
    fn member(self) -> SignedIn;
}

impl Provable for Secretary {
    fn member(self) -> SignedIn {
        self.0
    }
}

impl Provable for Member {
    fn member(self) -> SignedIn {
        self.0
    }
}

impl Provable for AnyMember {
    fn member(self) -> SignedIn {
        self.0
    }
}

impl<Who> ProvedForm<Who> {
    /// Does what the form asks for. The answer, be it a refusal, gives the browser the session's new token:
    /// the old one is worth nothing any more.
    ///
    /// # Errors
    /// Those of the act, where the form did not prove anything itself.
    pub async fn does<Done>(
        self,
        act: impl FnOnce(Arc<App>, SignedIn, Fields) -> Done,
    ) -> Result<Response, Error>
    where
        Done: Future<Output = Result<Response, Error>>,
    {
        let Self { app, by, fields, token, .. } = self;
        let done = act(Arc::clone(&app), by, fields).await;
        let Some(token) = token else { return done };
        let response = done.unwrap_or_else(IntoResponse::into_response);
        // An act that ended the session, or gave it a token of its own, has said so.
        let is_told = cookie::is_told(response.headers(), &app.base_url);
        Ok(if is_told { response } else { with_session(response, &token, &app) })
    }
}

impl<Who: Provable> FromRequest<Arc<App>> for ProvedForm<Who> {
    type Rejection = Response;

    async fn from_request(request: Request, app: &Arc<App>) -> Result<Self, Response> {
        let (mut parts, body) = request.into_parts();
        let who = Who::from_request_parts(&mut parts, app).await;
        let by = who.map_err(IntoResponse::into_response)?.member();
        let address = parts.uri.path().to_owned();
        let fields = Fields::from_request(Request::from_parts(parts, body), app).await;
        let fields = fields.map_err(IntoResponse::into_response)?;
        let proof = proof(app, &by, &address, &fields).await;
        let token = match proof.map_err(IntoResponse::into_response)? {
            Proof::OfLate => None,
            Proof::Now(token) => Some(token),
            Proof::Missing(page) => return Err(page),
        };
        Ok(Self { app: Arc::clone(app), by, fields, token, who: PhantomData })
    }
}

/// Whether the member has proved who they are.
enum Proof {
    /// They did so within the last quarter of an hour.
    OfLate,
    /// The form did, and the session has this token now.
    Now(Token),
    /// They have not: this page asks for it.
    Missing(Response),
}

async fn proof(app: &App, by: &SignedIn, address: &str, fields: &Fields) -> Result<Proof, Error> {
    if is_proved(by, app) {
        return Ok(Proof::OfLate);
    }
    if !fields.has("password") {
        return asking(app, by, (address, fields), None).map(Proof::Missing);
    }
    let wrong = "This is not your password, and nothing was done. Try again.";
    if let Err(wrong) = prove::given(app, by, fields, wrong).await? {
        return asking(app, by, (address, fields), Some(wrong)).map(Proof::Missing);
    }
    let token = Token::new()?;
    sessions::prove(&app.database, by, app.clock.now(), token.hash()).await?;
    Ok(Proof::Now(token))
}

/// The page that asks for proof and holds the form.
fn asking(
    app: &App,
    by: &SignedIn,
    (address, fields): (&str, &Fields),
    wrong: Option<FieldError>,
) -> Result<Response, Error> {
    let is_first = wrong.is_none();
    let errors = Vec::from_iter(wrong);
    let mut form =
        FormPage::at(&app.context, address, "Your password once more", errors, Seen::by(by));
    form.words = vec![
        "What you asked for needs your password once more, in case somebody else sits here. Nothing was done yet: \
         it is done with the button below. You are then not asked again for a quarter of an hour."
            .to_owned(),
    ];
    form.fields = prove::asked_for(by, "Password");
    let carried = fields.each().filter(|(name, _)| !SECRETS.contains(name));
    form.carried = carried.map(|(name, typed)| (name.to_owned(), typed.to_owned())).collect();
    form.button = "Go on and do it";
    if is_first { page::respond(StatusCode::FORBIDDEN, &form) } else { form.answer() }
}
