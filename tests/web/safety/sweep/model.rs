//! A plain model of the club: who may do what to a note, and what everybody then reads. It knows nothing
//! of the server's own rules; what it says is what the pages promise.

use std::collections::{BTreeMap, BTreeSet};

/// What a wording or a correction is known by. Each has a word of its own.
pub(super) type Word = usize;
/// The place of a member among [`Club::members`].
pub(super) type Who = usize;
/// One of a few passwords.
pub(super) type Password = u8;
/// One of a few names of the club.
pub(super) type Name = u8;

/// What somebody does. Notes are named by their place in the order in which they were begun.
#[derive(Clone, Copy, Debug)]
pub(super) enum Act {
    Write {
        sends: bool,
        pressure: bool,
    },
    Edit {
        note: usize,
        sends: bool,
        pressure: bool,
    },
    Decide {
        note: usize,
        what: Decision,
        stale: bool,
    },
    /// Shows what waits with a small fix.
    Mend {
        note: usize,
        stale: bool,
    },
    /// Takes back what they decided last about the note.
    Undo {
        note: usize,
    },
    Correct {
        note: usize,
        pressure: bool,
        stale: bool,
    },
    Withdraw {
        note: usize,
    },
    Report {
        note: usize,
    },
    Judge {
        note: usize,
        worked: bool,
        pressure: bool,
    },
    Remark {
        note: usize,
        pressure: bool,
    },
    /// Puts in a table with one tip.
    Import,
    /// Says what the club is called.
    NameClub {
        name: Name,
    },
    /// Decides about the remark on the note that waits longest.
    DecideRemark {
        note: usize,
        shows: bool,
    },
    TakeAway {
        note: usize,
        of: Who,
    },
    SettleAll {
        of: Who,
    },
    SetRights {
        of: Who,
        rights: Rights,
    },
    Stop {
        of: Who,
    },
    Allow {
        of: Who,
    },
    Remove {
        of: Who,
        keep: bool,
    },
    SignOut,
    /// Signs in with their name and this password.
    Enter {
        password: Password,
    },
    ChangePassword {
        old: Password,
        new: Password,
    },
    /// Gives their feed an address in the place of any other, or makes it void.
    Feed {
        makes: bool,
    },
}

impl Act {
    /// Whether it tries a password: a wrong one is in the record of acts too.
    pub(super) const fn tries(self) -> bool {
        matches!(self, Self::Enter { .. } | Self::ChangePassword { .. })
    }
}

/// What the queue decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Decision {
    Pass,
    Change,
    Decline,
    Settle,
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Rights {
    pub(super) moderator: bool,
    pub(super) inspector: bool,
    pub(super) secretary: bool,
}

#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Member {
    pub(super) rights: Rights,
    pub(super) is_signed_in: bool,
    pub(super) is_stopped: bool,
    pub(super) is_gone: bool,
    pub(super) reports: usize,
    /// A stranger has none.
    pub(super) password: Option<Password>,
    /// The address of their feed goes by the word of the act that made it.
    pub(super) feed: Option<Word>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Wording {
    pub(super) word: Word,
    pub(super) pressure: bool,
}

/// A remark on a note.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Remark {
    pub(super) word: Word,
    by: Option<Who>,
    pressure: bool,
    is_shown: bool,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Note {
    /// Those that wait or are shown, oldest first.
    pub(super) remarks: Vec<Remark>,
    pub(super) author: Option<Who>,
    pub(super) desk: Option<Wording>,
    pub(super) queue: Option<Wording>,
    pub(super) shown: Option<Wording>,
    pub(super) was_declined: bool,
    pub(super) corrections: Vec<Word>,
    /// Of which wording each is.
    pub(super) verdicts: BTreeMap<Who, (Word, bool)>,
    /// Of whom; of nobody any more.
    pub(super) reports: BTreeSet<(Word, Option<Who>)>,
    pub(super) is_withdrawn: bool,
    pub(super) is_gone: bool,
    /// Who decided last, and how it stood before, if nothing else has happened to it since.
    pub(super) last: Option<(Who, Box<Note>)>,
}

