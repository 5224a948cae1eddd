//! Which drills members used for a thread in a material, and for how many it went well: the one place where the club's
//! own experience is counted. It alters no figure.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use super::belongs::{Group, Thing};
use super::found::{Found, Sense};

/// The fewest members of whom a figure is given.
pub const FEWEST: usize = 3;
/// The same in words.
pub const FEWEST_IN_WORDS: &str = "three";

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
    /// How many members used it, and for how many of them it went well; none of fewer than [`FEWEST`].
    pub counts: Option<(usize, usize)>,
    /// The notes that tell of it, by number.
    pub notes: Vec<i64>,
}

/// Counts what was said on a job, the latest first: a member counts once for each drill, as they said last. What names
/// no drill outright, and what was done elsewhere than on the job, is not counted. Nothing, where that leaves fewer
/// than [`FEWEST`] members.
#[must_use]
pub fn counted(said: &[Said], job: &[String]) -> Option<Used> {
    let mut drills = BTreeMap::<String, Told>::new();
    for (said, thing) in said.iter().filter_map(|said| Some((said, said.drill(job)?))) {
        let told = drills.entry(thing.id.clone()).or_insert_with(|| Told::of(thing));
        told.went_well.entry(said.member).or_insert_with(|| said.went_well());
        told.notes.insert(said.note);
    }
    let members: BTreeSet<i64> =
        drills.values().flat_map(|told| told.went_well.keys().copied()).collect();
    if members.len() < FEWEST {
        return None;
    }
    let mut drills: Vec<Drill> = drills.into_values().map(Told::counted).collect();
    drills.sort_by_key(|drill| Reverse(drill.counts));
    Some(Used { members: members.len(), drills })
}

/// What was told of one drill.
struct Told {
    thing: Thing,
    /// By member.
    went_well: BTreeMap<i64, bool>,
    notes: BTreeSet<i64>,
}

impl Told {
    const fn of(thing: Thing) -> Self {
        Self { thing, went_well: BTreeMap::new(), notes: BTreeSet::new() }
    }

    fn counted(self) -> Drill {
        let members = self.went_well.len();
        let well = self.went_well.values().filter(|went_well| **went_well).count();
        Drill {
            thing: self.thing,
            counts: (members >= FEWEST).then_some((members, well)),
            notes: self.notes.into_iter().collect(),
        }
    }
}

impl Said {
    /// The drill that was used on the job; none where none is named outright, or the job was another. A note may stand
    /// beside what it was not done on: then its fields name something else.
    fn drill(&self, job: &[String]) -> Option<Thing> {
        let is_on_job =
            |group: Group, typed: &str| group.named(typed).map(|thing| job.contains(&thing.id));
        let own = self.verdict.as_ref();
        let [material, size] = [own.map(|own| &own.material), own.map(|own| &own.size)]
            .map(|typed| typed.map_or("", |typed| typed.trim()));
        let is_in_it = if material.is_empty() {
            is_on_job(Group::Materials, &self.material) != Some(false)
        } else {
            is_on_job(Group::Materials, material) == Some(true)
        };
        let (is_for_it, drill) = match is_on_job(Group::Threads, size) {
            Some(is_for_it) => (is_for_it, self.drill.as_str()),
            None => {
                let is_for_it = is_on_job(Group::Threads, &self.thread) != Some(false);
                (is_for_it, if size.is_empty() { self.drill.as_str() } else { size })
            }
        };
        (is_in_it && is_for_it).then(|| Group::Drills.named(drill)).flatten()
    }

