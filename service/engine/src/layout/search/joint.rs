//! Shared piles that carry too much when every run has its fewest piles: how many piles
//! more the runs that meet there need at least, and layouts that spare the shared pile.

use std::collections::BTreeMap;

use super::bounds::Bounds;
use super::enumerate::{Aim, Budget, End, Target, run};
use super::stack::{Line, Stack};
use crate::contract::{Refusal, Work};

/// Piles that are added at most to the runs at one shared pile.
const EXTRA_MAX: usize = 3;
/// Runs that may meet at a shared pile for this to be worth its work.
const RUNS_MAX: usize = 6;
/// Share of the work that one enumeration may take.
const PART: u64 = 8;

/// What a run brings at least to a shared pile with a given number of piles.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Share {
    /// The layout that brings least; none where no layout keeps the run's own limits.
    pub layout: Option<(Vec<usize>, f64)>,
    /// Whether every layout was tried.
    pub exact: bool,
}

/// Shares that were found before: by run, number of piles and target.
pub(super) type Shares = BTreeMap<(usize, usize, Target), Share>;

/// A shared pile that fails.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Conflict {
    pub meeting: usize,
    pub combination: usize,
    pub tension: bool,
    /// The runs that meet there, with the place on each.
    pub on: Vec<(usize, usize)>,
}

/// What is known of a conflict.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Resolved {
    /// Piles that the runs need in addition to their fewest, proven.
    pub extra: usize,
    /// Layouts of the runs to try, in order.
    pub options: Vec<Vec<(usize, Vec<usize>)>>,
}

/// Works out a conflict: adds one pile more after the other until the least shares fit.
pub(super) fn resolve(
    conflict: &Conflict,
    lines: &[Line],
    fewest: &[usize],
    shares: &mut Shares,
    budget: &mut Budget,
    work: &Work,
) -> Result<Resolved, Refusal> {
    let (run, place) = conflict.on[0];
    let line = &lines[run];
    let limit = if conflict.tension {
        line.class(place).tension
    } else {
        line.class(place).compression
    };
    let allowed = limit * (1.0 + 5e-9) + line.floor[conflict.combination];
    let mut out = Resolved {
        extra: 0,
        options: Vec::new(),
    };
    let mut proving = conflict.on.len() <= RUNS_MAX;
    if !proving {
        return Ok(out);
    }
    for extra in 0..=EXTRA_MAX {
        for more in splits(extra, conflict.on.len()) {
            let mut sum = 0.0;
            let mut exact = true;
            let mut layouts = Vec::new();
            for ((run, place), more) in conflict.on.iter().zip(&more) {
                let target = Target {
                    place: *place,
                    combination: conflict.combination,
                    tension: conflict.tension,
                };
                let count = fewest[*run] + more;
                let share = share(lines, *run, count, target, shares, budget, work)?;
                exact &= share.exact;
                match share.layout {
                    Some((chosen, value)) => {
                        sum += value;
                        layouts.push((*run, chosen));
                    }
                    None => sum = f64::INFINITY,
                }
            }
            let fits = sum <= allowed;
            proving &= exact && !fits;
            if fits && layouts.len() == conflict.on.len() {
                out.options.push(layouts);
            }
        }
        if proving {
            out.extra = extra + 1;
        }
        if !out.options.is_empty() || !budget.left() {
            break;
        }
    }
    Ok(out)
}

/// Ways to split a number into so many parts.
fn splits(number: usize, parts: usize) -> Vec<Vec<usize>> {
    if parts == 1 {
        return vec![vec![number]];
    }
    (0..=number)
        .rev()
        .flat_map(|first| {
            splits(number - first, parts - 1)
                .into_iter()
                .map(move |mut rest| {
                    rest.insert(0, first);
                    rest
                })
        })
        .collect()
}

fn share(
    lines: &[Line],
    index: usize,
    count: usize,
    target: Target,
    shares: &mut Shares,
    budget: &mut Budget,
    work: &Work,
) -> Result<Share, Refusal> {
    if let Some(known) = shares.get(&(index, count, target)) {
        return Ok(known.clone());
    }
    let line = &lines[index];
    let bounds = Bounds::of(line);
    let mut own = Budget {
        spent: 0,
        limit: budget.limit.saturating_sub(budget.spent) / PART,
    };
    let aim = Aim::Share(target);
    let end = run(line, &bounds, count, aim, None, &mut own, work)?;
    budget.take(own.spent);
    let (best, exact) = match end {
        End::All(best) => (best, true),
        End::Spent(best) => (best, false),
        End::Found(best) => (Some(best), false),
    };
    let layout = best.map(|best| {
        let mut stack = Stack::new(best.chosen.len(), line.loads.count);
        for place in &best.chosen {
            stack.push(line, *place);
        }
        let r = stack.reaction_at(line, target.place, target.combination);
        (best.chosen, if target.tension { -r } else { r })
    });
    let found = Share { layout, exact };
    shares.insert((index, count, target), found.clone());
    Ok(found)
}
