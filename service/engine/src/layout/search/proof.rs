//! Arguments for the number of piles beside those of the single runs, and their words.

use super::Task;
use super::line::RunLayout;
use super::stack::Line;
use super::whole::Whole;
use crate::contract::Work;
use crate::layout::equations::load_bound;
use crate::layout::outcome::{ProofKind, ProofStep};
use crate::quantity::{Force, round9};

/// Piles that shared piles need in addition: proven ones whose runs do not overlap, the
/// largest first.
pub(super) fn shared_pile_bound(
    task: &Task<'_>,
    whole: &Whole,
    lower: usize,
    count: usize,
    how: &mut Vec<ProofStep>,
) -> usize {
    let mut proven: Vec<&(Vec<usize>, usize)> = whole.proven.iter().filter(|p| p.1 > 0).collect();
    proven.sort_by(|a, b| b.1.cmp(&a.1).then(a.0.cmp(&b.0)));
    let mut taken: Vec<usize> = Vec::new();
    let mut sum = 0;
    for (runs, extra) in proven {
        if runs.iter().any(|r| taken.contains(r)) {
            continue;
        }
        taken.extend(runs);
        sum += extra;
        let mut beams: Vec<usize> = runs
            .iter()
            .flat_map(|r| task.frame.plan.runs[*r].beams())
            .collect();
        beams.sort_unstable();
        beams.dedup();
        how.push(ProofStep {
            by: ProofKind::SharedPile,
            beams: beams.into_iter().map(|b| task.beam_labels[b].clone()).collect(),
            pile_count: count as u32,
            lower_bound_count: (lower + sum) as u32,
            detail: format!(
                "the pile that these runs share carries too much unless they have {extra} more than each needs for itself"
            ),
        });
    }
    sum
}

/// Fewest piles whose capacity reaches the heaviest load of the plan.
pub(super) fn plan_load_bound(task: &Task<'_>, lines: &[Line], work: &mut Work) -> usize {
    let most = lines
        .iter()
        .flat_map(|l| l.places.class.iter().map(|c| l.classes[*c].compression))
        .fold(0.0, f64::max);
    let heaviest = task
        .combinations
        .iter()
        .map(|c| task.frame.total_load(&c.factors).0)
        .fold(0.0, f64::max);
    work.trace.about(|| "whole plan".to_owned());
    let n = load_bound(
        Force::from_si(heaviest),
        Force::from_si(most),
        &mut work.trace,
    );
    // what prints as a whole number is one
    round9(n).ceil() as usize
}

/// The argument for one run, in words.
pub(super) fn detail(layout: &RunLayout) -> String {
    let (spacing, load) = layout.bounds;
    let bounds = format!("at least {spacing} piles by spacing and {load} by load");
    if !layout.keeps() {
        let used = layout.best.rating.own;
        let how = if used.is_finite() {
            format!(
                "the best found is used to {} times its capacity",
                round9(used)
            )
        } else {
            "the best found leaves a pile in tension that may have none".to_owned()
        };
        return format!(
            "{bounds}; no layout with up to {} piles was found that keeps the limits, {how}",
            layout.tried
        );
    }
    match layout.by {
        ProofKind::Enumeration => format!(
            "{bounds}; every layout with {} piles breaks a limit",
            layout.lower - 1
        ),
        ProofKind::WorkLimit => format!(
            "{bounds}; the work limit came before all layouts with {} piles were tried",
            layout.lower
        ),
        _ => bounds,
    }
}
