//! The depths of a request put in order: base of frost, helices from the top down, tip;
//! and what can contradict among them. No judgement.

use super::codes::refusals::{DEPTHS_OUT_OF_ORDER, FROST_BELOW_TIP};
use super::equations;
use super::request::{FrostBeam, Request};
use crate::contract::{Issue, utilisation};
use crate::quantity::{Length, Size, in_both_systems};
use crate::source::DOMASCHUK_1982;
use crate::trace::Trace;

/// One helix with its name.
#[derive(Debug, Clone)]
pub struct FrostHelix {
    /// Its label, or its number from the top.
    pub label: String,
    /// Depth below final grade.
    pub depth: Length,
    /// Diameter.
    pub diameter: Size,
}

/// Depths below final grade, in order.
#[derive(Debug, Clone)]
pub struct Ground {
    /// Surface that is exposed to the cold.
    pub cold_surface: Length,
    /// Base of frost.
    pub base: Length,
    /// Helices from the top down.
    pub helices: Vec<FrostHelix>,
    /// Tip of the pile.
    pub tip: Length,
    /// Head of the pile.
    pub head: Length,
}

impl Ground {
    /// Puts the depths of a request in order. The list of helices is not empty.
    pub fn of(request: &Request, trace: &mut Trace) -> Self {
        let helices = ordered(request);
        let deepest = helices.last().map_or(Length::ZERO, |h| h.depth);
        let cold_surface = request.frost.cold_surface();
        Self {
            cold_surface,
            base: equations::frost_base(cold_surface, request.frost.official_depth, trace),
            tip: request.tip_depth.unwrap_or(deepest),
            head: request.head_depth.unwrap_or(Length::ZERO),
            helices,
        }
    }

    /// Depth of the top helix.
    pub fn top(&self) -> Length {
        self.helices.first().map_or(Length::ZERO, |h| h.depth)
    }

    /// Diameter of the largest helix.
    pub fn largest(&self) -> Size {
        self.helices
            .iter()
            .fold(Size::ZERO, |most, h| most.max(h.diameter))
    }

    /// Whether a depth is at or below the base of frost: exactly at it counts as below, by
    /// the rule for every limit.
    pub fn below_frost(&self, depth: Length) -> bool {
        reaches(self.base, depth)
    }
}

/// Whether `depth` is at least `limit`, by the one rule for limits.
fn reaches(limit: Length, depth: Length) -> bool {
    utilisation(limit.si(), depth.si()).1
}

fn ordered(request: &Request) -> Vec<FrostHelix> {
    let mut places: Vec<usize> = (0..request.pile.helices.len()).collect();
    let depth = |i: &usize| request.pile.helices[*i].depth.si();
    places.sort_by(|a, b| depth(a).total_cmp(&depth(b)));
    places
        .into_iter()
        .enumerate()
        .map(|(rank, index)| {
            let helix = &request.pile.helices[index];
            FrostHelix {
                label: match &helix.label {
                    Some(label) => label.0.clone(),
                    None => (rank + 1).to_string(),
                },
                depth: helix.depth,
                diameter: helix.diameter,
            }
        })
        .collect()
}

/// Every contradiction among the depths of a request.
pub fn faults(request: &Request, ground: &Ground) -> Vec<Issue> {
    let mut issues = Vec::new();
    let (top, tip) = (ground.top(), ground.tip);
    let deepest = ground.helices.last().map_or(Length::ZERO, |h| h.depth);
    if !reaches(deepest, tip) {
        let detail = "the tip is above the deepest helix";
        issues.push(out_of_order("/tip_depth", detail, tip, deepest));
    }
    if !reaches(ground.base, tip) {
        issues.push(
            Issue::new(
                "/frost/official_depth",
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
    let Some(uplift) = &request.uplift else {
        return issues;
    };
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
    judge("/uplift/contact_top_depth", uplift.contact_top_depth);
    judge(
        "/uplift/construction/standing_over_winter/contact_top_depth",
        uplift.standing().contact_top_depth,
    );
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
