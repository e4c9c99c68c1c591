//! The capacity over the depth of the lowest helix, on the depths of the section: curves of
//! both directions, the pile as sent, and the ruler of depths. What a load needs and which
//! depths pass is in `levels.rs`.

use bearwell_engine::helix::AxialDirection;

use super::frame::{Frame, OVER};
use super::levels;
use super::reading::{DIRECTIONS, Subject, line};
use crate::page;
use crate::panel::PITCH;
use crate::place::{Room, best};
use crate::svg::{Anchor, Rect, Style, Svg, mm, width, wrapped};
use crate::{ruler, words};

/// Distance of the marks along a curve, mm.
const MARKS: f64 = 11.0;
/// Least distance of boundaries that are drawn across the field, mm.
const APART: f64 = 3.0;
/// How far the last figure of the axis of forces may reach beyond the field, mm.
const OVERHANG: f64 = OVER + 1.5;

/// Stroke of the curve of a direction.
pub fn stroke(direction: AxialDirection) -> &'static str {
    match direction {
        AxialDirection::Compression => "stroke=\"#000\" stroke-width=\"0.55\"",
        AxialDirection::Tension => {
            "stroke=\"#000\" stroke-width=\"0.45\" stroke-dasharray=\"2.4 1\""
        }
    }
}

/// Stroke of the curve with the bearing held at what weaker soil takes.
pub const HELD: &str = "stroke=\"#000\" stroke-width=\"0.35\" stroke-dasharray=\"0.5 0.7\"";

/// The mark of a direction: a dot, or an open triangle that points up.
pub fn mark(svg: &mut Svg, direction: AxialDirection, (x, y): (f64, f64), r: f64) {
    match direction {
        AxialDirection::Compression => svg.circle((x, y), r, "fill=\"#000\""),
        AxialDirection::Tension => {
            let d = format!(
                "M{} {}L{} {}H{}Z",
                mm(x),
                mm(y - 1.25 * r),
                mm(x + 1.15 * r),
                mm(y + 0.8 * r),
                mm(x - 1.15 * r)
            );
            svg.path(
                &d,
                "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.3\" stroke-linejoin=\"round\"",
            );
        }
    }
}

/// The field of the curve with its axis of forces.
pub struct Field {
    /// Where it is.
    pub rect: Rect,
    /// Newtons at its right edge.
    most: f64,
    /// What stands in it.
    pub room: Room,
}

impl Field {
    /// A force on paper.
    pub fn x(&self, newtons: f64) -> f64 {
        self.rect.x + newtons / self.most * self.rect.w
    }
}

/// Draws ruler, field and curves.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    let (most, step) = span(s, frame.curve.w);
    let mut field = Field {
        rect: frame.curve,
        most,
        room: Room::new(frame.curve.grown(-0.4)),
    };
    levels::bands(svg, s, frame, &field);
    grid(svg, s, frame, &field, step);
    ruler::draw(
        svg,
        frame.curve,
        frame.depths.factor,
        frame.depths.end,
        s.system,
    );
    levels::lines(svg, s, frame, &mut field);
    curves(svg, s, frame, &mut field);
    as_sent(svg, s, frame, &mut field);
    levels::labels(svg, s, frame, &mut field);
    if s.points().is_none() {
        how_to(svg, s, &mut field);
    }
}

/// Columns of the answer's table that are drawn.
fn column(direction: AxialDirection) -> &'static str {
    match direction {
        AxialDirection::Compression => "compression_ultimate",
        AxialDirection::Tension => "tension_ultimate",
    }
}

/// Newtons at the right edge of the field, and those of a step of its axis.
fn span(s: Subject, room: f64) -> (f64, f64) {
    let unit = words::force_factor(s.system);
    let mut greatest: f64 = 0.0;
    for direction in DIRECTIONS {
        if let Some(resistance) = s.resistance(direction) {
            greatest = greatest.max(resistance.ultimate.si());
        }
        if let Some(needed) = s.needed(direction) {
            greatest = greatest.max(needed.si());
        }
        let points = s.points().and_then(|p| line(p, column(direction)));
        for (_, newtons) in points.into_iter().flatten() {
            greatest = greatest.max(newtons);
        }
    }
    // a little air at the right edge
    let greatest = (1.04 * greatest / unit).max(1.0);
    let mut step = page::round_step(greatest / 8.0);
    loop {
        let count = (greatest / step).ceil().max(1.0);
        let text = tick(count * step, step);
        let w = width(&text, Style::PLAIN);
        // the last figure is held in its lane, towards the one before
        let held = (w / 2.0 - OVERHANG).max(0.0);
        if room / count >= w + 1.5 + held || count <= 1.0 {
            return (count * step * unit, step * unit);
        }
        step = page::round_step(1.5 * step);
    }
}

fn tick(value: f64, step: f64) -> String {
    let decimals = [1.0, 0.1, 0.01].iter().position(|d| step >= *d);
    words::grouped(value, decimals.unwrap_or(3))
}

