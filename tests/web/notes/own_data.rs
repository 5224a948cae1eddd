//! `/me/data.json`: everything a member gave and did is in it, no secret, and nothing that is another's.

use std::collections::{BTreeMap, BTreeSet};

use holewright_server::rules::notes::fields::DONE;
use serde_json::{Value, json};

use super::club::{Club, Person, Right};
use crate::support::NOW;

/// What only others wrote: it is in no file but theirs.
const OF_OTHERS: [&str; 5] = ["Cyril", "Una", "zirconium", "a burr in the eye", "cadmium"];

/// Where each column that hangs on a member stands in the file, or why it does not.
#[rustfmt::skip]
const COLUMNS: &[(&str, &str, Stands)] = &[
    ("member", "id", In("/member/number")),
    ("member", "name", In("/member/name")),
    ("member", "name_key", Out("the name again, folded")),
    ("member", "password_hash", Out("a secret")),
    ("member", "is_moderator", In("/member/is_moderator")),
    ("member", "is_inspector", In("/member/is_inspector")),
    ("member", "is_secretary", In("/member/is_secretary")),
    ("member", "totp_secret", In("/member/has_second_factor")),
    ("member", "totp_step", Out("which code was the last")),
    ("member", "joined_at", In("/member/joined_at")),
    ("member", "stopped_at", Out("who is stopped cannot ask")),
    ("member", "failures", In("/member/wrong_tries_since_sign_in")),
    ("member", "failed_at", In("/member/last_wrong_try_at")),
    ("member", "news_read_at", In("/member/news_read_at")),
    ("session", "token_hash", Out("a secret")),
    ("session", "number", In("/sessions/0/number")),
    ("session", "member_id", Out("the member")),
    ("session", "made_at", In("/sessions/0/made_at")),
    ("session", "seen_at", In("/sessions/0/seen_at")),
    ("session", "proved_at", In("/sessions/0/password_given_at")),
    ("session", "agent", In("/sessions/0/agent")),
    ("spare_code", "member_id", Out("the member")),
    ("spare_code", "mark", Out("a part of a secret")),
    ("spare_code", "code_hash", Out("a secret")),
    ("spare_code", "used_at", In("/member/spare_codes_left")),
    ("note", "id", In("/notes/0/number")),
    ("note", "author_id", Out("the member")),
    ("note", "form_key", Out("drawn by chance with the form")),
    ("note", "made_at", In("/notes/0/made_at")),
    ("note", "shown_version", In("/notes/0/wordings/0/state")),
    ("note", "shown_at", In("/notes/0/shown_at")),
    ("note", "withdrawn_at", In("/notes/0/withdrawn_at")),
    ("note", "withdrawn_why", In("/notes/0/withdrawn_why")),
    ("note", "withdrawn_by_another", In("/acts/0/by")),
    ("note", "hidden_at", In("/notes/0/hidden_at")),
    ("note", "confirmed_at", Out("when others judged it")),
    ("note_version", "id", Out("a number that no address has")),
    ("note_version", "note_id", Out("the note it stands in")),
    ("note_version", "state", In("/notes/0/wordings/0/state")),
    ("note_version", "is_pressure", In("/notes/0/wordings/0/is_pressure")),
    ("note_version", "is_warning", In("/notes/0/wordings/0/is_warning")),
    ("note_version", "title", In("/notes/0/wordings/0/title")),
    ("note_version", "text", In("/notes/0/wordings/0/text")),
    ("note_version", "made_at", In("/notes/0/wordings/0/made_at")),
    ("note_version", "saved_at", In("/notes/0/wordings/0/saved_at")),
    ("note_version", "decided_at", In("/notes/0/wordings/0/decided_at")),
    ("note_version", "decided_by", In("/decisions/0/note")),
    ("note_version", "turned_back_at", In("/acts/0/what")),
    ("note_version", "form_key", Out("drawn by chance with the form")),
    ("note_version", "mended_by", Out("another's, who decided; the wording is in it")),
    ("note_version", "mended_from", Out("a number that no address has")),
    ("note_version", "inspected_at", Out("when an inspector passed it or settled its reports")),
    ("note_version", "like_note", Out("follows from the words of both")),
    ("change_asked", "id", Out("a number that no address has")),
    ("change_asked", "note_id", In("/notes/0/changes_asked")),
    ("change_asked", "asked_by", Out("another's, and an act of theirs in their own file")),
    ("change_asked", "asked_at", In("/notes/0/changes_asked")),
    ("change_asked", "reason", In("/notes/0/changes_asked")),
    ("change_asked", "words", In("/notes/0/changes_asked")),
    ("undoable", "note_id", Out("kept for a minute, with what is in the file before and after it")),
    ("undoable", "what", Out("kept for a minute: the act is in the record")),
    ("undoable", "version_id", Out("a number that no address has")),
    ("undoable", "decided_by", Out("kept for a minute: the act is in the record")),
    ("undoable", "decided_at", Out("kept for a minute: the act is in the record")),
    ("undoable", "before", Out("kept for a minute: how the note stood before")),
    ("note_version", "reason", In("/notes/0/wordings/0/reason")),
    ("note_entry", "version_id", Out("the wording it stands in")),
    ("note_entry", "entry_id", In("/notes/0/wordings/0/belongs_to")),
    ("verdict", "note_id", In("/verdicts/0/note")),
    ("verdict", "member_id", Out("the member")),
    ("verdict", "version_id", In("/verdicts/0/is_of_shown_wording")),
    ("verdict", "worked", In("/verdicts/0/worked")),
    ("verdict", "material", In("/verdicts/0/material")),
    ("verdict", "size", In("/verdicts/0/size")),
    ("verdict", "is_elsewhere", Out("read from its material and size")),
    ("verdict", "made_at", In("/verdicts/0/made_at")),
    ("remark", "id", Out("a number that no address has")),
    ("remark", "note_id", In("/remarks/0/note")),
    ("remark", "version_id", In("/remarks/0/is_of_shown_wording")),
    ("remark", "member_id", Out("the member")),
    ("remark", "state", In("/remarks/0/state")),
    ("remark", "is_pressure", In("/remarks/0/is_pressure")),
    ("remark", "text", In("/remarks/0/text")),
    ("remark", "made_at", In("/remarks/0/made_at")),
    ("remark", "decided_at", In("/remarks/0/decided_at")),
    ("remark", "decided_by", In("/decided_remarks/0/note")),
    ("remark", "reason", In("/remarks/0/reason")),
    ("feed", "member_id", Out("the member")),
    ("feed", "token_hash", Out("a secret")),
    ("feed", "made_at", In("/feed/made_at")),
    ("safety_report", "id", Out("a number that no address has")),
    ("safety_report", "note_id", In("/reports/0/note")),
    ("safety_report", "member_id", Out("the member")),
    ("safety_report", "kind", Out("follows from a right and from the text")),
    ("safety_report", "text", In("/reports/0/text")),
    ("safety_report", "made_at", In("/reports/0/made_at")),
    ("safety_report", "settled_at", In("/reports/0/settled_at")),
    ("safety_report", "settled_by", In("/settled_reports/0/note")),
    ("safety_report", "hid", Out("follows from the reports of the note")),
    ("safety_report", "showed_at", Out("when the note showed again: the author is told")),
    ("correction", "id", Out("a number that no address has")),
    ("correction", "note_id", In("/corrections/0/note")),
    ("correction", "text", In("/corrections/0/text")),
    ("correction", "made_by", Out("the member")),
    ("correction", "made_at", In("/corrections/0/made_at")),
    ("act", "id", Out("a number that no address has")),
    ("act", "at", In("/acts/0/at")),
    ("act", "member_id", In("/acts/0/by")),
    ("act", "member_name", Out("the member, or another")),
    ("act", "what", In("/acts/0/what")),
    ("act", "subject", In("/acts/0/subject")),
    ("act", "detail", In("/acts/0/detail")),
    ("slip", "token_hash", Out("a secret")),
    ("slip", "code_hash", Out("a secret")),
    ("slip", "purpose", In("/acts/0/what")),
    ("slip", "member_id", In("/acts/0/subject")),
    ("slip", "is_moderator", Out("another's, who is to join")),
    ("slip", "is_inspector", Out("another's, who is to join")),
    ("slip", "is_secretary", Out("another's, who is to join")),
    ("slip", "meant_for", Out("another's, who is to join")),
    ("slip", "made_by", In("/acts/0/by")),
    ("slip", "made_at", In("/acts/0/at")),
    ("slip", "ends_at", Out("an hour, a week or a fortnight later")),
    ("slip", "used_at", Out("the act of joining, or of a new password")),
];

