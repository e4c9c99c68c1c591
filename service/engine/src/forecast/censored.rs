//! Piles whose log ended above its torque: all that is known of each is that it goes deeper
//! than where it ended. Matching of moments, one pile after the other, a fixed number of times.

use super::matrix::{Factor, dot};
use super::normal::above_limit;
use crate::math::ln;

/// Times that every pile is gone through. The matching has settled to 1e-9 of the scatter after
/// six for twenty piles that hang together closely.
pub const SWEEPS: usize = 10;

/// What the limits say.
#[derive(Debug)]
pub struct Truncated {
    /// Logarithm of the probability that all are beyond their limits.
    pub log_probability: f64,
    /// Mean of each without its own limit, and with those of all others.
    pub cavity_mean: Vec<f64>,
    /// Its standard deviation.
    pub cavity_sd: Vec<f64>,
    /// Weights by which another pile's covariances with these shift its mean.
    pub shift: Vec<f64>,
    /// Square root of the precision of each as it was matched.
    root: Vec<f64>,
    /// Factor of I + root C root.
    factor: Factor,
}

impl Truncated {
    /// From mean, covariance (row by row) and limit of each; `None` only where rounding has
    /// spoilt the covariance.
    ///
    /// Each limit stands as a normal factor with the precision t and the shift n that give the
    /// moments of the truncated variable (expectation propagation); with one pile it is exact.
    pub fn of(mean: &[f64], covariance: &[f64], limit: &[f64]) -> Option<Self> {
        let size = mean.len();
        // about the means: the variables have mean nil
        let limit: Vec<f64> = limit.iter().zip(mean).map(|(c, m)| c - m).collect();
        let mut precision = vec![0.0; size];
        let mut pull = vec![0.0; size];
        let mut now = covariance.to_vec();
        let mut at = vec![0.0; size];
        let mut cavity = vec![(0.0, 0.0, 0.0); size];
        for sweep in 0..=SWEEPS {
            for i in 0..size {
                let variance = now[i * size + i];
                let cavity_precision = 1.0 / variance - precision[i];
                let cavity_pull = at[i] / variance - pull[i];
                let (m, v) = (cavity_pull / cavity_precision, 1.0 / cavity_precision);
                let (matched, spread, log_probability) = above_limit(m, v.sqrt(), limit[i]);
                cavity[i] = (m, v, log_probability);
                if sweep == SWEEPS {
                    continue;
                }
                let before = precision[i];
                precision[i] = (1.0 / spread - cavity_precision).max(0.0);
                pull[i] = matched / spread - cavity_pull;
                let change = precision[i] - before;
                let column: Vec<f64> = (0..size).map(|j| now[j * size + i]).collect();
                let scale = change / (1.0 + change * variance);
                for (j, of_j) in column.iter().enumerate() {
                    for (k, of_k) in column.iter().enumerate() {
                        now[j * size + k] -= scale * of_j * of_k;
                    }
                }
                for (j, place) in at.iter_mut().enumerate() {
                    *place = dot(&now[j * size..][..size], &pull);
                }
            }
        }
        let root: Vec<f64> = precision.iter().map(|p| p.sqrt()).collect();
        let factor = Factor::of(size, |i, j| {
            f64::from(u8::from(i == j)) + root[i] * covariance[i * size + j] * root[j]
        })?;
        let mut log_probability = -0.5 * factor.log_determinant() + 0.5 * dot(&pull, &at);
        for i in 0..size {
            let ((m, v, log_one), t, n) = (cavity[i], precision[i], pull[i]);
            let sum = t + 1.0 / v;
            log_probability += log_one + 0.5 * ln(1.0 + t * v) - 0.5 * n * n / sum
                + 0.5 * m / v * (t * m - 2.0 * n) / sum;
        }
        let mut all = Self {
            log_probability,
            cavity_mean: cavity.iter().zip(mean).map(|(c, m)| c.0 + m).collect(),
            cavity_sd: cavity.iter().map(|c| c.1.sqrt()).collect(),
            shift: Vec::new(),
            root,
            factor,
        };
        let moved: Vec<f64> = (0..size)
            .map(|i| dot(&covariance[i * size..][..size], &pull))
            .collect();
        let back = all.factor.forward(&all.rooted(&moved));
        // (C + 1/t)^-1 C n = root (I + root C root)^-1 root C n, by both halves of the factor
        let back = all.factor.backward(&back);
        all.shift = (0..size).map(|i| pull[i] - all.root[i] * back[i]).collect();
        Some(all)
    }

    fn rooted(&self, row: &[f64]) -> Vec<f64> {
        row.iter().zip(&self.root).map(|(x, r)| x * r).collect()
    }

    /// A row of covariances with the limited piles, so that the product of two such rows is
    /// what the limits take from the covariance of the two.
    pub fn taken(&self, row: &[f64]) -> Vec<f64> {
        self.factor.forward(&self.rooted(row))
    }
}
