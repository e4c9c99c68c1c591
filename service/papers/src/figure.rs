//! The plan to scale: beams, piles with their loads, distances, rulers along two edges.
//! What stands beside the plan is in `panel.rs`.

use std::collections::BTreeSet;

use bearwell_engine::contract::{Answer, CheckStatus, SubjectKind};
use bearwell_engine::layout::{LayoutPile, Outcome, PlanPoint};
use bearwell_engine::math;
use bearwell_engine::quantity::{Length, System};

use crate::marks;
use crate::page::{self, Scale, View};
use crate::place::Room;
use crate::svg::{Anchor, LINE, Rect, SMALL, Style, Svg, fitted, width};
use crate::words;

/// Half the width of a beam as drawn, mm.
const BAND: f64 = 1.1;
/// Height of the ruler below the plan.
const RULER: f64 = 5.5;
/// Most piles or straight runs with distances written beside them; a sheet has no room
/// for more.
const DISTANCES_UP_TO: usize = 400;
/// Longest label on the plan, mm.
const LABEL_ROOM: f64 = 22.0;

/// What was drawn.
#[derive(Debug)]
pub struct Figure {
    /// Scale of the plan.
    pub scale: Scale,
    /// Paper millimetres for one plan metre.
    pub factor: f64,
    /// Radius of a pile mark.
    pub radius: f64,
    /// Piles whose loads found no room beside them.
    pub short_count: usize,
    /// Piles over a limit.
    pub failed: BTreeSet<String>,
    /// Beams over a limit.
    pub failed_beams: BTreeSet<String>,
}

/// Labels of the things of one kind that fail a check.
fn failed(answer: &Answer<Outcome>, kind: SubjectKind) -> BTreeSet<String> {
    answer
        .checks
        .iter()
        .filter(|c| c.status == CheckStatus::Fail)
        .filter_map(|c| c.subject.as_ref())
        .filter(|s| s.kind == kind)
        .map(|s| s.label.clone())
        .collect()
}

/// Draws the plan into `frame`.
pub fn draw(svg: &mut Svg, answer: &Answer<Outcome>, system: System, frame: Rect) -> Figure {
    let outcome = &answer.result;
    let beam_points = outcome.beams.iter().flat_map(|b| b.points.iter());
    let bounds = page::bounds(beam_points.chain(outcome.piles.iter().map(|p| &p.at)))
        .unwrap_or([0.0, 0.0, 1.0, 1.0]);
    let (scale, view, field, step) = fit(bounds, frame, system);
    let mut figure = Figure {
        factor: view.factor,
        radius: radius(outcome, &view),
        scale,
        short_count: 0,
        failed: failed(answer, SubjectKind::Pile),
        failed_beams: failed(answer, SubjectKind::Beam),
    };
    rulers(svg, &view, field, step, system);
    let mut room = Room::new(field);
    beams(svg, outcome, &view, &figure, &mut room);
    for pile in &outcome.piles {
        let reach = reach(&figure, pile);
        let (x, y) = view.at(&pile.at);
        room.take(square((x, y), reach));
        mark(svg, pile, (x, y), &figure);
    }
    pile_texts(svg, outcome, &view, system, &mut figure, &mut room);
    distances(svg, outcome, &view, system, &mut room);
    beam_texts(svg, outcome, &view, &mut room);
    figure
}

/// Scale, view, inner field and ruler step of a plan in a frame.
fn fit(b: [f64; 4], frame: Rect, system: System) -> (Scale, View, Rect, f64) {
    let extent = (b[2] - b[0], b[3] - b[1]);
    let mut beside = 10.0;
    loop {
        let field = Rect {
            x: frame.x + beside,
            y: frame.y,
            w: frame.w - beside,
            h: frame.h - RULER,
        };
        // room around the plan for the labels of its outer piles
        let room = (field.w - 26.0, field.h - 28.0);
        let scale = page::scale(extent, room, system);
        let view = View {
            centre: ((b[0] + b[2]) / 2.0, (b[1] + b[3]) / 2.0),
            paper: (field.x + field.w / 2.0, field.y + field.h / 2.0),
            factor: 1000.0 / scale.denominator,
        };
        let per_unit = view.factor * words::length_factor(system);
        let mut step = page::round_step(12.0 / per_unit);
        let widest = |step: f64| {
            ticks(&view, field, step, system)
                .into_iter()
                .flatten()
                .map(|(_, text)| width(&text, Style::PLAIN))
                .fold(0.0, f64::max)
        };
        while widest(step) + 3.0 > step * per_unit {
            step = page::round_step(step * 1.5);
        }
        let needed = widest(step) + 2.5;
        if needed <= beside {
            return (scale, view, field, step);
        }
        beside = needed + 0.5;
    }
}

