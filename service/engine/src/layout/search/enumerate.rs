//! Every layout of a run with a given number of piles, depth first from left to right.
//! A branch is cut only where the bounds show that no completion can do. Decides nothing
//! about which number to try.

use super::bounds::Bounds;
use super::cost::Costs;
use super::stack::{Line, Rating, Stack};
use crate::contract::{Refusal, Work};
use crate::quantity::round9;

/// Work that has been spent, and its limit. One step places or rates one pile in one
/// combination.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Budget {
    pub spent: u64,
    pub limit: u64,
}

impl Budget {
    /// Takes steps; false once the limit is reached.
    pub fn take(&mut self, steps: u64) -> bool {
        self.spent += steps;
        self.spent <= self.limit
    }

    pub fn left(&self) -> bool {
        self.spent < self.limit
    }
}

/// A layout with what it is compared by.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Best {
    pub chosen: Vec<usize>,
    pub rating: Rating,
    key: (f64, f64),
    /// Spans that read the same from both ends.
    even: bool,
    /// Cost of its own piles where costs count and its own limits are kept, else none.
    pub cost: f64,
}

/// Whether one cost is below another by more than rounding.
pub(super) fn cheaper(cost: f64, other: f64) -> bool {
    cost < other && (other == f64::INFINITY || other - cost > 1e-9 * other)
}

impl Best {
    /// A layout with its rating; compared by its cost where costs count, then by the
    /// printed utilisation, then the sum of squared spans.
    pub fn of(line: &Line, chosen: Vec<usize>, rating: Rating) -> Self {
        let length = |p: &[usize]| line.places.at[p[1]] - line.places.at[p[0]];
        let squares = chosen.windows(2).map(|p| length(p) * length(p)).sum();
        let mut ends = chosen.windows(2).zip(chosen.windows(2).rev());
        let even = ends.all(|(a, b)| (length(a) - length(b)).abs() <= 1e-9);
        Self {
            key: (round9(rating.all), squares),
            cost: match (line.costed, round9(rating.own) <= 1.0) {
                (false, _) => 0.0,
                (true, true) => rating.cost,
                (true, false) => f64::INFINITY,
            },
            even,
            chosen,
            rating,
        }
    }

    /// Whether it is better than another: lower cost where that counts, lower utilisation,
    /// then more equal spans, then one that is its own mirror image, then the first in order
    /// of position.
    pub fn beats(&self, other: &Self) -> bool {
        if cheaper(self.cost, other.cost) {
            return true;
        }
        if cheaper(other.cost, self.cost) {
            return false;
        }
        if self.key.0 != other.key.0 {
            return self.key.0 < other.key.0;
        }
        if (self.key.1 - other.key.1).abs() > 1e-9 * other.key.1 {
            return self.key.1 < other.key.1;
        }
        if self.even != other.even {
            return self.even;
        }
        self.chosen < other.chosen
    }
}

/// What an enumeration is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Aim {
    /// Is there any layout that the run's own piles and the beam allow? What other runs
    /// bring to shared piles is unknown, so those are not limited.
    Any,
    /// The best layout, better than the one at hand.
    Best,
    /// Of those that [`Aim::Any`] looks for, the one whose own piles cost least, less than
    /// the one at hand.
    Cost,
    /// Of those that [`Aim::Any`] looks for, the one that brings least to a shared place.
    Share(Target),
}

/// What a shared place gets of the run in one combination, to be as little as possible.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Target {
    pub place: usize,
    pub combination: usize,
    /// Least tension instead of least compression.
    pub tension: bool,
}

impl Target {
    fn of(&self, reaction: f64) -> f64 {
        if self.tension { -reaction } else { reaction }
    }
}

/// How an enumeration ended.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum End {
    /// Every layout has been tried or cut; the one found, if any.
    All(Option<Best>),
    /// [`Aim::Any`] found one.
    Found(Best),
    /// The work limit came first; the best so far, if any.
    Spent(Option<Best>),
}

/// Piles before the last one that are looked at.
pub(super) const NEAR: usize = 4;

/// Passing with rounding: what prints as 1 passes.
const PASS: f64 = 1.0 + 5e-9;

/// Runs through the layouts with `count` piles.
pub(super) fn run(
    line: &Line,
    bounds: &Bounds,
    count: usize,
    aim: Aim,
    at_hand: Option<Best>,
    budget: &mut Budget,
    work: &Work,
) -> Result<End, Refusal> {
    let wanted = Wanted {
        line,
        bounds,
        count,
        aim,
        below: f64::INFINITY,
    };
    enumerate(wanted, at_hand, budget, work)
}

/// What is to be enumerated.
#[derive(Clone, Copy)]
pub(super) struct Wanted<'a> {
    pub line: &'a Line,
    pub bounds: &'a Bounds,
    pub count: usize,
    pub aim: Aim,
    /// Cost that the piles which carry this run only must stay below.
    pub below: f64,
}