impl Remark {
    /// One that nobody has read.
    pub(super) const fn waiting(word: Word, by: Who) -> Self {
        Self { word, by: Some(by), pressure: false, is_shown: false }
    }
}

#[derive(Clone, Debug, Default)]
pub(super) struct Club {
    pub(super) name: Option<Name>,
    pub(super) members: Vec<Member>,
    pub(super) notes: Vec<Note>,
}

/// What comes of an act.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    Done,
    Refused,
    /// They do not even learn that there is such a note.
    Unseen,
}
use Outcome::{Done, Refused, Unseen};

/// What everybody reads.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct View {
    /// Of each shown note its word, its corrections, how many found that it works or
    /// does not, and whether it counts as confirmed.
    pub(super) shown: BTreeMap<usize, (Word, BTreeSet<Word>, [u64; 2], bool)>,
    /// The notes that the search finds by each word.
    pub(super) found: BTreeSet<(usize, Word)>,
    /// The notes at whose address there is nothing for a stranger.
    pub(super) unknown: BTreeSet<usize>,
    /// The notes on the page that the server keeps ready: the word, the newest correction and what members
    /// found, as it stands there.
    pub(super) kept: BTreeMap<usize, (Word, Option<Word>, String)>,
    /// What the club is called on every page.
    pub(super) name: Option<Name>,
    /// By member: the words of what is on the desk, waits and is shown, in their own data.
    pub(super) own: BTreeMap<Who, BTreeSet<(&'static str, Word)>>,
    /// By member: what stands in the queue.
    pub(super) queue: BTreeMap<Who, BTreeSet<Word>>,
}

/// The reports that a member may send in a day.
const REPORTS: usize = 5;
/// The remarks of a member that may wait on one note, and on all of them.
const REMARKS: usize = 5;
const REMARKS_IN_ALL: usize = 20;

impl Member {
    fn moderates(self) -> bool {
        self.rights.moderator || self.rights.secretary
    }

    fn decides(self, pressure: bool) -> bool {
        if pressure { self.rights.inspector } else { self.moderates() }
    }

    /// Looks at what waits or is hidden, and may say no to it.
    fn sees(self, pressure: bool) -> bool {
        self.moderates() || (pressure && self.rights.inspector)
    }
}

impl Note {
    fn is_hidden(&self) -> bool {
        !self.reports.is_empty()
    }

    fn is_read(&self) -> bool {
        self.shown.is_some() && !self.is_hidden() && !self.is_withdrawn && !self.is_gone
    }
}

impl Club {
    fn secretaries(&self) -> usize {
        let can =
            |member: &&Member| member.rights.secretary && !member.is_stopped && !member.is_gone;
        self.members.iter().filter(can).count()
    }

    /// Whether the note is theirs and somebody else could decide: a secretary who is alone decides.
    fn is_own(&self, by: Who, note: &Note, pressure: bool) -> bool {
        let could = |(who, member): (Who, &Member)| {
            who != by && !member.is_stopped && !member.is_gone && member.decides(pressure)
        };
        let is_alone = !self.members.iter().enumerate().any(could);
        note.author == Some(by) && !(self.members[by].rights.secretary && is_alone)
    }

