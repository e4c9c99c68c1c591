//! Torque over depth: the window at the end as a band with the torque that counts, what the
//! pile must reach and may take as lines down, the readings as the steps they are.

use bearwell_engine::quantity::Torque;
use bearwell_engine::record::RowStanding;

use super::frame::{Frame, OVER};
use super::levels;
use super::reading::{Subject, TorqueLine};
use super::steps::{MARK, Step, dash, mark};
use crate::chart::{Axis, Edge, Span};
use crate::panel::PITCH;
use crate::place::{Room, best};
use crate::svg::{Anchor, Rect, Style, Svg, fitted, width};
use crate::{marks, words};

/// Look of the window at the end.
pub const WINDOW: &str = "fill=\"#e2e2e2\"";
/// How many times the greatest reading the axis goes at most for a line.
const REACH: f64 = 4.0;
/// Least distance of marks of one kind, mm down the field.
const APART: f64 = 2.4;
/// Mean height of a step below which the line is drawn finer, mm.
const THIN: f64 = 1.2;
/// Distance across the field from which they are drawn anyway, mm.
const ACROSS: f64 = 6.0;

impl TorqueLine {
    /// Its stroke.
    pub const fn stroke(self) -> &'static str {
        match self {
            TorqueLine::Required => {
                "stroke=\"#000\" stroke-width=\"0.45\" stroke-dasharray=\"4 1\""
            }
            TorqueLine::Reduced => {
                "stroke=\"#000\" stroke-width=\"0.35\" stroke-dasharray=\"1 0.7\""
            }
            TorqueLine::ShaftLimit => "stroke=\"#000\" stroke-width=\"0.9\"",
        }
    }

    /// How it is called.
    pub const fn told(self) -> &'static str {
        match self {
            TorqueLine::Required => "required",
            TorqueLine::Reduced => "by the reduced factor",
            TorqueLine::ShaftLimit => "limit of the shaft",
        }
    }
}

/// The torque that counts, over its window: an open bar between two strokes, so that the
/// readings under it are seen.
pub fn effective_mark(svg: &mut Svg, x: f64, from: f64, to: f64) {
    for side in [-0.6, 0.6] {
        let ends = ((x + side, from), (x + side, to));
        svg.line(ends.0, ends.1, "stroke=\"#000\" stroke-width=\"0.25\"");
    }
    for y in [from, to] {
        let ends = ((x - 1.8, y), (x + 1.8, y));
        svg.line(ends.0, ends.1, "stroke=\"#000\" stroke-width=\"0.45\"");
    }
}

/// The field with what stands in it.
struct Field<'a> {
    frame: &'a Frame,
    axis: Axis,
    room: Room,
}

impl Field<'_> {
    fn at(&self, torque: f64, depth: f64) -> (f64, f64) {
        (self.axis.at(torque), self.frame.depths.at(depth.max(0.0)))
    }

    fn way(&mut self, svg: &mut Svg, points: &[(f64, f64)], stroke: &str) {
        let way: Vec<(f64, f64)> = points.iter().map(|p| self.at(p.0, p.1)).collect();
        svg.polyline(&way, stroke);
        for pair in way.windows(2) {
            self.room.avoid(pair[0], pair[1]);
        }
    }
}

/// Draws the field.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    let r = frame.field;
    let title = format!("torque, {}", words::torque_unit(s.system));
    let greatest = s.greatest().si();
    let lines = s.torque_lines();
    let shown = lines.iter().map(|l| l.1.si());
    let shown = shown.filter(|t| greatest == 0.0 || *t <= REACH * greatest);
    let counts = s.outcome().effective.iter().map(|e| e.torque.si());
    let span = Span {
        title: &title,
        least: 0.0,
        most: 1.03 * shown.chain(counts).fold(greatest, f64::max),
        factor: words::torque_unit_factor(s.system),
        reversed: false,
    };
    let mut field = Field {
        frame,
        axis: Axis::new(span, (r.x, r.right()), true),
        room: Room::new(r.grown(-0.4)),
    };
    window(svg, s, frame);
    let base = field.axis.draw(svg, r, Edge::Top, r.right() + OVER);
    svg.text(r.x, base - PITCH, &title, Style::BOLD);
    for (level, depth) in levels::levels(s) {
        if frame.depths.shows(depth) {
            let y = frame.depths.y(depth);
            svg.line((r.x, y), (r.right(), y), level.stroke());
            field.room.avoid((r.x, y), (r.right(), y));
        }
    }
    svg.rect(r, "stroke=\"#000\" stroke-width=\"0.3\"");
    down(svg, s, &lines, &mut field);
    readings(svg, s, &mut field);
    effective(svg, s, &mut field);
}

/// The window at the end, behind everything.
fn window(svg: &mut Svg, s: Subject, frame: &Frame) {
    let Some(effective) = &s.outcome().effective else {
        return;
    };
    let (top, bottom) = (
        frame.depths.y(effective
            .window_from
            .max(bearwell_engine::quantity::Length::ZERO)),
        frame.depths.y(effective.window_to),
    );
    let band = Rect {
        y: top,
        h: (bottom - top).max(0.3),
        ..frame.field
    };
    svg.rect(band, WINDOW);
}

