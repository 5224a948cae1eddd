//! What is asked of a fastener.

use super::answer::Answer;
use super::head::HeadOf;
use crate::asking::{
    About, Asked, Control, Field, FieldError, Limits, Need, Reading, Word, metal, parallel_thread,
    thread_taken, word,
};
use crate::calc::tapped_in::TappedIn;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;

pub(super) static THREAD: Field<&Thread> = Field::new(
    About {
        name: "thread",
        label: "Thread",
        hint: "2 BA, M6, 1/4 BSF",
        description: "The thread, in any usual spelling",
        example: "M6",
        need: Need::Always("Write the thread: 2 BA, M6, 1/4 BSF."),
        limits: Limits::None,
    },
    |typed| parallel_thread(typed, "it is screwed into its hole, and has no head"),
)
.taking(|typed, _| thread_taken(typed));

static HEADS: [Word<HeadOf>; 6] = [
    word("hexagon", "Hexagon", HeadOf::Hexagon),
    word("small-hexagon", "Hexagon one size smaller, for models", HeadOf::SmallHexagon),
    word("old-hexagon", "Older, larger hexagon", HeadOf::OldHexagon),
    word("countersunk", "Countersunk", HeadOf::Countersunk),
    word("cheese", "Cheese", HeadOf::Cheese),
    word("cap", "Cap, with a hexagon socket", HeadOf::Cap),
];

pub(super) static HEAD: Field<HeadOf> = Field::words(
    About {
        name: "head",
        label: "Head",
        hint: "",
        description: "The head of the screw",
        example: "cap",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::List,
    &HEADS,
);

pub(super) static MATERIAL: Field<&Material> = Field::new(
    About {
        name: "material",
        label: "Material tapped",
        hint: "",
        description: "The material that is tapped, by any name or mark; the usual group if left out",
        example: "gunmetal",
        need: Need::Open,
        limits: Limits::None,
    },
    metal,
)
.with_control(Control::Metal("Grey cast iron, gunmetal and leaded bronze"));

/// The answer.
///
/// # Errors
/// One for each field that makes no sense, in the order of the form.
pub(super) fn answer(asked: &Asked) -> Result<Answer, Vec<FieldError>> {
    let mut reading = Reading::of(asked);
    let thread = reading.required(&THREAD);
    let head = reading.or_default(&HEAD);
    let material = reading.optional(&MATERIAL);
    let tapped_in = material.map_or(TappedIn::UsualGroup, TappedIn::Material);
    let found = thread.map(|thread| Answer::of(thread, head, tapped_in));
    reading.answered(found)
}
