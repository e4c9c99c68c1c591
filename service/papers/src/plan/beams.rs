//! Beams of a plan: their edges to scale where the width is known, else a band; centre
//! lines, outside form lines, openings, names.

use std::collections::{BTreeMap, BTreeSet};

use bearwell_engine::layout::{LayoutBeam, PlanPoint};
use bearwell_engine::math;

use crate::page::View;
use crate::panel::Subject;
use crate::place::Room;
use crate::plan::openings::{self, Opening, between, part};
use crate::plan::shape::Spot;
use crate::svg::{Anchor, LINE, SMALL, Style, Svg, fitted, mm, width};

/// Half the width of a beam whose width is not known, mm.
pub const BAND: f64 = 1.1;
/// Longest name on the plan, mm.
pub const LABEL_ROOM: f64 = 22.0;
/// Pen of the edges; the fill covers half of it.
const EDGE: &str = "stroke=\"#000\" stroke-width=\"0.4\" stroke-linejoin=\"miter\"";
/// Fill of a beam with its width.
const FILL: &str = "fill=\"#e4e4e4\" stroke=\"#e4e4e4\" stroke-width=\"0.08\"";

/// A beam on paper.
#[derive(Debug, Clone)]
pub struct Beam {
    label: String,
    /// Its centre line, between gaps.
    lines: Vec<Vec<Spot>>,
    /// What lies between its edges, between gaps; none where its width is not known.
    bodies: Vec<Vec<Spot>>,
    /// Half its width, the wider half, mm.
    half: f64,
    /// Openings above it, each by its corners.
    windows: Vec<[Spot; 4]>,
    /// Centre lines across gaps.
    gaps: Vec<Vec<Spot>>,
}

/// The beams of an answer on paper, in their order.
pub fn beams(s: Subject, view: &View) -> Vec<Beam> {
    let outcome = &s.answer.result;
    let openings = openings::by_beam(s.request, outcome);
    let none: Vec<Opening> = Vec::new();
    let mut all: Vec<Beam> = outcome
        .beams
        .iter()
        .map(|beam| {
            let own = openings.get(&beam.label).unwrap_or(&none);
            on_paper(beam, own, view)
        })
        .collect();
    // sides of a form line already reach into their corners
    let sides = outcome.outlines.iter().flatten().flat_map(|o| &o.sides);
    let sides: BTreeSet<&str> = sides.map(|s| s.beam.as_str()).collect();
    let patches: Vec<[f64; 2]> = (0..all.len())
        .map(|i| {
            if sides.contains(all[i].label.as_str()) {
                [0.0; 2]
            } else {
                [0, 1].map(|end| into_corner(&all, i, end))
            }
        })
        .collect();
    for (beam, patch) in all.iter_mut().zip(patches) {
        beam.reach_on(patch);
    }
    all
}

/// How far a beam is to reach beyond one of its ends, so that the corner it makes with the
/// end of another beam is filled.
fn into_corner(all: &[Beam], i: usize, end: usize) -> f64 {
    const NEAR: f64 = 0.05;
    let Some((at, along)) = all[i].end(end) else {
        return 0.0;
    };
    let others = all
        .iter()
        .enumerate()
        .filter(|(j, b)| *j != i && !b.bodies.is_empty());
    others
        .flat_map(|(_, b)| [0, 1].into_iter().filter_map(move |e| Some((b, b.end(e)?))))
        .filter(|(_, (there, way))| {
            let near = math::hypot(there.0 - at.0, there.1 - at.1) < NEAR;
            // not where one goes straight on as the other
            near && (along.0 * way.1 - along.1 * way.0).abs() > 0.2
        })
        .map(|(b, _)| b.half)
        .fold(0.0, f64::max)
}

impl Beam {
    /// One of its ends and the way outwards there; none where it has no width.
    fn end(&self, end: usize) -> Option<(Spot, Spot)> {
        if self.bodies.is_empty() {
            return None;
        }
        let (at, before) = if end == 0 {
            let line = self.lines.first()?;
            (line.first()?, line.get(1)?)
        } else {
            let line = self.lines.last()?;
            (line.last()?, line.get(line.len().checked_sub(2)?)?)
        };
        Some((*at, direction(*before, *at)))
    }

    /// Makes its body longer at either end.
    fn reach_on(&mut self, by: [f64; 2]) {
        let ways = [0, 1].map(|end| self.end(end).map_or((0.0, 0.0), |(_, way)| way));
        let shift = |p: &mut Spot, end: usize| {
            *p = (p.0 + by[end] * ways[end].0, p.1 + by[end] * ways[end].1);
        };
        // left edge onwards, right edge back
        if let Some(body) = self.bodies.first_mut() {
            let last = body.len() - 1;
            shift(&mut body[0], 0);
            shift(&mut body[last], 0);
        }
        if let Some(body) = self.bodies.last_mut() {
            let middle = body.len() / 2;
            shift(&mut body[middle - 1], 1);
            shift(&mut body[middle], 1);
        }
    }
}

