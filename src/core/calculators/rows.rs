//! An answer in a few rows: the page, the JSON, its description and the file are made from their table.

use crate::asking::{Asked, FieldError};
use crate::tables::materials::Advice;
use crate::tables::source::Source;
use crate::units::{Angle, Area, Force, Frequency, Length, Power, Time, Torque, Velocity};

/// One row of an answer.
pub struct Output<A: 'static> {
    /// Its name for programs, without the unit: `point_length`.
    pub key: &'static str,
    /// Its name on the page: `Length of the point`.
    pub name: &'static str,
    /// What it is, for a program; the unit is added.
    pub description: &'static str,
    /// The figure, which has a unit by its type.
    pub value: Measure<A>,
    /// The rule it goes by, in words.
    pub rule: &'static str,
    /// Where the rule was read, unless the figure has a source of its own.
    pub source: Source,
}

/// A figure of an answer.
pub enum Measure<A> {
    /// A length.
    Length(fn(&A) -> Length),
    /// An angle.
    Angle(fn(&A) -> Angle),
    /// A spindle speed.
    SpindleSpeed(fn(&A) -> Frequency),
    /// A surface speed.
    SurfaceSpeed(fn(&A) -> Velocity),
    /// A time.
    Time(fn(&A) -> Time),
    /// A percentage.
    Percent(fn(&A) -> f64),
    /// Words.
    Words(fn(&A) -> String),
    /// Words that there may be none of.
    SomeWords(fn(&A) -> Option<String>),
    /// A length that there may be none of.
    SomeLength(fn(&A) -> Option<Length>),
    /// Sentences in their order; there may be none.
    Sentences(fn(&A) -> Vec<String>),
    /// A percentage that there may be none of.
    SomePercent(fn(&A) -> Option<f64>),
    /// An area.
    Area(fn(&A) -> Area),
    /// A torque that there may be none of.
    Torque(fn(&A) -> Option<Torque>),
    /// A force that there may be none of.
    Force(fn(&A) -> Option<Force>),
    /// A power that there may be none of.
    Power(fn(&A) -> Option<Power>),
    /// A length that has its own source; one that is not of this question is left off the page.
    SourcedLength(fn(&A) -> Option<(Length, Source)>),
    /// An angle that has its own source; as above.
    SourcedAngle(fn(&A) -> Option<(Angle, Source)>),
    /// Words that have their own source; as above.
    SourcedWords(fn(&A) -> Option<(String, Source)>),
}

/// A figure worked out.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A length.
    Length(Length),
    /// An angle.
    Angle(Angle),
    /// A spindle speed.
    SpindleSpeed(Frequency),
    /// A surface speed.
    SurfaceSpeed(Velocity),
    /// A time.
    Time(Time),
    /// A percentage.
    Percent(f64),
    /// Words.
    Words(String),
    /// Sentences in their order; there may be none.
    Sentences(Vec<String>),
    /// An area.
    Area(Area),
    /// A torque.
    Torque(Torque),
    /// A force.
    Force(Force),
    /// A power.
    Power(Power),
    /// There is none here.
    Nothing,
    /// It is not of this question, and no page shows it.
    Absent,
}

/// The kind of a figure, without the figure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FigureKind {
    /// Its name for programs, unit included: `point_length_mm`.
    pub key: String,
    /// What it is, unit included.
    pub description: String,
    /// It is words, and no number.
    pub is_words: bool,
    /// There may be none.
    pub may_lack: bool,
    /// It is a list of sentences.
    pub is_list: bool,
}

/// A row worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Its name for programs, unit included.
    pub key: String,
    /// Its name on the page.
    pub name: &'static str,
    /// The figure.
    pub value: Value,
    /// The rule it goes by.
    pub rule: &'static str,
    /// Where the rule was read.
    pub source: Source,
}

/// A calculator that answers in rows.
pub struct Plain<A: 'static> {
    /// Reads the question and works out the answer.
    pub answer: fn(&Asked) -> Result<A, Vec<FieldError>>,
    /// What it is about, at the head of the answer: `Point of a 6 mm drill`.
    pub heading: fn(&A) -> String,
    /// The rows; the first is what was asked for.
    pub outputs: &'static [Output<A>],
    /// What to mind beside the figures, each with where it comes from.
    pub notes: fn(&A) -> Vec<Advice>,
    /// A drawing of it, as SVG.
    pub drawing: Option<fn(&A) -> String>,
}

/// An answer in rows, worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Answered {
    /// What it is about.
    pub heading: String,
    /// The rows; the first is what was asked for.
    pub figures: Vec<Figure>,
    /// What to mind beside them.
    pub notes: Vec<Advice>,
    /// The drawing, where there is one.
    pub drawing: Option<String>,
}

/// A calculator that answers in rows, whatever it reckons with.
pub trait Rows: Sync {
    /// The kinds of its rows, in order.
    fn kinds(&self) -> Vec<FigureKind>;
    /// The answer.
    ///
    /// # Errors
    /// One for each field that makes no sense, in the order of the form.
    fn answer(&self, asked: &Asked) -> Result<Answered, Vec<FieldError>>;
}

