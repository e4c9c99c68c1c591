//! The ground of the section: its surface with what is dug out of it, layers or frozen ground,
//! bars of zones, and the levels as lines.

use bearwell_engine::quantity::Length;
use bearwell_engine::soil::SoilKind;

use super::frame::Frame;
use super::levels::{self, Level};
use super::reading::Subject;
use crate::hatch::hatch;
use crate::svg::{Rect, Svg};
use crate::zones;

/// Part of the section, from the left, in which the ground is not dug out.
pub const LEFT: f64 = 0.17;

/// Draws the ground.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    let (section, depths) = (frame.section, &frame.depths);
    let frozen = Length::min(s.outcome().frost.base_depth, Length::from_si(depths.end));
    let surface = s.section().cold_surface_depth;
    match s.profile {
        Some(profile) => {
            for layer in &profile.layers {
                let bottom = layer.bottom.si().min(depths.end);
                fill(svg, s, frame, layer.soil.kind(), (layer.top.si(), bottom));
                if layer.top > surface && depths.shows(layer.top) {
                    let y = depths.y(layer.top);
                    let ends = ((section.x, y), (section.right(), y));
                    svg.line(ends.0, ends.1, "stroke=\"#000\" stroke-width=\"0.3\"");
                }
            }
        }
        None => fill(svg, s, frame, SoilKind::Frozen, (surface.si(), frozen.si())),
    }
    for x in [section.x, section.right()] {
        let top = if x > section.x { surface } else { Length::ZERO };
        svg.line(
            (x, depths.y(top)),
            (x, section.bottom()),
            "stroke=\"#000\" stroke-width=\"0.3\"",
        );
    }
    zones::draw(svg, depths, &frame.bars);
    lines(svg, s, frame);
    top(svg, s, frame);
}

/// Fills depths with the marks of a kind of ground, where there is ground at all.
fn fill(svg: &mut Svg, s: Subject, frame: &Frame, kind: SoilKind, (top, bottom): (f64, f64)) {
    let surface = s.section().cold_surface_depth.si();
    let whole = (top.max(surface), bottom, frame.section.w);
    let beside = (top, bottom.min(surface), LEFT * frame.section.w);
    for (top, bottom, w) in [whole, beside] {
        if top < bottom {
            let r = Rect {
                y: frame.depths.at(top),
                h: frame.depths.at(bottom) - frame.depths.at(top),
                w,
                ..frame.section
            };
            hatch(svg, kind, r);
        }
    }
}

/// The surface of the ground.
fn top(svg: &mut Svg, s: Subject, frame: &Frame) {
    let (section, grade) = (frame.section, frame.grade());
    let right = frame.bars.last().map_or(section.right(), |b| b.right) + 1.0;
    let surface = s.section().cold_surface_depth;
    let heavy = "stroke=\"#000\" stroke-width=\"0.6\" stroke-linejoin=\"round\"";
    if surface == Length::ZERO {
        svg.line((section.x - 1.0, grade), (right, grade), heavy);
        return;
    }
    let (step, floor) = (section.x + LEFT * section.w, frame.depths.y(surface));
    let way = [
        (section.x - 1.0, grade),
        (step, grade),
        (step, floor),
        (section.right(), floor),
    ];
    svg.polyline(&way, heavy);
    svg.line(
        (step, grade),
        (right, grade),
        "stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"3.6 0.9\"",
    );
}

/// The levels as lines.
fn lines(svg: &mut Svg, s: Subject, frame: &Frame) {
    let section = frame.section;
    let mut drawn: Option<f64> = None;
    for (level, depth) in levels::levels(s) {
        let Some(stroke) = level.stroke().filter(|_| frame.depths.shows(depth)) else {
            continue;
        };
        let y = frame.depths.y(depth);
        // a computed line on the official one would hide what that is
        if level == Level::ComputedFrost && drawn.is_some_and(|d| (d - y).abs() < 0.5) {
            continue;
        }
        if level == Level::Frost {
            drawn = Some(y);
        }
        let bar = frame.bars.iter().find(|b| Some(b.zone) == level.zone());
        let right = bar.map_or(section.right(), |b| b.x);
        let ends = ((section.x, y), (right, y));
        if level != Level::Tip {
            svg.line(ends.0, ends.1, "stroke=\"#fff\" stroke-width=\"1.2\"");
        }
        svg.line(ends.0, ends.1, stroke);
    }
}
