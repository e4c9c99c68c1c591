//! The factor of the design basis and the verdict: the load the pile must carry against what
//! its test proves. No failure load is made here.

use super::codes::{checks, methods, refusals, warnings};
use super::criteria::name_of;
use super::outcome::*;
use super::request::*;
use crate::basis::codes::refusals::TENSION_FACTOR_TWICE;
use crate::basis::{
    DemandLevel, HELICAL_SAFETY, UpliftClause, allowable, factored, resistance_factor, uplift,
};
use crate::catalogue::refusals::{BASIS_MIXED, MISSING_MEMBER};
use crate::contract::{Check, Issue, SubjectKind, Work, utilisation};
use crate::quantity::Force;
use crate::source::{CALLER, Reference};
use crate::trace::Trace;

/// The factor in force: divides (allowable stress) or multiplies (limit states).
#[derive(Debug, Clone, Copy)]
pub(super) struct Factor {
    divides: bool,
    value: f64,
    source: &'static Reference,
}

impl Factor {
    /// Allowable capacity or factored resistance of a failure load.
    pub fn design(&self, failure: Force, trace: &mut Trace) -> Force {
        if self.divides {
            allowable(failure, self.value, self.source, trace)
        } else {
            factored(failure, self.value, self.source, trace)
        }
    }

    /// As the answer carries it.
    pub fn outcome(&self) -> LoadTestBasisOutcome {
        LoadTestBasisOutcome {
            safety_factor: self.divides.then_some(self.value),
            resistance_factor: (!self.divides).then_some(self.value),
            source: self.source.into(),
        }
    }
}

/// The factor of the design basis, for a capacity proven by load test.
pub(super) fn factor(request: &Request, work: &mut Work) -> Option<Factor> {
    let tension = request.direction == LoadTestDirection::Tension;
    match request.design_basis? {
        LoadTestBasis::AllowableStress(basis) => {
            work.method(&methods::ALLOWABLE_STRESS);
            let clause = basis.uplift_clause.unwrap_or(UpliftClause::General);
            let (value, source) = match (basis.safety_factor, tension) {
                (Some(own), _) => (own, &CALLER),
                (None, true) => {
                    let constant = uplift(clause, true);
                    (work.take(constant), constant.reference)
                }
                (None, false) => (work.take(&HELICAL_SAFETY), HELICAL_SAFETY.reference),
            };
            Some(Factor {
                divides: true,
                value,
                source,
            })
        }
        LoadTestBasis::LimitStates(basis) => {
            work.method(&methods::LIMIT_STATES);
            let constant = resistance_factor(tension, true);
            let (value, source) = match basis.resistance_factor {
                Some(own) => (own, &CALLER),
                None => (work.take(constant), constant.reference),
            };
            Some(Factor {
                divides: false,
                value,
                source,
            })
        }
    }
}

/// The load asked for, in the direction of the test.
fn demand(request: &Request) -> Option<Force> {
    let demand = request.demand?;
    match request.direction {
        LoadTestDirection::Compression => demand.compression,
        LoadTestDirection::Tension => demand.tension,
    }
}

/// The load asked for, where it is a service load.
pub(super) fn service_load(request: &Request) -> Option<Force> {
    let service = |d: &crate::basis::AxialDemand| d.level == DemandLevel::Allowable;
    request.demand.filter(service).and_then(|_| demand(request))
}

/// Faults of demand and design basis.
pub(super) fn faults(request: &Request, issues: &mut Vec<Issue>) {
    let tension = request.direction == LoadTestDirection::Tension;
    if let Some(LoadTestBasis::AllowableStress(basis)) = &request.design_basis
        && basis.uplift_clause.is_some()
    {
        if basis.safety_factor.is_some() {
            issues.push(Issue::new(
                "/design_basis/allowable_stress/safety_factor",
                &TENSION_FACTOR_TWICE,
                "a factor and `uplift_clause` are sent; leave one out",
            ));
        }
        if !tension {
            issues.push(Issue::new(
                "/design_basis/allowable_stress/uplift_clause",
                &refusals::OTHER_DIRECTION,
                "a clause for tension, and the test is in compression",
            ));
        }
    }
    let Some(sent) = &request.demand else {
        return;
    };
    let (tested, other) = if tension {
        ("tension", ("compression", sent.compression))
    } else {
        ("compression", ("tension", sent.tension))
    };
    if other.1.is_some() {
        let told = format!("the test is in {tested}; it proves nothing in {}", other.0);
        let pointer = format!("/demand/{}", other.0);
        issues.push(Issue::new(pointer, &refusals::OTHER_DIRECTION, told));
    }
    if demand(request).is_none() {
        let told = format!("`{tested}` is needed");
        issues.push(Issue::new("/demand", &MISSING_MEMBER, told));
    }
    let mixed = match (&request.design_basis, sent.level) {
        (None, _) => {
            let told = "`design_basis` is needed with `demand`";
            issues.push(Issue::new("", &MISSING_MEMBER, told));
            return;
        }
        (Some(LoadTestBasis::AllowableStress(_)), DemandLevel::Factored) => {
            "a factored load against an allowable capacity"
        }
        (Some(LoadTestBasis::LimitStates(_)), DemandLevel::Allowable) => {
            "a service load against a factored resistance"
        }
        _ => return,
    };
    let issue = Issue::new("/demand/level", &BASIS_MIXED, mixed);
    issues.push(issue.limit("`allowable` with `allowable_stress`, `factored` with `limit_states`"));
}

/// The check of the load, and what holds the verdict back.
pub(super) fn judge(
    request: &Request,
    outcome: &Outcome,
    factor: Option<&Factor>,
    work: &mut Work,
) {
    let (Some(load), Some(factor)) = (demand(request), factor) else {
        return;
    };
    let failure = &outcome.failure;
    let design = |ultimate: Force| factor.design(ultimate, &mut Trace::off());
    let capacity = design(failure.load);
    let fits = |capacity: Force| utilisation(load.si(), capacity.si()).1;
    let open = match failure.kind {
        FailureLoadKind::NotDetermined => Some("the criterion gives no load".to_owned()),
        FailureLoadKind::LowerBound if !fits(capacity) => Some(format!(
            "the test ended before its criterion was met and proves {} only",
            Force::ROLE.in_both_systems(capacity.si())
        )),
        _ => None,
    };
    let judged = open.is_none();
    let check = match open {
        Some(told) => Check::not_evaluated(&checks::CAPACITY, told, factor.source),
        None => {
            let told = match (failure.kind, failure.criterion) {
                (_, Some(name)) => format!("failure load by `{}`", name_of(name)),
                (FailureLoadKind::Peak, _) => "failure load: the peak of the curve".to_owned(),
                _ => "the largest load of the test; it did not fail".to_owned(),
            };
            Check::at_most(&checks::CAPACITY, load, capacity, factor.source).reason(told)
        }
    };
    work.check(match &request.label {
        Some(label) => check.subject(SubjectKind::Pile, label.as_str()),
        None => check,
    });
    if let (Some(low), Some(high)) = (failure.load_low, failure.load_high)
        && judged
        && fits(design(low)) != fits(design(high))
    {
        let told = format!(
            "capacity from {} to {}",
            Force::ROLE.in_both_systems(design(low).si()),
            Force::ROLE.in_both_systems(design(high).si())
        );
        work.hold_back(&warnings::ACCURACY_BAND, told);
    }
}
