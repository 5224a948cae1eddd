//! Every act on a note in every state by everybody, against a table; and what the forms read.

use holewright_server::rules::auth::Rights;
use holewright_server::rules::notes::fields::Done;
use holewright_server::rules::notes::pressure::speaks_of_it;
use holewright_server::rules::notes::state::{
    Act, Last, NoteState, OnItsWay, Others, Refused, Subject, Who, after,
};
use holewright_server::rules::notes::wording::{Aim, Typed, Wording};

const ACTS: [Act; 20] = [
    Act::Save,
    Act::SendIn(Subject::Usual),
    Act::Pass,
    Act::AskForChange,
    Act::Decline,
    Act::Correct(Subject::Usual),
    Act::Correct(Subject::Pressure),
    Act::Withdraw,
    Act::Report(Subject::Usual),
    Act::Settle,
    Act::Judge(Subject::Usual),
    Act::Judge(Subject::Pressure),
    Act::TakeBack,
    Act::TakeAway,
    Act::HandOver,
    Act::TurnBack,
    Act::Mend(Subject::Usual),
    Act::Mend(Subject::Pressure),
    Act::Undo(LAST),
    Act::Remark(Subject::Usual),
];

const NOTHING: NoteState =
    NoteState { on_its_way: None, shown: None, hidden: None, is_withdrawn: false };
/// A decision about a usual note that waited, by whoever would undo it.
const LAST: Last = Last {
    before: NoteState { on_its_way: Some(OnItsWay::Waiting(Subject::Usual)), ..NOTHING },
    is_theirs: true,
    seconds: 5,
};

/// Who may, one letter an act of [`ACTS`], in order: `y` may, `-` may not as things stand (409), `n` not
/// theirs (403), `.` nothing is there for them (404).
#[rustfmt::skip]
const TABLE: [(&str, &str, &str); 54] = [
    // state            who           save send pass change decline correct (usual, pressure) withdraw report settle judge (the same) take-back take-away hand-over turn-back mend (usual, pressure) undo remark
    ("draft",           "author",     "yynnn--yn-nnn-nnnnn-"),
    ("draft",           "member",     "...................."),
    ("draft",           "moderator",  "..---.........-n--y."),
    ("draft",           "inspector",  "..---.........n---n."),
    ("draft",           "own",        "yy-----yn-nnn-nn--n-"),
    ("draft",           "alone",      "yy-----yn-nnn--n--y-"),
    ("waiting",         "author",     "yynnn--yn-nnn-nnnnn-"),
    ("waiting",         "member",     "...................."),
    ("waiting",         "moderator",  "..yyy--..-....ynyny."),
    ("waiting",         "inspector",  "..nnn.........n-nyn."),
    ("waiting",         "own",        "yynnn--yn-nnn-nnnnn-"),
    ("waiting",         "alone",      "yyyyy--yn-nnn-ynnny-"),
    ("pressure",        "author",     "yynnn--yn-nnn-nnnnn-"),
    ("pressure",        "member",     "...................."),
    ("pressure",        "moderator",  "..nyy--..-....-nnny."),
    ("pressure",        "inspector",  "..yyy--..-....nyyyn."),
    ("pressure",        "own",        "yynnn--yn-nnn-nnnnn-"),
    ("pressure",        "alone",      "yynyy--yn-nnn--nnny-"),
    ("shown",           "author",     "yynnnnnynnnnnnnnnnny"),
    ("shown",           "member",     "..nnnnnnynynynnnnnny"),
    ("shown",           "moderator",  "..---ynyy-ynyy-n--yy"),
    ("shown",           "inspector",  "..---nynynyyynn---ny"),
    ("shown",           "own",        "yy---nnynnnnnnnn--ny"),
    ("shown",           "alone",      "yy---ynyn-nnny-n--yy"),
    ("hidden",          "author",     "yynnnnnynnnnnnnnnnn-"),
    ("hidden",          "member",     "..nnnnnnyn--ynnnnnn-"),
    ("hidden",          "moderator",  "..---ynyyy--yyyn--y-"),
    ("hidden",          "inspector",  "..---nynyn--ynn---n-"),
    ("hidden",          "own",        "yy---nnynnnnnnnn--n-"),
    ("hidden",          "alone",      "yy---ynynynnnyyn--y-"),
    ("changed",         "author",     "yynnnnnynnnnnnnnnnny"),
    ("changed",         "member",     "..nnnnnnynynynnnnnny"),
    ("changed",         "moderator",  "..yyyynyy-ynyyynynyy"),
    ("changed",         "inspector",  "..nnnnynynyyynn-nyny"),
    ("changed",         "own",        "yynnnnnynnnnnnnnnnny"),
    ("changed",         "alone",      "yyyyyynyn-nnnyynnnyy"),
    ("fixed",       "author",      "yynnnnnynnnnnnnnnnn-"),
    ("fixed",       "member",      "..nnnnnnyn--ynnnnnn-"),
    ("fixed",       "moderator",   "..yyyynyyy--yyynyny-"),
    ("fixed",       "inspector",   "..nnnnynyn--ynn-nyn-"),
    ("fixed",       "own",         "yynnnnnynnnnnnnnnnn-"),
    ("fixed",       "alone",       "yyyyyynynynnnyynnny-"),
    ("burst",       "author",      "yynnnnnynnnnnnnnnnn-"),
    ("burst",       "member",      "..nnnnnnyn--ynnnnnn-"),
    ("burst",       "moderator",   "..nyyynyyn--yyynnny-"),
    ("burst",       "inspector",   "..ynnnyyyy--ynn-yyn-"),
    ("burst",       "own",         "yynnnnnynnnnnnnnnnn-"),
    ("burst",       "alone",       "yynyyynynnnnnyynnny-"),
    ("withdrawn",       "author",     "--------------------"),
    ("withdrawn",       "member",     "..------------------"),
    ("withdrawn",       "moderator",  "..------------------"),
    ("withdrawn",       "inspector",  "..------------------"),
    ("withdrawn",       "own",        "--------------------"),
    ("withdrawn",       "alone",      "--------------------"),
];

