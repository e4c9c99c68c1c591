//! The calculation itself: both directions, design capacities, checks, warnings and
//! cautions. The resistance of the soil is in `resistance.rs`.

use std::borrow::Cow;

use super::HelixCapacity;
use super::basis_faults::{basis_faults, basis_lengths};
use super::codes::{checks, warnings};
use super::judge::UsableCapacities;
use super::methods::HelixMethods;
use super::outcome::{AxialResistance, NoCreditReason, Outcome};
use super::pile::AxialDirection;
use super::plates::{Plate, from_the_top, pile_faults};
use super::request::{AxialDirections, Request};
use super::resistance::axial_resistance;
use super::settings::Settings;
use super::zone::zone_faults;
use crate::catalogue::cautions;
use crate::contract::{
    Calculation, Check, CheckStatus, Issue, Refusal, SubjectKind, Work, list_length,
};
use crate::limits;
use crate::quantity::Length;
use crate::soil::Strata;
use crate::source::{HELIX_SPACING_3D, NO_CREDIT_SOILS, Sourced, TOP_HELIX_5D};

/// Least depth of the top helix where there is tension, diameters of the largest helix.
pub static MINIMUM_EMBEDMENT_RATIO: Sourced<f64> =
    Sourced::new("minimum_embedment_ratio", 5.0, &TOP_HELIX_5D);
/// Distance between helices that keeps their interaction small, diameters of the lower one.
pub static SPACING_RATIO: Sourced<f64> =
    Sourced::new("helix_spacing_ratio", 3.0, &HELIX_SPACING_3D);

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
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        let options = request.methods.unwrap_or_default();
        let strata = whole(request, &options)?;
        let mut results = Results::default();
        for direction in wanted(request.directions.unwrap_or_default()) {
            results.add(request, &strata, direction, &options, work)?;
        }
        judge_geometry(request, work);
        tell_cautions(work);
        Ok(Outcome {
            label: request.pile.label.clone(),
            tags: request.pile.tags.clone(),
            compression: results.compression,
            tension: results.tension,
            factors: results.usable.factors,
            ultimates: results.usable.ultimates,
            depth_curve: None,
            minimum_depth: None,
            helix_sets: None,
            expected_torque: None,
            methods: Settings::of(&options).echo(),
            not_included: not_included(&options),
        })
    }
}

fn wanted(directions: AxialDirections) -> impl Iterator<Item = AxialDirection> {
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
    }
    issues.extend(options.faults(&pile.shaft, "/methods"));
    issues.extend(basis_faults(request));
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
            NoCreditReason::FillOrOrganic => "fill or organic soil",
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

/// Depth of the top helix and distances between helices.
fn judge_geometry(request: &Request, work: &mut Work) {
    let plates = from_the_top(&request.pile.helices);
    if request.pulls()
        && let Some(top) = plates.first()
    {
        let largest = plates
            .iter()
            .map(|p| Length::from(p.diameter))
            .fold(Length::ZERO, Length::max);
        let least = largest * work.take(&MINIMUM_EMBEDMENT_RATIO);
        work.check(
            Check::at_least(&checks::EMBEDMENT, least, top.depth, &TOP_HELIX_5D)
                .subject(SubjectKind::Helix, &top.label),
        );
    }
    for pair in plates.windows(2) {
        judge_spacing(&pair[0], &pair[1], request.is_judged(), work);
    }
}

fn judge_spacing(upper: &Plate, lower: &Plate, asked: bool, work: &mut Work) {
    let least = Length::from(lower.diameter) * work.take(&SPACING_RATIO);
    let spacing = lower.depth - upper.depth;
    let check = Check::at_least(&checks::SPACING, least, spacing, &HELIX_SPACING_3D)
        .subject(SubjectKind::Helix, &lower.label)
        .advisory();
    if check.status == CheckStatus::Warn {
        work.warn_about(
            &warnings::HELICES_CLOSE,
            SubjectKind::Helix,
            &lower.label,
            format!(
                "helix {} is {:.2} diameters below helix {}",
                lower.label,
                spacing.si() / lower.diameter.si(),
                upper.label
            ),
        );
    }
    if asked {
        work.check(check);
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
fn not_included(options: &HelixMethods) -> Vec<Cow<'static, str>> {
    let adhesion = Settings::of(options).adhesion_ignored_depth.is_none();
    let mut list: Vec<Cow<'static, str>> = Vec::new();
    if adhesion {
        list.push("shaft_adhesion".into());
    }
    list.extend(
        [
            "steel_strength",
            "installation_torque",
            "settlement",
            "group_effects",
            "buckling",
            "lateral_load",
            "frost_and_swelling",
        ]
        .map(Cow::from),
    );
    list
}
