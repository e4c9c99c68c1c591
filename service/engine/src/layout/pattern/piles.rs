//! Greatest and least reactions over all ways to load the parts.

use super::parts::Part;
use super::solve::Asked;
use crate::layout::analysis::{Range, Solved, above};

/// A share of a part's load below which a reaction is rounding.
const NOISE: f64 = 1e-12;

/// Reactions by combination and pile: with the worst parts, in both directions.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::layout) struct PileEnvelope {
    piles: usize,
    /// One row a combination, one column a pile.
    most: Vec<f64>,
    least: Vec<f64>,
}

impl PileEnvelope {
    /// All loads everywhere.
    pub(super) fn new(asked: &Asked<'_>, base: &Solved) -> Self {
        let piles = asked.places.len();
        let all: Vec<f64> = asked
            .combinations
            .iter()
            .flat_map(|c| (0..piles).map(|p| base.reaction(p, &c.factors)))
            .collect();
        Self {
            piles,
            most: all.clone(),
            least: all,
        }
    }

    /// Takes a part away wherever that is worse.
    ///
    /// R_max = R - sum of min(0, gamma r_i), R_min = R - sum of max(0, gamma r_i); R all loads
    /// everywhere, r_i part i alone (N), gamma factor of its case. Source: superposition.
    pub(super) fn add(&mut self, asked: &Asked<'_>, part: &Part, reaction: impl Fn(usize) -> f64) {
        let own: Vec<f64> = (0..self.piles).map(reaction).collect();
        for (c, combination) in asked.combinations.iter().enumerate() {
            let factor = combination.factors[part.case];
            if factor == 0.0 {
                continue;
            }
            let row = c * self.piles;
            for (p, r) in own.iter().enumerate() {
                if r.abs() <= NOISE * part.size {
                    continue;
                }
                let value = factor * r;
                if value < 0.0 {
                    self.most[row + p] -= value;
                } else {
                    self.least[row + p] -= value;
                }
            }
        }
    }

    /// Greatest reaction of a pile in a combination.
    pub fn most(&self, combination: usize, pile: usize) -> f64 {
        self.most[combination * self.piles + pile]
    }

    /// Least reaction of a pile in a combination.
    pub fn least(&self, combination: usize, pile: usize) -> f64 {
        self.least[combination * self.piles + pile]
    }

    /// Range of a pile over all combinations.
    pub fn range(&self, pile: usize) -> Range {
        let mut range = Range {
            max: self.most(0, pile),
            max_in: 0,
            min: self.least(0, pile),
            min_in: 0,
        };
        for c in 1..self.most.len() / self.piles.max(1) {
            if above(self.most(c, pile), range.max) {
                (range.max, range.max_in) = (self.most(c, pile), c);
            }
            if above(range.min, self.least(c, pile)) {
                (range.min, range.min_in) = (self.least(c, pile), c);
            }
        }
        range
    }
}
