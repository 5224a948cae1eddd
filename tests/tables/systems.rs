//! Thread systems and forms: what each declares of itself holds, whichever are held.

use holewright_core::calc::engagement;
use holewright_core::calc::thread_form::{engagement_basis, geometry};
use holewright_core::drawing::DrawingIds;
use holewright_core::drawing::thread_profile;
use holewright_core::tables::clearance;
use holewright_core::tables::lists;
use holewright_core::tables::source::Grade;
use holewright_core::tables::threads::read::{self, ReadError};
use holewright_core::tables::threads::{
    AnySize, Basic, ClearanceFamily, Finish, Form, HeadFamily, Meant, Naming, System, SystemId,
    TappingLists, Thread, systems,
};
use holewright_core::units::{Pitch, Printed, in_inch, in_mm, print};

/// The words for a system that a person may write.
fn words(system: &System) -> impl Iterator<Item = &'static str> {
    let own = [system.slug, system.name, system.mark].into_iter();
    own.chain(system.spellings.iter().copied())
}

/// The words that are read as a system, and by which the threads of this one are found.
fn words_read(system: &System) -> impl Iterator<Item = &'static str> {
    let (id, meant) = (system.id, system.meant);
    words(system).filter(move |word| {
        let found = read::systems(word);
        found.contains(&id) && (meant != Meant::ByName || found == [id])
    })
}

/// What is written for a size beside the name of its system: `5`, `1/4 in`, `3`, `No. 4-40`.
fn size_alone(system: &System, thread: &Thread) -> String {
    thread.designation.replacen(system.mark, "", 1).replacen(system.name, "", 1)
}

/// The threads that a text can mean.
fn meant(typed: &str) -> Vec<&'static Thread> {
    match read::read(typed) {
        Ok(thread) => vec![thread],
        Err(ReadError::Ambiguous { candidates, .. }) => candidates,
        Err(_) => Vec::new(),
    }
}

#[test]
fn every_spelling_is_read_as_its_system() {
    for system in systems() {
        assert!(words_read(system).next().is_some(), "{} has no name that is read", system.slug);
        for word in system.spellings {
            let found = read::systems(word);
            let is_shared =
                system.meant == Meant::ByName && found.iter().any(|id| *id != system.id);
            assert!(found.contains(&system.id) || is_shared, "{word} is not {}", system.slug);
            assert_eq!(*word, word.to_lowercase(), "{}", system.slug);
        }
    }
}

#[test]
fn no_spelling_stands_twice() {
    for system in systems() {
        let own = [system.slug, system.name, system.mark].map(str::to_lowercase);
        for (place, word) in system.spellings.iter().enumerate() {
            assert!(!own.iter().any(|own| own == word), "{}: {word} is its own", system.slug);
            assert!(!system.spellings.iter().skip(place + 1).any(|other| other == word), "{word}");
        }
    }
}

#[test]
fn every_size_is_read_beside_every_spelling() {
    for system in systems() {
        for thread in system.threads {
            let size = size_alone(system, thread);
            for word in words_read(system) {
                for typed in [format!("{size} {word}"), format!("{word} {size}")] {
                    assert!(meant(&typed).contains(&thread), "{typed} is not {}", thread.path());
                }
            }
        }
    }
}

/// The naming that a system declares goes with what its rows print.
#[test]
fn sizes_are_called_as_their_rows_print_them() {
    for system in systems() {
        let word = words_read(system).next().unwrap();
        for thread in system.threads {
            let Basic::Major(major) = thread.basic else { continue };
            let pitch = match thread.pitch {
                Pitch::Mm(pitch) => print::trimmed(pitch, 4),
                Pitch::PerInch(threads) => print::trimmed(threads, 4),
            };
            let typed = |size: f64, unit| {
                meant(&format!("{} {unit} {word} x {pitch}", print::trimmed(size, 4)))
            };
            let by_mm = typed(in_mm(major.length()), "mm").contains(&thread);
            let by_inch = typed(in_inch(major.length()), "inch").contains(&thread);
            let is_metric = matches!((major, thread.pitch), (Printed::Mm(_), Pitch::Mm(_)));
            let expected = match system.naming {
                Naming::Number => [false, false],
                Naming::Metric => [true, false],
                Naming::Unified => [is_metric, !is_metric],
                // A pipe thread is called by its bore, which no row prints.
                Naming::Inch => [false, !matches!(major, Printed::Mm(_))],
            };
            assert_eq!([by_mm, by_inch], expected, "{}", thread.designation);
            if is_metric && system.naming != Naming::Number {
                assert!(by_mm, "{} is not called by its millimetres", thread.designation);
            }
            if system.naming == Naming::Number {
                let number = format!("No. {} {word}", thread.size);
                assert!(meant(&number).contains(&thread), "{number}");
            }
        }
    }
}

