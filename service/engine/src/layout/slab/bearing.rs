//! Which beams the sides of a slab lie on, and the widths of the slab as they lie along the
//! runs.

use super::shape::{Outline, Side};
use super::widths::Width;
use crate::contract::Issue;
use crate::layout::codes::refusals;
use crate::layout::frame::settled;
use crate::layout::plan::{Plan, Point, TOLERANCE};
use crate::layout::request::{Request, SlabStrips};
use crate::math::{cos, sin};
use crate::quantity::in_both_systems;

/// Places that differ by less than this are equal (rounding of units), m.
const SAME: f64 = 1e-9;
/// Cosine of the angle between a side and a beam that it can lie on.
const ALONG: f64 = 0.99;

/// A width of a slab along a run, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::layout) struct OnRun {
    pub run: usize,
    pub beam: usize,
    pub from: f64,
    pub to: f64,
    pub start: f64,
    pub end: f64,
}

/// A part of a side that lies on a beam.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Seat {
    run: usize,
    beam: usize,
    /// Along the side.
    from: f64,
    to: f64,
    /// Along the run, belonging to `from` and `to`.
    run_from: f64,
    run_to: f64,
    /// Greatest distance from the centre line.
    off: f64,
    /// How far off it may be.
    near: f64,
}

impl Seat {
    fn place(&self, s: f64) -> f64 {
        if s <= self.from {
            self.run_from
        } else if s >= self.to {
            self.run_to
        } else {
            self.run_from + (self.run_to - self.run_from) * (s - self.from) / (self.to - self.from)
        }
    }

    /// The part of it between two places along the side.
    fn between(&self, from: f64, to: f64) -> Self {
        Self {
            from,
            to,
            run_from: self.place(from),
            run_to: self.place(to),
            ..*self
        }
    }
}

/// Beams under each side of a slab.
pub(super) struct Seats {
    /// By side, in order along it; each place of a side is on one of them at most.
    sides: Vec<Vec<Seat>>,
    /// Directions of the beams, for those under a side.
    under: Vec<(usize, Point)>,
}

impl Seats {
    /// Looks for the beams under every side.
    pub fn of(request: &Request, plan: &Plan, outline: &Outline) -> Self {
        let mut under = Vec::new();
        let sides = outline
            .sides
            .iter()
            .map(|side| {
                let all = candidates(request, plan, side);
                for seat in &all {
                    under.push((seat.beam, plan.runs[seat.run].direction));
                }
                nearest(all)
            })
            .collect();
        Self { sides, under }
    }

    /// Direction of strips as asked for.
    pub fn strips(
        &self,
        asked: &SlabStrips,
        beam_labels: &[String],
        pointer: &str,
        issues: &mut Vec<Issue>,
    ) -> Option<Point> {
        let beam = match asked {
            SlabStrips::AtAngle(angle) => {
                let a = angle.from_east.si();
                return Some(Point {
                    x: cos(a),
                    y: sin(a),
                });
            }
            SlabStrips::SquareToBeam(to) => to.beam.as_str(),
        };
        let mut refuse = |detail: &str| {
            issues.push(Issue::new(
                format!("{pointer}/square_to_beam/beam"),
                &refusals::SLAB_STRIPS_UNCLEAR,
                detail,
            ));
        };
        let Some(index) = beam_labels.iter().position(|l| l == beam) else {
            refuse("no beam has this label");
            return None;
        };
        let mut directions = self.under.iter().filter(|u| u.0 == index).map(|u| u.1);
        let Some(first) = directions.next() else {
            refuse("no edge of the slab lies on this beam");
            return None;
        };
        if directions.any(|d| d.cross(first).abs() > SAME) {
            refuse("edges of the slab lie on this beam in several directions; send `at_angle`");
            return None;
        }
        Some(Point {
            x: -first.y,
            y: first.x,
        })
    }

    /// Lays the widths of every side onto its beams; a side that carries and is not on beams
    /// all along is a fault.
    pub fn carry(
        &self,
        outline: &Outline,
        widths: &[Vec<Width>],
        plan: &Plan,
        index: usize,
        issues: &mut Vec<Issue>,
    ) -> Vec<OnRun> {
        let mut out = Vec::new();
        for ((side, seats), own) in outline.sides.iter().zip(&self.sides).zip(widths) {
            if own.is_empty() {
                continue;
            }
            match spread_over(seats, side.length) {
                Ok(seats) => {
                    for seat in seats {
                        lay(&seat, own, plan, &mut out);
                    }
                }
                Err(bare) => issues.push(without_beam(side, &bare, index)),
            }
        }
        out
    }
}

/// Every beam that a part of a side lies on.
fn candidates(request: &Request, plan: &Plan, side: &Side) -> Vec<Seat> {
    let mut out = Vec::new();
    for (r, run) in plan.runs.iter().enumerate() {
        let turn = run.direction.dot(side.direction);
        if turn.abs() < ALONG {
            continue;
        }
        for part in &run.parts {
            let near = TOLERANCE.max(half_width(request, part.beam));
            let place = |at: f64| {
                let way = side.start.to(run.point(at));
                (way.dot(side.direction), way.cross(side.direction).abs())
            };
            let (a, b) = (place(part.from).0, place(part.to).0);
            let (lo, hi) = (a.min(b).max(0.0), a.max(b).min(side.length));
            if hi - lo <= SAME {
                continue;
            }
            let back = |s: f64| {
                let share = ((s - a) / (b - a)).clamp(0.0, 1.0);
                part.from + (part.to - part.from) * share
            };
            let (run_from, run_to) = (back(lo), back(hi));
            let off = place(run_from).1.max(place(run_to).1);
            if off <= near + SAME {
                out.push(Seat {
                    run: r,
                    beam: part.beam,
                    from: lo,
                    to: hi,
                    run_from,
                    run_to,
                    off,
                    near,
                });
            }
        }
    }
    out
}