/// Places (mm) and texts of the ticks along x and along y.
fn ticks(view: &View, field: Rect, step: f64, system: System) -> [Vec<(f64, String)>; 2] {
    let unit = words::length_factor(system);
    let decimals = [1.0, 0.1, 0.01, 0.001]
        .iter()
        .position(|d| step >= *d)
        .unwrap_or(3);
    let along = |middle: f64, length: f64, on_paper: &dyn Fn(f64) -> f64| {
        let half = length / 2.0 / view.factor;
        let first = ((middle - half) / unit / step).ceil() as i64;
        let last = ((middle + half) / unit / step).floor() as i64;
        (first..=last)
            .map(|i| {
                let value = i as f64 * step;
                (on_paper(value * unit), words::grouped(value, decimals))
            })
            .collect()
    };
    [
        along(view.centre.0, field.w, &|m| view.x(m)),
        along(view.centre.1, field.h, &|m| view.y(m)),
    ]
}

/// The frame with coordinates along its left and lower edge.
fn rulers(svg: &mut Svg, view: &View, field: Rect, step: f64, system: System) {
    svg.rect(field, "stroke=\"#000\" stroke-width=\"0.25\"");
    let [xs, ys] = ticks(view, field, step, system);
    let line = "stroke=\"#000\" stroke-width=\"0.25\"";
    let style = Style::PLAIN;
    for (x, text) in xs {
        svg.line((x, field.bottom()), (x, field.bottom() + 1.2), line);
        let half = width(&text, style) / 2.0;
        // the one nearest to the corner would touch the other ruler or the edge
        if x - half >= field.x && x + half <= field.right() {
            svg.text(x, field.bottom() + 4.2, &text, style.at(Anchor::Middle));
        }
    }
    for (y, text) in ys {
        svg.line((field.x - 1.2, y), (field.x, y), line);
        if y - 2.0 >= field.y && y + 2.0 <= field.bottom() {
            svg.text(field.x - 1.9, y + 1.0, &text, style.at(Anchor::End));
        }
    }
}

/// Beams as bands with a centre line; one over a limit with a heavy line.
fn beams(svg: &mut Svg, outcome: &Outcome, view: &View, figure: &Figure, room: &mut Room) {
    let lines: Vec<Vec<(f64, f64)>> = outcome
        .beams
        .iter()
        .map(|b| b.points.iter().map(|p| view.at(p)).collect())
        .collect();
    svg.open("stroke=\"#d8d8d8\" stroke-width=\"2.2\" stroke-linejoin=\"miter\"");
    for line in &lines {
        svg.polyline(line, "stroke-linecap=\"square\"");
    }
    svg.close();
    svg.open("stroke=\"#000\" stroke-width=\"0.2\"");
    for (beam, line) in outcome.beams.iter().zip(&lines) {
        if figure.failed_beams.contains(&beam.label) {
            svg.polyline(line, "stroke-width=\"0.9\"");
        } else {
            svg.polyline(line, "stroke-dasharray=\"3.2 0.8 0.6 0.8\"");
        }
        for pair in line.windows(2) {
            // the two edges of the band
            let (dx, dy) = (pair[1].0 - pair[0].0, pair[1].1 - pair[0].1);
            let long = math::hypot(dx, dy).max(1e-9);
            let (nx, ny) = (-dy / long * BAND, dx / long * BAND);
            for side in [-1.0, 1.0] {
                let shift = |p: (f64, f64)| (p.0 + side * nx, p.1 + side * ny);
                room.avoid(shift(pair[0]), shift(pair[1]));
            }
        }
    }
    svg.close();
}

/// Radius of the marks: smaller where piles stand close on paper.
fn radius(outcome: &Outcome, view: &View) -> f64 {
    let nearest = outcome.spacing.nearest_piles.as_ref();
    let gap = nearest.map_or(f64::MAX, |p| p.distance.si() * view.factor);
    (0.42 * gap).clamp(0.3, 1.8)
}

