//! The form of a note, sent as it may be: what can be kept reads back to itself, out of the database
//! too; what cannot comes back just as it was typed.

use std::collections::BTreeMap;

use holewright_server::demo;
use holewright_server::rules::notes::fields::{DONE, Done};
use holewright_server::rules::notes::meant;
use holewright_server::rules::notes::wording::{Aim, Typed, Wording};
use proptest::prelude::*;
use proptest::sample::select;
use tokio::runtime::Runtime;

use super::markdown::markdown;
use super::slips::slipped;
use super::timed::{Outcome, hunt};
use crate::notes::club::{Club, Person, Right};
use crate::page::filled;
use crate::support::Answer;

/// What is typed into a line of the form, besides what is right.
const PIECES: &[&str] = &[
    "gunmetal",
    "copper",
    "4 BA",
    "M3",
    "No. 43",
    "3.3 mm",
    "7/64",
    "threads/ba/5",
    "/threads/ba",
    "calculators/speeds",
    ",",
    ";",
    " ",
    "\t",
    "\r\n",
    "\n",
    "\"",
    "'",
    "<",
    "</textarea>",
    "&amp;",
    "&",
    "=",
    "%",
    "+",
    "\u{202e}",
    "\u{2066}",
    "\u{200b}",
    "\u{7f}",
    "\0",
    "é",
    "İ",
    "🔩",
    "boiler",
    "steam",
    "1/4",
    "{{",
    "'; --",
];

/// A form, and the button it is sent with.
#[derive(Clone, Debug)]
struct Sent {
    typed: Typed,
    button: &'static str,
}

fn form() -> impl Strategy<Value = Sent> {
    let rows: Vec<Typed> = demo::notes().iter().map(|row| row.typed(String::new())).collect();
    let line = |of: &dyn Fn(&Typed) -> &str| {
        let right: Vec<String> = rows.iter().map(|row| of(row).to_owned()).collect();
        let right = select(right).boxed();
        // Most lines are right: one that is not refuses the whole form.
        prop_oneof![
            6 => right.clone(),
            2 => slipped(right, PIECES),
            1 => Just(String::new()),
            1 => (select(PIECES), 0_usize..130).prop_map(|(piece, count)| piece.repeat(count)),
        ]
    };
    let said = (line(&|row| &row.title), markdown(), line(&|row| &row.on));
    let done: Vec<_> = DONE.map(|field| line(&|row| row.done.text(field.name))).into();
    let buttons = select(vec!["preview", "draft", "send", "", "other"]);
    (said, done, any::<bool>(), buttons).prop_map(|(said, done, is_pressure, button)| {
        let (title, text, on) = said;
        let mut done = done.into_iter();
        let done = Done::from_each(|_| done.next().unwrap_or_default());
        let form_key = String::new();
        let made_from = String::new();
        let is_warning = !is_pressure;
        let typed = Typed {
            form_key,
            made_from,
            title,
            text,
            done,
            on,
            is_pressure,
            is_warning,
            ..Typed::default()
        };
        Sent { typed, button }
    })
}

#[test]
fn a_form_is_kept_as_it_reads_or_comes_back_as_it_was_typed() {
    let runtime = Runtime::new().unwrap();
    let club = runtime.block_on(Club::open());
    let author = runtime.block_on(club.join("Ada Penn", Right::None));
    hunt("the form of a note", 4, form(), |sent| {
        for aim in [Aim::Draft, Aim::SendIn] {
            if let Ok(wording) = Wording::read(&sent.typed, aim) {
                let again = Wording::read(&wording.typed("key"), aim);
                prop_assert_eq!(again, Ok(wording));
            }
        }
        runtime.block_on(send(&club, &author, &sent))
    });
    let kept = runtime.block_on(club.count("SELECT count(*) FROM note"));
    assert!(kept > 1, "{kept} notes were kept");
}

async fn send(club: &Club, author: &Person, sent: &Sent) -> Result<Outcome, TestCaseError> {
    let aim = if sent.button == "send" { Aim::SendIn } else { Aim::Draft };
    let mut fields = lines(&sent.typed);
    fields.push(("do", sent.button));
    if sent.typed.is_pressure {
        fields.push(("pressure", "yes"));
    }
    if sent.typed.is_warning {
        fields.push(("warning", "yes"));
    }
    let answer = club.post("/notes/new", Some(author), &fields).await;
    let status = answer.status.as_u16();
    let wording = match Wording::read(&sent.typed, aim) {
        // What nearly names something is asked about before it is sent in.
        Ok(_) if aim == Aim::SendIn && is_asked(&sent.typed) => {
            prop_assert_eq!(status, 422, "{}", answer.body);
            holds(&answer, &sent.typed)?;
            return Ok(Outcome::taken_if(false));
        }
        Ok(wording) if sent.button != "preview" => wording,
        read => {
            prop_assert_eq!(status, if read.is_ok() { 200 } else { 422 }, "{}", answer.body);
            holds(&answer, &sent.typed)?;
            return Ok(Outcome::taken_if(read.is_ok()));
        }
    };
    prop_assert_eq!(status, 303, "{}", answer.body);
    let place = answer.header("location");
    let edit = match place.split_once("#note-") {
        Some((_, id)) => format!("/notes/{id}/edit"),
        None => place.to_owned(),
    };
    let form = club.get(&edit, Some(author)).await;
    prop_assert_eq!(form.status.as_u16(), 200, "{}", edit);
    holds(&form, &wording.typed(""))?;
    Ok(Outcome::Taken)
}

fn is_asked(typed: &Typed) -> bool {
    Wording::questions(typed).iter().any(|question| question.answer == meant::Answer::Open)
}

/// The lines of the form with their names.
fn lines(typed: &Typed) -> Vec<(&'static str, &str)> {
    let done = typed.done.each().map(|(field, typed)| (field.name, typed));
    let said = [("title", typed.title.as_str()), ("text", &typed.text), ("on", &typed.on)];
    said.into_iter().chain(done).collect()
}

/// The form on this page would be sent with just this in it.
fn holds(answer: &Answer, typed: &Typed) -> Result<(), TestCaseError> {
    let filled: BTreeMap<String, String> = filled(&answer.body).into_iter().collect();
    for (name, typed) in lines(typed) {
        let held = filled.get(name).map(|held| in_a_page(held));
        prop_assert_eq!(held, Some(in_a_page(typed)), "{}", name);
    }
    prop_assert_eq!(filled.contains_key("pressure"), typed.is_pressure);
    prop_assert_eq!(filled.contains_key("warning"), typed.is_warning);
    Ok(())
}

/// A text as a page can hold it: one kind of line end, and no null.
fn in_a_page(text: &str) -> String {
    text.replace("\r\n", "\n").replace('\r', "\n").replace('\0', "\u{fffd}")
}
