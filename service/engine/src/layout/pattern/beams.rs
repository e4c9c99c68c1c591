//! Extremes of the beams over all ways to load the parts, piece by piece: where a part
//! changes the sign of its moment or shear a piece is cut, and between cuts the same parts
//! count, so that the extremes are those of one piece, found at zero shear.

use super::parts::Part;
use super::solve::Asked;
use crate::beam::{Extremes, Piece};
use crate::layout::analysis::{BeamEnvelope, Governing, Solved, above};

/// A share of a part's greatest moment or shear below which it does not count.
const NOISE: f64 = 1e-13;
/// Halvings of an interval that holds a change of sign: as many as a double can tell apart.
const HALVINGS: usize = 100;

/// What every part does to every piece of every line.
pub(super) struct BeamParts {
    /// Lines, pieces, parts that matter there.
    lines: Vec<Vec<Vec<(usize, Piece)>>>,
}

impl BeamParts {
    /// No part yet.
    pub fn new(base: &Solved) -> Self {
        let pieces = |line: &crate::beam::LineSolution| line.loads.stations.len() - 1;
        Self {
            lines: base
                .solution
                .lines
                .iter()
                .map(|line| vec![Vec::new(); pieces(line)])
                .collect(),
        }
    }

    /// Notes a part that was solved as a case.
    pub fn add(&mut self, solved: &Solved, case: usize, part: usize) {
        let mut all: Vec<(usize, usize, Piece)> = Vec::new();
        let (mut shear, mut moment) = (0.0f64, 0.0f64);
        for (l, line) in solved.network.lines.iter().enumerate() {
            let mut k = 0;
            solved.solution.lines[l].walk_case(line, case, |piece| {
                let (v, m) = size(&piece);
                (shear, moment) = (shear.max(v), moment.max(m));
                if v != 0.0 || m != 0.0 {
                    all.push((l, k, piece));
                }
                k += 1;
            });
        }
        for (l, k, piece) in all {
            let (v, m) = size(&piece);
            if v > NOISE * shear || m > NOISE * moment {
                self.lines[l][k].push((part, piece));
            }
        }
    }

    /// The worst sums of every beam, over combinations.
    pub fn envelopes(&self, asked: &Asked<'_>, base: &Solved) -> Vec<BeamEnvelope> {
        let plan = &asked.frame.plan;
        let mut out: Vec<BeamEnvelope> = plan
            .beam_parts
            .iter()
            .map(|parts| {
                let nothing = Governing {
                    value: 0.0,
                    run: parts[0].run,
                    at: parts[0].run_from,
                    combination: 0,
                    supports: base.supports,
                };
                BeamEnvelope {
                    sagging: nothing,
                    hogging: nothing,
                    shear: nothing,
                    torque: nothing,
                }
            })
            .collect();
        for (l, line) in base.network.lines.iter().enumerate() {
            let cuts: Vec<Cuts> = self.lines[l].iter().map(|own| Cuts::of(own)).collect();
            for (c, combination) in asked.combinations.iter().enumerate() {
                let parts = &plan.runs[l].parts;
                let (mut k, mut at) = (0, 0);
                base.solution.lines[l].walk(line, &combination.factors, |piece| {
                    while at + 1 < parts.len() && piece.from >= parts[at].to {
                        at += 1;
                    }
                    let worst = Worst {
                        base: piece,
                        own: &self.lines[l][k],
                        cuts: &cuts[k],
                        factor: &|part: usize| combination.factors[parts_case(asked.parts, part)],
                    };
                    let mut note = Note {
                        out: &mut out[parts[at].beam],
                        run: l,
                        combination: c,
                        base,
                    };
                    worst.look(&mut note);
                    k += 1;
                });
            }
        }
        out
    }
}

fn parts_case(parts: &[Part], part: usize) -> usize {
    parts[part].case
}

/// Greatest shear and moment at the ends of a piece, as sizes; with load in it also inside.
fn size(piece: &Piece) -> (f64, f64) {
    let l = piece.to - piece.from;
    let inside = piece.zero_shear().into_iter().flatten();
    let moment = inside
        .map(|x| piece.moment_at(x).abs())
        .fold(piece.moment.abs().max(piece.moment_at(l).abs()), f64::max);
    let inside = piece.zero_load().into_iter();
    let shear = inside
        .map(|x| piece.shear_at(x).abs())
        .fold(piece.shear.abs().max(piece.shear_at(l).abs()), f64::max);
    (shear, moment)
}

/// Places within a piece, from its start, where parts change sign; both ends included.
struct Cuts {
    moment: Vec<f64>,
    shear: Vec<f64>,
}

