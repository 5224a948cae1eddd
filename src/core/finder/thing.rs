//! A thing that can be found, and the hit that shows it.

use std::borrow::Cow;

use super::words::joined;
use super::{Hit, Kind, Page};
use crate::tables::drills::{Drill, Series, in_series};
use crate::tables::materials::{Material, read::is_nearest_only, scrap::scrap};
use crate::tables::threads::{System, Thread};
use crate::units::{print, read::plain};

/// A thing that can be found.
#[derive(Clone, Copy, Debug)]
pub(super) enum Thing {
    Thread(&'static Thread),
    System(&'static System),
    Drill(&'static Drill),
    Series(Series),
    Material(&'static Material),
    Page(&'static Page),
}

impl Thing {
    /// What kind it is.
    pub(super) const fn kind(self) -> Kind {
        match self {
            Self::Thread(_) => Kind::Thread,
            Self::System(_) => Kind::System,
            Self::Drill(_) => Kind::Drill,
            Self::Series(_) => Kind::Series,
            Self::Material(_) => Kind::Material,
            Self::Page(page) => page.kind,
        }
    }

    /// The hit, saying what it is.
    pub(super) fn hit(self) -> Hit {
        self.hit_since(self.says())
    }

    /// The hit, saying why it was found.
    pub(super) fn hit_since(self, why: String) -> Hit {
        Hit { kind: self.kind(), title: self.title(), url: self.url(), why }
    }

    /// What it is called.
    pub(super) fn title(self) -> Cow<'static, str> {
        match self {
            Self::Thread(thread) => thread.designation.into(),
            Self::System(system) => system.name.into(),
            Self::Drill(drill) => drill.label.as_str().into(),
            Self::Series(series) => print::sentence(&format!("{series} drills")).into(),
            Self::Material(material) => print::sentence(material.name).into(),
            Self::Page(page) => page.title.into(),
        }
    }

    /// Its address. No part of an address of the tables needs a percent code.
    fn url(self) -> Cow<'static, str> {
        match self {
            Self::Thread(thread) => thread.path().into(),
            Self::System(system) => format!("/threads/{}", system.slug).into(),
            Self::Drill(drill) => drill.path().into(),
            Self::Series(series) => format!("/drills?series={series}").into(),
            Self::Material(material) => material.path().into(),
            Self::Page(page) => page.url.clone(),
        }
    }

    /// What it is, in a few words.
    fn says(self) -> String {
        match self {
            Self::Thread(thread) => thread.system.system().name.to_owned(),
            Self::System(system) => {
                format!("{}, thread system of {} sizes", system.mark, system.threads.len())
            }
            Self::Drill(drill) if drill.series == Series::Metric => {
                format!("metric drill, {}", print::inch(drill.diameter, 4))
            }
            Self::Drill(drill) => {
                format!("{} drill, {}", drill.series, print::mm(drill.diameter, 3))
            }
            Self::Series(series) => extent(in_series(series)),
            Self::Material(material) => marks(material),
            Self::Page(page) => page.why.to_owned(),
        }
    }
}

/// The hit for a material that a text names, saying by which of its names.
pub(super) fn material_called(material: &'static Material, text: &str) -> Hit {
    let typed = joined(text);
    let thing = Thing::Material(material);
    if typed == joined(material.name) {
        return thing.hit();
    }
    if let Some(scrap) = scrap(text) {
        let likeliest = scrap.materials().first().is_some_and(|it| it.slug == material.slug);
        return thing.hit_since(if likeliest {
            format!("{} is usually this: {}", scrap.name(), scrap.tell.text)
        } else {
            format!("{} may be this too", scrap.name())
        });
    }
    if is_nearest_only(text) {
        return thing
            .hit_since("not held by itself; of those held it cuts most like this".to_owned());
    }
    let marks = material.designations.iter().map(|designation| designation.mark);
    let mut names = material.known_as.iter().copied().chain(marks);
    let name = names.find(|name| joined(&plain(name)) == typed);
    name.map_or_else(|| thing.hit(), |name| thing.hit_since(format!("also called {name}")))
}

/// How many drills, from which to which.
fn extent(drills: &[&'static Drill]) -> String {
    match drills {
        [first, .., last] => format!("{} drills, {} to {}", drills.len(), first.label, last.label),
        _ => String::new(),
    }
}

/// The first two marks of a material, or another name where it has none.
fn marks(material: &Material) -> String {
    match material.designations {
        [] => material.known_as.first().copied().unwrap_or_default().to_owned(),
        [only] => only.mark.to_owned(),
        [first, second, ..] => format!("{}, {}", first.mark, second.mark),
    }
}