/// Half the width of a beam that has one.
fn half_width(request: &Request, beam: usize) -> f64 {
    request.beams[beam].width.map_or(0.0, |w| 0.5 * w.si())
}

/// Of the beams under each place of a side the nearest; the first of the runs among equals.
fn nearest(all: Vec<Seat>) -> Vec<Seat> {
    let mut cuts: Vec<f64> = all.iter().flat_map(|s| [s.from, s.to]).collect();
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|b, a| *b - *a <= SAME);
    let mut out: Vec<(usize, Seat)> = Vec::new();
    for pair in cuts.windows(2) {
        let middle = 0.5 * (pair[0] + pair[1]);
        let best = all
            .iter()
            .enumerate()
            .filter(|(_, s)| s.from <= middle && middle <= s.to)
            .min_by(|a, b| a.1.off.total_cmp(&b.1.off).then(a.0.cmp(&b.0)));
        let Some((i, seat)) = best else {
            continue;
        };
        let piece = seat.between(pair[0].max(seat.from), pair[1].min(seat.to));
        match out.last_mut() {
            Some((last, own)) if *last == i => {
                (own.to, own.run_to) = (piece.to, piece.run_to);
            }
            _ => out.push((i, piece)),
        }
    }
    out.into_iter().map(|o| o.1).collect()
}

/// Seats over the whole side, what is next to one reckoned to it; else the bare parts.
fn spread_over(seats: &[Seat], length: f64) -> Result<Vec<Seat>, Vec<(f64, f64)>> {
    let mut bare = Vec::new();
    let mut out = seats.to_vec();
    match (seats.first(), seats.last()) {
        (Some(first), Some(last)) => {
            if first.from > first.near + SAME {
                bare.push((0.0, first.from));
            }
            for pair in seats.windows(2) {
                if pair[1].from - pair[0].to > pair[0].near + pair[1].near + SAME {
                    bare.push((pair[0].to, pair[1].from));
                }
            }
            if length - last.to > last.near + SAME {
                bare.push((last.to, length));
            }
        }
        _ => bare.push((0.0, length)),
    }
    if !bare.is_empty() {
        return Err(bare);
    }
    let n = out.len();
    out[0].from = 0.0;
    out[n - 1].to = length;
    for i in 1..n {
        let middle = 0.5 * (out[i - 1].to + out[i].from);
        (out[i - 1].to, out[i].from) = (middle, middle);
    }
    Ok(out)
}

fn without_beam(side: &Side, bare: &[(f64, f64)], index: usize) -> Issue {
    let parts: Vec<String> = bare
        .iter()
        .map(|(a, b)| {
            format!(
                "from {} to {}",
                in_both_systems(*a, "m"),
                in_both_systems(*b, "m")
            )
        })
        .collect();
    // along the side as it is sent, from its first corner
    let (i, j) = side.corners;
    Issue::new(
        format!("/slabs/{index}/corners/{i}"),
        &refusals::SLAB_EDGE_WITHOUT_BEAM,
        format!(
            "the edge from corner {i} to corner {j} is on no beam {}, along it from corner {i}",
            parts.join(" and ")
        ),
    )
    .limit(format!(
        "within {} of a centre line, or within half the width of the beam",
        in_both_systems(TOLERANCE, "m")
    ))
}

/// Cuts the widths of a side at a seat and puts them along its run.
fn lay(seat: &Seat, widths: &[Width], plan: &Plan, out: &mut Vec<OnRun>) {
    let mut cuts: Vec<f64> = vec![seat.from];
    for w in widths {
        let last = cuts[cuts.len() - 1];
        if w.from > last + SAME && w.from < seat.to - SAME {
            cuts.push(w.from);
        }
    }
    cuts.push(seat.to);
    let length = plan.runs[seat.run].length;
    let along = |s: f64| {
        let share = (s - seat.from) / (seat.to - seat.from);
        let at = if share >= 1.0 {
            seat.run_to
        } else {
            seat.run_from + (seat.run_to - seat.run_from) * share
        };
        settled(plan, seat.run, at, length)
    };
    for pair in cuts.windows(2) {
        let middle = 0.5 * (pair[0] + pair[1]);
        let Some(w) = widths.iter().rev().find(|w| w.from <= middle) else {
            continue;
        };
        let (a, b) = (w.at(pair[0]).max(0.0), w.at(pair[1]).max(0.0));
        let (s, t) = (along(pair[0]), along(pair[1]));
        if s == t || (a == 0.0 && b == 0.0) {
            continue;
        }
        // the load stays what it is where the run is a little longer or shorter
        let scale = (pair[1] - pair[0]) / (t - s).abs();
        let (from, to, start, end) = if s < t { (s, t, a, b) } else { (t, s, b, a) };
        out.push(OnRun {
            run: seat.run,
            beam: seat.beam,
            from,
            to,
            start: start * scale,
            end: end * scale,
        });
    }
}
