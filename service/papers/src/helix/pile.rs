//! The pile in the section, to scale: shaft, helices, the soil that bears, the cylinder
//! where it governs, and the spread to weaker soil. What is left of the axis is about the
//! pile pushed down, what is right of it about the pile pulled up, where both were asked.

use bearwell_engine::helix::{AxialDirection, AxialResistance, GoverningMode, HelixBearing};
use bearwell_engine::shaft::Shaft;

use super::frame::Frame;
use super::notes::held;
use super::reading::Subject;
use crate::pile::{self, Upright};
use crate::svg::{Anchor, Rect, Style, Svg, mm};

/// Height of the shaft above grade, mm.
const HEAD: f64 = 5.0;
/// Length of the shaft drawn below the lowest helix, mm.
const TIP: f64 = 2.0;

/// Outline of the soil that bears when the pile is pushed down.
pub const ZONE_DOWN: &str = "fill=\"#fff\" fill-opacity=\"0.72\" stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"1.5 0.7\"";
/// The same when it is pulled up.
pub const ZONE_UP: &str = "fill=\"#fff\" fill-opacity=\"0.72\" stroke=\"#000\" stroke-width=\"0.4\" stroke-linecap=\"round\" stroke-dasharray=\"0.01 0.9\"";
/// The side of the cylinder.
pub const CYLINDER: &str = "stroke=\"#000\" stroke-width=\"0.6\" stroke-dasharray=\"2.4 0.6\"";
/// The spread of the load to weaker soil.
pub const SPREAD: &str = "stroke=\"#000\" stroke-width=\"0.3\" stroke-dasharray=\"2 0.6 0.4 0.6\"";

/// Sides of the axis that a direction takes, from and to, in half widths.
fn sides(s: Subject, direction: AxialDirection) -> (f64, f64) {
    if s.resistances().count() < 2 {
        return (-1.0, 1.0);
    }
    match direction {
        AxialDirection::Compression => (-1.0, 0.0),
        AxialDirection::Tension => (0.0, 1.0),
    }
}

/// Draws the pile.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    for resistance in s.resistances() {
        let side = sides(s, resistance.direction);
        let helices = resistance.individual_bearing.helices.iter();
        for helix in helices.filter(|h| h.no_credit.is_none()) {
            zone(svg, frame, resistance.direction, helix, side);
        }
    }
    for resistance in s.resistances() {
        let side = sides(s, resistance.direction);
        for helix in &resistance.individual_bearing.helices {
            spread_to_weak(svg, frame, helix, side);
        }
        if resistance.governing_mode == GoverningMode::CylindricalShear {
            cylinder(svg, frame, resistance, side);
        }
    }
    draw_shaft(svg, s, frame);
    for plate in s.plates() {
        let half = frame.depths.across(plate.diameter) / 2.0;
        let at = (frame.axis, frame.depths.y(plate.depth));
        pile::plate(svg, at, half, !plate.idle());
    }
    head(svg, s, frame);
}

/// The soil whose bearing counts, as far as the answer lists it.
fn zone(
    svg: &mut Svg,
    frame: &Frame,
    direction: AxialDirection,
    helix: &HelixBearing,
    (from, to): (f64, f64),
) {
    let (Some(first), Some(last)) = (helix.zone.first(), helix.zone.last()) else {
        return;
    };
    let half = frame.depths.across(helix.diameter) / 2.0;
    let r = Rect {
        x: frame.axis + from * half,
        y: frame.depths.y(first.top),
        w: (to - from) * half,
        h: frame.depths.at(last.bottom.si().min(frame.depths.end)) - frame.depths.y(first.top),
    };
    if r.h > 0.05 {
        let look = match direction {
            AxialDirection::Compression => ZONE_DOWN,
            AxialDirection::Tension => ZONE_UP,
        };
        svg.rect(r, look);
    }
}

/// The load spreading to a weaker layer, where that takes less than the helix could bear.
fn spread_to_weak(svg: &mut Svg, frame: &Frame, helix: &HelixBearing, (from, to): (f64, f64)) {
    let Some(weak) = held(helix) else {
        return;
    };
    let top = frame.depths.y(helix.depth);
    let bottom = frame.depths.at(helix.depth.si() + weak.distance.si());
    let (above, below) = (
        frame.depths.across(helix.diameter) / 2.0,
        frame.depths.across(weak.spread_diameter) / 2.0,
    );
    for side in [from, to].into_iter().filter(|t| *t != 0.0) {
        let (a, b) = (
            (frame.axis + side * above, top),
            (frame.axis + side * below, bottom),
        );
        svg.line(a, b, "stroke=\"#fff\" stroke-width=\"0.9\"");
        svg.line(a, b, SPREAD);
    }
    let (a, b) = (
        (frame.axis + from * below, bottom),
        (frame.axis + to * below, bottom),
    );
    svg.line(a, b, "stroke=\"#000\" stroke-width=\"0.45\"");
}

/// The sides of the cylinder from helix to helix.
fn cylinder(svg: &mut Svg, frame: &Frame, resistance: &AxialResistance, (from, to): (f64, f64)) {
    let Some(found) = &resistance.cylindrical_shear else {
        return;
    };
    let helices = &resistance.individual_bearing.helices;
    let of = |label: &str| helices.iter().find(|h| h.label == label);
    for gap in &found.gaps {
        let (Some(upper), Some(lower)) = (of(&gap.upper), of(&gap.lower)) else {
            continue;
        };
        for side in [from, to].into_iter().filter(|t| *t != 0.0) {
            let corner = |h: &HelixBearing| {
                (
                    frame.axis + side * frame.depths.across(h.diameter) / 2.0,
                    frame.depths.y(h.depth),
                )
            };
            let (a, b) = (corner(upper), corner(lower));
            svg.line(a, b, "stroke=\"#fff\" stroke-width=\"1.2\"");
            svg.line(a, b, CYLINDER);
        }
    }
}

/// The shaft from above grade to below the lowest helix.
fn draw_shaft(svg: &mut Svg, s: Subject, frame: &Frame) {
    let shaft = &s.request.pile.shaft;
    let lowest = frame.depths.y(s.lowest());
    let upright = Upright {
        axis: frame.axis,
        half: frame.depths.across(shaft.width()) / 2.0,
        top: frame.grade() - HEAD,
        cut: true,
        lowest,
        tip: (lowest + TIP).min(frame.section.bottom()).max(lowest),
        square: matches!(shaft, Shaft::Square(_)),
    };
    pile::shaft(svg, &upright);
}

/// Which side of the axis is about which direction.
fn head(svg: &mut Svg, s: Subject, frame: &Frame) {
    if s.resistances().count() < 2 {
        return;
    }
    let y = frame.grade() - HEAD - 2.4;
    for (side, text, tip) in [(-1.0, "down", 1.0), (1.0, "up", -1.0)] {
        let x = frame.axis + side * 2.2;
        let d = format!(
            "M{} {}V{}M{} {}L{} {}L{} {}",
            mm(x),
            mm(y - 1.6 * tip),
            mm(y + 1.4 * tip),
            mm(x - 0.8),
            mm(y + 0.3 * tip),
            mm(x),
            mm(y + 1.6 * tip),
            mm(x + 0.8),
            mm(y + 0.3 * tip)
        );
        svg.path(&d, "stroke=\"#000\" stroke-width=\"0.35\"");
        let anchor = if side < 0.0 {
            Anchor::End
        } else {
            Anchor::Start
        };
        svg.text(x + side * 1.6, y + 1.0, text, Style::PLAIN.at(anchor));
    }
}
