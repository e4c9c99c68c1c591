//! Deflections of the beams between their piles in the service combinations, against the limits
//! of the request.

use super::curve::{Curve, Stretch};
use crate::beam::Support;
use crate::contract::utilisation;
use crate::layout::analysis::{Solved, above};
use crate::layout::combine::Combination;
use crate::layout::frame::Frame;
use crate::layout::outcome::{BeamDeflection, Outcome, SupportModel};
use crate::layout::report::Analysis;
use crate::layout::request::{DeflectionLimit, PlanPoint, Request};
use crate::quantity::{Length, Size};

/// The span of a free end is twice its length (note of the table of deflection limits).
const FREE_END: f64 = 2.0;

/// Adds strengths of sections and deflections to the beams of the outcome.
pub(in crate::layout) fn report(analysis: &Analysis<'_>, outcome: &mut Outcome) {
    for (row, own) in outcome.beams.iter_mut().zip(&analysis.frame.strength) {
        row.strength = own.section.clone();
    }
    let Some(service) = &analysis.loading.service else {
        return;
    };
    let plan = &analysis.frame.plan;
    let worst = worst_deflections(analysis.request, analysis.frame, service, analysis.solved);
    for (row, worst) in outcome.beams.iter_mut().zip(worst) {
        row.deflection = worst.map(|w| {
            let p = plan.outside(plan.runs[w.run].point(w.at));
            BeamDeflection {
                deflection: Size::from_si(w.value),
                limit: Size::from_si(w.limit),
                span: Length::from_si(w.span),
                at: PlanPoint {
                    x: Length::from_si(p.x),
                    y: Length::from_si(p.y),
                },
                combination: service[w.combination].name.clone(),
                supports: w.supports,
            }
        });
    }
}

/// The deflection of a beam that is nearest to its limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::layout) struct WorstDeflection {
    /// Its size over the limit.
    pub used: f64,
    pub run: usize,
    at: f64,
    value: f64,
    limit: f64,
    span: f64,
    combination: usize,
    supports: SupportModel,
}

/// That of every beam with a limit, over combinations and support models.
pub(in crate::layout) fn worst_deflections(
    request: &Request,
    frame: &Frame,
    service: &[Combination],
    solved: &[Solved],
) -> Vec<Option<WorstDeflection>> {
    let mut worst = vec![None; request.beams.len()];
    let limited = |run: usize| {
        let beams = frame.plan.runs[run].beams();
        beams
            .into_iter()
            .any(|b| request.beams[b].deflection_limit.is_some())
    };
    for run in (0..frame.plan.runs.len()).filter(|r| limited(*r)) {
        for model in solved {
            let mut along = Along {
                request,
                frame,
                model,
                run,
                combination: 0,
                worst: &mut worst,
            };
            for (c, combination) in service.iter().enumerate() {
                along.combination = c;
                along.look(&combination.factors);
            }
        }
    }
    worst
}

/// One run on one support model in one combination.
struct Along<'a> {
    request: &'a Request,
    frame: &'a Frame,
    model: &'a Solved,
    run: usize,
    combination: usize,
    worst: &'a mut [Option<WorstDeflection>],
}

impl Along<'_> {
    /// Spans from pile to pile, and free ends.
    fn look(&mut self, factors: &[f64]) {
        let line = &self.model.network.lines[self.run];
        let holds = |node: usize| self.model.network.supports[node] != Support::Free;
        let held = line.nodes.iter().filter(|n| holds(n.node));
        let piles: Vec<f64> = held.map(|n| n.at).collect();
        if piles.len() < 2 {
            return;
        }
        let pieces = self.pieces(factors);
        let between = |from: f64, to: f64| -> Vec<Stretch> {
            let inside = |s: &&Stretch| s.piece.from >= from && s.piece.to <= to;
            pieces.iter().filter(inside).copied().collect()
        };
        let length = self.frame.plan.runs[self.run].length;
        let (mut first_slope, mut last_slope) = (0.0, 0.0);
        for (i, ends) in piles.windows(2).enumerate() {
            let inside = between(ends[0], ends[1]);
            let curve = Curve::from_chord(&inside);
            let span = ends[1] - ends[0];
            curve.extremes(|piece, at, value| self.note(piece, at, span, value));
            if i == 0 {
                first_slope = curve.slope;
            }
            last_slope = curve.end_slope();
        }
        let (first, last) = (piles[0], piles[piles.len() - 1]);
        if first > 0.0 {
            let turned: Vec<Stretch> = between(0.0, first)
                .iter()
                .rev()
                .map(Stretch::turned)
                .collect();
            let span = FREE_END * first;
            Curve::with_slope(&turned, -first_slope).extremes(|piece, at, value| {
                self.note(&piece.turned(), -at, span, value);
            });
        }
        if last < length {
            let beyond = between(last, length);
            let span = FREE_END * (length - last);
            Curve::with_slope(&beyond, last_slope)
                .extremes(|piece, at, value| self.note(piece, at, span, value));
        }
    }

    fn pieces(&self, factors: &[f64]) -> Vec<Stretch> {
        let line = &self.model.network.lines[self.run];
        let run = &self.frame.plan.runs[self.run];
        let mut pieces = Vec::new();
        self.model.solution.lines[self.run].walk(line, factors, |piece| {
            let beam = run.beam_at(0.5 * (piece.from + piece.to));
            pieces.push(Stretch {
                piece,
                rigidity: self.frame.rigidity[beam],
            });
        });
        pieces
    }

    fn note(&mut self, stretch: &Stretch, at: f64, span: f64, value: f64) {
        let p = &stretch.piece;
        let beam = self.frame.plan.runs[self.run].beam_at(0.5 * (p.from + p.to));
        let limit = match self.request.beams[beam].deflection_limit {
            Some(DeflectionLimit::SpanOver(s)) => span / s.span_to_deflection_ratio,
            Some(DeflectionLimit::Absolute(a)) => a.deflection.si(),
            None => return,
        };
        let used = utilisation(value.abs(), limit).0.unwrap_or(0.0);
        if self.worst[beam].is_none_or(|w| above(used, w.used)) {
            self.worst[beam] = Some(WorstDeflection {
                used,
                run: self.run,
                at,
                value,
                limit,
                span,
                combination: self.combination,
                supports: self.model.supports,
            });
        }
    }
}
