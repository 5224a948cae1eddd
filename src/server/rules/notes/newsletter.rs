//! The notes on paper: which of them make a newsletter, and how it reads as plain text.

use std::fmt::Write;

use time::{Date, Month, OffsetDateTime};

use crate::rules::clock::UnixSeconds;

/// The most notes in one.
pub const MOST: usize = 30;
/// The most characters of their texts together: about twenty pages.
pub const LONGEST: usize = 60_000;
/// What stands below the notes: on paper nothing of the page around them is left.
pub const CAUTION: &str = "Members’ experience, checked against nothing but each other’s. Keep eyes covered and work clamped, \
     keep hands and sleeves from what turns and from swarf; boilers and anything under pressure go by the national \
     boiler code and a club’s inspector, before cutting.";
/// The most months that are offered.
const OFFERED: usize = 12;

/// What a newsletter is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Issue {
    /// What was shown in this month of this year.
    Month(i32, Month),
    /// What most members found to work.
    Best,
}

impl Issue {
    /// As an address names it: `2026-11`, `best`. A month that has not come is none.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::newsletter::Issue;
    /// let now = 1_800_000_000; // 15 January 2027
    /// let issue = Issue::read("2026-11", now).unwrap();
    /// assert_eq!((issue.title().as_str(), issue.address().as_str()), ("November 2026", "2026-11"));
    /// assert!(Issue::read("best", now).is_some());
    /// for other in ["2027-02", "2026-13", "2026-1", "26-11", "2026-011", "+026-11", ""] {
    ///     assert_eq!(Issue::read(other, now), None, "{other}");
    /// }
    /// ```
    #[must_use]
    pub fn read(word: &str, now: UnixSeconds) -> Option<Self> {
        if word == "best" {
            return Some(Self::Best);
        }
        let (year, month) = word.split_once('-')?;
        let is_number = |part: &str, length| {
            part.len() == length && part.bytes().all(|letter| letter.is_ascii_digit())
        };
        if !is_number(year, 4) || !is_number(month, 2) {
            return None;
        }
        let issue =
            Self::Month(year.parse().ok()?, Month::try_from(month.parse::<u8>().ok()?).ok()?);
        let (begins, _) = issue.span()?;
        (begins <= now).then_some(issue)
    }

    /// The month at hand and those before it, newest first.
    #[must_use]
    pub fn recent(now: UnixSeconds) -> Vec<Self> {
        let Ok(now) = OffsetDateTime::from_unix_timestamp(now) else { return Vec::new() };
        let months = std::iter::successors(Some((now.year(), now.month())), |(year, month)| {
            let earlier = month.previous();
            Some((if earlier == Month::December { year - 1 } else { *year }, earlier))
        });
        months.take(OFFERED).map(|(year, month)| Self::Month(year, month)).collect()
    }

    /// In an address.
    #[must_use]
    pub fn address(self) -> String {
        match self {
            Self::Month(year, month) => format!("{year:04}-{:02}", u8::from(month)),
            Self::Best => "best".to_owned(),
        }
    }

    /// In words.
    #[must_use]
    pub fn title(self) -> String {
        match self {
            Self::Month(year, month) => format!("{month} {year}"),
            Self::Best => "The best confirmed".to_owned(),
        }
    }

    /// The first moment of its month, and that of the next; none where it is no month. Months are those of UTC.
    #[must_use]
    pub fn span(self) -> Option<(UnixSeconds, UnixSeconds)> {
        let Self::Month(year, month) = self else { return None };
        let first = |year, month| {
            let day = Date::from_calendar_date(year, month, 1).ok()?;
            Some(day.midnight().assume_utc().unix_timestamp())
        };
        let next = month.next();
        let in_year = if next == Month::January { year + 1 } else { year };
        Some((first(year, month)?, first(in_year, next)?))
    }
}

