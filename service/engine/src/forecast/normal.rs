//! The standard normal distribution: density, both tails, quantile, and the ratio of density
//! to probability that a truncated normal needs. No engineering here.

use crate::math::{PI, erfc, exp, ln};

const SQRT_2: f64 = std::f64::consts::SQRT_2;

/// Density at z.
pub fn density(z: f64) -> f64 {
    exp(-0.5 * z * z) / (2.0 * PI).sqrt()
}

/// Probability below z.
pub fn below(z: f64) -> f64 {
    0.5 * erfc(-z / SQRT_2)
}

/// Value that is not exceeded with probability p, 0 < p < 1.
///
/// Starts at the rational approximation of Hastings and closes in by Halley's iteration, so
/// that the constants of the start are not in the result.
pub fn quantile(p: f64) -> f64 {
    let tail = p.min(1.0 - p).max(f64::MIN_POSITIVE);
    let t = (-2.0 * ln(tail)).sqrt();
    let start = t
        - (2.515517 + t * (0.802853 + t * 0.010328))
            / (1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
    let mut z = start;
    for _ in 0..4 {
        // upper tail minus what is wanted; relative, so that far tails are met too
        let error = 0.5 * erfc(z / SQRT_2) - tail;
        let step = -error / density(z);
        z -= step / (1.0 + 0.5 * z * step);
    }
    if p < 0.5 { -z } else { z }
}

/// Density over probability below, phi(b) / Phi(b), and the logarithm of that probability.
///
/// From -20 on by `erfc`; below by the continued fraction of the ratio, x + 1/(x + 2/(x +
/// 3/(...))) with x = -b, which has long converged there.
pub fn reversed_hazard(b: f64) -> (f64, f64) {
    if b > -20.0 {
        let probability = below(b);
        return (density(b) / probability, ln(probability));
    }
    let x = -b;
    let mut ratio = x;
    for k in (1..=40).rev() {
        ratio = x + f64::from(k) / ratio;
    }
    let log_density = -0.5 * b * b - 0.5 * ln(2.0 * PI);
    (ratio, log_density - ln(ratio))
}

/// Mean and variance of a normal variable that is known to be above a limit, and the
/// logarithm of the probability that it is.
///
/// b = (mean - limit) / sd; r = phi(b) / Phi(b); mean + sd r; sd^2 (1 - r (b + r))
pub fn above_limit(mean: f64, sd: f64, limit: f64) -> (f64, f64, f64) {
    let b = (mean - limit) / sd;
    let (r, log_probability) = reversed_hazard(b);
    // far below the limit the bracket is 1/b^2 and lost to rounding
    let share = (1.0 - r * (b + r)).max(0.5 / (1.0 + b * b)).min(1.0);
    (mean + sd * r, sd * sd * share, log_probability)
}