    /// Does it, or says why not; `word` is that of what is written by it.
    pub(super) fn act(&mut self, by: Who, act: Act, word: Word) -> Outcome {
        let me = &mut self.members[by];
        match act {
            Act::SignOut => {
                me.is_signed_in = false;
                return Done;
            }
            Act::Enter { password } => {
                let is_right = me.password == Some(password) && !me.is_stopped && !me.is_gone;
                me.is_signed_in |= is_right;
                return if is_right { Done } else { Refused };
            }
            _ if !me.is_signed_in => return Refused,
            Act::Feed { makes } => {
                me.feed = makes.then_some(word);
                return Done;
            }
            Act::ChangePassword { old, new } => {
                let is_right = me.password == Some(old);
                (me.password, me.feed) =
                    if is_right { (Some(new), None) } else { (me.password, me.feed) };
                return if is_right { Done } else { Refused };
            }
            _ => {}
        }
        match act {
            Act::Write { sends, pressure } => {
                self.notes.push(Note { author: Some(by), ..Note::default() });
                self.notes.last_mut().unwrap().put(sends, Wording { word, pressure });
                Done
            }
            Act::SetRights { .. } | Act::Stop { .. } | Act::Allow { .. } | Act::Remove { .. } => {
                self.manage(by, act)
            }
            Act::Import => self.import(by, word),
            Act::NameClub { name } => {
                let may = self.members[by].rights.secretary;
                self.name = if may { Some(name) } else { self.name };
                if may { Done } else { Refused }
            }
            Act::SettleAll { of } => self.settle_all(by, of),
            Act::DecideRemark { note, shows } => self.decide_remark(by, note, shows),
            Act::SignOut | Act::Enter { .. } | Act::ChangePassword { .. } | Act::Feed { .. } => {
                Done
            }
            Act::Edit { note, .. }
            | Act::Decide { note, .. }
            | Act::Mend { note, .. }
            | Act::Undo { note }
            | Act::Correct { note, .. }
            | Act::Withdraw { note }
            | Act::Report { note }
            | Act::Judge { note, .. }
            | Act::Remark { note, .. }
            | Act::TakeAway { note, .. } => match self.notes.get(note).cloned() {
                Some(mut changed) => {
                    let before = changed.without_last();
                    let outcome = self.on_note(by, act, &mut changed, word);
                    if outcome == Done {
                        let is_decided = matches!(act, Act::Decide { .. } | Act::Mend { .. });
                        changed.last = match changed.last.take() {
                            _ if is_decided => Some((by, Box::new(before))),
                            last => last.filter(|_| changed == before),
                        };
                        self.notes[note] = changed;
                    }
                    outcome
                }
                None => Refused,
            },
        }
    }

