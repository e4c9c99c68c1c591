//! Spans between neighbouring piles of a run, and what lies free beyond the last ones.

use super::analysis::above;
use super::plan::{Place, Plan};
use super::site::along_runs;

/// Two neighbouring piles along a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Span {
    pub run: usize,
    pub from: f64,
    pub length: f64,
    pub piles: (usize, usize),
}

/// All spans between neighbouring piles.
pub(super) fn spans(plan: &Plan, places: &[Place]) -> Vec<Span> {
    let mut out = Vec::new();
    for (run, own) in along_runs(plan, places).iter().enumerate() {
        out.extend(own.windows(2).map(|p| Span {
            run,
            from: p[0].0,
            length: p[1].0 - p[0].0,
            piles: (p[0].1, p[1].1),
        }));
    }
    out
}

/// The run with the longest free end beyond its last pile, and that length.
pub(super) fn longest_overhang(plan: &Plan, places: &[Place]) -> Option<(usize, f64)> {
    let mut worst: Option<(usize, f64)> = None;
    for (r, own) in along_runs(plan, places).iter().enumerate() {
        let run = &plan.runs[r];
        let (Some(first), Some(last)) = (own.first(), own.last()) else {
            continue;
        };
        let meets = |at: f64| run.meetings.iter().any(|m| m.at == at);
        for (over, free) in [
            (first.0, !meets(0.0)),
            (run.length - last.0, !meets(run.length)),
        ] {
            if free && over > 0.0 && worst.is_none_or(|w| above(over, w.1)) {
                worst = Some((r, over));
            }
        }
    }
    worst
}