impl Cuts {
    fn of(own: &[(usize, Piece)]) -> Self {
        let (mut moment, mut shear) = (Vec::new(), Vec::new());
        for (_, piece) in own {
            let l = piece.to - piece.from;
            moment.extend([0.0, l]);
            shear.extend([0.0, l]);
            let mut turns: Vec<f64> = piece.zero_shear().into_iter().flatten().collect();
            turns.sort_by(f64::total_cmp);
            shear.extend(turns.iter().copied());
            let mut from = 0.0;
            for to in turns.into_iter().chain([l]) {
                moment.extend(root(piece, from, to));
                from = to;
            }
        }
        for cuts in [&mut moment, &mut shear] {
            cuts.sort_by(f64::total_cmp);
            cuts.dedup();
        }
        Self { moment, shear }
    }
}

/// Where the moment changes sign between two places between which it only grows or falls.
fn root(piece: &Piece, from: f64, to: f64) -> Option<f64> {
    let (first, last) = (piece.moment_at(from), piece.moment_at(to));
    if first == 0.0 || last == 0.0 || (first > 0.0) == (last > 0.0) {
        return None;
    }
    let (mut low, mut high) = (from, to);
    for _ in 0..HALVINGS {
        let middle = low + 0.5 * (high - low);
        if middle <= low || middle >= high {
            break;
        }
        if (piece.moment_at(middle) > 0.0) == (first > 0.0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(high)
}

/// Where extremes are noted.
struct Note<'a> {
    out: &'a mut BeamEnvelope,
    run: usize,
    combination: usize,
    base: &'a Solved,
}

impl Note<'_> {
    fn take(&mut self, which: impl Fn(&mut BeamEnvelope) -> &mut Governing, value: f64, at: f64) {
        let governing = Governing {
            value,
            run: self.run,
            at,
            combination: self.combination,
            supports: self.base.supports,
        };
        let slot = which(self.out);
        if above(value, slot.value) {
            *slot = governing;
        }
    }
}

/// One piece in one combination.
struct Worst<'a> {
    base: Piece,
    own: &'a [(usize, Piece)],
    cuts: &'a Cuts,
    factor: &'a dyn Fn(usize) -> f64,
}

impl Worst<'_> {
    /// M_max = M - sum of min(0, gamma m_i), M_min = M - sum of max(0, gamma m_i), V likewise;
    /// M, V all loads everywhere, m_i part i alone. Source: superposition.
    fn look(&self, note: &mut Note<'_>) {
        let length = self.base.to - self.base.from;
        let whole = [0.0, length];
        let cuts = if self.own.is_empty() {
            (&whole[..], &whole[..])
        } else {
            (&self.cuts.moment[..], &self.cuts.shear[..])
        };
        for pair in cuts.0.windows(2) {
            let middle = 0.5 * (pair[0] + pair[1]);
            for highest in [true, false] {
                let without =
                    |p: &Piece, factor: f64| (factor * p.moment_at(middle) < 0.0) == highest;
                let piece = self.sum(pair[0], pair[1], without);
                let mut found: Option<Extremes> = None;
                piece.widen(piece.at_end(), &mut found);
                let Some(e) = found else {
                    continue;
                };
                if highest {
                    note.take(
                        |o| &mut o.sagging,
                        e.highest_moment.value,
                        e.highest_moment.at,
                    );
                } else {
                    note.take(
                        |o| &mut o.hogging,
                        -e.lowest_moment.value,
                        e.lowest_moment.at,
                    );
                }
            }
        }
        for pair in cuts.1.windows(2) {
            let middle = 0.5 * (pair[0] + pair[1]);
            for highest in [true, false] {
                let without =
                    |p: &Piece, factor: f64| (factor * p.shear_at(middle) < 0.0) == highest;
                let piece = self.sum(pair[0], pair[1], without);
                for (value, at) in [
                    (piece.shear, piece.from),
                    (piece.shear_at(piece.to - piece.from), piece.to),
                ] {
                    note.take(|o| &mut o.shear, value.abs(), at);
                }
            }
        }
    }

    /// The piece between two places with some parts taken away.
    fn sum(&self, from: f64, to: f64, without: impl Fn(&Piece, f64) -> bool) -> Piece {
        let load = |p: &Piece, x: f64| p.start + (p.end - p.start) * x / (p.to - p.from);
        let mut out = Piece {
            from: self.base.from + from,
            to: self.base.from + to,
            shear: self.base.shear_at(from),
            moment: self.base.moment_at(from),
            start: load(&self.base, from),
            end: load(&self.base, to),
        };
        for (part, p) in self.own {
            let factor = (self.factor)(*part);
            if factor != 0.0 && without(p, factor) {
                out.shear -= factor * p.shear_at(from);
                out.moment -= factor * p.moment_at(from);
                out.start -= factor * load(p, from);
                out.end -= factor * load(p, to);
            }
        }
        out
    }
}
