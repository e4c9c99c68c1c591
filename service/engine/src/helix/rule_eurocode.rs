//! How the rule of EN 1997-1 is made: correlation factors by the number of resistances,
//! partial factors and design effects by combination.

use super::codes::methods;
use super::outcome::{DesignCapacityKind, HelixFactor};
use super::pile::AxialDirection;
use super::rule::{Characteristic, DesignRule, Margin, RuleLine, subject};
use super::rule_factors::Factor;
use crate::basis::codes::warnings;
use crate::basis::{
    ActionFactors, CORRELATION_PROFILES, CORRELATION_TESTS, EUROCODE_MODEL_FACTOR, Eurocode7,
    EurocodeCombination, EurocodeCompression, EurocodePileKind, EurocodeProof, EurocodeResistance,
    EurocodeSetFactors, ResistanceSample, calculated_resistance, combinations, correlation,
    design_effect, pile_factors,
};
use crate::contract::Work;
use crate::quantity::Force;

/// The rule of EN 1997-1; none in a direction without load tests where they are the proof.
pub(super) fn eurocode(
    e: &Eurocode7,
    direction: AxialDirection,
    load: Option<Force>,
    work: &mut Work,
) -> Option<DesignRule> {
    let mut factors = Vec::new();
    let characteristic = characteristic(e, direction, &mut factors, work)?;
    work.method(&methods::EUROCODE_7);
    let kind = match e.pile_kind {
        EurocodePileKind::Driven => "driven",
        EurocodePileKind::Bored => "bored",
        EurocodePileKind::ContinuousFlightAuger => "continuous flight auger",
    };
    work.warn(
        &warnings::PILE_KIND_ASSIGNED,
        format!("partial factors of {kind} piles on a helical pile; whether they fit is for the engineer and the national annex"),
    );
    let lines = combinations(e.approach)
        .iter()
        .enumerate()
        .map(|(i, combination)| {
            let own = e.own_factors.and_then(|own| match i {
                0 => own.combination_1,
                _ => own.combination_2,
            });
            let own = own.unwrap_or_default();
            let name = combination.name;
            work.trace.about(|| subject(name, direction));
            let effect = effect(e, direction, combination, own, &mut factors, work);
            let partial = partial(e, direction, combination, own, work);
            factors.push(HelixFactor {
                combination: Some(name.into()),
                ..partial.outcome_in(direction)
            });
            RuleLine {
                combination: Some(name),
                margin: Margin::Partial(partial.value, partial.source),
                load: effect.or(load),
            }
        })
        .collect();
    Some(DesignRule {
        direction,
        kind: DesignCapacityKind::Factored,
        least_of: None,
        characteristic: Some(characteristic),
        lines,
        factors,
    })
}

fn in_direction(r: &EurocodeResistance, direction: AxialDirection) -> Option<Force> {
    match direction {
        AxialDirection::Compression => r.compression,
        AxialDirection::Tension => r.tension,
    }
}

/// Where the characteristic resistance comes from, with its factors.
fn characteristic(
    e: &Eurocode7,
    direction: AxialDirection,
    factors: &mut Vec<HelixFactor>,
    work: &mut Work,
) -> Option<Characteristic> {
    if let Some(EurocodeProof::LoadTests(l)) = &e.proof {
        let measured = l.tests.iter().filter_map(|r| in_direction(r, direction));
        let tests = ResistanceSample::of(measured)?;
        let rows = work.take_table(&CORRELATION_TESTS);
        let found = correlation(rows, tests.count);
        let correlation = xi(e, found, CORRELATION_TESTS.reference, direction, factors);
        work.warn(
            &warnings::MEASURED_IN_PLACE_OF_CALCULATED,
            format!("{} tested in {}", tests.count, direction.name()),
        );
        return Some(Characteristic::Measured { tests, correlation });
    }
    let model = Factor::pick(
        "model_factor",
        e.model_factor,
        work.take(&EUROCODE_MODEL_FACTOR),
        EUROCODE_MODEL_FACTOR.reference,
    );
    factors.push(model.outcome_in(direction));
    let list: &[EurocodeResistance] = match &e.proof {
        Some(EurocodeProof::GroundTests(g)) => g.other_profiles.as_deref().unwrap_or_default(),
        _ => &[],
    };
    work.trace
        .about(|| format!("other profiles in {}", direction.name()));
    let trace = &mut work.trace;
    let others = ResistanceSample::of(
        list.iter()
            .filter_map(|r| in_direction(r, direction))
            .map(|r| calculated_resistance(r, model.value, trace)),
    );
    let rows = work.take_table(&CORRELATION_PROFILES);
    let found = correlation(rows, others.map_or(0, |o| o.count) + 1);
    let source = CORRELATION_PROFILES.reference;
    Some(Characteristic::Calculated {
        model_factor: model.value,
        others,
        correlation: xi(e, found, source, direction, factors),
    })
}

