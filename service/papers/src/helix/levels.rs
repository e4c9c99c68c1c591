//! Limits on the field of the curve: depths that pass as bands, the least depth and the
//! depth as sent as lines across, what each load needs as lines down, with their words.

use bearwell_engine::helix::AxialDirection;
use bearwell_engine::quantity::Length;

use super::curve::Field;
use super::frame::Frame;
use super::reading::{DIRECTIONS, Subject, told};
use crate::panel::PITCH;
use crate::place::best;
use crate::svg::{Anchor, Rect, Style, Svg, width};
use crate::words;

/// Look of the band of depths that pass.
pub const BAND: &str = "fill=\"#e2e2e2\"";
/// Line of the least depth.
const LEAST: &str = "stroke=\"#000\" stroke-width=\"0.6\"";
/// Line of the depth as sent.
const SENT: &str = "stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"1.8 0.8\"";

/// Line of what a load needs.
pub fn needed_stroke(direction: AxialDirection) -> &'static str {
    match direction {
        AxialDirection::Compression => "stroke=\"#000\" stroke-width=\"0.4\"",
        AxialDirection::Tension => {
            "stroke=\"#000\" stroke-width=\"0.4\" stroke-dasharray=\"1 0.7\""
        }
    }
}

/// The depths at which every rule is met, behind everything else.
pub fn bands(svg: &mut Svg, s: Subject, frame: &Frame, field: &Field) {
    let Some(found) = &s.outcome().minimum_depth else {
        return;
    };
    for range in &found.passing {
        if !frame.depths.shows(range.from) {
            continue;
        }
        let (top, bottom) = (
            frame.depths.y(range.from),
            frame.depths.at(range.to.si().min(frame.depths.end)),
        );
        svg.rect(
            Rect {
                x: field.rect.x,
                y: top,
                w: field.rect.w,
                h: (bottom - top).max(0.3),
            },
            BAND,
        );
    }
}

/// A depth that is a line across the field.
struct Level {
    depth: Length,
    stroke: &'static str,
    text: String,
}

/// The least depth first, then the depth as sent.
fn across(s: Subject) -> Vec<Level> {
    let told = |depth| words::depth_told(depth, s.system);
    let mut levels = Vec::new();
    if let Some(depth) = s.outcome().minimum_depth.as_ref().and_then(|f| f.depth) {
        levels.push(Level {
            depth,
            stroke: LEAST,
            text: format!("least depth {}", told(depth)),
        });
    }
    let sent = s.lowest();
    levels.push(Level {
        depth: sent,
        stroke: SENT,
        text: format!("as sent {}", told(sent)),
    });
    levels
}

/// Draws the lines of limits and notes them, so that words keep off them.
pub fn lines(svg: &mut Svg, s: Subject, frame: &Frame, field: &mut Field) {
    let r = field.rect;
    for direction in DIRECTIONS {
        if let Some(needed) = s.needed(direction) {
            let x = field.x(needed.si());
            let ends = ((x, r.y), (x, r.bottom() + 1.2));
            svg.line(ends.0, ends.1, needed_stroke(direction));
            field.room.avoid(ends.0, ends.1);
        }
    }
    for level in across(s) {
        let y = frame.depths.y(level.depth);
        svg.line((r.x, y), (r.right(), y), level.stroke);
        field.room.avoid((r.x, y), (r.right(), y));
    }
}

/// Writes the words of the limits.
pub fn labels(svg: &mut Svg, s: Subject, frame: &Frame, field: &mut Field) {
    let style = Style::PLAIN;
    for level in across(s) {
        let y = frame.depths.y(level.depth);
        let size = (width(&level.text, style) + 1.2, PITCH + 0.3);
        let Some(place) = best(&field.room, beside(field.rect, y, size)) else {
            continue;
        };
        field.room.take(place);
        svg.rect(place, "fill=\"#fff\"");
        svg.text(
            place.x + 0.6,
            place.y + 0.15 + 0.78 * PITCH,
            &level.text,
            style,
        );
    }
    needs(svg, s, field);
}

/// Places for a label just above or below a line across the field, from the right edge
/// leftwards.
fn beside(r: Rect, y: f64, (w, h): (f64, f64)) -> impl Iterator<Item = Rect> {
    let steps = ((r.w - w - 1.6) / 3.0).max(0.0).floor() as u32;
    (0..=steps).flat_map(move |i| {
        let x = r.right() - 0.8 - w - f64::from(i) * 3.0;
        // further off where marks stand on the line
        [y - h - 0.5, y + 0.5, y - h - 2.4, y + 1.9].map(|y| Rect { x, y, w, h })
    })
}

/// Below the field, what each load needs; each direction has a line of its own.
fn needs(svg: &mut Svg, s: Subject, field: &Field) {
    let r = field.rect;
    let needed = DIRECTIONS
        .into_iter()
        .filter_map(|d| Some((d, s.needed(d)?)));
    for (row, (direction, needed)) in needed.enumerate() {
        let text = format!(
            "{} needs {}",
            told(direction),
            words::force_told(needed, s.system)
        );
        let half = width(&text, Style::PLAIN) / 2.0;
        let x = field.x(needed.si());
        let x = x.clamp(r.x + half - 8.0, (r.right() - half).max(r.x + half - 8.0));
        let y = r.bottom() + 1.4 + (row as f64 + 0.76) * PITCH;
        svg.text(x, y, &text, Style::PLAIN.at(Anchor::Middle));
    }
}
