//! What a club begins with: its members alone, or a database of an older schema with notes in it, which the
//! first start brings up to date.

use std::collections::BTreeMap;

use holewright_server::db::{Database, FILE_NAME};
use holewright_server::rules::auth::Password as Typed;
use holewright_server::rules::auth::name::key;
use holewright_server::rules::auth::password::Hashing;

use super::super::notes::{self, block};
use super::super::upgrades::{RELEASED, released};
use super::house::{Known, typed};
use super::model::{Club, Member, Name, Note, Password, Remark, Rights, Word, Wording};
use crate::support::Folder;

/// The members at the beginning, and what they may do; behind them a stranger.
pub(super) const MEMBERS: [(&str, Rights); 5] = [
    ("Ada Penn", Rights { moderator: false, inspector: false, secretary: false }),
    ("Bert Stone", Rights { moderator: false, inspector: false, secretary: false }),
    ("Cyril Moss", Rights { moderator: true, inspector: false, secretary: false }),
    ("Dora Vale", Rights { moderator: false, inspector: true, secretary: false }),
    ("Una Oakes", Rights { moderator: false, inspector: false, secretary: true }),
];

/// A folder to copy, and what the model and the tests know of it.
pub(super) struct Begin {
    pub(super) folder: Folder,
    pub(super) club: Club,
    pub(super) known: Known,
}

/// What the club is called.
pub(super) fn club(name: Name) -> String {
    format!("Society of hole {name}")
}

/// A password as it is typed.
pub(super) fn password(number: Password) -> String {
    format!("nine quiet teapots {number}")
}

fn members() -> Vec<Member> {
    let member = |rights| Member { rights, password: Some(0), ..Member::default() };
    let mut members: Vec<Member> = MEMBERS.map(|(_, rights)| member(rights)).into();
    members.push(Member::default());
    members
}

fn insert_members() -> String {
    let hash = block(async { Hashing::default().hash(Typed::typed(&password(0))).await.unwrap() });
    let row = |(place, (name, rights)): (usize, &(&str, Rights))| {
        let Rights { moderator, inspector, secretary } = *rights;
        format!(
            "INSERT INTO member (id, name, name_key, password_hash, is_moderator, is_inspector,
               is_secretary, joined_at)
             VALUES ({}, '{name}', '{}', '{hash}', {moderator}, {inspector}, {secretary},
               unixepoch());",
            place + 1,
            key(name)
        )
    };
    MEMBERS.iter().enumerate().map(row).collect()
}

impl Begin {
    /// The members.
    pub(super) fn new() -> Self {
        let folder = Folder::new();
        let data = folder.path().join("data");
        block(async { Database::open(&data).await.unwrap().close().await });
        notes::execute(&data.join(FILE_NAME), &insert_members());
        let club = Club { members: members(), ..Club::default() };
        Self { folder, club, known: Known::default() }
    }

    /// As [`Begin::older`], brought up to date: the schema of today. Of each member as many remarks wait as are taken,
    /// or one less.
    pub(super) fn lively() -> Self {
        let mut begin = Self::older();
        let data = begin.folder.path().join("data");
        block(async { Database::open(&data).await.unwrap().close().await });
        let mut sql = String::new();
        for (who, waits) in WAITING.into_iter().enumerate() {
            for number in 0..waits {
                // Five on each of the notes that nothing else is done to.
                let place = BUSY + number / 5;
                let (note, member) = (begin.known.notes[place], who + 1);
                begin.club.notes[place].remarks.push(Remark::waiting(NO_WORD, who));
                sql.push_str(&format!(
                    "INSERT INTO remark (note_id, version_id, member_id, is_pressure, text, made_at)
                     SELECT id, shown_version, {member}, 0, 'So did mine, {number}', {MADE}
                     FROM note WHERE id = {note};"
                ));
            }
        }
        notes::execute(&data.join(FILE_NAME), &sql);
        begin
    }

