//! What is asked of a blind hole.

use crate::asking::{
    self, About, Asked, Control, Diameter, Field, FieldError, Limits, Line, Need, POINT_ANGLE,
    Reading, Typed, Word, diameter, diameter_taken, metal, too_long, word,
};
use crate::calc::aim::Aim;
use crate::calc::blind_hole::{Answer, Question, TapEnd, answer};
use crate::calc::depth::{BlindHole, LONGEST_DIAMETERS, LastTap, usual_length};
use crate::calc::tapped_in::TappedIn;
use crate::calc::tapping;
use crate::calc::thread_form::{Geometry, geometry};
use crate::tables::drills;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;
use crate::units::read::{plain, take};
use crate::units::{Length, print};

pub(super) static THREAD: Field<&Thread> = Field::new(
    About {
        name: "thread",
        label: "Thread",
        hint: "5 BA, M3, 1/4 x 40 ME",
        description: "The thread, in any usual spelling",
        example: "5 BA",
        need: Need::Always("Write the thread: 5 BA, M3, 1/4 x 40 ME."),
        limits: Limits::None,
    },
    thread,
)
.taking(|typed, _| asking::thread_taken(typed));

pub(super) static DEPTH: Field<Wanted> = Field::new(
    About {
        name: "depth",
        label: "Full thread wanted",
        hint: "A length, or so many threads: 8 mm, 1/4 in, 10 threads; one and a half diameters if left empty",
        description: "Full thread wanted: a length, a bare number being mm, or `10 threads`",
        example: "8 mm",
        need: Need::Open,
        limits: Limits::OfReader {
            taken: &["0.0001", "2000", "1 thread", "99 threads"],
            refused: &["0", "2000.1", "0 threads", "100 threads"],
        },
    },
    |typed| wanted(typed, None),
);

pub(super) static PART_THICKNESS: Field<Length> = Field::length(About {
    name: "part_thickness",
    label: "Thickness of the part",
    hint: "Where the hole is; it may be left empty",
    description: "Thickness of the part under the hole; a bare number is mm",
    example: "12 mm",
    need: Need::Open,
    limits: Limits::LENGTH,
});

/// `finish`: as in a plan, but that the plug tap is the first word, since a blind hole usually ends with it.
static FINISHES: &[Word<LastTap>] = &[
    word("plug", "Plug (bottoming)", LastTap::Plug),
    word("second", "Second", LastTap::Second),
    word("taper", "Taper", LastTap::Taper),
];

pub(super) static FINISH: Field<LastTap> = Field::words(
    About {
        name: "finish",
        label: "Last tap run down",
        hint: "",
        description: "The last tap run down",
        example: "plug",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::Pick,
    FINISHES,
);

static TAP_ENDS: &[Word<TapEnd>] = &[
    word("flat", "Flat, or ground off", TapEnd::Flat),
    word("male-centre", "A male centre stands out of it", TapEnd::MaleCentre),
];

pub(super) static TAP_END: Field<TapEnd> = Field::words(
    About {
        name: "tap_end",
        label: "End of that tap",
        hint: "Most taps up to 3/8 in come with a pointed end",
        description: "The end of the last tap",
        example: "male-centre",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::Pick,
    TAP_ENDS,
);

pub(super) static MATERIAL: Field<&Material> = Field::new(
    About {
        name: "material",
        label: "Material, for the drill",
        hint: "",
        description: "The material, by any name or mark: it chooses the drill where none is named",
        example: "gunmetal",
        need: Need::Open,
        limits: Limits::None,
    },
    metal,
)
.with_control(Control::Metal("None: a drill for iron or gunmetal"));

pub(super) static DRILL: Field<Diameter> = Field::new(
    About {
        name: "drill",
        label: "Or the drill itself",
        hint: "By any name or size: No. 36, 2.7 mm",
        description: "The tapping drill, by any name or size",
        example: "No. 36",
        need: Need::Open,
        limits: Limits::LENGTH,
    },
    diameter,
)
.taking(|typed, _| diameter_taken(typed));

/// How much full thread is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Wanted {
    /// So long.
    Length(Length),
    /// So many.
    Threads(f64),
}

/// What was asked, and the answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The thread.
    pub thread: &'static Thread,
    /// The tapping drill.
    pub drill: Diameter,
    /// What was asked.
    pub question: Question,
    /// The answer.
    pub answer: Answer,
}

