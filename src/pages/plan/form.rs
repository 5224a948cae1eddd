//! The plan's form, filled as it was typed, in the order a person thinks.

use super::request::Request;
use super::words;
use crate::FieldError;
use crate::controls::{self, choices};
use crate::drawer::Filled;
use crate::field::Field;
use holewright_core::asking::{FITS, OWNED, SERIES, SPINDLE_MAX, SPINDLE_SPEEDS, Word};
use holewright_core::tables::materials::Material;
use holewright_core::tables::threads::Thread;

/// The whole form.
pub(super) struct Form {
    /// What thread, what metal, through or blind, how deep.
    pub(super) first: Vec<Field>,
    /// The rest, in groups.
    pub(super) rest: Vec<FieldGroup>,
    /// Something in the rest was used, or is wrong: it stands open.
    pub(super) rest_open: bool,
}

impl Form {
    /// The same form beside a drawer in use.
    pub(super) fn beside(mut self, filled: &Filled<'_>) -> Self {
        filled.say_at(self.rest.iter_mut().flat_map(|group| &mut group.fields));
        self
    }
}

/// Fields under one heading.
pub(super) struct FieldGroup {
    pub(super) heading: &'static str,
    pub(super) fields: Vec<Field>,
}

/// The form as typed, each field with its error.
pub(super) fn form(request: &Request, errors: &[FieldError]) -> Form {
    let carried = request.carried(errors);
    let judge = |fields: Vec<Field>| -> Vec<Field> {
        let fill = |field: &str, value: &str| carried.address_with(field, value);
        fields.into_iter().map(|field| field.judged(errors, fill)).collect()
    };
    let rest: Vec<FieldGroup> = rest(request)
        .into_iter()
        .map(|(heading, fields)| FieldGroup { heading, fields: judge(fields) })
        .collect();
    let rest_open = rest
        .iter()
        .flat_map(|group| &group.fields)
        .any(|field| field.error.is_some() || !request.typed(field.name).is_empty());
    Form { first: judge(first(request)), rest, rest_open }
}

/// The four fields that make a plan, empty: for the home page.
pub(crate) fn short_form() -> Vec<Field> {
    first(&Request::default())
}

/// The same for a thread's own page: the thread is there already.
pub(crate) fn short_form_for(thread: &Thread) -> Vec<Field> {
    known("thread", first(&Request::for_thread(thread)))
}

/// The same for a material's page: the metal is chosen already.
pub(crate) fn short_form_in(material: &Material) -> Vec<Field> {
    known("material", first(&Request::for_material(material)))
}

fn known(name: &str, fields: Vec<Field>) -> Vec<Field> {
    let known = |field: Field| if field.name == name { field.known() } else { field };
    fields.into_iter().map(known).collect()
}

fn first(request: &Request) -> Vec<Field> {
    vec![
        text(request, "thread", "Thread", "5 BA, 1/4 BSF, M3, 1/4 x 40 ME"),
        metal(request, "material", "Material that is tapped", "Choose the material"),
        pick(request, "hole", "Hole", words::HOLES),
        text(
            request,
            "depth",
            "How deep",
            "Full thread if blind, thickness if through: 10 mm, 3/8 in",
        ),
    ]
}

fn rest(request: &Request) -> [(&'static str, Vec<Field>); 3] {
    [
        (
            "A part screwed down on top",
            vec![
                metal(request, "over", "Its material", "No part on top"),
                text(request, "over_thickness", "Its thickness", "3 mm, 1/8 in"),
                list(request, "upper_hole", "Its hole as it comes", words::UPPER_HOLES),
                list(request, "fit", "Fit of the screw in it", FITS),
                optional_list(request, "head", "Head of the screw", "No seat wanted", words::HEADS),
            ],
        ),
        (
            "Drills and taps at hand",
            vec![
                controls::declared(&SERIES, request.typed("series")),
                controls::declared(&OWNED, request.typed("owned")),
                list(request, "aim", "How much thread", words::AIMS),
                list(request, "tap", "Tap", words::TAPS),
                list(request, "tap_steel", "Steel of the tap", words::TAP_STEELS),
                optional_list(
                    request,
                    "finish",
                    "Last tap run down",
                    "What the hole asks for",
                    words::FINISHES,
                ),
                optional_list(request, "hand", "Hand", "As the thread is written", words::HANDS),
            ],
        ),
        (
            "The part and the machine",
            vec![
                text(
                    request,
                    "part_thickness",
                    "Thickness of the tapped part",
                    "For the wall left under a blind hole",
                ),
                text(
                    request,
                    "measured_hole",
                    "Hole already drilled, as measured",
                    "To judge the thread it leaves",
                ),
                text(
                    request,
                    "screw",
                    "Metal of the screw",
                    "To say what gives way first: 8.8, A2-70, brass",
                ),
                text(
                    request,
                    "centre_error",
                    "How far a marked-out centre may be off",
                    "To see whether the clearance takes it up: 0.2 mm, .005 in",
                ),
                text(
                    request,
                    "point_angle",
                    "Point angle of the drill",
                    "Degrees; 118 if left empty",
                ),
                controls::declared(&SPINDLE_SPEEDS, request.typed("spindle_speeds")),
                controls::declared(&SPINDLE_MAX, request.typed("spindle_max")),
            ],
        ),
    ]
}

fn text(request: &Request, name: &'static str, label: &'static str, hint: &'static str) -> Field {
    Field::text(name, label, hint, request.typed(name))
}

fn metal(request: &Request, name: &'static str, label: &'static str, none: &str) -> Field {
    controls::metal(name, label, none, request.typed(name))
}

fn pick<T>(request: &Request, name: &'static str, label: &'static str, words: &[Word<T>]) -> Field {
    controls::pick(name, label, &choices(words), request.typed(name))
}

fn list<T>(request: &Request, name: &'static str, label: &'static str, words: &[Word<T>]) -> Field {
    controls::list(name, label, &choices(words), request.typed(name))
}

fn optional_list<T>(
    request: &Request,
    name: &'static str,
    label: &'static str,
    none: &str,
    words: &[Word<T>],
) -> Field {
    controls::optional_list(name, label, none, &choices(words), request.typed(name))
}
