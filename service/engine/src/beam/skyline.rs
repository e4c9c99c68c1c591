//! A symmetric positive definite matrix stored by its profile, ordered to keep the
//! profile short, and its factorisation L D L'. Knows nothing of beams.

/// A matrix that lacks resistance at this unknown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Singular(pub usize);

/// A pivot below this share of its diagonal is no resistance: rounding leaves about
/// 1e-15 of it where there is none.
const PIVOT_MIN: f64 = 1e-11;

/// Order of elimination: `place[unknown]` is its row.
pub(super) struct Order {
    pub place: Vec<usize>,
}

/// Up to four unknowns that are tied together, and how many they are.
pub(super) type Tied = ([usize; 4], usize);

/// Reverse Cuthill-McKee: breadth first from an end of each connected part, neighbours by
/// degree, then turned round.
pub(super) fn order(unknowns: usize, groups: &[Tied]) -> Order {
    let near = Neighbours::new(unknowns, groups);
    let mut seen = vec![false; unknowns];
    let mut sequence = Vec::with_capacity(unknowns);
    let mut scratch = Scratch::new(unknowns);
    for seed in 0..unknowns {
        if seen[seed] {
            continue;
        }
        let start = far_end(seed, &near, &mut scratch);
        breadth_first(start, &near, &mut seen, &mut sequence);
    }
    let mut place = vec![0; unknowns];
    for (i, unknown) in sequence.iter().rev().enumerate() {
        place[*unknown] = i;
    }
    Order { place }
}

struct Neighbours {
    first: Vec<usize>,
    list: Vec<usize>,
}

impl Neighbours {
    fn new(unknowns: usize, groups: &[Tied]) -> Self {
        let mut first = vec![0; unknowns + 1];
        for (g, n) in groups {
            for u in &g[..*n] {
                first[u + 1] += n.saturating_sub(1);
            }
        }
        for i in 0..unknowns {
            first[i + 1] += first[i];
        }
        let mut next = first.clone();
        let mut list = vec![0; first[unknowns]];
        for (g, n) in groups {
            for u in &g[..*n] {
                for v in &g[..*n] {
                    if u != v {
                        list[next[*u]] = *v;
                        next[*u] += 1;
                    }
                }
            }
        }
        Self { first, list }
    }
    fn of(&self, u: usize) -> &[usize] {
        &self.list[self.first[u]..self.first[u + 1]]
    }
}

struct Scratch {
    mark: Vec<usize>,
    round: usize,
    queue: Vec<usize>,
}

impl Scratch {
    fn new(unknowns: usize) -> Self {
        Self {
            mark: vec![0; unknowns],
            round: 0,
            queue: Vec::new(),
        }
    }
}

/// An unknown at an end of the part that holds `seed`: the last one that two sweeps reach.
fn far_end(seed: usize, near: &Neighbours, scratch: &mut Scratch) -> usize {
    let mut start = seed;
    for _ in 0..2 {
        scratch.round += 1;
        scratch.queue.clear();
        scratch.queue.push(start);
        scratch.mark[start] = scratch.round;
        let mut head = 0;
        while head < scratch.queue.len() {
            let u = scratch.queue[head];
            head += 1;
            for v in near.of(u) {
                if scratch.mark[*v] != scratch.round {
                    scratch.mark[*v] = scratch.round;
                    scratch.queue.push(*v);
                }
            }
        }
        start = *scratch.queue.last().unwrap_or(&seed);
    }
    start
}

fn breadth_first(start: usize, near: &Neighbours, seen: &mut [bool], sequence: &mut Vec<usize>) {
    let mut head = sequence.len();
    sequence.push(start);
    seen[start] = true;
    let mut level = Vec::new();
    while head < sequence.len() {
        let u = sequence[head];
        head += 1;
        level.clear();
        for v in near.of(u) {
            if !seen[*v] {
                seen[*v] = true;
                level.push(*v);
            }
        }
        level.sort_by_key(|v| (near.of(*v).len(), *v));
        sequence.extend_from_slice(&level);
    }
}

/// Lower triangle, row by row from its first entry to the diagonal.
pub(super) struct Skyline {
    first: Vec<usize>,
    offset: Vec<usize>,
    entry: Vec<f64>,
}

impl Skyline {
    /// An empty matrix whose rows begin at these columns.
    pub fn new(first: Vec<usize>) -> Self {
        let mut offset = Vec::with_capacity(first.len() + 1);
        let mut size = 0;
        for (row, f) in first.iter().enumerate() {
            offset.push(size);
            size += row - f + 1;
        }
        offset.push(size);
        Self {
            first,
            offset,
            entry: vec![0.0; size],
        }
    }

    /// Entries that a matrix with these rows needs.
    pub fn size(first: &[usize]) -> usize {
        first.iter().enumerate().map(|(row, f)| row - f + 1).sum()
    }

