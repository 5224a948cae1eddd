//! Why a plan cannot be made, and what could be.

use crate::calc;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;
use crate::units::{Length, in_mm, mm, print};

/// One error for the plan.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Error {
    /// The material is not to be cut at all.
    #[error("no hole is planned in {}. {}", material.name, material.refused.map_or("", |why| why.text))]
    Refused {
        /// The material.
        material: &'static Material,
    },
    /// A formula refused its input.
    #[error(transparent)]
    Calc(#[from] calc::Error),
    /// The part is too thin for that length of full thread in a blind hole.
    #[error("{}", too_thin(*asked, *needed, *part_thickness, *most))]
    PartTooThin {
        /// Full thread asked for.
        asked: Length,
        /// Depth to the point of the drill that it takes.
        needed: Length,
        /// Thickness of the part.
        part_thickness: Length,
        /// The most full thread that leaves a wall, where any does.
        most: Option<Length>,
    },
    /// The hole is already as large as the thread.
    #[error(
        "a hole of {} leaves no thread: {} is {} over the crests",
        print::mm(*hole, 3), thread.designation, print::mm(*major, 3)
    )]
    NothingLeft {
        /// The hole as measured.
        hole: Length,
        /// The thread.
        thread: &'static Thread,
        /// Its major diameter.
        major: Length,
    },
    /// A taper thread is tapped by hand, a little at a time.
    #[error(
        "{} is tapped by hand: a taper tap is tried with its fitting and goes no further than fits",
        thread.designation
    )]
    TaperWantsHandTaps {
        /// The thread.
        thread: &'static Thread,
    },
    /// The thread is parallel.
    #[error("{} is no taper thread", thread.designation)]
    NotTaper {
        /// The thread.
        thread: &'static Thread,
    },
    /// A forming tap displaces metal, so it wants a 60° form.
    #[error(
        "forming taps are made for 60° threads; {} wants a cutting tap", thread.designation
    )]
    FormingNeedsSixtyDegrees {
        /// The thread.
        thread: &'static Thread,
    },
    /// A forming tap wants a metal that flows.
    #[error("a forming tap would break in {}, which does not flow; use a cutting tap", material.name)]
    FormingNeedsDuctile {
        /// The material.
        material: &'static Material,
    },
}

/// The most full thread that is possible, in whole hundredths of a millimetre.
#[must_use]
pub fn most_offered(most: Length) -> Length {
    mm((in_mm(most) * 100.0).floor() / 100.0)
}

fn too_thin(asked: Length, needed: Length, thickness: Length, most: Option<Length>) -> String {
    let [asked, needed, thickness] = [asked, needed, thickness].map(|length| print::mm(length, 2));
    let possible = most.map_or_else(
        || "no full thread fits a blind hole here: drill through, or take a smaller thread".into(),
        |most| {
            // Rounded down, as it is offered: the most possible, rounded up, would not be possible.
            let most = print::mm(most_offered(most), 2);
            format!("up to {most} of full thread is possible, or drill through")
        },
    );
    format!(
        "{asked} of full thread takes a hole {needed} deep to the point of the drill, and the part is {thickness} thick: {possible}"
    )
}
