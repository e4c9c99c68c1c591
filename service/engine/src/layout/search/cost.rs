//! Least cost of the piles of a run: what a branch costs at least, whatever follows, and
//! the search over the numbers of piles. Piles that carry other runs too are not counted
//! here.

use super::bounds::Bounds;
use super::enumerate::{Aim, Best, Budget, End, NEAR, Search, cheaper, run};
use super::line::guess;
use super::stack::Line;
use crate::contract::{Refusal, Work};
use crate::layout::types::Demand;

/// Numbers of piles without any gain after which no more good layouts are looked for.
const PATIENCE: usize = 3;

/// Costs along a growing layout, one entry a pile that was placed last.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Costs {
    /// Least cost of the piles that are too far back to be looked at again.
    settled: Vec<f64>,
    /// Least cost of the farthest pile that was looked at.
    oldest: Vec<f64>,
}

impl Costs {
    /// Room for so many piles.
    pub fn new(piles: usize) -> Self {
        Self {
            settled: vec![0.0; piles + 1],
            oldest: vec![0.0; piles + 1],
        }
    }
}

impl Search<'_> {
    /// Whether some completion may cost less than the layout at hand.
    ///
    /// Each pile that is placed costs at least the cheapest type that can carry the least
    /// of its load over the range of the moment at the last pile, in every combination;
    /// those far back keep what they cost when they were near, which holds for every
    /// completion of that branch. The rest costs what its load costs at least.
    pub fn may_cost_less(&mut self, k: usize) -> bool {
        let mut demand = [Demand::default(); NEAR];
        let mut room = 0.0f64;
        let mut ranges = Vec::with_capacity(self.line.loads.count);
        for c in 0..self.line.loads.count {
            let range = self.moment_range(k, c);
            room = room.max(self.line.floor[c]);
            self.placed(k, c, |d, r| {
                let (x, y) = (r.0 + r.1 * range.0, r.0 + r.1 * range.1);
                let own = &mut demand[k - 1 - d];
                own.compression = own.compression.max(x.min(y));
                own.tension = own.tension.max(-x.max(y));
                true
            });
            ranges.push(range);
        }
        let mut cost = self.costs.settled[k - 1] + self.costs.oldest[k - 1];
        self.costs.settled[k] = cost;
        self.costs.oldest[k] = 0.0;
        for (back, need) in demand.iter().enumerate().take(k) {
            let place = self.stack.chosen[k - 1 - back];
            if self.line.places.meeting[place].is_some() {
                continue;
            }
            let least = self.line.class(place).least_cost(*need, room);
            cost += least;
            if back + 1 == NEAR {
                self.costs.oldest[k] = least;
            }
        }
        let last = self.stack.chosen[k];
        let rest = |c: usize| self.rest(k, c, ranges[c]);
        cost += self
            .bounds
            .least_cost(self.line, last, self.count - k, rest);
        cheaper(cost, self.dearest())
    }
}

/// The cheapest layout that was found and what no layout can cost less than.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cheapest {
    pub best: Option<Best>,
    pub lower: f64,
    /// No layout of the run can cost less than the best one.
    pub proven: bool,
}

/// Makes a run as cheap as the work limit allows, with `fewest` piles or more.
pub(super) fn cheapest(
    line: &Line,
    bounds: &Bounds,
    fewest: usize,
    at_hand: Option<Best>,
    budget: &mut Budget,
    work: &Work,
) -> Result<Cheapest, Refusal> {
    let most = line.places.range().1;
    let floor = |n: usize| bounds.least_cost(line, 0, n, |c| line.loads.total[c]);
    let cost = |best: &Option<Best>| best.as_ref().map_or(f64::INFINITY, |b| b.cost);
    let mut best = at_hand.filter(|b| b.cost.is_finite());
    // good layouts first, so that branches are cut early
    let mut idle = 0;
    for n in fewest..=most {
        work.go_on()?;
        if idle == PATIENCE || !budget.left() {
            break;
        }
        let better = cheaper(floor(n), cost(&best));
        let found = better.then(|| guess(line, n, budget)).flatten();
        match found.filter(|f| cheaper(f.cost, cost(&best))) {
            Some(found) => (best, idle) = (Some(found), 0),
            None => idle += 1,
        }
    }
    // then every number that could cost less
    let mut lower = f64::INFINITY;
    for n in fewest..=most {
        work.go_on()?;
        if !cheaper(floor(n), cost(&best)) {
            continue;
        }
        if !budget.left() {
            lower = lower.min(floor(n));
            continue;
        }
        match run(line, bounds, n, Aim::Cost, best.clone(), budget, work)? {
            End::All(found) => best = found,
            End::Spent(found) => {
                best = found;
                lower = lower.min(floor(n));
            }
            End::Found(found) => best = Some(found),
        }
    }
    let proven = !cheaper(lower, cost(&best));
    Ok(Cheapest {
        lower: lower.min(cost(&best)),
        proven,
        best,
    })
}
