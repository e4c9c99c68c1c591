//! How the rule of a design basis is made: the factor of each basis in one direction, with
//! its source and its warnings. EN 1997-1 is in `rule_eurocode.rs`.

use super::basis::{HelixAllowableStress, HelixBasis, OtherUltimates};
use super::codes::methods;
use super::outcome::{DesignCapacityKind, HelixFactor};
use super::pile::AxialDirection;
use super::rule::{DesignRule, Margin, RuleLine};
use super::rule_eurocode::eurocode;
use crate::basis::codes::warnings;
use crate::basis::{
    AustralianStandard2159, AxialDemand, AxialLimitStates, DemandLevel, HELICAL_SAFETY,
    HIGHER_RISK, LOWEST_RISK, OwnDesignFactor, OwnDesignFactors, ResistanceProof, RiskRow,
    UpliftClause, UpliftElement, basic_reduction, group_uplift_safety, resistance_factor,
    tell_of_test, tested_reduction, uplift,
};
use crate::contract::Work;
use crate::quantity::Force;
use crate::source::{AS_2159_TESTING, CALLER, Reference, Sourced};

impl DesignRule {
    /// The rule of a basis in one direction, with the load of a demand. Takes the constants
    /// and notes the method; none where the basis gives the direction no factor.
    pub fn new(
        basis: &HelixBasis,
        direction: AxialDirection,
        demand: Option<&AxialDemand>,
        work: &mut Work,
    ) -> Option<Self> {
        let load = demand.and_then(|d| match direction {
            AxialDirection::Compression => d.compression,
            AxialDirection::Tension => d.tension,
        });
        work.trace
            .about(|| format!("factors in {}", direction.name()));
        let rule = match basis {
            HelixBasis::AllowableStress(a) => Some(allowable_stress(a, direction, load, work)),
            HelixBasis::LimitStates(l) => Some(limit_states(l, direction, load, work)),
            HelixBasis::Eurocode7(e) => eurocode(e, direction, load, work),
            HelixBasis::AustralianStandard2159(a) => Some(australian(a, direction, load, work)),
            HelixBasis::OwnFactors(own) => own_factors(own, direction, load, work),
        };
        work.trace.about(String::new);
        rule
    }
}

/// A factor in force.
#[derive(Debug, Clone, Copy)]
pub(super) struct Factor {
    pub id: &'static str,
    pub value: f64,
    pub from_request: bool,
    pub source: &'static Reference,
}

impl Factor {
    pub fn given(id: &'static str, value: f64) -> Self {
        Self {
            id,
            value,
            from_request: true,
            source: &CALLER,
        }
    }

    pub fn taken(id: &'static str, constant: &'static Sourced<f64>, work: &mut Work) -> Self {
        Self::of(id, work.take(constant), constant.reference)
    }

    pub fn of(id: &'static str, value: f64, source: &'static Reference) -> Self {
        Self {
            id,
            value,
            from_request: false,
            source,
        }
    }

    /// The caller's value, or one of a source.
    pub fn pick(
        id: &'static str,
        own: Option<f64>,
        value: f64,
        source: &'static Reference,
    ) -> Self {
        own.map_or(Self::of(id, value, source), |own| Self::given(id, own))
    }

    /// As the answer carries it.
    pub fn outcome(&self) -> HelixFactor {
        HelixFactor {
            id: self.id.into(),
            direction: None,
            combination: None,
            used_factor: self.value,
            from_request: self.from_request,
            source: self.source.into(),
            own_reference: None,
        }
    }

    /// As the answer carries it, with its direction.
    pub fn outcome_in(&self, direction: AxialDirection) -> HelixFactor {
        HelixFactor {
            direction: Some(direction),
            ..self.outcome()
        }
    }
}

/// A rule of one factor on the ultimate resistance.
fn plain(
    direction: AxialDirection,
    kind: DesignCapacityKind,
    margin: Margin,
    load: Option<Force>,
    factors: Vec<HelixFactor>,
) -> DesignRule {
    DesignRule {
        direction,
        kind,
        least_of: None,
        characteristic: None,
        lines: vec![RuleLine {
            combination: None,
            margin,
            load,
        }],
        factors,
    }
}

fn allowable_stress(
    a: &HelixAllowableStress,
    direction: AxialDirection,
    load: Option<Force>,
    work: &mut Work,
) -> DesignRule {
    work.method(&methods::ALLOWABLE_STRESS);
    let (factor, least_of) = match direction {
        AxialDirection::Compression => {
            const ID: &str = "compression_safety_factor";
            let factor = match a.compression_safety_factor {
                Some(value) => Factor::given(ID, value),
                None => Factor::taken(ID, &HELICAL_SAFETY, work),
            };
            (factor, Some(others(&a.other_ultimates.unwrap_or_default())))
        }
        AxialDirection::Tension => (tension_safety(a, work), None),
    };
    let rule = plain(
        direction,
        DesignCapacityKind::Allowable,
        Margin::Safety(factor.value, factor.source),
        load,
        vec![factor.outcome()],
    );
    DesignRule { least_of, ..rule }
}

