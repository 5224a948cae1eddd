//! A picture in few colours, so small that it may stand in the repository.

use std::cmp::Reverse;
use std::collections::HashMap;

use lodepng::RGB;

type Colour = RGB<u8>;

/// The most colours: a page's own, and the steps between its ink and its paper.
const MOST: usize = 32;
/// How far apart any two are at least, in one of red, green and blue.
const APART: u8 = 16;

/// The same PNG, each colour replaced by the nearest of the most frequent ones.
#[track_caller]
pub(crate) fn in_few_colours(png: &[u8]) -> Vec<u8> {
    let picture = lodepng::decode24(png).unwrap();
    let mut counts: HashMap<Colour, usize> = HashMap::new();
    for colour in &picture.buffer {
        *counts.entry(*colour).or_default() += 1;
    }
    let mut by_count: Vec<(Colour, usize)> = counts.into_iter().collect();
    by_count.sort_unstable_by_key(|&(colour, count)| (Reverse(count), colour));
    let mut kept: Vec<Colour> = Vec::new();
    for (colour, _) in &by_count {
        let is_apart = |other: &Colour| steps(*colour, *other).iter().any(|step| *step >= APART);
        if kept.len() < MOST && kept.iter().all(is_apart) {
            kept.push(*colour);
        }
    }
    let nearest: HashMap<Colour, Colour> = by_count
        .iter()
        .map(|&(colour, _)| (colour, *kept.iter().min_by_key(|k| distance(colour, **k)).unwrap()))
        .collect();
    let pixels: Vec<Colour> =
        picture.buffer.iter().filter_map(|colour| nearest.get(colour)).copied().collect();
    lodepng::encode24(&pixels, picture.width, picture.height).unwrap()
}

fn distance(one: Colour, other: Colour) -> u32 {
    steps(one, other).into_iter().map(|step| u32::from(step) * u32::from(step)).sum()
}

/// How far apart two colours are in red, in green and in blue.
fn steps(one: Colour, other: Colour) -> [u8; 3] {
    [one.r.abs_diff(other.r), one.g.abs_diff(other.g), one.b.abs_diff(other.b)]
}

#[test]
fn a_picture_keeps_its_size_and_its_frequent_colours() {
    let ink = RGB::new(0, 0, 0);
    let greys = (0..=255).map(|level| RGB::new(level, level, level));
    let pixels: Vec<Colour> = greys.chain([ink; 256]).collect();
    let png = lodepng::encode24(&pixels, 256, 2).unwrap();
    let reduced = lodepng::decode24(in_few_colours(&png)).unwrap();
    assert_eq!((reduced.width, reduced.height), (256, 2));
    assert_eq!(reduced.buffer[256..], [ink; 256], "the most frequent one is left alone");
    let mut levels: Vec<u8> = reduced.buffer.iter().map(|colour| colour.r).collect();
    levels.dedup();
    assert!((8..=MOST).contains(&levels.len()), "{levels:?}");
    let strayed = reduced.buffer[..256].iter().zip(0u8..=255).map(|(to, from)| to.r.abs_diff(from));
    assert!(strayed.max() < Some(APART), "{levels:?}");
}
