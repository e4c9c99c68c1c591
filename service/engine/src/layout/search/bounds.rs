//! Bounds that hold for every layout of a run: on the moments at its piles, on what a
//! shared pile can take of it, and on the number of piles that its load needs.

use super::loads::SpanTerms;
use super::stack::Line;

/// A quantity that holds up to rounding.
const SLACK: f64 = 1e-9;

/// Bounds for one run, one entry a combination.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Bounds {
    /// Lowest and highest moment at any pile.
    pub moment: Vec<(f64, f64)>,
    /// Load term over flexibility: least and greatest of any span.
    pub term: Vec<(f64, f64)>,
    /// Least and greatest flexibility of a span.
    pub flexibility: (f64, f64),
    /// Most that the piles from a place on can take of this run, where each pile takes
    /// its capacity, and the piles that carry other runs too take what they can: sums for
    /// the shared places from each place on, and how many they are.
    shared: Vec<(usize, usize, Vec<f64>)>,
    /// Greatest compression that a pile carries at any place from each on.
    pub most: Vec<f64>,
    /// The same without the places that carry other runs too.
    most_own: Vec<f64>,
    /// Corners of the convex function below the cost of a load, ascending; only where
    /// costs count.
    hull: Vec<(f64, f64)>,
}

impl Bounds {
    /// Finds the bounds of a run.
    pub fn of(line: &Line) -> Self {
        let (term, flexibility) = terms(line);
        let moment = moments(line, &term);
        let mut bounds = Self {
            moment,
            term,
            flexibility,
            shared: Vec::new(),
            most: most(line, |_| true),
            most_own: most(line, |i| line.places.meeting[i].is_none()),
            hull: hull(line),
        };
        bounds.shared = bounds.shared_sums(line);
        bounds
    }

    /// Most that `piles` piles, the first of them at `place`, can take in a combination.
    pub fn capacity(&self, place: usize, piles: usize, c: usize, each: f64) -> f64 {
        let i = self.shared.partition_point(|s| s.0 < place);
        match self.shared.get(i) {
            Some((_, count, sums)) => {
                let rest = piles.saturating_sub(*count) as f64;
                rest * each * self.most_own[place] + sums[c]
            }
            None => piles as f64 * each * self.most_own[place],
        }
    }

    /// Piles that carry other runs too, from a place on, and the most that they can take of
    /// this run in a combination.
    pub fn shared_from(&self, place: usize, c: usize) -> (usize, f64) {
        let i = self.shared.partition_point(|s| s.0 < place);
        self.shared.get(i).map_or((0, 0.0), |s| (s.1, s.2[c]))
    }

    /// Least cost of the piles that carry this run only, `piles` being all from `place`
    /// on that carry at least `rest(c)` in each combination.
    ///
    /// With n piles and loads that add up to W the sum of costs is at least n f(W/n), f
    /// any convex function below the cost of a load. Source: Jensen's inequality.
    pub fn least_cost(
        &self,
        line: &Line,
        place: usize,
        piles: usize,
        rest: impl Fn(usize) -> f64,
    ) -> f64 {
        let mut cost = 0.0f64;
        for c in 0..line.loads.count {
            let (shared, taken) = self.shared_from(place, c);
            let own = piles.saturating_sub(shared) as f64;
            if own > 0.0 {
                let load = (rest(c) - taken - line.floor[c]) / own;
                cost = cost.max(own * self.hull_at(load * (1.0 - 1e-8)));
            }
        }
        cost
    }

    /// The convex function below the cost of a load.
    fn hull_at(&self, load: f64) -> f64 {
        let hull = &self.hull;
        let next = hull.partition_point(|h| h.0 < load);
        match (next.checked_sub(1).map(|i| hull[i]), hull.get(next)) {
            (_, None) => f64::INFINITY,
            (None, Some(h)) => h.1,
            (Some(a), Some(b)) => a.1 + (b.1 - a.1) * (load - a.0) / (b.0 - a.0),
        }
    }

