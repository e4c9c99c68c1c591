//! A good layout of a run for a given number of piles without trying all: spans as equal
//! as the grid allows, then moves of single piles that lower the utilisation. Proves
//! nothing.

use super::enumerate::{Best, Budget};
use super::places::Places;
use super::stack::{Line, Stack};

/// Spans as equal as the places allow; none where the number does not fit.
pub(super) fn equal(line: &Line, count: usize) -> Option<Vec<usize>> {
    let places = &line.places;
    let anchors = anchors(places)?;
    let stretches: Vec<Stretch> = anchors
        .windows(2)
        .map(|p| Stretch::of(line, p[0], p[1]))
        .collect();
    if stretches.is_empty() {
        return (count == 1).then_some(anchors);
    }
    let mut spans: Vec<usize> = stretches.iter().map(|s| s.fewest).collect();
    let mut used = 1 + spans.iter().sum::<usize>();
    while used < count {
        let widest = (0..stretches.len())
            .filter(|i| spans[*i] < stretches[*i].most)
            .fold(None, |best: Option<usize>, i| match best {
                Some(b)
                    if stretches[b].load / spans[b] as f64
                        >= stretches[i].load / spans[i] as f64 =>
                {
                    Some(b)
                }
                _ => Some(i),
            })?;
        spans[widest] += 1;
        used += 1;
    }
    if used > count {
        return None;
    }
    let mut chosen = vec![anchors[0]];
    for (stretch, n) in stretches.iter().zip(spans) {
        stretch.fill(places, n, &mut chosen)?;
    }
    Some(chosen)
}

/// Places where a pile stands in any case: the fixed ones, and at a free end the farthest
/// from it that reaches the other end.
fn anchors(places: &Places) -> Option<Vec<usize>> {
    let mut out: Vec<usize> = (0..places.at.len()).filter(|i| places.forced[*i]).collect();
    if out.first().is_none_or(|a| *a >= places.first) {
        let first = (0..places.first).rev().find(|i| places.reaches(*i))?;
        out.insert(0, first);
    }
    if out.last().is_none_or(|a| *a < places.last) {
        out.push((places.last..places.at.len()).find(|i| *i >= places.last)?);
    }
    out.dedup();
    Some(out)
}

/// The part of a run between two anchors.
struct Stretch {
    from: usize,
    to: usize,
    fewest: usize,
    most: usize,
    load: f64,
}

impl Stretch {
    fn of(line: &Line, from: usize, to: usize) -> Self {
        let p = &line.places;
        let mut terms = super::loads::SpanTerms::default();
        line.loads.span(p.at[from], p.at[to], true, &mut terms);
        Self {
            from,
            to,
            fewest: (p.fewest[from] - p.fewest[to]) as usize,
            most: (p.most[from] - p.most[to]) as usize,
            load: terms
                .total
                .iter()
                .copied()
                .fold(p.at[to] - p.at[from], f64::max),
        }
    }

    fn fill(&self, p: &Places, spans: usize, chosen: &mut Vec<usize>) -> Option<()> {
        let (a, b) = (p.at[self.from], p.at[self.to]);
        let mut here = self.from;
        for t in 1..spans {
            let target = a + (b - a) * t as f64 / spans as f64;
            let left = (spans - t) as u32;
            let fits = |j: usize| {
                j < self.to
                    && p.reaches(j)
                    && p.fewest[j] - p.fewest[self.to] <= left
                    && p.most[j] - p.most[self.to] >= left
            };
            let (from, to) = p.next[here];
            let middle =
                p.at.partition_point(|x| *x < target)
                    .clamp(from, to.max(from));
            let up = (middle..to).find(|j| fits(*j));
            let down = (from..middle).rev().find(|j| fits(*j));
            here = match (down, up) {
                (Some(d), Some(u)) if target - p.at[d] <= p.at[u] - target => d,
                (_, Some(u)) => u,
                (Some(d), None) => d,
                (None, None) => return None,
            };
            chosen.push(here);
        }
        let (from, to) = p.next[here];
        (from <= self.to && self.to < to).then(|| chosen.push(self.to))
    }
}

/// Rates a layout.
pub(super) fn rated(
    line: &Line,
    chosen: Vec<usize>,
    stack: &mut Stack,
    budget: &mut Budget,
) -> Best {
    budget.take((chosen.len() * line.loads.count) as u64);
    while !stack.chosen.is_empty() {
        stack.pop();
    }
    for place in &chosen {
        stack.push(line, *place);
    }
    let rating = stack.rate(line);
    Best::of(line, chosen, rating)
}

/// Moves single piles as long as that helps.
pub(super) fn descend(line: &Line, start: Best, budget: &mut Budget) -> Best {
    let mut stack = Stack::new(start.chosen.len(), line.loads.count);
    let mut best = start;
    let mut step = 16usize;
    while step > 0 {
        let mut moved = false;
        for i in 0..best.chosen.len() {
            for up in [false, true] {
                if !budget.left() {
                    return best;
                }
                if let Some(chosen) = shifted(line, &best.chosen, i, step, up) {
                    let next = rated(line, chosen, &mut stack, budget);
                    if next.beats(&best) {
                        best = next;
                        moved = true;
                    }
                }
            }
        }
        if !moved {
            step /= 2;
        }
    }
    best
}

/// The layout with one pile moved by so many places, where the limits allow it.
pub(super) fn shifted(
    line: &Line,
    chosen: &[usize],
    i: usize,
    step: usize,
    up: bool,
) -> Option<Vec<usize>> {
    let p = &line.places;
    if p.forced[chosen[i]] {
        return None;
    }
    let to = if up {
        chosen[i] + step
    } else {
        chosen[i].checked_sub(step)?
    };
    let follows = |a: usize, b: usize| p.next[a].0 <= b && b < p.next[a].1;
    let before = if i == 0 {
        to < p.first
    } else {
        follows(chosen[i - 1], to)
    };
    let after = if i + 1 == chosen.len() {
        to >= p.last && to < p.at.len()
    } else {
        to < p.at.len() && follows(to, chosen[i + 1])
    };
    (before && after).then(|| {
        let mut moved = chosen.to_vec();
        moved[i] = to;
        moved
    })
}
