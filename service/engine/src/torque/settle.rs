//! What is wrong with a request beyond shape and ranges: every fault at once; and the
//! torque and safety factors where there is none.

use super::cab_card;
use super::codes::refusals;
use super::conditions;
use super::equipment::DriveGear;
use super::factor_choice;
use super::hydraulics;
use super::options::{TorqueBasis, TorqueFactorChoice};
use super::outcome::TorqueFactorOutcome;
use super::request::{Request, TorqueReading};
use super::safety::{self, Factors};
use super::torsion;
use crate::basis::DemandLevel;
use crate::basis::codes::refusals::TENSION_FACTOR_TWICE;
use crate::catalogue::refusals::{BASIS_MIXED, MISSING_MEMBER};
use crate::contract::{Issue, Refusal, Work, none_of};

/// A request that can be answered, with what was settled on the way.
pub(super) struct Settled<'a> {
    pub request: &'a Request,
    pub factor: Option<TorqueFactorOutcome>,
    pub factors: Option<Factors>,
    /// Why tension by torque is not given.
    pub tension_withheld: Option<Issue>,
}

/// Finds every fault, and the factors where there is none.
pub(super) fn settle<'a>(request: &'a Request, work: &mut Work) -> Result<Settled<'a>, Refusal> {
    let mut issues = Vec::new();
    if !anything_asked(request) {
        issues.push(Issue::new(
            "",
            &refusals::NOTHING_ASKED,
            "send `installed`, `demand`, `drive`, `torsion` or `torque_factor`",
        ));
    }
    torsion::shaft_faults(
        request.shaft.as_ref(),
        request.torsion.as_ref(),
        &mut issues,
    );
    conditions::faults(request, &mut issues);
    drive_faults(request, &mut issues);
    demand_faults(request, &mut issues);
    cab_card::faults(request, &mut issues);
    if request.compare_factors == Some(true) && request.shaft.is_none() {
        issues.push(Issue::new(
            "",
            &MISSING_MEMBER,
            "`shaft` is needed with `compare_factors`",
        ));
    }
    let factor = factor(request, work, &mut issues);
    own_factor_faults(request, &mut issues);
    let tension_withheld = request
        .embedment
        .as_ref()
        .and_then(conditions::too_shallow_for_tension);
    if let (Some(issue), Some(demand)) = (&tension_withheld, &request.demand)
        && demand.tension.is_some()
        && demand.compression.is_none()
    {
        issues.push(issue.clone());
    }
    none_of(issues)?;
    let tension_asked =
        request.installed.is_some() || request.demand.is_some_and(|d| d.tension.is_some());
    Ok(Settled {
        request,
        factor,
        factors: request
            .design_basis
            .as_ref()
            .map(|basis| safety::factors(basis, tension_asked, work)),
        tension_withheld,
    })
}

