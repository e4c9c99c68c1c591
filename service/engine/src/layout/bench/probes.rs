//! Moments of an analysed plan at single places, over all combinations and support models, with
//! all loads everywhere.

use super::Bench;
use crate::layout::report::Analysis;
use crate::layout::request::PlanPoint;

/// A place at which the moment of a beam is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Probe {
    pub beam: usize,
    run: usize,
    at: f64,
}

impl Probe {
    /// How far another place is along the same run; none on another run.
    pub fn to(&self, other: &Self) -> Option<f64> {
        (self.run == other.run).then_some(other.at - self.at)
    }
}

/// The greatest moments there, N m, none negative.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Probed {
    pub sagging: f64,
    pub hogging: f64,
}

impl Bench<'_> {
    /// The places of a point, one on each straight run it lies on.
    pub fn probes(&self, point: &PlanPoint) -> Vec<Probe> {
        let plan = &self.prepared.frame.plan;
        let p = self.inside(point);
        let mut out = Vec::new();
        for (r, run) in plan.runs.iter().enumerate() {
            let way = run.start.to(p);
            let at = way.dot(run.direction);
            let near = crate::layout::plan::TOLERANCE;
            if way.cross(run.direction).abs() <= near && at >= -near && at <= run.length + near {
                let at = at.clamp(0.0, run.length);
                let beam = run.beam_at(at);
                out.push(Probe { beam, run: r, at });
            }
        }
        out
    }
}

/// The moments at each place.
pub(super) fn moments(analysis: &Analysis<'_>, probes: &[Probe]) -> Vec<Probed> {
    let mut out = vec![Probed::default(); probes.len()];
    for model in analysis.solved {
        for (r, line) in model.network.lines.iter().enumerate() {
            if probes.iter().all(|p| p.run != r) {
                continue;
            }
            for combination in &analysis.loading.combinations {
                let own = &model.solution.lines[r];
                own.walk(line, &combination.factors, |piece| {
                    for (probe, found) in probes.iter().zip(&mut out) {
                        if probe.run == r && piece.from <= probe.at && probe.at <= piece.to {
                            let moment = piece.moment_at(probe.at - piece.from);
                            found.sagging = found.sagging.max(moment);
                            found.hogging = found.hogging.max(-moment);
                        }
                    }
                });
            }
        }
    }
    out
}
