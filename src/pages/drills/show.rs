//! `/drills/{series}/{size}`: one drill – both units, neighbours in every series, what it taps and clears.

use askama::Template;

use super::screws::{Clears, Taps, clears, taps};
use crate::drawer::Notice;
use crate::figures::{self, Both};
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{Reply, Visit, not_found};
use holewright_core::calc::neighbours::{Neighbour, around};
use holewright_core::tables::drills::{self, Drill, Series, read};
use holewright_core::units::print::sentence as sentence_case;
use holewright_core::units::{in_inch, in_mm, print};

#[derive(Template)]
#[template(path = "drills/show.html")]
struct DrillPage {
    frame: Frame,
    label: String,
    size: Both,
    chart: String,
    csv: String,
    neighbours: Vec<Near>,
    taps: Vec<Taps>,
    clears: Vec<Clears>,
}

/// A drill near this one.
struct Near {
    series: String,
    link: Link,
    mm: String,
    error_mm: String,
    error_thou: String,
}

/// One drill.
pub(crate) fn show(visit: &Visit<'_>, series: &str, size: &str) -> Reply {
    let Some(series) = Series::from_slug(series) else {
        return not_found::near(visit, size);
    };
    match (drills::find(series, size), read::read(&format!("{series} {size}"))) {
        (Some(drill), _) => Reply::html(200, &page(visit, drill)),
        (None, Ok(drill)) => Reply::moved(&drill.path()),
        (None, Err(_)) => respelled(visit, series, size),
    }
}

/// `3.0` is `3`, and `f` in another series is still Letter F.
fn respelled(visit: &Visit<'_>, series: Series, size: &str) -> Reply {
    let spelling = match series {
        Series::Number => format!("no {size}"),
        Series::Letter => format!("letter {size}"),
        Series::Fraction => format!("{} in", size.replace('-', "/")),
        Series::Metric => format!("{size} mm"),
    };
    match read::read(&spelling) {
        Ok(drill) => Reply::moved(&drill.path()),
        Err(_) => not_found::near(visit, &spelling),
    }
}

fn page(visit: &Visit<'_>, drill: &'static Drill) -> DrillPage {
    let size = Both::of(drill.diameter);
    let title = format!("{}: {}, {}", drill.label, size.mm, size.inch);
    let description = format!("{} drill: {} or {}.", drill.label, size.mm, size.inch);
    DrillPage {
        frame: Frame::new(visit, Section::Drills, &title, &description)
            .with_drawer(Notice::of_drill(visit.drawer(), drill)),
        label: drill.label.clone(),
        size,
        chart: format!("/drills#{}-{}", drill.series, drill.size),
        csv: format!("{}.csv", drill.path()),
        neighbours: around(drill)
            .iter()
            .flat_map(|found| [found.below, found.above])
            .flatten()
            .map(|near| row(&near))
            .collect(),
        taps: taps(drill),
        clears: clears(drill),
    }
}

fn row(near: &Neighbour) -> Near {
    Near {
        series: sentence_case(near.drill.series.slug()),
        link: Link::drill(near.drill),
        mm: print::fixed(in_mm(near.drill.diameter), 3),
        error_mm: figures::signed(in_mm(near.error), 3),
        error_thou: figures::signed(in_inch(near.error) * 1000.0, 1),
    }
}
