//! The section: the ground where a profile was sent, the bars of zones, the levels, and the
//! pile with its helices where they stand now.

use bearwell_engine::record::Request;
use bearwell_engine::shaft::Shaft;

use super::frame::Frame;
use super::levels::{self, Level};
use super::reading::Subject;
use crate::hatch::hatch;
use crate::pile::{self, Upright};
use crate::svg::{Rect, Svg};
use crate::zones;

/// Height of the shaft above grade, mm.
const HEAD: f64 = 5.0;
/// Half of the width of a shaft that was not sent, as part of that of the largest helix.
const UNKNOWN: f64 = 0.13;

/// Draws the section.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    let section = frame.section;
    let thin = "stroke=\"#000\" stroke-width=\"0.3\"";
    for layer in s.profile.into_iter().flat_map(|p| &p.layers) {
        let (top, bottom) = (layer.top.si(), layer.bottom.si().min(frame.depths.end));
        if top >= bottom {
            continue;
        }
        let r = Rect {
            y: frame.depths.at(top),
            h: frame.depths.at(bottom) - frame.depths.at(top),
            ..section
        };
        hatch(svg, layer.soil.kind(), r);
        svg.line((r.x, r.bottom()), (r.right(), r.bottom()), thin);
    }
    for x in [section.x, section.right()] {
        svg.line((x, section.y), (x, section.bottom()), thin);
    }
    zones::draw(svg, &frame.depths, &frame.zones);
    across(svg, s, frame);
    let right = frame.zones.last().map_or(section.right(), |b| b.right);
    svg.line(
        (section.x - 1.0, section.y),
        (right + 1.0, section.y),
        "stroke=\"#000\" stroke-width=\"0.6\"",
    );
    draw_pile(svg, s, frame);
}

/// Lines of the levels across section and bars.
fn across(svg: &mut Svg, s: Subject, frame: &Frame) {
    for (level, depth) in levels::levels(s) {
        if !frame.depths.shows(depth) {
            continue;
        }
        let y = frame.depths.y(depth);
        let bar = frame.zones.iter().find(|z| Some(z.zone) == level.zone());
        let right = bar.map_or(frame.section.right(), |z| z.x);
        let ends = ((frame.section.x, y), (right, y));
        if level != Level::Tip {
            svg.line(ends.0, ends.1, "stroke=\"#fff\" stroke-width=\"0.9\"");
        }
        svg.line(ends.0, ends.1, level.stroke());
    }
}

/// The pile at the depth it reached.
fn draw_pile(svg: &mut Svg, s: Subject, frame: &Frame) {
    let tip = frame.depths.y(s.outcome().tip_depth);
    let largest = frame.depths.across(s.largest_helix());
    let half = match &s.request.pile.shaft {
        Some(shaft) => frame.depths.across(shaft.width()) / 2.0,
        None => UNKNOWN * largest,
    };
    let top = frame.grade() - HEAD;
    let upright = Upright {
        axis: frame.axis,
        half: half.min(largest / 2.0),
        top,
        cut: true,
        lowest: (tip - 2.0).max(top + 1.0),
        tip: tip.max(top + 1.5),
        square: square(s.request),
    };
    pile::shaft(svg, &upright);
    for helix in &s.outcome().helices {
        let y = frame.depths.y(helix.depth);
        // those far above grade are told in words
        if y >= top + 1.6 {
            pile::plate(
                svg,
                (frame.axis, y),
                frame.depths.across(helix.diameter) / 2.0,
                true,
            );
        }
    }
}

fn square(request: &Request) -> bool {
    matches!(request.pile.shaft, Some(Shaft::Square(_)))
}
