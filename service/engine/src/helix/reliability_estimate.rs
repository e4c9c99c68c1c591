//! The estimate of reliability: where a statistic applies, and which safety factor counts.
//! The equations are in `reliability_equations.rs`, the statistics in
//! `reliability_statistics.rs`.

use super::basis::HelixBasis;
use super::codes::{methods, refusals, warnings};
use super::outcome::{AxialResistance, BearingLaw, EmbedmentMode, GoverningMode};
use super::pile::AxialDirection;
use super::reliability::*;
use super::reliability_equations::{
    Scatter, central_safety, failure_probability, reliability_index,
};
use super::reliability_statistics::{
    DEFAULT, LOAD_BIAS, LOAD_COV, Statistic, all, bias, published,
};
use super::request::{AxialDirections, Request};
use crate::basis::DemandLevel;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, Refusal, Work};
use crate::quantity::{AngleUnit, Force};
use crate::soil::{Strata, Strength};
use crate::source::{CALLER, Reference};

/// Least friction angle of the tests of `giampa_2016`, degrees.
const GIAMPA_LEAST_FRICTION: f64 = 40.0;

/// What is wrong with the question itself.
pub(super) fn reliability_faults(request: &Request) -> Vec<Issue> {
    let Some(options) = &request.reliability else {
        return Vec::new();
    };
    let mut issues = Vec::new();
    match &options.unfactored_load {
        None => {
            if !has_own_safety(request.design_basis.as_ref()) {
                issues.push(Issue::new(
                    "/reliability",
                    &refusals::RELIABILITY_NEEDS_LOAD,
                    "`unfactored_load` is needed: the design basis gives no safety factor on it",
                ));
            }
        }
        Some(load) => {
            if load.compression.is_none() && load.tension.is_none() {
                issues.push(Issue::new(
                    "/reliability/unfactored_load",
                    &MISSING_MEMBER,
                    "`compression`, `tension` or both are needed",
                ));
            }
            let left_out = match request.directions.unwrap_or_default() {
                AxialDirections::Both => None,
                AxialDirections::Compression => load.tension.map(|_| "tension"),
                AxialDirections::Tension => load.compression.map(|_| "compression"),
            };
            if let Some(name) = left_out {
                issues.push(Issue::new(
                    format!("/reliability/unfactored_load/{name}"),
                    &refusals::DEMAND_NOT_COMPUTED,
                    format!("`directions` leaves {name} out"),
                ));
            }
        }
    }
    issues
}

/// Whether a basis has a safety factor on unfactored loads.
fn has_own_safety(basis: Option<&HelixBasis>) -> bool {
    match basis {
        Some(HelixBasis::AllowableStress(_)) => true,
        Some(HelixBasis::OwnFactors(own)) => own.level == DemandLevel::Allowable,
        _ => false,
    }
}

/// The statistic in force.
struct InForce {
    statistic: Statistic,
    name: &'static str,
    source: &'static Reference,
    published: Option<PublishedStatisticName>,
    own_reference: Option<String>,
}

impl InForce {
    fn of(options: &ReliabilityOptions, work: &mut Work) -> Self {
        let taken = match &options.statistic {
            Some(ResistanceStatistic::Own(own)) => {
                return Self {
                    statistic: Statistic {
                        mean: own.mean_ratio,
                        given_as: own
                            .given_as
                            .unwrap_or(StatisticDirection::MeasuredOverCalculated),
                        cov: own.cov_ratio,
                    },
                    name: "own",
                    source: &CALLER,
                    published: None,
                    own_reference: Some(own.reference.clone()),
                };
            }
            Some(ResistanceStatistic::Published(choice)) => published(choice.name),
            None => &DEFAULT,
        };
        Self {
            statistic: work.take_table(taken),
            name: taken.id,
            source: taken.reference,
            published: match &options.statistic {
                Some(ResistanceStatistic::Published(choice)) => Some(choice.name),
                _ => None,
            },
            own_reference: None,
        }
    }
}

/// The estimate for the resistances of a request, or why its statistic cannot be used.
pub(super) fn estimate(
    request: &Request,
    strata: &Strata,
    resistances: [Option<&AxialResistance>; 2],
    work: &mut Work,
) -> Result<Option<ReliabilityOutcome>, Refusal> {
    let Some(options) = &request.reliability else {
        return Ok(None);
    };
    work.trace.about(|| "reliability".to_owned());
    let used = InForce::of(options, work);
    let scatter = Scatter {
        resistance_bias: bias(used.statistic, used.source, &mut work.trace),
        resistance_cov: used.statistic.cov,
        load_bias: options
            .load_bias_factor
            .unwrap_or_else(|| work.take(&LOAD_BIAS)),
        load_cov: options
            .load_cov_ratio
            .unwrap_or_else(|| work.take(&LOAD_COV)),
    };
    let mut misfits = Vec::new();
    let [compression, tension] = resistances.map(|resistance| {
        let resistance = resistance?;
        if let Some(why) = used.published.and_then(|n| misfit(n, resistance, strata)) {
            misfits.push((resistance.direction, why));
            return None;
        }
        one(request, options, resistance, scatter, work)
    });
    work.trace.about(String::new);
    if misfits.len() == resistances.iter().flatten().count() {
        let (direction, why) = misfits
            .last()
            .copied()
            .unwrap_or((AxialDirection::Tension, ""));
        return Err(Issue::new(
            "/reliability/statistic/published/name",
            &refusals::STATISTIC_DOES_NOT_APPLY,
            format!("`{}` in {}: {why}", used.name, direction.name()),
        )
        .source(used.source)
        .into());
    }
    for (direction, why) in misfits {
        not_estimated(direction, why, work);
    }
    tell(&used, work);
    Ok(Some(ReliabilityOutcome {
        compression,
        tension,
        statistic: StatisticUsed {
            name: used.name.into(),
            given_as: used.statistic.given_as,
            printed_mean_ratio: used.statistic.mean,
            bias_factor: scatter.resistance_bias,
            cov_ratio: used.statistic.cov,
            from_request: used.own_reference.is_some(),
            source: used.source.into(),
            own_reference: used.own_reference,
        },
        load_bias_factor: scatter.load_bias,
        load_cov_ratio: scatter.load_cov,
        published_statistics: all(),
    }))
}

