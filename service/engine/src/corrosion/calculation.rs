//! The calculation itself: faults, class of the soil, method, sections.

use super::CorrosionLoss;
use super::classify::classify;
use super::codes::{cautions as own_cautions, checks, methods, refusals};
use super::method;
use super::outcome::Outcome;
use super::request::Request;
use super::section::{after, label_of};
use super::section_request::{CorrodedForm, CorrodedSection};
use super::soil_request::CorrosionSoil;
use crate::catalogue::cautions;
use crate::catalogue::refusals::{DUPLICATE_LABEL, MISSING_MEMBER};
use crate::contract::{Calculation, Check, Issue, Refusal, Work, list_length, utilisation};
use crate::limits;
use crate::quantity::in_both_systems;
use crate::source::{AC358_CORROSION, DERIVED};
use crate::torque::codes::refusals::SHAFT_WALL_TOO_THICK;

impl Calculation for CorrosionLoss {
    fn lengths(request: &Request, issues: &mut Vec<Issue>) {
        let count = request.sections.len();
        list_length(issues, "/sections", count, 1, limits::CORRODED_SECTIONS);
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        let mut issues = faults(request);
        let soil = match &request.soil {
            Some(CorrosionSoil::Tests(tests)) if tests.is_empty() => {
                issues.push(without_class("/soil/tests"));
                None
            }
            Some(soil) => Some(classify(soil, work)),
            None => {
                issues.push(without_class(""));
                None
            }
        };
        let chosen = soil
            .as_ref()
            .map(|soil| method::choose(request, soil.class));
        let (soil, chosen) = match (soil, chosen) {
            (Some(soil), Some(Ok(chosen))) if issues.is_empty() => (soil, chosen),
            (_, chosen) => {
                let refused = chosen.and_then(Result::err).into_iter();
                issues.extend(refused.flat_map(|refusal| refusal.issues));
                return Err(Refusal::of(issues));
            }
        };
        caution(work);
        let mut sections = Vec::new();
        if let Some(by) = &chosen {
            method::note(by, request.life, work);
            work.method(&methods::CORROSION_SECTION);
            for (at, section) in request.sections.iter().enumerate() {
                sections.push(after(request, section, label_of(section, at), by, work));
            }
        } else {
            let reason = "aggressive_soil_needs_given_rate";
            let def = &checks::CORROSION_RATE_KNOWN;
            work.check(Check::not_evaluated(def, reason, &AC358_CORROSION));
        }
        Ok(Outcome {
            label: request.label.clone(),
            tags: request.tags.clone(),
            life: request.life,
            soil,
            loss_by: chosen.as_ref().map(method::told),
            sections,
        })
    }
}

fn without_class(pointer: &str) -> Issue {
    Issue::new(
        pointer,
        &refusals::CORROSION_WITHOUT_SOIL_CLASS,
        "send `soil`: its class with who states it, or tests (resistivity, pH, sulfates, chlorides, organics)",
    )
}

fn caution(work: &mut Work) {
    for def in [
        &cautions::ENGINEER_OF_RECORD,
        &cautions::LOCAL_CODE,
        &cautions::PRODUCT_STRENGTH,
        &own_cautions::CORROSION_BOLTS_AND_THREADS,
    ] {
        work.caution(def);
    }
}

/// Faults that are not those of soil and method.
fn faults(request: &Request) -> Vec<Issue> {
    let mut issues = Vec::new();
    if let Some(ground) = &request.ground
        && ground.compacted == Some(true)
        && !ground.kind.is_fill()
    {
        issues.push(Issue::new(
            "/ground/compacted",
            &refusals::CORROSION_COMPACTED_NOT_FILL,
            "the ground sent is natural",
        ));
    }
    let mut labels = Vec::new();
    for (at, section) in request.sections.iter().enumerate() {
        section_faults(section, at, &mut issues);
        let label = label_of(section, at);
        if labels.contains(&label) {
            issues.push(Issue::new(
                format!("/sections/{at}"),
                &DUPLICATE_LABEL,
                format!("`{label}` names two sections"),
            ));
        }
        labels.push(label);
    }
    issues
}

fn section_faults(section: &CorrodedSection, at: usize, issues: &mut Vec<Issue>) {
    match &section.form {
        CorrodedForm::RoundTube(tube) => {
            let most = tube.outside_diameter / 2.0;
            if !utilisation(tube.wall_thickness.si(), most.si()).1 {
                issues.push(
                    Issue::new(
                        format!("/sections/{at}/form/round_tube/wall_thickness"),
                        &SHAFT_WALL_TOO_THICK,
                        format!(
                            "a wall of {} in {} outside",
                            in_both_systems(tube.wall_thickness.si(), "m"),
                            in_both_systems(tube.outside_diameter.si(), "m")
                        ),
                    )
                    .limit(in_both_systems(most.si(), "m"))
                    .source(&DERIVED),
                );
            }
        }
        CorrodedForm::Plate(plate) if plate.width.is_none() && section.strength.is_some() => {
            issues.push(Issue::new(
                format!("/sections/{at}/form/plate"),
                &MISSING_MEMBER,
                "the strength of a plate needs its `width`",
            ));
        }
        _ => {}
    }
}
