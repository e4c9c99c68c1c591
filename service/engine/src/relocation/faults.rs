//! Faults of the plan as it is and as it would stand, at their places in the request.

use super::codes::refusals;
use super::request::{RelocationEvent, Request};
use super::standing::Standing;
use crate::catalogue::refusals::BASIS_MIXED;
use crate::contract::{Issue, list_length};
use crate::layout::codes::refusals::{BEAM_MECHANISM, BEAM_UNSUPPORTED};
use crate::layout::{KeepOut, KeepOutShape, LayoutBasis, PilePlacement};
use crate::limits::AREA_POINTS;

const POSITIONS: &str = "/piles/given/positions/";

/// An issue of the plan at its place in this request.
pub(super) fn in_layout(issue: Issue) -> Issue {
    Issue {
        pointer: format!("/layout{}", issue.pointer),
        ..issue
    }
}

/// An issue of the plan as it would stand: at the event that brings the pile, else at the plan.
pub(super) fn in_events(request: &Request, standing: &Standing, issue: Issue) -> Issue {
    let Some(rest) = issue.pointer.strip_prefix(POSITIONS) else {
        return in_layout(issue);
    };
    let (number, member) = rest.split_at(rest.find('/').unwrap_or(rest.len()));
    let pile = number.parse().ok().and_then(|n: usize| standing.after(n));
    let Some(pile) = pile else {
        return in_layout(issue);
    };
    let pointer = match (pile.event, pile.before) {
        (Some(e), _) => in_event(request, e, member),
        (None, Some(before)) => format!("/layout{POSITIONS}{before}{member}"),
        (None, None) => "/events".to_owned(),
    };
    Issue { pointer, ..issue }
}

/// The place of a member of a pile in its event; the event where it does not stand there.
fn in_event(request: &Request, e: usize, member: &str) -> String {
    let event = &request.events[e];
    let path = format!("/events/{e}/{}", event.tag());
    match (event, member) {
        (RelocationEvent::Added(_), _) => format!("{path}/pile{member}"),
        (RelocationEvent::Moved(m), "/at") if m.along.is_some() => format!("{path}/along"),
        (RelocationEvent::Moved(m), _) if m.residual.is_some() => path_of(path, member),
        (RelocationEvent::StoppedShort(s), _) if s.residual.is_some() => path_of(path, member),
        (RelocationEvent::Replaced(r), "/pile_type") if r.pile_type.is_some() => {
            format!("{path}{member}")
        }
        (RelocationEvent::Replaced(r), "/compression") if r.compression.is_some() => {
            format!("{path}{member}")
        }
        (RelocationEvent::Replaced(r), "/tension") if r.tension.is_some() => {
            format!("{path}{member}")
        }
        (RelocationEvent::Replaced(r), "/stiffness") if r.stiffness.is_some() => {
            format!("{path}{member}")
        }
        _ => path,
    }
}

fn path_of(path: String, member: &str) -> String {
    match member {
        "/compression" | "/tension" => format!("{path}/residual{member}"),
        "/stiffness" => format!("{path}/residual"),
        _ => path,
    }
}

/// Whether a fault says that a beam has too few piles to stand, and which beam.
pub(super) fn too_few_piles(issue: &Issue) -> Option<usize> {
    let code = &*issue.code;
    if code != BEAM_MECHANISM.id && code != BEAM_UNSUPPORTED.id {
        return None;
    }
    issue.pointer.strip_prefix("/beams/")?.parse().ok()
}

/// Faults that need no plan.
pub(super) fn of_request(request: &Request, issues: &mut Vec<Issue>) {
    if let PilePlacement::Search(_) = &request.layout.piles {
        issues.push(Issue::new(
            "/layout/piles",
            &refusals::PILES_NOT_GIVEN,
            "only a plan with `given` can be changed",
        ));
    }
    let rule = request.mislocation.as_ref().and_then(|m| m.overload);
    if rule.is_some() && matches!(request.layout.design_basis, LayoutBasis::LimitStates(_)) {
        issues.push(
            Issue::new(
                "/mislocation/overload",
                &refusals::OVERLOAD_WITH_FACTORED,
                "the plan is designed by limit states; leave it out",
            )
            .source(&crate::source::IBC_1810_3_1_3),
        );
    }
    let capacities = request.layout.pile_capacity.is_some() || request.layout.pile_types.is_some();
    let larger = request
        .ways_out
        .as_ref()
        .and_then(|w| w.larger_piles.as_ref());
    if larger.is_some() && !capacities {
        issues.push(Issue::new(
            "/ways_out/larger_piles",
            &BASIS_MIXED,
            "their level is that of `pile_capacity` or `pile_types`, which the plan does not have",
        ));
    }
}

/// Lengths of the lists of an obstruction.
pub(super) fn obstruction_lengths(sent: &KeepOut, issues: &mut Vec<Issue>) {
    let (member, count, least) = match &sent.shape {
        KeepOutShape::Polygon(a) => ("polygon/corners", a.corners.len(), 3),
        KeepOutShape::Lot(a) => ("lot/corners", a.corners.len(), 3),
        KeepOutShape::Line(l) => ("line/points", l.points.len(), 2),
        KeepOutShape::Circle(_) | KeepOutShape::Boundary(_) => return,
    };
    let pointer = format!("/ways_out/obstruction/shape/{member}");
    list_length(issues, pointer, count, least, AREA_POINTS);
}
