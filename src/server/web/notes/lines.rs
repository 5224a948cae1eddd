//! What waits, counted, and a line for each note: what it is, and for how long it has waited.

use crate::db::notes::queue::{Line, MOST};
use crate::rules::clock::UnixSeconds;

/// How many wait, and of which kinds: "30 wait: 2 reported, 28 new."
pub(super) fn counted(lines: &[Line]) -> String {
    let count = |is_it: &dyn Fn(&Line) -> bool| lines.iter().filter(|line| is_it(line)).count();
    let kinds = [
        (count(&|line| line.is_reported), "reported", "reported"),
        (count(&|line| !line.is_reported && line.is_new), "new", "new"),
        (count(&|line| !line.is_reported && !line.is_new), "new wording", "new wordings"),
    ];
    let kinds = kinds.into_iter().filter(|(count, ..)| *count > 0);
    let kinds: Vec<String> = kinds
        .map(|(count, one, more)| format!("{count} {}", if count == 1 { one } else { more }))
        .collect();
    let wait = if lines.len() == 1 { "waits" } else { "wait" };
    let counted = format!("{} {wait}: {}.", lines.len(), kinds.join(", "));
    match count(&|line| line.is_pressure) {
        0 => counted,
        1 => format!("{counted} 1 is for an inspector."),
        many => format!("{counted} {many} are for an inspector."),
    }
}

/// What sort of note it is.
pub(super) fn kind(line: &Line) -> String {
    let kind = match (line.is_reported, line.is_new) {
        (true, _) => "reported",
        (false, true) => "new",
        (false, false) => "new wording",
    };
    if line.is_pressure { format!("{kind}, for an inspector") } else { kind.to_owned() }
}

/// For how long: "3 days".
pub(super) fn age(since: UnixSeconds, now: UnixSeconds) -> String {
    let hours = (now - since) / 3600;
    let (count, one, more) = match hours {
        ..1 => return "less than an hour".to_owned(),
        1..24 => (hours, "hour", "hours"),
        _ => (hours / 24, "day", "days"),
    };
    format!("{count} {}", if count == 1 { one } else { more })
}

/// The way to what is not on this page.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Further {
    /// Which of how many stand here, where it is not all.
    pub(super) here: Option<String>,
    /// The others: address and words.
    pub(super) pages: Vec<(String, String)>,
}

impl Further {
    /// From this place on, of so many.
    pub(super) fn of(from: usize, count: usize) -> Self {
        if count <= MOST {
            return Self::default();
        }
        let to = |from: usize| count.min(from + MOST);
        let words = |from: usize| format!("{} to {}", from + 1, to(from));
        let before = from.checked_sub(MOST).map(|before| (before, "Those before"));
        let after = Some((from + MOST, "The next")).filter(|(after, _)| *after < count);
        let page = |(from, what): (usize, &str)| {
            (format!("/queue?from={from}"), format!("{what}, {}", words(from)))
        };
        Self {
            here: Some(format!("Here are {} of {count}.", words(from))),
            pages: before.into_iter().chain(after).map(page).collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Further, Line, age, counted, kind};
    use crate::rules::notes::NoteId;

    fn lines(counts: [usize; 3]) -> Vec<Line> {
        let line = |kind| Line {
            id: NoteId(1),
            is_reported: kind == 0,
            is_new: kind == 1,
            is_pressure: false,
            since: 0,
        };
        let each = counts.into_iter().enumerate();
        each.flat_map(|(kind, count)| vec![line(kind); count]).collect()
    }

    #[test]
    fn everything_that_waits_is_counted() {
        assert_eq!(counted(&lines([2, 28, 0])), "30 wait: 2 reported, 28 new.");
        assert_eq!(counted(&lines([0, 0, 1])), "1 waits: 1 new wording.");
        let mut some = lines([1, 1, 2]);
        some[3].is_pressure = true;
        let words = "4 wait: 1 reported, 1 new, 2 new wordings. 1 is for an inspector.";
        assert_eq!(counted(&some), words);
        assert_eq!(kind(&some[3]), "new wording, for an inspector");
    }

    #[test]
    fn an_age_is_told_in_hours_or_days() {
        for (seconds, words) in [
            (-90_000, "less than an hour"),
            (3_599, "less than an hour"),
            (3_600, "1 hour"),
            (86_399, "23 hours"),
            (86_400, "1 day"),
            (3 * 86_400 + 5, "3 days"),
        ] {
            assert_eq!(age(1_000_000, 1_000_000 + seconds), words);
        }
    }

    #[test]
    fn every_note_has_a_page() {
        assert_eq!(Further::of(0, 20), Further::default());
        let first = Further::of(0, 45);
        assert_eq!(first.here.as_deref(), Some("Here are 1 to 20 of 45."));
        assert_eq!(first.pages, [("/queue?from=20".to_owned(), "The next, 21 to 40".to_owned())]);
        let last = Further::of(40, 45).pages;
        assert_eq!(last, [("/queue?from=20".to_owned(), "Those before, 21 to 40".to_owned())]);
    }
}
