//! Weaker soil close below a helix that bears on better soil: what it takes of the load
//! that spreads down to it.

use super::bearing::soil_bearing;
use super::ground::{Disc, Ground};
use super::plates::SAME_DEPTH_M;
use crate::quantity::{Area, Length, Size, SoilStress};
use crate::soil::Strength;
use crate::source::{SPREAD_TWO_TO_ONE, Sourced, WEAK_LAYER_NEAR};
use crate::trace::Trace;

/// Share of the bearing below which a layer close by is called weak.
pub static WEAK_LAYER_SHARE: Sourced<f64> = Sourced::new("weak_layer_share", 0.6, &WEAK_LAYER_NEAR);
/// Reach of the look for weak layers, helix diameters.
pub static WEAK_LAYER_REACH: Sourced<f64> = Sourced::new("weak_layer_reach", 3.0, &WEAK_LAYER_NEAR);

/// The layer below a helix that limits its bearing most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Punching {
    /// The layer.
    pub layer: usize,
    /// From the helix down to it.
    pub distance: Length,
    /// Diameter of the load when it gets there.
    pub spread_diameter: Size,
    /// Bearing of the layer there.
    pub bearing: SoilStress,
    /// Bearing of the helix that the layer takes.
    pub limit: SoilStress,
}

/// The layer that begins within three diameters below a helix and takes the least, if it is
/// weaker than what the helix bears on.
pub(crate) fn punching(
    ground: &Ground,
    disc: &Disc,
    bearing: SoilStress,
    trace: &mut Trace,
) -> Option<Punching> {
    let end = disc.depth.si() + WEAK_LAYER_REACH.value * disc.diameter.si();
    let mut worst: Option<Punching> = None;
    for (i, layer) in ground.strata.layers.iter().enumerate() {
        let distance = layer.top - disc.depth;
        if distance.si() <= SAME_DEPTH_M || layer.strength == Strength::Rock {
            continue;
        }
        if layer.top.si() >= end - SAME_DEPTH_M {
            break;
        }
        let found = at_layer(ground, disc, i, distance);
        if found.bearing < bearing && worst.is_none_or(|w| found.limit < w.limit) {
            worst = Some(found);
        }
    }
    if let Some(w) = &worst {
        limit_by_spread(w.bearing, disc.diameter, w.distance, trace);
    }
    worst
}

fn at_layer(ground: &Ground, disc: &Disc, layer: usize, distance: Length) -> Punching {
    let mut off = Trace::off();
    let spread_diameter = Size::from_si(disc.diameter.si() + distance.si());
    let spread = Disc {
        diameter: spread_diameter,
        depth: disc.depth + distance,
        area: Area::ZERO,
    };
    let stress = ground.strata.effective_stress(spread.depth);
    let seat = ground.seat_under(&spread, stress);
    let law = &ground.laws[layer];
    let found = soil_bearing(law, &seat, ground.direction, ground.settings, &mut off);
    Punching {
        layer,
        distance,
        spread_diameter,
        bearing: found.stress,
        limit: limit_by_spread(found.stress, disc.diameter, distance, &mut off),
    }
}

/// Bearing of a helix that a layer below it takes.
///
/// q_p = q_l ((D + h)/D)^2; q_l bearing of the layer under the spread load (Pa), D diameter of
/// the helix and h distance down to the layer (m): the load spreads by one across for two down
/// on every side. Range: h above 0, up to 3 D. Source: spread of load 2:1. Sign: against the
/// load.
pub fn limit_by_spread(
    bearing: SoilStress,
    diameter: Size,
    distance: Length,
    trace: &mut Trace,
) -> SoilStress {
    let ratio = (diameter.si() + distance.si()) / diameter.si();
    trace.step(
        "q_p",
        "q_l ((D + h)/D)^2",
        bearing * (ratio * ratio),
        [
            ("q_l", bearing.into()),
            ("D", diameter.into()),
            ("h", distance.into()),
        ],
        &SPREAD_TWO_TO_ONE,
    )
}
