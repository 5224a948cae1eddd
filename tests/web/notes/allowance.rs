//! How much a member may write at once holds for whatever a member does to a note.

use std::collections::BTreeSet;
use std::time::Duration;

use axum::http::StatusCode;
use holewright_server::front::routes::ROUTES;
use holewright_server::rules::limits::{Allowance, RateLimit};
use holewright_server::rules::notes::state::{Act, Last, NoteState, Subject};

use super::club::{Club, Person, Right};

const NOTHING: NoteState =
    NoteState { on_its_way: None, shown: None, hidden: None, is_withdrawn: false };

/// Every act, once as what it is and once as one of its kind: one that is left out does not compile.
macro_rules! acts {
    ($($kind:pat => $act:expr,)+) => {
        const ACTS: &[Act] = &[$($act),+];

        const fn is_known(act: Act) -> bool {
            match act {
                $($kind => true,)+
            }
        }
    };
}

acts! {
    Act::Save => Act::Save,
    Act::SendIn(_) => Act::SendIn(Subject::Usual),
    Act::Pass => Act::Pass,
    Act::AskForChange => Act::AskForChange,
    Act::Decline => Act::Decline,
    Act::Correct(_) => Act::Correct(Subject::Usual),
    Act::Withdraw => Act::Withdraw,
    Act::Report(_) => Act::Report(Subject::Usual),
    Act::Settle => Act::Settle,
    Act::HandOver => Act::HandOver,
    Act::TurnBack => Act::TurnBack,
    Act::Judge(_) => Act::Judge(Subject::Usual),
    Act::Remark(_) => Act::Remark(Subject::Usual),
    Act::TakeBack => Act::TakeBack,
    Act::TakeAway => Act::TakeAway,
    Act::Undo(_) => Act::Undo(Last { before: NOTHING, is_theirs: true, seconds: 0 }),
    Act::Mend(_) => Act::Mend(Subject::Usual),
}

/// A form that does an act.
struct Form {
    route: &'static str,
    path: String,
    by: Person,
    fields: Vec<(&'static str, String)>,
}

/// Who acts on the notes of whom.
struct Scene {
    club: Club,
    author: Person,
    moderator: Person,
    reader: Person,
    other: Person,
    inspector: Person,
}

impl Scene {
    async fn open() -> Self {
        let club = Club::open().await;
        let author = club.join("Ada Penn", Right::None).await;
        let moderator = club.join("Cyril Moss", Right::Moderator).await;
        let reader = club.join("Bert Stone", Right::None).await;
        let other = club.join("Edda Lowe", Right::None).await;
        let inspector = club.join("Ina Flint", Right::Inspector).await;
        Self { club, author, moderator, reader, other, inspector }
    }

    async fn waiting(&self) -> i64 {
        self.club.send_in(&self.author, &words()).await
    }

    async fn shown(&self) -> i64 {
        self.club.shown(&self.author, &self.moderator, &words()).await
    }

    async fn done(&self, by: &Person, path: &str, fields: &[(&str, &str)]) {
        let answer = self.club.post(path, Some(by), fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{path}: {}", answer.body);
    }

    async fn hidden_by(&self, by: &Person) -> i64 {
        let note = self.shown().await;
        self.done(by, &format!("/notes/{note}/report"), &[("danger", "It could break.")]).await;
        note
    }

    async fn judged(&self) -> i64 {
        let note = self.shown().await;
        self.done(&self.reader, &format!("/notes/{note}/verdict"), &[("found", "worked")]).await;
        note
    }

    /// A decision in the queue.
    async fn decided(&self, note: i64, state: &str, what: &str) -> Form {
        let version = self.club.version(note, state).await.to_string();
        let fields = vec![
            ("version", version),
            ("do", what.to_owned()),
            ("reason", if tells(what) { "Say more.".to_owned() } else { String::new() }),
            ("last", i64::MAX.to_string()),
        ];
        let path = format!("/queue/{note}");
        Form { route: "/queue/{id}", path, by: self.moderator.clone(), fields }
    }

    fn on(note: i64, end: &'static str, by: &Person, fields: &[(&'static str, &str)]) -> Form {
        let path = end.replace("{id}", &note.to_string());
        let fields = fields.iter().map(|(name, typed)| (*name, (*typed).to_owned())).collect();
        Form { route: end, path, by: by.clone(), fields }
    }