/// Runs through the layouts that are wanted.
pub(super) fn enumerate(
    wanted: Wanted<'_>,
    at_hand: Option<Best>,
    budget: &mut Budget,
    work: &Work,
) -> Result<End, Refusal> {
    let Wanted {
        line,
        bounds,
        count,
        aim,
        below,
    } = wanted;
    let mut search = Search {
        line,
        bounds,
        count,
        aim,
        best: at_hand,
        share: f64::INFINITY,
        stack: Stack::new(count, line.loads.count),
        turn: (0..line.loads.count).collect(),
        costs: Costs::new(count),
        below,
    };
    let steps = line.loads.count as u64;
    // the next place to try at every depth
    let mut cursor = vec![(0usize, line.places.first)];
    let mut ticks = 0u32;
    while let Some((next, end)) = cursor.last_mut() {
        if *next >= *end {
            cursor.pop();
            search.stack.pop();
            continue;
        }
        let place = *next;
        *next += 1;
        let depth = search.stack.chosen.len();
        if !search.can_finish(place, depth) {
            continue;
        }
        if !budget.take(steps) {
            return Ok(End::Spent(search.best));
        }
        ticks += 1;
        if ticks.is_multiple_of(4096) {
            work.go_on()?;
        }
        search.stack.push(line, place);
        if depth + 1 == count {
            let found = search.leaf();
            search.stack.pop();
            if let Some(found) = found {
                return Ok(End::Found(found));
            }
        } else if search.promising() {
            cursor.push(line.places.next[place]);
        } else {
            search.stack.pop();
        }
    }
    Ok(End::All(search.best))
}

/// An enumeration under way.
pub(super) struct Search<'a> {
    pub line: &'a Line,
    pub bounds: &'a Bounds,
    pub count: usize,
    aim: Aim,
    pub best: Option<Best>,
    /// Least share of the target so far.
    share: f64,
    pub stack: Stack,
    /// Combinations, the one that last cut a branch first.
    turn: Vec<usize>,
    pub costs: Costs,
    /// Cost that the piles which carry this run only must stay below.
    pub below: f64,
}