/// The figures.
///
/// # Errors
/// One [`FieldError`] for each field that makes no sense, in the order of the form.
///
/// # Examples
/// 3/8 in of ¼-20 with a bottoming tap is drilled 0.525 in deep (an engineering institute's tip).
/// ```
/// use holewright_core::calculators::blind_hole::{DECLARATION, answer_to};
/// use holewright_core::units::print;
/// let asked = DECLARATION.asked([("thread", "1/4-20 UNC"), ("depth", "3/8 in")]);
/// let found = answer_to(&asked).unwrap();
/// assert_eq!(print::inch(found.answer.full_diameter, 3), "0.525 in");
/// ```
pub fn answer_to(asked: &Asked) -> Result<Found, Vec<FieldError>> {
    let mut reading = Reading::of(asked);
    let thread = reading.required(&THREAD);
    let figures = thread.map(geometry);
    let [depth, thickness] = [reading.typed(&DEPTH).text, reading.typed(&PART_THICKNESS).text];
    let full_thread = full_thread(&mut reading, thread.zip(figures), thickness);
    let part_thickness = part_thickness(&mut reading, thread, depth);
    let last_tap = reading.or_default(&FINISH);
    let tap_end = reading.or_default(&TAP_END);
    let material = reading.optional(&MATERIAL);
    let named = reading.optional(&DRILL);
    let point_angle = reading.optional(&POINT_ANGLE);
    let drill = match (named, thread.zip(figures)) {
        (Some(drill), Some((thread, figures))) => reading.keep(fits(drill, thread, &figures)),
        (None, Some((thread, _))) => reading.keep(usual_drill(thread, material, full_thread)),
        (_, None) => None,
    };
    let found = (|| {
        let (thread, Geometry { major, pitch, .. }) = thread.zip(figures)?;
        let (drill, point_angle) = drill.zip(point_angle)?;
        let hole = BlindHole { major, pitch, drill: drill.size, point_angle, last_tap };
        let full_thread = full_thread?;
        let question = Question { hole, tap_end, full_thread, part_thickness };
        Some(Found { thread, drill, question, answer: answer(&question) })
    })();
    reading.answered(found)
}

fn thread(typed: Typed<'_>) -> Result<&'static Thread, FieldError> {
    let thread = asking::thread(typed)?;
    if thread.taper.is_none() {
        Ok(thread)
    } else {
        Err(typed.error(format!(
            "{} is a taper thread: its depths go by the gauge length, which the plan gives.",
            thread.designation
        )))
    }
}

/// A length of full thread, or so many threads. A bare figure is read as in a plan for this thread.
fn wanted(typed: Typed<'_>, line: Option<Line>) -> Result<Wanted, FieldError> {
    let text = plain(typed.text);
    if let Some((number, rest)) = take(&text)
        && matches!(rest.trim(), "threads" | "thread" | "turns" | "full threads" | "pitches")
    {
        return if (1.0..=99.0).contains(&number.value) {
            Ok(Wanted::Threads(number.value))
        } else {
            Err(typed.error("Write 1 to 99 threads, or a length: 8 mm, 1/4 in."))
        };
    }
    let length = match line {
        Some(line) => line.length(typed)?,
        None => typed.length()?,
    };
    length.map(Wanted::Length).ok_or_else(|| typed.error("Write a length or so many threads."))
}

/// The full thread wanted; one and a half diameters where nothing was said.
fn full_thread(
    reading: &mut Reading<'_>,
    thread: Option<(&'static Thread, Geometry)>,
    thickness: &str,
) -> Option<Length> {
    let typed = reading.typed(&DEPTH);
    let Some((thread, figures)) = thread else {
        reading.optional(&DEPTH);
        return None;
    };
    if typed.text.is_empty() {
        return Some(usual_length(figures.major));
    }
    let line = Line::of(thread, &[thickness]).for_depth(thread);
    let read = too_long(typed).map_or_else(|| wanted(typed, Some(line)), Err);
    let length = match reading.keep(read)? {
        Wanted::Length(length) => length,
        Wanted::Threads(threads) => figures.pitch * threads,
    };
    let (least, most) = (figures.pitch, figures.major * LONGEST_DIAMETERS);
    let is_one = length >= least && length <= most;
    let sense = is_one.then_some(length).ok_or_else(|| {
        typed.error(format!(
            "Full thread of {} makes no sense here. Write {} to {}.",
            print::mm(length, 2),
            print::mm(least, 2),
            print::mm(most, 0)
        ))
    });
    reading.keep(sense)
}

/// The part's thickness, read as in a plan for this thread.
fn part_thickness(
    reading: &mut Reading<'_>,
    thread: Option<&'static Thread>,
    depth: &str,
) -> Option<Length> {
    let typed = reading.typed(&PART_THICKNESS);
    match thread {
        Some(thread) if too_long(typed).is_none() => {
            reading.keep(Line::of(thread, &[depth]).length(typed)).flatten()
        }
        _ => reading.optional(&PART_THICKNESS),
    }
}

/// A drill named, if it leaves something of the thread.
fn fits(drill: Diameter, thread: &Thread, figures: &Geometry) -> Result<Diameter, FieldError> {
    if drill.size < figures.major {
        return Ok(drill);
    }
    Err(DRILL.error(format!(
        "A drill of {} leaves nothing of {}, which is {} over the thread. Write the tapping size.",
        print::mm(drill.size, 3),
        thread.designation,
        print::mm(figures.major, 3)
    )))
}

/// The drill a plan would take, out of every drill there is.
fn usual_drill(
    thread: &'static Thread,
    material: Option<&'static Material>,
    thread_length: Option<Length>,
) -> Result<Diameter, FieldError> {
    let choice = match material {
        Some(material) => {
            let question = tapping::Question { thread, material, thread_length, aim: Aim::Usual };
            tapping::choose(question, drills::all())
        }
        None => TappedIn::UsualGroup.choice(thread),
    };
    let taken = choice.map_err(|error| DRILL.error(asking::sentence(&error.to_string())))?;
    let drill = taken.planned().drill;
    Ok(Diameter { size: drill.diameter, drill: Some(drill) })
}
