//! One note as the rules have it, one request at a time: what each request does to it, and what it is
//! answered. Written from what members are told, with none of the server's code.
//!
//! The server numbers its wordings as it likes. The model only knows that a number names one wording: a
//! wording has none in it until an answer told one.

use stateright::semantics::SequentialSpec;

/// Who asks. Each waits for an answer before they ask again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Who {
    Author,
    Moira,
    Morag,
    Reader,
}

impl Who {
    pub(super) const ALL: [Self; 4] = [Self::Author, Self::Moira, Self::Morag, Self::Reader];

    pub(super) const fn moderates(self) -> bool {
        matches!(self, Self::Moira | Self::Morag)
    }
}

/// A wording's number, by the order in which a history came upon them.
pub(super) type Number = usize;
/// Which of a few texts.
pub(super) type Text = u8;

/// A request.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Asked {
    pub(super) by: Who,
    pub(super) what: What,
}

/// What is asked. A decision is about the wording with the number that was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum What {
    /// The author keeps a wording on the desk.
    Save(Text),
    /// The author sends a wording in.
    SendIn(Text),
    Pass(Option<Number>),
    AskForChange(Option<Number>),
    Decline(Option<Number>),
    Settle(Option<Number>),
    /// A moderator shows what waits with a small fix: with the next text of those that only fixes have.
    Mend(Option<Number>, Text),
    /// And takes back what they decided last.
    Undo,
    Correct(Option<Number>, Text),
    Withdraw,
    Report(Text),
    /// Somebody says whether it worked.
    Judge(bool),
    /// And takes that back.
    TakeBack,
    /// A moderator takes away what the reader said.
    TakeAway,
    /// The reader sends a remark in. Each is in words of its own.
    Remark(Text),
    /// And takes it back.
    TakeRemarkBack(Text),
    /// A moderator shows it, or does not take it.
    ShowRemark(Text),
    DeclineRemark(Text),
    /// The queue is read.
    Look,
    /// The note's page is read.
    Open,
    /// A word of a wording is looked for.
    FindWording(Text),
    /// A word of a correction is looked for.
    FindCorrection(Text),
    /// The notes are read as JSON.
    List,
    /// The page of a thing of the reference is read, which the server keeps ready.
    Kept,
}

/// What is answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Answer {
    Done,
    Refused(Why),
    /// What no rule says.
    Strange(String),
    /// What waits in the queue.
    Queue(Option<Item>),
    Page(Seen),
    Shown(Option<Listed>),
}

/// The note in a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Listed {
    pub(super) text: Text,
    /// Those above it, newest first.
    pub(super) corrections: Vec<Text>,
    /// For how many it worked, and for how many it did not.
    pub(super) found: [usize; 2],
}

/// Why nothing was done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Why {
    NotHere,
    OutOfDate,
    NotWaiting,
    NotShown,
    NotHidden,
    Hidden,
    Withdrawn,
    /// These very words were not taken.
    Declined,
    /// There is nothing to undo any more.
    WentOn,
    /// Another decided.
    Anothers,
    /// The remark was decided about, or taken back.
    Decided,
}

/// The note in the queue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Item {
    pub(super) text: Text,
    pub(super) number: Number,
    /// The open reports, oldest first: with any the shown wording stands there, else the waiting one.
    pub(super) reports: Vec<(Who, Text)>,
    /// What waits to take the place of the reported one.
    pub(super) fix: Option<(Text, Number)>,
}

/// What stands at the note's address.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Seen {
    Nothing,
    Hidden,
    Withdrawn(Who),
    Wording {
        text: Text,
        /// Newest first.
        corrections: Vec<Text>,
        standing: Standing,
        /// Those that everybody sees, oldest first.
        remarks: Vec<Text>,
        /// The number in the form of a correction.
        number: Option<Number>,
    },
}

/// What those who see more than readers do are told of a note.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Standing {
    Shown,
    Hidden,
    Withdrawn(Who),
    Draft,
    /// A moderator asks for a change.
    Change(Who),
    Waiting,
    NotTaken(Who),
}