    fn on_note(&mut self, by: Who, act: Act, note: &mut Note, word: Word) -> Outcome {
        let me = self.members[by];
        let is_author = note.author == Some(by);
        let looks = me.moderates() || me.rights.inspector;
        let may = |is_so: bool| if is_so { Done } else { Refused };
        let is_decision = matches!(act, Act::Decide { .. } | Act::Mend { .. } | Act::Undo { .. });
        let is_secret = note.shown.is_none() && !is_author && !looks && !is_decision;
        if note.is_gone || is_secret || (matches!(act, Act::Edit { .. }) && !is_author) {
            return if is_decision { Refused } else { Unseen };
        }
        if note.is_withdrawn {
            return Refused;
        }
        let shown = note.shown.filter(|_| !is_author);
        match (act, shown) {
            (Act::Edit { sends, pressure, .. }, _) => {
                // What follows a text that is the inspector's is the inspector's too.
                let was = sends && note.shown.is_some_and(|shown| shown.pressure);
                note.put(sends, Wording { word, pressure: pressure || was });
                Done
            }
            (Act::Decide { what: Decision::Settle, stale, .. }, _) => {
                let Some(Wording { pressure, .. }) = note.shown else { return Refused };
                let is_theirs = me.decides(pressure) && !self.is_own(by, note, pressure);
                let is_hidden = note.is_hidden();
                note.reports.clear();
                may(is_theirs && is_hidden && !stale)
            }
            (Act::Decide { what, stale, .. }, _) => {
                let Some(Wording { pressure, .. }) = note.queue else { return Refused };
                // Who passes what takes the place of a hidden text answers the reports on that too.
                let hidden = note.shown.filter(|_| note.is_hidden() && what == Decision::Pass);
                let pressure = pressure || hidden.is_some_and(|hidden| hidden.pressure);
                let has_right =
                    if what == Decision::Pass { me.decides(pressure) } else { me.sees(pressure) };
                let is_theirs = has_right && !self.is_own(by, note, pressure);
                let decided = note.queue.take();
                match what {
                    Decision::Pass => {
                        (note.shown, note.corrections) = (decided, Vec::new());
                        note.reports.clear();
                    }
                    Decision::Change => note.desk = decided,
                    Decision::Decline | Decision::Settle => note.was_declined = true,
                }
                may(is_theirs && !stale)
            }
            (Act::Mend { stale, .. }, _) => {
                let Some(waits) = note.queue.take() else { return Refused };
                let hidden = note.shown.filter(|_| note.is_hidden());
                let pressure = waits.pressure || hidden.is_some_and(|hidden| hidden.pressure);
                (note.shown, note.corrections) = (Some(Wording { word, pressure }), Vec::new());
                note.reports.clear();
                may(me.decides(pressure) && !is_author && !stale)
            }
            (Act::Undo { .. }, _) => {
                let Some((who, before)) = note.last.take() else { return Refused };
                let pressure = [before.queue, before.shown].iter().flatten().any(|it| it.pressure);
                let is_theirs = who == by && !self.is_own(by, note, pressure);
                *note = *before;
                may(is_theirs && me.sees(pressure))
            }
            (Act::Correct { pressure, stale, .. }, _) => {
                let Some(shown) = &mut note.shown else { return Refused };
                let was = shown.pressure;
                shown.pressure |= pressure;
                let pressure = shown.pressure;
                // What waits to take its place becomes the inspector's with it.
                if let Some(waits) = note.queue.as_mut().filter(|_| pressure && !was) {
                    waits.pressure = true;
                }
                note.corrections.push(word);
                may(me.decides(pressure) && !self.is_own(by, note, pressure) && !stale)
            }
            (Act::Withdraw { .. }, _) => {
                let pressure = note.shown.is_some_and(|shown| shown.pressure);
                // What follows a shown text stays on its author's desk; what nobody read goes.
                let kept = note.desk.or(note.queue).filter(|_| note.shown.is_some());
                (note.desk, note.queue, note.is_withdrawn) = (kept, None, true);
                note.remarks.clear();
                note.reports.clear();
                // What was never shown is declined, not withdrawn, by others than its author.
                may(is_author || (note.shown.is_some() && me.sees(pressure)))
            }
            (Act::Remark { pressure, .. }, _) => {
                let Some(shown) = note.shown else { return Refused };
                let pressure = pressure || shown.pressure;
                let is_waiting = |it: &&Remark| it.by == Some(by) && !it.is_shown;
                let of_all = self.notes.iter().filter(|it| !it.is_gone).flat_map(|it| &it.remarks);
                if note.remarks.iter().filter(is_waiting).count() >= REMARKS
                    || of_all.filter(is_waiting).count() >= REMARKS_IN_ALL
                {
                    return Refused;
                }
                note.remarks.push(Remark { pressure, ..Remark::waiting(word, by) });
                may(!note.is_hidden())
            }
            (Act::Report { .. }, Some(_)) => {
                let sent = &mut self.members[by].reports;
                if *sent >= REPORTS && !me.moderates() {
                    return Refused;
                }
                *sent += 1;
                note.reports.insert((word, Some(by)));
                Done
            }
            (Act::Judge { worked, pressure, .. }, Some(shown)) => {
                note.verdicts.insert(by, (shown.word, worked));
                may(!note.is_hidden() && (!pressure || me.rights.inspector))
            }
            (Act::TakeAway { of, .. }, Some(Wording { pressure, .. })) => {
                note.verdicts.remove(&of);
                may(of == by || me.sees(pressure))
            }
            // A secretary who is alone with her own note.
            (Act::TakeAway { of, .. }, None) if of != by => {
                let Some(Wording { pressure, .. }) = note.shown else { return Refused };
                note.verdicts.remove(&of);
                may(me.sees(pressure) && !self.is_own(by, note, pressure))
            }
            _ => Refused,
        }
    }

    /// Shows the remark that waits longest, or does not take it.
    fn decide_remark(&mut self, by: Who, place: usize, shows: bool) -> Outcome {
        let me = self.members[by];
        let Some(note) = self.notes.get(place).filter(|note| !note.is_gone) else { return Refused };
        let Some(at) = note.waiting_remark() else { return Refused };
        let of_note = note.shown.is_some_and(|shown| shown.pressure);
        let pressure = note.remarks[at].pressure || of_note;
        let has_right = if shows { me.decides(pressure) } else { me.sees(pressure) };
        let of = Note { author: note.remarks[at].by, ..Note::default() };
        if !has_right || self.is_own(by, &of, pressure) {
            return Refused;
        }
        // Below a note of their own somebody else decides, where one could who did not make the remark.
        let third = |(who, member): (Who, &Member)| {
            let is_third = who != by && Some(who) != of.author;
            is_third && !member.is_stopped && !member.is_gone && member.decides(pressure)
        };
        if note.author == Some(by) && self.members.iter().enumerate().any(third) {
            return Refused;
        }
        let remarks = &mut self.notes[place].remarks;
        if shows {
            (remarks[at].is_shown, remarks[at].pressure) = (true, pressure);
        } else {
            remarks.remove(at);
        }
        Done
    }