    /// First column of every row, where the groups lie at these rows.
    pub fn profile(unknowns: usize, groups: &[Tied], order: &Order) -> Vec<usize> {
        let mut first: Vec<usize> = (0..unknowns).collect();
        for (g, n) in groups {
            let rows = g[..*n].iter().map(|u| order.place[*u]);
            if let Some(least) = rows.clone().min() {
                for row in rows {
                    first[row] = first[row].min(least);
                }
            }
        }
        first
    }

    /// Adds to an entry of the lower triangle.
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        let (row, column) = if row >= column {
            (row, column)
        } else {
            (column, row)
        };
        self.entry[self.offset[row] + column - self.first[row]] += value;
    }

    /// Factorises in place: unit lower triangle and, on the diagonal, the pivots.
    pub fn factorise(&mut self) -> Result<(), Singular> {
        for i in 0..self.first.len() {
            let fi = self.first[i];
            let (done, rest) = self.entry.split_at_mut(self.offset[i]);
            let row = &mut rest[..=i - fi];
            for j in fi..i {
                let fj = self.first[j];
                let other = &done[self.offset[j]..self.offset[j] + (j - fj)];
                let from = fi.max(fj);
                let mut sum = row[j - fi];
                for (a, b) in row[from - fi..j - fi].iter().zip(&other[from - fj..]) {
                    sum -= a * b;
                }
                row[j - fi] = sum;
            }
            let given = row[i - fi];
            let mut pivot = given;
            for j in fi..i {
                let d = done[self.offset[j + 1] - 1];
                let l = row[j - fi] / d;
                pivot -= l * row[j - fi];
                row[j - fi] = l;
            }
            if pivot.is_nan() || pivot <= PIVOT_MIN * given {
                return Err(Singular(i));
            }
            row[i - fi] = pivot;
        }
        Ok(())
    }

    /// Solves for all columns at once; `x` holds one row of `columns` numbers an unknown.
    pub fn solve(&self, x: &mut [f64], columns: usize) {
        let n = self.first.len();
        for i in 0..n {
            let fi = self.first[i];
            let (above, here) = x.split_at_mut(i * columns);
            let here = &mut here[..columns];
            for j in fi..i {
                let l = self.entry[self.offset[i] + j - fi];
                for (h, a) in here.iter_mut().zip(&above[j * columns..]) {
                    *h -= l * a;
                }
            }
        }
        for i in 0..n {
            let d = self.entry[self.offset[i + 1] - 1];
            for v in &mut x[i * columns..(i + 1) * columns] {
                *v /= d;
            }
        }
        for i in (0..n).rev() {
            let fi = self.first[i];
            let (above, here) = x.split_at_mut(i * columns);
            for j in fi..i {
                let l = self.entry[self.offset[i] + j - fi];
                for (h, a) in here.iter().take(columns).zip(&mut above[j * columns..]) {
                    *a -= l * h;
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// L D L' of a random positive definite matrix gives back the right-hand sides.
        #[test]
        fn solves_what_it_was_given(
            n in 1usize..14,
            numbers in proptest::collection::vec(-1.0f64..1.0, 14 * 14),
            reach in 0usize..6,
        ) {
            let mut full = vec![vec![0.0; n]; n];
            for i in 0..n {
                for j in i.saturating_sub(reach)..i {
                    let v = numbers[i * 14 + j];
                    full[i][j] = v;
                    full[j][i] = v;
                }
            }
            for (i, row) in full.iter_mut().enumerate() {
                let others: f64 = row.iter().map(|v| v.abs()).sum();
                row[i] = others + 0.5;
            }
            let mut k = Skyline::new((0..n).map(|i| i.saturating_sub(reach)).collect());
            for (i, row) in full.iter().enumerate() {
                for (j, v) in row.iter().enumerate().take(i + 1).skip(i.saturating_sub(reach)) {
                    k.add(i, j, *v);
                }
            }
            prop_assert!(k.factorise().is_ok());
            let b: Vec<f64> = (0..2 * n).map(|i| numbers[i]).collect();
            let mut x = b.clone();
            k.solve(&mut x, 2);
            for i in 0..n {
                for c in 0..2 {
                    let r: f64 = (0..n).map(|j| full[i][j] * x[2 * j + c]).sum();
                    prop_assert!((r - b[2 * i + c]).abs() < 1e-12);
                }
            }
        }
    }

    #[test]
    fn a_missing_support_shows_at_a_pivot() {
        // a free bar: [1, -1; -1, 1]
        let mut k = Skyline::new(vec![0, 0]);
        k.add(0, 0, 1.0);
        k.add(1, 1, 1.0);
        k.add(1, 0, -1.0);
        assert_eq!(k.factorise(), Err(Singular(1)));
    }

    #[test]
    fn a_chain_listed_at_random_gets_a_band_of_one() {
        let chain = [4usize, 0, 5, 2, 1, 3];
        let groups: Vec<Tied> = chain.windows(2).map(|p| ([p[0], p[1], 0, 0], 2)).collect();
        let order = order(6, &groups);
        for (g, _) in &groups {
            assert_eq!(order.place[g[0]].abs_diff(order.place[g[1]]), 1);
        }
    }
}
