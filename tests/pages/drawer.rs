//! The drawer: its cookie, its form, and what it does to the pages it has a part in.

use holewright_core::tables::drills::{Series, by_series};
use holewright_core::tables::threads;
use holewright_core::tables::threads::read::read;
use holewright_pages::drawer::{Carried, DRILL_SETS, Drawer, LONGEST, Outcome, TAP_SETS, decide};
use holewright_pages::{Context, Reply, answer};

use crate::markup::check_page;
use crate::{body, visit};

/// Six drills near 5 BA's: none is No. 36, which a plan for gunmetal takes.
const SIX: &str = "drills=2.4mm%2C+2.5mm%2C+2.6mm%2C+2.8mm%2C+3.3mm%2C+3.5mm&on=yes";

const PLAN: &str = "/plan?thread=5+BA&material=gunmetal&hole=blind&depth=8mm";

fn context(cookie: &str) -> Context {
    Context {
        base_url: "https://club.example".to_owned(),
        drawer: Carried::of(cookie),
        ..Context::default()
    }
}

/// An address as a reader with this cookie sees it.
fn seen(cookie: &str, address: &str) -> Reply {
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    answer(path, query, &context(cookie))
}

#[track_caller]
fn page(cookie: &str, address: &str) -> String {
    let answer = seen(cookie, address);
    assert_eq!(answer.status, 200, "{address}");
    answer.text().replace('\u{a0}', " ")
}

/// The lines that name the drawer.
#[track_caller]
fn notice(page: &str) -> &str {
    page.split("<div class=\"drawer\">").nth(1).unwrap().split("</div>").next().unwrap()
}

fn chosen(page: &str) -> &str {
    let figure = page.split("class=\"figure\"><strong><a href=\"").nth(1).unwrap();
    figure.split('"').next().unwrap()
}

/// Kept, or the page that says why not.
fn sent(form: &str) -> Outcome {
    decide(form.as_bytes(), &Context::default())
}

#[track_caller]
fn kept(form: &str) -> Drawer {
    match sent(form) {
        Outcome::Keep(drawer) => drawer,
        other => panic!("{form}: {other:?}"),
    }
}

#[track_caller]
fn refused(form: &str) -> Reply {
    match sent(form) {
        Outcome::Refused(answer) => answer,
        other => panic!("{form}: {other:?}"),
    }
}

#[test]
fn a_full_drawer_comes_back_out_of_its_cookie() {
    let drawer = kept(
        "act=keep&drill_set=1-60&drill_set=A-Z&drill_set=1-6x0.1mm&drills=2%2C05mm%3B+7%2F64\
         &tap_set=BA+0-10&tap_set=M2-M6&taps=1%2F4+x+40+ME%2C+M3+LH&reamers=3%2C+1%2F8+in&speeds=350%2C+500%2C1%2C200",
    );
    let value = drawer.cookie_value();
    assert_eq!(Drawer::read(&value), Ok(drawer.clone()));
    assert_eq!(
        value,
        "drills=1-60%2C+A-Z%2C+1-6x0.1mm%2C+2%2C05mm%2C+7%2F64&taps=BA+0-10%2C+M2-M6%2C+1%2F4+x+40+ME%2C+M3+LH\
         &reamers=3%2C+1%2F8+in&speeds=350%2C+500%2C1%2C200&on=yes"
    );
    assert!(drawer.weight() < LONGEST / 3, "{}", drawer.weight());
    assert_eq!(drawer.drills.held().len(), 60 + 26 + 51 + 1 + 1);
    assert_eq!(drawer.taps.held().len(), 11 + 6 + 2);
    assert_eq!(drawer.speeds.text(), "350, 500,1,200");
}

#[test]
fn the_cookie_needs_no_quotes() {
    let value = kept("act=keep&drills=No.+46%2C+7%2F64%22&taps=M3+%C3%97+0.35&speeds=200-2000")
        .cookie_value();
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-._*%+&=".contains(&byte);
    assert!(value.bytes().all(plain), "{value}");
}

#[test]
fn every_named_set_holds_what_it_says() {
    let counts = [60, 20, 26, 13, 21, 29, 15, 6, 41, 51, 41, 19, 25];
    for (set, count) in DRILL_SETS.iter().zip(counts) {
        let form = format!("act=keep&drill_set={}", set.item.replace('/', "%2F"));
        assert_eq!(kept(&form).drills.held().len(), count, "{}", set.item);
    }
    for set in &TAP_SETS {
        let drawer = kept(&format!("act=keep&tap_set={}", set.item.replace(' ', "+")));
        assert_eq!(drawer.taps.held().len(), set.sizes.len(), "{}: a size is not held", set.item);
        assert!(read(set.item).is_err(), "{} names a thread too", set.item);
        assert!(threads::system(set.system).is_some(), "{}", set.system);
    }
}

