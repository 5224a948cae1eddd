//! All that is stated of a material, in one walk: every figure, mark and sentence with its source.
//!
//! The row is taken apart field by field, so that a new field does not compile until it is decided
//! here whether it states something.

use super::{Advice, Caution, Designation, FeedRange, Material, Property, SpeedRange};
use crate::tables::source::Source;

/// What a sentence is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Topic {
    /// Why it is not to be drilled or tapped at all.
    Refused,
    /// What to put on the drill.
    DrillingLubricant,
    /// What to put on the tap.
    TappingLubricant,
    /// How often to turn a hand tap back.
    BackOff,
    /// How to grind the drill.
    Drill,
    /// Which tap, and how to run it.
    Tap,
    /// What may be done about a tap broken in it.
    BrokenTap,
    /// How it behaves under drill and tap.
    Behaviour,
    /// Where a model engineer meets it.
    MetIn,
    /// What it must not be used for.
    NotFor,
    /// What old or unmarked stock passes for it.
    Salvage,
    /// What can hurt the work.
    Caution,
    /// What can hurt the person.
    Danger,
}

/// One thing stated of a material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Statement {
    /// Density, strength, hardness or machinability.
    Property(&'static Property),
    /// A surface speed for drilling, reaming or tapping.
    Speed(&'static SpeedRange),
    /// A drilling feed.
    Feed(&'static FeedRange),
    /// A mark in a standard.
    Mark(&'static Designation),
    /// A sentence.
    Sentence(Topic, Advice),
}

impl Statement {
    /// Where it comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::Property(property) => property.source,
            Self::Speed(range) => range.source,
            Self::Feed(range) => range.source,
            Self::Mark(designation) => designation.source,
            Self::Sentence(_, advice) => advice.source,
        }
    }
}

impl Material {
    /// Every figure, mark and sentence held on it.
    pub fn statements(&self) -> impl Iterator<Item = Statement> + use<> {
        let Self {
            slug: _,
            name: _,
            aliases: _,
            known_as: _,
            designations,
            met_in,
            refused,
            group: _,
            family: _,
            chips: _,
            grabs: _,
            work_hardens: _,
            closes_in: _,
            properties,
            drilling,
            tapping,
            reaming,
            feeds,
            drilling_lubricant,
            tapping_lubricant,
            back_off,
            drill_advice,
            tap_advice,
            forming_tap: _,
            broken_tap,
            pressure_work: _,
            behaviour,
            not_for,
            salvage,
            cautions,
            dangers,
        } = *self;
        let about = |topic| move |advice: &Advice| Statement::Sentence(topic, *advice);
        let caution = |topic| move |caution: &Caution| Statement::Sentence(topic, caution.advice);
        let speeds = drilling.iter().chain(reaming).chain(tapping);
        let figures = properties.iter().map(Statement::Property);
        let figures = figures.chain(speeds.map(Statement::Speed));
        figures
            .chain(feeds.iter().map(Statement::Feed))
            .chain(designations.iter().map(Statement::Mark))
            .chain(refused.map(|why| Statement::Sentence(Topic::Refused, why)))
            .chain([
                Statement::Sentence(Topic::DrillingLubricant, drilling_lubricant),
                Statement::Sentence(Topic::TappingLubricant, tapping_lubricant),
                Statement::Sentence(Topic::BackOff, back_off),
            ])
            .chain(met_in.iter().map(about(Topic::MetIn)))
            .chain(drill_advice.iter().map(about(Topic::Drill)))
            .chain(tap_advice.iter().map(about(Topic::Tap)))
            .chain(behaviour.iter().map(about(Topic::Behaviour)))
            .chain(not_for.iter().map(about(Topic::NotFor)))
            .chain(salvage.iter().map(about(Topic::Salvage)))
            .chain(cautions.iter().map(caution(Topic::Caution)))
            .chain(dangers.iter().map(caution(Topic::Danger)))
            .chain(broken_tap.advice().iter().map(about(Topic::BrokenTap)))
    }

    /// Every sentence held on it, with what it is about.
    pub fn sentences(&self) -> impl Iterator<Item = (Topic, Advice)> + use<> {
        self.statements().filter_map(|statement| match statement {
            Statement::Sentence(topic, advice) => Some((topic, advice)),
            _ => None,
        })
    }
}
