//! What the standard of a form says of its shape: angle, depth, minor diameters, rounding.
//!
//! Lengths are parts of the pitch. The figures of a thread are worked out of them in
//! [`crate::calc::thread_form`].

use std::fmt;

use super::Form;
use crate::tables::source::Grade;

/// The shape of a form and what goes by it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// The included angle, in degrees.
    pub angle_degrees: f64,
    /// Depth of full thread on one side, in pitches: the whole of which engagement is a part.
    pub depth: f64,
    /// What the standard rounds before it works out the diameters.
    pub rounding: Rounding,
    /// What engagement is a percentage of, in words.
    pub basis: Basis,
    /// Whether engagement is in print on 5/8 H too.
    pub on_five_eighths_h: bool,
    /// The minor diameters.
    pub minors: Minors,
    /// The tensile area of the screw.
    pub tensile: Tensile,
    /// How the crest is finished.
    pub crest: Finish,
    /// How the root is finished.
    pub root: Finish,
    /// The standard's largest hole for any size of the form.
    pub largest_hole: FormLimit,
    /// Whether forming taps are made to it.
    pub forming_taps: bool,
    /// The form that cuts the same thread at the same size; itself where no other does.
    pub cut_as: Form,
    /// How a thread of the form that no table holds is asked for.
    pub any_size: AnySize,
}

/// What engagement is a percentage of, as pages print it behind the figure.
///
/// # Examples
/// ```
/// use holewright_core::calc::thread_form::{engagement_basis, engagement_basis_of};
/// use holewright_core::tables::threads::{Form, find};
/// let miniature = engagement_basis(Form::Miniature).to_string();
/// assert_eq!(miniature, "of ¾ H, 0.6495 p, from memory, unconfirmed");
/// let recalled = engagement_basis_of(find("bsw", "13-16").unwrap()).to_string();
/// assert!(recalled.ends_with("(BS 84), diameter and pitch from memory, unconfirmed"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Basis {
    /// The depth in words, with its standard.
    pub words: &'static str,
    /// How far the figures of the form can be trusted.
    pub grade: Grade,
    /// How far the diameter and the pitch of the thread can be.
    pub size: Grade,
}

impl Basis {
    /// A basis whose form was read in its standard.
    #[must_use]
    pub const fn published(words: &'static str) -> Self {
        Self { words, grade: Grade::Published, size: Grade::Published }
    }

    /// A basis on a form that is recalled, in whole or in part.
    #[must_use]
    pub const fn memory(words: &'static str) -> Self {
        Self { words, grade: Grade::Memory, size: Grade::Published }
    }
}

impl fmt::Display for Basis {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(self.words)?;
        match (self.grade, self.size) {
            (Grade::Published, Grade::Memory) => {
                write!(out, ", diameter and pitch {}", Grade::Memory)
            }
            (Grade::Published, _) => Ok(()),
            (grade, _) => write!(out, ", {grade}"),
        }
    }
}

/// What a standard rounds before it works out the diameters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rounding {
    /// Nothing.
    Nothing,
    /// The depth, to the nearest multiple of a step in millimetres.
    DepthToStepMm(f64),
    /// The depth, to so many places of a millimetre.
    DepthToPlacesMm(u8),
    /// The depth, to so many places of an inch.
    DepthToPlacesInch(u8),
    /// The effective diameter and the nut's minor diameter, to so many places of an inch.
    DiametersToPlacesInch(u8),
}

/// The minor diameters of screw and nut, by what the major diameter is larger, in pitches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Minors {
    /// Both are less by twice the depth, as it is rounded.
    Alike,
    /// Each is less by its own part: the nut does not reach the root of the screw.
    Apart {
        /// For the nut.
        nut: f64,
        /// For the screw.
        screw: f64,
    },
    /// The nut's is less by this; the screw's is reckoned from the nut's, as it is rounded.
    ScrewBelowNut {
        /// For the nut.
        nut: f64,
        /// By how much the screw's is smaller than the nut's.
        below: f64,
    },
}

impl Minors {
    /// Whether nut and screw have each a minor diameter of their own.
    #[must_use]
    pub const fn are_two(self) -> bool {
        match self {
            Self::Alike => false,
            Self::Apart { .. } | Self::ScrewBelowNut { .. } => true,
        }
    }
}

/// The diameter of which the tensile area is the circle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Tensile {
    /// The mean of the effective diameter and the screw's minor diameter.
    Mean,
    /// The major diameter less so many pitches.
    BelowMajor(f64),
    /// The effective diameter less twice so many pitches, these to five places of an inch.
    BelowEffective(f64),
}

/// How a crest or a root is finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Finish {
    /// Cut flat.
    Flat,
    /// Rounded into the flanks.
    Round,
}

/// The rule for the largest hole that holds for every size of a form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FormLimit {
    /// ISO 965-1, by the pitch.
    Iso965,
    /// ASME B1.1, class 2B.
    AsmeB11,
    /// ASME B1.10M, by the pitch.
    AsmeB110,
    /// As BS 84 allows, by the threads in an inch.
    LikeBs84,
    /// No such rule is held.
    NotHeld,
}

/// How a thread that no table holds is asked for by its form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AnySize {
    /// By a word of an address, with its words in a list.
    Word(&'static str, &'static str),
    /// As this form, whose word stands for both.
    As(Form),
    /// Not at all: a taper thread has no engagement.
    Never,
}

impl Form {
    /// The included angle, the depth and the rest of its shape.
    #[must_use]
    pub const fn shape(self) -> &'static Shape {
        self.declared()
    }

    /// The form by which a thread of this form is figured that no table holds.
    #[must_use]
    pub const fn of_any_size(self) -> Self {
        match self.shape().any_size {
            AnySize::As(form) => form,
            AnySize::Word(..) | AnySize::Never => self,
        }
    }
}

/// Declares the forms, each with its shape: a form without one does not compile.
macro_rules! forms {
    ($($(#[$doc:meta])* $form:ident = $shape:path;)+) => {
        /// The shape of a thread, as its standard draws it.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Form { $($(#[$doc])* $form,)+ }

        impl Form {
            /// Every form, in the order in which they are offered.
            pub const ALL: &'static [Self] = &[$(Self::$form,)+];

            const fn declared(self) -> &'static Shape {
                match self { $(Self::$form => &$shape,)+ }
            }
        }
    };
}
