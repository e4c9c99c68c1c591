//! The stiffness from the ground: the question put to `helix-capacity`, its answer taken
//! apart into shaft and helices, and asked again with helices that move more and less.

use super::equations::{in_series, secant};
use super::{Found, Parts};
use crate::contract::{Calculation, Issue, Work, list_length};
use crate::helix::{
    AxialDirections, DirectionMovement, HeadMovement, HelixCapacity, Request as HelixRequest,
    WorkingLoad,
};
use crate::layout::codes::{methods, refusals, warnings};
use crate::layout::outcome::{StiffnessSource, SupportLoadSource};
use crate::layout::request::{CapacityLevel, PileCapacity, SupportFromSoil};
use crate::limits::HELICES;
use crate::quantity::{Force, SpringStiffness};
use crate::source::{BEARWELL_CHOICE, Sourced};

const AT: &str = "/pile_support/from_soil";

/// By how much the movement of the helices is multiplied, and divided, for the band of an
/// estimated stiffness.
static BAND: Sourced<f64> = Sourced::new("pile_stiffness_band_factor", 2.0, &BEARWELL_CHOICE);

pub(super) fn lengths(asked: &SupportFromSoil, issues: &mut Vec<Issue>) {
    asked.soil.lengths(&format!("{AT}/soil"), issues);
    let count = asked.pile.helices.len();
    list_length(issues, format!("{AT}/pile/helices"), count, 1, HELICES);
}

/// Estimates the stiffness; faults go to `issues`.
pub(super) fn estimate(
    asked: &SupportFromSoil,
    capacity: Option<&PileCapacity>,
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Option<Found> {
    let (load, load_from) = load(asked, capacity);
    let mut own = work.beside();
    let middle = moved(asked, load, 1.0, &mut own, issues)?;
    take_over(own, work);
    let at = middle.at_working_load.as_ref()?;
    if at.movement.si() <= 0.0 || at.shaft_part.si() <= 0.0 || at.helix_part.si() <= 0.0 {
        return None;
    }
    work.trace.about(|| "pile as a spring".to_owned());
    let shaft = secant(at.load, at.shaft_part, &mut work.trace);
    let helix = secant(at.load, at.helix_part, &mut work.trace);
    let stiffness = in_series(shaft, helix, &mut work.trace);
    work.trace.about(String::new);
    let factor = work.take(&BAND);
    let mut end = |by: f64| -> Option<SpringStiffness> {
        let mut quiet = Work::default();
        let found = moved(asked, load, by, &mut quiet, issues)?;
        found.at_working_load?.secant_stiffness
    };
    let (soft, stiff) = (end(factor)?, end(1.0 / factor)?);
    work.method(&methods::PILE_SUPPORT);
    work.warn(
        &warnings::PILE_STIFFNESS_ESTIMATED,
        format!(
            "{} at a load of {}; a load test on the site outranks it",
            SpringStiffness::ROLE.in_both_systems(stiffness.si()),
            Force::ROLE.in_both_systems(at.load.si())
        ),
    );
    Some(Found {
        source: StiffnessSource::Estimated,
        stiffness,
        load: at.load,
        load_from,
        movement: at.movement,
        estimate: Some(Parts {
            ultimate: middle.ultimate,
            shaft,
            helix,
            soft,
            stiff,
        }),
    })
}

/// The load at which the stiffness is taken; none for half of the ultimate resistance.
fn load(
    asked: &SupportFromSoil,
    capacity: Option<&PileCapacity>,
) -> (Option<Force>, SupportLoadSource) {
    if let Some(sent) = asked.working_load {
        return (Some(sent), SupportLoadSource::Request);
    }
    match capacity.filter(|c| c.level == CapacityLevel::Allowable) {
        Some(c) => (Some(c.compression), SupportLoadSource::AllowableCapacity),
        None => (None, SupportLoadSource::HalfOfUltimate),
    }
}

/// The movement of the head with helices that move `by` times as far; faults go to `issues`.
fn moved(
    asked: &SupportFromSoil,
    load: Option<Force>,
    by: f64,
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Option<DirectionMovement> {
    use crate::helix::{COARSE_MOVEMENT, FINE_MOVEMENT};
    let ratio = |sent: Option<f64>, constant: &Sourced<f64>| {
        if by == 1.0 {
            sent
        } else {
            Some(by * sent.unwrap_or(constant.value))
        }
    };
    let request = HelixRequest {
        soil: asked.soil.clone(),
        pile: asked.pile.clone(),
        directions: Some(AxialDirections::Compression),
        methods: asked.methods,
        design_basis: None,
        demand: None,
        depth_curve: None,
        minimum_depth: None,
        helix_sets: None,
        expected_torque: None,
        reliability: None,
        group: None,
        head_movement: Some(HeadMovement {
            working_load: load.map(|l| WorkingLoad {
                compression: Some(l),
                tension: None,
            }),
            limit: None,
            head_height: asked.head_height,
            elastic_modulus: asked.elastic_modulus,
            failure_ratio: asked.failure_ratio,
            coarse_movement_ratio: ratio(asked.coarse_movement_ratio, &COARSE_MOVEMENT),
            fine_movement_ratio: ratio(asked.fine_movement_ratio, &FINE_MOVEMENT),
            point_count: None,
        }),
    };
    let outcome = match HelixCapacity::evaluate(&request, work) {
        Ok(outcome) => outcome,
        Err(refusal) => {
            issues.extend(refusal.issues.into_iter().map(|mut issue| {
                let own = issue.pointer.trim_start_matches("/head_movement");
                issue.pointer = format!("{AT}{own}");
                issue
            }));
            return None;
        }
    };
    let Some(found) = outcome.head_movement.and_then(|m| m.compression) else {
        issues.push(Issue::new(
            AT,
            &refusals::SUPPORT_CARRIES_NOTHING,
            "no helix is given any bearing in compression",
        ));
        return None;
    };
    if found.at_working_load.is_none() {
        let told = |f: Force| Force::ROLE.in_both_systems(f.si());
        let (pointer, what) = match asked.working_load {
            Some(_) => ("/working_load", "the load"),
            None => ("", "the allowable capacity of `pile_capacity`"),
        };
        issues.push(
            Issue::new(
                format!("{AT}{pointer}"),
                &refusals::SUPPORT_LOAD_ABOVE_ULTIMATE,
                format!("{what} is {}", told(found.working_load)),
            )
            .limit(format!("at most {}", told(found.ultimate))),
        );
        return None;
    }
    Some(found)
}

/// What the answer has to tell of the estimate: methods, defaults, warnings and steps, but
/// not the checks of a pile that is not judged here.
fn take_over(own: Work, work: &mut Work) {
    let Work {
        trace,
        warnings,
        methods,
        defaults,
        ..
    } = own;
    work.take_over(Vec::new(), methods, defaults);
    for warning in warnings {
        if !work.warnings.contains(&warning) {
            work.warnings.push(warning);
        }
    }
    if let Some(steps) = trace.into_steps() {
        work.trace.append("pile support", steps);
    }
}
