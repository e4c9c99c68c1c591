//! The calculation itself: both directions, design capacities, checks, warnings and
//! cautions. The resistance of the soil is in `resistance.rs`.

use std::borrow::Cow;

use super::HelixCapacity;
use super::ask;
use super::basis_faults::{basis_faults, basis_lengths};
use super::codes::checks;
use super::geometry::judge_geometry;
use super::group::{group, group_faults, group_lengths};
use super::judge::UsableCapacities;
use super::methods::HelixMethods;
use super::movement::{head_movement, head_movement_faults};
use super::outcome::{AxialResistance, NoCreditReason, Outcome};
use super::pile::AxialDirection;
use super::plates::{from_the_top, pile_faults};
use super::reliability_estimate::{estimate, reliability_faults};
use super::request::{AxialDirections, Request};
use super::resistance::axial_resistance;
use super::settings::Settings;
use super::zone::zone_faults;
use crate::catalogue::cautions;
use crate::contract::{Calculation, Check, Issue, Refusal, SubjectKind, Work, list_length};
use crate::limits;
use crate::soil::Strata;
use crate::source::NO_CREDIT_SOILS;

impl Calculation for HelixCapacity {
    fn lengths(request: &Request, issues: &mut Vec<Issue>) {
        request.soil.lengths("/soil", issues);
        list_length(
            issues,
            "/pile/helices",
            request.pile.helices.len(),
            1,
            limits::HELICES,
        );
        basis_lengths(request.design_basis.as_ref(), issues);
        ask::lengths(request, issues);
        group_lengths(request, issues);
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        let options = request.methods.unwrap_or_default();
        let strata = whole(request, &options)?;
        let derived_strengths = request.soil.derived_strengths(work);
        let mut results = Results::default();
        for direction in wanted(request.directions.unwrap_or_default()) {
            results.add(request, &strata, direction, &options, work)?;
        }
        let settings = Settings::of(&options);
        let resistances = [results.compression.as_ref(), results.tension.as_ref()];
        let answers = ask::answers(request, &strata, &settings, resistances, work)?;
        let rules = &results.usable.rules;
        let group = group(request, &strata, &settings, resistances, rules, work);
        let head_movement = head_movement(request, &settings, resistances, work);
        judge_geometry(request, work);
        let reliability = estimate(request, &strata, resistances, work)?;
        tell_cautions(work);
        Ok(Outcome {
            label: request.pile.label.clone(),
            tags: request.pile.tags.clone(),
            compression: results.compression,
            tension: results.tension,
            factors: results.usable.factors,
            ultimates: results.usable.ultimates,
            depth_curve: answers.depth_curve,
            minimum_depth: answers.minimum_depth,
            helix_sets: answers.helix_sets,
            expected_torque: answers.expected_torque,
            derived_strengths,
            reliability,
            group,
            head_movement,
            methods: settings.echo(),
            not_included: not_included(request, &options),
        })
    }
}

/// Directions that are computed.
pub(super) fn wanted(directions: AxialDirections) -> impl Iterator<Item = AxialDirection> {
    [AxialDirection::Compression, AxialDirection::Tension]
        .into_iter()
        .filter(move |d| match directions {
            AxialDirections::Both => true,
            AxialDirections::Compression => *d == AxialDirection::Compression,
            AxialDirections::Tension => *d == AxialDirection::Tension,
        })
}

/// The ground of a request without faults; else all of its physical faults, both directions
/// together.
fn whole(request: &Request, options: &HelixMethods) -> Result<Strata, Refusal> {
    let directions = request.directions.unwrap_or_default();
    let pile = &request.pile;
    let mut issues = request.soil.faults("/soil");
    issues.extend(pile_faults(
        &request.soil,
        &pile.shaft,
        &pile.helices,
        "/pile",
    ));
    // zones only mean something in a whole profile with the helices in it
    let strata = issues.is_empty().then(|| request.soil.strata());
    if let Some(strata) = &strata {
        let plates = from_the_top(&pile.helices);
        let settings = Settings::of(options);
        for direction in wanted(directions) {
            issues.extend(zone_faults(strata, &plates, direction, &settings, "/pile"));
        }
        issues.extend(ask::faults(request, strata, &settings));
    }
    issues.extend(options.faults(&pile.shaft, "/methods"));
    issues.extend(basis_faults(request));
    issues.extend(reliability_faults(request));
    issues.extend(group_faults(request, strata.as_ref()));
    issues.extend(head_movement_faults(request));
    match (strata, issues) {
        (Some(strata), issues) if issues.is_empty() => Ok(strata),
        (_, issues) => Err(Refusal::of(issues)),
    }
}

/// What both directions add up to.
#[derive(Default)]
struct Results {
    compression: Option<AxialResistance>,
    tension: Option<AxialResistance>,
    usable: UsableCapacities,
}

impl Results {
    fn add(
        &mut self,
        request: &Request,
        strata: &Strata,
        direction: AxialDirection,
        options: &HelixMethods,
        work: &mut Work,
    ) -> Result<(), Refusal> {
        let pile = &request.pile;
        let mut resistance = axial_resistance(
            strata,
            &pile.shaft,
            &pile.helices,
            direction,
            options,
            "/pile",
            work,
        )?;
        self.usable.add(request, &mut resistance, work);
        if request.is_judged() {
            judge_credit(&resistance, work);
        }
        match direction {
            AxialDirection::Compression => self.compression = Some(resistance),
            AxialDirection::Tension => self.tension = Some(resistance),
        }
        Ok(())
    }
}

/// Helices that are given nothing.
fn judge_credit(resistance: &AxialResistance, work: &mut Work) {
    for helix in &resistance.individual_bearing.helices {
        let Some(reason) = helix.no_credit else {
            continue;
        };
        let direction = resistance.direction.name();
        let why = match reason {
            NoCreditReason::FillOrOrganic => "fill, organic or frozen soil",
            NoCreditReason::AboveCreditDepth => "above the depth from which soil is credited",
        };
        work.check(
            Check::at_least(&checks::CREDIT, 1.0, 0.0, &NO_CREDIT_SOILS)
                .subject(SubjectKind::Helix, &helix.label)
                .reason(format!("in {direction}: {why}"))
                .advisory(),
        );
    }
}

fn tell_cautions(work: &mut Work) {
    for caution in [
        &cautions::ENGINEER_OF_RECORD,
        &cautions::LOCAL_CODE,
        &cautions::LOCATE_UTILITIES,
        &cautions::SOIL_PROFILE,
        &cautions::PRODUCT_STRENGTH,
        &cautions::CORROSION,
        &cautions::NOT_COVERED,
    ] {
        work.caution(caution);
    }
}

/// What the capacities leave out.
fn not_included(request: &Request, options: &HelixMethods) -> Vec<Cow<'static, str>> {
    let adhesion = Settings::of(options).adhesion_ignored_depth.is_some();
    [
        ("shaft_adhesion", adhesion),
        ("steel_strength", false),
        ("installation_torque", false),
        ("settlement", request.head_movement.is_some()),
        ("group_effects", request.group.is_some()),
        ("buckling", false),
        ("lateral_load", false),
        ("frost_and_swelling", false),
    ]
    .into_iter()
    .filter(|(_, included)| !included)
    .map(|(what, _)| what.into())
    .collect()
}
