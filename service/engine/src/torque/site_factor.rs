//! Torque factors from load tests on the site: their band and what is told of their number.
//! How a test gives its factor is in `load_test`, what a band does to a verdict in `judge.rs`.

use super::codes::{methods, refusals, warnings};
use super::factor_choice::{blank, used};
use super::options::{SiteFactorBand, SiteTestsTorqueFactor};
use super::outcome::{TorqueFactorOutcome, TorqueFactorUsed};
use crate::contract::{Issue, Work};
use crate::quantity::{TorqueFactor, round9};
use crate::source::CALLER;

const RANGE: &str = "shafts and ground like those of the tests";

/// The factors as sent; a band that does not hold its factor is a fault.
pub(super) fn of(
    tests: &SiteTestsTorqueFactor,
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> TorqueFactorOutcome {
    work.method(&methods::FACTOR_SITE);
    let detail = match tests.test_count {
        1 => "1 test: it holds for its own place and tells nothing of the scatter".to_owned(),
        n => format!("{n} tests; no published rule says how many are enough"),
    };
    work.warn(&warnings::SITE_FACTOR_TESTS, detail);
    let mut side = |band: &SiteFactorBand, name: &str| {
        band_faults(band, name, issues);
        let factor = work.trace.step("K_t", "as sent", band.factor, [], &CALLER);
        TorqueFactorUsed {
            factor_low: band.factor_low,
            factor_high: band.factor_high,
            ..used(factor, RANGE, &CALLER)
        }
    };
    TorqueFactorOutcome {
        compression: tests.compression.as_ref().map(|b| side(b, "compression")),
        tension: tests.tension.as_ref().map(|b| side(b, "tension")),
        own_reference: Some(tests.reference.clone()),
        test_count: Some(tests.test_count),
        ..blank()
    }
}

fn band_faults(band: &SiteFactorBand, name: &str, issues: &mut Vec<Issue>) {
    let mut wrong = |member: &str, bound: TorqueFactor, limit: &str| {
        let shown = |factor: TorqueFactor| TorqueFactor::ROLE.in_both_systems(factor.si());
        issues.push(
            Issue::new(
                format!("/torque_factor/site_tests/{name}/{member}"),
                &refusals::SITE_BAND_REVERSED,
                shown(bound),
            )
            .limit(format!("{limit} {}, `factor`", shown(band.factor))),
        );
    };
    if let Some(low) = band.factor_low.filter(|l| round9(*l / band.factor) > 1.0) {
        wrong("factor_low", low, "at most");
    }
    if let Some(high) = band.factor_high.filter(|h| round9(*h / band.factor) < 1.0) {
        wrong("factor_high", high, "at least");
    }
}

/// Least and greatest factor of a band; none where there is no band.
pub(super) fn band(used: &TorqueFactorUsed) -> Option<(TorqueFactor, TorqueFactor)> {
    if used.factor_low.is_none() && used.factor_high.is_none() {
        return None;
    }
    Some((
        used.factor_low.unwrap_or(used.factor),
        used.factor_high.unwrap_or(used.factor),
    ))
}
