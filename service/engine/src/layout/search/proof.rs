//! What a search can claim of the number of piles: the arguments of the single runs, those
//! beside them, and their words.

use super::close::Parts;
use super::line::RunLayout;
use super::stack::Line;
use super::whole::{Whole, places};
use super::{Task, claim};
use crate::contract::Work;
use crate::layout::equations::load_bound;
use crate::layout::outcome::{ProofKind, ProofStep, SearchReport};
use crate::quantity::{Force, round9};

/// What can be claimed.
pub(super) fn report(
    task: &Task<'_>,
    parts: &Parts,
    lines: &[Line],
    layouts: &[RunLayout],
    whole: &Whole,
    work: &mut Work,
) -> SearchReport {
    let count = places(task.frame, lines, &whole.chosen).len();
    let mut how = Vec::new();
    let mut own = 0;
    for (line, layout) in lines.iter().zip(layouts) {
        let p = &line.places;
        if parts.coupled[p.run] {
            continue;
        }
        let shared = p.meeting.iter().filter(|m| m.is_some()).count();
        own += layout.lower - shared.min(layout.lower);
        how.push(ProofStep {
            by: layout.by,
            beams: task.frame.plan.runs[p.run]
                .beams()
                .into_iter()
                .map(|b| task.beam_labels[b].clone())
                .collect(),
            pile_count: whole.chosen[p.run].len() as u32,
            lower_bound_count: layout.lower as u32,
            detail: detail(layout),
        });
        how.extend(claim::step(task, line, layout, whole.chosen[p.run].len()));
    }
    let mut lower = own + parts.plain_meetings(task);
    lower += shared_pile_bound(task, whole, lower, count, &mut how);
    let by_load = plan_load_bound(task, lines, work);
    if by_load > lower {
        lower = by_load;
        how.push(ProofStep {
            by: ProofKind::LoadBound,
            beams: Vec::new(),
            pile_count: count as u32,
            lower_bound_count: by_load as u32,
            detail: format!("the load of the plan needs {by_load} piles at their capacity"),
        });
    }
    let feasible = whole.keeps();
    if whole.added && count > lower {
        how.push(ProofStep {
            by: ProofKind::WholePlan,
            beams: Vec::new(),
            pile_count: count as u32,
            lower_bound_count: lower as u32,
            detail: "piles were added for what runs bring to shared piles, for spring supports or for distances between runs; it is not proven that fewer cannot do".to_owned(),
        });
    }
    SearchReport {
        feasible,
        proven_minimal: feasible && count == lower,
        how,
        lower_bound_count: lower as u32,
        gap_count: count.saturating_sub(lower) as u32,
        work_count: 0,
        work_limit_count: 0,
        utilisation_searched_exhaustively: layouts.iter().all(|l| l.exhaustive)
            && !whole.added
            && task.absent.is_none(),
        cost: None,
        without_pile: None,
        symmetry: None,
        infeasible: None,
    }
}

/// Piles that shared piles need in addition: proven ones whose runs do not overlap, the
/// largest first.
fn shared_pile_bound(
    task: &Task<'_>,
    whole: &Whole,
    lower: usize,
    count: usize,
    how: &mut Vec<ProofStep>,
) -> usize {
    let mut sum = 0;
    for (runs, extra) in disjoint(&whole.proven) {
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

/// Proven needs of shared piles whose runs do not overlap, the largest first.
pub(super) fn disjoint(proven: &[(Vec<usize>, usize)]) -> Vec<&(Vec<usize>, usize)> {
    let mut sorted: Vec<&(Vec<usize>, usize)> = proven.iter().filter(|p| p.1 > 0).collect();
    sorted.sort_by(|a, b| b.1.cmp(&a.1).then(a.0.cmp(&b.0)));
    let mut taken: Vec<usize> = Vec::new();
    sorted.retain(|(runs, _)| {
        let free = !runs.iter().any(|r| taken.contains(r));
        if free {
            taken.extend(runs);
        }
        free
    });
    sorted
}

/// Fewest piles whose capacity reaches the heaviest load of the plan.
fn plan_load_bound(task: &Task<'_>, lines: &[Line], work: &mut Work) -> usize {
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
fn detail(layout: &RunLayout) -> String {
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
