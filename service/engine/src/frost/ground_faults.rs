//! What can contradict among the depths of a request, and what cannot be answered at all
//! because the whole pile freezes in.

use super::beam_request::FrostBeam;
use super::codes::refusals::{DEPTHS_OUT_OF_ORDER, FROST_BELOW_TIP};
use super::ground::{Ground, reaches};
use super::request::Request;
use crate::contract::Issue;
use crate::quantity::{Length, in_both_systems};
use crate::source::DOMASCHUK_1982;

/// Every contradiction among the depths of a request.
pub fn of(request: &Request, ground: &Ground) -> Vec<Issue> {
    let mut issues = Vec::new();
    let (top, tip) = (ground.top(), ground.tip);
    let deepest = ground.deepest();
    if !reaches(deepest, tip) {
        let detail = "the tip is above the deepest helix";
        issues.push(out_of_order("/tip_depth", detail, tip, deepest));
    }
    if !reaches(ground.base, tip) {
        issues.push(
            Issue::new(
                if reaches(ground.official_base, tip) {
                    "/frost/computed"
                } else {
                    "/frost/official_depth"
                },
                &FROST_BELOW_TIP,
                format!(
                    "the ground freezes to {}, the tip is at {}: the pile is frozen in over its whole length and must not be accepted",
                    shown(ground.base),
                    shown(tip)
                ),
            )
            .limit(shown(tip))
            .source(&DOMASCHUK_1982),
        );
    }
    let mut above_top = |pointer: &str, detail: &str, depth: Length| {
        if !reaches(depth, top) {
            issues.push(out_of_order(pointer, detail, depth, top));
        }
    };
    above_top(
        "/frost/cold_surface_depth",
        "the surface exposed to the cold is below the top helix",
        ground.cold_surface,
    );
    above_top(
        "/head_depth",
        "the head is below the top helix",
        ground.head,
    );
    if let Some(FrostBeam::InSoil(beam)) = &request.beam {
        above_top(
            "/beam/in_soil/underside_depth",
            "the beam's underside is below the top helix",
            beam.underside_depth,
        );
    }
    issues.extend(contact_faults(request, ground));
    issues
}

/// The shaft cannot touch soil above the ground or only below its top helix.
fn contact_faults(request: &Request, ground: &Ground) -> Vec<Issue> {
    let mut issues = Vec::new();
    let mut judge = |pointer: &str, depth: Option<Length>| {
        let Some(depth) = depth else { return };
        if !reaches(ground.cold_surface, depth) {
            let detail = "contact begins above the surface exposed to the cold";
            issues.push(out_of_order(pointer, detail, depth, ground.cold_surface));
        }
        if !reaches(depth, ground.top()) {
            let detail = "contact begins below the top helix";
            issues.push(out_of_order(pointer, detail, depth, ground.top()));
        }
    };
    if let Some(uplift) = &request.uplift {
        judge("/uplift/contact_top_depth", uplift.contact_top_depth);
        judge(
            "/uplift/construction/standing_over_winter/contact_top_depth",
            uplift.standing().contact_top_depth,
        );
    }
    if let Some(swelling) = &request.swelling {
        judge("/swelling/contact_top_depth", swelling.contact_top_depth);
        judge(
            "/swelling/before_loading/unloaded/contact_top_depth",
            swelling.unloaded().contact_top_depth,
        );
    }
    let sleeve = request.uplift.as_ref().and_then(|u| u.sleeve.as_ref());
    if let Some(sleeve) = sleeve
        && !reaches(sleeve.bottom_depth, ground.top())
    {
        issues.push(out_of_order(
            "/uplift/sleeve/bottom_depth",
            "the sleeve ends below the top helix",
            sleeve.bottom_depth,
            ground.top(),
        ));
    }
    issues
}

fn out_of_order(pointer: &str, detail: &str, depth: Length, limit: Length) -> Issue {
    Issue::new(
        pointer,
        &DEPTHS_OUT_OF_ORDER,
        format!("{detail}: {} against {}", shown(depth), shown(limit)),
    )
    .limit(shown(limit))
}

fn shown(depth: Length) -> String {
    in_both_systems(depth.si(), "m")
}
