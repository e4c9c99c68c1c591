//! What is not known of the ground beforehand: the scatter of depth, how much of it belongs
//! to a single pile, how far in plan it holds together, and how much a stated forecast is
//! believed; each as a fixed list of values with prior weights.

use crate::math::exp;
use crate::source::{FORECAST_PRIORS, Sourced};

/// Median of the standard deviation of the depth of one pile beforehand, m. Depths of piles
/// on one lot that were meant to be equal differ by some 3 ft either way; 2.6 ft.
pub static SCATTER_MEDIAN: Sourced<f64> =
    Sourced::new("forecast_scatter_median", 0.8, &FORECAST_PRIORS);
/// Standard deviation of the logarithm of that scatter: 95 % of grounds between 0.17 m and
/// 3.8 m, so that three logs are not taken for the whole truth and twelve overrule it.
pub static SCATTER_LOG_SD: Sourced<f64> =
    Sourced::new("forecast_scatter_log_sd", 0.8, &FORECAST_PRIORS);
/// Scatter within a pile (noise of its readings) over scatter between piles; each as likely
/// as the others.
pub static NOISE_RATIOS: Sourced<[f64; 4]> = Sourced::new(
    "forecast_noise_ratios",
    [1.0 / 3.0, 2.0 / 3.0, 1.0, 2.0],
    &FORECAST_PRIORS,
);
/// Distances in plan, m, over which the correlation between piles falls to 1/e; each as
/// likely as the others. From a pile's own spacing to several lots: over 50 m a house sees
/// hardly more than a slope, which is how a trend across the plan is taken in.
pub static CORRELATION_LENGTHS: Sourced<[f64; 4]> = Sourced::new(
    "forecast_correlation_lengths",
    [3.0, 8.0, 20.0, 50.0],
    &FORECAST_PRIORS,
);
/// How many times wider than stated the forecast of the mean depth may be, with its weight: a
/// heavy-tailed prior that the logs overrule when it is wrong.
pub static PRIOR_WIDTHS: Sourced<[(f64, f64); 3]> = Sourced::new(
    "forecast_prior_widths",
    [(1.0, 0.6), (3.0, 0.3), (9.0, 0.1)],
    &FORECAST_PRIORS,
);
/// Steps of the scatter to either side of its median, and their length in standard deviations
/// of its logarithm.
const SCATTER_STEPS: i32 = 15;
const SCATTER_STEP: f64 = 0.2;

/// How piles hang together in plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Texture {
    /// Share of the variance that belongs to a single pile: q^2 / (1 + q^2).
    pub own_share: f64,
    /// Correlation length, m; none where piles are independent given the mean.
    pub length: Option<f64>,
    /// Weight beforehand.
    pub weight: f64,
}

/// The values of texture: one where there are no places in plan, since then the two scatters
/// cannot be told apart and need not be.
pub fn textures(places: bool) -> Vec<Texture> {
    if !places {
        return vec![Texture {
            own_share: 1.0,
            length: None,
            weight: 1.0,
        }];
    }
    let (ratios, lengths) = (NOISE_RATIOS.value, CORRELATION_LENGTHS.value);
    let weight = 1.0 / (ratios.len() * lengths.len()) as f64;
    let mut all = Vec::new();
    for q in ratios {
        for length in lengths {
            all.push(Texture {
                own_share: q * q / (1.0 + q * q),
                length: Some(length),
                weight,
            });
        }
    }
    all
}

/// The values of scatter, m, with their weights: a lognormal prior by equal steps of the
/// logarithm.
pub fn scatters() -> Vec<(f64, f64)> {
    let at = |step: i32| {
        let z = f64::from(step) * SCATTER_STEP;
        let scatter = SCATTER_MEDIAN.value * exp(SCATTER_LOG_SD.value * z);
        (scatter, exp(-0.5 * z * z))
    };
    let all: Vec<_> = (-SCATTER_STEPS..=SCATTER_STEPS).map(at).collect();
    let total = all.iter().fold(0.0, |sum, (_, weight)| sum + weight);
    all.iter().map(|(s, weight)| (*s, weight / total)).collect()
}
