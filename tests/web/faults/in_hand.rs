//! F20: many long forms at once, and their answers, which nobody fetches, stay within a budget; a
//! client that is told "too large" can read it.

use std::io::{Read, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::time::Duration;

use tokio::net::TcpSocket;

use super::client::{connect, get, read, send, status};
use super::in_process::beside;
use super::running::Running;

const FORM: &str = "Host: x\r\nSec-Fetch-Site: same-origin\r\nConnection: close\r\n\
                    Content-Type: application/x-www-form-urlencoded\r\n";

/// A form of nobody who is signed in: the page gives all of it back, each sign of it as six.
fn form(length: usize) -> Vec<u8> {
    let text = format!("title=x&text={}", "\"".repeat(length - 13));
    let head = format!("POST /notes/new HTTP/1.1\r\n{FORM}Content-Length: {length}\r\n\r\n");
    [head.as_bytes(), text.as_bytes()].concat()
}

/// Sends it, and fetches no more of the answer than its first bytes.
fn first_of(stream: &mut TcpStream, form: &[u8]) -> u16 {
    let _ = stream.write_all(form);
    let mut first = [0; 12];
    stream.read_exact(&mut first).unwrap();
    status(&String::from_utf8_lossy(&first))
}

#[tokio::test(flavor = "multi_thread")]
async fn f20_sixty_long_forms_and_their_unread_answers_take_little_memory() {
    let server = Running::start();
    let address = server.address;
    get(address, "/notes");
    let before = server.forget_peak_memory();
    let clients = (0..60_u8).map(|number| {
        beside(move || {
            let mut stream = connect(address);
            // As a proxy says that these are two households.
            let household = format!("X-Forwarded-For: 192.0.2.{}\r\n", number % 2);
            let whole = String::from_utf8(form(if number < 20 { 2_000_000 } else { 250_000 }));
            let whole =
                whole.unwrap().replacen("Host: x\r\n", &format!("Host: x\r\n{household}"), 1);
            let told = first_of(&mut stream, whole.as_bytes());
            (stream, told)
        })
    });
    let mut held = Vec::new();
    for client in clients.collect::<Vec<_>>() {
        held.push(client.await);
    }
    let more = server.peak_memory() - before;
    println!("{more} kB more at the peak");
    assert!(more <= 100 * 1024, "{more} kB more at the peak");
    let count = |wanted: u16| held.iter().filter(|(_, told)| *told == wanted).count();
    assert_eq!(count(413), 20, "2 MB is more than any form");
    assert_eq!(count(401) + count(503), 40);
    assert!(count(401) >= 3 && count(503) >= 3, "{} taken, {} not", count(401), count(503));
    // Another household has room, and all have it again once the answers are gone.
    let other = String::from_utf8(form(60_000)).unwrap();
    let other = other.replacen("Host: x\r\n", "Host: x\r\nX-Forwarded-For: 198.51.100.1\r\n", 1);
    let answer = beside(move || send(address, other.as_bytes())).await;
    assert_eq!(status(&answer), 401, "{}", &answer[..200]);
    drop(held);
    let answer = beside(move || {
        std::thread::sleep(Duration::from_millis(500));
        send(address, &form(250_000))
    });
    assert_eq!(status(&answer.await), 401);
}

#[tokio::test(flavor = "multi_thread")]
async fn f20_a_small_form_has_room_beside_the_long_ones() {
    let server = Running::start();
    let address = server.address;
    // Declared, and never sent: the room is taken all the same.
    let mut held = Vec::new();
    for last in 2..20 {
        let socket = TcpSocket::new_v4().unwrap();
        socket.bind((Ipv4Addr::new(127, 0, 0, last), 0).into()).unwrap();
        let stream = socket.connect(address).await.unwrap().into_std().unwrap();
        stream.set_nonblocking(false).unwrap();
        (&stream).write_all(&form(250_000)[..1_000]).unwrap();
        held.push(stream);
        for _ in 0..9 {
            let mut stream = connect(address);
            let head = format!("POST /notes/new HTTP/1.1\r\nX-Forwarded-For: 192.0.2.{last}\r\n");
            stream.write_all(head.as_bytes()).unwrap();
            let rest = form(250_000);
            let line = rest.iter().position(|byte| *byte == b'\n').unwrap() + 1;
            stream.write_all(&rest[line..1_000]).unwrap();
            held.push(stream);
        }
    }
    let refused = beside(move || send(address, &form(250_000))).await;
    assert_eq!(status(&refused), 503, "{refused}");
    assert!(refused.contains("retry-after: 5") && refused.contains("send it again"), "{refused}");
    let signed = beside(move || {
        let body = "name=Enid&password=some+words+or+other";
        let length = body.len();
        let asked =
            format!("POST /sign-in HTTP/1.1\r\n{FORM}Content-Length: {length}\r\n\r\n{body}");
        [send(address, asked.as_bytes()), get(address, "/notes"), get(address, "/readyz")]
    });
    assert_eq!(signed.await.map(|answer| status(&answer)), [422, 200, 200]);
    drop(held);
}

/// Browsers read the answer after all is sent: the connection must not be reset before.
#[tokio::test(flavor = "multi_thread")]
async fn f20_too_large_is_read_by_a_client_that_pauses_before_its_body() {
    let server = Running::start();
    let address = server.address;
    for path in ["/sign-in", "/notes/new", "/plan"] {
        let answer = beside(move || {
            let mut stream = connect(address);
            let head = format!("POST {path} HTTP/1.1\r\n{FORM}Content-Length: 3000000\r\n\r\n");
            stream.write_all(head.as_bytes()).unwrap();
            std::thread::sleep(Duration::from_millis(300));
            for _ in 0..30 {
                stream.write_all(&[b'x'; 100_000]).unwrap();
            }
            read(&mut stream)
        });
        let answer = answer.await;
        assert_eq!(status(&answer), 413, "{path}: {answer}");
        assert!(answer.contains("too large"), "{answer}");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn f20_a_name_that_is_too_long_is_not_given_back() {
    let server = Running::start();
    let address = server.address;
    let answer = beside(move || {
        let body = format!("name={}&password=words+of+mine", "%22long".repeat(1_000));
        let length = body.len();
        let asked =
            format!("POST /sign-in HTTP/1.1\r\n{FORM}Content-Length: {length}\r\n\r\n{body}");
        send(address, asked.as_bytes())
    });
    let answer = answer.await;
    assert_eq!(status(&answer), 422, "{answer}");
    assert!(
        !answer.contains("longlong") && !answer.contains("long&#34;long") && answer.len() < 20_000,
        "{} bytes",
        answer.len()
    );
}
