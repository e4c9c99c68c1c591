//! Combinations of service loads, in which deflections are judged: the caller's own list, or what
//! `allowable_stress` combines.

use super::basis::LayoutBasis;
use super::codes::refusals;
use super::combine::{Case, Combination, Maker};
use super::request::Request;
use crate::contract::Issue;
use crate::limits::COMBINATIONS;

/// The combinations, where they are known; faults go to `issues`.
pub(super) fn service(
    request: &Request,
    cases: &[Case],
    analysed: &[Combination],
    issues: &mut Vec<Issue>,
) -> Option<Vec<Combination>> {
    let Some(own) = &request.service_combinations else {
        return matches!(request.design_basis, LayoutBasis::AllowableStress(_))
            .then(|| analysed.to_vec());
    };
    let mut maker = Maker::of(cases);
    maker.own(own, "/service_combinations/list", issues);
    if maker.found.len() > COMBINATIONS {
        issues.push(
            Issue::new(
                "/service_combinations",
                &refusals::TOO_MANY_COMBINATIONS,
                format!("{} with every case", maker.found.len()),
            )
            .limit(COMBINATIONS.to_string()),
        );
    }
    Some(maker.found)
}
