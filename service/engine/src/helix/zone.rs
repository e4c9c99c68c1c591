//! The soil on the load side of a helix: which layers a zone of given depth cuts, and
//! where theory does not reach. Geometry only; what the soils carry is in `bearing.rs`.

use super::codes::refusals;
use super::ground::{Disc, Ground};
use super::methods::WidthTerm;
use super::pile::AxialDirection;
use super::plates::{Plate, SAME_DEPTH_M, told};
use super::settings::Settings;
use crate::contract::Issue;
use crate::quantity::Length;
use crate::soil::{GroundHazard, Strata, Strength};
use crate::source::{BEARING_ZONE, HAZARDOUS_GROUND, HELIX_NOT_IN_ROCK};

/// Part of a layer within a zone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct ZonePart {
    /// Place of the layer in the profile.
    pub layer: usize,
    pub top: Length,
    pub bottom: Length,
    /// Above the depth from which soil is credited.
    pub above_credit: bool,
}

impl ZonePart {
    /// Height of the part, m.
    pub fn height(&self) -> f64 {
        self.bottom.si() - self.top.si()
    }
}

/// The parts of the layers between two depths, from the top down; cut at the depth of
/// credit. Parts thinner than the rounding of units are left out.
pub(crate) fn parts_between(
    strata: &Strata,
    top: Length,
    bottom: Length,
    credit_depth: Length,
) -> impl DoubleEndedIterator<Item = ZonePart> {
    let layers = strata.layers.iter().enumerate();
    layers
        .map(move |(layer, l)| (layer, l.top.max(top), l.bottom.min(bottom)))
        .filter(|(_, from, to)| to.si() - from.si() > SAME_DEPTH_M)
        .flat_map(move |(layer, from, to)| {
            let cut = credit_depth.max(from).min(to);
            [(from, cut, true), (cut, to, false)].into_iter().map(
                move |(top, bottom, above_credit)| ZonePart {
                    layer,
                    top,
                    bottom,
                    above_credit,
                },
            )
        })
        .filter(|part| part.height() > SAME_DEPTH_M)
}

/// The zone of a helix: `ratio` diameters below it in compression, above it in tension,
/// there cut at the surface. A ratio of 0 is the layer in touch with the helix.
pub(crate) fn load_side(
    ground: &Ground,
    disc: &Disc,
    ratio: f64,
) -> impl DoubleEndedIterator<Item = ZonePart> {
    let (top, bottom) = ground.reach(disc, ratio);
    let thin = disc.diameter.si() * ratio <= SAME_DEPTH_M;
    let touching = if thin { ground.touching(disc) } else { None };
    let touched = touching.map(|layer| ZonePart {
        layer,
        top: disc.depth,
        bottom: disc.depth,
        above_credit: false,
    });
    let credit_depth = ground.settings.no_credit_above;
    touched
        .into_iter()
        .chain(parts_between(ground.strata, top, bottom, credit_depth))
}

/// Where helix theory does not reach: soil unknown below a helix in compression, rock in
/// the zone of a helix or above it, ground noted as hazardous in the zone or between helices.
pub(crate) fn zone_faults(
    strata: &Strata,
    plates: &[Plate],
    direction: AxialDirection,
    s: &Settings,
    at: &str,
) -> Vec<Issue> {
    let mut issues = Vec::new();
    let known = strata.depth().si();
    for plate in plates {
        let pointer = format!("{at}/helices/{}/depth", plate.index);
        let mut end = plate.depth.si();
        if direction == AxialDirection::Compression {
            let width = f64::from(u8::from(s.width_term == WidthTerm::Include));
            let ratio = s.bearing_zone_ratio.max(width);
            end += plate.diameter.si() * ratio;
            // a zone of no depth still needs soil below the helix
            let needed = end.max(plate.depth.si() + 2.0 * SAME_DEPTH_M);
            if needed > known + SAME_DEPTH_M {
                issues.push(
                    Issue::new(
                        pointer.clone(),
                        &refusals::PROFILE_ENDS_IN_ZONE,
                        format!(
                            "helix {} bears on soil down to {} in compression; none is given below {}",
                            plate.label,
                            told(Length::from_si(end)),
                            told(strata.depth())
                        ),
                    )
                    .limit(told(strata.depth()))
                    .source(&BEARING_ZONE),
                );
            }
        }
        for layer in &strata.layers {
            let in_reach = layer.top.si() < end - SAME_DEPTH_M
                || (direction == AxialDirection::Compression
                    && layer.top.si() <= plate.depth.si() + SAME_DEPTH_M);
            if layer.strength == Strength::Rock && in_reach {
                issues.push(rock_fault(plate, &layer.label, layer.top, &pointer));
            }
        }
    }
    issues.extend(hazard_faults(strata, plates, direction, s, at));
    issues
}