    /// Fewest piles whose capacity reaches the load of the run.
    pub fn by_load(&self, line: &Line, from: usize, to: usize) -> usize {
        let enough = |n: usize| {
            (0..line.loads.count).all(|c| {
                let capacity = self.capacity(0, n, c, 1.0 + SLACK);
                line.loads.total[c] <= capacity * (1.0 + SLACK) + line.floor[c]
            })
        };
        (from..to).find(|n| enough(*n)).unwrap_or(to)
    }

    fn shared_sums(&self, line: &Line) -> Vec<(usize, usize, Vec<f64>)> {
        let n = line.loads.count;
        let mut out: Vec<(usize, usize, Vec<f64>)> = Vec::new();
        let places = &line.places;
        for i in (0..places.at.len()).rev() {
            if places.meeting[i].is_some() {
                let range = self.share_range(line, i);
                let own: Vec<f64> = range.into_iter().map(|r| r.1).collect();
                let (count, sums) = match out.last() {
                    Some((_, count, sums)) => {
                        let sums = sums.iter().zip(&own).map(|(a, b)| a + b).collect();
                        (count + 1, sums)
                    }
                    None => (1, own),
                };
                debug_assert_eq!(sums.len(), n);
                out.push((i, count, sums));
            }
        }
        out.reverse();
        out
    }

    /// Least and most that a place can take of this run: shears of both spans with the
    /// moments at their bounds.
    pub fn share_range(&self, line: &Line, i: usize) -> Vec<(f64, f64)> {
        let n = line.loads.count;
        let places = &line.places;
        let at = places.at[i];
        let mut terms = SpanTerms::default();
        let nothing = (f64::INFINITY, f64::NEG_INFINITY);
        let mut sides = [vec![nothing; n], vec![nothing; n]];
        let widen = |slot: &mut (f64, f64), low: f64, high: f64| {
            *slot = (slot.0.min(low), slot.1.max(high));
        };
        let mut add = |side: usize, from: usize, to: usize| {
            let (a, b) = (places.at[from], places.at[to]);
            line.loads.span(a, b, false, &mut terms);
            for (c, slot) in sides[side].iter_mut().enumerate() {
                let simple = if side == 0 {
                    terms.right[c]
                } else {
                    terms.total[c] - terms.right[c]
                };
                let (lo, hi) = self.moment[c];
                let by_moment = (hi - lo) / (b - a);
                widen(slot, simple - by_moment, simple + by_moment);
            }
        };
        for from in (0..i).rev() {
            let (first, end) = places.next[from];
            if end <= i {
                break;
            }
            if first <= i {
                add(0, from, i);
            }
        }
        let (first, end) = places.next[i];
        for to in first..end {
            add(1, i, to);
        }
        // it may be the first or the last pile of the run
        for (side, outer) in [(0, i < places.first), (1, i >= places.last)] {
            for (c, slot) in sides[side].iter_mut().enumerate() {
                if outer || slot.0 > slot.1 {
                    let beyond = line.loads.beyond(at, side == 1, c).0;
                    widen(slot, beyond, beyond);
                }
            }
        }
        (0..n)
            .map(|c| {
                let on = line.loads.on(at, c);
                let (before, after) = (sides[0][c], sides[1][c]);
                (on + before.0 + after.0, on + before.1 + after.1)
            })
            .collect()
    }
}

/// Lower hull of nothing at the least cost and every type at its capacity, over all kinds
/// of ground on the run. A load above every capacity costs more than anything.
fn hull(line: &Line) -> Vec<(f64, f64)> {
    if !line.costed {
        return Vec::new();
    }
    let mut seen = vec![false; line.classes.len()];
    let mut points: Vec<(f64, f64)> = Vec::new();
    let mut cheapest = f64::INFINITY;
    for class in &line.places.class {
        if !std::mem::replace(&mut seen[*class], true) {
            let class = &line.classes[*class];
            points.extend(class.priced());
            cheapest = cheapest.min(class.cost);
        }
    }
    points.push((0.0, cheapest));
    points.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let mut out: Vec<(f64, f64)> = Vec::new();
    for p in points {
        if out.last().is_some_and(|l| l.0 == p.0) {
            continue;
        }
        while let [.., a, b] = out[..] {
            // b lies on or above the line from a to p
            if (b.1 - a.1) * (p.0 - a.0) >= (p.1 - a.1) * (b.0 - a.0) {
                out.pop();
            } else {
                break;
            }
        }
        out.push(p);
    }
    // a type that costs less and carries more than another is the better one
    let mut least = f64::INFINITY;
    for corner in out.iter_mut().rev() {
        least = least.min(corner.1);
        corner.1 = least;
    }
    out
}

