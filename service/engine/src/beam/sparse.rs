//! A symmetric positive definite matrix with few entries and its factorisation L D L',
//! row by row with only the entries that are there. Knows nothing of beams.

pub(super) use super::order::order;

/// Most entries of the factor (192 MiB with their rows).
const ENTRIES_MAX: usize = 16 << 20;

/// Most products of the factorisation, a second or two of one processor; a mesh of 140 by
/// 140 lines needs about a third of it.
const PRODUCTS_MAX: u64 = 1_000_000_000;

/// A pivot below this share of its diagonal is no resistance: rounding leaves about
/// 1e-15 of it where there is none.
pub(super) const PIVOT_MIN: f64 = 1e-11;

/// Up to six unknowns that are tied together, and how many they are.
pub(super) type Tied = ([usize; 6], usize);

/// Why there is no factor.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stopped {
    /// This row has no resistance.
    Singular(usize),
    /// Too many entries or products.
    TooLarge,
}

/// The lower triangle without the diagonal, row by row, columns in ascending order; and
/// the diagonal.
pub(super) struct Sparse {
    first: Vec<usize>,
    column: Vec<usize>,
    entry: Vec<f64>,
    diagonal: Vec<f64>,
}

impl Sparse {
    /// An empty matrix with room for what the groups tie together.
    pub fn new(groups: &[Tied], place: &[usize]) -> Self {
        let n = place.len();
        let pairs = || {
            groups.iter().flat_map(|(g, count)| {
                let both = (0..*count).flat_map(|i| (0..i).map(move |j| (i, j)));
                both.map(|(i, j)| (place[g[i]], place[g[j]]))
            })
        };
        // what several spans tie together is there several times at first
        let mut ends = vec![0; n + 1];
        for (a, b) in pairs() {
            ends[a.max(b) + 1] += 1;
        }
        for i in 0..n {
            ends[i + 1] += ends[i];
        }
        let mut column = vec![0; ends[n]];
        let mut next = ends.clone();
        for (a, b) in pairs() {
            let row = a.max(b);
            column[next[row]] = a.min(b);
            next[row] += 1;
        }
        let mut first = Vec::with_capacity(n + 1);
        let mut kept = 0;
        for row in 0..n {
            first.push(kept);
            column[ends[row]..ends[row + 1]].sort_unstable();
            for i in ends[row]..ends[row + 1] {
                if kept == first[row] || column[kept - 1] != column[i] {
                    column[kept] = column[i];
                    kept += 1;
                }
            }
        }
        first.push(kept);
        column.truncate(kept);
        Self {
            first,
            entry: vec![0.0; kept],
            column,
            diagonal: vec![0.0; n],
        }
    }

    /// Adds to an entry; what was not given room for is not there.
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        if row == column {
            self.diagonal[row] += value;
            return;
        }
        let (row, column) = (row.max(column), row.min(column));
        let (from, to) = (self.first[row], self.first[row + 1]);
        // a row is short
        if let Some(i) = self.column[from..to].iter().position(|c| *c == column) {
            self.entry[from + i] += value;
        }
    }

    fn row(&self, i: usize) -> impl Iterator<Item = (usize, f64)> + '_ {
        let range = self.first[i]..self.first[i + 1];
        let columns = self.column[range.clone()].iter().copied();
        columns.zip(self.entry[range].iter().copied())
    }
}

/// Unit lower triangle column by column, rows in ascending order, and the pivots.
#[derive(Debug)]
pub(super) struct Factor {
    first: Vec<usize>,
    row: Vec<u32>,
    entry: Vec<f64>,
    pivot: Vec<f64>,
}

/// Which columns of the factor each row has an entry in, found along the tree of
/// elimination.
struct Tree {
    parent: Vec<usize>,
    mark: Vec<usize>,
    found: Vec<usize>,
}

const NONE: usize = usize::MAX;

impl Tree {
    fn new(n: usize) -> Self {
        Self {
            parent: vec![NONE; n],
            mark: vec![NONE; n],
            found: Vec::new(),
        }
    }

    /// Columns of a row, not in order; `grow` the first time only.
    fn columns(&mut self, matrix: &Sparse, row: usize, grow: bool) -> &mut Vec<usize> {
        self.found.clear();
        self.mark[row] = row;
        for start in &matrix.column[matrix.first[row]..matrix.first[row + 1]] {
            let mut i = *start;
            while self.mark[i] != row {
                if grow && self.parent[i] == NONE {
                    self.parent[i] = row;
                }
                self.found.push(i);
                self.mark[i] = row;
                i = self.parent[i];
            }
        }
        &mut self.found
    }
}