/// Correlation factors in force.
fn xi(
    e: &Eurocode7,
    found: (f64, f64),
    source: &'static crate::source::Reference,
    direction: AxialDirection,
    factors: &mut Vec<HelixFactor>,
) -> (f64, f64) {
    let own = e.own_factors.unwrap_or_default();
    let mean = Factor::pick(
        "correlation_mean_factor",
        own.correlation_mean_factor,
        found.0,
        source,
    );
    let least = Factor::pick(
        "correlation_least_factor",
        own.correlation_least_factor,
        found.1,
        source,
    );
    factors.extend([mean, least].map(|f| f.outcome_in(direction)));
    (mean.value, least.value)
}

/// The partial factor on the resistance.
fn partial(
    e: &Eurocode7,
    direction: AxialDirection,
    combination: &EurocodeCombination,
    own: EurocodeSetFactors,
    work: &mut Work,
) -> Factor {
    let table = pile_factors(e.pile_kind, combination.resistance);
    let of = work.take_table(table);
    let default = match e.proof {
        Some(EurocodeProof::LoadTests(_)) => EurocodeCompression::Total,
        Some(EurocodeProof::GroundTests(_)) | None => EurocodeCompression::Base,
    };
    let (id, sent, value) = match (direction, e.compression_resistance.unwrap_or(default)) {
        (AxialDirection::Tension, _) => (
            "tension_partial_factor",
            own.tension_resistance_factor,
            of.tension,
        ),
        (AxialDirection::Compression, EurocodeCompression::Base) => (
            "base_partial_factor",
            own.compression_resistance_factor,
            of.base,
        ),
        (AxialDirection::Compression, EurocodeCompression::Total) => (
            "total_partial_factor",
            own.compression_resistance_factor,
            of.total,
        ),
    };
    Factor::pick(id, sent, value, table.reference)
}

/// The design effect of the actions, where there are any in the direction.
fn effect(
    e: &Eurocode7,
    direction: AxialDirection,
    combination: &EurocodeCombination,
    own: EurocodeSetFactors,
    factors: &mut Vec<HelixFactor>,
    work: &mut Work,
) -> Option<Force> {
    let actions = e.actions?;
    let (unfavourable, variable, favourable) = match direction {
        AxialDirection::Compression => {
            let c = actions.compression?;
            (c.permanent, c.variable, None)
        }
        AxialDirection::Tension => {
            let t = actions.tension?;
            (t.permanent_unfavourable, t.variable, t.permanent_favourable)
        }
    };
    let table = work.take_table(combination.actions);
    let source = combination.actions.reference;
    let pick = |id, sent, value| Factor::pick(id, sent, value, source);
    let permanent = pick(
        "permanent_unfavourable_factor",
        own.permanent_unfavourable_factor,
        table.permanent_unfavourable,
    );
    let held = pick(
        "permanent_favourable_factor",
        own.permanent_favourable_factor,
        table.permanent_favourable,
    );
    let moving = pick("variable_factor", own.variable_factor, table.variable);
    let mut used = vec![permanent, moving];
    if direction == AxialDirection::Tension {
        used.push(held);
    }
    factors.extend(used.iter().map(|f| HelixFactor {
        combination: Some(combination.name.into()),
        ..f.outcome_in(direction)
    }));
    Some(design_effect(
        unfavourable.unwrap_or(Force::ZERO),
        variable.unwrap_or(Force::ZERO),
        favourable.unwrap_or(Force::ZERO),
        ActionFactors {
            permanent_unfavourable: permanent.value,
            permanent_favourable: held.value,
            variable: moving.value,
        },
        &mut work.trace,
    ))
}
