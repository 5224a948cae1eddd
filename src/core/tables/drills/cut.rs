//! A list of drills cut down: from a size, to a size, some series, the drills at hand.

use super::{Drill, SAME_SIZE, Series, all};
use crate::units::Length;

/// What a list of drills is cut down to. A part that is none cuts nothing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Cut {
    /// The smallest size that is kept.
    pub from: Option<Length>,
    /// The largest size that is kept.
    pub to: Option<Length>,
    /// The series that are kept.
    pub series: Option<Vec<Series>>,
    /// The drills at hand.
    pub owned: Option<Vec<&'static Drill>>,
}

impl Cut {
    /// The drills that are left, by size. Between two sizes of which the larger stands first there
    /// is none.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::tables::drills::{Cut, Series};
    /// use holewright_core::units::mm;
    /// let cut = Cut { from: Some(mm(2.05)), to: Some(mm(2.1)), ..Cut::default() };
    /// let names: Vec<&str> = cut.clone().drills().map(|drill| drill.label.as_str()).collect();
    /// assert_eq!(names, ["2.05 mm", "No. 46", "No. 45", "2.1 mm"]);
    /// let metric = Cut { series: Some(vec![Series::Metric]), ..cut };
    /// assert_eq!(metric.drills().count(), 2);
    /// ```
    pub fn drills(self) -> impl Iterator<Item = &'static Drill> {
        all().iter().filter(move |drill| self.keeps(drill))
    }

    fn keeps(&self, drill: &'static Drill) -> bool {
        self.from.is_none_or(|from| drill.diameter > from - SAME_SIZE)
            && self.to.is_none_or(|to| drill.diameter < to + SAME_SIZE)
            && self.series.as_ref().is_none_or(|series| series.contains(&drill.series))
            && self.owned.as_ref().is_none_or(|owned| owned.contains(&drill))
    }
}
