//! What is wrong with a design basis, its actions and a demand, and with the lengths of
//! their lists. What a basis makes of a resistance is in `rule.rs`.

use super::basis::{HelixAllowableStress, HelixBasis};
use super::codes::refusals::DEMAND_NOT_COMPUTED;
use super::pile::AxialDirection;
use super::request::{AxialDirections, Request};
use crate::basis::codes::refusals;
use crate::basis::{
    DemandLevel, Eurocode7, EurocodeApproach, EurocodeProof, EurocodeResistance, OwnDesignFactors,
    UpliftClause, UpliftElement, group_uplift_safety,
};
use crate::catalogue::RefusalDef;
use crate::catalogue::refusals::{BASIS_MIXED, MISSING_MEMBER};
use crate::contract::{Issue, list_length};
use crate::limits;
use crate::quantity::Force;

const EUROCODE: &str = "/design_basis/eurocode_7";

/// Faults in the lengths of the lists of a basis.
pub(crate) fn basis_lengths(basis: Option<&HelixBasis>, issues: &mut Vec<Issue>) {
    let Some(HelixBasis::Eurocode7(e)) = basis else {
        return;
    };
    let (at, list, least) = match &e.proof {
        Some(EurocodeProof::GroundTests(g)) => match &g.other_profiles {
            Some(list) => ("ground_tests/other_profiles", list, 0),
            None => return,
        },
        Some(EurocodeProof::LoadTests(l)) => ("load_tests/tests", &l.tests, 1),
        None => return,
    };
    list_length(
        issues,
        format!("{EUROCODE}/proof/{at}"),
        list.len(),
        least,
        limits::PILE_RESISTANCES,
    );
}

/// Every fault of the basis, its actions and the demand together.
pub(crate) fn basis_faults(request: &Request) -> Vec<Issue> {
    let mut issues = Vec::new();
    match &request.design_basis {
        None if request.demand.is_some() => {
            let detail = "`design_basis` is needed: a demand is judged on it";
            issues.push(Issue::new("", &MISSING_MEMBER, detail));
        }
        None | Some(HelixBasis::LimitStates(_) | HelixBasis::AustralianStandard2159(_)) => {}
        Some(HelixBasis::AllowableStress(a)) => allowable_stress(a, &mut issues),
        Some(HelixBasis::Eurocode7(e)) => eurocode(e, request, &mut issues),
        Some(HelixBasis::OwnFactors(own)) => own_factors(own, request, &mut issues),
    }
    if let Some(demand) = &request.demand {
        level(
            request.design_basis.as_ref(),
            demand.level,
            "/demand",
            &mut issues,
        );
        let loads = [demand.compression, demand.tension];
        directions(request, "/demand", loads.map(|l| l.is_some()), &mut issues);
    }
    issues
}

fn allowable_stress(a: &HelixAllowableStress, issues: &mut Vec<Issue>) {
    const AT: &str = "/design_basis/allowable_stress";
    if a.tension_safety_factor.is_some() && a.uplift_clause.is_some() {
        issues.push(Issue::new(
            format!("{AT}/tension_safety_factor"),
            &refusals::TENSION_FACTOR_TWICE,
            "a factor and `uplift_clause` are sent; leave one out",
        ));
    }
    let clause = a.uplift_clause.unwrap_or(UpliftClause::General);
    if a.uplift_element == Some(UpliftElement::Group)
        && (a.tension_safety_factor.is_some() || group_uplift_safety(clause, false).is_none())
    {
        issues.push(Issue::new(
            format!("{AT}/uplift_element"),
            &refusals::NO_GROUP_UPLIFT_FACTOR,
            "`group` goes with `uplift_clause` `new_york_city` alone",
        ));
    }
}