/// Where a wording stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum State {
    Draft,
    Waiting,
    Shown,
    Replaced,
    Declined,
    Gone,
}

#[derive(Clone, Debug, PartialEq, Eq)]
struct Wording {
    text: Text,
    state: State,
    number: Option<Number>,
    /// Who asked for a change or declined it.
    said: Option<Who>,
    /// The corrections above it, oldest first.
    corrections: Vec<Text>,
}

/// Where a remark stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Remark {
    Waiting,
    Shown,
    Over,
}

/// How the numbers of wordings come to be known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Numbers {
    /// From answers alone: whoever names one has read it, so a wording that nobody read has another.
    Told,
    /// The answers that told them are left out of the history: a request that was carried out tells them.
    Guessed,
}

/// The note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Note {
    /// Oldest first.
    wordings: Vec<Wording>,
    /// The open ones.
    reports: Vec<(Who, Text)>,
    /// Who found that it works, or does not.
    verdicts: Vec<(Who, bool)>,
    /// Who found so of an earlier wording, and has said nothing since.
    earlier: Vec<(Who, bool)>,
    /// What the reader remarked, oldest first.
    remarks: Vec<(Text, Remark)>,
    withdrawn: Option<Who>,
    numbers: Numbers,
    /// Who decided last, and how the note stood before, if nothing else has happened to it since.
    last: Option<(Who, Box<Note>)>,
}

impl Note {
    /// A note that waits with this text.
    pub(super) fn waiting(text: Text, numbers: Numbers) -> Self {
        let mut note = Self {
            wordings: Vec::new(),
            reports: Vec::new(),
            verdicts: Vec::new(),
            earlier: Vec::new(),
            remarks: Vec::new(),
            withdrawn: None,
            numbers,
            last: None,
        };
        note.begin(text, State::Waiting);
        note
    }

    fn begin(&mut self, text: Text, state: State) {
        let corrections = Vec::new();
        self.wordings.push(Wording { text, state, number: None, said: None, corrections });
    }

    fn place(&self, states: &[State]) -> Option<usize> {
        self.wordings.iter().rposition(|wording| states.contains(&wording.state))
    }

    fn shown(&self) -> Option<usize> {
        self.place(&[State::Shown])
    }

    fn newest(&self) -> Option<usize> {
        self.wordings.iter().rposition(|wording| wording.state != State::Gone)
    }

    /// What readers see.
    fn public(&self) -> Option<&Wording> {
        let is_public = self.reports.is_empty() && self.withdrawn.is_none();
        self.shown().filter(|_| is_public).map(|place| &self.wordings[place])
    }

    fn write(&mut self, text: Text, state: State) -> Result<(), Why> {
        self.check_stays()?;
        let there: &[State] = match state {
            State::Draft => &[State::Draft, State::Shown],
            _ => &[State::Waiting, State::Shown, State::Replaced],
        };
        let newest = self.newest().map(|place| &self.wordings[place]);
        if newest.is_some_and(|newest| newest.text == text && there.contains(&newest.state)) {
            return Ok(());
        }
        let is_declined =
            newest.is_some_and(|newest| newest.text == text && newest.state == State::Declined);
        if is_declined && state == State::Waiting {
            // No form here says what it was made from.
            return Err(Why::Declined);
        }
        if let Some(place) = self.place(&[State::Draft, State::Waiting]) {
            let on_its_way = &mut self.wordings[place];
            if on_its_way.state == State::Draft && state == State::Draft {
                on_its_way.text = text;
                return Ok(());
            }
            on_its_way.state = State::Gone;
        }
        self.begin(text, state);
        Ok(())
    }

    fn check_stays(&self) -> Result<(), Why> {
        if self.withdrawn.is_some() { Err(Why::Withdrawn) } else { Ok(()) }
    }

    /// The wording that waits, if it is the one that was read.
    fn reviewed(&mut self, number: Option<Number>) -> Result<&mut Wording, Why> {
        self.check_stays()?;
        let place = self.place(&[State::Waiting]).ok_or(Why::NotWaiting)?;
        self.as_read(place, number)
    }

