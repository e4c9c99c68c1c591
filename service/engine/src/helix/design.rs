//! From the ultimate resistance to a capacity that may be used: the factor of a basis, the
//! least of the ultimate loads, and the faults of a basis and a demand.

use super::basis::{HelixAllowableStress, HelixBasis};
use super::outcome::{DesignCapacity, DesignCapacityKind, HelixFactor, UltimateItem, UltimateKind};
use super::pile::AxialDirection;
use super::request::AxialDirections;
use crate::basis::codes::{refusals, warnings};
use crate::basis::{
    AxialDemand, DemandLevel, HELICAL_SAFETY, ResistanceProof, UpliftClause, allowable, factored,
    resistance_factor, tell_of_test, uplift,
};
use crate::catalogue::refusals::{BASIS_MIXED, MISSING_MEMBER};
use crate::contract::{Issue, Work};
use crate::quantity::Force;
use crate::source::{CALLER, IBC_1810_3_3_1_9, Reference, Sourced};
use crate::trace::Trace;

/// A factor in force.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Factor {
    id: &'static str,
    value: f64,
    from_request: bool,
    pub source: &'static Reference,
}

impl Factor {
    fn given(id: &'static str, value: f64) -> Self {
        Self {
            id,
            value,
            from_request: true,
            source: &CALLER,
        }
    }

    fn taken(id: &'static str, constant: &'static Sourced<f64>, work: &mut Work) -> Self {
        Self {
            id,
            value: work.take(constant),
            from_request: false,
            source: constant.reference,
        }
    }

    /// As the answer carries it.
    pub fn outcome(&self) -> HelixFactor {
        HelixFactor {
            id: self.id.into(),
            used_factor: self.value,
            from_request: self.from_request,
            source: self.source.into(),
        }
    }
}

/// The factor of a basis in one direction.
pub(crate) fn factor(basis: &HelixBasis, direction: AxialDirection, work: &mut Work) -> Factor {
    match (basis, direction) {
        (HelixBasis::AllowableStress(a), AxialDirection::Compression) => {
            match a.compression_safety_factor {
                Some(value) => Factor::given("compression_safety_factor", value),
                None => Factor::taken("compression_safety_factor", &HELICAL_SAFETY, work),
            }
        }
        (HelixBasis::AllowableStress(a), AxialDirection::Tension) => tension_safety(a, work),
        (HelixBasis::LimitStates(l), direction) => {
            let (id, given) = match direction {
                AxialDirection::Compression => (
                    "compression_resistance_factor",
                    l.compression_resistance_factor,
                ),
                AxialDirection::Tension => {
                    ("tension_resistance_factor", l.tension_resistance_factor)
                }
            };
            if let Some(value) = given {
                return Factor::given(id, value);
            }
            let tested = l.proof == Some(ResistanceProof::LoadTest);
            if tested {
                tell_of_test(id, work);
            }
            let tension = direction == AxialDirection::Tension;
            Factor::taken(id, resistance_factor(tension, tested), work)
        }
    }
}

fn tension_safety(a: &HelixAllowableStress, work: &mut Work) -> Factor {
    const ID: &str = "tension_safety_factor";
    if let Some(value) = a.tension_safety_factor {
        return Factor::given(ID, value);
    }
    let clause = a.uplift_clause.unwrap_or(UpliftClause::General);
    let general = "the general uplift clause";
    let helical = "the clause of helical piles";
    match clause {
        UpliftClause::General => tell_of_clauses(general, helical, work),
        UpliftClause::Helical => tell_of_clauses(helical, general, work),
        UpliftClause::GeneralWindSeismic | UpliftClause::NewYorkCity => {}
    }
    let tested = a.proof == Some(ResistanceProof::LoadTest);
    if tested && clause != UpliftClause::Helical {
        tell_of_test(ID, work);
    }
    Factor::taken(ID, uplift(clause, tested), work)
}

fn tell_of_clauses(used: &str, other: &str, work: &mut Work) {
    work.warn(
        &warnings::UPLIFT_CLAUSES_DISAGREE,
        format!(
            "the safety factor in tension is that of {used}, not of {other}; choose with `uplift_clause`"
        ),
    );
}

