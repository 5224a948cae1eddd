//! What each member asks in one history, from a seed.

use super::model::{Answer, Asked, Item, Number, Seen, Text, What, Who};
use crate::guards::strings::Chance;

/// So many texts of each kind: few, so that the same one comes again.
const TEXTS: usize = 3;

/// Where the texts begin that only small fixes have.
const MENDED: Text = 10;

/// What is asked in one history.
#[derive(Debug)]
pub(super) struct Script {
    /// Before the others begin, one after the other.
    pub(super) first: Vec<Asked>,
    /// At the same time, in the order of [`Who::ALL`].
    pub(super) beside: [Vec<What>; 4],
    /// When all have ended: how the note stands then.
    pub(super) last: Vec<Asked>,
}

impl Script {
    pub(super) fn from_seed(seed: u64) -> Self {
        let mut chance = Chance(seed);
        Self {
            first: first(chance.below(4)),
            beside: Who::ALL.map(|by| {
                let length = if by == Who::Author { 2 } else { 2 + chance.below(2) };
                (0..length).map(|_| one(by, &mut chance)).collect()
            }),
            last: vec![
                Asked { by: Who::Moira, what: What::Open },
                Asked { by: Who::Morag, what: What::Look },
                Asked { by: Who::Reader, what: What::FindWording(text(&mut chance)) },
                Asked { by: Who::Reader, what: What::FindCorrection(text(&mut chance)) },
                Asked { by: Who::Reader, what: What::Kept },
            ],
        }
    }

    /// How many ask at the same time, and how many times in all.
    pub(super) fn requests(&self) -> usize {
        self.beside.iter().map(Vec::len).sum()
    }
}

/// A note that waits, or is shown, or shown while another wording waits, or reported. One moderator reads it
/// for both.
fn first(kind: usize) -> Vec<Asked> {
    let moira = |what| Asked { by: Who::Moira, what };
    let mut first = vec![moira(What::Look)];
    if kind > 0 {
        first.extend([moira(What::Pass(None)), moira(What::Open)]);
    }
    match kind {
        2 => first.extend([Asked { by: Who::Author, what: What::SendIn(1) }, moira(What::Look)]),
        3 => first.push(Asked { by: Who::Reader, what: What::Report(0) }),
        _ => {}
    }
    first
}

fn text(chance: &mut Chance) -> Text {
    Text::try_from(chance.below(TEXTS)).unwrap()
}

/// A request of theirs; the number in it is what they know when they come to it.
fn one(by: Who, chance: &mut Chance) -> What {
    let share = chance.below(100);
    let text = text(chance);
    match by {
        Who::Author => match share {
            0..62 => What::SendIn(text),
            62..74 => What::Save(text),
            74..80 => What::Withdraw,
            80..92 => What::Open,
            _ => What::FindWording(text),
        },
        Who::Moira | Who::Morag => match share {
            0..20 => What::Look,
            20..36 => What::Pass(None),
            36..42 => What::Mend(None, text + MENDED),
            42..54 => What::AskForChange(None),
            54..60 => What::Decline(None),
            60..70 => What::Undo,
            70..78 => What::Correct(None, text),
            78..86 => What::Settle(None),
            86..89 => What::Withdraw,
            89..91 => What::Report(text),
            91..94 => What::TakeAway,
            94..96 => What::Judge(chance.below(2) == 0),
            _ => What::Open,
        },
        Who::Reader => match share {
            0..14 => What::Report(text),
            14..34 => What::Judge(chance.below(2) == 0),
            34..40 => What::TakeBack,
            40..52 => What::Open,
            52..62 => What::FindWording(text),
            62..74 => What::FindCorrection(text),
            74..88 => What::List,
            _ => What::Kept,
        },
    }
}

/// The numbers that one member has read last.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Known {
    waiting: Option<Number>,
    shown: Option<Number>,
}

impl Known {
    pub(super) fn learn(&mut self, answer: &Answer) {
        match answer {
            Answer::Queue(Some(Item { number, reports, .. })) if reports.is_empty() => {
                self.waiting = Some(*number);
            }
            Answer::Queue(Some(Item { number, fix, .. })) => {
                self.shown = Some(*number);
                if let Some((_, waits)) = fix {
                    self.waiting = Some(*waits);
                }
            }
            Answer::Page(Seen::Wording { number: Some(number), .. }) => {
                self.shown = Some(*number);
            }
            _ => {}
        }
    }

    /// The request with the number that they know.
    pub(super) const fn in_mind(self, what: What) -> What {
        match what {
            What::Pass(_) => What::Pass(self.waiting),
            What::AskForChange(_) => What::AskForChange(self.waiting),
            What::Decline(_) => What::Decline(self.waiting),
            What::Settle(_) => What::Settle(self.shown),
            What::Mend(_, text) => What::Mend(self.waiting, text),
            What::Correct(_, text) => What::Correct(self.shown, text),
            other => other,
        }
    }
}
