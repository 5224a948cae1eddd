//! The metal of a section: outline, section lining, thread, break lines and centre line.

use crate::drawing::frame::{self, KINK, break_line};
use crate::drawing::hatch::{Lean, hatch};
use crate::drawing::hole_section::section::Bottom;
use crate::drawing::hole_section::sheet::Sheet;
use crate::drawing::svg::{Element, Path, Point, at};
use crate::units::mm;

/// The chamfer at the mouth, over the major diameter.
const CHAMFER: f64 = 1.06;
/// Deepest chamfer drawn.
const DEEPEST_CHAMFER: f64 = 12.0;
/// From line to line of the section lining.
const LINING: f64 = 7.0;
/// How far a centre line passes the metal.
const BEYOND: f64 = 6.0;

/// One part of the work: from face to face, with its hole's radius on the way down.
struct Block {
    top: f64,
    bottom: f64,
    lean: Lean,
    /// Points of the hole's wall, x the distance from the axis.
    wall: Vec<Point>,
}

/// Everything but dimensions.
pub(super) fn metal(sheet: &Sheet<'_>) -> Vec<Element> {
    let mut outline = Path::default();
    let mut lining = Path::default();
    let mut breaks = Path::default();
    let chamfer = chamfer(sheet);
    for part in parts(sheet, chamfer) {
        for (top, bottom) in pieces(sheet, &part) {
            let wall = clip(&part.wall, top, bottom);
            for side in [-1.0, 1.0] {
                let place = |point: &Point| at(sheet.centre + side * point.x, point.y);
                let edge = if side < 0.0 { sheet.left } else { sheet.right };
                outline.polyline(wall.iter().map(place));
                let mut region = vec![at(edge, top)];
                region.extend(wall.iter().map(place));
                if wall.is_empty() {
                    region.push(at(sheet.centre, top));
                }
                if wall.last().is_none_or(|last| last.y < bottom) {
                    region.push(at(sheet.centre, bottom));
                }
                region.push(at(edge, bottom));
                hatch(&mut lining, &region, part.lean, LINING);
                break_line(&mut breaks, at(edge, top), at(edge, bottom));
            }
        }
    }
    for (top, bottom) in sheet.axial.gaps() {
        for y in [top, bottom] {
            break_across(&mut breaks, sheet, y);
        }
    }
    edges(&mut outline, sheet, chamfer);
    let bottom = sheet.y(sheet.levels.bottom);
    match sheet.section.bottom {
        Bottom::Blind { part_thickness: None, .. } => break_across(&mut breaks, sheet, bottom),
        _ => outline.segment(at(sheet.left, bottom), at(sheet.right, bottom)),
    }
    let mut centre_line = Path::default();
    let end = sheet.y(sheet.levels.tip.min(sheet.levels.bottom)) + BEYOND;
    let start = sheet.y(sheet.levels.top) - BEYOND;
    centre_line.segment(at(sheet.centre, start), at(sheet.centre, end));
    vec![
        frame::lining(lining),
        frame::thick("outline", outline),
        frame::thin("thread", thread(sheet, chamfer)),
        frame::thin("break-line", breaks),
        frame::chain("centre-line", centre_line),
    ]
}

/// The chamfer's size, along the axis and across it alike: 45° a side.
fn chamfer(sheet: &Sheet<'_>) -> f64 {
    let thread = sheet.y(sheet.levels.full_thread.min(sheet.levels.bottom)) - sheet.y(mm(0.0));
    (sheet.thread * CHAMFER - sheet.hole).min(thread * 0.35).min(DEEPEST_CHAMFER)
}

fn parts(sheet: &Sheet<'_>, chamfer: f64) -> Vec<Block> {
    let y = |depth| sheet.y(depth);
    let levels = sheet.levels;
    let face = y(mm(0.0));
    let bottom = y(levels.bottom);
    let mut parts = Vec::new();
    if sheet.section.upper.is_some() {
        let top = y(levels.top);
        let wall = vec![at(sheet.clearance, top), at(sheet.clearance, face)];
        parts.push(Block { top, bottom: face, lean: Lean::Left, wall });
    }
    let mut wall = vec![
        at(sheet.hole + chamfer, face),
        at(sheet.hole, face + chamfer),
        at(sheet.hole, y(levels.full_diameter)),
    ];
    if matches!(sheet.section.bottom, Bottom::Blind { .. }) {
        wall.push(at(0.0, y(levels.tip)));
    }
    parts.push(Block { top: face, bottom, lean: Lean::Right, wall });
    parts
}

/// What the breaks leave of a part, from y to y.
fn pieces(sheet: &Sheet<'_>, part: &Block) -> Vec<(f64, f64)> {
    let mut pieces = Vec::new();
    let mut top = part.top;
    for (from, to) in sheet.axial.gaps().filter(|(from, to)| *from > part.top && *to < part.bottom)
    {
        pieces.push((top, from));
        top = to;
    }
    pieces.push((top, part.bottom));
    pieces
}

/// The part of a downward line that lies between two heights.
fn clip(line: &[Point], top: f64, bottom: f64) -> Vec<Point> {
    let mut clipped = Vec::new();
    for (from, to) in line.iter().zip(line.iter().skip(1)) {
        if to.y < top || from.y > bottom {
            continue;
        }
        let along = |y: f64| {
            let part = if to.y > from.y { (y - from.y) / (to.y - from.y) } else { 1.0 };
            at(from.x + (to.x - from.x) * part, y)
        };
        let start = if from.y < top { along(top) } else { *from };
        let end = if to.y > bottom { along(bottom) } else { *to };
        if clipped.last() != Some(&start) {
            clipped.push(start);
        }
        clipped.push(end);
    }
    clipped
}

/// Faces, and the edges seen beyond the cut.
fn edges(outline: &mut Path, sheet: &Sheet<'_>, chamfer: f64) {
    let levels = sheet.levels;
    let mut across = |y: f64, radius: f64| {
        outline.segment(at(sheet.centre - radius, y), at(sheet.centre + radius, y));
    };
    let metal = sheet.right - sheet.centre;
    let face = sheet.y(mm(0.0));
    across(face, metal);
    across(face + chamfer, sheet.hole);
    if sheet.section.upper.is_some() {
        across(sheet.y(levels.top), metal);
    }
    if levels.full_thread < levels.bottom {
        across(sheet.y(levels.full_thread), sheet.thread);
    }
    if levels.full_diameter > levels.full_thread && levels.full_diameter < levels.bottom {
        across(sheet.y(levels.full_diameter), sheet.hole);
    }
}

/// The thin lines at the major diameter.
fn thread(sheet: &Sheet<'_>, chamfer: f64) -> Path {
    let face = sheet.y(mm(0.0));
    let top = face + (sheet.hole + chamfer - sheet.thread).max(0.0);
    let bottom = sheet.y(sheet.levels.full_thread.min(sheet.levels.bottom));
    let line = Block { top, bottom, lean: Lean::Right, wall: Vec::new() };
    let mut path = Path::default();
    for (top, bottom) in pieces(sheet, &line) {
        for x in [sheet.centre - sheet.thread, sheet.centre + sheet.thread] {
            path.segment(at(x, top), at(x, bottom));
        }
    }
    path
}

fn break_across(path: &mut Path, sheet: &Sheet<'_>, y: f64) {
    break_line(path, at(sheet.left - KINK, y), at(sheet.centre, y));
    break_line(path, at(sheet.centre, y), at(sheet.right + KINK, y));
}
