//! How far the material pages can be trusted: every figure, mark and sentence by its grade, counted as
//! the pages show them. The README holds the count.

use holewright_core::tables::materials::{Material, all};
use holewright_core::tables::source::{Grade, Source};

use crate::readme_table;

/// The sources of the figures: properties, speeds and feeds.
fn figures(material: &'static Material) -> impl Iterator<Item = Source> {
    let properties = material.properties.iter().map(|property| property.source);
    let speeds = material.drilling.iter().chain(material.reaming).chain(material.tapping);
    let speeds = speeds.map(|range| range.source);
    properties.chain(speeds).chain(material.feeds.iter().map(|feed| feed.source))
}

fn marks(material: &'static Material) -> impl Iterator<Item = Source> {
    material.designations.iter().map(|designation| designation.source)
}

fn sentences(material: &'static Material) -> impl Iterator<Item = Source> {
    [&material.drilling_lubricant, &material.tapping_lubricant, &material.back_off]
        .into_iter()
        .chain(&material.refused)
        .chain(material.met_in)
        .chain(material.drill_advice)
        .chain(material.tap_advice)
        .chain(material.behaviour)
        .chain(material.not_for)
        .chain(material.salvage)
        .chain(material.cautions)
        .chain(material.dangers)
        .chain(material.broken_tap.advice())
        .map(|advice| advice.source)
}

fn count(sources: impl Iterator<Item = Source>, grade: Grade) -> usize {
    sources.filter(|source| source.grade == grade).count()
}

#[test]
fn no_figure_lacks_a_source_and_a_grade() {
    for material in all() {
        for source in figures(material).chain(marks(material)).chain(sentences(material)) {
            assert!(!source.cite.trim().is_empty(), "{}: {source:?}", material.slug);
        }
        let refused = material.refused.is_some();
        assert!(refused || figures(material).count() >= 4, "{} has few figures", material.slug);
    }
}

#[test]
fn the_readme_counts_them() {
    let mut table = format!(
        "| {} materials | figures | marks | sentences |\n| --- | ---: | ---: | ---: |\n",
        all().len()
    );
    for grade in Grade::ALL {
        let counts = [
            all().iter().map(|material| count(figures(material), grade)).sum::<usize>(),
            all().iter().map(|material| count(marks(material), grade)).sum(),
            all().iter().map(|material| count(sentences(material), grade)).sum(),
        ];
        if counts.iter().any(|count| *count > 0) {
            let [figures, marks, sentences] = counts;
            table += &format!("| {grade} | {figures} | {marks} | {sentences} |\n");
        }
    }
    readme_table::hold(&table);
}
