//! Drag of settling ground on the same pile: what `drag-force` needs of it. Drag is a check of
//! the steel; it is added to no other demand here.

use super::beam_request::FrostBeam;
use super::ground::Ground;
use super::request::Request;
use crate::contract::{Issue, Refusal, Work};
use crate::drag_force::{self, DragOutcome, DragPile};
use crate::quantity::Length;

/// Pointer of what is asked.
const AT: &str = "/downdrag";

/// The pile as drag sees it: its toe is the deepest helix, and its shaft touches soil from
/// where it does once the building stands.
fn pile(request: &Request, ground: &Ground) -> DragPile {
    let underside = match &request.beam {
        Some(FrostBeam::InSoil(beam)) => beam.underside_depth,
        _ => Length::ZERO,
    };
    let sent = request.uplift.as_ref().and_then(|u| u.contact_top_depth);
    DragPile {
        label: request.pile.name().to_owned(),
        perimeter: Some(request.pile.shaft.perimeter()),
        contact_top: sent.unwrap_or_else(|| ground.cold_surface.max(underside)),
        toe: ground.deepest(),
        helices: ground
            .helices
            .iter()
            .map(|helix| (helix.label.clone(), helix.depth))
            .collect(),
    }
}

/// Faults in the lengths of lists.
pub fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(asked) = &request.downdrag {
        drag_force::lengths(asked, AT, issues);
    }
}

/// Every fault of what is asked.
pub fn faults(request: &Request, ground: &Ground) -> Vec<Issue> {
    match &request.downdrag {
        Some(asked) => drag_force::faults(asked, &pile(request, ground), AT),
        None => Vec::new(),
    }
}

/// Judges drag on a request without faults; `None` where it was not asked for.
pub fn judge(
    request: &Request,
    ground: &Ground,
    work: &mut Work,
) -> Result<Option<DragOutcome>, Refusal> {
    let Some(asked) = &request.downdrag else {
        return Ok(None);
    };
    drag_force::judge(asked, &pile(request, ground), AT, work).map(Some)
}
