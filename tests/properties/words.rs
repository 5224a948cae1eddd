//! The words of addresses and JSON: promises, each read back.

use holewright_core::calc::clearance::Fit;
use holewright_core::calc::depth::LastTap;
use holewright_core::calc::tool_steel::ToolSteel;
use holewright_core::finder::Kind;
use holewright_core::units::read::one_of;

#[test]
fn fits_have_these_words() {
    assert_eq!(Fit::ALL.map(Fit::slug), ["close", "medium", "free"]);
    for fit in Fit::ALL {
        assert_eq!((Fit::from_slug(fit.slug()), fit.to_string().as_str()), (Some(fit), fit.slug()));
    }
    assert_eq!(Fit::from_slug("loose"), None);
}

#[test]
fn taps_have_these_words() {
    assert_eq!(LastTap::ALL.map(LastTap::slug), ["taper", "second", "plug"]);
    for tap in LastTap::ALL {
        let read = LastTap::from_slug(tap.slug());
        assert_eq!((read, tap.to_string().as_str()), (Some(tap), tap.slug()));
    }
    assert_eq!(LastTap::from_slug("bottoming"), None);
}

#[test]
fn the_steels_of_tools_have_these_words() {
    let steels = [ToolSteel::HighSpeed, ToolSteel::Carbon];
    assert_eq!(steels.map(ToolSteel::slug), ["hss", "carbon"]);
    assert_eq!(steels.map(ToolSteel::name), ["high-speed steel", "carbon steel"]);
}

#[test]
fn kinds_of_what_is_found_have_these_words() {
    let kinds = [Kind::Thread, Kind::System, Kind::Drill, Kind::Series, Kind::Material];
    let words = ["thread", "system", "drill", "series", "material"];
    assert_eq!(kinds.map(Kind::slug), words);
    let kinds = [Kind::Rescue, Kind::Calculator, Kind::List];
    assert_eq!(kinds.map(Kind::slug), ["rescue", "calculator", "list"]);
}

#[test]
fn names_to_choose_from_are_joined() {
    assert_eq!(one_of(&["No. 2", "2 mm", "2 in"]), "No. 2, 2 mm or 2 in");
    assert_eq!(one_of(&["2 mm", "2 in"]), "2 mm or 2 in");
    assert_eq!(one_of(&["2 mm"]), "2 mm");
    assert_eq!(one_of(&[]), "");
}
