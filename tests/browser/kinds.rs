//! One page of each kind, with the status it must have.

/// Where a kind of page is found.
pub(crate) struct Kind {
    pub(crate) status: u16,
    pub(crate) address: &'static str,
}

const fn good(address: &'static str) -> Kind {
    Kind { status: 200, address }
}

/// A new kind of page is added here, and every check looks at it.
pub(crate) const KINDS: &[Kind] = &[
    good("/"),
    good("/threads"),
    good("/threads/ba"),
    good("/threads/npt"),
    good("/threads/ba/5"),
    good("/threads/unc/1-4-20"),
    good("/threads/bspt/1-4"),
    good("/drills"),
    good("/drills?from=2mm&to=3mm&series=metric"),
    Kind { status: 422, address: "/drills?from=nonsense&to=nonsense" },
    good("/drills/number/46"),
    good("/materials"),
    good("/materials/gunmetal"),
    good("/materials/beryllium-copper"),
    good("/plan"),
    good("/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm"),
    good(
        "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=free-cutting-brass&over_thickness=4mm&series=number%2Cmetric",
    ),
    Kind {
        status: 422,
        address: "/plan?thread=nonsense&material=unobtainium&hole=sideways&depth=x&owned=y&fit=z",
    },
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
    Kind { status: 422, address: "/calculators/tapping?form=nonsense&major=x&pitch=y" },
    good("/search"),
    good("/search?q=1%2F4"),
    good("/notes"),
    good("/notes?q=unheard"),
    good("/sign-in"),
    good("/privacy"),
    Kind { status: 404, address: "/search?q=flange" },
    Kind { status: 404, address: "/threads/ba/99" },
    Kind { status: 404, address: "/nothing/here" },
];
