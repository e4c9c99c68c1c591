//! All piles of a job together: total depth and number of pieces, with the piles hanging
//! together as the ground has them, independent of each other, and all deep at once.

use super::mixture::Depth;
use super::normal::{below, density, quantile};

/// Steps of the common factor to either side of nil, and their length: +-5 by quarters.
const FACTOR_STEPS: i32 = 20;
const FACTOR_STEP: f64 = 0.25;
/// Parts of each step: many piles with much in common leave hardly any scatter given the
/// factor, so that what follows from it is interpolated between the steps.
const PARTS: usize = 20;
/// Points at which the distribution of a depth is tabulated.
const POINTS: usize = 97;
/// Probability left out on either side of that table.
const TABLE_TAIL: f64 = 1e-8;
/// Most a pile may share with all others; it always has something of its own.
const MOST_SHARED: f64 = 0.999;

/// Share of the common factor in each pile: its correlation with it.
///
/// a_i = k r_i / s_i, with k^2 = sum(r) / (sum(r)^2 - sum(r^2))
///
/// r_i sum of the covariances of pile i with all other planned piles, m2, nil where negative;
/// s_i its standard deviation, m. With it the covariances of all pairs add up to what the
/// forecast has. Source: choice of this service. Between 0 and 0.999.
pub fn loadings(moments: &[(f64, f64)], together: &[f64]) -> Vec<f64> {
    let r: Vec<f64> = together.iter().map(|r| r.max(0.0)).collect();
    let sum = r.iter().fold(0.0, |sum, r| sum + r);
    let squares = r.iter().fold(0.0, |sum, r| sum + r * r);
    let rest = sum * sum - squares;
    if rest <= 0.0 {
        return vec![0.0; r.len()];
    }
    let k = (sum / rest).sqrt();
    let of_pile = |(r, (_, variance)): (&f64, &(f64, f64))| {
        if *variance > 0.0 {
            (k * r / variance.sqrt()).min(MOST_SHARED)
        } else {
            0.0
        }
    };
    r.iter().zip(moments).map(of_pile).collect()
}

/// Values of the common factor at which piles are summed.
fn factors() -> Vec<f64> {
    let at = |step: i32| f64::from(step) * FACTOR_STEP;
    (-FACTOR_STEPS..=FACTOR_STEPS).map(at).collect()
}

/// The parts between these values: which step, how far within it, weight.
fn parts(factors: &[f64]) -> Vec<(usize, f64, f64)> {
    let mut all = Vec::new();
    for (step, from) in factors[..factors.len() - 1].iter().enumerate() {
        for part in 0..PARTS {
            let within = (part as f64 + 0.5) / PARTS as f64;
            all.push((step, within, density(from + within * FACTOR_STEP)));
        }
    }
    let total = all.iter().fold(0.0, |sum, part| sum + part.2);
    all.iter_mut().for_each(|part| part.2 /= total);
    all
}

/// Between two values of a list.
fn between(list: &[f64], step: usize, within: f64) -> f64 {
    list[step] + within * (list[step + 1] - list[step])
}

/// Probability of what has probability p, given the common factor.
///
/// P(p | f) = Phi((Phi^-1(p) - a f) / (1 - a^2)^0.5)
fn given(probit: f64, loading: f64, factor: f64) -> f64 {
    below((probit - loading * factor) / (1.0 - loading * loading).sqrt())
}

/// A probability as a standard normal value; far out for nil and one.
fn probit(p: f64) -> f64 {
    match p {
        p if p <= 0.0 => -40.0,
        p if p >= 1.0 => 40.0,
        p => quantile(p),
    }
}

/// A final depth, tabulated.
struct Tabulated {
    /// Depths, m, by equal steps.
    depths: Vec<f64>,
    /// Probability, as a standard normal value, that it is at most that deep.
    probits: Vec<f64>,
}

impl Tabulated {
    fn of(depth: &Depth) -> Self {
        let (from, to) = (depth.quantile(TABLE_TAIL), depth.quantile(1.0 - TABLE_TAIL));
        let step = (to - from) / (POINTS - 1) as f64;
        let depths: Vec<f64> = (0..POINTS).map(|i| from + step * i as f64).collect();
        let probits = depths.iter().map(|d| probit(depth.not_deeper(*d)));
        Self {
            probits: probits.collect(),
            depths,
        }
    }