fn tell(used: &InForce, work: &mut Work) {
    work.method(&methods::RELIABILITY_ESTIMATE);
    work.warn(
        &warnings::RELIABILITY_INDICATIVE,
        format!(
            "statistic `{}`: {} {}, coefficient of variation {}",
            used.name,
            match used.statistic.given_as {
                StatisticDirection::MeasuredOverCalculated => "measured over calculated",
                StatisticDirection::CalculatedOverMeasured => "calculated over measured",
            },
            used.statistic.mean,
            used.statistic.cov
        ),
    );
    if used.published.is_some() {
        work.warn(
            &warnings::STATISTIC_OF_ANOTHER_METHOD,
            format!("`{}`: {}", used.name, used.source.note),
        );
    }
}

fn not_estimated(direction: AxialDirection, why: &str, work: &mut Work) {
    work.warn(
        &warnings::RELIABILITY_NOT_ESTIMATED,
        format!("{}: {why}", direction.name()),
    );
}

/// The estimate in one direction.
fn one(
    request: &Request,
    options: &ReliabilityOptions,
    resistance: &AxialResistance,
    scatter: Scatter,
    work: &mut Work,
) -> Option<ReliabilityEstimate> {
    let direction = resistance.direction;
    let ultimate = resistance
        .ultimate_by_punching
        .unwrap_or(resistance.ultimate);
    if ultimate.si() <= 0.0 {
        not_estimated(direction, "nothing resists", work);
        return None;
    }
    let load = unfactored(request, options, direction);
    let allowable = resistance.design.as_ref();
    let allowable = allowable.filter(|_| has_own_safety(request.design_basis.as_ref()));
    let (safety, safety_from) = if let Some(load) = load {
        let safety = central_safety(ultimate, load, &mut work.trace);
        (safety, SafetyFrom::UnfactoredLoad)
    } else if let Some(design) = allowable
        && options.unfactored_load.is_none()
    {
        let of = central_safety(design.from_ultimate, design.capacity, &mut work.trace);
        (of, SafetyFrom::DesignBasis)
    } else {
        not_estimated(direction, "no unfactored load was sent", work);
        return None;
    };
    let index = reliability_index(safety, scatter, &mut work.trace);
    Some(ReliabilityEstimate {
        central_safety_factor: safety,
        safety_from,
        unfactored_load: load,
        reliability_index_ratio: index,
        failure_probability_ratio: failure_probability(index, &mut work.trace),
    })
}

/// The unfactored load that counts, where there is one above nil.
fn unfactored(
    request: &Request,
    options: &ReliabilityOptions,
    direction: AxialDirection,
) -> Option<Force> {
    let pick = |compression, tension| match direction {
        AxialDirection::Compression => compression,
        AxialDirection::Tension => tension,
    };
    let load = match (&options.unfactored_load, &request.demand) {
        (Some(load), _) => pick(load.compression, load.tension),
        (None, Some(demand)) if demand.level == DemandLevel::Allowable => {
            pick(demand.compression, demand.tension)
        }
        _ => None,
    };
    load.filter(|l| l.si() > 0.0)
}

/// Why a published statistic does not apply to a resistance.
fn misfit(
    name: PublishedStatisticName,
    resistance: &AxialResistance,
    strata: &Strata,
) -> Option<&'static str> {
    if resistance.direction != AxialDirection::Tension {
        return Some("its tests were pulled");
    }
    let governed_by = |mode| resistance.governing_mode == mode;
    match name {
        PublishedStatisticName::HoytClemence1989IndividualBearing => {
            (!governed_by(GoverningMode::IndividualBearing))
                .then_some("individual bearing does not govern")
        }
        PublishedStatisticName::HoytClemence1989CylindricalShear => {
            (!governed_by(GoverningMode::CylindricalShear))
                .then_some("cylindrical shear does not govern")
        }
        PublishedStatisticName::Giampa2016 => {
            let shallow = resistance
                .embedment
                .as_ref()
                .is_some_and(|e| e.mode == EmbedmentMode::Shallow);
            if !shallow {
                return Some("its helices were shallow");
            }
            let dense = |label: &str| {
                strata.layers.iter().any(|layer| {
                    layer.label == label
                        && matches!(layer.strength, Strength::Drained { phi, .. }
                            if phi.get(AngleUnit::Deg) >= GIAMPA_LEAST_FRICTION - 1e-9)
                })
            };
            let zones = resistance.individual_bearing.helices.iter();
            let all_dense = zones
                .flat_map(|h| &h.zone)
                .filter(|part| part.law != BearingLaw::NoCredit)
                .all(|part| dense(&part.layer));
            (!all_dense).then_some("its sands had friction angles of 40 degrees and more")
        }
    }
}