/// One note as it stands in plain text.
#[derive(Clone, Copy, Debug)]
pub struct Plain<'a> {
    /// Its title.
    pub title: &'a str,
    /// Whose it is, and when it was shown.
    pub by: &'a str,
    /// What was done, a label and what was typed.
    pub done: &'a [(&'a str, &'a str)],
    /// What is right instead.
    pub corrections: &'a [&'a str],
    /// As typed.
    pub text: &'a str,
    /// What is said beside boilers and pressure, and the dangers of its materials.
    pub caution: Option<&'a str>,
    /// What others found.
    pub counts: &'a str,
    /// That an inspector read it, and when, where it speaks of pressure.
    pub inspected: Option<&'a str>,
    /// Where it stands.
    pub address: &'a str,
}

/// Puts a note behind those before it. A paragraph stays one line: whoever sets the page breaks it.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::newsletter::{Plain, add};
/// let mut text = String::new();
/// let note = Plain {
///     title: "Tapping 4 BA", by: "Ada Penn, 2 May 2026", done: &[("Material", "gunmetal")],
///     corrections: &["Use paraffin."], caution: None, text: "It went well.", counts: "Worked for 2 members.",
///     inspected: None, address: "https://club.example/notes/7",
/// };
/// add(&mut text, &note);
/// assert_eq!(text, "TAPPING 4 BA\nAda Penn, 2 May 2026\nMaterial: gunmetal\n\nCorrection: Use paraffin.\n\n\
///     The text that was corrected: It went well.\n\nWorked for 2 members. https://club.example/notes/7\n\n\n");
/// ```
pub fn add(text: &mut String, note: &Plain<'_>) {
    let _ = writeln!(text, "{}\n{}", note.title.to_uppercase(), note.by);
    for (label, typed) in note.done {
        let _ = writeln!(text, "{label}: {typed}");
    }
    text.push('\n');
    for correction in note.corrections {
        let _ = writeln!(text, "Correction: {correction}\n");
    }
    if let Some(caution) = note.caution {
        let _ = writeln!(text, "{caution}\n");
    }
    let what = if note.corrections.is_empty() { "" } else { "The text that was corrected: " };
    let inspected = note.inspected.map(|said| format!("{said} ")).unwrap_or_default();
    let (counts, address) = (note.counts, note.address);
    let _ = write!(text, "{what}{}\n\n{counts} {inspected}{address}\n\n\n", note.text);
}

/// How many of these texts, by their length in characters, fit into one newsletter.
#[must_use]
pub fn fitting(lengths: impl Iterator<Item = usize>) -> usize {
    let mut held = 0;
    let fits = lengths.take(MOST).take_while(|length| {
        // A first one always fits.
        let fits = held == 0 || held + length <= LONGEST;
        held += length;
        fits
    });
    fits.count()
}

#[cfg(test)]
mod tests {
    use super::{Issue, LONGEST, MOST, Month, fitting};

    #[test]
    fn the_months_before_january_are_those_of_the_year_before() {
        // 15 January 2027.
        let recent = Issue::recent(1_800_000_000);
        assert_eq!(recent.len(), 12);
        assert_eq!(recent[0], Issue::Month(2027, Month::January));
        assert_eq!(recent[1], Issue::Month(2026, Month::December));
        assert_eq!(recent[11], Issue::Month(2026, Month::February));
        assert!(
            recent.iter().all(|issue| Issue::read(&issue.address(), 1_800_000_000) == Some(*issue))
        );
    }

    #[test]
    fn a_month_ends_where_the_next_begins() {
        let december = Issue::Month(2026, Month::December).span().unwrap();
        // `date -u -d 2026-12-01 +%s` and `date -u -d 2027-01-01 +%s`.
        assert_eq!(december, (1_796_083_200, 1_798_761_600));
        assert_eq!(Issue::Best.span(), None);
    }

    #[test]
    fn long_texts_make_a_short_list() {
        assert_eq!(fitting([10; 100].into_iter()), MOST);
        assert_eq!(fitting([LONGEST / 2; 5].into_iter()), 2);
        assert_eq!(fitting([LONGEST + 1, 1].into_iter()), 1);
        assert_eq!(fitting(std::iter::empty()), 0);
    }
}