#[test]
fn too_much_is_refused_with_what_makes_it_shorter() {
    let taps: Vec<String> =
        threads::all().map(|thread| thread.designation.replace(' ', "+")).take(90).collect();
    let answer = refused(&format!("act=keep&taps={}", taps.join("%3B")));
    assert_eq!(answer.status, 422);
    assert!(answer.text().contains("1024 are the most"), "{}", answer.text());
    assert!(answer.text().contains("1-6x0.1mm, and tick the sets"));
    assert!(answer.text().contains("href=\"#taps\""));
    // The list of drills goes into addresses, which have their own limit.
    let all: Vec<String> =
        by_series(Series::Metric).map(|drill| drill.size.clone() + "mm").collect();
    let drills = refused(&format!("act=keep&drills={}", all.join("%3B")));
    assert!(drills.text().contains("500 characters are the most"), "{}", drills.text());
    assert!(drills.text().contains("href=\"#drills\""));
}

#[test]
fn errors_keep_everything_and_stand_at_their_fields() {
    let answer = refused(
        "act=keep&drill_set=1-60&act=keep&drills=%3Cscript%3E&tap_set=BA+0-10&taps=7zz&reamers=fat&speeds=quick",
    );
    assert_eq!(answer.status, 422);
    let page = answer.text();
    assert!(page.contains("<title>Error:") && !page.contains("<script"));
    for (field, typed) in
        [("drills", "&#60;script&#62;"), ("taps", "7zz"), ("reamers", "fat"), ("speeds", "quick")]
    {
        assert!(page.contains(&format!("href=\"#{field}\"")), "{field}: no error");
        assert!(page.contains(&format!("id=\"{field}\"")), "{field}: no place");
        assert!(page.contains(&format!("value=\"{typed}\"")), "{field} is lost");
        assert!(page.contains(&format!("id=\"{field}-error\"")), "{field}: no words beside it");
    }
    for set in ["1-60", "BA 0-10"] {
        assert!(page.contains(&format!("value=\"{set}\" checked")), "{set} is lost");
    }
    assert!(refused("act=keep&drill_set=spoons").text().contains("href=\"#drill_set\""));
    assert!(refused("drills=1-60").text().contains("press one of the buttons"));
}

#[test]
fn bare_millimetres_are_kept_with_their_unit() {
    let drawer = kept("drill_set=1-60&act=keep&drills=2%2C2.5%2C3.3%2C5");
    assert_eq!(drawer.drills.held().len(), 64);
    assert!(drawer.drills.text().contains("2 mm, 2.5 mm"), "{}", drawer.drills.text());
}

#[test]
fn the_buttons_switch_and_empty() {
    let context = context(SIX);
    let act = |act: &str| decide(format!("act={act}").as_bytes(), &context);
    let Outcome::Keep(off) = act("off") else { panic!("not kept") };
    assert!(!off.on);
    assert_eq!(off.drills.held().len(), 6, "switching off loses nothing");
    assert_eq!(act("empty"), Outcome::Empty);
    assert_eq!(sent("act=off"), Outcome::Empty);
    // What was off stays off when it is kept again.
    let switched = Context { drawer: Carried::Drawer(off), ..context.clone() };
    let Outcome::Keep(kept) = decide(b"act=keep&drills=2.5mm", &switched) else {
        panic!("not kept")
    };
    assert!(!kept.on);
    let Outcome::Keep(on) = decide(b"act=on", &switched) else { panic!("not kept") };
    assert!(on.on);
}

#[test]
fn the_page_shows_what_is_kept_and_says_when_it_cannot_be_read() {
    let page = page("drills=1-60%2C+2.05mm&taps=BA+0-10&speeds=350%2C+500&on=yes", "/drawer");
    assert!(page.contains("In use") && page.contains("value=\"off\""));
    assert!(page.contains("value=\"1-60\" checked") && page.contains("value=\"BA 0-10\" checked"));
    assert!(page.contains("value=\"2.05mm\"") && page.contains("value=\"350, 500\""));
    let off = seen("drills=1-60&on=no", "/drawer").text().to_owned();
    assert!(off.contains("Switched off") && off.contains("value=\"on\""));
    let broken = seen("drills=spoons&on=yes", "/drawer");
    assert_eq!(broken.status, 200);
    assert!(broken.text().contains("cannot be read here"));
    let none = body(200, "/drawer");
    assert!(!none.contains("cannot be read here") && !none.contains("value=\"empty\""));
}