/// Number and least of the ultimate loads that were sent.
fn others(sent: &OtherUltimates) -> Option<(usize, Force)> {
    [
        sent.torque_correlation,
        sent.load_test,
        sent.shaft,
        sent.couplings,
        sent.helix_plates,
    ]
    .into_iter()
    .flatten()
    .fold(None, |found, force| {
        Some(found.map_or((1, force), |(n, least): (usize, Force)| {
            (n + 1, least.min(force))
        }))
    })
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
    if a.uplift_element == Some(UpliftElement::Group)
        && let Some(group) = group_uplift_safety(clause, tested)
    {
        let factor = Factor::taken(ID, group, work);
        work.warn(
            &warnings::GROUP_FACTOR_ON_ONE_PILE,
            format!(
                "{} instead of {} in tension: the group's resistance, block included, must be shown to be at least that of its piles together",
                factor.value,
                uplift(clause, tested).value
            ),
        );
        return factor;
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

fn limit_states(
    l: &AxialLimitStates,
    direction: AxialDirection,
    load: Option<Force>,
    work: &mut Work,
) -> DesignRule {
    work.method(&methods::LIMIT_STATES);
    let (id, given) = match direction {
        AxialDirection::Compression => (
            "compression_resistance_factor",
            l.compression_resistance_factor,
        ),
        AxialDirection::Tension => ("tension_resistance_factor", l.tension_resistance_factor),
    };
    let factor = if let Some(value) = given {
        Factor::given(id, value)
    } else {
        let tested = l.proof == Some(ResistanceProof::LoadTest);
        if tested {
            tell_of_test(id, work);
        }
        let tension = direction == AxialDirection::Tension;
        Factor::taken(id, resistance_factor(tension, tested), work)
    };
    plain(
        direction,
        DesignCapacityKind::Factored,
        Margin::Resistance(factor.value, factor.source),
        load,
        vec![factor.outcome()],
    )
}

fn australian(
    a: &AustralianStandard2159,
    direction: AxialDirection,
    load: Option<Force>,
    work: &mut Work,
) -> DesignRule {
    work.method(&methods::AUSTRALIAN_STANDARD_2159);
    const BASIC: &str = "basic_reduction_factor";
    let basic = match (
        a.basic_reduction_factor,
        basic_reduction(a.average_risk_rating_factor, a.redundancy),
    ) {
        (Some(own), _) => Factor::given(BASIC, own),
        (None, RiskRow::Lowest(phi)) => {
            work.take_table(&LOWEST_RISK);
            Factor::of(BASIC, phi, LOWEST_RISK.reference)
        }
        (None, RiskRow::Higher(phi)) => {
            work.take_table(&HIGHER_RISK);
            Factor::of(BASIC, phi, HIGHER_RISK.reference)
        }
    };
    let mut list = vec![basic];
    let used = match a.load_testing {
        None => Factor {
            id: "reduction_factor",
            ..basic
        },
        Some(t) => {
            let (phi_tf, k) = (t.intrinsic_test_factor, t.benefit_factor);
            work.warn(
                &warnings::FORMULA_FROM_MEMORY,
                "the benefit of load testing by AS 2159-2009",
            );
            tell_of_test("reduction_factor", work);
            list.push(Factor::given("intrinsic_test_factor", phi_tf));
            list.push(Factor::given("benefit_factor", k));
            let phi = tested_reduction(basic.value, phi_tf, k, &mut work.trace);
            Factor::of("reduction_factor", phi, &AS_2159_TESTING)
        }
    };
    list.push(used);
    plain(
        direction,
        DesignCapacityKind::Factored,
        Margin::Strength(used.value, used.source),
        load,
        list.iter().map(|f| f.outcome_in(direction)).collect(),
    )
}

fn own_factors(
    own: &OwnDesignFactors,
    direction: AxialDirection,
    load: Option<Force>,
    work: &mut Work,
) -> Option<DesignRule> {
    let factor = match direction {
        AxialDirection::Compression => own.compression,
        AxialDirection::Tension => own.tension,
    }?;
    work.method(&methods::OWN_FACTORS);
    let shown = match factor {
        OwnDesignFactor::Divisor(d) => Factor::given("divisor", d.safety_factor),
        OwnDesignFactor::Multiplier(m) => Factor::given("multiplier", m.resistance_factor),
    };
    let kind = match own.level {
        DemandLevel::Allowable => DesignCapacityKind::Allowable,
        DemandLevel::Factored => DesignCapacityKind::Factored,
    };
    let outcome = HelixFactor {
        own_reference: Some(own.reference.clone()),
        ..shown.outcome_in(direction)
    };
    Some(plain(
        direction,
        kind,
        Margin::Own(factor),
        load,
        vec![outcome],
    ))
}