fn state_of(name: &str) -> NoteState {
    let usual = Some(Subject::Usual);
    let waiting = |subject| Some(OnItsWay::Waiting(subject));
    let nothing = NoteState::default();
    match name {
        "draft" => NoteState { on_its_way: Some(OnItsWay::Draft), ..nothing },
        "waiting" => NoteState { on_its_way: waiting(Subject::Usual), ..nothing },
        "pressure" => NoteState { on_its_way: waiting(Subject::Pressure), ..nothing },
        "shown" => NoteState { shown: usual, ..nothing },
        "hidden" => NoteState { shown: usual, hidden: usual, ..nothing },
        // Reported as a danger of pressure by the inspector, with a mended wording that waits.
        "burst" => NoteState { hidden: Some(Subject::Pressure), ..state_of("fixed") },
        "fixed" => NoteState {
            shown: usual,
            hidden: usual,
            on_its_way: waiting(Subject::Usual),
            ..nothing
        },
        "changed" => NoteState { shown: usual, on_its_way: waiting(Subject::Usual), ..nothing },
        "withdrawn" => NoteState { shown: usual, is_withdrawn: true, ..nothing },
        _ => panic!("{name}"),
    }
}

fn who(name: &str) -> Who {
    let rights = |moderator, inspector, secretary| Rights { moderator, inspector, secretary };
    let other = |rights| Who { is_author: false, rights, others: Others::Can };
    let own = |rights, others| Who { is_author: true, rights, others };
    match name {
        "author" => own(rights(false, false, false), Others::Can),
        "member" => other(rights(false, false, false)),
        "moderator" => other(rights(true, false, false)),
        "inspector" => other(rights(false, true, false)),
        // A secretary's own note, with a moderator in the club and without one.
        "own" => own(rights(false, false, true), Others::Can),
        "alone" => own(rights(false, false, true), Others::Nobody),
        _ => panic!("{name}"),
    }
}

const fn letter(result: Result<NoteState, Refused>) -> char {
    match result {
        Ok(_) => 'y',
        Err(Refused::NotYours) => '.',
        Err(Refused::Moderator | Refused::Inspector | Refused::OwnNote | Refused::Author) => 'n',
        Err(_) => '-',
    }
}