/// The level of the demand at a place against that of the basis.
pub(super) fn level(
    basis: Option<&HelixBasis>,
    of_demand: DemandLevel,
    at: &str,
    issues: &mut Vec<Issue>,
) {
    let mut mixed = |detail: &str| {
        issues.push(Issue::new(format!("{at}/level"), &BASIS_MIXED, detail));
    };
    match (basis, of_demand) {
        (Some(HelixBasis::AllowableStress(_)), DemandLevel::Factored) => {
            mixed("`allowable_stress` gives an allowable capacity; its demand is `allowable`");
        }
        (Some(HelixBasis::LimitStates(_)), DemandLevel::Allowable) => {
            mixed("`limit_states` gives a factored resistance; its demand is `factored`");
        }
        (Some(HelixBasis::Eurocode7(_)), DemandLevel::Allowable) => {
            mixed("`eurocode_7` gives a design resistance; its demand is `factored`");
        }
        (Some(HelixBasis::AustralianStandard2159(_)), DemandLevel::Allowable) => {
            mixed("`australian_standard_2159` gives a design strength; its demand is `factored`")
        }
        (Some(HelixBasis::OwnFactors(own)), level) if own.level != level => {
            mixed("the demand is not of the level stated in `own_factors`");
        }
        _ => {}
    }
}

/// Loads that are sent, compression first: at least one, and none in a direction that is
/// left out.
pub(super) fn directions(request: &Request, at: &str, sent: [bool; 2], issues: &mut Vec<Issue>) {
    if sent == [false, false] {
        let detail = "`compression`, `tension` or both are needed";
        issues.push(Issue::new(at, &MISSING_MEMBER, detail));
    }
    let left_out = match request.directions.unwrap_or_default() {
        AxialDirections::Both => return,
        AxialDirections::Tension => AxialDirection::Compression,
        AxialDirections::Compression => AxialDirection::Tension,
    };
    let is_sent = match left_out {
        AxialDirection::Compression => sent[0],
        AxialDirection::Tension => sent[1],
    };
    if is_sent {
        let name = left_out.name();
        issues.push(Issue::new(
            format!("{at}/{name}"),
            &DEMAND_NOT_COMPUTED,
            format!("`directions` leaves {name} out"),
        ));
    }
}

fn eurocode(e: &Eurocode7, request: &Request, issues: &mut Vec<Issue>) {
    let mut fault = |at: &str, code: &'static RefusalDef, detail: &str| {
        issues.push(Issue::new(format!("{EUROCODE}{at}"), code, detail));
    };
    let second = e.own_factors.and_then(|own| own.combination_2);
    if e.approach == EurocodeApproach::Da2 && second.is_some() {
        fault(
            "/own_factors/combination_2",
            &refusals::COMBINATION_NOT_IN_APPROACH,
            "`da2` has one combination",
        );
    }
    if let Some(demand) = &request.demand {
        if e.actions.is_some() {
            let detail = "`actions` and `demand` are sent; leave one out";
            fault("/actions", &refusals::ACTIONS_AND_DEMAND, detail);
        } else if e.approach == EurocodeApproach::Da1 && demand.level == DemandLevel::Factored {
            let detail = "`da1` is judged by `actions`, not by `demand`";
            fault("", &refusals::ACTIONS_NEEDED, detail);
        }
    }
    resistances(e, request, issues);
    let Some(actions) = &e.actions else {
        return;
    };
    let at = format!("{EUROCODE}/actions");
    let sent = [actions.compression.is_some(), actions.tension.is_some()];
    directions(request, &at, sent, issues);
    let mut nothing = |name: &str, loads: [Option<Force>; 2], detail: &str| {
        if loads.iter().all(Option::is_none) {
            issues.push(Issue::new(format!("{at}/{name}"), &MISSING_MEMBER, detail));
        }
    };
    if let Some(c) = &actions.compression {
        let detail = "`permanent`, `variable` or both are needed";
        nothing("compression", [c.permanent, c.variable], detail);
    }
    if let Some(t) = &actions.tension {
        let detail = "`permanent_unfavourable`, `variable` or both are needed";
        nothing("tension", [t.permanent_unfavourable, t.variable], detail);
    }
}

