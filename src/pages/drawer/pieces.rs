//! A typed list as its items: between semicolons, line ends and the commas that can only part items.

use std::collections::HashSet;

/// The items of a list, each once, in the order typed, its spaces made single.
///
/// A comma with a figure hard on either side may mark decimals, so it stays in its item: what the
/// item means is its reader's business.
pub(super) fn pieces(typed: &str) -> Vec<String> {
    let mut pieces = Pieces::default();
    for line in typed.split([';', '；', '\n', '\r']) {
        let mut start = 0;
        for (place, comma) in line.match_indices([',', '，']) {
            let end = place + comma.len();
            let (before, behind) = (line.get(start..place), line.get(end..));
            if !is_tight(before.unwrap_or_default(), behind.unwrap_or_default()) {
                pieces.push(before.unwrap_or_default());
                start = end;
            }
        }
        pieces.push(line.get(start..).unwrap_or_default());
    }
    pieces.in_order
}

/// The items so far. A list that is typed may be long: each item is looked for once, not along the list.
#[derive(Default)]
struct Pieces {
    in_order: Vec<String>,
    seen: HashSet<String>,
}

impl Pieces {
    fn push(&mut self, item: &str) {
        let item = item.split_whitespace().collect::<Vec<_>>().join(" ");
        if !item.is_empty() && self.seen.insert(item.clone()) {
            self.in_order.push(item);
        }
    }
}

fn is_tight(before: &str, behind: &str) -> bool {
    before.ends_with(|last: char| last.is_ascii_digit())
        && behind.starts_with(|next: char| next.is_ascii_digit())
}

#[cfg(test)]
mod tests {
    use super::pieces;

    #[test]
    fn a_list_is_parted_where_it_can_only_be_parted() {
        assert_eq!(
            pieces(" 1-60 ,  A-Z;2,05 mm\n5BA,6BA, "),
            ["1-60", "A-Z", "2,05 mm", "5BA", "6BA"]
        );
        assert_eq!(pieces("46, 48, 46"), ["46", "48"]);
        assert!(pieces(" ;,\n").is_empty());
    }

    /// As a script may post it: looked for along the list, each of these would take minutes.
    #[test]
    fn a_long_list_costs_no_more_than_its_length() {
        let typed: Vec<String> = (0..200_000).map(|item| format!("{item:x}")).collect();
        assert_eq!(pieces(&typed.join(";")).len(), 200_000);
        assert_eq!(pieces(&format!("{0};{0}", typed.join(";"))).len(), 200_000, "each once");
    }

    #[test]
    fn what_is_joined_again_parts_the_same() {
        for typed in ["1-60, 2,05mm,2,1mm", "a,b;c , d", "M3 x 0,5,M4"] {
            let once = pieces(typed);
            assert_eq!(pieces(&once.join(", ")), once, "{typed}");
        }
    }
}
