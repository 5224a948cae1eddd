//! Hexagons, heads and washers: each size once, in order, and larger than its screw.

use holewright_core::calc::fastener::across_corners;
use holewright_core::calc::fastener_lists::lists;
use holewright_core::tables::fasteners::{heads, hexagons, washers};
use holewright_core::units::{Length, in_mm};

fn grows(sizes: &[f64]) -> bool {
    sizes.is_sorted_by(|a, b| a < b)
}

#[test]
fn each_size_stands_once_and_in_order() {
    for list in lists() {
        let rows = list.rows();
        let names: Vec<&str> = rows.iter().map(|row| row.size.as_str()).collect();
        let mut once = names.clone();
        once.sort_unstable();
        once.dedup();
        assert_eq!(once.len(), names.len(), "{}: {names:?}", list.slug);
        assert!(!list.title.is_empty() && list.says.ends_with('.'), "{}", list.slug);
    }
    let mut patterns: Vec<_> = hexagons().map(|row| row.pattern).collect();
    patterns.dedup();
    for pattern in patterns {
        let of = hexagons().filter(|row| row.pattern == pattern);
        let sizes: Vec<f64> = of.map(|row| in_mm(row.nominal.length())).collect();
        assert!(grows(&sizes), "{pattern}: {sizes:?}");
    }
}

#[test]
fn a_hexagon_is_wider_than_its_screw_and_its_corners_wider_still() {
    for row in hexagons() {
        let [screw, flats] =
            [row.nominal.length(), row.across_flats.length()].map(|size: Length| in_mm(size));
        assert!(flats > screw * 1.3, "{row:?}");
        if let Some(corners) = row.across_corners {
            let sharp = in_mm(across_corners(row.across_flats.length()));
            let corners = in_mm(corners.length());
            // Chamfered, at least 0.94 of sharp; BS 1083 rounds to a hundredth of an inch.
            assert!(corners > flats && corners > sharp * 0.93, "{row:?}");
            assert!(corners < sharp + 0.13, "{row:?}");
        }
        for height in [row.head, row.nut].into_iter().flatten() {
            let height = in_mm(height.length());
            assert!(height > screw * 0.4 && height < screw * 1.01, "{row:?}");
        }
    }
}

#[test]
fn heads_and_washers_are_larger_than_their_screws() {
    for row in heads() {
        let [screw, diameter, height] =
            [row.nominal, row.diameter, row.height].map(|size| in_mm(size.length()));
        assert!(diameter > screw * 1.4 && diameter < screw * 2.5, "{row:?}");
        assert!(height > screw * 0.4 && height < screw * 1.01, "{row:?}");
        assert!(row.key.is_none_or(|key| in_mm(key.length()) < screw), "{row:?}");
    }
    for row in washers() {
        let [screw, inside, outside, thickness] =
            [row.nominal, row.inside, row.outside, row.thickness].map(|size| in_mm(size.length()));
        assert!(inside > screw && inside < screw * 1.2, "{row:?}");
        assert!(outside > inside * 1.5 && thickness < screw / 2.0, "{row:?}");
    }
}
