//! What stands behind a figure: its unit, on the same line, and the sign of its source with the key.

use std::cmp::Reverse;
use std::collections::BTreeSet;

use holewright_core::tables::drills::{self, Drill};
use holewright_core::tables::materials::{self, Material};
use holewright_core::tables::threads::{Thread, systems};

use crate::html::{Page, Tag, read};
use crate::kinds::{kinds, with};
use crate::visit;

/// look.md: a number never stands without its unit, so no line ends between them.
#[test]
fn no_figure_parts_from_its_unit_at_the_end_of_a_line() {
    let units = ["mm", "in", "%", "rev/min", "mm/rev", "m/min", "thou"];
    let mut joined = 0;
    for kind in kinds() {
        let page = read(visit(&kind.address).text());
        let drawn = |place: Option<usize>| {
            let mut place = place;
            while let Some(tag) = place {
                if ["svg", "title", "textarea"].contains(&page.tags[tag].name.as_str()) {
                    return true;
                }
                place = page.tags[tag].parent;
            }
            false
        };
        for (place, tag) in page.tags.iter().enumerate() {
            if drawn(Some(place)) {
                continue;
            }
            joined += tag.text.matches('\u{a0}').count();
            for unit in units {
                for (at, _) in tag.text.match_indices(&format!(" {unit}")) {
                    let behind = tag.text[at + 1 + unit.len()..].chars().next();
                    let is_unit = behind.is_none_or(|c| !c.is_alphanumeric() && c != '/');
                    let is_figure = tag.text[..at].ends_with(|c: char| c.is_ascii_digit());
                    assert!(!(is_unit && is_figure), "{}: {:?}", kind.address, tag.text);
                }
            }
        }
    }
    assert!(joined > 1000, "{joined}");
}

/// Whatever the page: its sources stand in full once, the words of a grade alone as well.
#[test]
fn no_page_says_a_source_in_full_twice() {
    let addresses = every_page();
    let pages: Vec<_> = addresses.iter().map(|address| read(visit(address).text())).collect();
    // What any page's key says, and what is said without one.
    let mut sources: BTreeSet<String> = BARE.iter().map(|grade| (*grade).to_owned()).collect();
    for page in &pages {
        sources.extend(keyed(page).into_iter().map(|(_, source)| source));
    }
    assert!(sources.len() > 100, "{}", sources.len());
    let mut twice = Vec::new();
    for (address, page) in addresses.iter().zip(&pages) {
        let text = visible(page);
        // A source may be the beginning of another: what is longer is taken out first.
        let mut said: Vec<&str> =
            sources.iter().map(String::as_str).filter(|source| text.contains(source)).collect();
        said.sort_by_key(|source| Reverse(source.len()));
        let mut rest = text.clone();
        for source in said {
            let times = rest.matches(source).count();
            if times > 1 {
                twice.push(format!("{times} × {source:?}: {address}"));
            }
            rest = rest.replace(source, "");
        }
    }
    assert!(twice.is_empty(), "{} times:\n{}", twice.len(), twice.join("\n"));
}

#[test]
fn every_sign_of_a_page_leads_to_its_line_of_the_key() {
    let signs: usize = every_page().iter().map(|address| signs_of(address)).sum();
    assert!(signs > 5000, "{signs}");
}

/// What stands for a source that has no name.
const BARE: [&str; 2] = ["common practice, no source", "from memory, unconfirmed"];

/// How many signs a page has: they run from a in the order in which they are read, each leads to a line of the
/// key, and each line is led to.
fn signs_of(address: &str) -> usize {
    let page = read(visit(address).text());
    let lines: Vec<String> = keyed(&page).into_iter().map(|(id, _)| id).collect();
    let mut led: Vec<&str> = page
        .tags
        .iter()
        .filter_map(|tag| tag.attribute("href"))
        .filter_map(|href| href.strip_prefix('#'))
        .filter(|id| id.starts_with("source-"))
        .collect();
    let signs = led.len();
    let mut seen = BTreeSet::new();
    led.retain(|id| seen.insert(*id));
    assert_eq!(led, lines, "{address}");
    signs
}