/// The ultimate loads the code takes the least of, with the least marked.
pub(crate) fn ultimates(soil: Force, basis: Option<&HelixBasis>) -> Vec<UltimateItem> {
    let sent = match basis {
        Some(HelixBasis::AllowableStress(a)) => a.other_ultimates.unwrap_or_default(),
        _ => Default::default(),
    };
    let mut items: Vec<_> = [
        (UltimateKind::SoilBearing, Some(soil)),
        (UltimateKind::TorqueCorrelation, sent.torque_correlation),
        (UltimateKind::LoadTest, sent.load_test),
        (UltimateKind::Shaft, sent.shaft),
        (UltimateKind::Couplings, sent.couplings),
        (UltimateKind::HelixPlates, sent.helix_plates),
    ]
    .into_iter()
    .map(|(item, ultimate)| UltimateItem {
        item,
        considered: ultimate.is_some(),
        ultimate,
        governing: false,
    })
    .collect();
    let mut least: Option<(usize, Force)> = None;
    for (i, item) in items.iter().enumerate() {
        if let Some(u) = item.ultimate
            && least.is_none_or(|(_, l)| u < l)
        {
            least = Some((i, u));
        }
    }
    if let Some((i, _)) = least {
        items[i].governing = true;
    }
    items
}

/// The least ultimate load.
///
/// P_u = least of the items considered (N); an item that was not sent is absent, neither nil
/// nor unlimited. Range: at least one item. Source: IBC 1810.3.3.1.9. Sign: compression.
pub(crate) fn least_ultimate(items: &[UltimateItem], trace: &mut Trace) -> Force {
    let considered = items.iter().filter_map(|i| i.ultimate);
    let least = considered.fold(Force::from_si(f64::INFINITY), Force::min);
    let count = items.iter().filter(|i| i.considered).count();
    trace.step(
        "P_u",
        "least of the ultimate loads considered",
        least,
        [("n", (count as f64).into())],
        &IBC_1810_3_3_1_9,
    )
}

/// Capacity that may be used, of an ultimate one.
pub(crate) fn design_capacity(
    ultimate: Force,
    basis: &HelixBasis,
    factor: &Factor,
    trace: &mut Trace,
) -> DesignCapacity {
    let (kind, capacity) = match basis {
        HelixBasis::AllowableStress(_) => (
            DesignCapacityKind::Allowable,
            allowable(ultimate, factor.value, factor.source, trace),
        ),
        HelixBasis::LimitStates(_) => (
            DesignCapacityKind::Factored,
            factored(ultimate, factor.value, factor.source, trace),
        ),
    };
    DesignCapacity {
        kind,
        from_ultimate: ultimate,
        capacity,
    }
}

/// Every fault of the basis and the demand together.
pub(crate) fn basis_faults(
    basis: Option<&HelixBasis>,
    demand: Option<&AxialDemand>,
    directions: AxialDirections,
) -> Vec<Issue> {
    let mut issues = Vec::new();
    if let Some(HelixBasis::AllowableStress(a)) = basis
        && a.tension_safety_factor.is_some()
        && a.uplift_clause.is_some()
    {
        issues.push(Issue::new(
            "/design_basis/allowable_stress/tension_safety_factor",
            &refusals::TENSION_FACTOR_TWICE,
            "a factor and `uplift_clause` are sent; leave one out",
        ));
    }
    let Some(demand) = demand else {
        return issues;
    };
    match (basis, demand.level) {
        (None, _) => issues.push(Issue::new(
            "",
            &MISSING_MEMBER,
            "`design_basis` is needed: a demand is judged on it",
        )),
        (Some(HelixBasis::AllowableStress(_)), DemandLevel::Factored) => issues.push(Issue::new(
            "/demand/level",
            &BASIS_MIXED,
            "`allowable_stress` gives an allowable capacity; its demand is `allowable`",
        )),
        (Some(HelixBasis::LimitStates(_)), DemandLevel::Allowable) => issues.push(Issue::new(
            "/demand/level",
            &BASIS_MIXED,
            "`limit_states` gives a factored resistance; its demand is `factored`",
        )),
        _ => {}
    }
    if demand.compression.is_none() && demand.tension.is_none() {
        issues.push(Issue::new(
            "/demand",
            &MISSING_MEMBER,
            "`compression`, `tension` or both are needed",
        ));
    }
    for (name, force, left_out) in [
        ("compression", demand.compression, AxialDirections::Tension),
        ("tension", demand.tension, AxialDirections::Compression),
    ] {
        if force.is_some() && directions == left_out {
            issues.push(Issue::new(
                format!("/demand/{name}"),
                &super::codes::refusals::DEMAND_NOT_COMPUTED,
                format!("`directions` leaves {name} out"),
            ));
        }
    }
    issues
}