#[test]
fn nothing_but_a_drawer_is_read_as_one() {
    let long = format!("drills={}&on=yes", "1-60%2C+".repeat(200));
    for value in [
        "x",
        "on=yes",
        "drills=1-60",
        "drills=1-60&on=maybe",
        "drills=&on=yes",
        "taps=5&on=yes",
        "speeds=9e99&on=yes",
        "drills=%00&on=yes",
        "drills=%ff%fe&on=yes",
        "=&=&%",
        "\u{1f529}",
        "drills=<script>&on=yes",
        "reamers=nan&on=yes",
        &long,
    ] {
        assert_eq!(Carried::of(value), Carried::Unreadable, "{value}");
        assert_eq!(seen(value, PLAN).text(), visit(PLAN).text(), "{value}");
    }
    assert_eq!(Carried::of(""), Carried::Nothing);
}

#[test]
fn six_drills_choose_and_say_what_would_be_nearer() {
    let mine = page(SIX, PLAN);
    assert_eq!(chosen(visit(PLAN).text()), "/drills/number/36");
    // 2.8 mm leaves (3.2 − 2.8) / 0.708 = 56.5 %, nearer the aim of 70 than the 84.7 of 2.6 mm, but
    // 2.8 is past the standard's largest hole of 2.711 by more than a 50th of 3.2: 2.6 it is.
    assert_eq!(chosen(&mine), "/drills/metric/2.6");
    assert!(mine.contains("84.7 %"));
    let said = notice(&mine);
    assert!(
        said.contains("By your drawer: drills 2.4mm, 2.5mm, 2.6mm, 2.8mm, 3.3mm, 3.5mm."),
        "{said}"
    );
    assert!(
        said.contains("No. 36, 69.9 %, would be nearer the aim of 70 %; it is not in your drawer."),
        "{said}"
    );
    assert!(said.contains("href=\"/drawer\""));
    assert!(!visit(PLAN).text().contains("class=\"drawer\""));
}

#[test]
fn a_link_fixes_what_it_names_and_a_page_links_to_itself_with_all_it_used() {
    let cookie = format!("{SIX}&speeds=350%2C+2000");
    let mine = page(&cookie, PLAN);
    assert!(notice(&mine).contains("machine speeds 350, 2000"));
    let canonical = mine.split("rel=\"canonical\" href=\"https://club.example").nth(1).unwrap();
    let link = canonical.split('"').next().unwrap().replace("&#38;", "&");
    assert!(
        link.contains("owned=2.4mm%2C+2.5mm") && link.contains("spindle_speeds=350%2C+2000"),
        "{link}"
    );
    // For anyone the link is the same plan, whatever their own drawer.
    let shared = visit(&link).text().to_owned();
    assert_eq!(chosen(&shared), chosen(&mine));
    let other = page("drills=1-60&speeds=500&on=yes", &link);
    assert_eq!(chosen(&other), chosen(&mine));
    assert!(notice(&other).contains("By the drills listed in this address, not your drawer."));
    assert!(!notice(&other).contains("By your drawer"));
    // The form leaves open what the address left open.
    let form = mine.split("id=\"owned\"").nth(1).unwrap();
    assert!(form.starts_with(" name=\"owned\" value=\"\""), "{}", &form[..60]);
    // One link sets the drawer's drills aside for this page.
    let aside = notice(&mine).split("<a href=\"/plan").nth(1).unwrap().split('"').next().unwrap();
    let aside = format!("/plan{}", aside.replace("&#38;", "&"));
    assert_eq!(chosen(&page(&cookie, &aside)), "/drills/number/36");
}

#[test]
fn a_series_in_the_address_stands_and_a_drawer_without_the_drill_is_told() {
    let metric = format!("{PLAN}&series=number");
    assert_eq!(chosen(&page(SIX, &metric)), "/drills/number/36");
    let none = seen("drills=10mm%2C+11mm&on=yes", PLAN);
    assert_eq!(none.status, 200);
    let none = none.text().replace('\u{a0}', " ");
    assert!(notice(&none).contains("Use every drill on this page"));
    assert!(none.contains("No drill at hand will do: get"), "what would do is the answer");
    assert!(none.contains("The nearest at hand, 10 mm, is as large as the thread or larger."));
}