fn on_paper(beam: &LayoutBeam, openings: &[Opening], view: &View) -> Beam {
    let spots = |points: &[PlanPoint]| points.iter().map(|p| view.at(p)).collect::<Vec<_>>();
    let bodies: Vec<Vec<Spot>> = beam
        .edges
        .iter()
        .flatten()
        .map(|e| {
            let back = e.right.iter().rev();
            e.left.iter().chain(back).map(|p| view.at(p)).collect()
        })
        .collect();
    let known = !bodies.is_empty();
    let half = if known { half(beam, view) } else { BAND };
    let windows = openings
        .iter()
        .filter(|o| !o.no_beam)
        .filter_map(|o| window(&spots(&part(&beam.points, o.from, o.to)), 0.55 * half))
        .collect();
    let gaps = openings
        .iter()
        .filter(|o| o.no_beam)
        .map(|o| spots(&part(&beam.points, o.from, o.to)))
        .filter(|gap| gap.len() > 1)
        .collect();
    Beam {
        label: beam.label.clone(),
        lines: between(&beam.points, openings)
            .iter()
            .map(|p| spots(p))
            .collect(),
        bodies,
        half: half.max(BAND),
        windows,
        gaps,
    }
}

/// The wider half of a beam, mm: from its centre line to the farther edge.
fn half(beam: &LayoutBeam, view: &View) -> f64 {
    let Some(edges) = beam.edges.iter().flatten().next() else {
        return BAND;
    };
    let first = beam
        .points
        .windows(2)
        .map(|p| (view.at(&p[0]), view.at(&p[1])));
    let Some((a, b)) = first.into_iter().next() else {
        return BAND;
    };
    let long = math::hypot(b.0 - a.0, b.1 - a.1).max(1e-9);
    let off = |p: Option<&PlanPoint>| {
        p.map_or(0.0, |p| {
            let p = view.at(p);
            (((p.0 - a.0) * (b.1 - a.1) - (p.1 - a.1) * (b.0 - a.0)) / long).abs()
        })
    };
    off(edges.left.first()).max(off(edges.right.first()))
}

/// The corners of an opening above a straight piece of beam.
fn window(line: &[Spot], half: f64) -> Option<[Spot; 4]> {
    let (a, b) = (*line.first()?, *line.last()?);
    let long = math::hypot(b.0 - a.0, b.1 - a.1);
    if long < 0.2 {
        return None;
    }
    let n = (-(b.1 - a.1) / long * half, (b.0 - a.0) / long * half);
    let shift = |p: Spot, way: f64| (p.0 + way * n.0, p.1 + way * n.1);
    Some([shift(a, 1.0), shift(b, 1.0), shift(b, -1.0), shift(a, -1.0)])
}

/// Half the width of the widest beam, mm, for labels at piles.
pub fn widest(beams: &[Beam]) -> f64 {
    let known = beams.iter().filter(|b| !b.bodies.is_empty());
    known.map(|b| b.half).fold(0.0, f64::max)
}

/// Half the width of each beam by its label.
pub fn halves(beams: &[Beam]) -> BTreeMap<&str, f64> {
    beams.iter().map(|b| (b.label.as_str(), b.half)).collect()
}

fn closed(points: &[Spot]) -> String {
    let mut d = String::new();
    for (i, p) in points.iter().enumerate() {
        d += &format!("{}{} {}", if i == 0 { "M" } else { "L" }, mm(p.0), mm(p.1));
    }
    d + "Z"
}

