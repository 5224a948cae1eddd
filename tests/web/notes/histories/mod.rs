//! Histories of one note: what its author, two moderators and a reader ask at the same time, and what each is
//! answered. For every history there must be an order of the requests, one after the other, in which the
//! rules give just these answers, and in which whatever was answered before another was asked comes first:
//! it is linearizable. `stateright` looks for the order.
//!
//! What is asked comes from a seed. A history that no order explains is shown whole, with its seed;
//! `HISTORIES_SEED` then tries that one again and again, since no two runs meet in the same way.

mod asked;
mod model;
mod script;

use std::collections::{BTreeMap, BTreeSet};
use std::io::Write;
use std::sync::{Arc, Mutex};
use std::time::Instant;

use stateright::semantics::{ConsistencyTester, LinearizabilityTester};
use tokio::sync::Barrier;

use self::asked::Scene;
use self::model::{Answer, Asked, Item, Listed, Note, Numbers, Seen, Standing, What, Who, Why};
use self::script::{Known, Script};
use super::club::{Club, Person, Right};

/// How many histories are recorded.
const HISTORIES: usize = 1000;
/// The first one's seed; each other has the next.
const SEED: u64 = 20_261_130;
/// The variable that sets one seed for all.
const VARIABLE: &str = "HISTORIES_SEED";

/// A request and its answer, with its place in the order of all that was begun and ended.
#[derive(Clone, Debug)]
struct Request {
    asked: Asked,
    answer: Answer,
    begun: usize,
    ended: usize,
}

/// What happened so far.
#[derive(Debug, Default)]
struct History {
    /// How much was begun and ended.
    moments: usize,
    requests: Vec<Request>,
}

impl History {
    fn moment(&mut self) -> usize {
        self.moments += 1;
        self.moments
    }
}

/// Who asks, with what they have read.
struct Asker {
    by: Who,
    known: Known,
    scene: Arc<Scene>,
    history: Arc<Mutex<History>>,
}

impl Asker {
    async fn ask(&mut self, what: What) {
        let asked = Asked { by: self.by, what: self.known.in_mind(what) };
        let begun = self.history.lock().unwrap().moment();
        let answer = self.scene.ask(asked).await;
        self.known.learn(&answer);
        let mut history = self.history.lock().unwrap();
        let ended = history.moment();
        history.requests.push(Request { asked, answer, begun, ended });
    }
}

/// Plays a script on a new note.
async fn record(scene: Scene, script: &Script, said: &str) -> History {
    let (scene, history) = (Arc::new(scene), Arc::new(Mutex::default()));
    let asker = |by| Asker {
        by,
        known: Known::default(),
        scene: Arc::clone(&scene),
        history: Arc::clone(&history),
    };
    let mut askers = Who::ALL.map(asker);
    for asked in &script.first {
        askers.iter_mut().find(|asker| asker.by == asked.by).unwrap().ask(asked.what).await;
    }
    let known = askers.iter().find(|asker| asker.by == Who::Moira).unwrap().known;
    for asker in &mut askers {
        asker.known = known;
    }
    let start = Arc::new(Barrier::new(askers.len()));
    let mut running = Vec::new();
    for (mut asker, whats) in askers.into_iter().zip(script.beside.clone()) {
        let start = Arc::clone(&start);
        running.push(tokio::spawn(async move {
            start.wait().await;
            for what in whats {
                asker.ask(what).await;
            }
        }));
    }
    for running in running {
        running.await.unwrap_or_else(|panicked| panic!("{said}: {panicked}"));
    }
    for asked in &script.last {
        asker(asked.by).ask(asked.what).await;
    }
    scene.close().await;
    std::mem::take(&mut *history.lock().unwrap())
}

