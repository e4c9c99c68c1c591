//! The equations of the reliability estimate. Which values go in is decided in
//! `reliability_estimate.rs`.

use crate::math::{erfc, ln};
use crate::quantity::Force;
use crate::source::{DERIVED, RELIABILITY_LOGNORMAL};
use crate::trace::Trace;

/// Safety factor of the mean values as calculated.
///
/// FS = Q_ult / P
///
/// Q_ult ultimate resistance, N; P unfactored load, N, above 0. Source: definition. Positive.
pub(super) fn central_safety(ultimate: Force, load: Force, trace: &mut Trace) -> f64 {
    trace.step(
        "FS",
        "Q_ult / P",
        ultimate / load,
        [("Q_ult", ultimate.into()), ("P", load.into())],
        &DERIVED,
    )
}

/// Bias and coefficient of variation of resistance and load.
#[derive(Debug, Clone, Copy)]
pub(super) struct Scatter {
    pub resistance_bias: f64,
    pub resistance_cov: f64,
    pub load_bias: f64,
    pub load_cov: f64,
}

/// Reliability index.
///
/// beta = ln[(b_R / b_S) FS sqrt((1 + V_S^2) / (1 + V_R^2))]
///        / sqrt(ln[(1 + V_R^2) (1 + V_S^2)])
///
/// beta index; b_R, b_S bias of resistance and load; V_R, V_S their coefficients of
/// variation, not both 0; FS safety factor of the values as calculated, above 0. Range:
/// resistance and load lognormal and independent. Source: follows from the distributions.
/// Negative where the mean load is the larger.
pub(super) fn reliability_index(safety: f64, s: Scatter, trace: &mut Trace) -> f64 {
    let (r, l) = (
        1.0 + s.resistance_cov * s.resistance_cov,
        1.0 + s.load_cov * s.load_cov,
    );
    let margin = ln(s.resistance_bias / s.load_bias * safety * (l / r).sqrt());
    trace.step(
        "beta",
        "ln[(b_R / b_S) FS sqrt((1 + V_S^2) / (1 + V_R^2))] / sqrt(ln[(1 + V_R^2) (1 + V_S^2)])",
        margin / ln(r * l).sqrt(),
        [
            ("b_R", s.resistance_bias.into()),
            ("V_R", s.resistance_cov.into()),
            ("b_S", s.load_bias.into()),
            ("V_S", s.load_cov.into()),
            ("FS", safety.into()),
        ],
        &RELIABILITY_LOGNORMAL,
    )
}

/// Probability of failure.
///
/// p_f = Phi(-beta) = 1/2 erfc(beta / sqrt(2))
///
/// p_f probability that the load exceeds the resistance; beta reliability index. Range: any.
/// Source: standard normal distribution. 0 to 1.
pub(super) fn failure_probability(index: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "p_f",
        "1/2 erfc(beta / sqrt(2))",
        0.5 * erfc(index * std::f64::consts::FRAC_1_SQRT_2),
        [("beta", index.into())],
        &RELIABILITY_LOGNORMAL,
    )
}