/// The parts of the file, and the words of the privacy page that each of them keeps.
const PARTS: [(&str, &str); 12] = [
    ("member", "Your rights, the day you joined, how often a wrong password was tried"),
    ("sessions", "One line for each browser you are signed in with"),
    ("notes", "Your notes with all their wordings, drafts and those that were not taken too"),
    ("verdicts", "Your verdicts on others’ notes"),
    ("feed", "a feed of your own: the server keeps the hash of its address"),
    ("remarks", "Your remarks on notes"),
    ("decided_remarks", "the remarks they decided about"),
    ("reports", "reports you sent"),
    ("corrections", "the corrections they made"),
    ("decisions", "the wordings they decided about"),
    ("settled_reports", "the reports they settled"),
    ("acts", "of the record the acts that are yours or were done to you and your notes"),
];

enum Stands {
    /// At this place of the file.
    In(&'static str),
    /// Not in it, for this reason.
    Out(&'static str),
}
use Stands::{In, Out};

/// A club in which everything has happened to everybody: Ada writes in every state, Bert moderates.
struct Happened {
    club: Club,
    ada: Person,
    bert: Person,
    cyril: Person,
    una: Person,
}

impl Happened {
    async fn all() -> Self {
        let club = Club::open().await;
        let ada = club.join("Ada Penn", Right::None).await;
        let bert = club.join("Bert Stone", Right::Moderator).await;
        let cyril = club.join("Cyril Marsh", Right::None).await;
        let una = club.join("Una Oakes", Right::Secretary).await;
        let happened = Self { club, ada, bert, cyril, una };
        happened.notes_of_ada().await;
        happened.what_others_wrote().await;
        happened.what_the_secretary_did().await;
        let feed = [("do", "make")];
        let made = happened.club.post("/me/feed", Some(&happened.ada), &feed).await;
        assert_eq!(made.status.as_u16(), 200, "{}", made.body);
        happened
    }

    /// Note 1: shown, replaced, a draft on the desk. 2: declined. 3: waits for the inspector. 4: a
    /// draft sent back. 5: withdrawn.
    async fn notes_of_ada(&self) {
        let Self { club, ada, bert, .. } = self;
        let first = [
            ("title", "Tapping 4 BA"),
            ("text", "The **tap** squealed."),
            ("material", "brass, free-cutting"),
            ("thread", "4 BA"),
            ("drill", "No. 32"),
            ("depth", "6 mm"),
            ("lubricant", "none"),
            ("speed", "slow"),
            ("machine", "bench drill"),
            ("on", "gunmetal"),
        ];
        let note = club.shown(ada, bert, &first).await;
        assert_eq!(note, 1);
        self.edit(note, &[("title", "Tapping 4 BA"), ("text", "Second wording.")], "send").await;
        club.decide(bert, note, ("pass", "")).await;
        self.edit(note, &[("title", "Tapping 4 BA"), ("text", "Third wording.")], "draft").await;

        let declined = club.send_in(ada, &[("title", "Known"), ("text", "Old hat.")]).await;
        club.decide(bert, declined, ("decline", "Known already.")).await;
        club.send_in(ada, &[("title", "Bushes"), ("text", "For the boiler barrel.")]).await;
        let back = club.send_in(ada, &[("title", "Vague"), ("text", "It went well.")]).await;
        club.decide(bert, back, ("change", "Say in what.")).await;
        let gone = club.shown(ada, bert, &[("title", "Wrong"), ("text", "No drill at all.")]).await;
        let address = format!("/notes/{gone}/withdraw");
        let answer = club.post(&address, Some(ada), &[("why", "I was mistaken.")]).await;
        assert_eq!(answer.status.as_u16(), 303, "{}", answer.body);
    }

    async fn edit(&self, note: i64, fields: &[(&str, &str)], what: &str) {
        let all: Vec<_> = fields.iter().copied().chain([("do", what)]).collect();
        let answer = self.club.post(&format!("/notes/{note}/edit"), Some(&self.ada), &all).await;
        assert_eq!(answer.status.as_u16(), 303, "{}", answer.body);
    }

    /// Note 6 is Cyril's: Ada judges and reports it, he hers; Bert settles and corrects hers.
    async fn what_others_wrote(&self) {
        let Self { club, ada, bert, cyril, .. } = self;
        let text = [("title", "Turning zirconium"), ("text", "With cadmium plate.")];
        let theirs = club.shown(cyril, bert, &text).await;
        assert_eq!(theirs, 6);
        let remark = [("remark", "It smokes.")];
        let answer = club.post("/notes/6/remark", Some(ada), &remark).await;
        assert_eq!(answer.status.as_u16(), 303, "{}", answer.body);
        let shown = [("remark", "1"), ("do", "show")];
        let answer = club.post("/queue/remarks", Some(bert), &shown).await;
        assert_eq!(answer.status.as_u16(), 303, "{}", answer.body);
        for (by, note, metal, danger) in [
            (ada, 6, "gunmetal", "The swarf burns."),
            (cyril, 1, "cadmium", "It left a burr in the eye."),
        ] {
            let verdict = [("found", "did-not"), ("material", metal), ("size", "4 BA")];
            club.post(&format!("/notes/{note}/verdict"), Some(by), &verdict).await;
            let report = [("danger", danger)];
            let answer = club.post(&format!("/notes/{note}/report"), Some(by), &report).await;
            assert_eq!(answer.status.as_u16(), 303, "{}", answer.body);
        }
        let settled = club.decide(bert, 1, ("settle", "")).await;
        assert_eq!(settled.status.as_u16(), 303, "{}", settled.body);
        let version = club.version(1, "shown").await.to_string();
        let said = [("version", version.as_str()), ("correction", "Deburr it first.")];
        let answer = club.post("/notes/1/correct", Some(bert), &said).await;
        assert_eq!(answer.status.as_u16(), 303, "{}", answer.body);
    }

    /// Una makes slips and stops Cyril; Ada has a second factor.
    async fn what_the_secretary_did(&self) {
        let Self { club, ada, cyril, una, .. } = self;
        club.post("/people/invite", Some(una), &[("meant_for", "Percy")]).await;
        for (whom, what) in [(ada, "reset"), (cyril, "stop")] {
            club.post(&format!("/people/{}", whom.id), Some(una), &[("do", what)]).await;
        }
        let [_, writer] = club.app.database.pools();
        sqlx::query(
            "UPDATE member SET totp_secret = CAST('secret-in-the-device' AS BLOB) WHERE id = ?",
        )
        .bind(ada.id)
        .execute(writer)
        .await
        .unwrap();
    }

    async fn file_of(&self, person: &Person) -> Value {
        let answer = self.club.get("/me/data.json", Some(person)).await;
        assert_eq!(answer.status.as_u16(), 200, "{}", answer.body);
        answer.json()
    }
}

/// The acts as they stand in a file, without their times.
fn acts(file: &Value) -> Vec<[&str; 4]> {
    let acts = file["acts"].as_array().unwrap().iter();
    acts.map(|act| ["by", "what", "subject", "detail"].map(|key| act[key].as_str().unwrap()))
        .collect()
}

#[tokio::test]
async fn a_member_gets_every_note_in_every_state_with_all_its_wordings() {
    let happened = Happened::all().await;
    let file = happened.file_of(&happened.ada).await;
    let notes = file["notes"].as_array().unwrap();
    let wordings = notes.iter().map(|note| {
        let wordings = note["wordings"].as_array().unwrap().iter();
        let short = |key: &str, wording: &Value| wording[key].as_str().unwrap().to_owned();
        wordings
            .map(|wording| ["state", "text", "reason"].map(|key| short(key, wording)).join(" | "))
            .collect::<Vec<_>>()
    });
    assert_eq!(
        wordings.collect::<Vec<_>>(),
        [
            &[
                "replaced | The **tap** squealed. | ",
                "shown | Second wording. | ",
                "draft | Third wording. | "
            ][..],
            &["declined | Old hat. | Known already."],
            &["waiting | For the boiler barrel. | "],
            &["draft | It went well. | Say in what."],
            &["shown | No drill at all. | "],
        ]
    );
    let mut whole = json!({
        "state": "replaced",
        "is_pressure": false,
        "is_warning": false,
        "title": "Tapping 4 BA",
        "text": "The **tap** squealed.",
        "material": "brass, free-cutting",
        "thread": "4 BA",
        "drill": "No. 32",
        "depth": "6 mm",
        "lubricant": "none",
        "speed": "slow",
        "machine": "bench drill",
        "belongs_to": ["drills/number/32", "materials/gunmetal", "threads/ba/4"],
        "made_at": NOW,
        "saved_at": NOW,
        "decided_at": NOW,
        "reason": "",
    });
    // What was not filled in is there too.
    for field in DONE {
        whole.as_object_mut().unwrap().entry(field.name).or_insert(json!(""));
    }
    assert_eq!(notes[0]["wordings"][0], whole);
    assert_eq!(notes[2]["wordings"][0]["is_pressure"], true);
    assert_eq!(notes[2]["shown_at"], Value::Null);
    assert_eq!(notes[4]["withdrawn_why"], "I was mistaken.");
    assert_eq!([&notes[0]["made_at"], &notes[0]["shown_at"]], [NOW, NOW]);

    let verdict = json!({ "note": 6, "worked": false, "material": "gunmetal", "size": "4 BA", "made_at": NOW, "is_of_shown_wording": true });
    assert_eq!(file["verdicts"], json!([verdict]));
    let report =
        json!({ "note": 6, "text": "The swarf burns.", "made_at": NOW, "settled_at": null });
    assert_eq!(file["reports"], json!([report]));
    let remark = json!({
        "note": 6, "state": "shown", "is_pressure": false, "is_of_shown_wording": true, "text": "It smokes.",
        "made_at": NOW, "decided_at": NOW, "reason": "",
    });
    assert_eq!(file["remarks"], json!([remark]));
    assert_eq!(file["feed"], json!({ "made_at": NOW }));
    for part in ["corrections", "decisions", "settled_reports"] {
        assert_eq!(file[part], json!([]), "{part}");
    }
    assert_eq!(file["member"]["has_second_factor"], true);
    assert_eq!(file["sessions"][0]["password_given_at"], NOW);
    assert_eq!(
        acts(&file),
        [
            ["you", "note-begun", "note/1", ""],
            ["you", "note-sent-in", "note/1", "Tapping 4 BA"],
            ["another", "note-shown", "note/1", ""],
            ["you", "note-sent-in", "note/1", "Tapping 4 BA"],
            ["another", "note-shown", "note/1", ""],
            ["you", "note-begun", "note/2", ""],
            ["you", "note-sent-in", "note/2", "Known"],
            ["another", "note-declined", "note/2", "Known already."],
            ["you", "note-begun", "note/3", ""],
            ["you", "note-sent-in", "note/3", "Bushes"],
            ["you", "note-begun", "note/4", ""],
            ["you", "note-sent-in", "note/4", "Vague"],
            ["another", "note-change-asked", "note/4", "Say in what."],
            ["you", "note-begun", "note/5", ""],
            ["you", "note-sent-in", "note/5", "Wrong"],
            ["another", "note-shown", "note/5", ""],
            ["you", "note-withdrawn", "note/5", "I was mistaken."],
            ["you", "note-remarked", "note/6", "It smokes."],
            ["you", "note-judged", "note/6", "did not work"],
            ["you", "note-reported", "note/6", "The swarf burns."],
            ["another", "note-report-settled", "note/1", ""],
            ["another", "note-corrected", "note/1", "Deburr it first."],
            ["another", "slip-to-reset", "member/1", ""],
            ["you", "feed-made", "member/1", ""],
        ]
    );
}

#[tokio::test]
async fn a_moderator_gets_what_they_decided_and_said() {
    let happened = Happened::all().await;
    let file = happened.file_of(&happened.bert).await;
    assert_eq!(
        file["corrections"],
        json!([{ "note": 1, "text": "Deburr it first.", "made_at": NOW }])
    );
    assert_eq!(file["settled_reports"], json!([{ "note": 1, "settled_at": NOW }]));
    let decided = |note, reason| json!({ "note": note, "decided_at": NOW, "reason": reason });
    let decisions: BTreeMap<String, usize> =
        file["decisions"].as_array().unwrap().iter().fold(BTreeMap::new(), |mut all, one| {
            *all.entry(one.to_string()).or_default() += 1;
            all
        });
    let expected = [
        (decided(1, ""), 2),
        (decided(2, "Known already."), 1),
        (decided(4, "Say in what."), 1),
        (decided(5, ""), 1),
        (decided(6, ""), 1),
    ];
    let expected: BTreeMap<String, usize> =
        expected.into_iter().map(|(one, times)| (one.to_string(), times)).collect();
    assert_eq!(decisions, expected);
    assert_eq!(file["notes"], json!([]));
    assert!(acts(&file).iter().all(|[by, ..]| *by == "you"), "{file}");
}

#[tokio::test]
async fn no_secret_and_nothing_of_others_is_in_a_members_file() {
    let happened = Happened::all().await;
    let text = happened.file_of(&happened.ada).await.to_string();
    let cookie = happened.ada.cookie().split('=').nth(1).unwrap();
    for secret in ["argon2", "secret-in-the-device", "token", "hash", cookie] {
        assert!(!text.contains(secret), "{secret}: {text}");
    }
    for theirs in OF_OTHERS {
        assert!(!text.contains(theirs), "{theirs}: {text}");
    }
    assert!(!text.contains("Bert"), "{text}");

    // What a secretary did to somebody says that it was done, and not to whom.
    let file = happened.file_of(&happened.una).await;
    assert_eq!(
        acts(&file),
        [
            ["you", "slip-to-join", "", ""],
            ["you", "slip-to-reset", "another member", ""],
            ["you", "member-stopped", "another member", ""],
        ]
    );
    for name in ["Ada", "Bert", "Cyril", "Percy"] {
        assert!(!file.to_string().contains(name), "{name}: {file}");
    }
}

#[tokio::test]
async fn every_column_that_hangs_on_a_member_is_in_the_file_or_left_out_for_a_reason() {
    let happened = Happened::all().await;
    let [readers, _] = happened.club.app.database.pools();
    let held: Vec<(String, String)> = sqlx::query_as(
        "SELECT tables.name, columns.name FROM sqlite_schema AS tables
         JOIN pragma_table_info(tables.name) AS columns
         WHERE tables.type = 'table' AND (tables.name IN ('member', 'note_version', 'note_entry') OR EXISTS
           (SELECT 1 FROM pragma_foreign_key_list(tables.name) AS reference WHERE reference.\"table\" = 'member'))",
    )
    .fetch_all(readers)
    .await
    .unwrap();
    let held: BTreeSet<(&str, &str)> =
        held.iter().map(|(table, column)| (table.as_str(), column.as_str())).collect();
    let listed: Vec<(&str, &str)> =
        COLUMNS.iter().map(|(table, column, _)| (*table, *column)).collect();
    // Those of what was done are looked at in `fields.rs`.
    let done = DONE.map(|field| ("note_version", field.name));
    assert_eq!(held, listed.into_iter().chain(done).collect());
    // A moderator's file has the parts that an author's has empty.
    let files = [happened.file_of(&happened.ada).await, happened.file_of(&happened.bert).await];
    for (table, column, stands) in COLUMNS {
        match stands {
            In(place) => {
                let is_there = files.iter().any(|file| file.pointer(place).is_some());
                assert!(is_there, "{table}.{column} is not at {place}");
            }
            Out(reason) => assert!(!reason.is_empty(), "{table}.{column}"),
        }
    }
}

#[tokio::test]
async fn the_privacy_page_and_the_file_agree() {
    let happened = Happened::all().await;
    let file = happened.file_of(&happened.ada).await;
    let parts: BTreeSet<&str> = file.as_object().unwrap().keys().map(String::as_str).collect();
    assert_eq!(parts, PARTS.iter().map(|(part, _)| *part).collect());
    let page = happened.club.get("/privacy", None).await.body;
    for (part, words) in PARTS {
        assert!(page.contains(words), "{part}: {page}");
    }
    for left_out in
        ["the hashes and the secret of the second factor", "what is others’: their names"]
    {
        assert!(page.contains(left_out), "{left_out}: {page}");
    }
}
