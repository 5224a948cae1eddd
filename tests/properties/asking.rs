//! Fields whose text could be one thing or another: asked with both, or taken with the other beside it.

use holewright_core::asking::{FieldError, Line, Typed, diameter, diameter_taken, metal};
use holewright_core::calculators::tapping;
use holewright_core::tables::threads::find;
use holewright_core::units::{in_mm, inch, mm};

const fn typed(text: &str) -> Typed<'_> {
    Typed { field: "depth", text }
}

fn values(error: &FieldError) -> Vec<&str> {
    error.choices.iter().map(|choice| choice.value.as_str()).collect()
}

/// Common practice, no source.
#[test]
fn a_bare_depth_beside_an_inch_thread_asks_where_either_would_do() {
    let line = |system, size| Line::of(find(system, size).expect(size), &[]);
    let quarter = line("me-40", "1-4");
    for text in ["0.5", ".5", "0,5", "1", "0.25"] {
        let error = quarter.length(typed(text)).expect_err(text);
        assert_eq!(error.choices.len(), 2, "{text}: {error:?}");
    }
    assert_eq!(values(&quarter.length(typed(".5")).expect_err(".5")), ["0.5 mm", "0.5 in"]);
    for (text, size) in [
        ("12", mm(12.0)),
        ("3/8", inch(0.375)),
        ("1 1/4", inch(1.25)),
        ("0.5 mm", mm(0.5)),
        ("0.5 in", inch(0.5)),
        (".5\"", inch(0.5)),
    ] {
        let read = quarter.length(typed(text)).expect(text).expect(text);
        assert!((in_mm(read) - in_mm(size)).abs() < 1e-9, "{text}");
    }
    // A metric line asks nothing, unless another length of it is in inches.
    let m6 = find("metric", "m6").expect("M6");
    assert!(Line::of(m6, &["8", "4 mm"]).length(typed("0.5")).is_ok());
    assert!(Line::of(m6, &["3/8", ""]).length(typed("0.5")).is_err());
    assert!(Line::of(m6, &["", "1/2 in"]).length(typed("0.5")).is_err());
    // Less than a turn of thread is no depth.
    let five = find("ba", "5").expect("5 BA");
    assert!(Line::of(five, &[]).for_depth(five).length(typed(".25")).is_err());
    assert!(Line::of(five, &[]).for_depth(five).length(typed("8")).is_ok());
}

/// Sizes by ASME B94.11M (1/4 in, No. 25, No. 30) and the BS 328 rule (0.25 mm, 25 mm).
#[test]
fn a_bare_size_asks_or_says_what_it_was_taken_for() {
    for text in [".25", ".250", ".5", "0.5", ".26"] {
        let error = diameter(typed(text)).expect_err(text);
        assert_eq!(error.choices.len(), 2, "{text}: {error:?}");
        for choice in &error.choices {
            assert!(diameter(typed(&choice.value)).is_ok(), "{text}: {choice:?}");
        }
    }
    for (text, size) in [
        (".375", inch(0.375)),
        ("2.7", mm(2.7)),
        ("25", mm(25.0)),
        ("30", inch(0.1285)),
        ("6 dia", mm(6.0)),
        ("dia 6", mm(6.0)),
        ("3/16 dia", inch(0.1875)),
        ("Ø6", mm(6.0)),
    ] {
        let read = diameter(typed(text)).expect(text);
        assert!((in_mm(read.size) - in_mm(size)).abs() < 1e-9, "{text}: {read:?}");
    }
    for (text, other) in [("25", "No. 25"), ("30", "30 mm"), ("6", "No. 6")] {
        let taken = diameter_taken(typed(text)).expect(text);
        let others: Vec<&str> = taken.others.iter().map(|it| it.value.as_str()).collect();
        assert_eq!(others, [other], "{text}");
        assert_ne!(taken.taken_as, other);
        assert!(diameter(typed(other)).is_ok(), "{other}");
    }
    for text in ["6 mm", "No. 30", "3/16", "2.7", "100"] {
        assert_eq!(diameter_taken(typed(text)), None, "{text}");
    }
}

/// No. 10 Unified is 0.190 in (ASME B1.1: 0.060 + 0.013 n); 10 BA is 1.7 mm (BS 93).
#[test]
fn a_number_is_a_major_diameter_by_its_form() {
    let answer = |form, major| {
        let asked = [("form", form), ("major", major), ("pitch", "0.35 mm")];
        tapping::answer_to(&tapping::DECLARATION.asked(asked))
    };
    let major = |form, text| in_mm(answer(form, text).expect(text).subject.geometry.major);
    assert!((major("unified", "No 10") - 4.826).abs() < 1e-6);
    assert!((major("ba", "No. 10") - 1.7).abs() < 1e-6);
    assert!((major("unified", "#0") - 1.524).abs() < 1e-6);
    let errors = answer("whitworth", "No 10").expect_err("no number in Whitworth");
    let error = errors.first().expect("one error");
    assert_eq!((error.field, error.choices.len()), ("major", 2), "{error:?}");
}

#[test]
fn a_share_of_one_is_asked_as_a_percentage() {
    let asked = [("thread", "5 BA"), ("engagement", "0.7")];
    let errors = tapping::answer_to(&tapping::DECLARATION.asked(asked)).expect_err("a share");
    let error = errors.first().expect("one error");
    assert_eq!((error.field, values(error)), ("engagement", vec!["70"]));
}

#[test]
fn a_calculator_says_what_it_took() {
    let taken = |pairs: &[(&'static str, &'static str)]| {
        let asked = tapping::DECLARATION.asked(pairs.iter().copied());
        tapping::DECLARATION.taken(&asked)
    };
    let found = taken(&[("thread", "1/4 x 40"), ("hole", "30")]);
    let fields: Vec<(&str, &str)> =
        found.iter().map(|taken| (taken.field, taken.taken_as.as_str())).collect();
    assert_eq!(fields, [("thread", "1/4 in × 40 ME"), ("hole", "No. 30")]);
    assert!(taken(&[("thread", "5 BA"), ("hole", "No. 30")]).is_empty());
}

#[test]
fn a_part_from_scrap_is_asked_with_how_to_tell() {
    let error = metal(Typed { field: "material", text: "old half shaft" }).expect_err("a guess");
    assert!(error.message.starts_with("A half shaft is usually of these."), "{}", error.message);
    assert_eq!(values(&error), ["alloy-steel-en16", "alloy-steel-en19", "alloy-steel-en24"]);
    assert_eq!(
        metal(Typed { field: "material", text: "6082 T6" }).map(|it| it.slug),
        Ok("aluminium-6082")
    );
}