/// Whether some order of the requests explains the answers. Each counts as a thread of its own: a member waits
/// for every answer, so the order of theirs is already that of time.
fn is_linearizable(requests: &[Request], numbers: Numbers) -> bool {
    let mut tester = LinearizabilityTester::new(Note::waiting(0, numbers));
    for (_, place, has_ended) in moments(requests) {
        let Request { asked, answer, .. } = &requests[place];
        let taken = if has_ended {
            tester.on_return(place, answer.clone())
        } else {
            tester.on_invoke(place, *asked)
        };
        taken.unwrap();
    }
    tester.is_consistent()
}

/// When each request began and ended, in this order.
fn moments(requests: &[Request]) -> BTreeSet<(usize, usize, bool)> {
    let both = |(place, request): (usize, &Request)| {
        [(request.begun, place, false), (request.ended, place, true)]
    };
    requests.iter().enumerate().flat_map(both).collect()
}

impl History {
    /// Fails unless an order explains it.
    fn check(&self, said: &str) {
        let requests = || self.requests.iter().cloned();
        let direct: Vec<_> =
            requests().filter(|request| request.asked.what != What::Kept).collect();
        let kept: Vec<_> = requests().filter_map(Request::when_kept).collect();
        for (requests, numbers) in [(direct, Numbers::Told), (kept, Numbers::Guessed)] {
            let line = |(_, place, has_ended)| {
                let Request { asked: Asked { by, what }, answer, .. } = &requests[place];
                if has_ended {
                    format!("  {by:?} asked {what:?} and is told {answer:?}\n")
                } else {
                    format!("  {by:?} asks {what:?}\n")
                }
            };
            let shown = || moments(&requests).into_iter().map(line).collect::<String>();
            assert!(is_linearizable(&requests, numbers), "{said}: no order explains\n{}", shown());
        }
    }

    /// Whether somebody asked before another was answered.
    fn is_crowded(&self) -> bool {
        let mut requests = self.requests.iter();
        requests.any(|one| {
            self.requests.iter().any(|other| (one.begun + 1..one.ended).contains(&other.begun))
        })
    }
}

impl Request {
    /// The request as it counts beside the page that the server keeps ready. That page turns new just before
    /// whoever changed what readers see is told so, and the database a moment earlier. So other readings and
    /// refusals, which look at the database, say nothing of when the page does; nor does the answer to the
    /// author, whose wording changes nothing that readers see.
    fn when_kept(self) -> Option<Self> {
        match (self.asked.what, &self.answer) {
            (What::Kept, _) => Some(self),
            (What::SendIn(_) | What::Save(_), Answer::Done) => {
                Some(Self { ended: usize::MAX, ..self })
            }
            (_, Answer::Done) => Some(self),
            _ => None,
        }
    }
}

fn one_seed() -> Option<u64> {
    let set = std::env::var(VARIABLE).ok()?;
    Some(set.parse().unwrap_or_else(|_| panic!("{VARIABLE} is {set:?}, not a number")))
}

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn s22_whatever_is_asked_at_once_is_answered_as_if_one_after_the_other() {
    let began = Instant::now();
    let club = Arc::new(Club::open().await);
    let author = club.join("Author", Right::None).await;
    let moira = club.join("Moira", Right::Moderator).await;
    let morag = club.join("Morag", Right::Moderator).await;
    let one = one_seed();
    let (mut requests, mut crowded, mut refused) = (0, 0, BTreeMap::<Why, usize>::new());
    for number in 0..HISTORIES {
        let seed = one.unwrap_or(SEED + u64::try_from(number).unwrap());
        let script = Script::from_seed(seed);
        // Nobody reports more than a few notes a day.
        let reader = club.join(&format!("Reader {number}"), Right::None).await;
        let people: [Person; 4] = [author.clone(), moira.clone(), morag.clone(), reader];
        let scene = Scene::open(&club, number, people).await;
        let said = format!("seed {seed}, after {number} histories");
        let history = record(scene, &script, &said).await;
        history.check(&said);
        requests += script.requests();
        crowded += usize::from(history.is_crowded());
        for request in &history.requests {
            if let Answer::Refused(why) = &request.answer {
                *refused.entry(*why).or_default() += 1;
            }
        }
    }
    // Past the harness, which keeps what a test prints that passes.
    let took = began.elapsed().as_secs();
    let from = one.unwrap_or(SEED);
    let said = format!(
        "{HISTORIES} histories from seed {from} in {took} s: {requests} requests, in {crowded} some at once, \
         refused {refused:?}\n"
    );
    std::io::stderr().write_all(said.as_bytes()).unwrap();
    assert!(crowded > HISTORIES * 9 / 10, "hardly anything was asked at once: {said}");
    let all = [
        Why::NotHere,
        Why::OutOfDate,
        Why::NotWaiting,
        Why::NotShown,
        Why::NotHidden,
        Why::Hidden,
        Why::Withdrawn,
        Why::Decided,
    ];
    // One script again and again seldom meets them all.
    for why in all.into_iter().filter(|_| one.is_none()) {
        assert!(refused.contains_key(&why), "never tried: {why:?}: {said}");
    }
}