/// A word that stands between size and system, and is the inch elsewhere.
#[test]
fn a_system_in_millimetres_is_never_read_in_inches() {
    for system in systems() {
        let word = words_read(system).next().unwrap();
        for thread in system.threads {
            let typed = format!("{} in {word}", size_alone(system, thread));
            let is_metric = matches!(thread.pitch, Pitch::Mm(_));
            let found = meant(&typed);
            match system.meant {
                Meant::ByName => assert_eq!(found, [thread], "{typed}"),
                Meant::BySize | Meant::ByPitch { .. } => {
                    assert!(!(is_metric && found.contains(&thread)), "{typed}");
                }
            }
        }
    }
}

#[test]
fn a_size_alone_never_means_a_system_that_must_be_named() {
    for system in systems().iter().filter(|system| system.meant == Meant::ByName) {
        for thread in system.threads {
            let size = size_alone(system, thread);
            let pitch = print::trimmed(in_mm(thread.pitch.length()), 4);
            for typed in [size.clone(), format!("{size} x {pitch}")] {
                assert!(meant(&typed).iter().all(|found| found.system != system.id), "{typed}");
            }
        }
    }
}

#[test]
fn the_plain_size_that_a_system_leaves_to_another_is_held_there() {
    for system in systems() {
        let Meant::ByPitch { plain } = system.meant else { continue };
        assert_eq!(plain.system().meant, Meant::BySize, "{}", system.slug);
        assert_eq!(plain.system().mark, system.mark, "{}: the two are written alike", system.slug);
        for thread in plain.system().threads {
            assert_eq!(meant(thread.designation), [thread]);
        }
    }
}

#[test]
fn every_form_is_that_of_a_system_and_is_named_once() {
    let mut asked = Vec::new();
    for form in Form::ALL {
        assert!(systems().iter().any(|system| system.form == *form), "{form:?} is of no system");
        let shape = form.shape();
        assert_eq!(shape.cut_as.shape().cut_as, shape.cut_as, "{form:?}");
        match shape.any_size {
            AnySize::Word(word, words) => {
                assert!(
                    !word.is_empty() && !words.is_empty() && !asked.contains(&word),
                    "{form:?}"
                );
                asked.push(word);
            }
            AnySize::As(other) => {
                assert!(matches!(other.shape().any_size, AnySize::Word(..)), "{form:?}");
            }
            AnySize::Never => {
                let mut of_form = systems().iter().filter(|system| system.form == *form);
                assert!(of_form.all(|system| !system.threads.iter().any(engagement::applies)));
            }
        }
    }
}

#[test]
fn every_basis_says_the_depth_and_how_far_it_can_be_trusted() {
    for form in Form::ALL {
        let basis = engagement_basis(*form);
        let depth = format!("{} p", print::trimmed(form.shape().depth, 4));
        assert!(
            basis.words.starts_with("of ") && basis.words.contains(&depth),
            "{form:?}: {basis}"
        );
        let said = basis.to_string();
        match basis.grade {
            Grade::Published => assert_eq!(said, basis.words, "{form:?}"),
            grade => assert_eq!(said, format!("{}, {grade}", basis.words), "{form:?}"),
        }
    }
}

#[test]
fn every_form_leaves_metal_at_crest_and_root() {
    for system in systems() {
        let half = system.form.shape().angle_degrees.to_radians() / 2.0;
        for thread in system.threads {
            let row = geometry(thread);
            let sharp = in_mm(row.pitch) / (2.0 * libm::tan(half));
            let depth = in_mm(row.major - row.minor) / 2.0;
            assert!(depth < sharp, "{}: deeper than its sharp height", thread.designation);
        }
    }
}

#[test]
fn every_form_is_drawn_with_its_crests_and_roots() {
    for system in systems() {
        let shape = system.form.shape();
        let thread = system.threads.first().unwrap();
        let drawn = thread_profile::thread_profile(thread, DrawingIds::new("profile"));
        let outline =
            drawn.split("outline").nth(1).and_then(|rest| rest.split('>').next()).unwrap();
        let is_round = [shape.crest, shape.root].contains(&Finish::Round);
        assert_eq!(outline.contains('A'), is_round, "{}: {outline}", system.slug);
    }
}

#[test]
fn the_lists_and_holes_that_a_system_declares_are_held() {
    for system in systems() {
        let is_listed = lists::all().any(|listed| listed.system == system.id);
        assert_eq!(is_listed, system.lists != TappingLists::NotHeld, "{}: lists", system.slug);
        let has_holes =
            system.threads.iter().any(|thread| clearance::printed_for(thread).count() > 0);
        assert_eq!(has_holes, system.clearance != ClearanceFamily::Rule, "{}", system.slug);
        // ISO 273 and ASME B18.2.8 speak of screws of these forms alone.
        let is_standard = system.form.shape().cut_as == Form::IsoMetric;
        assert!(is_standard || !has_holes, "{}: clearance", system.slug);
        let is_unified = system.heads == HeadFamily::Unified;
        assert_eq!(is_unified, system.clearance == ClearanceFamily::Unified, "{}", system.slug);
    }
}

#[test]
fn every_system_is_in_the_list_once() {
    let ids: Vec<SystemId> = systems().iter().map(|system| system.id).collect();
    assert!(ids.is_sorted(), "the list is in the order of the enum");
    assert!(ids.windows(2).all(|pair| pair[0] != pair[1]));
}
