//! `/rescue/{slug}`: one trouble – what can hurt, what to do first, and the ways out in order.

use askama::Template;

use super::asked::{Asked, MATERIAL, STEELS, TAP_STEEL};
use crate::controls::{choices, metal, optional_list};
use crate::field::Field;
use crate::figures::Column;
use crate::key::{Key, KeyLine, Sign, Signed};
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::warnings::{WarningGroup, by_level};
use crate::{FieldError, Reply, Visit, not_found, query};
use holewright_core::asking::{Typed, cut, is_carried};
use holewright_core::plan::Level;
use holewright_core::tables::inserts;
use holewright_core::tables::materials::{Advice, Material};
use holewright_core::tables::rescue::{self, Trouble, Way};

#[derive(Template)]
#[template(path = "rescue/show.html")]
struct TroublePage {
    frame: Frame,
    title: &'static str,
    path: String,
    errors: Vec<FieldError>,
    first: Signed,
    warnings: Vec<WarningGroup<Signed>>,
    /// The metal of the part and the steel of the tool; empty where nothing turns on them.
    fields: Vec<Field>,
    /// What the fold of the form says, and whether it is open.
    form_says: String,
    is_open: bool,
    /// What the metal named has of its own.
    of_metal: Option<OfMetal>,
    ways: Vec<ShownWay>,
    /// The holes for wire inserts, on the page that speaks of them.
    inserts: Option<Inserts>,
    stop: Signed,
    see: Vec<Link>,
    json: String,
    /// What the signs of the page stand for.
    key: Vec<KeyLine>,
}

/// What may be done about a tap broken in the metal named.
struct OfMetal {
    link: Link,
    says: Vec<Signed>,
}

/// One way out.
struct ShownWay {
    number: usize,
    name: &'static str,
    /// For what it is, where it is not for everything.
    only_for: String,
    warnings: Vec<WarningGroup<Signed>>,
    says: Vec<Signed>,
}

/// The table of insert holes.
struct Inserts {
    sign: Sign,
    rows: Vec<InsertRow>,
}

struct InsertRow {
    thread: Link,
    drill: Column,
    least: Column,
    most: Column,
}

/// One trouble; an unknown one says which there are.
pub(crate) fn show(visit: &Visit<'_>, slug: &str) -> Reply {
    let Some(trouble) = rescue::find(slug) else {
        let link = |trouble: &Trouble| Link::new(trouble.path(), trouble.title);
        return not_found::page(visit, rescue::all().iter().map(link).collect());
    };
    match Asked::read(&visit.query) {
        Ok(asked) => Reply::html(200, &page(visit, trouble, asked, Vec::new())),
        Err(errors) => Reply::html(422, &page(visit, trouble, Asked::default(), errors)),
    }
}

fn page(
    visit: &Visit<'_>,
    trouble: &'static Trouble,
    asked: Asked,
    errors: Vec<FieldError>,
) -> TroublePage {
    let mut key = Key::default();
    let first = key.advice(&trouble.first);
    let warnings = dangers(trouble.dangers, &mut key);
    let of_metal = asked.material.filter(|_| trouble.is_of_broken_tap());
    let of_metal = of_metal.map(|material| OfMetal {
        link: Link::material(material),
        says: key.all(material.broken_tap.advice()),
    });
    let ways = trouble.ways_for(asked.material, asked.steel).zip(1..);
    let ways = ways.map(|(way, number)| shown(way, number, &asked, &mut key)).collect();
    let inserts = trouble.has_inserts().then(|| insert_holes(&mut key)).flatten();
    let stop = key.advice(&trouble.stop);
    let filled: Vec<(&'static str, &str)> = visit.query.only(&[MATERIAL, TAP_STEEL]);
    let used = if errors.is_empty() { filled.as_slice() } else { &[] };
    TroublePage {
        frame: frame(visit, trouble, asked.material, &errors),
        title: trouble.title,
        path: trouble.path(),
        first,
        warnings,
        fields: if trouble.turns_on_metal() { fields(visit, trouble, &errors) } else { Vec::new() },
        form_says: asked.in_words(),
        is_open: !errors.is_empty(),
        of_metal,
        ways,
        inserts,
        stop,
        see: trouble.see.iter().map(|see| Link::new(see.url, see.words)).collect(),
        json: query::address(&format!("/api/v1{}", trouble.path()), used.iter().copied()),
        key: key.lines(),
        errors,
    }
}

fn frame(
    visit: &Visit<'_>,
    trouble: &Trouble,
    material: Option<&Material>,
    errors: &[FieldError],
) -> Frame {
    if !errors.is_empty() {
        let title = format!("Error: {}", trouble.title);
        return Frame::new(visit, Section::None, &title, trouble.first.text).of_a_mistake();
    }
    let inside = material.map_or_else(String::new, |material| format!(" in {}", material.name));
    let title = format!("{}{inside}: what to do", trouble.title);
    let address = query::address(&trouble.path(), visit.query.only(&[MATERIAL, TAP_STEEL]));
    Frame::at(visit.context, Section::None, &address, &title, trouble.first.text)
}

/// The form: the metal of the part, the steel of the tool.
fn fields(visit: &Visit<'_>, trouble: &Trouble, errors: &[FieldError]) -> Vec<Field> {
    let typed = |name| cut(name, visit.query.get(name));
    let carried = |name| {
        let typed = Typed { field: name, text: typed(name) };
        if is_carried(errors, typed) { typed.text } else { "" }
    };
    let fill = |field: &str, value: &str| {
        let filled = [MATERIAL, TAP_STEEL].into_iter().filter_map(|name| {
            let text = if name == field { value } else { carried(name) };
            (!text.is_empty()).then_some((name, text))
        });
        query::address(&trouble.path(), filled)
    };
    let steels = choices(STEELS);
    [
        metal(MATERIAL, "Metal of the part", "Any", typed(MATERIAL)),
        optional_list(TAP_STEEL, "Steel of the tool", "Not known", &steels, typed(TAP_STEEL)),
    ]
    .map(|field| field.judged(errors, fill))
    .into()
}

fn shown(way: &'static Way, number: usize, asked: &Asked, key: &mut Key) -> ShownWay {
    let said = asked.material.is_some() && asked.steel.is_some();
    ShownWay {
        number,
        name: way.name,
        only_for: if said { String::new() } else { way.only_for() },
        warnings: dangers(way.dangers, key),
        says: key.all(way.says),
    }
}

fn dangers(advice: &'static [Advice], key: &mut Key) -> Vec<WarningGroup<Signed>> {
    by_level(key.all(advice).into_iter().map(|danger| (Level::Danger, danger)))
}

fn insert_holes(key: &mut Key) -> Option<Inserts> {
    let source = inserts::all().first()?.source;
    let row = |hole: &inserts::InsertHole| {
        Some(InsertRow {
            thread: Link::thread(hole.thread()?),
            drill: Column::of(hole.drill.length()),
            least: Column::of(hole.least.length()),
            most: Column::of(hole.most.length()),
        })
    };
    Some(Inserts { sign: key.sign(source), rows: inserts::all().iter().filter_map(row).collect() })
}
