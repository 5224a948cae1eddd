//! One page of each kind that the reference answers, with the status it must have. Every test that looks at
//! "one of each page" looks at these; `.ci/smoke` asks the built program for the good ones.

use std::borrow::Cow;

use form_urlencoded::Serializer;
use holewright_core::calculators::{CALCULATORS, Declaration};

/// Where a kind of page is found.
#[derive(Clone)]
pub(crate) struct Kind {
    pub(crate) status: u16,
    pub(crate) address: Cow<'static, str>,
}

const fn good(address: &'static str) -> Kind {
    bad(200, address)
}

const fn bad(status: u16, address: &'static str) -> Kind {
    Kind { status, address: Cow::Borrowed(address) }
}

/// One of each: those written down here, and every calculator as it declares itself.
pub(crate) fn kinds() -> Vec<Kind> {
    KINDS.iter().cloned().chain(CALCULATORS.iter().flat_map(|one| of_calculator(one))).collect()
}

/// The blank form; the examples of the fields that it needs, and of all; nonsense in each field.
fn of_calculator(calculator: &Declaration) -> [Kind; 4] {
    let nonsense = calculator.fields().map(|field| (field.about().name, "qqq")).collect();
    let queries = [
        (200, Vec::new()),
        (200, calculator.example()),
        (200, calculator.whole_example()),
        (422, nonsense),
    ];
    queries.map(|(status, pairs)| Kind { status, address: with(&calculator.path(), pairs).into() })
}

/// A path with parameters.
pub(crate) fn with(path: &str, pairs: Vec<(&str, &str)>) -> String {
    let query = Serializer::new(String::new()).extend_pairs(pairs).finish();
    if query.is_empty() { path.to_owned() } else { format!("{path}?{query}") }
}

/// A new kind of page is added here, and every check looks at it.
#[rustfmt::skip]
const KINDS: &[Kind] = &[
    good("/"),
    good("/threads"),
    good("/threads/ba"),
    good("/threads/ba?material=stainless-304"),
    bad(422, "/threads/ba?material=unobtainium"),
    good("/threads/npt"),
    good("/threads/ba/5"),
    good("/threads/unc/1-4-20"),
    good("/threads/bspt/1-4"),
    bad(404, "/threads/ba/99"),
    good("/drills"),
    good("/drills?from=2mm&to=3mm&series=metric"),
    bad(422, "/drills?from=nonsense&to=nonsense&series=z"),
    good("/drills/number/46"),
    good("/materials"),
    good("/materials/gunmetal"),
    good("/materials/beryllium-copper"),
    bad(404, "/materials/unobtainium"),
    good("/plan"),
    good("/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm"),
    good("/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=free-cutting-brass&over_thickness=4mm&series=number%2Cmetric"),
    bad(422, "/plan?thread=1%2F4&material=gunmetal"),
    bad(422, "/plan?thread=nonsense&material=unobtainium&hole=sideways&depth=x&owned=y&fit=z"),
    good("/rescue"),
    good("/rescue/broken-tap"),
    good("/rescue/broken-tap?material=gunmetal&tap_steel=carbon"),
    bad(422, "/rescue/broken-tap?material=unobtainium&tap_steel=x"),
    good("/rescue/stripped-thread"),
    bad(404, "/rescue/cheese"),
    good("/fasteners"),
    good("/fasteners/hexagons-bs-1083"),
    good("/fasteners/washers-unified"),
    bad(404, "/fasteners/rivets"),
    good("/drawer"),
    good("/calculators"),
    good("/calculators/speeds?material=gunmetal&work=drilling&diameter=2.7mm&spindle_max=2000"),
    good("/calculators/speeds?material=silver-steel&diameter=3mm&depth=31mm&spindle_speeds=500%2C+1000%2C+2000"),
    good("/calculators/speeds?material=gunmetal&work=reaming&diameter=6mm&depth=9mm&spindle_speeds=350%2C+1420"),
    good("/calculators/speeds?material=bright-mild-steel&work=countersinking&diameter=M3&spindle_max=900"),
    good("/calculators/speeds?material=gunmetal&work=spotting&diameter=No.+30"),
    good("/calculators/speeds?material=bright-mild-steel&work=tapping&diameter=M3"),
    bad(422, "/calculators/speeds?material=cheese&work=sawing&diameter=x&spindle_max=fast"),
    good("/calculators/tapping?thread=5+BA&hole=2.7mm"),
    good("/calculators/tapping?form=whitworth&major=1%2F4+in&pitch=36+tpi&hole=5.5mm"),
    good("/calculators/tapping?form=unified&major=.06in&pitch=80+tpi"),
    bad(422, "/calculators/tapping?thread=nonsense&form=round&major=x&pitch=y&hole=z"),
    good("/calculators/clearance?thread=5+BA&upper_error=0.1&lower_error=0.1"),
    bad(422, "/calculators/clearance?thread=nonsense&fit=loose&upper_error=x&owned=y"),
    good("/calculators/blind-hole?thread=5+BA&depth=3%2F16&part_thickness=3%2F16&finish=second&tap_end=male-centre"),
    good("/calculators/position?thread=M3&upper_error=0.5&lower_error=0.5&lean=1&thickness=6"),
    good("/calculators/position?thread=M6&case=floating&upper_error=0.2&duty=pressure"),
    good("/calculators/fastener?thread=M6&head=cap&material=gunmetal"),
    good("/calculators/fastener?thread=1%2F4+in+BSF"),
    good("/calculators/fastener?thread=4+BA&head=countersunk"),
    bad(422, "/calculators/fastener?thread=1%2F4+NPT&head=round&material=x"),
    good("/search"),
    good("/search?q=1%2F4"),
    bad(404, "/search?q=flange"),
    bad(404, "/nothing/here"),
    bad(404, "/nothing/m3"),
];
