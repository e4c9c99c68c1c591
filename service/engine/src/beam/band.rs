//! A symmetric positive definite matrix with a narrow band and its factorisation L D L', as a
//! straight line of beam has it. Its numbers are those of `sparse`, which does the same products
//! in the same order. Knows nothing of beams.

use super::sparse::{PIVOT_MIN, Stopped};

/// Entries of a row before the diagonal: the deflection and the slope of one node, and the slope
/// or the deflection of the next one.
pub(super) const WIDTH: usize = 3;

/// The band below the diagonal, `below[row][d - 1]` the entry `d` columns before it; and the
/// diagonal.
pub(super) struct Band {
    below: Vec<[f64; WIDTH]>,
    diagonal: Vec<f64>,
}

/// The factor of a band, laid out alike, and the pivots.
pub(super) struct BandFactor(Band);

impl Band {
    /// An empty matrix.
    pub fn new(rows: usize) -> Self {
        Self {
            below: vec![[0.0; WIDTH]; rows],
            diagonal: vec![0.0; rows],
        }
    }

    /// Adds to an entry within the band.
    pub fn add(&mut self, row: usize, column: usize, value: f64) {
        match row.abs_diff(column) {
            0 => self.diagonal[row] += value,
            apart => self.below[row.max(column)][apart - 1] += value,
        }
    }

    /// Factorises it.
    pub fn factor(mut self) -> Result<BandFactor, Stopped> {
        for k in 0..self.diagonal.len() {
            let given = self.diagonal[k];
            let mut pivot = given;
            let mut row = self.below[k];
            for d in (1..=WIDTH.min(k)).rev() {
                let y = row[d - 1];
                for nearer in (1..d).rev() {
                    row[nearer - 1] -= self.below[k - nearer][d - nearer - 1] * y;
                }
                let l = y / self.diagonal[k - d];
                pivot -= l * y;
                row[d - 1] = l;
            }
            if pivot.is_nan() || pivot <= PIVOT_MIN * given {
                return Err(Stopped::Singular(k));
            }
            self.below[k] = row;
            self.diagonal[k] = pivot;
        }
        Ok(BandFactor(self))
    }
}

impl BandFactor {
    /// Solves for all columns at once; `x` holds one row of `columns` numbers an unknown.
    pub fn solve(&self, x: &mut [f64], columns: usize) {
        let Band { below, diagonal } = &self.0;
        let n = diagonal.len();
        for (i, row) in below.iter().enumerate() {
            let (done, own) = x.split_at_mut(i * columns);
            for d in (1..=WIDTH.min(i)).rev() {
                take(&mut own[..columns], row[d - 1], &done[(i - d) * columns..]);
            }
        }
        for (row, pivot) in x.chunks_exact_mut(columns.max(1)).zip(diagonal) {
            for v in row {
                *v /= pivot;
            }
        }
        for j in (0..n).rev() {
            let (own, later) = x[j * columns..].split_at_mut(columns);
            for d in (1..=WIDTH.min(n - 1 - j)).rev() {
                take(own, below[j + d][d - 1], &later[(d - 1) * columns..]);
            }
        }
    }
}

/// Takes `factor` times a row from another one.
fn take(from: &mut [f64], factor: f64, row: &[f64]) {
    for (a, b) in from.iter_mut().zip(row) {
        *a -= factor * b;
    }
}

#[cfg(test)]
mod tests {
    use super::super::sparse::{Factor, Sparse, Tied};
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// What the sparse factorisation gives, to the last bit.
        #[test]
        fn as_the_sparse_one(
            n in 1usize..30,
            numbers in proptest::collection::vec((-1.0f64..1.0, 0u8..4), 30 * WIDTH),
            sides in proptest::collection::vec(-1.0f64..1.0, 60),
            heavy in 0.5f64..8.0,
        ) {
            let entries: Vec<(usize, usize, f64)> = (1..n)
                .flat_map(|i| (1..=WIDTH.min(i)).map(move |d| (i, i - d)))
                .zip(&numbers)
                .filter(|(_, (_, kept))| *kept > 0)
                .map(|((i, j), (v, _))| (i, j, *v))
                .collect();
            let groups: Vec<Tied> = entries.iter().map(|e| ([e.0, e.1, 0, 0, 0, 0], 2)).collect();
            let place: Vec<usize> = (0..n).collect();
            let (mut sparse, mut band) = (Sparse::new(&groups, &place), Band::new(n));
            for (i, j, v) in &entries {
                sparse.add(*i, *j, *v);
                band.add(*j, *i, *v);
            }
            for i in 0..n {
                sparse.add(i, i, heavy);
                band.add(i, i, heavy);
            }
            match (Factor::of(&sparse), band.factor()) {
                (Ok(one), Ok(other)) => {
                    let (mut x, mut y) = (sides[..2 * n].to_vec(), sides[..2 * n].to_vec());
                    one.solve(&mut x, 2);
                    other.solve(&mut y, 2);
                    prop_assert_eq!(x, y);
                }
                (one, other) => prop_assert_eq!(one.err(), other.err()),
            }
        }
    }
}
