//! The difference between two texts gives both of them back.

use holewright_server::rules::notes::difference::{Part, between};
use proptest::prelude::*;

use super::markdown::markdown;

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(2000) })]

    #[test]
    fn a_difference_holds_both_texts(old in markdown(), new in markdown()) {
        let (mut before, mut after) = (String::new(), String::new());
        for part in between(&old, &new) {
            match part {
                Part::Same(text) => {
                    before.push_str(&text);
                    after.push_str(&text);
                }
                Part::Gone(text) => before.push_str(&text),
                Part::Added(text) => after.push_str(&text),
            }
        }
        prop_assert_eq!((before, after), (old, new));
    }
}
