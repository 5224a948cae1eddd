//! One page of each kind, with the status it must have.

use std::borrow::Cow;

use form_urlencoded::Serializer;
use holewright_core::calculators::{AnswerKind, CALCULATORS};

/// Where a kind of page is found.
pub(crate) struct Kind {
    pub(crate) status: u16,
    pub(crate) address: Cow<'static, str>,
}

const fn good(address: &'static str) -> (u16, &'static str) {
    (200, address)
}

/// Every page that is looked at: one of each kind, and every calculator that answers in rows.
pub(crate) fn kinds() -> impl Iterator<Item = Kind> {
    let rows = CALCULATORS.into_iter().filter(|one| matches!(one.answer, AnswerKind::Rows(_)));
    let answered = rows.map(|one| {
        let query = Serializer::new(String::new()).extend_pairs(one.whole_example()).finish();
        Kind { status: 200, address: format!("{}?{query}", one.path()).into() }
    });
    let others = KINDS.iter().map(|&(status, address)| Kind { status, address: address.into() });
    others.chain(answered)
}

/// A new kind of page is added here, and every check looks at it.
const KINDS: &[(u16, &str)] = &[
    good("/"),
    good("/threads"),
    good("/threads/ba"),
    good("/threads/npt"),
    good("/threads/ba/5"),
    good("/threads/unc/1-4-20"),
    good("/threads/bspt/1-4"),
    good("/drills"),
    good("/drills?from=2mm&to=3mm&series=metric"),
    (422, "/drills?from=nonsense&to=nonsense"),
    good("/drills/number/46"),
    good("/materials"),
    good("/materials/gunmetal"),
    good("/materials/beryllium-copper"),
    good("/plan"),
    good("/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm"),
    good(
        "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=free-cutting-brass&over_thickness=4mm&series=number%2Cmetric",
    ),
    (422, "/plan?thread=nonsense&material=unobtainium&hole=sideways&depth=x&owned=y&fit=z"),
    good("/drawer"),
    good("/calculators"),
    good("/calculators/speeds"),
    good("/calculators/speeds?material=gunmetal&work=drilling&diameter=2.7mm&spindle_max=2000"),
    good(
        "/calculators/speeds?material=silver-steel&diameter=3mm&depth=31mm&spindle_speeds=500%2C+1000%2C+2000",
    ),
    good(
        "/calculators/speeds?material=gunmetal&work=reaming&diameter=6mm&spindle_speeds=350%2C+1420",
    ),
    good("/calculators/speeds?material=bright-mild-steel&work=countersinking&diameter=M3"),
    good("/calculators/tapping?thread=5+BA&hole=2.7mm"),
    good("/calculators/clearance?thread=5+BA&upper_error=0.1&lower_error=0.1"),
    (422, "/calculators/tapping?form=nonsense&major=x&pitch=y"),
    good("/search"),
    good("/search?q=1%2F4"),
    good("/notes"),
    good("/notes?q=unheard"),
    good("/sign-in"),
    good("/privacy"),
    (404, "/search?q=flange"),
    (404, "/threads/ba/99"),
    (404, "/nothing/here"),
];
