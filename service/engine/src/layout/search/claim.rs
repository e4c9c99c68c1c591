//! What a search for least cost can claim.

use super::Task;
use super::bounds::Bounds;
use super::enumerate::cheaper;
use super::line::RunLayout;
use super::stack::Line;
use crate::contract::Work;
use crate::layout::codes::warnings;
use crate::layout::outcome::{CostReport, ProofKind, ProofStep, SearchReport};
use crate::layout::site::Pile;
use crate::layout::types::{Demand, Terrain, money, total};

/// Cost that no layout of the plan is below: own piles of the runs, and at every meeting
/// the cheapest type that can carry the least that the runs bring there.
pub(super) fn least(lines: &[Line], layouts: &[RunLayout]) -> f64 {
    let own: f64 = layouts.iter().filter_map(|l| l.cost).map(|c| c.0).sum();
    // least and most that the runs bring to each meeting, in each combination
    let mut brought: Vec<Option<(usize, usize, Vec<(f64, f64)>)>> = Vec::new();
    for (l, line) in lines.iter().enumerate() {
        let meets = line.places.meeting.iter().enumerate();
        let meets: Vec<(usize, usize)> = meets.filter_map(|(i, m)| m.map(|m| (i, m))).collect();
        if meets.is_empty() {
            continue;
        }
        let bounds = Bounds::of(line);
        for (i, m) in meets {
            let share = bounds.share_range(line, i);
            if brought.len() <= m {
                brought.resize(m + 1, None);
            }
            match &mut brought[m] {
                Some((_, _, sums)) => {
                    for (sum, s) in sums.iter_mut().zip(share) {
                        *sum = (sum.0 + s.0, sum.1 + s.1);
                    }
                }
                slot => *slot = Some((l, i, share)),
            }
        }
    }
    let shared: f64 = brought
        .iter()
        .flatten()
        .map(|(l, place, sums)| {
            let line = &lines[*l];
            let mut demand = Demand::default();
            for (least, most) in sums {
                demand.compression = demand.compression.max(*least);
                demand.tension = demand.tension.max(-most);
            }
            let room = line.floor.iter().copied().fold(0.0, f64::max);
            line.class(*place).least_cost(demand, room)
        })
        .sum();
    own + shared
}

/// The argument for the cost of one run.
pub(super) fn step(
    task: &Task<'_>,
    line: &Line,
    layout: &RunLayout,
    piles: usize,
) -> Option<ProofStep> {
    let (least, proven) = layout.cost?;
    let runs = &task.frame.plan.runs[line.places.run];
    let sum = if least.is_finite() {
        let cost = money(task.terrain, least);
        let currency = cost.currency.map_or_else(String::new, |c| format!(" {c}"));
        format!("{}{currency}", cost.value)
    } else {
        "more than any layout".to_owned()
    };
    Some(ProofStep {
        by: if proven {
            ProofKind::CostEnumeration
        } else {
            ProofKind::WorkLimit
        },
        beams: runs
            .beams()
            .into_iter()
            .map(|b| task.beam_labels[b].clone())
            .collect(),
        pile_count: piles as u32,
        lower_bound_count: layout.lower as u32,
        detail: format!("the piles that carry this run only cost at least {sum}"),
    })
}

/// Writes what can be claimed of the cost, once every pile has its type.
pub(in crate::layout) fn cost(
    report: &mut SearchReport,
    least: f64,
    terrain: &Terrain,
    piles: &[Pile],
    work: &mut Work,
) {
    let Some(sum) = total(terrain, piles) else {
        return;
    };
    let proven = report.feasible && !cheaper(least, sum);
    let least = if proven || !least.is_finite() {
        sum
    } else {
        least
    };
    report.proven_minimal = proven;
    let gap = if report.feasible {
        (sum - least).max(0.0)
    } else {
        0.0
    };
    report.cost = Some(CostReport {
        total_cost: money(terrain, sum),
        lower_bound_cost: money(terrain, least),
        gap_cost: money(terrain, gap),
    });
    if report.feasible && !proven {
        work.warn(
            &warnings::SEARCH_NOT_PROVEN,
            format!(
                "the piles found cost {}; at least {} are needed",
                money(terrain, sum).value,
                money(terrain, least).value
            ),
        );
    }
}
