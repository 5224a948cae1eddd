//! The form: what every work asks, then what this work asks, then the machine.

use super::request::{Request, TOOL_STEELS, WORKS};
use super::work::Work;
use crate::FieldError;
use crate::calculators::form::{Fields, Form};
use crate::controls::{self, SERIES_AT_HAND};
use crate::field::Field;

/// The form as typed. A field that belongs to another work stands in it only where something is
/// typed there, so that nothing is lost.
pub(super) fn form(request: &Request, errors: &[FieldError]) -> Form {
    let typed = |name| request.typed(name);
    let work = request.work();
    let fields = Fields {
        button: "Find the speed",
        first: vec![
            controls::metal("material", "Metal", "Choose the metal", typed("material")),
            controls::pick("work", "Work", WORKS, typed("work")),
            Field::text(
                "diameter",
                "Drill, reamer, tap or screw",
                "By any name or size: No. 46, F, 7/64 in, 2.5 mm; a tap or a countersunk screw by its thread: 5 BA, M3; a head by its diameter",
                typed("diameter"),
            ),
        ],
        rest_heading: "Depth, tool and the machine’s speeds",
        rest: rest(request, work)
            .into_iter()
            .filter(|(field, works)| works.contains(&work) || !typed(field.name).is_empty())
            .map(|(field, _)| field)
            .collect(),
    };
    Form::of("/calculators/speeds", &request.asked, fields, errors)
}

/// The fields below the fold, each with the works it is asked for.
fn rest(request: &Request, work: Work) -> Vec<(Field, &'static [Work])> {
    use Work::{Countersinking, Drilling, Reaming, Spotting, Tapping};
    let typed = |name| request.typed(name);
    let text = |name, label, hint| Field::text(name, label, hint, typed(name));
    let depth_hint = match work {
        Tapping => "Length of full thread: 8 mm, 5/16 in",
        _ => "At the full diameter, the point not counted: 12 mm, 1/2 in",
    };
    vec![
        (text("depth", "Depth", depth_hint), &[Drilling, Reaming, Tapping]),
        (
            controls::list("tool_steel", "Steel of the tool", TOOL_STEELS, typed("tool_steel")),
            &Work::ALL,
        ),
        (
            text("point_angle", "Point angle of the drill", "Degrees; 118 if left empty"),
            &[Drilling, Spotting],
        ),
        (text("flutes", "Flutes of the reamer", "6 if left empty"), &[Reaming]),
        (
            text("head", "Head, as measured", "Across the top of the screw’s head: 5.5 mm"),
            &[Countersinking],
        ),
        (
            text(
                "hole_size",
                "Hole that is sunk",
                "3.4 mm; if left empty, a medium clearance hole for the screw",
            ),
            &[Countersinking],
        ),
        (
            text(
                "countersink_angle",
                "Angle of the countersink",
                "Degrees; by the screw if left empty",
            ),
            &[Countersinking],
        ),
        (controls::series(SERIES_AT_HAND, typed("series")), &[Reaming]),
        (controls::owned_drills(typed("owned")), &[Reaming]),
        (
            text(
                "spindle_speeds",
                "Speeds the machine has",
                "Revolutions a minute: 350, 500, 1000; or 200-2000 for any between",
            ),
            &Work::ALL,
        ),
        (text("spindle_max", "Or just the fastest", "Revolutions a minute"), &Work::ALL),
    ]
}
