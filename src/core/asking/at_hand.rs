//! The drills and the speeds at hand, each from two fields that many questions have.

use super::error::{quoted, sentence};
use super::{About, Control, Field, FieldError, Limits, Need, Reading, Taken, Typed};
use crate::calc::machines::Machines;
use crate::plan::AtHand;
use crate::tables::drills::{self, Drill, Series, owned};
use crate::units::{Frequency, in_rpm, read};

/// The drill series at hand.
pub static SERIES: Field<Vec<Series>> =
    series("Drill series at hand, separated by commas: `number`, `letter`, `fraction`, `metric`");

/// Single drills at hand.
pub static OWNED: Field<Vec<&'static Drill>> = owned("Drills at hand, `-` marks a range");

/// The drill series at hand, for a question that has more to say of them.
pub const fn series(description: &'static str) -> Field<Vec<Series>> {
    let about = About {
        name: "series",
        label: "Drill series at hand",
        hint: "None ticked: every series",
        description,
        example: "number,metric",
        need: Need::Open,
        limits: Limits::None,
    };
    Field::new(about, |typed| typed.read(owned::series)).with_control(Control::Series)
}

/// Single drills at hand, for a question that has more to say of them.
pub const fn owned(description: &'static str) -> Field<Vec<&'static Drill>> {
    let about = About {
        name: "owned",
        label: "Or just these drills",
        hint: "A list with ranges: 1-60, 1/16-1/2x64ths, 1-6x0.1mm, 2.05mm",
        description,
        example: "1-60, 1-6x0.1mm",
        need: Need::Open,
        limits: Limits::None,
    };
    Field::new(about, |typed| typed.read(owned::owned)).taking(|typed, _| owned_taken(typed))
}

/// What a list of bare sizes was taken for, where all are taken as millimetres.
#[must_use]
pub fn owned_taken(typed: Typed<'_>) -> Option<Taken> {
    let taken_as = owned::in_millimetres(typed.text)?;
    Some(Taken {
        field: typed.field,
        typed: quoted(typed.text),
        taken_as,
        why: "each is the size of a metric drill, and some can be nothing else",
        others: Vec::new(),
    })
}

/// The speeds a machine has, or several with their names.
pub static SPINDLE_SPEEDS: Field<Machines> = Field::new(
    About {
        name: "spindle_speeds",
        label: "Machine speeds",
        hint: "In rev/min: 350, 500, 1000; or 200-2000 for any between. Several machines by name: lathe: 350, 500; bench drill: 600-2000",
        description: "Machine speeds, in revolutions a minute; `200-2000` for any between; several machines each with its name, `lathe: 350, 500; bench drill: 600-2000`",
        example: "350, 500, 1000",
        need: Need::Open,
        limits: Limits::SPINDLE_SPEED,
    },
    |typed| typed.read(Machines::read),
);

/// Its fastest.
pub static SPINDLE_MAX: Field<Frequency> = Field::new(
    About {
        name: "spindle_max",
        label: "Or just the fastest",
        hint: "In rev/min",
        description: "Fastest machine speed, in revolutions a minute",
        example: "2000",
        need: Need::Open,
        limits: Limits::SPINDLE_SPEED,
    },
    |typed| typed.read(read::spindle_speed),
)
.measured(|speed| in_rpm(*speed));

/// The drills that may be chosen from, smallest first; every drill where nothing was said.
pub fn at_hand(reading: &mut Reading<'_>) -> Vec<&'static Drill> {
    let series = reading.optional(&SERIES);
    let listed = reading.optional(&OWNED);
    let typed = reading.typed(&OWNED);
    match reading.keep(in_both(typed, series, listed)).unwrap_or_default() {
        AtHand::All => drills::all().iter().collect(),
        AtHand::Only(held) => held,
    }
}

/// The machines at hand; none where nothing was said.
pub fn machines(reading: &mut Reading<'_>) -> Machines {
    let listed = reading.or_default(&SPINDLE_SPEEDS);
    let fastest = reading.optional(&SPINDLE_MAX);
    let typed = reading.typed(&SPINDLE_MAX);
    reading.keep(speeds_of(typed, listed, fastest)).unwrap_or_default()
}

/// The drills of both: with a list and series, those of the list in the series.
///
/// # Errors
/// There is none.
pub fn in_both(
    typed: Typed<'_>,
    series: Option<Vec<Series>>,
    listed: Option<Vec<&'static Drill>>,
) -> Result<AtHand, FieldError> {
    let wanted =
        |drill: &&'static Drill| series.as_ref().is_none_or(|held| held.contains(&drill.series));
    match (&series, listed) {
        (None, None) => Ok(AtHand::All),
        (Some(_), None) => Ok(AtHand::Only(drills::all().iter().filter(wanted).collect())),
        (_, Some(listed)) => {
            let both: Vec<_> = listed.into_iter().filter(wanted).collect();
            if both.is_empty() {
                Err(typed.error("None of the drills listed is in the series chosen."))
            } else {
                Ok(AtHand::Only(both))
            }
        }
    }
}

/// The speeds of a list up to the fastest, either of which may be unknown.
///
/// # Errors
/// None of the list is left.
pub fn speeds_of(
    typed: Typed<'_>,
    listed: Machines,
    fastest: Option<Frequency>,
) -> Result<Machines, FieldError> {
    listed.held_to(fastest).map_err(|error| typed.error(sentence(&error.to_string())))
}
