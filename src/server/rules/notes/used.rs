//! Which drills members used for a thread in a material, and for how many it went well: the one place where the club's
//! own experience is counted. It alters no figure.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use super::belongs::{Group, Thing};
use super::elsewhere::{parts, thing};
use super::found::{Found, Sense};
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::threads::Thread;
use holewright_core::tables::{drills, threads};
use holewright_core::units::Length;

/// The fewest members of whom a figure is given.
pub const FEWEST: usize = 3;
/// The same in words.
pub const FEWEST_IN_WORDS: &str = "three";

/// Said where it went wrong for somebody, and too few said for a figure.
const NOT_FOR_ALL: &str = "it did not work for everybody";

/// What one member said of the drill of a note: its author by writing it, another by a verdict.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// Whose it is.
    pub member: i64,
    /// The note.
    pub note: i64,
    /// The drill of the note, as typed.
    pub drill: String,
    /// In what material it was done, as typed; empty where the note leaves that open.
    pub material: String,
    /// For which thread, as typed; empty where the note leaves that open.
    pub thread: String,
    /// Whether the note shows a way or warns.
    pub sense: Sense,
    /// What was found of it; none of its author.
    pub verdict: Option<Judged>,
}

/// A verdict, and on what.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Judged {
    /// What was found.
    pub found: Found,
    /// In what material, as typed; empty for the note's own.
    pub material: String,
    /// At what size, as typed; empty for the note's own.
    pub size: String,
}

/// What members used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Used {
    /// How many members named a drill: [`FEWEST`] at least.
    pub members: usize,
    /// The drills, the one that most members used first.
    pub drills: Vec<Drill>,
}

/// One drill.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drill {
    /// The drill.
    pub thing: Thing,
    /// How many members used it; none of fewer than [`FEWEST`].
    pub members: Option<usize>,
    /// For how many it went well, and how many said whether it did; none where fewer than [`FEWEST`] said.
    pub went_well: Option<(usize, usize)>,
    /// Whether anybody said that it did not go well: that is never left out, however few they are.
    pub fails: bool,
    /// The notes that tell of it, by number.
    pub notes: Vec<i64>,
}

/// Counts what was said on a job, the latest first: a member counts once for each drill, as they said last. What names
/// no drill outright, what was done elsewhere than on the job, and a drill no smaller than the screw, which tapped
/// nothing, is not counted. Nothing, where that leaves fewer than [`FEWEST`] members.
#[must_use]
pub fn counted(said: &[Said], job: &[String]) -> Option<Used> {
    let mut drills = BTreeMap::<String, Told>::new();
    for (said, thing) in said.iter().filter_map(|said| Some((said, said.drill(job)?))) {
        let told = drills.entry(thing.id.clone()).or_insert_with(|| Told::of(thing));
        let held = told.went_well.entry(said.member).or_default();
        *held = held.or_else(|| said.went_well());
        told.notes.insert(said.note);
    }
    let smallest = smallest_screw(job);
    drills.retain(|_, told| {
        let size = drill_at(&told.thing.id).map(|drill| drill.diameter);
        !size.zip(smallest).is_some_and(|(size, screw)| size >= screw)
    });
    let members: BTreeSet<i64> =
        drills.values().flat_map(|told| told.went_well.keys().copied()).collect();
    if members.len() < FEWEST {
        return None;
    }
    let mut drills: Vec<Drill> = drills.into_values().map(Told::counted).collect();
    drills.sort_by_key(|drill| Reverse((drill.members, drill.went_well)));
    Some(Used { members: members.len(), drills })
}

/// The smallest major diameter of the threads of a job.
fn smallest_screw(job: &[String]) -> Option<Length> {
    let on_it = |thread: &&Thread| job.iter().any(|id| is_at(&thread.path(), id));
    let sizes = threads::all().filter(on_it).map(|thread| geometry(thread).major);
    sizes.reduce(|least, size| if size < least { size } else { least })
}

fn drill_at(id: &str) -> Option<&'static drills::Drill> {
    drills::all().iter().find(|drill| is_at(&drill.path(), id))
}

