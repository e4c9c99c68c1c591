//! The torque factors of several tests on one site: mean, scatter, and a lower value of the
//! mean. The factor of the one test is in `site.rs`.

use super::codes::{methods, warnings};
use super::outcome::*;
use super::request::{OtherSiteTest, Request};
use crate::catalogue::refusals::{DUPLICATE_LABEL, MISSING_MEMBER};
use crate::contract::{Issue, Work};
use crate::quantity::{TorqueFactor, round9};
use crate::source::{BEARWELL_CHOICE, SAMPLE_STATISTICS, STUDENT_T, Sourced};
use crate::trace::Trace;

/// Probability that the mean is above its lower value.
pub static CONFIDENCE: Sourced<f64> =
    Sourced::new("site_torque_factor_confidence", 0.95, &BEARWELL_CHOICE);
/// Fewest tests for a lower value.
pub static LOWER_FROM: Sourced<usize> =
    Sourced::new("site_torque_factor_lower_from", 3, &BEARWELL_CHOICE);
/// Coefficient of variation from which the scatter is told: with more, a pile two standard
/// deviations below the mean has less than half of what the mean gives, and a safety factor
/// of 2 is used up.
pub static SCATTER: Sourced<f64> =
    Sourced::new("site_torque_factor_scatter_ratio", 0.25, &BEARWELL_CHOICE);
/// Quantiles of Student for 95 %, one-sided, of 2 to 20 degrees of freedom.
pub static QUANTILES: Sourced<[f64; 19]> = Sourced::new(
    "student_t_one_sided_95",
    [
        2.919985580,
        2.353363435,
        2.131846786,
        2.015048373,
        1.943180281,
        1.894578605,
        1.859548038,
        1.833112933,
        1.812461123,
        1.795884819,
        1.782287556,
        1.770933396,
        1.761310136,
        1.753050356,
        1.745883676,
        1.739606726,
        1.734063607,
        1.729132812,
        1.724718243,
    ],
    &STUDENT_T,
);

/// Mean of torque factors.
///
/// m = sum K_t / n
///
/// K_t torque factors, 1/m; n their number, at least 1. Source: arithmetic. Positive.
pub fn mean(factors: &[TorqueFactor], trace: &mut Trace) -> TorqueFactor {
    let n = factors.len() as f64;
    trace.step(
        "m",
        "sum K_t / n",
        factors.iter().copied().sum::<TorqueFactor>() / n,
        [("n", n.into())],
        &SAMPLE_STATISTICS,
    )
}

/// Standard deviation of torque factors.
///
/// d = sqrt(sum (K_t - m)2 / (n - 1))
///
/// K_t torque factors, 1/m; m their mean, 1/m; n their number, at least 2. Source: arithmetic of
/// a sample. Not negative.
pub fn standard_deviation(
    factors: &[TorqueFactor],
    mean: TorqueFactor,
    trace: &mut Trace,
) -> TorqueFactor {
    let n = factors.len() as f64;
    let off = |k: &TorqueFactor| (k.si() - mean.si()) * (k.si() - mean.si());
    let squares: f64 = factors.iter().map(off).sum();
    trace.step(
        "d",
        "sqrt(sum (K_t - m)2 / (n - 1))",
        TorqueFactor::from_si((squares / (n - 1.0)).sqrt()),
        [("n", n.into()), ("m", mean.into())],
        &SAMPLE_STATISTICS,
    )
}

/// Quantile of Student, one-sided.
///
/// P(T <= t) = 0.95 of n - 1 degrees of freedom
///
/// n number of tests, 3 to 21; none beyond. Source: the distribution itself. Positive.
pub fn quantile(tests: usize) -> Option<f64> {
    QUANTILES
        .value
        .get(tests.checked_sub(LOWER_FROM.value)?)
        .copied()
}

/// Lower confidence limit of the mean of normally distributed torque factors.
///
/// K_t,low = m - t d / sqrt(n)
///
/// m mean, 1/m; d standard deviation of the sample, 1/m; n number of tests, 3 to 21; t quantile
/// of Student of n - 1 degrees of freedom: (m - mu) sqrt(n) / d has that distribution, and is
/// at most t with the probability asked for. Source: Student. Below the mean; negative where
/// the scatter is too large.
pub fn lower_mean(
    mean: TorqueFactor,
    deviation: TorqueFactor,
    tests: usize,
    quantile: f64,
    trace: &mut Trace,
) -> TorqueFactor {
    let n = tests as f64;
    trace.step(
        "K_t,low",
        "m - t d / sqrt(n)",
        TorqueFactor::from_si(mean.si() - quantile * deviation.si() / n.sqrt()),
        [
            ("m", mean.into()),
            ("t", quantile.into()),
            ("d", deviation.into()),
            ("n", n.into()),
        ],
        &STUDENT_T,
    )
}

