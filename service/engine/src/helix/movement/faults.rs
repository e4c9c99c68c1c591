//! What is wrong with a question about the movement of the head.

use super::request::HeadMovement;
use crate::basis::DemandLevel;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::Issue;
use crate::helix::basis::HelixBasis;
use crate::helix::codes::refusals;
use crate::helix::pile::AxialDirection;
use crate::helix::plates::told;
use crate::helix::request::{AxialDirections, Request};
use crate::quantity::Length;
use crate::shaft::Shaft;
use crate::source::SHAFT_SHORTENING;

/// Every fault of the question.
pub(in crate::helix) fn head_movement_faults(request: &Request) -> Vec<Issue> {
    let Some(asked) = &request.head_movement else {
        return Vec::new();
    };
    let mut issues = Vec::new();
    if let Shaft::Round(round) = &request.pile.shaft
        && round.wall_thickness.is_none()
    {
        issues.push(
            Issue::new(
                "/pile/shaft/round",
                &MISSING_MEMBER,
                "`wall_thickness` is needed: the shaft shortens by the area of its steel",
            )
            .source(&SHAFT_SHORTENING),
        );
    }
    let depths = request.pile.helices.iter().map(|h| h.depth);
    if let (Some(head), Some(top)) = (asked.head_height, depths.reduce(Length::min))
        && -head > top
    {
        issues.push(
            Issue::new(
                "/head_movement/head_height",
                &refusals::HEAD_BELOW_HELIX,
                format!("the head is {} below grade", told(-head)),
            )
            .limit(told(top)),
        );
    }
    working_load_faults(request, asked, &mut issues);
    issues
}

fn working_load_faults(request: &Request, asked: &HeadMovement, issues: &mut Vec<Issue>) {
    let sent = asked.working_load.unwrap_or_default();
    let sent = [sent.compression, sent.tension].map(|l| l.is_some());
    let computed = match request.directions.unwrap_or_default() {
        AxialDirections::Both => [true, true],
        AxialDirections::Compression => [true, false],
        AxialDirections::Tension => [false, true],
    };
    let both = [AxialDirection::Compression, AxialDirection::Tension];
    for ((direction, sent), computed) in both.into_iter().zip(sent).zip(computed) {
        if sent && !computed {
            let name = direction.name();
            issues.push(Issue::new(
                format!("/head_movement/working_load/{name}"),
                &refusals::DEMAND_NOT_COMPUTED,
                format!("`directions` leaves {name} out"),
            ));
        }
    }
    // a limit is judged under a load of service; a factored basis holds none
    if asked.limit.is_some() && !is_unfactored(request) && sent == [false, false] {
        issues.push(Issue::new(
            "/head_movement",
            &MISSING_MEMBER,
            "`working_load` is needed: `limit` is judged under an unfactored load",
        ));
    }
}

/// Whether the design basis gives allowable capacities.
pub(super) fn is_unfactored(request: &Request) -> bool {
    match &request.design_basis {
        Some(HelixBasis::AllowableStress(_)) => true,
        Some(HelixBasis::OwnFactors(own)) => own.level == DemandLevel::Allowable,
        _ => false,
    }
}