impl Factor {
    /// Factorises a matrix.
    pub fn of(matrix: &Sparse) -> Result<Self, Stopped> {
        let n = matrix.diagonal.len();
        let (mut out, mut tree) = Self::empty(matrix)?;
        let mut end = out.first.clone();
        let mut work = vec![0.0; n];
        for k in 0..n {
            for (column, value) in matrix.row(k) {
                work[column] = value;
            }
            let given = matrix.diagonal[k];
            let mut pivot = given;
            let columns = tree.columns(matrix, k, false);
            // in ascending order: the sum of each entry is taken as along a full row
            columns.sort_unstable();
            for i in columns.iter().copied() {
                let y = std::mem::take(&mut work[i]);
                let own = out.first[i]..end[i];
                for (row, l) in out.row[own.clone()].iter().zip(&out.entry[own]) {
                    work[*row as usize] -= l * y;
                }
                let l = y / out.pivot[i];
                pivot -= l * y;
                out.row[end[i]] = k as u32;
                out.entry[end[i]] = l;
                end[i] += 1;
            }
            if pivot.is_nan() || pivot <= PIVOT_MIN * given {
                return Err(Stopped::Singular(k));
            }
            out.pivot[k] = pivot;
        }
        Ok(out)
    }

    /// Room for the factor, if it is not too large.
    fn empty(matrix: &Sparse) -> Result<(Self, Tree), Stopped> {
        let n = matrix.diagonal.len();
        let mut tree = Tree::new(n);
        let mut count = vec![0usize; n];
        let mut entries = 0;
        for k in 0..n {
            let columns = tree.columns(matrix, k, true);
            entries += columns.len();
            if entries > ENTRIES_MAX {
                return Err(Stopped::TooLarge);
            }
            for i in columns.iter() {
                count[*i] += 1;
            }
        }
        let products: u64 = count.iter().map(|c| (c * c) as u64 / 2).sum();
        if products > PRODUCTS_MAX {
            return Err(Stopped::TooLarge);
        }
        let mut first = Vec::with_capacity(n + 1);
        let mut sum = 0;
        for c in &count {
            first.push(sum);
            sum += c;
        }
        first.push(sum);
        tree.mark = vec![NONE; n];
        let out = Self {
            first,
            row: vec![0; entries],
            entry: vec![0.0; entries],
            pivot: vec![0.0; n],
        };
        Ok((out, tree))
    }

    /// Entries below the diagonal.
    #[cfg(test)]
    pub fn entries(&self) -> usize {
        self.entry.len()
    }

    fn column(&self, j: usize) -> impl DoubleEndedIterator<Item = (usize, f64)> + '_ {
        let own = self.first[j]..self.first[j + 1];
        let rows = self.row[own.clone()].iter().map(|r| *r as usize);
        rows.zip(self.entry[own].iter().copied())
    }

    /// Solves for all columns at once; `x` holds one row of `columns` numbers an unknown.
    pub fn solve(&self, x: &mut [f64], columns: usize) {
        let n = self.pivot.len();
        for j in 0..n {
            let (done, below) = x.split_at_mut((j + 1) * columns);
            let own = &done[j * columns..];
            for (i, l) in self.column(j) {
                let from = (i - j - 1) * columns;
                for (b, a) in below[from..from + columns].iter_mut().zip(own) {
                    *b -= l * a;
                }
            }
        }
        for (j, d) in self.pivot.iter().enumerate() {
            for v in &mut x[j * columns..(j + 1) * columns] {
                *v /= d;
            }
        }
        for j in (0..n).rev() {
            let (above, below) = x.split_at_mut((j + 1) * columns);
            let own = &mut above[j * columns..];
            for (i, l) in self.column(j).rev() {
                let from = (i - j - 1) * columns;
                for (a, b) in own.iter_mut().zip(&below[from..from + columns]) {
                    *a -= l * b;
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A matrix from a full one.
    fn sparse(full: &[Vec<f64>]) -> Sparse {
        let n = full.len();
        let mut groups: Vec<Tied> = Vec::new();
        for (i, row) in full.iter().enumerate() {
            for (j, v) in row.iter().enumerate().take(i) {
                if *v != 0.0 {
                    groups.push(([i, j, 0, 0, 0, 0], 2));
                }
            }
        }
        let place: Vec<usize> = (0..n).collect();
        let mut k = Sparse::new(&groups, &place);
        for (i, row) in full.iter().enumerate() {
            for (j, v) in row.iter().enumerate().take(i + 1) {
                k.add(i, j, *v);
            }
        }
        k
    }

    proptest! {
        /// L D L' of a random positive definite matrix gives back the right-hand sides.
        #[test]
        fn solves_what_it_was_given(
            n in 1usize..14,
            numbers in proptest::collection::vec(-1.0f64..1.0, 14 * 14),
            kept in proptest::collection::vec(0u8..3, 14 * 14),
        ) {
            let mut full = vec![vec![0.0; n]; n];
            for i in 0..n {
                for j in 0..i {
                    if kept[i * 14 + j] == 0 {
                        full[i][j] = numbers[i * 14 + j];
                        full[j][i] = full[i][j];
                    }
                }
            }
            for (i, row) in full.iter_mut().enumerate() {
                let others: f64 = row.iter().map(|v| v.abs()).sum();
                row[i] = others + 0.5;
            }
            let factor = Factor::of(&sparse(&full)).unwrap();
            let b: Vec<f64> = (0..2 * n).map(|i| numbers[i]).collect();
            let mut x = b.clone();
            factor.solve(&mut x, 2);
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
        let k = sparse(&[vec![1.0, -1.0], vec![-1.0, 1.0]]);
        assert_eq!(Factor::of(&k).unwrap_err(), Stopped::Singular(1));
    }
}