    fn as_read(&mut self, place: usize, number: Option<Number>) -> Result<&mut Wording, Why> {
        let wording = &mut self.wordings[place];
        let is_same = number.is_some() && wording.number == number;
        if is_same { Ok(wording) } else { Err(Why::OutOfDate) }
    }

    fn pass(&mut self, number: Option<Number>) -> Result<(), Why> {
        self.reviewed(number)?;
        // It answers the reports on what was shown before, and what was found was found of that.
        self.reports.clear();
        let found = std::mem::take(&mut self.verdicts);
        self.earlier.extend(found);
        for wording in &mut self.wordings {
            wording.state = match wording.state {
                State::Shown => State::Replaced,
                State::Waiting => State::Shown,
                other => other,
            };
        }
        Ok(())
    }

    /// What was read stays with the note, and the fix is shown.
    fn mend(&mut self, number: Option<Number>, text: Text) -> Result<(), Why> {
        self.reviewed(number)?.state = State::Declined;
        self.begin(text, State::Waiting);
        let fix = self.wordings.len() - 1;
        // It is shown as it was written, whatever its number.
        self.wordings[fix].number = Some(Number::MAX);
        self.pass(Some(Number::MAX))?;
        self.wordings[fix].number = None;
        Ok(())
    }

    /// All is as it was, but for the numbers that were told meanwhile.
    fn undo(&mut self, by: Who) -> Result<(), Why> {
        let (who, _) = self.last.as_ref().ok_or(Why::WentOn)?;
        if *who != by {
            return Err(Why::Anothers);
        }
        let (_, mut before) = self.last.take().ok_or(Why::WentOn)?;
        for (wording, now) in before.wordings.iter_mut().zip(&self.wordings) {
            wording.number = wording.number.or(now.number);
        }
        *self = *before;
        Ok(())
    }

    /// How it stands, whatever can be undone.
    fn without_last(&self) -> Self {
        Self { last: None, ..self.clone() }
    }

    fn send_back(&mut self, number: Option<Number>, to: State, by: Who) -> Result<(), Why> {
        let wording = self.reviewed(number)?;
        wording.state = to;
        wording.said = Some(by);
        Ok(())
    }

    /// The place of the shown wording. Where none is, only whoever sees another that waits hears of the
    /// note at all.
    fn shown_for(&self, sees_waiting: bool) -> Result<usize, Why> {
        let waits = self.place(&[State::Waiting]).is_some();
        match self.shown() {
            None if !(sees_waiting && waits) => Err(Why::NotHere),
            shown => self.check_stays().and_then(|()| shown.ok_or(Why::NotShown)),
        }
    }

    fn settle(&mut self, number: Option<Number>) -> Result<(), Why> {
        let shown = self.shown_for(true)?;
        if self.reports.is_empty() {
            return Err(Why::NotHidden);
        }
        self.as_read(shown, number)?;
        self.reports.clear();
        Ok(())
    }

    fn correct(&mut self, number: Option<Number>, text: Text) -> Result<(), Why> {
        let shown = self.shown_for(true)?;
        let wording = self.as_read(shown, number)?;
        if !wording.corrections.contains(&text) {
            wording.corrections.push(text);
        }
        Ok(())
    }

    fn withdraw(&mut self, by: Who) -> Result<(), Why> {
        match by {
            Who::Author => self.check_stays()?,
            _ => self.shown_for(false).map(|_| ())?,
        }
        self.withdrawn = Some(by);
        self.reports.clear();
        // What was remarked on a note goes with it.
        self.remarks.iter_mut().for_each(|(_, stands)| *stands = Remark::Over);
        // What follows a shown wording stays its author's.
        let stays = if self.shown().is_some() { State::Draft } else { State::Gone };
        for wording in &mut self.wordings {
            if matches!(wording.state, State::Draft | State::Waiting) {
                wording.state = stays;
            }
        }
        Ok(())
    }

    fn report(&mut self, by: Who, text: Text) -> Result<(), Why> {
        self.shown_for(false)?;
        if !self.reports.contains(&(by, text)) {
            self.reports.push((by, text));
        }
        Ok(())
    }

