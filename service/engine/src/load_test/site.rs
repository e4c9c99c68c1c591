//! The torque factor of the tested pile with its band. The correlation the other way, and
//! the published factors, are in `torque`.

use super::codes::{methods, warnings};
use super::outcome::{CriterionOutcome, FailureLoad, FailureLoadKind, SiteTorqueFactor};
use super::request::Request;
use crate::contract::{Work, utilisation};
use crate::quantity::{Force, Torque, TorqueFactor};
use crate::source::NYC_SITE_TESTS;
use crate::torque::factor::by_criteria;
use crate::trace::Trace;

/// Torque factor that a load test gives.
///
/// K_t = Q_u / T
///
/// Q_u failure load, N; T final installation torque of the same pile, N m, above nil. Source:
/// definition of the torque factor; NYC 1814.12 asks for it from tests on the site. Positive.
pub fn site_factor(failure: Force, torque: Torque, trace: &mut Trace) -> TorqueFactor {
    trace.step(
        "K_t",
        "Q_u / T",
        TorqueFactor::from_si(failure.si() / torque.si()),
        [("Q_u", failure.into()), ("T", torque.into())],
        &NYC_SITE_TESTS,
    )
}

/// Least and greatest torque factor within the accuracies of load and torque.
///
/// K_t (1 - a_Q) / (1 + a_T) to K_t (1 + a_Q) / (1 - a_T)
///
/// K_t torque factor, 1/m; a_Q, a_T accuracies as parts of load and torque, 0 to 0.5, both at
/// their worst at once. Source: arithmetic of intervals. Positive.
pub fn factor_band(
    factor: TorqueFactor,
    load_accuracy: f64,
    torque_accuracy: f64,
    trace: &mut Trace,
) -> (TorqueFactor, TorqueFactor) {
    let accuracies = || {
        [
            ("K_t", factor.into()),
            ("a_Q", load_accuracy.into()),
            ("a_T", torque_accuracy.into()),
        ]
    };
    let low = trace.step(
        "K_t,low",
        "K_t (1 - a_Q) / (1 + a_T)",
        factor * ((1.0 - load_accuracy) / (1.0 + torque_accuracy)),
        accuracies(),
        &crate::source::DERIVED,
    );
    let high = trace.step(
        "K_t,high",
        "K_t (1 + a_Q) / (1 - a_T)",
        factor * ((1.0 + load_accuracy) / (1.0 - torque_accuracy)),
        accuracies(),
        &crate::source::DERIVED,
    );
    (low, high)
}

/// The factor of the site; also puts one beside each criterion that holds.
pub(super) fn factor(
    request: &Request,
    failure: &FailureLoad,
    criteria: &mut [CriterionOutcome],
    work: &mut Work,
) -> Option<SiteTorqueFactor> {
    let sent = request.torque?;
    work.method(&methods::SITE_FACTOR);
    let torque = sent.final_torque;
    let at = |load: Force| site_factor(load, torque, &mut Trace::off());
    for criterion in criteria.iter_mut() {
        let measured = criterion.kind == super::CriterionKind::Measured;
        criterion.torque_factor = criterion.load.filter(|_| measured).map(at);
    }
    if failure.kind == FailureLoadKind::NotDetermined {
        return None;
    }
    let factor = site_factor(failure.load, torque, &mut work.trace);
    let stated = request.load_accuracy_ratio.is_some() || sent.gauge_accuracy_ratio.is_some();
    let band = stated.then(|| {
        let load_accuracy = request.load_accuracy_ratio.unwrap_or(0.0);
        let torque_accuracy = sent.gauge_accuracy_ratio.unwrap_or(0.0);
        factor_band(factor, load_accuracy, torque_accuracy, &mut work.trace)
    });
    let acceptance_criteria = by_criteria(&request.shaft);
    if request.other_tests.is_none() {
        work.warn(
            &warnings::ONE_TEST,
            "where other piles bear by friction and are over 25 % longer or shorter, the engineer decides on more tests",
        );
    }
    if let Some(published) = acceptance_criteria
        && !utilisation(factor.si(), published.si()).1
    {
        work.warn(
            &warnings::FACTOR_ABOVE_CRITERIA,
            format!(
                "{} by this test, {} by the criteria",
                TorqueFactor::ROLE.in_both_systems(factor.si()),
                TorqueFactor::ROLE.in_both_systems(published.si())
            ),
        );
    }
    Some(SiteTorqueFactor {
        final_torque: torque,
        factor,
        lower_bound: failure.kind == FailureLoadKind::LowerBound,
        factor_low: band.map(|b| b.0),
        factor_high: band.map(|b| b.1),
        least_by_criteria: failure.least_by_criteria.map(at),
        greatest_by_criteria: failure.greatest_by_criteria.map(at),
        acceptance_criteria,
    })
}