    fn written(&self, note: i64, what: &str) -> Vec<Form> {
        let words = [&words()[..], &[("do", what)]].concat();
        ["/notes/new", "/notes/{id}/edit"]
            .map(|end| Self::on(note, end, &self.author, &words))
            .into()
    }

    /// Every form that does this, on notes on which it can be done.
    async fn forms(&self, act: Act) -> Vec<Form> {
        let (moderator, reader) = (&self.moderator, &self.reader);
        match act {
            Act::Save => self.written(self.shown().await, "draft"),
            Act::SendIn(_) => {
                let table = "title,text,source\nReaming,Slow.,Newsletter 1987\n".to_owned();
                let tips = Form {
                    route: "/notes/import",
                    path: "/notes/import".to_owned(),
                    by: moderator.clone(),
                    fields: vec![("tips", table)],
                };
                let mut forms = self.written(self.shown().await, "send");
                forms.push(tips);
                forms
            }
            Act::Pass => vec![self.decided(self.waiting().await, "waiting", "pass").await],
            Act::AskForChange => {
                vec![self.decided(self.waiting().await, "waiting", "change").await]
            }
            Act::Decline => vec![self.decided(self.waiting().await, "waiting", "decline").await],
            Act::Correct(_) => {
                let note = self.shown().await;
                let version = self.club.version(note, "shown").await.to_string();
                let fields = [("version", version.as_str()), ("correction", "Use oil.")];
                vec![Self::on(note, "/notes/{id}/correct", moderator, &fields)]
            }
            Act::Withdraw => {
                let (one, other) = (self.shown().await, self.hidden_by(reader).await);
                let why = [("why", "It was wrong.")];
                vec![
                    Self::on(one, "/notes/{id}/withdraw", &self.author, &why),
                    self.decided(other, "shown", "withdraw").await,
                ]
            }
            Act::Report(_) => {
                let danger = [("danger", "It could break.")];
                vec![Self::on(self.shown().await, "/notes/{id}/report", reader, &danger)]
            }
            Act::Settle => {
                let one = self.hidden_by(reader).await;
                let first = self.hidden_by(&self.other).await;
                self.hidden_by(&self.other).await;
                let (of, last) = (self.other.id.to_string(), i64::MAX.to_string());
                let version = self.club.version(first, "shown").await;
                let read = format!("{first}.{version}.0");
                let all = [("of", of.as_str()), ("last", last.as_str()), ("read", read.as_str())];
                vec![
                    self.decided(one, "shown", "settle").await,
                    Self::on(first, "/queue/reports", moderator, &all),
                ]
            }
            Act::HandOver => vec![self.decided(self.waiting().await, "waiting", "over").await],
            Act::TurnBack => {
                let fields = [&words()[..], &[("pressure", "yes")]].concat();
                let note = self.club.send_in(&self.author, &fields).await;
                let back = self.decided(note, "waiting", "back").await;
                vec![Form { by: self.inspector.clone(), ..back }]
            }
            Act::Undo(_) => {
                let note = self.waiting().await;
                let pass = self.decided(note, "waiting", "pass").await;
                let fields: Vec<_> =
                    pass.fields.iter().map(|(name, typed)| (*name, typed.as_str())).collect();
                self.done(moderator, &pass.path, &fields).await;
                vec![Self::on(note, "/queue/{id}", moderator, &[("do", "undo")])]
            }
            Act::Mend(_) => {
                let note = self.waiting().await;
                let version = self.club.version(note, "waiting").await.to_string();
                let mut fields = words().to_vec();
                fields.extend([("drill", "No. 43"), ("version", version.as_str())]);
                vec![Self::on(note, "/queue/{id}/mend", moderator, &fields)]
            }
            Act::Judge(_) => {
                let found = [("found", "worked"), ("material", "brass")];
                vec![Self::on(self.shown().await, "/notes/{id}/verdict", reader, &found)]
            }
            Act::Remark(_) => {
                let fresh = self.shown().await;
                let mut forms = vec![Self::on(
                    fresh,
                    "/notes/{id}/remark",
                    reader,
                    &[("remark", "So did mine.")],
                )];
                for (route, by, fields) in [
                    ("/queue/remarks", moderator, &[("remark", ""), ("do", "show")][..]),
                    (
                        "/queue/remarks",
                        moderator,
                        &[("remark", ""), ("do", "decline"), ("reason", "No.")],
                    ),
                    ("/notes/{id}/remark", reader, &[("of", ""), ("do", "away")]),
                ] {
                    let note = self.shown().await;
                    self.done(reader, &format!("/notes/{note}/remark"), &[("remark", "Mine too.")])
                        .await;
                    let id = self.club.count("SELECT max(id) FROM remark").await.to_string();
                    let numbered = |(name, typed): &(&'static str, &str)| {
                        (*name, if typed.is_empty() { id.clone() } else { (*typed).to_owned() })
                    };
                    let path = route.replace("{id}", &note.to_string());
                    let fields = fields.iter().map(numbered).collect();
                    forms.push(Form { route, path, by: by.clone(), fields });
                }
                forms
            }
            Act::TakeBack => {
                let away = [("do", "away")];
                vec![Self::on(self.judged().await, "/notes/{id}/verdict", reader, &away)]
            }
            Act::TakeAway => {
                let of = reader.id.to_string();
                let away = [("do", "away"), ("of", of.as_str())];
                vec![Self::on(self.judged().await, "/notes/{id}/verdict", moderator, &away)]
            }
        }
    }
}