/// Faults of the other tests.
pub(super) fn faults(request: &Request, issues: &mut Vec<Issue>) {
    let Some(others) = &request.other_tests else {
        return;
    };
    if request.torque.is_none() {
        let told = "`torque` is needed with `other_tests`";
        issues.push(Issue::new("", &MISSING_MEMBER, told));
    }
    for (at, test) in others.iter().enumerate() {
        let pointer = format!("/other_tests/{at}/label");
        if others[..at].iter().any(|t| t.label == test.label) {
            let told = format!("two tests are called `{}`", test.label);
            issues.push(Issue::new(pointer, &DUPLICATE_LABEL, told));
        } else if request.label.as_ref() == Some(&test.label) {
            let told = format!("`{}` is the pile of this test", test.label);
            issues.push(Issue::new(pointer, &DUPLICATE_LABEL, told));
        }
    }
}

/// The factors of the site, where other tests were sent.
pub(super) fn factors(
    request: &Request,
    this: Option<&SiteTorqueFactor>,
    work: &mut Work,
) -> Option<SiteTorqueFactors> {
    let others = request.other_tests.as_ref()?;
    work.method(&methods::SITE_FACTORS);
    let counted = this.filter(|f| !f.lower_bound).map(|f| f.factor);
    if counted.is_none() {
        let told = match this {
            Some(_) => "its failure load is a lower bound",
            None => "its failure load is not determined",
        };
        work.warn(&warnings::TEST_NOT_COUNTED, told);
    }
    let all: Vec<TorqueFactor> = counted
        .into_iter()
        .chain(others.iter().map(|t| t.factor))
        .collect();
    let mean = mean(&all, &mut work.trace);
    let deviation = (all.len() >= 2).then(|| standard_deviation(&all, mean, &mut work.trace));
    let variation_ratio = deviation.map(|d| d / mean);
    let note = |t: &OtherSiteTest| SiteTestNote {
        label: t.label.clone(),
        factor: t.factor,
        reference: t.reference.clone(),
    };
    let lower = deviation.and_then(|d| lower(mean, d, all.len(), work));
    warn(&all, variation_ratio, work);
    Some(SiteTorqueFactors {
        other_tests: others.iter().map(note).collect(),
        test_count: all.len(),
        this_test_counted: counted.is_some(),
        mean,
        least: all.iter().copied().fold(mean, TorqueFactor::min),
        greatest: all.iter().copied().fold(mean, TorqueFactor::max),
        standard_deviation: deviation,
        variation_ratio,
        lower,
    })
}

fn lower(
    mean: TorqueFactor,
    deviation: TorqueFactor,
    tests: usize,
    work: &mut Work,
) -> Option<SiteTorqueFactorLower> {
    let quantile_ratio = quantile(tests)?;
    let factor = lower_mean(mean, deviation, tests, quantile_ratio, &mut work.trace);
    if factor <= TorqueFactor::ZERO {
        let told = format!("mean {}", told(mean));
        work.warn(&warnings::NO_LOWER_VALUE, told);
        return None;
    }
    Some(SiteTorqueFactorLower {
        method: LowerMeanMethod::StudentTOneSided,
        confidence_ratio: work.take(&CONFIDENCE),
        quantile_ratio,
        factor,
    })
}

fn told(factor: TorqueFactor) -> String {
    TorqueFactor::ROLE.in_both_systems(factor.si())
}

fn warn(all: &[TorqueFactor], variation: Option<f64>, work: &mut Work) {
    if all.len() < LOWER_FROM.value {
        let told = format!("{} counted, {} needed", all.len(), LOWER_FROM.value);
        work.warn(&warnings::FEW_TESTS, told);
    }
    let limit = work.take(&SCATTER);
    if let Some(variation) = variation
        && round9(variation) > limit
    {
        let per_cent = |ratio: f64| round9((ratio * 1000.0).round() / 10.0);
        work.warn(
            &warnings::FACTORS_SCATTER,
            format!(
                "coefficient of variation {} %, at most {} % expected",
                per_cent(variation),
                per_cent(limit)
            ),
        );
    }
}