/// Ground noted as hazardous that a helix lies in or bears on, or that lies between it and
/// the helix above. The text is the same for both directions, so that it is told once.
fn hazard_faults(
    strata: &Strata,
    plates: &[Plate],
    direction: AxialDirection,
    s: &Settings,
    at: &str,
) -> Vec<Issue> {
    let mut issues = Vec::new();
    let mut above: Option<f64> = None;
    for plate in plates {
        let depth = plate.depth.si();
        // a zone of no depth still bears on the soil it touches
        let reach = (plate.diameter.si() * s.bearing_zone_ratio).max(2.0 * SAME_DEPTH_M);
        let (top, bottom) = match direction {
            AxialDirection::Compression => (depth, depth + reach),
            AxialDirection::Tension => (depth - reach, depth),
        };
        let top = above.map_or(top, |above| above.min(top));
        above = Some(depth);
        for layer in &strata.layers {
            let within = layer.bottom.si().min(bottom) - layer.top.si().max(top) > SAME_DEPTH_M;
            if within && let Some(hazard) = layer.hazards.first() {
                let told = layer.hazards.iter().map(|h| h.told());
                let told = told.collect::<Vec<_>>().join(", ");
                let source = match hazard {
                    GroundHazard::Boulders => &HELIX_NOT_IN_ROCK,
                    _ => &HAZARDOUS_GROUND,
                };
                issues.push(
                    Issue::new(
                        format!("{at}/helices/{}/depth", plate.index),
                        &refusals::HELIX_IN_HAZARD,
                        format!(
                            "helix {} lies in or bears on layer {}, or that layer is between it and the helix above; it is noted for {told}",
                            plate.label, layer.label
                        ),
                    )
                    .source(source),
                );
            }
        }
    }
    issues
}

/// Rock a helix would have to pass or sit in, or that it bears on in compression. The text
/// of the former is the same for both directions, so that it is told once.
fn rock_fault(plate: &Plate, layer: &str, top: Length, pointer: &str) -> Issue {
    let passed = top.si() < plate.depth.si() - SAME_DEPTH_M;
    let detail = if passed {
        format!(
            "helix {} is below the top of layer {layer}, which is rock; a helix cannot be turned into it",
            plate.label
        )
    } else {
        format!(
            "helix {} bears in compression on layer {layer}, which is rock; helix theory does not apply to it",
            plate.label
        )
    };
    Issue::new(pointer, &refusals::HELIX_IN_ROCK, detail)
        .limit(format!("above rock at {}", told(top)))
        .source(&HELIX_NOT_IN_ROCK)
}

/// Depth of the base of the lowest soil above a helix that is given no credit: fill,
/// organic soil, or everything above the depth of credit. 0 where there is none.
pub(crate) fn credit_base(strata: &Strata, depth: Length, credit_depth: Length) -> Length {
    strata
        .layers
        .iter()
        .filter(|l| l.strength == Strength::NoCredit && l.top.si() < depth.si() - SAME_DEPTH_M)
        .map(|l| l.bottom.min(depth))
        .fold(credit_depth.min(depth), Length::max)
}