/// Frame, axis of forces and the boundaries of the layers.
fn grid(svg: &mut Svg, s: Subject, frame: &Frame, field: &Field, step: f64) {
    let r = field.rect;
    let mut above = r.y;
    for layer in &s.request.soil.layers {
        let y = frame.depths.at(layer.top.si().min(frame.depths.end));
        // thin layers would only make it grey
        if y - above >= APART && r.bottom() - y >= APART {
            above = y;
            svg.line(
                (r.x, y),
                (r.right(), y),
                "stroke=\"#000\" stroke-width=\"0.12\" stroke-dasharray=\"0.4 0.8\"",
            );
        }
    }
    let unit = words::force_factor(s.system);
    let count = (field.most / step).round() as u32;
    for i in 0..=count {
        let newtons = f64::from(i) * step;
        let x = field.x(newtons);
        if i > 0 && i < count {
            svg.line(
                (x, r.y),
                (x, r.bottom()),
                "stroke=\"#000\" stroke-width=\"0.1\"",
            );
        }
        svg.line(
            (x, r.y - 1.0),
            (x, r.y),
            "stroke=\"#000\" stroke-width=\"0.25\"",
        );
        let text = tick(newtons / unit, step / unit);
        let half = width(&text, Style::PLAIN) / 2.0;
        let x = x.min(r.right() + OVERHANG - half).max(r.x);
        svg.text(x, r.y - 1.7, &text, Style::PLAIN.at(Anchor::Middle));
    }
    svg.rect(r, "stroke=\"#000\" stroke-width=\"0.3\"");
    let heads = [
        (
            -10.0,
            format!("ultimate, {}", words::force_unit(s.system)),
            Style::BOLD,
        ),
        (
            -6.0,
            "by depth of the lowest helix".to_owned(),
            Style::PLAIN,
        ),
    ];
    for (up, text, style) in heads {
        svg.text(r.x, r.y + up, &text, style);
    }
}

/// The curves, where points were asked for.
fn curves(svg: &mut Svg, s: Subject, frame: &Frame, field: &mut Field) {
    let Some(points) = s.points() else {
        return;
    };
    let on_paper = |field: &Field, values: &[(f64, f64)]| -> Vec<(f64, f64)> {
        values
            .iter()
            .map(|(depth, newtons)| {
                (
                    field.x(*newtons),
                    frame.depths.at(depth.min(frame.depths.end)),
                )
            })
            .collect()
    };
    let ultimate = line(points, column(AxialDirection::Compression));
    let held = line(points, "compression_punching");
    if let (Some(ultimate), Some(held)) = (&ultimate, held)
        && ultimate
            .iter()
            .zip(&held)
            .any(|(a, b)| b.1 < a.1 * (1.0 - 1e-9))
    {
        let way = on_paper(field, &held);
        svg.polyline(&way, HELD);
        avoid(field, &way);
    }
    for direction in DIRECTIONS {
        let Some(values) = line(points, column(direction)) else {
            continue;
        };
        let way = on_paper(field, &values);
        svg.polyline(&way, stroke(direction));
        avoid(field, &way);
        // marks of the two directions at different depths, so that none hides another
        let mut next = match direction {
            AxialDirection::Compression => way[0].1,
            AxialDirection::Tension => way[0].1 + MARKS / 2.0,
        };
        let sent = frame.depths.y(s.lowest());
        for (x, y) in way {
            if y < next {
                continue;
            }
            // the pile as sent has marks of its own
            if (y - sent).abs() > 3.5 {
                mark(svg, direction, (x, y), 0.8);
            }
            while next <= y {
                next += MARKS;
            }
        }
    }
}

fn avoid(field: &mut Field, way: &[(f64, f64)]) {
    for pair in way.windows(2) {
        field.room.avoid(pair[0], pair[1]);
    }
}

/// The pile as sent: its lowest helix, with what it takes.
fn as_sent(svg: &mut Svg, s: Subject, frame: &Frame, field: &mut Field) {
    let y = frame.depths.y(s.lowest());
    for (direction, size) in [
        (AxialDirection::Tension, 1.6),
        (AxialDirection::Compression, 0.95),
    ] {
        let Some(resistance) = s.resistance(direction) else {
            continue;
        };
        let x = field.x(resistance.ultimate.si());
        // where both are equal the dot stands within the triangle
        mark(svg, direction, (x, y), size);
        field.room.take(Rect {
            x: x - 2.0,
            y: y - 2.1,
            w: 4.0,
            h: 3.6,
        });
    }
}

/// How to have the curve drawn.
fn how_to(svg: &mut Svg, s: Subject, field: &mut Field) {
    let text = if s.outcome().depth_curve.is_some() {
        "The curve was asked for without its points: send `points`: true in `depth_curve`."
    } else {
        "No curve was asked for: send `depth_curve` with `points`: true to have it drawn here."
    };
    let style = Style::PLAIN;
    let lines = wrapped(text, field.rect.w - 8.0, style);
    let size = (
        lines.iter().map(|l| width(l, style)).fold(0.0, f64::max) + 2.0,
        lines.len() as f64 * PITCH + 1.4,
    );
    let r = field.rect;
    let places = (0..40).map(|i| Rect {
        x: r.x + (r.w - size.0) / 2.0,
        y: r.y + 2.0 + f64::from(i) * (r.h - size.1 - 4.0) / 39.0,
        w: size.0,
        h: size.1,
    });
    let Some(place) = best(&field.room, places) else {
        return;
    };
    field.room.take(place);
    svg.rect(place, "fill=\"#fff\"");
    for (i, text) in lines.iter().enumerate() {
        let y = place.y + 0.6 + (i as f64 + 0.78) * PITCH;
        svg.text(place.x + 1.0, y, text, style);
    }
}