/// Requests that come one after the other.
fn told(answers: &[(Who, What, Answer)]) -> Vec<Request> {
    let request = |(place, (by, what, answer)): (usize, &(Who, What, Answer))| Request {
        asked: Asked { by: *by, what: *what },
        answer: answer.clone(),
        begun: 2 * place,
        ended: 2 * place + 1,
    };
    answers.iter().enumerate().map(request).collect()
}

fn waits(text: u8, number: usize) -> Answer {
    Answer::Queue(Some(Item { text, number, reports: Vec::new(), fix: None }))
}

#[test]
fn a_history_is_explained_only_by_an_order_that_keeps_what_came_first() {
    let (moira, reader) = (Who::Moira, Who::Reader);
    let read = |text: Option<u8>| match text {
        Some(text) => {
            let (corrections, remarks) = (Vec::new(), Vec::new());
            let (standing, number) = (Standing::Shown, None);
            Answer::Page(Seen::Wording { text, corrections, standing, remarks, number })
        }
        None => Answer::Page(Seen::Nothing),
    };
    let look = (moira, What::Look, waits(0, 0));
    let pass = (moira, What::Pass(Some(0)), Answer::Done);
    let [before, after] = [None, Some(0)].map(|text| (reader, What::Open, read(text)));
    let linearizable = |requests: &[Request]| is_linearizable(requests, Numbers::Told);
    assert!(linearizable(&told(&[look.clone(), before.clone(), pass.clone(), after.clone()])));
    let stale = told(&[look.clone(), pass.clone(), before.clone()]);
    assert!(!linearizable(&stale), "shown, and then not there");
    // While it is passed, a reader may see either, and never the older one after the newer one.
    let during = |reads: [_; 2]| {
        let [one, other] = reads;
        let mut requests = told(&[look.clone(), pass.clone(), one, other]);
        requests[1].ended = 2 * requests.len();
        requests
    };
    assert!(linearizable(&during([before.clone(), after.clone()])));
    assert!(linearizable(&during([before.clone(), before.clone()])));
    assert!(!linearizable(&during([after, before])), "back to what it was");
}

#[test]
fn a_history_in_which_something_unread_is_passed_is_refused() {
    let (author, moira) = (Who::Author, Who::Moira);
    let look = (moira, What::Look, waits(0, 0));
    let again = |text| (author, What::SendIn(text), Answer::Done);
    let pass = |answer| (moira, What::Pass(Some(0)), answer);
    let out_of_date = || pass(Answer::Refused(Why::OutOfDate));
    let holds = |steps: &[_], numbers| is_linearizable(&told(steps), numbers);
    for numbers in [Numbers::Told, Numbers::Guessed] {
        assert!(holds(&[look.clone(), again(1), out_of_date()], numbers));
    }
    assert!(!holds(&[look.clone(), again(1), pass(Answer::Done)], Numbers::Told));
    // Sent in twice as it stands it is the same wording; after it came back to the desk it is another.
    assert!(holds(&[look.clone(), again(0), pass(Answer::Done)], Numbers::Told));
    let change = (Who::Morag, What::AskForChange(Some(0)), Answer::Done);
    assert!(holds(&[look.clone(), change.clone(), again(0), out_of_date()], Numbers::Told));
    assert!(!holds(&[look.clone(), change, again(0), pass(Answer::Done)], Numbers::Told));
    assert!(
        !holds(&[look.clone(), pass(Answer::Done), pass(Answer::Done)], Numbers::Told),
        "twice"
    );
    // The server may not give a number twice.
    let other = (moira, What::Look, waits(1, 0));
    assert!(!holds(&[look, again(1), other], Numbers::Told));
}

