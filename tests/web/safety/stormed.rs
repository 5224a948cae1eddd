//! What the storms storm: the program itself, sent the form of a note by its members.
//!
//! What is then in the database is read the same way whoever wrote it (`notes.rs`).

use std::hash::{BuildHasher, Hasher, RandomState};
use std::net::SocketAddr;
use std::path::Path;
use std::process::Command;

use holewright_server::db::Database;
use holewright_server::rules::auth::Token;

use super::asked::{get, send};
use super::commands::program;
use super::notes::block;
use super::storm::Victim;

/// So many that none of them writes more than one member may in the time of a storm.
const MEMBERS: u32 = 6000;

/// Starts the program on this data folder; a new one first gets its members, signed in.
pub(super) fn start(data: &Path) -> Victim {
    seed(data);
    Victim::start(&serving(data))
}

/// A data folder with members who are signed in.
pub(super) fn seed(data: &Path) {
    block(sign_in(data));
}

/// The command that serves this data folder.
pub(super) fn serving(data: &Path) -> Command {
    let mut serve = program();
    serve.args(["--listen", "127.0.0.1:0", "--second-factor", "relaxed", "--data-dir"]).arg(data);
    serve
}

/// Sends one note in; whether it was acknowledged.
pub(super) fn write(address: SocketAddr, key: &str) -> bool {
    send(address, &note(address, key)).is_ok_and(|answer| answer.starts_with("HTTP/1.1 303 "))
}

/// Sends one note in; the whole answer.
#[track_caller]
pub(super) fn answer(address: SocketAddr, key: &str) -> String {
    send(address, &note(address, key)).unwrap()
}

fn note(address: SocketAddr, key: &str) -> String {
    let member = RandomState::new().build_hasher().finish() % u64::from(MEMBERS);
    post(address, u32::try_from(member).unwrap(), "/notes/new", &sent_in(key))
}

/// The form of a note that is sent in.
pub(super) fn sent_in(key: &str) -> String {
    format!("form_key={key}&title={key}&text=It+cut+clean.&on=gunmetal&do=send")
}

/// A form as this member sends it.
pub(super) fn post(address: SocketAddr, member: u32, path: &str, form: &str) -> String {
    format!(
        "POST {path} HTTP/1.1\r\nHost: {address}\r\nSec-Fetch-Site: same-origin\r\n\
         Cookie: holewright={}\r\nContent-Type: application/x-www-form-urlencoded\r\n\
         Content-Length: {}\r\nConnection: close\r\n\r\n{form}",
        token(member).secret(),
        form.len()
    )
}

/// A page as this member asks for it.
pub(super) fn page(address: SocketAddr, member: u32, path: &str) -> String {
    format!(
        "GET {path} HTTP/1.1\r\nHost: {address}\r\nCookie: holewright={}\r\n\
         Connection: close\r\n\r\n",
        token(member).secret()
    )
}

/// Asks for the list of notes; whether that was answered.
pub(super) fn read(address: SocketAddr) -> bool {
    get(address, "/notes") == Some(200)
}

fn token(member: u32) -> Token {
    Token::read(&format!("{member:064x}")).unwrap()
}

async fn sign_in(data: &Path) {
    let database = Database::open(data).await.unwrap();
    let [_, writer] = database.pools();
    let mut transaction = writer.begin_with("BEGIN IMMEDIATE").await.unwrap();
    let there: i64 = sqlx::query_scalar("SELECT count(*) FROM session")
        .fetch_one(&mut *transaction)
        .await
        .unwrap();
    let members = if there == 0 { 0..MEMBERS } else { 0..0 };
    for member in members {
        let id = sqlx::query(
            "INSERT INTO member (name, name_key, password_hash, is_secretary, joined_at)
             VALUES (?1, ?1, '$argon2id$', 0, unixepoch())",
        )
        .bind(format!("member {member}"))
        .execute(&mut *transaction)
        .await
        .unwrap()
        .last_insert_rowid();
        sqlx::query(
            "INSERT INTO session (token_hash, number, member_id, made_at, seen_at, proved_at)
             VALUES (?, ?, ?, unixepoch(), unixepoch(), unixepoch())",
        )
        .bind(token(member).hash().bytes().to_vec())
        .bind(i64::from(member) + 1)
        .bind(id)
        .execute(&mut *transaction)
        .await
        .unwrap();
    }
    transaction.commit().await.unwrap();
    database.close().await;
}