    /// Shows again what one member hid; the form names every note as it stands.
    fn settle_all(&mut self, by: Who, of: Who) -> Outcome {
        let me = self.members[by];
        let looks = |pressure: bool| {
            let is_there = |member: &Member| !member.is_stopped && !member.is_gone;
            let all = self.members.iter().enumerate();
            all.clone().any(|(who, it)| who != by && is_there(it) && it.decides(pressure))
        };
        // Who hid them asks whoever else could look.
        if of == by && [false, true].into_iter().any(|it| me.decides(it) && looks(it)) {
            return Refused;
        }
        let is_theirs = |note: &&mut Note| {
            let shown = note.shown.filter(|_| note.author != Some(by));
            !note.is_withdrawn
                && !note.is_gone
                && shown.is_some_and(|shown| me.decides(shown.pressure))
                && note.reports.iter().any(|(_, who)| *who == Some(of))
        };
        let hidden: Vec<&mut Note> = self.notes.iter_mut().filter(is_theirs).collect();
        if hidden.is_empty() {
            return Refused;
        }
        for note in hidden {
            note.reports.retain(|(_, who)| *who != Some(of));
            note.last = None;
        }
        Done
    }

    /// Those who decide and the secretary put tips in; the same table twice makes one note.
    fn import(&mut self, by: Who, word: Word) -> Outcome {
        let me = self.members[by];
        if !me.moderates() && !me.rights.inspector {
            return Refused;
        }
        let is_it =
            |note: &Note| note.author == Some(by) && note.queue.is_some_and(|it| it.word == word);
        if !self.notes.iter().any(is_it) {
            let queue = Some(Wording { word, pressure: false });
            self.notes.push(Note { author: Some(by), queue, ..Note::default() });
        }
        Done
    }

    fn manage(&mut self, by: Who, act: Act) -> Outcome {
        let (Act::SetRights { of, .. }
        | Act::Stop { of }
        | Act::Allow { of }
        | Act::Remove { of, .. }) = act
        else {
            return Refused;
        };
        if !self.members[by].rights.secretary || self.members[of].is_gone {
            return Refused;
        }
        let before = self.clone();
        let member = &mut self.members[of];
        match act {
            Act::SetRights { rights, .. } => (member.rights, member.is_signed_in) = (rights, false),
            Act::Stop { .. } => {
                (member.is_stopped, member.is_signed_in, member.feed) = (true, false, None);
            }
            Act::Remove { keep, .. } => {
                (member.is_gone, member.is_signed_in) = (true, false);
                self.notes.iter_mut().for_each(|note| note.leaves(of, keep));
                // Which of the rows of a note a leaver has touched is another test's.
                self.notes.iter_mut().for_each(|note| note.last = None);
            }
            _ => member.is_stopped = false,
        }
        if self.secretaries() == 0 {
            *self = before;
            return Refused;
        }
        Done
    }

    /// Whether the address that this act gave the member's feed opens it.
    pub(super) fn opens_feed(&self, who: Who, word: Word) -> bool {
        let member = &self.members[who];
        member.feed == Some(word) && !member.is_stopped && !member.is_gone
    }

    /// How many notes went with their author, or were taken back before any wording was sent in.
    pub(super) fn gone_or_empty(&self) -> usize {
        let is_so = |note: &&Note| note.is_gone || (!note.was_sent_in() && note.desk.is_none());
        self.notes.iter().filter(is_so).count()
    }

