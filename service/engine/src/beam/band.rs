//! A symmetric positive definite matrix with a narrow band and its factorisation L D L', as a
//! straight line of beam has it. Its numbers are those of `sparse`, which does the same products
//! in the same order. Knows nothing of beams.

use super::sparse::{PIVOT_MIN, Stopped};

/// Entries of a row before the diagonal: the deflection and the slope of one node, and the slope
/// or the deflection of the next one.
pub(super) const WIDTH: usize = 3;

const _: () = assert!(WIDTH == 3, "the first rows are told apart one by one");

/// Columns that are solved at once where there are more than that.
const ABREAST: usize = 4;

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
            let done = match k {
                0 => self.factor_row::<0>(k),
                1 => self.factor_row::<1>(k),
                2 => self.factor_row::<2>(k),
                _ => self.factor_row::<WIDTH>(k),
            };
            done?;
        }
        Ok(BandFactor(self))
    }

    /// Factorises a row that has so many entries before the diagonal. With their number known
    /// beforehand nothing goes through memory.
    #[inline(always)]
    fn factor_row<const ENTRIES: usize>(&mut self, k: usize) -> Result<(), Stopped> {
        let given = self.diagonal[k];
        let mut pivot = given;
        let mut row = self.below[k];
        for d in (1..=ENTRIES).rev() {
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
        Ok(())
    }
}

impl BandFactor {
    /// Solves for all columns at once; `x` holds one row of `columns` numbers an unknown.
    pub fn solve(&self, x: &mut [f64], columns: usize) {
        match columns {
            0 => {}
            1 => self.solve_rows(x.as_chunks_mut::<1>().0),
            2 => self.solve_rows(x.as_chunks_mut::<2>().0),
            3 => self.solve_rows(x.as_chunks_mut::<3>().0),
            4 => self.solve_rows(x.as_chunks_mut::<4>().0),
            _ => self.solve_blocks(x, columns),
        }
    }

    /// So many columns that it is known beforehand; what each column is solved to is the same.
    fn solve_rows<const M: usize>(&self, x: &mut [[f64; M]]) {
        let Band { below, diagonal } = &self.0;
        let n = diagonal.len();
        for i in 0..n {
            match i {
                0 => {}
                1 => forward::<M, 1>(below, x, i),
                2 => forward::<M, 2>(below, x, i),
                _ => forward::<M, WIDTH>(below, x, i),
            }
        }
        for j in (0..n).rev() {
            x[j] = x[j].map(|v| v / diagonal[j]);
            match n - 1 - j {
                0 => {}
                1 => backward::<M, 1>(below, x, j),
                2 => backward::<M, 2>(below, x, j),
                _ => backward::<M, WIDTH>(below, x, j),
            }
        }
    }

    /// So many at a time, nil beyond the last one.
    fn solve_blocks(&self, x: &mut [f64], columns: usize) {
        let mut block = vec![[0.0; ABREAST]; self.0.diagonal.len()];
        for first in (0..columns).step_by(ABREAST) {
            let own = first..columns.min(first + ABREAST);
            for (to, row) in block.iter_mut().zip(x.chunks_exact(columns)) {
                to[..own.len()].copy_from_slice(&row[own.clone()]);
                to[own.len()..].fill(0.0);
            }
            self.solve_rows(&mut block);
            for (from, row) in block.iter().zip(x.chunks_exact_mut(columns)) {
                row[own.clone()].copy_from_slice(&from[..own.len()]);
            }
        }
    }
}

/// Takes from row `i` its so many entries times the rows before it.
#[inline(always)]
fn forward<const M: usize, const ENTRIES: usize>(
    below: &[[f64; WIDTH]],
    x: &mut [[f64; M]],
    i: usize,
) {
    let mut own = x[i];
    for d in (1..=ENTRIES).rev() {
        take(&mut own, below[i][d - 1], &x[i - d]);
    }
    x[i] = own;
}

/// Takes from row `j` the entries in its column times so many rows after it.
#[inline(always)]
fn backward<const M: usize, const ENTRIES: usize>(
    below: &[[f64; WIDTH]],
    x: &mut [[f64; M]],
    j: usize,
) {
    let mut own = x[j];
    for d in (1..=ENTRIES).rev() {
        take(&mut own, below[j + d][d - 1], &x[j + d]);
    }
    x[j] = own;
}

/// Takes `factor` times a row from another one.
#[inline]
fn take<const M: usize>(from: &mut [f64; M], factor: f64, row: &[f64; M]) {
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
            sides in proptest::collection::vec(-1.0f64..1.0, 30 * 9),
            columns in 1usize..=9,
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
                    let mut x = sides[..columns * n].to_vec();
                    let mut y = x.clone();
                    one.solve(&mut x, columns);
                    other.solve(&mut y, columns);
                    prop_assert_eq!(x, y);
                }
                (one, other) => prop_assert_eq!(one.err(), other.err()),
            }
        }
    }
}