/// Entries without a resistance, and loads in a direction without load tests.
fn resistances(e: &Eurocode7, request: &Request, issues: &mut Vec<Issue>) {
    let (at, list): (_, &[EurocodeResistance]) = match &e.proof {
        Some(EurocodeProof::GroundTests(g)) => (
            "ground_tests/other_profiles",
            g.other_profiles.as_deref().unwrap_or_default(),
        ),
        Some(EurocodeProof::LoadTests(l)) => ("load_tests/tests", &l.tests),
        None => return,
    };
    if request.minimum_depth.is_some() && !list.is_empty() {
        issues.push(Issue::new(
            format!("{EUROCODE}/proof/{at}"),
            &refusals::RESISTANCES_OF_ONE_DEPTH,
            "`minimum_depth` searches over depth; leave one of the two out",
        ));
    }
    for (i, entry) in list.iter().enumerate() {
        if entry.compression.is_none() && entry.tension.is_none() {
            issues.push(Issue::new(
                format!("{EUROCODE}/proof/{at}/{i}"),
                &MISSING_MEMBER,
                "`compression`, `tension` or both are needed",
            ));
        }
    }
    if !matches!(e.proof, Some(EurocodeProof::LoadTests(_))) {
        return;
    }
    let tested = [
        list.iter().any(|r| r.compression.is_some()),
        list.iter().any(|r| r.tension.is_some()),
    ];
    for (direction, tested) in BOTH.into_iter().zip(tested) {
        if !tested && request.loads(direction) {
            issues.push(Issue::new(
                format!("{EUROCODE}/proof/load_tests"),
                &MISSING_MEMBER,
                format!("a load in {} needs a test in it", direction.name()),
            ));
        }
    }
}

fn own_factors(own: &OwnDesignFactors, request: &Request, issues: &mut Vec<Issue>) {
    const AT: &str = "/design_basis/own_factors";
    let sent = [own.compression.is_some(), own.tension.is_some()];
    if sent == [false, false] {
        let detail = "`compression`, `tension` or both are needed";
        issues.push(Issue::new(AT, &MISSING_MEMBER, detail));
        return;
    }
    for (direction, sent) in BOTH.into_iter().zip(sent) {
        if !sent && request.loads(direction) {
            let detail = format!("a load in {} needs a factor for it", direction.name());
            issues.push(Issue::new(AT, &MISSING_MEMBER, detail));
        }
    }
}

const BOTH: [AxialDirection; 2] = [AxialDirection::Compression, AxialDirection::Tension];

impl Request {
    /// Whether a load is sent in a direction.
    pub(super) fn loads(&self, direction: AxialDirection) -> bool {
        let demand = self.demand.and_then(|d| match direction {
            AxialDirection::Compression => d.compression,
            AxialDirection::Tension => d.tension,
        });
        demand.is_some() || self.acts(direction) || self.loads_group(direction).is_some()
    }

    /// Load on the group in a direction.
    fn loads_group(&self, direction: AxialDirection) -> Option<Force> {
        let demand = self.group.as_ref()?.demand?;
        match direction {
            AxialDirection::Compression => demand.compression,
            AxialDirection::Tension => demand.tension,
        }
    }

    fn acts(&self, direction: AxialDirection) -> bool {
        let Some(HelixBasis::Eurocode7(e)) = &self.design_basis else {
            return false;
        };
        e.actions.is_some_and(|a| match direction {
            AxialDirection::Compression => a.compression.is_some(),
            AxialDirection::Tension => a.tension.is_some(),
        })
    }

    /// Whether a verdict is asked for.
    pub(super) fn is_judged(&self) -> bool {
        let group = self.group.as_ref().and_then(|g| g.demand);
        let limit = self.head_movement.and_then(|m| m.limit);
        self.demand.is_some()
            || group.is_some()
            || limit.is_some()
            || BOTH.into_iter().any(|d| self.acts(d))
    }

    /// Whether something pulls the pile up.
    pub(super) fn pulls(&self) -> bool {
        let above = |load: Option<Force>| load.is_some_and(|l| l.si() > 0.0);
        if above(self.demand.and_then(|d| d.tension))
            || above(self.loads_group(AxialDirection::Tension))
        {
            return true;
        }
        let Some(HelixBasis::Eurocode7(e)) = &self.design_basis else {
            return false;
        };
        let actions = e.actions.and_then(|a| a.tension);
        actions.is_some_and(|t| above(t.permanent_unfavourable) || above(t.variable))
    }
}
