//! What must hold of every calculator that is declared, whoever adds it.

use std::collections::BTreeSet;

use holewright_core::asking::{AnyField, Asked, Control, FieldError, Limits, Need};
use holewright_core::calculators::{
    AnswerKind, CALCULATORS, Declaration, clearance, find, speeds, tapping,
};
use holewright_core::finder;

/// Words that stand in an address for something else.
const RESERVED: [&str; 6] = ["plan", "json", "csv", "svg", "new", "calculators"];

/// The errors of what is asked; none where it is answered.
fn errors(calculator: &Declaration, asked: &Asked) -> Vec<FieldError> {
    let found = match calculator.answer {
        AnswerKind::Rows(rows) => rows.answer(asked).map(drop),
        AnswerKind::Speeds => speeds::answer_to(asked).map(drop),
        AnswerKind::Tapping => tapping::answer_to(asked).map(drop),
        AnswerKind::Clearance => clearance::answer_to(asked).map(drop),
    };
    found.err().unwrap_or_default()
}

fn all() -> impl Iterator<Item = (&'static Declaration, &'static dyn AnyField)> {
    CALCULATORS
        .iter()
        .copied()
        .flat_map(|calculator| calculator.fields().map(move |field| (calculator, field)))
}

#[test]
fn addresses_are_unique_and_spelt_as_addresses_are() {
    let slugs: BTreeSet<&str> = CALCULATORS.iter().map(|calculator| calculator.slug).collect();
    assert_eq!(slugs.len(), CALCULATORS.len());
    for slug in slugs {
        assert!(!RESERVED.contains(&slug), "{slug}");
        let spelt = |letter: char| letter.is_ascii_lowercase() || letter == '-';
        assert!(!slug.is_empty() && slug.chars().all(spelt), "{slug}");
        assert_eq!(find(slug).map(|found| found.slug), Some(slug));
    }
    assert!(find("none").is_none());
}

#[test]
fn every_calculator_says_what_it_is() {
    for calculator in CALCULATORS.iter().copied() {
        let slug = calculator.slug;
        assert!(calculator.answers.ends_with('.'), "{slug}: {}", calculator.answers);
        assert!(!calculator.title.is_empty() && !calculator.form.button.is_empty(), "{slug}");
        assert!(!calculator.finding.why.is_empty(), "{slug}");
        let rest = &calculator.form;
        assert_eq!(rest.rest.is_empty(), rest.rest_heading.is_empty(), "{slug}");
        let names: BTreeSet<&str> = calculator.fields().map(|field| field.about().name).collect();
        assert_eq!(names.len(), calculator.fields().count(), "{slug}: two fields of one name");
        assert!(!calculator.form.begun_by.is_empty(), "{slug}");
        for field in calculator.form.begun_by {
            assert!(names.contains(field.about().name), "{slug}: begun by a field it has not");
        }
    }
}

#[test]
fn every_field_says_what_it_is_and_takes_its_example() {
    for (calculator, field) in all() {
        let about = field.about();
        let place = format!("{}: {}", calculator.slug, about.name);
        for words in [about.label, about.description, about.example] {
            assert!(!words.is_empty(), "{place}");
        }
        assert_eq!(field.check(about.example), Ok(()), "{place}");
        if let Need::Usually(usual) = about.need {
            assert_eq!(field.check(usual), Ok(()), "{place}");
        }
        for (slug, words) in field.choices() {
            assert!(!words.is_empty(), "{place}");
            assert_eq!(field.check(slug), Ok(()), "{place}: {slug}");
        }
        let chooses =
            matches!(field.control(), Control::Pick | Control::List | Control::OpenList(_));
        assert_eq!(chooses, !field.choices().is_empty(), "{place}");
    }
}

#[test]
fn every_example_is_answered() {
    for calculator in CALCULATORS.iter().copied() {
        for example in [calculator.example(), calculator.whole_example()] {
            let asked = calculator.asked(example.iter().copied());
            let was_sent = |name: &str| example.iter().any(|(held, _)| *held == name);
            assert!(!calculator.only_asks(was_sent), "{}", calculator.slug);
            assert_eq!(errors(calculator, &asked), [], "{}: {example:?}", calculator.slug);
        }
    }
}

#[test]
fn a_question_that_asks_nothing_names_what_is_needed() {
    for calculator in CALCULATORS.iter().copied() {
        let asked = calculator.asked([]);
        assert!(calculator.only_asks(|_| false), "{}", calculator.slug);
        assert!(!calculator.only_asks(|_| true), "a form sent empty: {}", calculator.slug);
        let errors = errors(calculator, &asked);
        let named = |name: &str| errors.iter().any(|error| error.field == name);
        for field in calculator.fields() {
            let about = field.about();
            if matches!(about.need, Need::Always(_)) {
                assert!(named(about.name), "{}: {}", calculator.slug, about.name);
            }
        }
        let begins = calculator.form.begun_by.iter().any(|field| named(field.about().name));
        assert!(begins, "{}: {errors:?}", calculator.slug);
    }
}

