//! Sources as pages give them: a standard, a handbook, a textbook, or a maker by its kind. No program,
//! no host, no brand; what exactly was read stands in `tests/published/sources.csv`.

use std::collections::BTreeSet;

use holewright_core::tables::materials::{Material, all, feeds};
use holewright_core::tables::rescue::{self, Trouble};
use holewright_core::tables::source::{Grade, Source};
use holewright_core::tables::{
    countersinks, drill_force, drills, fasteners, inserts, lists, reaming, screw_metals,
    tapping_force, threads,
};

use crate::{outside, readings};

/// Every source that a row of the tables holds, but for those of clearances and tolerances, which stand on
/// the pages of threads.
fn held() -> BTreeSet<&'static str> {
    let materials = all().iter().flat_map(Material::statements).map(|statement| statement.source());
    let threads =
        threads::systems().iter().flat_map(|system| system.threads).flat_map(|one| one.sources);
    let reamed = reaming::allowances().iter().map(|row| row.source);
    let sources = materials
        .chain(threads.copied())
        .chain(reamed)
        .chain(feeds::general().iter().map(|row| row.source))
        .chain(lists::all().map(|row| row.source))
        .chain(drills::all().iter().map(|drill| drill.source()))
        .chain(countersinks::all().iter().map(|row| row.source))
        .chain(inserts::all().iter().map(|row| row.source))
        .chain(fasteners::hexagons().map(|row| row.source))
        .chain(fasteners::heads().map(|row| row.source))
        .chain(fasteners::washers().map(|row| row.source))
        .chain([fasteners::BA_RULE])
        .chain(rescue::all().iter().flat_map(Trouble::sentences).map(|advice| advice.source))
        .chain(tapping_force::all().map(|row| row.source))
        .chain(tapping_force::all_rough().map(|row| row.source))
        .chain(screw_metals::classes().iter().map(|class| class.source))
        .chain(drill_force::RESISTANCES.iter().map(|row| row.source))
        .chain([drill_force::CHISEL_SOURCE, drill_force::ROUGH_SOURCE])
        .chain([reaming::speed_rule().1]);
    sources.map(|source| source.cite).collect()
}

#[test]
fn no_source_names_a_program_a_host_or_a_brand() {
    assert_eq!(outside::named("Jet, drill press, p. 12"), Some("jet"));
    assert_eq!(outside::named("read at docs.rs.com"), Some(".com"));
    assert_eq!(outside::named("a jetty, projected"), None);
    for cite in held().into_iter().chain(readings::all().iter().map(|reading| &*reading.page)) {
        assert_eq!(outside::named(cite), None, "{cite}");
    }
}

/// What a library of parts holds is never called published.
#[test]
fn a_program_is_never_called_published() {
    let program =
        |read: &String| ["FreeCAD", "bd_warehouse", "lib 0"].iter().any(|p| read.contains(p));
    let of_program = |source: &Source| readings::of(source.cite).iter().all(program);
    let lists = lists::all().map(|row| row.source);
    let threads =
        threads::systems().iter().flat_map(|system| system.threads).flat_map(|one| one.sources);
    let mut found = 0;
    for source in lists.chain(threads.copied()).filter(of_program) {
        assert_eq!(source.grade, Grade::Library, "{}", source.cite);
        found += 1;
    }
    assert!(found > 100, "{found}");
}
