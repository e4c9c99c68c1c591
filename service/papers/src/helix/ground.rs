//! The ground of the section: hatched layers, grade, water, the depth from which soil is
//! credited, and the end of the drawing. Texts are in `cells.rs` and `notes.rs`.

use bearwell_engine::quantity::Length;

use super::frame::Frame;
use super::reading::Subject;
use crate::hatch::hatch;
use crate::panel::PITCH;
use crate::svg::{Anchor, Rect, Style, Svg, fitted, mm};
use crate::words;

/// Draws the ground.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    let section = frame.section;
    for layer in &s.request.soil.layers {
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
        if top > 0.0 {
            svg.line(
                (r.x, r.y),
                (r.right(), r.y),
                "stroke=\"#000\" stroke-width=\"0.3\"",
            );
        }
    }
    let edge = "stroke=\"#000\" stroke-width=\"0.3\"";
    for x in [section.x, section.right()] {
        svg.line((x, section.y), (x, section.bottom()), edge);
    }
    grade(svg, frame);
    if let Some(depth) = s.no_credit_above().filter(|d| frame.depths.shows(*d)) {
        no_credit(svg, frame, depth);
    }
    for edge in water(s).iter().filter(|e| frame.depths.shows(e.depth)) {
        water_edge(svg, frame, edge);
    }
    end(svg, s, frame);
}

/// A depth at which water begins or ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaterEdge {
    /// Where.
    pub depth: Length,
    /// Water below it, rather than above.
    pub begins: bool,
}

/// Where water begins and ends within the profile: at the water table, or where the pore
/// pressures sent leave zero and come back to it.
pub fn water(s: Subject) -> Vec<WaterEdge> {
    let soil = &s.request.soil;
    let edge = |depth, begins| WaterEdge { depth, begins };
    let mut edges: Vec<WaterEdge> = soil
        .water_depth
        .map(|d| edge(d, true))
        .into_iter()
        .collect();
    if let Some(points) = &soil.pore_pressures {
        let wet = |i: usize| points.get(i).is_some_and(|p| p.pressure.si() > 0.0);
        for (i, point) in points.iter().enumerate() {
            // below the last point pressure grows as in water at rest
            let below = wet(i + 1) || i + 1 == points.len();
            let above = i > 0 && wet(i - 1);
            match (above, wet(i), below) {
                (false, _, true) => edges.push(edge(point.depth, true)),
                (true, false, false) => edges.push(edge(point.depth, false)),
                _ => {}
            }
        }
    }
    edges.retain(|e| e.depth <= soil.depth());
    edges
}

/// The ground surface, with strokes below it.
fn grade(svg: &mut Svg, frame: &Frame) {
    let (section, y) = (frame.section, frame.grade());
    svg.line(
        (section.x - 1.0, y),
        (section.right() + 1.0, y),
        "stroke=\"#000\" stroke-width=\"0.6\"",
    );
    // beside the section, where neither shaft nor water is in the way
    svg.text(section.right() + 1.2, y - 1.6, "final grade", Style::PLAIN);
}

/// A broken line with strokes upwards, towards what is not credited.
fn no_credit(svg: &mut Svg, frame: &Frame, depth: Length) {
    let (section, y) = (frame.section, frame.depths.y(depth));
    let mut d = String::new();
    let mut x = section.x + 1.5;
    while x + 1.0 < section.right() {
        d += &format!("M{} {}l1 -1", mm(x), mm(y));
        x += 3.0;
    }
    for pen in [
        "stroke=\"#fff\" stroke-width=\"1.1\"",
        "stroke=\"#000\" stroke-width=\"0.45\"",
    ] {
        svg.line((section.x, y), (section.right(), y), pen);
        svg.path(&d, pen);
    }
}

/// The edge of water: a long-dashed line, with the open triangle on it where water begins.
fn water_edge(svg: &mut Svg, frame: &Frame, edge: &WaterEdge) {
    let (section, y) = (frame.section, frame.depths.y(edge.depth));
    svg.line(
        (section.x, y),
        (section.right(), y),
        "stroke=\"#fff\" stroke-width=\"0.9\"",
    );
    svg.line(
        (section.x, y),
        (section.right(), y),
        "stroke=\"#000\" stroke-width=\"0.3\" stroke-dasharray=\"3.6 0.9\"",
    );
    if edge.begins {
        water_mark(svg, (section.x + 3.6, y));
    }
}

/// The triangle of a water table, its point at `at`.
pub fn water_mark(svg: &mut Svg, (x, y): (f64, f64)) {
    let d = format!("M{} {}l-1.5 -2.4h3Z", mm(x), mm(y));
    svg.path(
        &d,
        "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.3\" stroke-linejoin=\"round\"",
    );
}

/// What the section ends with: the end of the profile, or a break where it goes on.
fn end(svg: &mut Svg, s: Subject, frame: &Frame) {
    let (section, y) = (frame.section, frame.section.bottom());
    let middle = section.x + section.w / 2.0;
    let text = if frame.goes_on() {
        let (x, w) = (section.x, section.w);
        let points: Vec<(f64, f64)> = [0.0, 0.44, 0.48, 0.52, 0.56, 1.0]
            .into_iter()
            .zip([0.0, 0.0, -1.3, 1.3, 0.0, 0.0])
            .map(|(t, up)| (x + t * w, y + up))
            .collect();
        svg.polyline(&points, "stroke=\"#fff\" stroke-width=\"1\"");
        svg.polyline(&points, "stroke=\"#000\" stroke-width=\"0.3\"");
        "profile goes on to"
    } else {
        svg.line(
            (section.x, y),
            (section.right(), y),
            "stroke=\"#000\" stroke-width=\"0.6\"",
        );
        "profile ends at"
    };
    let depth = words::depth_told(s.request.soil.depth(), s.system);
    let style = Style::PLAIN.at(Anchor::Middle);
    let text = fitted(&format!("{text} {depth}"), section.w, style);
    svg.text(middle, y + 1.4 + 0.76 * PITCH, &text, style);
}
