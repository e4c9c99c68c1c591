//! Reactions, moments and shears of a plan on its piles, enveloped over combinations and
//! support models, and the closure of statics. Judges nothing.

use super::combine::Combination;
use super::frame::{Frame, resultant};
use super::outcome::SupportModel;
use super::plan::{Place, RunPart};
use crate::beam::{
    ABREAST, Ends, Extremes, Factors, Fault, Known, LineSolution, Loads, Network, Pieces, Solution,
    solve_under,
};

/// A value only replaces another when it is greater by more than rounding.
const NOISE: f64 = 1e-12;

/// A plan solved on one support model.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Solved {
    pub supports: SupportModel,
    pub network: Network,
    pub solution: Solution,
}

impl Solved {
    /// Solves on rigid piles, or on springs of the given stiffness.
    pub fn of(frame: &Frame, piles: &[Place], stiffness: Option<&[f64]>) -> Result<Self, Fault> {
        let network = frame.network(piles, stiffness);
        let loads = Loads::of(&network);
        Self::under(network, loads, stiffness.is_some())
    }

    /// Solves on rigid piles, and on springs where they have a stiffness.
    pub fn each(
        frame: &Frame,
        piles: &[Place],
        stiffness: Option<&[f64]>,
    ) -> Result<Vec<Self>, Fault> {
        let network = frame.network(piles, None);
        let loads = Loads::of(&network);
        let springs = stiffness.map(|k| (frame.network(piles, Some(k)), loads.clone()));
        let mut out = vec![Self::under(network, loads, false)?];
        if let Some((network, loads)) = springs {
            out.push(Self::under(network, loads, true)?);
        }
        Ok(out)
    }

    fn under(network: Network, loads: Loads, springs: bool) -> Result<Self, Fault> {
        let solution = solve_under(&network, loads)?;
        Ok(Self {
            supports: if springs {
                SupportModel::Spring
            } else {
                SupportModel::Rigid
            },
            network,
            solution,
        })
    }

    /// Reaction of a pile in a combination.
    pub fn reaction(&self, pile: usize, factors: &[f64]) -> f64 {
        combined(&self.solution.reaction, pile, factors)
    }

    /// Reactions of the first piles: one row a pile, one column a combination.
    pub fn reactions(&self, piles: usize, factors: &Factors) -> Vec<f64> {
        factors.sums(&self.solution.reaction, piles)
    }

    /// Settlements, laid out alike.
    pub fn settlements(&self, piles: usize, factors: &Factors) -> Vec<f64> {
        factors.sums(&self.solution.deflection, piles)
    }
}

fn combined(values: &[f64], row: usize, factors: &[f64]) -> f64 {
    let m = factors.len();
    let mut sum = 0.0;
    for (v, f) in values[row * m..(row + 1) * m].iter().zip(factors) {
        sum += v * f;
    }
    sum
}

/// The factors of all combinations.
pub(super) fn factors(combinations: &[Combination], cases: usize) -> Factors {
    Factors::new(combinations.iter().map(|c| c.factors.as_slice()), cases)
}

/// Greatest and least reaction with their combinations.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Range {
    pub max: f64,
    pub max_in: usize,
    pub min: f64,
    pub min_in: usize,
}

/// Whether `a` is above `b` by more than rounding.
pub(super) fn above(a: f64, b: f64) -> bool {
    a > b && a > b + NOISE * b.abs().max(a.abs())
}

/// Ranges of piles from their reactions: one row a pile, one column a combination.
pub(super) fn ranges(reactions: &[f64], combinations: usize) -> Vec<Range> {
    let each = reactions.chunks_exact(combinations);
    each.map(|row| {
        let mut range = Range {
            max: row[0],
            max_in: 0,
            min: row[0],
            min_in: 0,
        };
        for (c, r) in row.iter().enumerate().skip(1) {
            if above(*r, range.max) {
                (range.max, range.max_in) = (*r, c);
            }
            if above(range.min, *r) {
                (range.min, range.min_in) = (*r, c);
            }
        }
        range
    })
    .collect()
}

/// A governing value: where, in which combination, on which supports.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Governing {
    pub value: f64,
    pub run: usize,
    pub at: f64,
    pub combination: usize,
    pub supports: SupportModel,
}

/// Extremes of a beam, as sizes that are never negative.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct BeamEnvelope {
    pub sagging: Governing,
    pub hogging: Governing,
    pub shear: Governing,
    /// Nil without torsion.
    pub torque: Governing,
}