/// Half the room that the mark of a pile takes.
fn reach(figure: &Figure, pile: &LayoutPile) -> f64 {
    if figure.failed.contains(&pile.label) {
        1.45 * figure.radius
    } else {
        figure.radius
    }
}

fn square(at: (f64, f64), reach: f64) -> Rect {
    Rect {
        x: at.0 - reach,
        y: at.1 - reach,
        w: 2.0 * reach,
        h: 2.0 * reach,
    }
}

/// The mark of one pile.
fn mark(svg: &mut Svg, pile: &LayoutPile, at: (f64, f64), figure: &Figure) {
    if figure.failed.contains(&pile.label) {
        marks::over_limit(svg, at, figure.radius);
    } else {
        marks::dial(svg, at, figure.radius, pile.utilisation_ratio);
    }
}

/// The lines of text of a pile, label first.
fn pile_lines(pile: &LayoutPile, system: System) -> Vec<(String, Style)> {
    let bold = Style::BOLD.at(Anchor::Middle);
    let plain = Style::PLAIN.at(Anchor::Middle);
    let mut lines = vec![(fitted(&pile.label, LABEL_ROOM, bold), bold)];
    lines.push((words::force(pile.compression.demand, system), plain));
    if pile.tension.demand.si() > 0.0 {
        lines.push((
            format!("up {}", words::force(pile.tension.demand, system)),
            plain,
        ));
    }
    if let Some(u) = pile.utilisation_ratio {
        lines.push((format!("({})", words::utilisation(u)), plain));
    }
    lines
}

/// Label, loads and utilisation beside every pile, as far as there is room; piles over a
/// limit choose first.
fn pile_texts(
    svg: &mut Svg,
    outcome: &Outcome,
    view: &View,
    system: System,
    figure: &mut Figure,
    room: &mut Room,
) {
    let mut order: Vec<&LayoutPile> = outcome.piles.iter().collect();
    order.sort_by_key(|p| !figure.failed.contains(&p.label));
    for pile in order {
        let at = view.at(&pile.at);
        let reach = reach(figure, pile);
        let outward = direction((view.paper.0, view.paper.1), at);
        let all = pile_lines(pile, system);
        let placed = [&all[..], &all[..1]].into_iter().find_map(|lines| {
            let w = lines.iter().map(|(t, s)| width(t, *s)).fold(0.0, f64::max) + 1.6;
            let h = lines.len() as f64 * LINE * SMALL;
            // a lone label far away tells little
            let leader = lines.len() > 1;
            Some((lines, room.label(at, reach, (w, h), outward, leader)?))
        });
        let Some((lines, place)) = placed else {
            figure.short_count += 1;
            continue;
        };
        if lines.len() < all.len() {
            figure.short_count += 1;
        }
        if let Some((from, to)) = place.leader {
            svg.line(from, to, "stroke=\"#000\" stroke-width=\"0.2\"");
        }
        if figure.failed.contains(&pile.label) {
            svg.rect(
                place.rect,
                "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.35\"",
            );
        } else if place.covers > 0 {
            svg.rect(place.rect, "fill=\"#fff\"");
        }
        let x = place.rect.x + place.rect.w / 2.0;
        for (i, (text, style)) in lines.iter().enumerate() {
            let y = place.rect.y + (i as f64 + 0.76) * LINE * SMALL;
            svg.text(x, y, text, *style);
        }
    }
}

/// Unit vector from one place to another; up where they are one.
fn direction(from: (f64, f64), to: (f64, f64)) -> (f64, f64) {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let long = math::hypot(dx, dy);
    if long < 1e-6 {
        (0.0, -1.0)
    } else {
        (dx / long, dy / long)
    }
}

/// Clear edge around the name of a beam, mm.
const CLEAR: f64 = 0.7;
/// Where along its run the name of a beam may stand, best first.
const ALONG: [f64; 9] = [0.5, 0.43, 0.57, 0.36, 0.64, 0.25, 0.75, 0.12, 0.88];