#[test]
fn a_history_in_which_a_verdict_is_lost_is_refused() {
    let (moira, reader) = (Who::Moira, Who::Reader);
    let pass = [(moira, What::Look, waits(0, 0)), (moira, What::Pass(Some(0)), Answer::Done)];
    let listed = |found| {
        let listed = Listed { text: 0, corrections: Vec::new(), found };
        (reader, What::List, Answer::Shown(Some(listed)))
    };
    let judge = |by, worked| (by, What::Judge(worked), Answer::Done);
    let holds = |steps: &[_]| is_linearizable(&told(&[&pass, steps].concat()), Numbers::Told);
    assert!(holds(&[judge(reader, true), judge(Who::Morag, false), listed([1, 1])]));
    assert!(!holds(&[judge(reader, true), listed([0, 0])]), "lost");
    assert!(!holds(&[judge(reader, true), judge(reader, false), listed([1, 1])]), "counted twice");
    let away = (moira, What::TakeAway, Answer::Done);
    assert!(holds(&[judge(reader, true), away.clone(), listed([0, 0])]));
    assert!(!holds(&[judge(reader, true), away, listed([1, 0])]), "it stays");
    let report = (Who::Morag, What::Report(0), Answer::Done);
    let hidden = (reader, What::Judge(true), Answer::Refused(Why::Hidden));
    assert!(holds(&[report.clone(), hidden]));
    assert!(!holds(&[report, judge(reader, true)]), "of a hidden note");
}

#[test]
fn a_history_in_which_a_remark_is_decided_twice_or_seen_unread_is_refused() {
    let (moira, morag, reader) = (Who::Moira, Who::Morag, Who::Reader);
    let pass = [(moira, What::Look, waits(0, 0)), (moira, What::Pass(Some(0)), Answer::Done)];
    let sees = |remarks: &[u8]| {
        let (text, corrections, remarks) = (0, Vec::new(), remarks.to_vec());
        let (standing, number) = (Standing::Shown, None);
        let seen = Seen::Wording { text, corrections, standing, remarks, number };
        (reader, What::Open, Answer::Page(seen))
    };
    let holds = |steps: &[_]| is_linearizable(&told(&[&pass, steps].concat()), Numbers::Told);
    let remark = (reader, What::Remark(20), Answer::Done);
    let show = (moira, What::ShowRemark(20), Answer::Done);
    let decline = |answer| (morag, What::DeclineRemark(20), answer);
    let decided = || Answer::Refused(Why::Decided);
    assert!(holds(&[remark.clone(), sees(&[]), show.clone(), sees(&[20])]));
    assert!(!holds(&[remark.clone(), sees(&[20])]), "nobody has read it");
    assert!(!holds(&[remark.clone(), show.clone(), sees(&[])]), "it was shown");
    assert!(!holds(&[remark.clone(), show.clone(), show.clone()]), "twice");
    assert!(holds(&[remark.clone(), show.clone(), decline(Answer::Done), sees(&[])]));
    let back = (reader, What::TakeRemarkBack(20), Answer::Done);
    assert!(holds(&[remark.clone(), back.clone(), decline(decided()), sees(&[])]));
    assert!(!holds(&[remark.clone(), back.clone(), show]), "it was taken back");
    let withdraw = (moira, What::Withdraw, Answer::Done);
    assert!(!holds(&[remark, withdraw, decline(Answer::Done)]), "it went with the note");
}