    /// The members and their notes, of each kind one, as the last released schema held them.
    pub(super) fn older() -> Self {
        let folder = Folder::new();
        let data = folder.path().join("data");
        let (_, sql) = RELEASED.last().unwrap();
        released(&data, sql);
        let wording = |word| Some(Wording { word, pressure: false });
        let by = |author| Note { author: Some(author), ..Note::default() };
        let corrected = Note {
            shown: wording(9000),
            corrections: vec![9001],
            verdicts: BTreeMap::from([(1, (9000, true)), (2, (9000, false))]),
            desk: wording(9002),
            ..by(0)
        };
        let kept_back = Note { desk: wording(9003), ..by(0) };
        let changed = Note { shown: wording(9004), queue: wording(9005), ..by(1) };
        let hidden = Note { shown: wording(9006), reports: [(9007, Some(1))].into(), ..by(0) };
        let withdrawn = Note { shown: wording(9008), is_withdrawn: true, ..by(1) };
        let mut club_notes = vec![corrected, kept_back, changed, hidden, withdrawn];
        assert_eq!(club_notes.len(), BUSY);
        club_notes.extend((9010..9014).map(|word| Note { shown: wording(word), ..by(4) }));
        let mut sql = format!("{EMPTY}{}", insert_members());
        let mut known = Known::default();
        for (place, note) in club_notes.iter().enumerate() {
            let number = i64::try_from(place).unwrap() + 21;
            known.notes.push(number);
            known.words.push(Vec::new());
            let author = note.author.unwrap() + 1;
            sql.push_str(&format!(
                "INSERT INTO note (id, author_id, form_key, made_at)
                 VALUES ({number}, {author}, printf('%032d', {number}), {MADE});
                 INSERT INTO act (at, member_id, what, subject)
                 VALUES ({MADE}, {author}, 'note-begun', 'note/{number}');"
            ));
            let states = [("shown", note.shown), ("waiting", note.queue), ("draft", note.desk)];
            for (state, Wording { word, .. }) in
                states.into_iter().filter_map(|(state, wording)| Some((state, wording?)))
            {
                let version = i64::try_from(word).unwrap();
                known.words[place].push(word);
                known.versions.insert(word, version);
                sql.push_str(&format!(
                    "INSERT INTO note_version (id, note_id, state, title, text, drill, made_at, saved_at)
                     VALUES ({version}, {number}, '{state}', '{}', 'It cut clean.', 'No. 43', {MADE}, {MADE});
                     INSERT INTO note_entry VALUES ({version}, 'drills/number/43');",
                    typed(word)
                ));
                if state == "shown" {
                    sql.push_str(&format!(
                        "UPDATE note SET shown_version = {version}, shown_at = {MADE} WHERE id = {number};"
                    ));
                }
            }
            for word in &note.corrections {
                sql.push_str(&format!(
                    "INSERT INTO correction (note_id, text, made_at)
                     VALUES ({number}, '{} instead', {MADE} + 1);",
                    typed(*word)
                ));
            }
            for (who, (_, worked)) in &note.verdicts {
                sql.push_str(&format!(
                    "INSERT INTO verdict (note_id, member_id, worked, made_at)
                     VALUES ({number}, {}, {worked}, {MADE} + 2);
                     UPDATE note SET confirmed_at = {MADE} + 2 WHERE id = {number};",
                    who + 1
                ));
            }
            for (word, who) in &note.reports {
                sql.push_str(&format!(
                    "INSERT INTO safety_report (note_id, member_id, text, made_at)
                     VALUES ({number}, {}, '{}', {MADE});
                     UPDATE note SET hidden_at = {MADE} WHERE id = {number};",
                    who.unwrap() + 1,
                    typed(*word)
                ));
            }
            if note.is_withdrawn {
                sql.push_str(&format!(
                    "UPDATE note SET withdrawn_at = {MADE}, withdrawn_why = 'It was wrong' WHERE id = {number};"
                ));
            }
        }
        sql.push_str(FOUND);
        let mut members = members();
        for (member, sent) in members.iter_mut().zip(REPORTS) {
            member.reports = sent;
        }
        notes::execute(&data.join(FILE_NAME), &sql);
        Self { folder, club: Club { members, notes: club_notes, name: None }, known }
    }
}

/// What is done in a run is done to so many notes.
const BUSY: usize = 5;

/// How many remarks of each member wait: all that one may have, or one less.
const WAITING: [usize; MEMBERS.len()] = [20, 19, 20, 19, 19];

/// A remark that nobody ever reads needs no word of its own.
const NO_WORD: Word = 9999;

/// How many reports the first members have sent today: all that one may, and one less.
const REPORTS: [usize; 2] = [5, 4];

/// When the notes of the older database were made.
const MADE: i64 = 1_795_561_900;

/// Takes the notes of the released database out of it; a thing is there that the new ones belong to.
const EMPTY: &str = "
    DELETE FROM note_text; DELETE FROM correction; DELETE FROM note_entry;
    UPDATE note SET shown_version = NULL, shown_at = NULL;
    DELETE FROM note_version; DELETE FROM note; DELETE FROM member;
    INSERT INTO reference_entry VALUES
      ('drills/number/43', 'drill', 'number/43', 'No. 43', printf('%064d', 0), NULL);
";

/// What its search found them by.
const FOUND: &str = "
    INSERT INTO note_text (rowid, title, text, done)
    SELECT id, note ->> 'title',
      coalesce(note ->> '$.corrections[0].text' || ' ', '') || (note ->> 'text'), 'No. 43'
    FROM shown_note;
    INSERT INTO safety_report (note_id, member_id, text, made_at, settled_at)
    SELECT 23, 1, 'settled ' || value, unixepoch(), unixepoch() FROM json_each('[1, 2, 3, 4, 5]');
    INSERT INTO safety_report (note_id, member_id, text, made_at, settled_at)
    SELECT 21, 2, 'settled ' || value, unixepoch(), unixepoch() FROM json_each('[1, 2, 3, 4]');
";