impl<A> Measure<A> {
    /// What stands behind a key, and behind a description.
    const fn unit(&self) -> [&'static str; 2] {
        match self {
            Self::Length(_) | Self::SomeLength(_) | Self::SourcedLength(_) => {
                ["_mm", ", in millimetres"]
            }
            Self::Angle(_) | Self::SourcedAngle(_) => ["_deg", ", in degrees"],
            Self::SpindleSpeed(_) => ["_rpm", ", in revolutions a minute"],
            Self::SurfaceSpeed(_) => ["_m_per_min", ", in metres a minute"],
            Self::Time(_) => ["_s", ", in seconds"],
            Self::Percent(_) | Self::SomePercent(_) => ["_percent", ", as a percentage"],
            Self::Words(_) | Self::SomeWords(_) | Self::SourcedWords(_) | Self::Sentences(_) => {
                ["", ""]
            }
            Self::Area(_) => ["_mm2", ", in square millimetres"],
            Self::Torque(_) => ["_nm", ", in newton metres"],
            Self::Force(_) => ["_n", ", in newtons"],
            Self::Power(_) => ["_w", ", in watts"],
        }
    }

    /// Whether there may be none.
    const fn may_lack(&self) -> bool {
        matches!(
            self,
            Self::SomeWords(_)
                | Self::SomeLength(_)
                | Self::SomePercent(_)
                | Self::Torque(_)
                | Self::Force(_)
                | Self::Power(_)
                | Self::SourcedLength(_)
                | Self::SourcedAngle(_)
                | Self::SourcedWords(_)
        )
    }

    /// The figure, and where it comes from; `usual` where it has no source of its own.
    fn of(&self, answer: &A, usual: Source) -> (Value, Source) {
        let value = match self {
            Self::SourcedLength(of) => return sourced(of(answer), Value::Length, usual),
            Self::SourcedAngle(of) => return sourced(of(answer), Value::Angle, usual),
            Self::SourcedWords(of) => return sourced(of(answer), Value::Words, usual),
            Self::Length(of) => Value::Length(of(answer)),
            Self::Angle(of) => Value::Angle(of(answer)),
            Self::SpindleSpeed(of) => Value::SpindleSpeed(of(answer)),
            Self::SurfaceSpeed(of) => Value::SurfaceSpeed(of(answer)),
            Self::Time(of) => Value::Time(of(answer)),
            Self::Percent(of) => Value::Percent(of(answer)),
            Self::Words(of) => Value::Words(of(answer)),
            Self::SomeWords(of) => held(of(answer), Value::Words),
            Self::SomeLength(of) => held(of(answer), Value::Length),
            Self::Sentences(of) => Value::Sentences(of(answer)),
            Self::SomePercent(of) => held(of(answer), Value::Percent),
            Self::Area(of) => Value::Area(of(answer)),
            Self::Torque(of) => held(of(answer), Value::Torque),
            Self::Force(of) => held(of(answer), Value::Force),
            Self::Power(of) => held(of(answer), Value::Power),
        };
        (value, usual)
    }
}

/// The value with its own source, or that it is not of this question.
fn sourced<T>(found: Option<(T, Source)>, with: fn(T) -> Value, usual: Source) -> (Value, Source) {
    found.map_or((Value::Absent, usual), |(value, source)| (with(value), source))
}

/// The value there is, or that there is none.
fn held<T>(value: Option<T>, with: fn(T) -> Value) -> Value {
    value.map_or(Value::Nothing, with)
}

impl<A> Output<A> {
    fn kind(&self) -> FigureKind {
        let [key, words] = self.value.unit();
        FigureKind {
            key: format!("{}{key}", self.key),
            description: format!(
                "{}{words}{}.",
                self.description,
                if self.value.may_lack() { "; null where there is none" } else { "" }
            ),
            is_words: matches!(
                self.value,
                Measure::Words(_) | Measure::SomeWords(_) | Measure::SourcedWords(_)
            ),
            may_lack: self.value.may_lack(),
            is_list: matches!(self.value, Measure::Sentences(_)),
        }
    }
}

impl<A> Rows for Plain<A> {
    fn kinds(&self) -> Vec<FigureKind> {
        self.outputs.iter().map(Output::kind).collect()
    }

    fn answer(&self, asked: &Asked) -> Result<Answered, Vec<FieldError>> {
        let answer = (self.answer)(asked)?;
        let figure = |output: &Output<A>| {
            let (value, source) = output.value.of(&answer, output.source);
            Figure { key: output.kind().key, name: output.name, value, rule: output.rule, source }
        };
        Ok(Answered {
            heading: (self.heading)(&answer),
            figures: self.outputs.iter().map(figure).collect(),
            notes: (self.notes)(&answer),
            drawing: self.drawing.map(|drawing| drawing(&answer)),
        })
    }
}
