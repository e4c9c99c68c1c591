//! The calculation itself: faults first, then frost, swell, which counts, and the soil.

use super::codes::{methods, refusals, warnings};
use super::outcome::{ExpansiveAnswer, Outcome};
use super::request::{GroundFreezing, Request};
use super::{GroundHeave, expansive, freezing, susceptibility, swelling};
use crate::catalogue::cautions;
use crate::contract::{Calculation, Issue, Refusal, Work, none_of};

impl Calculation for GroundHeave {
    fn lengths(request: &Request, issues: &mut Vec<Issue>) {
        if let Some(swell) = &request.swell {
            swelling::lengths("/swell", swell, issues);
        }
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        none_of(faults(request))?;
        for def in [
            &cautions::ENGINEER_OF_RECORD,
            &cautions::LOCAL_CODE,
            &cautions::NOT_COVERED,
        ] {
            work.caution(def);
        }
        let frost = request.frost.as_ref().and_then(|sent| {
            freezing::heave(
                sent.in_situ.as_ref(),
                sent.segregation.as_ref(),
                sent.frost_depth,
                work,
            )
        });
        let swell = request.swell.as_ref().map(|s| swelling::swell(s, work));
        let design = swelling::larger(frost.as_ref().map(|f| f.movement), swell.as_ref());
        if design.is_some() {
            work.method(&methods::HEAVE_THAT_COUNTS);
        }
        let susceptibility = request.frost.as_ref().and_then(|f| classes(f, work));
        let expansive_soil = request
            .expansive_soil
            .as_ref()
            .map(|sent| expansive::judge(sent, work));
        if swell.is_none()
            && let Some(soil) = &expansive_soil
            && soil.expansive == ExpansiveAnswer::Yes
        {
            work.warn(
                &warnings::EXPANSIVE_WITHOUT_SWELL,
                "send `swell`; that a soil is expansive does not say how far it comes up",
            );
        }
        Ok(Outcome {
            label: request.label.clone(),
            tags: request.tags.clone(),
            frost,
            swell,
            design,
            susceptibility,
            expansive_soil,
        })
    }
}

/// Classes of the soil that freezes, where they were asked for.
fn classes(
    frost: &GroundFreezing,
    work: &mut Work,
) -> Option<super::outcome::SusceptibilityOutcome> {
    let sent = frost.susceptibility.as_ref()?;
    let potential = frost.segregation.as_ref().and_then(|s| s.potential);
    let found = susceptibility::classes(sent, potential, work);
    if potential.is_none() && susceptibility::is_susceptible(found.group) {
        work.warn(
            &warnings::SUSCEPTIBLE_WITHOUT_SEGREGATION,
            "send `segregation` with the potential of the soil; its group does not say how far it comes up",
        );
    }
    Some(found)
}

/// Everything that is wrong with a request whose members are each in range.
fn faults(request: &Request) -> Vec<Issue> {
    let mut issues = Vec::new();
    if request.frost.is_none() && request.swell.is_none() && request.expansive_soil.is_none() {
        issues.push(Issue::new(
            "",
            &refusals::HEAVE_NOT_ASKED,
            "send `frost`, `swell` or `expansive_soil`",
        ));
    }
    if let Some(frost) = &request.frost {
        let parts = frost.in_situ.is_some() || frost.segregation.is_some();
        if parts || frost.susceptibility.is_none() {
            issues.extend(freezing::faults(
                "/frost",
                frost.in_situ.as_ref(),
                frost.segregation.as_ref(),
                frost.frost_depth,
            ));
        }
        if let Some(soil) = &frost.susceptibility {
            issues.extend(susceptibility::faults("/frost/susceptibility", soil));
        }
    }
    if let Some(swell) = &request.swell {
        issues.extend(swelling::faults("/swell", swell));
    }
    if let Some(soil) = &request.expansive_soil {
        issues.extend(expansive::faults("/expansive_soil", soil));
    }
    issues
}