/// Greatest compression from every place on, over the places that count.
fn most(line: &Line, counts: impl Fn(usize) -> bool) -> Vec<f64> {
    let mut out = vec![0.0; line.places.at.len()];
    let mut most = 0.0f64;
    for i in (0..out.len()).rev() {
        if counts(i) {
            most = most.max(line.class(i).compression);
        }
        out[i] = most;
    }
    out
}

/// Least and greatest load term over flexibility, and flexibility, of any span. With loads
/// by their size the term only grows with the span, so the longest spans suffice.
fn terms(line: &Line) -> (Vec<(f64, f64)>, (f64, f64)) {
    let places = &line.places;
    let n = line.loads.count;
    let mut most = vec![0.0f64; n];
    let mut flexibility = (f64::INFINITY, 0.0f64);
    let mut terms = SpanTerms::default();
    let mut look = |a: f64, b: f64, most: &mut [f64]| {
        line.loads.span(a, b, true, &mut terms);
        let length = b - a;
        for (c, m) in most.iter_mut().enumerate() {
            *m = m.max(terms.at_left[c].max(terms.at_right[c]) / length);
        }
    };
    for i in 0..places.at.len() {
        let (from, to) = places.next[i];
        if from >= to {
            continue;
        }
        let rigidity = line.rigidity_after(places.at[i]);
        let (short, long) = (
            places.at[from] - places.at[i],
            places.at[to - 1] - places.at[i],
        );
        flexibility.0 = flexibility.0.min(short / rigidity);
        flexibility.1 = flexibility.1.max(long / rigidity);
        look(places.at[i], places.at[to - 1], &mut most);
    }
    // longest span that ends at each place
    let mut start = 0;
    for i in 1..places.at.len() {
        while start < i && places.next[start].1 <= i {
            start += 1;
        }
        if start < i && places.next[start].0 <= i {
            look(places.at[start], places.at[i], &mut most);
        }
    }
    let term = most
        .into_iter()
        .zip(&line.loads.acts)
        .map(|(m, (down, up))| (if *up { -m } else { 0.0 }, if *down { m } else { 0.0 }))
        .collect();
    (term, flexibility)
}

/// Bounds on the moments at piles.
///
/// Each three-moment equation gives M = -(t + (f_l M_l + f_r M_r)/(f_l + f_r))/2 with
/// t = (T_l/EI_l + T_r/EI_r)/(f_l + f_r) between the least and the greatest load term
/// over flexibility; so lo >= -(t_max + hi)/2 and hi <= -(t_min + lo)/2, end moments
/// aside. Starting from bounds that hold, every round of these keeps them valid. Source:
/// three-moment equation.
fn moments(line: &Line, term: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let places = &line.places;
    (0..line.loads.count)
        .map(|c| {
            let (mut low, mut high) = (0.0f64, 0.0f64);
            let firsts = (0..places.first).map(|i| line.loads.beyond(places.at[i], false, c).1);
            let lasts =
                (places.last..places.at.len()).map(|i| line.loads.beyond(places.at[i], true, c).1);
            for m in firsts.chain(lasts) {
                low = low.min(m);
                high = high.max(m);
            }
            let (least, most) = term[c];
            let size = most.abs().max(least.abs()).max(low.abs()).max(high);
            let (mut lo, mut hi) = (-size, size);
            for _ in 0..40 {
                lo = lo.max(low.min(-0.5 * (most + hi)));
                hi = hi.min(high.max(-0.5 * (least + lo)));
            }
            (lo - SLACK * size, hi + SLACK * size)
        })
        .collect()
}