#[test]
fn a_plan_says_whether_the_tap_is_there() {
    let asked = |drawer| {
        let page = page(drawer, PLAN);
        page.split("class=\"asked\">").nth(1).unwrap().split("</p>").next().unwrap().to_owned()
    };
    assert!(asked("taps=BA+even+0-10%2C+5+BA&on=yes").ends_with(", tap in your drawer"));
    assert!(asked("taps=BA+even+0-10&on=yes").ends_with(", tap not in your drawer"));
    assert!(!asked(SIX).contains("tap"), "no taps are listed");
}

#[test]
fn tables_mark_what_is_there() {
    let yours = |page: &str| page.matches("class=\"yours\">yours<").count();
    let thread = page(SIX, "/threads/ba/5");
    // 2.6 and 2.8 mm leave 50 to 90 % of 5 BA.
    assert_eq!(yours(&thread), 2);
    assert!(thread.contains("<dt>From your drawer</dt><dd><a href=\"/drills/metric/2.6\">"));
    assert_eq!(yours(&page(SIX, "/drills")), 6);
    let chart = page(SIX, "/drills");
    let cut = notice(&chart).split("<a href=\"/drills").nth(1).unwrap().split('"').next().unwrap();
    assert_eq!(body(200, &format!("/drills{cut}")).matches("<tr id=").count(), 6);
    assert!(page(SIX, "/drills/metric/2.8").contains("Your drawer has this drill."));
    assert!(page(SIX, "/drills/number/36").contains("Your drawer does not have this drill."));
    let reamer = "reamers=3&on=yes";
    assert!(page(reamer, "/drills/metric/3").contains("Your drawer has a reamer of this size."));
    assert!(yours(&page("drills=1-60,1-10x0.1mm&on=yes", "/threads/ba")) > 3);
    assert_eq!(yours(visit("/threads/ba/5").text()), 0);
    assert_eq!(yours(&page(&SIX.replace("yes", "no"), "/threads/ba/5")), 0);
}

#[test]
fn calculators_choose_from_it_and_say_what_would_be_nearer() {
    let tapping = page(SIX, "/calculators/tapping?thread=5+BA&engagement=60");
    assert!(tapping.contains("<dt>Nearest drill</dt><dd><a href=\"/drills/metric/2.8\">"));
    let said = notice(&tapping);
    assert!(said.contains("would be nearer the aim of 60 %; it is not in your drawer."), "{said}");
    let clearance = page(SIX, "/calculators/clearance?thread=5+BA");
    assert_eq!(chosen(&clearance), "/drills/metric/3.5");
    assert!(notice(&clearance).contains("would be nearer the hole of 3.328 mm"));
    let speeds = "/calculators/speeds?material=gunmetal&diameter=5.5mm";
    let with = page("speeds=500%2C+3000&on=yes", speeds);
    assert!(notice(&with).contains("By your drawer: machine speeds 500, 3000."));
    let set = with.split("<p class=\"label\">Machine speed to set</p>").nth(1).unwrap();
    let set = set.split("</p>").next().unwrap();
    assert!(set.contains("3000"), "{set}");
    let left = "Left empty: what is in your drawer";
    assert_eq!(with.matches(left).count(), 2, "spindle speeds and the fastest of them");
    assert_eq!(clearance.matches(left).count(), 2, "series and drills");
    let fixed = format!("{speeds}&spindle_max=1000");
    assert_eq!(page("speeds=500%2C+3000&on=yes", &fixed), body(200, &fixed));
}