/// Whether this decision tells its author something.
fn tells(what: &str) -> bool {
    matches!(what, "change" | "decline" | "withdraw")
}

fn words() -> [(&'static str, &'static str); 2] {
    [("title", "Five holes in one go"), ("text", "It cut clean.")]
}

#[tokio::test]
async fn whatever_a_member_does_to_a_note_is_limited() {
    let scene = Scene::open().await;
    let mut forms = Vec::new();
    for act in ACTS {
        assert!(is_known(*act));
        forms.extend(scene.forms(*act).await.into_iter().map(|form| (format!("{act:?}"), form)));
    }
    // No act on a note, and written down all the same.
    let told = [("until", "1"), ("count", "1")];
    forms.push(("read news".to_owned(), Scene::on(0, "/notes/mine", &scene.author, &told)));
    let Scene { club, .. } = scene;
    let club = club
        .again(|app| {
            let nothing = Allowance { burst: 0, every: Duration::from_secs(3600) };
            app.write_limit = RateLimit::of(nothing);
        })
        .await;
    let before = club.count("SELECT count(*) FROM act").await;
    let send = async |club: &Club, form: &Form| {
        let fields: Vec<_> = form.fields.iter().map(|(name, it)| (*name, it.as_str())).collect();
        club.post(&form.path, Some(&form.by), &fields).await
    };
    for (act, form) in &forms {
        let answer = send(&club, form).await;
        assert_eq!(answer.status, StatusCode::TOO_MANY_REQUESTS, "{act} by {}", form.path);
        assert!(answer.headers.contains_key("retry-after"), "{act} by {}", form.path);
    }
    assert_eq!(club.count("SELECT count(*) FROM act").await, before, "refused, and done");

    // Nothing else stood in their way.
    let club = club.again(|_| {}).await;
    for (act, form) in &forms {
        let answer = send(&club, form).await;
        let told = (act, &form.path, &answer.body);
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{told:?}");
    }

    let tried: BTreeSet<&str> = forms.iter().map(|(_, form)| form.route).collect();
    let written: BTreeSet<&str> = ROUTES
        .iter()
        .filter(|route| route.methods.contains(&"post"))
        .map(|route| route.path)
        .filter(|path| path.starts_with("/notes") || path.starts_with("/queue"))
        .collect();
    assert_eq!(tried, written);
}
