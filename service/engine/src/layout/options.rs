//! What the options of the analysis do not go with: searches, and each other.

use super::codes::refusals;
use super::request::{BeamTorsion, Request, TensionConnection};
use crate::contract::Issue;

/// What a search does not take in.
pub(super) fn given_only(request: &Request, issues: &mut Vec<Issue>) {
    let lifts = request.tension_connection == Some(TensionConnection::LiftsOff);
    let twists = request.beam_torsion == Some(BeamTorsion::Included);
    for (sent, pointer, detail) in [
        (
            lifts,
            "/tension_connection",
            "a search with a tension capacity of 0 keeps every pile in compression",
        ),
        (
            twists,
            "/beam_torsion",
            "a search releases torsion at corners and junctions",
        ),
        (
            request.settlement_limit.is_some(),
            "/settlement_limit",
            "a search does not move piles for settlement",
        ),
        (
            request
                .point_moments
                .as_ref()
                .is_some_and(|m| !m.is_empty()),
            "/point_moments",
            "a search places piles for forces",
        ),
    ] {
        if sent {
            issues.push(Issue::new(pointer, &refusals::GIVEN_PILES_ONLY, detail));
        }
    }
}

/// What is not analysed together with piles that lift off, or with torsion.
pub(super) fn together(request: &Request, issues: &mut Vec<Issue>) {
    let lifts = request.tension_connection == Some(TensionConnection::LiftsOff);
    let twists = request.beam_torsion == Some(BeamTorsion::Included);
    let bends = request.beams.iter().any(|b| b.deflection_limit.is_some());
    for (both, pointer, detail) in [
        (
            lifts && request.pattern_load.is_some(),
            "/pattern_load",
            "which piles lift off depends on all loads together: send the loads as cases instead",
        ),
        (
            twists && request.pattern_load.is_some(),
            "/pattern_load",
            "torques are found with all loads everywhere: send the loads as cases instead",
        ),
        (
            lifts && bends,
            "/tension_connection",
            "deflections are measured between piles that hold: leave out `deflection_limit`",
        ),
    ] {
        if both {
            issues.push(Issue::new(pointer, &refusals::NOT_TOGETHER, detail));
        }
    }
}
