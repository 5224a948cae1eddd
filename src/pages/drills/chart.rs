//! `/drills`: every drill in one order of size; `from`, `to`, `series` and `owned` cut it, and the cut is the link.

use askama::Template;

use crate::pages::controls;
use crate::pages::drawer::{Drawer, Notice};
use crate::pages::field::{Field, Kind, items};
use crate::pages::figures::Column;
use crate::pages::form::{sentence, sentence_case};
use crate::pages::layout::{Door, Frame};
use crate::pages::link::Link;
use crate::pages::{Answer, FieldError, Query, Visit};
use crate::tables::drills::{self, Drill, SAME_SIZE, Series, owned, read};
use crate::units::Length;
use crate::units::read::{Bare, length};

/// The parameters, in the order of the canonical address.
const NAMES: [&str; 4] = ["from", "to", "series", "owned"];

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
pub(in crate::pages) fn chart(visit: &Visit<'_>) -> Answer {
    let query = &visit.query;
    let address = crate::pages::query::address("/drills", query.only(&NAMES));
    let description = "Number, letter, fraction and metric drills in one order of size, in millimetres and inches.";
    match kept(query) {
        Ok(drills) => {
            let drawer = visit.drawer();
            let rows: Vec<Row> = drills.map(|drill| row(drill, drawer)).collect();
            let title = format!("Drill chart, {}", caption(query));
            Answer::html(
                200,
                &ChartPage {
                    frame: Frame::at(visit.context, Door::Drills, &address, &title, description)
                        .with_drawer(notice(query, drawer)),
                    errors: Vec::new(),
                    fields: fields(query, &[]),
                    cut: address != "/drills",
                    caption: format!("{} drills: {}", rows.len(), caption(query)),
                    rows,
                    csv: crate::pages::query::address("/drills.csv", query.only(&NAMES)),
                },
            )
        }
        Err(errors) => Answer::html(
            422,
            &ChartPage {
                frame: Frame::at(
                    visit.context,
                    Door::Drills,
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

/// The drills a cut keeps, by size.
///
/// # Errors
/// One for each field that makes no sense.
pub(in crate::pages) fn kept(
    query: &Query,
) -> Result<impl Iterator<Item = &'static Drill> + use<>, Vec<FieldError>> {
    let cut = cut(query)?;
    Ok(drills::all().iter().filter(move |drill| cut.keeps(drill)))
}

/// What is left of the chart.
struct Cut {
    from: Option<Length>,
    to: Option<Length>,
    series: Option<Vec<Series>>,
    owned: Option<Vec<&'static Drill>>,
}

impl Cut {
    fn keeps(&self, drill: &'static Drill) -> bool {
        self.from.is_none_or(|from| drill.diameter > from - SAME_SIZE)
            && self.to.is_none_or(|to| drill.diameter < to + SAME_SIZE)
            && self.series.as_ref().is_none_or(|series| series.contains(&drill.series))
            && self.owned.as_ref().is_none_or(|owned| owned.contains(&drill))
    }
}

fn cut(query: &Query) -> Result<Cut, Vec<FieldError>> {
    let mut errors = Vec::new();
    let from = size("from", query.get("from")).unwrap_or_else(|error| {
        errors.push(error);
        None
    });
    let to = size("to", query.get("to")).unwrap_or_else(|error| {
        errors.push(error);
        None
    });
    let series = match query.get("series") {
        "" => None,
        typed => owned::series(typed)
            .map_err(|error| errors.push(FieldError::new("series", error.to_string())))
            .ok(),
    };
    let listed = match query.get("owned") {
        "" => None,
        typed => owned::owned(typed)
            .map_err(|error| errors.push(FieldError::new("owned", sentence(&error.to_string()))))
            .ok(),
    };
    if let (Some(least), Some(most)) = (from, to)
        && least > most
    {
        errors.push(FieldError::new("to", "The larger size stands first: nothing lies between."));
    }
    if errors.is_empty() { Ok(Cut { from, to, series, owned: listed }) } else { Err(errors) }
}

/// A size as a drill's name or a length; a bare number that could be either is millimetres.
fn size(field: &'static str, typed: &str) -> Result<Option<Length>, FieldError> {
    if typed.is_empty() {
        return Ok(None);
    }
    if let Ok(drill) = read::read(typed) {
        return Ok(Some(drill.diameter));
    }
    length(typed, Bare::Mm).map(Some).map_err(|error| {
        FieldError::new(field, format!("{error} Or name a drill: No. 46, F, 7/64 in."))
    })
}

/// The reader's drawer, with a cut to it whose link holds its list.
fn notice(query: &Query, drawer: Option<&Drawer>) -> Option<Notice> {
    let list = drawer?.drills.text();
    let cut = ["from", "to"].map(|name| (name, query.get(name)));
    let cut = cut.into_iter().filter(|(_, typed)| !typed.is_empty());
    let address = crate::pages::query::address("/drills", cut.chain([("owned", list.as_str())]));
    Some(Notice::of_marks(drawer)?.offering(Link::new(address, "Cut the chart to them")))
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
    let typed = query.get("series");
    let ticked = owned::series(typed).unwrap_or_default();
    let choices = Series::ALL.into_iter().map(|series| {
        (series.slug().to_owned(), sentence_case(series.slug()), ticked.contains(&series))
    });
    let kept = (ticked.is_empty() && !typed.is_empty())
        .then(|| (typed.to_owned(), format!("{typed} (no series)"), true));
    let series = items("series", choices.chain(kept));
    let fields = [
        Field::text(
            "from",
            "From",
            "A drill or a size: No. 60, 1/16 in, 2.5 mm",
            query.get("from"),
        ),
        Field::text("to", "To", "", query.get("to")),
        Field::new("series", "Series", "None ticked: every series", Kind::Ticks(series)),
        controls::owned_drills(query.get("owned")),
    ];
    let fill = |_: &str, _: &str| "/drills".to_owned();
    fields.into_iter().map(|field| field.judged(errors, fill)).collect()
}