/// Whether a page's address is that of a thing.
fn is_at(path: &str, id: &str) -> bool {
    path.strip_prefix('/') == Some(id)
}

/// What was told of one drill.
struct Told {
    thing: Thing,
    /// By member; none of whoever did not say.
    went_well: BTreeMap<i64, Option<bool>>,
    notes: BTreeSet<i64>,
}

impl Told {
    const fn of(thing: Thing) -> Self {
        Self { thing, went_well: BTreeMap::new(), notes: BTreeSet::new() }
    }

    fn counted(self) -> Drill {
        let members = self.went_well.len();
        let said: Vec<bool> = self.went_well.into_values().flatten().collect();
        let well = said.iter().filter(|went_well| **went_well).count();
        Drill {
            thing: self.thing,
            members: (members >= FEWEST).then_some(members),
            went_well: (said.len() >= FEWEST).then_some((well, said.len())),
            fails: well < said.len(),
            notes: self.notes.into_iter().collect(),
        }
    }
}

impl Said {
    /// The drill that was used on the job; none where none is named outright, or the job was another. A note may stand
    /// beside what it was not done on: then its fields name something else.
    fn drill(&self, job: &[String]) -> Option<Thing> {
        let own = self.verdict.as_ref();
        let typed = own.map_or(["", ""], |own| [own.material.as_str(), &own.size]);
        let [material, thread, drill] = [Group::Materials, Group::Threads, Group::Drills]
            .map(|group| parts(typed).find_map(|part| thing(group, part)));
        // What a verdict says and nobody can read was done nobody knows where.
        let [says_in_what, says_how_large] = typed.map(|typed| !typed.trim().is_empty());
        if (says_in_what && material.is_none())
            || (says_how_large && thread.is_none() && drill.is_none())
        {
            return None;
        }
        let is_elsewhere = |said: Option<Thing>, group: Group, of_note: &str| {
            let done_on = said.or_else(|| group.named(of_note));
            done_on.is_some_and(|thing| !job.contains(&thing.id))
        };
        if is_elsewhere(material, Group::Materials, &self.material)
            || is_elsewhere(thread, Group::Threads, &self.thread)
        {
            return None;
        }
        drill.or_else(|| Group::Drills.named(&self.drill))
    }

    /// Whether it went well, where that was said: of a way by those who judged it, of a warning by its author too. That
    /// somebody wrote of a way says only that they took it.
    fn went_well(&self) -> Option<bool> {
        let found = self.verdict.as_ref().map(|judged| judged.found);
        match (self.sense, found) {
            (Sense::Way, None) => None,
            (Sense::Way, Some(Found::Worked)) | (Sense::Warning, Some(Found::DidNot)) => Some(true),
            (Sense::Way, Some(Found::DidNot)) | (Sense::Warning, None | Some(Found::Worked)) => {
                Some(false)
            }
        }
    }
}

impl Used {
    /// In one line.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::belongs::at;
    /// use holewright_server::rules::notes::used::{Drill, Used};
    /// let thing = at("drills/number/50").unwrap();
    /// let drill = |members, went_well: Option<(usize, usize)>| {
    ///     let fails = went_well.is_some_and(|(well, said)| well < said);
    ///     Drill { thing: thing.clone(), members, went_well, fails, notes: vec![] }
    /// };
    /// let line = |members, went_well| Used { members: 9, drills: vec![drill(members, went_well)] }.line();
    /// assert_eq!(line(Some(7), Some((5, 6))), "Of 9 members, 7 used No. 50; of 6 who said, it worked for 5.");
    /// assert_eq!(line(Some(7), Some((7, 7))), "Of 9 members, 7 used No. 50; it worked for all of them.");
    /// assert_eq!(line(Some(7), None), "Of 9 members, 7 used No. 50.");
    /// assert_eq!(line(None, None), "Of 9 members, no three used the same drill.");
    /// ```
    #[must_use]
    pub fn line(&self) -> String {
        let of = format!("Of {} members", self.members);
        let first = self.drills.first().and_then(|drill| Some((drill, drill.members?)));
        let Some((drill, members)) = first else {
            return format!("{of}, no {FEWEST_IN_WORDS} used the same drill.");
        };
        let used = format!("{of}, {members} used {}", drill.label());
        match drill.went_well {
            None if drill.fails => format!("{used}; {NOT_FOR_ALL} who said."),
            None => format!("{used}."),
            Some((well, said)) if well == members && said == members => {
                format!("{used}; it worked for all of them.")
            }
            Some((well, said)) => {
                let well = if well == said { "all".to_owned() } else { well.to_string() };
                format!("{used}; of {said} who said, it worked for {well}.")
            }
        }
    }
}

