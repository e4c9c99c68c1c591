//! The advance in a turn over the pitch, row by row, on the depths of the section, with the
//! least that is allowed.

use bearwell_engine::contract::utilisation;

use super::frame::{Frame, OVER};
use super::reading::Subject;
use crate::chart::{Axis, Edge, Span};
use crate::panel::PITCH;
use crate::svg::{Anchor, Style, Svg, mm, width};
use crate::words;

/// Greatest ratio on the axis.
const MOST: f64 = 1.5;
/// Least distance of marks of one kind, mm down the field.
const APART: f64 = 2.0;
/// The line of the least ratio.
pub const LEAST: &str = "stroke=\"#000\" stroke-width=\"0.45\" stroke-dasharray=\"4 1\"";
/// The line through the rows.
const WAY: &str = "stroke=\"#000\" stroke-width=\"0.25\"";

/// The mark of a row that goes down enough: a dot; of one that does not: a cross.
pub fn mark(svg: &mut Svg, (x, y): (f64, f64), enough: bool) {
    if enough {
        svg.circle((x, y), 0.55, "fill=\"#000\"");
        return;
    }
    let d = format!(
        "M{} {}l1.4 1.4M{} {}l1.4 -1.4",
        mm(x - 0.7),
        mm(y - 0.7),
        mm(x - 0.7),
        mm(y + 0.7)
    );
    svg.path(&d, "stroke=\"#fff\" stroke-width=\"0.9\"");
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.4\"");
}

/// Draws the field.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    let Some(r) = frame.advance else {
        return;
    };
    let ratios = s.outcome().rows.iter().filter_map(|r| r.advance_ratio);
    let least = s.least_advance();
    let most = ratios.fold(1.0, f64::max).min(MOST);
    let span = Span {
        title: "",
        least: 0.0,
        most,
        factor: 1.0,
        reversed: false,
    };
    let axis = Axis::new(span, (r.x, r.right()), true);
    let base = axis.draw(svg, r, Edge::Top, r.right() + OVER);
    for (up, text) in [(2.0, "advance"), (1.0, "/ pitch")] {
        svg.text(r.x, base - up * PITCH, text, Style::BOLD);
    }
    svg.rect(r, "stroke=\"#000\" stroke-width=\"0.3\"");
    let x = axis.at(least);
    svg.line((x, r.y), (x, r.bottom() + 1.2), LEAST);
    let text = format!("least {}", words::trimmed(least, 3));
    let half = width(&text, Style::PLAIN) / 2.0;
    let x = x.min(r.right() + OVER - half);
    let y = r.bottom() + 1.4 + 0.76 * PITCH;
    svg.text(x, y, &text, Style::PLAIN.at(Anchor::Middle));
    rows(svg, s, frame, &axis, least);
}

fn rows(svg: &mut Svg, s: Subject, frame: &Frame, axis: &Axis, least: f64) {
    let edge = axis.range().1;
    let mut marks: Vec<((f64, f64), bool)> = Vec::new();
    let mut way: Vec<(f64, f64)> = Vec::new();
    let mut above = 0.0;
    for row in &s.outcome().rows {
        let depth = row.depth.si();
        let Some(ratio) = row.advance_ratio else {
            flush(svg, &mut way);
            above = depth;
            continue;
        };
        let enough = utilisation(least, ratio).1;
        let x = axis.at(ratio.min(edge));
        if depth < above {
            flush(svg, &mut way);
        } else {
            way.push((x, frame.depths.at(above)));
            way.push((x, frame.depths.at(depth)));
        }
        marks.push(((x, frame.depths.at(depth)), enough));
        above = depth;
    }
    flush(svg, &mut way);
    for kind in [true, false] {
        let mut last: Option<f64> = None;
        for (at, _) in marks.iter().filter(|m| m.1 == kind) {
            if last.is_none_or(|y| (y - at.1).abs() >= APART) {
                mark(svg, *at, kind);
                last = Some(at.1);
            }
        }
    }
}

fn flush(svg: &mut Svg, way: &mut Vec<(f64, f64)>) {
    if way.len() > 1 {
        svg.polyline(way, WAY);
    }
    way.clear();
}
