//! The plan to scale in its frame with rulers along two edges: which parts are drawn, in
//! which order. The parts are in `plan`, what stands beside the plan is in `panel.rs`.

use std::collections::BTreeSet;

use bearwell_engine::contract::{Answer, CheckStatus, SubjectKind};
use bearwell_engine::layout::Outcome;
use bearwell_engine::quantity::System;

use crate::page::{self, Scale, View};
use crate::panel::Subject;
use crate::place::Room;
use crate::plan::kinds::Kinds;
use crate::plan::moves::Moves;
use crate::plan::{beams, ground, piles, slabs};
use crate::svg::{Anchor, Rect, Style, Svg, width};
use crate::words;

/// Height of the ruler below the plan.
const RULER: f64 = 5.5;
/// Room around a plan for the labels of its outer piles, mm: east and west together, north and
/// south together.
pub type Labels = (f64, f64);

/// That of a plan with all that stands beside its piles.
pub const LABELS: Labels = (26.0, 28.0);
/// How far the sheet goes beyond the beams for things in the ground, as a share of the
/// plan's longer side.
const BEYOND: f64 = 0.15;

/// What stands beside the piles.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Notes {
    /// Number, loads and utilisation.
    Loads,
    /// The number alone.
    Numbers,
}

/// What was drawn.
#[derive(Debug)]
pub struct Figure {
    /// Scale of the plan.
    pub scale: Scale,
    /// Paper millimetres for one plan metre.
    pub factor: f64,
    /// Radius of a pile mark.
    pub radius: f64,
    /// What was to stand beside the piles.
    pub notes: Notes,
    /// Types of pile with their marks.
    pub kinds: Kinds,
    /// Piles whose loads found no room beside them.
    pub short: BTreeSet<String>,
    /// Piles whose number found no room either.
    pub nameless_count: usize,
    /// Areas whose names found no room.
    pub untold_count: usize,
    /// Things in the ground that lie off the sheet.
    pub outside_count: usize,
    /// Entries of the key that found no place.
    pub unexplained_count: usize,
    /// Piles over a limit.
    pub failed: BTreeSet<String>,
    /// Beams over a limit.
    pub failed_beams: BTreeSet<String>,
}

/// Labels of the things of one kind that fail a check.
pub fn failed(answer: &Answer<Outcome>, kind: SubjectKind) -> BTreeSet<String> {
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
pub fn draw(svg: &mut Svg, s: Subject, notes: Notes, frame: Rect) -> Figure {
    draw_with(svg, s, notes, &Moves::default(), LABELS, frame)
}

/// Draws the plan with what became of piles into `frame`, with so much room beside it, east and
/// west together and north and south together, for the labels of outer piles.
pub fn draw_with(
    svg: &mut Svg,
    s: Subject,
    notes: Notes,
    moves: &Moves,
    labels: Labels,
    frame: Rect,
) -> Figure {
    let outcome = &s.answer.result;
    let (scale, view, field, step) = fit(bounds(s, moves), labels, frame, s.system);
    let kinds = Kinds::of(s);
    let mut figure = Figure {
        factor: view.factor,
        radius: piles::radius(outcome, &view, &kinds),
        scale,
        notes,
        kinds,
        short: BTreeSet::new(),
        nameless_count: 0,
        untold_count: 0,
        outside_count: 0,
        unexplained_count: 0,
        failed: failed(s.answer, SubjectKind::Pile),
        failed_beams: failed(s.answer, SubjectKind::Beam),
    };
    rulers(svg, &view, field, step, s.system);
    let mut room = Room::new(field);
    let all = beams::beams(s, &view);
    beams::draw(svg, s, &view, &all, &figure.failed_beams);
    beams::avoid(s, &view, &all, &mut room);
    moves.draw(svg, &view, figure.radius, field, &mut room);
    // on paper beside its line where it is; distances are along the line
    let moved = moves.placed(s.answer);
    let placed = Subject {
        answer: moved.as_ref().unwrap_or(s.answer),
        ..s
    };
    piles::draw(svg, &placed.answer.result, &view, &figure, &mut room);
    let parts: Vec<ground::Part> = ground::parts(s.request, &view, field);
    let (seen, outside): (Vec<_>, Vec<_>) = parts.into_iter().partition(|p| p.seen(field));
    figure.outside_count = outside.len();
    seen.iter().for_each(|part| part.avoid(&mut room, field));
    piles::texts(svg, placed, &view, &all, &mut figure, &mut room);
    figure.untold_count += moves.tell(svg, &view, figure.radius, &mut room);
    for part in &seen {
        figure.untold_count += usize::from(!part.tell(svg, &mut room, field));
    }
    let spanned = slabs::slabs(s, &view);
    figure.untold_count += slabs::tell(svg, &mut room, field, &spanned);
    piles::distances(svg, outcome, &view, s.system, &all, &mut room);
    beams::names(svg, &all, &view, &mut room);
    // the ground goes round everything that stands on it
    slabs::draw(svg, &room, field, &spanned);
    seen.iter().for_each(|part| part.draw(svg, &room, field));
    figure
}

/// The scale of the plan in a frame.
pub fn scale(s: Subject, frame: Rect) -> Scale {
    scale_with(s, &Moves::default(), LABELS, frame)
}

/// The same with what became of piles, and with so much room for labels.
pub fn scale_with(s: Subject, moves: &Moves, labels: Labels, frame: Rect) -> Scale {
    fit(bounds(s, moves), labels, frame, s.system).0
}

/// West, south, east and north edge of what is to be seen: beams, form lines and piles, and
/// what lies in the ground near them.
fn bounds(s: Subject, moves: &Moves) -> [f64; 4] {
    let outcome = &s.answer.result;
    let edges = outcome.beams.iter().flat_map(|b| b.edges.iter().flatten());
    let points = outcome
        .beams
        .iter()
        .flat_map(|b| b.points.iter())
        .chain(edges.flat_map(|e| e.left.iter().chain(&e.right)))
        .chain(
            outcome
                .outlines
                .iter()
                .flatten()
                .flat_map(|o| o.points.iter()),
        )
        .chain(outcome.piles.iter().map(|p| &p.at))
        .chain(moves.points());
    let b = page::bounds(points).unwrap_or([0.0, 0.0, 1.0, 1.0]);
    let beyond = BEYOND * (b[2] - b[0]).max(b[3] - b[1]);
    match page::bounds(ground::points(s.request).iter()) {
        None => b,
        Some(g) => [
            b[0].min(g[0].max(b[0] - beyond)),
            b[1].min(g[1].max(b[1] - beyond)),
            b[2].max(g[2].min(b[2] + beyond)),
            b[3].max(g[3].min(b[3] + beyond)),
        ],
    }
}

/// Scale, view, inner field and ruler step of a plan in a frame.
fn fit(b: [f64; 4], labels: Labels, frame: Rect, system: System) -> (Scale, View, Rect, f64) {
    let extent = (b[2] - b[0], b[3] - b[1]);
    let mut beside = 10.0;
    loop {
        let field = Rect {
            x: frame.x + beside,
            y: frame.y,
            w: frame.w - beside,
            h: frame.h - RULER,
        };
        let room = (field.w - labels.0, field.h - labels.1);
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
