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

/// What no layout costs less than: the piles that carry each run only, and the pile at
/// each meeting.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Least {
    pub own: Vec<f64>,
    pub shared: Vec<f64>,
}

impl Least {
    /// By the runs, and at every meeting by the cheapest type that can carry the least that
    /// the runs bring there.
    pub fn of(task: &Task<'_>, lines: &[Line], layouts: &[RunLayout]) -> Self {
        let mut brought = vec![vec![(0.0, 0.0); task.combinations.len()]; task.barred.len()];
        let mut ground = vec![None; task.barred.len()];
        for line in lines {
            let meets = line.places.meeting.iter().enumerate();
            let meets: Vec<(usize, usize)> = meets.filter_map(|(i, m)| m.map(|m| (i, m))).collect();
            if meets.is_empty() {
                continue;
            }
            let bounds = Bounds::of(line);
            for (i, m) in meets {
                for (sum, s) in brought[m].iter_mut().zip(bounds.share_range(line, i)) {
                    *sum = (sum.0 + s.0, sum.1 + s.1);
                }
                ground[m] = Some((line, i));
            }
        }
        let shared = ground.iter().zip(&brought).map(|(ground, sums)| {
            let mut demand = Demand::default();
            for (least, most) in sums {
                demand.compression = demand.compression.max(*least);
                demand.tension = demand.tension.max(-most);
            }
            ground.map_or(0.0, |(line, i)| price(line, i, demand))
        });
        Self {
            shared: shared.collect(),
            own: layouts
                .iter()
                .map(|l| l.cost.map_or(0.0, |c| c.0))
                .collect(),
        }
    }

    /// For the whole plan.
    pub fn sum(&self) -> f64 {
        self.own.iter().chain(&self.shared).sum()
    }
}

/// Least cost of a pile that carries a demand or more.
pub(super) fn price(line: &Line, place: usize, demand: Demand) -> f64 {
    let room = line.floor.iter().copied().fold(0.0, f64::max);
    line.class(place).least_cost(demand, room)
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