impl Drill {
    /// Its name, as in a sentence.
    #[must_use]
    pub fn label(&self) -> &str {
        &self.thing.title
    }

    /// How many used it.
    #[must_use]
    pub fn members(&self) -> String {
        self.members
            .map_or_else(|| format!("fewer than {FEWEST_IN_WORDS}"), |count| count.to_string())
    }

    /// For how many it worked, of those who said.
    #[must_use]
    pub fn worked(&self) -> String {
        match self.went_well {
            Some((well, said)) => format!("{well} of {said}"),
            None if self.fails => NOT_FOR_ALL.to_owned(),
            None => format!("fewer than {FEWEST_IN_WORDS} said"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Found, Judged, Said, Sense, counted};

    const JOB: [&str; 2] = ["threads/ba/8", "materials/silver-steel"];

    /// How many used a drill, and of how many that said so it went well.
    type Counts = (Option<usize>, Option<(usize, usize)>);

    fn wrote(member: i64, drill: &str) -> Said {
        let [drill, material, thread] = [drill, "silver steel", "8 BA"].map(str::to_owned);
        Said { member, note: member, drill, material, thread, sense: Sense::Way, verdict: None }
    }

    fn judged(member: i64, found: Found, (material, size): (&str, &str)) -> Said {
        let (material, size) = (material.to_owned(), size.to_owned());
        Said { verdict: Some(Judged { found, material, size }), note: 1, ..wrote(member, "1.8 mm") }
    }

    fn worked(member: i64) -> Said {
        judged(member, Found::Worked, ("", ""))
    }

    /// Each drill with its counts.
    fn counts(said: &[Said]) -> Vec<(String, Counts)> {
        let job = JOB.map(str::to_owned);
        let drills = counted(said, &job).map(|used| used.drills).unwrap_or_default();
        drills.into_iter().map(|drill| (drill.thing.id, (drill.members, drill.went_well))).collect()
    }

    #[test]
    fn nothing_is_said_of_two_members() {
        let mut said = vec![wrote(1, "1.8 mm"), worked(2)];
        assert_eq!(counts(&said), []);
        // The same member once more is no third.
        said.push(worked(2));
        assert_eq!(counts(&said), []);
        said.push(judged(3, Found::DidNot, ("", "")));
        assert_eq!(counts(&said), [("drills/metric/1.8".to_owned(), (Some(3), None))]);
        said.push(worked(4));
        assert_eq!(counts(&said)[0].1, (Some(4), Some((2, 3))));
    }

    #[test]
    fn a_member_counts_once_as_they_said_last() {
        let last = |found| {
            let begun = [judged(1, found, ("", "")), worked(1), wrote(1, "1.8"), worked(2)];
            counts(&[&begun[..], &[worked(3), wrote(4, "1,8 mm")]].concat())[0].1
        };
        assert_eq!(last(Found::DidNot), (Some(4), Some((2, 3))));
        assert_eq!(last(Found::Worked), (Some(4), Some((3, 3))));
    }

    #[test]
    fn that_somebody_wrote_of_it_is_no_word_on_whether_it_worked() {
        let said = [1, 2, 3].map(|member| wrote(member, "No. 50"));
        assert_eq!(counts(&said)[0].1, (Some(3), None));
    }

    #[test]
    fn a_drill_of_two_members_has_no_figure_and_stands_behind() {
        let said = [wrote(1, "No. 50"), wrote(2, "1.8 mm"), worked(3), wrote(4, "1.8 mm")];
        let none = ("drills/number/50".to_owned(), (None, None));
        assert_eq!(counts(&said), [("drills/metric/1.8".to_owned(), (Some(3), None)), none]);
    }

    #[test]
    fn what_was_done_elsewhere_is_not_counted() {
        let begun = [1, 2, 3].map(worked);
        for (on, is_counted) in [
            (("silver steel", "8 BA"), true),
            (("", "8BA"), true),
            (("drill rod", ""), true),
            (("silver stel", "8 BA, 1.8 mm drill"), true),
            (("brass", ""), false),
            (("", "6 BA"), false),
            (("", "rather large"), false),
        ] {
            let said = [&begun[..], &[judged(4, Found::Worked, on)]].concat();
            let count = if is_counted { 4 } else { 3 };
            let expected = ("drills/metric/1.8".to_owned(), (Some(count), Some((count, count))));
            assert_eq!(counts(&said), [expected], "{on:?}");
        }
        // Another drill, named with the verdict, is the one that was used.
        let said = [&begun[..], &[judged(4, Found::Worked, ("", "No. 50"))]].concat();
        assert_eq!(counts(&said)[1].0, "drills/number/50");
        assert_eq!(counts(&[&begun[..2], &[wrote(3, "a sharp one")]].concat()), []);
    }

    #[test]
    fn a_note_that_only_stands_beside_the_job_is_not_counted() {
        let begun = [1, 2, 3].map(|member| wrote(member, "1.8 mm"));
        let members = |said: Said| counts(&[&begun[..], &[said]].concat())[0].1.0;
        let on = |material: &str, thread: &str, said: Said| Said {
            material: material.to_owned(),
            thread: thread.to_owned(),
            ..said
        };
        for (material, thread, expected) in [
            ("free-cutting brass", "8 BA", 3),
            ("silver steel", "6 BA", 3),
            ("", "", 4),
            ("the blue bar", "the small one", 4),
        ] {
            for said in [wrote(4, "1.8 mm"), worked(4)] {
                assert_eq!(members(on(material, thread, said)), Some(expected), "{material}");
            }
        }
        // What a verdict names was done there, wherever the note was.
        let found = judged(4, Found::Worked, ("silver steel", "8 BA"));
        assert_eq!(members(on("free-cutting brass", "6 BA", found)), Some(4));
    }

    #[test]
    fn those_for_whom_it_went_wrong_stand_in_the_same_sentence() {
        let job = JOB.map(str::to_owned);
        let line = |said: &[Said]| counted(said, &job).map(|used| used.line()).unwrap_or_default();
        let failed = |member| judged(member, Found::DidNot, ("", ""));
        let two = [wrote(1, "1.8 mm"), failed(2), failed(3)];
        let said = "Of 3 members, 3 used 1.8 mm; it did not work for everybody who said.";
        assert_eq!(line(&two), said);
        let three = [&two[..], &[failed(4)]].concat();
        assert_eq!(line(&three), "Of 4 members, 4 used 1.8 mm; of 3 who said, it worked for 0.");
        assert_eq!(line(&[1, 2, 3].map(|by| wrote(by, "1.8 mm"))), "Of 3 members, 3 used 1.8 mm.");
    }

    /// 8 BA is 2.2 mm over its thread (BS 93).
    #[test]
    fn a_drill_that_clears_the_screw_tapped_nothing() {
        for (drill, is_counted) in [("1.8 mm", true), ("2.15 mm", true), ("2.2 mm", false)] {
            let said = [1, 2, 3].map(|member| wrote(member, drill));
            assert_eq!(!counts(&said).is_empty(), is_counted, "{drill}");
        }
    }

    #[test]
    fn a_warning_is_a_drill_that_went_wrong() {
        let warned = |said: Said| Said { sense: Sense::Warning, ..said };
        let said = [wrote(1, "1.8 mm"), worked(2), judged(3, Found::DidNot, ("", ""))].map(warned);
        assert_eq!(counts(&said)[0].1, (Some(3), Some((1, 3))));
    }
}
