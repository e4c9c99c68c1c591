//! The parts of the model against closed forms and direct integration.

use super::super::censored::Truncated;
use super::super::mixture::{Depth, Part};
use super::super::normal::{above_limit, below, density, quantile, reversed_hazard};
use super::super::posterior::{Evidence, Planned, forecast};
use super::*;
use crate::math::ln;

/// Values of any table of the normal distribution.
#[test]
fn quantiles_of_the_normal_distribution() {
    for (p, z) in [
        (0.5, 0.0),
        (0.9, 1.281_551_565_544_600_4),
        (0.95, 1.644_853_626_951_472_2),
        (0.975, 1.959_963_984_540_054),
        (1e-9, -5.997_807_015_007_769),
    ] {
        near(quantile(p), z, 2e-13);
        near(below(quantile(p)), p, 1e-14);
    }
}

/// The continued fraction takes over where the ratio itself can still be formed.
#[test]
fn the_hazard_is_one_function() {
    for b in [-20.5, -22.0, -30.0] {
        let (ratio, log_probability) = reversed_hazard(b);
        near(ratio / (density(b) / below(b)), 1.0, 1e-12);
        near(log_probability / ln(below(b)), 1.0, 1e-12);
    }
    // to first order the mean beyond a limit far out is 1/x beyond it
    let (mean, variance, _) = above_limit(0.0, 1.0, 1e4);
    near(mean, 1e4 + 1e-4, 1e-9);
    assert!(variance > 0.0 && variance < 2e-8);
}

/// Moments and probability of a half plane by direct integration.
fn by_integration(mean: [f64; 2], c: [f64; 3], limit: [f64; 2]) -> (f64, [f64; 2]) {
    let (s0, slope) = (c[0].sqrt(), c[1] / c[0]);
    let rest = (c[2] - c[1] * slope).sqrt();
    let step = 2e-4 * s0;
    let (mut total, mut moments) = (0.0, [0.0, 0.0]);
    let mut x = limit[0] + 0.5 * step;
    while x < mean[0].max(limit[0]) + 10.0 * s0 {
        let weight = density((x - mean[0]) / s0) / s0 * step;
        let m1 = mean[1] + slope * (x - mean[0]);
        let (y, _, log) = above_limit(m1, rest, limit[1]);
        let inside = weight * exp(log);
        total += inside;
        moments = [moments[0] + inside * x, moments[1] + inside * y];
        x += step;
    }
    (total, moments.map(|m| m / total))
}

#[test]
fn limits_on_one_pile_are_exact_and_on_two_close() {
    let one = Truncated::of(&[6.0], &[0.49], &[6.5]).unwrap();
    let (mean, variance, log) = above_limit(6.0, 0.7, 6.5);
    near(one.log_probability, log, 1e-12);
    near(6.0 + 0.49 * one.shift[0], mean, 1e-12);
    let taken = one.taken(&[0.49]);
    near(0.49 - taken[0] * taken[0], variance, 1e-12);
    near(one.cavity_mean[0], 6.0, 1e-12);
    near(one.cavity_sd[0], 0.7, 1e-12);

    for (mean, c, limit) in [
        ([6.0, 6.0], [0.5, 0.3, 0.6], [6.5, 6.2]),
        ([6.0, 6.3], [0.5, 0.45, 0.5], [7.0, 7.2]),
        ([5.0, 9.0], [1.0, -0.3, 0.4], [5.5, 8.0]),
    ] {
        let two = Truncated::of(&mean, &[c[0], c[1], c[1], c[2]], &limit).unwrap();
        let (probability, moments) = by_integration(mean, c, limit);
        let first = mean[0] + c[0] * two.shift[0] + c[1] * two.shift[1];
        let second = mean[1] + c[1] * two.shift[0] + c[2] * two.shift[1];
        near(two.log_probability, ln(probability), 0.03);
        near(first, moments[0], 0.02 * c[0].sqrt());
        near(second, moments[1], 0.02 * c[2].sqrt());
    }
}

/// Without places and with a flat mean the depth of a new pile given the scatter is normal
/// about the mean of the logs with variance s^2 (1 + 1/n), and the weight of s is s^(1-n)
/// exp(-S / 2 s^2) times its prior.
#[test]
fn piles_without_places_follow_from_mean_and_squares() {
    let known = [5.5, 6.0, 6.2, 7.1];
    let mean = known.iter().sum::<f64>() / 4.0;
    let squares: f64 = known.iter().map(|y| (y - mean) * (y - mean)).sum();
    let evidence = Evidence {
        met: known.iter().map(|y| (None, *y)).collect(),
        planned: vec![Planned {
            place: None,
            least: 0.0,
            driven: None,
        }],
        ..Evidence::default()
    };
    let posterior = forecast(&evidence, &Work::default()).unwrap();
    let (mut total, mut expected) = (0.0, 0.0);
    for step in -15..=15 {
        let z = f64::from(step) * 0.2;
        let s = 0.8 * exp(0.8 * z);
        let weight = exp(-0.5 * z * z) / (s * s * s) * exp(-squares / (2.0 * s * s));
        total += weight;
        expected += weight * below((7.0 - mean) / (s * 1.25_f64.sqrt()));
    }
    near(posterior.depths[0].not_deeper(7.0), expected / total, 1e-7);
    near(posterior.average.0, mean, 1e-9);
}

/// A stated mean with the scatter much smaller is a weighted mean: after n logs with mean y and
/// variance s^2 it is (n y / s^2 + mu / tau^2) / (n / s^2 + 1 / tau^2), for each scatter.
#[test]
fn a_stated_mean_pulls_by_its_precision() {
    let evidence = |mu: f64| Evidence {
        met: [5.9, 6.0, 6.1].iter().map(|y| (None, *y)).collect(),
        planned: vec![Planned {
            place: None,
            least: 0.0,
            driven: None,
        }],
        prior: Some((mu, 0.5)),
        ..Evidence::default()
    };
    let at = |mu| forecast(&evidence(mu), &Work::default()).unwrap();
    let agreeing = at(6.0);
    near(agreeing.average.0, 6.0, 1e-9);
    assert!(agreeing.widths[0] > 0.6, "{:?}", agreeing.widths);
    let high = at(6.5).average.0;
    assert!(high > 6.0 && high < 6.2, "{high}");
    // far off, the stated depth is hardly believed and the logs win
    let off = at(16.0);
    near(off.average.0, 6.0, 0.1);
    assert!(off.widths[0] < 1e-3, "{:?}", off.widths);
}

#[test]
fn quantiles_of_a_cut_off_mixture_are_its_inverse() {
    let part = |weight, mean, sd| Part { weight, mean, sd };
    for passed in [None, Some(6.2), Some(12.0)] {
        let depth = Depth {
            parts: vec![
                part(0.3, 5.0, 0.4),
                part(0.5, 6.0, 1.0),
                part(0.2, 9.0, 0.2),
            ],
            passed,
            least: 0.0,
        };
        for p in [1e-6, 0.05, 0.3, 0.5, 0.9, 0.999] {
            let x = depth.quantile(p);
            assert!(passed.is_none_or(|passed| x > passed), "{x}");
            near(depth.not_deeper(x), p, 1e-9);
        }
    }
    let shallow = Depth {
        parts: vec![part(1.0, 5.0, 0.4)],
        passed: None,
        least: 5.4,
    };
    assert_eq!(shallow.quantile(0.5), 5.4);
    near(shallow.not_deeper(5.4), below(1.0), 1e-12);
    assert_eq!(shallow.not_deeper(5.399), 0.0);
}