    fn judge(&mut self, by: Who, worked: bool) -> Result<(), Why> {
        self.shown_for(false)?;
        if !self.reports.is_empty() {
            return Err(Why::Hidden);
        }
        if !self.verdicts.contains(&(by, worked)) {
            self.verdicts.retain(|(who, _)| *who != by);
            self.earlier.retain(|(who, _)| *who != by);
            self.verdicts.push((by, worked));
        }
        Ok(())
    }

    fn remark(&mut self, text: Text) -> Result<(), Why> {
        self.shown_for(false)?;
        if !self.reports.is_empty() {
            return Err(Why::Hidden);
        }
        self.remarks.push((text, Remark::Waiting));
        Ok(())
    }

    /// What becomes of a remark that stands in one of these ways.
    fn decide_remark(&mut self, text: Text, from: &[Remark], to: Remark) -> Result<(), Why> {
        let mut remarks = self.remarks.iter_mut();
        let (_, stands) = remarks.find(|(held, _)| *held == text).ok_or(Why::NotHere)?;
        if !from.contains(stands) {
            return Err(Why::Decided);
        }
        *stands = to;
        Ok(())
    }

    fn take_away(&mut self, of: Who) -> Result<(), Why> {
        self.shown_for(false)?;
        self.verdicts.retain(|(who, _)| *who != of);
        self.earlier.retain(|(who, _)| *who != of);
        Ok(())
    }

    /// The place of the wording in the queue.
    fn queued(&self) -> Option<usize> {
        let place =
            if self.reports.is_empty() { self.place(&[State::Waiting]) } else { self.shown() };
        place.filter(|_| self.withdrawn.is_none())
    }

    /// The place of what waits to take the place of a reported wording.
    fn fix(&self) -> Option<usize> {
        let place = self.place(&[State::Waiting]);
        place.filter(|_| !self.reports.is_empty() && self.withdrawn.is_none())
    }

    fn queue(&self) -> Answer {
        Answer::Queue(self.queued().map(|place| {
            // A number that no answer told is none.
            let told = |place: usize| {
                let Wording { text, number, .. } = self.wordings[place];
                (text, number.unwrap_or(Number::MAX))
            };
            let (text, number) = told(place);
            Item { text, number, reports: self.reports.clone(), fix: self.fix().map(told) }
        }))
    }

    fn page(&self, by: Who) -> Seen {
        let sees_all = by == Who::Author || by.moderates();
        let place = match (self.shown(), self.withdrawn) {
            (Some(shown), _) if sees_all => Some(shown),
            (Some(_), Some(withdrawn)) => return Seen::Withdrawn(withdrawn),
            (Some(_), None) if !self.reports.is_empty() => return Seen::Hidden,
            (Some(shown), None) => Some(shown),
            (None, _) => self.newest().filter(|newest| {
                let waits = self.wordings[*newest].state == State::Waiting;
                by == Who::Author || (by.moderates() && waits)
            }),
        };
        let Some(place) = place else { return Seen::Nothing };
        let Wording { text, state, number, said, ref corrections } = self.wordings[place];
        let by_somebody = said.unwrap_or(Who::Author);
        let standing = match (self.withdrawn, state) {
            (Some(by), _) => Standing::Withdrawn(by),
            _ if !self.reports.is_empty() => Standing::Hidden,
            (None, State::Draft) if said.is_some() => Standing::Change(by_somebody),
            (None, State::Draft | State::Gone) => Standing::Draft,
            (None, State::Waiting) => Standing::Waiting,
            (None, State::Declined) => Standing::NotTaken(by_somebody),
            (None, State::Shown | State::Replaced) => Standing::Shown,
        };
        Seen::Wording {
            text,
            corrections: corrections.iter().rev().copied().collect(),
            standing,
            remarks: if matches!(standing, Standing::Shown | Standing::Hidden) {
                let shown = self.remarks.iter().filter(|(_, stands)| *stands == Remark::Shown);
                shown.map(|(text, _)| *text).collect()
            } else {
                Vec::new()
            },
            number: self.correctable(by).map(|_| number.unwrap_or(Number::MAX)),
        }
    }