    /// What everybody reads now.
    pub(super) fn view(&self) -> View {
        let mut view = View { name: self.name, ..View::default() };
        for (place, note) in self.notes.iter().enumerate() {
            let is_hidden = note.is_hidden() && !note.is_withdrawn;
            if note.is_gone || note.shown.is_none() || is_hidden {
                view.unknown.insert(place);
            }
            if let Some(shown) = note.shown.filter(|_| note.is_read()) {
                let counted = |what| {
                    let of_it = note.verdicts.values();
                    of_it.map(|found| u64::from(*found == (shown.word, what))).sum()
                };
                let remarks = note.remarks.iter().filter(|remark| remark.is_shown);
                let remarks = remarks.map(|remark| remark.word);
                let corrections = note.corrections.iter().copied().chain(remarks).collect();
                let words = note.corrections.iter().copied().chain([shown.word]);
                view.found.extend(words.map(|word| (place, word)));
                let [worked, did_not] = [true, false].map(counted);
                let newest = note.corrections.last().copied();
                let read = if shown.pressure { " An inspector of the club read it." } else { "" };
                let counted = format!("{}{read}", in_words(worked, did_not));
                view.kept.insert(place, (shown.word, newest, counted));
                let read = (shown.word, corrections, [worked, did_not], worked > 0);
                view.shown.insert(place, read);
            }
        }
        for (who, member) in self.members.iter().enumerate().filter(|(_, it)| it.is_signed_in) {
            let own = self.notes.iter().filter(|note| note.author == Some(who) && !note.is_gone);
            let words = own.flat_map(|note| {
                [("draft", note.desk), ("waiting", note.queue), ("shown", note.shown)]
                    .into_iter()
                    .filter_map(|(state, wording)| Some((state, wording?.word)))
            });
            view.own.insert(who, words.collect());
            if member.moderates() || member.rights.inspector {
                let seen = |note: &Note| {
                    let hidden = note.shown.filter(|_| note.is_hidden() && !note.is_withdrawn);
                    let waiting = note.queue.filter(|_| !note.is_hidden());
                    let looked_at = hidden.or(waiting).filter(|_| !note.is_gone);
                    looked_at.filter(|it| member.sees(it.pressure)).map(|it| it.word)
                };
                view.queue.insert(who, self.notes.iter().filter_map(seen).collect());
            }
        }
        view
    }
}

impl Note {
    /// The place of the remark that waits longest.
    pub(super) fn waiting_remark(&self) -> Option<usize> {
        self.remarks.iter().position(|remark| !remark.is_shown)
    }

    fn was_sent_in(&self) -> bool {
        self.queue.is_some() || self.shown.is_some() || self.was_declined
    }

    /// How it stands, whatever can be undone.
    fn without_last(&self) -> Self {
        Self { last: None, ..self.clone() }
    }

    /// Another wording takes the place of the one on its way.
    fn put(&mut self, sends: bool, wording: Wording) {
        (self.desk, self.queue) = if sends { (None, Some(wording)) } else { (Some(wording), None) };
    }

    /// Somebody leaves the club.
    fn leaves(&mut self, who: Who, keep: bool) {
        self.verdicts.remove(&who);
        self.remarks.retain(|remark| remark.by != Some(who) || (keep && remark.is_shown));
        for remark in self.remarks.iter_mut().filter(|remark| remark.by == Some(who)) {
            remark.by = None;
        }
        let of = |(word, of): (Word, Option<Who>)| (word, of.filter(|of| *of != who));
        self.reports = self.reports.iter().copied().map(of).collect();
        if self.author == Some(who) {
            self.author = None;
            self.desk = None;
            self.is_gone |= !keep || !self.was_sent_in();
        }
    }
}

/// What members found, as a list of notes says it.
fn in_words(worked: u64, did_not: u64) -> String {
    let members =
        |count| if count == 1 { "1 member".to_owned() } else { format!("{count} members") };
    match (worked, did_not) {
        (0, 0) => "Nobody else has said yet whether it works.".to_owned(),
        (worked, 0) => format!("Worked for {}.", members(worked)),
        (0, did_not) => format!("Did not work for {}.", members(did_not)),
        (worked, did_not) => {
            format!("Worked for {}, did not for {}.", members(worked), members(did_not))
        }
    }
}