/// Draws the beams: edges and fill, or bands, then openings, centre lines and form lines.
pub fn draw(svg: &mut Svg, s: Subject, view: &View, all: &[Beam], failed: &BTreeSet<String>) {
    let (wide, narrow): (Vec<&Beam>, Vec<&Beam>) = all.iter().partition(|b| !b.bodies.is_empty());
    if !narrow.is_empty() {
        svg.open("stroke=\"#d8d8d8\" stroke-width=\"2.2\" stroke-linejoin=\"miter\"");
        for line in narrow.iter().flat_map(|b| &b.lines) {
            let cap = if narrow.iter().any(|b| !b.gaps.is_empty()) {
                ""
            } else {
                "stroke-linecap=\"square\""
            };
            svg.polyline(line, cap);
        }
        svg.close();
    }
    // where beams meet, the fill of one covers the edge of the other
    let bodies: Vec<String> = wide
        .iter()
        .flat_map(|b| &b.bodies)
        .map(|b| closed(b))
        .collect();
    for body in &bodies {
        svg.path(body, EDGE);
    }
    for body in &bodies {
        svg.path(body, FILL);
    }
    for corners in all.iter().flat_map(|b| &b.windows) {
        let pen = "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.15\"";
        svg.path(&closed(corners), pen);
    }
    svg.open("stroke=\"#000\" stroke-width=\"0.2\"");
    for beam in all {
        for line in &beam.lines {
            if failed.contains(&beam.label) {
                svg.polyline(line, "stroke-width=\"0.9\"");
            } else {
                svg.polyline(line, "stroke-dasharray=\"3.2 0.8 0.6 0.8\"");
            }
        }
        for gap in &beam.gaps {
            svg.polyline(gap, "stroke-dasharray=\"0.3 1.2\"");
        }
    }
    svg.close();
    for outline in s.answer.result.outlines.iter().flatten() {
        let line: Vec<Spot> = outline.points.iter().map(|p| view.at(p)).collect();
        svg.polyline(&line, "stroke=\"#000\" stroke-width=\"0.55\"");
    }
}

/// Notes edges and form lines as lines that labels keep off.
pub fn avoid(s: Subject, view: &View, all: &[Beam], room: &mut Room) {
    for beam in all {
        if beam.bodies.is_empty() {
            for pair in beam.lines.iter().flat_map(|l| l.windows(2)) {
                // the two edges of the band
                let (dx, dy) = (pair[1].0 - pair[0].0, pair[1].1 - pair[0].1);
                let long = math::hypot(dx, dy).max(1e-9);
                let (nx, ny) = (-dy / long * BAND, dx / long * BAND);
                for side in [-1.0, 1.0] {
                    let shift = |p: Spot| (p.0 + side * nx, p.1 + side * ny);
                    room.avoid(shift(pair[0]), shift(pair[1]));
                }
            }
            continue;
        }
        for body in &beam.bodies {
            for (i, p) in body.iter().enumerate() {
                room.avoid(*p, body[(i + 1) % body.len()]);
            }
        }
        for pair in beam.lines.iter().flat_map(|l| l.windows(2)) {
            room.avoid(pair[0], pair[1]);
        }
    }
    for corners in all.iter().flat_map(|b| &b.windows) {
        for (i, p) in corners.iter().enumerate() {
            room.avoid(*p, corners[(i + 1) % 4]);
        }
    }
    for pair in all.iter().flat_map(|b| &b.gaps).flat_map(|l| l.windows(2)) {
        room.avoid(pair[0], pair[1]);
    }
    for outline in s.answer.result.outlines.iter().flatten() {
        for pair in outline.points.windows(2) {
            room.avoid(view.at(&pair[0]), view.at(&pair[1]));
        }
    }
}

/// Clear edge around the name of a beam, mm.
const CLEAR: f64 = 0.7;
/// Where along its run the name of a beam may stand, best first.
const ALONG: [f64; 9] = [0.5, 0.43, 0.57, 0.36, 0.64, 0.25, 0.75, 0.12, 0.88];

/// Names of beams, in a frame beside the middle of their longest straight run.
pub fn names(svg: &mut Svg, all: &[Beam], view: &View, room: &mut Room) {
    let style = Style::PLAIN.at(Anchor::Middle);
    for beam in all {
        let runs = beam.lines.iter().flat_map(|l| l.windows(2));
        let longest = runs
            .map(|p| (p[0], p[1]))
            .fold(None, |best, run| match best {
                Some(b) if square_length(b) >= square_length(run) => Some(b),
                _ => Some(run),
            });
        let Some((from, to)) = longest else {
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
        let places = || {
            ALONG.into_iter().filter_map(|t| {
                let at = (from.0 + t * (to.0 - from.0), from.1 + t * (to.1 - from.1));
                room.near(at, beam.half - CLEAR, size, inward)
            })
        };
        // better farther along the run than on another beam
        let place = places().find(|p| p.covers == 0).or_else(|| places().next());
        if let Some(place) = place {
            room.keep(&place);
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

fn square_length((a, b): (Spot, Spot)) -> f64 {
    (b.0 - a.0) * (b.0 - a.0) + (b.1 - a.1) * (b.1 - a.1)
}

/// Unit vector from one place to another; up where they are one.
pub fn direction(from: Spot, to: Spot) -> Spot {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let long = math::hypot(dx, dy);
    if long < 1e-6 {
        (0.0, -1.0)
    } else {
        (dx / long, dy / long)
    }
}