    /// Whether it went well: a way that worked, or a warning of what did not happen.
    fn went_well(&self) -> bool {
        match (self.sense, self.verdict.as_ref().map(|judged| judged.found)) {
            (Sense::Way, None | Some(Found::Worked)) | (Sense::Warning, Some(Found::DidNot)) => {
                true
            }
            (Sense::Way, Some(Found::DidNot)) | (Sense::Warning, None | Some(Found::Worked)) => {
                false
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
    /// let drill = |counts| Drill { thing: thing.clone(), counts, notes: vec![] };
    /// let line = |counts| Used { members: 9, drills: vec![drill(counts)] }.line();
    /// assert_eq!(line(Some((7, 6))), "Of 9 members, 7 used No. 50; it worked for 6 of them.");
    /// assert_eq!(line(Some((7, 7))), "Of 9 members, 7 used No. 50; it worked for all of them.");
    /// assert_eq!(line(None), "Of 9 members, no three used the same drill.");
    /// ```
    #[must_use]
    pub fn line(&self) -> String {
        let first = self.drills.first().and_then(|drill| Some((drill.label(), drill.counts?)));
        let of = format!("Of {} members", self.members);
        match first {
            None => format!("{of}, no {FEWEST_IN_WORDS} used the same drill."),
            Some((drill, (members, well))) => {
                format!(
                    "{of}, {members} used {drill}; it worked for {} of them.",
                    all_of(well, members)
                )
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
        self.counts.map_or_else(
            || format!("fewer than {FEWEST_IN_WORDS}"),
            |(members, _)| members.to_string(),
        )
    }

    /// For how many of them it worked; empty where that is not counted.
    #[must_use]
    pub fn worked(&self) -> String {
        self.counts.map(|(members, well)| all_of(well, members)).unwrap_or_default()
    }
}

fn all_of(well: usize, members: usize) -> String {
    match well {
        0 => "none".to_owned(),
        well if well == members => "all".to_owned(),
        well => well.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::{Found, Judged, Said, Sense, counted};

    const JOB: [&str; 2] = ["threads/ba/8", "materials/silver-steel"];

    fn wrote(member: i64, drill: &str) -> Said {
        let [drill, material, thread] = [drill, "silver steel", "8 BA"].map(str::to_owned);
        Said { member, note: member, drill, material, thread, sense: Sense::Way, verdict: None }
    }

    fn judged(member: i64, found: Found, (material, size): (&str, &str)) -> Said {
        let (material, size) = (material.to_owned(), size.to_owned());
        Said { verdict: Some(Judged { found, material, size }), note: 1, ..wrote(member, "1.8 mm") }
    }

    /// Each drill with its counts.
    fn counts(said: &[Said]) -> Vec<(String, Option<(usize, usize)>)> {
        let job = JOB.map(str::to_owned);
        let drills = counted(said, &job).map(|used| used.drills).unwrap_or_default();
        drills.into_iter().map(|drill| (drill.thing.id, drill.counts)).collect()
    }

    #[test]
    fn nothing_is_said_of_two_members() {
        let mut said = vec![wrote(1, "1.8 mm"), judged(2, Found::Worked, ("", ""))];
        assert_eq!(counts(&said), []);
        // The same member once more is no third.
        said.push(judged(2, Found::DidNot, ("", "")));
        assert_eq!(counts(&said), []);
        said.push(judged(3, Found::DidNot, ("", "")));
        assert_eq!(counts(&said), [("drills/metric/1.8".to_owned(), Some((3, 2)))]);
    }

    #[test]
    fn a_member_counts_once_as_they_said_last() {
        let last = |found| {
            counts(&[
                judged(1, found, ("", "")),
                wrote(1, "1.8 mm"),
                wrote(2, "1.8"),
                wrote(3, "1,8 mm"),
            ])
        };
        assert_eq!(last(Found::DidNot)[0].1, Some((3, 2)));
        assert_eq!(last(Found::Worked)[0].1, Some((3, 3)));
    }

    #[test]
    fn a_drill_of_two_members_has_no_figure_and_stands_behind() {
        let said = [wrote(1, "No. 50"), wrote(2, "1.8 mm"), wrote(3, "1.8 mm"), wrote(4, "1.8 mm")];
        let none = ("drills/number/50".to_owned(), None);
        assert_eq!(counts(&said), [("drills/metric/1.8".to_owned(), Some((3, 3))), none]);
    }

    #[test]
    fn what_was_done_elsewhere_is_not_counted() {
        let begun = [wrote(1, "1.8 mm"), wrote(2, "1.8 mm"), wrote(3, "1.8 mm")];
        for (on, drill, is_counted) in [
            (("silver steel", "8 BA"), "drills/metric/1.8", true),
            (("", "8BA"), "drills/metric/1.8", true),
            (("drill rod", ""), "drills/metric/1.8", true),
            (("brass", ""), "drills/metric/1.8", false),
            (("", "6 BA"), "drills/metric/1.8", false),
            (("", "rather large"), "drills/metric/1.8", false),
        ] {
            let said = [&begun[..], &[judged(4, Found::Worked, on)]].concat();
            let expected = if is_counted { (4, 4) } else { (3, 3) };
            assert_eq!(counts(&said), [(drill.to_owned(), Some(expected))], "{on:?}");
        }
        // Another drill, named with the verdict, is the one that was used.
        let said = [&begun[..], &[judged(4, Found::Worked, ("", "No. 50"))]].concat();
        assert_eq!(counts(&said)[1].0, "drills/number/50");
        assert_eq!(counts(&[&begun[..2], &[wrote(3, "a sharp one")]].concat()), []);
    }

    #[test]
    fn a_note_that_only_stands_beside_the_job_is_not_counted() {
        let begun = [1, 2, 3].map(|member| wrote(member, "1.8 mm"));
        let counted = |said: Said| counts(&[&begun[..], &[said]].concat())[0].1;
        let on = |material: &str, thread: &str, said: Said| Said {
            material: material.to_owned(),
            thread: thread.to_owned(),
            ..said
        };
        for (material, thread, is_counted) in [
            ("free-cutting brass", "8 BA", false),
            ("silver steel", "6 BA", false),
            ("", "", true),
            ("the blue bar", "the small one", true),
        ] {
            let expected = Some(if is_counted { (4, 4) } else { (3, 3) });
            assert_eq!(counted(on(material, thread, wrote(4, "1.8 mm"))), expected, "{material}");
            let found = judged(4, Found::Worked, ("", ""));
            assert_eq!(counted(on(material, thread, found)), expected, "{material}");
        }
        // What a verdict names was done there, wherever the note was.
        let found = judged(4, Found::Worked, ("silver steel", "8 BA"));
        assert_eq!(counted(on("free-cutting brass", "6 BA", found)), Some((4, 4)));
    }

    #[test]
    fn a_warning_is_a_drill_that_went_wrong() {
        let warned = |said: Said| Said { sense: Sense::Warning, ..said };
        let said = [
            warned(wrote(1, "1.8 mm")),
            warned(judged(2, Found::Worked, ("", ""))),
            warned(judged(3, Found::DidNot, ("", ""))),
        ];
        assert_eq!(counts(&said)[0].1, Some((3, 1)));
    }
}
