//! `/drills`: every drill in one order of size; `from`, `to`, `series` and `owned` cut it, and the cut is the link.

use askama::Template;

use super::cut::{self, NAMES};
use crate::controls;
use crate::drawer::{Drawer, Notice};
use crate::field::Field;
use crate::figures::Column;
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{FieldError, Query, Reply, Visit};
use holewright_core::asking::OWNED;
use holewright_core::tables::drills::Drill;

#[derive(Template)]
#[template(path = "drills/chart.html")]
struct ChartPage {
    frame: Frame,
    errors: Vec<FieldError>,
    fields: Vec<Field>,
    cut: bool,
    caption: String,
    rows: Vec<Row>,
    /// The cut as a file.
    csv: String,
}

struct Row {
    id: String,
    link: Link,
    series: &'static str,
    size: Column,
    /// It is in the reader's drawer.
    yours: bool,
}

/// The chart, or what is wrong with the cut.
pub(crate) fn chart(visit: &Visit<'_>) -> Reply {
    let query = &visit.query.clone().cut(&NAMES);
    let address = crate::query::address("/drills", query.only(&NAMES));
    let description = "Number, letter, fraction and metric drills in one order of size, in millimetres and inches.";
    match cut::read(query) {
        Ok(cut) => {
            let drawer = visit.drawer();
            let rows: Vec<Row> = cut.drills().map(|drill| row(drill, drawer)).collect();
            let title = format!("Drill chart, {}", caption(query));
            Reply::html(
                200,
                &ChartPage {
                    frame: Frame::at(visit.context, Section::Drills, &address, &title, description)
                        .with_drawer(notice(query, drawer)),
                    errors: Vec::new(),
                    fields: fields(query, &[]),
                    cut: address != "/drills",
                    caption: format!("{}: {}", counted(rows.len()), caption(query)),
                    rows,
                    csv: crate::query::address("/drills.csv", query.only(&NAMES)),
                },
            )
        }
        Err(errors) => Reply::html(
            422,
            &ChartPage {
                frame: Frame::at(
                    visit.context,
                    Section::Drills,
                    "/drills",
                    "Error: drill chart",
                    description,
                )
                .of_a_mistake(),
                fields: fields(query, &errors),
                errors,
                cut: true,
                caption: String::new(),
                rows: Vec::new(),
                csv: String::new(),
            },
        ),
    }
}

/// The reader's drawer, with a cut to it whose link holds its list.
fn notice(query: &Query, drawer: Option<&Drawer>) -> Option<Notice> {
    let list = drawer?.drills.text();
    let cut = ["from", "to"].map(|name| (name, query.get(name)));
    let cut = cut.into_iter().filter(|(_, typed)| !typed.is_empty());
    let address = crate::query::address("/drills", cut.chain([("owned", list.as_str())]));
    Some(Notice::of_marks(drawer)?.offering(Link::new(address, "Show only them")))
}

fn row(drill: &Drill, drawer: Option<&Drawer>) -> Row {
    Row {
        id: format!("{}-{}", drill.series, drill.size),
        link: Link::drill(drill),
        series: drill.series.slug(),
        size: Column::of(drill.diameter),
        yours: drawer.is_some_and(|drawer| drawer.drills.has(drill)),
    }
}

/// `1 drill`, `21 drills`
fn counted(drills: usize) -> String {
    if drills == 1 { "1 drill".to_owned() } else { format!("{drills} drills") }
}

fn caption(query: &Query) -> String {
    let series = match query.get("series") {
        "" => "every series".to_owned(),
        typed => typed.replace(',', ", "),
    };
    let series = match query.get("owned") {
        "" => series,
        _ => format!("{series}, those listed"),
    };
    match (query.get("from"), query.get("to")) {
        ("", "") => series,
        (from, "") => format!("{series}, from {from}"),
        ("", to) => format!("{series}, up to {to}"),
        (from, to) => format!("{series}, {from} to {to}"),
    }
}

fn fields(query: &Query, errors: &[FieldError]) -> Vec<Field> {
    let fields = [
        Field::text(
            "from",
            "From",
            "A drill or a size: No. 60, 1/16 in, 2.5 mm",
            query.get("from"),
        ),
        Field::text("to", "To", "", query.get("to")),
        controls::series("Series", query.get("series")),
        controls::declared(&OWNED, query.get("owned")),
    ];
    let fill = |_: &str, _: &str| "/drills".to_owned();
    fields.into_iter().map(|field| field.judged(errors, fill)).collect()
}
