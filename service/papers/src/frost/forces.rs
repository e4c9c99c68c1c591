//! The forces: an arrow over the depths between which each acts, beside the bar of depths, led
//! to its size in words; the dead load over the pile.

use bearwell_engine::frost::SectionForceKind;

use super::frame::Frame;
use super::reading::{Acting, Subject};
use crate::panel::PITCH;
use crate::spread::spread;
use crate::svg::{Rect, Style, Svg, fitted, mm, width};
use crate::words;

/// Least length of an arrow, mm.
const SHORT: f64 = 5.0;
/// Length of the arrow of the dead load, mm.
const DEAD: f64 = 7.0;
/// Gap below a text, mm.
const CLEAR: f64 = 1.2;
/// Most lines of a text; fewer where not all of them fit.
const DETAIL: [usize; 3] = [3, 2, 1];

/// How the shaft of an arrow looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
    /// Ground that freezes.
    Frost,
    /// Ground that swells.
    Swell,
    /// A void form.
    Form,
    /// Ground that settles.
    Drag,
    /// What weighs on the pile.
    Dead,
    /// What holds the pile.
    Holds,
}

impl Look {
    /// Of a kind of force.
    pub fn of(kind: SectionForceKind) -> Self {
        match kind {
            SectionForceKind::ShaftAdfreeze | SectionForceKind::BeamAdfreeze => Look::Frost,
            SectionForceKind::ShaftSwell
            | SectionForceKind::BeamSwell
            | SectionForceKind::BeamUndersideSwell => Look::Swell,
            SectionForceKind::VoidForm => Look::Form,
            SectionForceKind::Drag => Look::Drag,
            SectionForceKind::DeadLoad => Look::Dead,
            SectionForceKind::TensionResistance => Look::Holds,
        }
    }

    /// How it is called in the key.
    pub const fn told(self) -> &'static str {
        match self {
            Look::Frost => "force of frost",
            Look::Swell => "force of swelling soil",
            Look::Form => "force of the void form",
            Look::Drag => "drag of settling ground",
            Look::Dead => "dead load",
            Look::Holds => "the ground holds",
        }
    }

    /// Whether it pushes the pile down.
    pub const fn down(self) -> bool {
        matches!(self, Look::Drag | Look::Dead | Look::Holds)
    }

    /// Draws the shaft of an arrow.
    fn shaft(self, svg: &mut Svg, x: f64, (from, to): (f64, f64)) {
        let line = |svg: &mut Svg, x: f64, stroke: &str| svg.line((x, from), (x, to), stroke);
        match self {
            Look::Frost => line(svg, x, "stroke=\"#000\" stroke-width=\"0.5\""),
            Look::Swell => {
                for x in [x - 0.45, x + 0.45] {
                    line(svg, x, "stroke=\"#000\" stroke-width=\"0.25\"");
                }
            }
            Look::Form => line(
                svg,
                x,
                "stroke=\"#000\" stroke-width=\"0.6\" stroke-dasharray=\"0.6 0.5\"",
            ),
            Look::Drag => line(
                svg,
                x,
                "stroke=\"#000\" stroke-width=\"0.5\" stroke-dasharray=\"1.6 0.6\"",
            ),
            Look::Dead => line(svg, x, "stroke=\"#000\" stroke-width=\"1.3\""),
            Look::Holds => {
                line(svg, x, "stroke=\"#000\" stroke-width=\"0.5\"");
                let bar = "stroke=\"#000\" stroke-width=\"0.8\"";
                svg.line((x - 1.2, from), (x + 1.2, from), bar);
            }
        }
    }

    /// Draws an arrow with its tip at `tip`.
    pub fn arrow(self, svg: &mut Svg, x: f64, (tail, tip): (f64, f64)) {
        let way = if tip < tail { 1.0 } else { -1.0 };
        let neck = tip + 1.8 * way;
        self.shaft(svg, x, (tail, neck));
        let half = if self == Look::Dead { 1.6 } else { 1.0 };
        let d = format!(
            "M{} {}L{} {}H{}Z",
            mm(x),
            mm(tip),
            mm(x + half),
            mm(neck),
            mm(x - half)
        );
        svg.path(&d, "fill=\"#000\"");
    }
}

/// Draws arrows and words; words keep above `floor`.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame, floor: f64) {
    let base = frame.grade() - 6.4;
    if !frame.arrows.is_empty() {
        let head = fitted(
            "forces on this pile, unfactored",
            frame.told.right() - frame.ruled.x - 2.0,
            Style::BOLD,
        );
        svg.text(frame.ruled.x + 2.0, base, &head, Style::BOLD);
    }
    // leaders first, so that an arrow that one must cross stays whole
    tell(svg, s, frame, floor);
    for (force, x) in &frame.arrows {
        arrow(svg, frame, force, *x);
    }
    dead(svg, s, frame);
}