/// Extremes of every beam over all combinations and support models.
pub(super) fn beam_envelopes(
    frame: &Frame,
    solved: &[Solved],
    combinations: &[Combination],
) -> Vec<BeamEnvelope> {
    let mut out: Vec<BeamEnvelope> = frame
        .plan
        .beam_parts
        .iter()
        .map(|parts| {
            let nothing = Governing {
                value: 0.0,
                run: parts[0].run,
                at: parts[0].run_from,
                combination: 0,
                supports: SupportModel::Rigid,
            };
            BeamEnvelope {
                sagging: nothing,
                hogging: nothing,
                shear: nothing,
                torque: nothing,
            }
        })
        .collect();
    let factors = factors(combinations, frame.cases);
    for model in solved {
        for (r, line) in model.network.lines.iter().enumerate() {
            let mut parts = PartExtremes::new(frame, r, combinations.len());
            let own = &model.solution.lines[r];
            own.walk_together(line, &factors, |these, pieces, ends| {
                parts.add(these, pieces, ends);
            });
            for (c, combination) in combinations.iter().enumerate() {
                for (beam, e) in parts.of(c) {
                    widen(&mut out[beam], e, r, c, model.supports);
                }
                torques(frame, model, r, (c, &combination.factors), &mut out);
            }
        }
    }
    out
}

/// Widens the torques of the beams of a run; a torque is even from node to node.
fn torques(
    frame: &Frame,
    model: &Solved,
    run: usize,
    (combination, factors): (usize, &[f64]),
    out: &mut [BeamEnvelope],
) {
    let (line, own) = (&model.network.lines[run], &model.solution.lines[run]);
    if !own.twisted() {
        return;
    }
    for (i, pair) in line.nodes.windows(2).enumerate() {
        let cases = factors.iter().enumerate();
        let torque: f64 = cases.map(|(c, f)| f * own.torque(i, c)).sum();
        for part in &frame.plan.runs[run].parts {
            let (from, to) = (part.from.max(pair[0].at), part.to.min(pair[1].at));
            if to > from {
                let slot = &mut out[part.beam].torque;
                replace(
                    slot,
                    Governing {
                        value: torque.abs(),
                        run,
                        at: from,
                        combination,
                        supports: model.supports,
                    },
                );
            }
        }
    }
}

fn replace(slot: &mut Governing, by: Governing) {
    if above(by.value, slot.value) {
        *slot = by;
    }
}

/// Collects extremes part by part of a run, in every combination.
struct PartExtremes<'a> {
    parts: &'a [RunPart],
    part: usize,
    combinations: usize,
    /// One row a part, one column a combination.
    found: Vec<Option<Extremes>>,
    /// Their values, several combinations abreast.
    known: Vec<Known<ABREAST>>,
}

impl<'a> PartExtremes<'a> {
    fn new(frame: &'a Frame, run: usize, combinations: usize) -> Self {
        let parts = &frame.plan.runs[run].parts;
        Self {
            parts,
            part: 0,
            combinations,
            found: vec![None; parts.len() * combinations],
            known: (0..parts.len())
                .flat_map(|_| (0..combinations).step_by(ABREAST))
                .map(|first| Known::nothing(combinations - first))
                .collect(),
        }
    }

    /// A piece in some combinations; of all of them from the start of the run on.
    fn add(
        &mut self,
        these: std::ops::Range<usize>,
        pieces: &Pieces<ABREAST>,
        ends: &Ends<ABREAST>,
    ) {
        if pieces.from == 0.0 {
            self.part = 0;
        }
        while self.part + 1 < self.parts.len() && pieces.from >= self.parts[self.part].to {
            self.part += 1;
        }
        let blocks = self.combinations.div_ceil(ABREAST);
        let known = &mut self.known[self.part * blocks + these.start / ABREAST];
        if pieces.within(ends, known) {
            return;
        }
        let found = &mut self.found[self.part * self.combinations..][these];
        for (i, found) in found.iter_mut().enumerate() {
            let end = (ends.shear[i], ends.moment[i]);
            known.note(i, pieces.piece(i).widen(end, found));
        }
    }

    /// Beams with their extremes in a combination.
    fn of(&self, combination: usize) -> impl Iterator<Item = (usize, &Extremes)> {
        let found = self
            .parts
            .iter()
            .zip(self.found.chunks_exact(self.combinations));
        found.filter_map(move |(part, row)| Some((part.beam, row[combination].as_ref()?)))
    }
}

fn widen(
    out: &mut BeamEnvelope,
    e: &Extremes,
    run: usize,
    combination: usize,
    supports: SupportModel,
) {
    let take = |slot: &mut Governing, value: f64, at: f64| {
        let by = Governing {
            value,
            run,
            at,
            combination,
            supports,
        };
        replace(slot, by);
    };
    take(
        &mut out.sagging,
        e.highest_moment.value,
        e.highest_moment.at,
    );
    take(&mut out.hogging, -e.lowest_moment.value, e.lowest_moment.at);
    take(&mut out.shear, e.shear.value.abs(), e.shear.at);
}

