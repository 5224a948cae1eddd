//! Section lining: parallel lines at 45° clipped to a region by geometry, so that every renderer
//! shows them and no element ids are needed.

use crate::drawing::svg::{Path, Point, at};
use crate::units::print::round;

/// Which way the lines lean. Two parts that touch are lined opposite ways.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lean {
    /// Up to the right.
    Right,
    /// Up to the left.
    Left,
}

/// Adds the lining of a region to a path, its lines `spacing` apart. The region is a closed polygon.
pub(super) fn hatch(path: &mut Path, region: &[Point], lean: Lean, spacing: f64) {
    // Every line is a x + y = c; c is a whole number of steps, so lining runs on from region to region.
    let slope = match lean {
        Lean::Right => 1.0,
        Lean::Left => -1.0,
    };
    let step = spacing * std::f64::consts::SQRT_2;
    let offset = |point: &Point| slope * point.x + point.y;
    let least = region.iter().map(offset).fold(f64::INFINITY, f64::min);
    let most = region.iter().map(offset).fold(f64::NEG_INFINITY, f64::max);
    // The half step keeps the lines off the corners, which mostly stand on round figures.
    let mut c = (least / step).ceil() * step + step / 2.0 - step;
    while c < most {
        if c > least {
            line(path, region, slope, c);
        }
        c += step;
    }
}

/// The pieces of one line inside the region.
fn line(path: &mut Path, region: &[Point], slope: f64, c: f64) {
    let ends = region.iter().zip(region.iter().cycle().skip(1));
    let mut crossings: Vec<f64> = ends
        .filter_map(|(from, to)| {
            let (a, b) = (slope * from.x + from.y - c, slope * to.x + to.y - c);
            ((a < 0.0) != (b < 0.0)).then(|| from.x + (to.x - from.x) * a / (a - b))
        })
        .collect();
    crossings.sort_by(f64::total_cmp);
    for pair in crossings.chunks_exact(2) {
        if let [from, to] = pair
            && to - from > 0.5
        {
            path.segment(on(*from, slope, c), on(*to, slope, c));
        }
    }
}

fn on(x: f64, slope: f64, c: f64) -> Point {
    at(round(x, 1), round(c - slope * x, 1))
}