impl Search<'_> {
    /// Whether the piles that are left lead from here to the end within the spacing.
    fn can_finish(&self, place: usize, depth: usize) -> bool {
        let left = (self.count - depth) as u32;
        let p = &self.line.places;
        p.reaches(place) && p.fewest[place] <= left && p.most[place] >= left
    }

    /// The utilisation that must not be exceeded.
    fn limit(&self) -> f64 {
        match (self.aim, &self.best) {
            (Aim::Any | Aim::Cost | Aim::Share(_), _) => PASS,
            (Aim::Best, Some(best)) => best.rating.all.max(1e-6) * (1.0 + 1e-8),
            (Aim::Best, None) => f64::INFINITY,
        }
    }

    /// Cost that a layout has to stay below to be of use.
    pub fn dearest(&self) -> f64 {
        match (&self.aim, &self.best) {
            (Aim::Cost, Some(best)) => self.below.min(best.cost),
            _ => self.below,
        }
    }

    fn leaf(&mut self) -> Option<Best> {
        if self
            .stack
            .chosen
            .last()
            .is_none_or(|p| *p < self.line.places.last)
        {
            return None;
        }
        let limit = self.limit();
        let rating = self
            .stack
            .rate_below(self.line, limit, self.aim == Aim::Best)?;
        let found = Best::of(self.line, self.stack.chosen.clone(), rating);
        match self.aim {
            Aim::Any => (round9(rating.own) <= 1.0).then_some(found),
            Aim::Best => {
                if self.best.as_ref().is_none_or(|b| found.beats(b)) {
                    self.best = Some(found);
                }
                None
            }
            Aim::Cost => {
                if cheaper(found.cost, self.dearest()) {
                    self.best = Some(found);
                }
                None
            }
            Aim::Share(target) => {
                let r = self
                    .stack
                    .reaction_at(self.line, target.place, target.combination);
                let share = target.of(r);
                let below = self.below == f64::INFINITY || cheaper(found.cost, self.below);
                if below && share < self.share && round9(rating.own) <= 1.0 {
                    self.share = share;
                    self.best = Some(found);
                }
                None
            }
        }
    }

    /// Whether some completion may keep within the limit.
    fn promising(&mut self) -> bool {
        let limit = self.limit();
        let k = self.stack.chosen.len() - 1;
        if k == 0 || limit == f64::INFINITY {
            return true;
        }
        let cut = self.turn.iter().position(|c| {
            let range = self.moment_range(k, *c);
            !(self.rest_can_carry(k, *c, range, limit)
                && self.placed_can_carry(k, *c, range, limit))
        });
        if let Some(i) = cut {
            self.turn[..=i].rotate_right(1);
        }
        let costs_count = self.aim == Aim::Cost || self.below < f64::INFINITY;
        cut.is_none() && (!costs_count || self.may_cost_less(k))
    }

    /// Lowest and highest moment at the last pile, whatever follows.
    ///
    /// Its three-moment equation gives M = -(N + f (t + M_r))/(D + 2 f), N and D from the
    /// left, f, t = T/(EI f) and M_r of the next span; that is monotone in f, so the ends
    /// of its range suffice.
    pub fn moment_range(&self, k: usize, c: usize) -> (f64, f64) {
        let s = &self.stack;
        let (lo, hi) = self.bounds.moment[c];
        let fl = s.flexibility[k - 1];
        let n = s.spans[k - 1].at_right[c] / s.rigidity[k - 1] + fl * s.alpha[k - 1][c];
        let d = fl * (s.beta[k - 1] + 2.0);
        let (least, most) = self.bounds.term[c];
        let (short, long) = self.bounds.flexibility;
        let at = |f: f64, t: f64| -(n + f * t) / (d + 2.0 * f);
        let low = at(short, most + hi).min(at(long, most + hi));
        let high = at(short, least + lo).max(at(long, least + lo));
        (lo.max(low), hi.min(high))
    }

    /// Whether the piles that are left, this one included, can carry what is left.
    ///
    /// Sum of reactions to the left = W_left + V, V = (M_k - M_(k-1))/L - (simple
    /// reaction), so the rest is W - W_left - V; least where M_k is highest. Source:
    /// statics.
    fn rest_can_carry(&self, k: usize, c: usize, range: (f64, f64), limit: f64) -> bool {
        let s = &self.stack;
        let rest = self.rest(k, c, range);
        let piles = self.count - k;
        let capacity = match self.aim {
            Aim::Any | Aim::Cost | Aim::Share(_) => {
                self.bounds.capacity(s.chosen[k], piles, c, limit)
            }
            Aim::Best => piles as f64 * limit * self.bounds.most[s.chosen[k]],
        };
        rest <= capacity + self.line.floor[c]
    }

    /// Least load that is left for the last pile and those that follow.
    pub fn rest(&self, k: usize, c: usize, range: (f64, f64)) -> f64 {
        let s = &self.stack;
        let v = (range.1 * (1.0 - s.beta[k - 1]) - s.alpha[k - 1][c]) / s.length[k - 1]
            - s.spans[k - 1].right[c];
        self.line.loads.total[c] - s.left[k][c] - v
    }

    /// Whether the piles before the last one can keep within the limit.
    fn placed_can_carry(&self, k: usize, c: usize, range: (f64, f64), limit: f64) -> bool {
        let place = |d: usize| self.stack.chosen[d];
        self.placed(k, c, |d, r| self.allowed(place(d), r, range, c, limit))
    }

    /// Visits the piles before the last one, at most four of them from the last backwards,
    /// until a visit says no: each reaction is linear in the moment at the last pile, and
    /// is handed over by its constant and its slope.
    pub fn placed(
        &self,
        k: usize,
        c: usize,
        mut visit: impl FnMut(usize, (f64, f64)) -> bool,
    ) -> bool {
        let s = &self.stack;
        // M(d) = a + b M(k), from the last pile backwards
        let mut after = (0.0, 1.0);
        let mut here = (s.alpha[k - 1][c], s.beta[k - 1]);
        let mut d = k - 1;
        let mut steps = 0;
        loop {
            let slope = (
                (after.0 - here.0) / s.length[d],
                (after.1 - here.1) / s.length[d],
            );
            let right = (slope.0 + s.spans[d].total[c] - s.spans[d].right[c], slope.1);
            let (left, before) = if d == 0 {
                ((-s.left[0][c], 0.0), here)
            } else {
                let before = (
                    s.alpha[d - 1][c] + s.beta[d - 1] * here.0,
                    s.beta[d - 1] * here.1,
                );
                let left = (
                    (here.0 - before.0) / s.length[d - 1] - s.spans[d - 1].right[c],
                    (here.1 - before.1) / s.length[d - 1],
                );
                (left, before)
            };
            let r = (s.on[d][c] + right.0 - left.0, right.1 - left.1);
            if !visit(d, r) {
                return false;
            }
            steps += 1;
            if d == 0 || steps == NEAR {
                return true;
            }
            (after, here, d) = (here, before, d - 1);
        }
    }

    fn allowed(
        &self,
        place: usize,
        r: (f64, f64),
        range: (f64, f64),
        c: usize,
        limit: f64,
    ) -> bool {
        let (x, y) = (r.0 + r.1 * range.0, r.0 + r.1 * range.1);
        let (least, most) = (x.min(y), x.max(y));
        if let Aim::Share(t) = self.aim
            && t.place == place
            && t.combination == c
        {
            return (if t.tension { -most } else { least }) < self.share;
        }
        if self.aim != Aim::Best && self.line.places.meeting[place].is_some() {
            return true;
        }
        let class = self.line.class(place);
        least <= limit * class.compression + self.line.floor[c]
            && -most <= limit * class.tension + self.line.floor[c]
    }
}