/// Relative closure of statics.
///
/// max of |sum F| / sum |F| and |sum M| / (sum |F| x extent) over runs (about their
/// start), over the plan (about both axes through its own corner), over nodes without a
/// pile (their forces must cancel), with torsion over nodes (what bends and what twists
/// there must cancel), over combinations; F loads and shares of reactions
/// (N), M their moments (N m). Source: equilibrium.
pub(super) fn closure(
    frame: &Frame,
    solved: &Solved,
    combinations: &[Combination],
    totals: &[(f64, f64)],
) -> f64 {
    let free = |node: usize| matches!(solved.network.supports[node], crate::beam::Support::Free);
    let runs = &frame.plan.runs;
    let extent = runs
        .iter()
        .map(|r| {
            let end = r.point(r.length);
            end.x.abs().max(end.y.abs()).max(r.start.x).max(r.start.y)
        })
        .fold(1.0, f64::max);
    let mut worst = 0.0f64;
    let mut note = |v: f64| worst = worst.max(if v.is_nan() { f64::INFINITY } else { v });
    // the sums are linear in the cases
    let left: Vec<Vec<Left>> = (0..runs.len()).map(|run| left(solved, run)).collect();
    for (combination, (_, size)) in combinations.iter().zip(totals) {
        let (factors, size) = (&combination.factors, *size);
        if size == 0.0 {
            continue;
        }
        let (mut force, mut about_x, mut about_y) = (0.0, 0.0, 0.0);
        for (run, cases) in runs.iter().zip(&left) {
            let of = |get: fn(&Left) -> f64| -> f64 {
                cases.iter().zip(factors).map(|(l, f)| f * get(l)).sum()
            };
            let (own, moment) = (of(|l| l.force), of(|l| l.moment));
            force += own;
            about_x += own * run.start.y + moment * run.direction.y;
            about_y += own * run.start.x + moment * run.direction.x;
            note(own.abs() / size);
            // couples between lines cancel in the plan, at the nodes below
            let handed = of(|l| l.handed);
            note((moment - handed).abs() / (size * run.length.max(1.0)));
        }
        note(force.abs() / size);
        note(about_x.abs() / (size * extent));
        note(about_y.abs() / (size * extent));
        for node in (0..solved.network.supports.len()).filter(|n| free(*n)) {
            let left = combined(&solved.solution.reaction, node, factors);
            note(left.abs() / size);
        }
        for (x, y) in node_couples(solved, factors) {
            note(x.abs().max(y.abs()) / (size * extent));
        }
    }
    worst
}

/// What is left on a run in one case: shares of reactions less loads, their moments about its
/// start, and the couples that other runs hand to it.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
struct Left {
    force: f64,
    moment: f64,
    handed: f64,
}

fn left(solved: &Solved, run: usize) -> Vec<Left> {
    let (line, own) = (&solved.network.lines[run], &solved.solution.lines[run]);
    let mut out = vec![Left::default(); solved.solution.cases];
    for load in &line.loads {
        let (force, moment) = resultant(&load.shape);
        out[load.case].force -= force;
        out[load.case].moment -= moment;
    }
    for (i, n) in line.nodes.iter().enumerate() {
        for (case, left) in out.iter_mut().enumerate() {
            let share = own.share(i, case);
            left.force += share;
            left.moment += share * n.at;
            if own.twisted() {
                left.handed += own.couple(i, case);
            }
        }
    }
    out
}

fn couple(line: &LineSolution, node: usize, factors: &[f64]) -> f64 {
    let cases = factors.iter().enumerate();
    cases.map(|(c, f)| f * line.couple(node, c)).sum()
}

/// What the lines at each node exert on it beside forces, in plan; nil in equilibrium.
///
/// sum over lines of C d + (T_left - T_right) n; C couple in the plane of the line (N m), T
/// torque beside the node (N m), d direction of the line, n to its left. Source: equilibrium.
fn node_couples(solved: &Solved, factors: &[f64]) -> Vec<(f64, f64)> {
    let Some(torsion) = &solved.network.torsion else {
        return Vec::new();
    };
    let mut out = vec![(0.0, 0.0); solved.network.supports.len()];
    for (l, line) in solved.network.lines.iter().enumerate() {
        let (own, d) = (&solved.solution.lines[l], torsion.direction[l]);
        let torque = |span: usize| -> f64 {
            let cases = factors.iter().enumerate();
            cases.map(|(c, f)| f * own.torque(span, c)).sum()
        };
        for (i, n) in line.nodes.iter().enumerate() {
            let bend = if own.twisted() {
                couple(own, i, factors)
            } else {
                0.0
            };
            let left = if i > 0 { torque(i - 1) } else { 0.0 };
            let right = if i < line.rigidity.len() {
                torque(i)
            } else {
                0.0
            };
            let twist = left - right;
            out[n.node].0 += bend * d.0 - twist * d.1;
            out[n.node].1 += bend * d.1 + twist * d.0;
        }
    }
    out
}