/// The lines of a page's key: the id and the source of each.
fn keyed(page: &Page) -> Vec<(String, String)> {
    let line = |(place, tag): (usize, &Tag)| {
        let id = tag.attribute("id").filter(|id| id.starts_with("source-"))?;
        let said = page.tags.iter().find(|tag| tag.parent == Some(place) && tag.name == "dd")?;
        Some((id.to_owned(), said.text.clone()))
    };
    page.tags.iter().enumerate().filter_map(line).collect()
}

/// The text that a reader sees, but for what was typed and what is drawn.
fn visible(page: &Page) -> String {
    let is_hidden = |mut place: Option<usize>| {
        while let Some(at) = place {
            let tag = &page.tags[at];
            if ["head", "svg", "textarea", "script", "style"].contains(&tag.name.as_str()) {
                return true;
            }
            place = tag.parent;
        }
        false
    };
    let shown = page.tags.iter().enumerate().filter(|(place, _)| !is_hidden(Some(*place)));
    shown.map(|(_, tag)| tag.text.as_str()).collect::<Vec<_>>().join("\n")
}

/// One of each kind of page, every page of the tables, and plans of every make.
fn every_page() -> Vec<String> {
    let good = kinds().into_iter().filter(|kind| kind.status == 200);
    let of_kinds = good.map(|kind| kind.address.into_owned());
    let of_systems = systems().iter().map(|system| format!("/threads/{}", system.slug));
    let of_threads = systems().iter().flat_map(|system| system.threads).map(Thread::path);
    let of_drills = drills::all().iter().map(Drill::path);
    let of_materials = materials::all().iter().map(Material::path);
    let plans = plans();
    assert!(plans.len() >= 40, "{}", plans.len());
    of_kinds
        .chain(of_systems)
        .chain(of_threads)
        .chain(of_drills)
        .chain(of_materials)
        .chain(plans)
        .chain(cuts())
        .collect()
}

/// The worked jobs, in one part and in two, for parallel and for taper threads.
fn plans() -> Vec<String> {
    let threads = [
        "5 BA",
        "2 BA",
        "M3",
        "M6",
        "M5x0.5",
        "1/4 BSF",
        "3/8 BSW",
        "1/4-20 UNC",
        "1/4 x 40 ME",
        "1/8 BSPT",
        "1/4 NPT",
        "1/4 BSPP",
    ];
    let materials = ["gunmetal", "bright-mild-steel", "stainless-304", "acetal"];
    let holes = [
        vec![("hole", "through"), ("depth", "6mm")],
        vec![
            ("hole", "blind"),
            ("depth", "8mm"),
            ("over", "free-cutting-brass"),
            ("over_thickness", "4mm"),
        ],
    ];
    let mut plans = Vec::new();
    for thread in threads {
        for material in materials {
            for hole in &holes {
                let pairs = [("thread", thread), ("material", material)];
                plans.push(with("/plan", pairs.into_iter().chain(hole.clone()).collect()));
            }
        }
    }
    plans.retain(|plan| visit(plan).status == 200);
    plans
}

/// Every work in every material.
fn cuts() -> Vec<String> {
    let works = [
        ("drilling", "2.7mm"),
        ("drilling", "12mm"),
        ("reaming", "6mm"),
        ("countersinking", "M3"),
        ("countersinking", "2 BA"),
        ("spotting", "No. 30"),
        ("tapping", "M3"),
    ];
    let of = |material: &Material| {
        works.map(|(work, diameter)| {
            let pairs =
                [("material", material.slug), ("work", work), ("diameter", diameter)].to_vec();
            let depth = (work != "countersinking").then_some(("depth", "40mm"));
            let pairs = pairs.into_iter().chain(depth).chain([("spindle_speeds", "500, 2000")]);
            with("/calculators/speeds", pairs.collect())
        })
    };
    let cuts = materials::all().iter().flat_map(of);
    cuts.filter(|cut| visit(cut).status == 200).collect()
}
