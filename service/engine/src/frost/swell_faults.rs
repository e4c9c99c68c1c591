//! What is missing or contradicts in what is asked about purpose, resistance, swelling soil
//! and tension path: all of it at once.

use super::adhesion;
use super::codes::refusals;
use super::request::{PilePurpose, Request};
use super::resistance_request::{FrostBasis, FrostResistance, FrostTension, TensionLevel};
use super::swell::resistance_sent;
use super::tension;
use crate::catalogue::refusals::{BASIS_MIXED, MISSING_MEMBER};
use crate::contract::Issue;
use crate::source::BEARWELL_CHOICE;

/// Every such fault.
pub fn of(request: &Request) -> Vec<Issue> {
    let mut issues = purpose(request);
    issues.extend(resistances(request));
    issues.extend(swelling(request));
    issues.extend(path(request));
    issues
}

/// Uplift by swelling needs the active depth and the data of its method.
fn swelling(request: &Request) -> Vec<Issue> {
    let mut issues = Vec::new();
    let Some(swelling) = &request.swelling else {
        return issues;
    };
    let mut missing = |at: &str, detail: &str| {
        let issue = Issue::new(at, &refusals::SWELL_UPLIFT_WITHOUT_DATA, detail);
        issues.push(issue.source(&BEARWELL_CHOICE));
    };
    if request.active_depth.is_none() {
        missing(
            "/swelling",
            "send `active_depth`, the depth to which the soil swells; it is never assumed",
        );
    }
    if swelling.adhesion.is_none() {
        missing(
            "/swelling",
            "send `adhesion`: a swell pressure with a method, or an adhesion of your own",
        );
    }
    if let Some(sent) = &swelling.adhesion {
        issues.extend(adhesion::faults(sent, request));
    }
    if swelling.peaks_with_frost == Some(true) && request.uplift.is_none() {
        issues.push(Issue::new(
            "",
            &MISSING_MEMBER,
            "`uplift`: frost and swelling together need it",
        ));
    }
    issues
}

/// `tension_by_torque` beside another purpose says two things.
fn purpose(request: &Request) -> Vec<Issue> {
    let own = request.embedment.unwrap_or_default();
    let mut issues = Vec::new();
    let Some(purpose) = own.purpose else {
        return issues;
    };
    let torque = purpose == PilePurpose::TensionByTorque;
    if own.tension_by_torque.is_some_and(|flag| flag != torque) {
        issues.push(Issue::new(
            "/embedment/purpose",
            &refusals::PURPOSE_CONTRADICTED,
            "`tension_by_torque` says otherwise; send one of the two",
        ));
    }
    if !torque && tension::by_torque(request) {
        issues.push(Issue::new(
            "/embedment/purpose",
            &refusals::PURPOSE_CONTRADICTED,
            "a tension resistance by torque was sent; the purpose is `tension_by_torque`",
        ));
    }
    issues
}

fn sent(request: &Request) -> Vec<(&'static str, &FrostResistance)> {
    let uplift = request.uplift.as_ref().and_then(|u| u.resistance.as_ref());
    let swelling = request
        .swelling
        .as_ref()
        .and_then(|s| s.resistance.as_ref());
    let both = [
        ("/uplift/resistance", uplift),
        ("/swelling/resistance", swelling),
    ];
    both.into_iter()
        .filter_map(|(at, resistance)| resistance.map(|r| (at, r)))
        .collect()
}

/// A level that goes with the format of a comparison.
fn fits(basis: &FrostBasis, level: TensionLevel) -> bool {
    matches!(
        (basis, level),
        (FrostBasis::AllowableStress(_), TensionLevel::Allowable)
            | (FrostBasis::LimitStates(_), TensionLevel::Factored)
    )
}

fn mixed(at: String, level: TensionLevel) -> Issue {
    let detail = match level {
        TensionLevel::Allowable => "an allowable resistance goes with `allowable_stress` alone",
        TensionLevel::Factored => "a factored resistance goes with `limit_states` alone",
    };
    Issue::new(at, &BASIS_MIXED, detail)
}

/// Levels against formats, factors on what is factored already, and two formats in one
/// request.
fn resistances(request: &Request) -> Vec<Issue> {
    let mut issues = Vec::new();
    let all = sent(request);
    for (at, resistance) in &all {
        let FrostTension::GivenDesign(given) = &resistance.tension else {
            continue;
        };
        if !fits(&resistance.design_basis, given.level) {
            let at = format!("{at}/tension/given_design/level");
            issues.push(mixed(at, given.level));
        }
        let twice = match &resistance.design_basis {
            FrostBasis::AllowableStress(f) => f
                .tension_safety_factor
                .map(|_| "allowable_stress/tension_safety_factor"),
            FrostBasis::LimitStates(f) => f
                .tension_resistance_factor
                .map(|_| "limit_states/tension_resistance_factor"),
        };
        if let Some(member) = twice {
            issues.push(Issue::new(
                format!("{at}/design_basis/{member}"),
                &BASIS_MIXED,
                "the resistance sent is allowable or factored already and takes no such factor",
            ));
        }
    }
    if let [(_, first), (at, second)] = all.as_slice() {
        let kind = |r: &FrostResistance| matches!(r.design_basis, FrostBasis::LimitStates(_));
        if kind(first) != kind(second) {
            issues.push(Issue::new(
                format!("{at}/design_basis"),
                &BASIS_MIXED,
                "frost and swelling are compared in one format",
            ));
        }
    }
    issues
}

/// A tension path needs a capacity, of the level of the comparison.
fn path(request: &Request) -> Vec<Issue> {
    let mut issues = Vec::new();
    let Some(path) = &request.tension_path else {
        return issues;
    };
    if path.coupling.is_none() && path.head.is_none() && path.beam_anchor.is_none() {
        issues.push(Issue::new(
            "/tension_path",
            &MISSING_MEMBER,
            "send at least one of `coupling`, `head`, `beam_anchor`",
        ));
    }
    let frost = request.uplift.as_ref().and_then(|u| u.resistance.as_ref());
    let swell = request
        .swelling
        .as_ref()
        .and_then(|s| resistance_sent(request, s));
    let basis = frost.or(swell).map(|r| &r.design_basis);
    if let Some(basis) = basis
        && !fits(basis, path.level)
    {
        issues.push(mixed("/tension_path/level".to_owned(), path.level));
    }
    issues
}
