//! Along a line, piece by piece: in a case, in a combination of cases, or in many combinations
//! at once. What is within a piece is told in `extreme`.

use std::ops::Range;

use super::abreast::{ABREAST, Ends, Pieces};
use super::{Extremes, Line, LineSolution, Piece};

/// Factors of several combinations of the same cases.
#[derive(Debug, Clone, PartialEq)]
pub struct Factors {
    combinations: usize,
    cases: usize,
    /// Block by block of combinations, one row a case; nil beyond the last combination.
    blocks: Vec<[f64; ABREAST]>,
}

impl Factors {
    /// Of combinations, each with one factor a case.
    pub fn new<'a>(each: impl ExactSizeIterator<Item = &'a [f64]>, cases: usize) -> Self {
        let combinations = each.len();
        let mut blocks = vec![[0.0; ABREAST]; combinations.div_ceil(ABREAST) * cases];
        for (c, factors) in each.enumerate() {
            let first = c / ABREAST * cases;
            for (row, f) in blocks[first..].iter_mut().zip(factors) {
                row[c % ABREAST] = *f;
            }
        }
        Self {
            combinations,
            cases,
            blocks,
        }
    }

    /// How many combinations.
    pub fn combinations(&self) -> usize {
        self.combinations
    }

    /// First combinations of the blocks, and the factors of each.
    fn blocks(&self) -> impl Iterator<Item = (usize, &[[f64; ABREAST]])> {
        let firsts = (0..self.combinations).step_by(ABREAST);
        firsts.zip(self.blocks.chunks_exact(self.cases.max(1)))
    }

    /// Sums of values laid out one row a thing and one column a case: one row a thing, one column
    /// a combination. Each is what the combination gives alone, to the last bit.
    pub fn sums(&self, values: &[f64], rows: usize) -> Vec<f64> {
        let (n, m) = (self.combinations, self.cases);
        let mut out = vec![0.0; rows * n];
        for (first, factors) in self.blocks() {
            let count = ABREAST.min(n - first);
            for row in 0..rows {
                let at = row * n + first;
                let all = sum(&values[row * m..(row + 1) * m], factors);
                let to = &mut out[at..at + count];
                match to.as_mut_array::<ABREAST>() {
                    Some(to) => *to = all,
                    None => to.copy_from_slice(&all[..count]),
                }
            }
        }
        out
    }
}

fn sum(values: &[f64], factors: &[[f64; ABREAST]]) -> [f64; ABREAST] {
    let mut out = [0.0; ABREAST];
    for (value, row) in values.iter().zip(factors) {
        for (sum, f) in out.iter_mut().zip(row) {
            *sum += value * f;
        }
    }
    out
}

impl LineSolution {
    /// Walks along the line in the combination `factors` (one a case), piece by piece.
    pub fn walk(&self, line: &Line, factors: &[f64], visit: impl FnMut(Piece)) {
        let m = self.loads.cases;
        let sum = |values: &[f64], row: usize| -> f64 {
            let mut sum = 0.0;
            for (v, f) in values[row * m..(row + 1) * m].iter().zip(factors) {
                sum += v * f;
            }
            sum
        };
        self.walk_by(line, sum, visit);
    }

    /// Walks along the line in one case.
    pub fn walk_case(&self, line: &Line, case: usize, visit: impl FnMut(Piece)) {
        let m = self.loads.cases;
        let value = |values: &[f64], row: usize| values[row * m + case];
        self.walk_by(line, value, visit);
    }

    fn walk_by(
        &self,
        line: &Line,
        value: impl Fn(&[f64], usize) -> f64,
        mut visit: impl FnMut(Piece),
    ) {
        let cut = &self.loads;
        let (mut shear, mut moment) = (0.0, 0.0);
        let mut node = 0;
        for s in 0..cut.stations.len() - 1 {
            if node < line.nodes.len() && cut.node_station[node] == s {
                shear = value(&self.shear_right, node);
                moment = value(&self.moment_right, node);
                node += 1;
            } else {
                shear -= value(&cut.force, s);
                moment += value(&cut.couple, s);
            }
            let piece = Piece {
                from: cut.stations[s],
                to: cut.stations[s + 1],
                shear,
                moment,
                start: value(&cut.start, s),
                end: value(&cut.end, s),
            };
            (shear, moment) = piece.at_end();
            visit(piece);
        }
    }

    /// Walks along the line in all combinations, several abreast: shown each piece in so many of
    /// them from one on, and what there is where it ends. Each combination is walked along from
    /// piece to piece, with the numbers of [`LineSolution::walk`] to the last bit.
    pub fn walk_together(
        &self,
        line: &Line,
        factors: &Factors,
        mut visit: impl FnMut(Range<usize>, &Pieces<ABREAST>, &Ends<ABREAST>),
    ) {
        let (cut, m) = (&self.loads, self.loads.cases);
        let combinations = factors.combinations();
        for (first, factors) in factors.blocks() {
            let sums = |values: &[f64], row: usize| sum(&values[row * m..(row + 1) * m], factors);
            let these = first..combinations.min(first + ABREAST);
            let (mut shear, mut moment) = ([0.0; ABREAST], [0.0; ABREAST]);
            let mut node = 0;
            for s in 0..cut.stations.len() - 1 {
                if node < line.nodes.len() && cut.node_station[node] == s {
                    shear = sums(&self.shear_right, node);
                    moment = sums(&self.moment_right, node);
                    node += 1;
                } else {
                    let (force, couple) = (sums(&cut.force, s), sums(&cut.couple, s));
                    for i in 0..ABREAST {
                        shear[i] -= force[i];
                        moment[i] += couple[i];
                    }
                }
                let pieces = Pieces {
                    from: cut.stations[s],
                    to: cut.stations[s + 1],
                    shear,
                    moment,
                    start: sums(&cut.start, s),
                    end: sums(&cut.end, s),
                };
                let ends = pieces.ends();
                visit(these.clone(), &pieces, &ends);
                (shear, moment) = (ends.shear, ends.moment);
            }
        }
    }

    /// Extremes of the whole line in a combination.
    pub fn extremes(&self, line: &Line, factors: &[f64]) -> Option<Extremes> {
        let mut found = None;
        self.walk(line, factors, |piece| {
            piece.widen(piece.at_end(), &mut found);
        });
        found
    }
}
