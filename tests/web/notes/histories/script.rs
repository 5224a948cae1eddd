//! What each member asks in one history, from a seed.

use super::model::{Answer, Asked, Item, Number, Seen, Text, What, Who};
use crate::guards::strings::Chance;

/// So many texts of each kind: few, so that the same one comes again.
const TEXTS: usize = 3;

/// Where the texts begin that only small fixes have.
const MENDED: Text = 10;

/// Where the texts of remarks begin: of the one before the others begin, then of those beside them.
const REMARKED: Text = 20;

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
            first: first(chance.below(5)),
            beside: Who::ALL.map(|by| {
                let length = if by == Who::Author { 2 } else { 2 + chance.below(2) };
                (0..length).map(|place| one(by, place, &mut chance)).collect()
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

/// A note that waits, or is shown, or shown while another wording waits, or reported, or remarked on. One moderator
/// reads it for both.
fn first(kind: usize) -> Vec<Asked> {
    let moira = |what| Asked { by: Who::Moira, what };
    let mut first = vec![moira(What::Look)];
    if kind > 0 {
        first.extend([moira(What::Pass(None)), moira(What::Open)]);
    }
    match kind {
        2 => first.extend([Asked { by: Who::Author, what: What::SendIn(1) }, moira(What::Look)]),
        3 => first.push(Asked { by: Who::Reader, what: What::Report(0) }),
        4 => first.push(Asked { by: Who::Reader, what: What::Remark(REMARKED) }),
        _ => {}
    }
    first
}

fn text(chance: &mut Chance) -> Text {
    Text::try_from(chance.below(TEXTS)).unwrap()
}

/// A request of theirs in this place; the number in it is what they know when they come to it.
fn one(by: Who, place: usize, chance: &mut Chance) -> What {
    let share = chance.below(100);
    let text = text(chance);
    let remarked = text + REMARKED;
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
            20..34 => What::Pass(None),
            34..40 => What::Mend(None, text + MENDED),
            40..50 => What::AskForChange(None),
            50..56 => What::Decline(None),
            56..64 => What::Undo,
            64..71 => What::Correct(None, text),
            71..78 => What::Settle(None),
            78..81 => What::Withdraw,
            81..83 => What::Report(text),
            83..85 => What::TakeAway,
            85..87 => What::Judge(chance.below(2) == 0),
            87..92 => What::ShowRemark(remarked),
            92..96 => What::DeclineRemark(remarked),
            _ => What::Open,
        },
        Who::Reader => match share {
            0..14 => What::Report(text),
            14..30 => What::Judge(chance.below(2) == 0),
            30..36 => What::TakeBack,
            36..48 => What::Open,
            48..56 => What::FindWording(text),
            56..66 => What::FindCorrection(text),
            66..76 => What::List,
            // In words of its own.
            76..84 => What::Remark(REMARKED + 1 + Text::try_from(place).unwrap()),
            84..92 => What::TakeRemarkBack(remarked),
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