fn factor(
    request: &Request,
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Option<TorqueFactorOutcome> {
    let Some(choice) = &request.torque_factor else {
        let mut needed = |with: &str| {
            let detail = format!("`torque_factor` is needed with {with}");
            issues.push(Issue::new("", &MISSING_MEMBER, detail));
        };
        if request.installed.is_some() || request.demand.is_some() {
            needed("`installed` or `demand`");
        }
        if request.tension_factor.is_some() {
            needed("`tension_factor`");
        }
        return None;
    };
    let has_its_own = matches!(
        choice,
        TorqueFactorChoice::Own(_)
            | TorqueFactorChoice::SiteTests(_)
            | TorqueFactorChoice::Livneh2008(_)
            | TorqueFactorChoice::HoytClemence1989(_)
    );
    if request.tension_factor.is_some() && has_its_own {
        issues.push(
            Issue::new(
                "/tension_factor",
                &refusals::TENSION_FACTOR_GIVEN,
                "the torque factor chosen is not one for both directions; leave `tension_factor` out",
            )
            .limit("`listed_shaft`, `effective_diameter`, `perko_2009`"),
        );
    }
    let shaft = request.shaft.as_ref();
    factor_choice::choose(choice, request.tension_factor, shaft, work, issues)
}

fn anything_asked(request: &Request) -> bool {
    let drive = request.drive.is_some_and(|d| {
        d.working_pressures.is_some()
            || d.target_torque.is_some()
            || d.flow.is_some()
            || request.torsion.is_some_and(|t| t.rating.is_some())
    });
    request.installed.is_some()
        || request.demand.is_some()
        || request.torque_factor.is_some()
        || request.torsion.is_some_and(|t| t.section.is_some())
        || request.compare_factors == Some(true)
        || drive
}

fn drive_faults(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(drive) = &request.drive {
        hydraulics::faults(drive, issues);
    }
    let Some(TorqueReading::Pressure(read)) = request.installed.map(|i| i.reading) else {
        return;
    };
    hydraulics::no_difference(&read.pressures(), "/installed/reading/pressure", issues);
    let mut needed = |pointer: &str, what: &str| {
        issues.push(Issue::new(pointer, &MISSING_MEMBER, what));
    };
    match (request.drive.map(|d| d.fast_displacement), read.gear) {
        (None, _) => needed("", "`drive` is needed: the torque was read as pressures"),
        (Some(Some(_)), None) => needed(
            "/installed/reading/pressure",
            "`gear` is needed: the motor has two speeds",
        ),
        (Some(None), Some(DriveGear::Fast)) => needed(
            "/drive",
            "`fast_displacement` is needed: the torque was read in the fast gear",
        ),
        _ => {}
    }
}

fn demand_faults(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(TorqueBasis::AllowableStress(a)) = &request.design_basis
        && a.tension_safety_factor.is_some()
        && a.uplift_clause.is_some()
    {
        issues.push(Issue::new(
            "/design_basis/allowable_stress/tension_safety_factor",
            &TENSION_FACTOR_TWICE,
            "a factor and `uplift_clause` are sent; leave one out",
        ));
    }
    let Some(demand) = &request.demand else {
        return;
    };
    if demand.compression.is_none() && demand.tension.is_none() {
        issues.push(Issue::new(
            "/demand",
            &MISSING_MEMBER,
            "`compression` or `tension` is needed",
        ));
    }
    let mixed = match (&request.design_basis, demand.level) {
        (None, _) => {
            issues.push(Issue::new(
                "",
                &MISSING_MEMBER,
                "`design_basis` is needed with `demand`",
            ));
            return;
        }
        (Some(TorqueBasis::AllowableStress(_)), DemandLevel::Factored) => {
            "a factored load against an allowable capacity"
        }
        (Some(TorqueBasis::LimitStates(_)), DemandLevel::Allowable) => {
            "a service load against a factored resistance"
        }
        _ => return,
    };
    issues.push(
        Issue::new("/demand/level", &BASIS_MIXED, mixed)
            .limit("`allowable` with `allowable_stress`, `factored` with `limit_states`"),
    );
}

/// Directions that the caller's own factors, or those of the site, leave out.
fn own_factor_faults(request: &Request, issues: &mut Vec<Issue>) {
    let (pointer, compression, tension) = match &request.torque_factor {
        Some(TorqueFactorChoice::Own(own)) => (
            "/torque_factor/own",
            own.compression.is_some(),
            own.tension.is_some(),
        ),
        Some(TorqueFactorChoice::SiteTests(tests)) => (
            "/torque_factor/site_tests",
            tests.compression.is_some(),
            tests.tension.is_some(),
        ),
        _ => return,
    };
    let mut needed = |what: &str| {
        issues.push(Issue::new(pointer, &MISSING_MEMBER, what));
    };
    if !compression && !tension {
        needed("`compression` or `tension` is needed");
        return;
    }
    let Some(demand) = &request.demand else {
        return;
    };
    if demand.compression.is_some() && !compression {
        needed("`compression` is needed: `demand.compression` is sent");
    }
    if demand.tension.is_some() && !tension {
        needed("`tension` is needed: `demand.tension` is sent");
    }
}
