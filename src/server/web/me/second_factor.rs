//! `/me/second-factor`: setting up the code besides the password, and taking it away.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::super::form_page::{self, judged};
use super::super::page::{self, Seen};
use super::super::sign_in::proved::{self, ProvedForm};
use super::super::sign_in::with_session;
use super::super::{people, qr};
use crate::db::accounts;
use crate::db::spare_codes::{self, New};
use crate::extract::{AnyMember, Asker, Fields, ProvedMember, WORD, room};
use crate::rules::auth::digits::{self, Digits};
use crate::rules::auth::second_factor::Secret;
use crate::rules::auth::{SignedIn, Token};
use crate::rules::deed::Deed;
use crate::{App, Error};
use holewright_pages::FieldError;
use holewright_pages::field::Field;
use holewright_pages::layout::Frame;

/// The bytes of what is to be done, a code and proof.
pub const TAKES: u64 = room(&[WORD, WORD]) + proved::TAKES;

#[derive(Template)]
#[template(path = "web/me/second_factor.html")]
struct SecondFactorPage {
    frame: Frame,
    errors: Vec<FieldError>,
    is_set: bool,
    is_compulsory: bool,
    is_secretary: bool,
    /// How many spare codes are left.
    spare_codes: i64,
    /// The offered secret as a QR code and as text, while none is set.
    drawing: String,
    /// What opens the authenticator on the same telephone.
    address: String,
    written: String,
    code: Field,
}

#[derive(Template)]
#[template(path = "web/me/spare_codes.html")]
struct SpareCodesPage {
    frame: Frame,
    name: String,
    host: String,
    codes: Vec<String>,
    /// Whether there were some before.
    had_some: bool,
}

/// Shows what is set up, or the secret to set up.
///
/// # Errors
/// Nobody is signed in, or the password was not given of late.
pub async fn form(
    State(app): State<Arc<App>>,
    ProvedMember(member): ProvedMember,
    asker: Asker,
) -> Result<Response, Error> {
    form_with(&app, &member, &offer(&app, &asker)?, Vec::new()).await
}

/// Sets it up with a code that proves it, or takes it away.
///
/// # Errors
/// As above, or the member may not do without.
pub async fn change_second_factor(
    asker: Asker,
    form: ProvedForm<AnyMember>,
) -> Result<Response, Error> {
    form.does(async |app, member, fields| change(&app, member, &asker, &fields).await).await
}

async fn change(
    app: &App,
    member: SignedIn,
    asker: &Asker,
    fields: &Fields,
) -> Result<Response, Error> {
    let now = app.clock.now();
    if fields.get("do") == "drop" {
        if is_compulsory(app, &member) {
            return Err(Error::Forbidden("your rights require a second factor"));
        }
        let token = Token::new()?;
        if !accounts::drop_second_factor(&app.database, now, &member, token.hash()).await? {
            return Err(people::own_second_factor());
        }
        let done = page::did(app, "/me", Deed::DroppedSecondFactor);
        return Ok(with_session(done, &token, app));
    }
    if fields.get("do") == "spare" {
        return make_spare_codes(app, &member).await;
    }
    if member.has_second_factor {
        return Ok(page::see_other("/me/second-factor"));
    }
    let secret = offer(app, asker)?;
    match secret.step_of(fields.get("code"), now, None) {
        Some(step) => {
            let token = Token::new()?;
            let proved = (&secret, step);
            accounts::set_second_factor(&app.database, now, &member, proved, token.hash()).await?;
            Ok(with_session(page::did(app, "/me", Deed::SetSecondFactor), &token, app))
        }
        None => {
            let words = "This is not the code of this half minute. Type the one that the authenticator shows now; if that \
                         is not taken either, the telephone’s clock is wrong.";
            form_with(app, &member, &secret, vec![FieldError::new("code", words)]).await
        }
    }
}

/// Ten spare codes, shown this once; those of before are no longer good.
async fn make_spare_codes(app: &App, member: &SignedIn) -> Result<Response, Error> {
    let account = accounts::numbered(&app.database, member.id).await?;
    let had_some = account.is_some_and(|account| account.spare_codes > 0);
    let codes = digits::several(digits::SPARE)?;
    let mut kept = Vec::with_capacity(codes.len());
    for code in &codes {
        let hash = app.passwords.hash(code.password()).await?;
        kept.push(New { mark: code.mark().to_owned(), hash });
    }
    if !spare_codes::set(&app.database, app.clock.now(), member, &kept).await? {
        return Ok(page::see_other("/me/second-factor"));
    }
    let heading = "Your spare codes";
    let page = SpareCodesPage {
        frame: page::frame(&app.context, "/me/second-factor", heading, false, Seen::by(member))
            .saying(page::made("Ten spare codes are made.")),
        had_some,
        name: member.name.clone(),
        host: app.base_url.host().to_owned(),
        codes: codes.iter().map(Digits::written).collect(),
    };
    page::respond(StatusCode::OK, &page)
}

fn offer(app: &App, asker: &Asker) -> Result<Secret, Error> {
    let session = asker.held.first();
    session.map(|session| app.second_factor.offer(*session)).ok_or(Error::Unauthenticated)
}

fn is_compulsory(app: &App, member: &SignedIn) -> bool {
    member.rights.need_second_factor() && app.config.second_factor.is_compulsory()
}

async fn form_with(
    app: &App,
    member: &SignedIn,
    secret: &Secret,
    errors: Vec<FieldError>,
) -> Result<Response, Error> {
    let is_set = member.has_second_factor;
    let address = secret.address(&member.name, app.base_url.host());
    let account = accounts::numbered(&app.database, member.id).await?;
    let page = SecondFactorPage {
        frame: page::frame(
            &app.context,
            "/me/second-factor",
            "Second factor",
            !errors.is_empty(),
            Seen::by(member),
        ),
        is_set,
        is_compulsory: is_compulsory(app, member),
        spare_codes: account.map_or(0, |account| account.spare_codes),
        is_secretary: member.rights.secretary,
        drawing: if is_set { String::new() } else { qr::drawing(&address)? },
        address,
        written: secret.written(),
        code: judged(form_page::first_code(), &errors),
        errors,
    };
    page::respond(page::status(&page.errors), &page)
}