    /// Mean and variance given the common factor: from the probability of being deeper,
    /// E L = x_0 + integral of P(L > x), E (L - x_0)^2 = integral of 2 (x - x_0) P(L > x).
    fn moments(&self, loading: f64, factor: f64) -> (f64, f64) {
        let from = self.depths[0];
        let step = (self.depths[POINTS - 1] - from) / (POINTS - 1) as f64;
        let (mut mean, mut square) = (0.0, 0.0);
        for (i, (depth, probit)) in self.depths.iter().zip(&self.probits).enumerate() {
            let end = if i == 0 || i == POINTS - 1 { 0.5 } else { 1.0 };
            let deeper = 1.0 - given(*probit, loading, factor);
            mean += end * step * deeper;
            square += end * step * 2.0 * (depth - from) * deeper;
        }
        // the second integrand begins with a slope of 2 P(L > x_0), which the rule falls short by
        square += step * step / 6.0 * (1.0 - given(self.probits[0], loading, factor));
        (from + mean, (square - mean * mean).max(0.0))
    }
}

/// Total final depth of a job, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Total {
    /// Mean.
    pub mean: f64,
    /// Not exceeded with the probability asked for, as the ground has the piles together.
    pub by_model: f64,
    /// The same with independent piles.
    pub independent: f64,
    /// The same with all piles deep at once.
    pub fully_correlated: f64,
}

/// Total final depth: mean, and what is not exceeded with probability p.
///
/// Given the common factor the sum of independent depths is taken as normal with the sum of
/// their means and variances; fully correlated it is the sum of the depths of each at p.
pub fn total(depths: &[Depth], loadings: &[f64], p: f64) -> Total {
    let fully_correlated = depths.iter().fold(0.0, |sum, d| sum + d.quantile(p));
    let tables: Vec<Tabulated> = depths.iter().map(Tabulated::of).collect();
    let sum = |shared: &dyn Fn(usize) -> f64, factor: f64| {
        let mut sum = (0.0, 0.0);
        for (i, table) in tables.iter().enumerate() {
            let (mean, variance) = table.moments(shared(i), factor);
            sum = (sum.0 + mean, sum.1 + variance);
        }
        sum
    };
    let (mean, variance) = sum(&|_| 0.0, 0.0);
    if depths.len() == 1 {
        return Total {
            mean,
            by_model: fully_correlated,
            independent: fully_correlated,
            fully_correlated,
        };
    }
    let factors = factors();
    let at: Vec<(f64, f64)> = factors.iter().map(|f| sum(&|i| loadings[i], *f)).collect();
    let means: Vec<f64> = at.iter().map(|a| a.0).collect();
    let sds: Vec<f64> = at.iter().map(|a| a.1.sqrt()).collect();
    let part = |(step, within, weight): (usize, f64, f64)| {
        let of = |list: &[f64]| between(list, step, within);
        (weight, of(&means), of(&sds))
    };
    let parts: Vec<(f64, f64, f64)> = parts(&factors).into_iter().map(part).collect();
    Total {
        mean,
        by_model: quantile_of(&parts, p),
        independent: quantile_of(&[(1.0, mean, variance.sqrt())], p),
        fully_correlated,
    }
}

/// Quantile of a weighted sum of normal distributions (weight, mean, standard deviation), by
/// halving.
fn quantile_of(parts: &[(f64, f64, f64)], p: f64) -> f64 {
    let least = |least: f64, part: &(f64, f64, f64)| least.min(part.1 - 9.0 * part.2);
    let most = |most: f64, part: &(f64, f64, f64)| most.max(part.1 + 9.0 * part.2);
    let mut low = parts.iter().fold(f64::INFINITY, least);
    let mut high = parts.iter().fold(f64::NEG_INFINITY, most);
    for _ in 0..100 {
        let middle = 0.5 * (low + high);
        let below = parts.iter().fold(0.0, |sum, (weight, mean, sd)| {
            let share = if *sd > 0.0 {
                below((middle - mean) / sd)
            } else {
                f64::from(u8::from(middle >= *mean))
            };
            sum + weight * share
        });
        if below < p {
            low = middle
        } else {
            high = middle
        }
    }
    high
}

/// What one pile needs of one kind of piece, from the fewest depths on.
#[derive(Debug, Clone, PartialEq)]
pub struct Need {
    /// Number needed where the final depth is at most the next, with the probability of that:
    /// the last has probability one.
    pub steps: Vec<(usize, f64)>,
}

/// Pieces of one kind for a whole job, each not exceeded with the probability asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pieces {
    /// Mean number.
    pub mean: f64,
    /// As the ground has the piles together.
    pub by_model: usize,
    /// With independent piles.
    pub independent: usize,
    /// With all piles deep at once.
    pub fully_correlated: usize,
}