/// Lines down the field, each with its words in a row of its own below.
fn down(svg: &mut Svg, s: Subject, lines: &[(TorqueLine, Torque)], field: &mut Field) {
    let r = field.frame.field;
    for (row, (line, torque)) in lines.iter().enumerate() {
        let x = field.axis.at(torque.si());
        let beyond = x > r.right() + 0.01;
        let text = format!(
            "{} {} {}",
            line.told(),
            words::torque(*torque, s.system),
            words::torque_unit(s.system)
        );
        let y = r.bottom() + 1.4 + (row as f64 + 0.76) * PITCH;
        let mut right = r.right() + OVER;
        if beyond {
            marks::right_arrow(svg, (right - 1.4, y - 0.26 * PITCH));
            right -= 3.6;
        } else {
            svg.line((x, r.y), (x, r.bottom() + 1.2), line.stroke());
            field.room.avoid((x, r.y), (x, r.bottom()));
        }
        let text = fitted(&text, right - r.x, Style::PLAIN);
        let half = width(&text, Style::PLAIN) / 2.0;
        let most = right - half;
        let x = x.clamp((r.x + half).min(most), most);
        svg.text(x, y, &text, Style::PLAIN.at(Anchor::Middle));
    }
}

/// The readings as steps with their marks.
fn readings(svg: &mut Svg, s: Subject, field: &mut Field) {
    for (i, step) in s.steps.iter().enumerate() {
        if step.standing != RowStanding::Counts {
            let way = aside(s.steps, i, step);
            field.way(svg, &way, dash(step.standing));
        }
    }
    let mut way: Vec<(f64, f64)> = Vec::new();
    for step in s.steps.iter().filter(|s| s.standing == RowStanding::Counts) {
        way.push((step.torque, step.counts_from));
        way.push((step.torque, step.to));
    }
    if way.len() > 2 || way.first().is_some_and(|a| a.1 < way[1].1) {
        let pen = match crowded(s, field.frame) {
            true => "stroke=\"#000\" stroke-width=\"0.28\"",
            false => dash(RowStanding::Counts),
        };
        field.way(svg, &way, pen);
    }
    let mut last: Vec<(RowStanding, (f64, f64))> = Vec::new();
    for step in s.steps {
        let at = field.at(step.torque, step.to);
        let near = |a: (f64, f64)| (a.1 - at.1).abs() < APART && (a.0 - at.0).abs() < ACROSS;
        match last.iter_mut().find(|l| l.0 == step.standing) {
            Some((_, before)) if near(*before) => continue,
            Some((_, before)) => *before = at,
            None => last.push((step.standing, at)),
        }
        mark(svg, step.standing, at, MARK);
        let around = Rect {
            x: at.0,
            y: at.1,
            w: 0.0,
            h: 0.0,
        };
        field.room.take(around.grown(1.3));
    }
}

/// Whether the steps are so thin that a heavy line would be a blot.
fn crowded(s: Subject, frame: &Frame) -> bool {
    let down = s.deepest().si() * frame.depths.factor;
    down < THIN * s.steps.len() as f64
}

/// The way of a reading that does not count, from the reading before it and back: pairs of
/// torque and depth.
pub fn aside(steps: &[Step], i: usize, step: &Step) -> Vec<(f64, f64)> {
    let mut way = Vec::new();
    let before = i.checked_sub(1).and_then(|b| steps.get(b));
    if let Some(before) = before
        && before.to == step.from
    {
        way.push((before.torque, step.from));
    }
    way.push((step.torque, step.from));
    way.push((step.torque, step.to));
    if let Some(behind) = steps.get(i + 1)
        && behind.standing == RowStanding::Counts
        && behind.from == step.to
    {
        way.push((behind.torque, step.to));
    }
    way
}

/// The torque that counts, with its words.
fn effective(svg: &mut Svg, s: Subject, field: &mut Field) {
    let Some(effective) = &s.outcome().effective else {
        return;
    };
    let (x, from) = field.at(effective.torque.si(), effective.window_from.si());
    let to = field.frame.depths.y(effective.window_to);
    effective_mark(svg, x, from, to);
    field.room.take(Rect {
        x: x - 2.0,
        y: from - 0.4,
        w: 4.0,
        h: to - from + 0.8,
    });
    let style = Style::PLAIN;
    let text = format!(
        "counts {} {}",
        words::torque(effective.torque, s.system),
        words::torque_unit(s.system)
    );
    let size = (width(&text, style) + 1.2, PITCH + 0.3);
    let r = field.frame.field;
    let middle = (from + to) / 2.0 - size.1 / 2.0;
    // beside the mark, further and further off
    let places = (0..24).flat_map(|i| {
        let off = f64::from(i) * 2.0;
        [x + 2.6, x - 2.6 - size.0].into_iter().flat_map(move |x| {
            [middle - off, middle + off].map(|y| Rect {
                x,
                y,
                w: size.0,
                h: size.1,
            })
        })
    });
    let inside = places.filter(|p| r.grown(-0.4).holds(p));
    let Some(place) = best(&field.room, inside) else {
        return;
    };
    field.room.take(place);
    svg.rect(place, "fill=\"#fff\"");
    let base = place.y + 0.15 + 0.78 * PITCH;
    svg.text(place.x + 0.6, base, &text, style);
}
