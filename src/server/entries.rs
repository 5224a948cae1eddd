//! The compiled tables and the calculators as a list of entries, each with a digest of its figures: what is projected
//! into the database at start. Leaves out: SQL.

use std::fmt::Debug;

use sha2::{Digest, Sha256};

use crate::rules::validator::hexadecimal;

use holewright_core::calculators::{CALCULATORS, Declaration};
use holewright_core::tables::drills::{self, Drill};
use holewright_core::tables::materials::{self, Material};
use holewright_core::tables::threads::{self, System, Thread};

/// What an entry is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A thread system.
    System,
    /// A thread.
    Thread,
    /// A drill.
    Drill,
    /// A material.
    Material,
    /// A calculator.
    Calculator,
}

impl Kind {
    /// The word in the database.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::System => "system",
            Self::Thread => "thread",
            Self::Drill => "drill",
            Self::Material => "material",
            Self::Calculator => "calculator",
        }
    }
}

/// One thing the reference holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its address without the first slash: `threads/ba/5`.
    pub id: String,
    /// What it is.
    pub kind: Kind,
    /// What is left of the address after the kind: `ba/5`.
    pub slug: String,
    /// Its name.
    pub title: String,
    /// SHA-256 of its figures, in hexadecimal.
    pub digest: String,
}

/// Every entry of the tables.
#[must_use]
pub fn all() -> Vec<Entry> {
    let systems = threads::systems().iter().map(|system| of_system(system));
    let threads = threads::all().map(of_thread);
    let drills = drills::all().iter().map(of_drill);
    let materials = materials::all().iter().map(of_material);
    let calculators = CALCULATORS.iter().copied().map(of_calculator);
    systems.chain(threads).chain(drills).chain(materials).chain(calculators).collect()
}

fn of_system(system: &System) -> Entry {
    entry(Kind::System, "threads", system.slug.to_owned(), system.name, system)
}

fn of_thread(thread: &Thread) -> Entry {
    let slug = format!("{}/{}", thread.system.system().slug, thread.size);
    entry(Kind::Thread, "threads", slug, thread.designation, thread)
}

fn of_drill(drill: &Drill) -> Entry {
    let slug = format!("{}/{}", drill.series, drill.size);
    entry(Kind::Drill, "drills", slug, &drill.label, drill)
}

fn of_material(material: &Material) -> Entry {
    entry(Kind::Material, "materials", material.slug.to_owned(), material.name, material)
}

fn of_calculator(calculator: &Declaration) -> Entry {
    let Declaration { slug, title, answers, .. } = *calculator;
    let row = [slug, title, answers];
    entry(Kind::Calculator, "calculators", slug.to_owned(), title, &row)
}

/// The digest is taken over the row's debug form, which names every field: a figure added to a
/// table can never be forgotten here.
fn entry(kind: Kind, folder: &str, slug: String, title: &str, row: &impl Debug) -> Entry {
    let id = format!("{folder}/{slug}");
    Entry { digest: digest(&format!("{id} {row:?}")), id, kind, slug, title: title.to_owned() }
}

fn digest(text: &str) -> String {
    hexadecimal(&Sha256::digest(text))
}