/// Number of pieces of one kind: exact sums of independent whole numbers given the common
/// factor.
pub fn pieces(needs: &[Need], loadings: &[f64], p: f64) -> Pieces {
    let probits: Vec<Vec<f64>> = needs
        .iter()
        .map(|need| need.steps.iter().map(|s| probit(s.1)).collect())
        .collect();
    let alone = |shared: &dyn Fn(usize) -> f64, factor: f64| {
        let mut sum = vec![1.0];
        let mut least = 0;
        for (i, need) in needs.iter().enumerate() {
            least += add(&mut sum, need, &probits[i], shared(i), factor);
        }
        (least, sum)
    };
    let (least, independent) = alone(&|_| 0.0, 0.0);
    let factors = factors();
    let given: Vec<Vec<f64>> = factors
        .iter()
        .map(|factor| {
            let (_, sum) = alone(&|i| loadings[i], *factor);
            cumulated(&sum).into_iter().map(probit).collect()
        })
        .collect();
    let parts = parts(&factors);
    let at_most = |n: usize| {
        let of_n: Vec<f64> = given.iter().map(|all| all[n]).collect();
        parts.iter().fold(0.0, |sum, (step, within, weight)| {
            sum + weight * below(between(&of_n, *step, *within))
        })
    };
    let by_model = (0..independent.len()).find(|n| reached(at_most(*n), p));
    let alone = cumulated(&independent);
    let independent_count = alone.iter().position(|sum| reached(*sum, p));
    let most = independent.len() - 1;
    let mean = independent.iter().enumerate();
    Pieces {
        mean: mean.fold(0.0, |sum, (n, share)| sum + (least + n) as f64 * share),
        by_model: least + by_model.unwrap_or(most),
        independent: least + independent_count.unwrap_or(most),
        fully_correlated: at_once(needs, p),
    }
}

/// Adds a pile to the distribution of a sum; returns the least it needs, by which the
/// distribution is moved.
fn add(sum: &mut Vec<f64>, need: &Need, probits: &[f64], loading: f64, factor: f64) -> usize {
    let counts = need.steps.iter().map(|step| step.0);
    let (least, most) = counts.fold((usize::MAX, 0), |(l, m), n| (l.min(n), m.max(n)));
    let mut alone = vec![0.0; most - least + 1];
    let mut before = 0.0;
    for (at, (count, _)) in need.steps.iter().enumerate() {
        let last = at + 1 == need.steps.len();
        let until = if last {
            1.0
        } else {
            given(probits[at], loading, factor)
        };
        alone[count - least] += (until - before).max(0.0);
        before = until;
    }
    let mut all = vec![0.0; sum.len() + most - least];
    for (n, share) in alone.iter().enumerate() {
        if *share > 0.0 {
            for (slot, one) in all[n..].iter_mut().zip(sum.iter()) {
                *slot += share * one;
            }
        }
    }
    *sum = all;
    least
}

/// Running sums of a distribution.
fn cumulated(distribution: &[f64]) -> Vec<f64> {
    let mut sum = 0.0;
    let add = |share: &f64| {
        sum += share;
        sum
    };
    distribution.iter().map(add).collect()
}

/// Whether a probability is reached: to the last printed digit is enough.
fn reached(sum: f64, p: f64) -> bool {
    sum >= p - 1e-9
}

/// The same with all piles at the same probability of their own depth.
fn at_once(needs: &[Need], p: f64) -> usize {
    let mut events: Vec<(f64, usize)> = Vec::new();
    for (pile, need) in needs.iter().enumerate() {
        let inner = &need.steps[..need.steps.len() - 1];
        events.extend(inner.iter().map(|step| (step.1, pile)));
    }
    events.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut step = vec![0; needs.len()];
    let mut count: usize = needs.iter().map(|need| need.steps[0].0).sum();
    let (mut from, mut spans) = (0.0, Vec::new());
    for (until, pile) in events {
        spans.push((count, until - from));
        from = until;
        let steps = &needs[pile].steps;
        count = count + steps[step[pile] + 1].0 - steps[step[pile]].0;
        step[pile] += 1;
    }
    spans.push((count, 1.0 - from));
    spans.sort_by_key(|span| span.0);
    let mut sum = 0.0;
    for (count, span) in &spans {
        sum += span;
        if reached(sum, p) {
            return *count;
        }
    }
    spans[spans.len() - 1].0
}
