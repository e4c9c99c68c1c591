//! The depth of one pile as a weighted sum of normal distributions, one for each ground that
//! the logs allow; cut off below where the pile has got to already. Distribution function,
//! quantiles and the final depth that follows with the least depth of its tip.

use super::normal::{below, density, quantile, reversed_hazard};
use crate::math::exp;

/// The depth by one ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Part {
    /// Weight; those of a pile sum to one.
    pub weight: f64,
    /// Mean, m.
    pub mean: f64,
    /// Standard deviation, m.
    pub sd: f64,
}

/// The depth at which one pile meets its torque, and its final depth.
#[derive(Debug, Clone, PartialEq)]
pub struct Depth {
    /// By each ground.
    pub parts: Vec<Part>,
    /// Depth that the pile has got to without meeting its torque, m: it goes deeper.
    pub passed: Option<f64>,
    /// Least final depth, m.
    pub least: f64,
}

impl Part {
    /// Probability below a depth, and the density there; given that the pile goes deeper than
    /// `passed`.
    fn at(&self, x: f64, passed: Option<f64>) -> (f64, f64) {
        let z = (x - self.mean) / self.sd;
        let Some(passed) = passed else {
            return (below(z), density(z) / self.sd);
        };
        if x <= passed {
            return (0.0, 0.0);
        }
        let (hazard, log_deeper) = reversed_hazard(-z);
        let (_, log_passed) = reversed_hazard((self.mean - passed) / self.sd);
        let deeper = exp(log_deeper - log_passed);
        (1.0 - deeper, hazard * deeper / self.sd)
    }
}

impl Depth {
    /// Probability that the torque is met above a depth, and the density there.
    fn at(&self, x: f64) -> (f64, f64) {
        let add = |sum: (f64, f64), part: &Part| {
            let (p, d) = part.at(x, self.passed);
            (sum.0 + part.weight * p, sum.1 + part.weight * d)
        };
        self.parts.iter().fold((0.0, 0.0), add)
    }

    /// Probability that the final depth is at most this.
    pub fn not_deeper(&self, x: f64) -> f64 {
        if x < self.least {
            return 0.0;
        }
        if self.passed.is_some() {
            return self.at(x).0;
        }
        // the density is not needed
        let add = |sum: f64, part: &Part| sum + part.weight * below((x - part.mean) / part.sd);
        self.parts.iter().fold(0.0, add)
    }

    /// Final depth not exceeded with probability p, 0 < p < 1.
    pub fn quantile(&self, p: f64) -> f64 {
        self.torque_quantile(p).max(self.least)
    }

    /// Depth above which the torque is met with probability p: Newton's iteration within
    /// bounds, halved where it leaves them.
    pub fn torque_quantile(&self, p: f64) -> f64 {
        let spread = |most: f64, part: &Part| most.max(part.mean + 9.0 * part.sd);
        let mut high = self.parts.iter().fold(f64::NEG_INFINITY, spread);
        let spread = |least: f64, part: &Part| least.min(part.mean - 9.0 * part.sd);
        let mut low = self.parts.iter().fold(f64::INFINITY, spread);
        if let Some(passed) = self.passed {
            let widest = self.parts.iter().fold(0.0, |most: f64, p| most.max(p.sd));
            (low, high) = (passed, high.max(passed + 9.0 * widest));
        }
        // begins where one normal distribution would have it
        let (mean, square) = self.parts.iter().fold((0.0, 0.0), |sum, p| {
            let square = p.mean * p.mean + p.sd * p.sd;
            (sum.0 + p.weight * p.mean, sum.1 + p.weight * square)
        });
        let sd = (square - mean * mean).max(0.0).sqrt();
        let mut x = (mean + quantile(p) * sd).clamp(low, high);
        for _ in 0..200 {
            let (probability, slope) = self.at(x);
            if probability < p {
                low = x
            } else {
                high = x
            }
            let next = x + (p - probability) / slope;
            let next = if next > low && next < high {
                next
            } else {
                0.5 * (low + high)
            };
            let step = (next - x).abs();
            x = next;
            if step <= 1e-13 * (1.0 + x.abs()) {
                break;
            }
        }
        x
    }
}