/// Names of beams, in a frame beside the middle of their longest straight run.
fn beam_texts(svg: &mut Svg, outcome: &Outcome, view: &View, room: &mut Room) {
    let style = Style::PLAIN.at(Anchor::Middle);
    for beam in &outcome.beams {
        let runs = beam
            .points
            .windows(2)
            .map(|p| (view.at(&p[0]), view.at(&p[1])));
        let Some((from, to)) =
            runs.fold(
                None,
                |best: Option<((f64, f64), (f64, f64))>, run| match best {
                    Some(b) if square_length(b) >= square_length(run) => Some(b),
                    _ => Some(run),
                },
            )
        else {
            continue;
        };
        let text = fitted(&beam.label, LABEL_ROOM, style);
        // a clear edge all around, so that it reads as the beam's and not as a pile's
        let size = (
            width(&text, style) + 1.6 + 2.0 * CLEAR,
            LINE * SMALL + 0.6 + 2.0 * CLEAR,
        );
        let middle = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
        let inward = direction(middle, view.paper);
        let place = ALONG.into_iter().find_map(|t| {
            let at = (from.0 + t * (to.0 - from.0), from.1 + t * (to.1 - from.1));
            room.label(at, BAND - CLEAR, size, inward, false)
        });
        if let Some(place) = place {
            let r = place.rect.grown(-CLEAR);
            svg.rect(
                r,
                "rx=\"1\" fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.2\"",
            );
            svg.text(
                r.x + r.w / 2.0,
                r.y + 0.3 + 0.78 * LINE * SMALL,
                &text,
                style,
            );
        }
    }
}

fn square_length((a, b): ((f64, f64), (f64, f64))) -> f64 {
    (b.0 - a.0) * (b.0 - a.0) + (b.1 - a.1) * (b.1 - a.1)
}

/// Distances between neighbouring piles along each straight run, where there is room.
fn distances(svg: &mut Svg, outcome: &Outcome, view: &View, system: System, room: &mut Room) {
    let run_count: usize = outcome.beams.iter().map(|b| b.points.len()).sum();
    if outcome.piles.len() > DISTANCES_UP_TO || run_count > DISTANCES_UP_TO {
        return;
    }
    let style = Style::PLAIN.at(Anchor::Middle);
    for beam in &outcome.beams {
        for run in beam.points.windows(2) {
            let on_run = stations(&run[0], &run[1], &outcome.piles);
            for pair in on_run.windows(2) {
                let metres = Length::from_si(pair[1] - pair[0]);
                let text = format!(
                    "{} {}",
                    words::length(metres, system),
                    words::length_unit(system)
                );
                let w = width(&text, style);
                let on_paper = metres.si() * view.factor;
                if on_paper < w + 2.0 * 1.8 + 1.0 {
                    continue;
                }
                let (from, to) = (view.at(&run[0]), view.at(&run[1]));
                let d = direction(from, to);
                let middle = (pair[0] + pair[1]) / 2.0 * view.factor;
                let at = (from.0 + d.0 * middle, from.1 + d.1 * middle);
                let size = (w, LINE * SMALL);
                // the side towards the middle of the plan: loads stand on the other one
                let inward = direction(at, view.paper);
                if let Some(place) = room.label(at, BAND - 0.5, size, inward, false)
                    && place.covers == 0
                {
                    let r = place.rect;
                    svg.text(r.x + r.w / 2.0, r.y + 0.76 * LINE * SMALL, &text, style);
                }
            }
        }
    }
}

/// Distances (m) from the start of a run at which piles stand on it, in order.
fn stations(from: &PlanPoint, to: &PlanPoint, piles: &[LayoutPile]) -> Vec<f64> {
    let (dx, dy) = ((to.x - from.x).si(), (to.y - from.y).si());
    let long = math::hypot(dx, dy);
    if long < 1e-6 {
        return Vec::new();
    }
    let mut at: Vec<f64> = piles
        .iter()
        .filter_map(|p| {
            let (px, py) = ((p.at.x - from.x).si(), (p.at.y - from.y).si());
            let along = (px * dx + py * dy) / long;
            let off = (px * dy - py * dx) / long;
            // as near as a pile may be to a beam that carries it, and a little more
            (off.abs() <= 0.004 && (-0.004..=long + 0.004).contains(&along)).then_some(along)
        })
        .collect();
    at.sort_by(f64::total_cmp);
    at
}