    /// The place of the wording whose number stands in the form of a correction.
    fn correctable(&self, by: Who) -> Option<usize> {
        self.shown().filter(|_| by.moderates() && self.withdrawn.is_none())
    }

    fn found(&self, most: usize, has: impl Fn(&Wording) -> bool) -> Answer {
        Answer::Shown(self.public().filter(|wording| has(wording)).map(|wording| {
            let newest_first = wording.corrections.iter().rev().take(most);
            let counted = |what| self.verdicts.iter().filter(|(_, worked)| *worked == what).count();
            Listed {
                text: wording.text,
                corrections: newest_first.copied().collect(),
                found: [true, false].map(counted),
            }
        }))
    }

    /// Puts down the number that an answer told, unless it is another's.
    fn learn(&mut self, place: Option<usize>, number: Number) {
        let is_free = self.wordings.iter().all(|wording| wording.number != Some(number));
        if let Some(place) = place.filter(|_| is_free) {
            self.wordings[place].number.get_or_insert(number);
        }
    }
}

impl SequentialSpec for Note {
    type Op = Asked;
    type Ret = Answer;

    fn invoke(&mut self, Asked { by, what }: &Asked) -> Answer {
        let by = *by;
        let before = self.without_last();
        let done = match *what {
            What::Look => return self.queue(),
            What::Open => return Answer::Page(self.page(by)),
            // A search shows the newest correction alone, and so does the page of a thing.
            What::FindWording(text) => return self.found(1, |wording| wording.text == text),
            What::FindCorrection(text) => {
                return self.found(1, |wording| wording.corrections.contains(&text));
            }
            What::Kept => return self.found(1, |_| true),
            What::List => return self.found(usize::MAX, |_| true),
            What::Save(text) => self.write(text, State::Draft),
            What::SendIn(text) => self.write(text, State::Waiting),
            What::Pass(number) => self.pass(number),
            What::AskForChange(number) => self.send_back(number, State::Draft, by),
            What::Decline(number) => self.send_back(number, State::Declined, by),
            What::Settle(number) => self.settle(number),
            What::Correct(number, text) => self.correct(number, text),
            What::Withdraw => self.withdraw(by),
            What::Report(text) => self.report(by, text),
            What::Judge(worked) => self.judge(by, worked),
            What::TakeBack => self.take_away(by),
            What::TakeAway => self.take_away(Who::Reader),
            What::Remark(text) => self.remark(text),
            What::ShowRemark(text) => self.decide_remark(text, &[Remark::Waiting], Remark::Shown),
            What::DeclineRemark(text) | What::TakeRemarkBack(text) => {
                self.decide_remark(text, &[Remark::Waiting, Remark::Shown], Remark::Over)
            }
            What::Mend(number, text) => self.mend(number, text),
            What::Undo => self.undo(by),
        };
        match *what {
            What::Pass(_)
            | What::AskForChange(_)
            | What::Decline(_)
            | What::Settle(_)
            | What::Mend(..)
                if done.is_ok() =>
            {
                self.last = Some((by, Box::new(before)));
            }
            // Whatever else changes a row of it is something that happened since.
            _ if self.without_last() != before => self.last = None,
            _ => {}
        }
        done.map_or_else(Answer::Refused, |()| Answer::Done)
    }

    fn is_valid_step(&mut self, asked: &Asked, answer: &Answer) -> bool {
        match answer {
            Answer::Queue(Some(item)) => {
                self.learn(self.queued(), item.number);
                if let Some((_, number)) = item.fix {
                    self.learn(self.fix(), number);
                }
            }
            Answer::Page(Seen::Wording { number: Some(number), .. }) => {
                self.learn(self.correctable(asked.by), *number);
            }
            Answer::Done if self.numbers == Numbers::Guessed => match asked.what {
                What::Pass(Some(number))
                | What::Mend(Some(number), _)
                | What::AskForChange(Some(number))
                | What::Decline(Some(number)) => self.learn(self.place(&[State::Waiting]), number),
                What::Settle(Some(number)) | What::Correct(Some(number), _) => {
                    self.learn(self.shown(), number);
                }
                _ => {}
            },
            _ => {}
        }
        self.invoke(asked) == *answer
    }
}