#[test]
fn every_act_in_every_state_by_everybody() {
    let mut wrong = Vec::new();
    for (state, name, expected) in TABLE {
        let found: String =
            ACTS.iter().map(|act| letter(after(*act, state_of(state), who(name)))).collect();
        if found != expected {
            wrong.push(format!("(\"{state}\", \"{name}\", \"{found}\") not {expected}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn each_act_leads_where_it_should() {
    let moderator = who("moderator");
    for (state, act, by, expected) in [
        ("draft", Act::SendIn(Subject::Usual), "author", state_of("waiting")),
        ("draft", Act::SendIn(Subject::Pressure), "author", state_of("pressure")),
        ("waiting", Act::Save, "author", state_of("draft")),
        ("waiting", Act::Pass, "moderator", state_of("shown")),
        ("waiting", Act::AskForChange, "moderator", state_of("draft")),
        ("waiting", Act::Decline, "moderator", NoteState::default()),
        ("shown", Act::SendIn(Subject::Usual), "author", state_of("changed")),
        ("changed", Act::Pass, "moderator", state_of("shown")),
        ("changed", Act::Decline, "moderator", state_of("shown")),
        ("shown", Act::Report(Subject::Usual), "member", state_of("hidden")),
        // A member’s word on pressure is a report like any other; the inspector’s is the inspector’s to settle.
        ("changed", Act::Report(Subject::Pressure), "member", state_of("fixed")),
        ("changed", Act::Report(Subject::Pressure), "inspector", state_of("burst")),
        ("burst", Act::Report(Subject::Usual), "member", state_of("burst")),
        ("fixed", Act::Pass, "moderator", state_of("shown")),
        // What answers the inspector’s report is the inspector’s from then on.
        (
            "burst",
            Act::Pass,
            "inspector",
            NoteState { shown: Some(Subject::Pressure), ..state_of("shown") },
        ),
        ("waiting", Act::HandOver, "moderator", state_of("pressure")),
        ("pressure", Act::TurnBack, "inspector", state_of("waiting")),
        ("hidden", Act::Settle, "moderator", state_of("shown")),
        ("changed", Act::Withdraw, "author", state_of("withdrawn")),
        ("shown", Act::Judge(Subject::Usual), "member", state_of("shown")),
    ] {
        assert_eq!(after(act, state_of(state), who(by)), Ok(expected), "{state} {act:?}");
    }
    let pressure = NoteState { shown: Some(Subject::Pressure), ..state_of("hidden") };
    // What follows a text that is the inspector's is the inspector's too.
    let sent = after(Act::SendIn(Subject::Usual), pressure, who("author")).unwrap();
    assert_eq!(sent.on_its_way, Some(OnItsWay::Waiting(Subject::Pressure)));
    assert_eq!(after(Act::Settle, pressure, moderator), Err(Refused::Inspector));
}

#[test]
fn words_of_pressure_are_heard_in_any_dress() {
    for (text, expected) in [
        ("Boiler bushes", true),
        ("under STEAM", true),
        ("a pressure of 80", true),
        ("tested at 160 psi", true),
        ("safety-valve seat", true),
        ("the water gauge", true),
        ("superheated", true),
        ("compressed air at the chip", true),
        ("bar stock, valve gear, water pump", false),
        ("a firm hand on the drill", false),
        ("steel", false),
    ] {
        assert_eq!(speaks_of_it(text), expected, "{text}");
    }
}

fn typed(title: &str, text: &str, on: &str) -> Typed {
    Typed { title: title.into(), text: text.into(), on: on.into(), ..Typed::default() }
}

#[test]
fn a_form_is_read_as_it_was_meant() {
    let mut form =
        typed("  Two \u{202e}words\n ", "One\r\ntwo\u{0}  ", "5ba, Gunmetal; No 43\n4 BA");
    form.done = Done::from_each(|field| match field.name {
        "material" => "gunmetal".into(),
        "drill" => "about 3 mm".into(),
        _ => String::new(),
    });
    let wording = Wording::read(&form, Aim::SendIn).unwrap();
    assert_eq!((wording.title.as_str(), wording.text.as_str()), ("Two words", "One\ntwo"));
    assert_eq!(wording.done.text("drill"), "about 3 mm", "kept as typed");
    let ids: Vec<&str> = wording.things.iter().map(|thing| thing.id.as_str()).collect();
    assert_eq!(ids, ["drills/number/43", "materials/gunmetal", "threads/ba/4", "threads/ba/5"]);
    assert_eq!(wording.subject, Subject::Usual);
    // What was read can be typed again.
    let again = Wording::read(&wording.typed("key"), Aim::SendIn).unwrap();
    assert_eq!(again, wording);
    form.is_pressure = true;
    assert_eq!(Wording::read(&form, Aim::Draft).unwrap().subject, Subject::Pressure);
}

#[test]
fn a_form_that_cannot_be_read_says_why_at_the_field() {
    let long = "x".repeat(20_001);
    for (form, aim, fields) in [
        (typed("", "", ""), Aim::SendIn, &["title", "text"][..]),
        (typed("", "", ""), Aim::Draft, &[]),
        (typed("T", &long, ""), Aim::Draft, &["text"]),
        (typed(&long, "T", ""), Aim::Draft, &["title"]),
        (typed("T", "T", "1/4, unobtainium"), Aim::SendIn, &["on", "on"]),
        (typed("T", "T", &"5 BA,".repeat(13)), Aim::SendIn, &["on"]),
    ] {
        let errors = Wording::read(&form, aim).err().unwrap_or_default();
        let found: Vec<&str> = errors.iter().map(|error| error.field).collect();
        assert_eq!(found, fields, "{aim:?}");
        assert!(errors.iter().all(|error| error.message.ends_with('.')), "{errors:?}");
    }
}