/// A field that is declared is read, with what it says of itself: nonsense in it is its error.
#[test]
fn every_field_is_read() {
    for (calculator, field) in all() {
        let name = field.about().name;
        let asked = calculator.asked(calculator.example()).with(name, "qqq");
        let errors = errors(calculator, &asked);
        let error = errors.iter().find(|error| error.field == name);
        let place = format!("{}: {name}", calculator.slug);
        assert!(error.is_some_and(|error| error.message.ends_with('.')), "{place}: {errors:?}");
    }
}

#[test]
fn every_limit_is_taken_and_refused_just_beyond() {
    for (calculator, field) in all() {
        let about = field.about();
        let check = |text: &str, is_taken: bool| {
            let place = format!("{}: {} {text}", calculator.slug, about.name);
            let found = field.check(text);
            assert_eq!(found.is_ok(), is_taken, "{place}: {found:?}");
            let says = |error: FieldError| {
                ["Write", "write", "are taken"].iter().any(|words| error.message.contains(words))
            };
            assert!(found.err().is_none_or(says), "{place}: it does not say what is taken");
        };
        match about.limits {
            Limits::None => {}
            Limits::OfReader { taken, refused } => {
                assert!(!taken.is_empty() && !refused.is_empty());
                taken.iter().for_each(|text| check(text, true));
                refused.iter().for_each(|text| check(text, false));
            }
            Limits::Between { least, most, .. } => {
                let beyond = if least >= 1.0 { 1.0 } else { least / 10.0 };
                check(&format!("{least}"), true);
                check(&format!("{most}"), true);
                check(&format!("{}", least - beyond), false);
                check(&format!("{}", most + beyond), false);
            }
        }
    }
}

/// A field that holds a figure has limits: what has none is a choice or a name.
#[test]
fn a_field_without_limits_takes_no_bare_figure() {
    for (calculator, field) in all() {
        let about = field.about();
        if matches!(about.limits, Limits::None) && !["owned", "thread"].contains(&about.name) {
            for figure in ["0", "1", "0.37", "99999"] {
                let place = format!("{}: {}", calculator.slug, about.name);
                assert!(field.check(figure).is_err(), "{place} takes {figure} without a limit");
            }
        }
    }
}

#[test]
fn every_word_finds_it() {
    for calculator in CALCULATORS.iter().copied() {
        let finding = &calculator.finding;
        assert!(!finding.names.is_empty(), "{}", calculator.slug);
        for word in finding.names.iter().chain(finding.words) {
            let found = finder::find(word);
            let is_it = |hit: &finder::Hit| hit.url == calculator.path();
            assert!(found.hits.iter().any(is_it), "{}: {word}", calculator.slug);
        }
        assert!(finder::PAGES.iter().any(|page| page.url == calculator.path()));
    }
}

#[test]
fn every_row_has_a_key_of_its_own_and_a_basis() {
    for calculator in CALCULATORS.iter().copied() {
        let AnswerKind::Rows(rows) = calculator.answer else { continue };
        let asked = calculator.asked(calculator.example());
        let found = rows.answer(&asked).unwrap_or_else(|errors| panic!("{errors:?}"));
        let kinds = rows.kinds();
        let keys: BTreeSet<&str> = kinds.iter().map(|kind| kind.key.as_str()).collect();
        assert_eq!(keys.len(), kinds.len(), "{}: a key stands twice", calculator.slug);
        assert!(!keys.contains("rules"), "{}: the rules have that key", calculator.slug);
        assert!(!found.heading.is_empty() && !found.figures.is_empty(), "{}", calculator.slug);
        for (kind, figure) in kinds.iter().zip(&found.figures) {
            assert_eq!(kind.key, figure.key);
            assert!(kind.description.len() > 5, "{}", figure.key);
            assert!(!figure.name.is_empty() && !figure.rule.is_empty(), "{}", figure.key);
            assert!(!figure.source.cite.is_empty(), "{} has no basis", figure.key);
        }
    }
}

#[test]
fn a_reamer_goes_at_or_next_below_the_slow_end() {
    // Common practice, no source: a reamer does no harm by turning slowly, and chatters when it turns fast.
    let set = |material: &str, size: &str, speeds: &str| {
        let typed = [
            ("material", material),
            ("work", "reaming"),
            ("diameter", size),
            ("spindle_speeds", speeds),
        ];
        let found = speeds::answer_to(&speeds::DECLARATION.asked(typed)).expect("a speed");
        let words = found.setting.words();
        (found.low, words)
    };
    let lathe = "60,120,240,400,700,1200";
    for (material, size, words) in
        [("gunmetal", "1/4", "700 rev/min"), ("aluminium-6082", "1/2", "700 rev/min")]
    {
        let (low, said) = set(material, size, lathe);
        assert_eq!(said, words, "{material}: {low:?}");
    }
    // None is as slow: the slowest in the range.
    assert_eq!(set("gunmetal", "1/4", "800, 900, 1200").1, "800 rev/min");
}