/// Upper and lower end of an arrow on paper: at least so long that it reads.
fn ends(frame: &Frame, force: &Acting) -> (f64, f64) {
    let depths = &frame.depths;
    let y = |metres: f64| depths.at(metres.min(depths.end));
    let (top, bottom) = (y(force.top.si()), y(force.bottom.si()));
    if bottom - top >= SHORT {
        (top, bottom)
    } else if force.down() {
        (bottom - SHORT, bottom)
    } else {
        (top, top + SHORT)
    }
}

/// An arrow with a tick at either end of the depths over which it acts.
fn arrow(svg: &mut Svg, frame: &Frame, force: &Acting, x: f64) {
    let (top, bottom) = ends(frame, force);
    let ends = if force.down() {
        (top, bottom)
    } else {
        (bottom, top)
    };
    Look::of(force.kind).arrow(svg, x, ends);
    for depth in [force.top, force.bottom] {
        if frame.depths.shows(depth) {
            let y = frame.depths.y(depth);
            svg.line(
                (x - 1.2, y),
                (x + 1.2, y),
                "stroke=\"#000\" stroke-width=\"0.2\"",
            );
        }
    }
}

/// The words, lowest first as the arrows are, each led to its arrow.
fn tell(svg: &mut Svg, s: Subject, frame: &Frame, floor: f64) {
    let lane = frame.told;
    // from the top down: the columns from right to left
    let forces: Vec<&(Acting, f64)> = frame.arrows.iter().rev().collect();
    for detail in DETAIL {
        let texts: Vec<Vec<(String, Style)>> = forces
            .iter()
            .map(|(force, _)| lines(s, force, detail, lane.w))
            .collect();
        let heights: Vec<f64> = texts
            .iter()
            .map(|t| t.len() as f64 * PITCH + CLEAR)
            .collect();
        let wanted: Vec<f64> = forces
            .iter()
            .map(|(force, _)| ends(frame, force).1 - 0.4 * PITCH)
            .collect();
        let from = frame.grade() - 4.4;
        let Some(tops) = spread(&wanted, &heights, from, floor) else {
            continue;
        };
        for (((force, x), top), text) in forces.iter().zip(&tops).zip(&texts) {
            lead(svg, frame, force, *x, top + 0.55 * PITCH);
            for (i, (line, style)) in text.iter().enumerate() {
                let y = top + (i as f64 + 0.82) * PITCH;
                svg.text(lane.x, y, line, *style);
            }
        }
        return;
    }
}

/// A leader from an arrow down or up to the height of its words, and across to them.
fn lead(svg: &mut Svg, frame: &Frame, force: &Acting, x: f64, y: f64) {
    let (top, bottom) = ends(frame, force);
    let mut way = vec![(x, y), (frame.told.x - 0.8, y)];
    if y > bottom {
        way.insert(0, (x, bottom));
    } else if y < top {
        way.insert(0, (x, top));
    } else {
        way[0].0 = x + 0.8;
    }
    svg.polyline(&way, "stroke=\"#fff\" stroke-width=\"0.8\"");
    svg.polyline(&way, "stroke=\"#000\" stroke-width=\"0.18\"");
}

/// What is said of a force in so many lines.
fn lines(s: Subject, force: &Acting, detail: usize, room: f64) -> Vec<(String, Style)> {
    let size = force.size(s);
    let range = if force.top == force.bottom {
        format!("at {}", words::depth_told(force.top, s.system))
    } else {
        format!(
            "{} to {}",
            words::depth(force.top, s.system),
            words::depth_told(force.bottom, s.system)
        )
    };
    let name = force.told(s);
    let fit = |text: String, style: Style| (fitted(&text, room, style), style);
    match detail {
        1 => {
            let left = room - width(&format!(" {size}"), Style::PLAIN);
            vec![fit(
                format!("{} {size}", fitted(name, left, Style::PLAIN)),
                Style::PLAIN,
            )]
        }
        2 => vec![
            fit(name.to_owned(), Style::PLAIN),
            fit(format!("{size}, {range}"), Style::PLAIN),
        ],
        _ => {
            let when = match force.when() {
                "" => range,
                when => format!("{range}, {when}"),
            };
            vec![
                fit(name.to_owned(), Style::PLAIN),
                fit(size, Style::BOLD),
                fit(when, Style::PLAIN),
            ]
        }
    }
}

/// The dead load over the pile.
fn dead(svg: &mut Svg, s: Subject, frame: &Frame) {
    let loads: Vec<Acting> = s.forces().into_iter().filter(Acting::on_head).collect();
    if loads.is_empty() {
        return;
    }
    let tip = frame.crown - 0.6;
    Look::Dead.arrow(svg, frame.axis, (tip - DEAD, tip));
    let area = Rect {
        x: frame.axis + 3.0,
        w: frame.told.right() - frame.axis - 3.0,
        ..frame.section
    };
    let told: Vec<String> = loads
        .iter()
        .map(|load| {
            format!(
                "{} {}",
                words::force_told(load.force, s.system),
                load.when()
            )
        })
        .collect();
    let text = format!("dead load {}", told.join(", "));
    let text = fitted(&text, area.w, Style::PLAIN);
    svg.text(area.x, frame.top + 0.8 * PITCH, &text, Style::PLAIN);
}
