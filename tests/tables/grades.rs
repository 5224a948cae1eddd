//! How far the material pages can be trusted: every figure, mark and sentence by its grade, counted as
//! the pages show them. The README holds the count.

use holewright_core::tables::materials::{Material, Statement, all};
use holewright_core::tables::source::Grade;

use crate::readme_table;

fn is_figure(statement: &Statement) -> bool {
    matches!(statement, Statement::Property(_) | Statement::Speed(_) | Statement::Feed(_))
}

fn is_mark(statement: &Statement) -> bool {
    matches!(statement, Statement::Mark(_))
}

fn is_sentence(statement: &Statement) -> bool {
    matches!(statement, Statement::Sentence(..))
}

fn count(of: fn(&Statement) -> bool, grade: Grade) -> usize {
    let statements = all().iter().flat_map(Material::statements);
    statements.filter(|statement| of(statement) && statement.source().grade == grade).count()
}

#[test]
fn no_figure_lacks_a_source_and_a_grade() {
    for material in all() {
        for source in material.statements().map(Statement::source) {
            assert!(!source.cite.trim().is_empty(), "{}: {source:?}", material.slug);
        }
        let refused = material.refused.is_some();
        let figures = material.statements().filter(is_figure).count();
        assert!(refused || figures >= 4, "{} has few figures", material.slug);
    }
}

#[test]
fn the_readme_counts_them() {
    let mut table = format!(
        "| {} materials | figures | marks | sentences |\n| --- | ---: | ---: | ---: |\n",
        all().len()
    );
    for grade in Grade::ALL {
        let counts = [is_figure, is_mark, is_sentence].map(|of| count(of, grade));
        if counts.iter().any(|count| *count > 0) {
            let [figures, marks, sentences] = counts;
            table += &format!("| {grade} | {figures} | {marks} | {sentences} |\n");
        }
    }
    readme_table::hold(&table);
}