#[test]
fn several_machines_are_kept_and_the_pages_say_which_to_use() {
    let form = "act=keep&speeds=lathe%3A+350%2C+500%2C+1000%0D%0Abench+drill%3A+600-2000";
    let drawer = kept(form);
    assert_eq!(drawer.speeds.text(), "lathe: 350, 500, 1000; bench drill: 600-2000");
    assert_eq!(Drawer::read(&drawer.cookie_value()).unwrap(), drawer);
    let cookie = drawer.cookie_value();
    let speeds = page(&cookie, "/calculators/speeds?material=silver-steel&diameter=5mm");
    let set = speeds.split("<p class=\"label\">Machine speed to set</p>").nth(1).unwrap();
    assert!(set.split("</p>").next().unwrap().contains("1000"), "{set}");
    assert!(speeds.contains("<p class=\"basis\">on the lathe</p>"));
    let plan = page(&cookie, "/plan?thread=M2.5&material=silver-steel");
    assert!(plan.contains("2000 rev/min on the bench drill"), "{plan}");
    let material = page(&cookie, "/materials/silver-steel");
    assert!(material.contains(", lathe") && material.contains(", bench drill"), "{material}");
    // A drawer kept before machines had names reads as it did.
    let old =
        page("speeds=500%2C+1000&on=yes", "/calculators/speeds?material=silver-steel&diameter=5mm");
    assert!(old.contains("<strong>1000</strong> <span>rev/min</span>"), "{old}");
    let Outcome::Refused(refused) = sent("act=keep&speeds=350%3B+drill%3A+600") else {
        panic!("a machine without a name beside one with");
    };
    assert!(refused.text().contains("Name each machine"));
}

#[test]
fn the_hole_before_a_reamer_is_drilled_from_it() {
    let reaming = "/calculators/speeds?material=gunmetal&work=reaming&diameter=6mm";
    let every = body(200, reaming);
    assert!(every.contains(">5.8 mm</a>"));
    let mine = page("drills=5.7mm&on=yes", reaming);
    assert!(!mine.contains(">5.8 mm</a>") && mine.contains(">5.7 mm</a>"), "{mine}");
    assert!(notice(&mine).contains("By your drawer: drills 5.7mm."));
    // A drill's own speed has nothing to choose from it.
    let drilling =
        page("drills=5.7mm&on=yes", "/calculators/speeds?material=gunmetal&diameter=6mm");
    assert!(!drilling.contains("By your drawer"), "{drilling}");
}

#[test]
fn a_page_with_a_drawer_is_whole() {
    let full = "drills=1-60%2C+2.05mm&taps=BA+0-10&reamers=3&speeds=350%2C+500&on=yes";
    for address in [
        "/drawer",
        PLAN,
        "/threads/ba/5",
        "/threads/ba",
        "/threads/bspt/1-4",
        "/drills",
        "/drills/number/36",
        "/calculators/tapping?thread=M3",
        "/calculators/clearance?thread=M3",
        "/calculators/speeds?material=gunmetal&diameter=2mm",
    ] {
        check_page(&page(full, address), address);
    }
    check_page(seen("drills=1-60&on=no", "/drawer").text(), "/drawer");
    check_page(seen("broken", "/drawer").text(), "/drawer");
    check_page(refused("act=keep&drills=spoons&taps=spoons&reamers=x&speeds=y").text(), "/drawer");
    check_page(seen("drills=10mm&on=yes", PLAN).text(), PLAN);
}

#[test]
fn files_and_other_pages_never_look_at_it() {
    for file in [
        "/plan.csv?thread=5+BA&material=gunmetal",
        "/plan.svg?thread=5+BA&material=gunmetal",
        "/threads/ba/5.csv",
        "/drills.csv",
        "/plan.csv?thread=nonsense",
    ] {
        assert_eq!(seen(SIX, file), visit(file), "{file}");
    }
    for same in ["/", "/search?q=1%2F4", "/materials/gunmetal", "/nothing/here", "/threads"] {
        assert_eq!(seen(SIX, same).text(), visit(same).text(), "{same}");
    }
}

#[test]
fn a_redirect_keeps_the_reader_s_address() {
    let answer = seen(SIX, "/plan?thread=5+BA&material=gunmetal&depth=&owned=");
    assert_eq!(answer.location(), Some("/plan?thread=5+BA&material=gunmetal"));
}

#[test]
fn a_material_says_what_the_readers_machine_is_set_to() {
    // 12 mm at 30.5 m/min and more: 2,000 rev/min is in the range; 1 mm has none so fast.
    let with = page("speeds=500%2C+2000&on=yes", "/materials/gunmetal");
    assert!(notice(&with).contains("By your drawer: machine speeds 500, 2000."));
    assert!(with.contains("<th scope=\"col\" class=\"n\">Yours, rev/min</th>"));
    assert!(with.contains("2000 <span class=\"mark within\">slower, no harm</span>"));
    assert!(with.contains("2000 <span class=\"mark within\">in the range</span>"));
    let slow = page("speeds=3000&on=yes", "/materials/silver-steel");
    assert!(slow.contains("3000 <span class=\"mark beyond\">too fast</span>"), "{slow}");
    assert!(!visit("/materials/gunmetal").text().contains("Yours, rev/min"));
}
